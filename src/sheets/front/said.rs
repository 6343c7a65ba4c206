//! The notes under the schedule: what the drawing can't say, and the caution.

use super::elevation::Elevation;
use super::stops::opens_up;
use crate::findings::Severity;
use crate::solve::{Bound, Datum};

/// Notes of an elevation, lead word and sentence, the caution last. Where the schedule has not the sizes in the frame
/// they are said here.
pub fn notes(e: &Elevation<'_>, has_frame: bool) -> Vec<(String, String)> {
    let mut notes = Vec::new();
    let mut say = |lead: &str, sentence: String| notes.push((lead.to_owned(), sentence));
    if e.from_behind() {
        say(
            "Seen from behind",
            "left and right on this sheet are those of someone who stands behind the run.".to_owned(),
        );
    }
    let d = &e.leg.datums;
    let show = e.show;
    for (_, fitting) in e.fittings() {
        let Some(cutout) = fitting.cutout(e.facing.plane()) else { continue };
        if opens_up(fitting, &e.facing) {
            let (counter, frame) = (d.drop(Datum::CounterTop, cutout.extent.y0), d.drop(Datum::FrameTop, cutout.extent.y0));
            say(
                &fitting.mark,
                format!("is open at the top: its bottom lies {} down from the counter top, {} from the frame top.", show.prose(counter), show.prose(frame)),
            );
        } else if fitting.to_floor {
            let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
            let high = |x: crate::units::Length| {
                show.prose(cutout.extent.y1 - crate::units::Length::from_mm(e.floor.height(x.mm())))
            };
            say(&fitting.mark, format!("is {} high at its left edge, {} at its right, down to the floor as drawn.", high(x0), high(x1)));
        }
    }
    if !has_frame {
        let gap = show.prose(e.set.solved.frame.rough_gap);
        say("In the frame", format!("openings are {gap} larger on every closed side than in the board."));
    }
    let (near, far) = e.facing.bounds(e.leg);
    for (on_page, bound, finished) in [(e.part.first, near, e.facing.near()[0]), (e.part.last, far, e.facing.far()[0])] {
        if on_page && !bound.is_open() {
            say("Clear of it", clear_of(e, bound, finished));
        }
    }
    let mut drawn = "bare frame behind the boards.".to_owned();
    if d.board_left != crate::units::Length::ZERO || d.board_right != d.finished_right {
        drawn += " Pale end strips: finish, not there yet.";
    }
    if e.set.solved.trim.is_some() {
        drawn += " Dashed: top of the base trim.";
    }
    say("Grey lines", drawn);
    let stopping = e.set.concerning(e.kind).iter().any(|(_, finding)| finding.severity == Severity::Stop);
    let check = if stopping { "Findings stop this sheet: don\u{2019}t cut from it." } else { "Check every opening against the fitting in hand before cutting." };
    say("Open circle", format!("where the tape starts. {check}"));
    say("Caution", "local code and the fittings\u{2019} manuals govern; gas, power and water by licensed trades.".to_owned());
    notes
}

fn clear_of(e: &Elevation<'_>, bound: &Bound, finished: Datum) -> String {
    let at = e.leg.datums.at(finished);
    let (foot, head) = ((bound.at - at).abs(), (bound.at_counter - at).abs());
    let (show, name) = (e.show, if bound.name.is_empty() { "what stands there" } else { &bound.name });
    if foot == head {
        format!("the {} stands {} from the {name}.", finished.words(), show.prose(foot))
    } else {
        format!("the {} stands {} from the {name} at the floor, {} at the counter top.", finished.words(), show.prose(foot), show.prose(head))
    }
}
