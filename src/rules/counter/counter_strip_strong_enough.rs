//! A strip of counter, before or behind a cutout, that nothing carries.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::{CounterMaterial, FittingKind, Plane, RailHelp, Solved};
use crate::units::Length;

const STONE: Limit = Limit::new("stone", "2 1/2 in", "narrowest strip of stone or concrete");
const PORCELAIN: Limit = Limit::new("porcelain", "2 in", "narrowest strip of porcelain");
const LOAD: Limit =
    Limit::new("load", "100 lb", "that a strip carries at its middle (from memory: a hand that leans on it)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-strip-strong-enough",
    severity: Severity::Warn,
    about: "The strip that a cutout leaves at the front or the back is wide enough, and carried by a tube, rods or a prop where it \
            would break under a hand.",
    why: "A strip of 2 cm granite 2 in wide broke at 20 to 30 lb over 50 in; with rods let in it took more than 235 lb. Most tops \
          that break do so there, on the way in.",
    instead: "stand a tube or a block under it (`rails: propped`), have it rodded (`rails: rodded`), or leave more",
    origin: Origin::Trade(
        "ASTM C615 flexural strength 1200 psi, a quarter of it, M = PL/4; test strips: a stone trade article; widths: shops",
    ),
    concerns: Concern::Counter,
    limits: &[STONE, PORCELAIN, LOAD],
    needs: nothing,
    check,
};

/// What a strip may be stressed to, Pa: a quarter of the flexural strength. Granite 1200 psi (ASTM C615); concrete 600 psi and
/// porcelain 5000 psi are from memory.
fn allowable(material: CounterMaterial) -> f64 {
    let psi = match material {
        CounterMaterial::Stone => 1200.0,
        CounterMaterial::Concrete => 600.0,
        CounterMaterial::Porcelain => 5000.0,
    };
    psi / 4.0 * 6_894.757
}

/// What a strip carries at its middle between two supports, kg: P = 4 M / L, M = S times the stress, S = b t2 / 6.
pub fn middle_load(material: CounterMaterial, width: Length, thickness: Length, span: Length) -> f64 {
    let (b, t, l) = (width.mm() / 1e3, thickness.mm() / 1e3, span.mm() / 1e3);
    if l <= 0.0 {
        return f64::INFINITY;
    }
    4.0 * allowable(material) * (b * t * t / 6.0) / l / 9.806_65
}

fn check(solved: &Solved) -> Vec<Finding> {
    let material = solved.counter.material;
    let least = RULE.length(solved, if material == CounterMaterial::Porcelain { &PORCELAIN } else { &STONE });
    let load = RULE.number(solved, &LOAD);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            let Some(cut) = fitting.cutout(Plane::Counter) else { continue };
            let (x, e) = (&cut.extent, &leg.counter.extent);
            let well = fitting.kind == FittingKind::Well;
            let strips = [("before", (e.y0, x.y0), well), ("behind", (x.y1, e.y1), true)];
            for (word, (from, to), there) in strips {
                let width = to - from;
                // A cutout that reaches the edge is another rule's; a hole for a tap weakens nothing to speak of.
                if !there || width <= Length::ZERO || cut.round {
                    continue;
                }
                let mut tell = |message: String| {
                    let place = fitting.place.as_ref();
                    findings.push(RULE.finding(Severity::Warn, fitting.subject(), place, message, RULE.instead));
                };
                if width < least {
                    let message = format!(
                        "{} of counter is left {word} {}; {} is the least",
                        plain(width),
                        named(fitting),
                        plain(least)
                    );
                    tell(message);
                } else if solved.counter.needs.rails == RailHelp::Plain
                    && !super::carried(leg, fitting.module, (x.x0, x.x1), (from, to))
                {
                    let carries = middle_load(material, width, solved.counter.thickness, x.width());
                    if carries < load {
                        let (carries, load) = (solved.show.mass(carries), solved.show.mass(load));
                        tell(format!(
                            "the strip {word} {}, {} wide over {}, carries {carries} at its middle; {load} is wanted",
                            named(fitting),
                            plain(width),
                            plain(x.width())
                        ));
                    }
                }
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::middle_load;
    use crate::solve::CounterMaterial;
    use crate::units::Length;

    #[test]
    fn a_strip_of_three_centimetres_carries_what_was_computed_for_it() {
        // Trade facts, section 4: 3 cm by 2 1/2 in, 33 in clear, 1200/4 psi carries about 21 lb at its middle.
        let carries = middle_load(
            CounterMaterial::Stone,
            Length::from_inches(2.5),
            Length::from_mm(30.0),
            Length::from_inches(33.0),
        );
        assert!((carries / 0.453_592_37 - 21.1).abs() < 0.2, "{carries}");
    }
}
