//! The dimensions of an end: overhangs, openings from the finished face and from the counter's top, depths, heights.

use super::end::{End, EndView};
use super::picture;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Chain, Dimension, Drop, Number, ORIGIN, Part, Running, Side, Stop};
use crate::sheets::{frame, marks, notes};
use crate::solve::{BoundKind, Datum, Fitting};
use crate::units::{Length, Show};

/// Room over the counter: overhangs, flag.
pub const ABOVE: f64 = 22.0;

/// The running line of the openings.
fn running(end: &End, view: &EndView) -> Running {
    let mut stops = Vec::new();
    for (_, fitting, cutout) in end.openings() {
        for (v, side) in [(cutout.extent.x0, "near edge"), (cutout.extent.x1, "far edge")] {
            stops.push(Stop {
                at: (end.x(v), cutout.extent.y0),
                name: format!("{} {side}", fitting.mark),
                witness: None,
            });
        }
    }
    // Of openings over one another the lowest carries the witness line.
    stops.sort_by_key(|stop| stop.at.1);
    Running {
        datum: (Length::ZERO, Length::ZERO),
        datum_name: Datum::FinishedFace.words().to_owned(),
        line: lowest(view, end) + 9.0,
        side: Side::Below,
        finished: true,
        stops,
    }
}

fn lowest(view: &EndView, end: &End) -> f64 {
    let (near, far) = picture::reach(end);
    view.y_mm(end.floor(near).min(end.floor(far))) + 2.6
}

/// Room under the floor that the dimensions take, mm.
pub fn below(end: &End, view: &EndView, show: Show) -> f64 {
    let running = running(end, view);
    // Numbers that stand too near one another are moved out on bent lines.
    let mut places: Vec<f64> = running.stops.iter().map(|stop| view.x(stop.at.0)).collect();
    places.sort_by(f64::total_cmp);
    let crowded = places.windows(2).any(|pair| pair[1] - pair[0] > 0.01 && pair[1] - pair[0] < 3.8);
    let bent = if crowded { 4.5 } else { 0.0 };
    let first = if running.stops.is_empty() || end.is_covered() { 8.0 } else { 9.0 + running.reach(show) + 6.0 + bent };
    2.6 + first + 7.0 + 3.0
}

/// Draws them all.
pub fn draw(canvas: &mut Canvas, view: &EndView, end: &End, show: Show) {
    let at = canvas.layer(view.layer, "dimensions");
    if !end.is_covered() {
        overhangs(canvas, at, view, end, show);
    }
    let line = lowest(view, end) + below(end, view, show) - 12.6;
    depths(canvas, at, view, end, show, line);
    if !end.is_left() {
        heights(canvas, at, view, end, show);
    }
    let running = running(end, view);
    if !end.is_covered() && !running.stops.is_empty() {
        running.draw(canvas, at, view, show);
    }
    let at = canvas.layer(view.layer, "labels");
    if end.is_covered() {
        said(canvas, at, view, end, show);
    } else {
        let columns = drop_lines(canvas, at, view, end);
        names(canvas, at, view, end);
        for (x, edges) in &columns {
            column(canvas, at, view, end, show, *x, edges);
        }
    }
}

