//! The marks of fittings, as `B1`: unique in the run, and in the order that a person reads a module.

use std::collections::BTreeSet;

use super::{Face, Fitting, FittingKind, Module};
use crate::findings::Problem;
use crate::units::Length;

/// Orders a leg's fittings and gives a mark to each that has none: its module's id and a number. Within a
/// module notches come first, then wells, then openings from the top down; the front before the ends
/// and the back. `taken` holds the marks of the whole run, those that the job chose among them.
pub fn marked(mut fittings: Vec<Fitting>, modules: &[Module], taken: &mut BTreeSet<String>) -> Vec<Fitting> {
    fittings.sort_by_key(|fitting| (fitting.module, order(fitting)));
    let mut number = 0_u32;
    let mut module = usize::MAX;
    for fitting in &mut fittings {
        if fitting.module != module {
            (module, number) = (fitting.module, 0);
        }
        if !fitting.mark.is_empty() {
            continue;
        }
        let id = modules.get(module).map_or("", |module| module.id.as_str());
        while fitting.mark.is_empty() {
            number += 1;
            let mark = format!("{id}{number}");
            if taken.insert(mark.clone()) {
                fitting.mark = mark;
            }
        }
    }
    fittings
}

/// Where a fitting comes within its module: face, sort, how far down, how far along.
fn order(fitting: &Fitting) -> (Face, u8, Length, Length) {
    let (sort, down) = match fitting.kind {
        FittingKind::Notch => (0, Length::ZERO),
        FittingKind::Well => (1, Length::ZERO),
        FittingKind::Opening(_) => (2, -fitting.top.unwrap_or(Length::ZERO)),
    };
    (fitting.face, sort, down, fitting.left)
}

/// The marks that the job chose, and every one that it chose twice.
pub fn chosen<'a>(
    fittings: impl Iterator<Item = &'a crate::parameters::given::Fitting>,
) -> (BTreeSet<String>, Vec<Problem>) {
    let (mut taken, mut problems) = (BTreeSet::new(), Vec::new());
    for fitting in fittings {
        let Some(mark) = &fitting.mark else { continue };
        if !mark.is_empty() && !taken.insert(mark.clone()) {
            problems.push(Problem {
                message: format!("the mark {mark} is chosen twice; the second time for {}", fitting.id),
                instead: "choose another mark, or leave it out to have one made".to_owned(),
                place: fitting.place.clone(),
            });
        }
    }
    (taken, problems)
}
