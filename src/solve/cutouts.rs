//! Every fitting's cutouts, each dimension taken from the datum that it was given from.
//!
//! A notch cuts the counter and the substrate (both open at their front edges) and the front board (open at
//! its top). A well cuts counter and substrate alike: the substrate's hole is not enlarged, since
//! it carries the edge that the flange or the bowl hangs on. An opening cuts the board of its face.

use super::across::runs_backwards;
use super::{BodyBox, Cutout, Datum, Datums, Extent, Face, Fitting, FittingKind, FlangeLap, Measure, Plane};
use crate::findings::Problem;
use crate::geometry::Outline;
use crate::parameters::given::{self, Cut, DepthFrom, DepthLine, HeightFrom, WellShape};
use crate::units::{Length, Show};

/// A fitting with everything located but its mark. `edges` are its cutout's edges along its face, smaller
/// first; `substrate_front` is where the substrate's front edge lies on v.
///
/// Errors: a cutout that has no size or lies outside what it is to be cut in altogether.
pub fn cutouts(
    fitting: &given::Fitting,
    edges: (Length, Length),
    datums: &Datums,
    substrate_front: Length,
    show: Show,
) -> Result<Fitting, Problem> {
    let mut solved = blank(fitting, edges);
    match &fitting.cut {
        Cut::Notch { depth, depth_from, drop, drop_from, radius, .. } => {
            if fitting.face != Face::Front {
                return Err(refusal(fitting, "is a notch in a face that is not the front", "set it into the front"));
            }
            let back = depth_at(datums, *depth_from, Face::Front, depth.value());
            let bottom = height_at(datums, *drop_from, drop.value());
            if back <= datums.counter_front || bottom >= datums.counter_top {
                let what = format!(
                    "cuts nothing: its back edge is {} behind the counter's front edge, its bottom {} under its top",
                    show.plain(back - datums.counter_front),
                    show.plain(datums.counter_top - bottom)
                );
                return Err(refusal(fitting, &what, "give its depth and drop from the datums they were measured from"));
            }
            notch(&mut solved, datums, substrate_front, back, bottom, *radius);
            solved.given_from = words_of_depth(*depth_from, Face::Front).to_owned();
        }
        Cut::Well { shape, line, setback, setback_from } => {
            if matches!(fitting.face, Face::Left | Face::Right) {
                return Err(refusal(
                    fitting,
                    "is a well whose depth counts from an end",
                    "count it from front or back",
                ));
            }
            let (deep, radius, round) = match shape {
                WellShape::Rectangle { depth, radius, .. } => (depth.value(), *radius, false),
                WellShape::Circle { diameter } => (diameter.value(), diameter.value().half(), true),
            };
            let at = depth_at(datums, *setback_from, fitting.face, setback.value());
            // Towards the back as the face's viewer sees it.
            let away = if fitting.face == Face::Back { -1 } else { 1 };
            let near = match line {
                DepthLine::Front => at,
                DepthLine::Centre => at - deep.half() * away,
                DepthLine::Back => at - deep * away,
            };
            let far = near + deep * away;
            well(&mut solved, near.min(far), near.max(far), radius, round);
            solved.given_from = words_of_depth(*setback_from, fitting.face).to_owned();
        }
        Cut::Opening { height, drop, drop_from, radius, .. } => {
            let top = height_at(datums, *drop_from, drop.value());
            let bottom = height.as_ref().map_or(datums.frame_bottom, |height| top - height.value());
            if bottom >= top {
                return Err(refusal(
                    fitting,
                    &format!("reaches the floor from {} under it", show.plain(bottom - top)),
                    "make its drop smaller",
                ));
            }
            opening(&mut solved, bottom, top, *radius, height.is_none());
            solved.given_from = words_of_height(*drop_from).to_owned();
        }
    }
    solved.body = fitting.body.as_ref().map(|body| body_box(&solved, body, datums));
    Ok(solved)
}

/// A problem of a fitting, in a sentence that starts with its name.
fn refusal(fitting: &given::Fitting, what: &str, instead: &str) -> Problem {
    Problem { message: format!("{} {what}", fitting.id), instead: instead.to_owned(), place: fitting.place.clone() }
}

