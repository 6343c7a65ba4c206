//! The chain of modules, finished end to finished end, and the counter's own ends.

use super::elevation::Elevation;
use super::meeting::Way;
use crate::drawing::Pen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension, Number};
use crate::sheets::frame;
use crate::sheets::scale::Scale;
use crate::solve::Bound;
use crate::units::Length;

/// From one row of numbers under the chain to the next, mm.
const ROW: f64 = 4.2;

/// More paper between the chain and the overall lengths, for numbers and letters that stand under short modules, mm.
pub fn under(e: &Elevation<'_>, scale: Scale) -> f64 {
    let width = |text: &str| lettering::width(text, BODY, Weight::SemiBold);
    let modules = e.part.modules.clone().filter_map(|index| e.leg.modules.get(index));
    // How far each module is from holding its number, and its letter beside that.
    let short = modules.map(|module| {
        let second = e.show.second(module.width()).map_or(0.0, |text| 5.5 + width(&text));
        let number = width(&e.show.text(module.width())) + second;
        let size = module.width().mm() * scale.factor();
        (size < (number + 2.5).max(6.0), size < number + 2.0 * width(&module.id) + 13.0)
    });
    let short: Vec<(bool, bool)> = short.collect();
    if short.windows(2).any(|pair| pair[0].0 && pair[1].0) {
        ROW * 2.0 + 1.5
    } else if short.iter().any(|module| module.1) {
        ROW + 1.3
    } else {
        0.0
    }
}

/// A stretch of the chain.
struct Stretch {
    from: (Length, String),
    to: (Length, String),
    letter: Option<String>,
}

/// Draws the chain and, where the whole leg is on the page, its overall lengths.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let stretches = stretches(e);
    let Some(zero) = stretches.first().map(|first| first.from.0) else { return };
    let hides = blind(e).iter().any(|length| *length > Length::ZERO);
    let printed = |x: Length| e.show.rounded(x - zero);
    let witness = Some(e.lines.chain - 3.6);
    let count = stretches.len();
    let (mut boxes, mut row) = (Vec::new(), 0.0);
    for (index, stretch) in stretches.iter().enumerate() {
        let length = printed(stretch.to.0) - printed(stretch.from.0);
        let mut part =
            Dimension::new(Across::X, (stretch.from.0, Length::ZERO), (stretch.to.0, Length::ZERO), e.lines.chain)
                .datums(stretch.from.1.clone(), stretch.to.1.clone())
                .shown_as(length)
                .witnesses(witness, witness)
                .ghosts(index > 0, false);
        // Modules add up to the face where the face shows all of them.
        part = if hides { part } else { part.chained("modules", "part") };
        let fits = part.fits(&e.view, e.show);
        // Neighbours under the line stand on two rows by turns; the outermost stand beside it.
        let beside = index == 0 || index + 1 == count;
        row = if fits || beside || row > 0.0 { 0.0 } else { ROW };
        let lower = if fits || row > 0.0 { 0.0 } else { ROW };
        part = match (fits, index) {
            (true, _) => part,
            (false, 0) => part.number(Number::Before(6.5)),
            (false, last) if last + 1 == count => part.number(Number::After(6.5)),
            _ => part.number(Number::Under(lower)),
        };
        let width = part.lettering_width(e.show);
        part.draw(canvas, at, &e.view, e.show);
        if let Some(letter) = &stretch.letter {
            let middle = (e.view.x(stretch.from.0) + e.view.x(stretch.to.0)) / 2.0;
            boxes.push((middle, width, letter.clone(), fits));
        }
    }
    // Numbers first: a letter looks for the white that they leave.
    for (middle, width, letter, fits) in boxes {
        boxed(canvas, at, e, middle, width, &letter, fits);
    }
    overall(canvas, at, e, &stretches);
}

fn stretches(e: &Elevation<'_>) -> Vec<Stretch> {
    let edge = || "module edge".to_owned();
    let mut modules: Vec<Stretch> = e
        .part
        .modules
        .clone()
        .filter_map(|index| e.leg.modules.get(index))
        .map(|module| {
            let (x0, x1) = e.facing.span(module.left, module.right);
            Stretch { from: (x0, edge()), to: (x1, edge()), letter: Some(module.id.clone()) }
        })
        .collect();
    modules.sort_by_key(|stretch| stretch.from.0);
    let mut all = Vec::new();
    let [finished, _, frame] = e.facing.near();
    let (zero, start) = (e.facing.datum(e.leg, finished), e.facing.datum(e.leg, frame));
    // At an inside corner a frame may begin before the face that is seen.
    if e.part.first && start > zero {
        all.push(Stretch { from: (zero, finished.words().to_owned()), to: (start, edge()), letter: None });
    }
    all.append(&mut modules);
    let [finished, _, frame] = e.facing.far();
    let (end, stop) = (e.facing.datum(e.leg, finished), e.facing.datum(e.leg, frame));
    if e.part.last && stop < end {
        all.push(Stretch { from: (stop, edge()), to: (end, finished.words().to_owned()), letter: None });
    }
    all
}

