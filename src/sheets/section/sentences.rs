//! The notes of a section, each worked out from its numbers.

use super::measure::finish_word;
use super::slice::Slice;
use crate::solve::{Datum, Look};
use crate::units::{Length, Show};

/// Lead word and sentence of each note.
pub fn notes(slice: &Slice, show: Show) -> Vec<(String, String)> {
    let mut all = Vec::new();
    let mut say = |lead: &str, sentence: String| all.push((lead.to_owned(), sentence));
    let build = slice.near.build;
    let line = if slice.is_notch() { slice.hole.1 } else { slice.hole.0 };
    let edge = if slice.is_notch() { slice.edge_words().1 } else { slice.edge_words().0 };
    let (board, frame) = (slice.near.at[1], slice.near.at[2]);
    if let Some(word) = finish_word(build) {
        let sentence = if frame > board {
            format!(
                "hold the tape on the board, {} to the {edge}, or on the bare frame, {}.",
                show.prose(line - board),
                show.prose(line - frame)
            )
        } else {
            format!("hold the tape on the bare frame, {} to the {edge}.", show.prose(line - frame))
        };
        say(&format!("Before the {word}"), sentence);
    }
    if frame > Length::ZERO {
        say("The mistake", mistake(slice, show));
    }
    let cut = |name: &str| !name.starts_with("body");
    let unmeasured: Vec<&str> = slice
        .fitting
        .measures
        .iter()
        .filter(|(name, measure)| cut(name) && measure.measured.is_none())
        .map(|(name, _)| *name)
        .collect();
    let check = if unmeasured.is_empty() {
        format!("where the tape starts. Check the cutout against the {} in hand.", slice.fitting.name)
    } else {
        format!("where the tape starts. Not measured yet: {}; do so before cutting.", unmeasured.join(", "))
    };
    if let Some(behind) = &slice.behind {
        let id = &behind.leg.id;
        say("Behind", format!("leg {id}, cut too; its counter lies {} over this one.", show.prose(behind.over(slice))));
    }
    say("Open circle", check);
    say("Caution", caution(slice).to_owned());
    all
}

/// What happens when the depth is held on the bare frame.
fn mistake(slice: &Slice, show: Show) -> String {
    let build = slice.near.at[2];
    let lap = slice.fitting.flange.far;
    let face = slice.depth_datums()[3].0;
    let frame = if face == Datum::FrameBack { "frame back" } else { "bare frame" };
    if slice.is_notch() {
        let wrong = format!("{} held on the {frame} cuts {} too deep: ", show.prose(slice.hole.1), show.prose(build));
        let left = if lap <= Length::ZERO {
            "no flange laps the back edge, so all of it stands open.".to_owned()
        } else if lap < build {
            format!("the {} flange leaves a {} gap.", show.prose(lap), show.prose(build - lap))
        } else if lap == build {
            format!("the {} flange ends on the cut edge and covers nothing.", show.prose(lap))
        } else {
            format!("only {} of the {} flange still bears.", show.prose(lap - build), show.prose(lap))
        };
        return wrong + &left;
    }
    let behind = slice.counter_edges.1 - slice.hole.1;
    let wrong =
        format!("{} held on the {frame} sets the well {} too far back", show.prose(slice.hole.0), show.prose(build));
    if behind > build {
        format!("{wrong}, {} from the counter\u{2019}s other edge.", show.prose(behind - build))
    } else {
        format!("{wrong}: it runs out of the counter, which has {} behind it.", show.prose(behind))
    }
}

/// Who decides where the work can hurt someone.
fn caution(slice: &Slice) -> &'static str {
    match slice.fitting.look {
        Look::Grill | Look::SideBurner if slice.fitting.needs.no_gas => {
            "heat: local code, the listing and the manual govern openings and clearances."
        }
        Look::Grill | Look::SideBurner => {
            "gas and heat: local code, the listing and the manual govern; gas by licensed trades only."
        }
        Look::Sink | Look::Faucet => "water, drain and power near them: local code governs; licensed trades only.",
        _ if slice.fitting.heat.is_some() => {
            "heat: local code and the appliance\u{2019}s manual govern; licensed trades only."
        }
        _ => "local code and the fitting\u{2019}s manual govern; gas and electrical work by licensed trades.",
    }
}
