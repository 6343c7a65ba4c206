//! What is bought by the piece, the bag or the length: lines of the quantities, and stock bars.

use std::collections::BTreeMap;

use crate::solve::{MaterialGroup, MaterialLine, Order, OrderLine, Shop, Solved, Supplier};
use crate::units::Length;

/// Tube, angle and feet, for whoever welds the frames himself.
pub fn metal(solved: &Solved, shop: &Shop) -> Order {
    let lines = with_bars(solved, shop, MaterialGroup::Metal, |name| !is_trim(solved, name));
    let mind = vec!["Only where the frames are welded by us; a frame maker brings his own metal.".to_owned()];
    Order { supplier: Supplier::Metal, lines, mind }
}

/// Whether a bar is one of the base trim.
fn is_trim(solved: &Solved, bar: &str) -> bool {
    solved.trim.as_ref().is_some_and(|trim| bar.starts_with(trim.name.as_str()))
}

/// What a bar of the base trim has to measure across: its thickness, and the width that its highest piece is cut from.
fn section(solved: &Solved, shop: &Shop, bar: &str) -> String {
    let Some(trim) = solved.trim.as_ref().filter(|_| is_trim(solved, bar)) else { return String::new() };
    let high = shop.trim.pieces.iter().map(|piece| {
        let (_, low, _, high) = piece.region.outer.bounds();
        Length::from_mm(high - low)
    });
    let wide = high.max().map_or(String::new(), |wide| format!(" \u{d7} {} wide at least", solved.show.prose(wide)));
    format!(", {}{wide}", solved.show.prose(trim.thickness))
}

/// Lines of a group, those of bars put in the place of the sums of lengths that they are cut to: bars as they were laid
/// out tell more.
fn with_bars(solved: &Solved, shop: &Shop, group: MaterialGroup, wanted: impl Fn(&str) -> bool) -> Vec<OrderLine> {
    let mut lines = lines(shop, group);
    let mut bars: BTreeMap<(&str, Length), (u64, usize)> = BTreeMap::new();
    for bar in shop.cutting.bars.iter().filter(|bar| wanted(&bar.name)) {
        let entry = bars.entry((&bar.name, bar.length)).or_default();
        entry.0 += 1;
        entry.1 += bar.cuts.len();
    }
    lines.retain(|line| !bars.keys().any(|(name, _)| line.what.starts_with(name)));
    for ((name, length), (count, cuts)) in bars {
        let words = if cuts == 1 { "1 length is".to_owned() } else { format!("{cuts} lengths are") };
        lines.push(OrderLine {
            count,
            what: format!("{name}{}, {} long", section(solved, shop, name), solved.show.prose(length)),
            mind: vec![format!("{words} laid out on {}", if count == 1 { "it" } else { "them" })],
            ..OrderLine::default()
        });
    }
    lines
}

/// Screws, tape, adhesive. Vents are ordered with the fittings, by their marks.
pub fn hardware(_solved: &Solved, shop: &Shop) -> Order {
    let all = lines(shop, MaterialGroup::Hardware);
    let mind = vec!["Outdoors: metal that does not rust, and no two metals that eat each other.".to_owned()];
    Order { supplier: Supplier::Hardware, lines: all, mind }
}

/// What goes on the boards and into the joints.
pub fn finish(_solved: &Solved, shop: &Shop) -> Order {
    let mind = vec![
        "For outdoors and frost; one batch for all that is seen at once.".to_owned(),
        "Send the data sheets: they decide drying times, and what harms skin and lungs.".to_owned(),
    ];
    Order { supplier: Supplier::Finish, lines: lines(shop, MaterialGroup::Finish), mind }
}

/// Base trim by the stock length.
pub fn trim(solved: &Solved, shop: &Shop) -> Order {
    let mind = vec!["Straight lengths, for outdoors; the scribe is cut on site.".to_owned()];
    Order {
        supplier: Supplier::Trim,
        lines: with_bars(solved, shop, MaterialGroup::Trim, |name| is_trim(solved, name)),
        mind,
    }
}

/// Lines of a group, of which something has to be bought.
pub fn lines(shop: &Shop, group: MaterialGroup) -> Vec<OrderLine> {
    shop.quantities.iter().filter(|line| line.group == group && line.count > 0).map(line).collect()
}

fn line(line: &MaterialLine) -> OrderLine {
    let waste = if line.waste > 0.0 { format!(", and {:.0} % for waste", line.waste * 100.0) } else { String::new() };
    let net = format!("{:.1}", line.net);
    let net = net.strip_suffix(".0").unwrap_or(&net);
    let unit = if line.unit.is_empty() { String::new() } else { format!(" {}", line.unit) };
    OrderLine {
        count: line.count,
        what: format!("{}, {}", line.name, line.order_unit),
        mind: vec![format!("for {net}{unit} net{waste}")],
        ..OrderLine::default()
    }
}
