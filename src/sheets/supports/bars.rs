//! Each bar drawn with its holes, for the drill: places from its left, front or lower end.

use super::tables::{Alike, alike, marks};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::apart;
use crate::sheets::flow::Flow;
use crate::sheets::frame::Area;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::units::{Length, Show};

/// Height of a bar's row: its words over it and the numbers under it, mm.
const ROW: f64 = 21.0;
/// Height of the bar as drawn, mm.
const BAR: f64 = 3.2;
/// Height of the title over the bars, mm.
const HEAD: f64 = 8.0;

/// The title over the bars.
const TITLE: &str = "Holes, from the left, front or lower end";

/// Draws all bars in an area of a page that is there, where they have room in it. Answers whether they had.
pub fn beside(canvas: &mut Canvas, set: &Set<'_>, area: &mut Area) -> bool {
    let all = alike(set.solved);
    let title = title_block::heading_width(TITLE, "");
    if all.is_empty() || area.width() < title || HEAD + ROW * all.len() as f64 > area.height() {
        return false;
    }
    let layer = canvas.layer(Canvas::ROOT, "bars");
    title_block::heading(canvas, area.left, area.top + 3.5, TITLE, "");
    let longest = all.iter().map(|own| own.one.length).max().unwrap_or(Length::ZERO);
    for own in &all {
        bar(canvas, layer, *area, area.top + HEAD, own, longest, set.solved.show);
        area.top += ROW;
    }
    area.top += HEAD + 2.0;
    true
}

/// Adds the bars on pages of their own, so many to a block as a column takes.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let show = set.solved.show;
    let all: Vec<Alike<'_>> = alike(set.solved);
    let longest = all.iter().map(|own| own.one.length).max().unwrap_or(Length::ZERO);
    for (index, chunk) in all.chunks(5).enumerate() {
        let title = if index == 0 { TITLE } else { "Holes, continued" };
        flow.block(title, ROW * chunk.len() as f64, &|canvas: &mut Canvas, at: Layer, area: Area| {
            for (row, own) in chunk.iter().enumerate() {
                bar(canvas, at, area, area.top + ROW * row as f64, own, longest, show);
            }
        });
    }
}

fn bar(canvas: &mut Canvas, at: Layer, area: Area, top: f64, own: &Alike<'_>, longest: Length, show: Show) {
    let p = PaperPoint::new;
    let lead = canvas.text(at, p(area.left, top + 2.8), &marks(&own.marks), &Style::body().bold());
    let count = own.marks.len();
    let diameter = own.one.holes.first().map(|hole| hole.1);
    let drilled = match (diameter, own.one.holes.len()) {
        (Some(diameter), holes) => format!(", {holes} holes \u{d8} {}", show.text(diameter)),
        _ => ", no holes".to_owned(),
    };
    let words = format!("{count} of {}{drilled}", own.one.section);
    let style = Style::caption();
    let room = area.width() - lead - 3.0;
    let words = title_block::shortened(&words, room, &style);
    canvas.text(at, p(area.left + lead + 2.5, top + 2.8), &words, &style);
    // Not to scale: the longest fills the column, with room for the last number.
    let length_text = show.text(own.one.length);
    let second = show.second(own.one.length).map_or(String::new(), |second| format!(" {second}"));
    let length_words = format!("{length_text}{second}");
    let tail = lettering::width(&length_words, BODY, Weight::SemiBold) + 3.0;
    let wide = (area.width() - tail).max(30.0) * (own.one.length.mm() / longest.mm().max(1.0)).max(0.25);
    let (left, y) = (area.left + 0.4, top + 5.2);
    canvas.rectangle(
        at,
        p(left, y),
        p(left + wide, y + BAR),
        Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD)),
    );
    canvas.text(at, p(left + wide + 2.0, y + BAR - 0.4), &length_words, &Style::body().bold());
    let places: Vec<f64> =
        own.one.holes.iter().map(|hole| left + wide * hole.0.mm() / own.one.length.mm().max(1.0)).collect();
    for &x in &places {
        canvas.circle(at, p(x, y + BAR / 2.0), 0.7, Paint::both(Pen::DIMENSION, Fill::WHITE));
    }
    let labels: Vec<String> = own
        .one
        .holes
        .iter()
        .map(|hole| match show.second(hole.0) {
            Some(second) => format!("{} {second}", show.text(hole.0)),
            None => show.text(hole.0),
        })
        .collect();
    let widest = labels.iter().map(|label| lettering::width(label, BODY, Weight::Regular)).fold(0.0, f64::max);
    // Numbers stand level while they have room, each under its hole.
    let foot = y + BAR + 1.0;
    let moved = apart(&places, widest + 2.5);
    for ((&x, place), label) in places.iter().zip(&moved).zip(&labels) {
        let half = lettering::width(label, BODY, Weight::Regular) / 2.0;
        let centre = place.max(area.left + half).min(area.right - half);
        let end = p(centre, foot + 3.4);
        canvas.line(at, p(x, foot), end, Pen::DIMENSION);
        canvas.text(at, end.moved(0.0, 3.6), label, &Style::body().middle());
    }
}
