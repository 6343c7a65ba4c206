//! What is listed beside a joined sheet: corners, edges, finished faces, squareness, seams.

use super::joined::Joined;
use super::seams;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::sheets::view::number;
use crate::solve::{Edge, EdgeKind, JointKind, Slab};
use crate::units::Length;

pub fn wide(set: &Set<'_>) -> f64 {
    figures_width(set.solved.show, Length::from_mm(9999.0)) + 3.0
}

/// A column of lengths from a finished face: wide enough for its heading with the flag, and for lengths before the face
/// in both readings.
fn flagged(set: &Set<'_>, heading: &str) -> Column {
    let minus = lettering::width("\u{2212}", BODY, Weight::SemiBold);
    Column::figures((wide(set) + 2.0 * minus).max(30.0), heading).from_finished()
}

fn long(edge: &Edge) -> Length {
    Length::from_mm((edge.to.0 - edge.from.0).mm().hypot((edge.to.1 - edge.from.1).mm()))
}

/// The angle of the material at a corner, degrees.
fn angle(before: &Edge, after: &Edge) -> f64 {
    let way = |edge: &Edge| ((edge.to.0 - edge.from.0).mm(), (edge.to.1 - edge.from.1).mm());
    let (a, b) = (way(before), way(after));
    let turn = (a.0 * b.1 - a.1 * b.0).atan2(a.0 * b.0 + a.1 * b.1);
    180.0 - turn.to_degrees()
}

pub fn degrees(value: f64) -> String {
    format!("{}\u{b0}", number((value * 10.0).round() / 10.0, 1))
}

/// Every corner from the first leg's finished left end and finished face, its angle, and the edge to the next one.
pub fn corners(set: &Set<'_>, slab: &Slab) -> Table {
    let columns = vec![
        Column::words(9.0, "no."),
        flagged(set, "right of the\nfinished end"),
        flagged(set, "behind the\nfinished face"),
        Column::right(14.0, "angle"),
        Column::figures(wide(set).max(20.0), "to the next"),
        Column::words(33.0, "edge"),
    ];
    let count = slab.edges.len();
    let row = |(index, edge): (usize, &Edge)| {
        vec![
            Cell::Bold((index + 1).to_string()),
            Cell::Figure(edge.from.0),
            Cell::Figure(edge.from.1),
            Cell::Words(degrees(angle(&slab.edges[(index + count - 1) % count], edge))),
            Cell::Key(long(edge)),
            Cell::Grey(words(edge).to_owned()),
        ]
    };
    Table { columns, rows: slab.edges.iter().enumerate().map(row).collect(), breaks: Vec::new() }
}

/// A triangle for each corner: so far along both faces, so far between the marks.
pub fn squareness(set: &Set<'_>, slab: &Slab) -> Table {
    let inches = set.solved.show.system != crate::units::System::Millimetres;
    let (three, four) = if inches {
        (Length::from_inches(36.0), Length::from_inches(48.0))
    } else {
        (Length::from_mm(900.0), Length::from_mm(1200.0))
    };
    let columns = vec![
        Column::words(34.0, "between legs"),
        Column::right(14.0, "angle"),
        Column::figures(wide(set).max(18.0), "along one"),
        Column::figures(wide(set).max(17.0), "along the\nother"),
        Column::figures(wide(set).max(18.0), "between\nthe marks"),
    ];
    let joints =
        set.solved.joints.iter().filter(|joint| slab.legs.contains(&joint.left) && slab.legs.contains(&joint.right));
    let rows = joints
        .filter_map(|joint| {
            let JointKind::Corner(corner) = &joint.kind else { return None };
            let angle = std::f64::consts::PI - corner.turn.abs();
            let (a, b) = (three.mm(), four.mm());
            let between = Length::from_mm((a * a + b * b - 2.0 * a * b * angle.cos()).sqrt());
            let (left, right) = (&set.solved.legs[joint.left].id, &set.solved.legs[joint.right].id);
            Some(vec![
                Cell::Words(format!("{left}, {right}")),
                Cell::Words(degrees(angle.to_degrees())),
                Cell::Figure(three),
                Cell::Figure(four),
                Cell::Key(between),
            ])
        })
        .collect();
    Table { columns, rows, breaks: Vec::new() }
}

/// The finished face of each leg: what a tape can check once the run is clad.
pub fn faces(set: &Set<'_>, slab: &Slab) -> Table {
    let columns = vec![
        Column::words(30.0, "leg"),
        Column::figures(wide(set).max(30.0), "length of the\nfinished face").from_finished(),
        Column::figures(wide(set).max(23.0), "face to\nbare frame"),
        Column::figures(wide(set).max(24.0), "face to\nfinished back"),
    ];
    let rows = slab.legs.iter().filter_map(|&leg| set.solved.legs.get(leg)).map(|leg| {
        let d = &leg.datums;
        vec![
            Cell::Words(leg.id.clone()),
            Cell::Finished(d.finished_right),
            Cell::Figure(d.frame_face),
            Cell::Figure(d.finished_back),
        ]
    });
    Table { columns, rows: rows.collect(), breaks: Vec::new() }
}

/// The seams by their letters.
pub fn seams(sheet: &Joined<'_>) -> Table {
    let set = sheet.set;
    let columns = vec![
        Column::words(12.0, "seam"),
        Column::words(64.0, "where"),
        Column::words(16.0, "kind"),
        Column::figures(wide(set), "length"),
        Column::figures(wide(set).clamp(18.0, 22.0), "joint"),
    ];
    let rows = seams::all(sheet).into_iter().map(|seam| {
        vec![
            Cell::Bold(seam.letter),
            Cell::Words(seam.place),
            Cell::Words(seam.kind.to_owned()),
            Cell::Figure(seam.length),
            Cell::Figure(set.solved.counter.seam_joint),
        ]
    });
    Table { columns, rows: rows.collect(), breaks: Vec::new() }
}

/// What an edge meets, in a word.
pub fn words(edge: &Edge) -> &'static str {
    match edge.kind {
        EdgeKind::Finished => "finished",
        EdgeKind::Wall => "wall",
        EdgeKind::Splash => "splash",
        EdgeKind::Covered => "covered by a flange",
        EdgeKind::Reveal => "reveal",
        EdgeKind::Seam => "seam",
    }
}
