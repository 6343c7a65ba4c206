//! Sheets of what lies over several legs. The counter: its whole outline, every corner numbered and located from two
//! datums, every edge tagged with what it meets, angles, seams, pieces with diagonals, cutouts, details of its edges, the
//! approval. The substrate under it: its pieces with their joints, cutouts, screw lines and the finished faces.

mod figure;
mod joined;
mod labels;
mod lists;
mod notches;
mod picture;
mod seams;
mod sizes;
mod tags;
mod under;

use super::counter::{self, approval, cutouts, edges, finished_edge, wall_edge};
use super::frame;
use super::set::{Kind, Set};
use super::shelves::{self, Block, Sheet};
use super::task::Task;
use super::title_block::TitleBlock;
use crate::drawing::Page;
use crate::solve::{Plane, Slab};
use crate::units::Length;

pub use under::draw as substrate;

/// Draws the pages of a counter.
pub fn draw(set: &Set<'_>, kind: Kind, slab: &Slab) -> Vec<Page> {
    let title = "Counter, finished outline from above";
    let (mut canvas, sheet, areas) = joined::open(set, kind, slab, Plane::Counter, approval::HEIGHT, title);
    let mut legend = Vec::new();
    picture::draw(&mut canvas, &sheet);
    sizes::draw(&mut canvas, &sheet);
    labels::corners(&mut canvas, &sheet);
    labels::cutouts(&mut canvas, &sheet);
    seams::letters(&mut canvas, &sheet);
    labels::angles(&mut canvas, &sheet);
    // After all small lettering: what lies inside a flag is not seen to meet it.
    labels::flags(&mut canvas, &sheet);
    tags::draw(&mut canvas, &sheet, &mut legend);
    labels::pieces(&mut canvas, &sheet);
    labels::findings(&mut canvas, &sheet);
    let tasks: Vec<Task<'_>> = sheet.legs().map(|leg| Task::new(set, kind, leg)).collect();
    if let Some(task) = tasks.first() {
        approval::draw(&mut canvas, task, 0);
    }
    let (inside, page) = (frame::inside(&canvas), shelves::page_height(&canvas));
    let mut first = Sheet::with_areas(canvas, areas);
    first.scales.push(sheet.view.scale);
    let show = set.solved.show;
    let mut blocks: Vec<Block<'_>> = Vec::new();
    for task in &tasks {
        let title = format!("Cutouts, leg {}", task.leg.id);
        blocks.extend(cutouts::titled(task, &title, inside.width(), page));
    }
    let listed = |title: &str, table| cutouts::chunks(title, table, show, page, false);
    blocks.extend(listed("Notches", notches::table(&sheet)));
    blocks.extend(listed("Corners and edges", lists::corners(set, slab)));
    blocks.extend(listed("Squareness at the corners of the run", lists::squareness(set, slab)));
    blocks.extend(listed("Seams", lists::seams(&sheet)));
    blocks.extend(figure::blocks(&sheet, inside.width(), page));
    blocks.push(noted(counter_notes(&tasks)));
    for (at, task) in tasks.iter().enumerate() {
        if has_detail(task) && !tasks[..at].iter().any(|other| same_edge(other, task)) {
            blocks.extend(finished_edge::block(task, 62.0));
        }
    }
    blocks.extend(tasks.iter().filter(|task| has_detail(task)).find_map(|task| wall_edge::block(task, 62.0)));
    blocks.extend(listed("Finished faces", lists::faces(set, slab)));
    blocks.extend(edges::legend(legend));
    blocks.retain(|block| block.width > 0.0 && block.height > counter::cutouts::TITLE);
    let facts = format!("{} {}", set.solved.counter.name, show.prose(set.solved.counter.thickness));
    closed(set, kind, vec![first], &blocks, ("Counter", "Counter sheet", &facts, "For approval"))
}

/// Fills the pages and closes them. `names`: title, kind of document, what is said after the job's title, and the status.
fn closed(
    set: &Set<'_>,
    kind: Kind,
    mut sheets: Vec<Sheet>,
    blocks: &[Block<'_>],
    names: (&str, &str, &str, &str),
) -> Vec<Page> {
    shelves::fill(&mut sheets, blocks, || set.sheet());
    let (title, document, facts, status) = names;
    let count = sheets.len();
    let close = |(page, sheet): (usize, Sheet)| {
        let block = TitleBlock {
            title: if page == 0 { title.to_owned() } else { format!("{title}, page {} of {count}", page + 1) },
            kind: document.to_owned(),
            subtitle: format!("{}, {facts}", set.solved.job.title),
            scale: sheet.scale_words(),
            status: if set.stops(kind) { "Not for cutting".to_owned() } else { status.to_owned() },
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    };
    sheets.into_iter().enumerate().map(close).collect()
}

/// Whether a leg's front edge is one that a detail shows: it lies before the finished face, no farther than a hand. An edge
/// that slopes or bends has no one overhang, and its tags say so.
fn has_detail(task: &Task<'_>) -> bool {
    let front = task.leg.datums.counter_front;
    let over = task.leg.counter.pieces.iter().flat_map(|piece| &piece.edges).any(|edge| edge.overhang == Some(-front));
    over && front <= Length::ZERO && front.mm() > -100.0
}

/// Whether two legs have the same finished edge, layer by layer.
fn same_edge(a: &Task<'_>, b: &Task<'_>) -> bool {
    let layers = |task: &Task<'_>| {
        let d = &task.leg.datums;
        (d.counter_front, d.board_face, d.frame_face, d.counter_top - d.frame_top, task.leg.substrate.extent.y0)
    };
    layers(a) == layers(b)
}

/// The notes of the straight counter sheet, and those of corners.
fn counter_notes(tasks: &[Task<'_>]) -> Vec<(String, String)> {
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    let mut list = vec![
        note("Template", "made on the frames as built; walls and corners are measured again before anything is cut."),
        note(
            "Corners",
            "are numbered counter-clockwise, where edges would meet; right and behind are those of the first leg.",
        ),
    ];
    list.extend(tasks.first().map(counter::notes::list).unwrap_or_default());
    list
}

/// Notes as a block.
fn noted<'a>(list: Vec<(String, String)>) -> Block<'a> {
    shelves::noted(list, 136.0, 0.0)
}
