//! What things weigh: modules layer by layer, what is lifted and by how many, and the floor.

mod lifts;
mod modules;
mod tables;

use super::canvas::Canvas;
use super::flow::{Flow, Heads};
use super::frame::{self, Area, MARGIN};
use super::quantities::{figures, is_of_weights};
use super::schedules::titled;
use super::set::{Kind, Set};
use super::title_block;
use crate::drawing::Page;
use crate::solve::LiftKind;
use crate::units::{Show, System};

/// Least width of a column, mm.
const LEAST: f64 = 176.0;
/// White between the columns of the page, mm.
const GUTTER: f64 = 12.0;
/// White under a chart, mm.
const AFTER: f64 = 8.0;

/// Draws its pages: charts in the first column of the first, tables beside and after them.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads =
        Heads { title: "Weights".to_owned(), document: "Weights and lifting".to_owned(), scale: "\u{2013}".to_owned() };
    let mut canvas = set.sheet();
    let (inside, block) = (frame::inside(&canvas), title_block::corner(&canvas));
    let count = ((inside.width() + GUTTER) / (LEAST + GUTTER)).floor().max(1.0);
    let width = (inside.width() - GUTTER * (count - 1.0)) / count;
    let bottom = if inside.left + width > block.x - MARGIN { block.y - MARGIN } else { inside.bottom };
    let left = Area { right: inside.left + width, bottom, ..inside };
    let mut top = left.top;
    for chart in [modules::draw, lifts::draw] {
        if let Some(end) = chart(&mut canvas, set, Area { top, ..left }) {
            top = end + AFTER;
        }
    }
    let mut flow = if top > left.top {
        let mut areas: Vec<Area> = (1..count as usize)
            .map(|index| {
                let start = inside.left + index as f64 * (width + GUTTER);
                let over = start + width > block.x - MARGIN;
                let bottom = if over { block.y - MARGIN } else { inside.bottom };
                Area { left: start, right: start + width, bottom, ..inside }
            })
            .collect();
        areas.push(Area { top, ..left });
        Flow::beside(set, kind, heads, vec![(canvas, areas, "\u{2013}".to_owned())])
    } else {
        Flow::new(set, kind, heads)
    };
    flow.table(&tables::modules_title(set), 1, &|width| tables::modules(set, width));
    flow.table("On the floor", 1, &|width| tables::floor(set, width));
    flow.notes("Lifting", &tables::notes(set));
    for leg in 0..set.solved.legs.len() {
        for (words, kinds) in tables::LIFTS {
            let title = titled(set, leg, words);
            flow.table(&title, 1, &|width| tables::lifts(set, width, leg, kinds));
        }
    }
    flow.table("Figures taken, not given", 1, &|width| figures(set, width, &is_of_weights));
    flow.finish()
}

/// How weights are told in narrow columns: in one reading.
fn reading(set: &Set<'_>) -> Show {
    match set.solved.show.system {
        System::Both => Show::new(System::Inches),
        system => Show::new(system),
    }
}

/// What sort of thing is lifted, in words.
pub const fn lift_kind(kind: LiftKind) -> &'static str {
    match kind {
        LiftKind::Frame => "bare frame",
        LiftKind::Sheet => "sheet",
        LiftKind::Counter => "counter",
        LiftKind::Splash => "upstand",
        LiftKind::Fitting => "fitting",
    }
}

/// A module's name, with its leg where there are several.
fn module_name(set: &Set<'_>, leg: usize, module: usize) -> String {
    let leg = &set.solved.legs[leg];
    let Some(it) = leg.modules.get(module) else { return String::new() };
    let name = if it.name.is_empty() { it.id.clone() } else { format!("{} {}", it.id, it.name) };
    if set.solved.legs.len() > 1 { format!("{name}, {}", leg.id) } else { name }
}

/// The title of a chart, and what stands after it in grey. Returns where the chart may start.
fn title(canvas: &mut Canvas, area: Area, words: &str, after: &str) -> f64 {
    title_block::heading(canvas, area.left, area.top + crate::drawing::lettering::TITLE, words, after);
    area.top + crate::drawing::lettering::TITLE + 5.0
}
