//! The axonometric sheet against rays: what covers a spot of the picture has to be what a ray through it meets first, by
//! boxes and counters taken from the solved run here, with the axes that the sheet says it was drawn with.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod program;
mod support;

use faceline::drawing::{Group, Item, Page};
use faceline::geometry::{LegPoint, Outline, PlanPoint};
use faceline::parameters::given::*;
use faceline::solve::{Face as Side, Leg as Solid, Solved, solve};
use faceline::{rules, sheets};
use std::f64::consts::PI;
use std::path::Path;
use support::{fitting, fixed, inches, notch, opening, worked_example};

type Spot = [f64; 2];
type Place = [f64; 3];

fn drawn(solved: &Solved) -> Page {
    let findings = rules::check(solved);
    let pages = sheets::draw(solved, &findings, |kind| kind == sheets::Kind::Axonometric);
    pages.unwrap_or_else(|unplaced| panic!("{unplaced:#?}")).swap_remove(0)
}

/// How the sheet says that it was drawn.
struct View {
    origin: Spot,
    axes: [Spot; 3],
    towards: Place,
}

fn group<'p>(group: &'p Group, class: &str) -> Option<&'p Group> {
    if group.class == class {
        return Some(group);
    }
    group.items.iter().find_map(|item| if let Item::Group(inner) = item { self::group(inner, class) } else { None })
}

impl View {
    fn of(picture: &Group) -> View {
        let read = |name: &str| -> Spot {
            let (_, value) = picture.facts.iter().find(|(fact, _)| *fact == name).unwrap();
            let mut parts = value.split(',').map(|part| part.parse().unwrap());
            [parts.next().unwrap(), parts.next().unwrap()]
        };
        let axes = [read("data-axis-x"), read("data-axis-y"), read("data-axis-z")];
        // The line of sight is what both rows send to nothing.
        let row = |c: usize| [axes[0][c], axes[1][c], axes[2][c]];
        let (x, y) = (row(0), row(1));
        let n = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
        let length = (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]).sqrt();
        let towards = n.map(|c| c / length * n[2].signum());
        View { origin: read("data-origin"), axes, towards }
    }

    fn spot(&self, p: Place) -> Spot {
        let at = |c: usize| self.origin[c] + (0..3).map(|k| self.axes[k][c] * p[k]).sum::<f64>();
        [at(0), at(1)]
    }

    /// The place at z = 0 that falls on a spot.
    fn level(&self, spot: Spot) -> Place {
        let (a, b) = (self.axes[0], self.axes[1]);
        let (dx, dy) = (spot[0] - self.origin[0], spot[1] - self.origin[1]);
        let d = a[0] * b[1] - a[1] * b[0];
        [(dx * b[1] - dy * b[0]) / d, (dy * a[0] - dx * a[1]) / d, 0.0]
    }
}

/// Each face that the picture shows: its name and the rings that it fills.
fn faces(picture: &Group) -> Vec<(String, Vec<Vec<Spot>>)> {
    let mut found = Vec::new();
    for item in &picture.items {
        match item {
            Item::Group(inner) => found.extend(faces(inner)),
            Item::Path(path) => {
                if let Some((_, name)) = path.facts.iter().find(|(fact, _)| *fact == "data-face") {
                    let rings = path.shape.flattened(0.01);
                    let rings = rings.into_iter().map(|ring| ring.iter().map(|p| [p.x, p.y]).collect());
                    found.push((name.clone(), rings.collect()));
                }
            }
            Item::Text(_) => {}
        }
    }
    found
}

fn holds(rings: &[Vec<Spot>], [x, y]: Spot) -> bool {
    let mut inside = false;
    for ring in rings {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            if (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                inside = !inside;
            }
        }
    }
    inside
}

/// A ray in a leg's (u, v, z): where it starts and its way, which runs down.
#[derive(Clone, Copy)]
struct Ray {
    from: Place,
    way: Place,
}

