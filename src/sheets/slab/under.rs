//! The substrate template of legs that meet, for the builder.

use super::{closed, figure, joined, labels, lists, notches, noted, picture, seams, sizes};
use crate::drawing::Page;
use crate::sheets::counter::cutouts;
use crate::sheets::frame;
use crate::sheets::set::{Kind, Set};
use crate::sheets::shelves::{self, Block, Sheet};
use crate::sheets::substrate::{notes, table};
use crate::sheets::task::Task;
use crate::solve::{Plane, Slab};

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind, slab: &Slab) -> Vec<Page> {
    let (mut canvas, sheet, areas) = joined::open(set, kind, slab, Plane::Substrate, 0.0, "Substrate from above");
    picture::draw(&mut canvas, &sheet);
    sizes::draw(&mut canvas, &sheet);
    labels::cutouts(&mut canvas, &sheet);
    seams::letters(&mut canvas, &sheet);
    labels::angles(&mut canvas, &sheet);
    labels::flags(&mut canvas, &sheet);
    labels::pieces(&mut canvas, &sheet);
    picture::hidden_marks(&mut canvas, &sheet);
    labels::findings(&mut canvas, &sheet);
    let tasks: Vec<Task<'_>> = sheet.legs().map(|leg| Task::new(set, kind, leg)).collect();
    let (inside, page) = (frame::inside(&canvas), shelves::page_height(&canvas));
    let mut first = Sheet::with_areas(canvas, areas);
    first.scales.push(sheet.view.scale);
    let show = set.solved.show;
    let mut blocks: Vec<Block<'_>> = Vec::new();
    blocks.extend(figure::blocks(&sheet, inside.width(), page));
    for task in &tasks {
        blocks.extend(table::blocks(task, &format!("Cutouts, leg {}", task.leg.id), inside.width(), page));
    }
    let listed = |title: &str, table| cutouts::chunks(title, table, show, page, false);
    blocks.extend(listed("Notches", notches::table(&sheet)));
    blocks.extend(listed("Squareness at the corners of the run", lists::squareness(set, slab)));
    blocks.extend(listed("Finished faces", lists::faces(set, slab)));
    let mut list = tasks.first().map(notes::list).unwrap_or_default();
    list.retain(|(lead, _)| ![notes::TINTED, notes::BRACKETS].contains(&lead.as_str()));
    list.extend(tasks.iter().flat_map(notes::under));
    let at = list.len().min(2);
    list.insert(
        at,
        (
            "Corners".to_owned(),
            "the open circle is where finished faces meet. A sheet is cut there to the angle of the corner; its table \
             counts from its farthest point."
                .to_owned(),
        ),
    );
    blocks.push(noted(list));
    let facts = format!("{} {}", set.solved.substrate.name, show.prose(set.solved.substrate.thickness));
    closed(set, kind, vec![first], &blocks, ("Substrate template", "Substrate template", &facts, "For review"))
}
