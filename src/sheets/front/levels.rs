//! Levels over the highest floor point, at the free end: level line, name, height.

use super::behind;
use super::elevation::{BOUND, Elevation};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::table;
use crate::solve::Datum;
use crate::units::Length;

/// Least distance from level to level, mm.
const PITCH: f64 = 4.2;

/// Writes them.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let d = &e.leg.datums;
    let mut levels: Vec<(Length, &str)> =
        [Datum::CounterTop, Datum::SubstrateTop, Datum::FrameTop, Datum::FrameBottom, Datum::Floor]
            .map(|datum| (d.at(datum), datum.words()))
            .to_vec();
    if let Some(trim) = &e.set.solved.trim {
        levels.push((trim.top, "base trim top"));
    }
    let upstand = e.set.solved.counter.splash.filter(|_| !e.leg.counter.splashes.is_empty());
    if let Some(splash) = upstand {
        levels.push((d.counter_top + splash.height, "upstand top"));
    }
    if let Some(leg) = behind::standing(e.set.solved, e.leg_index, e.facing.face).first() {
        levels.push((e.set.solved.legs[*leg].datums.counter_top, "counter behind"));
    }
    levels.sort_by_key(|level| -level.0);
    let marks: Vec<f64> = levels.iter().map(|level| e.view.y(level.0)).collect();
    let places = fanned(&marks);
    let left = e.levels_at_left();
    let (low, high) = e.reach();
    let out = if left { -1.0 } else { 1.0 };
    let edge = if left { low } else { high };
    let (far_x, name_x) = (edge + out * 9.0, edge + out * 10.0);
    let wide = |text: &str| lettering::width(text, BODY, Weight::Regular);
    let figures = levels
        .iter()
        .map(|level| wide(&e.show.text(level.0)) + e.show.second(level.0).map_or(0.0, |text| 1.0 + wide(&text)))
        .fold(0.0, f64::max);
    let digits = |z: Length| wide(&e.show.figures(z).chars().take_while(char::is_ascii_digit).collect::<String>());
    let whole = digits(d.counter_top);
    let taller = levels.iter().map(|level| digits(level.0)).fold(0.0, f64::max) - whole;
    let names = levels.iter().map(|level| lettering::width(level.1, BODY, Weight::Regular)).fold(0.0, f64::max);
    for ((z, name), (mark, place)) in levels.iter().zip(marks.iter().zip(&places)) {
        let start = if *z >= d.frame_top { near_end(e, left) } else { edge + out * 1.5 };
        let p = |x: f64, y: f64| PaperPoint::new(x, y);
        let points = [p(start, *mark), p(edge + out * 3.5, *mark), p(edge + out * 6.5, *place), p(far_x, *place)];
        let bent = (mark - place).abs() > 0.05;
        let points = if bent { points.to_vec() } else { vec![points[0], points[3]] };
        canvas.polyline(at, &points, false, Paint::pen(Pen::DIMENSION));
        let (name_left, unit) = if left {
            (name_x - figures - 4.5 - names, name_x - figures + whole)
        } else {
            (name_x, name_x + names + 8.0 + taller)
        };
        canvas.text(at, p(name_left, place + 1.25), name, &Style::body());
        table::figure(canvas, at, unit, place + 1.25, *z, &Style::body().coloured(Colour::INK), e.show);
    }
}

/// Where the levels of the top start: just past the counter, or past what stands at the end.
fn near_end(e: &Elevation<'_>, left: bool) -> f64 {
    let counter = e.counters();
    let (near, far) = e.bounds();
    let (on_page, bound, x, out) =
        if left { (e.part.first, near, counter.0, -1.0) } else { (e.part.last, far, counter.1, 1.0) };
    match (on_page, bound.is_open()) {
        (false, _) => e.view.x(e.part.x1) + 2.0,
        (true, true) => e.view.x(x) + out * 2.0,
        (true, false) => {
            let width = e.view.size(bound.width).min(BOUND);
            e.view.x(e.facing.x(bound.at)) + out * (width + 5.5)
        }
    }
}

/// Places moved down the sheet to the least pitch; the lowest cluster may go up to keep near its marks.
fn fanned(marks: &[f64]) -> Vec<f64> {
    let mut places: Vec<f64> = Vec::new();
    for &mark in marks {
        let least = places.last().map_or(f64::NEG_INFINITY, |last| last + PITCH);
        places.push(mark.max(least));
    }
    // A cluster is centred on its marks where the one above leaves room.
    let mut start = 0;
    while start < places.len() {
        let mut end = start + 1;
        while end < places.len() && places[end] - places[end - 1] < PITCH + 1e-6 {
            end += 1;
        }
        let drift = (start..end).map(|k| places[k] - marks[k]).sum::<f64>() / (end - start) as f64;
        let room = if start == 0 { f64::INFINITY } else { places[start] - places[start - 1] - PITCH };
        let up = drift.min(room).max(0.0);
        for place in &mut places[start..end] {
            *place -= up;
        }
        start = end;
    }
    places
}
