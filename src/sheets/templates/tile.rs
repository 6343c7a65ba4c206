//! One page of a template: what of the part it shows, at 1:1, and what is said about it.

use super::bars;
use super::label::{Label, Map};
use super::piece::{Family, LineKind, Template};
use super::plan::{PAST, Plan, Setting, Window};
use super::room::Room;
use super::{around, says, waste};
use crate::drawing::lettering::{self, Style};
use crate::drawing::{Colour, Dash, Page, Pen, Shape, Step};
use crate::geometry::{Leg, Outline, PaperPoint, Within};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::notes;
use crate::sheets::scale::Scale;
use crate::sheets::view::View;
use crate::solve::Solved;

/// Ink of everything but cuts: not quite black, so that a reader of the file tells a cut from all else.
pub const NOTE: Colour = Colour(0x1f, 0x1f, 0x1f);
/// Hatch of the waste.
const HATCH: Colour = Colour(0x77, 0x76, 0x6f);
/// Fine lines.
pub const FINE: Pen = Pen::FINE.coloured(NOTE);

/// A page being drawn.
pub struct Sheet<'t> {
    pub solved: &'t Solved,
    pub template: &'t Template,
    pub plan: &'t Plan,
    pub setting: &'t Setting,
    /// Column and row of the tile.
    pub place: (usize, usize),
    /// All of the part that it shows.
    pub window: Window,
    /// What only it shows.
    pub trim: Window,
    pub view: View<Leg>,
    pub canvas: Canvas,
}

/// The page of a tile.
pub fn page(
    solved: &Solved,
    template: &Template,
    plan: &Plan,
    setting: &Setting,
    (column, row): (usize, usize),
) -> Page {
    let layout = plan.layout;
    let window = plan.window(column, row);
    let (left, _, _, bottom) = layout.ink;
    let mut canvas = Canvas::new(layout.paper.0 / layout.stretch.0, layout.paper.1 / layout.stretch.1);
    let origin = PaperPoint::new(left - window.x0, bottom + window.y0);
    let view = View::open(&mut canvas, "part", Scale(1), origin);
    let trim = plan.trim(column, row);
    let mut sheet = Sheet { solved, template, plan, setting, place: (column, row), window, trim, view, canvas };
    if !plan.roll {
        around::glue_strips(&mut sheet);
    }
    sheet.part();
    says::crosses(&mut sheet);
    let marks = if plan.roll { Vec::new() } else { around::trim_lines(&mut sheet) };
    says::corners(&mut sheet);
    if !plan.roll {
        around::words(&mut sheet, &marks);
    }
    says::lines(&mut sheet);
    sheet.blocks();
    says::names(&mut sheet);
    let name = format!("{}-{}-{}", template.slug, row + 1, column + 1);
    let title =
        if plan.roll { template.name.clone() } else { format!("{}, tile {}-{}", template.name, row + 1, column + 1) };
    Page { stretch: layout.stretch, width: layout.paper.0, height: layout.paper.1, ..sheet.canvas.finish(name, title) }
}

