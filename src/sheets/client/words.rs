//! The few words and numbers of the sheet: title, overall size, counter height, fall, scale bar.

use super::layout::{KEY_PITCH, Layout};
use super::scene::Scene;
use crate::drawing::Colour;
use crate::drawing::Pen;
use crate::drawing::lettering::{self, BODY, SHEET_TITLE, Style, TITLE, Weight};
use crate::geometry::{FrontFace, PaperPoint};
use crate::sheets::canvas::Canvas;
use crate::sheets::dimensions::{Across, Dimension};
use crate::sheets::frame::Area;
use crate::sheets::marks;
use crate::sheets::set::Set;
use crate::sheets::title_block::shortened;
use crate::sheets::view::View;
use crate::solve::{Bound, Face};
use crate::units::{Length, Show, System};

/// The job's title over what is seen, top left. Returns the box that it takes.
pub fn title(canvas: &mut Canvas, set: &Set<'_>, scene: &Scene<'_>, leg: usize, layout: &Layout) -> Area {
    let layer = canvas.layer(Canvas::ROOT, "heading");
    let side = if scene.face == Face::Back { "seen from behind" } else { "front view" };
    let several = if set.solved.legs.len() > 1 {
        format!(", leg {}", set.solved.legs.get(leg).map_or("", |leg| leg.id.as_str()))
    } else {
        String::new()
    };
    let room = layout.room.width() * 0.7;
    let title = Style::body().bold().sized(SHEET_TITLE);
    let plain = Style::caption().sized(TITLE);
    let named = if set.solved.job.title.trim().is_empty() { "Outdoor kitchen" } else { set.solved.job.title.as_str() };
    let (x, y) = (layout.room.left, layout.title);
    let lines = [
        (shortened(named, room, &title), 0.0, title),
        (shortened(&format!("Outdoor kitchen, {side}{several}"), room, &plain), 7.2, plain),
    ];
    let mut wide = 0.0_f64;
    for (text, down, style) in &lines {
        wide = wide.max(canvas.text(layer, PaperPoint::new(x, y + down), text, style));
    }
    Area { left: x, top: y - 6.0, right: x + wide, bottom: y + 8.5 }
}

/// One end of the overall dimension.
struct End {
    at: Length,
    finished: bool,
    datum: &'static str,
    word: String,
}

fn end(scene: &Scene<'_>, viewer_left: bool) -> End {
    let leg = scene.leg;
    let back = scene.face == Face::Back;
    let bound: &Bound = if viewer_left == back { &leg.right } else { &leg.left };
    let far = leg.datums.finished_right;
    let place = |u: Length| if back { far - u } else { u };
    if bound.is_open() {
        let at = if viewer_left { Length::ZERO } else { far };
        let datum = if viewer_left == back { "finished right end" } else { "finished left end" };
        return End { at, finished: true, datum, word: "finished end".to_owned() };
    }
    let word = if bound.name.trim().is_empty() { "wall".to_owned() } else { bound.name.clone() };
    End { at: place(bound.at), finished: false, datum: "face of what stands there", word }
}

/// From the line of the modules to under the widths that stand below it, mm of paper.
const UNDER_WIDTHS: f64 = 6.6;

/// The overall size, from a finished end where there is one.
pub fn overall(canvas: &mut Canvas, view: &View<FrontFace>, scene: &Scene<'_>, layout: &Layout) {
    let (left, right) = (end(scene, true), end(scene, false));
    let mirrored = !left.finished && right.finished;
    let (from, to) = if mirrored { (&right, &left) } else { (&left, &right) };
    let y = layout.overall;
    // Below the line of the modules, whose names may reach past the run's ends.
    let start = |at: Length| {
        let (x, high) = (view.x(at), layout.modules + 2.4);
        // At a corner a module goes on past the finished end, and its width may stand there.
        let clear = canvas.is_box_free_of_text(x - 1.5, high, x + 1.5, y);
        Some(if clear { high } else { layout.modules + UNDER_WIDTHS })
    };
    let (near, far) = (start(from.at), start(to.at));
    let size = Dimension::new(Across::X, (from.at, Length::ZERO), (to.at, Length::ZERO), y)
        .datums(from.datum, to.datum)
        .witnesses(near, far);
    let size = if from.finished { size.from_finished() } else { size };
    size.draw(canvas, view.layer, view, scene.solved.show);
    for (end, at_left) in [(&left, true), (&right, false)] {
        let accent = end.finished && from.finished;
        let style = Style::body().coloured(if accent { Colour::ACCENT } else { Colour::GREY_TEXT });
        let x = view.x(end.at) + if at_left { -2.8 } else { 2.8 };
        let style = if at_left { style.end() } else { style };
        let room = if at_left { x - layout.room.left } else { layout.room.right - x };
        let text = shortened(&end.word, room, &style);
        if !text.is_empty() {
            canvas.text_at_first(view.layer, &[PaperPoint::new(x, y + 0.9)], &text, &style);
        }
    }
}

