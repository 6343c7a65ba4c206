//! The notes under the schedule: what the drawing can't say, and the caution.

use super::elevation::Elevation;
use super::meeting::{Meeting, Way};
use super::stops::opens_up;
use crate::findings::Severity;
use crate::sheets::board_joints;
use crate::solve::{Bound, Datum};
use crate::units::Length;

/// Notes of an elevation, lead word and sentence, the caution last. Where the schedule has not the sizes in the frame
/// they are said here.
pub fn notes(e: &Elevation<'_>, has_frame: bool) -> Vec<(String, String)> {
    let mut notes = Vec::new();
    let mut say = |lead: &str, sentence: String| notes.push((lead.to_owned(), sentence));
    if e.is_behind() {
        say(
            "Seen from behind",
            "left and right on this sheet are those of someone who stands behind the run.".to_owned(),
        );
    }
    let d = &e.leg.datums;
    let show = e.show;
    for (counter, frame, marks) in open_at_top(e) {
        let (counter, frame) = (show.prose(counter), show.prose(frame));
        say(
            "Open at the top",
            format!("{}: bottom {counter} down from the counter top, {frame} from the frame top.", marks.join(", ")),
        );
    }
    if let Some(sentence) = bays(e) {
        say("To the floor", sentence);
    }
    if !has_frame {
        let gap = show.prose(e.set.solved.frame.rough_gap);
        say("In the frame", format!("openings are {gap} larger on every closed side than in the board."));
    }
    let (near, far) = e.bounds();
    let sides = [(e.part.first, near, e.facing.near()[0]), (e.part.last, far, e.facing.far()[0])];
    for ((on_page, bound, finished), meeting) in sides.into_iter().zip(&e.meetings) {
        if let Some(meeting) = meeting.as_ref().filter(|_| on_page) {
            say(if meeting.way == Way::On { "Step" } else { "Fold" }, folded(e, meeting));
        } else if on_page && !bound.is_open() {
            say("Clear of it", clear_of(e, bound, finished));
        }
    }
    let mut drawn = "bare frame behind the boards.".to_owned();
    if d.board_left != Length::ZERO || d.board_right != d.finished_right {
        drawn += " Pale end strips: finish, not there yet.";
    }
    if e.set.solved.trim.is_some() {
        drawn += " Dashed: top of the base trim.";
    }
    say("Grey lines", drawn);
    let gap = e.set.solved.shop.cutting.laying.gap;
    if gap > Length::ZERO && !board_joints::seen(e.set.solved, e.leg_index, e.facing.face).is_empty() {
        say(
            "Joints",
            format!("a board larger than its sheet is in pieces, {} apart: see the board templates.", show.prose(gap)),
        );
    }
    let stopping = e.set.concerning(e.kind).iter().any(|(_, finding)| finding.severity == Severity::Stop);
    let check = if stopping {
        "Findings stop this sheet: don\u{2019}t cut from it."
    } else {
        "Check every opening against the fitting in hand before cutting."
    };
    say("Open circle", format!("where the tape starts. {check}"));
    say(
        "Caution",
        "local code and the fittings\u{2019} manuals govern; gas, power and water by licensed trades.".to_owned(),
    );
    notes
}

/// Openings that are open at the top, those of one depth together: drops of their bottoms from the counter's top and
/// from the frame's, and their marks.
fn open_at_top<'s>(e: &Elevation<'s>) -> Vec<(Length, Length, Vec<&'s str>)> {
    let d = &e.leg.datums;
    let mut groups: Vec<(Length, Length, Vec<&str>)> = Vec::new();
    for (_, fitting) in e.fittings().filter(|(_, fitting)| opens_up(fitting, &e.facing)) {
        let Some(cutout) = fitting.cutout(e.facing.plane()) else { continue };
        let (counter, frame) = (d.drop(Datum::CounterTop, cutout.extent.y0), d.drop(Datum::FrameTop, cutout.extent.y0));
        match groups.iter_mut().find(|group| group.0 == counter) {
            Some(group) => group.2.push(&fitting.mark),
            None => groups.push((counter, frame, vec![&fitting.mark])),
        }
    }
    groups
}

/// Heights of the bays that reach the floor, at both edges; their range where there are many.
fn bays(e: &Elevation<'_>) -> Option<String> {
    let show = e.show;
    let heights: Vec<(&str, Length, Length)> = e
        .fittings()
        .filter(|(_, fitting)| fitting.to_floor)
        .filter_map(|(_, fitting)| {
            let cutout = fitting.cutout(e.facing.plane())?;
            let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
            let high = |x: Length| cutout.extent.y1 - Length::from_mm(e.floor.height(x.mm()));
            Some((fitting.mark.as_str(), high(x0), high(x1)))
        })
        .collect();
    let least = heights.iter().map(|bay| bay.1.min(bay.2)).min()?;
    let most = heights.iter().map(|bay| bay.1.max(bay.2)).max()?;
    if heights.len() > 4 {
        return Some(format!(
            "bays are {} to {} high, down to the floor as drawn.",
            show.prose(least),
            show.prose(most)
        ));
    }
    let bay = |(mark, left, right): &(&str, Length, Length)| {
        if show.rounded(*left) == show.rounded(*right) {
            format!("{mark} is {} high", show.prose(*left))
        } else {
            format!("{mark} is {} high at its left edge, {} at its right", show.prose(*left), show.prose(*right))
        }
    };
    let all: Vec<String> = heights.iter().map(bay).collect();
    Some(format!("{}, down to the floor as drawn.", all.join("; ")))
}

/// What a fold or a step means for the builder.
fn folded(e: &Elevation<'_>, meeting: &Meeting<'_>) -> String {
    let side = if meeting.out > 0.0 { "right" } else { "left" };
    let id = &meeting.other.id;
    match meeting.way {
        Way::On => format!(
            "at {side} leg {id} goes on at another height; the higher leg\u{2019}s clad side is the finished end."
        ),
        Way::Away => format!(
            "at {side} the run turns away from the viewer, to leg {id}; the line is where the finished faces meet."
        ),
        Way::Towards => {
            let frame = e.facing.datum(e.leg, if meeting.out > 0.0 { e.facing.far()[2] } else { e.facing.near()[2] });
            let blind = if meeting.out > 0.0 { frame - meeting.fold } else { meeting.fold - frame };
            let hidden = if blind > Length::ZERO {
                format!("; the frame goes on {} behind it, dashed", e.show.prose(blind))
            } else {
                String::new()
            };
            format!(
                "at {side} leg {id} comes towards the viewer and is cut; the line is where the finished faces meet{hidden}."
            )
        }
    }
}

fn clear_of(e: &Elevation<'_>, bound: &Bound, finished: Datum) -> String {
    let at = e.leg.datums.at(finished);
    let (foot, head) = ((bound.at - at).abs(), (bound.at_counter - at).abs());
    let (show, name) = (e.show, if bound.name.is_empty() { "what stands there" } else { &bound.name });
    if foot == head {
        format!("the {} stands {} from the {name}.", finished.words(), show.prose(foot))
    } else {
        format!(
            "the {} stands {} from the {name} at the floor, {} at the counter top.",
            finished.words(),
            show.prose(foot),
            show.prose(head)
        )
    }
}
