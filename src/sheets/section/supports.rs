//! The supports that a section shows: those that it cuts as cut steel, those beyond it in thin lines, each with its mark.

use super::picture::{CutView, Layers};
use super::slice::Turn;
use crate::drawing::lettering::{self, BODY, Style};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, corners, through};
use crate::sheets::marks::{self, LeaderEnd};
use crate::solve::{Along, Bar, Extent, Leg, Profile, Solved, Support, SupportRole};
use crate::units::Length;

/// How far from a part its name may stand, up or down, mm.
const OFFSETS: [f64; 10] = [6.0, 4.8, 3.9, 8.0, 11.0, 14.0, 18.0, 23.0, 29.0, 36.0];
/// How far along from there, mm.
const ALONG: [f64; 4] = [2.0, 5.0, 9.0, 14.0];

/// A support as a section shows it.
pub struct Shown<'s> {
    /// The support.
    pub support: &'s Support,
    /// Its box, (w, z).
    pub extent: Extent,
    /// What it is made of.
    bar: Option<&'s Bar>,
    /// From the cut to it, 0 where it is cut.
    pub far: Length,
}

impl Shown<'_> {
    /// Whether the section cuts it.
    pub fn is_cut(&self) -> bool {
        self.far == Length::ZERO
    }

    /// Whether it is let into the substrate, which hides most of it.
    pub fn is_let_in(&self) -> bool {
        self.support.role == SupportRole::Bracket
    }

    /// What it is called, as `arm S1`.
    fn words(&self) -> String {
        format!("{} {}", self.support.role.words(), self.support.mark)
    }
}

/// What is added to a leg's frame and seen in a section at u: in `module`, and the brackets wherever they lie. Of those that
/// look the same only the nearest; the farthest first, those that are cut last.
pub fn shown<'s>(solved: &'s Solved, leg: usize, module: Option<usize>, u: Length, turn: &Turn) -> Vec<Shown<'s>> {
    let supports = &solved.shop.supports;
    let mut all: Vec<Shown<'s>> = Vec::new();
    for support in supports.members.iter().filter(|one| one.leg == leg) {
        let (a, b) = support.body.u;
        let cut = a < u && u < b;
        let bracket = support.role == SupportRole::Bracket;
        if !(bracket || module == Some(support.module)) || !(cut || turn.is_beyond((a + b).half(), u)) {
            continue;
        }
        let (x0, x1) = turn.span(support.body.v.0, support.body.v.1);
        let extent = Extent { x0, y0: support.body.z.0, x1, y1: support.body.z.1 };
        let far = if cut { Length::ZERO } else { ((a + b).half() - u).abs() };
        all.push(Shown { support, extent, bar: bar(solved, support.role), far });
    }
    all.sort_by_key(|one| one.far);
    let mut kept: Vec<Shown<'s>> = Vec::new();
    for one in all {
        // Brackets stand in a row: the nearest hides the others, however long each is.
        let hidden = |other: &Shown| {
            other.extent == one.extent
                || other.is_let_in() && one.is_let_in() && other.support.along == one.support.along
        };
        if !kept.iter().any(hidden) {
            kept.push(one);
        }
    }
    kept.reverse();
    kept
}

/// Of the leg that stands behind: what is cut, and the brackets under its overhang.
pub fn behind<'s>(solved: &'s Solved, leg: &'s Leg, u: Length, turn: &Turn) -> Vec<Shown<'s>> {
    let Some(index) = solved.legs.iter().position(|one| std::ptr::eq(one, leg)) else { return Vec::new() };
    let module = leg.modules.iter().position(|module| module.left <= u && u < module.right);
    let all = shown(solved, index, module, u, turn);
    all.into_iter().filter(|one| one.is_cut() || one.is_let_in()).collect()
}

/// What supports of a role are made of.
fn bar(solved: &Solved, role: SupportRole) -> Option<&Bar> {
    let work = solved.shop.supports.work.as_ref()?;
    Some(match role {
        SupportRole::Arm | SupportRole::ArmRail | SupportRole::FrontPost => &work.arm,
        SupportRole::CutoutRail | SupportRole::Intermediate | SupportRole::Backing => &work.rail,
        SupportRole::Bracket => &work.bracket,
    })
}

/// Draws one that lies beyond the cut.
pub fn beyond(canvas: &mut Canvas, at: Layer, view: &CutView, one: &Shown) {
    let paint = Paint::both(Pen::DIMENSION, Fill::tint(Colour::TINT_BED));
    outlined(canvas, at, view, one, paint);
}

fn outlined(canvas: &mut Canvas, at: Layer, view: &CutView, one: &Shown, paint: Paint) {
    let e = one.extent;
    let facts = view.feature(format!("support {}", one.support.mark), e.x0, e.y0, e.x1, e.y1);
    let steps = through(&corners(view.at(e.x0, e.y1), view.at(e.x1, e.y0)), true);
    canvas.shape(at, Shape::Steps(steps), paint, "support", facts);
}

