//! What is written on a joined sheet: numbers of corners, names of pieces and cutouts, flags of the finished lines.

use super::joined::Joined;
use super::picture;
use crate::drawing::Pen;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::findings::Subject;
use crate::geometry::{PaperPoint, PlanPoint};
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::counter::names;
use crate::sheets::frame::Area;
use crate::sheets::marks;
use crate::solve::{Edge, JointKind, Plane};

/// A ring of places round another, nearest first.
fn around(place: PaperPoint, rings: u32) -> Vec<PaperPoint> {
    (0..12 * rings)
        .map(|k| {
            let (turn, off) = (f64::from(k % 12) * std::f64::consts::FRAC_PI_6, f64::from(k / 12) * 4.0);
            place.moved(off * 1.8 * turn.cos(), off * turn.sin() + 1.25)
        })
        .collect()
}

/// The number of each corner, outside the outline.
pub fn corners(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "corners");
    let edges = &sheet.slab.edges;
    let out = |edge: &Edge| {
        let (a, b) = (sheet.view.at(edge.from.0, edge.from.1), sheet.view.at(edge.to.0, edge.to.1));
        let long = a.distance(b).max(1e-9);
        (-(b.y - a.y) / long, (b.x - a.x) / long)
    };
    for (index, edge) in edges.iter().enumerate() {
        let (own, before) = (out(edge), out(&edges[(index + edges.len() - 1) % edges.len()]));
        let base = (own.1 + before.1).atan2(own.0 + before.0);
        let here = sheet.view.at(edge.from.0, edge.from.1);
        let places: Vec<PaperPoint> = (0..64)
            .map(|k| {
                let turn = base + f64::from((k % 16 + 1) / 2) * if k % 2 == 0 { 0.4 } else { -0.4 };
                let off = 3.8 + f64::from(k / 16) * 2.0;
                here.moved(off * turn.cos(), off * turn.sin() + 1.25)
            })
            .collect();
        canvas.text_at_first(layer, &places, &(index + 1).to_string(), &Style::body().bold().middle());
    }
}

/// Marks and names of the cutouts: in the void, or the mark alone near it.
pub fn cutouts(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "names");
    for (leg, fitting, cutout) in sheet.cutouts() {
        let place = sheet.at(leg, cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm());
        let name = names::name_of(fitting);
        let (radius, wide) = (marks::ring_radius(&fitting.mark), lettering::width(&name, BODY, Weight::Regular));
        let width = 2.0 * radius + 1.6 + wide;
        let half = (width / 2.0 + 0.6, radius + 0.6);
        let holds = |p: &PaperPoint, half: (f64, f64)| {
            [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].iter().all(|(x, y)| {
                let corner = p.moved(x * half.0, y * half.1);
                let model = PlanPoint::new(
                    (corner.x - sheet.view.origin.x) / sheet.view.scale.factor(),
                    (sheet.view.origin.y - corner.y) / sheet.view.scale.factor(),
                );
                let own = sheet.in_leg(leg, model.x, model.y);
                let hole = cutout.extent;
                own.x > hole.x0.mm()
                    && own.x < hole.x1.mm()
                    && own.y > hole.y0.mm().min(0.0)
                    && own.y < hole.y1.mm()
                    && (cutout.open || own.y > hole.y0.mm())
            }) && canvas.is_box_free(p.x - half.0, p.y - half.1, p.x + half.0, p.y + half.1)
        };
        let spots: Vec<PaperPoint> = around(place, 5).iter().map(|p| p.moved(0.0, -1.25)).collect();
        if let Some(spot) = spots.iter().find(|p| holds(p, half)) {
            let centre = spot.moved(-width / 2.0 + radius, 0.0);
            marks::ring(canvas, layer, centre, &fitting.mark);
            canvas.text(layer, centre.moved(radius + 1.6, 1.25), &name, &Style::body());
        } else if let Some(spot) = spots.iter().find(|p| holds(p, (radius + 0.4, radius + 0.4))) {
            marks::ring(canvas, layer, *spot, &fitting.mark);
        } else {
            let places = around(place, 4);
            let style = Style::body().bold().middle();
            let Some(at) = canvas.text_at_first(layer, &places, &fitting.mark, &style) else { continue };
            // Away from its hole a mark is led to it.
            let text = places[at].moved(0.0, -1.25);
            let far = text.distance(place);
            if far > 6.0 {
                let from = text.towards(place, 3.4 / far);
                if canvas.is_clear_of_text(&[from, place]) {
                    canvas.line(layer, from, place, Pen::DIMENSION);
                }
            }
        }
    }
}

