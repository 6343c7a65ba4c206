//! Tube by length, paint on it, and feet.

use super::super::supports::section_name;
use super::book::{Book, Draft, Kind};
use crate::parameters::given::{Figure, FrameMaterial, Given, Profile, Profiled};
use crate::solve::{BodyBox, MaterialGroup, MaterialLine, Shop, Solved, takeoff};
use crate::units::{Exact, Length, Show};

/// The lines of metal.
pub fn lines(book: &Book, given: &Given, solved: &Solved, shop: &Shop) -> Vec<MaterialLine> {
    let mut lines: Vec<Option<MaterialLine>> = Vec::new();
    if shop.cutting.bars.is_empty() {
        lines.push(tube(book, given, solved));
    } else {
        lines.extend(bars(book, solved, shop).into_iter().map(Some));
    }
    lines.push(paint(book, solved));
    let feet: usize = solved.legs.iter().map(|leg| leg.feet.len()).sum();
    let modules: usize = solved.legs.iter().map(|leg| leg.modules.len()).sum();
    let (short, long) = (book.show.prose(solved.frame.foot_shortest), book.show.prose(solved.frame.foot_longest));
    let rating = book.show.mass(solved.frame.foot_rating);
    lines.push(book.line(Draft {
        group: MaterialGroup::Metal,
        name: format!("adjustable feet, {short} to {long}, each for {rating}"),
        kind: Kind::Count,
        net: Exact::whole(feet as i128),
        from: format!("under {}", super::book::counted(modules, "module")),
        waste: None,
        each: Exact::whole(1),
        unit: "foot".to_owned(),
        gives: "",
        by: Vec::new(),
        parts: Vec::new(),
    }));
    lines.into_iter().flatten().collect()
}

/// Length of every tube: its longest side.
fn lengths(solved: &Solved) -> impl Iterator<Item = Length> + '_ {
    let side = |(low, high): (Length, Length)| high - low;
    let long = move |body: &BodyBox| side(body.u).max(side(body.v)).max(side(body.z));
    solved.legs.iter().flat_map(|leg| &leg.members).map(move |member| long(&member.body))
}

/// The tube as an order names it, its section as those of supports.
pub fn tube_name(show: Show, solved: &Solved) -> String {
    let (side, wall) = (solved.frame.tube, solved.frame.wall);
    let metal = match solved.frame.material {
        FrameMaterial::Steel => "steel",
        FrameMaterial::Aluminium => "aluminium",
        FrameMaterial::Wood => return format!("timber {} square", show.prose(side)),
    };
    if wall <= Length::ZERO {
        return format!("{metal} tube {} square", show.prose(side));
    }
    format!("{metal} {}", section_name(&Profiled { profile: Profile::Tube, width: side, height: side, wall }, show))
}

fn tube(book: &Book, given: &Given, solved: &Solved) -> Option<MaterialLine> {
    let pieces = lengths(solved).count();
    let net: Exact = lengths(solved).map(Exact::length).sum();
    let stock = Exact::length(given.stock.bars.lengths.first().copied().unwrap_or_default());
    book.line(Draft {
        group: MaterialGroup::Metal,
        name: tube_name(book.show, solved),
        kind: Kind::Length,
        net,
        from: super::book::counted(pieces, "tube"),
        waste: Some(Figure::TubeWaste),
        unit: format!("length of {}", book.words(Kind::Length, &stock)),
        each: stock,
        gives: "by length only, a length is",
        by: Vec::new(),
        parts: Vec::new(),
    })
}

/// Bars as they are laid out, by name and length.
fn bars(book: &Book, solved: &Solved, shop: &Shop) -> Vec<MaterialLine> {
    let mut kinds: Vec<(&str, Length)> = Vec::new();
    for bar in &shop.cutting.bars {
        if !kinds.contains(&(bar.name.as_str(), bar.length)) {
            kinds.push((&bar.name, bar.length));
        }
    }
    let trim = solved.trim.as_ref().map_or("", |trim| trim.name.as_str());
    kinds
        .into_iter()
        .filter_map(|(name, length)| {
            let own: Vec<_> = shop.cutting.bars.iter().filter(|bar| bar.name == name && bar.length == length).collect();
            let net: Exact = own.iter().flat_map(|bar| &bar.cuts).map(|(_, long)| Exact::length(*long)).sum();
            let cuts: usize = own.iter().map(|bar| bar.cuts.len()).sum();
            let all = Exact::length(length) * Exact::whole(own.len() as i128);
            if !net.is_positive() {
                return None;
            }
            Some(MaterialLine {
                group: if name == trim { MaterialGroup::Trim } else { MaterialGroup::Metal },
                name: name.to_owned(),
                net: book.amount(Kind::Length, &net),
                unit: book.unit(Kind::Length).to_owned(),
                waste: 0.0,
                order_unit: format!("length of {}", book.words(Kind::Length, &Exact::length(length))),
                count: own.len() as u64,
                how: format!(
                    "{} in {}, as laid out on the cutting sheet; {} are left over",
                    book.words(Kind::Length, &net),
                    super::book::counted(cuts, "length"),
                    book.words(Kind::Length, &(all - net.clone()))
                ),
                origin: "the layout of the cuts".to_owned(),
                parts: Vec::new(),
            })
        })
        .collect()
}

/// Paint on the outside of the tubes, where the job wants any.
fn paint(book: &Book, solved: &Solved) -> Option<MaterialLine> {
    let coats = book.exact(Figure::PaintCoats);
    if !coats.is_positive() {
        book.note(Figure::PaintCoats);
        return None;
    }
    let around = Exact::length(solved.frame.tube * 4);
    let area: Exact = lengths(solved).map(|long| Exact::length(long) * around.clone()).sum();
    let coverage = book.exact(Figure::PaintCoverage);
    let from = format!(
        "{} × {} coats at {}",
        book.words(Kind::Area, &area),
        super::book::figures(coats.to_f64()),
        super::counter::covers(book, &coverage)
    );
    let by = vec![Figure::PaintCoats, Figure::PaintCoverage];
    let parts = vec![(String::new(), takeoff::coats(&area, &coats, &coverage))];
    super::counter::cans(book, MaterialGroup::Metal, "paint for the frame".to_owned(), from, by, parts)
}
