//! A leg's frame from above with its supports, each with its mark and its places along and across.

use super::parts::{BEFORE, BESIDE, Part, shown};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{Leg as LegSpace, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension, Running, Side, Stop, spread};
use crate::sheets::frame::{self, Area, MARGIN};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::place;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{Along, Plane, Support, SupportRole};
use crate::units::{Length, Show};

/// Under the heading, mm.
const HEADING: f64 = 6.0;
/// From the view to the first dimension, mm.
const FIRST: f64 = 10.0;
/// Between dimension lines in depth, mm.
const NEXT: f64 = 7.0;
/// Dimensions in depth at most.
const MOST: usize = 5;

/// A page with the plan, what is left on it for tables, and its scale.
pub fn page(set: &Set<'_>, part: &Part<'_>) -> (Canvas, Vec<Area>, String) {
    let mut canvas = set.sheet();
    let (inside, block) = (frame::inside(&canvas), title_block::corner(&canvas));
    let bottom = draw(&mut canvas, set, part, inside);
    let top = bottom + 8.0;
    let mut areas = vec![
        Area { left: inside.left, top, right: block.x - MARGIN, bottom: inside.bottom },
        Area { left: block.x + 1.8, top, right: inside.right, bottom: block.y - MARGIN },
    ];
    if block.x - MARGIN - inside.left < 60.0 {
        areas = vec![Area { left: inside.left, top, right: inside.right, bottom: block.y - MARGIN }];
    }
    areas.retain(|area| area.height() > 20.0 && area.width() > 60.0);
    (canvas, areas, part.scale.words())
}

/// Draws the view at the top of an area, and answers where its lowest dimension ends.
fn draw(canvas: &mut Canvas, set: &Set<'_>, part: &Part<'_>, inside: Area) -> f64 {
    let (solved, leg, scale) = (set.solved, part.leg, part.scale);
    let e = &leg.counter.extent;
    let several = solved.legs.len() > 1;
    let whose = if several { format!(", leg {}", leg.id) } else { String::new() };
    let which =
        if part.number.1 > 1 { format!(", part {} of {}", part.number.0, part.number.1) } else { String::new() };
    let title = format!("Frame and supports from above{whose}{which}");
    let y = inside.top + 3.5;
    let end = title_block::heading(canvas, inside.left, y, &title, &scale.words());
    let wide = (part.to - part.from).mm() * scale.factor();
    let spare = (inside.width() - BEFORE - BESIDE - wide).max(0.0) / 2.0;
    let own: Vec<&Support> = shown(solved, part.index).into_iter().filter(|one| part.holds(one)).collect();
    let above = running(part, &own, (0.0, 0.0), Side::Above, false).reach(solved.show) + FIRST + 5.0;
    let origin = PaperPoint::new(
        inside.left + BEFORE + spare - part.from.mm() * scale.factor(),
        inside.top + HEADING + above + e.y1.mm() * scale.factor(),
    );
    let view: View<LegSpace> = View::open(canvas, "supports", scale, origin);
    if inside.right - end > 90.0 {
        let layer = canvas.layer(view.layer, "scale-bar");
        marks::scale_bar(canvas, layer, inside.right, y, scale, solved.show.system);
    }
    let geometry = canvas.layer(view.layer, "frame");
    ground(canvas, geometry, part, &view);
    for support in &own {
        member(
            canvas,
            geometry,
            support,
            &view,
            solved.shop.supports.members.iter().any(|one| one.mark == support.mark),
        );
    }
    faces(canvas, geometry, part, &view);
    let dims = canvas.layer(view.layer, "dimensions");
    let bottom = along(canvas, dims, set, part, &own, &view);
    across(canvas, dims, part, &own, &view, solved.show);
    let names = canvas.layer(view.layer, "names");
    let area = Area {
        left: view.x(part.from) - BEFORE + 3.0,
        right: view.x(part.to) + 3.0,
        top: view.y(e.y1) - 1.0,
        bottom: view.y(Length::ZERO.min(e.y0)) + 1.0,
    };
    for support in &own {
        name(canvas, names, support, &view, area);
    }
    fitted(canvas, names, part, &view, area);
    bottom
}

