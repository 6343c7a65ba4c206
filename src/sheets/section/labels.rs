//! Names of the parts on leaders, each at the first white place that takes it.

use super::picture::{CutView, Layers};
use super::slice::{Skin, Slice};
use super::supports;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::notes;
use crate::sheets::title_block::shortened;
use crate::solve::{Extent, Face, Plane};
use crate::units::{Length, Show};

/// From label to label of a stack, mm.
const PITCH: f64 = 4.8;
/// Left end of what may be lettered: the border and its margin, mm.
const LEFT_LIMIT: f64 = 26.0;
/// Highest place of a leader: under the headings, mm.
const TOP_LIMIT: f64 = 24.0;
/// Longest label, mm.
const LONGEST: f64 = 52.0;

/// Names everything, nothing beyond paper x `limit`.
pub fn draw(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, show: Show, limit: f64) {
    let at = layers.labels;
    front_layers(canvas, at, view, slice, show);
    other_holes(canvas, at, view, slice);
    counter_layers(canvas, at, view, slice, show, limit);
    body_name(canvas, at, view, slice);
    rail(canvas, at, view, slice);
    supports::names(canvas, at, view, &slice.supports, (slice.middle(), limit));
    if let Some(behind) = &slice.behind {
        supports::names(canvas, at, view, &behind.supports, (behind.middle(), limit));
    }
    back_layers(canvas, at, view, slice, show);
    frame_depth(canvas, layers.dimensions, view, slice, show);
    fronts(canvas, at, view, slice, limit);
    foot_and_floor(canvas, at, view, slice, show, limit);
    if let Some(trim) = slice.trim() {
        let dot = view.at(trim.centre_x(), trim.centre_y());
        let name = slice.solved.trim.as_ref().map_or("", |trim| trim.name.as_str());
        sideways(
            canvas,
            at,
            dot,
            &[-9.0, -12.0, -15.0, -19.0, -23.0, -6.0],
            if name.is_empty() { "base trim" } else { name },
            LeaderEnd::Dot,
            limit,
        );
    }
    wall(canvas, at, view, slice);
}

fn clipped(text: &str) -> String {
    shortened(text, LONGEST, &Style::body())
}

/// A leader from a dot level to the side and up or down, names one under another at its spine. `along` is the offset of
/// the spine from the last dot; negative goes left. Draws only where everything is free.
fn stack(canvas: &mut Canvas, at: Layer, dots: &[PaperPoint], spine: f64, step: f64, names: &[String]) -> bool {
    let (Some(first), false) = (dots.first(), names.is_empty()) else { return false };
    let right = spine > first.x;
    let side = if right { 1.0 } else { -1.0 };
    let style = if right { Style::body() } else { Style::body().end() };
    let foot = PaperPoint::new(spine, first.y + step * (names.len() - 1) as f64);
    let mut places = Vec::new();
    for k in 0..names.len() {
        let y = first.y + step * k as f64;
        places.push(PaperPoint::new(spine + side * 3.0, y + BODY / 2.0));
    }
    let wide = names.iter().map(|name| lettering::width(name, BODY, Weight::Regular)).fold(0.0, f64::max) + 3.0;
    let (left, right_end) = (spine.min(spine + side * wide), spine.max(spine + side * wide));
    let (high, low) = (first.y.min(foot.y) - 4.0, first.y.max(foot.y) + 4.0);
    // White over and under the block, so that it is not read with a neighbour.
    let mut free = canvas.is_box_free(left + 0.4, high, right_end, low);
    free &= places.iter().zip(names).all(|(place, name)| canvas.is_free(&lettering::set(*place, name, &style)));
    if !free || !canvas.is_clear_of_text(&[*first, PaperPoint::new(spine, first.y), foot]) {
        return false;
    }
    canvas.polyline(at, &[*first, PaperPoint::new(spine, first.y), foot], false, Paint::pen(Pen::DIMENSION));
    for dot in dots {
        canvas.circle(at, *dot, 0.45, Paint::fill(Fill::ink(Colour::INK)));
    }
    for (place, name) in places.iter().zip(names) {
        let tick = place.y - BODY / 2.0;
        canvas.line(at, PaperPoint::new(spine, tick), PaperPoint::new(spine + side * 2.0, tick), Pen::DIMENSION);
        canvas.text(at, *place, name, &style);
    }
    true
}

