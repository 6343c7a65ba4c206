//! The pieces of a face.

use super::framing::Framing;
use super::part::{self, Candidate};
use super::{Pieces, plain};
use crate::geometry::{Outline, Region};
use crate::solve::{Board, Extent, Face, Laying, Leg, SheetJoint, SheetPart};
use crate::units::Length;

/// Cuts the pieces of one board of a leg.
pub fn cut(
    all: &mut Pieces,
    laying: &Laying,
    (at, leg): (usize, &Leg),
    (board, several): (&Board, bool),
    stuff: usize,
) {
    let Some(material) = all.materials.get(stuff) else { return };
    let e = board.extent;
    let next = |x: Length, right: bool| {
        let other =
            |one: &&Board| one.face == board.face && if right { one.extent.x0 == x } else { one.extent.x1 == x };
        leg.boards.iter().find(other)
    };
    let (before, after) = (next(e.x0, false), next(e.x1, true));
    let half = laying.gap.half();
    let own = Extent {
        x0: if before.is_some() { e.x0 + half } else { e.x0 },
        x1: if after.is_some() { e.x1 - half } else { e.x1 },
        ..e
    };
    let tube = leg.members.first().map_or(Length::ZERO, |member| {
        let side = |(low, high): (Length, Length)| high - low;
        side(member.body.u).min(side(member.body.v)).min(side(member.body.z))
    });
    let framing = Framing::behind(leg, board.face, board.module, &board.fittings, tube);
    let (across, up) = part::reach(material, own.width(), own.height());
    let part = SheetPart::Face(board.face);
    let stops = |level: bool, most: Option<Length>, (from, to): (Length, Length), span| {
        let Some(most) = most else { return Vec::new() };
        let candidates: Vec<Candidate> = framing
            .middles(level)
            .into_iter()
            .map(|at| Candidate {
                at,
                on_framing: framing.carries(level, at, span),
                off_corners: framing.off_corner(level, at).is_none_or(|off| off >= laying.off_corner),
            })
            .collect();
        part::joints((from, to), (most, laying.least_strip, laying.gap), &candidates)
    };
    let uprights = stops(false, across, (own.x0, own.x1), (own.y0, own.y1));
    let levels = stops(true, up, (own.y0, own.y1), (own.x0, own.x1));
    let joint = |level: bool, line, span, between_modules| SheetJoint {
        leg: at,
        part,
        level,
        at: line,
        span,
        between_modules,
        on_framing: framing.carries(level, line, span),
        off_corner: framing.off_corner(level, line),
    };
    let mut met: Vec<SheetJoint> = Vec::new();
    met.extend(uprights.iter().map(|one| joint(false, one.at, (own.y0, own.y1), false)));
    met.extend(levels.iter().map(|one| joint(true, one.at, (own.x0, own.x1), false)));
    if let Some(other) = after {
        // Both neighbours' cutouts count.
        let both: Vec<usize> = board.fittings.iter().chain(&other.fittings).copied().collect();
        let around = Framing::behind(leg, board.face, board.module, &both, tube);
        let span = (own.y0.max(other.extent.y0), own.y1.min(other.extent.y1));
        met.push(SheetJoint {
            on_framing: around.carries(false, e.x1, span),
            off_corner: around.off_corner(false, e.x1),
            ..joint(false, e.x1, span, true)
        });
    }
    all.joints.extend(met);

    let spans = bands((own.x0, own.x1), &uprights, half);
    let rows = bands((own.y0, own.y1), &levels, half);
    let mark = name(board, leg, several);
    let cells: Vec<(usize, Extent, Region)> = rows
        .iter()
        .flat_map(|&row| columns(&board.region, &spans, row).into_iter().enumerate())
        .flat_map(|(k, cell)| cell.into_iter().map(move |(own, region)| (k, own, region)))
        .collect();
    let count = cells.len();
    for (index, (column, extent, region)) in cells.into_iter().enumerate() {
        let mark = if count > 1 { format!("{mark}, {} of {count}", index + 1) } else { mark.clone() };
        let touches = |fitting: &&usize| {
            let cutout = leg.fittings.get(**fitting).and_then(|fitting| fitting.cutout(board.plane));
            cutout.is_some_and(|cutout| cutout.extent.meets(&extent))
        };
        let piece = plain(mark, part, (at, board.module), stuff);
        all.add(super::SheetPiece {
            extent,
            region,
            fittings: board.fittings.iter().filter(touches).copied().collect(),
            bevels: [
                if column == 0 { board.bevels[0] } else { 0.0 },
                if column + 1 == spans.len() { board.bevels[1] } else { 0.0 },
            ],
            ..piece
        });
    }
}

/// A board's mark: ends are told apart by their leg where there are several.
fn name(board: &Board, leg: &Leg, several: bool) -> String {
    let end = matches!(board.face, Face::Left | Face::Right);
    if end && several { format!("{} {}", board.name, leg.id) } else { board.name.clone() }
}

/// From edge to joint to edge, half a gap off each joint.
fn bands((from, to): (Length, Length), joints: &[Candidate], half: Length) -> Vec<(Length, Length)> {
    let mut bands = Vec::new();
    let mut start = from;
    for joint in joints {
        bands.push((start, joint.at - half));
        start = joint.at + half;
    }
    bands.push((start, to));
    bands
}

/// What of a region lies in each of some boxes of one height, side by side from left to right, each connected part with its
/// own box.
pub fn columns(region: &Region, spans: &[(Length, Length)], (y0, y1): (Length, Length)) -> Vec<Vec<(Extent, Region)>> {
    let edges: Vec<(f64, f64)> = spans.iter().map(|(x0, x1)| (x0.mm(), x1.mm())).collect();
    let cells = spans.iter().map(|&(x0, x1)| Extent { x0, y0, x1, y1 });
    cells.zip(region.strips(&edges)).map(|(cell, column)| within(&column, &cell)).collect()
}

/// The parts of a column that lie in its box, each with its own box.
fn within(column: &[Region], cell: &Extent) -> Vec<(Extent, Region)> {
    let parts: Vec<Region> = column
        .iter()
        .flat_map(|column| transposed(column).strip(cell.y0.mm(), cell.y1.mm()))
        .map(|part| transposed(&part))
        .collect();
    let single = parts.len() == 1;
    let boxed = |part: Region| {
        let (x0, y0, x1, y1) = part.outer.bounds();
        let near = |value: f64, exact: Length| {
            let own = Length::from_mm(value);
            if (own - exact).abs() < Length::from_nm(1000) { exact } else { own }
        };
        let extent = if single
            && (cell.width().mm() - (x1 - x0)).abs() < 1e-3
            && (cell.height().mm() - (y1 - y0)).abs() < 1e-3
        {
            *cell
        } else {
            Extent { x0: near(x0, cell.x0), y0: near(y0, cell.y0), x1: near(x1, cell.x1), y1: near(y1, cell.y1) }
        };
        (extent, part)
    };
    parts.into_iter().map(boxed).collect()
}

/// A region with its coordinates exchanged.
pub fn transposed(region: &Region) -> Region {
    let turned = |outline: &Outline| outline.mapped(|x, y| (y, x), true);
    Region { outer: turned(&region.outer), holes: region.holes.iter().map(turned).collect() }
}