/// Height of the counter over the highest floor point, at the end where no figure walks.
pub fn height(canvas: &mut Canvas, view: &View<FrontFace>, scene: &Scene<'_>, layout: &Layout) {
    let right = layout.height_side > 0.0;
    let outer = match (&scene.bounds[usize::from(right)], right) {
        (Some(side), true) => side.ends(0.0).1.max(side.ends(scene.levels.1).1),
        (Some(side), false) => side.ends(0.0).0.min(side.ends(scene.levels.1).0),
        (None, true) => scene.reach.1,
        (None, false) => scene.reach.0,
    };
    let edge = view.x_mm(outer);
    let side = layout.height_side;
    let line = edge + side * 13.0;
    let top = scene.leg.datums.counter_top;
    let at = Length::from_mm(outer);
    let low = if scene.floor(outer + side * view_mm(view, 13.0)) < -0.3 / view.scale.factor() {
        line - side * 4.0
    } else {
        line
    };
    let height = Dimension::new(Across::Y, (at, Length::ZERO), (at, top), line)
        .datums("floor, high point", "counter top")
        .witnesses(Some(low), Some(edge + side * 2.0));
    // Where both readings don't fit beside a small run, the first alone does.
    let show = scene.solved.show;
    let first = Show::new(if show.system == System::Both { System::Inches } else { show.system });
    height.draw(canvas, view.layer, view, if height.fits(view, show) { show } else { first });
    let style = Style::caption();
    let style = if right { style } else { style.end() };
    let places =
        [PaperPoint::new(edge + side * 2.0, view.y(top) - 1.2), PaperPoint::new(edge + side * 2.0, view.y(top) - 2.4)];
    canvas.text_at_first(view.layer, &places, "counter", &style);
}

fn view_mm(view: &View<FrontFace>, paper: f64) -> f64 {
    paper / view.scale.factor()
}

/// How the floor falls along the run, with an arrow downhill, where the ground is free.
pub fn fall(canvas: &mut Canvas, view: &View<FrontFace>, scene: &Scene<'_>, layout: &Layout) {
    let rise = scene.rise();
    let show = scene.solved.show;
    let run = match show.system {
        System::Millimetres => Length::from_mm(1000.0),
        System::Inches | System::Both => Length::from_inches(12.0),
    };
    let drop = run.scaled(rise.abs());
    if show.rounded(drop) == Length::ZERO {
        return;
    }
    let text = format!("floor falls {} in {}", show.prose(drop), show.prose(run));
    let style = Style::caption();
    let width = lettering::width(&text, BODY, Weight::Regular);
    // Beside the names of the modules, or between them and the ground.
    let y = layout.modules - 9.6;
    let total = width + 15.0;
    let (first, last) = (view.x_mm(layout.left) + 3.0, view.x_mm(layout.right) - total - 3.0);
    let steps = 24;
    for k in 0..=steps {
        let x = first + (last - first) * f64::from(k) / f64::from(steps);
        if !canvas.is_box_free(x - 1.0, y - 3.2, x + total, y + 1.4) {
            continue;
        }
        // Downhill is where the arrow points, and the arrow stands on that side of the words.
        let downhill_left = rise > 0.0;
        let (words, tail, tip) =
            if downhill_left { (x + 14.0, x + 12.0, x) } else { (x, x + width + 2.0, x + width + 14.0) };
        canvas.text(view.layer, PaperPoint::new(words, y), &text, &style);
        let (a, b) = (PaperPoint::new(tail, y - 0.95), PaperPoint::new(tip, y - 0.95));
        let colour = Colour::GREY_TEXT;
        canvas.line(view.layer, a, b, Pen::DIMENSION.coloured(colour));
        canvas.arrow(view.layer, b, if downhill_left { 180.0 } else { 0.0 }, colour);
        return;
    }
}

/// The scale bar, where it disturbs nothing: under the ground at the right, on the line of the overall size, or top right.
pub fn scale_bar(canvas: &mut Canvas, view: &View<FrontFace>, scene: &Scene<'_>, layout: &Layout) {
    let right = layout.room.right - 1.5;
    let places = [layout.modules + 2.0, layout.overall + 1.5, layout.title];
    let left = right - marks::scale_bar_length(view.scale, scene.solved.show.system) - 4.0;
    let free = |canvas: &Canvas, y: f64| canvas.is_box_free(left, y - 6.5, right + 1.5, y + 2.0);
    let y = places.into_iter().find(|&y| free(canvas, y)).unwrap_or(layout.title);
    let layer = canvas.layer(Canvas::ROOT, "scale-bar");
    marks::scale_bar(canvas, layer, right, y, view.scale, scene.solved.show.system);
}

/// Names of modules that were too narrow for them.
pub fn key(canvas: &mut Canvas, view: &View<FrontFace>, layout: &Layout) {
    for (k, line) in layout.row.key.iter().enumerate() {
        let place = PaperPoint::new(layout.room.left, layout.key + KEY_PITCH * k as f64);
        canvas.text(view.layer, place, line, &Style::caption());
    }
}
