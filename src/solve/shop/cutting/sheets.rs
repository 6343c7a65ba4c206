//! The pieces on stock sheets, material by material.

use crate::parameters::given::Given;
use crate::solve::nesting::{self, Bought, Offcut, Part, Request, Way};
use crate::solve::{Placed, SheetCut, SheetMaterial, Shop, StockSheet};
use crate::units::Length;

/// Stock sheets with what is cut from each; pieces that no sheet takes are on none.
pub fn sheets(given: &Given, shop: &Shop) -> Vec<StockSheet> {
    let mut all = Vec::new();
    for (index, material) in shop.cutting.materials.iter().enumerate() {
        let mut pieces: Vec<usize> = (0..shop.pieces.len()).filter(|&k| shop.pieces[k].material == index).collect();
        loop {
            let request = request(material, shop, &pieces, given.stock.keep);
            match nesting::sheets(&request) {
                Ok(layout) => {
                    all.extend(layout.sheets.iter().map(|sheet| stock(index, material, &pieces, sheet, layout.proven)));
                    break;
                }
                Err(too_big) if too_big.is_empty() => break,
                Err(too_big) => {
                    let kept = pieces.iter().enumerate().filter(|(k, _)| !too_big.contains(k));
                    pieces = kept.map(|(_, piece)| *piece).collect();
                }
            }
        }
    }
    all
}

/// What is asked for: each piece stands upright on the sheet's width, its own width along the sheet's length.
fn request(material: &SheetMaterial, shop: &Shop, pieces: &[usize], keep: Length) -> Request {
    let part = |&index: &usize| {
        let (wide, high) = shop.pieces[index].blank;
        Part { size: (high, wide), turns: material.turned }
    };
    Request {
        parts: pieces.iter().map(part).collect(),
        offcuts: material.offcuts.iter().map(|(_, size)| Offcut { size: *size }).collect(),
        bought: material.sizes.iter().map(|size| Bought { size: *size }).collect(),
        kerf: material.kerf,
        way: if material.edge_to_edge { Way::EdgeToEdge } else { Way::Any },
        keep,
    }
}

/// A sheet as it lies: its length to the right, its width up.
fn stock(index: usize, material: &SheetMaterial, pieces: &[usize], sheet: &nesting::Sheet, proven: bool) -> StockSheet {
    let lying = |(x, y): (Length, Length)| (y, x);
    let placed = sheet.placed.iter().filter_map(|placed| {
        Some(Placed { piece: *pieces.get(placed.part)?, at: lying(placed.at), turned: placed.turned })
    });
    StockSheet {
        material: index,
        size: sheet.size,
        offcut: sheet.offcut.and_then(|k| material.offcuts.get(k)).map(|(name, _)| name.clone()),
        placed: placed.collect(),
        cuts: sheet.cuts.iter().map(|&(from, to)| SheetCut { from: lying(from), to: lying(to) }).collect(),
        kept: sheet
            .kept
            .iter()
            .map(|&(at, size)| {
                let ((x, y), (w, h)) = (lying(at), lying(size));
                (x, y, w, h)
            })
            .collect(),
        fewest: proven,
    }
}
