//! The counter: concrete in bags or slabs, what it lies in, its sealer; and liquids in cans.

use super::book::{Book, Draft, Kind, figures};
use crate::parameters::given::{CounterMaterial, Figure};
use crate::solve::{MaterialGroup, MaterialLine, Solved, takeoff};
use crate::units::{Exact, Length, System, exact};

/// The lines of the counter.
pub fn lines(book: &Book, solved: &Solved) -> Vec<MaterialLine> {
    let made = match solved.counter.material {
        CounterMaterial::Concrete => concrete(book, solved),
        CounterMaterial::Stone | CounterMaterial::Porcelain => super::slabs::line(book, solved),
    };
    [made, adhesive(book, solved), sealer(book, solved)].into_iter().flatten().collect()
}

/// Area of the whole counter.
fn area(solved: &Solved) -> Exact {
    solved.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|piece| takeoff::area(&piece.region)).sum()
}

/// Volume of the upstands.
fn upstands(solved: &Solved) -> Exact {
    let Some(splash) = &solved.counter.splash else { return Exact::zero() };
    let all = solved.legs.iter().flat_map(|leg| &leg.counter.splashes);
    all.map(|(_, from, to, _)| takeoff::layers(&takeoff::rectangle(*to - *from, splash.height), &[splash.thickness]))
        .sum()
}

fn concrete(book: &Book, solved: &Solved) -> Option<MaterialLine> {
    let (area, thick) = (area(solved), solved.counter.thickness);
    let (top, up) = (takeoff::layers(&area, &[thick]), upstands(solved));
    let mut from = format!("{} × {}", book.words(Kind::Area, &area), book.show.prose(thick));
    let mut parts = Vec::new();
    if up.is_positive() {
        from = format!("{from} + {} of upstand", book.words(Kind::Volume, &up));
        parts = vec![("counter".to_owned(), top.clone()), ("upstand".to_owned(), up.clone())];
    }
    book.line(Draft {
        group: MaterialGroup::Counter,
        name: solved.counter.name.clone(),
        kind: Kind::Volume,
        net: top + up,
        from,
        waste: Some(Figure::ConcreteWaste),
        each: book.exact(Figure::ConcreteYield),
        unit: format!("bag of {}", book.mass(Figure::ConcreteBag)),
        gives: "a bag makes",
        by: vec![Figure::ConcreteBag, Figure::ConcreteYield],
        parts,
    })
}

/// Beads under the counter, so far apart.
fn adhesive(book: &Book, solved: &Solved) -> Option<MaterialLine> {
    let (area, apart) = (area(solved), book.length(Figure::AdhesiveSpacing));
    let (thick, long) = (book.length(Figure::AdhesiveBead), area.clone() / Exact::length(apart));
    book.line(Draft {
        group: MaterialGroup::Hardware,
        name: "adhesive under the counter".to_owned(),
        kind: Kind::Small,
        net: takeoff::bead(&long, thick),
        from: format!(
            "{} in beads of {} every {}",
            book.words(Kind::Length, &long),
            book.show.prose(thick),
            book.show.prose(apart)
        ),
        waste: Some(Figure::AdhesiveWaste),
        each: book.exact(Figure::AdhesiveCartridge),
        unit: format!("cartridge of {}", book.words(Kind::Small, &book.exact(Figure::AdhesiveCartridge))),
        gives: "a cartridge holds",
        by: vec![Figure::AdhesiveSpacing, Figure::AdhesiveBead, Figure::AdhesiveCartridge],
        parts: Vec::new(),
    })
}

fn sealer(book: &Book, solved: &Solved) -> Option<MaterialLine> {
    if solved.counter.material == CounterMaterial::Porcelain {
        return None;
    }
    let (area, coats, coverage) = (area(solved), book.exact(Figure::SealerCoats), book.exact(Figure::SealerSmooth));
    let from =
        format!("{} × {} coats at {}", book.words(Kind::Area, &area), figures(coats.to_f64()), covers(book, &coverage));
    let by = vec![Figure::SealerCoats, Figure::SealerSmooth];
    let parts = vec![(String::new(), takeoff::coats(&area, &coats, &coverage))];
    cans(book, MaterialGroup::Counter, "sealer for the counter".to_owned(), from, by, parts)
}

/// A coverage in words: `350 sq ft a gallon`.
pub fn covers(book: &Book, coverage: &Exact) -> String {
    let metric = book.show.system == System::Millimetres;
    let (symbol, words) = if metric { ("m2/litre", "sq m a litre") } else { ("ft2/gal", "sq ft a gal") };
    let figure = exact::scale(symbol).map_or(0.0, |unit| coverage.per(&unit));
    format!("{} {words}", figures(figure))
}

/// A liquid in quarts, as many as can be in gallons; in metric jobs in litres.
pub fn cans(
    book: &Book,
    group: MaterialGroup,
    name: String,
    from: String,
    by: Vec<Figure>,
    parts: Vec<(String, Exact)>,
) -> Option<MaterialLine> {
    let metric = book.show.system == System::Millimetres;
    let (symbol, unit) = if metric { ("litre", "can of 1 litre") } else { ("qt", "quart") };
    let each = exact::scale(symbol)?;
    let net: Exact = parts.iter().map(|(_, part)| part.clone()).sum();
    let gross = takeoff::with_waste(&net, &book.exact(Figure::SealerWaste));
    let cans = takeoff::cans(&gross, &each);
    let line = book.line(Draft {
        group,
        name,
        kind: Kind::Liquid,
        net,
        from,
        waste: Some(Figure::SealerWaste),
        each,
        unit: unit.to_owned(),
        gives: "",
        by,
        parts: if parts.len() > 1 { parts } else { Vec::new() },
    })?;
    let how = match (metric, cans.gallon_cans, cans.quart_cans) {
        (true, ..) | (_, 0, _) => line.how.clone(),
        (false, gallons, quarts) => format!("{}: as {gallons} gal and {quarts} qt", line.how),
    };
    Some(MaterialLine { how, ..line })
}

/// Lengths of the counter's edges that are of one kind, with the joint there.
pub fn edges(solved: &Solved, wanted: crate::solve::EdgeKind) -> (Length, Length) {
    let all = solved.legs.iter().flat_map(|leg| &leg.counter.pieces).flat_map(|piece| &piece.edges);
    let (mut long, mut joint) = (Length::ZERO, Length::ZERO);
    for edge in all.filter(|edge| edge.kind == wanted) {
        let (du, dv) = ((edge.to.0 - edge.from.0).mm(), (edge.to.1 - edge.from.1).mm());
        long += Length::from_mm(du.hypot(dv));
        joint = joint.max(edge.joint.unwrap_or_default());
    }
    (long, joint)
}