/// Names of the pieces with their weight.
pub fn pieces(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "names");
    let solved = sheet.set.solved;
    for piece in sheet.pieces() {
        let words = match (sheet.plane, piece.mass) {
            (Plane::Counter, Some(mass)) => solved.show.mass(mass),
            _ => String::new(),
        };
        let (u, v) = piece.region.centroid();
        let middle = sheet.at(piece.leg, u, v);
        let half =
            lettering::width(&piece.name, TITLE, Weight::SemiBold).max(lettering::width(&words, BODY, Weight::Regular))
                / 2.0
                + 1.2;
        let inside = |p: &PaperPoint| {
            let x = (p.x - sheet.view.origin.x) / sheet.view.scale.factor();
            let y = (sheet.view.origin.y - p.y) / sheet.view.scale.factor();
            piece.region.outer.contains(sheet.in_leg(piece.leg, x, y))
        };
        let spots: Vec<PaperPoint> = spread(middle);
        let free = |p: &&PaperPoint| inside(p) && canvas.is_box_free(p.x - half, p.y - 4.2, p.x + half, p.y + 5.4);
        if let Some(spot) = spots.iter().find(free) {
            canvas.text(layer, spot.moved(0.0, 0.2), &piece.name, &Style::body().bold().sized(TITLE).middle());
            if !words.is_empty() {
                canvas.text(layer, spot.moved(0.0, 4.8), &words, &Style::body().middle());
            }
        } else {
            let half = lettering::width(&piece.name, BODY, Weight::SemiBold) / 2.0 + 0.3;
            let higher = |p: &PaperPoint| canvas.is_box_free(p.x - half, p.y - 4.0, p.x + half, p.y + 1.6);
            let places: Vec<PaperPoint> = spots.into_iter().filter(inside).filter(higher).take(1).collect();
            canvas.text_at_first(layer, &places, &piece.name, &Style::body().bold().middle());
        }
    }
}

/// Places on a grid round another, nearest first.
fn spread(middle: PaperPoint) -> Vec<PaperPoint> {
    let mut all: Vec<PaperPoint> = (-30..=30)
        .flat_map(|x| (-30..=30).map(move |y| middle.moved(f64::from(x) * 3.0, f64::from(y) * 3.0)))
        .collect();
    all.sort_by(|a, b| a.distance(middle).total_cmp(&b.distance(middle)));
    all
}

/// A flag on each finished line, where there is white for it.
pub fn flags(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "flags");
    for (name, [a, b]) in picture::lines(sheet) {
        flag(canvas, layer, sheet.area, name, (a, b));
    }
}

fn flag(canvas: &mut Canvas, at: Layer, area: Area, name: &str, (a, b): (PaperPoint, PaperPoint)) {
    let free = |canvas: &Canvas, x0: f64, y0: f64, x1: f64, y1: f64| {
        let inside = x0 > area.left && x1 < area.right && y0 > area.top && y1 < area.bottom;
        inside && canvas.is_box_free(x0, y0, x1, y1)
    };
    let width = marks::flag_width(name);
    let level = (b.x - a.x).abs() >= (b.y - a.y).abs();
    for k in 0..40 {
        let share = 0.5 + f64::from((k + 1) / 2) * if k % 2 == 1 { -0.022 } else { 0.022 };
        let foot = a.towards(b, share);
        if level {
            for (top, low) in [(-7.4, -2.0), (2.0, 7.4)] {
                let white = free(canvas, foot.x - 0.7, foot.y + top - 0.4, foot.x + width + 0.7, foot.y + low + 0.4);
                if white {
                    let end = if top < 0.0 { top } else { low };
                    canvas.line(at, foot, foot.moved(0.0, end), Pen::SECONDARY.accent());
                    marks::flag(canvas, at, foot.moved(0.0, top), name, true);
                    return;
                }
            }
        } else {
            for right in [true, false] {
                let (near, far) =
                    if right { (foot.x + 0.6, foot.x + width + 0.8) } else { (foot.x - width - 0.8, foot.x - 0.6) };
                if free(canvas, near, foot.y - 3.2, far, foot.y + 3.2) {
                    marks::flag(canvas, at, foot.moved(0.0, -2.6), name, right);
                    return;
                }
            }
        }
    }
}

/// The angle between the faces at each corner, beside the point where they meet.
pub fn angles(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "angles");
    for joint in &sheet.set.solved.joints {
        let JointKind::Corner(corner) = &joint.kind else { continue };
        if !sheet.slab.legs.contains(&joint.left) || !sheet.slab.legs.contains(&joint.right) {
            continue;
        }
        let text = super::lists::degrees(180.0 - corner.turn.abs().to_degrees());
        let place = sheet.at(joint.right, 0.0, 0.0);
        let places: Vec<PaperPoint> = (0..96)
            .map(|k| {
                let (turn, off) =
                    (f64::from(k % 16) * std::f64::consts::FRAC_PI_8 + 2.3, 5.0 + f64::from(k / 16) * 3.0);
                place.moved(off * turn.cos(), off * turn.sin() + 1.25)
            })
            .collect();
        canvas.text_at_first(layer, &places, &text, &Style::body().bold().middle());
    }
}

/// Numbered marks of what the rules found.
pub fn findings(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "findings");
    for (leg, fitting, cutout) in sheet.cutouts() {
        let place = sheet.at(leg, cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm());
        sheet.set.mark(canvas, layer, sheet.kind, &fitting.subject(), place);
    }
    if let (Plane::Counter, Some(piece)) = (sheet.plane, sheet.pieces().first()) {
        let (u, v) = piece.region.centroid();
        let first = sheet.slab.legs.first().copied().unwrap_or(0);
        sheet.set.mark(canvas, layer, sheet.kind, &Subject::Counter(first), sheet.at(piece.leg, u, v));
    }
}
