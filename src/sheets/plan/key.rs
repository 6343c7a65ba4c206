//! The plan of all legs where they lie, for the whole; each leg's own plan carries its dimensions.

use super::covered::Covered;
use super::kept::Kept;
use super::looks::Looks;
use super::seen::Seen;
use super::sheet::Drawn;
use super::{cuts, marks, path, run, sheet, supports, walls};
use crate::drawing::lettering::Style;
use crate::geometry::{LegPoint, PaperPoint, Plan};
use crate::sheets::canvas::Canvas;
use crate::sheets::frame;
use crate::sheets::scale::Scale;
use crate::sheets::set::{Kind, Set};
use crate::sheets::title_block;
use crate::sheets::view::View;

/// Draws the view and returns the canvas, the areas left for lists, and the scale in words.
pub fn draw(set: &Set<'_>, kind: Kind) -> Drawn {
    let solved = set.solved;
    let mut canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let block = title_block::corner(&canvas);
    // Lengths stand along the faces of legs that meet.
    let lengths = if (0..solved.legs.len()).all(|leg| solved.stands_alone(leg)) { 0.0 } else { 22.0 };
    let room = (inside.width() - 40.0 - 2.0 * lengths, inside.height() - 80.0 - 2.0 * lengths);
    let top = inside.top + 20.0 + lengths;
    // Drawn thicknesses of walls depend on the scale a little: the extents at the smallest one hold for all.
    let (x0, y0, x1, y1) = extents(set);
    let scale = Scale::fitting((x1 - x0, y1 - y0), room, Scale(10));
    let factor = scale.factor();
    let left = inside.left + (inside.width() - (x1 - x0) * factor) / 2.0;
    let origin = PaperPoint::new(left - x0 * factor, top + y1 * factor);
    title_block::heading(&mut canvas, inside.left, inside.top + 3.5, "Plan of the whole run", &scale.words());
    let view: View<Plan> = View::open(&mut canvas, "plan", scale, origin);
    let bar = canvas.layer(view.layer, "scale-bar");
    crate::sheets::marks::scale_bar(&mut canvas, bar, inside.right - 3.0, inside.top + 4.5, scale, solved.show.system);
    let geometry = canvas.layer(view.layer, "run");
    let seen =
        |index: usize| Seen { leg: &solved.legs[index], index, placement: solved.legs[index].placement, view: &view };
    let on = 6.0 / factor;
    let held = (x0 - on, y0 - on, x1 + on, y1 + on);
    path::survey(&mut canvas, geometry, set, &view, held);
    path::slabs(&mut canvas, geometry, set, &view);
    for index in 0..solved.legs.len() {
        let meets = solved.slabs.iter().any(|slab| slab.legs.contains(&index));
        if meets {
            run::under(&mut canvas, geometry, solved, &seen(index));
        } else {
            // What was surveyed is drawn as it is.
            walls::draw_but(&mut canvas, geometry, &seen(index), path::surveyed(set, &solved.legs[index]));
            run::draw(&mut canvas, geometry, solved, &seen(index));
        }
    }
    path::seams(&mut canvas, geometry, set, &view);
    let notes = canvas.layer(view.layer, "marks");
    let mut kept = Kept::default();
    // A leg by itself has its section marks on its own plan.
    let covered = Covered::of(set, &view);
    let meeting = || (0..solved.legs.len()).filter(|leg| !solved.stands_alone(*leg));
    // A section marks itself on its own line: all else finds its place round that.
    for index in meeting() {
        cuts::draw(&mut canvas, notes, set, &seen(index), (&covered, &mut kept), (&cuts::STEPS, &cuts::STEPS));
    }
    for index in 0..solved.legs.len() {
        marks::rings(&mut canvas, notes, &seen(index), &mut kept);
        marks::services(&mut canvas, notes, &seen(index), &mut kept);
    }
    let dims = canvas.layer(view.layer, "dimensions");
    for index in meeting() {
        path::lengths(&mut canvas, dims, set, &seen(index));
    }
    path::corners(&mut canvas, notes, set, &view);
    for index in (0..solved.legs.len()).filter(|leg| solved.stands_alone(*leg)) {
        name(&mut canvas, notes, set, &seen(index));
    }
    for index in 0..solved.legs.len() {
        marks::findings(&mut canvas, notes, set, kind, &seen(index));
    }
    let mut bottom = (top + (y1 - y0) * factor + 22.0 + lengths).min(inside.bottom);
    let looks = Looks { set, covered: &covered, bottom: (bottom + 10.0).min(inside.bottom) };
    for index in 0..solved.legs.len() {
        bottom = bottom.max(looks.draw(&mut canvas, notes, &seen(index)) + 5.0);
    }
    for index in 0..solved.legs.len() {
        supports::marks(&mut canvas, notes, solved, &seen(index));
    }
    path::survey_names(&mut canvas, notes, set, &view, held);
    let words = scale.words();
    (canvas, sheet::areas(inside, (block.x, block.y), bottom), words)
}

/// The box round all legs and what bounds them, plan millimetres.
fn extents(set: &Set<'_>) -> (f64, f64, f64, f64) {
    let mut all = (f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);
    let mut take = |x: f64, y: f64| all = (all.0.min(x), all.1.min(y), all.2.max(x), all.3.max(y));
    for leg in &set.solved.legs {
        path::reach(leg).iter().for_each(|p| take(p.x, p.y));
    }
    for slab in &set.solved.slabs {
        let home = set.solved.legs[slab.legs.first().copied().unwrap_or(0)].placement;
        for corner in &slab.region.outer.vertices {
            let p = home.to_plan(LegPoint::new(corner.x, corner.y));
            take(p.x, p.y);
        }
    }
    let survey = &set.solved.survey;
    survey.posts.iter().for_each(|post| {
        take(post.at.0 - post.size.0 / 2.0, post.at.1 - post.size.1 / 2.0);
        take(post.at.0 + post.size.0 / 2.0, post.at.1 + post.size.1 / 2.0);
    });
    for door in &survey.doors {
        take(door.hinge.0, door.hinge.1);
        for turn in [door.shut, door.shut + door.opens] {
            take(door.hinge.0 + door.width * turn.cos(), door.hinge.1 + door.width * turn.sin());
        }
    }
    all
}

/// A leg's name and its finished length, in the first white place round its middle.
fn name(canvas: &mut Canvas, at: crate::sheets::canvas::Layer, set: &Set<'_>, seen: &Seen<'_>) {
    let (leg, datums) = (seen.leg, &seen.leg.datums);
    let length = set.solved.show.prose(datums.finished_right);
    let text = format!("leg {}, {}: {length} finished end to finished end", seen.index + 1, leg.id);
    let middle = datums.finished_right.half().mm();
    let places: Vec<PaperPoint> = [6.0, 11.0, 16.0, 21.0, 26.0]
        .iter()
        .map(|off| seen.at_mm(middle, datums.counter_front.mm() - seen.model(*off)))
        .collect();
    let style = Style::body().bold().middle();
    if canvas.text_at_first(at, &places, &text, &style).is_none() {
        let short = format!("leg {}", seen.index + 1);
        canvas.text_at_first(at, &places, &short, &style);
    }
}
