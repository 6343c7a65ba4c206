//! Legs and modules.

use super::build_up;
use super::given::{Leg, Module, ModuleKind};
use super::reader::{Reader, Sign};
use super::{corner, site, width};
use crate::model::{JobFile, LegText, ModuleKindText, ModuleText};
use crate::units::Dimension;

/// Works out the legs.
pub(super) fn legs(job: &JobFile, reader: &mut Reader) -> Vec<Leg> {
    if job.legs.is_empty() {
        reader.tell("the run has no legs", "write at least one leg under `legs`", &job.job.title.place);
    }
    job.legs.iter().map(|leg| self::leg(job, leg, reader)).collect()
}

fn leg(job: &JobFile, leg: &LegText, reader: &mut Reader) -> Leg {
    let left = site::bound(leg.left.as_ref().or(job.site.left.as_ref()), reader);
    let right = site::bound(leg.right.as_ref().or(job.site.right.as_ref()), reader);
    let back = site::bound(leg.back.as_ref().or(job.site.back.as_ref()), reader);
    let faces = build_up::faces(&job.build_up, &leg.faces, [&left, &right, &back], reader);
    let (origin, angle) = leg.at.as_ref().map_or(((0.0, 0.0), 0.0), |at| {
        let x = reader.length_of(&at.x, Sign::Any).unwrap_or_default();
        let y = reader.length_of(&at.y, Sign::Any).unwrap_or_default();
        let turn = at.turn.as_ref().and_then(|turn| reader.si_of(turn, Dimension::ANGLE, Sign::Any));
        ((x.mm(), y.mm()), turn.unwrap_or(0.0))
    });
    if leg.modules.is_empty() {
        reader.tell(format!("the leg `{}` has no modules", leg.id.text), "write at least one module", &leg.id.place);
    }
    let room = leg.room.as_ref().or(job.site.room.as_ref());
    Leg {
        id: reader.words(Some(&leg.id), ""),
        origin,
        angle,
        left,
        right,
        back,
        room: room.and_then(|room| reader.length_of(room, Sign::Positive)),
        faces,
        modules: leg.modules.iter().map(|module| self::module(module, reader)).collect(),
        own: corner::own(job, leg, reader),
        place: Some(leg.id.place.clone()),
    }
}

fn module(module: &ModuleText, reader: &mut Reader) -> Module {
    Module {
        id: module.id.text.clone(),
        name: reader.words(module.name.as_ref(), ""),
        kind: match module.kind {
            None | Some(ModuleKindText::Base) => ModuleKind::Base,
            Some(ModuleKindText::OpenBay) => ModuleKind::OpenBay,
            Some(ModuleKindText::Filler) => ModuleKind::Filler,
            Some(ModuleKindText::Corner) => ModuleKind::Corner,
        },
        width: width::read(&format!("{}.width", module.id.text), &module.width, reader),
        place: Some(module.id.place.clone()),
    }
}