/// A skin's layers from the outside in, each with its middle on w and its name.
fn layers_of(skin: &Skin, show: Show) -> Vec<(Length, String)> {
    let [finished, board, frame] = skin.at;
    let mut all = Vec::new();
    if let Some(finish) = &skin.build.finish {
        let out = if finished < frame { -1 } else { 1 };
        let bed = board + finish.bed * out;
        all.push(((finished + bed).half(), clipped(&format!("{} {}", finish.name, show.text(finish.thickness)))));
        if finish.bed > Length::ZERO {
            all.push(((bed + board).half(), format!("bed {}", show.text(finish.bed))));
        }
    }
    if skin.build.board > Length::ZERO {
        all.push((
            (board + frame).half(),
            clipped(&format!("{} {}", skin.build.board_name, show.text(skin.build.board))),
        ));
    }
    all
}

/// Heights at which a skin is cut whole: first where a tube is cut behind it.
fn heights(skin: &Skin, tubes: &[Extent]) -> Vec<(Length, Option<Extent>)> {
    let whole = |z: Length| {
        let within = |spans: &[(Length, Length)]| spans.iter().any(|(a, b)| *a < z && z < *b);
        within(&skin.board) && (skin.build.finish.is_none() || within(&skin.finish))
    };
    let behind = tubes.iter().filter(|tube| tube.x0 == skin.at[2] || tube.x1 == skin.at[2]);
    let mut places: Vec<(Length, Option<Extent>)> =
        behind.map(|tube| (tube.centre_y(), Some(*tube))).filter(|(z, _)| whole(*z)).collect();
    places.sort_by_key(|(z, _)| -*z);
    for (a, b) in &skin.board {
        for share in [0.5, 0.7, 0.3, 0.85, 0.15] {
            let z = *a + (*b - *a).scaled(share);
            if whole(z) {
                places.push((z, None));
            }
        }
    }
    places
}

fn front_layers(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, show: Show) {
    let parts = layers_of(&slice.near, show);
    let tube = slice.solved.frame.tube;
    for (z, behind) in heights(&slice.near, &slice.tubes) {
        let mut dots: Vec<PaperPoint> = parts.iter().map(|(w, _)| view.at(*w, z)).collect();
        let mut names: Vec<String> = parts.iter().map(|(_, name)| name.clone()).collect();
        if let Some(tube) = behind {
            dots.push(view.at(tube.centre_x(), z));
            names.push(format!("bare frame, {} tube", show.text(slice.solved.frame.tube)));
        }
        let from = view.x(slice.near.at[2] + tube) + 5.0;
        for off in [4.0, 0.0, 8.0, 14.0, 20.0, 28.0, 36.0, 46.0] {
            if [PITCH, -PITCH].iter().any(|step| stack(canvas, at, &dots, from + off, *step, &names)) {
                return;
            }
        }
    }
}

fn back_layers(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, show: Show) {
    let mut parts = layers_of(&slice.far, show);
    let Some((_, first)) = parts.first_mut() else { return };
    let side = if slice.facing == Face::Back { "front" } else { "back" };
    *first = format!("{side}: {first}");
    let mut places = heights(&slice.far, &slice.tubes);
    places.sort_by_key(|(_, behind)| behind.is_some());
    for (z, _) in places {
        let dots: Vec<PaperPoint> = parts.iter().map(|(w, _)| view.at(*w, z)).collect();
        let names: Vec<String> = parts.iter().map(|(_, name)| name.clone()).collect();
        let from = view.x(slice.far.at[2] - slice.solved.frame.tube) - 5.0;
        for off in [0.0, 4.0, 8.0, 14.0, 20.0, 28.0] {
            if [PITCH, -PITCH].iter().any(|step| stack(canvas, at, &dots, from - off, *step, &names)) {
                return;
            }
        }
    }
}

