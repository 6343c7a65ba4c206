//! Legs that meet, on the plan of the whole: one counter over them, its seams, the line of each corner with its angle,
//! lengths along each face; and the site as surveyed.

use super::seen::Seen;
use super::walls;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::{LegPoint, PaperPoint, Plan, PlanPoint};
use crate::sheets::aligned::Aligned;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::materials::{self, Material};
use crate::sheets::set::Set;
use crate::sheets::view::View;
use crate::solve::{BoundKind, EdgeKind, Joint, JointKind, Slab};
use crate::units::Length;

/// Thickness that a surveyed wall is drawn with, mm of paper.
const THICK: f64 = 4.0;

/// Where the chain of a leg's modules is tried, mm off its counter: clear of the rings and section marks before it, else
/// between them, else farther out.
const ROWS: [f64; 9] = [15.0, 12.0, 9.0, 19.0, 23.0, 27.0, 31.0, 35.0, 39.0];

/// The counters of legs that meet, each as one outline, with what stands against it.
pub fn slabs(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    for slab in &set.solved.slabs {
        let seen = home(set, view, slab);
        against(canvas, at, set, &seen, slab);
        let paint = Paint::both(Pen::CUT, Fill::tint(Colour::TINT_BEYOND));
        canvas.shape(at, Shape::Steps(seen.region(&slab.region)), paint, "counter", Vec::new());
    }
}

/// The slab's first leg, whose coordinates its outline is in.
fn home<'l>(set: &Set<'l>, view: &'l View<Plan>, slab: &Slab) -> Seen<'l> {
    let index = slab.legs.first().copied().unwrap_or(0);
    let leg = &set.solved.legs[index];
    Seen { leg, index, placement: leg.placement, view }
}

/// Walls against the edges of a counter that end at one.
fn against(canvas: &mut Canvas, at: Layer, set: &Set<'_>, seen: &Seen<'_>, slab: &Slab) {
    for edge in slab.edges.iter().filter(|edge| matches!(edge.kind, EdgeKind::Wall | EdgeKind::Splash)) {
        let joint = edge.joint.unwrap_or(Length::ZERO).mm();
        let (a, b) = ((edge.from.0.mm(), edge.from.1.mm()), (edge.to.0.mm(), edge.to.1.mm()));
        if is_surveyed(set, [a, b].map(|p| seen.placement.to_plan(LegPoint::new(p.0, p.1)))) {
            continue;
        }
        let long = (b.0 - a.0).hypot(b.1 - a.1).max(1e-9);
        // Walked counter-clockwise, the outside lies to the right.
        let out = ((b.1 - a.1) / long, (a.0 - b.0) / long);
        let point = |p: (f64, f64), off: f64| seen.at_mm(p.0 + out.0 * off, p.1 + out.1 * off);
        let far = joint + seen.model(THICK);
        let ring = vec![point(a, joint), point(b, joint), point(b, far), point(a, far)];
        materials::hatch(canvas, at, &[ring], Material::Wall, false);
        canvas.line(at, point(a, joint), point(b, joint), Pen::CUT.square());
    }
}

/// Walls this near to where a leg's bound is written to stand are what was surveyed of it, mm: a hand.
const SAME: f64 = 100.0;

/// Which bounds of a leg were surveyed: left, right, behind.
pub fn surveyed(set: &Set<'_>, leg: &crate::solve::Leg) -> [bool; 3] {
    let d = &leg.datums;
    let plan = |u: Length, v: Length| leg.placement.to_plan(LegPoint::new(u.mm(), v.mm()));
    let end = |at: Length| [plan(at, Length::ZERO), plan(at, d.finished_back)];
    let back = [plan(Length::ZERO, leg.back.at), plan(d.finished_right, leg.back.at)];
    [end(leg.left.at), end(leg.right.at), back].map(|line| is_surveyed(set, line))
}

/// Whether a surveyed wall or post stands along a line of the plan, somewhere.
fn is_surveyed(set: &Set<'_>, [a, b]: [PlanPoint; 2]) -> bool {
    let survey = &set.solved.survey;
    let posts = survey.posts.iter().flat_map(|post| {
        let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
        let corners = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)];
        (0..4).map(move |at| (corners[at], corners[(at + 1) % 4]))
    });
    let walls = survey.walls.iter().flat_map(|wall| wall.points.windows(2).map(|pair| (pair[0], pair[1])));
    let near = |p: PlanPoint, (a, b): ((f64, f64), (f64, f64))| {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let share =
            (((p.x - a.0) * dx + (p.y - a.1) * dy) / (dx * dx + dy * dy).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
        (p.x - a.0 - share * dx).hypot(p.y - a.1 - share * dy) < SAME
    };
    let places = [0.25, 0.5, 0.75].map(|share| a.towards(b, share));
    walls.chain(posts).any(|stretch| places.iter().any(|place| near(*place, stretch)))
}

