//! How a part is spread over paper: the grid of tiles, where it starts, which of them have anything on them.

use super::piece::{LineKind, Template};
use super::stock::Stock;
use crate::findings::Problem;
use crate::geometry::{Outline, Within};
use crate::solve::Printer;

/// Edge of the paper that a printer can't reach, mm (1/4 in), unless the job says otherwise.
pub const MARGIN: f64 = 6.35;
/// How far tiles lie over each other, mm (1/2 in), unless the job says otherwise.
pub const OVERLAP: f64 = 12.7;
/// White round the part, so that its line never falls on the outermost trim line, mm.
const PAD: f64 = 4.0;
/// How far lines are carried past the part, mm.
pub const PAST: f64 = 8.0;
/// Strip of a roll beside the part for label, map and bars, mm.
const STRIP: f64 = 190.0;

/// How templates are printed.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The paper.
    pub stock: Stock,
    /// Edge that the printer can't reach, mm.
    pub margin: f64,
    /// Overlap of tiles, mm.
    pub overlap: f64,
    /// The printer that is corrected for.
    pub printer: Option<Printer>,
}

/// A level box in a part's coordinates, y up, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Left.
    pub x0: f64,
    /// Bottom.
    pub y0: f64,
    /// Right.
    pub x1: f64,
    /// Top.
    pub y1: f64,
}

impl Window {
    /// Its width.
    pub fn width(&self) -> f64 {
        self.x1 - self.x0
    }
    /// Its height.
    pub fn height(&self) -> f64 {
        self.y1 - self.y0
    }
}

/// The paper as it is laid out: true millimetres, as they come out of the printer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// The file's page, mm.
    pub paper: (f64, f64),
    /// What everything is multiplied by to come out true.
    pub stretch: (f64, f64),
    /// The printer's across is the page's across; otherwise the page goes through it turned.
    pub upright: bool,
    /// Where ink may lie on the page as printed: left, top, right, bottom, mm.
    pub ink: (f64, f64, f64, f64),
}

/// A part spread over paper.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The paper.
    pub layout: Layout,
    /// Left and bottom of the first tile's trim box, in the part's coordinates.
    pub origin: (f64, f64),
    /// From tile to tile.
    pub pitch: (f64, f64),
    /// Columns and rows.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// Half of the overlap: from the trim box to the edge of the ink.
    pub edge: f64,
    /// It is one page of a roll.
    pub roll: bool,
    printed: Vec<bool>,
}

impl Plan {
    /// Trim box of a tile: what of the part only this tile shows when all are glued.
    pub fn trim(&self, column: usize, row: usize) -> Window {
        let (x0, y0) = (self.origin.0 + self.pitch.0 * column as f64, self.origin.1 + self.pitch.1 * row as f64);
        Window { x0, y0, x1: x0 + self.pitch.0, y1: y0 + self.pitch.1 }
    }

    /// All that a tile shows.
    pub fn window(&self, column: usize, row: usize) -> Window {
        let trim = self.trim(column, row);
        Window { x0: trim.x0 - self.edge, y0: trim.y0 - self.edge, x1: trim.x1 + self.edge, y1: trim.y1 + self.edge }
    }

    /// Whether a tile has anything on it; tiles off the grid have not.
    pub fn is_printed(&self, column: Option<usize>, row: Option<usize>) -> bool {
        let (Some(column), Some(row)) = (column, row) else { return false };
        column < self.columns && row < self.rows && self.printed[row * self.columns + column]
    }

    /// Tiles that are printed: column and row, from the first row up.
    pub fn tiles(&self) -> Vec<(usize, usize)> {
        let all = (0..self.rows).flat_map(|row| (0..self.columns).map(move |column| (column, row)));
        all.filter(|&(column, row)| self.is_printed(Some(column), Some(row))).collect()
    }

    /// Sheets of paper that it takes.
    pub fn count(&self) -> usize {
        self.printed.iter().filter(|printed| **printed).count()
    }
}

