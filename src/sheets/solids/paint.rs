//! Paints what is seen of each face with the textures of the client elevation, then the edges on top.

use std::collections::BTreeMap;

use super::counters;
use super::facet::{Facet, Skin};
use super::hidden::{self, Shown};
use super::model::Model;
use super::projection::Projection;
use super::space::{Place, dot};
use crate::drawing::Colour;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::client::brush::{Brush, DARK, MID, Map, SHADE, SOFT};
use crate::sheets::client::chance::Chance;
use crate::sheets::client::clip::Clip;
use crate::sheets::client::patch::{Patch, Rect, Ring, Spot};
use crate::sheets::client::scene::{INCH, Scene};
use crate::sheets::client::surround::PAVING;
use crate::sheets::client::{face, fronts, grill, metal, skim, slab, worktop};

/// A wall cut through.
const CUT: Colour = Colour::from_hex(0xc9c5be);
/// The edge of the paving.
const GROUND: Colour = Colour::from_hex(0xd6d3cd);

/// Where a picture lies on the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Picture {
    /// Its layer.
    pub layer: Layer,
    /// Where the projection's (0, 0) falls.
    pub origin: PaperPoint,
    /// Paper millimetres for a millimetre.
    pub factor: f64,
    /// Whether faces are shaded by how they are turned and throw shadows on each other, or, in an elevation, only hoods
    /// throw them, and fronts of this leg are facts.
    pub square: Option<usize>,
    /// In an elevation, whether legs come forward at its left and right: the corner there is shaded.
    pub corners: [bool; 2],
}

impl Picture {
    fn map(&self, facet: &Facet, view: &Projection) -> Map {
        let (at, x, y) = (view.spot(facet.pose.at), view.step(facet.pose.across), view.step(facet.pose.up));
        let f = self.factor;
        Map { origin: self.origin.moved(at[0] * f, -at[1] * f), x: (x[0] * f, -x[1] * f), y: (y[0] * f, -y[1] * f) }
    }
}

/// Paints a model.
pub fn paint(canvas: &mut Canvas, model: &Model<'_>, view: &Projection, picture: &Picture) {
    let shown = hidden::turned(&model.facets, view);
    let seen = hidden::seen(&shown, view);
    let light = view.light();
    for (one, patch) in shown.iter().zip(&seen) {
        if patch.is_empty() {
            continue;
        }
        let facet = one.facet;
        let own = own_frame(facet, patch, view);
        let layer = canvas.layer(picture.layer, class(&facet.skin));
        let map = picture.map(facet, view);
        let mut brush = Brush::mapped(canvas, layer, map, picture.factor, None);
        brush.fill_with(&own, ground(model, facet, light), vec![("data-face", facet.name.clone())]);
        let clip = Some(Clip::new(own.clone()));
        let mut brush = Brush::mapped(brush.canvas, layer, map, picture.factor, clip);
        if picture.square.is_none() || picture.square != facet.leg {
            brush.mute();
        }
        texture(&mut brush, model, facet);
        if picture.square.is_none() {
            let shade = shade(facet, light);
            if shade > 0.004 {
                brush.glaze([&own], SHADE, shade);
            }
        }
        sun(&mut brush, model, facet, light, picture.square.is_some());
        if let (Skin::Clad(_), true) = (&facet.skin, picture.square.is_some() && picture.square == facet.leg) {
            corner_shade(&mut brush, own.bounds(), picture.corners);
        }
    }
    if picture.square.is_none() {
        seams(canvas, model, &shown, view, picture);
    }
    edges(canvas, &shown, view, picture);
}

/// A patch of the picture in a face's own frame.
fn own_frame(facet: &Facet, patch: &Patch, view: &Projection) -> Patch {
    let (at, x, y) = (view.spot(facet.pose.at), view.step(facet.pose.across), view.step(facet.pose.up));
    let determinant = x[0] * y[1] - x[1] * y[0];
    patch.mapped(|[px, py]| {
        let (dx, dy) = (px - at[0], py - at[1]);
        [(dx * y[1] - dy * y[0]) / determinant, (dy * x[0] - dx * x[1]) / determinant]
    })
}

const fn class(skin: &Skin) -> &'static str {
    match skin {
        Skin::Clad(_) => "face",
        Skin::Front(..) | Skin::Fascia(..) | Skin::Hood(..) | Skin::Lid(..) | Skin::Tap(..) | Skin::Metal => "fronts",
        Skin::Edge(_) | Skin::Top => "counter",
        Skin::Upstand(_) => "splash",
        Skin::Wall | Skin::Cut => "wall",
        Skin::Paving | Skin::Ground => "ground",
        Skin::Flat(_) => "on-the-counter",
    }
}

/// How much of the light a face takes: 1 square on, negative when it is turned away.
fn lit(facet: &Facet, light: Place) -> f64 {
    -dot(facet.pose.normal(), light)
}

