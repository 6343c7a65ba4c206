//! What is listed beside the outline: corners, edges, pieces with diagonals, squareness, cutouts, notes.

use super::outline::words;
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::sheets::view::number;
use crate::solve::{Edge, JointKind, Plane, Slab};
use crate::units::Length;

/// Adds all lists.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, slab: &Slab) {
    flow.table("Corners and edges", 1, &|_| corners(set, slab));
    flow.table("Squareness at the corners of the run", 1, &|_| squareness(set, slab));
    flow.table("Cutouts", 1, &|_| cutouts(set, slab));
    for (leg, piece, _) in &slab.pieces {
        if let Some(piece) = set.solved.legs[*leg].counter.pieces.get(*piece) {
            flow.table(&format!("{}, corner to corner", piece.name), 1, &|_| diagonals(set, &piece.edges));
        }
    }
    flow.table("Pieces", 1, &|_| pieces(set, slab));
    flow.notes("Notes", &notes(set));
}

fn wide(set: &Set<'_>) -> f64 {
    figures_width(set.solved.show, Length::from_mm(9999.0)) + 3.0
}

/// A column of lengths from a finished face: wide enough for its heading with the flag.
fn flagged(set: &Set<'_>, heading: &str) -> Column {
    Column::figures(wide(set).max(30.0), heading).from_finished()
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

fn degrees(value: f64) -> String {
    format!("{}\u{b0}", number((value * 10.0).round() / 10.0, 1))
}

/// Every corner from the first leg's finished left end and finished face, its angle, and the edge to the next one.
fn corners(set: &Set<'_>, slab: &Slab) -> Table {
    let columns = vec![
        Column::words(9.0, "no."),
        flagged(set, "right of the\nfinished end"),
        flagged(set, "behind the\nfinished face"),
        Column::right(14.0, "angle"),
        Column::figures(wide(set), "to the next"),
        Column::words(24.0, "edge"),
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
fn squareness(set: &Set<'_>, slab: &Slab) -> Table {
    let inches = set.solved.show.system != crate::units::System::Millimetres;
    let (three, four) = if inches {
        (Length::from_inches(36.0), Length::from_inches(48.0))
    } else {
        (Length::from_mm(900.0), Length::from_mm(1200.0))
    };
    let columns = vec![
        Column::words(34.0, "between legs"),
        Column::right(14.0, "angle"),
        Column::figures(wide(set), "along one"),
        Column::figures(wide(set), "along the\nother"),
        Column::figures(wide(set), "between\nthe marks"),
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

/// Cutouts from their own leg's datums, and from the first leg's.
fn cutouts(set: &Set<'_>, slab: &Slab) -> Table {
    let columns = vec![
        Column::words(12.0, "mark"),
        Column::words(24.0, "leg"),
        flagged(set, "centreline from\nfinished end"),
        flagged(set, "front edge from\nfinished face"),
        Column::figures(wide(set), "width"),
        Column::figures(wide(set), "depth"),
        Column::figures(wide(set), "radius"),
    ];
    let rows = slab
        .legs
        .iter()
        .flat_map(|leg| set.solved.legs[*leg].fittings.iter().map(move |fitting| (*leg, fitting)))
        .filter_map(|(leg, fitting)| {
            let cut = fitting.cutout(Plane::Counter)?;
            Some(vec![
                Cell::Bold(fitting.mark.clone()),
                Cell::Words(set.solved.legs[leg].id.clone()),
                Cell::Figure(cut.extent.centre_x()),
                if cut.open { Cell::Grey("open".to_owned()) } else { Cell::Figure(cut.extent.y0) },
                Cell::Key(cut.extent.width()),
                Cell::Key(if cut.open { cut.extent.y1 } else { cut.extent.height() }),
                Cell::Figure(cut.radius),
            ])
        })
        .collect();
    Table { columns, rows, breaks: Vec::new() }
}

/// The corners of a piece that lie farthest apart, two diagonals.
fn diagonals(set: &Set<'_>, edges: &[Edge]) -> Table {
    let columns = vec![Column::words(40.0, "from its corner to its corner"), Column::figures(wide(set), "is")];
    let distance = |a: &Edge, b: &Edge| (a.from.0 - b.from.0).mm().hypot((a.from.1 - b.from.1).mm());
    let mut pairs: Vec<(usize, usize, f64)> = Vec::new();
    for (i, a) in edges.iter().enumerate() {
        for (j, b) in edges.iter().enumerate().skip(i + 1) {
            let next = j == i + 1 || (i == 0 && j + 1 == edges.len());
            if !next {
                pairs.push((i, j, distance(a, b)));
            }
        }
    }
    pairs.sort_by(|a, b| b.2.total_cmp(&a.2));
    // The second one shares no corner with the first.
    let first = pairs.first().copied();
    let second =
        first.and_then(|(i, j, _)| pairs.iter().find(|p| p.0 != i && p.0 != j && p.1 != i && p.1 != j).copied());
    let row = |(i, j, far): (usize, usize, f64)| {
        let name = |at: usize| {
            let (u, v) = edges[at].from;
            let show = set.solved.show;
            format!("({}, {})", show.prose(u), show.prose(v))
        };
        vec![Cell::Words(format!("{} to {}", name(i), name(j))), Cell::Key(Length::from_mm(far))]
    };
    let words = |(i, j, far): (usize, usize, f64)| row((i, j, far));
    let rows: Vec<Vec<Cell>> = first.into_iter().chain(second).map(words).collect();
    let most = rows
        .iter()
        .filter_map(|row| if let Some(Cell::Words(text)) = row.first() { Some(text.as_str()) } else { None })
        .map(|text| {
            crate::drawing::lettering::width(
                text,
                crate::drawing::lettering::BODY,
                crate::drawing::lettering::Weight::Regular,
            )
        })
        .fold(40.0, f64::max);
    let mut columns = columns;
    columns[0].width = most + 4.0;
    Table { columns, rows, breaks: Vec::new() }
}

fn pieces(set: &Set<'_>, slab: &Slab) -> Table {
    let columns = vec![
        Column::words(20.0, "piece"),
        Column::words(34.0, "on legs"),
        Column::figures(wide(set), "length"),
        Column::figures(wide(set), "depth"),
        Column::right(24.0, "weight"),
    ];
    let metric = set.solved.show.system == crate::units::System::Millimetres;
    let rows = slab
        .pieces
        .iter()
        .filter_map(|(leg, index, legs)| {
            let piece = set.solved.legs[*leg].counter.pieces.get(*index)?;
            let on: Vec<&str> = legs.iter().map(|leg| set.solved.legs[*leg].id.as_str()).collect();
            let weight =
                if metric { format!("{:.0} kg", piece.mass) } else { format!("{:.0} lb", piece.mass / 0.453_592_37) };
            Some(vec![
                Cell::Bold(piece.name.clone()),
                Cell::Words(on.join(", ")),
                Cell::Figure(piece.extent.width()),
                Cell::Figure(piece.extent.height()),
                Cell::Words(weight),
            ])
        })
        .collect();
    Table { columns, rows, breaks: Vec::new() }
}

fn notes(set: &Set<'_>) -> Vec<(String, String)> {
    let show = set.solved.show;
    let counter = &set.solved.counter;
    let line = |lead: &str, text: String| (lead.to_owned(), text);
    vec![
        line("Template", "made on the frames as built; walls and corners are measured again before anything is cut.".to_owned()),
        line("Corners", "are numbered counter-clockwise; right and behind are those of the first leg. Radii are left out of account: where edges would meet.".to_owned()),
        line("Tolerance", format!("outline {} either way; seams {} wide, joints to walls {}.", show.prose(counter.tolerance), show.prose(counter.seam_joint), show.prose(counter.wall_joint))),
        line("Thickness", format!("{} {}.", counter.name, show.prose(counter.thickness))),
        line("Check", "every cutout against the fitting in hand.".to_owned()),
        line("Caution", "lifting and cutting slabs is work for those trained to do it; cut wet or with extraction, wear a mask.".to_owned()),
    ]
}
