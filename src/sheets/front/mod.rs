//! Construction elevation of a long face: frames, boards, openings, feet and floor, every opening located from the
//! finished end and from the counter's top, with the schedule of openings.

mod behind;
mod beside;
mod body;
mod chain;
mod cuts;
mod datum;
mod drops;
mod elevation;
mod facing;
mod floor;
mod fold;
mod ground;
mod key;
mod labels;
mod levels;
mod meeting;
mod part;
mod plan;
mod said;
mod schedule;
mod stops;

use super::canvas::Canvas;
use super::frame::{self, Area};
use super::set::{Kind, Set};
use super::title_block::{self, TitleBlock};
use super::{key_plan, notes};
use super::{marks, table::Table};
use crate::drawing::Page;
use crate::findings::Subject;
use crate::geometry::PaperPoint;
use crate::solve::Fitting;
use elevation::Elevation;
use facing::Facing;
pub use facing::title;
use plan::{Below, Plan};

/// Draws its pages: one or more of the elevation, and further ones for a schedule that doesn't fit under it.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let Kind::Front(leg_index, face) = kind else { return Vec::new() };
    let Some(leg) = set.solved.legs.get(leg_index) else { return Vec::new() };
    let facing = Facing::new(leg, face);
    let plan = Plan::new(set, kind, leg, facing);
    let mut pages = Vec::new();
    for (page, part) in plan.parts.iter().enumerate() {
        pages.push(page_of(set, kind, &plan, plan.elevation(part, page)));
    }
    if plan.below == Below::Further {
        pages.extend(schedule_pages(set, kind, &plan, pages.len()));
    }
    pages
}

fn block(
    set: &Set<'_>,
    kind: Kind,
    plan: &Plan<'_>,
    page: usize,
    title: &str,
    words: &str,
    scale: String,
) -> TitleBlock {
    let several = set.solved.legs.len() > 1;
    let leg = if several { format!(", leg {}", plan.leg.id) } else { String::new() };
    TitleBlock {
        title: title.to_owned(),
        subtitle: format!("{}{leg}, {words}", set.solved.job.title),
        kind: "Elevation, construction".to_owned(),
        scale,
        ..set.title_block(kind, page)
    }
}

fn page_of(set: &Set<'_>, kind: Kind, plan: &Plan<'_>, mut e: Elevation<'_>) -> Page {
    let mut canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let band = plan.band(&canvas, &e);
    let area = Area { top: inside.top + 8.0, bottom: band - 5.0, ..inside };
    e.place(&mut canvas, plan.scale, area);
    behind::over(&mut canvas, &e);
    body::draw(&mut canvas, &e);
    behind::under(&mut canvas, &e);
    beside::draw(&mut canvas, &e);
    ground::draw(&mut canvas, &e);
    let dims = canvas.layer(e.view.layer, "dimensions");
    let heading = format!("{}, construction view", e.facing.title());
    title_block::heading(&mut canvas, inside.left, inside.top + 3.5, &heading, &plan.scale.words());
    marks::scale_bar(&mut canvas, dims, inside.right - 6.0, inside.top + 4.0, plan.scale, set.solved.show.system);
    datum::pole(&mut canvas, dims, &e);
    datum::match_lines(&mut canvas, dims, &e);
    fold::lines(&mut canvas, dims, &e);
    labels::centrelines(&mut canvas, dims, &e);
    stops::draw(&mut canvas, dims, &e);
    chain::draw(&mut canvas, dims, &e);
    let lettering = canvas.layer(e.view.layer, "labels");
    levels::draw(&mut canvas, lettering, &e);
    datum::match_words(&mut canvas, lettering, &e);
    fold::words(&mut canvas, lettering, &e);
    beside::words(&mut canvas, lettering, &e);
    behind::words(&mut canvas, lettering, &e);
    drops::draw(&mut canvas, dims, &e);
    cuts::draw(&mut canvas, lettering, &e);
    labels::draw(&mut canvas, lettering, &e);
    ground::fall(&mut canvas, lettering, &e);
    let fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
    under(set, &mut canvas, plan, &e, &fittings, band);
    findings(set, &mut canvas, kind, &e);
    key_plan::draw_where_free(&mut canvas, set.solved, plan.leg_index, &[e.facing.face], &[e.area()]);
    let words = e.part.words(e.leg, &e.facing);
    let keyed = plan.below != Below::Further && key::is_drawn(e.leg, &e.facing);
    let scale = plan.scale.words();
    let scale = if keyed { format!("{scale}, key {}", key::scale(e.leg, &e.facing).words()) } else { scale };
    let block = block(set, kind, plan, e.page, e.facing.title(), &words, scale);
    set.finish(canvas, kind, e.page, &block)
}

/// Under the elevation: schedule and notes at the left, the key over the title block at the right; or the notes alone.
fn under(set: &Set<'_>, canvas: &mut Canvas, plan: &Plan<'_>, e: &Elevation<'_>, fittings: &[&Fitting], band: f64) {
    let inside = frame::inside(canvas);
    let corner = title_block::corner(canvas);
    let left = Area { top: band, right: corner.x - 6.0, ..inside };
    let notes_layer = canvas.layer(Canvas::ROOT, "notes");
    if plan.below == Below::Further {
        let words = plan.left_notes(e, left.width(), inside.bottom - corner.y - 4.5);
        notes::list(canvas, notes_layer, PaperPoint::new(left.left, corner.y + 3.5), &words, left.width());
        return;
    }
    let table = schedule::table(set, e.leg, &e.facing, fittings, plan.table_room(canvas, plan.below));
    let said = said::notes(e, true);
    let mut y = band;
    if !fittings.is_empty() {
        y = openings_table(set, canvas, &table, PaperPoint::new(left.left, y), 0, table.rows.len(), "Openings");
        y += 2.0;
    }
    notes::list(canvas, notes_layer, PaperPoint::new(left.left, y + 4.6), &said, left.width());
    let top = if plan.below == Below::Across { y + 4.0 } else { band };
    let area = Area { left: corner.x + 8.0, top, right: inside.right, bottom: corner.y };
    key::draw(canvas, set, e.leg, &e.facing, area);
}

