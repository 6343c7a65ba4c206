//! The gas pipe from its source to every appliance, not to scale: lengths, sizes, what each part carries.

use super::tree::{Branch, tree};
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::findings::Subject;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::set::{Kind, Set};
use crate::sheets::{marks, title_block};
use crate::solve::services::{Segment, Services};

/// From one appliance to the next, mm.
const ROW: f64 = 19.0;
/// From the heading to the first row, mm.
const HEAD: f64 = 20.0;
/// Room for an appliance's name and input, mm.
const NAMES: f64 = 46.0;
/// Least length of a segment's line, mm.
const LEAST: f64 = 30.0;

/// Draws it into the upper part of an area and says where it ends; `None` when there is no sound pipe, or no room.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, kind: Kind, area: Area) -> Option<f64> {
    let services = set.solved.services.as_ref()?;
    let tree = tree(services)?;
    let source = services.pipe.get(tree.branches.iter().find(|branch| branch.column == 0)?.segment)?.from.as_str();
    let style = Style::body();
    let widest = services.pipe.iter().flat_map(|segment| {
        let (above, below) = labels(set, segment);
        [above, below].map(|text| lettering::width(&text, BODY, Weight::SemiBold) + 8.0)
    });
    let step = widest.fold(LEAST, f64::max);
    let names = lettering::width(source, BODY, Weight::SemiBold).min(40.0);
    let need = names + 8.0 + step * tree.columns as f64 + NAMES;
    let bottom = area.top + HEAD + (tree.rows.saturating_sub(1)) as f64 * ROW + 10.0;
    if need > area.width() || bottom > area.bottom {
        return None;
    }
    let step = step + ((area.width() - need) / tree.columns as f64).min(26.0);
    title_block::heading(canvas, area.left, area.top + TITLE, "Gas pipe", "not to scale");
    let layer = canvas.layer(Canvas::ROOT, "services");
    let start = area.left + names + 6.0;
    let at = |column: usize, row: f64| PaperPoint::new(start + step * column as f64, area.top + HEAD + row * ROW);
    let words = title_block::shortened(source, 40.0, &style.clone().bold());
    let root = at(0, tree.source);
    let mut branches = tree.branches.clone();
    branches.sort_by_key(|branch| branch.segment);
    for branch in &branches {
        pipe(canvas, layer, branch, &at);
    }
    canvas.circle(layer, root, 1.1, Paint::both(Pen::VISIBLE, Fill::WHITE));
    canvas.text(layer, root.moved(-2.6, 0.9), &words, &Style::body().bold().end());
    if let Some(supply) = services.supply {
        let supply = super::reading(set).pressure(supply);
        let room = names + 8.0;
        let small = lettering::width(&supply, BODY, Weight::Regular) <= room;
        let (place, style) = if small {
            (root.moved(-2.6, 5.4), Style::caption().end())
        } else {
            (PaperPoint::new(area.left, root.y + 5.4), Style::caption())
        };
        canvas.text(layer, place, &supply, &style);
    }
    for branch in &branches {
        let Some(segment) = services.pipe.get(branch.segment) else { continue };
        letters(canvas, layer, set, segment, (at(branch.column, branch.to), step));
        end(canvas, layer, (set, services), segment, at(branch.column + 1, branch.to));
    }
    for appliance in &services.appliances {
        let branch =
            branches.iter().find(|branch| services.pipe.get(branch.segment).is_some_and(|s| s.to == appliance.id));
        if let (Some((leg, index)), Some(branch)) = (appliance.fitting, branch) {
            let place = at(branch.column + 1, branch.to).moved(9.6, -8.0);
            set.mark(canvas, layer, kind, &Subject::Fitting(leg, index), place);
        }
    }
    for branch in &branches {
        let place = at(branch.column, branch.to).moved(step * 0.5, 9.0);
        set.mark(canvas, layer, kind, &Subject::Segment(branch.segment), place);
    }
    set.mark(canvas, layer, kind, &Subject::Services, root.moved(0.0, -8.0));
    Some(bottom)
}