/// A fitting with what doesn't depend on its kind of cutout.
fn blank(fitting: &given::Fitting, edges: (Length, Length)) -> Fitting {
    let flange = fitting.flange;
    let (left, right) =
        if runs_backwards(fitting.face) { (flange.right, flange.left) } else { (flange.left, flange.right) };
    Fitting {
        at: (0, 0),
        id: fitting.id.clone(),
        name: fitting.name.clone(),
        mark: fitting.mark.clone().unwrap_or_default(),
        kind: match &fitting.cut {
            Cut::Notch { .. } => FittingKind::Notch,
            Cut::Well { .. } => FittingKind::Well,
            Cut::Opening { sort, .. } => FittingKind::Opening(*sort),
        },
        look: fitting.look,
        module: fitting.module,
        face: fitting.face,
        cutouts: Vec::new(),
        left: edges.0,
        right: edges.1,
        bottom: None,
        top: None,
        to_floor: false,
        back: None,
        front: None,
        flange: FlangeLap { left, right, far: flange.far, near: flange.near },
        body: None,
        clearance: fitting.clearance,
        mass: fitting.mass,
        heat: fitting.heat,
        needs: fitting.needs.clone(),
        measures: measures(fitting),
        given_from: String::new(),
        place: fitting.place.clone(),
    }
}

/// Where a depth from one of a face's datums lies on v. From the back, depths run towards the cook.
pub fn depth_at(datums: &Datums, from: DepthFrom, face: Face, depth: Length) -> Length {
    let (datum, away) = match (from, face == Face::Back) {
        (DepthFrom::FinishedFace, false) => (Datum::FinishedFace, 1),
        (DepthFrom::CounterEdge, false) => (Datum::CounterEdge, 1),
        (DepthFrom::BoardFace, false) => (Datum::BoardFace, 1),
        (DepthFrom::FrameFace, false) => (Datum::FrameFace, 1),
        (DepthFrom::FinishedFace, true) => (Datum::FinishedBack, -1),
        (DepthFrom::CounterEdge, true) => (Datum::CounterBack, -1),
        (DepthFrom::BoardFace, true) => (Datum::BoardBack, -1),
        (DepthFrom::FrameFace, true) => (Datum::FrameBack, -1),
    };
    datums.at(datum) + depth * away
}

/// Where a height lies on z: down from the tops, up from the floor.
pub fn height_at(datums: &Datums, from: HeightFrom, distance: Length) -> Length {
    match from {
        HeightFrom::CounterTop => datums.counter_top - distance,
        HeightFrom::SubstrateTop => datums.substrate_top - distance,
        HeightFrom::FrameTop => datums.frame_top - distance,
        HeightFrom::Floor => distance,
    }
}

fn words_of_depth(from: DepthFrom, face: Face) -> &'static str {
    match (from, face == Face::Back) {
        (DepthFrom::FinishedFace, false) => Datum::FinishedFace.words(),
        (DepthFrom::CounterEdge, false) => Datum::CounterEdge.words(),
        (DepthFrom::BoardFace, false) => Datum::BoardFace.words(),
        (DepthFrom::FrameFace, false) => Datum::FrameFace.words(),
        (DepthFrom::FinishedFace, true) => Datum::FinishedBack.words(),
        (DepthFrom::CounterEdge, true) => Datum::CounterBack.words(),
        (DepthFrom::BoardFace, true) => Datum::BoardBack.words(),
        (DepthFrom::FrameFace, true) => Datum::FrameBack.words(),
    }
}

fn words_of_height(from: HeightFrom) -> &'static str {
    match from {
        HeightFrom::CounterTop => Datum::CounterTop.words(),
        HeightFrom::SubstrateTop => Datum::SubstrateTop.words(),
        HeightFrom::FrameTop => Datum::FrameTop.words(),
        HeightFrom::Floor => Datum::Floor.words(),
    }
}

fn notch(
    fitting: &mut Fitting,
    datums: &Datums,
    substrate_front: Length,
    back: Length,
    bottom: Length,
    radius: Length,
) {
    let (x0, x1) = (fitting.left, fitting.right);
    let mut sheet = |plane, front: Length| {
        if back > front {
            let extent = Extent { x0, y0: front, x1, y1: back };
            let outline = extent.outline().rounded(|corner| if corner >= 2 { radius.mm() } else { 0.0 });
            fitting.cutouts.push(Cutout { plane, extent, outline, radius, open: true, round: false });
        }
    };
    sheet(Plane::Counter, datums.counter_front);
    sheet(Plane::Substrate, substrate_front);
    if bottom < datums.frame_top {
        let extent = Extent { x0, y0: bottom, x1, y1: datums.frame_top };
        let outline = extent.outline();
        fitting.cutouts.push(Cutout {
            plane: Plane::FrontBoard,
            extent,
            outline,
            radius: Length::ZERO,
            open: true,
            round: false,
        });
    }
    fitting.back = Some(back);
    fitting.bottom = Some(bottom);
}

