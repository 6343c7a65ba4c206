//! What has to be bought, line by line. Each line says how its count was worked out, and where its coverage comes from.

mod around;
mod book;
mod counter;
mod faces;
mod finish;
mod joints;
mod metal;
mod screws;
mod sealant;
mod sheets;
mod slabs;

pub use metal::tube_name;

use crate::parameters::given::{Figure, Given};
use crate::solve::{DefaultUsed, MaterialLine, Shop, Solved};
use crate::units::Length;
use book::Book;

/// The usable slab, length and width, that a counter of stone or porcelain is counted by.
pub fn slab(given: &Given, solved: &Solved) -> (Length, Length) {
    slabs::size(&Book::new(&given.materials, solved.show), solved)
}

/// What has to be bought, in the order in which a run is built, and the figures that were taken for want of the job's own.
pub fn quantities(given: &Given, solved: &Solved, shop: &Shop) -> (Vec<MaterialLine>, Vec<DefaultUsed>) {
    let book = Book::new(&given.materials, solved.show);
    for figure in super::weights::figures(given) {
        book.note(figure);
    }
    book.note(Figure::TwoLift);
    let faced = faces::faced(solved, shop);
    let corners = faces::corners(solved, &faced);
    let mut lines = metal::lines(&book, given, solved, shop);
    lines.extend(sheets::lines(&book, given, solved, shop, &faced));
    lines.extend(screws::lines(&book, solved, shop, &faced));
    lines.extend(joints::lines(&book, &faced, &corners));
    lines.extend(finish::lines(&book, &faced, &corners));
    lines.extend(sealant::line(&book, solved, &faced, &corners));
    lines.extend(counter::lines(&book, solved));
    lines.extend(around::trim(&book, solved, shop));
    lines.extend(around::vents(&book, solved));
    // Each group together, lines of a group in the order in which they came.
    lines.sort_by_key(|line| line.group);
    (lines, book.assumed())
}
