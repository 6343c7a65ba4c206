//! Heights at the free end of a view: a line at each level, fanned apart, name then figure in a column.

use super::canvas::{Canvas, Layer, Paint};
use super::dimensions::apart;
use super::view::View;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::units::{Length, Show};

/// Least distance between two names, mm.
const PITCH: f64 = 4.4;
/// From the level's line to its name, mm.
const LEAD: f64 = 15.0;

/// A named height over z = 0.
#[derive(Clone, Debug)]
pub struct Level {
    /// Its name, as `counter top`.
    pub name: String,
    /// Its height.
    pub z: Length,
}

impl Level {
    /// A named height.
    pub fn new(name: impl Into<String>, z: Length) -> Level {
        Level { name: name.into(), z }
    }
}

/// Width of the names' column, mm.
pub fn names_width(levels: &[Level]) -> f64 {
    levels.iter().map(|level| lettering::width(&level.name, BODY, Weight::Regular)).fold(0.0, f64::max)
}

/// Width of the widest whole part of a figure, which ends at the figures' column, mm.
fn whole_width(levels: &[Level], show: Show) -> f64 {
    let whole = |level: &Level| -> String {
        show.text(level.z)
            .chars()
            .take_while(|sign| sign.is_ascii_digit() || matches!(sign, '-' | '\u{2212}'))
            .collect()
    };
    levels.iter().map(|level| lettering::width(&whole(level), BODY, Weight::Regular)).fold(0.0, f64::max)
}

/// Width that the fan takes, mm.
pub fn width(levels: &[Level], show: Show) -> f64 {
    let figure = |level: &Level| {
        let second = show.second(level.z).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
        lettering::width(&show.text(level.z), BODY, Weight::Regular) + second
    };
    LEAD + names_width(levels) + 4.0 + levels.iter().map(figure).fold(0.0, f64::max) + 4.0
}

/// Draws them from paper x `left` on.
pub fn draw<S>(canvas: &mut Canvas, at: Layer, view: &View<S>, left: f64, levels: &[Level], show: Show) {
    draw_between(canvas, at, view, (left, None), levels, show);
}

/// The same between two views at one height: level lines from both.
pub fn draw_between<S>(
    canvas: &mut Canvas,
    at: Layer,
    view: &View<S>,
    (left, right): (f64, Option<f64>),
    levels: &[Level],
    show: Show,
) {
    let mut sorted: Vec<&Level> = levels.iter().collect();
    sorted.sort_by_key(|level| -level.z);
    let heights: Vec<f64> = sorted.iter().map(|level| view.y(level.z)).collect();
    let places = apart(&heights, PITCH);
    let names = left + LEAD;
    let figures = names + names_width(levels) + (whole_width(levels, show) + 2.5).max(8.0);
    for ((level, y), place) in sorted.iter().zip(&heights).zip(&places) {
        let p = PaperPoint::new;
        let points = [p(left, *y), p(left + 6.0, *y), p(left + 10.0, *place), p(names - 1.0, *place)];
        canvas.polyline(at, &points, false, Paint::pen(Pen::DIMENSION));
        if let Some(right) = right {
            let points = [p(right, *y), p(right - 6.0, *y), p(right - 10.0, *place), p(right - LEAD + 1.0, *place)];
            canvas.polyline(at, &points, false, Paint::pen(Pen::DIMENSION));
        }
        canvas.text(at, p(names, place + BODY / 2.0), &level.name, &Style::body());
        super::table::figure(
            canvas,
            at,
            figures,
            place + BODY / 2.0,
            level.z,
            &Style::body().coloured(Colour::INK),
            show,
        );
    }
}
