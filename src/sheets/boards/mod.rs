//! Board templates: every board that has an opening, drawn with its openings; the plain ones in a list.

mod bevel;
mod cell;
mod facing;
mod plain;
mod upright;

use super::canvas::Canvas;
use super::frame;
use super::notes;
use super::scale::Scale;
use super::set::{Kind, Set};
use super::shelves::{self, Block, Sheet};
use super::title_block::{self, TitleBlock};
use crate::drawing::Page;
use crate::geometry::PaperPoint;
use crate::solve::{Board, Finish, Leg};
use crate::units::Length;
use cell::Cell;
use facing::Facing;

/// Scales that a board is drawn at, the largest first; the last ones only where a board doesn't fit otherwise.
const SCALES: &[Scale] =
    &[Scale(8), Scale(10), Scale(12), Scale(16), Scale(20), Scale(24), Scale(32), Scale(48), Scale(100)];
/// Smaller ones are not taken to save pages.
const READABLE: Scale = Scale(16);
/// Width of the notes, mm.
const NOTES: f64 = 150.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let Kind::Boards(index) = kind else { return Vec::new() };
    let Some(leg) = set.solved.legs.get(index) else { return Vec::new() };
    let scale = scale(set, kind, leg);
    let mut sheets = vec![Sheet::fresh(set.sheet())];
    shelves::fill(&mut sheets, &blocks(set, kind, leg, scale), || set.sheet());
    let several = set.solved.legs.len() > 1;
    let words = if several { format!("leg {}, boards", index + 1) } else { "boards".to_owned() };
    let pages = sheets.into_iter().enumerate().map(|(page, sheet)| {
        let block = TitleBlock {
            title: "Board templates".to_owned(),
            subtitle: format!("{}, {words} and their openings", set.solved.job.title),
            kind: "Template".to_owned(),
            scale: sheet.scale_words(),
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    });
    pages.collect()
}

/// Boards with openings in order, then the list of the plain ones, then the notes.
fn blocks<'s>(set: &'s Set<'s>, kind: Kind, leg: &'s Leg, scale: Scale) -> Vec<Block<'s>> {
    let mut blocks: Vec<Block<'s>> = Vec::new();
    let cells = cells(set, kind, leg, scale);
    let level = cells.iter().map(Cell::over).fold(0.0, f64::max);
    for cell in cells {
        let cell = cell.level(level);
        let (width, height) = cell.size();
        let draw = Box::new(move |canvas: &mut Canvas, at: PaperPoint| cell.draw(canvas, at));
        blocks.push(Block { width, height, right: false, scale: Some(scale), draw });
    }
    if let Kind::Boards(index) = kind {
        blocks.extend(bevel::blocks(set, index, leg));
    }
    blocks.extend(lists(set, kind, leg));
    let said = said(set, leg);
    let height = 6.0 + notes::list_height(&said, NOTES);
    let draw = Box::new(move |canvas: &mut Canvas, at: PaperPoint| {
        let layer = canvas.layer(Canvas::ROOT, "notes");
        notes::list(canvas, layer, at.moved(0.0, 3.5), &said, NOTES);
    });
    blocks.push(Block { width: NOTES, height, right: true, scale: None, draw });
    blocks
}

fn cells<'s>(set: &'s Set<'s>, kind: Kind, leg: &'s Leg, scale: Scale) -> Vec<Cell<'s>> {
    let boards = as_cut(set, kind).iter().filter(|board| !board.fittings.is_empty());
    boards.map(|board| Cell::new(set, kind, Facing { leg, board }, scale)).collect()
}

/// The leg's boards as they are cut.
fn as_cut<'s>(set: &'s Set<'_>, kind: Kind) -> &'s [Board] {
    kind.leg().and_then(|leg| set.solved.shop.boards.get(leg)).map_or(&[], Vec::as_slice)
}

/// The list of plain boards, in as many stretches as an empty page's height asks for.
fn lists<'s>(set: &'s Set<'s>, kind: Kind, leg: &'s Leg) -> Vec<Block<'s>> {
    let Some(table) = plain::table(set, leg, as_cut(set, kind)) else { return Vec::new() };
    let heading = 5.2;
    let room = shelves::page_height(&set.sheet()) - heading;
    let mut most = table.rows.len();
    while most > 1 && table.height(most) > room {
        most -= 1;
    }
    let stretches: Vec<(usize, usize)> =
        (0..table.rows.len()).step_by(most.max(1)).map(|from| (from, (from + most).min(table.rows.len()))).collect();
    let stretch = |(from, to): (usize, usize)| {
        let table = table.clone();
        let (width, height) = (table.width(), heading + table.height(to - from));
        let draw = Box::new(move |canvas: &mut Canvas, at: PaperPoint| {
            let title = if from == 0 { "Boards without openings" } else { "Boards without openings, continued" };
            title_block::heading(canvas, at.x, at.y + 3.5, title, "");
            let layer = canvas.layer(Canvas::ROOT, "table");
            table.draw_rows(canvas, layer, at.moved(0.0, heading), set.solved.show, from, to);
        });
        Block { width, height, right: true, scale: None, draw }
    };
    stretches.into_iter().map(stretch).collect()
}

