//! Names on the picture: each module's letter as the plan and the elevations have it, with what it is, and the mark of
//! what is set into a counter, on leaders to white paper or to the floor.

use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::{LegPoint, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::solids::{Facet, Skin};
use crate::sheets::title_block::shortened;
use crate::solve::{Leg, Look, Plane, Solved};

/// Height of a tag, mm.
const HIGH: f64 = 5.0;
/// White inside a tag's ends and between its letter and its name, mm.
const PAD: f64 = 1.2;
/// White round a tag, mm.
const ROUND: f64 = 1.2;
/// Longest name, mm.
const LONGEST: f64 = 40.0;
/// Distances from the thing to its tag that are tried, mm.
const STEPS: usize = 30;
const STEP: f64 = 3.5;
/// Directions that are tried.
const WAYS: usize = 24;
/// A millimetre of leader over the run counts as so many on white paper.
const OVER_RUN: f64 = 3.0;
/// What a tag without a place costs, as so many millimetres of leader.
const UNPLACED: f64 = 500.0;
/// Orders that are tried from each of the first ones.
const TRIES: usize = 4;
/// With more names than these one order is tried.
const MANY: usize = 40;

/// What is named.
struct Named {
    /// A point of it that is seen.
    at: PaperPoint,
    /// The way that its leader would best run, as on paper.
    way: (f64, f64),
    /// Its letter or mark, and its name.
    mark: String,
    name: String,
    /// A fitting's mark stands in a ring, a module's letter in a box.
    ring: bool,
}

/// What has been placed.
struct Placed {
    area: Area,
    leader: [PaperPoint; 2],
}

/// Names everything, within an area of the sheet.
pub fn draw(canvas: &mut Canvas, solved: &Solved, seen: &Seen<'_>, area: &Area) {
    let layer = canvas.layer(Canvas::ROOT, "names");
    let mut all: Vec<Named> = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        all.extend(fittings(index, leg, seen));
        all.extend(modules(index, leg, seen));
    }
    // Who comes first takes what others want too: of some orders the one with the shortest leaders is drawn.
    let count = all.len();
    let mut by_x: Vec<usize> = (0..count).collect();
    by_x.sort_by(|a, b| all[*a].at.x.total_cmp(&all[*b].at.x));
    let mut by_y: Vec<usize> = (0..count).collect();
    by_y.sort_by(|a, b| all[*b].at.y.total_cmp(&all[*a].at.y));
    let turned = |order: &[usize]| order.iter().rev().copied().collect::<Vec<usize>>();
    let written: Vec<usize> = (0..count).collect();
    let orders = [turned(&written), turned(&by_x), turned(&by_y), written, by_x, by_y];
    let mut best: Option<Laid> = None;
    // Among very many names the first order has to do: each more costs as much again.
    let (orders_tried, tries) = if count > MANY { (1, 1) } else { (orders.len(), TRIES) };
    for order in orders.into_iter().take(orders_tried) {
        let mut order: Vec<usize> = order;
        for _ in 0..tries {
            let laid = laid_out(canvas, seen, area, &all, &order);
            // Whose leader is the longest chooses first the next time.
            let worst = (0..count).max_by(|a, b| laid.costs[*a].total_cmp(&laid.costs[*b]));
            if best.as_ref().is_none_or(|best| laid.cost() < best.cost()) {
                best = Some(laid);
            }
            let Some(worst) = worst.filter(|worst| order.first() != Some(worst)) else { break };
            order.retain(|index| *index != worst);
            order.insert(0, worst);
        }
    }
    let places = best.map_or_else(Vec::new, |best| best.places);
    for (one, place) in all.iter().zip(&places) {
        if let Some(place) = place {
            tag(canvas, layer, one, place);
        }
    }
    // Where nothing is free, the letter alone stands on the thing itself.
    for (one, _) in all.iter().zip(&places).filter(|(_, place)| place.is_none()) {
        short(canvas, layer, one);
    }
}

/// Places for all, and what each costs.
struct Laid {
    places: Vec<Option<Placed>>,
    costs: Vec<f64>,
}

