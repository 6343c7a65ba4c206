//! What the run stands on and against: the floor as it falls, and walls, piers and posts, cut low.

use super::facet::{Facet, Skin};
use super::hidden;
use super::legs::at_corners;
use super::model::{Depth, Model, level, outlines};
use super::projection::Projection;
use super::space::{Pose, cross, dot, minus, unit};
use crate::geometry::{LegPoint, Placement, PlanPoint};
use crate::sheets::client::patch::{Patch, Rect, Ring, Spot, area};
use crate::sheets::client::scene::INCH;
use crate::solve::{Bound, BoundKind, JointKind, Leg, Solved};

/// How far the floor is shown round all that stands on it.
const ROUND: f64 = 13.0 * INCH;
/// How far it is shown before a face.
const BEFORE: f64 = 30.0 * INCH;
/// Thickness of what lies underfoot.
const SLAB: f64 = 2.1 * INCH;
/// How far a wall goes on past a free end.
const ON: f64 = 13.0 * INCH;
/// How far a wall is shown over the counter before it is cut.
const OVER: f64 = 9.0 * INCH;
/// What is hidden of the run by less than this doesn't count, mm2.
const LITTLE: f64 = 2000.0;

/// Something that stands in the site, by its outline in a leg's (u, v).
struct Standing {
    name: String,
    placement: Placement,
    ring: Ring,
    /// Its top as shown, and whether it goes on above that.
    top: f64,
    cut: bool,
}

/// Adds the walls, piers and posts round the run. What would hide any of it is shown as cut at the floor.
pub fn site(model: &mut Model<'_>, view: &Projection) {
    let run = model.facets.len();
    for standing in standing(model.solved) {
        let before = model.facets.len();
        model.begin(None);
        let pose = level(standing.placement);
        let ground = floor_at(model, standing.placement, &standing.ring);
        let top = if standing.cut { Skin::Cut } else { Skin::Wall };
        let depth = Depth { from: ground, to: standing.top };
        let patch = Patch::of(standing.ring.clone());
        model.pulled(&standing.name, pose, patch.clone(), depth, (top, |_| Skin::Wall), 0.25);
        if hides(&model.facets[before..], &model.facets[..run], view) {
            model.facets.truncate(before);
            let lines = outlines(&patch);
            model.add(standing.name, pose.out(ground + 1.0), patch, Skin::Cut, lines, 0.25);
        }
    }
}

/// The highest floor under an outline.
fn floor_at(model: &Model<'_>, placement: Placement, ring: &Ring) -> f64 {
    let Some(first) = model.solved.legs.first() else { return 0.0 };
    let height = |[u, v]: [f64; 2]| {
        let at = first.placement.to_leg(placement.to_plan(LegPoint::new(u, v)));
        first.floor.height(at.x, at.y)
    };
    ring.iter().map(|spot| height(*spot)).fold(f64::NEG_INFINITY, f64::max)
}

fn hides(walls: &[Facet], run: &[Facet], view: &Projection) -> bool {
    let (walls, run) = (hidden::turned(walls, view), hidden::turned(run, view));
    run.iter().any(|one| {
        walls.iter().any(|wall| {
            hidden::covered(wall, one, view)
                .is_some_and(|part| part.within(&one.patch).rings.iter().map(|ring| area(ring)).sum::<f64>() > LITTLE)
        })
    })
}

fn standing(solved: &Solved) -> Vec<Standing> {
    let mut found = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let top = leg.datums.counter_top.mm();
        let shown = |bound: &Bound, least: f64, over: f64| {
            let whole = if bound.height.mm() > 0.0 { bound.height.mm() } else { least };
            let cut = top + over;
            if whole > cut + INCH { (cut, true) } else { (whole, false) }
        };
        let named = |bound: &Bound| format!("{} at leg {}", bound.name, index + 1);
        if leg.back.kind == BoundKind::Wall {
            let ring = wall_behind(solved, index);
            let (top, cut) = shown(&leg.back, top + 24.0 * INCH, OVER);
            found.push(Standing { name: named(&leg.back), placement: leg.placement, ring, top, cut });
        }
        for (bound, right) in [(&leg.left, false), (&leg.right, true)] {
            let Some(ring) = beside(leg, bound, right) else { continue };
            let over = if bound.kind == BoundKind::Pier { 26.0 * INCH } else { OVER };
            let (top, cut) = shown(bound, if bound.kind == BoundKind::Pier { top + 24.0 * INCH } else { 1e4 }, over);
            found.push(Standing { name: named(bound), placement: leg.placement, ring, top, cut });
        }
    }
    let Some(first) = solved.legs.first() else { return found };
    let shown = extent(solved);
    let plan = Placement { origin: PlanPoint::new(0.0, 0.0), angle: 0.0 };
    for post in &solved.survey.posts {
        let (x, y, w, h) = (post.at.0, post.at.1, post.size.0 / 2.0, post.size.1 / 2.0);
        let ring = Rect::new(x - w, y - h, x + w, y + h).patch().rings.swap_remove(0);
        let on_first = |[x, y]: &Spot| {
            let at = first.placement.to_leg(PlanPoint::new(*x, *y));
            [at.x, at.y]
        };
        if !stands_on(&ring.iter().map(on_first).collect(), &shown) {
            continue;
        }
        found.push(Standing { name: post.name.clone(), placement: plan, ring, top: 16.0 * INCH, cut: true });
    }
    found
}

