//! The label, the scale bars and the map of a tile, each where the page is white.

use super::bars;
use super::label::{Label, Map, WIDTH};
use super::plan::PAST;
use super::room::Room;
use super::tile::Sheet;
use crate::drawing::lettering::{self, Style};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::Area;
use crate::sheets::notes;

/// White round a block, mm.
const CLEAR: f64 = 1.5;

/// Label first, then the bars, then what they must measure, then the map: what comes first finds room first.
pub fn draw(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "about");
    let area = quiet_area(sheet);
    let mut room = Room::of(&sheet.canvas, area);
    let corner = label(sheet, layer, &mut room);
    scale_bars(sheet, layer, &mut room, &area);
    if let (Some(corner), false) = (corner, sheet.plan.roll) {
        map(sheet, layer, &room, (corner.x - area.left, corner.y - area.top));
    }
}

/// The label with all its rows, or as many as there is room for; where it lies.
fn label(sheet: &mut Sheet<'_>, layer: Layer, room: &mut Room) -> Option<PaperPoint> {
    let label = Label::new(sheet.solved, sheet.template, sheet.plan, sheet.setting, sheet.place.0, sheet.place.1);
    let size = |rows: usize| (WIDTH + 2.0 * CLEAR, Label::height(rows) + 2.0 * CLEAR);
    let (corner, rows) = [label.rows.len(), 5, 3].into_iter().find_map(|rows| {
        let place = room.find(size(rows).0, size(rows).1, |x, y| y + 0.6 * x)?;
        Some((place, rows))
    })?;
    label.draw(&mut sheet.canvas, layer, corner.moved(CLEAR, CLEAR), rows);
    room.take(corner, size(rows).0, size(rows).1);
    Some(corner)
}

/// A bar each way, both as long as there is room for, with what they must measure.
fn scale_bars(sheet: &mut Sheet<'_>, layer: Layer, room: &mut Room, area: &Area) {
    let both = bars::SIZES.into_iter().find_map(|size| {
        let [left, above, right, below] = bars::reach(size, true);
        let (width, height) = (left + right, above + below);
        let upright =
            room.find(width, height, |x, y| (area.width() - width - x) + 0.3 * (area.height() - height - y))?;
        let taken = [upright.x, upright.y, upright.x + width, upright.y + height];
        let [left_level, above_level, right_level, below_level] = bars::reach(size, false);
        let (across, down) = (left_level + right_level, above_level + below_level);
        let level = room.find_beside(across, down, taken, |x, y| (area.height() - down - y) + 0.3 * x)?;
        Some((size, (upright, width, height, left, above), (level, across, down, left_level, above_level)))
    });
    let Some((size, upright, level)) = both else { return };
    for ((corner, width, height, left, above), is_upright) in [(upright, true), (level, false)] {
        bars::draw(&mut sheet.canvas, layer, corner.moved(left, above), size, is_upright);
        room.take(corner, width, height);
    }
    sentence(sheet, layer, room, &bars::sentence(size), (level.0.x - area.left, level.0.y + level.2 - area.top));
}

/// What the bars must measure, under the level one or as near to it as there is white; broken in two where it must.
fn sentence(sheet: &mut Sheet<'_>, layer: Layer, room: &mut Room, words: &str, (near_x, near_y): (f64, f64)) {
    let style = Style::body();
    for width in [150.0, 80.0, 56.0] {
        let lines = notes::wrapped(words, width, style.height, style.weight);
        let wide = lines.iter().map(|line| lettering::width(line, style.height, style.weight)).fold(0.0, f64::max);
        let high = lines.len() as f64 * notes::PITCH + 1.0;
        let Some(place) = room.find(wide + 2.0, high, |x, y| (x - near_x).abs() + (y - near_y).abs()) else { continue };
        for (index, line) in lines.iter().enumerate() {
            sheet.canvas.text(layer, place.moved(1.0, 3.5 + notes::PITCH * index as f64), line, &style);
        }
        room.take(place, wide + 2.0, high);
        return;
    }
}

/// The map of the whole, under the label or as near to that as there is white.
fn map(sheet: &mut Sheet<'_>, layer: Layer, room: &Room, (label_x, label_y): (f64, f64)) {
    let map = Map::new(sheet.plan, WIDTH, 66.0);
    let place = room.find(map.size.0 + 2.0 * CLEAR, map.size.1 + 2.0 * CLEAR, |x, y| {
        (y - label_y - 70.0).abs() + (x - label_x).abs()
    });
    if let Some(place) = place {
        map.draw(&mut sheet.canvas, layer, place.moved(CLEAR, CLEAR), sheet.template, sheet.plan, sheet.place);
    }
}

/// Where words about the tile may lie: what only this tile shows; on a roll the strip beside the part.
fn quiet_area(sheet: &Sheet<'_>) -> Area {
    let ink = sheet.ink();
    if !sheet.plan.roll {
        let trim = sheet.area(&sheet.trim);
        return Area { left: trim.left + 1.5, top: trim.top + 1.5, right: trim.right - 1.5, bottom: trim.bottom - 1.5 };
    }
    let (_, y0, x1, _) = sheet.template.bounds();
    let past = PAST + 16.0;
    let (right, below) = (sheet.view.x_mm(x1 + past), sheet.view.y_mm(y0 - past));
    if ink.right - right > 150.0 { Area { left: right, ..ink } } else { Area { top: below, ..ink } }
}