/// Spreads a part over the paper of a setting, with the fewest sheets of both orientations.
///
/// # Errors
/// When the margins leave no room, or the part doesn't fit the roll.
pub fn plan(template: &Template, setting: &Setting) -> Result<Plan, Problem> {
    match &setting.stock {
        Stock::Sheet { name, short, long } => {
            let upright = tiled(template, layout(setting, (*short, *long), true), setting.overlap, name)?;
            let lying = tiled(template, layout(setting, (*long, *short), false), setting.overlap, name)?;
            Ok(if lying.count() < upright.count() { lying } else { upright })
        }
        Stock::Roll { name, width, longest } => on_roll(template, setting, name, *width, *longest),
    }
}

/// A page's layout. `upright`: the printer's across is the page's across.
pub fn layout(setting: &Setting, paper: (f64, f64), upright: bool) -> Layout {
    let printed = setting.printer.as_ref().map_or((1.0, 1.0), |printer| {
        if upright { (printer.across, printer.along) } else { (printer.along, printer.across) }
    });
    // What the file's page comes out as; ink past the paper itself is lost when the printer prints large.
    let (right, bottom) = ((paper.0 * printed.0).min(paper.0), (paper.1 * printed.1).min(paper.1));
    let m = setting.margin;
    Layout { paper, stretch: (1.0 / printed.0, 1.0 / printed.1), upright, ink: (m, m, right - m, bottom - m) }
}

fn tiled(template: &Template, layout: Layout, overlap: f64, name: &str) -> Result<Plan, Problem> {
    let (left, top, right, bottom) = layout.ink;
    let pitch = (right - left - overlap, bottom - top - overlap);
    if pitch.0 < 60.0 || pitch.1 < 60.0 {
        return Err(Problem::new(
            format!("the margins and the overlap leave no room on {name} for a tile"),
            "make --margin or --overlap smaller, or choose larger paper",
        ));
    }
    let (x0, y0, x1, y1) = template.bounds();
    let count = |size: f64, pitch: f64| ((size + 2.0 * PAD) / pitch).ceil().max(1.0) as usize;
    let (columns, rows) = (count(x1 - x0, pitch.0), count(y1 - y0, pitch.1));
    if columns * rows > 4000 {
        return Err(Problem::new(
            format!("{} would take {} tiles of {name}", template.name, columns * rows),
            "choose larger paper, or a roll, with --paper",
        ));
    }
    let edge = overlap / 2.0;
    let outlines = || template.region.outlines().chain(template.flanges.iter().map(|(outline, _)| outline));
    let start = |low: f64, high: f64, pitch: f64, columns: usize, across_x: bool| {
        let slack = columns as f64 * pitch - (high - low) - 2.0 * PAD;
        let risky = Risks::of(outlines(), across_x);
        let steps = slack.floor().clamp(0.0, 400.0) as usize;
        let candidates = (0..=steps).map(|k| low - PAD - slack * (k as f64 / steps.max(1) as f64));
        let cost = |at: f64| risky.cost(at, pitch, columns, edge) + (at - (low - PAD - slack / 2.0)).abs() * 1e-3;
        candidates.min_by(|a, b| cost(*a).total_cmp(&cost(*b))).unwrap_or(low - PAD)
    };
    let origin = (start(x0, x1, pitch.0, columns, true), start(y0, y1, pitch.1, rows, false));
    let mut plan =
        Plan { layout, origin, pitch, columns, rows, edge, roll: false, printed: vec![true; columns * rows] };
    plan.printed = (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (column, row)))
        .map(|(c, r)| has_ink(template, &plan, c, r))
        .collect();
    Ok(plan)
}

/// A tile is printed when a cut, a flange, a centreline or a finished face runs through what only it shows. Centrelines
/// and finished faces tie the tiles of a cutout to those of the edges.
fn has_ink(template: &Template, plan: &Plan, column: usize, row: usize) -> bool {
    let trim = plan.trim(column, row);
    let crosses = |outline: &Outline| {
        outline.within(trim.x0 - 1.0, trim.y0 - 1.0, trim.x1 + 1.0, trim.y1 + 1.0) != Within::Nothing
    };
    let (x0, y0, x1, y1) = template.bounds();
    let meets = trim.x0 < x1 && trim.x1 > x0 && trim.y0 < y1 && trim.y1 > y0;
    let lines = template.lines.iter().filter(|line| line.kind != LineKind::Datum);
    let line = |line: &super::Line| {
        let (low, high) = if line.upright { (trim.x0, trim.x1) } else { (trim.y0, trim.y1) };
        line.at >= low && line.at <= high
    };
    template.region.outlines().any(crosses)
        || template.flanges.iter().any(|(outline, _)| crosses(outline))
        || (meets && lines.clone().any(line))
}

