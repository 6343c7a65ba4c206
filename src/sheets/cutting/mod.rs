//! What is cut from what: every stock sheet to scale with its pieces, the order of its cuts and what is kept of it; the bars
//! likewise.

mod notes;
mod sheet;
mod tables;

use super::frame;
use super::scale::{STANDARD, Scale};
use super::set::{Kind, Set};
use super::shelves::{self, Block, Sheet};
use super::title_block::TitleBlock;
use super::{stock_bars, table_blocks};
use crate::drawing::Page;
use crate::solve::StockBar;
use crate::units::Length;

/// Largest scale of a stock sheet.
const LARGEST: Scale = Scale(8);
/// Widest that a stock sheet is drawn, mm.
const WIDEST: f64 = 176.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let blank = set.sheet();
    let width = frame::inside(&blank).width();
    let longest = set.solved.shop.cutting.sheets.iter().map(|sheet| sheet.size.1).max().unwrap_or(Length::ZERO);
    let room = (width.min(WIDEST) - sheet::ASIDE, f64::MAX);
    let largest = Scale::fitting((longest.mm().max(1.0), 1.0), room, LARGEST);
    // A smaller scale, where that spares pages.
    let fresh = || vec![Sheet::fresh(set.sheet())];
    let scales = STANDARD.iter().copied().filter(|scale| *scale >= largest).take(2);
    let tried = scales.map(|scale| blocks(set, scale, width, shelves::page_height(&blank)));
    let best = tried.min_by_key(|blocks| shelves::pages(&fresh(), blocks, &blank));
    let mut sheets = fresh();
    shelves::fill(&mut sheets, &best.unwrap_or_default(), || set.sheet());
    let count = sheets.len();
    let close = |(page, sheet): (usize, Sheet)| {
        let name = "Cutting";
        let block = TitleBlock {
            title: if page == 0 { name.to_owned() } else { format!("{name}, page {} of {count}", page + 1) },
            kind: "Cutting layout".to_owned(),
            scale: sheet.scale_words(),
            ..set.title_block(kind, page)
        };
        set.finish(sheet.canvas, kind, page, &block)
    };
    sheets.into_iter().enumerate().map(close).collect()
}

/// Everything that it shows, the stock sheets at a scale.
fn blocks<'a>(set: &'a Set<'_>, scale: Scale, width: f64, page: f64) -> Vec<Block<'a>> {
    let cutting = &set.solved.shop.cutting;
    let mut blocks: Vec<Block<'_>> = (0..cutting.sheets.len()).map(|index| sheet::block(set, index, scale)).collect();
    blocks.push(notes::block(set, width.min(166.0)));
    blocks.extend(table_blocks::blocks(tables::tables(set), width, page, set.solved.show));
    let mut from = 0;
    while let Some(bar) = cutting.bars.get(from) {
        let own = cutting.bars[from..].iter().take_while(|other| other.name == bar.name).count();
        let kind: Vec<&StockBar> = cutting.bars[from..from + own].iter().collect();
        // Blocks of about one height, so that they stand in their order.
        let most = stock_bars::most(page.min(86.0));
        let most = own.div_ceil(own.div_ceil(most));
        for (index, chunk) in kind.chunks(most).enumerate() {
            let title =
                super::title_block::shortened(&bar.name, 110.0, &crate::drawing::lettering::Style::body().bold());
            blocks.extend(stock_bars::block(set, title, chunk.to_vec(), 1 + index * most, width));
        }
        from += own;
    }
    blocks
}

/// The name of a stock sheet: its number among those of its material.
fn name(set: &Set<'_>, index: usize) -> String {
    let cutting = &set.solved.shop.cutting;
    let Some(sheet) = cutting.sheets.get(index) else { return String::new() };
    let letter = char::from(b'a' + (sheet.material % 26) as u8);
    let before = cutting.sheets[..index].iter().filter(|other| other.material == sheet.material).count();
    format!("{letter}{}", before + 1)
}
