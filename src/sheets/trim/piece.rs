//! One piece of trim as it is seen, to scale, its heights at the stations.

use super::ends;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::{FrontFace, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Running, Side, Stop, spread};
use crate::sheets::frame::Area;
use crate::sheets::label::{self, Words};
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::shelves::Block;
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{Leg, TrimPiece};
use crate::units::{Length, Show};

/// Room beside a piece for how it ends, mm.
pub const ASIDE: f64 = 7.0;
/// Under the heading, mm.
const HEADING: f64 = 7.0;
/// From the piece to the line of its places, mm.
const LINE: f64 = 7.0;

/// The piece with its heading.
pub fn block<'a>(set: &'a Set<'_>, piece: &'a TrimPiece, scale: Scale) -> Block<'a> {
    let show = set.solved.show;
    let (title, words) = heading(set, piece, scale);
    let width = (piece.length().mm() * scale.factor() + 2.0 * ASIDE).max(title_block::heading_width(&title, &words));
    let (_, low, _, high) = piece.region.outer.bounds();
    let body = (high - low) * scale.factor();
    let lane = heights_lane(piece, show);
    let height = HEADING + lane + body + LINE + running(piece, 0.0).reach(show) + 4.0;
    Block {
        width,
        height,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, set, piece, scale, at)),
    }
}

fn heading(set: &Set<'_>, piece: &TrimPiece, scale: Scale) -> (String, String) {
    let leg = match set.solved.legs.get(piece.leg) {
        Some(leg) if set.solved.legs.len() > 1 => format!(" of leg {} ({})", piece.leg + 1, short_id(leg)),
        _ => String::new(),
    };
    (format!("{}  {}{leg}", piece.mark, ends::face(piece.face)), scale.words())
}

/// A leg's id, cut off where it is very long.
fn short_id(leg: &Leg) -> String {
    title_block::shortened(&leg.id, 40.0, &Style::body().bold().sized(lettering::TITLE))
}

/// Room over the piece for its heights, mm.
fn heights_lane(piece: &TrimPiece, show: Show) -> f64 {
    let width = |length: Length| {
        let second = show.second(length).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
        lettering::width(&show.text(length), BODY, Weight::SemiBold) + second
    };
    5.5 + piece.stations.iter().map(|station| width(station.height)).fold(0.0, f64::max)
}

/// The places of stations and of notches from the left end.
fn running(piece: &TrimPiece, line: f64) -> Running {
    let stop = |at: Length, name: &str| Stop {
        at: (ends::seen(piece, at), Length::ZERO),
        name: name.to_owned(),
        witness: None,
    };
    let mut stops: Vec<Stop> = piece.stations.iter().map(|station| stop(station.at, "station")).collect();
    for notch in &piece.notches {
        stops.extend([stop(notch.from, "notch"), stop(notch.to, "notch")]);
    }
    stops.retain(|stop| stop.at.0 > Length::ZERO);
    Running {
        datum: (Length::ZERO, Length::ZERO),
        datum_name: format!("left end of {}", piece.mark),
        line,
        side: Side::Below,
        finished: false,
        stops,
    }
}

fn draw(canvas: &mut Canvas, set: &Set<'_>, piece: &TrimPiece, scale: Scale, corner: PaperPoint) {
    let show = set.solved.show;
    let (title, words) = heading(set, piece, scale);
    title_block::heading(canvas, corner.x, corner.y + 3.5, &title, &words);
    let s = scale.factor();
    let (_, low, _, high) = piece.region.outer.bounds();
    let top = corner.y + HEADING + heights_lane(piece, show);
    // Heights of the view count from the piece's lowest place.
    let base = top + (high - low) * s;
    let view: View<FrontFace> =
        View::open(canvas, &format!("trim {}", piece.mark), scale, PaperPoint::new(corner.x + ASIDE, base));
    let geometry = canvas.layer(view.layer, "piece");
    let outline = piece.region.outer.mapped(
        |x, z| (ends::seen(piece, Length::from_mm(x)).mm(), z - low),
        ends::seen(piece, piece.to) == Length::ZERO,
    );
    let facts =
        view.feature(piece.mark.clone(), Length::ZERO, Length::ZERO, piece.length(), Length::from_mm(high - low));
    let paint = Paint::both(Pen::CUT, Fill::tint(Colour::TINT_BOARD));
    canvas.shape(geometry, Shape::Steps(view.steps(&outline)), paint, "", facts);
    let z = |height: Length| view.y_mm(height.mm() - low);
    let x = |at: Length| view.x(ends::seen(piece, at));
    stations(canvas, geometry, piece, &x, &z, top, show);
    fasteners(canvas, geometry, piece, &x, &z);
    let dims = canvas.layer(view.layer, "dimensions");
    let lowest = base + LINE;
    let mut line = running(piece, lowest);
    for stop in &mut line.stops {
        stop.witness = Some(base + 1.5);
    }
    line.draw(canvas, dims, &view, show);
    let marks = canvas.layer(view.layer, "marks");
    for (side, end) in ends::ends(piece).into_iter().enumerate() {
        let words = ends::short(end);
        let at = if side == 0 { corner.x + ASIDE - 2.4 } else { view.x(piece.length()) + 4.6 };
        let middle = (top + base) / 2.0;
        let half = lettering::width(&words, BODY, Weight::Regular) / 2.0;
        let places = [middle, top + half, base - half, top - half].map(|y| PaperPoint::new(at, y));
        canvas.text_at_first(marks, &places, &words, &Style::caption().upright().middle());
    }
    notches(canvas, marks, set, piece, &x, &z);
    mark(canvas, marks, piece, (view.x(Length::ZERO), view.x(piece.length())), (top, base));
}