/// How far the counter reaches past the finished face, and past whatever is outermost behind.
fn overhangs(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, show: Show) {
    let (d, counter) = (&end.leg.datums, &end.leg.counter.extent);
    let splash =
        end.solved.counter.splash.filter(|_| !end.leg.counter.splashes.is_empty()).map_or(0.0, |s| view.size(s.height));
    let back = end.outer_back();
    let against = picture::wall_at(end).is_some() || end.leg.back.kind == BoundKind::Leg;
    let mut list = vec![(Datum::FinishedFace, Length::ZERO, counter.y0, end.front_side(), "overhang", 0.0)];
    if !against {
        list.push((back, d.at(back), counter.y1, -end.front_side(), "overhang", splash));
    }
    for (datum, from, to, outward, label, up) in list {
        if from == to {
            continue;
        }
        let line = view.y(d.counter_top) - 7.0 - up;
        let dimension = Dimension::new(Across::X, (end.x(from), d.counter_top), (end.x(to), d.counter_top), line)
            .datums(datum.words(), "counter edge")
            .witnesses(Some(view.y(d.counter_top) - 1.5), Some(view.y(d.counter_top) - 1.5));
        let dimension = if datum.is_finished() { dimension.from_finished() } else { dimension };
        // Beside the line, or over a long one where the sheet ends beside it.
        let (inside, edge) = (frame::inside(canvas), view.x(end.x(to)));
        let beside = |one: &Dimension| {
            let reach = 6.5 + one.lettering_width(show);
            if outward > 0.0 { edge + reach <= inside.right } else { edge - reach >= inside.left }
        };
        let out = if outward > 0.0 { Number::After(6.5) } else { Number::Before(6.5) };
        let (named, bare) = (dimension.clone().label(label), dimension);
        let dimension = if beside(&named) {
            named.number(out)
        } else if named.fits(view, show) {
            named
        } else if bare.fits(view, show) {
            bare
        } else {
            bare.number(out)
        };
        dimension.draw(canvas, at, view, show);
    }
}

/// Build-ups and frame end to end, and the whole depth from the finished face.
fn depths(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, show: Show, line: f64) {
    let low = end.leg.datums.frame_bottom;
    let mut positions: Vec<Part> =
        end.depths().iter().map(|(datum, v)| Part { at: end.x(*v), name: datum.words().to_owned() }).collect();
    positions.sort_by_key(|part| part.at);
    let witness = Some(lowest(view, end) + 2.5);
    let name = if end.is_left() { "left end depths" } else { "right end depths" };
    let (Some(first), Some(last)) = (positions.first().cloned(), positions.last().cloned()) else { return };
    let whole = show.rounded(last.at - first.at);
    let parts = Chain {
        name: name.to_owned(),
        across: Across::X,
        positions,
        beside: low,
        line,
        total: None,
        total_label: String::new(),
        total_finished: false,
        witness,
    };
    // Where even the frame is too short for its number the build-ups stand in their table alone.
    let inner = parts.positions.windows(2).enumerate().filter(|(k, _)| *k > 0 && k + 2 < parts.positions.len());
    let fits = inner
        .map(|(_, pair)| Dimension::new(Across::X, (pair[0].at, low), (pair[1].at, low), line))
        .all(|part| part.fits(view, show));
    if fits {
        parts.draw(canvas, at, view, show);
    }
    let back = end.depths().last().copied().unwrap_or((Datum::FinishedFace, Length::ZERO));
    let total = Dimension::new(Across::X, (Length::ZERO, low), (end.x(back.1), low), line + 7.0)
        .datums(Datum::FinishedFace.words(), back.0.words())
        .shown_as(whole)
        .witnesses(witness, witness)
        .from_finished();
    let total = if fits { total.chained(name, "total") } else { total };
    let labels =
        [format!("finished face to {}", back.0.words()), format!("to {}", back.0.words()), "overall".to_owned()];
    let named = labels.into_iter().map(|label| total.clone().label(label)).find(|named| named.fits(view, show));
    named.unwrap_or(total).draw(canvas, at, view, show);
}