/// What of the frame lies beyond the finished ends on this page, at the viewer's left and right: positive, or zero.
pub fn blind(e: &Elevation<'_>) -> [Length; 2] {
    let ([near, _, start], [far, _, stop]) = (e.facing.near(), e.facing.far());
    let at = |datum| e.facing.datum(e.leg, datum);
    let beyond = |on_page: bool, length: Length| if on_page { length.max(Length::ZERO) } else { Length::ZERO };
    [beyond(e.part.first, at(near) - at(start)), beyond(e.part.last, at(stop) - at(far))]
}

/// A module's letter in a box: left of its width, or where that is not white, left of the width under the line.
fn boxed(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, middle: f64, width: f64, letter: &str, fits: bool) {
    let half = (lettering::width(letter, BODY, Weight::SemiBold) / 2.0 + 1.0).max(2.05);
    let line = e.lines.chain;
    let over = line - 1.25;
    let under = line + 2.5 + 2.5;
    let beside = middle - width / 2.0 - half - 1.6;
    let places = if fits {
        [(beside, over), (middle, under), (beside, under)]
    } else {
        [(middle, over), (beside, under), (middle, over - 4.4)]
    };
    // A letter with a tail stands higher in its box.
    let text = lettering::set(PaperPoint::new(0.0, 0.0), letter, &Style::body().bold().middle());
    let tail = if text.descends { 0.6 } else { 0.0 };
    let free = places.into_iter().find(|&(x, y)| canvas.is_box_free(x - half, y - 3.2 - tail, x + half, y + 0.6));
    let Some((x, y)) = free else { return };
    let (a, b) = (PaperPoint::new(x - half, y - 3.2 - tail), PaperPoint::new(x + half, y + 0.6));
    canvas.rectangle(at, a, b, Paint::pen(Pen::DIMENSION));
    canvas.text(at, PaperPoint::new(x, y - tail), letter, &Style::body().bold().middle());
}

fn overall(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, stretches: &[Stretch]) {
    let witness = Some(e.lines.chain - 3.6);
    let [near, ..] = e.facing.near();
    let [far, ..] = e.facing.far();
    let (Some(first), Some(last)) = (stretches.first(), stretches.last()) else { return };
    let whole = e.part.first && e.part.last;
    let hidden = blind(e);
    let (from, to) = (first.from.0 + hidden[0], last.to.0 - hidden[1]);
    if from >= to {
        return;
    }
    // A fold stands among the modules: its witness starts under their numbers.
    let low = Some(e.lines.total - 3.6);
    let from_witness = if hidden[0] > Length::ZERO { low } else { witness };
    let to_witness = if hidden[1] > Length::ZERO { low } else { witness };
    let total = Dimension::new(Across::X, (from, Length::ZERO), (to, Length::ZERO), e.lines.total)
        .shown_as(e.show.rounded(to - from))
        .witnesses(from_witness, to_witness);
    let total =
        if hidden.iter().all(|length| *length == Length::ZERO) { total.chained("modules", "total") } else { total };
    let total = match (whole, e.part.first) {
        (true, _) => total.datums(near.words(), far.words()).from_finished(),
        (_, true) => total.datums(near.words(), "module edge").from_finished(),
        _ => total.datums("module edge", last.to.1.clone()),
    };
    let words = match (whole, e.part.first) {
        (true, _) => [ends_words(e).to_owned(), "overall".to_owned()],
        (_, true) => ["from the finished end".to_owned(), String::new()],
        _ => [e.part.words(e.leg, &e.facing), String::new()],
    };
    let total = labelled(canvas, e, total, words);
    // A number that stands beside its line needs the place.
    if total.fits(&e.view, e.show) {
        blind_lengths(canvas, at, e, (from, to), hidden);
    }
    total.draw(canvas, at, &e.view, e.show);
    let (left, right) = e.counter();
    let folded = e.meetings.iter().flatten().any(|meeting| meeting.way != Way::On);
    if whole && folded {
        // Its ends lie where front edges meet: between the numbers under short modules.
        said(canvas, at, e, (from, to), counter_at_folds(e, left, right));
    } else if whole {
        // At a wall the counter ends with a joint, not with an overhang.
        let (at_left, at_right) = e.bounds();
        let over = |open: bool, length: Length| if open { length } else { Length::ZERO };
        let free = |side: usize, bound: &Bound| bound.is_open() && e.meetings[side].is_none();
        let over_left = over(free(0, at_left), e.facing.datum(e.leg, near) - left);
        let over_right = over(free(1, at_right), right - e.facing.datum(e.leg, far));
        let counter = Dimension::new(Across::X, (left, Length::ZERO), (right, Length::ZERO), e.lines.counter)
            .datums("counter left edge", "counter right edge")
            .witnesses(witness, witness);
        let words = [counter_words(e, over_left, over_right), "counter".to_owned()];
        labelled(canvas, e, counter, words).draw(canvas, at, &e.view, e.show);
    } else {
        let run = e.facing.datum(e.leg, far) - e.facing.datum(e.leg, near);
        let (run, counter) = (e.show.prose(run), e.show.prose(right - left));
        let words = [
            format!("The whole leg: {run} {}; counter {counter} edge to edge.", ends_words(e)),
            format!("Whole leg {run}, counter {counter}."),
        ];
        said(canvas, at, e, (from, to), words);
    }
}

