//! Lengths on stock bars: the frame's tubes, what supports need besides, base trim.

use super::super::quantities::tube_name;
use crate::parameters::given::Given;
use crate::solve::nesting;
use crate::solve::{Shop, Solved, StockBar};
use crate::units::Length;

/// What is cut from bars of one kind.
struct Kind {
    name: String,
    stock: Vec<Length>,
    end_trim: Length,
    cuts: Vec<(String, Length)>,
}

/// Stock bars with what is cut from each.
pub fn bars(given: &Given, solved: &Solved, shop: &Shop) -> Vec<StockBar> {
    let mut kinds: Vec<Kind> = Vec::new();
    let metal = &given.stock.bars;
    let mut put = |name: &str, stock: &[Length], end_trim: Length, cut: (String, Length)| match kinds
        .iter_mut()
        .find(|kind| kind.name == name)
    {
        Some(kind) => kind.cuts.push(cut),
        None => kinds.push(Kind { name: name.to_owned(), stock: stock.to_vec(), end_trim, cuts: vec![cut] }),
    };
    let tube = tube_name(solved.show, solved);
    for cut in &shop.supports.tubes {
        for _ in 0..cut.count {
            put(&tube, &metal.lengths, metal.end_trim, (cut.mark.clone(), cut.length));
        }
    }
    for support in &shop.supports.members {
        let other = format!("{} {}", support.alloy, support.section);
        let name = if support.of_frame_tube { &tube } else { &other };
        put(name, &metal.lengths, metal.end_trim, (support.mark.clone(), support.length));
    }
    if let Some(trim) = &solved.trim {
        for piece in &shop.trim.pieces {
            put(&trim.name, &trim.stock, Length::ZERO, (piece.mark.clone(), piece.length()));
        }
    }
    kinds.iter().flat_map(|kind| laid(kind, metal.kerf)).collect()
}

/// Bars of one kind; lengths that no bar has are on none.
fn laid(kind: &Kind, kerf: Length) -> Vec<StockBar> {
    let mut cuts: Vec<&(String, Length)> = kind.cuts.iter().collect();
    loop {
        let lengths: Vec<Length> = cuts.iter().map(|(_, length)| *length).collect();
        match nesting::bars(&kind.stock, kerf, kind.end_trim, &lengths) {
            Ok(bars) => {
                let bar = |bar: &nesting::BarCuts| StockBar {
                    name: kind.name.clone(),
                    length: bar.stock,
                    cuts: bar.cuts.iter().filter_map(|&index| cuts.get(index)).map(|&cut| cut.clone()).collect(),
                    left: bar.left,
                    end_trim: kind.end_trim,
                    kerf,
                };
                return bars.iter().map(bar).collect();
            }
            Err(too_long) if too_long.is_empty() => return Vec::new(),
            Err(too_long) => {
                let kept = cuts.iter().enumerate().filter(|(index, _)| !too_long.contains(index));
                cuts = kept.map(|(_, cut)| *cut).collect();
            }
        }
    }
}
