//! The client elevation: the finished run with its materials drawn as materials, and few dimensions.
//!
//! All of it is flat vector geometry, cut to its region before it is written: no pattern, gradient, clip or mask. Every
//! opening, front and height lies where it was solved; handles, knobs and courses are drawing conventions.

pub(super) mod brush;
pub(super) mod chance;
pub(super) mod clip;
pub(super) mod face;
mod figure;
pub(super) mod fronts;
pub(super) mod grill;
mod joined;
mod layout;
pub(super) mod masonry;
pub(super) mod metal;
mod modules;
pub(super) mod patch;
mod picture;
mod planting;
pub(super) mod scene;
mod seats;
pub(super) mod skim;
pub(super) mod slab;
pub(super) mod surround;
pub(super) mod swatches;
pub(super) mod tile;
mod words;
pub(super) mod worktop;

use super::canvas::Canvas;
use super::frame;
use super::key_plan;
use super::set::{Kind, Set};
use super::title_block::TitleBlock;
use super::view::View;
use crate::drawing::Page;
use crate::findings::Subject;
use crate::geometry::{FrontFace, PaperPoint};
use crate::solve::Face;
use joined::Joined;
pub use joined::faces;
use layout::Layout;
use scene::Scene;

/// Draws its page.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let Kind::Client(index, face) = kind else { return Vec::new() };
    let Some(leg) = set.solved.legs.get(index) else { return Vec::new() };
    let mut canvas = Canvas::new(set.solved.paper.width, set.solved.paper.height);
    frame::draw_thin(&mut canvas);
    let mut scene = Scene::new(set.solved, leg, face);
    let mut joined = (!set.solved.stands_alone(index)).then(|| Joined::new(set.solved, index, face, &mut scene));
    let mut layout = Layout::new(&canvas, &scene);
    let several = set.solved.legs.len() > 1;
    if several {
        layout.reserve(key_plan::size(set.solved, index, &[face]));
    }
    scene.size = (f64::from(layout.scale.0) / 16.0).max(1.0);
    let view: View<FrontFace> = View::open(&mut canvas, "client", layout.scale, layout.origin);
    if let Some(joined) = &mut joined {
        joined.sized(scene.size);
    }
    let title = words::title(&mut canvas, set, &scene, index, &layout);
    picture::draw(&mut canvas, &view, &scene, &layout, title, joined.as_ref());
    layout.row.draw(&mut canvas, &view, layout.modules, set.solved.show);
    words::overall(&mut canvas, &view, &scene, &layout);
    words::height(&mut canvas, &view, &scene, &layout);
    words::key(&mut canvas, &view, &layout);
    words::scale_bar(&mut canvas, &view, &scene, &layout);
    words::fall(&mut canvas, &view, &scene, &layout);
    swatches::draw(&mut canvas, &scene, layout.band);
    if several {
        let taken = [layout.taken(&scene), layout.band];
        key_plan::draw_where_free(&mut canvas, set.solved, index, &[face], &taken);
    }
    findings(&mut canvas, set, kind, &view, &scene, index);
    let seen = if face == Face::Back { "Client elevation, back" } else { "Client elevation" };
    let block = set.title_block(kind, 0);
    let status = if set.stops(kind) { block.status.clone() } else { "For your approval".to_owned() };
    let block = TitleBlock {
        title: seen.to_owned(),
        kind: "Elevation, finished".to_owned(),
        scale: layout.scale.words(),
        status,
        ..block
    };
    vec![set.finish(canvas, kind, 0, &block)]
}

/// Marks of findings at the things they are about; over a hood, which has no calm place on it.
fn findings(canvas: &mut Canvas, set: &Set<'_>, kind: Kind, view: &View<FrontFace>, scene: &Scene<'_>, leg: usize) {
    let at = canvas.layer(Canvas::ROOT, "findings");
    let place = |x: f64, y: f64| PaperPoint::new(view.x_mm(x), view.y_mm(y));
    for front in &scene.fronts {
        let r = front.outside;
        let near = if front.hung {
            let over = Scene::hood_height(front.fitting.look, front.fitting.width().mm());
            place(r.middle(), scene.levels.1 + over).moved(0.0, -5.0)
        } else {
            place(r.middle(), (r.y0 + r.y1) / 2.0)
        };
        set.mark(canvas, at, kind, &Subject::Fitting(leg, front.index), near);
    }
    for (index, module) in scene.leg.modules.iter().enumerate() {
        let near = place(scene.x(module.centre().mm()), scene.levels.0 / 2.0);
        set.mark(canvas, at, kind, &Subject::Module(leg, index), near);
    }
    set.mark(canvas, at, kind, &Subject::Counter(leg), place(scene.counter.0, scene.levels.1).moved(0.0, -5.0));
}
