//! From a solved run and its findings to finished pages. Never reads the model.

mod aligned;
mod axonometric;
mod board_joints;
mod boards;
pub mod canvas;
mod client;
mod counter;
mod coverage;
mod cutting;
mod cuttings;
pub mod dimensions;
mod ends;
pub mod flow;
pub mod frame;
mod front;
mod hidden;
mod key_plan;
mod label;
mod labels;
mod levelling;
pub mod levels;
mod listings;
pub mod marks;
pub mod materials;
mod measure_twice;
mod misread;
pub mod notes;
mod orders;
mod permit;
mod place;
mod plan;
mod quantities;
pub mod scale;
mod schedules;
mod section;
mod sequence;
pub mod set;
mod shelves;
mod slab;
mod solids;
mod stock_bars;
mod substrate;
mod supports;
pub mod table;
mod table_blocks;
mod task;
pub mod templates;
pub mod title_block;
mod trim;
pub mod view;
mod weights;

pub use coverage::letters_lacking;
pub use cuttings::cuttings;
pub use listings::listings;
pub use set::{Kind, Set, Unplaced};

use std::collections::BTreeMap;

use crate::drawing::{Page, clash};
use crate::findings::Finding;
use crate::solve::{Face, FittingKind, Plane, Solved};

/// The kinds of sheet that a run needs, in the order of the set.
pub fn kinds(solved: &Solved) -> Vec<Kind> {
    let legs = || 0..solved.legs.len();
    let mut kinds = Vec::new();
    kinds
        .extend(legs().flat_map(|leg| client::faces(solved, leg).into_iter().map(move |face| Kind::Client(leg, face))));
    kinds.extend([Kind::Axonometric, Kind::Plan]);
    for leg in legs() {
        kinds.extend(built_faces(solved, leg).into_iter().map(|face| Kind::Front(leg, face)));
        kinds.extend(has_end(solved, leg).then_some(Kind::Ends(leg)));
        let fittings = solved.legs[leg].fittings.iter().enumerate();
        let cut_in = fittings.filter(|(_, f)| f.cutout(Plane::Counter).is_some());
        let shown = cut_in.filter(|(_, f)| has_section(f.kind, f.look));
        kinds.extend(shown.map(|(index, _)| Kind::Section(leg, index)));
        // A counter and a substrate that turn corners have one sheet each, at the first leg.
        let slab = solved.slabs.iter().find(|slab| slab.legs.contains(&leg));
        kinds.extend(slab.is_none_or(|slab| slab.legs.first() == Some(&leg)).then_some(Kind::Substrate(leg)));
        kinds.push(Kind::Boards(leg));
        kinds.extend(slab.is_none_or(|slab| slab.legs.first() == Some(&leg)).then_some(Kind::Counter(leg)));
    }
    kinds.extend(supports::is_wanted(solved).then_some(Kind::Supports));
    let cut = &solved.shop.cutting;
    kinds.extend((!cut.sheets.is_empty() || !cut.bars.is_empty()).then_some(Kind::Cutting));
    kinds.extend(solved.legs.iter().any(|leg| !leg.feet.is_empty()).then_some(Kind::Levelling));
    kinds.extend((!solved.shop.trim.pieces.is_empty()).then_some(Kind::Trim));
    if permit::is_wanted(solved) {
        kinds.push(Kind::Permit);
    }
    kinds.extend([Kind::Schedules, Kind::Materials, Kind::Weights, Kind::MeasureTwice]);
    kinds.extend((!solved.shop.sequence.is_empty()).then_some(Kind::Sequence));
    kinds.extend((!solved.shop.orders.is_empty()).then_some(Kind::Orders));
    kinds.push(Kind::Labels);
    kinds
}

/// The long faces of a leg that are built: its front, and its back where that is seen and has boards, fittings or seats.
fn built_faces(solved: &Solved, leg: usize) -> Vec<Face> {
    let leg = &solved.legs[leg];
    let boarded = leg.boards.iter().any(|board| board.face == Face::Back);
    let fitted = leg.on_face(Face::Back).next().is_some();
    let back = fitted || (leg.back.is_open() && (boarded || leg.seating.is_some()));
    [Some(Face::Front), back.then_some(Face::Back)].into_iter().flatten().collect()
}

/// Whether an end of a leg is seen, all of it or what stands over a lower leg.
fn has_end(solved: &Solved, leg: usize) -> bool {
    let leg = &solved.legs[leg];
    !(leg.meets_leg(0) && leg.meets_leg(1))
}

