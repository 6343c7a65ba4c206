//! The dimensions of the cutout: its back edge from every depth datum, its bottom from every height datum.

use super::lens::Lens;
use super::picture::{CutView, Layers};
use super::slice::Slice;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::dimensions::{Across, Dimension, NEXT, Number};
use crate::solve::Datum;
use crate::units::{Length, Show};

/// First line of the ladder over the counter's top, mm: the flange lies between.
const FIRST_LINE: f64 = 12.0;
/// The same over a well, whose flange is thin.
const WELL_LINE: f64 = 10.0;
/// From the lowest line that is read beside its end to the next, mm.
const DROP_NEXT: f64 = 10.0;

/// How the ladder of depths is set out.
pub struct Ladder {
    /// Paper y of the lines, nearest first, over the counter's top (negative).
    lines: Vec<f64>,
    /// Numbers stand beyond the arrows, not over the lines.
    beside: bool,
    /// A line of its own for the flange's lap, or for a well's front edge.
    extra: Option<f64>,
}

/// Words of a depth.
fn label(words: &str) -> String {
    format!("from {words}")
}

/// Widest number and widest label of the depths, mm.
fn widths(slice: &Slice, show: Show) -> (f64, f64) {
    let depths = slice.distinct_depths();
    let number = |at: &Length| {
        let length = slice.hole.1 - *at;
        lettering::width(&show.text(length), TITLE, Weight::SemiBold)
    };
    let words = |(datum, at, words): &(Datum, Length, String)| {
        let second =
            show.second(slice.hole.1 - *at).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
        let weight = if datum.is_finished() { Weight::SemiBold } else { Weight::Regular };
        second + 1.3 + lettering::width(&label(words), BODY, weight)
    };
    let widest = |list: Vec<f64>| list.into_iter().fold(0.0, f64::max);
    (widest(depths.iter().map(|(_, at, _)| number(at)).collect()), widest(depths.iter().map(words).collect()))
}

impl Ladder {
    /// Sets it out for a scale, clear of the detail's circle, which reaches `ring` mm over the counter's top.
    pub fn new(slice: &Slice, factor: f64, show: Show, ring: f64) -> Ladder {
        let depths = slice.distinct_depths();
        let (number, words) = widths(slice, show);
        let innermost = depths.iter().map(|(_, at, _)| *at).max().unwrap_or(Length::ZERO);
        let beside = (slice.hole.1 - innermost).mm() * factor < number + words + 7.0;
        let own_line = !slice.is_notch() || (beside && slice.fitting.flange.far > Length::ZERO);
        let own = (if slice.is_notch() { FIRST_LINE } else { WELL_LINE }).max(ring + 2.5);
        // Numbers that stand behind the cutout clear the upstand and the wall there.
        let own = -if beside { own.max(super::picture::behind(slice, factor) + 2.5) } else { own };
        let first = own - if own_line { NEXT } else { 0.0 };
        let lines = (0..depths.len()).map(|k| first - NEXT * k as f64).collect();
        Ladder { lines, beside, extra: own_line.then_some(own) }
    }

    /// Room that it takes over the counter's top, mm.
    pub fn height(&self) -> f64 {
        -self.lines.last().copied().unwrap_or(-FIRST_LINE) + 5.3 + if self.beside { 5.0 } else { 0.0 }
    }

    /// Room that it takes right of the cutout's back edge, mm.
    pub fn reach(&self, slice: &Slice, show: Show) -> f64 {
        let (number, words) = widths(slice, show);
        if self.beside { number + words + 4.0 } else { 0.0 }
    }

    /// Draws it.
    pub fn draw(&self, canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, show: Show) {
        let d = &slice.leg.datums;
        let (top, back) = (view.y(d.counter_top), slice.hole.1);
        let mut depths = slice.distinct_depths();
        depths.reverse();
        let (number, words) = widths(slice, show);
        let innermost = view.x(depths.first().map_or(Length::ZERO, |(_, at, _)| *at));
        let room = view.x(back) - innermost;
        let tab =
            if self.beside { view.x(back) + 3.0 + number } else { innermost + (room - number - words) / 2.0 + number };
        let edge = format!("{} {}", slice.word(), slice.edge_words().1);
        let start = top - 3.0;
        for (k, ((datum, at, words), line)) in depths.iter().zip(&self.lines).enumerate() {
            let line = top + line;
            let finished = datum.is_finished();
            let from_level = if slice.is_notch() && *at > Length::ZERO { d.frame_top } else { d.counter_top };
            let from_start =
                if finished { line + 1.0 } else { view.y(from_level) - if slice.is_notch() { 1.0 } else { 1.5 } };
            let dimension = Dimension::new(Across::X, (*at, from_level), (back, d.counter_top), line)
                .datums(words.clone(), edge.clone())
                .label(label(words))
                .number(Number::Aligned(tab))
                .witnesses(Some(from_start), Some(start))
                .ghosts(false, k + 1 < depths.len())
                .cut_to();
            let dimension = if finished { dimension.from_finished() } else { dimension.origin() };
            dimension.draw(canvas, layers.dimensions, view, show);
        }
        self.lap(canvas, view, layers, slice, show);
        if !slice.is_notch() {
            self.front_edge(canvas, view, layers, slice, show);
        }
        let highest = top + self.lines.last().copied().unwrap_or(0.0);
        let x = view.x(back);
        let beside = PaperPoint::new(x + 2.0, highest + 0.9);
        let above = PaperPoint::new(x + 1.0, highest - 4.2);
        canvas.text_at_first(layers.labels, &[beside, above, above.moved(0.0, -3.0)], &edge, &Style::body());
    }

