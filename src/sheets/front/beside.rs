//! The other leg at a fold: cut where it comes towards the viewer, with what of this leg it hides; as its frame's end
//! where it goes away; as the beginning of what goes on at a step.

use super::elevation::Elevation;
use super::meeting::{Meeting, Way};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, corners};
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::solve::{Face, Leg};
use crate::units::Length;

/// Paper that the beginning of a leg that goes on at a step takes, mm.
pub const STUB: f64 = 18.0;
/// Outlines of the leg that is cut.
const CUT: Pen = Pen::SECONDARY.coloured(Colour::GREY_TEXT);
/// What is hidden behind it.
const HIDDEN: Pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);

/// Draws what stands at both ends, over the leg itself.
pub fn draw(canvas: &mut Canvas, e: &Elevation<'_>) {
    let at = canvas.layer(e.view.layer, "other-legs");
    for (meeting, on_page) in e.meetings.iter().zip([e.part.first, e.part.last]) {
        let (Some(meeting), true) = (meeting, on_page) else { continue };
        match meeting.way {
            Way::Towards => {
                hidden(canvas, at, e, meeting);
                cut(canvas, at, e, meeting);
            }
            Way::Away => end(canvas, at, e, meeting),
            Way::On => stub(canvas, at, e, meeting),
        }
    }
}

/// Boards and frame of this leg beyond the fold: covered with white, then drawn as hidden.
fn hidden(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, meeting: &Meeting<'_>) {
    let d = &e.leg.datums;
    let fold = meeting.fold;
    let beyond = |x: Length| if meeting.out > 0.0 { x.max(fold) } else { x.min(fold) };
    // All of it, the strip of paper under a line's half width too.
    let end = if meeting.out > 0.0 { e.part.x1 } else { e.part.x0 };
    let far = if meeting.out > 0.0 { end.max(meeting.far()) } else { end.min(meeting.far()) };
    let (p, q) = (e.view.at(fold, d.counter_top), e.view.at(far, d.frame_bottom));
    let (p, q) = (p.moved(meeting.out * 0.2, -0.4), q.moved(meeting.out * 0.6, 0.4));
    canvas.rectangle(at, p, q, Paint::fill(Fill::WHITE));
    let tube = |x0: Length, x1: Length, low: Length, high: Length, canvas: &mut Canvas| {
        let (x0, x1) = (beyond(x0), beyond(x1));
        if x0 != x1 {
            let points = corners(e.view.at(x0, low), e.view.at(x1, high));
            canvas.polyline(at, &points, true, Paint::pen(HIDDEN));
        }
    };
    let shown = |v: (Length, Length)| if e.is_behind() { v.1 == d.frame_back } else { v.0 == d.frame_face };
    let module = |index: &usize| e.leg.modules.get(*index);
    for module in e.part.modules.clone().filter_map(|index| module(&index)) {
        let (x0, x1) = e.facing.span(module.left, module.right);
        tube(x0, x1, d.frame_bottom, d.frame_top, canvas);
    }
    let boards = e.leg.boards.iter().filter(|board| board.plane == e.facing.plane());
    let boards: Vec<_> = boards.filter(|b| b.module.is_none_or(|m| e.part.modules.contains(&m))).collect();
    for board in boards {
        let (x0, x1) = e.facing.span(board.extent.x0, board.extent.x1);
        let (x0, x1) = (beyond(x0), beyond(x1));
        let end = if meeting.out > 0.0 { x1 } else { x0 };
        if x0 != x1 {
            canvas.line(at, e.view.at(end, board.extent.y0), e.view.at(end, board.extent.y1), HIDDEN);
        }
    }
    // Uprights alone: rails would run along the outlines that are there.
    for member in e.leg.members.iter().filter(|m| e.part.modules.contains(&m.module) && shown(m.body.v)) {
        let upright = member.body.z.1 - member.body.z.0 > member.body.u.1 - member.body.u.0;
        let (x0, x1) = e.facing.span(member.body.u.0, member.body.u.1);
        let (x0, x1) = (beyond(x0), beyond(x1));
        if upright && x0 != x1 {
            for x in [x0, x1] {
                canvas.line(at, e.view.at(x, member.body.z.0), e.view.at(x, member.body.z.1), HIDDEN);
            }
        }
    }
}