impl Ray {
    fn of(leg: &Solid, from: Place, way: Place) -> Ray {
        let here = leg.placement.to_leg(PlanPoint::new(from[0], from[1]));
        let ahead = leg.placement.to_leg(PlanPoint::new(from[0] + way[0], from[1] + way[1]));
        Ray { from: [here.x, here.y, from[2]], way: [ahead.x - here.x, ahead.y - here.y, way[2]] }
    }

    fn at(&self, t: f64) -> Place {
        [0, 1, 2].map(|k| self.from[k] + self.way[k] * t)
    }

    /// Where it crosses a plane, coming from the side that the plane faces (`side` of its axis).
    fn crosses(&self, axis: usize, at: f64, side: f64) -> Option<f64> {
        (self.way[axis] * side < -1e-9).then(|| (at - self.from[axis]) / self.way[axis])
    }
}

/// The first face of legs and counters that a ray meets, and how far along.
fn first(solved: &Solved, from: Place, way: Place) -> Option<(f64, String)> {
    let mut hits: Vec<(f64, String)> = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let ray = Ray::of(leg, from, way);
        let d = &leg.datums;
        let (right, back, top) = (d.finished_right.mm(), d.finished_back.mm(), d.substrate_top.mm());
        // The back's ends at corners: where the back lines of the two legs meet.
        let (b0, b1) = backs(solved, index);
        let mut face = |axis: usize, at: f64, side: f64, word: &str, range: (f64, f64)| {
            let Some(t) = ray.crosses(axis, at, side) else { return };
            let p = ray.at(t);
            let along = p[1 - axis];
            if along > range.0 && along < range.1 && p[2] > leg.floor.height(p[0], p[1]) && p[2] < top {
                hits.push((t, format!("leg {} {word}", index + 1)));
            }
        };
        face(1, 0.0, -1.0, "front", (0.0, right));
        face(1, back, 1.0, "back", (b0, b1));
        if leg.left.kind != BoundKind::Leg {
            face(0, 0.0, -1.0, "left end", (0.0, back));
        }
        if leg.right.kind != BoundKind::Leg {
            face(0, right, 1.0, "right end", (0.0, back));
        }
    }
    for (leg, region, holes) in counters(solved) {
        let of = &solved.legs[leg];
        let ray = Ray::of(of, from, way);
        let (low, high) = (of.datums.substrate_top.mm(), of.datums.counter_top.mm());
        let name = format!("leg {} counter", leg + 1);
        let t = ray.crosses(2, high, 1.0).unwrap();
        let p = ray.at(t);
        let inside = |outline: &Outline| outline.contains(LegPoint::new(p[0], p[1]));
        if inside(region) && !holes.iter().any(inside) {
            hits.push((t, name.clone()));
        }
        // Its edges, as flat pieces finer than the drawing's; those of holes run the other way round.
        let holes = holes.iter().map(|hole| hole.flattened(0.05).into_iter().rev().collect());
        for ring in std::iter::once(region.flattened(0.05)).chain(holes) {
            hits.extend(sides(&ray, &ring, (low, high)).map(|t| (t, format!("{name} side"))));
        }
    }
    hits.into_iter().min_by(|a, b| a.0.total_cmp(&b.0))
}

/// Where a ray meets the upright sides over a ring that has its material on the left.
fn sides(ray: &Ray, ring: &[(f64, f64)], (low, high): (f64, f64)) -> impl Iterator<Item = f64> {
    (0..ring.len()).filter_map(move |k| {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        let (ex, ey) = (b.0 - a.0, b.1 - a.1);
        let across = ray.way[0] * ey - ray.way[1] * ex;
        if across >= -1e-9 {
            return None;
        }
        let t = ((a.0 - ray.from[0]) * ey - (a.1 - ray.from[1]) * ex) / across;
        let p = ray.at(t);
        let along = ((p[0] - a.0) * ex + (p[1] - a.1) * ey) / (ex * ex + ey * ey);
        ((0.0..1.0).contains(&along) && p[2] > low && p[2] < high).then_some(t)
    })
}

