//! The substrate template, for the builder: the sheet with its cutouts and joints, the frame under it, screw lines, the
//! finished faces outside its edges, and every cutout from the sheet's own edges and from the finished ones.

mod dimensions;
pub(super) mod notes;
mod plan;
pub(super) mod screws;
pub(super) mod supports;
pub(super) mod table;

use super::counter::parts;
use super::frame::{self, Area};
use super::set::{Kind, Set};
use super::shelves::{self, Sheet};
use super::task::Task;
use super::title_block::{self, TitleBlock};
use crate::drawing::Page;
use crate::solve::Plane;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let found = match kind {
        Kind::Substrate(index) => set.solved.legs.get(index).map(|leg| (index, leg)),
        _ => None,
    };
    let Some(leg) = found else { return Vec::new() };
    let task = Task::new(set, kind, leg);
    let page = shelves::page_height(&set.sheet());
    let mut blocks = table::blocks(&task, "Cutouts", frame::inside(&set.sheet()).width(), page);
    blocks.push(notes::block(&task));
    let mut sheets = plans(&task, false);
    let pages = shelves::pages(&sheets, &blocks, &set.sheet());
    if pages > sheets.len() {
        // The next smaller scale, where that spares a page.
        let smaller = plans(&task, true);
        if shelves::pages(&smaller, &blocks, &set.sheet()) < pages {
            sheets = smaller;
        }
    }
    shelves::fill(&mut sheets, &blocks, || set.sheet());
    let leg_words = if set.solved.legs.len() > 1 { format!(", leg {}", task.index + 1) } else { String::new() };
    let count = sheets.len();
    let close = |(page, sheet): (usize, Sheet)| {
        let name = "Substrate template";
        let block = TitleBlock {
            title: if page == 0 { name.to_owned() } else { format!("{name}, page {} of {count}", page + 1) },
            kind: name.to_owned(),
            subtitle: format!(
                "{}{leg_words}, {} {}",
                set.solved.job.title,
                set.solved.substrate.name,
                task.show.prose(set.solved.substrate.thickness)
            ),
            scale: sheet.scale_words(),
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    };
    sheets.into_iter().enumerate().map(close).collect()
}

/// The pages with the sheet from above.
fn plans(task: &Task<'_>, smaller: bool) -> Vec<Sheet> {
    let canvas = task.set.sheet();
    let inside = frame::inside(&canvas);
    let corner = title_block::corner(&canvas);
    let area = Area { top: inside.top + plan::HEADING, bottom: corner.y - 4.0, ..inside };
    let margins = dimensions::margins(task);
    let below = inside.top + inside.height() * 0.64;
    let (parts, scale) = parts::parts(task.leg, Plane::Substrate, task.leg.substrate.extent, area, margins, below);
    let scale = if smaller { parts::next_smaller(scale, task.leg.substrate.extent) } else { scale };
    let draw = |part: &parts::Part| {
        let mut canvas = task.set.sheet();
        let bottom = plan::draw(&mut canvas, task, *part, scale, area, margins);
        let mut sheet = Sheet::new(canvas, bottom + 8.0, 0.0);
        sheet.scales.push(scale);
        sheet
    };
    parts.iter().map(draw).collect()
}
