//! Two cutouts of one sheet that meet, or nearly; and a cutout that leaves a sliver at the counter's edge.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{Cutout, Extent, Fitting, Leg, Plane, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cutouts-keep-a-strip-between-them",
    severity: Severity::Stop,
    about: "Between two cutouts of one sheet, and between a cutout and the counter's edge or a notch in it, the least strip is left.",
    why: "A narrow strip breaks while the sheet is cut, carried or screwed down.",
    instead: "move the fittings apart, or choose one of them smaller",
    origin: Origin::CommonPractice,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    solved.legs.iter().flat_map(|leg| [between(solved, leg), beside(solved, leg)].concat()).collect()
}

/// Pairs of cutouts in one plane, each pair once for all planes: the gravest.
fn between(solved: &Solved, leg: &Leg) -> Vec<Finding> {
    let least = solved.tolerances.least_strip;
    let mut narrowest: std::collections::BTreeMap<(usize, usize), (Length, Plane)> = Default::default();
    for plane in [Plane::Counter, Plane::FrontBoard, Plane::BackBoard, Plane::LeftBoard, Plane::RightBoard] {
        let mut cuts: Vec<(usize, &Cutout)> = leg
            .fittings
            .iter()
            .enumerate()
            .filter_map(|(index, fitting)| fitting.cutout(plane).map(|cutout| (index, cutout)))
            .collect();
        cuts.sort_by_key(|(_, cutout)| cutout.extent.x0);
        for (at, (first, a)) in cuts.iter().enumerate() {
            for (second, b) in
                cuts[at + 1..].iter().take_while(|(_, b)| b.extent.x0 - a.extent.x1 < least.max(Length::from_nm(1)))
            {
                let strip = strip(a, b);
                let pair = (*first.min(second), *first.max(second));
                let narrower = narrowest.get(&pair).is_none_or(|(known, _)| strip < *known);
                if (strip < least || strip <= Length::ZERO) && narrower {
                    narrowest.insert(pair, (strip, plane));
                }
            }
        }
    }
    let told = |((first, second), (strip, plane)): ((usize, usize), (Length, Plane))| {
        let (a, b) = (&leg.fittings[first], &leg.fittings[second]);
        tell(solved, a, named(b), strip, plane)
    };
    narrowest.into_iter().map(told).collect()
}

/// Cutouts near the counter's edges. A notch is meant to be open at the front.
fn beside(solved: &Solved, leg: &Leg) -> Vec<Finding> {
    let whole = &leg.counter.extent;
    let mut findings = Vec::new();
    for fitting in &leg.fittings {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        let cut = cutout.extent;
        let mut strips = vec![
            (cut.x0 - whole.x0, "the counter's left edge"),
            (whole.x1 - cut.x1, "the counter's right edge"),
            (whole.y1 - cut.y1, "the counter's back edge"),
        ];
        if !cutout.open {
            strips.push((cut.y0 - whole.y0, "the counter's front edge"));
        }
        for notch in &leg.notches {
            let (strip, name) = (apart(cutout, &notch.extent), format!("the counter's notch, {}", notch.name));
            // One that it meets is refused before anything is drawn.
            if strip > Length::ZERO && strip < solved.tolerances.least_strip {
                findings.push(tell(solved, fitting, name, strip, Plane::Counter));
            }
        }
        // Past the edge altogether is the business of cutout-stays-in-its-board.
        let narrow =
            strips.into_iter().filter(|(strip, _)| *strip > Length::ZERO && *strip < solved.tolerances.least_strip);
        if let Some((strip, edge)) = narrow.min() {
            findings.push(tell(solved, fitting, edge.to_owned(), strip, Plane::Counter));
        }
    }
    findings
}

fn tell(solved: &Solved, fitting: &Fitting, other: String, strip: Length, plane: Plane) -> Finding {
    let sheet = plane.word().replace('-', " ");
    let (least, plain) = (solved.tolerances.least_strip, |length| solved.show.plain(length));
    let (severity, message) = if strip <= Length::ZERO {
        let by = if strip < Length::ZERO { format!(" by {}", plain(-strip)) } else { String::new() };
        (
            Severity::Stop,
            format!("{} and {other} meet in the {sheet}{by}; {} is wanted between them", named(fitting), plain(least)),
        )
    } else {
        let found = plain(strip);
        (
            Severity::Warn,
            format!(
                "{} and {other} leave a strip of {found} in the {sheet}; {} is wanted",
                named(fitting),
                plain(least)
            ),
        )
    };
    let instead = format!("move them at least {} farther apart", plain(least - strip));
    RULE.finding(severity, fitting.subject(), fitting.place.as_ref(), message, instead)
}

/// Width of the material between two cutouts; negative by how far they overlap.
fn strip(a: &Cutout, b: &Cutout) -> Length {
    if a.round && b.round {
        let centre = |e: &Extent| (e.x0.mm() + e.x1.mm(), e.y0.mm() + e.y1.mm());
        let ((ax, ay), (bx, by)) = (centre(&a.extent), centre(&b.extent));
        let apart = (ax - bx).hypot(ay - by) / 2.0;
        return Length::from_mm(apart) - a.extent.width().half() - b.extent.width().half();
    }
    boxes(&a.extent, &b.extent)
}

/// Width of the material between a cutout and a box; a round one's from its rim.
fn apart(cutout: &Cutout, other: &Extent) -> Length {
    if !cutout.round {
        return boxes(&cutout.extent, other);
    }
    let (x, y) = (cutout.extent.centre_x(), cutout.extent.centre_y());
    boxes(&Extent { x0: x, y0: y, x1: x, y1: y }, other) - cutout.extent.width().half()
}

fn boxes(a: &Extent, b: &Extent) -> Length {
    let zero = Length::ZERO;
    let (dx, dy) = ((b.x0 - a.x1).max(a.x0 - b.x1), (b.y0 - a.y1).max(a.y0 - b.y1));
    if dx > zero && dy > zero { Length::from_mm(dx.mm().hypot(dy.mm())) } else { dx.max(dy) }
}
