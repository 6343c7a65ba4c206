//! Base trim by length, and vents by size.

use super::book::{Book, Draft, Kind};
use crate::parameters::given::Figure;
use crate::solve::{Face, FittingKind, MaterialGroup, MaterialLine, OpeningSort, Plane, Shop, Solved};
use crate::units::{Exact, Length};

/// Base trim, where no layout of its lengths is made.
pub fn trim(book: &Book, solved: &Solved, shop: &Shop) -> Option<MaterialLine> {
    let trim = solved.trim.as_ref()?;
    if shop.cutting.bars.iter().any(|bar| bar.name == trim.name) {
        return None;
    }
    let mut parts: Vec<(String, Exact)> = Vec::new();
    if shop.trim.pieces.is_empty() {
        for leg in &solved.legs {
            let d = &leg.datums;
            for (face, word) in super::faces::FACES {
                let long = match face {
                    Face::Front | Face::Back => d.finished_right,
                    Face::Left | Face::Right => d.finished_back,
                };
                if leg.finish(face).is_some() {
                    parts.push((word.to_owned(), Exact::length(long)));
                }
            }
        }
    } else {
        for piece in &shop.trim.pieces {
            parts.push((piece.mark.clone(), Exact::length(piece.to - piece.from)));
        }
    }
    let stock = Exact::length(trim.stock.first().copied().unwrap_or_default());
    book.line(Draft {
        group: MaterialGroup::Trim,
        name: format!("{}, {} thick", trim.name, book.show.prose(trim.thickness)),
        kind: Kind::Length,
        net: parts.iter().map(|(_, part)| part.clone()).sum(),
        from: String::new(),
        waste: Some(Figure::TrimWaste),
        unit: format!("length of {}", book.words(Kind::Length, &stock)),
        each: stock,
        gives: "by length only, a length is",
        by: Vec::new(),
        parts: if parts.len() > 1 { parts } else { Vec::new() },
    })
}

/// Vents, one line a size.
pub fn vents(book: &Book, solved: &Solved) -> Vec<MaterialLine> {
    let mut sizes: Vec<(Length, Length, Option<String>, Vec<&str>)> = Vec::new();
    for leg in &solved.legs {
        for fitting in leg.fittings.iter().filter(|one| one.kind == FittingKind::Opening(OpeningSort::Vent)) {
            let Some(cutout) = fitting.cutout(Plane::of(fitting.face)) else { continue };
            let (wide, high) = (cutout.extent.width(), cutout.extent.height());
            let free = fitting.needs.free_area.map(|area| book.show.area(area));
            match sizes.iter_mut().find(|size| (size.0, size.1, &size.2) == (wide, high, &free)) {
                Some(size) => size.3.push(&fitting.mark),
                None => sizes.push((wide, high, free, vec![&fitting.mark])),
            }
        }
    }
    let line = |(wide, high, free, marks): (Length, Length, Option<String>, Vec<&str>)| {
        let size = format!("{} by {}", book.show.prose(wide), book.show.prose(high));
        let free = free.map_or_else(String::new, |free| format!(", {free} free"));
        book.line(Draft {
            group: MaterialGroup::Vent,
            name: format!("vent for an opening of {size}{free}"),
            kind: Kind::Count,
            net: Exact::whole(marks.len() as i128),
            from: marks.join(", "),
            waste: None,
            each: Exact::whole(1),
            unit: "vent".to_owned(),
            gives: "",
            by: Vec::new(),
            parts: Vec::new(),
        })
    };
    sizes.into_iter().filter_map(line).collect()
}