/// Seams between the pieces.
pub fn seams(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    for slab in &set.solved.slabs {
        let mut drawn: Vec<[PaperPoint; 2]> = Vec::new();
        for (leg, piece, _) in &slab.pieces {
            let leg = &set.solved.legs[*leg];
            let Some(piece) = leg.counter.pieces.get(*piece) else { continue };
            for edge in piece.edges.iter().filter(|edge| edge.kind == EdgeKind::Seam) {
                let point = |p: (Length, Length)| view.point(leg.placement.to_plan(LegPoint::new(p.0.mm(), p.1.mm())));
                let ends = [point(edge.from), point(edge.to)];
                let same = |other: &[PaperPoint; 2]| ends.iter().all(|p| other.iter().any(|q| p.distance(*q) < 0.05));
                if !drawn.iter().any(same) {
                    canvas.line(at, ends[0], ends[1], Pen::SECONDARY);
                    drawn.push(ends);
                }
            }
        }
    }
}

/// The line of each corner, seen from above, with the angle between the faces.
pub fn corners(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    for joint in &set.solved.joints {
        let place = view.point(joint.at);
        let ink = Paint::both(Pen::SECONDARY.accent(), Fill::WHITE);
        canvas.circle(at, place, 0.9, ink);
        let text = match &joint.kind {
            JointKind::Corner(corner) => {
                let angle = 180.0 - corner.turn.abs().to_degrees();
                let exact = (angle * 10.0).round() / 10.0;
                format!("{}\u{b0}", crate::sheets::view::number(exact, 1))
            }
            JointKind::Step => "step".to_owned(),
        };
        let places: Vec<PaperPoint> = (0..48)
            .map(|k| {
                let (turn, off) =
                    (f64::from(k % 12) * std::f64::consts::FRAC_PI_6 + 0.9, 6.0 + f64::from(k / 12) * 3.5);
                place.moved(off * turn.cos(), off * turn.sin() + 1.25)
            })
            .collect();
        canvas.text_at_first(at, &places, &text, &Style::body().bold().middle());
    }
}

/// Lengths along the face of a leg: its modules, as far as they are seen, and the whole face.
pub fn lengths(canvas: &mut Canvas, at: Layer, set: &Set<'_>, seen: &Seen<'_>) {
    let (leg, d) = (seen.leg, &seen.leg.datums);
    // A leg that stands behind another has its free side at the back. Inside a corner both legs' rings, sections and
    // elevations meet: their lengths stand outside it.
    let inside = |joint: &Joint| matches!(joint.kind, JointKind::Corner(corner) if corner.turn > 0.0);
    let own = |joint: &&Joint| joint.left == seen.index || joint.right == seen.index;
    let behind = leg.behind.is_some();
    let from = if behind || set.solved.joints.iter().filter(own).any(inside) { 1.0 } else { -1.0 };
    let off = {
        let (a, b) = (seen.at_mm(0.0, 0.0), seen.at_mm(0.0, from * 1000.0));
        let long = a.distance(b).max(1e-9);
        ((b.x - a.x) / long, (b.y - a.y) / long)
    };
    let edge = if from < 0.0 { d.counter_front } else { d.counter_back };
    let plan = |u: Length| {
        let p = leg.placement.to_plan(LegPoint::new(u.mm(), edge.mm()));
        (p.x, p.y)
    };
    let whole = if behind { "finished back" } else { "finished face" };
    // Past a wall that stands there.
    let past = if from > 0.0 && leg.back.kind == BoundKind::Wall {
        (leg.back.at_counter - edge).mm().max(0.0) * seen.view.scale.factor() + THICK + 1.0
    } else {
        0.0
    };
    let end = |u: Length| seen.at(u, edge).moved(off.0 * past, off.1 * past);
    let part = |a: Length, b: Length| Aligned {
        ends: (end(a), end(b)),
        model: (plan(a), plan(b)),
        off: (off, 0.0),
        length: b - a,
        label: String::new(),
        datums: ("module edge", "module edge"),
        finished: false,
    };
    let seen_part = |module: &crate::solve::Module| (module.left.max(Length::ZERO), module.right.min(d.finished_right));
    let parts: Vec<(Length, Length)> = leg.modules.iter().map(seen_part).filter(|(a, b)| b > a).collect();
    let chain: Vec<Aligned> = parts.into_iter().map(|(a, b)| part(a, b)).collect();
    let row = Aligned::draw_chain(chain, canvas, at, set.solved.show, &ROWS);
    let first = row.map_or(9.0, |row| row + 7.0);
    let rows: Vec<f64> = (0..12).map(|k| first + f64::from(k) * 3.0).collect();
    let dimension = Aligned {
        ends: (end(Length::ZERO), end(d.finished_right)),
        model: (plan(Length::ZERO), plan(d.finished_right)),
        off: (off, first),
        length: d.finished_right,
        label: format!("leg {}, {whole}", leg.id),
        datums: ("finished left end", "finished right end"),
        finished: true,
    };
    dimension.draw(canvas, at, set.solved.show, &rows);
}