/// The first of some sentences that has room on the last line, from the middle of a stretch of the face.
fn said(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, (from, to): (Length, Length), words: [String; 2]) {
    let (a, b) = (e.view.x(from), e.view.x(to));
    for words in words {
        let width = lettering::width(&words, BODY, Weight::Regular);
        let x = if width <= b - a { (a + b) / 2.0 - width / 2.0 } else { a };
        let x = x.min(frame::inside(canvas).right - width);
        let place = PaperPoint::new(x, e.lines.counter - 1.0);
        if canvas.text_at_first(at, &[place], &words, &Style::body()).is_some() {
            return;
        }
    }
}

/// The counter's length along its front edge, and where it begins and ends, for a leg that meets others.
fn counter_at_folds(e: &Elevation<'_>, left: Length, right: Length) -> [String; 2] {
    let (near, far) = (e.facing.datum(e.leg, e.facing.near()[0]), e.facing.datum(e.leg, e.facing.far()[0]));
    let end = |side: usize, out: Length| {
        let what = if e.meetings[side].as_ref().is_some_and(|m| m.way != Way::On) { "fold" } else { "end" };
        let length = e.show.prose(out.abs());
        match out {
            Length::ZERO => format!("at the {what}"),
            out if out > Length::ZERO => format!("{length} past the {what}"),
            _ => format!("{length} short of the {what}"),
        }
    };
    let length = e.show.prose(right - left);
    [
        format!(
            "Counter: {length} along its front edge; {} at left, {} at right.",
            end(0, near - left),
            end(1, right - far)
        ),
        format!("Counter {length} along its front edge."),
    ]
}

/// The dimension with the longest of its labels that fits over it; else the longest that stands after it.
fn labelled(canvas: &Canvas, e: &Elevation<'_>, dimension: Dimension, words: [String; 2]) -> Dimension {
    let tried: Vec<Dimension> =
        words.into_iter().chain([String::new()]).map(|label| dimension.clone().label(label)).collect();
    let room = frame::inside(canvas).right - e.view.x(e.part.x1) - 16.0;
    let over = tried.iter().find(|dimension| dimension.fits(&e.view, e.show));
    let after = tried.iter().find(|dimension| dimension.lettering_width(e.show) < room);
    over.or(after).cloned().unwrap_or(dimension)
}

/// How far the frame goes on behind the legs that it meets, beside the length of the face.
fn blind_lengths(
    canvas: &mut Canvas,
    at: Layer,
    e: &Elevation<'_>,
    (from, to): (Length, Length),
    [before, after]: [Length; 2],
) {
    let low = Some(e.lines.total - 3.6);
    let high = Some(e.lines.chain - 3.6);
    let [near, far] = [e.facing.near()[0].words(), e.facing.far()[0].words()];
    let mut draw =
        |a: (Length, &str), b: (Length, &str), witnesses: [Option<f64>; 2], number: Number, ghosts: [bool; 2]| {
            let dimension = Dimension::new(Across::X, (a.0, Length::ZERO), (b.0, Length::ZERO), e.lines.total)
                .datums(a.1, b.1)
                .witnesses(witnesses[0], witnesses[1])
                .ghosts(ghosts[0], ghosts[1]);
            let named = dimension.clone().label("blind");
            let tried = [named, dimension.clone()];
            let fits = tried.iter().find(|one| one.fits(&e.view, e.show)).cloned();
            fits.unwrap_or(dimension.number(number)).draw(canvas, at, &e.view, e.show);
        };
    if before > Length::ZERO {
        let ends = ((from - before, "module edge"), (from, near));
        draw(ends.0, ends.1, [high, low], Number::Before(6.5), [false, true]);
    }
    if after > Length::ZERO {
        let ends = ((to, far), (to + after, "module edge"));
        draw(ends.0, ends.1, [low, high], Number::After(6.5), [true, false]);
    }
}

/// What the length of the whole face is between.
fn ends_words(e: &Elevation<'_>) -> &'static str {
    match [0, 1].map(|side| e.meetings[side].as_ref().is_some_and(|meeting| meeting.way != Way::On)) {
        [true, true] => "fold to fold",
        [true, false] => "fold to finished end",
        [false, true] => "finished end to fold",
        [false, false] => "finished end to finished end",
    }
}

fn counter_words(e: &Elevation<'_>, left: Length, right: Length) -> String {
    let over = |length: Length| (length > Length::ZERO).then(|| e.show.text(length));
    match (over(left), over(right)) {
        (Some(a), Some(b)) if a == b => format!("counter, {a} over each finished end"),
        (Some(a), Some(b)) => format!("counter, over the finished ends {a} left, {b} right"),
        (Some(a), None) => format!("counter, {a} over the finished end at left"),
        (None, Some(b)) => format!("counter, {b} over the finished end at right"),
        (None, None) => "counter, edge to edge".to_owned(),
    }
}