/// Where a grid line should not fall, along one axis.
struct Risks {
    edges: Vec<f64>,
    arcs: Vec<(f64, f64)>,
}

impl Risks {
    fn of<'o>(outlines: impl Iterator<Item = &'o Outline>, across_x: bool) -> Risks {
        let mut risks = Risks { edges: Vec::new(), arcs: Vec::new() };
        for outline in outlines {
            for (a, b) in outline.edges() {
                let (p, q) = if across_x { (a.x, b.x) } else { (a.y, b.y) };
                if a.bulge != 0.0 {
                    risks.arcs.push((p.min(q), p.max(q)));
                } else if (p - q).abs() < 0.01 {
                    risks.edges.push(p);
                }
            }
        }
        risks
    }

    /// How bad a start is: cut lines that run along an overlap, and corner radii that are parted by one.
    fn cost(&self, start: f64, pitch: f64, count: usize, edge: f64) -> f64 {
        let mut cost = 0.0;
        for k in 0..=count {
            let (low, high) = (start + pitch * k as f64 - edge - 1.0, start + pitch * k as f64 + edge + 1.0);
            cost += 10.0 * self.edges.iter().filter(|at| **at > low && **at < high).count() as f64;
            cost += 4.0 * self.arcs.iter().filter(|arc| arc.1 > low && arc.0 < high).count() as f64;
        }
        cost
    }
}

/// One page as wide as the roll, or as long as it, with a strip for what is said about the part.
fn on_roll(template: &Template, setting: &Setting, name: &str, width: f64, longest: f64) -> Result<Plan, Problem> {
    let (x0, y0, x1, y1) = template.bounds();
    let (long, high) = (x1 - x0 + 2.0 * PAST, y1 - y0 + 2.0 * PAST);
    // How much of the roll's width can take ink, either way round.
    let usable = |upright: bool| {
        let layout = layout(setting, (width, width), upright);
        if upright { layout.ink.2 - layout.ink.0 } else { layout.ink.3 - layout.ink.1 }
    };
    if usable(true) < 180.0 || usable(false) < 180.0 {
        return Err(Problem::new(
            format!("the margins leave no room on a {name}"),
            "make --margin smaller, or choose a wider roll",
        ));
    }
    let lying = high <= usable(false);
    if !lying && long > usable(true) {
        return Err(Problem::new(
            format!("{} is wider than a {name} both ways round", template.name),
            "choose a wider roll, tiles (as --paper letter), or part it by a seam or a joint",
        ));
    }
    let stretched = layout(setting, (width, width), !lying).stretch;
    let length = if lying { (long + STRIP) * stretched.0 } else { (high + STRIP) * stretched.1 } + 2.0 * setting.margin;
    if length > longest {
        return Err(Problem::new(
            format!(
                "{} would take a page of {:.0} mm, and a {name} gives at most {longest:.0} mm",
                template.name, length
            ),
            "choose tiles (as --paper letter), or part it by a seam or a joint",
        ));
    }
    let paper = if lying { (length, width) } else { (width, length) };
    let layout = layout(setting, paper, !lying);
    let (left, top, right, bottom) = layout.ink;
    let pitch = (right - left, bottom - top);
    let origin =
        if lying { (x0 - PAST, (y0 + y1 - pitch.1) / 2.0) } else { ((x0 + x1 - pitch.0) / 2.0, y1 + PAST - pitch.1) };
    Ok(Plan { layout, origin, pitch, columns: 1, rows: 1, edge: 0.0, roll: true, printed: vec![true] })
}
