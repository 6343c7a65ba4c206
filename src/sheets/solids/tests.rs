//! What the drawing shows, against rays cast through boxes by a test of their own.

use super::facet::{Facet, Skin};
use super::hidden::{seen, stretches, turned};
use super::projection::{Projection, System};
use super::space::{Place, Pose, dot, minus, plus};
use crate::drawing::Colour;
use crate::sheets::client::chance::Chance;
use crate::sheets::client::patch::{Patch, Rect, Spot, inside_shares};

/// A box that stands turned about its upright axis.
#[derive(Clone, Copy, Debug)]
struct Block {
    middle: Place,
    half: Place,
    angle: f64,
}

/// Its faces: the axis and the side of it.
const FACES: [(usize, f64); 6] = [(0, 1.0), (0, -1.0), (1, 1.0), (1, -1.0), (2, 1.0), (2, -1.0)];

impl Block {
    fn axes(&self) -> [Place; 3] {
        let (sin, cos) = self.angle.sin_cos();
        [[cos, sin, 0.0], [-sin, cos, 0.0], [0.0, 0.0, 1.0]]
    }

    fn random(chance: &mut Chance, spread: f64) -> Block {
        let between = |chance: &mut Chance, by: f64| chance.between(-by, by);
        Block {
            middle: [between(chance, spread), between(chance, spread), between(chance, spread * 0.5)],
            half: [chance.between(40.0, 500.0), chance.between(40.0, 500.0), chance.between(40.0, 400.0)],
            angle: chance.between(0.0, 3.0),
        }
    }

    fn facets(&self, solid: usize) -> Vec<Facet> {
        let axes = self.axes();
        FACES
            .iter()
            .enumerate()
            .map(|(k, &(axis, side))| {
                let (i, j) = ((axis + 1) % 3, (axis + 2) % 3);
                // Right-handed towards the outside.
                let (i, j) = if side > 0.0 { (i, j) } else { (j, i) };
                let at = plus(self.middle, axes[axis], side * self.half[axis]);
                let (w, h) = (self.half[i], self.half[j]);
                Facet {
                    name: format!("{solid} {k}"),
                    solid,
                    leg: None,
                    pose: Pose { at, across: axes[i], up: axes[j] },
                    patch: Rect::new(-w, -h, w, h).patch(),
                    skin: Skin::Flat(Colour::WHITE),
                    lines: super::model::outlines(&Rect::new(-w, -h, w, h).patch()),
                    bends: Vec::new(),
                    pen: 0.5,
                }
            })
            .collect()
    }

    /// Where a ray enters it: how far along and through which face.
    fn entered(&self, from: Place, way: Place) -> Option<(f64, usize)> {
        let axes = self.axes();
        let (mut near, mut far, mut face) = (f64::NEG_INFINITY, f64::INFINITY, 0);
        for (axis, &own) in axes.iter().enumerate() {
            let (o, d) = (dot(minus(from, self.middle), own), dot(way, own));
            if d.abs() < 1e-12 {
                if o.abs() > self.half[axis] {
                    return None;
                }
                continue;
            }
            let (a, b) = ((-self.half[axis] - o) / d, (self.half[axis] - o) / d);
            let (enters, leaves) = (a.min(b), a.max(b));
            if enters > near {
                near = enters;
                // A ray that runs down the axis enters through its upper side.
                face = axis * 2 + usize::from(d > 0.0);
            }
            far = far.min(leaves);
        }
        (near < far).then_some((near, face))
    }
}

fn views() -> Vec<Projection> {
    let mut views = Vec::new();
    for k in 0..4 {
        let along = 0.3 + f64::from(k) * std::f64::consts::FRAC_PI_2;
        views.push(Projection::axonometric(System::Isometric, along, false));
        views.push(Projection::axonometric(System::Dimetric, along, k % 2 == 0));
    }
    views
}

/// How near a spot lies to an edge of any patch.
fn nearest_edge(patches: &[Patch], [x, y]: Spot) -> f64 {
    let mut least = f64::INFINITY;
    for ring in patches.iter().flat_map(|patch| &patch.rings) {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
            let t = (((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy).max(1e-9)).clamp(0.0, 1.0);
            least = least.min((x - a[0] - dx * t).hypot(y - a[1] - dy * t));
        }
    }
    least
}

