//! One leg with all its dimensions, its face along the sheet.

use super::covered::Covered;
use super::kept::Kept;
use super::seen::{LEVEL, Seen};
use super::{cuts, levels, lines, marks, run, supports, walls};
use crate::geometry::{PaperPoint, Plan};
use crate::sheets::canvas::Canvas;
use crate::sheets::dimensions::NEXT;
use crate::sheets::frame::{self, Area, MARGIN};
use crate::sheets::scale::{STANDARD, Scale};
use crate::sheets::set::{Kind, Set};
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{Face, Leg};

/// A canvas, the areas that are left on it for lists, and its scale in words.
pub type Drawn = (Canvas, Vec<Area>, String);

/// From the top of a sheet's inside to the top of a view under its heading, mm.
const HEADING: f64 = 8.0;
/// Room in front of the counter for section marks and rings, mm.
const STRIP: f64 = 21.0;

/// Draws the view and returns it, and whether it shows the fan of depths. `wanted` is the height of paper that the
/// first lists would like to have under it.
pub fn draw(set: &Set<'_>, kind: Kind, index: usize, wanted: f64) -> (Drawn, bool) {
    let leg = &set.solved.legs[index];
    let canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let most = inside.height() - HEADING - (frame::border(&canvas).bottom - title_block::corner(&canvas).y);
    let (layout, scale) = Layout::chosen(leg, set, inside, most, wanted);
    // Running numbers, in two units more so, may reach into the title block: a smaller scale keeps off it.
    let smaller = STANDARD.iter().copied().skip_while(|it| *it != scale).skip(1).take(4);
    let (mut drawn, mut clear) = at_scale(set, kind, index, &layout, scale);
    for scale in smaller {
        if clear {
            break;
        }
        (drawn, clear) = at_scale(set, kind, index, &layout, scale);
    }
    (drawn, layout.has_fan)
}

/// The view at a scale, and whether it keeps off the title block.
fn at_scale(set: &Set<'_>, kind: Kind, index: usize, layout: &Layout<'_>, scale: Scale) -> (Drawn, bool) {
    let (solved, leg) = (set.solved, &set.solved.legs[index]);
    let mut canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let block = title_block::corner(&canvas);
    let (wide, high) = layout.size(scale);
    let reach = walls::reach(leg, scale.factor());
    let spare = (inside.width() - wide).max(0.0) / 2.0;
    let (left_room, above) = (layout.left(), layout.above());
    let origin = PaperPoint::new(
        inside.left + spare + left_room - reach.left * scale.factor(),
        inside.top + HEADING + above + reach.back * scale.factor(),
    );
    let several = solved.legs.len() > 1;
    let title = if several { format!("Plan of leg {} ({})", index + 1, leg.id) } else { "Plan".to_owned() };
    title_block::heading(&mut canvas, inside.left, inside.top + 3.5, &title, &scale.words());
    let view: View<Plan> = View::open(&mut canvas, &format!("plan {}", index + 1), scale, origin);
    let bar = canvas.layer(view.layer, "scale-bar");
    crate::sheets::marks::scale_bar(&mut canvas, bar, inside.right - 3.0, inside.top + 4.5, scale, solved.show.system);
    let seen = Seen { leg, index, placement: LEVEL, view: &view };
    let geometry = canvas.layer(view.layer, "run");
    walls::draw(&mut canvas, geometry, &seen);
    run::draw(&mut canvas, geometry, solved, &seen);

    let left = view.x_mm(reach.left);
    let right = view.x_mm(reach.right);
    let (front, back) = (view.y_mm(reach.front), view.y_mm(reach.back));
    let notes = canvas.layer(view.layer, "marks");
    let dims = canvas.layer(view.layer, "dimensions");
    marks::flags(&mut canvas, notes, &seen);
    let clear = if layout.rings_behind { STRIP } else { 11.0 };
    lines::behind(&mut canvas, dims, &seen, solved.show, back - clear, back - 1.5);
    let lowest = lines::in_front(&mut canvas, dims, &seen, solved.show, front + STRIP + 6.0);
    let (fan_left, at_left, at_right) = (layout.fan_left, left - layout.ring_left, right + layout.ring_right);
    let (on_left, on_right) = ((left, at_left, -1.0), (right, at_right, 1.0));
    let (ladder, fan) = if fan_left { (on_right, on_left) } else { (on_left, on_right) };
    lines::depths(&mut canvas, dims, &seen, solved.show, ladder.0, ladder.1, ladder.2);
    if layout.has_fan {
        levels::draw(&mut canvas, dims, &seen, solved.show, fan.0, fan.1, fan.2);
    }
    let behind = view.y(leg.datums.counter_back) - back + 1.5;
    let mut kept = Kept::default();
    cuts::draw(&mut canvas, notes, set, &seen, (&Covered::one(&seen), &mut kept), (&[1.5], &[behind]));
    marks::rings(&mut canvas, notes, &seen, &mut kept);
    marks::services(&mut canvas, notes, &seen, &mut kept);
    walls::label(&mut canvas, notes, &seen, solved.show);
    let falls: Vec<PaperPoint> = (2..12)
        .flat_map(|step| {
            let y = front + f64::from(step) * 3.0;
            [PaperPoint::new(at_right + 6.0, y), PaperPoint::new(inside.left, y)]
        })
        .collect();
    marks::fall(&mut canvas, notes, set, &seen, &falls);
    marks::feet(&mut canvas, notes, set, &seen);
    supports::marks(&mut canvas, notes, solved, &seen);
    marks::findings(&mut canvas, notes, set, kind, &seen);

    let bottom = (lowest + 10.0).max(inside.top + HEADING + high + 4.0);
    let words = scale.words();
    let clear = right < block.x || lowest + 1.0 < block.y;
    ((canvas, areas(inside, (block.x, block.y), bottom), words), clear)
}