fn counters(solved: &Solved) -> Vec<(usize, &Outline, &[Outline])> {
    let slabs = solved.slabs.iter().map(|slab| (slab.legs[0], &slab.region.outer, slab.region.holes.as_slice()));
    let own = (0..solved.legs.len()).filter(|leg| !solved.slabs.iter().any(|slab| slab.legs.contains(leg)));
    let own = own.map(|leg| {
        let region = &solved.legs[leg].counter.region;
        (leg, &region.outer, region.holes.as_slice())
    });
    slabs.chain(own).collect()
}

fn backs(solved: &Solved, index: usize) -> (f64, f64) {
    let leg = &solved.legs[index];
    let (mut from, mut to) = (0.0, leg.datums.finished_right.mm());
    for joint in solved.joints.iter().filter(|joint| matches!(joint.kind, JointKind::Corner(_))) {
        let other = if joint.left == index { joint.right } else { joint.left };
        if joint.left != index && joint.right != index {
            continue;
        }
        // Two spots of the other's back line, in this leg.
        let there = &solved.legs[other];
        let spot =
            |u: f64| leg.placement.to_leg(there.placement.to_plan(LegPoint::new(u, there.datums.finished_back.mm())));
        let (p, q) = (spot(0.0), spot(1000.0));
        let u = p.x + (leg.datums.finished_back.mm() - p.y) / (q.y - p.y) * (q.x - p.x);
        if joint.left == index { to = u } else { from = u }
    }
    (from, to)
}

/// How near a spot lies to the outline of any face; what is farther than 0.2 mm may be any farther.
fn nearest(faces: &[(String, Vec<Vec<Spot>>)], [x, y]: Spot) -> f64 {
    let mut least = f64::INFINITY;
    for ring in faces.iter().flat_map(|(_, rings)| rings) {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            let far = |p: f64, q: f64, at: f64| at < p.min(q) - 0.2 || at > p.max(q) + 0.2;
            if far(a[0], b[0], x) || far(a[1], b[1], y) {
                continue;
            }
            let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
            let t = (((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy).max(1e-12)).clamp(0.0, 1.0);
            least = least.min((x - a[0] - dx * t).hypot(y - a[1] - dy * t));
        }
    }
    least
}

/// Checks a run's picture; returns how many spots of legs and counters were compared.
fn check(solved: &Solved, what: &str) -> usize {
    let page = drawn(solved);
    let picture = group(&page.root, "axonometric").unwrap();
    let view = View::of(picture);
    let faces = faces(picture);
    let way = view.towards.map(|c| -c);
    let mut compared = 0;
    let (columns, rows) = (100, 70);
    for k in 0..columns * rows {
        let (column, row) = (f64::from(k % columns), f64::from(k / columns));
        let share = [(column + 0.37) / f64::from(columns), (row + 0.53) / f64::from(rows)];
        let spot = [page.width * share[0], page.height * share[1]];
        let covering: Vec<&str> =
            faces.iter().filter(|(_, rings)| holds(rings, spot)).map(|(name, _)| name.as_str()).collect();
        if nearest(&faces, spot) < 0.12 {
            continue;
        }
        assert!(covering.len() < 2, "{what}: {covering:?} at {spot:?}");
        let level = view.level(spot);
        let from = [0, 1, 2].map(|k| level[k] + view.towards[k] * 2e4);
        let back = view.spot(from);
        assert!((back[0] - spot[0]).hypot(back[1] - spot[1]) < 1e-3, "the sheet's axes don't agree with its origin");
        let hit = first(solved, from, way);
        match (covering.first(), hit) {
            // What is set into a face or stands on a counter hides it; where it may be is told by its leg's box.
            (Some(name), hit) if is_set_in(solved, name) => {
                let near = set_in_box(solved, name, from, way);
                assert!(near.is_some(), "{what}: {name} at {spot:?} is outside its box");
                if let (Some(near), Some((t, face))) = (near, hit) {
                    assert!(near < t + 30.0, "{what}: {name} at {spot:?} lies behind {face}");
                }
            }
            (Some(name), Some((_, face))) => {
                assert_eq!(*name, face, "{what} at {spot:?}");
                compared += 1;
            }
            (Some(name), None) => assert!(!name.starts_with("leg "), "{what}: {name} at {spot:?} meets nothing"),
            (None, hit) => assert!(hit.is_none(), "{what}: {hit:?} at {spot:?} isn't drawn"),
        }
    }
    compared
}