impl Laid {
    /// Squared, so that no leader gets long for the sake of many short ones.
    fn cost(&self) -> f64 {
        self.costs.iter().map(|cost| cost * cost).sum()
    }
}

/// Places for all, found in an order.
fn laid_out(canvas: &Canvas, seen: &Seen<'_>, area: &Area, all: &[Named], order: &[usize]) -> Laid {
    let mut laid = Laid { places: all.iter().map(|_| None).collect(), costs: vec![UNPLACED; all.len()] };
    for &index in order {
        if let Some((cost, placed)) = place(canvas, seen, area, &all[index], &laid.places) {
            laid.costs[index] = cost;
            laid.places[index] = Some(placed);
        }
    }
    laid
}

/// The modules of a leg, each at its face, else at its counter.
fn modules(index: usize, leg: &Leg, seen: &Seen<'_>) -> Vec<Named> {
    let d = &leg.datums;
    let own = format!("leg {} ", index + 1);
    let of_leg = |facet: &Facet| facet.name.starts_with(&own) && !facet.name.contains("counter");
    let top = |facet: &Facet| facet.skin == Skin::Top;
    let site = |u: f64, v: f64, z: f64| {
        let plan = leg.placement.to_plan(LegPoint::new(u, v));
        [plan.x, plan.y, z]
    };
    let (low, high, back) = (d.frame_bottom.mm(), d.substrate_top.mm(), d.finished_back.mm());
    let named = leg.modules.iter().filter_map(|module| {
        let (l, r) = (module.left.mm().max(0.0), module.right.mm().min(d.finished_right.mm()));
        let (l, r) = if r - l > 1.0 { (l, r) } else { (module.left.mm(), module.right.mm()) };
        let along = |share: f64| l + (r - l) * share;
        let shares = [0.5, 0.4, 0.6, 0.25, 0.75, 0.1, 0.9];
        let rises = [0.08, 0.2, 0.5, 0.8, 0.95];
        let faces = [(0.0, -1.0), (back, 1.0)].into_iter().flat_map(|(v, out)| {
            let spots = rises.iter().flat_map(|rise| shares.iter().map(move |share| (*rise, *share)));
            spots.map(move |(rise, share)| (v, out, rise, share))
        });
        let mut faces = faces.filter_map(|(v, out, rise, share)| {
            let point = seen.visible(site(along(share), v, low + (high - low) * rise), of_leg)?;
            let before = seen.paper(site(along(share), v + out * 100.0, low + (high - low) * rise));
            Some((point, (before.x - point.x, before.y - point.y)))
        });
        let tops = [0.5, 0.75, 0.25, 0.9, 0.1].into_iter().flat_map(|v| shares.iter().map(move |share| (v, *share)));
        let mut tops = tops.filter_map(|(v, share)| {
            Some((seen.visible(site(along(share), back * v, d.counter_top.mm()), top)?, (0.0, -1.0)))
        });
        let (at, way) = faces.next().or_else(|| tops.next())?;
        let name = if module.name == module.id { String::new() } else { module.name.clone() };
        Some(Named { at, way, mark: module.id.clone(), name, ring: false })
    });
    named.collect()
}

/// What is set into the counter of a leg.
fn fittings(index: usize, leg: &Leg, seen: &Seen<'_>) -> Vec<Named> {
    let set_in = leg.fittings.iter().filter(|f| f.cutout(Plane::Counter).is_some() && f.look != Look::Faucet);
    let named = set_in.filter_map(|fitting| {
        let own = format!("leg {} {} ", index + 1, fitting.mark);
        let over = |facet: &Facet| facet.name.starts_with(&own) && !facet.name.ends_with("front");
        let at = seen.on_largest(over).or_else(|| seen.on_largest(|facet| facet.name.starts_with(&own)))?;
        Some(Named { at, way: (0.0, -1.0), mark: fitting.mark.clone(), name: fitting.name.clone(), ring: true })
    });
    named.collect()
}

impl Named {
    fn name(&self) -> String {
        shortened(&self.name, LONGEST, &Style::body())
    }