/// The paper that a leg's drawing takes round the leg itself.
struct Layout<'l> {
    leg: &'l Leg,
    set: &'l Set<'l>,
    fan_left: bool,
    fan: f64,
    has_fan: bool,
    ring_left: f64,
    ring_right: f64,
    rings_behind: bool,
}

/// The three depth dimensions beside an end, mm.
const LADDER: f64 = 10.0 + 2.0 * NEXT + 3.0;

impl<'l> Layout<'l> {
    /// The layout and the scale of a leg. The fan of depths gives way to a table where it would cost two steps of
    /// scale; the scale gives up to two steps for the lists under the view.
    fn chosen(leg: &'l Leg, set: &'l Set<'l>, inside: Area, most: f64, wanted: f64) -> (Layout<'l>, Scale) {
        let step = |scale: Scale| STANDARD.iter().position(|it| *it == scale).unwrap_or(STANDARD.len());
        let (with, without) = (Layout::of(leg, set, true), Layout::of(leg, set, false));
        let room = (inside.width(), most);
        let (large, small) = (without.scale(room), with.scale(room));
        // On a shallow strip the fanned names would stand higher than the run with its dimensions.
        let shallow = leg.counter.extent.height().mm() * small.factor() < 20.0;
        let (layout, scale) = if shallow || step(small) >= step(large) + 2 { (without, large) } else { (with, small) };
        let shared = (room.0, most.min(inside.height() - HEADING - wanted - 10.0));
        let lower = layout.scale(shared);
        if step(lower) <= step(scale) + 2 { (layout, lower) } else { (layout, scale) }
    }

    fn of(leg: &'l Leg, set: &'l Set<'l>, has_fan: bool) -> Layout<'l> {
        let on = |face: Face| leg.on_face(face).next().is_some();
        let ring = |face: Face| if on(face) { 14.0 } else { 0.0 };
        // The fan of depths goes to the free end, so that its lines come from the layers themselves.
        let fan_left = leg.left.is_open() && !leg.right.is_open();
        Layout {
            leg,
            set,
            fan_left,
            fan: if has_fan {
                levels::reach(leg, set.solved.show)
            } else {
                4.0 + crate::sheets::table::figures_width(set.solved.show, crate::units::Length::from_mm(99.0))
            },
            has_fan,
            ring_left: ring(Face::Left),
            ring_right: ring(Face::Right),
            rings_behind: on(Face::Back),
        }
    }

    fn left(&self) -> f64 {
        self.ring_left + if self.fan_left { self.fan } else { LADDER }
    }

    fn right(&self) -> f64 {
        self.ring_right + if self.fan_left { LADDER } else { self.fan }
    }

    fn above(&self) -> f64 {
        NEXT + 6.0 + if self.rings_behind { STRIP } else { 11.0 }
    }

    fn size(&self, scale: Scale) -> (f64, f64) {
        let factor = scale.factor();
        let reach = walls::reach(self.leg, factor);
        let below = STRIP + 6.0 + lines::front_height(self.leg, factor, self.set.solved.show);
        let wide = self.left() + (reach.right - reach.left) * factor + self.right();
        (wide, self.above() + (reach.back - reach.front) * factor + below)
    }

    /// The largest standard scale, up to 1:4, at which all of it fits.
    fn scale(&self, room: (f64, f64)) -> Scale {
        let fits = |scale: &&Scale| {
            let (wide, high) = self.size(**scale);
            **scale >= Scale(4) && wide <= room.0 && high <= room.1
        };
        STANDARD.iter().find(fits).or(STANDARD.last()).copied().unwrap_or(Scale(100))
    }
}

/// Columns of paper under a view that ends at `top`: beside the title block to the bottom, and over it.
pub fn areas(inside: Area, block: (f64, f64), top: f64) -> Vec<Area> {
    let (least, gutter) = (92.0, 10.0);
    let mut areas = Vec::new();
    let mut columns = |left: f64, right: f64, bottom: f64| {
        let count = ((right - left + gutter) / (least + gutter)).floor().max(1.0);
        let wide = (right - left - gutter * (count - 1.0)) / count;
        if bottom - top < 20.0 {
            return;
        }
        for k in 0..count as usize {
            let left = left + k as f64 * (wide + gutter);
            areas.push(Area { left, top, right: left + wide, bottom });
        }
    };
    columns(inside.left, block.0 - MARGIN, inside.bottom);
    columns(block.0 + 1.8, inside.right, block.1 - MARGIN);
    areas
}
