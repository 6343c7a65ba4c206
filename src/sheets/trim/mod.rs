//! The base trim, for the builder: every piece as it is seen, scribed and notched, with its heights; what bars it is cut from, how it is
//! fastened and how it ends.

pub mod ends;
mod notes;
mod piece;
mod tables;

use super::frame;
use super::scale::{STANDARD, Scale};
use super::set::{Kind, Set};
use super::shelves::{self, Block, Sheet};
use super::stock_bars;
use super::title_block::TitleBlock;
use crate::drawing::Page;
use crate::solve::StockBar;
use crate::units::Length;

/// Largest scale of a piece.
const LARGEST: Scale = Scale(4);

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let blank = set.sheet();
    let inside = frame::inside(&blank);
    let pieces = &set.solved.shop.trim.pieces;
    let longest = pieces.iter().map(|piece| piece.length()).max().unwrap_or(Length::from_mm(1.0));
    let room = (inside.width() - 2.0 * piece::ASIDE, f64::MAX);
    let largest = Scale::fitting((longest.mm(), 1.0), room, LARGEST);
    // Up to four smaller scales, where that spares pages.
    let fresh = || vec![Sheet::fresh(set.sheet())];
    let scales = STANDARD.iter().copied().filter(|scale| *scale >= largest).take(5);
    let tried = scales.map(|scale| blocks(set, scale, inside.width(), shelves::page_height(&blank)));
    let best = tried.min_by_key(|blocks| shelves::pages(&fresh(), blocks, &blank));
    let mut sheets = fresh();
    shelves::fill(&mut sheets, &best.unwrap_or_default(), || set.sheet());
    let count = sheets.len();
    let close = |(page, sheet): (usize, Sheet)| {
        let name = "Base trim";
        let trim = set.solved.trim.as_ref();
        let block = TitleBlock {
            title: if page == 0 { name.to_owned() } else { format!("{name}, page {} of {count}", page + 1) },
            kind: "Scribe template".to_owned(),
            subtitle: match trim {
                Some(trim) => {
                    format!("{}, {} {} thick", set.solved.job.title, trim.name, set.solved.show.prose(trim.thickness))
                }
                None => set.solved.job.title.clone(),
            },
            scale: sheet.scale_words(),
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    };
    sheets.into_iter().enumerate().map(close).collect()
}

/// Everything that the sheet shows, the pieces at a scale.
fn blocks<'a>(set: &'a Set<'_>, scale: Scale, width: f64, page: f64) -> Vec<Block<'a>> {
    let mut blocks: Vec<Block<'_>> =
        set.solved.shop.trim.pieces.iter().map(|it| piece::block(set, it, scale)).collect();
    blocks.extend(tables::blocks(set, width, page));
    let marks: Vec<&str> = set.solved.shop.trim.pieces.iter().map(|piece| piece.mark.as_str()).collect();
    let is_trim = |bar: &&StockBar| bar.cuts.iter().any(|(mark, _)| marks.contains(&mark.as_str()));
    let bars: Vec<&StockBar> = set.solved.shop.cutting.bars.iter().filter(is_trim).collect();
    for (index, chunk) in bars.chunks(stock_bars::most(page)).enumerate() {
        let first = 1 + index * stock_bars::most(page);
        blocks.extend(stock_bars::block(set, "Cut from".to_owned(), chunk.to_vec(), first, width));
    }
    blocks.push(notes::block(set, width.min(166.0)));
    blocks
}
