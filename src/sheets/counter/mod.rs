//! The counter sheet, for the fabricator: the finished outline from above with every edge tagged, details of the
//! edges, the pieces with their diagonals and weights, the cutouts, tolerances, and the approval.

pub(super) mod approval;
pub(super) mod cutouts;
mod dimensions;
pub(super) mod edges;
pub(super) mod finished_edge;
pub(super) mod labels;
pub(super) mod names;
pub(super) mod notes;
pub(super) mod parts;
pub(super) mod pictogram;
mod pieces;
mod plan;
mod radii;
pub(super) mod strip;
pub(super) mod tag;
pub(super) mod wall_edge;
pub(super) mod weight;

use super::frame::{self, Area};
use super::set::{Kind, Set};
use super::shelves::{self, Block, Sheet};
use super::task::Task;
use super::title_block::{self, TitleBlock};
use crate::drawing::Page;
use crate::solve::Plane;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let found = match kind {
        Kind::Counter(index) => set.solved.legs.get(index).map(|leg| (index, leg)),
        _ => None,
    };
    let Some(leg) = found else { return Vec::new() };
    let task = Task::new(set, kind, leg);
    let (mut sheets, blocks) = arranged(&task);
    shelves::fill(&mut sheets, &blocks, || set.sheet());
    let several = set.solved.legs.len() > 1;
    let leg_words = if several { format!(", leg {}", task.index + 1) } else { String::new() };
    let count = sheets.len();
    let close = |(page, sheet): (usize, Sheet)| {
        let block = TitleBlock {
            title: if page == 0 { "Counter".to_owned() } else { format!("Counter, page {} of {count}", page + 1) },
            kind: "Counter sheet".to_owned(),
            subtitle: format!(
                "{}{leg_words}, {} {}",
                set.solved.job.title,
                set.solved.counter.name,
                task.show.prose(set.solved.counter.thickness)
            ),
            scale: sheet.scale_words(),
            status: if set.stops(kind) { "Not for cutting".to_owned() } else { "For approval".to_owned() },
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    };
    sheets.into_iter().enumerate().map(close).collect()
}

/// The outline at its largest scale, or at the next one where that spares a page; details shrink before they are sent
/// to a page of their own.
fn arranged<'a>(task: &'a Task<'_>) -> (Vec<Sheet>, Vec<Block<'a>>) {
    let attempt = |smaller: bool| {
        let (sheets, legend) = plans(task, smaller);
        let tries = DETAIL.map(|most| blocks(task, &sheets, &legend, most));
        let count = |blocks: &Vec<Block<'_>>| shelves::pages(&sheets, blocks, &task.set.sheet());
        let least = tries.iter().map(count).min().unwrap_or(1);
        let best = tries.into_iter().find(|blocks| count(blocks) == least).unwrap_or_default();
        (sheets, best, least)
    };
    let (sheets, best, pages) = attempt(false);
    if pages > sheets.len() {
        let (fewer, other, count) = attempt(true);
        if count < pages {
            return (fewer, other);
        }
    }
    (sheets, best)
}

/// The pages with the outline, and the tags that a legend has to explain.
fn plans(task: &Task<'_>, smaller: bool) -> (Vec<Sheet>, Vec<tag::Tag>) {
    let canvas = task.set.sheet();
    let inside = frame::inside(&canvas);
    let corner = title_block::corner(&canvas);
    let area = Area { top: inside.top + plan::HEADING, bottom: corner.y - approval::HEIGHT - 4.0, ..inside };
    let margins = plan::margins(task, Plane::Counter);
    let below = inside.top + inside.height() * 0.6;
    let (parts, scale) = parts::parts(task.leg, Plane::Counter, task.leg.counter.extent, area, margins, below);
    let scale = if smaller { parts::next_smaller(scale, task.leg.counter.extent) } else { scale };
    let (mut sheets, mut legend) = (Vec::new(), Vec::new());
    for part in &parts {
        let mut canvas = task.set.sheet();
        let bottom = plan::draw(&mut canvas, task, *part, scale, area, margins, &mut legend);
        approval::draw(&mut canvas, task, sheets.len());
        let mut sheet = Sheet::new(canvas, bottom + 6.0, approval::HEIGHT);
        sheet.scales.push(scale);
        sheets.push(sheet);
    }
    legend.sort_by(|a, b| (a.pictogram, &a.word, &a.fact).cmp(&(b.pictogram, &b.word, &b.fact)));
    legend.dedup();
    (sheets, legend)
}

/// Heights that the details may have, mm, best first.
const DETAIL: [f64; 4] = [62.0, 50.0, 40.0, 30.0];

/// Everything beside the outline, in order of importance; details no higher than `most` mm.
fn blocks<'a>(task: &'a Task<'_>, sheets: &[Sheet], legend: &[tag::Tag], most: f64) -> Vec<Block<'a>> {
    let Some(sheet) = sheets.first() else { return Vec::new() };
    let (inside, page) = (frame::inside(&sheet.canvas), shelves::page_height(&sheet.canvas));
    let mut blocks = Vec::new();
    blocks.extend(cutouts::blocks(task, inside.width(), page));
    blocks.push(notes::block(task));
    blocks.extend(finished_edge::block(task, most));
    blocks.extend(wall_edge::block(task, most));
    blocks.extend(pieces::blocks(task, inside.width(), page));
    blocks.extend(edges::legend(legend.to_vec()));
    blocks
}