/// Counter and substrate on one upright leader behind the cutout.
fn counter_layers(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, show: Show, limit: f64) {
    let d = &slice.leg.datums;
    let middle = (d.substrate_top + d.counter_top).half();
    let under = (d.frame_top + d.substrate_top).half();
    let counter = format!("counter {}", show.text(slice.solved.counter.thickness));
    let substrate = format!("{} {}", slice.solved.substrate.name, show.text(slice.solved.substrate.thickness));
    let names = [clipped(&counter), clipped(&substrate)];
    let top = view.y(d.counter_top);
    let within = |w: Length| slice.substrate.iter().any(|(a, b)| *a < w && w < *b);
    let spans = slice.counter.iter().rev().chain(slice.counter.first());
    let mut ways: Vec<Length> = spans
        .flat_map(|(a, b)| [0.86, 0.75, 0.6, 0.45, 0.3, 0.15, 0.93].map(|share| *a + (*b - *a).scaled(share)))
        .collect();
    ways.sort_by_key(|w| !within(*w));
    for w in ways {
        let levels: &[Length] = if within(w) { &[middle, under] } else { &[middle] };
        for up in [12.0, 15.0, 19.0, 23.0, 27.0, 31.0, 9.0, 36.0, 41.0] {
            let high = top - up - PITCH * (levels.len() - 1) as f64;
            if high < TOP_LIMIT {
                continue;
            }
            let wide = names.iter().map(|name| lettering::width(name, BODY, Weight::Regular)).fold(0.0, f64::max) + 3.0;
            let sides: &[f64] = if view.x(w) + wide > limit { &[-1.0] } else { &[-1.0, 1.0] };
            if sides.iter().any(|side| upright_stack(canvas, at, view, (w, levels), high, *side, &names)) {
                return;
            }
        }
    }
}

/// A leader upright through levels, the names one under another at its upper end. Draws only where all is free.
fn upright_stack(
    canvas: &mut Canvas,
    at: Layer,
    view: &CutView,
    (w, levels): (Length, &[Length]),
    high: f64,
    side: f64,
    names: &[String],
) -> bool {
    let x = view.x(w);
    let Some(lowest) = levels.last().map(|z| view.at(w, *z)) else { return false };
    let style = if side > 0.0 { Style::body() } else { Style::body().end() };
    let place = |k: usize| PaperPoint::new(x + side * 3.0, high + PITCH * k as f64 + BODY / 2.0);
    let names = &names[..levels.len().min(names.len())];
    let wide = names.iter().map(|name| lettering::width(name, BODY, Weight::Regular)).fold(0.0, f64::max) + 3.0;
    // The whole block, so that no arrow head lies under it.
    let (left, right) = (x.min(x + side * wide), x.max(x + side * wide));
    let low = high + PITCH * (names.len() - 1) as f64;
    if !canvas.is_box_free(left, high - 2.0, right, low + 4.0)
        || !canvas.is_clear_of_text(&[lowest, PaperPoint::new(x, high)])
    {
        return false;
    }
    canvas.line(at, lowest, PaperPoint::new(x, high), Pen::DIMENSION);
    for (k, name) in names.iter().enumerate() {
        let y = high + PITCH * k as f64;
        canvas.line(at, PaperPoint::new(x, y), PaperPoint::new(x + side * 2.0, y), Pen::DIMENSION);
        canvas.text(at, place(k), name, &style);
    }
    for z in levels {
        canvas.circle(at, view.at(w, *z), 0.45, Paint::fill(Fill::ink(Colour::INK)));
    }
    true
}

/// Other holes in the counter in the same line, as a sink's faucet: by an upright leader from the hole's edge.
fn other_holes(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice) {
    let top = view.y(slice.leg.datums.counter_top);
    for (index, fitting) in slice.leg.fittings.iter().enumerate() {
        let Some(cut) = fitting.cutout(Plane::Counter).filter(|_| index != slice.index) else { continue };
        if !(cut.extent.x0 < slice.u && slice.u < cut.extent.x1) {
            continue;
        }
        let w = slice.w(cut.extent.centre_y());
        let name = clipped(&format!("{} {}", fitting.name, fitting.mark));
        let tip = PaperPoint::new(view.x(w), top + view.size(slice.solved.counter.thickness) / 2.0);
        'places: for up in [6.0, 9.0, 12.0, 16.0, 21.0, 27.0] {
            for side in [1.0, -1.0] {
                let knee = PaperPoint::new(tip.x, top - up);
                let end = knee.moved(side * 2.0, 0.0);
                let style = if side > 0.0 { Style::body() } else { Style::body().end() };
                let place = end.moved(side, 1.25);
                if canvas.is_free(&lettering::set(place, &name, &style)) && canvas.is_clear_of_text(&[tip, knee, end]) {
                    marks::leader(canvas, at, &[tip, knee, end], LeaderEnd::Dot, Colour::INK);
                    canvas.text(at, place, &name, &style);
                    break 'places;
                }
            }
        }
    }
}

