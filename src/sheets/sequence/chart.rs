//! The chart: a row a step, its bar as early as it can be, a light bar for the wait, a line from the step that holds it up.

use super::after;
use super::layout::{self, Bar};
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame;
use crate::sheets::notes;
use crate::sheets::set::Set;
use crate::sheets::title_block::{self, shortened};
use crate::solve::{Doer, Step};

/// Height of a row, mm: as much as one page allows, within these.
const ROWS: std::ops::RangeInclusive<f64> = 4.6..=6.2;
/// Rows are close where they are lower than this, mm.
const CLOSE: f64 = 5.0;
/// From the top of the page to the first row: title and headings, mm.
const HEAD: f64 = 14.0;
/// Height of a bar, mm.
const BAR: f64 = 2.6;
/// From lane to lane, mm.
const LANE: f64 = 0.9;

/// Where the columns begin, mm from the left.
struct Columns {
    name: f64,
    who: f64,
    after: f64,
    wait: f64,
    chart: f64,
    right: f64,
    /// Height of a row.
    row: f64,
    /// Width of a division.
    unit: f64,
}

/// Its pages, with nothing else on them.
pub fn pages(set: &Set<'_>, steps: &[Step]) -> Vec<Canvas> {
    let bars = layout::bars(steps);
    let blank = set.sheet();
    let (inside, corner) = (frame::inside(&blank), title_block::corner(&blank));
    let words = words();
    // The key stands beside the title block, or over it where there is no room.
    let beside = corner.x - 8.0 - inside.left;
    let key = notes::list_height(&words, beside.max(60.0));
    let floor =
        if beside >= 90.0 { corner.y - 6.0 } else { corner.y - 10.0 - notes::list_height(&words, inside.width()) };
    let room = floor - inside.top - HEAD;
    let most = ((room / ROWS.start()).floor().max(1.0)) as usize;
    let count = steps.len().div_ceil(most).max(1);
    let each = steps.len().div_ceil(count).max(1);
    let row = (room / each as f64).clamp(*ROWS.start(), *ROWS.end());
    let widest = |texts: &dyn Fn(&Step) -> String| {
        steps.iter().map(|step| lettering::width(&texts(step), BODY, Weight::Regular)).fold(0.0, f64::max)
    };
    let name = 9.0;
    let who = name + widest(&|step| step.name.to_owned()) + 4.0;
    let afters = who + widest(&|step| step.who.words().to_owned()) + 4.0;
    let wait = afters + widest(&after).max(lettering::width("after", BODY, Weight::Regular)) + 4.0;
    let chart = wait + widest(&|step| step.wait.map_or(String::new(), layout::time)).max(8.0) + 4.0;
    let unit = ((inside.width() - chart) / layout::divisions(&bars) as f64).min(14.0);
    let at = |x: f64| inside.left + x;
    let columns = Columns {
        name: at(name),
        who: at(who),
        after: at(afters),
        wait: at(wait),
        chart: at(chart),
        right: inside.right,
        row,
        unit,
    };
    (0..count)
        .map(|page| {
            let mut canvas = set.sheet();
            let rows = page * each..((page + 1) * each).min(steps.len());
            let title = if page == 0 { "What can be done when" } else { "What can be done when, continued" };
            title_block::heading(&mut canvas, inside.left, inside.top + TITLE, title, "");
            let layer = canvas.layer(Canvas::ROOT, "chart");
            draw(&mut canvas, layer, inside.left, inside.top + HEAD, &columns, steps, &bars, rows);
            let last = inside.top + HEAD + each as f64 * row;
            if beside >= 90.0 {
                let top = (corner.y + 6.0).max(last + 8.0).min(inside.bottom - key);
                notes::list(&mut canvas, layer, PaperPoint::new(inside.left, top), &words, beside);
            } else {
                notes::list(&mut canvas, layer, PaperPoint::new(inside.left, floor + 6.0), &words, inside.width());
            }
            canvas
        })
        .collect()
}