    /// The flange's lap over the back edge.
    fn lap(&self, canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, show: Show) {
        let (lap, d) = (slice.fitting.flange.far, &slice.leg.datums);
        if lap <= Length::ZERO || !slice.is_notch() {
            return;
        }
        let top = view.y(d.counter_top);
        let line = top + self.extra.or(self.lines.first().copied()).unwrap_or(-FIRST_LINE);
        let plain = Dimension::new(Across::X, (slice.hole.1, d.counter_top), (slice.hole.1 + lap, d.counter_top), line)
            .datums(format!("{} {}", slice.word(), slice.edge_words().1), "flange edge")
            .number(Number::After(6.5))
            .witnesses(Some(line - 1.9), Some(top - 3.0));
        let named = plain.clone().label("flange lap");
        let from = view.x(slice.hole.1 + lap) + 6.5;
        if canvas.is_box_free(from, line - 4.5, from + named.lettering_width(show) + 0.5, line) {
            named.draw(canvas, layers.dimensions, view, show);
            return;
        }
        let number = canvas.is_box_free(from, line - 4.5, from + plain.lettering_width(show) + 0.5, line);
        let (words, from) = if number {
            plain.draw(canvas, layers.dimensions, view, show);
            ("flange lap".to_owned(), from)
        } else {
            (format!("flange laps {}", show.text(lap)), view.x(slice.hole.1) + 2.0)
        };
        let places = [3.6, -5.4, 5.0, 8.0].map(|y| PaperPoint::new(from, line + y));
        canvas.text_at_first(layers.labels, &places, &words, &Style::body());
    }

    /// A well's front edge from the finished face, and its size front to back, on the line of their own.
    fn front_edge(&self, canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, show: Show) {
        let (d, (near, far)) = (&slice.leg.datums, slice.hole);
        let top = view.y(d.counter_top);
        let line = top + self.extra.unwrap_or(-FIRST_LINE);
        let face = slice.depth_datums()[1].0.words();
        let at = |w: Length| (w, d.counter_top);
        let front = Dimension::new(Across::X, at(Length::ZERO), at(near), line)
            .datums(face, format!("well {}", slice.edge_words().0))
            .witnesses(Some(line + 1.0), Some(top - 3.0))
            .from_finished()
            .cut_to();
        // Right of the uprights that the ladder's other datums send up through this line, or left of them all.
        let innermost =
            slice.distinct_depths().iter().map(|(_, at, _)| view.x(*at)).fold(view.x(Length::ZERO), f64::max);
        let outermost = view.x(slice.counter_edges.0.min(Length::ZERO));
        let number = lettering::width(&show.text(near), TITLE, Weight::SemiBold);
        let room = view.x(near) - innermost - 4.5;
        let named = front.clone().label(format!("to {}", slice.edge_words().0));
        let front = if named.lettering_width(show) <= room { named } else { front };
        let spare = room - front.lettering_width(show);
        let front = if spare >= 0.0 {
            front.number(Number::Aligned(innermost + 1.2 + spare / 2.0 + number))
        } else {
            front.number(Number::Before((view.x(Length::ZERO) - outermost + 2.5).max(6.5)))
        };
        front.draw(canvas, layers.dimensions, view, show);
        let across = Dimension::new(Across::X, at(near), at(far), line)
            .datums(format!("well {}", slice.edge_words().0), format!("well {}", slice.edge_words().1))
            .witnesses(Some(top - 3.0), Some(top - 3.0))
            .ghosts(true, true);
        let named = across.clone().label("well, front to back");
        // Between its arrows, and right of the uprights that come through.
        let left = (view.x(near) + 3.3).max(innermost + 1.2);
        let room = view.x(far) - 3.3 - left;
        let chosen = [named, across].into_iter().find(|dimension| dimension.lettering_width(show) <= room);
        if let Some(chosen) = chosen {
            let spare = room - chosen.lettering_width(show);
            let number = lettering::width(&show.text(far - near), BODY, Weight::Regular);
            chosen.number(Number::Aligned(left + spare / 2.0 + number)).draw(canvas, layers.dimensions, view, show);
        }
    }
}