impl Sheet<'_> {
    /// A point of the part on the paper.
    pub fn at(&self, x: f64, y: f64) -> PaperPoint {
        PaperPoint::new(self.view.x_mm(x), self.view.y_mm(y))
    }

    /// A window of the part on the paper.
    pub fn area(&self, window: &Window) -> Area {
        let (a, b) = (self.at(window.x0, window.y1), self.at(window.x1, window.y0));
        Area { left: a.x, top: a.y, right: b.x, bottom: b.y }
    }

    /// Where ink may lie.
    pub fn ink(&self) -> Area {
        self.area(&self.window)
    }

    /// A layer of the part's view.
    pub fn layer(&mut self, class: &str) -> Layer {
        self.canvas.layer(self.view.layer, class)
    }

    /// Waste, flanges, datum lines, cuts, in that order.
    fn part(&mut self) {
        if self.template.family != Family::Card {
            let layer = self.layer("waste");
            let strokes = waste::strokes(&self.template.region, &self.window);
            let steps: Vec<Step> = strokes
                .iter()
                .flat_map(|s| [Step::Move(self.at(s[0], s[1])), Step::Line(self.at(s[2], s[3]))])
                .collect();
            if !steps.is_empty() {
                self.canvas.steps(layer, steps, Paint::pen(Pen::FINE.coloured(HATCH)));
            }
        }
        let layer = self.layer("flange");
        let flange = Pen::SECONDARY.coloured(NOTE).dashed(Dash::PHANTOM);
        for (outline, _) in &self.template.flanges {
            self.outline(layer, outline, flange, "");
        }
        let layer = self.layer("lines");
        let (x0, y0, x1, y1) = self.template.bounds();
        let w = self.window;
        for line in &self.template.lines {
            let (low, high) = if line.upright { (w.x0, w.x1) } else { (w.y0, w.y1) };
            if line.at <= low || line.at >= high {
                continue;
            }
            let (from, to) = if line.upright {
                ((line.at, w.y0.max(y0 - PAST)), (line.at, w.y1.min(y1 + PAST)))
            } else {
                ((w.x0.max(x0 - PAST), line.at), (w.x1.min(x1 + PAST), line.at))
            };
            let (pen, class) = match line.kind {
                LineKind::Finished => (Pen::VISIBLE.accent().dashed(Dash::FINISHED), "datum"),
                LineKind::Datum => (Pen::DIMENSION.coloured(NOTE).dashed(Dash::HIDDEN), "datum"),
                LineKind::Centre => (Pen::DIMENSION.coloured(NOTE).dashed(Dash::CENTRE), "centreline"),
            };
            if from.0 < to.0 || from.1 < to.1 {
                let facts = if class == "datum" { vec![("data-datum", line.words.clone())] } else { Vec::new() };
                let shape = Shape::Line(self.at(from.0, from.1), self.at(to.0, to.1));
                self.canvas.shape(layer, shape, Paint::pen(pen), class, facts);
            }
        }
        let layer = self.layer("cuts");
        for outline in self.template.region.outlines() {
            self.outline(layer, outline, Pen::CUT, "cut");
        }
    }

    /// What of an outline lies in the window.
    fn outline(&mut self, layer: Layer, outline: &Outline, pen: Pen, class: &'static str) {
        let w = self.window;
        let parts = match outline.within(w.x0, w.y0, w.x1, w.y1) {
            Within::Nothing => Vec::new(),
            Within::Whole => vec![self.view.steps(outline)],
            Within::Parts(chains) => chains.iter().map(|chain| self.view.open_steps(chain)).collect(),
        };
        for steps in parts {
            self.canvas.shape(layer, Shape::Steps(steps), Paint::pen(pen), class, Vec::new());
        }
    }

    /// Scale bars both ways, the label, the map, each where the page is white.
    fn blocks(&mut self) {
        let layer = self.canvas.layer(Canvas::ROOT, "about");
        let area = self.quiet_area();
        let clear = 1.5;
        let Some((corner, rows)) = self.label_place(&area) else {
            self.bars(layer, &area);
            return;
        };
        let label = Label::new(self.solved, self.template, self.plan, self.setting, self.place.0, self.place.1);
        label.draw(&mut self.canvas, layer, corner.moved(clear, clear), rows);
        self.bars(layer, &area);
        if self.plan.roll {
            return;
        }
        let map = Map::new(self.plan, super::label::WIDTH, 66.0);
        let near = corner.y - area.top;
        let place = Room::of(&self.canvas, area).find(map.size.0 + 2.0 * clear, map.size.1 + 2.0 * clear, |x, y| {
            (y - near - 70.0).abs() + (x - (corner.x - area.left)).abs()
        });
        if let Some(place) = place {
            map.draw(&mut self.canvas, layer, place.moved(clear, clear), self.template, self.plan, self.place);
        }
    }

    /// Where words about the tile may lie: what only this tile shows; on a roll the strip beside the part.
    fn quiet_area(&self) -> Area {
        let ink = self.ink();
        if !self.plan.roll {
            let trim = self.area(&self.trim);
            return Area {
                left: trim.left + 1.5,
                top: trim.top + 1.5,
                right: trim.right - 1.5,
                bottom: trim.bottom - 1.5,
            };
        }
        let (_, y0, x1, _) = self.template.bounds();
        let past = PAST + 16.0;
        let (right, below) = (self.view.x_mm(x1 + past), self.view.y_mm(y0 - past));
        if ink.right - right > 150.0 { Area { left: right, ..ink } } else { Area { top: below, ..ink } }
    }

    /// The label's place and how many of its rows there is room for.
    fn label_place(&self, area: &Area) -> Option<(PaperPoint, usize)> {
        let room = Room::of(&self.canvas, *area);
        let all = 8 + usize::from(self.setting.printer.is_some());
        [all, 5, 3].into_iter().find_map(|rows| {
            let place = room.find(super::label::WIDTH + 3.0, Label::height(rows) + 3.0, |x, y| y + 0.6 * x)?;
            Some((place, rows))
        })
    }

    /// A bar each way, both as long as there is room for, with what they must measure.
    fn bars(&mut self, layer: Layer, area: &Area) {
        let room = Room::of(&self.canvas, *area);
        let both = bars::SIZES.into_iter().find_map(|size| {
            let [left, above, right, below] = bars::reach(size, true);
            let (width, height) = (left + right, above + below);
            let upright =
                room.find(width, height, |x, y| (area.width() - width - x) + 0.3 * (area.height() - height - y))?;
            let taken = [upright.x, upright.y, upright.x + width, upright.y + height];
            let [left_level, above_level, right_level, below_level] = bars::reach(size, false);
            let (width, height) = (left_level + right_level, above_level + below_level);
            let level = room.find_beside(width, height, taken, |x, y| (area.height() - height - y) + 0.3 * x)?;
            Some((size, upright.moved(left, above), level.moved(left_level, above_level)))
        });
        let Some((size, upright, level)) = both else { return };
        bars::draw(&mut self.canvas, layer, upright, size, true);
        bars::draw(&mut self.canvas, layer, level, size, false);
        // The sentence goes under the level bar, or as near to it as there is white; broken in two where it must.
        let sentence = bars::sentence(size);
        for width in [150.0, 80.0, 56.0] {
            let style = Style::body();
            let lines = notes::wrapped(&sentence, width, style.height, style.weight);
            let wide = lines.iter().map(|line| lettering::width(line, style.height, style.weight)).fold(0.0, f64::max);
            let high = lines.len() as f64 * notes::PITCH + 1.0;
            let (dx, dy) = (level.x - area.left, level.y + 9.0 - area.top);
            let room = Room::of(&self.canvas, *area);
            if let Some(place) = room.find(wide + 2.0, high, |x, y| (x - dx).abs() + (y - dy).abs()) {
                for (index, line) in lines.iter().enumerate() {
                    self.canvas.text(layer, place.moved(1.0, 3.5 + notes::PITCH * index as f64), line, &style);
                }
                return;
            }
        }
    }
}
