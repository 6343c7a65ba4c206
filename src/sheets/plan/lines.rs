//! Dimensions of a level leg: modules and overall in front, landings and the counter behind, depths at the ends.

use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension, NEXT, Number, Running, Side, Stop};
use crate::solve::Leg;
use crate::units::{Length, Show};

/// Chain of the modules in front of the run at paper y `line`, the overall lengths under it. Returns the lowest y used.
pub fn in_front(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, show: Show, line: f64) -> f64 {
    let (leg, datums) = (seen.leg, &seen.leg.datums);
    let witness = Some(seen.at(Length::ZERO, datums.counter_front).y + 1.5);
    let mut positions = vec![(Length::ZERO, "finished left end".to_owned())];
    let mut push = |at: Length, name: String| {
        if positions.last().is_none_or(|(last, _)| at > *last) {
            positions.push((at, name));
        }
    };
    for module in &leg.modules {
        push(module.left, format!("module {} left edge", module.id));
    }
    push(datums.frame_right, "frame right end".to_owned());
    push(datums.finished_right, "finished right end".to_owned());
    let zero = positions[0].0;
    let printed = |position: Length| show.rounded(position - zero);
    let last = positions.len() - 2;
    let part = |index: usize| {
        let (from, to) = (&positions[index], &positions[index + 1]);
        Dimension::new(Across::X, (from.0, Length::ZERO), (to.0, Length::ZERO), line)
            .datums(from.1.clone(), to.1.clone())
            .chained("modules", "part")
            .shown_as(printed(to.0) - printed(from.0))
            .witnesses(witness, witness)
            .ghosts(index > 0, false)
    };
    let module_of = |index: usize| leg.modules.iter().find(|module| module.left == positions[index].0);
    let room = |index: usize| seen.view.size(positions[index + 1].0 - positions[index].0);
    let needed = |index: usize| {
        let letter = module_of(index).map_or(0.0, |module| letter_width(&module.id) + 1.6);
        // Brackets hang down to the height of the arrows.
        let ends = if show.second(Length::ZERO).is_some() { 6.5 } else { 2.0 };
        letter + part(index).lettering_width(show) + ends
    };
    let end_part = |index: usize| module_of(index).is_none() && (index == 0 || index == last);
    let chain = (0..=last).all(|index| end_part(index) || (room(index) >= needed(index) && room(index) >= 6.0));
    let mut below = line;
    if chain {
        for index in 0..=last {
            let dimension = part(index);
            let Some(module) = module_of(index) else {
                let small = index == 0 && last > 0 && !dimension.fits(seen.view, show);
                let dimension = if small { dimension.number(Number::Before(6.5)) } else { dimension };
                dimension.draw(canvas, at, seen.view, show);
                continue;
            };
            let box_width = letter_width(&module.id);
            let whole = box_width + 1.6 + dimension.lettering_width(show);
            let middle = (seen.view.x(positions[index].0) + seen.view.x(positions[index + 1].0)) / 2.0;
            let left = middle - whole / 2.0;
            let figures = show.text(printed(positions[index + 1].0) - printed(positions[index].0));
            let figures = lettering::width(&figures, BODY, Weight::Regular);
            let dimension = dimension.number(Number::Aligned(left + box_width + 1.6 + figures));
            dimension.draw(canvas, at, seen.view, show);
            letter(canvas, at, PaperPoint::new(left, line - 1.25), &module.id);
        }
    } else {
        below = running(canvas, at, seen, show, line, &positions);
    }
    // Under running numbers the witness lines of the overall length start below the numbers.
    let witness = if below > line { Some(below + NEXT - 3.0) } else { witness };
    let overall = Dimension::new(Across::X, (zero, Length::ZERO), (datums.finished_right, Length::ZERO), below + NEXT)
        .datums("finished left end", "finished right end")
        .shown_as(printed(datums.finished_right))
        .witnesses(witness, witness)
        .ghosts(false, chain)
        .label("finished end to finished end")
        .from_finished();
    let overall = if chain { overall.chained("modules", "total") } else { overall };
    fitted(overall, seen, show).draw(canvas, at, seen.view, show);
    below + NEXT
}

/// Module edges as running numbers where the parts are too narrow for numbers of their own.
fn running(
    canvas: &mut Canvas,
    at: Layer,
    seen: &Seen<'_>,
    show: Show,
    line: f64,
    positions: &[(Length, String)],
) -> f64 {
    let front = seen.leg.datums.counter_front;
    let y = seen.at(Length::ZERO, front).y + 1.5;
    // Letters stand over the line, each in the middle of its module, where they find room.
    for module in &seen.leg.modules {
        let (x, wide) = (seen.view.x(module.centre()), letter_width(&module.id));
        if seen.view.size(module.width()) > wide + 1.6 {
            letter(canvas, at, PaperPoint::new(x - wide / 2.0, line - 1.25), &module.id);
        }
    }
    let stops: Vec<Stop> = positions
        .iter()
        .skip(1)
        .filter(|(u, _)| *u < seen.leg.datums.finished_right)
        .map(|(u, name)| Stop { at: (*u, front), name: name.clone(), witness: Some(y) })
        .collect();
    let span = seen.view.size(seen.leg.datums.finished_right);
    if stops.len() as f64 * 3.7 > span {
        return line;
    }
    let running = Running {
        datum: (Length::ZERO, Length::ZERO),
        datum_name: "finished left end".to_owned(),
        line,
        side: Side::Below,
        finished: true,
        stops,
    };
    let mut at_paper = seen.view.x(Length::ZERO);
    let near = running.stops.iter().any(|stop| {
        let x = seen.view.x(stop.at.0);
        x - std::mem::replace(&mut at_paper, x) < 3.8
    });
    let reach = running.reach(show) + if near { 6.5 } else { 2.0 };
    running.draw(canvas, at, seen.view, show);
    line + reach
}

