//! One page of a template: what of the part it shows, at 1:1, and what is said about it.

use super::piece::{Family, LineKind, Template};
use super::plan::{PAST, Plan, Setting, Window};
use super::{around, blocks, says, waste};
use crate::drawing::{Colour, Dash, Page, Pen, Shape, Step};
use crate::geometry::{Leg, Outline, PaperPoint, Within};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
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
    blocks::draw(&mut sheet);
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
}
