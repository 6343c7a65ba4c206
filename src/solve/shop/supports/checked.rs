//! How a support bends under what lies on it, and what would hold where it doesn't.

use super::draft::{Carries, Draft};
use super::table::{name, of_kind, shape};
use crate::solve::beams::{Beam, Held, Load};
use crate::solve::{Bar, Solved, SupportCheck, SupportWork};
use crate::units::Length;

/// Standard gravity, m/s2.
const GRAVITY: f64 = 9.806_65;

/// What every support of a run is checked with.
pub(super) struct Loads<'a> {
    pub(super) solved: &'a Solved,
    pub(super) work: &'a SupportWork,
    /// Counter and substrate, N/m2.
    pub(super) dead: f64,
}

fn m(length: Length) -> f64 {
    length.mm() / 1e3
}

impl Loads<'_> {
    /// A support checked; `None` for what carries next to nothing or a weight that nobody gave.
    pub(super) fn check(&self, draft: &Draft) -> Option<SupportCheck> {
        let share = match draft.carries {
            Carries::Nothing => return None,
            Carries::Fitting(..) | Carries::Arms(_) => self.work.arm_stiffness,
            Carries::Counter(_) | Carries::Overhang(..) => self.work.stiffness,
        };
        let found = self.bent(draft, &draft.bar, share)?;
        if found.is_strong() && found.is_stiff() {
            return Some(found);
        }
        // The first of the table, of the same kind and metal, that is strong and stiff enough.
        let better = of_kind(draft.bar.section.profile).into_iter().find(|section| {
            let other = Bar { section: *section, alloy: draft.bar.alloy.clone() };
            self.bent(draft, &other, share).is_some_and(|check| check.is_strong() && check.is_stiff())
        });
        let metal = &draft.bar.alloy.name;
        let remedy = match better {
            Some(section) => format!("{} in {metal} would hold", name(&section, self.solved.show)),
            None => format!("no section of the table in {metal} would hold: shorten the span, or ask an engineer"),
        };
        Some(SupportCheck { remedy: Some(remedy), ..found })
    }

    /// Whether a bar holds what a draft carries.
    pub(super) fn holds(&self, draft: &Draft) -> bool {
        self.check(draft).is_none_or(|check| check.is_strong() && check.is_stiff())
    }

    fn bent(&self, draft: &Draft, bar: &Bar, share: f64) -> Option<SupportCheck> {
        let section = shape(&bar.section).section();
        let own = section.area * bar.alloy.density * GRAVITY;
        let long = m(draft.length());
        let span = draft.span.map_or(long, m);
        let whole = |by_length, to| Load::Even { by_length, from: 0.0, to };
        let stiffness = bar.alloy.elasticity * section.inertia;
        let mut held = (Held::Simple, span, "simple");
        let mut words = String::new();
        let mut loads = Vec::new();
        match &draft.carries {
            Carries::Nothing => return None,
            Carries::Fitting(force, from, to) => {
                // The arm begins half a tube behind what it lies against.
                let lead = (span - long).max(0.0) / 2.0;
                let (from, to) = (m(*from) + lead, (m(*to) + lead).max(m(*from) + lead + 1e-3));
                loads.push(Load::Even { by_length: (*force)? / (to - from), from, to });
                words.push_str("half the fitting and food");
            }
            Carries::Arms(arms) => {
                for (at, force) in arms {
                    loads.push(Load::Point { force: (*force)?, at: m(*at) });
                }
                words.push_str("ends of the arms");
            }
            Carries::Counter(strip) => {
                loads.push(whole(self.dead * m(*strip), span));
                loads.push(Load::Point { force: self.work.person * GRAVITY, at: span / 2.0 });
                words.push_str("counter and a person");
            }
            Carries::Overhang(free, strip) => {
                let length = span + m(*free);
                held = (Held::Overhang(span), length, "overhang");
                loads.push(whole(self.dead * m(*strip), length));
                loads.push(Load::Point { force: self.work.lean * GRAVITY, at: length });
                words.push_str("counter and leaning");
            }
        }
        loads.push(whole(own, held.1));
        let load: f64 = loads.iter().map(Load::force).sum();
        let beam = Beam { held: held.0, length: held.1, stiffness, loads };
        let moment = beam.bent().greatest_moment();
        let (mut reach, mut limit) = (span, span);
        let mut deflection = beam.bent().greatest_deflection();
        if let Carries::Overhang(free, _) = &draft.carries {
            // The bar stands alone: a stiff, brittle counter over it that carried a share would crack first.
            deflection = beam.bent().tip().abs();
            reach = m(*free);
            // Of a cantilever twice its length counts, as building codes read such limits. From memory, verify.
            limit = reach * 2.0;
        }
        Some(SupportCheck {
            load_words: words,
            load,
            held: held.2,
            span: Length::from_mm(reach * 1e3),
            moment,
            stress: moment / section.modulus(),
            allowed: bar.alloy.allowed(),
            deflection: Length::from_mm(deflection * 1e3),
            most: Length::from_mm(limit * 1e3 / share),
            share,
            remedy: None,
        })
    }
}