/// Draws one that is cut: walls as thick as they are, a bar solid.
pub fn cut(canvas: &mut Canvas, layers: &Layers, view: &CutView, one: &Shown) {
    let e = one.extent;
    let (a, b) = (view.at(e.x0, e.y1), view.at(e.x1, e.y0));
    let thin = (b.x - a.x).min(b.y - a.y);
    let section = one.bar.map(|bar| bar.section);
    let wall = section.map_or(0.0, |section| view.size(section.wall)).max(Pen::SECONDARY.width);
    let profile = section.map_or(Profile::Tube, |section| section.profile);
    let solid = Paint::both(Pen::SECONDARY, Fill::tint(Colour::GREY_LINE));
    match profile {
        _ if thin < 2.5 * wall.min(1.0) => {
            outlined(canvas, layers.outline, view, one, Paint::fill(Fill::ink(Colour::INK)))
        }
        Profile::Flat => outlined(canvas, layers.outline, view, one, solid),
        // Across, the level leg of an angle lies at its bottom and a channel's web stands.
        Profile::Angle | Profile::Channel if one.support.along == Along::U => {
            outlined(canvas, layers.cut, view, one, Paint::fill(Fill::WHITE));
            let ink = Paint::fill(Fill::ink(Colour::INK));
            canvas.rectangle(layers.outline, a, PaperPoint::new(a.x + wall, b.y), ink);
            canvas.rectangle(layers.outline, PaperPoint::new(a.x, b.y - wall), b, ink);
            if profile == Profile::Channel {
                canvas.rectangle(layers.outline, a, PaperPoint::new(b.x, a.y + wall), ink);
            }
        }
        _ => {
            outlined(canvas, layers.cut, view, one, Paint::fill(Fill::WHITE));
            let inset = wall / 2.0;
            canvas.rectangle(
                layers.outline,
                a.moved(inset, inset),
                b.moved(-inset, -inset),
                Paint::pen(Pen::new(wall)),
            );
        }
    }
}

/// Names them, what is cut first, each by a leader to the first white place. `within`: the frame's middle on w, and the
/// paper x that no name goes beyond.
pub fn names(canvas: &mut Canvas, at: Layer, view: &CutView, all: &[Shown], within: (Length, f64)) {
    for one in all.iter().rev() {
        let (mut extent, mut middle) = (one.extent, within.0);
        let mut end = if one.is_cut() { LeaderEnd::Arrow } else { LeaderEnd::Dot };
        if one.is_let_in() && !one.is_cut() && one.support.along == Along::V {
            // Its free end is what is seen: named from there, under the overhang.
            let half = extent.centre_x();
            (extent.x0, extent.x1) = if half > middle { (half, extent.x1) } else { (extent.x0, half) };
            middle = if half > middle { extent.x1 } else { extent.x0 - Length::from_nm(1) };
            end = LeaderEnd::Arrow;
        }
        name(canvas, at, view, extent, &one.words(), end, (middle, within.1));
    }
}

/// A name by a leader that goes down or up from a part, then level to the name's side: from its edge where it is cut, from
/// within it where it is seen. `middle` is the frame's on w, `limit` the paper x that it doesn't go beyond. Answers whether
/// it found room.
pub fn name(
    canvas: &mut Canvas,
    at: Layer,
    view: &CutView,
    e: Extent,
    words: &str,
    end: LeaderEnd,
    (middle, limit): (Length, f64),
) -> bool {
    // Into the frame rather than out through its boards.
    let sides = if e.centre_x() > middle { [-1.0, 1.0] } else { [1.0, -1.0] };
    if e.height() > e.width() * 2 {
        let middle = view.at(e.centre_x(), e.centre_y());
        let offsets = [6.0, 9.0, 13.0, 18.0, 24.0, -6.0, -9.0, -13.0, -18.0, -24.0];
        if super::labels::sideways(canvas, at, middle, &offsets, words, LeaderEnd::Dot, limit) {
            return true;
        }
    }
    let small = view.size(e.width()) < 14.0;
    let shares: &[f64] = if small { &[0.5] } else { &[0.5, 0.62, 0.38, 0.75, 0.25, 0.86, 0.14] };
    let inside = if end == LeaderEnd::Arrow { -0.2 } else { (view.size(e.height()) / 2.0).min(1.2) };
    // Over what is cut lie substrate and counter.
    let ways: &[f64] = if end == LeaderEnd::Arrow { &[1.0] } else { &[1.0, -1.0] };
    let wide = lettering::width(words, BODY, Style::body().weight);
    let reach = OFFSETS.iter().flat_map(|off| ALONG.iter().map(move |along| (*off, *along)));
    for (side, (off, along)) in sides.into_iter().flat_map(|side| reach.clone().map(move |reach| (side, reach))) {
        for (share, down) in shares.iter().flat_map(|share| ways.iter().map(move |down| (*share, *down))) {
            let edge = if down > 0.0 { e.y0 } else { e.y1 };
            let foot = view.at(e.x0 + e.width().scaled(share), edge);
            let tip = foot.moved(0.0, -down * inside);
            let knee = foot.moved(0.0, down * off);
            let level = knee.moved(side * along, 0.0);
            let style = if side > 0.0 { Style::body() } else { Style::body().end() };
            let place = level.moved(side, BODY / 2.0);
            let (left, right) = if side > 0.0 { (place.x, place.x + wide) } else { (place.x - wide, place.x) };
            // White at its far end too, so that it isn't read with a neighbour.
            let (near, far) = if side > 0.0 { (0.4, 2.0) } else { (2.0, 0.4) };
            let free = canvas.is_box_free(left - near, place.y - BODY - 0.8, right + far, place.y + 1.2);
            if right > limit || !free || !canvas.is_clear_of_text(&[tip, knee, level]) {
                continue;
            }
            marks::leader(canvas, at, &[tip, knee, level], end, Colour::INK);
            canvas.text(at, place, words, &style);
            return true;
        }
    }
    false
}
