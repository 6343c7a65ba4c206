//! Screws that hold the sheets to the frame.
//!
//! Along every upright behind a board one near each end and between them no farther apart than the spacing; along level
//! tubes only between uprights. A cutout breaks a line in two.

use super::book::{Book, Draft, Kind};
use super::faces::Faced;
use crate::geometry::Region;
use crate::parameters::given::Figure;
use crate::solve::{BodyBox, Extent, Face, Leg, MaterialGroup, MaterialLine, SheetPart, Shop, Solved, takeoff};
use crate::units::{Exact, Length};

/// A board takes screws in a tube that lies behind it by at least this much: half an inch.
const BEHIND: Length = Length::from_sixty_fourths(32);

/// Spacing, and distance from edges.
#[derive(Clone, Copy)]
struct Pitch {
    edge: Length,
    spacing: Length,
}

/// The lines of screws: outer faces, bottoms, substrate, trim.
pub fn lines(book: &Book, solved: &Solved, shop: &Shop, faced: &[Faced]) -> Vec<MaterialLine> {
    let pitch = Pitch { edge: book.length(Figure::ScrewEdge), spacing: book.length(Figure::ScrewSpacing) };
    let outer: Vec<(String, Exact)> =
        faced.iter().map(|one| (one.word.clone(), whole(on_face(&solved.legs[one.leg], one, pitch)))).collect();
    let inner: u64 = shop
        .pieces
        .iter()
        .filter(|piece| piece.part == SheetPart::Bottom)
        .map(|piece| round_a_sheet(&piece.extent, pitch))
        .sum();
    let under: u64 = solved
        .legs
        .iter()
        .flat_map(|leg| &leg.substrate.screw_lines)
        .map(|(_, from, to)| takeoff::screws(*to - *from, pitch.edge, pitch.spacing))
        .sum();
    let board = faced.iter().map(|one| one.build.board).max().unwrap_or_default();
    let through = |thick: Length| book.show.prose(thick);
    let total = outer.iter().map(|(_, count)| count.clone()).sum();
    let draft = |name: String, net: Exact, parts| Draft {
        group: MaterialGroup::Hardware,
        name,
        kind: Kind::Count,
        net,
        from: String::new(),
        waste: Some(Figure::ScrewSpare),
        each: book.exact(Figure::ScrewBox),
        unit: format!("box of {}", book.words(Kind::Count, &book.exact(Figure::ScrewBox))),
        gives: "a box holds",
        by: vec![Figure::ScrewSpacing, Figure::ScrewEdge, Figure::ScrewBox],
        parts,
    };
    let drafts = [
        draft(format!("board screws, outer faces, through {}", through(board)), total, outer),
        draft(format!("board screws, inner faces, through {}", through(board)), whole(inner), Vec::new()),
        draft(format!("substrate screws, through {}", through(solved.substrate.thickness)), whole(under), Vec::new()),
    ];
    let trim: usize = shop.trim.pieces.iter().map(|piece| piece.fasteners.len()).sum();
    let mut lines: Vec<MaterialLine> = drafts.into_iter().filter_map(|draft| book.line(draft)).collect();
    lines.extend(
        book.line(draft("trim screws, stainless".to_owned(), whole(trim as u64), Vec::new()))
            .map(|line| MaterialLine { origin: book.origin(&[Figure::ScrewBox, Figure::ScrewSpare]), ..line }),
    );
    lines
}

fn whole(count: u64) -> Exact {
    Exact::whole(i128::from(count))
}

/// Screws round a sheet that lies on four tubes.
fn round_a_sheet(extent: &Extent, pitch: Pitch) -> u64 {
    2 * takeoff::screws(extent.height(), pitch.edge, pitch.spacing)
        + 2 * takeoff::between(extent.width(), pitch.spacing)
}

/// A tube behind a face, in the face's plane.
fn behind(leg: &Leg, face: Face, body: &BodyBox) -> Option<Extent> {
    let d = &leg.datums;
    let touches = match face {
        Face::Front => body.v.0 == d.frame_face,
        Face::Back => body.v.1 == d.frame_back,
        Face::Left => body.u.0 == d.frame_left,
        Face::Right => body.u.1 == d.frame_right,
    };
    let along = if matches!(face, Face::Front | Face::Back) { body.u } else { body.v };
    touches.then_some(Extent { x0: along.0, y0: body.z.0, x1: along.1, y1: body.z.1 })
}

fn on_face(leg: &Leg, faced: &Faced, pitch: Pitch) -> u64 {
    let along = matches!(faced.face, Face::Front | Face::Back);
    let count = |(extent, region): &(Extent, &Region)| {
        // Tubes are listed module by module, and modules lie from left to right.
        let first = leg.modules.partition_point(|module| along && module.right < extent.x0);
        let end = leg.modules.partition_point(|module| !along || module.left <= extent.x1);
        let near = leg.members_of(first.saturating_sub(1)..=end);
        let tubes: Vec<Extent> = near.iter().filter_map(|tube| behind(leg, faced.face, &tube.body)).collect();
        on_sheet(extent, region, &tubes, pitch)
    };
    faced.sheets.iter().map(count).sum()
}

fn on_sheet(extent: &Extent, region: &Region, tubes: &[Extent], pitch: Pitch) -> u64 {
    let mut count = 0;
    for tube in tubes.iter().filter(|tube| tube.meets(extent)) {
        let share = tube.held_to(extent);
        let upright = tube.height() >= tube.width();
        let (thin, line) = if upright { (share.width(), share.centre_x()) } else { (share.height(), share.centre_y()) };
        if thin < BEHIND.min(if upright { tube.width() } else { tube.height() }) {
            continue;
        }
        let ends = if upright { (share.y0, share.y1) } else { (share.x0, share.x1) };
        for (from, to) in crossed(region, line, upright) {
            let (from, to) = (from.max(ends.0), to.min(ends.1));
            if to <= from {
                continue;
            }
            count += if upright {
                takeoff::screws(to - from, pitch.edge, pitch.spacing)
            } else {
                takeoff::between(to - from, pitch.spacing)
            };
        }
    }
    count
}

/// Where a line lies on a region: an upright one at x, or a level one at y, as stretches along it.
fn crossed(region: &Region, at: Length, upright: bool) -> Vec<(Length, Length)> {
    /// Arcs are followed to this, mm.
    const FINE: f64 = 0.1;
    let at = at.mm();
    let mut crossings: Vec<f64> = Vec::new();
    for ring in region.outlines() {
        let points = ring.flattened(FINE);
        let turned = |k: usize| {
            let (x, y) = points[k % points.len()];
            if upright { (x, y) } else { (y, x) }
        };
        for k in 0..points.len() {
            let ((x0, y0), (x1, y1)) = (turned(k), turned(k + 1));
            if (x0 <= at) != (x1 <= at) {
                crossings.push(y0 + (y1 - y0) * (at - x0) / (x1 - x0));
            }
        }
    }
    crossings.sort_by(f64::total_cmp);
    crossings.chunks_exact(2).map(|pair| (Length::from_mm(pair[0]), Length::from_mm(pair[1]))).collect()
}
