//! Both ends of a leg side by side: build-ups on edge, overhangs, openings, the floor as it falls across.

mod end;
mod others;
mod picture;
mod schedule;
mod sizes;

use super::canvas::Canvas;
use super::frame::{self, Area};
use super::key_plan;
use super::levels::{self, Level};
use super::marks;
use super::notes;
use super::scale::{STANDARD, Scale};
use super::set::{Kind, Set};
use super::table::Table;
use super::title_block::{self, TitleBlock};
use super::view::View;
use crate::drawing::Page;
use crate::drawing::lettering::TITLE;
use crate::geometry::PaperPoint;
use crate::solve::{Datum, Face, Solved};
use crate::units::Show;
use end::{End, EndView};

/// Room that a heading takes, mm.
const HEADING: f64 = 6.0;
/// From the last rule of one thing to the title of the next, mm.
const BETWEEN: f64 = 7.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let Kind::Ends(leg) = kind else { return Vec::new() };
    let Some(leg) = set.solved.legs.get(leg) else { return Vec::new() };
    let ends = [Face::Left, Face::Right].map(|face| End::new(set.solved, leg, face));
    let sheet = Sheet { set, kind, ends, show: set.solved.show };
    let mut canvas = set.sheet();
    let (inside, corner) = (frame::inside(&canvas), title_block::corner(&canvas));
    let roomy = inside.width() >= 360.0 && inside.height() >= 230.0;
    if roomy {
        let right = Area { left: corner.x + 8.0, top: inside.top, right: inside.right, bottom: corner.y - 6.0 };
        let left = Area { left: inside.left, top: inside.top, right: corner.x - 6.0, bottom: inside.bottom };
        let (openings, said) =
            (schedule::openings(&sheet.ends, sheet.show, left.width()), schedule::notes(&sheet.ends, sheet.show));
        let build_ups = schedule::build_ups(leg, sheet.show, right.width());
        let said_height = notes::list_height(&said, left.width());
        let openings_height = openings.as_ref().map_or(0.0, |table| titled_height(table) + BETWEEN);
        let left_top = left.bottom - said_height - openings_height;
        let right_top = right.bottom - titled_height(&build_ups);
        let views = Area { bottom: left_top.min(right_top) - BETWEEN, ..inside };
        let (scale, taken) = sheet.views(&mut canvas, &views);
        if let Some(table) = &openings {
            titled(&mut canvas, table, "Openings in the ends", PaperPoint::new(left.left, left_top), sheet.show);
        }
        titled(&mut canvas, &build_ups, "Build-ups", PaperPoint::new(right.left, right_top), sheet.show);
        let layer = canvas.layer(Canvas::ROOT, "notes");
        let first = left.bottom - said_height + notes::PITCH - 0.5;
        notes::list(&mut canvas, layer, PaperPoint::new(left.left, first), &said, left.width());
        sheet.key_plan(&mut canvas, taken);
        return vec![sheet.finish(canvas, 0, scale.words())];
    }
    let whole = Area { bottom: corner.y - 4.0, ..inside };
    let (scale, taken) = sheet.views(&mut canvas, &whole);
    sheet.key_plan(&mut canvas, taken);
    let mut pages = vec![sheet.finish(canvas, 0, scale.words())];
    let mut canvas = set.sheet();
    let mut y = whole.top;
    if let Some(table) = schedule::openings(&sheet.ends, sheet.show, whole.width()) {
        y = titled(&mut canvas, &table, "Openings in the ends", PaperPoint::new(whole.left, y), sheet.show) + BETWEEN;
    }
    let build_ups = schedule::build_ups(leg, sheet.show, whole.width().min(180.0));
    y = titled(&mut canvas, &build_ups, "Build-ups", PaperPoint::new(whole.left, y), sheet.show) + BETWEEN + 1.5;
    let layer = canvas.layer(Canvas::ROOT, "notes");
    notes::list(
        &mut canvas,
        layer,
        PaperPoint::new(whole.left, y),
        &schedule::notes(&sheet.ends, sheet.show),
        whole.width(),
    );
    pages.push(sheet.finish(canvas, 1, "none".to_owned()));
    pages
}

