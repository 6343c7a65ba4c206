//! Fronts that stand proud of the face, and what is let into the counter.

use super::facet::Skin;
use super::model::{Depth, Model, level, pose_of};
use super::space::{Place, Pose, dot};
use crate::drawing::Colour;
use crate::sheets::client::patch::{Patch, Rect, Spot};
use crate::sheets::client::scene::{INCH, Scene};
use crate::sheets::client::{fronts, grill, worktop};
use crate::solve::{Face, Fitting, FittingKind, Look, Plane};

/// How far a flange with its leaves stands proud: a drawing convention, as are the next two.
const PROUD: f64 = 0.8 * INCH;
/// How far the fascia of what hangs in a notch stands proud.
const FASCIA: f64 = 2.2 * INCH;
/// How far behind the face a hood begins.
const HOOD: f64 = 0.9 * INCH;
/// Inside of a bowl.
const BOWL: Colour = Colour::from_hex(0xc9cdcf);

/// Adds the fittings of a leg. `flat` is the picture's x where the view is level: what looks alike from all sides is
/// turned to it.
pub fn fittings(model: &mut Model<'_>, index: usize, towards: Place, flat: Option<Place>) {
    let leg = &model.solved.legs[index];
    for face in [Face::Front, Face::Back, Face::Left, Face::Right] {
        if leg.on_face(face).next().is_none() {
            continue;
        }
        let scene = model.scene(index, face, None);
        for front in 0..model.scenes[scene].fronts.len() {
            one(model, scene, front, pose_of(model.solved, index, face), index);
        }
    }
    for (at, fitting) in leg.fittings.iter().enumerate() {
        if fitting.kind == FittingKind::Well {
            well(model, index, at, fitting, towards, flat);
        }
    }
}

fn front_name(leg: usize, fitting: &Fitting, part: &str) -> String {
    format!("leg {} {} {part}", leg + 1, fitting.mark)
}

fn one(model: &mut Model<'_>, scene: usize, front: usize, pose: Pose, leg: usize) {
    let of = &model.scenes[scene];
    let this = &of.fronts[front];
    let (fitting, hung) = (this.fitting, this.hung);
    if fitting.look == Look::Hole {
        return;
    }
    let outside = fronts::box_of(of, this);
    let name = front_name(leg, fitting, "front");
    model.begin(Some(leg));
    if !hung {
        let proud = if fitting.look == Look::Vent { PROUD * 0.4 } else { PROUD };
        let (depth, skins) = (Depth { from: 0.0, to: proud }, (Skin::Front(scene, front), |_| Skin::Metal));
        model.pulled(&name, pose, outside.patch(), depth, skins, 0.25);
        return;
    }
    let of = &model.scenes[scene];
    // The body in the notch, whose top closes it.
    let back = fitting.back.map_or(outside.width() * 0.6, |back| match of.face {
        Face::Back => (of.leg.datums.finished_back - back).mm(),
        _ => back.mm(),
    }) + fitting.flange.far.mm();
    let over = match fitting.look {
        Look::Grill => {
            let ends = Rect { x0: outside.x0 + 0.5 * INCH, x1: outside.x1 - 0.5 * INCH, ..outside };
            Some((grill::hood_outline(of, fitting, ends), Skin::Hood(scene, front, false), "hood"))
        }
        Look::SideBurner => Some((lid(of, outside), Skin::Lid(scene, fitting.at.1), "lid")),
        _ => None,
    };
    // The fascia stands on the face; its flange, over the counter, closes the notch.
    let depth = Depth { from: 0.0, to: FASCIA };
    model.pulled(&name, pose, outside.patch(), depth, (Skin::Fascia(scene, front), |_| Skin::Metal), 0.5);
    let plan = Pose {
        at: pose.place([0.0, model.scenes[scene].levels.1]),
        across: pose.across,
        up: pose.normal().map(|c| -c),
    };
    let flange = Rect::new(outside.x0, 0.0, outside.x1, back).patch();
    let depth = Depth { from: 0.0, to: outside.y1 - model.scenes[scene].levels.1 };
    model.pulled(&front_name(leg, fitting, "flange"), plan, flange, depth, (Skin::Metal, |_| Skin::Metal), 0.25);
    if let Some((outline, skin, word)) = over {
        let depth = Depth { from: -back + 0.5 * INCH, to: -HOOD };
        let back = matches!(skin, Skin::Hood(..)).then(|| outline.clone());
        model.pulled(&front_name(leg, fitting, word), pose, outline, depth, (skin, |_| Skin::Metal), 0.5);
        if let Some(outline) = back {
            // Its back, seen from the other side.
            let middle = outside.middle();
            let turned = Pose {
                at: pose.out(depth.from).place([2.0 * middle, 0.0]),
                across: pose.across.map(|c| -c),
                up: pose.up,
            };
            let outline = outline.mapped(|[x, y]| [2.0 * middle - x, y]);
            let skin = Skin::Hood(scene, front, true);
            model.face(front_name(leg, fitting, "hood back"), turned, outline, skin, 0.5);
        }
    }
}

/// The low lid of a side burner over the counter.
fn lid(scene: &Scene<'_>, ends: Rect) -> Patch {
    let top = scene.levels.1;
    Rect::new(ends.x0, top, ends.x1, top + Scene::hood_height(Look::SideBurner, 0.0)).patch()
}

