//! The stock that the trim is cut from, bar by bar.

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
/// From bar to bar, mm.
const PITCH: f64 = 12.0;

/// The bars as a block; `None` where none is cut into trim.
pub fn block<'a>(set: &'a Set<'_>, width: f64) -> Option<Block<'a>> {
    let marks: Vec<&str> = set.solved.shop.trim.pieces.iter().map(|piece| piece.mark.as_str()).collect();
    let bars: Vec<&StockBar> = set
        .solved
        .shop
        .cutting
        .bars
        .iter()
        .filter(|bar| bar.cuts.iter().any(|(mark, _)| marks.contains(&mark.as_str())))
        .collect();
    let longest = bars.iter().map(|bar| bar.length).max()?;
    let scale = Scale::fitting((longest.mm(), 1.0), (width.min(176.0) - 1.0, f64::MAX), Scale(5));
    let heading = title_block::heading_width("Cut from", &scale.words());
    Some(Block {
        width: (longest.mm() * scale.factor() + 1.0).max(heading),
        height: 8.0 + PITCH * bars.len() as f64,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, set, &bars, scale, at)),
    })
}

fn draw(canvas: &mut Canvas, set: &Set<'_>, bars: &[&StockBar], scale: Scale, corner: PaperPoint) {
    let show = set.solved.show;
    title_block::heading(canvas, corner.x, corner.y + 3.5, "Cut from", &scale.words());
    let layer = canvas.layer(Canvas::ROOT, "bars");
    for (index, bar) in bars.iter().enumerate() {
        let y = corner.y + 11.5 + PITCH * index as f64;
        let words = format!("bar {}, {}, {} left", index + 1, show.prose(bar.length), show.prose(bar.left));
        canvas.text(layer, PaperPoint::new(corner.x, y - 1.4), &words, &Style::body());
        let size = |length: Length| length.mm() * scale.factor();
        let whole = PaperPoint::new(corner.x + size(bar.length), y + HIGH);
        canvas.rectangle(layer, PaperPoint::new(corner.x, y), whole, Paint::pen(Pen::DIMENSION));
        let used: Length = bar.cuts.iter().fold(Length::ZERO, |sum, (_, length)| sum + *length);
        // What is neither piece nor rest went into the saw's kerfs, shared evenly.
        let kerf = if bar.cuts.is_empty() { 0.0 } else { size(bar.length - used - bar.left) / bar.cuts.len() as f64 };
        let mut x = corner.x;
        for (mark, length) in &bar.cuts {
            let (a, b) = (PaperPoint::new(x, y), PaperPoint::new(x + size(*length), y + HIGH));
            canvas.rectangle(layer, a, b, Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD)));
            let middle = PaperPoint::new((a.x + b.x) / 2.0, y + HIGH / 2.0 + 1.25);
            let both = format!("{mark}  {}", show.text(*length));
            let words = if lettering::width(&both, BODY, Weight::SemiBold) + 2.0 <= b.x - a.x { &both } else { mark };
            if lettering::width(words, BODY, Weight::SemiBold) + 1.6 <= b.x - a.x {
                canvas.text(layer, middle, words, &Style::body().bold().middle());
            }
            x = b.x + kerf.max(0.0);
        }
    }
}
