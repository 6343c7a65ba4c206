//! Section marks: the ends of the line that a section is cut along, before a leg and behind it, whichever way it lies.

use super::covered::Covered;
use super::kept::Kept;
use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::set::{Kind, Set};
use crate::solve::Face;

/// Length of the heavy end of the line, and of the arrow from it, mm.
const ARM: f64 = 5.5;
/// White round them, mm.
const ROUND: f64 = 0.5;
/// From the line to its letter, mm.
const BESIDE: f64 = 1.6;

/// A direction on the sheet, of length 1.
pub type Way = (f64, f64);

/// The way on the sheet that a leg's u runs, and the way away from the cook.
pub fn ways(seen: &Seen<'_>) -> (Way, Way) {
    let way = |u: f64, v: f64| {
        let (a, b) = (seen.at_mm(0.0, 0.0), seen.at_mm(u, v));
        let long = a.distance(b).max(1e-9);
        ((b.x - a.x) / long, (b.y - a.y) / long)
    };
    (way(1000.0, 0.0), way(0.0, 1000.0))
}

/// Marks both ends of the line of each section of a leg. `near` are distances before the counter's front edge, `far`
/// behind its back edge, mm of paper, that are tried in turn.
/// Leaders keep clear of their words.
pub fn draw(
    canvas: &mut Canvas,
    at: Layer,
    set: &Set<'_>,
    seen: &Seen<'_>,
    (covered, kept): (&Covered, &mut Kept),
    (near, far): (&[f64], &[f64]),
) {
    let (along, deep) = ways(seen);
    let (front, back) = (seen.leg.datums.counter_front, seen.leg.datums.counter_back);
    for kind in &set.kinds {
        let Kind::Section(leg, index) = *kind else { continue };
        let (true, Some(fitting)) = (leg == seen.index, seen.leg.fittings.get(index)) else { continue };
        let (Some(letter), Some(sheet)) = (set.section_letter(*kind), set.number(*kind)) else { continue };
        // As the section's own heading says: from the front one looks left, from behind right.
        let side = if fitting.face == Face::Back { 1.0 } else { -1.0 };
        let look = (along.0 * side, along.1 * side);
        let ends = [
            (seen.at(fitting.centre(), front), (-deep.0, -deep.1), near),
            (seen.at(fitting.centre(), back), deep, far),
        ];
        for (edge, out, distances) in ends {
            let mark = distances.iter().map(|off| Mark { foot: edge.moved(out.0 * off, out.1 * off), out, look });
            let Some(mark) = mark.into_iter().find(|mark| mark.is_free(canvas, covered)) else { continue };
            mark.draw(canvas, at, &letter, &format!("sheet {sheet}"), kept);
        }
    }
}

/// One end of the line that is cut along.
struct Mark {
    /// Its end next to the leg.
    foot: PaperPoint,
    /// Away from the leg.
    out: Way,
    /// The way that one looks.
    look: Way,
}

impl Mark {
    fn at(&self, out: f64, look: f64) -> PaperPoint {
        self.foot.moved(self.out.0 * out + self.look.0 * look, self.out.1 * out + self.look.1 * look)
    }

    fn is_free(&self, canvas: &Canvas, covered: &Covered) -> bool {
        let line = [self.at(0.0, 0.0), self.at(ARM, 0.0)];
        let arrow = [line[1], self.at(ARM, ARM)];
        let free = |points: &[PaperPoint], by: f64| {
            let (x0, y0, x1, y1) = bounds(points);
            canvas.is_box_free(x0 - by, y0 - by, x1 + by, y1 + by)
        };
        let points = [line[0], line[1], arrow[1], self.at(ARM, -2.0 * BESIDE)];
        free(&line, 0.2) && free(&arrow, ROUND + 0.4) && !points.iter().any(|p| covered.holds(*p))
    }

    /// The line, its arrow, its letter, and the sheet where there is room for it.
    fn draw(&self, canvas: &mut Canvas, at: Layer, letter: &str, sheet: &str, kept: &mut Kept) {
        canvas.line(at, self.at(0.0, 0.0), self.at(ARM, 0.0), Pen::CUT);
        canvas.line(at, self.at(ARM, 0.0), self.at(ARM, ARM), Pen::DIMENSION);
        canvas.arrow(at, self.at(ARM, ARM), self.look.1.atan2(self.look.0).to_degrees(), Colour::INK);
        let run = lettering::width(letter, TITLE, Weight::SemiBold);
        let wide = run + 1.4 + lettering::width(sheet, BODY, Weight::Regular);
        // Beside the line on the blind side first, then past the arrow, then past the line.
        let blind = (-self.look.0, -self.look.1);
        let back = 1.45;
        let sides =
            [(self.at(ARM - back, 0.0), blind), (self.at(ARM - back, ARM), self.look), (self.at(ARM, 0.0), self.out)];
        let places = [wide, run].into_iter().flat_map(|wide| sides.map(|(p, way)| (place(p, way, wide), wide)));
        let free = |(p, wide): &(PaperPoint, f64)| canvas.is_box_free(p.x, p.y - 4.0, p.x + wide, p.y + 1.0);
        if let Some((p, room)) = places.into_iter().find(free) {
            kept.keep(p.x - 0.4, p.y - 4.0, p.x + room + 0.4, p.y + 1.0);
            canvas.text(at, p, letter, &Style::body().bold().sized(TITLE));
            if room > run {
                canvas.text(at, p.moved(run + 1.4, 0.0), sheet, &Style::caption());
            }
        }
    }
}

/// Left end of the baseline of a word `wide` long that stands off a point to one side.
fn place(p: PaperPoint, way: Way, wide: f64) -> PaperPoint {
    let half = (wide / 2.0, TITLE / 2.0);
    let off = BESIDE + way.0.abs() * half.0 + way.1.abs() * half.1;
    p.moved(way.0 * off - half.0, way.1 * off + half.1)
}

/// The level box round points: left, top, right, bottom.
pub fn bounds(points: &[PaperPoint]) -> (f64, f64, f64, f64) {
    points.iter().fold((f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY), |all, p| {
        (all.0.min(p.x), all.1.min(p.y), all.2.max(p.x), all.3.max(p.y))
    })
}

/// Distances that are tried where dimensions stand round a leg: next to it, else farther out on the same line, mm.
pub const STEPS: [f64; 32] = {
    let mut steps = [1.5; 32];
    let mut k = 1;
    while k < 32 {
        steps[k] = steps[k - 1] + if k < 20 { 2.0 } else { 4.0 };
        k += 1;
    }
    steps
};
