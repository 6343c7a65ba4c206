//! Where a sheet is cut: at its corners, and at the seams across its legs; and the pieces that the cuts leave.

use super::line::Line;
use super::polygon::{Shape, Side};
use super::sheet::{Broken, Seen, Sheet};
use crate::geometry::cut::{Ring, cut, outline_of};
use crate::geometry::{LegPoint, Outline, Region};
use crate::units::Length;

/// No piece is narrower than this, mm.
const NARROWEST: f64 = 1.0;

/// Cuts that touch within this do not cross, mm.
const TOUCH: f64 = 1e-4;

/// A cut, from the front edge to the back edge, in the first leg's coordinates.
#[derive(Clone, Copy, Debug)]
pub struct Cut {
    from: (f64, f64),
    to: (f64, f64),
    /// The leg left of it, and the leg right of it.
    legs: (usize, usize),
    /// Along u of its leg, mm, where it is a seam across one.
    u: Option<f64>,
}

impl Cut {
    /// Whether another cut runs through it, both carried on by so many mm: then which of them comes first would decide what is cut.
    fn crosses(&self, other: &Cut, past: f64) -> bool {
        let (one, two) = (Line::through(self.from, self.to), Line::through(other.from, other.to));
        let apart = |line: &Line, cut: &Cut| {
            let way = Line::through(cut.from, cut.to).unit();
            let on = |p: (f64, f64), by: f64| line.left_of((p.0 + way.0 * by, p.1 + way.1 * by));
            let (a, b) = (on(cut.from, -past), on(cut.to, past));
            a.min(b) > -TOUCH || a.max(b) < TOUCH
        };
        !apart(&one, other) && !apart(&two, self)
    }
}

/// A part of a sheet between two cuts, as rings with the material to the left of travel.
pub struct Part {
    /// Its leftmost leg, by its place in the chain.
    pub first: usize,
    /// Its rightmost leg.
    pub last: usize,
    /// Its outside.
    pub outer: Ring<Side>,
    /// Its holes.
    pub holes: Vec<Ring<Side>>,
}

impl Part {
    /// As a region, with every point mapped.
    pub fn region(&self, map: impl Fn(f64, f64) -> (f64, f64)) -> Region {
        let turned = |ring: &Ring<Side>| outline_of(ring).mapped(&map, false);
        Region { outer: turned(&self.outer), holes: self.holes.iter().map(|hole| turned(hole).reversed()).collect() }
    }
}

impl Sheet {
    /// The cuts between legs, cut or not, left to right.
    pub fn corners(&self, seen: &[Seen]) -> Result<Vec<Cut>, Broken> {
        (0..self.meetings.len()).map(|at| self.corner(at, seen)).collect()
    }

    /// All cuts that are made, left to right.
    pub fn cuts(&self, seen: &[Seen]) -> Result<Vec<Cut>, Broken> {
        let mut cuts = Vec::new();
        for (leg, band) in self.bands.iter().enumerate() {
            let mut seams = band.seams.clone();
            seams.sort_by(f64::total_cmp);
            let (front, back) = self.lines(leg, seen);
            let (mut low, high) = self.between(leg, seen)?;
            for u in seams {
                if u < low + NARROWEST || u > high - NARROWEST {
                    return Err(Broken::Seam(leg, u));
                }
                low = u;
                let line = seen[leg].line(&Line { at: (u, 0.0), way: (0.0, 1.0) });
                let meet = |other: &Line| line.meets(other).ok_or(Broken::Parallel(leg));
                cuts.push(Cut { from: meet(&front)?, to: meet(&back)?, legs: (leg, leg), u: Some(u) });
            }
            if self.meetings.get(leg).is_some_and(|meeting| meeting.cut) {
                cuts.push(self.corner(leg, seen)?);
            }
        }
        Ok(cuts)
    }

    /// Where on u a leg's own sheet ends on one side (0 left, 1 right), in front and at the back: at the chain's end, at
    /// the corner where it runs through or is mitred, at the other's sheet where it butts.
    fn ends(&self, leg: usize, side: usize, seen: &[Seen]) -> Result<(f64, f64), Broken> {
        let joint = if side == 0 { leg.checked_sub(1) } else { Some(leg).filter(|_| leg < self.meetings.len()) };
        let (front, back) = match joint {
            None => self.end(leg, side, seen).map(|end| (end.front, end.back))?,
            Some(at) if self.meetings[at].mitred || self.meetings[at].left_through == (side == 1) => {
                self.meet(at, seen).map(|meet| (meet.front, meet.back))?
            }
            Some(at) => self.corner(at, seen).map(|cut| (cut.from, cut.to))?,
        };
        Ok((seen[leg].back(front).0, seen[leg].back(back).0))
    }

