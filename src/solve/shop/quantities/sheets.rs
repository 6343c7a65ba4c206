//! Board and substrate in sheets: as laid out where they are, else by area.

use super::book::{Book, Draft, Kind};
use super::faces::Faced;
use crate::parameters::given::{Figure, Given, SheetStock};
use crate::solve::{MaterialGroup, MaterialLine, Shop, Solved, takeoff};
use crate::units::{Exact, Length};

/// The lines of the sheets.
pub fn lines(book: &Book, given: &Given, solved: &Solved, shop: &Shop, faced: &[Faced]) -> Vec<MaterialLine> {
    if shop.cutting.sheets.is_empty() { by_area(book, given, solved, faced) } else { laid_out(book, shop) }
}

/// Bought sheets of each material and size, and pieces on the builder's own offcuts.
fn laid_out(book: &Book, shop: &Shop) -> Vec<MaterialLine> {
    let mut lines = Vec::new();
    for (index, material) in shop.cutting.materials.iter().enumerate() {
        let mut sizes: Vec<(Length, Length)> = Vec::new();
        let bought = || shop.cutting.sheets.iter().filter(|sheet| sheet.material == index && sheet.offcut.is_none());
        for sheet in bought() {
            if !sizes.contains(&sheet.size) {
                sizes.push(sheet.size);
            }
        }
        for size in sizes {
            let own = || bought().filter(|sheet| sheet.size == size);
            let placed: Vec<usize> = own().flat_map(|sheet| &sheet.placed).map(|placed| placed.piece).collect();
            let net: Exact = placed
                .iter()
                .filter_map(|&piece| shop.pieces.get(piece))
                .map(|piece| takeoff::area(&piece.region))
                .sum();
            if !net.is_positive() {
                continue;
            }
            let (count, each) = (own().count(), takeoff::rectangle(size.0, size.1));
            let all = each.clone() * Exact::whole(count as i128);
            lines.push(MaterialLine {
                group: MaterialGroup::Board,
                name: format!("{}, {}", material.name, book.show.prose(material.thickness)),
                net: book.amount(Kind::Area, &net),
                unit: book.unit(Kind::Area).to_owned(),
                waste: 0.0,
                order_unit: format!("sheet of {} by {}", book.show.prose(size.0), book.show.prose(size.1)),
                count: count as u64,
                how: format!(
                    "{} in {}, as laid out on the cutting sheet; {} are left over",
                    book.words(Kind::Area, &net),
                    super::book::counted(placed.len(), "piece"),
                    book.words(Kind::Area, &(all - net.clone()))
                ),
                origin: "the layout of the pieces".to_owned(),
                parts: Vec::new(),
            });
        }
    }
    lines
}

/// Sheets by area alone, of the first size of their stock.
fn by_area(book: &Book, given: &Given, solved: &Solved, faced: &[Faced]) -> Vec<MaterialLine> {
    let sheet = |name: String, parts: Vec<(String, Exact)>, stock: &SheetStock| {
        let (width, length) = stock.sheets.first().copied().unwrap_or_default();
        book.line(Draft {
            group: MaterialGroup::Board,
            name,
            kind: Kind::Area,
            net: parts.iter().map(|(_, part)| part.clone()).sum(),
            from: String::new(),
            waste: Some(Figure::SheetWaste),
            each: takeoff::rectangle(width, length),
            unit: format!("sheet of {} by {}", book.show.prose(width), book.show.prose(length)),
            gives: "by area only, a sheet has",
            by: Vec::new(),
            parts: if parts.len() > 1 { parts } else { Vec::new() },
        })
    };
    let mut kinds: Vec<(&str, Length)> = Vec::new();
    for one in faced {
        let kind = (one.build.board_name.as_str(), one.build.board);
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    let mut lines: Vec<Option<MaterialLine>> = Vec::new();
    for (name, thick) in kinds {
        let own = faced.iter().filter(|one| one.build.board_name == name && one.build.board == thick);
        let parts = own.map(|one| (one.word.clone(), one.area.clone())).collect();
        lines.push(sheet(format!("{name}, {}", book.show.prose(thick)), parts, &given.stock.board));
    }
    let under =
        solved.legs.iter().map(|leg| (format!("leg {}", leg.id), takeoff::area(&leg.substrate.region))).collect();
    let name = format!("{}, {}", solved.substrate.name, book.show.prose(solved.substrate.thickness));
    lines.push(sheet(name, under, &given.stock.substrate));
    lines.into_iter().flatten().collect()
}