/// The largest readable scale that takes the fewest pages.
fn scale(set: &Set<'_>, kind: Kind, leg: &Leg) -> Scale {
    let canvas = Canvas::new(set.solved.paper.width, set.solved.paper.height);
    let (inside, corner) = (frame::inside(&canvas), title_block::corner(&canvas));
    let column = corner.x - 6.0 - inside.left;
    // The greatest board that a page takes: as the shelves are laid out.
    let room = if column >= 120.0 { (column, inside.height()) } else { (inside.width(), corner.y - 6.0 - inside.top) };
    let fits =
        |scale: Scale| cells(set, kind, leg, scale).iter().map(Cell::size).all(|(w, h)| w <= room.0 && h <= room.1);
    let pages = |scale: Scale| {
        let blank = || Canvas::new(set.solved.paper.width, set.solved.paper.height);
        let mut sheets = vec![Sheet::fresh(blank())];
        let blocks: Vec<Block<'_>> = blocks(set, kind, leg, scale)
            .into_iter()
            .map(|block| Block { draw: Box::new(|_, _| {}), ..block })
            .collect();
        shelves::fill(&mut sheets, &blocks, blank);
        sheets.len()
    };
    let fitting: Vec<Scale> = SCALES.iter().copied().filter(|scale| fits(*scale)).collect();
    let readable = fitting.iter().copied().filter(|scale| *scale <= READABLE);
    let best = readable.min_by_key(|scale| (pages(*scale), scale.0));
    best.or(fitting.first().copied()).or(SCALES.last().copied()).unwrap_or(READABLE)
}

fn said(set: &Set<'_>, leg: &Leg) -> Vec<(String, String)> {
    let mut notes = Vec::new();
    let mut say = |lead: &str, sentence: String| notes.push((lead.to_owned(), sentence));
    if leg.boards.is_empty() {
        say("Boards", "this leg has none: its faces are bare frame.".to_owned());
    }
    let finished = leg.boards.iter().any(|board| leg.finish(board.face).is_some());
    let face = if finished { "the side that takes the finish is up" } else { "the outside is up" };
    let gap = set.solved.shop.cutting.laying.gap;
    if gap > Length::ZERO && leg.boards.len() > 1 {
        let gap = set.solved.show.prose(gap);
        say("Gap", format!("boards are drawn as they are cut, {gap} apart where two of one face meet."));
    }
    if !leg.boards.is_empty() {
        let show = set.solved.show;
        let (foot, least) = (leg.datums.frame_bottom, set.solved.shop.cutting.laying.off_floor);
        say(
            "Off the floor",
            format!(
                "boards end level with the frame\u{2019}s underside, {} over the floor\u{2019}s high point; {} at least.",
                show.prose(foot),
                show.prose(least)
            ),
        );
    }
    say("Face up", format!("every board is drawn as it lies on the trestles: {face}."));
    say(
        "Open circle",
        "where the tape starts: at the board\u{2019}s own edge under and left of it, at the counter top right of it."
            .to_owned(),
    );
    say(
        "Over the board",
        "from what is finished, which is not there when the board is cut: a check, not a start for the tape."
            .to_owned(),
    );
    let names: Vec<&str> = leg
        .boards
        .iter()
        .filter_map(|board| leg.finish(board.face))
        .map(|finish: &Finish| finish.name.as_str())
        .collect();
    if let Some(name) = names.first() {
        say("Finish", format!("{name} covers the boards; openings are cut in the board before it goes on."));
    }
    if leg.boards.iter().any(|board| board.bevels.iter().any(|bevel| bevel.abs() > 1e-6)) {
        say("Edges", "a board\u{2019}s width is that of its outside. Where legs meet its edge is cut at the angle shown: set the saw by the corner as measured, and try it on an offcut.".to_owned());
    }
    let gap = set.solved.show.prose(set.solved.frame.rough_gap);
    say("Frame", format!("openings in the frame are {gap} larger on every closed side."));
    say("Caution", "cutting board makes dust that harms the lungs: follow its data sheet, cut wet or with extraction, wear a mask. Check every opening against the fitting in hand before cutting.".to_owned());
    notes
}