/// What is let into the counter from above.
fn well(model: &mut Model<'_>, leg: usize, at: usize, fitting: &Fitting, towards: Place, flat: Option<Place>) {
    let of = &model.solved.legs[leg];
    let Some(cutout) = fitting.cutout(Plane::Counter) else { return };
    let top = of.datums.counter_top.mm();
    let e = &cutout.extent;
    let (u0, u1) = ((e.x0 - fitting.flange.left).mm(), (e.x1 + fitting.flange.right).mm());
    let (v0, v1) = ((e.y0 - fitting.flange.near).mm(), (e.y1 + fitting.flange.far).mm());
    match fitting.look {
        Look::Faucet => tap(model, leg, fitting, towards, flat),
        Look::Grill | Look::SideBurner => {
            let scene = model.scene(leg, Face::Front, None);
            let shown = &model.scenes[scene];
            let ends = Rect::new(u0, top, u1, top);
            let (outline, skin) = if fitting.look == Look::Grill {
                let ends = Rect { x0: u0 + 0.5 * INCH, x1: u1 - 0.5 * INCH, ..ends };
                (grill::hood_outline(shown, fitting, ends), Skin::Lid(scene, at))
            } else {
                (lid(shown, ends), Skin::Lid(scene, at))
            };
            model.begin(Some(leg));
            let depth = Depth { from: -v1, to: -v0 };
            let pose = pose_of(model.solved, leg, Face::Front);
            model.pulled(&front_name(leg, fitting, "hood"), pose, outline, depth, (skin, |_| Skin::Metal), 0.5);
        }
        _ => {
            // A bowl: walls that look into it, and its floor.
            let deep = fitting.body.map_or(7.0 * INCH, |body| (body.z.1 - body.z.0).mm());
            let deep = if fitting.look == Look::Sink { deep } else { deep.min(2.0 * INCH) };
            let rim: Vec<Spot> = cutout.outline.flattened(0.6).into_iter().map(|(x, y)| [x, y]).collect();
            let hole = Patch::of(rim);
            let low = top - model.solved.counter.thickness.mm();
            let around = hole.bounds().inset(-2.0 * INCH).patch();
            let ring = Patch { rings: vec![around.rings[0].clone(), hole.rings[0].clone()] };
            let pose = level(of.placement);
            model.begin(Some(leg));
            let name = front_name(leg, fitting, "bowl");
            // Only the sides of the hole are wanted of this ring: its outside lies within the counter's slab.
            let before = model.facets.len();
            let depth = Depth { from: low - deep, to: low };
            model.pulled(&name, pose, ring, depth, (Skin::Metal, |_| Skin::Metal), 0.25);
            let inward = model.facets.split_off(before).into_iter().skip(4);
            model.facets.extend(inward.filter(|facet| facet.name.ends_with("side")));
            model.face(name, pose.out(low - deep), hole, Skin::Flat(BOWL), 0.25);
            if fitting.flange.left.mm() > 0.0 {
                let outer = Rect::new(u0, v0, u1, v1).rounded(0.6 * INCH);
                let rim =
                    outer.less(&Patch::of(cutout.outline.flattened(0.6).into_iter().map(|(x, y)| [x, y]).collect()));
                let depth = Depth { from: top, to: top + 0.12 * INCH };
                let name = front_name(leg, fitting, "rim");
                model.pulled(&name, pose, rim, depth, (Skin::Metal, |_| Skin::Metal), 0.25);
            }
        }
    }
}

/// A tap is a round tube and looks alike from all sides: a card that stands upright, over the line to its bowl.
fn tap(model: &mut Model<'_>, leg: usize, fitting: &Fitting, towards: Place, flat: Option<Place>) {
    let of = &model.solved.legs[leg];
    let Some(hole) = fitting.cutout(Plane::Counter) else { return };
    let (u, v) = (hole.extent.centre_x().mm(), hole.extent.centre_y().mm());
    let bowls = of.fittings.iter().filter(|f| f.look == Look::Sink).filter_map(|f| f.cutout(Plane::Counter));
    let away = |e: &crate::solve::Extent| [e.centre_x().mm() - u, e.centre_y().mm() - v];
    let nearest = bowls
        .map(|cutout| away(&cutout.extent))
        .min_by(|a, b| a[0].hypot(a[1]).total_cmp(&b[0].hypot(b[1])))
        .filter(|way| way[0].hypot(way[1]) > 1.0);
    let (along, deep) = super::model::ways(of.placement);
    let bowl = nearest.map(|[du, dv]| super::space::unit(super::space::plus(along.map(|c| c * du), deep, dv)));
    let mut across = match (flat, bowl) {
        // Square on, it is drawn in the plane of the picture.
        (Some(flat), Some(bowl)) if dot(flat, bowl) < -0.5 => flat.map(|c| -c),
        (Some(flat), _) => flat,
        (None, bowl) => bowl.unwrap_or(along),
    };
    let up = [0.0, 0.0, 1.0];
    let top = of.datums.counter_top.mm();
    let at_place = super::model::place(of.placement, u, v, top);
    let mut pose = Pose { at: at_place, across, up };
    let (mut outline, mut turn) = (worktop::tap_outline(), 1.0);
    if dot(pose.normal(), towards) < 0.0 {
        across = across.map(|c| -c);
        pose = Pose { at: at_place, across, up };
        outline = outline.mapped(|[x, y]| [-x, y]);
        turn = -1.0;
    }
    model.begin(Some(leg));
    model.add(front_name(leg, fitting, "tap"), pose, outline, Skin::Tap(turn), Vec::new(), 0.18);
}
