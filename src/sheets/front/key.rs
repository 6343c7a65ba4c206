//! The key of the three ends that a tape may be held to: finished, board, frame, in plan.

use super::facing::Facing;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{PaperPoint, Plan};
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::dimensions::{Across, Dimension, Number};
use crate::sheets::frame::Area;
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::sheets::notes;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{BoundKind, Datum, Leg};
use crate::units::{Length, Show};

/// Height of the key, mm.
pub fn height(leg: &Leg, facing: &Facing) -> f64 {
    if is_drawn(leg, facing) { 38.0 } else { 27.0 }
}

/// The scale of the key: the layers about 15 to 40 mm long.
pub fn scale(leg: &Leg, facing: &Facing) -> Scale {
    let build = facing.near_build(leg).total().mm().max(1.0);
    Scale::fitting((build, build), (34.0, 34.0), Scale(if build < 25.0 { 1 } else { 2 }))
}

/// Whether there are layers to draw: board and finish on that end.
pub fn is_drawn(leg: &Leg, facing: &Facing) -> bool {
    let build = facing.near_build(leg);
    build.finish.is_some() && build.board > Length::ZERO
}

/// Draws it in an area at least 150 mm by [`height`]; its sentence stands at its right.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, leg: &Leg, facing: &Facing, area: Area) {
    let build = facing.near_build(leg);
    let [finished, board, frame] = facing.near();
    let title = format!("Three {} ends", facing.near_word());
    let clad = is_drawn(leg, facing);
    let met = facing.bounds(leg).0.kind == BoundKind::Leg;
    if clad {
        let scale = scale(leg, facing);
        title_block::heading(canvas, area.left, area.top + 3.5, &title, &format!("{}, in plan", scale.words()));
        picture(canvas, set, leg, facing, scale, PaperPoint::new(area.left + 38.0, area.top + 26.5));
    } else {
        title_block::heading(
            canvas,
            area.left,
            area.top + 3.5,
            &format!("Where the {} end is", facing.near_word()),
            "",
        );
    }
    let show = set.solved.show;
    let off = |datum: Datum| (leg.datums.at(finished) - leg.datums.at(datum)).abs();
    let drop = leg.datums.counter_top - leg.datums.frame_top;
    let mut words = String::new();
    if clad {
        words += &format!(
            "Running dimensions start at the {}, which is not there when the boards are cut. From the board end take off {}, from the bare frame {}.",
            finished.words(),
            show.prose(off(board)),
            show.prose(off(frame))
        );
    } else if met {
        words += &met_words(leg, facing, show);
    } else if build.board > Length::ZERO {
        words += &format!(
            "The {} is the outside of the board, {} out from the bare frame: from the frame take that off.",
            finished.words(),
            show.prose(off(frame))
        );
    } else {
        words += &format!("The {} is the bare frame\u{2019}s own end: nothing is fixed to it.", finished.words());
    }
    words += &format!(" For drops, from the frame top take off {}.", show.prose(drop));
    // A number keeps its unit on its line.
    let words = words.replace(" mm", "\u{a0}mm");
    let left = if clad { area.left + 98.0 } else { area.left };
    let place = PaperPoint::new(left, area.top + if clad { 8.2 } else { 10.0 });
    let layer = canvas.layer(Canvas::ROOT, "notes");
    notes::paragraph(canvas, layer, place, &words, area.right - left, &Style::body());
}

/// Where board and frame begin at an end that another leg covers.
fn met_words(leg: &Leg, facing: &Facing, show: Show) -> String {
    let [finished, board, frame] = facing.near();
    let zero = facing.datum(leg, finished);
    let place = |datum: Datum| {
        let off = facing.datum(leg, datum) - zero;
        let length = show.prose(off.abs());
        match off {
            Length::ZERO => "on that line".to_owned(),
            off if off < Length::ZERO => format!("{length} beyond it, behind the other leg\u{2019}s face"),
            _ => format!("{length} inside it"),
        }
    };
    format!(
        "Running dimensions start where the finished faces of this leg and of {} meet: the {}. That line is not there \
         when the boards are cut. The board begins {}; the bare frame {}.",
        facing.bounds(leg).0.name,
        finished.words(),
        place(board),
        place(frame)
    )
}