/// The bare frame's height, and the counter's over the floor's high point, behind the right end.
fn heights(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, show: Show) {
    let (d, (_, far)) = (&end.leg.datums, picture::reach(end));
    let strip = if picture::wall_at(end).is_some() { picture::WALL_STRIP } else { 0.0 };
    let out = view.x(end.x(far)) + strip;
    let v = end.x(d.frame_back);
    let list = [
        (Datum::FrameBottom, d.frame_bottom, Datum::FrameTop, d.frame_top, "bare frame"),
        (Datum::Floor, Length::ZERO, Datum::CounterTop, d.counter_top, "floor\u{2019}s high point to counter top"),
    ];
    for (k, (low, from, high, to, label)) in list.into_iter().enumerate() {
        let line = out + 9.0 + 7.0 * k as f64;
        let plain = Dimension::new(Across::Y, (v, from), (v, to), line)
            .datums(low.words(), high.words())
            .witnesses(Some(out + 1.5), Some(out + 1.5));
        let named = plain.clone().label(label);
        let dimension = if named.fits(view, show) { named } else { plain };
        if dimension.fits(view, show) {
            dimension.draw(canvas, at, view, show);
        }
    }
}

/// Least width that words on a plate are set to, mm.
const NARROW: f64 = 18.0;

/// Why nothing is to be seen, on a plate in the middle of what covers it.
fn said(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, show: Show) {
    let d = &end.leg.datums;
    let name = &end.bound().name;
    let name = if name.is_empty() { "what stands there" } else { name };
    let gap = show.rounded(end.gap().max(Length::ZERO));
    let leg = end.bound().kind == BoundKind::Leg;
    let mut lines = vec![if leg { format!("meets {name}") } else { format!("stands against {name}") }];
    lines.push(if leg {
        "drawn on the front elevation".to_owned()
    } else if gap > Length::ZERO {
        format!("{} clear", show.prose(gap))
    } else {
        "no gap".to_owned()
    });
    lines.push(match (end.build().board > Length::ZERO, end.build().finish.is_some()) {
        (false, false) => "no board, no finish here".to_owned(),
        (true, false) => "board, no finish here".to_owned(),
        _ => "finished before it is set".to_owned(),
    });
    let middle = PaperPoint::new(
        (view.x(end.x(d.frame_face)) + view.x(end.x(d.frame_back))) / 2.0,
        view.y((d.frame_bottom + d.frame_top).half()),
    );
    let half = |lines: &[String]| {
        let wide = lines.iter().map(|line| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max);
        (wide / 2.0 + 2.5, 4.7 * lines.len() as f64 / 2.0 + 1.8)
    };
    let (mut dx, mut dy) = half(&lines);
    // Over a shallow leg the plate would lie on the heights beside it: it is set in narrower lines.
    if !canvas.is_box_free_of_text(middle.x - dx, middle.y - dy, middle.x + dx, middle.y + dy) {
        let deep = (view.x(end.x(d.frame_back)) - view.x(end.x(d.frame_face))).abs();
        lines = lines.iter().flat_map(|line| notes::wrapped(line, deep.max(NARROW), BODY, Weight::Regular)).collect();
        (dx, dy) = half(&lines);
    }
    canvas.rectangle(at, middle.moved(-dx, -dy), middle.moved(dx, dy), Paint::fill(Fill::WHITE));
    for (k, line) in lines.iter().enumerate() {
        canvas.text(at, middle.moved(0.0, -dy + 1.8 + 4.7 * k as f64 + 3.4), line, &Style::body().middle());
    }
}

