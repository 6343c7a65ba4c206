//! Where each fitting stands along its face.
//!
//! Datums are named as the cook sees the leg, whichever face a fitting is set into: the finished left end is
//! one place. A fitting's own left and right are as the viewer of its own face sees them: on the back
//! and on the left end, whose viewer sees the coordinate run the other way, its left edge is the
//! one with the greater u or v. Results are always coordinates, the smaller first.

use super::{Datums, Face, Module};
use crate::findings::Problem;
use crate::parameters::given::{AcrossFrom, AcrossLine, Cut, Fitting, WellShape};
use crate::units::Length;

/// The leg that a fitting is located in.
pub struct Row<'a> {
    /// Its datums.
    pub datums: &'a Datums,
    /// Its modules.
    pub modules: &'a [Module],
}

/// Whether the viewer of a face sees its coordinate (u, or v on an end) run from right to left.
pub const fn runs_backwards(face: Face) -> bool {
    matches!(face, Face::Back | Face::Left)
}

/// Width of a fitting's cutout along its face.
pub fn width(fitting: &Fitting) -> Length {
    match &fitting.cut {
        Cut::Notch { width, .. } | Cut::Opening { width, .. } => width.value(),
        Cut::Well { shape: WellShape::Rectangle { width, .. }, .. } => width.value(),
        Cut::Well { shape: WellShape::Circle { diameter }, .. } => diameter.value(),
    }
}

/// The two edges of every fitting's cutout, by its index. `rows` are the legs that could be laid out.
///
/// Errors: a fitting aligned with itself through others, with one of another leg, or with one whose face
/// runs the other way; a datum that its face doesn't have.
pub fn across(fittings: &[Fitting], rows: &[Option<Row>]) -> Vec<Result<(Length, Length), Option<Problem>>> {
    let mut centres: Vec<Option<Result<Length, Option<Problem>>>> = vec![None; fittings.len()];
    for start in 0..fittings.len() {
        // Follow the chain of alignments to one that stands by itself, then locate back along it.
        let mut chain = vec![start];
        while let Some(&last) = chain.last()
            && centres[last].is_none()
            && let AcrossFrom::Fitting(next) = fittings[last].across.from
            && next < fittings.len()
        {
            if let Some(first) = chain.iter().position(|&index| index == next) {
                let names: Vec<&str> = chain[first..].iter().map(|&index| fittings[index].id.as_str()).collect();
                let problem = Problem {
                    message: format!("fittings are aligned with one another in a ring: {}", names.join(", ")),
                    instead: "place one of them from a module or an end".to_owned(),
                    place: fittings[next].place.clone(),
                };
                centres[next] = Some(Err(Some(problem)));
                break;
            }
            chain.push(next);
        }
        for &index in chain.iter().rev() {
            if centres[index].is_none() {
                centres[index] = Some(centre(index, fittings, rows, &centres));
            }
        }
    }
    fittings
        .iter()
        .zip(centres)
        .map(|(fitting, centre)| {
            centre.unwrap_or(Err(None)).map(|centre| {
                let left = centre - width(fitting).half();
                (left, left + width(fitting))
            })
        })
        .collect()
}

/// The centreline of one fitting; `Err(None)` when something else that was already said prevents it.
fn centre(
    index: usize,
    fittings: &[Fitting],
    rows: &[Option<Row>],
    centres: &[Option<Result<Length, Option<Problem>>>],
) -> Result<Length, Option<Problem>> {
    let fitting = &fittings[index];
    let refuse = |message: String, instead: &str| {
        Err(Some(Problem { message, instead: instead.to_owned(), place: fitting.place.clone() }))
    };
    let Some(Some(row)) = rows.get(fitting.leg) else { return Err(None) };
    let Some(module) = row.modules.get(fitting.module) else { return Err(None) };
    let d = row.datums;
    let on_end = matches!(fitting.face, Face::Left | Face::Right);
    // The datum, and whether distances run to the left of it.
    let (datum, leftwards) = match fitting.across.from {
        AcrossFrom::Fitting(other) => {
            let Some(target) = fittings.get(other) else {
                return refuse(
                    format!("{} is aligned with a fitting that isn't there", fitting.id),
                    "name a fitting of the same leg",
                );
            };
            let their_end = matches!(target.face, Face::Left | Face::Right);
            if target.leg != fitting.leg || their_end != on_end {
                return refuse(
                    format!("{} is aligned with {}, which is on another leg or round a corner", fitting.id, target.id),
                    "align it with a fitting of the same leg and of a face that runs the same way",
                );
            }
            match centres[other] {
                Some(Ok(centre)) => (centre, false),
                _ => return Err(None),
            }
        }
        AcrossFrom::ModuleCentre if on_end => ((d.frame_face + d.frame_back).half(), false),
        AcrossFrom::FinishedFace if on_end => (Length::ZERO, false),
        _ if on_end => {
            return refuse(
                format!("{} is set into an end, and is placed from something along the face", fitting.id),
                "place it from the finished face, or from the module's centre",
            );
        }
        AcrossFrom::FinishedFace => {
            return refuse(
                format!("{} is placed along the face from the finished face itself", fitting.id),
                "place it from a module or from an end",
            );
        }
        AcrossFrom::ModuleCentre => (module.centre(), false),
        AcrossFrom::ModuleLeft => (module.left, false),
        AcrossFrom::ModuleRight => (module.right, true),
        AcrossFrom::FinishedLeft => (Length::ZERO, false),
        AcrossFrom::FinishedRight => (d.finished_right, true),
        AcrossFrom::FrameLeft => (d.frame_left, false),
        AcrossFrom::FrameRight => (d.frame_right, true),
        AcrossFrom::BoardLeft => (d.board_left, false),
        AcrossFrom::BoardRight => (d.board_right, true),
    };
    let distance = fitting.across.distance.value();
    let line = if leftwards { datum - distance } else { datum + distance };
    // Half of an odd number of nanometres is rounded once, in the centre, so that both edges keep the width.
    let half = width(fitting).half();
    let low_edge_is_left = !runs_backwards(fitting.face);
    Ok(match (fitting.across.line, low_edge_is_left) {
        (AcrossLine::Centre, _) => line,
        (AcrossLine::LeftEdge, true) | (AcrossLine::RightEdge, false) => line + half,
        (AcrossLine::RightEdge, true) | (AcrossLine::LeftEdge, false) => line - width(fitting) + half,
    })
}
