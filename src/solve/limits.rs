//! What a job may ask for at all: sizes that make sense, and indices that lead somewhere.
//!
//! Everything after this file may add and subtract lengths freely: each is at most a kilometre.

mod shop;

use crate::findings::{Place, Problem};
use crate::parameters::given::{self, Cut, Floor, Given, Measure, SubstrateEdge, WellShape, Width};
use crate::units::{Length, Show};

/// No length of a job is longer than this.
const LONGEST: Length = Length::from_nm(1_000_000_000_000);
/// Nothing that has a size is smaller than this: a tenth of a millimetre, which no tape shows.
const LEAST: Length = Length::from_nm(100_000);
/// A floor steeper than this is no floor (rise over run).
const STEEPEST: f64 = 0.5;

/// Least and greatest angle between the faces of a corner, degrees: what a counter is still cut to.
const ANGLES: (f64, f64) = (30.0, 175.0);

/// Which lengths a dimension may take.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    Any,
    NotNegative,
    Positive,
}

/// Gathers what is wrong with the values of a job.
struct Check {
    show: Show,
    problems: Vec<Problem>,
}

/// Every reason why the values of a job can't be worked with; empty when they can.
pub fn limits(given: &Given) -> Vec<Problem> {
    let mut check = Check { show: Show::new(given.job.units), problems: Vec::new() };
    check.sheets(given);
    if given.legs.is_empty() {
        check.say("the job has no legs", "write at least one leg with one module", None);
    }
    for leg in &given.legs {
        check.leg(leg);
    }
    check.repeated(given.legs.iter().flat_map(|l| &l.modules).map(|m| (&m.id, &m.place)), "module");
    check.repeated(given.fittings.iter().map(|f| (&f.id, &f.place)), "fitting");
    for fitting in &given.fittings {
        check.fitting(fitting, given);
    }
    check.floor(given);
    check.joints(given);
    check.shop(given);
    check.problems
}

impl Check {
    fn say(&mut self, message: impl Into<String>, instead: impl Into<String>, place: Option<&Place>) {
        self.problems.push(Problem { message: message.into(), instead: instead.into(), place: place.cloned() });
    }

    fn length(&mut self, name: &str, length: Length, sign: Sign, place: Option<&Place>) {
        let size = length.nm().unsigned_abs();
        if size > LONGEST.nm().unsigned_abs() {
            self.say(format!("{name} is longer than a kilometre"), "check the figure and its unit", place);
        } else if sign == Sign::Positive && length < LEAST {
            let found = if length > Length::ZERO { "next to nothing".to_owned() } else { self.show.plain(length) };
            self.say(format!("{name} is {found}"), "write a length greater than zero", place);
        } else if sign == Sign::NotNegative && length < Length::ZERO {
            let found = self.show.plain(length);
            self.say(format!("{name} is {found}"), "write zero or a positive length", place);
        }
    }

    fn number(&mut self, name: &str, value: f64, most: f64, place: Option<&Place>) {
        if !value.is_finite() || value.abs() > most {
            self.say(format!("{name} is out of all proportion"), "check the figure and its unit", place);
        }
    }

    fn amount(&mut self, name: &str, value: f64, most: f64, place: Option<&Place>) {
        if value < 0.0 {
            self.say(format!("{name} is negative"), "write it without the minus sign", place);
        } else {
            self.number(name, value, most, place);
        }
    }

    fn measure(&mut self, name: &str, measure: &Measure, sign: Sign, place: Option<&Place>) {
        let place = measure.place.as_ref().or(place);
        for length in [measure.published, measure.measured].into_iter().flatten() {
            self.length(name, length, sign, place);
        }
        if sign == Sign::Positive && measure.published.is_none() && measure.measured.is_none() {
            self.say(format!("{name} is missing"), "write it, published or measured", place);
        }
    }

