//! Tolerances and cautions of the counter sheet.

use super::Task;
use crate::sheets::shelves::{self, Block};
use crate::units::Length;

const WIDTH: f64 = 166.0;

/// Tolerances, cautions, and how weights were worked out.
pub fn block<'a>(task: &Task<'_>) -> Block<'a> {
    shelves::noted(list(task), WIDTH, 0.0)
}

/// The notes: a lead word and a sentence each.
pub fn list(task: &Task<'_>) -> Vec<(String, String)> {
    let (show, counter, leg) = (task.show, &task.solved.counter, task.leg);
    let mut tolerances = vec![
        format!("outline \u{b1}{}", fine(task, counter.tolerance)),
        format!("cutouts \u{2212}0 +{}", fine(task, task.solved.tolerances.cut * 2)),
    ];
    if [&leg.left, &leg.right, &leg.back].iter().any(|bound| !bound.is_open()) {
        tolerances.push(format!("joint at a wall {}", fine(task, counter.wall_joint)));
    }
    if !leg.counter.seams.is_empty() {
        tolerances.push(format!("seam {}", fine(task, counter.seam_joint)));
    }
    let note = |lead: &str, text: String| (lead.to_owned(), text);
    let mut list = vec![
        note("Tolerances", format!("{}.", tolerances.join(", "))),
        note("First", "cut no opening before its fitting has been measured on site.".to_owned()),
        note("Datum", "red numbers start at a finished face; the open circle is where the tape starts.".to_owned()),
    ];
    let weights = &task.solved.shop.weights;
    list.push(note(
        "Lift",
        format!(
            "{} a person{}. Carry slabs on edge, cutouts up.",
            show.mass(weights.each()),
            if weights.lift_given { "" } else { " (from memory, verify)" }
        ),
    ));
    list.push(note(
        "Caution",
        "cutting concrete, stone or porcelain frees silica dust: cut wet or with extraction, wear breathing protection. \
         Local rules govern."
            .to_owned(),
    ));
    list
}

/// A small length that a rounding to the job's step would falsify is given to 1/64 in or to a tenth of a millimetre.
fn fine(task: &Task<'_>, length: Length) -> String {
    let show = task.show;
    if show.rounded(length) == length || show.system == crate::units::System::Millimetres && length.mm() >= 2.0 {
        return show.prose(length);
    }
    match show.system {
        crate::units::System::Millimetres => {
            let tenths = (length.mm() * 10.0).round() / 10.0;
            format!("{tenths} mm")
        }
        _ => {
            let count = (length.nm() + 198_437) / 396_875;
            let shared = 1i64 << count.trailing_zeros().min(6);
            format!("{}\u{2044}{}\u{2033}", count / shared, 64 / shared)
        }
    }
}