fn thickness(bound: &Bound) -> f64 {
    if bound.width.mm() > 0.0 { bound.width.mm().min(8.0 * INCH) } else { 6.0 * INCH }
}

/// The wall behind a leg: to where it meets those round its corners, and on past free ends.
fn wall_behind(solved: &Solved, index: usize) -> Ring {
    let leg = &solved.legs[index];
    let walled = |leg: &Leg| leg.back.kind == BoundKind::Wall;
    let near = at_corners(solved, index, |leg| if walled(leg) { leg.back.at_counter.mm() } else { f64::NAN });
    let far =
        at_corners(
            solved,
            index,
            |leg| {
                if walled(leg) { leg.back.at_counter.mm() + thickness(&leg.back) } else { f64::NAN }
            },
        );
    let free = |bound: &Bound, edge: f64, way: f64| match bound.kind {
        BoundKind::Wall => bound.at_counter.mm() + way * thickness(bound),
        BoundKind::Pier | BoundKind::Post => edge + way * bound.width.mm().max(6.0 * INCH),
        BoundKind::Leg => edge,
        BoundKind::Open => edge + way * ON,
    };
    let met = |corner: Option<f64>, bound: &Bound, edge: f64, way: f64| {
        corner.filter(|u| u.is_finite()).unwrap_or_else(|| free(bound, edge, way))
    };
    let (l, r) = (leg.datums.counter_left.mm().min(0.0), leg.datums.counter_right.mm());
    let (v0, v1) = (leg.back.at_counter.mm(), leg.back.at_counter.mm() + thickness(&leg.back));
    let (a, b) = (met(near[0], &leg.left, l, -1.0), met(near[1], &leg.right, r, 1.0));
    let (d, c) = (met(far[0], &leg.left, l, -1.0), met(far[1], &leg.right, r, 1.0));
    vec![[a, v0], [b, v0], [c, v1], [d, v1]]
}

/// What stands at an end.
fn beside(leg: &Leg, bound: &Bound, right: bool) -> Option<Ring> {
    let way = if right { 1.0 } else { -1.0 };
    let at = bound.at_counter.mm();
    let back = if leg.back.kind == BoundKind::Wall { leg.back.at_counter } else { leg.datums.finished_back }.mm();
    let (wide, v0, v1) = match bound.kind {
        BoundKind::Open | BoundKind::Leg => return None,
        BoundKind::Wall => (thickness(bound), -6.0 * INCH, back),
        BoundKind::Pier => (if bound.width.mm() > 0.0 { bound.width.mm() } else { 16.0 * INCH }, -INCH, back),
        BoundKind::Post => {
            let side = if bound.width.mm() > 0.0 { bound.width.mm() } else { 4.0 * INCH };
            (side, back / 2.0 - side / 2.0, back / 2.0 + side / 2.0)
        }
    };
    Some(Rect::new(at, v0, at + way * wide, v1).patch().rings.swap_remove(0))
}

/// Whether something stands on the floor that is shown.
fn stands_on(ring: &Ring, floor: &Patch) -> bool {
    ring.iter().all(|spot| floor.holds(*spot))
}

