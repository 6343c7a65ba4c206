//! Board and substrate by the sheet.

use std::collections::BTreeMap;

use super::bought;
use crate::solve::{MaterialGroup, Order, OrderLine, Shop, Solved, StockSheet, Supplier};
use crate::units::Length;

/// The order to the board merchant: whole sheets as the pieces were laid out on them; where they weren't laid out, what
/// the quantities say.
pub fn order(solved: &Solved, shop: &Shop) -> Order {
    let mut alike: BTreeMap<(usize, Length, Length), Vec<&StockSheet>> = BTreeMap::new();
    for sheet in shop.cutting.sheets.iter().filter(|sheet| sheet.offcut.is_none()) {
        alike.entry((sheet.material, sheet.size.0, sheet.size.1)).or_default().push(sheet);
    }
    let mut lines = Vec::new();
    for ((material, short, long), sheets) in &alike {
        let Some(material) = shop.cutting.materials.get(*material) else { continue };
        let show = solved.show;
        let pieces = sheets.iter().map(|sheet| sheet.placed.len()).sum::<usize>();
        lines.push(OrderLine {
            count: sheets.len() as u64,
            what: format!(
                "{}, {} thick, sheet {} \u{d7} {}",
                material.name,
                show.prose(material.thickness),
                show.prose(*short),
                show.prose(*long)
            ),
            mind: vec![format!("whole sheets of this size: {pieces} pieces were laid out on them")],
            mass: Some(material.mass * short.mm() * long.mm() * 1e-6).filter(|mass| *mass > 0.0),
            ..OrderLine::default()
        });
    }
    if lines.is_empty() {
        lines = bought::lines(shop, MaterialGroup::Board);
    }
    let mind = vec![
        "For outdoors: board that keeps its strength when wet, as its maker says in writing.".to_owned(),
        "Deliver flat and dry; broken corners go back.".to_owned(),
    ];
    Order { supplier: Supplier::Boards, lines, mind }
}