/// Opacity of the shade on a face.
fn shade(facet: &Facet, light: Place) -> f64 {
    let darker = match facet.skin {
        Skin::Cut => return 0.0,
        Skin::Wall | Skin::Ground | Skin::Paving => 0.6,
        _ => 1.0,
    };
    (0.085 * (0.72 - lit(facet, light))).max(0.0) * darker
}

/// The first tone of a face.
fn ground(model: &Model<'_>, facet: &Facet, light: Place) -> Colour {
    let material = model.solved.counter.material;
    match &facet.skin {
        Skin::Clad(_) => face::BOARD,
        Skin::Front(..) | Skin::Fascia(..) | Skin::Hood(..) | Skin::Lid(..) | Skin::Tap(..) => {
            Colour::from_hex(0xdde0e1)
        }
        Skin::Metal => {
            let share = (0.5 + 0.5 * lit(facet, light)).clamp(0.0, 1.0);
            Colour::from_hex(0xb9bec0).mixed(Colour::from_hex(0xf3f4f4), share)
        }
        Skin::Edge(_) => slab::ground(material).0,
        Skin::Top => slab::ground(material).0.mixed(Colour::WHITE, 0.35),
        Skin::Upstand(_) => slab::ground(material).1,
        Skin::Wall => skim::WALL.ground,
        Skin::Cut => CUT,
        Skin::Paving => PAVING.mixed(Colour::WHITE, 0.35),
        Skin::Ground => GROUND,
        Skin::Flat(colour) => *colour,
    }
}

fn texture(brush: &mut Brush<'_>, model: &Model<'_>, facet: &Facet) {
    let bounds = facet.patch.bounds();
    let material = model.solved.counter.material;
    match facet.skin {
        Skin::Clad(scene) => {
            let scene = &model.scenes[scene];
            face::finish(brush, scene);
            face::base(brush, scene);
            scene.fronts.iter().filter(|front| !front.hung).for_each(|front| fronts::hole(brush, scene, front));
        }
        Skin::Front(scene, front) => {
            let scene = &model.scenes[scene];
            fronts::body(brush, scene, &scene.fronts[front]);
        }
        Skin::Fascia(scene, front) => grill::fascia(brush, &model.scenes[scene].fronts[front]),
        Skin::Hood(scene, front, behind) => {
            let scene = &model.scenes[scene];
            let front = &scene.fronts[front];
            let o = front.outside;
            let ends = Rect { x0: o.x0 + 0.5 * INCH, x1: o.x1 - 0.5 * INCH, ..o };
            grill::hood(brush, scene, front.fitting, ends, behind);
        }
        Skin::Lid(scene, fitting) => let_in(brush, &model.scenes[scene], fitting),
        Skin::Tap(turn) => worktop::tap(brush, [0.0, 0.0], turn),
        Skin::Edge(high) => slab::edge_face(brush, &facet.name, Rect { y1: high, ..bounds }, material),
        Skin::Top => slab::texture(brush, &facet.name, bounds.inset(0.3 * INCH), material, 0.6),
        Skin::Upstand(high) => {
            slab::texture(brush, &facet.name, bounds.inset(0.3 * INCH), material, 0.3);
            brush.glaze_rect(Rect { y0: high - 0.45 * INCH.min(high), ..bounds }, Colour::WHITE, 0.4);
        }
        Skin::Wall => skim::texture(brush, &facet.name, bounds.inset(0.6 * INCH), &[], 1.4, skim::WALL),
        Skin::Paving => paving(brush, bounds),
        Skin::Metal if bounds.width().min(bounds.height()) > 6.0 * INCH => {
            let mut chance = Chance::named(&facet.name);
            metal::grain(brush, &mut chance, &facet.patch, 0.5 * INCH, metal::GRAIN);
        }
        Skin::Metal | Skin::Cut | Skin::Ground | Skin::Flat(_) => {}
    }
}

/// A lid or hood over a well, as its cook sees it.
fn let_in(brush: &mut Brush<'_>, scene: &Scene<'_>, fitting: usize) {
    let fitting = &scene.leg.fittings[fitting];
    let ends = Rect::new(
        (fitting.left - fitting.flange.left).mm(),
        scene.levels.1,
        (fitting.right + fitting.flange.right).mm(),
        scene.levels.1,
    );
    if fitting.look == crate::solve::Look::Grill {
        grill::let_in(brush, scene, fitting, ends);
    } else {
        grill::low_lid(brush, scene, fitting, ends);
    }
}

/// Slabs in a running bond of 24 by 24.
fn paving(brush: &mut Brush<'_>, area: Rect) {
    let pitch = 24.0 * INCH * (brush.paper(5.0) / (24.0 * INCH)).ceil().max(1.0);
    let mut joints: Vec<Ring> = Vec::new();
    let row = |y: f64| (y / pitch).floor() as i64;
    for k in row(area.y0)..=row(area.y1) {
        let y = k as f64 * pitch;
        joints.push(vec![[area.x0, y], [area.x1, y]]);
        let off = if k.rem_euclid(2) == 1 { pitch / 2.0 } else { 0.0 };
        let mut x = ((area.x0 - off) / pitch).floor() * pitch + off;
        while x < area.x1 {
            joints.push(vec![[x, y.max(area.y0)], [x, (y + pitch).min(area.y1)]]);
            x += pitch;
        }
    }
    brush.lines(&joints, 0.18, Colour::from_hex(0xc4c0b9));
}

