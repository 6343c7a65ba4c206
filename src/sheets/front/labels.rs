//! Marks in rings with the fittings' names, each in its opening where that is white, else beside it with a leader.

use super::elevation::Elevation;
use super::stops::opens_up;
use crate::drawing::{Dash, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::{self, Area};
use crate::sheets::label::{self, Words};
use crate::solve::Fitting;

/// Centrelines of the openings that are open at the top: over the counter, where the run's other views find them.
pub fn centrelines(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (_, fitting) in e.fittings().filter(|(_, fitting)| opens_up(fitting, &e.facing)) {
        let Some(room) = hole(e, fitting) else { continue };
        let x = (room.left + room.right) / 2.0;
        let (top, bottom) = (e.view.y(e.top) - 6.0, room.bottom + 3.0);
        canvas.line(at, PaperPoint::new(x, top), PaperPoint::new(x, bottom), Pen::DIMENSION.dashed(Dash::CENTRE));
    }
}

/// Marks every opening of the page.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    // Large openings first: they have the room, and small ones may then look for what is left.
    let mut fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
    fittings.sort_by_key(|fitting| (-fitting.width(), fitting.left));
    let mut crowded = Vec::new();
    for fitting in fittings {
        let Some(room) = hole(e, fitting) else { continue };
        let more = if fitting.to_floor { vec!["open to the floor".to_owned()] } else { Vec::new() };
        let words = Words { mark: fitting.mark.clone(), name: fitting.name.clone(), more, whole: false };
        // What the drops at the left leave free, or a centreline.
        let notch = opens_up(fitting, &e.facing);
        let x = if notch { room.left + room.width() * 0.75 } else { (room.left + 6.0 + room.right) / 2.0 };
        let aim = PaperPoint::new(x, (room.top + room.bottom) / 2.0);
        if !label::inside(canvas, at, &words, room, aim) {
            crowded.push((Words { more: Vec::new(), ..words }, room));
        }
    }
    let within = frame::inside(canvas);
    let taken: Vec<Area> = e.fittings().filter_map(|(_, fitting)| hole(e, fitting)).collect();
    for (words, room) in crowded {
        label::outside(canvas, at, &words, room, within, &taken);
    }
}

/// An opening on the sheet.
pub fn hole(e: &Elevation<'_>, fitting: &Fitting) -> Option<Area> {
    let cutout = fitting.cutout(e.facing.plane())?;
    let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
    let top = if opens_up(fitting, &e.facing) { e.leg.datums.substrate_top } else { cutout.extent.y1 };
    Some(Area { left: e.view.x(x0), top: e.view.y(top), right: e.view.x(x1), bottom: e.view.y(cutout.extent.y0) })
}
