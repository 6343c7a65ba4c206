//! Stock bars and what is cut from each, bar by bar.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Paint};
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
    Some(Block {
        width: (longest.mm() * scale.factor() + 1.0).max(heading),
        height: HEADING + PITCH * bars.len() as f64,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| {
            title_block::heading(canvas, at.x, at.y + 3.5, &title, &scale.words());
            draw(canvas, set, &bars, first, scale, at);
        }),
    })
}

/// How many bars a block of a height takes.
pub fn most(height: f64) -> usize {
    (((height - HEADING) / PITCH).floor() as usize).max(1)
}

fn draw(canvas: &mut Canvas, set: &Set<'_>, bars: &[&StockBar], first: usize, scale: Scale, corner: PaperPoint) {
    let show = set.solved.show;
    let layer = canvas.layer(Canvas::ROOT, "bars");
    let longest = bars.iter().map(|bar| bar.length).max().unwrap_or(Length::ZERO);
    for (index, bar) in bars.iter().enumerate() {
        let y = corner.y + 11.5 + PITCH * index as f64;
        let so_far = format!("bar {}, {}, {} left", first + index, show.prose(bar.length), show.prose(bar.left));
        let end = canvas.text(layer, PaperPoint::new(corner.x, y - 1.4), &so_far, &Style::body());
        let room = longest.mm() * scale.factor() - end - 3.0;
        let counted = title_block::shortened(&counted(bar), room, &Style::caption());
        if room > 20.0 {
            canvas.text(layer, PaperPoint::new(corner.x + end + 3.0, y - 1.4), &counted, &Style::caption());
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
    let one = |(mark, count): (&str, usize)| if count > 1 { format!("{count} {mark}") } else { mark.to_owned() };
    marks.into_iter().map(one).collect::<Vec<_>>().join(", ")
}