/// The end's layers at the corner, with their two dimensions; `corner` is where the finished end's body begins.
fn picture(canvas: &mut Canvas, set: &Set<'_>, leg: &Leg, facing: &Facing, scale: Scale, corner: PaperPoint) {
    let build = facing.near_build(leg);
    let show = set.solved.show;
    let (finish, total) = (build.finish_thickness(), build.total());
    let view: View<Plan> = View::open(canvas, "key", scale, corner.moved(0.0, 9.4));
    let at = view.layer;
    let (top, bottom) = (corner.y, corner.y + 9.4);
    let middle = (top + bottom) / 2.0;
    let x = |length: Length| view.x(length);
    let word = "finish";
    let width = lettering::width(word, BODY, Weight::Regular);
    let named = x(finish) - x(Length::ZERO) > width + 4.0;
    let rect =
        |a: f64, b: f64| crate::sheets::canvas::corners(PaperPoint::new(a, top), PaperPoint::new(b, bottom)).to_vec();
    let centre = (x(Length::ZERO) + x(finish)) / 2.0;
    let mut rings = vec![rect(x(Length::ZERO), x(finish))];
    if named {
        rings.push(materials::clearing(centre - width / 2.0, middle + 1.25, width, BODY));
    }
    if let Some(layer) = &build.finish {
        materials::hatch(canvas, at, &rings, Material::Finish(layer.kind), true);
    }
    materials::hatch(canvas, at, &[rect(x(finish), x(total))], Material::Board, true);
    let (tube, wall) = (set.solved.frame.tube, set.solved.frame.wall);
    let shown = (x(total + tube) - x(total)).min(26.0);
    for (a, b) in [(0.0, view.size(wall)), (view.size(tube) - view.size(wall), view.size(tube))] {
        if b <= shown + 0.01 {
            let (p, q) = (PaperPoint::new(x(total) + a, top), PaperPoint::new(x(total) + b.max(a + 0.3), bottom));
            canvas.rectangle(at, p, q, Paint::fill(Fill::ink(Colour::INK)));
        }
    }
    for length in [finish, total] {
        canvas.line(at, PaperPoint::new(x(length), top), PaperPoint::new(x(length), bottom), Pen::CUT);
    }
    for y in [top, bottom] {
        canvas.line(
            at,
            PaperPoint::new(x(Length::ZERO) - 3.0, y),
            PaperPoint::new(x(total) + shown + 3.0, y),
            Pen::FINE,
        );
    }
    let zero = x(Length::ZERO);
    let facts = vec![("data-datum", facing.near()[0].words().to_owned())];
    let pole = Shape::Line(PaperPoint::new(zero, top - 20.0), PaperPoint::new(zero, top));
    canvas.shape(at, pole, Paint::pen(Pen::VISIBLE.accent().dashed(Dash::FINISHED)), "datum", facts);
    canvas.line(at, PaperPoint::new(zero, top), PaperPoint::new(zero, bottom), Pen::CUT.accent());
    for (length, line, words) in [(finish, top - 10.0, "board end"), (total, top - 17.0, "bare frame")] {
        let z = Length::from_mm(9.4 / scale.factor());
        let dimension = Dimension::new(Across::X, (Length::ZERO, z), (length, z), line)
            .from_finished()
            .datums(facing.near()[0].words(), words)
            .ghosts(true, false);
        // A number that doesn't fit stands clear of both witness lines, and the words clear of the outer arrow.
        let fits = dimension.fits(&view, show);
        let dimension = if fits { dimension } else { dimension.number(Number::After(x(total) - x(length) + 6.5)) };
        let clear = if fits || view.size(length) >= 6.0 { 2.4 } else { 7.5 };
        dimension.draw(canvas, at, &view, show);
        canvas.text(at, PaperPoint::new(zero - clear, line + 1.25), &format!("to {words}"), &Style::body().end());
    }
    if named {
        canvas.text(at, PaperPoint::new(centre, middle + 1.25), word, &Style::body().middle());
    }
    let frame_x = x(total) + shown / 2.0;
    let place = PaperPoint::new(frame_x, middle + 1.25);
    if canvas.is_free(&lettering::set(place, "frame", &Style::body().middle())) {
        canvas.text(at, place, "frame", &Style::body().middle());
    }
    let style = Style::body().bold().coloured(Colour::ACCENT);
    let width = lettering::width("finished end", BODY, Weight::SemiBold);
    canvas.text(at, PaperPoint::new(zero - 4.0, middle + 1.25), "finished end", &style.end());
    marks::flaglet(canvas, at, PaperPoint::new(zero - 4.0 - width - 3.6, middle + 1.25));
}