/// What the chart's marks mean.
fn words() -> Vec<(String, String)> {
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    vec![
        note("Dark", "the builder\u{2019}s own work, whatever time it takes; white: someone else\u{2019}s."),
        note("Light", "the wait after it, a division a day, ten at most; the data sheet and the weather decide."),
        note(
            "Line",
            "from the step that holds it up longest; all others that come before it stand under \u{201c}after\u{201d}.",
        ),
        note("One below another", "what begins at the same division can be done side by side."),
    ]
}

#[allow(clippy::too_many_arguments)]
fn draw(
    canvas: &mut Canvas,
    at: Layer,
    left: f64,
    top: f64,
    columns: &Columns,
    steps: &[Step],
    bars: &[Bar],
    rows: std::ops::Range<usize>,
) {
    let p = PaperPoint::new;
    let heads = [
        (left, "no."),
        (columns.name, "step"),
        (columns.who, "who"),
        (columns.after, "after"),
        (columns.wait, "wait"),
        (columns.chart, "as early as it can be: a division a step, and one a day of waiting"),
    ];
    for (x, text) in heads {
        canvas.text(at, p(x, top - 1.7), text, &Style::caption());
    }
    canvas.line(at, p(left, top), p(columns.right, top), Pen::SECONDARY);
    let middle = |index: usize| top + (index - rows.start) as f64 * columns.row + columns.row / 2.0;
    let x = |division: usize| columns.chart + division as f64 * columns.unit;
    let lanes = bars.iter().filter_map(|bar| bar.held_by).map(|(_, lane)| lane + 1).max().unwrap_or(1);
    let inset = (0.6 + lanes as f64 * LANE).min(columns.unit * 0.6);
    let lane_x = |division: usize, lane: usize| x(division) + (0.4 + lane as f64 * LANE).min(inset - 0.3);
    for index in rows.clone() {
        let last = index + 1 == rows.end;
        // The last line is a strong one: in close rows letters that reach under theirs would touch it.
        let apart = if last && columns.row < CLOSE { 0.3 } else { 0.0 };
        let bottom = middle(index) + columns.row / 2.0 + apart;
        let pen = if last { Pen::SECONDARY } else { Pen::FINE.coloured(Colour::GREY_RULE) };
        canvas.line(at, p(left, bottom), p(columns.right, bottom), pen);
    }
    // Lines first, so that bars lie over them.
    for index in rows.clone() {
        let Some((before, lane)) = bars[index].held_by else { continue };
        let (lane, y) = (lane_x(bars[index].from, lane), middle(index));
        // From a step on an earlier page the line comes in from above.
        let start = if rows.contains(&before) { middle(before) } else { top };
        let points = [p(x(bars[before].end()), start), p(lane, start), p(lane, y), p(x(bars[index].from) + inset, y)];
        let points = if rows.contains(&before) { &points[..] } else { &points[1..] };
        canvas.polyline(at, points, false, Paint::pen(Pen::DIMENSION));
    }
    for index in rows.clone() {
        let (bar, y, step) = (bars[index], middle(index), &steps[index]);
        let (from, to) = (x(bar.from) + inset, x(bar.from + 1));
        let own = step.who == Doer::Builder;
        let fill = if own { Fill::ink(Colour::GREY_TEXT) } else { Fill::WHITE };
        canvas.rectangle(at, p(from, y - BAR / 2.0), p(to, y + BAR / 2.0), Paint::both(Pen::DIMENSION, fill));
        if bar.wait > 0 {
            let paint = Paint::both(Pen::DIMENSION, Fill::tint(Colour::TINT_BED));
            canvas.rectangle(at, p(to, y - BAR / 2.0), p(x(bar.end()), y + BAR / 2.0), paint);
        }
        let baseline = y + BODY / 2.0 - 0.1;
        canvas.text(at, p(left, baseline), &(index + 1).to_string(), &Style::body().bold());
        let name = shortened(step.name, columns.who - columns.name - 2.0, &Style::body());
        canvas.text(at, p(columns.name, baseline), &name, &Style::body());
        canvas.text(at, p(columns.who, baseline), step.who.words(), &Style::caption());
        canvas.text(at, p(columns.after, baseline), &after(step), &Style::body());
        if let Some(hours) = step.wait {
            canvas.text(at, p(columns.wait, baseline), &layout::time(hours), &Style::body());
        }
    }
}
