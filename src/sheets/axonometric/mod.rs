//! The whole run in one parallel projection, for the client: hidden surfaces left out, materials as in the elevations.

mod choice;
mod ground;
mod names;
mod seen;

use super::canvas::Canvas;
use super::client::patch::Rect;
use super::client::scene::Scene;
use super::client::swatches;
use super::frame::{self, Area};
use super::scale::Scale;
use super::set::{Kind, Set};
use super::solids::{self, Picture, Projection, System};
use super::title_block::{TitleBlock, shortened};
use super::view::number;
use crate::drawing::lettering::{SHEET_TITLE, Style, TITLE};
use crate::drawing::{Fact, Page};
use crate::geometry::PaperPoint;
use crate::solve::Face;
use seen::Seen;

/// White round the picture, mm of paper.
const MARGIN: f64 = 4.0;
/// Lines of the note under the picture, apart, mm of paper.
const PITCH: f64 = 4.6;

/// Draws its page.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let solved = set.solved;
    let Some(first) = solved.legs.first() else { return Vec::new() };
    let mut canvas = Canvas::new(solved.paper.width, solved.paper.height);
    frame::draw_thin(&mut canvas);
    let border = frame::border(&canvas);
    let side = if canvas.width < 340.0 { 6.0 } else { 10.0 };
    let room = Area { left: border.left + side, top: border.top, right: border.right - side, bottom: border.bottom };
    let title = border.top + if canvas.height < 250.0 { 11.0 } else { 15.5 };
    let band = swatches::band(&canvas, room);

    let (system, view) = choice::view(solved);
    let legs: Vec<usize> = (0..solved.legs.len()).collect();
    let mut model = solids::run(solved, &legs, &view, false);
    solids::site(&mut model, &view);
    let bounds = model.bounds(|place| view.spot(place), |_| true);
    let note = band.top - 6.0 - PITCH;
    let free = Area { left: room.left, top: title + 11.0, right: room.right, bottom: note - 6.0 };
    let size = (bounds.width(), bounds.height());
    let scale = Scale::fitting(size, (free.width() - 2.0 * MARGIN, free.height()), Scale(8));
    let factor = scale.factor();
    let origin = placed(&bounds, &free, factor);
    for scene in &mut model.scenes {
        scene.size = (f64::from(scale.0) / 16.0).max(1.0);
    }
    let layer = canvas.layer_with(Canvas::ROOT, "axonometric", facts(system, &view, origin, factor));
    solids::paint(&mut canvas, &model, &view, &Picture { layer, origin, factor, square: None, corners: [false; 2] });
    heading(&mut canvas, set, room, title);
    say(&mut canvas, system, scale, room, note);
    let seen = Seen::new(&model, &view, origin, factor);
    let within = Area { bottom: note - 5.0, ..free };
    ground::draw(&mut canvas, solved, &seen, &within);
    names::draw(&mut canvas, solved, &seen, &within);
    let mut scene = Scene::new(solved, first, Face::Front);
    scene.bounds = [None, None];
    swatches::draw(&mut canvas, &scene, band);
    let block = set.title_block(kind, 0);
    let status = if set.stops(kind) { block.status.clone() } else { "For your approval".to_owned() };
    let block = TitleBlock {
        title: "The whole run".to_owned(),
        kind: system.words().to_owned(),
        scale: format!("{} on axes", scale.words()),
        status,
        ..block
    };
    vec![set.finish(canvas, kind, 0, &block)]
}

/// How the plan's x and y and the height z fall on the sheet, for whoever checks the picture.
fn facts(system: System, view: &Projection, origin: PaperPoint, factor: f64) -> Vec<Fact> {
    let axis = |way: [f64; 3]| {
        let step = view.step(way);
        format!("{},{}", number(step[0] * factor, 9), number(-step[1] * factor, 9))
    };
    vec![
        ("data-projection", system.words().to_lowercase()),
        ("data-origin", format!("{},{}", number(origin.x, 4), number(origin.y, 4))),
        ("data-axis-x", axis([1.0, 0.0, 0.0])),
        ("data-axis-y", axis([0.0, 1.0, 0.0])),
        ("data-axis-z", axis([0.0, 0.0, 1.0])),
    ]
}

/// Where the projection's (0, 0) falls so that the picture stands in the middle of its room.
fn placed(bounds: &Rect, free: &Area, factor: f64) -> PaperPoint {
    let spare = free.height() - bounds.height() * factor;
    let x = (free.left + free.right) / 2.0 - bounds.middle() * factor;
    let y = free.top + spare * 0.5 + bounds.y1 * factor;
    let hundredths = |v: f64| (v * 100.0).round() / 100.0;
    PaperPoint::new(hundredths(x), hundredths(y))
}

fn heading(canvas: &mut Canvas, set: &Set<'_>, room: Area, title: f64) {
    let layer = canvas.layer(Canvas::ROOT, "heading");
    let wide = room.width() * 0.7;
    let (bold, plain) = (Style::body().bold().sized(SHEET_TITLE), Style::caption().sized(TITLE));
    let job = set.solved.job.title.trim();
    let named = if job.is_empty() { "Outdoor kitchen" } else { job };
    canvas.text(layer, PaperPoint::new(room.left, title), &shortened(named, wide, &bold), &bold);
    let second = shortened("Outdoor kitchen, the whole run", wide, &plain);
    canvas.text(layer, PaperPoint::new(room.left, title + 7.2), &second, &plain);
}

/// What may be measured, and what not.
fn say(canvas: &mut Canvas, system: System, scale: Scale, room: Area, y: f64) {
    let layer = canvas.layer(Canvas::ROOT, "note");
    let half = Scale(scale.0 * 2).words();
    let lines = match system {
        System::Isometric => format!(
            "Isometric projection after ISO 5456-3: {} along each of the first leg's three axes, no scale in any other \
             direction. A picture, not to be measured.",
            scale.words()
        ),
        System::Dimetric => format!(
            "Dimetric projection after ISO 5456-3: {} along the run and upright, {half} in depth, no scale in any other \
             direction. A picture, not to be measured.",
            scale.words()
        ),
    };
    let style = Style::caption();
    let wrapped = super::notes::wrapped(
        &lines,
        room.width(),
        crate::drawing::lettering::BODY,
        crate::drawing::lettering::Weight::Regular,
    );
    for (k, line) in wrapped.iter().take(2).enumerate() {
        canvas.text(layer, PaperPoint::new(room.left, y + PITCH * k as f64), line, &style);
    }
}
