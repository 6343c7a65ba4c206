//! The lines at which a face is folded on to that of the next leg, with what they say.

use super::elevation::Elevation;
use super::meeting::{Meeting, Way};
use crate::drawing::lettering::Style;
use crate::drawing::{Dash, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::set::Kind;

/// The folds of this page, and whether each is the end that running dimensions start at.
fn folds<'e, 's>(e: &'e Elevation<'s>) -> impl Iterator<Item = (&'e Meeting<'s>, bool)> {
    let on_page = [e.part.first, e.part.last];
    e.meetings.iter().enumerate().zip(on_page).filter(|(_, on_page)| *on_page).filter_map(
        move |((side, meeting), _)| {
            let meeting = meeting.as_ref()?;
            let near = e.facing.datum(e.leg, e.facing.near()[0]);
            Some((meeting, side == 0 && meeting.fold == near))
        },
    )
}

/// Top and bottom of a fold line.
fn span(e: &Elevation<'_>, meeting: &Meeting<'_>) -> (f64, f64) {
    let floor = e.view.y_mm(e.floor.height(meeting.fold.mm()));
    (e.view.y(e.top) - 9.0, floor + 7.0)
}

/// Draws the lines. Where the pole of the finished end stands on a fold, the pole is its line.
pub fn lines(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (meeting, is_pole) in folds(e) {
        let x = e.view.x(meeting.fold);
        let (high, low) = span(e, meeting);
        let pen = if is_pole { Pen::GHOST } else { Pen::SECONDARY.dashed(Dash::PHANTOM) };
        let class = if meeting.way == Way::On { "step" } else { "fold" };
        let facts = vec![
            ("data-meets", meeting.other.id.clone()),
            ("data-angle", crate::sheets::view::number(meeting.angle, 4)),
        ];
        let line = Shape::Line(PaperPoint::new(x, high), PaperPoint::new(x, low));
        canvas.shape(at, line, Paint::pen(pen), class, facts);
    }
}

/// Says at each line what meets there and on which sheet it goes on.
pub fn words(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (meeting, is_pole) in folds(e) {
        let x = e.view.x(meeting.fold);
        let (high, low) = span(e, meeting);
        let sheet = e.set.number(Kind::Front(meeting.index, e.facing.face));
        let long = sheet.map(|sheet| format!("{}, sheet {sheet}", meeting.words()));
        let out = meeting.out;
        let mut places = Vec::new();
        // Outside the fold first: over what the other leg shows.
        for dx in [1.4, -1.4] {
            for dy in [2.4, -1.4, 6.6, -5.6, -9.8, -14.0] {
                places.push((PaperPoint::new(x + out * dx, high + dy), dx > 0.0));
            }
        }
        if is_pole {
            places.retain(|(_, outside)| *outside);
        }
        for dx in [1.4, -1.4] {
            for dy in [-0.4, 4.0, 8.2, 12.4] {
                places.push((PaperPoint::new(x + out * dx, low + dy), dx > 0.0));
            }
        }
        let written = long.into_iter().chain([meeting.words()]).any(|text| {
            places.iter().any(|&(place, outside)| {
                let style = if outside == (out > 0.0) { Style::body() } else { Style::body().end() };
                canvas.text_at_first(at, &[place], &text, &style).is_some()
            })
        });
        if !written {
            let upright = [3.9, -1.6, 8.0, -6.0].map(|dx| PaperPoint::new(x + dx, (high + low) / 2.0));
            canvas.text_at_first(at, &upright, &meeting.words(), &Style::body().upright().middle());
        }
    }
}
