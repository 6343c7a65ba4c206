//! Tables and notes of the ends sheet: openings from every face that a tape may be held to, and what the build-ups are made of.

use super::end::End;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::solve::{Bound, Build, Datum, Leg};
use crate::units::{Length, Show, System};

/// Width of a column of lengths, mm.
fn figures(show: Show, least: f64) -> f64 {
    if show.system == System::Both { figures_width(show, Length::from_inches(40.0)) } else { least }
}

/// The openings in both ends. What is given twice is given once where it would be wider than `room`, mm.
pub fn openings(ends: &[End; 2], show: Show, room: f64) -> Option<Table> {
    let figure = figures(show, 17.5);
    let datum = Datum::FinishedFace.words();
    let columns = vec![
        Column::words(11.0, "mark"),
        Column::words(28.0, "fitting"),
        Column::words(12.0, "end"),
        Column::figures(figure, "cut\nwidth"),
        Column::figures(figure, "cut\nheight"),
        Column::figures(figure.max(30.0), &format!("near edge from\n{datum}")).from_finished(),
        Column::figures(figure.max(20.0), "from\nbare frame"),
        Column::figures(figure.max(24.0), "top edge from\ncounter top"),
        Column::figures(figure, "from\nframe top"),
    ];
    let mut rows = Vec::new();
    for end in ends {
        let d = &end.leg.datums;
        for (_, fitting, cutout) in end.openings() {
            let e = cutout.extent;
            rows.push(vec![
                Cell::Bold(fitting.mark.clone()),
                Cell::words(fitting.name.clone()),
                Cell::words(if end.is_left() { "left" } else { "right" }),
                Cell::Figure(e.width()),
                Cell::Figure(e.height()),
                Cell::Finished(e.x0),
                Cell::Figure(e.x0 - d.frame_face),
                Cell::Figure(d.counter_top - e.y1),
                Cell::Figure(d.frame_top - e.y1),
            ]);
        }
    }
    let mut table = Table { columns, rows, breaks: Vec::new() };
    for spare in [8, 6, 2] {
        if table.width() > room {
            table.columns.remove(spare);
            table.rows.iter_mut().for_each(|row| {
                row.remove(spare);
            });
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// What is fixed to the frame, face by face.
pub fn build_ups(leg: &Leg, show: Show, width: f64) -> Table {
    let figure = figures(show, 18.0);
    let faces: [(&str, &Build, Option<&Bound>); 4] = [
        ("front", &leg.front_build, None),
        ("left end", &leg.left_build, Some(&leg.left)),
        ("right end", &leg.right_build, Some(&leg.right)),
        ("back", &leg.back_build, Some(&leg.back)),
    ];
    let none = |bound: Option<&Bound>| match bound {
        Some(bound) if !bound.is_open() && !bound.name.is_empty() => format!("none, {}", bound.name),
        _ => "none".to_owned(),
    };
    let finish = |build: &Build, bound: Option<&Bound>| {
        build.finish.as_ref().map_or_else(|| none(bound), |finish| finish.name.clone())
    };
    let board = |build: &Build| if build.board > Length::ZERO { build.board_name.clone() } else { "none".to_owned() };
    let widest = |words: Vec<String>| {
        words.iter().map(|text| lettering::width(text, BODY, Weight::Regular)).fold(8.0, f64::max) + 3.0
    };
    let finishes = widest(faces.iter().map(|(_, build, bound)| finish(build, *bound)).collect());
    let boards = widest(faces.iter().map(|(_, build, _)| board(build)).collect());
    // Names take what they need, in proportion where that is too much.
    let room = (width - 19.0 - figure * 3.0).max(30.0);
    let share = room / (finishes + boards);
    let columns = vec![
        Column::words(19.0, "face"),
        Column::words(finishes * share, "finish"),
        Column::words(boards * share, "board"),
        Column::figures(figure, "finish"),
        Column::figures(figure, "board"),
        Column::figures(figure, "build-up"),
    ];
    let row = |(name, build, bound): &(&str, &Build, Option<&Bound>)| {
        vec![
            Cell::words(*name),
            Cell::words(finish(build, *bound)),
            Cell::words(board(build)),
            Cell::Figure(build.finish_thickness()),
            Cell::Figure(build.board),
            Cell::Key(build.total()),
        ]
    };
    let rows = faces.iter().map(row).collect();
    Table { columns, rows, breaks: Vec::new() }
}

/// Lead words and sentences.
pub fn notes(ends: &[End; 2], show: Show) -> Vec<(String, String)> {
    let mut all = Vec::new();
    let mut say = |lead: &str, text: String| all.push((lead.to_owned(), text));
    let build = ends[0].leg.datums.frame_face;
    let cut = ends.iter().any(|end| !end.is_covered() && !end.openings().is_empty());
    if build > Length::ZERO && cut {
        let lead = if ends[0].leg.front_build.finish.is_some() { "Before the finish" } else { "Before the boards" };
        say(lead, format!("what is given from the finished face is {} less from the bare frame.", show.prose(build)));
    }
    say("Floor", floor(ends, show));
    if ends.iter().any(|end| !end.is_covered())
        && (ends[0].leg.front_build.finish.is_some() || ends[0].leg.back_build.finish.is_some())
    {
        say("Pale strips", "finish on the long faces, not there when the end boards are cut.".to_owned());
    }
    say("Open circle", "where the tape starts. Check every opening against the fitting in hand.".to_owned());
    if cut {
        say("Caution", "vents and gas: local code and the appliance\u{2019}s manual govern sizes and heights; licensed trades only.".to_owned());
    } else {
        say(
            "Caution",
            "local code and the fittings\u{2019} manuals govern; gas and electrical work by licensed trades."
                .to_owned(),
        );
    }
    all
}

/// How the floor falls across the frame under each end.
fn floor(ends: &[End; 2], show: Show) -> String {
    let d = &ends[0].leg.datums;
    let falls = ends.map(|end| show.rounded(Length::from_mm(end.floor(d.frame_back) - end.floor(d.frame_face))));
    let way = |fall: Length| match fall {
        fall if fall > Length::ZERO => format!("{} towards the front", show.prose(fall)),
        fall if fall < Length::ZERO => format!("{} towards the back", show.prose(fall.abs())),
        _ => "nothing".to_owned(),
    };
    match falls {
        [left, right] if left == right && left == Length::ZERO => "level across the frame at both ends.".to_owned(),
        [left, right] if left == right => format!("falls {} across the frame.", way(left)),
        [left, right] => format!("falls {} at the left end, {} at the right.", way(left), way(right)),
    }
}