/// Height that the lines in front of the run take at most, from the chain's line down, mm.
pub fn front_height(leg: &Leg, factor: f64, show: Show) -> f64 {
    let narrow = leg.modules.iter().any(|module| module.width().mm() * factor < 24.0);
    let second =
        show.second(Length::from_mm(9999.0)).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
    NEXT + 3.0 + if narrow { 26.0 + second } else { 0.0 }
}

fn letter_width(id: &str) -> f64 {
    (lettering::width(id, BODY, Weight::SemiBold) + 1.8).max(4.0)
}

/// A module's letter in its box, the box's left end and the baseline given.
fn letter(canvas: &mut Canvas, at: Layer, place: PaperPoint, id: &str) {
    let wide = letter_width(id);
    let style = Style::body().bold().middle();
    let text = lettering::set(place.moved(wide / 2.0, 0.0), id, &style);
    // A letter with a tail needs a deeper box, and stands higher so that the box keeps off the line.
    let (lift, bottom) = if text.descends { (0.5, 1.25) } else { (0.0, 0.8) };
    let place = place.moved(0.0, -lift);
    let (a, b) = (place.moved(0.0, -3.3), place.moved(wide, bottom));
    canvas.rectangle(at, a, b, Paint::both(Pen::DIMENSION, Fill::WHITE));
    canvas.text(at, place.moved(wide / 2.0, 0.0), id, &style);
}

/// Without its words where they don't fit over the line.
fn fitted(dimension: Dimension, seen: &Seen<'_>, show: Show) -> Dimension {
    if dimension.fits(seen.view, show) { dimension } else { dimension.label("") }
}

/// Clear counter beside and between what is hot or wet, at paper y `line`, and the whole counter over it. `from` is where
/// the witness lines start on the sheet.
pub fn behind(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, show: Show, line: f64, from: f64) {
    let counter = seen.leg.counter.extent;
    let witness = Some(from);
    let landings = super::landing::landings(seen.leg);
    for (index, landing) in landings.iter().enumerate() {
        let dimension = Dimension::new(Across::X, (landing.from, counter.y1), (landing.to, counter.y1), line)
            .datums(landing.from_name.clone(), landing.to_name.clone())
            .witnesses(witness, witness);
        // A number beside a short stretch must not reach into the next one; the table has it in any case.
        let reach = 9.0 + dimension.lettering_width(show);
        let next = landings.get(index + 1).map_or(canvas.width - 12.0, |next| seen.view.x(next.from));
        let free = dimension.fits(seen.view, show) || next - seen.view.x(landing.to) > reach;
        if free {
            dimension.draw(canvas, at, seen.view, show);
        }
    }
    let line = if landings.is_empty() { line } else { line - NEXT };
    let overall = Dimension::new(Across::X, (counter.x0, counter.y1), (counter.x1, counter.y1), line)
        .datums("counter left edge", "counter right edge")
        .witnesses(witness, witness)
        .label("counter");
    fitted(overall, seen, show).draw(canvas, at, seen.view, show);
}

/// Depths as dimensions beside one end: frame, finished face to what is behind, counter. `start` is the paper x of the
/// run's end, `edge` that of what else stands there, `way` -1 to the left.
pub fn depths(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, show: Show, start: f64, edge: f64, way: f64) {
    let (leg, datums) = (seen.leg, &seen.leg.datums);
    let witness = Some(start + way * 1.5);
    let u = if way < 0.0 { datums.counter_left } else { datums.counter_right };
    let dimension = |from: Length, to: Length, step: f64| {
        Dimension::new(Across::Y, (u, from), (u, to), edge + way * (10.0 + step * NEXT)).witnesses(witness, witness)
    };
    let frame = dimension(datums.frame_face, datums.frame_back, 0.0).datums("bare frame", "frame back").label("frame");
    let (back, words, label) = if leg.back.is_open() {
        (datums.finished_back, "finished back", "finished")
    } else {
        (leg.back.at_counter, "wall behind", "to wall")
    };
    let finished = dimension(Length::ZERO, back, 1.0).datums("finished face", words).from_finished().label(label);
    let counter = dimension(datums.counter_front, datums.counter_back, 2.0)
        .datums("counter edge", "counter back edge")
        .label("counter");
    for line in [frame, finished, counter] {
        let line = fitted(line, seen, show);
        // Numbers without room between their ends go to the front, where no wall stands.
        let line = if line.fits(seen.view, show) { line } else { line.number(Number::Before(6.5)) };
        line.draw(canvas, at, seen.view, show);
    }
}