/// Counter, frame, cutouts, bodies: what supports have to keep out of, in grey.
fn ground(canvas: &mut Canvas, at: Layer, part: &Part<'_>, view: &View<LegSpace>) {
    let (leg, d) = (part.leg, &part.leg.datums);
    let grey = Pen::DIMENSION.coloured(Colour::GREY_LINE);
    let (first, last) = part.modules;
    for member in leg.members_of(first..=last).iter().filter(|member| member.body.z.1 == d.frame_top) {
        let (u, v) = (member.body.u, member.body.v);
        let paint = Paint::both(grey, Fill::tint(Colour::TINT_BOARD));
        canvas.rectangle(at, view.at(u.0, v.0), view.at(u.1, v.1), paint);
    }
    let e = &leg.counter.extent;
    let pen = Pen::FINE.coloured(Colour::GREY_LINE).dashed(Dash::PHANTOM);
    let (x0, x1) = (part.from.max(e.x0), part.to.min(e.x1));
    canvas.line(at, view.at(x0, e.y0), view.at(x1, e.y0), pen);
    canvas.line(at, view.at(x0, e.y1), view.at(x1, e.y1), pen);
    for x in [e.x0, e.x1] {
        if x >= part.from && x <= part.to {
            canvas.line(at, view.at(x, e.y0), view.at(x, e.y1), pen);
        }
    }
    for fitting in &leg.fittings {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        if cutout.extent.x1 <= part.from || cutout.extent.x0 >= part.to {
            continue;
        }
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", Plane::Counter.word().to_owned())];
        let shape = Shape::Steps(view.steps(&cutout.outline));
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE);
        canvas.shape(at, shape, Paint::pen(pen), "cutout", facts);
    }
}

/// One support: what is added is drawn heavy and tinted, the frame's own lighter.
fn member(canvas: &mut Canvas, at: Layer, support: &Support, view: &View<LegSpace>, added: bool) {
    let (u, v) = (support.body.u, support.body.v);
    let pen = if added { Pen::VISIBLE } else { Pen::SECONDARY.coloured(Colour::GREY_LINE) };
    let tint = if added { Colour::TINT_BED } else { Colour::TINT_BOARD };
    let facts = view.feature(format!("support {}", support.mark), u.0, v.0, u.1, v.1);
    let (a, b) = (view.at(u.0, v.0), view.at(u.1, v.1));
    let steps = crate::sheets::canvas::through(&crate::sheets::canvas::corners(a, b), true);
    canvas.shape(at, Shape::Steps(steps), Paint::both(pen, Fill::tint(tint)), "support", facts);
    if support.role == SupportRole::FrontPost {
        canvas.line(at, a, b, Pen::DIMENSION);
        canvas.line(at, PaperPoint::new(a.x, b.y), PaperPoint::new(b.x, a.y), Pen::DIMENSION);
    }
    // Screws along it, seen from above where it lies level.
    if support.along != Along::Z {
        for (place, _) in &support.holes {
            let p = match support.along {
                Along::U => view.at(u.0 + *place, (v.0 + v.1).half()),
                _ => view.at((u.0 + u.1).half(), v.0 + *place),
            };
            canvas.circle(at, p, 0.35, Paint::fill(Fill::ink(Colour::INK)));
        }
    }
}

/// The finished face and ends.
fn faces(canvas: &mut Canvas, at: Layer, part: &Part<'_>, view: &View<LegSpace>) {
    let (leg, d, zero) = (part.leg, &part.leg.datums, Length::ZERO);
    let pen = Pen::SECONDARY.accent().dashed(Dash::FINISHED);
    let mut put = |name: &str, a: PaperPoint, b: PaperPoint| {
        canvas.shape(at, Shape::Line(a, b), Paint::pen(pen), "datum", vec![("data-datum", name.to_owned())]);
    };
    let (x0, x1) = (part.from.max(zero), part.to.min(d.finished_right));
    put("finished face", view.at(x0, zero), view.at(x1, zero));
    if part.modules.0 == 0 && leg.left.is_open() {
        put("finished left end", view.at(zero, zero), view.at(zero, d.finished_back));
    }
    if part.modules.1 + 1 == leg.modules.len() && leg.right.is_open() {
        put("finished right end", view.at(d.finished_right, zero), view.at(d.finished_right, d.finished_back));
    }
}

