//! Every list of a run as data, one file a list; the sheets, the comma files and the workbook show the same.

pub(super) mod boards;
mod cutouts;
mod feet;
mod findings;
mod fittings;
mod located;
mod materials;
mod modules;
mod orders;
mod pieces;
mod sequence;
mod supports;
mod trim;
mod tubes;
mod weights;

use crate::drawing::{Listing, Value};
use crate::findings::Finding;
use crate::solve::{Leg, Solved};

/// All lists of a run that have a row, in the order of the set.
pub fn listings(solved: &Solved, findings: &[Finding]) -> Vec<Listing> {
    let all: Vec<Listing> = vec![
        findings::listing(solved, findings),
        modules::listing(solved),
        fittings::listing(solved),
        cutouts::listing(solved),
        located::listing(solved),
        boards::listing(solved),
        pieces::listing(solved),
        pieces::located(solved),
        pieces::joints(solved),
        pieces::on_sheets(solved),
        pieces::on_bars(solved),
        tubes::listing(solved),
        supports::listing(solved),
        feet::listing(solved),
        trim::pieces(solved),
        trim::stations(solved),
        materials::listing(solved),
        materials::figures(solved),
        weights::modules(solved),
        weights::lifts(solved),
        sequence::listing(solved),
        orders::listing(solved),
    ];
    all.into_iter().filter(|listing| !listing.rows.is_empty()).collect()
}

/// The id of a module.
fn module_id(leg: &Leg, module: usize) -> Value {
    leg.modules.get(module).map(|module| module.id.as_str()).into()
}