/// The line of a segment: down or up from its junction, then along.
fn pipe(canvas: &mut Canvas, layer: Layer, branch: &Branch, at: &impl Fn(usize, f64) -> PaperPoint) {
    let (a, b) = (at(branch.column, branch.from), at(branch.column + 1, branch.to));
    let bend = PaperPoint::new(a.x, b.y);
    let points: Vec<PaperPoint> = if branch.from == branch.to { vec![a, b] } else { vec![a, bend, b] };
    canvas.polyline(layer, &points, false, Paint::pen(Pen::CUT));
    if branch.from != branch.to {
        canvas.circle(layer, a, 0.9, Paint::fill(Fill::ink(Colour::INK)));
    }
}

/// What stands over and under the line of a segment.
fn labels(set: &Set<'_>, segment: &Segment) -> (String, String) {
    let show = super::reading(set);
    let size = segment.installed.or(segment.needed).map_or_else(|| "not sized".to_owned(), |size| inches(size.words()));
    let above = format!("{} \u{b7} {} \u{b7} {size}", segment.id, show.way(segment.length));
    let bends = super::words::bends(&segment.bends);
    let below = match segment.load {
        Some(load) => show.heat(load),
        None => "load not known".to_owned(),
    };
    (above, if bends.is_empty() { below } else { format!("{below}, {bends}") })
}

/// A nominal size with its fraction set small and its mark: `3⁄4″`.
pub fn inches(words: &str) -> String {
    let figures = words.trim_end_matches(" in");
    let figures = figures.replace('/', "\u{2044}").replace(' ', "\u{2009}");
    format!("{figures}\u{2033}")
}

fn letters(canvas: &mut Canvas, layer: Layer, set: &Set<'_>, segment: &Segment, (start, step): (PaperPoint, f64)) {
    let (above, below) = labels(set, segment);
    let middle = start.moved(step / 2.0, 0.0);
    canvas.text(layer, middle.moved(0.0, -1.8), &above, &Style::body().bold().middle());
    canvas.text(layer, middle.moved(0.0, 4.6), &below, &Style::body().middle());
}

/// What a segment ends at: a junction, or an appliance behind its shutoff.
fn end(canvas: &mut Canvas, layer: Layer, (set, services): (&Set<'_>, &Services), segment: &Segment, at: PaperPoint) {
    let Some(appliance) = services.appliances.iter().find(|appliance| appliance.id == segment.to) else { return };
    let shut = services.connections.iter().any(|c| c.fitting == appliance.id && c.shutoff.is_some());
    if shut {
        // A valve: two triangles, point to point.
        let v = at.moved(2.2, 0.0);
        for side in [-1.0, 1.0] {
            let points = [v, v.moved(side * 2.2, -1.5), v.moved(side * 2.2, 1.5)];
            canvas.polyline(layer, &points, true, Paint::both(Pen::SECONDARY, Fill::WHITE));
        }
    }
    let from = at.moved(if shut { 4.4 } else { 0.0 }, 0.0);
    canvas.line(layer, from, at.moved(6.0, 0.0), Pen::VISIBLE);
    let x = if appliance.mark.is_empty() {
        canvas.rectangle(layer, at.moved(6.0, -2.0), at.moved(10.0, 2.0), Paint::both(Pen::SECONDARY, Fill::WHITE));
        12.0
    } else {
        let radius = marks::ring_radius(&appliance.mark);
        marks::ring(canvas, layer, at.moved(6.0 + radius, 0.0), &appliance.mark);
        6.0 + radius * 2.0 + 2.0
    };
    let room = NAMES - x - 1.0;
    let name = title_block::shortened(&appliance.name, room, &Style::body().bold());
    canvas.text(layer, at.moved(x, -0.8), &name, &Style::body().bold());
    let heat = appliance.heat.map_or_else(|| "input not given".to_owned(), |heat| super::reading(set).heat(heat));
    let heat = title_block::shortened(&heat, room, &Style::body());
    canvas.text(layer, at.moved(x, 4.2), &heat, &Style::body());
}