/// A running dimension before the run from the finished left end, and one behind it from the bare frame, which is what is
/// there. Answers where the lower one ends.
fn along(
    canvas: &mut Canvas,
    at: Layer,
    set: &Set<'_>,
    part: &Part<'_>,
    own: &[&Support],
    view: &View<LegSpace>,
) -> f64 {
    let (show, e) = (set.solved.show, &part.leg.counter.extent);
    let (front, back) = (view.y(e.y0.min(Length::ZERO)), view.y(e.y1));
    let mut bottom = front;
    for (side, finished) in [(Side::Below, true), (Side::Above, false)] {
        let running = running(part, own, (front, back), side, finished);
        let y = running.line;
        let begin = (part.modules.0 > 0).then(|| view.x(part.from));
        running.draw_from(canvas, at, view, show, begin);
        let colour = if finished { Colour::ACCENT } else { Colour::INK };
        let style = Style::body().bold().coloured(colour).end();
        // Numbers that had to move apart may reach past the datum.
        let mut places: Vec<f64> = running.stops.iter().map(|stop| view.x(stop.at.0)).collect();
        places.sort_by(f64::total_cmp);
        let reach = spread(&places).first().map_or(f64::MAX, |x| x - 2.0);
        let x = begin.unwrap_or_else(|| view.x(running.datum.0)).min(reach) - 2.0;
        // Off the numbers: between the line and the run.
        let first = if finished { y - 4.4 } else { y + 3.0 };
        let lines: [&str; 2] = if finished { ["from finished", "left end"] } else { ["from bare", "frame"] };
        for (line, words) in lines.iter().enumerate() {
            canvas.text(at, PaperPoint::new(x, first + line as f64 * 3.8), words, &style);
        }
        if finished {
            bottom = y + running.reach(show) + 7.0;
        }
    }
    bottom
}

/// The left edges of all supports from one datum, on a line before or behind the run whose edges lie at these paper y.
fn running(part: &Part<'_>, own: &[&Support], (front, back): (f64, f64), side: Side, finished: bool) -> Running {
    let datum = if finished { Length::ZERO } else { part.leg.datums.frame_left };
    let below = side == Side::Below;
    let stops = own.iter().map(|support| Stop {
        at: (support.body.u.0, support.body.v.0),
        name: format!("{} left edge", support.mark),
        witness: Some(if below { front + 2.0 } else { back - 2.0 }),
    });
    Running {
        datum: (datum, Length::ZERO),
        datum_name: if finished { "finished left end" } else { "frame left end" }.to_owned(),
        line: if below { front + FIRST } else { back - FIRST },
        side,
        finished,
        stops: stops.collect(),
    }
}

/// Depths at the right: from the bare frame to the near edge of whatever runs along the face, and to the ends of what
/// runs front to back, where those differ.
fn across(canvas: &mut Canvas, at: Layer, part: &Part<'_>, own: &[&Support], view: &View<LegSpace>, show: Show) {
    let leg = part.leg;
    let face = leg.datums.frame_face;
    let mut places: Vec<(Length, String)> = own
        .iter()
        .flat_map(|support| {
            let (v, mark) = (support.body.v, &support.mark);
            match support.along {
                Along::U => vec![(v.0, format!("{mark} front edge"))],
                Along::V => vec![(v.0, format!("{mark} front end")), (v.1, format!("{mark} back end"))],
                Along::Z => Vec::new(),
            }
        })
        .filter(|(v, _)| *v > face)
        .collect();
    places.sort();
    places.dedup_by_key(|place| show.rounded(place.0));
    let edge = view.x(part.to);
    let mut line = edge + FIRST;
    for (v, name) in places {
        let dimension = Dimension::new(Across::Y, (part.to, face), (part.to, v), line)
            .datums("bare frame", name)
            .origin()
            .witnesses(Some(edge + 1.5), Some(edge + 1.5));
        // One too short for its number would push it over the next one's lines: the table has it.
        if line < edge + FIRST + NEXT * MOST as f64 && dimension.fits(view, show) {
            dimension.draw(canvas, at, view, show);
            line += NEXT;
        }
    }
}