    /// Where on u the whole depth of a leg's sheet lies by itself.
    ///
    /// Errors: the corners leave nothing of it, in front or at the back.
    fn between(&self, leg: usize, seen: &[Seen]) -> Result<(f64, f64), Broken> {
        let (left, right) = (self.ends(leg, 0, seen)?, self.ends(leg, 1, seen)?);
        if right.0 - left.0 < NARROWEST || right.1 - left.1 < NARROWEST {
            return Err(Broken::TooShort(leg));
        }
        Ok((left.0.max(left.1), right.0.min(right.1)))
    }

    /// Those of a leg's joints that lie clear of its corners, mm.
    pub fn clear_of_corners(&self, leg: usize, joints: &[Length], seen: &[Seen]) -> Result<Vec<f64>, Broken> {
        let (low, high) = self.between(leg, seen)?;
        let clear = |u: &f64| *u > low + NARROWEST && *u < high - NARROWEST;
        Ok(joints.iter().map(|u| u.mm()).filter(clear).collect())
    }

    /// Where the sheets of a leg and the next one part: along the diagonal, or along the inner edge of the one that runs
    /// through, moved so far that the rounding of the inner corner stays whole in its piece.
    fn corner(&self, at: usize, seen: &[Seen]) -> Result<Cut, Broken> {
        let meeting = &self.meetings[at];
        let meet = self.meet(at, seen)?;
        let (legs, u) = ((at, at + 1), None);
        if meeting.mitred {
            return Ok(Cut { from: meet.front, to: meet.back, legs, u });
        }
        let inside = meeting.turn.is_inside();
        let (left, right) = (self.lines(at, seen), self.lines(at + 1, seen));
        let (through, butting) = if meeting.left_through { (left, right) } else { (right, left) };
        let inner = |lines: &(Line, Line)| if inside { lines.0 } else { lines.1 };
        let corner = if inside { meet.front } else { meet.back };
        let unit = inner(&butting).unit();
        let away = if meeting.left_through { unit } else { (-unit.0, -unit.1) };
        let trim = match meeting.inner {
            Shape::Sharp => 0.0,
            Shape::Round(radius) => radius * (meeting.turn.angle.abs() / 2.0).tan(),
            Shape::Clip(by) => by,
        };
        let seam = Line { at: (corner.0 + away.0 * trim, corner.1 + away.1 * trim), way: inner(&through).way };
        let ends = |line: &Line| seam.meets(line).ok_or(Broken::Parallel(at));
        Ok(Cut { from: ends(&butting.0)?, to: ends(&butting.1)?, legs, u })
    }

    /// The parts that cuts leave of the whole with its holes, left to right.
    pub fn parted(&self, whole: Ring<Side>, holes: Vec<Ring<Side>>, cuts: &[Cut]) -> Result<Vec<Part>, Broken> {
        let side = Side { tag: self.seam, corner: None };
        let mut rest: Vec<Ring<Side>> = std::iter::once(whole).chain(holes).collect();
        let (mut parts, mut first) = (Vec::new(), 0);
        // A rounding or an arc may carry a cut on past where the edges would meet.
        let past = self.meetings.iter().map(|meeting| meeting.inner.size()).fold(0.0, f64::max)
            + self.bands.iter().map(|band| band.rise).fold(0.0, f64::max);
        if let Some(pair) = cuts.windows(2).find(|pair| pair[0].crosses(&pair[1], past)) {
            return Err(Broken::TooShort(pair[1].legs.0));
        }
        for made in cuts {
            let broken = match made.u {
                Some(u) => Broken::Seam(made.legs.0, u),
                None => Broken::TooShort(made.legs.0),
            };
            // Round an arc or beside a slope a cut may fall into several; then none of them is the seam.
            let (left, right) =
                cut(&rest, made.from, made.to, side).filter(|halves| one(&halves.0) && one(&halves.1)).ok_or(broken)?;
            parts.extend(regions(left, first, made.legs.0));
            (rest, first) = (right, made.legs.1);
        }
        parts.extend(regions(rest, first, self.bands.len() - 1));
        Ok(parts)
    }
}

/// Whether the rings have one outside.
fn one(rings: &[Ring<Side>]) -> bool {
    rings.iter().filter(|ring| outline_of(ring).area() > 0.0).count() == 1
}

/// Outer rings with the holes that lie in them.
fn regions(rings: Vec<Ring<Side>>, first: usize, last: usize) -> Vec<Part> {
    let area = |ring: &Ring<Side>| outline_of(ring).area();
    let (outer, holes): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| area(ring) > 0.0);
    let mut parts: Vec<Part> = outer.into_iter().map(|outer| Part { first, last, outer, holes: Vec::new() }).collect();
    for hole in holes {
        let holds = |part: &&mut Part| hole.first().is_some_and(|step| holds(&part.outer, (step.at.x, step.at.y)));
        if let Some(part) = parts.iter_mut().find(holds) {
            part.holes.push(hole);
        }
    }
    parts
}

fn holds(ring: &Ring<Side>, at: (f64, f64)) -> bool {
    let outline: Outline = outline_of(ring);
    outline.contains(LegPoint::new(at.0, at.1))
}