/// The floor that is shown round the legs, in the (u, v) of the first one.
fn extent(solved: &Solved) -> Patch {
    let Some(first) = solved.legs.first() else { return Patch::default() };
    let parts: Vec<Patch> = solved
        .legs
        .iter()
        .enumerate()
        .map(|(index, leg)| {
            let d = &leg.datums;
            let mut area =
                Rect::new(d.counter_left.mm(), d.counter_front.mm(), d.counter_right.mm(), d.counter_back.mm());
            area.y1 = area.y1.max(d.finished_back.mm());
            if leg.back.kind == BoundKind::Wall {
                let wall = Patch::of(wall_behind(solved, index)).bounds();
                area = Rect::new(area.x0.min(wall.x0), area.y0, area.x1.max(wall.x1), wall.y1);
            }
            for (bound, right) in [(&leg.left, false), (&leg.right, true)] {
                if let Some(ring) = beside(leg, bound, right) {
                    let b = Patch::of(ring).bounds();
                    area = Rect::new(area.x0.min(b.x0), area.y0.min(b.y0), area.x1.max(b.x1), area.y1.max(b.y1));
                }
            }
            // Round an outside corner the floor before both legs has a corner of its own.
            for joint in &solved.joints {
                let round = matches!(joint.kind, JointKind::Corner(corner) if corner.turn < 0.0);
                if round && joint.left == index {
                    area.x1 = area.x1.max(d.finished_right.mm() + BEFORE - ROUND);
                } else if round && joint.right == index {
                    area.x0 = area.x0.min(ROUND - BEFORE);
                }
            }
            let area = Rect { y0: area.y0.min(-BEFORE + ROUND), ..area }.inset(-ROUND);
            area.patch().mapped(|[u, v]| {
                let at = first.placement.to_leg(leg.placement.to_plan(LegPoint::new(u, v)));
                [at.x, at.y]
            })
        })
        .collect();
    let whole = Patch::union(&parts);
    Patch { rings: whole.rings.into_iter().map(squared).collect() }
}

/// A ring without the short steps that legs of nearly the same depth leave.
fn squared(mut ring: Ring) -> Ring {
    ring.dedup_by(|a, b| (a[0] - b[0]).hypot(a[1] - b[1]) < 0.5);
    ring
}

/// How far the plane that is drawn lies under the floor's own: where the floor bends between measured spots, or steps,
/// nothing that stands on it may sink into the drawn one.
fn lowered(solved: &Solved, first: &Leg) -> f64 {
    const GRID: usize = 24;
    let under = solved.legs.iter().flat_map(|leg| {
        let (long, deep) = (leg.datums.finished_right.mm(), leg.datums.finished_back.mm());
        let share = |k: usize| k as f64 / GRID as f64;
        let spots = (0..=GRID).flat_map(move |i| (0..=GRID).map(move |j| (long * share(i), deep * share(j))));
        spots.map(move |(u, v)| {
            let at = first.placement.to_leg(leg.placement.to_plan(LegPoint::new(u, v)));
            first.floor.plane(at.x, at.y) - leg.floor.height(u, v)
        })
    });
    under.fold(0.0, f64::max)
}

/// Adds the floor round all that stands on it, as it falls, with its edge: one plane.
pub fn floor(model: &mut Model<'_>) {
    let Some(first) = model.solved.legs.first() else { return };
    let (u, v) = super::model::ways(first.placement);
    let (along, deep) = ([u[0], u[1], first.floor.per_u], [v[0], v[1], first.floor.per_v]);
    let (across, normal) = (unit(along), unit(cross(along, deep)));
    let low = lowered(model.solved, first);
    let at = super::model::place(first.placement, 0.0, 0.0, first.floor.at_origin - low);
    let pose = Pose { at, across, up: cross(normal, across) };
    let place = |[u, v]: Spot| super::model::place(first.placement, u, v, first.floor.plane(u, v) - low);
    let extent = extent(model.solved);
    model.begin(None);
    for ring in &extent.rings {
        for (k, spot) in ring.iter().enumerate() {
            let (a, b) = (place(*spot), place(ring[(k + 1) % ring.len()]));
            let across = unit(minus([b[0], b[1], 0.0], [a[0], a[1], 0.0]));
            let (length, rise) = (dot(minus(b, a), across), b[2] - a[2]);
            let pose = Pose { at: a, across, up: [0.0, 0.0, 1.0] };
            let patch = Patch::of(vec![[0.0, -SLAB], [length, rise - SLAB], [length, rise], [0.0, 0.0]]);
            model.face("ground".to_owned(), pose, patch, Skin::Ground, 0.35);
        }
    }
    let patch = extent.mapped(|spot| {
        let from = minus(place(spot), pose.at);
        [dot(from, pose.across), dot(from, pose.up)]
    });
    model.face("floor".to_owned(), pose, patch, Skin::Paving, 0.35);
}