/// Where the innermost of the upright lines of a notch's drops lies, mm of paper at a scale from w = 0: clear of what is
/// drawn, its name clear of the detail's circle.
fn drop_line(slice: &Slice, factor: f64, lens: &Lens) -> f64 {
    let body = slice.body(slice.fitting).map_or(Length::ZERO, |body| body.x0);
    let outermost = slice.counter_edges.0.min(body).min(Length::ZERO).mm() * factor;
    (outermost - 10.0).min(lens.left() * factor - 5.6)
}

/// Room left of w = 0 that the drops of a notch take, mm.
pub fn drops_reach(slice: &Slice, factor: f64, lens: &Lens) -> f64 {
    DROP_NEXT + 6.5 - drop_line(slice, factor, lens)
}

/// Numbers of a notch's drops fit beside their lines.
fn drops_fit(slice: &Slice, factor: f64, show: Show) -> bool {
    drop_datums(slice).iter().all(|(datum, z, _)| {
        let drop = *z - slice.fitting.bottom.unwrap_or(*z);
        let number = lettering::width(&show.text(drop), TITLE, Weight::SemiBold)
            + show.second(drop).map_or(0.0, |t| 1.0 + lettering::width(&t, BODY, Weight::Regular));
        drop.mm() * factor >= (lettering::width(&label(datum.words()), BODY, Weight::Regular) + 2.0).max(number + 5.0)
    })
}

/// Height datums of a notch's drops: words, height, and where on w it lies.
fn drop_datums(slice: &Slice) -> Vec<(Datum, Length, Length)> {
    let (d, bottom) = (&slice.leg.datums, slice.fitting.bottom.unwrap_or(Length::ZERO));
    let all =
        [(Datum::FrameTop, d.frame_top, slice.near.at[2]), (Datum::CounterTop, d.counter_top, slice.counter_edges.0)];
    all.into_iter().filter(|(_, z, _)| *z > bottom && slice.is_notch()).collect()
}

/// Room over the counter's top that the drops take where their numbers stand over it, mm.
pub fn drops_height(slice: &Slice, factor: f64, show: Show) -> f64 {
    if drops_fit(slice, factor, show) {
        return 0.0;
    }
    let bottom = slice.fitting.bottom.unwrap_or(Length::ZERO);
    let widths = drop_datums(slice).into_iter().map(|(datum, z, _)| {
        let second = show.second(z - bottom).map_or(0.0, |t| 1.0 + lettering::width(&t, BODY, Weight::Regular));
        lettering::width(&show.text(z - bottom), TITLE, Weight::SemiBold)
            + second
            + 1.3
            + lettering::width(&label(datum.words()), BODY, Weight::Regular)
    });
    4.0 + widths.fold(0.0, f64::max)
}

/// A notch's bottom from the counter's top and from the frame's top. Returns the line's left end on the paper.
pub fn drops(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, show: Show, lens: &Lens) {
    let Some(bottom) = slice.fitting.bottom.filter(|_| slice.is_notch()) else { return };
    let d = &slice.leg.datums;
    let innermost = view.x(Length::ZERO) + drop_line(slice, view.scale.factor(), lens);
    let datums = drop_datums(slice);
    let mut line = innermost;
    let inside = drops_fit(slice, view.scale.factor(), show);
    for (k, (datum, z, w)) in datums.iter().enumerate() {
        let whole = Dimension::new(Across::Y, (*w, *z), (Length::ZERO, bottom), line)
            .datums(datum.words(), "notch bottom")
            .witnesses(Some(view.x(*w) - 1.0), Some(view.x(Length::ZERO) - 1.5))
            .ghosts(false, k + 1 < datums.len())
            .origin()
            .cut_to();
        let words = label(datum.words());
        if inside {
            whole.draw(canvas, layers.dimensions, view, show);
            let place = PaperPoint::new(line + 1.1 + BODY, (view.y(*z) + view.y(bottom)) / 2.0);
            canvas.text(layers.labels, place, &words, &Style::body().upright().middle());
        } else {
            // Over the counter's top, past the witness of the outer line, where only white is.
            whole.label(words).number(Number::After(view.size(d.counter_top - *z) + 3.0)).draw(
                canvas,
                layers.dimensions,
                view,
                show,
            );
        }
        line -= DROP_NEXT;
    }
    let y = view.y(bottom) + 4.2;
    let places = [line + DROP_NEXT - 2.0, innermost - 2.0].map(|x| PaperPoint::new(x, y));
    canvas.text_at_first(layers.labels, &places, "notch bottom", &Style::body());
}