/// A level leader to the first of some offsets where its name is free; negative offsets go left. A name too long for
/// the room on its side is set in two lines.
pub(super) fn sideways(
    canvas: &mut Canvas,
    at: Layer,
    dot: PaperPoint,
    offsets: &[f64],
    name: &str,
    end: LeaderEnd,
    limit: f64,
) -> bool {
    for off in offsets {
        let tip = dot.moved(*off, 0.0);
        let (style, side) = if *off < 0.0 { (Style::body().end(), -1.0) } else { (Style::body(), 1.0) };
        let room = if side < 0.0 { tip.x - 1.0 - LEFT_LIMIT } else { limit - tip.x - 1.0 };
        let lines = notes::wrapped(name, room.min(LONGEST), BODY, Weight::Regular);
        let fits = |line: &String| lettering::width(line, BODY, Weight::Regular) <= room;
        if lines.len() > 2 || !lines.iter().all(fits) {
            continue;
        }
        let first = BODY / 2.0 - PITCH / 2.0 * (lines.len() - 1) as f64;
        let place = |k: usize| tip.moved(side, first + PITCH * k as f64);
        let free = lines.iter().enumerate().all(|(k, line)| canvas.is_free(&lettering::set(place(k), line, &style)));
        if free && canvas.is_clear_of_text(&[dot, tip]) {
            marks::leader(canvas, at, &[dot, tip], end, Colour::INK);
            for (k, line) in lines.iter().enumerate() {
                canvas.text(at, place(k), line, &style);
            }
            return true;
        }
    }
    false
}

/// Doors, drawers and whatever else is in the face that is cut.
fn fronts(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, limit: f64) {
    for (skin, out) in [(&slice.near, -1.0), (&slice.far, 1.0)] {
        for ((z0, z1), index) in &skin.openings {
            if *index == slice.index {
                continue;
            }
            let fitting = &slice.leg.fittings[*index];
            let name = format!("{} {}", fitting.name, fitting.mark);
            for share in [0.5, 0.62, 0.38, 0.75, 0.25] {
                let z = *z0 + (*z1 - *z0).scaled(share);
                let dot = view
                    .at(skin.at[0], z)
                    .moved(if super::picture::has_front(fitting) { out * 1.2 } else { -out * 0.8 }, 0.0);
                let near: Vec<f64> = [4.0, 7.0, 11.0, 16.0].iter().map(|off| out * off).collect();
                let inside: Vec<f64> = [16.0, 22.0, 30.0, 40.0].iter().map(|off| -out * off).collect();
                if sideways(canvas, at, dot, &near, &name, LeaderEnd::Dot, limit)
                    || sideways(canvas, at, dot, &inside, &name, LeaderEnd::Dot, limit)
                {
                    break;
                }
            }
        }
    }
}

/// The tube that carries the cutout's back edge, with its mark where it has one.
fn rail(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice) {
    let top = slice.leg.datums.frame_top;
    let behind =
        slice.tubes.iter().filter(|tube| tube.y1 == top && tube.x0 >= slice.hole.1 && tube.x1 < slice.far.at[2]);
    let Some(tube) = behind.min_by_key(|tube| tube.x0) else { return };
    let words = slice.own_support(tube).map_or("rail".to_owned(), |own| format!("{} {}", own.role.words(), own.mark));
    supports::name(canvas, at, view, *tube, &words, LeaderEnd::Arrow, (slice.middle(), f64::MAX));
}

