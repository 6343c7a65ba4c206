//! The permit sheet: what an inspector and a gas fitter ask for, on one or more pages.

mod diagram;
mod tables;
mod tree;
mod words;

pub use tables::limits;

use super::canvas::Canvas;
use super::flow::{Flow, Heads};
use super::frame::{self, Area, MARGIN};
use super::set::{Kind, Set};
use super::title_block;
use crate::drawing::Page;
use crate::solve::{Solved, services};
use crate::units::{Show, System};

/// Whether a run has anything that a permit is asked for.
pub fn is_wanted(solved: &Solved) -> bool {
    let asks = |fitting: &crate::solve::Fitting| services::burns_gas(fitting) || fitting.heat.is_some();
    solved.services.is_some()
        || !solved.limits.is_empty()
        || solved.legs.iter().any(|leg| leg.fittings.iter().any(asks))
}

/// How heat, pressure, areas and ways are shown here: in one reading, since gas fitters work in one, and tables stay narrow.
fn reading(set: &Set<'_>) -> Show {
    match set.solved.show.system {
        System::Both => Show::new(System::Inches),
        system => Show::new(system),
    }
}

/// White between the columns of the page, mm.
const GUTTER: f64 = 12.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads = Heads {
        title: "Permit sheet".to_owned(),
        document: "Services and safety".to_owned(),
        scale: "not to scale".to_owned(),
    };
    let mut canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let block = title_block::corner(&canvas);
    // Two columns where a page is wide enough for two tables; the diagram heads the left one, or the whole page.
    let two = inside.width() >= 2.0 * 176.0 + GUTTER;
    let width = if two { (inside.width() - GUTTER) / 2.0 } else { inside.width() };
    let left = Area { right: inside.left + width, ..inside };
    let drawn = diagram::draw(&mut canvas, set, kind, left).map(|bottom| (bottom, left)).or_else(|| {
        let whole = Area { bottom: block.y - MARGIN, ..inside };
        two.then(|| diagram::draw(&mut canvas, set, kind, whole).map(|bottom| (bottom, whole))).flatten()
    });
    let mut flow = match drawn {
        Some((bottom, area)) => {
            let areas = below(&canvas, inside, area, bottom + 8.0, two);
            Flow::beside(set, kind, heads, vec![(canvas, areas, "not to scale".to_owned())])
        }
        None => Flow::new(set, kind, Heads { scale: "\u{2013}".to_owned(), ..heads }),
    };
    tables::appliances(&mut flow, set);
    tables::pipe(&mut flow, set);
    tables::vents(&mut flow, set);
    tables::clearances(&mut flow, set);
    tables::limits(&mut flow, set);
    words::sizing(&mut flow, set);
    words::cautions(&mut flow, set);
    tables::signatures(&mut flow, set);
    flow.finish()
}

/// What is free round the diagram: under it, and beside it where it takes one column.
fn below(canvas: &Canvas, inside: Area, taken: Area, top: f64, two: bool) -> Vec<Area> {
    let block = title_block::corner(canvas);
    let ends = |area: Area| {
        let over = area.right > block.x - MARGIN;
        Area { bottom: if over { block.y - MARGIN } else { area.bottom }, ..area }
    };
    let whole = taken.right >= inside.right - 0.1;
    let mut areas = Vec::new();
    if two {
        let width = (inside.width() - GUTTER) / 2.0;
        areas.push(ends(Area { top, right: inside.left + width, ..inside }));
        let right_top = if whole { top } else { inside.top };
        areas.push(ends(Area { top: right_top, left: inside.right - width, ..inside }));
    } else {
        areas.push(ends(Area { top, ..inside }));
    }
    areas.retain(|area| area.height() > 30.0);
    areas
}
