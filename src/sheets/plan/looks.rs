//! Elevation marks: from where each face is looked at that has a sheet of its own, with what that sheet calls it.

use super::covered::Covered;
use super::cuts::{bounds, ways};
use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::set::{Kind, Set};
use crate::sheets::{ends, frame, front};
use crate::solve::Face;

/// Length of the arrow, and of its head, mm.
const ARROW: f64 = 7.0;
const HEAD: (f64, f64) = (3.2, 2.4);
/// White round the arrow, mm.
const ROUND: f64 = 1.7;
/// Between the arrow's tail and its words, and between their lines, mm.
const BESIDE: f64 = 1.6;
const LINE: f64 = 4.0;
/// From the counter's edge to the arrow's tip, mm: next to the face or past its dimensions; then past a lower leg that
/// stands before it.
const OFF: [&[f64]; 2] = [
    &[2.0, 4.0, 6.0, 9.0, 12.0, 15.0, 18.0, 22.0, 26.0, 30.0],
    &[34.0, 38.0, 42.0, 46.0, 50.0, 54.0, 58.0, 62.0, 68.0, 74.0],
];
/// Where along the face, the middle first.
const SHARES: [f64; 11] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.04, 0.96];

/// White round the words, mm.
const WHITE: f64 = 2.0;

/// Where the marks of a plan go.
pub struct Looks<'a, 's> {
    /// The set whose sheets they name.
    pub set: &'a Set<'s>,
    /// Where counters lie.
    pub covered: &'a Covered,
    /// Paper y that they stay above, mm.
    pub bottom: f64,
}

impl Looks<'_, '_> {
    /// Marks every face of a leg that a sheet of the set shows. Returns how far down the sheet the marks reach, mm.
    pub fn draw(&self, canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) -> f64 {
        let mut lowest: f64 = 0.0;
        for kind in &self.set.kinds {
            let Some(sheet) = self.set.number(*kind) else { continue };
            let faces: Vec<(Face, &str)> = match *kind {
                Kind::Front(leg, face) if leg == seen.index => vec![(face, front::title(face))],
                Kind::Ends(leg) if leg == seen.index => ends::shown(self.set.solved, leg),
                _ => continue,
            };
            for (face, title) in faces {
                let full = [title.to_owned(), format!("leg {}, sheet {sheet}", seen.leg.id)];
                let short = [title.to_owned(), format!("sheet {sheet}")];
                let forms = [(&full, false), (&full, true), (&short, false), (&short, true)];
                let tries = OFF.iter().flat_map(|off| forms.iter().map(move |form| (*off, *form)));
                let mut marks = tries.flat_map(|(off, (words, beside))| self.tried(seen, face, off, words, beside));
                if let Some(mark) = marks.find(|mark| self.is_free(canvas, mark)) {
                    lowest = lowest.max(mark.first.y + LINE + 1.0).max(mark.tail.y);
                    mark.draw(canvas, at);
                }
            }
        }
        lowest
    }

