//! The heaviest things that are lifted, against what two people lift, and so many people beside each.

use super::{reading, tables::lift_name, title};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::set::Set;
use crate::sheets::title_block::shortened;
use crate::solve::{Lift, Weights};

/// From bar to bar, and a bar's height, mm.
const PITCH: f64 = 6.4;
const BAR: f64 = 3.8;
/// Width of the names, of the weights after them, and of one person, mm.
const NAMES: f64 = 52.0;
const FIGURES: f64 = 22.0;
const PERSON: f64 = 3.6;
/// More people than this are told in words.
const DRAWN: u32 = 6;
/// No more things than this are drawn.
const MOST: usize = 14;

/// Draws the chart and returns its bottom; nothing where nothing needs two people, or there is no room.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, area: Area) -> Option<f64> {
    let weights = &set.solved.shop.weights;
    let limit = weights.two_lift;
    let mut heavy: Vec<&Lift> = weights.lifts.iter().filter(|lift| weights.lifters(lift) > 1).collect();
    heavy.sort_by(|a, b| b.mass.total_cmp(&a.mass));
    let people = NAMES + FIGURES;
    let crowd = f64::from(DRAWN) * PERSON + 6.0;
    let room = area.width() - people - crowd;
    let fits = ((area.height() - 18.0) / PITCH).floor().max(0.0) as usize;
    let count = heavy.len().min(MOST).min(fits);
    if limit <= 0.0 || count < 2.min(heavy.len()) || count == 0 || room < 40.0 {
        return None;
    }
    let after = if count < heavy.len() { format!("{count} of {}", heavy.len()) } else { String::new() };
    let top = title(canvas, area, "To be lifted by two or more, heaviest first", &after);
    let layer = canvas.layer(Canvas::ROOT, "lifts");
    let bars = area.left + people;
    let most = heavy[0].mass.max(limit * 1.25);
    let at = bars + limit / most * room;
    // The limit's words stand over the bars, on the side that has room for them.
    let words = format!("two people, {}", set.solved.show.mass(limit));
    let wide = lettering::width(&words, BODY, Weight::Regular);
    let style = Style::caption();
    let base = top + BODY - 0.6;
    if at + 1.2 + wide <= area.right {
        canvas.text(layer, PaperPoint::new(at + 1.2, base), &words, &style);
    } else {
        canvas.text(layer, PaperPoint::new(at - 1.2, base), &words, &style.end());
    }
    let first = top + BODY + 2.6;
    let mut y = first;
    for lift in &heavy[..count] {
        row(canvas, set, layer, lift, Row { left: area.left, bars, top: y, long: lift.mass / most * room });
        let crowd = PaperPoint::new(area.right - crowd + 4.0, y);
        persons(canvas, layer, crowd, weights.lifters(lift), weights.wants_more_than_two(lift));
        y += PITCH;
    }
    let bottom = y - PITCH + BAR;
    let pen = Pen::DIMENSION.dashed(Dash::HIDDEN);
    canvas.line(layer, PaperPoint::new(at, top - 0.4), PaperPoint::new(at, bottom + 1.6), pen);
    Some(bottom + 1.6)
}

/// Where a row of the chart lies, mm.
#[derive(Clone, Copy)]
struct Row {
    left: f64,
    bars: f64,
    top: f64,
    long: f64,
}

fn row(canvas: &mut Canvas, set: &Set<'_>, layer: Layer, lift: &Lift, row: Row) {
    let over = set.solved.shop.weights.wants_more_than_two(lift);
    let style = if over { Style::body().bold() } else { Style::body() };
    let base = row.top + BAR / 2.0 + BODY / 2.0;
    let name = shortened(&lift_name(set, lift), NAMES - 2.0, &style);
    canvas.text(layer, PaperPoint::new(row.left, base), &name, &style);
    canvas.text(layer, PaperPoint::new(row.bars - 4.0, base), &reading(set).mass(lift.mass), &style.end());
    let (a, b) = (PaperPoint::new(row.bars, row.top), PaperPoint::new(row.bars + row.long, row.top + BAR));
    let tint = if over { Colour::GREY_RULE } else { Colour::TINT_BEYOND };
    canvas.rectangle(layer, a, b, Paint::both(Pen::SECONDARY, Fill::tint(tint)));
}

/// Heads and shoulders, one for each who lifts; words where more would be wanted than get round a thing.
fn persons(canvas: &mut Canvas, layer: Layer, corner: PaperPoint, count: u32, dark: bool) {
    let fill = Paint::fill(Fill::tint(if dark { Colour::INK } else { Colour::GREY_LINE }));
    if count > DRAWN {
        let at = PaperPoint::new(corner.x, corner.y + BAR / 2.0 + BODY / 2.0);
        canvas.text(layer, at, &Weights::crew(count), &Style::body().bold());
        return;
    }
    for index in 0..count {
        let x = corner.x + f64::from(index) * PERSON + PERSON / 2.0;
        canvas.circle(layer, PaperPoint::new(x, corner.y + 0.85), 0.8, fill);
        let shoulders = [(-1.3, 3.7), (-1.3, 2.7), (-0.8, 2.0), (0.8, 2.0), (1.3, 2.7), (1.3, 3.7)]
            .map(|(dx, dy)| PaperPoint::new(x + dx, corner.y + dy));
        canvas.polyline(layer, &shoulders, true, fill);
    }
}