type To<'a> = &'a dyn Fn(Length) -> f64;

/// At each station a line across the piece with arrows, its height over the top.
fn stations(canvas: &mut Canvas, at: Layer, piece: &TrimPiece, x: To<'_>, z: To<'_>, top: f64, show: Show) {
    let mut sorted: Vec<(f64, Length)> = piece.stations.iter().map(|station| (x(station.at), station.height)).collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
    let places = spread(&sorted.iter().map(|station| station.0).collect::<Vec<_>>());
    for ((own, height), place) in sorted.into_iter().zip(places) {
        let p = PaperPoint::new;
        let (a, b) = (p(own, z(piece.top)), p(own, z(piece.top - height)));
        // At an end the outline itself is the line.
        canvas.line(at, a, b, Pen::FINE.coloured(Colour::GREY_LINE));
        let lane = [p(own, top - 0.8), p(own, top - 1.8), p(place, top - 3.4), p(place, top - 4.2)];
        for pair in lane.windows(2) {
            canvas.line(at, pair[0], pair[1], Pen::FINE);
        }
        let base = p(place + 1.25, top - 5.0);
        canvas.text(at, base, &show.text(height), &Style::body().bold().upright());
        if let Some(second) = show.second(height) {
            let after = lettering::width(&show.text(height), BODY, Weight::SemiBold) + 1.0;
            canvas.text(at, base.moved(0.0, -after), &second, &Style::body().upright());
        }
    }
}

/// A small cross for each fastener.
fn fasteners(canvas: &mut Canvas, at: Layer, piece: &TrimPiece, x: To<'_>, z: To<'_>) {
    let y = z(piece.fastener_z);
    for &fastener in &piece.fasteners {
        let (own, arm) = (x(fastener), 0.9);
        canvas.line(at, PaperPoint::new(own - arm, y), PaperPoint::new(own + arm, y), Pen::DIMENSION);
        canvas.line(at, PaperPoint::new(own, y - arm), PaperPoint::new(own, y + arm), Pen::DIMENSION);
    }
}

/// The fittings that the notches clear.
fn notches(canvas: &mut Canvas, at: Layer, set: &Set<'_>, piece: &TrimPiece, x: To<'_>, z: To<'_>) {
    let Some(leg) = set.solved.legs.get(piece.leg) else { return };
    for notch in &piece.notches {
        let Some(fitting) = leg.fittings.get(notch.fitting) else { continue };
        let (a, b) = (x(notch.from), x(notch.to));
        let middle = PaperPoint::new((a + b) / 2.0, (z(piece.top) + z(notch.bottom)) / 2.0 + 1.25);
        let aside = (b - a).abs() / 4.0;
        let places = [0.0, -aside, aside].into_iter().flat_map(|dx| [0.0, -4.0, 4.0].map(|dy| middle.moved(dx, dy)));
        let places: Vec<PaperPoint> = places.collect();
        canvas.text_at_first(at, &places, &format!("notch for {}", fitting.mark), &Style::body().middle());
    }
}

/// The mark on the piece itself, where it is white.
fn mark(canvas: &mut Canvas, at: Layer, piece: &TrimPiece, (left, right): (f64, f64), (top, bottom): (f64, f64)) {
    let room = Area { left, top, right, bottom };
    let words = Words { mark: piece.mark.clone(), name: String::new(), more: Vec::new(), whole: false };
    let aim = PaperPoint::new((left + right) / 2.0, (top + bottom) / 2.0);
    label::inside(canvas, at, &words, room, aim);
}
