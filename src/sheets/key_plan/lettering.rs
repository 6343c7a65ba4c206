//! The legs' ids on a key plan, each in its leg where it fits there, else beside it, else its number.

use super::figure::Figure;
use crate::drawing::lettering::{self, Style};
use crate::geometry::{LegPoint, PaperPoint, Plan};
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::view::View;
use crate::solve::{Leg, Solved};

/// Writes them; a leg by itself needs none.
pub fn ids(canvas: &mut Canvas, at: Layer, view: &View<Plan>, solved: &Solved, figure: &Figure) {
    if solved.legs.len() < 2 {
        return;
    }
    // The one that is shown first.
    let others = (0..solved.legs.len()).filter(|index| *index != figure.leg);
    for index in std::iter::once(figure.leg).chain(others) {
        let leg = &solved.legs[index];
        let style = if index == figure.leg { Style::body().bold() } else { Style::body() };
        let words = [leg.id.clone(), (index + 1).to_string()];
        let set = words.iter().find_map(|text| {
            let places = places(leg, view);
            places
                .into_iter()
                .map(|(place, upright)| {
                    let style = if upright { style.clone().upright() } else { style.clone() };
                    lettering::set(place, text, &style.middle())
                })
                .find(|text| canvas.is_free(text))
        });
        if let Some(text) = set {
            canvas.put(at, text);
        }
    }
}

/// Where a leg's id may stand, and whether it reads from the right there.
fn places(leg: &Leg, view: &View<Plan>) -> Vec<(PaperPoint, bool)> {
    let d = &leg.datums;
    let (long, deep) = (d.finished_right.mm(), d.finished_back.mm());
    let at = |u: f64, v: f64| view.point(leg.placement.to_plan(LegPoint::new(u, v)));
    let (sin, _) = leg.placement.angle.sin_cos();
    let runs_up = sin.abs() > 0.5;
    let down = |p: PaperPoint, upright: bool| if upright { p.moved(1.25, 0.0) } else { p.moved(0.0, 1.25) };
    let mut places = Vec::new();
    for upright in [false, runs_up] {
        for share in [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85] {
            places.push((down(at(long * share, deep / 2.0), upright), upright));
        }
    }
    let off = |paper: f64| paper / view.scale.factor();
    for paper in [3.0, 4.5, 6.0, 9.0] {
        for v in [deep + off(paper), -off(paper)] {
            for share in [0.5, 0.25, 0.75] {
                places.push((down(at(long * share, v), runs_up), runs_up));
                places.push((down(at(long * share, v), false), false));
            }
        }
    }
    places
}
