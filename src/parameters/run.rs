//! Legs and modules.

use super::build_up;
use super::given::{FromSurvey, Height, Leg, Module, ModuleKind, Own};
use super::reader::{Reader, Sign};
use super::{corner, ledge, site, width};
use crate::model::{JobFile, LegText, ModuleKindText, ModuleText, Text, TextKind};
use crate::units::Dimension;

/// The room that the survey leaves.
const SURVEYED: &str = "as surveyed";

/// Whether a room is to be taken from the survey.
fn is_surveyed(room: &Text) -> bool {
    room.kind == TextKind::Quoted && room.text.trim() == SURVEYED
}

/// Whether a room looks as if it were meant to be taken from the survey, and is written otherwise; that is said.
fn nearly(room: &Text, reader: &mut Reader) -> bool {
    let like = room.kind == TextKind::Quoted && room.text.to_lowercase().contains("survey");
    let known = like && reader.names.written(room.text.trim()).is_some();
    if like && !known {
        let message = format!("`{}` is no room", room.text.trim());
        reader.tell(message, format!("write \"{SURVEYED}\", or a length as \"9 ft\""), &room.place);
    }
    like && !known
}

/// Works out the legs: those written, then the ledges behind them. `height` is the job's.
pub(super) fn legs(job: &JobFile, height: Height, reader: &mut Reader) -> Vec<Leg> {
    if job.legs.is_empty() {
        reader.tell("the run has no legs", "write at least one leg under `legs`", &job.job.title.place);
    }
    let mut legs: Vec<Leg> = job.legs.iter().map(|leg| self::leg(job, leg, reader)).collect();
    for (index, written) in job.legs.iter().enumerate() {
        if let Some(ledge) = &written.ledge {
            legs.push(ledge::behind(ledge, index, &legs[index], height, reader));
        }
    }
    legs
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
    let surveyed = room.filter(|room| is_surveyed(room));
    let room = room.filter(|room| surveyed.is_none() && !nearly(room, reader));
    let own = corner::own(job, leg, reader);
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
        own: Own {
            surveyed: surveyed.map(|room| FromSurvey { between: None, place: Some(room.place.clone()) }),
            ..own
        },
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