    fn sheets(&mut self, given: &Given) {
        use Sign::{Any, NotNegative, Positive};
        let (frame, at) = (&given.frame, given.frame.place.as_ref());
        self.length("the frame's depth", frame.depth, Positive, at);
        self.length("the frame's tube", frame.tube, Positive, at);
        self.length("the wall of the frame's tube", frame.wall, NotNegative, at);
        self.length("the frame's rough gap", frame.rough_gap, NotNegative, at);
        if let Some(height) = frame.height {
            self.length("the frame's height", height, Positive, at);
        }
        let (feet, at) = (&frame.feet, frame.feet.place.as_ref());
        self.length("the shortest foot", feet.shortest, NotNegative, at);
        self.length("the longest foot", feet.longest, NotNegative, at);
        self.length("the inset of the feet", feet.inset, NotNegative, at);
        self.length("the width over which a module has a middle pair of feet", feet.middle_over, NotNegative, at);
        self.length("the distance between feet", feet.spacing, Positive, at);
        if feet.spacing > Length::ZERO && feet.spacing < Length::from_mm(50.0) {
            self.say("feet stand less than 50 mm apart", "check the unit of their spacing", at);
        }
        self.length("the reach of a measured spot", feet.spot_reach, NotNegative, at);
        if feet.longest < feet.shortest {
            self.say("the longest foot is shorter than the shortest", "swap the two, or correct one", at);
        }
        let (counter, at) = (&given.counter, given.counter.place.as_ref());
        self.length("the counter's thickness", counter.thickness, Positive, at);
        self.amount("the counter's density", counter.density, 1e5, at);
        for (name, length) in [
            ("the front overhang", counter.overhang_front),
            ("the left overhang", counter.overhang_left),
            ("the right overhang", counter.overhang_right),
            ("the back overhang", counter.overhang_back),
        ] {
            self.length(name, length, Any, at);
        }
        for (name, length) in [
            ("the joint to the wall", counter.wall_joint),
            ("the joint between pieces", counter.seam_joint),
            ("the counter's corner radius", counter.corner_radius),
            ("the counter's arris", counter.arris),
            ("the drip groove", counter.drip),
            ("the counter's tolerance", counter.tolerance),
        ] {
            self.length(name, length, NotNegative, at);
        }
        if let Some(splash) = counter.splash {
            self.length("the splash's height", splash.height, Positive, at);
            self.length("the splash's thickness", splash.thickness, Positive, at);
        }
        for &(leg, u) in &counter.seams {
            self.length("a seam's place", u, Any, at);
            if leg >= given.legs.len() {
                self.say("a seam names a leg that isn't there", "name a leg of the run", at);
            }
        }
        let at = given.substrate.place.as_ref();
        self.length("the substrate's thickness", given.substrate.thickness, NotNegative, at);
        if let SubstrateEdge::HeldBack(by) = given.substrate.edge {
            self.length("the substrate's hold-back", by, Any, at);
        }
        let (given::Height::CounterTop(top) | given::Height::FrameTop(top)) = given.height;
        self.length("the height of the run", top, Positive, None);
        if let Some(trim) = &given.trim {
            self.length("the top of the base trim", trim.top, NotNegative, None);
            self.length("the thickness of the base trim", trim.thickness, NotNegative, None);
            let at = trim.place.as_ref();
            for (name, length) in [
                ("the lap of the base trim", trim.lap),
                ("the base trim's gap to the floor", trim.floor_gap),
                ("the base trim's gap at a notch", trim.notch_gap),
                ("the base trim's gap at a joint", trim.joint_gap),
                ("the base trim's end distance", trim.fastener_end),
                ("what joints of the base trim keep off notches", trim.joint_off),
            ] {
                self.length(name, length, NotNegative, at);
            }
            // What comes in lengths or by distances that are next to nothing would come without end.
            let least = Length::from_mm(50.0);
            for (name, length) in std::iter::once(("the distance of the trim's fasteners", trim.fasteners))
                .chain([("the distance of the trim's stations", trim.stations)])
                .chain(trim.stock.iter().map(|length| ("a stock length of the trim", *length)))
            {
                self.length(name, length, Positive, at);
                if length > Length::ZERO && length < least {
                    self.say(format!("{name} is less than 50 mm"), "check its unit", at);
                }
            }
            self.amount("the density of the trim", trim.density, 1e5, at);
        }
        let t = given.tolerances;
        for (name, length) in [
            ("the cutting tolerance", t.cut),
            ("the placing tolerance", t.placing),
            ("the tolerance between published and measured", t.published),
            ("the least strip", t.least_strip),
            ("the least cover", t.least_cover),
        ] {
            self.length(name, length, NotNegative, None);
        }
    }