#[test]
fn the_face_that_covers_a_spot_is_the_first_that_its_ray_meets() {
    let mut checked = 0;
    for (seed, view) in views().into_iter().enumerate() {
        for spread in [300.0, 900.0] {
            let mut chance = Chance::named(&format!("blocks {seed} {spread}"));
            // At a spread of 300 they pass through each other.
            let blocks: Vec<Block> = (0..7).map(|_| Block::random(&mut chance, spread)).collect();
            let facets: Vec<Facet> = blocks.iter().enumerate().flat_map(|(k, block)| block.facets(k)).collect();
            let shown = turned(&facets, &view);
            let seen = seen(&shown, &view);
            for _ in 0..500 {
                let spot = [chance.between(-1000.0, 1000.0), chance.between(-1000.0, 1000.0)];
                if nearest_edge(&seen, spot) < 1.5 {
                    continue;
                }
                let from = plus(view.some_place(spot), view.towards, 1e4);
                let way = view.towards.map(|c| -c);
                let hits = blocks.iter().enumerate().filter_map(|(k, block)| Some((k, block.entered(from, way)?)));
                let first = hits.min_by(|a, b| a.1.0.total_cmp(&b.1.0)).map(|(k, (_, face))| format!("{k} {face}"));
                let covering: Vec<&str> = shown
                    .iter()
                    .zip(&seen)
                    .filter(|(_, patch)| patch.holds(spot))
                    .map(|(one, _)| one.facet.name.as_str())
                    .collect();
                assert_eq!(covering, first.iter().map(String::as_str).collect::<Vec<_>>(), "view {seed} at {spot:?}");
                checked += usize::from(first.is_some());
            }
        }
    }
    assert!(checked > 2000, "only {checked} spots met a block");
}

#[test]
fn an_edge_is_seen_where_no_ray_meets_a_block_before_it() {
    let mut checked = (0, 0);
    for (seed, view) in views().into_iter().enumerate() {
        let mut chance = Chance::named(&format!("edges {seed}"));
        let blocks: Vec<Block> = (0..6).map(|_| Block::random(&mut chance, 700.0)).collect();
        let facets: Vec<Facet> = blocks.iter().enumerate().flat_map(|(k, block)| block.facets(k)).collect();
        let shown = turned(&facets, &view);
        for one in &shown {
            for (a, b, _) in one.facet.edges() {
                let drawn = stretches((a, b), &shown, &view);
                for k in 1..8 {
                    let t = f64::from(k) / 8.0 + 0.013;
                    let place = plus(a, minus(b, a), t);
                    let spot = view.spot(place);
                    // Near a change from seen to hidden nothing is asked.
                    let ends = drawn.iter().flatten().map(|end| (end[0] - spot[0]).hypot(end[1] - spot[1]));
                    if ends.fold(f64::INFINITY, f64::min) < 3.0 {
                        continue;
                    }
                    let way = view.towards.map(|c| -c);
                    let from = plus(place, view.towards, 1e4);
                    let before = |by: f64| {
                        blocks.iter().any(|block| block.entered(from, way).is_some_and(|(near, _)| near < 1e4 - by))
                    };
                    // What lies this close before it may be its own block.
                    if before(0.01) != before(3.0) {
                        continue;
                    }
                    let near = |[p, q]: &[Spot; 2]| {
                        let line = Patch::of(vec![
                            [spot[0] - 0.05, spot[1] - 0.05],
                            [spot[0] + 0.05, spot[1] - 0.05],
                            [spot[0] + 0.05, spot[1] + 0.05],
                            [spot[0] - 0.05, spot[1] + 0.05],
                        ]);
                        !inside_shares(&line, *p, *q).is_empty()
                    };
                    let is_drawn = drawn.iter().any(near);
                    assert_eq!(is_drawn, !before(3.0), "view {seed}, {} at {t}", one.facet.name);
                    if is_drawn { checked.0 += 1 } else { checked.1 += 1 }
                }
            }
        }
    }
    assert!(checked.0 > 500 && checked.1 > 100, "{checked:?}");
}
