//! Board edges that are cut at an angle, where legs meet: each from above at a large scale, with what the saw is set to and
//! which face stays longer.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::{Leg as LegSpace, Outline, PaperPoint};
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::shelves::Block;
use crate::sheets::view::{View, number};
use crate::solve::{Board, Face, JointKind, Leg, Through};
use crate::units::Length;

/// Length of board that is shown, mm of paper.
const SHOWN: f64 = 34.0;
/// White round the drawing, mm: over and under it for what its faces are called.
const OVER: f64 = 12.0;
const UNDER: f64 = 6.0;
/// Angles under this are square, radians: a twentieth of a degree, less than a saw's scale tells.
const SQUARE: f64 = 0.05 * std::f64::consts::PI / 180.0;

/// One edge.
struct Edge {
    title: String,
    thickness: Length,
    /// Off square, radians; positive leaves the outside longer.
    angle: f64,
    /// 0 for the left edge as seen from the front, 1 for the right one.
    side: usize,
    lines: Vec<String>,
}

/// A block for every edge that isn't square.
pub fn blocks<'s>(set: &'s Set<'s>, index: usize, leg: &'s Leg) -> Vec<Block<'s>> {
    let mut blocks = Vec::new();
    for board in leg.boards.iter().filter(|board| board.face == Face::Front) {
        for side in [0, 1] {
            if board.bevels[side].abs() > SQUARE {
                let edge = edge(set, index, leg, board, side);
                blocks.push(block(edge));
            }
        }
    }
    blocks
}

fn edge(set: &Set<'_>, index: usize, leg: &Leg, board: &Board, side: usize) -> Edge {
    let (solved, show) = (set.solved, set.solved.show);
    let (angle, thickness) = (board.bevels[side], leg.build(Face::Front).board);
    let degrees = number((angle.abs().to_degrees() * 10.0).round() / 10.0, 1);
    let by = Length::from_mm(thickness.mm() * angle.abs().tan());
    let long = if angle > 0.0 { "outside" } else { "inside" };
    let by = match show.rounded(by) {
        Length::ZERO => format!("less than {}", show.prose(show.step())),
        by => show.prose(by),
    };
    let mut lines = vec![format!("Saw at {degrees}\u{b0} off square"), format!("The {long} face is longer, by {by}")];
    let joint = solved.joints.iter().find(|joint| if side == 0 { joint.right == index } else { joint.left == index });
    if let Some((joint, JointKind::Corner(corner))) = joint.map(|joint| (joint, &joint.kind)) {
        let other = if side == 0 { joint.left } else { joint.right };
        let name = solved.legs.get(other).map_or("", |leg| leg.id.as_str());
        let runs = (corner.through == Through::Left) == (side == 1);
        // At an outside corner the one that runs through has its board go on over the other's edge.
        lines.push(match (corner.through, runs) {
            (Through::Neither, _) => format!("mitred with the board of leg {name}"),
            (_, true) if corner.turn < 0.0 => format!("covers the edge of leg {name}\u{2019}s board"),
            (_, true) => format!("ends at the bare frame of leg {name}"),
            (_, false) if corner.turn < 0.0 => format!("ends behind the board of leg {name}"),
            (_, false) => format!("butts against the board of leg {name}"),
        });
    }
    let mut title = format!("{}, {} edge, from above", board.name, if side == 0 { "left" } else { "right" });
    if let Some(first) = title.get(..1).map(str::to_uppercase) {
        title.replace_range(..1, &first);
    }
    Edge { title, thickness, angle, side, lines }
}

fn block<'s>(edge: Edge) -> Block<'s> {
    let thick = edge.thickness.mm();
    let scale = if thick > 14.0 { Scale(2) } else { Scale(1) };
    let wide = |text: &String| lettering::width(text, BODY, Weight::SemiBold);
    let words = edge.lines.iter().map(wide).fold(0.0, f64::max);
    let title = lettering::width(&edge.title, BODY, Weight::SemiBold) + 14.0;
    let tall = (OVER + thick * scale.factor() + UNDER).max(OVER + 4.6 * edge.lines.len() as f64);
    Block {
        width: title.max(SHOWN + 6.0 + lean(&edge, scale) + words),
        height: tall,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, &edge, scale, at)),
    }
}

/// How far the edge leans over the board's thickness, mm of paper.
fn lean(edge: &Edge, scale: Scale) -> f64 {
    edge.thickness.mm() * scale.factor() * edge.angle.abs().tan()
}

fn draw(canvas: &mut Canvas, edge: &Edge, scale: Scale, at: PaperPoint) {
    let (thick, factor) = (edge.thickness.mm(), scale.factor());
    let way = if edge.side == 0 { 1.0 } else { -1.0 };
    let lean = thick * edge.angle.tan() * way;
    let span = SHOWN / factor * way;
    // The outside corner lies at x = 0, the outside at the bottom, as the plan sees it.
    let room = lean.abs() * factor;
    let left = if edge.side == 0 { room.max(0.0) } else { SHOWN };
    let origin = at.moved(left, OVER + thick * factor);
    let view: View<LegSpace> = View::open(canvas, &edge.title, scale, origin);
    let end = canvas.text(view.layer, at.moved(0.0, 3.0), &edge.title, &Style::body().bold());
    canvas.text(view.layer, at.moved(end + 3.0, 3.0), &scale.words(), &Style::caption());
    let outline = Outline::from_points([(0.0, 0.0), (span, 0.0), (span, thick), (lean, thick)]);
    let ring = view.ring(&outline);
    canvas.polyline(view.layer, &ring, true, Paint::fill(Fill::tint(Colour::TINT_BOARD)));
    materials::hatch(canvas, view.layer, &[ring], Material::Board, false);
    let p = |x: f64, y: f64| PaperPoint::new(view.x_mm(x), view.y_mm(y));
    let edges = [p(span, 0.0), p(0.0, 0.0), p(lean, thick), p(span, thick)];
    canvas.polyline(view.layer, &edges, false, Paint::pen(Pen::CUT));
    marks::break_line(canvas, view.layer, p(span, thick).moved(0.0, -1.5), p(span, 0.0).moved(0.0, 1.5));
    // What square would be.
    let square = Shape::Line(p(0.0, 0.0), p(0.0, thick).moved(0.0, -1.6));
    canvas.shape(view.layer, square, Paint::pen(Pen::GHOST), "", Vec::new());
    let middle = span / 2.0;
    canvas.text(view.layer, p(middle, 0.0).moved(0.0, 4.2), "outside", &Style::caption().middle());
    canvas.text(view.layer, p(middle, thick).moved(0.0, -1.6), "inside", &Style::caption().middle());
    let column = at.x + SHOWN + room + 5.0;
    for (row, words) in edge.lines.iter().enumerate() {
        let style = if row < 2 { Style::body().bold() } else { Style::body() };
        canvas.text(view.layer, PaperPoint::new(column, at.y + OVER + 2.0 + row as f64 * 4.6), words, &style);
    }
}