/// Shadows of other things.
fn sun(brush: &mut Brush<'_>, model: &Model<'_>, facet: &Facet, light: Place, square: bool) {
    let opacity = match facet.skin {
        Skin::Paving => 0.12,
        Skin::Top | Skin::Clad(_) | Skin::Upstand(_) => 0.11,
        Skin::Wall => 0.07,
        _ => return,
    };
    let face = matches!(facet.skin, Skin::Clad(_));
    let shadow = hidden::shadow(facet, &model.facets, light, |other| {
        let solid = !matches!(other.skin, Skin::Paving | Skin::Ground | Skin::Cut | Skin::Flat(_));
        // On its own face a leg has the shadows of the elevations.
        let other_leg = !face || (other.leg.is_some() && other.leg != facet.leg);
        let hood = !square || other.name.contains("hood");
        solid && hood && other.solid != facet.solid && other_leg
    });
    brush.glaze([&shadow], SHADE, opacity);
}

/// The shade beside legs that come forward; light comes from the left, so the corner there is the darker one.
fn corner_shade(brush: &mut Brush<'_>, seen: Rect, corners: [bool; 2]) {
    if corners[0] {
        for (wide, opacity) in [(7.0, 0.05), (3.0, 0.07)] {
            brush.glaze_rect(Rect { x1: seen.x0 + wide * INCH, ..seen }, SHADE, opacity);
        }
    }
    if corners[1] {
        for (wide, opacity) in [(4.0, 0.03), (1.6, 0.04)] {
            brush.glaze_rect(Rect { x0: seen.x1 - wide * INCH, ..seen }, SHADE, opacity);
        }
    }
}

/// Seams on the counters.
fn seams(canvas: &mut Canvas, model: &Model<'_>, shown: &[Shown<'_>], view: &Projection, picture: &Picture) {
    let mut lines: Vec<[Spot; 2]> = Vec::new();
    for (placement, top, [a, b]) in counters::seams(model) {
        let place = |[u, v]: Spot| super::model::place(placement, u, v, top);
        lines.extend(hidden::stretches((place(a), place(b)), shown, view));
    }
    let layer = canvas.layer(picture.layer, "seams");
    let map = flat(picture);
    let mut brush = Brush::mapped(canvas, layer, map, picture.factor, None);
    let lines: Vec<Ring> = lines.iter().map(|line| line.to_vec()).collect();
    brush.lines(&lines, 0.25, SOFT);
}

fn flat(picture: &Picture) -> Map {
    Map { origin: picture.origin, x: (picture.factor, 0.0), y: (0.0, -picture.factor) }
}

/// An edge of faces that are turned to the viewer.
struct Edge {
    from: Place,
    to: Place,
    faces: usize,
    pen: f64,
    behind: bool,
    bend: bool,
}

/// Edges: broad where a thing ends, fine where two of its faces meet.
fn edges(canvas: &mut Canvas, shown: &[Shown<'_>], view: &Projection, picture: &Picture) {
    // By their ends, to a tenth of a millimetre.
    let key = |p: Place| p.map(|c| (c * 10.0).round() as i64);
    let mut found: BTreeMap<([i64; 3], [i64; 3]), Edge> = BTreeMap::new();
    for one in shown {
        // What an elevation cuts through is the run's own.
        let site = matches!(one.facet.skin, Skin::Wall | Skin::Cut | Skin::Paving | Skin::Ground);
        let behind = site && picture.square.is_none();
        for (from, to, bend) in one.facet.edges() {
            let (p, q) = (key(from), key(to));
            let new = Edge { from, to, faces: 0, pen: 0.0, behind, bend: true };
            let edge = found.entry((p.min(q), p.max(q))).or_insert(new);
            edge.faces += 1;
            edge.pen = edge.pen.max(one.facet.pen);
            edge.bend &= bend;
        }
    }
    let mut groups: BTreeMap<(bool, u32), Vec<Ring>> = BTreeMap::new();
    for edge in found.values().filter(|edge| !edge.bend || edge.faces == 1) {
        let width = if edge.faces > 1 { (edge.pen * 0.5).max(0.18) } else { edge.pen };
        let lines = hidden::stretches((edge.from, edge.to), shown, view).into_iter().map(|line| line.to_vec());
        groups.entry((edge.behind, (width * 100.0).round() as u32)).or_default().extend(lines);
    }
    let layer = canvas.layer(picture.layer, "edges");
    let mut brush = Brush::mapped(canvas, layer, flat(picture), picture.factor, None);
    for ((behind, width), lines) in groups.iter().rev() {
        let colour = if *behind { MID } else { DARK };
        brush.edges(lines, f64::from(*width) / 100.0, colour);
    }
}