    /// Width of its letter with what stands round it, and of all, mm.
    fn widths(&self) -> (f64, f64) {
        let mark = if self.ring {
            2.0 * marks::ring_radius(&self.mark)
        } else {
            lettering::width(&self.mark, BODY, Weight::SemiBold) + 2.0 * PAD
        };
        let name = lettering::width(&self.name(), BODY, Weight::Regular);
        (mark, mark + if name > 0.0 { PAD + name } else { 0.0 })
    }

    fn height(&self) -> f64 {
        if self.ring { 2.0 * marks::ring_radius(&self.mark) } else { HIGH }
    }
}

/// The best place of a tag: its leader short, its way the thing's own, little of it over the run.
fn place(
    canvas: &Canvas,
    seen: &Seen<'_>,
    area: &Area,
    one: &Named,
    placed: &[Option<Placed>],
) -> Option<(f64, Placed)> {
    let ((_, wide), high) = (one.widths(), one.height());
    let long = one.way.0.hypot(one.way.1).max(1e-9);
    let mut tries: Vec<(f64, PaperPoint)> = Vec::new();
    for turn in 0..WAYS {
        let angle = turn as f64 / WAYS as f64 * std::f64::consts::TAU;
        let (sin, cos) = angle.sin_cos();
        let off = 1.0 - (cos * one.way.0 + sin * one.way.1) / long;
        // The tag's own edge stands so far away, whichever way it lies.
        let half = (wide / 2.0 * cos).abs() + (high / 2.0 * sin).abs();
        for step in 2..STEPS {
            let far = step as f64 * STEP;
            tries.push((far * (1.0 + off), one.at.moved(cos * (far + half), sin * (far + half))));
        }
    }
    tries.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut best: Option<(f64, Placed)> = None;
    for (cost, middle) in tries {
        if best.as_ref().is_some_and(|(least, _)| *least <= cost) {
            break;
        }
        let tag = Area {
            left: middle.x - wide / 2.0,
            top: middle.y - high / 2.0,
            right: middle.x + wide / 2.0,
            bottom: middle.y + high / 2.0,
        };
        let inside =
            tag.left >= area.left && tag.right <= area.right && tag.top >= area.top && tag.bottom <= area.bottom;
        if !inside || !is_white(canvas, seen, &tag) {
            continue;
        }
        let foot = nearest(&tag, one.at);
        let leader = [one.at, foot];
        let apart = placed
            .iter()
            .flatten()
            .all(|other| !cross(leader, other.leader) && !runs_into(leader, &other.area) && apart_from(&tag, other));
        if !apart || !canvas.is_clear_of_text(&leader) {
            continue;
        }
        let cost = cost + OVER_RUN * over_run(seen, leader);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, Placed { area: tag, leader }));
        }
    }
    best
}

/// Whether a tag stands on white paper or on the floor, and meets no line.
fn is_white(canvas: &Canvas, seen: &Seen<'_>, tag: &Area) -> bool {
    let (l, t, r, b) = (tag.left - ROUND, tag.top - ROUND, tag.right + ROUND, tag.bottom + ROUND);
    if !canvas.is_box_free(l, t, r, b) {
        return false;
    }
    let across = ((r - l) / 3.0).ceil() as usize;
    (0..=across).all(|k| {
        let x = l + (r - l) * k as f64 / across as f64;
        [t, (t + b) / 2.0, b].iter().all(|y| seen.is_clear(PaperPoint::new(x, *y)))
    })
}

/// The point of a tag's edge where a leader from a point ends: the middle of the side that faces it.
fn nearest(tag: &Area, p: PaperPoint) -> PaperPoint {
    let middle = PaperPoint::new((tag.left + tag.right) / 2.0, (tag.top + tag.bottom) / 2.0);
    if p.x < tag.left {
        PaperPoint::new(tag.left, middle.y)
    } else if p.x > tag.right {
        PaperPoint::new(tag.right, middle.y)
    } else {
        PaperPoint::new(p.x.clamp(tag.left + 1.5, tag.right - 1.5), if p.y < tag.top { tag.top } else { tag.bottom })
    }
}

/// How much of a leader lies over the run, mm.
fn over_run(seen: &Seen<'_>, [a, b]: [PaperPoint; 2]) -> f64 {
    let count = (a.distance(b) / 1.5).ceil().max(1.0);
    let over = (1..count as usize).filter(|k| !seen.is_clear(a.towards(b, *k as f64 / count))).count();
    over as f64 * a.distance(b) / count
}