/// A table under its title, from its top left corner. Returns its last rule.
fn titled(canvas: &mut Canvas, table: &Table, title: &str, corner: PaperPoint, show: Show) -> f64 {
    title_block::heading(canvas, corner.x, corner.y + TITLE, title, "");
    let layer = canvas.layer(Canvas::ROOT, "table");
    table.draw(canvas, layer, corner.moved(0.0, TITLE + 2.0), show)
}

fn titled_height(table: &Table) -> f64 {
    TITLE + 2.0 + table.height(table.rows.len())
}

/// The ends of a leg that are seen, and what their views are called.
pub fn shown(solved: &Solved, leg: usize) -> Vec<(Face, &'static str)> {
    let Some(leg) = solved.legs.get(leg) else { return Vec::new() };
    let ends = [Face::Left, Face::Right].map(|face| End::new(solved, leg, face));
    ends.iter().filter(|end| !end.is_covered()).map(|end| (end.face, end.title())).collect()
}

struct Sheet<'a, 's> {
    set: &'a Set<'s>,
    kind: Kind,
    ends: [End<'s>; 2],
    show: Show,
}

/// Room beside the back of a view for what is lettered there, mm.
const BESIDE: f64 = 30.0;

impl Sheet<'_, '_> {
    fn levels(&self) -> Vec<Level> {
        let d = &self.ends[0].leg.datums;
        let mut all: Vec<Level> =
            [Datum::CounterTop, Datum::SubstrateTop, Datum::FrameTop, Datum::FrameBottom, Datum::Floor]
                .into_iter()
                .filter(|datum| *datum != Datum::SubstrateTop || d.substrate_top != d.frame_top)
                .map(|datum| Level::new(datum.words(), d.at(datum)))
                .collect();
        if let Some(trim) = &self.set.solved.trim {
            all.push(Level::new("base trim top", trim.top));
        }
        all
    }