/// A mark and a name for each opening: in it where it is large enough, beside it otherwise.
fn names(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    for (_, fitting, cutout) in end.openings() {
        let e = cutout.extent;
        let (a, b) = (view.x(end.x(e.x0)), view.x(end.x(e.x1)));
        let (left, right, high, low) = (a.min(b), a.max(b), view.y(e.y1), view.y(e.y0));
        let radius = marks::ring_radius(&fitting.mark);
        let middle = PaperPoint::new((left + right) / 2.0, (high + low) / 2.0);
        let name_wide = lettering::width(&fitting.name, BODY, Weight::Regular);
        let spots = [0.0, 3.0, -3.0, 6.0, -6.0].map(|dx| middle.moved(dx, 0.0));
        let holds = |p: &PaperPoint| {
            let r = radius + 0.8;
            p.x - r > left
                && p.x + r < right
                && p.y - r > high
                && p.y + r < low
                && canvas.is_box_free(p.x - r, p.y - r, p.x + r, p.y + r)
        };
        if let Some(middle) = spots.into_iter().find(holds) {
            marks::ring(canvas, at, middle, &fitting.mark);
            let under = middle.moved(0.0, radius + 4.2);
            let style = Style::body().middle();
            let inside = under.y < low - 1.0 && name_wide < right - left - 2.0;
            if inside && canvas.is_free(&lettering::set(under, &fitting.name, &style)) {
                canvas.text(at, under, &fitting.name, &style);
            }
            continue;
        }
        let both = format!("{} {}", fitting.mark, fitting.name);
        let named =
            [&both, &fitting.mark].into_iter().any(|name| named_near(canvas, at, (left, high, right, low), name));
        if !named {
            // Where the dot meets nothing.
            let spots = [0.0, 2.0, -2.0, 4.0, -4.0].map(|dx| middle.moved(dx, 0.0));
            let clear = |p: &PaperPoint| {
                p.x > left && p.x < right && canvas.is_box_free(p.x - 0.9, p.y - 0.9, p.x + 0.9, p.y + 0.9)
            };
            if let Some(dot) = spots.into_iter().find(clear) {
                outside(canvas, at, view, end, dot, &both);
            }
        }
    }
}

/// A name in its opening, over it, under it or beside it, at the first white place.
fn named_near(canvas: &mut Canvas, at: Layer, (left, high, right, low): (f64, f64, f64, f64), name: &str) -> bool {
    let wide = lettering::width(name, BODY, Weight::SemiBold);
    let middle = PaperPoint::new((left + right) / 2.0, (high + low) / 2.0);
    let mut places = vec![];
    if low - high > BODY + 1.6 && right - left > wide + 2.0 {
        places.push(middle.moved(0.0, BODY / 2.0));
    }
    places.extend([
        PaperPoint::new(middle.x, high - 1.4),
        PaperPoint::new(middle.x, low + BODY + 1.4),
        PaperPoint::new(right + 1.8 + wide / 2.0, middle.y + BODY / 2.0),
        PaperPoint::new(left - 1.8 - wide / 2.0, middle.y + BODY / 2.0),
    ]);
    canvas.text_at_first(at, &places, name, &Style::body().bold().middle()).is_some()
}

/// A name on a leader, clear of the run, behind it.
fn outside(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, dot: PaperPoint, name: &str) {
    let (_, far) = picture::reach(end);
    let (side, edge) = (-end.front_side(), view.x(end.x(far)));
    let style = if side > 0.0 { Style::body() } else { Style::body().end() };
    for off in [4.0, 7.0, 11.0, 20.0, 24.0] {
        let tip = PaperPoint::new(edge + side * off, dot.y);
        let place = tip.moved(side, BODY / 2.0);
        if canvas.is_free(&lettering::set(place, name, &style)) && canvas.is_clear_of_text(&[dot, tip]) {
            marks::leader(canvas, at, &[dot, tip], marks::LeaderEnd::Dot, Colour::INK);
            canvas.text(at, place, name, &style);
            return;
        }
    }
}

/// An edge that a drop reaches.
struct Edge<'s> {
    fitting: &'s Fitting,
    z: Length,
    top: bool,
}