/// The other leg, cut along the face that is shown.
fn cut(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, meeting: &Meeting<'_>) {
    let (leg, d) = (meeting.other, &meeting.other.datums);
    let x = |v: Length| meeting.drawn_x(v);
    let solved = e.set.solved;
    let low = board_bottom(leg, Face::Front);
    let mut layer = |v0: Length, v1: Length, z0: Length, z1: Length, material: Material, pen: Pen| {
        if x(v0) == x(v1) || z0 >= z1 {
            return;
        }
        let (a, b) = (e.view.at(x(v0), z0), e.view.at(x(v1), z1));
        let ring = corners(a, b).to_vec();
        canvas.rectangle(at, a, b, Paint::fill(Fill::WHITE));
        if (a.x - b.x).abs() > 0.8 {
            materials::hatch(canvas, at, std::slice::from_ref(&ring), material, false);
        }
        canvas.polyline(at, &ring, true, Paint::pen(pen));
    };
    let finish = |face: Face| leg.finish(face).map(|finish| Material::Finish(finish.kind));
    if let Some(material) = finish(Face::Front) {
        layer(Length::ZERO, d.board_face, low, d.substrate_top, material, CUT);
    }
    layer(d.board_face, d.frame_face, low, d.frame_top, Material::Board, CUT);
    if let Some(material) = finish(Face::Back) {
        layer(d.board_back, d.finished_back, low, d.substrate_top, material, CUT);
    }
    layer(d.frame_back, d.board_back, low, d.frame_top, Material::Board, CUT);
    let substrate = &leg.substrate.extent;
    layer(substrate.y0, substrate.y1, d.frame_top, d.substrate_top, Material::Substrate, CUT);
    let material = Material::Counter(solved.counter.material);
    layer(d.counter_front, d.counter_back, d.substrate_top, d.counter_top, material, CUT);
    let frame = [e.view.at(x(d.frame_face), d.frame_bottom), e.view.at(x(d.frame_back), d.frame_top)];
    canvas.rectangle(at, frame[0], frame[1], Paint::pen(Pen::DIMENSION.coloured(Colour::GREY_TEXT)));
    let tube = e.view.size(solved.frame.tube);
    let (left, right) = (frame[0].x.min(frame[1].x), frame[0].x.max(frame[1].x));
    for (x0, x1) in [(left, left + tube), (right - tube, right)] {
        for (y0, y1) in [(frame[1].y, frame[1].y + tube), (frame[0].y - tube, frame[0].y)] {
            let paint = Paint::both(Pen::DIMENSION.coloured(Colour::GREY_TEXT), Fill::WHITE);
            canvas.rectangle(at, PaperPoint::new(x0, y0), PaperPoint::new(x1, y1), paint);
        }
    }
}

/// Lower edge of a leg's boards on a face.
fn board_bottom(leg: &Leg, face: Face) -> Length {
    let boards = leg.boards.iter().filter(|board| board.face == face);
    boards.map(|board| board.extent.y0).min().unwrap_or(leg.datums.frame_bottom)
}

/// The end of the other leg's frame, behind the boards of this one, where that one runs through an outside corner.
fn end(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, meeting: &Meeting<'_>) {
    let d = &meeting.other.datums;
    let own = if meeting.out > 0.0 { e.part.x1 } else { e.part.x0 };
    let (a, b) = (meeting.x(d.frame_face), meeting.x(d.frame_back));
    let before = if meeting.out > 0.0 { a.min(b) >= own } else { a.max(b) <= own };
    if before && a != b {
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE);
        canvas.rectangle(at, e.view.at(a, d.frame_bottom), e.view.at(b, d.frame_top), Paint::pen(pen));
    }
}

/// The beginning of the leg that goes on at a step, as far as a break.
fn stub(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, meeting: &Meeting<'_>) {
    let (leg, d) = (meeting.other, &meeting.other.datums);
    let ends = if meeting.out > 0.0 { 0 } else { 1 };
    let right = (ends == 1) != e.is_behind();
    let counter = meeting.along(if right { d.counter_right } else { d.counter_left });
    let substrate = meeting.along(if right { leg.substrate.extent.x1 } else { leg.substrate.extent.x0 });
    let far = e.view.x(meeting.fold) + meeting.out * STUB;
    let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE);
    let low = board_bottom(leg, e.facing.face);
    let mut strip = |from: Length, low: Length, high: Length| {
        let [a, b] = [e.view.at(from, low), e.view.at(from, high)];
        let points = [PaperPoint::new(far, a.y), a, b, PaperPoint::new(far, b.y)];
        canvas.polyline(at, &points, false, Paint::both(pen, Fill::WHITE));
    };
    strip(meeting.fold, low, d.frame_top);
    strip(substrate, d.frame_top, d.substrate_top);
    strip(counter, d.substrate_top, d.counter_top);
    let [top, bottom] = [d.counter_top, low].map(|z| PaperPoint::new(far, e.view.y(z)));
    marks::break_line(canvas, at, top, bottom);
}

/// Names the legs that are cut, in the middle of what they show.
pub fn words(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (meeting, on_page) in e.meetings.iter().zip([e.part.first, e.part.last]) {
        let (Some(meeting), true) = (meeting, on_page) else { continue };
        if meeting.way != Way::Towards {
            continue;
        }
        let d = &meeting.other.datums;
        let (a, b) = (e.view.x(meeting.drawn_x(d.frame_face)), e.view.x(meeting.drawn_x(d.frame_back)));
        let middle = (e.view.y(d.frame_top) + e.view.y(d.frame_bottom)) / 2.0;
        let text = format!("leg {}, cut", meeting.other.id);
        let wide = lettering::width(&text, BODY, Weight::Regular);
        let xs =
            (0..=24).map(|k| a + (b - a) * (0.5 + f64::from((k + 1) / 2) / 26.0 * if k % 2 == 0 { 1.0 } else { -1.0 }));
        let mut places: Vec<(PaperPoint, bool)> = Vec::new();
        for x in xs {
            if wide < (b - a).abs() - 4.0 {
                places.extend([0.0, 9.0, -9.0].map(|dy| (PaperPoint::new(x, middle + dy), false)));
            }
            places.push((PaperPoint::new(x + 1.25, middle), true));
        }
        let set = places.into_iter().map(|(place, upright)| {
            let style = Style::caption().middle();
            lettering::set(place, &text, &if upright { style.upright() } else { style })
        });
        let set = set.into_iter().find(|text| canvas.is_free(text));
        if let Some(set) = set {
            canvas.put(at, set);
        }
    }
}