    /// Both views at the largest scale that fits, the fronts facing one another, the levels between them. Returns the
    /// scale and the area that they take.
    fn views(&self, canvas: &mut Canvas, area: &Area) -> (Scale, Area) {
        let levels = self.levels();
        let fan = levels::width(&levels, self.show) + 14.0;
        let d = &self.ends[0].leg.datums;
        let splash = self.set.solved.counter.splash.map_or(0.0, |splash| splash.height.mm());
        let tops = self.ends.iter().filter_map(others::reach).map(|(_, _, top)| (top - d.counter_top).mm());
        let splash = tops.fold(splash, f64::max);
        let spans = self.ends.map(|end| picture::reach(&end));
        let mut chosen = None;
        for scale in STANDARD {
            let factor = scale.factor();
            let wide: f64 =
                spans.iter().map(|(near, far)| (*far - *near).mm() * factor).sum::<f64>() + 2.0 * BESIDE + fan + 8.0;
            let mut below: f64 = 0.0;
            for (end, (near, far)) in self.ends.iter().zip(&spans) {
                let view = measured(*scale);
                let deep = -end.floor(*near).min(end.floor(*far)) * factor;
                below = below.max(deep + sizes::below(end, &view, self.show));
            }
            let above = sizes::ABOVE + splash * factor;
            let high = HEADING + above + d.counter_top.mm() * factor + below;
            chosen = Some((*scale, wide, high, above));
            if wide <= area.width() && high <= area.height() {
                break;
            }
        }
        let (scale, wide, high, above) = chosen.unwrap_or((Scale(5000), 0.0, 0.0, sizes::ABOVE));
        let factor = scale.factor();
        let spare = (area.width() - wide).max(0.0) / 2.0;
        let base = area.top
            + HEADING
            + ((area.height() - high).max(0.0) / 3.0).min(12.0)
            + above
            + d.counter_top.mm() * factor;
        let width_of = |k: usize| (spans[k].1 - spans[k].0).mm() * factor;
        // The left end's back is at the left of its view, the right end's at the right.
        let left = area.left + spare + BESIDE;
        let middle = left + width_of(0) + 4.0;
        let right = middle + fan + 4.0;
        let lefts = [left + spans[0].1.mm() * factor, right - spans[1].0.mm() * factor];
        let mut drawn = Vec::new();
        for (end, x) in self.ends.iter().zip(lefts) {
            let name = if end.is_left() { "left end" } else { "right end" };
            let view: EndView = View::open(canvas, name, scale, PaperPoint::new(x, base));
            picture::draw(canvas, &view, end, base - d.counter_top.mm() * factor - above + 1.0);
            sizes::draw(canvas, &view, end, self.show);
            others::names(canvas, view.layer, &view, end);
            drawn.push(view);
        }
        let layer = canvas.layer(Canvas::ROOT, "levels");
        levels::draw_between(canvas, layer, &drawn[0], (middle, Some(middle + fan)), &levels, self.show);
        let headings = [left.min(area.left + spare + BESIDE), right];
        for (end, x) in self.ends.iter().zip(headings) {
            let way = if end.is_left() { "from the left" } else { "from the right" };
            let x = if end.is_left() { area.left } else { x - 4.0 };
            let title = format!("{}, seen {way}", end.title());
            let x = x.min(area.right - title_block::heading_width(&title, &scale.words()));
            title_block::heading(canvas, x, area.top + TITLE, &title, &scale.words());
        }
        let layer = canvas.layer(Canvas::ROOT, "scale-bar");
        let long = marks::scale_bar_length(scale, self.show.system) + 6.0;
        // At the right edge, or between the headings.
        let (top, between) = (area.top - 1.0, headings[1] - 12.0);
        let free = |right: &f64| canvas.is_box_free(right - long, top, right + 2.0, top + 6.0);
        if let Some(right) = [area.right - 2.0, between].into_iter().find(free) {
            marks::scale_bar(canvas, layer, right, area.top + TITLE + 1.0, scale, self.show.system);
        }
        for (end, view) in self.ends.iter().zip(&drawn) {
            for (_, fitting, cutout) in end.openings() {
                let place = view.at(end.x(cutout.extent.x1), cutout.extent.y1);
                self.set.mark(canvas, view.layer, self.kind, &fitting.subject(), place);
            }
        }
        let taken = Area {
            left: left - BESIDE,
            top: area.top,
            right: right + width_of(1) + BESIDE,
            bottom: base + high - HEADING - above - d.counter_top.mm() * factor,
        };
        (scale, taken)
    }

    /// The key plan, where the views leave white.
    fn key_plan(&self, canvas: &mut Canvas, views: Area) {
        let Some(leg) = self.kind.leg() else { return };
        let faces: Vec<Face> = shown(self.set.solved, leg).into_iter().map(|(face, _)| face).collect();
        key_plan::draw_where_free(canvas, self.set.solved, leg, &faces, &[views]);
    }

    fn finish(&self, canvas: Canvas, page: usize, scale: String) -> Page {
        let block = self.set.title_block(self.kind, page);
        let leg = if self.set.solved.legs.len() > 1 { format!(", leg {}", self.ends[0].leg.id) } else { String::new() };
        let block = TitleBlock {
            title: "End elevations".to_owned(),
            subtitle: format!("{}{leg}", block.subtitle),
            kind: "Elevation, construction".to_owned(),
            scale,
            ..block
        };
        self.set.finish(canvas, self.kind, page, &block)
    }
}

/// A view that only sizes are asked of.
fn measured(scale: Scale) -> EndView {
    let mut canvas = Canvas::new(1.0, 1.0);
    View::open(&mut canvas, "measured", scale, PaperPoint::new(0.0, 0.0))
}
