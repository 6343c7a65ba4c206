//! The schedules: everything of the run as lists, on as many pages as they take.

pub mod assumed;
mod boards;
pub mod columns;
mod cutouts;
pub mod feet;
mod findings;
mod fittings;
pub mod located;
mod materials;
mod modules;
mod weights;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use crate::drawing::Page;

pub use columns::titled;
pub use cutouts::{cut_in, frame_opening};
pub use findings::about;
pub use fittings::set_into;
pub use modules::module_words;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads = Heads { title: "Schedules".to_owned(), document: "Schedule".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::new(set, kind, heads);
    findings::add(&mut flow, set);
    for leg in 0..set.solved.legs.len() {
        modules::add(&mut flow, set, leg);
        fittings::add(&mut flow, set, leg);
        located::add_all(&mut flow, set, leg);
        cutouts::add(&mut flow, set, leg);
        boards::add(&mut flow, set, leg);
        materials::build_ups(&mut flow, set, leg);
        feet::add(&mut flow, set, leg);
        feet::services(&mut flow, set, leg);
        weights::add(&mut flow, set, leg);
    }
    materials::add(&mut flow, set);
    assumed::add(&mut flow, set);
    super::permit::limits(&mut flow, set);
    findings::cautions(&mut flow, set);
    flow.finish()
}