/// The mark of a support, in a ring where there is white near it.
fn name(canvas: &mut Canvas, at: Layer, support: &Support, view: &View<LegSpace>, area: Area) {
    let (u, v) = (support.body.u, support.body.v);
    let centre = view.at((u.0 + u.1).half(), (v.0 + v.1).half());
    let radius = marks::ring_radius(&support.mark);
    let size = (radius * 2.0 + 0.8, radius * 2.0 + 0.8);
    let (low, high) = (view.at(u.0, v.0), view.at(u.1, v.1));
    // The leader ends on the piece, as near the ring as may be.
    let foot = |ring: PaperPoint| {
        PaperPoint::new(
            ring.x.clamp(low.x + 0.4, (high.x - 0.4).max(low.x + 0.4)),
            ring.y.clamp(high.y + 0.4, (low.y - 0.4).max(high.y + 0.4)),
        )
    };
    let clear = |ring: PaperPoint| {
        let foot = foot(ring);
        let far = foot.distance(ring);
        far > radius + 0.6 && far < 45.0 && canvas.is_clear_of_text(&[foot, foot.towards(ring, (far - radius) / far)])
    };
    let Some(spot) = place::free_spot_off(canvas, area, size, centre, &[], clear) else {
        return;
    };
    let foot = foot(spot);
    let far = foot.distance(spot);
    let end = foot.towards(spot, (far - radius) / far);
    marks::leader(canvas, at, &[foot, end], LeaderEnd::Dot, Colour::INK);
    marks::ring(canvas, at, spot, &support.mark);
}

/// Names of what is cut into the counter, and of the modules, where there is white.
fn fitted(canvas: &mut Canvas, at: Layer, part: &Part<'_>, view: &View<LegSpace>, area: Area) {
    let leg = part.leg;
    for fitting in &leg.fittings {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        if cutout.extent.x1 <= part.from || cutout.extent.x0 >= part.to {
            continue;
        }
        let words = format!("{} {}", fitting.mark, fitting.name);
        let room = Area {
            left: view.x(cutout.extent.x0),
            right: view.x(cutout.extent.x1),
            top: view.y(cutout.extent.y1),
            bottom: view.y(cutout.extent.y0),
        };
        let wide = lettering::width(&words, BODY, Weight::Regular);
        let middle = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
        if let Some(spot) = place::free_spot(canvas, room, (wide, 3.4), middle) {
            canvas.text(at, spot.moved(0.0, 1.25), &words, &Style::caption().middle());
        }
    }
    for module in &leg.modules[part.modules.0..=part.modules.1] {
        let wide = lettering::width(&module.id, BODY, Weight::SemiBold);
        let room = Area { left: view.x(module.left), right: view.x(module.right), ..area };
        let prefer = PaperPoint::new((room.left + room.right) / 2.0, view.y(leg.datums.frame_back) + 6.0);
        if let Some(spot) = place::free_spot(canvas, room, (wide, 3.4), prefer) {
            canvas.text(at, spot.moved(0.0, 1.25), &module.id, &Style::body().bold().middle());
        }
    }
    let style = Style::body().bold().coloured(Colour::ACCENT);
    let wide = lettering::width("finished face", BODY, Weight::SemiBold);
    let y = view.y(Length::ZERO);
    let start = view.x(part.from.max(Length::ZERO)) + 2.0;
    let places: Vec<PaperPoint> = (0..120)
        .map(|k| start + f64::from(k) * 2.5)
        .take_while(|x| x + wide < view.x(part.to))
        .flat_map(|x| [PaperPoint::new(x, y + 4.2), PaperPoint::new(x, y - 1.6)])
        .collect();
    canvas.text_at_first(at, &places, "finished face", &style);
}