/// The lines of the drops from the counter's top, one for openings over one another, and the edges that each passes.
fn drop_lines<'s>(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End<'s>) -> Vec<(Length, Vec<Edge<'s>>)> {
    let mut columns: Vec<(f64, f64, Vec<Edge>)> = Vec::new();
    let mut openings = end.openings();
    openings.sort_by_key(|(_, fitting, cutout)| (-cutout.extent.y1, fitting.left));
    for (_, fitting, cutout) in openings {
        let (a, b) = (view.x(end.x(cutout.extent.x0)), view.x(end.x(cutout.extent.x1)));
        let (left, right) = (a.min(b), a.max(b));
        let mut edges = vec![Edge { fitting, z: cutout.extent.y1, top: true }];
        if !fitting.to_floor {
            edges.push(Edge { fitting, z: cutout.extent.y0, top: false });
        }
        match columns.iter_mut().find(|(low, high, _)| high.min(right) - low.max(left) >= 2.0) {
            Some((low, high, list)) => {
                (*low, *high) = (low.max(left), high.min(right));
                list.extend(edges);
            }
            None => columns.push((left, right, edges)),
        }
    }
    // The line keeps to the side that the cook does not stand on, away from the pole.
    let place = |left: f64, right: f64| {
        let inset = ((right - left) / 2.0).min(4.0);
        let x = if end.is_left() { left + inset } else { right - inset };
        Length::from_mm((x - view.origin.x) / view.scale.factor())
    };
    let columns: Vec<(Length, Vec<Edge>)> =
        columns.into_iter().map(|(left, right, edges)| (place(left, right), edges)).collect();
    // All lines before any lettering, which keeps clear of them.
    for (x, edges) in &columns {
        let lowest = edges.iter().map(|edge| view.y(edge.z)).fold(f64::NEG_INFINITY, f64::max);
        let top = view.at(*x, end.leg.datums.counter_top);
        canvas.line(at, top, PaperPoint::new(top.x, lowest), Pen::DIMENSION);
        canvas.circle(at, top, ORIGIN, Paint::both(Pen::DIMENSION, Fill::WHITE));
        for edge in edges {
            canvas.arrow(at, PaperPoint::new(top.x, view.y(edge.z)), 90.0, Colour::INK);
        }
    }
    columns
}

fn column(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End, show: Show, model_x: Length, edges: &[Edge]) {
    let top = end.leg.datums.counter_top;
    let x = view.x(model_x);
    for edge in edges {
        let (y, drop) = (view.y(edge.z), top - edge.z);
        // The schedule has it where the drawing has no room.
        let Some(place) = number_place(canvas, PaperPoint::new(x, y), edge.top, drop, show) else { continue };
        let to = format!("{} {}", edge.fitting.mark, if edge.top { "top edge" } else { "bottom edge" });
        let group = Drop { x: model_x, top, z: edge.z, to }.group(canvas, at, view, show);
        canvas.text(group, place, &show.text(drop), &Style::body().bold().fact("data-role", "dimtext"));
        if let Some(second) = show.second(drop) {
            canvas.text(group, place.moved(number_width(drop, show) + 1.0, 0.0), &second, &Style::body());
        }
    }
}

/// Where a drop's number stands beside its arrow: just past the edge or just inside it. `None` where nothing is white.
fn number_place(canvas: &Canvas, tip: PaperPoint, top: bool, drop: Length, show: Show) -> Option<PaperPoint> {
    let (own, second) = (number_width(drop, show), show.second(drop));
    let wide = own + second.as_ref().map_or(0.0, |s| 1.0 + lettering::width(s, BODY, Weight::Regular));
    let (outside, inside) = if top { (-1.4, BODY + 1.4) } else { (BODY + 1.4, -1.4) };
    let further = outside + if top { -3.6 } else { 3.6 };
    let offsets = [outside, inside, further].into_iter().flat_map(|dy| [1.6, -1.6 - wide].map(|dx| (dx, dy)));
    let free = |place: &PaperPoint| {
        let after = place.moved(own + 1.0, 0.0);
        canvas.is_free(&lettering::set(*place, &show.text(drop), &Style::body().bold()))
            && second.as_ref().is_none_or(|s| canvas.is_free(&lettering::set(after, s, &Style::body())))
    };
    offsets.map(|(dx, dy)| tip.moved(dx, dy)).find(free)
}

fn number_width(drop: Length, show: Show) -> f64 {
    lettering::width(&show.text(drop), BODY, Weight::SemiBold)
}
