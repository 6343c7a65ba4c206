//! Stock bars and what is cut from each, bar by bar.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::notes::wrapped;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::shelves::Block;
use crate::sheets::title_block;
use crate::solve::StockBar;
use crate::units::Length;

/// Height of a bar as it is drawn, mm: not to scale.
const HIGH: f64 = 5.0;
/// Under the heading, mm.
const HEADING: f64 = 8.0;
/// From bar to bar, mm.
const PITCH: f64 = 12.0;
/// From bar to bar where words go on under a bar, mm.
const WIDE_PITCH: f64 = 15.5;

/// Bars of one kind as a block under a title, numbered from `first` on; `None` where there are none.
pub fn block<'a>(
    set: &'a Set<'_>,
    title: String,
    bars: Vec<&'a StockBar>,
    first: usize,
    width: f64,
) -> Option<Block<'a>> {
    let longest = bars.iter().map(|bar| bar.length).max()?;
    let scale = Scale::fitting((longest.mm(), 1.0), (width.min(176.0) - 1.0, f64::MAX), Scale(5));
    let heading = title_block::heading_width(&title, &scale.words());
    let own = longest.mm() * scale.factor();
    let goes_on = |(index, bar): (usize, &&StockBar)| said(set, bar, first + index, own).1.len() > 1;
    let pitch = if bars.iter().enumerate().any(goes_on) { WIDE_PITCH } else { PITCH };
    Some(Block {
        width: (own + 1.0).max(heading),
        height: HEADING + pitch * bars.len() as f64,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| {
            title_block::heading(canvas, at.x, at.y + 3.5, &title, &scale.words());
            draw(canvas, set, &bars, first, (scale, pitch), at);
        }),
    })
}

/// How many bars a block of a height takes.
pub fn most(height: f64) -> usize {
    (((height - HEADING) / PITCH).floor() as usize).max(1)
}

/// What is written over a bar: what it is, and what is cut from it, on to a second line that stands under it.
fn said(set: &Set<'_>, bar: &StockBar, number: usize, width: f64) -> (String, Vec<String>) {
    let show = set.solved.show;
    let so_far = format!("bar {number}, {}, {} left", show.prose(bar.length), show.prose(bar.left));
    let room = width - lettering::width(&so_far, BODY, Weight::Regular) - 3.0;
    let all = counted(bar);
    if lettering::width(&all, BODY, Weight::Regular) <= room {
        return (so_far, vec![all]);
    }
    let mut lines = wrapped(&all, room.max(20.0), BODY, Weight::Regular).into_iter();
    let over = if room > 20.0 { lines.next().unwrap_or_default() } else { String::new() };
    let rest = all[over.len()..].trim_start().to_owned();
    (so_far, vec![over, title_block::shortened(&rest, width, &Style::caption())])
}

fn draw(
    canvas: &mut Canvas,
    set: &Set<'_>,
    bars: &[&StockBar],
    first: usize,
    (scale, pitch): (Scale, f64),
    corner: PaperPoint,
) {
    let show = set.solved.show;
    let layer = canvas.layer(Canvas::ROOT, "bars");
    let longest = bars.iter().map(|bar| bar.length).max().unwrap_or(Length::ZERO);
    for (index, bar) in bars.iter().enumerate() {
        let y = corner.y + 11.5 + pitch * index as f64;
        let (so_far, counted) = said(set, bar, first + index, longest.mm() * scale.factor());
        let end = canvas.text(layer, PaperPoint::new(corner.x, y - 1.4), &so_far, &Style::body());
        let places = [(corner.x + end + 3.0, y - 1.4), (corner.x, y + HIGH + 3.4)];
        for (line, (x, y)) in counted.iter().zip(places).filter(|(line, _)| !line.is_empty()) {
            canvas.text(layer, PaperPoint::new(x, y), line, &Style::caption());
        }
        let size = |length: Length| length.mm() * scale.factor();
        let whole = PaperPoint::new(corner.x + size(bar.length), y + HIGH);
        canvas.rectangle(layer, PaperPoint::new(corner.x, y), whole, Paint::pen(Pen::DIMENSION));
        let mut x = corner.x + size(bar.end_trim);
        for (mark, length) in &bar.cuts {
            let (a, b) = (PaperPoint::new(x, y), PaperPoint::new(x + size(*length), y + HIGH));
            canvas.rectangle(layer, a, b, Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD)));
            let middle = PaperPoint::new((a.x + b.x) / 2.0, y + HIGH / 2.0 + 1.25);
            let both = format!("{mark}  {}", show.text(*length));
            let words = if lettering::width(&both, BODY, Weight::SemiBold) + 2.0 <= b.x - a.x { &both } else { mark };
            if lettering::width(words, BODY, Weight::SemiBold) + 1.6 <= b.x - a.x {
                canvas.text(layer, middle, words, &Style::body().bold().middle());
            }
            x = b.x + size(bar.kerf);
        }
    }
}

/// What is cut from a bar, by mark: as many of each.
fn counted(bar: &StockBar) -> String {
    let mut marks: Vec<(&str, usize)> = Vec::new();
    for (mark, _) in &bar.cuts {
        match marks.iter_mut().find(|(own, _)| own == mark) {
            Some((_, count)) => *count += 1,
            None => marks.push((mark, 1)),
        }
    }
    let one = |(mark, count): (&str, usize)| if count > 1 { format!("{count}\u{d7}{mark}") } else { mark.to_owned() };
    marks.into_iter().map(one).collect::<Vec<_>>().join(", ")
}
