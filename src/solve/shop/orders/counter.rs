//! Pieces of the counter.

use super::{bought, edges};
use crate::solve::{
    CounterMaterial, Fitting, Leg, MaterialGroup, Order, OrderLine, Piece, Plane, Shop, Solved, Supplier,
};
use crate::units::Length;

/// The order to the counter fabricator: each piece with its edges and cutouts, then what a cast counter is made of.
pub fn order(solved: &Solved, shop: &Shop) -> Order {
    let facts = &solved.counter;
    let several = solved.legs.iter().filter(|leg| !leg.counter.pieces.is_empty()).count() > 1;
    let mut lines = Vec::new();
    for leg in &solved.legs {
        for piece in &leg.counter.pieces {
            lines.push(line(solved, leg, piece, several));
        }
        for (name, left, right, mass) in &leg.counter.splashes {
            let Some(splash) = facts.splash else { continue };
            let show = solved.show;
            lines.push(OrderLine {
                mark: marked(leg, name, several),
                count: 1,
                what: format!(
                    "upstand, {}, {} long, {} high, {} thick",
                    facts.name,
                    show.prose(*right - *left),
                    show.prose(splash.height),
                    show.prose(splash.thickness)
                ),
                mass: Some(*mass),
                ..OrderLine::default()
            });
        }
    }
    if facts.material == CounterMaterial::Concrete {
        lines.extend(bought::lines(shop, MaterialGroup::Counter));
    }
    let show = solved.show;
    let mut mind = vec![
        "The counter sheet goes with this order; it is cut from that sheet, signed, and from a template taken on site."
            .to_owned(),
        format!("Outline within {} of the sheet.", show.prose(facts.tolerance)),
        "Overhangs are measured from the finished face, never from the board or the frame.".to_owned(),
        "Every cutout is checked against the fitting in hand before it is cut.".to_owned(),
    ];
    if facts.corner_radius > Length::ZERO {
        mind.push(format!("Free outside corners: radius {}.", show.prose(facts.corner_radius)));
    }
    Order { supplier: Supplier::Counter, lines, mind }
}

/// A name that is unique in the run.
pub fn marked(leg: &Leg, name: &str, several: bool) -> String {
    if several { format!("{name}, {}", leg.id) } else { name.to_owned() }
}

fn line(solved: &Solved, leg: &Leg, piece: &Piece, several: bool) -> OrderLine {
    let (show, facts) = (solved.show, &solved.counter);
    let what = format!(
        "{}, {} thick, {} \u{d7} {}",
        facts.name,
        show.prose(facts.thickness),
        show.prose(piece.extent.width()),
        show.prose(piece.extent.height())
    );
    let mut mind = Vec::new();
    mind.extend(edges::words(piece, show));
    let within =
        |fitting: &&Fitting| fitting.cutout(Plane::Counter).is_some_and(|cutout| cutout.extent.meets(&piece.extent));
    let cut: Vec<&Fitting> = leg.fittings.iter().filter(within).collect();
    for fitting in &cut {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        let size = if cutout.round {
            format!("\u{d8} {}", show.prose(cutout.extent.width()))
        } else {
            format!("{} \u{d7} {}", show.prose(cutout.extent.width()), show.prose(cutout.extent.height()))
        };
        let open = if cutout.open { ", open at the front" } else { "" };
        mind.push(format!(
            "{} {}: {size}{open}, centreline {} from the finished left end",
            fitting.mark,
            fitting.name,
            show.prose(fitting.centre())
        ));
    }
    if facts.drip > Length::ZERO {
        mind.push(format!("drip groove {} under the front edge", show.prose(facts.drip)));
    }
    OrderLine {
        mark: marked(leg, &piece.name, several),
        count: 1,
        what,
        mind,
        mass: Some(piece.mass),
        fittings: cut.iter().map(|fitting| fitting.at).collect(),
        ..OrderLine::default()
    }
}
