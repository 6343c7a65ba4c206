//! One label.

use super::items::Item;
use crate::drawing::Pen;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::Area;
use crate::sheets::marks;
use crate::sheets::notes::wrapped;
use crate::sheets::set::Set;
use crate::sheets::title_block::shortened;

/// White inside the cut marks, mm.
const WHITE: f64 = 4.5;
/// Heights that a mark is set in, the largest that fits, mm.
const MARKS: [f64; 4] = [8.0, 6.0, 5.0, 3.5];
/// From the top to the mark's baseline, mm.
const BASELINE: f64 = 8.0;
/// From the top to the rule under the mark, its descender's room between, mm.
const RULE: f64 = 11.2;
/// Room for the arrow at the right, mm.
const ARROW: f64 = 9.0;

/// Draws a label into its cell.
pub fn draw(canvas: &mut Canvas, at: Layer, cell: Area, set: &Set<'_>, item: &Item) {
    let job = &set.solved.job;
    let (left, right) = (cell.left + WHITE, cell.right - WHITE);
    let (top, bottom) = (cell.top + WHITE, cell.bottom - WHITE);
    let p = PaperPoint::new;
    // The job stands at the right of the mark.
    let number = if job.number.trim().is_empty() { "\u{2013}" } else { job.number.as_str() };
    let job_width = lettering::width(number, TITLE, Weight::SemiBold).max(24.0);
    let room = right - left - job_width - 4.0;
    let height = MARKS.into_iter().find(|height| lettering::width(&item.mark, *height, Weight::SemiBold) <= room);
    let height = height.unwrap_or(TITLE);
    let mark_style = Style::body().bold().sized(height);
    canvas.text(at, p(left, top + BASELINE), &shortened(&item.mark, room, &mark_style), &mark_style);
    canvas.text(
        at,
        p(right, top + TITLE),
        &shortened(number, job_width, &Style::body().bold().sized(TITLE)),
        &Style::body().bold().sized(TITLE).end(),
    );
    let title_room = right - left - lettering::width(&item.mark, height, Weight::SemiBold).min(room) - 4.0;
    let title = shortened(&job.title, title_room, &Style::caption());
    canvas.text(at, p(right, top + BASELINE), &title, &Style::caption().end());
    canvas.line(at, p(left, top + RULE), p(right, top + RULE), Pen::FINE);

    let words_right = if item.side.is_some() { right - ARROW } else { right };
    let mut y = top + RULE + 4.6;
    let last = bottom - 5.0;
    for line in wrapped(&item.size, words_right - left, BODY, Weight::SemiBold).iter().take(2) {
        canvas.text(at, p(left, y), line, &Style::body().bold());
        y += 4.6;
    }
    let side_lines = usize::from(item.side.is_some());
    let lines = (((last - y) / 4.6).floor().max(0.0) as usize + 1).saturating_sub(side_lines);
    let what = wrapped(&item.what, words_right - left, BODY, Weight::Regular);
    for (index, line) in what.iter().take(lines).enumerate() {
        let cut = index + 1 == lines && what.len() > lines;
        let line =
            if cut { shortened(&what[index..].join(" "), words_right - left, &Style::body()) } else { line.clone() };
        canvas.text(at, p(left, y), &line, &Style::body());
        y += 4.6;
    }
    if let Some((side, finished)) = item.side {
        let style = Style::body().bold();
        if finished {
            marks::flaglet(canvas, at, p(left, y));
            let style = style.coloured(crate::drawing::Colour::ACCENT);
            canvas.text(at, p(left + 3.6, y), &shortened(side, words_right - left - 3.6, &style), &style);
        } else {
            canvas.text(at, p(left, y), &shortened(side, words_right - left, &style), &style);
        }
        arrow(canvas, at, p(right - 3.0, top + RULE + 2.6), bottom - 7.0);
    }
    foot(canvas, at, (left, right, bottom), set, item);
}

/// An arrow that points up, with the word under it.
fn arrow(canvas: &mut Canvas, at: Layer, tip: PaperPoint, foot: f64) {
    let ink = crate::drawing::Colour::INK;
    let base = PaperPoint::new(tip.x, foot - 4.2);
    canvas.line(at, base, tip.moved(0.0, 2.0), Pen::SECONDARY);
    canvas.arrow_sized(at, tip, -90.0, ink, 3.2, 1.8);
    canvas.text(at, PaperPoint::new(tip.x, foot - 0.4), "up", &Style::body().middle());
}

/// Weight at the left, where it is drawn at the right.
fn foot(canvas: &mut Canvas, at: Layer, (left, right, bottom): (f64, f64, f64), set: &Set<'_>, item: &Item) {
    let p = PaperPoint::new;
    // What weighs next to nothing needs no figure.
    if let Some(mass) = item.mass.filter(|mass| *mass >= 0.5) {
        canvas.text(at, p(left, bottom), &set.solved.show.mass(mass), &Style::body());
    }
    let Some(number) = item.drawn.and_then(|kind| set.number(kind)) else { return };
    let last = number + item.drawn.map_or(1, |kind| set.page_count(kind)) - 1;
    let sheet = if last > number { format!("sheets {number} to {last}") } else { format!("sheet {number}") };
    canvas.text(at, p(right, bottom), &sheet, &Style::caption().end());
}
