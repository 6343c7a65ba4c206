//! How the sheet lies, is screwed down, and what to beware of.

use super::{Task, screws, supports};
use crate::sheets::set::Kind;
use crate::sheets::shelves::{self, Block};
use crate::solve::Support;
use crate::units::Length;

/// Lead words of what lies under the sheet.
pub const TINTED: &str = "Tinted";
/// See [`TINTED`].
pub const BRACKETS: &str = "Brackets";
const WIDTH: f64 = 166.0;

/// The notes as a block.
pub fn block<'a>(task: &Task<'_>) -> Block<'a> {
    of(list(task))
}

/// A list of notes as a block.
pub fn of<'a>(list: Vec<(String, String)>) -> Block<'a> {
    shelves::noted(list, WIDTH, 0.0)
}

/// What is added to the frame under the sheet, and what of the sheet's underside brackets take.
pub fn under(task: &Task<'_>) -> Vec<(String, String)> {
    let marks = |all: Vec<&Support>| {
        let marks: Vec<&str> = all.iter().map(|one| one.mark.as_str()).collect();
        crate::sheets::supports::marks(&marks)
    };
    let mut list = Vec::new();
    let all: Vec<&Support> = supports::under(task.solved, task.index).collect();
    let Some(sheet) = task.set.number(Kind::Supports).filter(|_| !all.is_empty()) else { return list };
    let text = format!("supports under the sheet, {}; their places are on sheet {sheet}.", marks(all));
    list.push((TINTED.to_owned(), text));
    let brackets = supports::brackets(task.solved, task.index);
    if let Some(first) = brackets.first() {
        let section = &first.section;
        let text = format!(
            "{}, {section}: rout them into the sheet's underside, so that it lies flat on the frame; drill them where screws cross.",
            marks(brackets)
        );
        list.push((BRACKETS.to_owned(), text));
    }
    list
}

/// The notes: a lead word and a sentence each.
pub fn list(task: &Task<'_>) -> Vec<(String, String)> {
    let (show, leg, sheet) = (task.show, task.leg, task.leg.substrate.extent);
    let note = |lead: &str, text: String| (lead.to_owned(), text);
    let material = format!("{}, {} thick.", task.solved.substrate.name, show.prose(task.solved.substrate.thickness));
    let lies = match sheet.y0 {
        held if held == leg.datums.frame_face => "flush with the bare frame".to_owned(),
        held if held == leg.datums.board_face => "flush with the board face".to_owned(),
        held if held == Length::ZERO => "flush with the finished face".to_owned(),
        held => format!("{} behind the finished face", show.prose(held)),
    };
    let mut list = vec![
        note("Material", material),
        note("Lies", format!("on the bare frame, shown in grey dashes; its front edge {lies}.")),
    ];
    list.extend(under(task));
    if !leg.substrate.joints.is_empty() {
        list.push(note("Joints", "over a frame, both edges carried.".to_owned()));
    }
    list.push(note(
        "Screws",
        format!(
            "on the chain lines, {} apart at most, {} from edges and cutouts; common practice.",
            show.prose(screws::apart(show)),
            show.prose(screws::keep_off(show))
        ),
    ));
    list.push(note(
        "Datum",
        "red numbers start at a finished face, which is not there yet; black ones at the sheet.".to_owned(),
    ));
    list.push(note("First", "cut no opening before its fitting has been measured on site.".to_owned()));
    let cement = task.solved.substrate.name.to_lowercase().contains("cement");
    let dust = if cement {
        "cutting cement sheet frees silica dust: score and snap, or cut with extraction; wear breathing protection. Local rules govern."
    } else {
        "cutting sheets makes dust: cut with extraction, wear eye and breathing protection. Cement sheet frees silica. Local rules govern."
    };
    list.push(note("Caution", dust.to_owned()));
    list
}
