//! How long things dry or harden: those waits that a job's materials ask for.

use super::given::{CounterMaterial, FinishKind, Given, Wait, WaitFor, Waits};
use super::reader::Reader;
use crate::model::{Text, WaitsText};
use crate::units::Dimension;

/// Works out the waits of a job whose materials are known.
pub(super) fn read(written: &WaitsText, given: &Given, reader: &mut Reader) -> Waits {
    let mut waits = Waits::new();
    for what in WaitFor::ALL {
        let text = of(written, what);
        // What is written is worked out all the same, so that a mistake in it is told.
        if text.is_none() && !is_needed(given, what) {
            continue;
        }
        let name = format!("waits.{}", what.word());
        let hours = reader.quantity_or(&name, &name, text, Dimension::TIME) / 3600.0;
        let default = reader.defaults.iter().find(|default| default.name == name);
        let origin = default.map_or("the job", |default| default.origin).to_owned();
        waits.insert(what, Wait { hours, origin });
    }
    waits
}

/// What a job says of one.
pub(super) fn of(written: &WaitsText, what: WaitFor) -> Option<&Text> {
    match what {
        WaitFor::JointMortar => written.joint_mortar.as_ref(),
        WaitFor::SkimCoat => written.skim_coat.as_ref(),
        WaitFor::Veneer => written.veneer.as_ref(),
        WaitFor::Tile => written.tile.as_ref(),
        WaitFor::Grout => written.grout.as_ref(),
        WaitFor::Concrete => written.concrete.as_ref(),
        WaitFor::Sealer => written.sealer.as_ref(),
        WaitFor::Sealant => written.sealant.as_ref(),
    }
}

fn is_needed(given: &Given, what: WaitFor) -> bool {
    let faces = given.legs.iter().flat_map(|leg| {
        let faces = &leg.faces;
        [&faces.front, &faces.left, &faces.right, &faces.back]
    });
    let mut kinds = faces.filter_map(|build| build.finish.as_ref()).map(|finish| finish.kind);
    match what {
        WaitFor::JointMortar => kinds.next().is_some(),
        WaitFor::SkimCoat => kinds.any(|kind| matches!(kind, FinishKind::SkimCoat)),
        WaitFor::Veneer => kinds.any(|kind| matches!(kind, FinishKind::Veneer)),
        WaitFor::Tile | WaitFor::Grout => kinds.any(|kind| matches!(kind, FinishKind::Tile { .. })),
        WaitFor::Concrete => given.counter.material == CounterMaterial::Concrete,
        WaitFor::Sealer => given.counter.material != CounterMaterial::Porcelain,
        WaitFor::Sealant => true,
    }
}
