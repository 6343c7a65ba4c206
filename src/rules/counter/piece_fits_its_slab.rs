//! A piece that is larger than its slab.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Limit, Rule};
use crate::solve::{CounterMaterial, Solved};

const STONE_LONG: Limit = Limit::new("stone_length", "108 in", "usable slab of stone, where the job names none");
const STONE_WIDE: Limit = Limit::new("stone_width", "54 in", "its width");
const PORCELAIN_LONG: Limit = Limit::new("porcelain_length", "124 in", "usable slab of porcelain, trimmed");
const PORCELAIN_WIDE: Limit = Limit::new("porcelain_width", "61 in", "its width");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "piece-fits-its-slab",
    severity: Severity::Stop,
    about: "Each piece of the counter, with its edges trimmed, comes out of one slab.",
    why: "A piece that doesn't gets a seam that nobody drew, or a slab that nobody has.",
    instead: "set a seam where it is carried, or find a longer slab and write its size",
    origin: Origin::Trade("slab sizes: trade pages; the slab in the yard governs"),
    concerns: Concern::Counter,
    limits: &[STONE_LONG, STONE_WIDE, PORCELAIN_LONG, PORCELAIN_WIDE],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let usual = match solved.counter.material {
        CounterMaterial::Concrete => return Vec::new(),
        CounterMaterial::Stone => (&STONE_LONG, &STONE_WIDE),
        CounterMaterial::Porcelain => (&PORCELAIN_LONG, &PORCELAIN_WIDE),
    };
    if solved.counter.needs.slab.is_some() {
        return Vec::new();
    }
    let usual = (RULE.length(solved, usual.0), RULE.length(solved, usual.1));
    let mut lacks = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for piece in leg.counter.pieces.iter().filter(|piece| !piece.fits(usual) && piece.fits(solved.shop.slab)) {
            let instead = "write the slab's usable size, as `slab: (length: \"120 in\", width: \"66 in\")`";
            let size = format!("{}, {} long", piece.name, solved.show.plain(piece.extent.width()));
            lacks.push(
                Lack::of_practice("counter.slab", Subject::Counter(at), solved.counter.place.as_ref(), instead)
                    .for_what(size),
            );
        }
    }
    lacks
}

fn check(solved: &Solved) -> Vec<Finding> {
    // Where the job names no slab, slabs are counted by the usual one: a piece that it doesn't give is told too.
    let (slab, severity, of) = match solved.counter.needs.slab {
        Some(slab) => (slab, Severity::Stop, "the slab gives"),
        None if solved.counter.material == CounterMaterial::Concrete => return Vec::new(),
        None => (solved.shop.slab, Severity::Warn, "the usual slab, since the job names none, gives"),
    };
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for piece in leg.counter.pieces.iter().filter(|piece| !piece.fits(slab)) {
            let message = format!(
                "{} is {} by {}; {of} {} by {}",
                piece.name,
                plain(piece.extent.width()),
                plain(piece.extent.height()),
                plain(slab.0),
                plain(slab.1)
            );
            let place = solved.counter.place.as_ref();
            findings.push(RULE.finding(severity, Subject::Counter(at), place, message, RULE.instead));
        }
    }
    findings
}