fn well(fitting: &mut Fitting, front: Length, back: Length, radius: Length, round: bool) {
    let extent = Extent { x0: fitting.left, y0: front, x1: fitting.right, y1: back };
    let outline = if round {
        let (x, y) = ((extent.x0.mm() + extent.x1.mm()) / 2.0, (extent.y0.mm() + extent.y1.mm()) / 2.0);
        Outline::from_circle(x, y, extent.width().mm() / 2.0)
    } else {
        extent.outline().rounded(|_| radius.mm())
    };
    for plane in [Plane::Counter, Plane::Substrate] {
        fitting.cutouts.push(Cutout { plane, extent, outline: outline.clone(), radius, open: false, round });
    }
    fitting.front = Some(front);
    fitting.back = Some(back);
}

fn opening(fitting: &mut Fitting, bottom: Length, top: Length, radius: Length, to_floor: bool) {
    let extent = Extent { x0: fitting.left, y0: bottom, x1: fitting.right, y1: top };
    let outline = extent.outline().rounded(|corner| if to_floor && corner < 2 { 0.0 } else { radius.mm() });
    let plane = Plane::of(fitting.face);
    fitting.cutouts.push(Cutout { plane, extent, outline, radius, open: to_floor, round: false });
    fitting.bottom = Some(bottom);
    fitting.top = Some(top);
    fitting.to_floor = to_floor;
}

/// The body in leg coordinates: centred on its cutout across; behind its face, or centred in a well; hanging
/// from the counter's top, centred in an opening's height, or standing on the floor in a bay that reaches it.
fn body_box(fitting: &Fitting, body: &given::Body, datums: &Datums) -> BodyBox {
    let or = |measure: &Measure, other: Length| {
        if measure.value() > Length::ZERO { measure.value() } else { other }
    };
    let across = centred(fitting.centre(), or(&body.width, fitting.width()));
    let deep = body.depth.value();
    let z = match (fitting.kind, fitting.bottom, fitting.top) {
        (FittingKind::Opening(_), Some(_), Some(top)) if fitting.to_floor => (Length::ZERO, or(&body.height, top)),
        (FittingKind::Opening(_), Some(bottom), Some(top)) => {
            centred((bottom + top).half(), or(&body.height, top - bottom))
        }
        _ => {
            let hung = fitting.bottom.map_or(Length::ZERO, |bottom| datums.counter_top - bottom);
            (datums.counter_top - or(&body.height, hung), datums.counter_top)
        }
    };
    if let (FittingKind::Well, Some(front), Some(back)) = (fitting.kind, fitting.front, fitting.back) {
        return BodyBox { u: across, v: centred((front + back).half(), or(&body.depth, back - front)), z };
    }
    match fitting.face {
        Face::Front => BodyBox { u: across, v: (Length::ZERO, deep), z },
        Face::Back => BodyBox { u: across, v: (datums.finished_back - deep, datums.finished_back), z },
        Face::Left => BodyBox { u: (Length::ZERO, deep), v: across, z },
        Face::Right => BodyBox { u: (datums.finished_right - deep, datums.finished_right), v: across, z },
    }
}

/// A stretch of a width about its middle.
fn centred(middle: Length, width: Length) -> (Length, Length) {
    let low = middle - width.half();
    (low, low + width)
}

/// Every dimension of a fitting's sheet, by name.
fn measures(fitting: &given::Fitting) -> Vec<(&'static str, Measure)> {
    let mut all: Vec<(&'static str, &Measure)> = match &fitting.cut {
        Cut::Notch { width, depth, drop, .. } => vec![("width", width), ("depth", depth), ("drop", drop)],
        Cut::Well { shape: WellShape::Rectangle { width, depth, .. }, setback, .. } => {
            vec![("width", width), ("depth", depth), ("setback", setback)]
        }
        Cut::Well { shape: WellShape::Circle { diameter }, setback, .. } => {
            vec![("diameter", diameter), ("setback", setback)]
        }
        Cut::Opening { width, height, drop, .. } => {
            let mut all = vec![("width", width)];
            all.extend(height.as_ref().map(|height| ("height", height)));
            all.push(("drop", drop));
            all
        }
    };
    if let Some(body) = &fitting.body {
        let sides = [("body width", &body.width), ("body depth", &body.depth), ("body height", &body.height)];
        all.extend(sides.into_iter().filter(|(_, measure)| measure.published.or(measure.measured).is_some()));
    }
    all.into_iter().map(|(name, measure)| (name, measure.clone())).collect()
}