const OWN: [&str; 6] = ["front", "back", "left end", "right end", "counter", "counter side"];

fn is_set_in(solved: &Solved, name: &str) -> bool {
    let legs = 1..=solved.legs.len();
    legs.filter_map(|leg| name.strip_prefix(&format!("leg {leg} "))).any(|rest| !OWN.contains(&rest))
}

/// Where a ray meets the box that the fitting or upstand of a name may take; none when it misses it.
fn set_in_box(solved: &Solved, name: &str, from: Place, way: Place) -> Option<f64> {
    let mut words = name.split(' ').skip(1);
    let leg = &solved.legs[words.next()?.parse::<usize>().ok()? - 1];
    let mark = words.next()?;
    let d = &leg.datums;
    let top = d.counter_top.mm();
    let proud = 70.0;
    let (lo, hi) = if mark == "splash" {
        let back = d.counter_back.mm();
        ([d.counter_left.mm(), back - 60.0, top - 1.0], [d.counter_right.mm(), back + 1.0, top + 500.0])
    } else {
        let fitting = leg.fittings.iter().find(|f| f.mark == mark)?;
        let (a, b) = (fitting.left.mm() - 60.0, fitting.right.mm() + 60.0);
        let (depth, right) = (d.finished_back.mm(), d.finished_right.mm());
        match fitting.face {
            Side::Front | Side::Back => ([a, -proud, -100.0], [b, depth + proud, top + 500.0]),
            Side::Left => ([-proud, a, -100.0], [10.0, b, top]),
            Side::Right => ([right - 10.0, a, -100.0], [right + proud, b, top]),
        }
    };
    let ray = Ray::of(leg, from, way);
    let (mut near, mut far) = (f64::NEG_INFINITY, f64::INFINITY);
    for k in 0..3 {
        if ray.way[k].abs() < 1e-12 {
            if ray.from[k] < lo[k] || ray.from[k] > hi[k] {
                return None;
            }
            continue;
        }
        let (p, q) = ((lo[k] - ray.from[k]) / ray.way[k], (hi[k] - ray.from[k]) / ray.way[k]);
        near = near.max(p.min(q));
        far = far.min(p.max(q));
    }
    (near < far).then_some(near)
}

#[test]
fn what_covers_a_spot_is_what_a_ray_meets_first_in_every_sample() {
    for name in ["terrace", "island", "courtyard", "corner", "bar"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("samples").join(format!("{name}.ron"));
        let compared = check(&program::solved(&path), name);
        assert!(compared > 200, "{name}: only {compared} spots of it were met");
    }
}

/// Numbers that are the same in every run of the test (a linear congruence; any would do).
struct Dice(u64);

impl Dice {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * ((self.0 >> 33) as f64 / (1_u64 << 31) as f64)
    }

    fn sixteenths(&mut self, low: f64, high: f64) -> f64 {
        (self.between(low, high) * 16.0).round() / 16.0
    }
}

