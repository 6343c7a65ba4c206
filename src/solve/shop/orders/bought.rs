//! What is bought by the piece, the bag or the length: lines of the quantities, and stock bars.

use std::collections::BTreeMap;

use crate::solve::{MaterialGroup, MaterialLine, Order, OrderLine, Shop, Solved, Supplier};
use crate::units::Length;

/// Tube, angle and feet, for whoever welds the frames himself.
pub fn metal(solved: &Solved, shop: &Shop) -> Order {
    let mut lines = lines(shop, MaterialGroup::Metal);
    // Bars as they were laid out tell more than a sum of lengths does.
    let mut bars: BTreeMap<(&str, Length), (u64, usize)> = BTreeMap::new();
    for bar in &shop.cutting.bars {
        let entry = bars.entry((&bar.name, bar.length)).or_default();
        entry.0 += 1;
        entry.1 += bar.cuts.len();
    }
    lines.retain(|line| !bars.keys().any(|(name, _)| line.what.starts_with(name)));
    for ((name, length), (count, cuts)) in bars {
        lines.push(OrderLine {
            count,
            what: format!("{name}, {} long", solved.show.prose(length)),
            mind: vec![format!("{cuts} lengths were laid out on them")],
            ..OrderLine::default()
        });
    }
    let mind = vec!["Only where the frames are welded by us; a frame maker brings his own metal.".to_owned()];
    Order { supplier: Supplier::Metal, lines, mind }
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
pub fn trim(_solved: &Solved, shop: &Shop) -> Order {
    let mind = vec!["Straight lengths, for outdoors; the scribe is cut on site.".to_owned()];
    Order { supplier: Supplier::Trim, lines: lines(shop, MaterialGroup::Trim), mind }
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