    fn leg(&mut self, leg: &given::Leg) {
        use Sign::{Any, NotNegative, Positive};
        let (id, at) = (&leg.id, leg.place.as_ref());
        self.number(&format!("the origin of leg {id}"), leg.origin.0.abs().max(leg.origin.1.abs()), 1e6, at);
        self.number(&format!("the angle of leg {id}"), leg.angle, 1e3, at);
        for (side, bound) in [("left of", &leg.left), ("right of", &leg.right), ("behind", &leg.back)] {
            let at = bound.place.as_ref().or(at);
            self.length(&format!("the gap {side} leg {id}"), bound.gap, NotNegative, at);
            self.length(&format!("the lean of what stands {side} leg {id}"), bound.lean, Any, at);
            self.length(&format!("the height of what stands {side} leg {id}"), bound.height, NotNegative, at);
            self.length(&format!("the width of what stands {side} leg {id}"), bound.width, NotNegative, at);
        }
        if let Some(room) = leg.room {
            self.length(&format!("the room for leg {id}"), room, Positive, at);
        }
        let faces = &leg.faces;
        for (name, build) in
            [("front", &faces.front), ("left end", &faces.left), ("right end", &faces.right), ("back", &faces.back)]
        {
            self.length(&format!("the board of the {name} of leg {id}"), build.board, NotNegative, at);
            if let Some(finish) = &build.finish {
                self.length(&format!("the finish of the {name} of leg {id}"), finish.thickness, NotNegative, at);
                self.length(&format!("the bed of the finish of the {name} of leg {id}"), finish.bed, NotNegative, at);
                self.length(&format!("the finish spread of the {name} of leg {id}"), finish.spread, NotNegative, at);
                self.amount(&format!("the mass of the finish of the {name} of leg {id}"), finish.mass, 1e5, at);
            }
        }
        self.own(leg);
        if leg.modules.is_empty() {
            self.say(format!("leg {id} has no modules"), "write at least one module", at);
        }
        for module in &leg.modules {
            let (id, at) = (&module.id, module.place.as_ref());
            match module.width {
                Width::Fixed(width) => self.length(&format!("the width of module {id}"), width, Positive, at),
                Width::Range(least, most) => {
                    self.length(&format!("the least width of module {id}"), least, Positive, at);
                    self.length(&format!("the greatest width of module {id}"), most, Positive, at);
                    if most < least {
                        self.say(
                            format!("the range of module {id} ends before it starts"),
                            "write the smaller width first",
                            at,
                        );
                    }
                }
                Width::WhatIsLeft => {}
            }
        }
    }

    /// What a leg has otherwise than the job.
    fn own(&mut self, leg: &given::Leg) {
        use Sign::{Any, NotNegative, Positive};
        let (id, at, own) = (&leg.id, leg.place.as_ref(), &leg.own);
        if let Some(depth) = own.depth {
            self.length(&format!("the frame's depth of leg {id}"), depth, Positive, at);
        }
        if let Some(given::Height::CounterTop(top) | given::Height::FrameTop(top)) = own.height {
            self.length(&format!("the height of leg {id}"), top, Positive, at);
        }
        let overhangs = [own.overhang_front, own.overhang_back, own.overhang_left, own.overhang_right];
        for length in overhangs.into_iter().flatten().chain([own.offset]).chain(own.skew) {
            self.length(&format!("an overhang, an offset or a skew of leg {id}"), length, Any, at);
        }
        match own.front {
            given::FrontEdge::Straight => {}
            given::FrontEdge::Sloped(left, right) => {
                self.length(&format!("the left overhang of the sloped front of leg {id}"), left, Any, at);
                self.length(&format!("the right overhang of the sloped front of leg {id}"), right, Any, at);
            }
            given::FrontEdge::Arc(rise) => self.length(&format!("the rise of the arc of leg {id}"), rise, Positive, at),
        }
        for shape in own.corners {
            self.shape(&format!("a corner of the counter of leg {id}"), shape, at);
        }
        if let Some(seating) = own.seating {
            self.length(&format!("the width of a seat at leg {id}"), seating.width, NotNegative, at);
        }
    }

    fn shape(&mut self, name: &str, shape: given::CornerShape, at: Option<&Place>) {
        if let given::CornerShape::Round(length) | given::CornerShape::Clipped(length) = shape {
            self.length(name, length, Sign::NotNegative, at);
        }
    }

    /// Corners: an angle between faces that a counter can be cut to.
    fn joints(&mut self, given: &Given) {
        for joint in &given.joints {
            let given::JointKind::Corner(corner) = &joint.kind else { continue };
            let at = joint.place.as_ref();
            let angle = std::f64::consts::PI - corner.turn.abs();
            let (least, most) = (ANGLES.0.to_radians() - 1e-9, ANGLES.1.to_radians() + 1e-9);
            if !(least..=most).contains(&angle) {
                self.say(
                    "the angle of a corner is none that two faces meet at",
                    format!("measure it between the finished faces: from {} to {} degrees", ANGLES.0, ANGLES.1),
                    at,
                );
            }
            self.length("the radius of a corner", corner.radius, Sign::NotNegative, at);
            self.shape("the shape of the inside of a corner", corner.inner, at);
            self.shape("the shape of a corner", corner.outer, at);
        }
    }