/// Walls, posts, steps and doors as surveyed; walls as far as the box (x0, y0, x1, y1) of the plan reaches.
pub fn survey(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>, held: (f64, f64, f64, f64)) {
    let survey = &set.solved.survey;
    let point = |p: (f64, f64)| view.point(PlanPoint::new(p.0, p.1));
    let middle = ((held.0 + held.2) / 2.0, (held.1 + held.3) / 2.0);
    for wall in &survey.walls {
        let sides: Vec<((f64, f64), (f64, f64))> =
            wall.points.windows(2).filter_map(|pair| clipped(pair[0], pair[1], held)).collect();
        let thick = THICK / view.scale.factor();
        for (a, b) in &sides {
            let long = (b.0 - a.0).hypot(b.1 - a.1).max(1e-9);
            let left = (-(b.1 - a.1) / long, (b.0 - a.0) / long);
            // The wall's body lies on the side away from the run.
            let towards = (middle.0 - a.0) * left.0 + (middle.1 - a.1) * left.1;
            let out = if towards > 0.0 { (-left.0 * thick, -left.1 * thick) } else { (left.0 * thick, left.1 * thick) };
            let ring = [*a, *b, (b.0 + out.0, b.1 + out.1), (a.0 + out.0, a.1 + out.1)].map(point).to_vec();
            materials::hatch(canvas, at, &[ring], Material::Wall, false);
        }
        for (a, b) in &sides {
            canvas.line(at, point(*a), point(*b), Pen::CUT.square());
        }
    }
    for post in &survey.posts {
        let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
        let ring = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)].map(point).to_vec();
        materials::hatch(canvas, at, std::slice::from_ref(&ring), Material::Wall, false);
        canvas.polyline(at, &ring, true, Paint::pen(Pen::CUT));
    }
    for door in &survey.doors {
        let tip = |turn: f64| (door.hinge.0 + door.width * turn.cos(), door.hinge.1 + door.width * turn.sin());
        canvas.line(at, point(door.hinge), point(tip(door.shut)), Pen::SECONDARY);
        canvas.line(at, point(door.hinge), point(tip(door.shut + door.opens)), Pen::VISIBLE);
        let way: Vec<PaperPoint> = (0..=16).map(|k| point(tip(door.shut + door.opens * f64::from(k) / 16.0))).collect();
        canvas.polyline(at, &way, false, Paint::pen(Pen::DIMENSION));
    }
    for step in &survey.steps {
        if let Some((a, b)) = clipped(step.from, step.to, held) {
            canvas.line(at, point(a), point(b), Pen::VISIBLE);
        }
    }
}

/// Names of what was surveyed, where the sheet is white.
pub fn survey_names(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>, held: (f64, f64, f64, f64)) {
    let survey = &set.solved.survey;
    let mut name = |p: (f64, f64), text: &str| {
        let place = view.point(PlanPoint::new(p.0, p.1));
        let around: Vec<PaperPoint> = (0..60)
            .map(|k| {
                let (turn, off) = (f64::from(k % 12) * std::f64::consts::FRAC_PI_6, 6.0 + f64::from(k / 12) * 4.0);
                place.moved(off * 1.6 * turn.cos(), off * turn.sin() + 1.25)
            })
            .collect();
        canvas.text_at_first(at, &around, text, &Style::caption().middle());
    };
    for wall in &survey.walls {
        if let Some((a, b)) = wall.points.windows(2).find_map(|pair| clipped(pair[0], pair[1], held)) {
            name((a.0 + (b.0 - a.0) * 0.2, a.1 + (b.1 - a.1) * 0.2), &wall.name);
        }
    }
    for post in &survey.posts {
        name(post.at, &post.name);
    }
    for door in &survey.doors {
        let turn = door.shut + door.opens / 2.0;
        name((door.hinge.0 + door.width * 0.6 * turn.cos(), door.hinge.1 + door.width * 0.6 * turn.sin()), &door.name);
    }
    for step in &survey.steps {
        if let Some((a, b)) = clipped(step.from, step.to, held) {
            name(
                ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0),
                &format!("step in the floor, {}", set.solved.show.prose(step.drop)),
            );
        }
    }
}

/// The part of a stretch inside a box.
fn clipped(a: (f64, f64), b: (f64, f64), held: (f64, f64, f64, f64)) -> Option<((f64, f64), (f64, f64))> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for (p, q) in [(-dx, a.0 - held.0), (dx, held.2 - a.0), (-dy, a.1 - held.1), (dy, held.3 - a.1)] {
        if p == 0.0 {
            if q < 0.0 {
                return None;
            }
        } else if p < 0.0 {
            low = low.max(q / p);
        } else {
            high = high.min(q / p);
        }
    }
    (high - low > 1e-9).then_some(((a.0 + low * dx, a.1 + low * dy), (a.0 + high * dx, a.1 + high * dy)))
}

/// How far a leg with what bounds it reaches, plan millimetres: corners of its box.
pub fn reach(seen_leg: &crate::solve::Leg) -> [PlanPoint; 4] {
    let reach = walls::reach(seen_leg, 0.05);
    [(reach.left, reach.front), (reach.right, reach.front), (reach.right, reach.back), (reach.left, reach.back)]
        .map(|(u, v)| seen_leg.placement.to_plan(LegPoint::new(u, v)))
}