/// A stretch of the schedule under its heading; returns its lower end.
fn openings_table(
    set: &Set<'_>,
    canvas: &mut Canvas,
    table: &Table,
    corner: PaperPoint,
    from: usize,
    to: usize,
    title: &str,
) -> f64 {
    title_block::heading(canvas, corner.x, corner.y + 3.5, title, "");
    let layer = canvas.layer(Canvas::ROOT, "table");
    table.draw_rows(canvas, layer, corner.moved(0.0, 5.2), set.solved.show, from, to)
}

/// Height of the heading over a schedule, mm.
const HEADING: f64 = 5.2;

/// Pages of schedule, notes and key, where they don't fit under the elevation.
fn schedule_pages(set: &Set<'_>, kind: Kind, plan: &Plan<'_>, first: usize) -> Vec<Page> {
    let whole = plan.whole();
    let e = Elevation::new(set, kind, plan.leg, plan.facing, whole, 0);
    let fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
    let table = schedule::table(set, plan.leg, &plan.facing, &fittings, frame::inside(&set.sheet()).width());
    let said = said::notes(&e, schedule::has_frame(&table));
    let (mut pages, mut from) = (Vec::new(), 0);
    loop {
        let mut canvas = set.sheet();
        let inside = frame::inside(&canvas);
        let corner = title_block::corner(&canvas);
        let room = corner.y - 6.0 - inside.top - HEADING;
        let notes_height = notes::list_height(&said, inside.width()) + 8.0;
        let rest = table.rows.len() - from;
        let mut rows = rest;
        while rows > 0 && table.height(rows) > room {
            rows -= 1;
        }
        let to = from + rows.max(usize::from(rest > 0));
        let title = if from == 0 { "Openings" } else { "Openings, continued" };
        let mut y = inside.top;
        if rest > 0 {
            y = openings_table(set, &mut canvas, &table, PaperPoint::new(inside.left, inside.top), from, to, title);
        }
        from = to;
        let left = corner.y - 6.0 - y;
        let mut done = false;
        if from == table.rows.len() && left >= notes_height + key::height(plan.leg, &plan.facing) + 4.0 {
            let layer = canvas.layer(Canvas::ROOT, "notes");
            let y = notes::list(&mut canvas, layer, PaperPoint::new(inside.left, y + 7.0), &said, inside.width());
            let area = Area {
                left: inside.left,
                top: y + 2.0,
                right: inside.right.min(inside.left + 190.0),
                bottom: corner.y,
            };
            key::draw(&mut canvas, set, plan.leg, &plan.facing, area);
            done = true;
        }
        let page = first + pages.len();
        let keyed = done && key::is_drawn(plan.leg, &plan.facing);
        let scale =
            if keyed { format!("key {}", key::scale(plan.leg, &plan.facing).words()) } else { "\u{2013}".to_owned() };
        let title = format!("{}: openings", plan.facing.title());
        let block = block(set, kind, plan, page, &title, &e.part.words(plan.leg, &plan.facing), scale);
        pages.push(set.finish(canvas, kind, page, &block));
        if done || pages.len() > 200 {
            return pages;
        }
    }
}

/// Numbered marks of findings at their things.
fn findings(set: &Set<'_>, canvas: &mut Canvas, kind: Kind, e: &Elevation<'_>) {
    let at = canvas.layer(Canvas::ROOT, "findings");
    let d = &e.leg.datums;
    for fitting in e.leg.fittings.iter().filter(|fitting| e.part.has(fitting)) {
        let (x0, x1) = e.facing.span(fitting.left, fitting.right);
        let room = labels::hole(e, fitting);
        let place = room.map_or(e.view.at((x0 + x1).half(), d.counter_top), |r| {
            PaperPoint::new(r.right - 5.0, (r.top + r.bottom) / 2.0)
        });
        set.mark(canvas, at, kind, &fitting.subject(), place);
    }
    for index in e.part.modules.clone() {
        let Some(module) = e.leg.modules.get(index) else { continue };
        let place = e.view.at(e.facing.x(module.centre()), d.frame_bottom).moved(0.0, -4.0);
        set.mark(canvas, at, kind, &Subject::Module(e.leg_index, index), place);
    }
    for (index, foot) in floor::front_row(e.leg, &e.facing) {
        if e.part.modules.contains(&foot.module) {
            let place = e.view.at(e.facing.x(foot.u), foot.ground).moved(4.0, 6.0);
            set.mark(canvas, at, kind, &Subject::Foot(e.leg_index, index), place);
        }
    }
    if e.part.last {
        let end = e.view.at(e.counter().1, d.counter_top).moved(-6.0, -6.0);
        set.mark(canvas, at, kind, &Subject::Counter(e.leg_index), end);
        set.mark(canvas, at, kind, &Subject::Leg(e.leg_index), end.moved(-8.0, 0.0));
    }
}