    fn repeated<'a>(&mut self, ids: impl Iterator<Item = (&'a String, &'a Option<Place>)>, kind: &str) {
        let mut seen = std::collections::BTreeSet::new();
        for (id, place) in ids {
            if !seen.insert(id) {
                self.say(format!("two {kind}s are called {id}"), "give each an id of its own", place.as_ref());
            }
        }
    }

    fn fitting(&mut self, fitting: &given::Fitting, given: &Given) {
        use Sign::{Any, NotNegative, Positive};
        let (id, at) = (&fitting.id, fitting.place.as_ref());
        match given.legs.get(fitting.leg) {
            None => self.say(format!("{id} is set into a leg that isn't there"), "name a leg of the run", at),
            Some(leg) if fitting.module >= leg.modules.len() => {
                self.say(format!("{id} is set into a module that isn't there"), "name a module of its leg", at);
            }
            Some(_) => {}
        }
        self.measure(&format!("the distance across of {id}"), &fitting.across.distance, Any, at);
        match &fitting.cut {
            Cut::Notch { width, depth, drop, radius, .. } => {
                self.measure(&format!("the cutout width of {id}"), width, Positive, at);
                self.measure(&format!("the cutout depth of {id}"), depth, Positive, at);
                self.measure(&format!("the drop of {id}"), drop, Positive, at);
                self.length(&format!("the corner radius of {id}"), *radius, NotNegative, at);
            }
            Cut::Well { shape, setback, .. } => {
                match shape {
                    WellShape::Rectangle { width, depth, radius } => {
                        self.measure(&format!("the cutout width of {id}"), width, Positive, at);
                        self.measure(&format!("the cutout depth of {id}"), depth, Positive, at);
                        self.length(&format!("the corner radius of {id}"), *radius, NotNegative, at);
                    }
                    WellShape::Circle { diameter } => {
                        self.measure(&format!("the cutout diameter of {id}"), diameter, Positive, at);
                    }
                }
                self.measure(&format!("the setback of {id}"), setback, Any, at);
            }
            Cut::Opening { width, height, drop, radius, .. } => {
                self.measure(&format!("the cutout width of {id}"), width, Positive, at);
                if let Some(height) = height {
                    self.measure(&format!("the cutout height of {id}"), height, Positive, at);
                }
                self.measure(&format!("the drop of {id}"), drop, Any, at);
                self.length(&format!("the corner radius of {id}"), *radius, NotNegative, at);
            }
        }
        let flange = fitting.flange;
        for length in [flange.left, flange.right, flange.far, flange.near] {
            self.length(&format!("the flange of {id}"), length, NotNegative, at);
        }
        self.length(&format!("the clearance of {id}"), fitting.clearance, NotNegative, at);
        if let Some(body) = &fitting.body {
            for measure in [&body.width, &body.depth, &body.height] {
                self.measure(&format!("the body of {id}"), measure, NotNegative, at);
            }
        }
        self.amount(&format!("the mass of {id}"), fitting.mass.unwrap_or(0.0), 1e6, at);
        self.amount(&format!("the heat input of {id}"), fitting.heat.unwrap_or(0.0), 1e9, at);
    }

    fn floor(&mut self, given: &Given) {
        match &given.site.floor {
            Floor::Level => {}
            Floor::Fall { along, across } => {
                self.number("the floor's fall along", *along, STEEPEST, None);
                self.number("the floor's fall across", *across, STEEPEST, None);
            }
            Floor::Spots(spots) | Floor::ThroughSpots(spots) => {
                for spot in spots {
                    self.length("the place of a spot height", spot.u, Sign::Any, None);
                    self.length("the place of a spot height", spot.v, Sign::Any, None);
                    self.length("a spot height", spot.z, Sign::Any, None);
                }
            }
        }
        for stub in &given.site.stubs {
            let at = stub.place.as_ref();
            self.length("the place of a stub", stub.u, Sign::Any, at);
            self.length("the place of a stub", stub.v, Sign::Any, at);
            if stub.leg >= given.legs.len() {
                self.say("a stub comes up in a leg that isn't there", "name a leg of the run", at);
            }
        }
    }
}
