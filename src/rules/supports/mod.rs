//! What carries heavy fittings, cutouts and overhangs.

pub mod bracket_fills_its_recess;
pub mod heavy_fitting_finds_its_arms;
pub mod support_is_stiff_enough;
pub mod support_is_strong_enough;
mod unweighed;

use crate::findings::Subject;
use crate::solve::{Solved, Support, SupportCheck};

/// Every support that was checked, with its check.
fn checked(solved: &Solved) -> impl Iterator<Item = (&Support, &SupportCheck)> {
    solved.shop.supports.all().filter_map(|support| Some((support, support.check.as_ref()?)))
}

/// What a support is part of: the fitting that it serves, else its module.
fn subject(support: &Support) -> Subject {
    match support.fitting {
        Some(fitting) => Subject::Fitting(support.leg, fitting),
        None => Subject::Module(support.leg, support.module),
    }
}

/// What would hold, or where to look.
fn remedy(check: &SupportCheck, instead: &str) -> String {
    check.remedy.clone().unwrap_or_else(|| instead.to_owned())
}