    /// The marks of a face at some distances: words behind the arrow or beside it.
    fn tried<'w>(
        &self,
        seen: &Seen<'_>,
        face: Face,
        offs: &'static [f64],
        words: &'w [String; 2],
        beside: bool,
    ) -> Vec<Mark<'w>> {
        let d = &seen.leg.datums;
        let (along, deep) = ways(seen);
        let (back, left) = ((-deep.0, -deep.1), (-along.0, -along.1));
        let edge = |share: f64| {
            let (u, v) = (d.finished_right.mm() * share, d.finished_back.mm() * share);
            match face {
                Face::Front => (seen.at_mm(u, d.counter_front.mm()), deep),
                Face::Back => (seen.at_mm(u, d.counter_back.mm()), back),
                Face::Left => (seen.at_mm(d.counter_left.mm(), v), along),
                Face::Right => (seen.at_mm(d.counter_right.mm(), v), left),
            }
        };
        let places = offs.iter().flat_map(|off| SHARES.iter().map(move |share| (*off, *share)));
        let marks = places.flat_map(|(off, share)| {
            let (foot, look) = edge(share);
            Mark::of(foot.moved(-look.0 * off, -look.1 * off), look, words, beside)
        });
        marks.collect()
    }

    fn is_free(&self, canvas: &Canvas, mark: &Mark<'_>) -> bool {
        let (x0, y0, x1, y1) = bounds(&[mark.tip, mark.tail]);
        let (l, t, r, b) = mark.words_box();
        let corners = [(l, t), (r, t), (r, b), (l, b), ((l + r) / 2.0, (t + b) / 2.0)];
        let corners = corners.map(|(x, y)| PaperPoint::new(x, y));
        let on = |p: &PaperPoint| self.covered.holds(*p);
        let (down, low) = (mark.tail.y.max(mark.tip.y).max(b), self.bottom);
        let sheet = frame::inside(canvas);
        let (left, right, top) = (x0.min(l), x1.max(r), y0.min(t));
        down < low
            && left > sheet.left
            && right < sheet.right
            && top > sheet.top
            && ![mark.tip, mark.tail].iter().chain(&corners).any(on)
            && canvas.is_box_free(x0 - ROUND, y0 - ROUND, x1 + ROUND, y1 + ROUND)
            && canvas.is_box_free(l - WHITE, t - 0.6, r + WHITE, b + 0.6)
    }
}

/// An arrow that looks at a face, with two lines of words.
struct Mark<'w> {
    tip: PaperPoint,
    tail: PaperPoint,
    look: (f64, f64),
    /// Middle of the first baseline.
    first: PaperPoint,
    words: &'w [String; 2],
}

impl<'w> Mark<'w> {
    /// With its words behind it, or on either side of it.
    fn of(tip: PaperPoint, look: (f64, f64), words: &'w [String; 2], beside: bool) -> Vec<Mark<'w>> {
        let half = (wide(words) / 2.0, (BODY + LINE) / 2.0);
        let tail = tip.moved(-look.0 * ARROW, -look.1 * ARROW);
        let sides = if beside {
            // The words end where the arrow does, so that they stay before the face too.
            let reach = look.0.abs() * half.0 + look.1.abs() * half.1;
            let from = tip.moved(-look.0 * reach, -look.1 * reach);
            let apart = BESIDE + HEAD.1 / 2.0;
            vec![(from, (-look.1, look.0), apart), (from, (look.1, -look.0), apart)]
        } else {
            vec![(tail, (-look.0, -look.1), BESIDE)]
        };
        let placed = sides.into_iter().map(|(from, way, apart)| {
            let off = apart + way.0.abs() * half.0 + way.1.abs() * half.1;
            from.moved(way.0 * off, way.1 * off + BODY - half.1)
        });
        placed.map(|first| Mark { tip, tail, look, first, words }).collect()
    }

    /// Left, top, right, bottom of the words.
    fn words_box(&self) -> (f64, f64, f64, f64) {
        let half = wide(self.words) / 2.0;
        (self.first.x - half, self.first.y - BODY - 0.2, self.first.x + half, self.first.y + LINE + 0.7)
    }

    fn draw(&self, canvas: &mut Canvas, at: Layer) {
        canvas.line(at, self.tail, self.tip.towards(self.tail, 0.3), Pen::VISIBLE);
        canvas.arrow_sized(at, self.tip, self.look.1.atan2(self.look.0).to_degrees(), Colour::INK, HEAD.0, HEAD.1);
        canvas.text(at, self.first, &self.words[0], &Style::body().bold().middle());
        canvas.text(at, self.first.moved(0.0, LINE), &self.words[1], &Style::caption().middle());
    }
}

fn wide(words: &[String; 2]) -> f64 {
    lettering::width(&words[0], BODY, Weight::SemiBold).max(lettering::width(&words[1], BODY, Weight::Regular))
}