/// An adjustable foot, and which way the floor falls under the section.
fn foot_and_floor(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, show: Show, limit: f64) {
    if let Some((w, ground, under)) = slice.feet.iter().min_by_key(|(w, _, _)| *w) {
        let tip = view
            .at(*w + slice.solved.frame.tube.scaled(1.0 / 6.0), *ground + (*under - *ground).scaled(0.55))
            .moved(0.2, 0.0);
        sideways(canvas, at, tip, &[9.0, 12.0, 16.0, 22.0, 30.0], "adjustable foot", LeaderEnd::Arrow, limit);
    }
    let (a, b) = (slice.near.at[2].mm(), slice.far.at[2].mm());
    let fall = Length::from_mm(slice.floor(b) - slice.floor(a));
    let text = if show.rounded(fall) == Length::ZERO {
        "floor level across the frame".to_owned()
    } else {
        format!("floor falls {} across the frame", show.prose(fall.abs()))
    };
    let wide = lettering::width(&text, BODY, Weight::Regular);
    let style = Style::body().middle();
    // Between frame and floor, or under the ground where they are too near one another.
    let gap = view.size(slice.leg.datums.frame_bottom);
    for share in [0.66, 0.6, 0.72, 0.54, 0.48, 0.4] {
        for up in [2.2, 3.4, 5.0, -6.9].into_iter().filter(|up| up + BODY + 0.8 < gap) {
            let (w, middle) = (a + (b - a) * share, PaperPoint::new(view.x_mm(a + (b - a) * share), 0.0));
            let y = view.y_mm(
                slice
                    .floor(w)
                    .max(slice.floor(w - wide / 2.0 / view.scale.factor()))
                    .max(slice.floor(w + wide / 2.0 / view.scale.factor())),
            ) - up;
            let place = PaperPoint::new(middle.x, y);
            if !canvas.is_free(&lettering::set(place, &text, &style)) {
                continue;
            }
            canvas.text(at, place, &text, &style);
            let side = if fall > Length::ZERO { -1.0 } else { 1.0 };
            let from = PaperPoint::new(place.x + side * (wide / 2.0 + 2.0), y - 1.2);
            let tip = from.moved(side * 8.0, 0.0);
            let clear = canvas.is_box_free(from.x.min(tip.x - 4.0), y - 2.2, from.x.max(tip.x + 4.0), y - 0.2);
            if show.rounded(fall) != Length::ZERO && clear {
                canvas.line(at, from, tip, Pen::DIMENSION);
                canvas.arrow(at, tip, if side < 0.0 { 180.0 } else { 0.0 }, Colour::INK);
            }
            return;
        }
    }
}

/// What hangs in the cutout, said inside its outline.
fn body_name(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice) {
    let Some(body) = slice.body(slice.fitting) else { return };
    let d = &slice.leg.datums;
    let lines = [
        format!("{}, outline only", slice.fitting.name),
        if slice.is_notch() { "hood not shown".to_owned() } else { String::new() },
    ];
    let style = Style::caption().middle();
    let top = body.y1.min(d.frame_top);
    for share in [0.45, 0.6, 0.3, 0.75] {
        let middle = PaperPoint::new(view.x(body.centre_x()), view.y(body.y0 + (top - body.y0).scaled(share)));
        let set = |k: usize| lettering::set(middle.moved(0.0, 4.5 * k as f64), &lines[k], &style);
        if canvas.is_free(&set(0)) && (lines[1].is_empty() || canvas.is_free(&set(1))) {
            for (k, line) in lines.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
                canvas.text(at, middle.moved(0.0, 4.5 * k as f64), line, &style);
            }
            return;
        }
    }
}

/// The bare frame's depth, inside it.
fn frame_depth(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, show: Show) {
    let d = &slice.leg.datums;
    let (a, b) = (slice.near.at[2], slice.far.at[2]);
    for share in [0.4, 0.33, 0.46, 0.27, 0.52, 0.2, 0.15] {
        let z = d.frame_bottom + (d.frame_top - d.frame_bottom).scaled(share);
        let line = view.y(z);
        let dimension = Dimension::new(Across::X, (a, z), (b, z), line)
            .datums("bare frame", "frame back")
            .label("bare frame, front to back")
            .witnesses(Some(line + 2.0), Some(line + 2.0))
            .ghosts(true, true);
        let wide = dimension.lettering_width(show);
        let middle = (view.x(a) + view.x(b)) / 2.0;
        let clear = canvas.is_box_free(middle - wide / 2.0 - 1.0, line - 4.8, middle + wide / 2.0 + 1.0, line + 1.0);
        if dimension.fits(view, show) && clear && canvas.is_clear_of_text(&[view.at(a, z), view.at(b, z)]) {
            dimension.draw(canvas, at, view, show);
            return;
        }
    }
}

fn wall(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice) {
    let Some((bound, face, _)) = slice.wall else { return };
    let x = view.x(face) + super::picture::WALL_STRIP + 1.5 + BODY;
    let d = &slice.leg.datums;
    let places: Vec<PaperPoint> = [0.6, 0.5, 0.7, 0.4, 0.8]
        .iter()
        .map(|share| PaperPoint::new(x, view.y(d.counter_top.scaled(*share))))
        .collect();
    canvas.text_at_first(at, &places, &clipped(&bound.name), &Style::body().upright().middle());
}