/// A run of up to three legs with corners of any kind, or a raised bar behind one, and what is set into it.
fn made_up(seed: u64) -> Given {
    let mut dice = Dice(seed * 7919 + 1);
    let mut given = worked_example();
    given.fittings.clear();
    let first = given.legs[0].clone();
    let count = 1 + (seed % 3) as usize;
    given.legs = (0..count)
        .map(|leg| {
            let name = |module: usize| format!("{}{module}", char::from(b'A' + leg as u8));
            let modules = (0..2).map(|m| fixed(&name(m), dice.sixteenths(44.0, 76.0))).collect();
            Leg { id: format!("leg{}", leg + 1), modules, ..first.clone() }
        })
        .collect();
    given.joints = (1..count)
        .map(|right| {
            let inside = dice.between(0.0, 1.0) < 0.6;
            let turn = (dice.between(45.0, 100.0) * PI / 180.0) * if inside { 1.0 } else { -1.0 };
            let corner = Corner {
                turn,
                through: Through::Left,
                seam: CornerSeam::Mitre,
                radius: inches(0.5),
                inner: CornerShape::Common,
                outer: CornerShape::Common,
            };
            Joint { left: right - 1, right, kind: JointKind::Corner(corner), place: None }
        })
        .collect();
    if count == 1 {
        let bar = Leg { id: "bar".to_owned(), ..first };
        given.legs.push(bar);
        given.legs[1].own.behind = Some(0);
        given.legs[1].own.height = Some(Height::CounterTop(inches(dice.sixteenths(40.0, 46.0))));
        given.legs[1].own.depth = Some(inches(10.0));
    }
    for leg in 0..given.legs.len().min(count) {
        let mut one = fitting(&format!("d{leg}"), Look::Doors, 0, opening(16.0, 8.0, Some(14.0)));
        one.leg = leg;
        given.fittings.push(one);
    }
    if seed.is_multiple_of(2) {
        given.fittings.push(fitting("g", Look::Grill, 1, notch(24.0, 18.0, 9.0)));
    }
    given
}

#[test]
fn what_covers_a_spot_is_what_a_ray_meets_first_in_made_up_runs() {
    let mut solved = 0;
    for seed in 1..=18 {
        // A grill may come too near to a corner; such a run is explained, not drawn.
        if let Ok(run) = solve(&made_up(seed)) {
            assert!(check(&run, &format!("seed {seed}")) > 100, "seed {seed}");
            solved += 1;
        }
    }
    assert!(solved >= 10, "only {solved} runs were drawn");
}

/// All texts of a group.
fn texts(group: &Group, all: &mut Vec<String>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => texts(inner, all),
            Item::Text(text) => all.push(text.content()),
            Item::Path(_) => {}
        }
    }
}

#[test]
fn every_module_and_what_stands_in_a_counter_is_named_in_every_sample() {
    for name in ["terrace", "island", "courtyard", "corner", "bar"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("samples").join(format!("{name}.ron"));
        let solved = program::solved(&path);
        let page = drawn(&solved);
        let mut words = Vec::new();
        texts(group(&page.root, "names").expect("names"), &mut words);
        let has = |wanted: &str, what: &str| {
            assert!(words.iter().any(|word| word == wanted), "{name}: {what} {wanted} is not named: {words:?}");
        };
        for leg in &solved.legs {
            for module in &leg.modules {
                has(&module.id, "module");
                if !module.name.is_empty() {
                    has(&module.name, "module");
                }
            }
            let cut_in = leg.fittings.iter().filter(|f| f.cutout(faceline::solve::Plane::Counter).is_some());
            for fitting in cut_in.filter(|f| f.look != Look::Faucet) {
                has(&fitting.mark, "fitting");
            }
        }
    }
}

/// Surveyed posts and walls near the run lie on the floor as thin lines, and no line of theirs runs over the run.
#[test]
fn what_was_surveyed_lies_on_the_floor() {
    for name in ["corner", "bar"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("samples").join(format!("{name}.ron"));
        let page = drawn(&program::solved(&path));
        let faces = faces(group(&page.root, "axonometric").unwrap());
        let surveyed = group(&page.root, "surveyed").expect("what was surveyed");
        let mut lines = 0;
        for item in &surveyed.items {
            let Item::Path(path) = item else { continue };
            lines += 1;
            for part in path.shape.flattened(0.01) {
                let middle = [(part[0].x + part[1].x) / 2.0, (part[0].y + part[1].y) / 2.0];
                let over = faces.iter().find(|(_, rings)| holds(rings, middle)).map(|(face, _)| face.as_str());
                assert!(over.is_none_or(|face| ["floor", "ground"].contains(&face)), "{name}: a line over {over:?}");
            }
        }
        let mut words = Vec::new();
        texts(surveyed, &mut words);
        assert!(lines >= 4 && words.iter().any(|word| word == "pergola post"), "{name}: {lines} lines, {words:?}");
    }
}