/// Whether a tag keeps clear of another one and of its leader.
fn apart_from(tag: &Area, other: &Placed) -> bool {
    let o = &other.area;
    let meet = tag.left - ROUND < o.right
        && o.left < tag.right + ROUND
        && tag.top - ROUND < o.bottom
        && o.top < tag.bottom + ROUND;
    !meet && !runs_into(other.leader, tag)
}

fn cross([a, b]: [PaperPoint; 2], [c, d]: [PaperPoint; 2]) -> bool {
    let side = |p: PaperPoint, q: PaperPoint, r: PaperPoint| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Whether a leader runs through a tag or too near to it.
fn runs_into([a, b]: [PaperPoint; 2], tag: &Area) -> bool {
    let count = (a.distance(b) / 0.7).ceil().max(1.0) as usize;
    (0..=count).any(|k| {
        let p = a.towards(b, k as f64 / count as f64);
        p.x > tag.left - 1.0 && p.x < tag.right + 1.0 && p.y > tag.top - 1.0 && p.y < tag.bottom + 1.0
    })
}

fn tag(canvas: &mut Canvas, at: Layer, one: &Named, placed: &Placed) {
    let tag = &placed.area;
    marks::leader(canvas, at, &placed.leader, LeaderEnd::Dot, Colour::INK);
    let (mark, _) = one.widths();
    let middle = (tag.top + tag.bottom) / 2.0;
    let name = one.name();
    // A plate, so that no joint of the paving runs through the words.
    let (a, b) = (PaperPoint::new(tag.left, tag.top), PaperPoint::new(tag.right, tag.bottom));
    let plate = Fill { opacity: 1.0, ..Fill::WHITE };
    if !one.ring || !name.is_empty() {
        let from = if one.ring { PaperPoint::new(tag.left + mark / 2.0, middle - HIGH / 2.0) } else { a };
        let to = if one.ring { PaperPoint::new(b.x, middle + HIGH / 2.0) } else { b };
        canvas.rectangle(at, from.moved(0.0, 0.2), to.moved(0.6, -0.2), Paint::fill(plate));
    }
    letter(canvas, at, one, PaperPoint::new(tag.left + mark / 2.0, middle));
    if !name.is_empty() {
        canvas.text(at, PaperPoint::new(tag.left + mark + PAD, middle + 1.25), &name, &Style::body());
    }
}

/// The letter in its box, or the mark in its ring.
fn letter(canvas: &mut Canvas, at: Layer, one: &Named, middle: PaperPoint) {
    if one.ring {
        marks::ring(canvas, at, middle, &one.mark);
        return;
    }
    let half = lettering::width(&one.mark, BODY, Weight::SemiBold) / 2.0 + PAD;
    let (a, b) = (middle.moved(-half, -HIGH / 2.0 + 0.3), middle.moved(half, HIGH / 2.0 - 0.3));
    canvas.rectangle(at, a, b, Paint::both(Pen::DIMENSION, Fill { opacity: 1.0, ..Fill::WHITE }));
    // A letter with a tail stands higher in its box.
    let style = Style::body().bold().middle();
    let low = if lettering::set(middle, &one.mark, &style).descends { 0.85 } else { 1.25 };
    canvas.text(at, middle.moved(0.0, low), &one.mark, &style);
}

/// The letter alone, on the thing itself, where no other lettering stands.
fn short(canvas: &mut Canvas, at: Layer, one: &Named) {
    let half = one.widths().0 / 2.0 + 0.6;
    let near = [(0.0, 0.0), (0.0, -6.0), (0.0, 6.0), (-7.0, 0.0), (7.0, 0.0)];
    let free = |(x, y): &&(f64, f64)| {
        let p = one.at.moved(*x, *y);
        // In a very long run even that has no place, and is left out.
        canvas.is_box_free(p.x - half, p.y - 4.0, p.x + half, p.y + 4.0)
    };
    if let Some((x, y)) = near.iter().find(free) {
        letter(canvas, at, one, one.at.moved(*x, *y));
    }
}
