//! Where tapes from the finished end are read: the running dimensions over and under the elevation.

use super::elevation::Elevation;
use super::facing::Facing;
use super::part::Part;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::dimensions::{Running, Side, Stop, spread};
use crate::sheets::scale::Scale;
use crate::solve::{Fitting, Leg};
use crate::units::{Length, Show};

/// Stops of one page, at model points; the lines' places on the sheet come later.
#[derive(Clone, Debug)]
pub struct Stops {
    /// Of openings that are open at the top: edges and centreline.
    pub above: Vec<Stop>,
    /// Of all others: edges.
    pub below: Vec<Stop>,
}

/// Whether an opening is open at its top.
pub fn opens_up(fitting: &Fitting, facing: &Facing) -> bool {
    fitting.cutout(facing.plane()).is_some_and(|cutout| cutout.open && !fitting.to_floor)
}

impl Stops {
    /// Of a part of a leg.
    pub fn new(leg: &Leg, facing: &Facing, part: &Part, top: Length) -> Stops {
        let (mut above, mut below) = (Vec::new(), Vec::new());
        for (_, fitting) in leg.on_face(facing.face).filter(|(_, fitting)| part.has(fitting)) {
            let Some(cutout) = fitting.cutout(facing.plane()) else { continue };
            let (x0, x1) = facing.span(cutout.extent.x0, cutout.extent.x1);
            let stop = |x: Length, z: Length, what: &str| Stop {
                at: (x, z),
                name: format!("{} {what}", fitting.mark),
                witness: None,
            };
            if opens_up(fitting, facing) {
                above.push(stop(x0, top, "left edge"));
                above.push(stop((x0 + x1).half(), top, "centreline"));
                above.push(stop(x1, top, "right edge"));
            } else if cutout.round {
                below.push(stop((x0 + x1).half(), cutout.extent.centre_y(), "centre"));
            } else {
                below.push(stop(x0, cutout.extent.y0, "left edge"));
                below.push(stop(x1, cutout.extent.y0, "right edge"));
            }
        }
        // Of stops at one x the lowest comes first, so that its witness line is the one that is drawn.
        below.sort_by_key(|stop| (stop.at.0, stop.at.1));
        Stops { above, below }
    }

    /// Paper that the numbers need beyond their line at a scale, mm, with the bends of those that are moved apart.
    pub fn reach(stops: &[Stop], show: Show, scale: Scale) -> f64 {
        let bare = Running {
            datum: Default::default(),
            datum_name: String::new(),
            line: 0.0,
            side: Side::Below,
            finished: true,
            stops: stops.to_vec(),
        };
        let mut places: Vec<f64> = stops.iter().map(|stop| stop.at.0.mm() * scale.factor()).collect();
        places.sort_by(f64::total_cmp);
        places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        let moved = spread(&places).iter().zip(&places).any(|(a, b)| (a - b).abs() > 0.01);
        if stops.is_empty() { 0.0 } else { bare.reach(show) + if moved { 4.0 } else { 0.0 } }
    }
}

/// Draws both lines.
pub fn draw(canvas: &mut Canvas, at: Layer, elevation: &Elevation<'_>) {
    let e = elevation;
    let datum = e.facing.near()[0];
    let zero = e.facing.datum(e.leg, datum);
    let begin = (!e.part.first).then(|| e.view.x(e.part.x0));
    let running = |line: f64, side: Side, stops: Vec<Stop>, z: Length| Running {
        datum: (zero, z),
        datum_name: datum.words().to_owned(),
        line,
        side,
        finished: true,
        stops,
    };
    if let (Some(line), false) = (e.lines.above, e.stops.above.is_empty()) {
        let mut stops = e.stops.above.clone();
        for stop in &mut stops {
            let centre = stop.name.ends_with("centreline");
            stop.witness = Some(e.view.y(e.top) - if centre { 7.0 } else { 1.5 });
        }
        running(line, Side::Above, stops, e.top).draw_from(canvas, at, &e.view, e.show, begin);
        came_from(canvas, at, e, line, begin);
    }
    if !e.stops.below.is_empty() {
        let mut stops = e.stops.below.clone();
        for stop in &mut stops {
            let floor = e.view.y_mm(e.floor.height(stop.at.0.mm()));
            // A bay that reaches the floor is cut on down to it.
            let z = e.view.y(stop.at.1);
            let to_floor = stop.at.1 <= e.leg.datums.frame_bottom;
            stop.witness = Some(if to_floor { floor + 1.5 } else { z + 1.5 });
        }
        running(e.lines.below, Side::Below, stops, Length::ZERO).draw_from(canvas, at, &e.view, e.show, begin);
        came_from(canvas, at, e, e.lines.below, begin);
    }
}

/// On a page that the datum is not on, says where a running line starts.
fn came_from(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, line: f64, begin: Option<f64>) {
    let Some(begin) = begin else { return };
    canvas.line(at, PaperPoint::new(begin - 5.0, line), PaperPoint::new(begin, line), Pen::SECONDARY.accent());
    let style = Style::body().bold().coloured(Colour::ACCENT).end();
    let words =
        ["from finished".to_owned(), format!("{} end,", e.facing.near_word()), format!("sheet {}", e.sheet_of(0))];
    for (index, text) in words.iter().enumerate() {
        let place = PaperPoint::new(begin - 6.5, line + 1.25 + (index as f64 - 1.0) * 4.2);
        canvas.text(at, place, text, &style);
    }
}