/// Every counter cutout has its section, but a faucet's hole, which the section of its sink shows.
fn has_section(kind: FittingKind, look: crate::solve::Look) -> bool {
    matches!(kind, FittingKind::Notch | FittingKind::Well) && look != crate::solve::Look::Faucet
}

/// Draws the sheets for which `wanted` holds, in the order of the set, numbered as in the whole set.
pub fn draw(solved: &Solved, findings: &[Finding], wanted: impl Fn(Kind) -> bool) -> Result<Vec<Page>, Vec<Unplaced>> {
    let mut set = Set { solved, findings, kinds: kinds(solved), pages: Default::default() };
    // A kind may take more pages than one; the numbers of the others then move, so that all are drawn anew. Kinds that
    // always take one page are drawn once, when all numbers are known.
    for _ in 0..4 {
        let mut drawn: BTreeMap<Kind, Vec<Page>> = BTreeMap::new();
        let mut settled = true;
        let kinds = set.kinds.clone();
        for (last, &kind) in [false, true].iter().flat_map(|last| kinds.iter().map(move |kind| (*last, kind))) {
            if last == may_take_pages(kind) || (last && !(settled && wanted(kind))) {
                continue;
            }
            let pages = draw_kind(&set, kind);
            if set.page_count(kind) != pages.len() {
                set.pages.insert(kind, pages.len());
                settled = false;
            }
            if wanted(kind) {
                drawn.insert(kind, pages);
            }
        }
        if settled {
            return checked(kinds.iter().filter_map(|kind| drawn.remove(kind)).flatten().collect());
        }
    }
    Err(vec![Unplaced { sheet: "the set".to_owned(), what: vec!["the number of pages does not settle".to_owned()] }])
}

/// Kinds whose number of pages depends on the run.
fn may_take_pages(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Plan
            | Kind::Section(..)
            | Kind::Ends(_)
            | Kind::Substrate(_)
            | Kind::Boards(_)
            | Kind::Supports
            | Kind::Levelling
            | Kind::Cutting
            | Kind::Trim
            | Kind::Permit
            | Kind::Schedules
            | Kind::Materials
            | Kind::Weights
            | Kind::MeasureTwice
            | Kind::Sequence
            | Kind::Orders
            | Kind::Labels
            | Kind::Front(..)
            | Kind::Counter(_)
    )
}

fn draw_kind(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    match kind {
        Kind::Client(..) => client::draw(set, kind),
        Kind::Axonometric => axonometric::draw(set, kind),
        Kind::Plan => plan::draw(set, kind),
        Kind::Front(..) => front::draw(set, kind),
        Kind::Ends(..) => ends::draw(set, kind),
        Kind::Section(..) => section::draw(set, kind),
        Kind::Substrate(leg) => match set.solved.slabs.iter().find(|slab| slab.legs.first() == Some(&leg)) {
            Some(slab) => slab::substrate(set, kind, slab),
            None => substrate::draw(set, kind),
        },
        Kind::Boards(..) => boards::draw(set, kind),
        Kind::Counter(leg) => match set.solved.slabs.iter().find(|slab| slab.legs.first() == Some(&leg)) {
            Some(slab) => slab::draw(set, kind, slab),
            None => counter::draw(set, kind),
        },
        Kind::Supports => supports::draw(set, kind),
        Kind::Levelling => levelling::draw(set, kind),
        Kind::Cutting => cutting::draw(set, kind),
        Kind::Trim => trim::draw(set, kind),
        Kind::Permit => permit::draw(set, kind),
        Kind::Schedules => schedules::draw(set, kind),
        Kind::Materials => quantities::draw(set, kind),
        Kind::Weights => weights::draw(set, kind),
        Kind::MeasureTwice => measure_twice::draw(set, kind),
        Kind::Sequence => sequence::draw(set, kind),
        Kind::Orders => orders::draw(set, kind),
        Kind::Labels => labels::draw(set, kind),
    }
}

/// No page leaves with one label on another, on a foreign line, or off the sheet.
fn checked(mut pages: Vec<Page>) -> Result<Vec<Page>, Vec<Unplaced>> {
    pages.iter_mut().for_each(misread::withheld);
    let unplaced: Vec<Unplaced> = pages
        .iter()
        .filter_map(|page| {
            let clashes = clash::clashes(page);
            let what = clashes
                .iter()
                .map(|c| format!("\u{201c}{}\u{201d} at {:.0}, {:.0} mm meets {}", c.text, c.at.x, c.at.y, c.with))
                .collect::<Vec<_>>();
            (!what.is_empty()).then(|| Unplaced { sheet: page.name.clone(), what })
        })
        .collect();
    if unplaced.is_empty() { Ok(pages) } else { Err(unplaced) }
}
