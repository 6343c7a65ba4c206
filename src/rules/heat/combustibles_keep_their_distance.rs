//! Things that burn, too near a hot fitting beside or behind.

use crate::findings::{Finding, Origin, Place, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::{Bound, Face, Fitting, Leg, Solved};
use crate::units::Length;

const LEAST: Limit = Limit::new("least", "10 in", "the least that any manual was seen to ask");
const ANY: Limit = Limit::new("any", "24 in", "past this no manual was seen to ask more");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "combustibles-keep-their-distance",
    severity: Severity::Stop,
    about: "Whatever burns beside or behind a hot fitting, above the counter, keeps the distance that its manual asks for.",
    why: "Heat goes through stone and stucco: wood studs behind a skin that doesn't burn still char. Manuals ask for 10, 12, 18 \
          or 24 in; only the one in hand counts.",
    instead: "move the fitting, choose a wall that doesn't burn right through, or fit what the manual gives for less",
    origin: Origin::Trade("grill manuals (10 to 24 in); the manual in hand governs"),
    concerns: Concern::Heat,
    limits: &[LEAST, ANY],
    needs,
    check,
};

/// Something beside or behind a hot fitting: its name, what is known of it, how far it is, what the manual asks.
struct Near<'s> {
    name: &'s str,
    combustible: Option<bool>,
    away: Length,
    wanted: Option<Length>,
    place: Option<&'s Place>,
}

fn near<'s>(solved: &'s Solved, at: usize, leg: &'s Leg, fitting: &'s Fitting) -> Vec<Near<'s>> {
    let d = &leg.datums;
    let back = fitting.back.unwrap_or(d.frame_back);
    let asks = &fitting.needs;
    let bound = |bound: &'s Bound, away, wanted| {
        let stands = !bound.is_open() && bound.height > d.counter_top;
        let (name, combustible, place) = (bound.name.as_str(), bound.combustible, bound.place.as_ref());
        stands.then_some(Near { name, combustible, away, wanted, place })
    };
    let mut all: Vec<Near> = [
        bound(&leg.left, fitting.left - leg.left.at_counter, asks.beside),
        bound(&leg.right, leg.right.at_counter - fitting.right, asks.beside),
        bound(&leg.back, leg.back.at_counter - back, asks.behind),
    ]
    .into_iter()
    .flatten()
    .collect();
    for thing in solved.around.combustibles.iter().filter(|thing| thing.leg == at) {
        let (away, wanted) = match thing.side {
            Face::Left => (fitting.left + thing.distance, asks.beside),
            Face::Right => (d.finished_right + thing.distance - fitting.right, asks.beside),
            Face::Back => (d.finished_back + thing.distance - back, asks.behind),
            Face::Front => (thing.distance, asks.beside),
        };
        let (name, place) = (thing.name.as_str(), thing.place.as_ref());
        all.push(Near { name, combustible: Some(true), away, wanted, place });
    }
    all
}

fn needs(solved: &Solved) -> Vec<Lack> {
    let (least, any) = (RULE.length(solved, &LEAST), RULE.length(solved, &ANY));
    let mut lacks = Vec::new();
    for (leg, fitting) in cooking(solved) {
        for near in near(solved, fitting.at.0, leg, fitting) {
            let subject = fitting.subject();
            if near.combustible.is_none() && near.away < near.wanted.unwrap_or(any) {
                let instead = "write `combustible: true` if any of it burns, studs behind a skin too, or `false`";
                let input = format!("{}.combustible", near.name);
                lacks.push(Lack::of_safety(input, subject, near.place, instead).for_what(named(fitting)));
            } else if near.combustible == Some(true) && near.wanted.is_none() && near.away >= least && near.away < any {
                let instead =
                    "write what its manual asks, as `clear_of_combustibles: (beside: \"18 in\", behind: \"18 in\")`";
                let input = format!("{}.clear_of_combustibles", fitting.id);
                lacks.push(Lack::of_safety(input, subject, fitting.place.as_ref(), instead).for_what(near.name));
            }
        }
    }
    lacks
}

fn check(solved: &Solved) -> Vec<Finding> {
    let least = RULE.length(solved, &LEAST);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (leg, fitting) in cooking(solved) {
        for near in near(solved, fitting.at.0, leg, fitting).into_iter().filter(|near| near.combustible == Some(true)) {
            let (wanted, whose) = match near.wanted {
                Some(wanted) => (wanted, "its manual asks"),
                None => (least, "no manual is known to ask less than"),
            };
            if near.away < wanted {
                findings.push(RULE.finding(
                    Severity::Stop,
                    fitting.subject(),
                    near.place.or(fitting.place.as_ref()),
                    format!(
                        "{} burns and is {} from {}; {whose} {}",
                        near.name,
                        plain(near.away),
                        named(fitting),
                        plain(wanted)
                    ),
                    format!("move it or {} by {}", fitting.name, plain(wanted - near.away)),
                ));
            }
        }
    }
    findings
}
