//! A ledge along a leg's back: a leg behind the leg, box by box as wide as it.

use super::given::{Height, Leg, Module, ModuleKind, Own};
use super::reader::{Reader, Sign};
use crate::model::LedgeText;
use crate::units::Length;

/// The ledge of a leg, as the leg that stands behind it. Its ends, its back and what stands there are the leg's own: the
/// ledge hides the leg's back from them. `height` is the job's.
pub(super) fn behind(ledge: &LedgeText, index: usize, leg: &Leg, height: Height, reader: &mut Reader) -> Leg {
    let above = reader.length_of(&ledge.above, Sign::Positive).unwrap_or_default();
    let depth = reader.length_or("ledge.depth", "ledge.depth", ledge.depth.as_ref(), Sign::Positive);
    let over = &ledge.overhang;
    let mut own = |written: &Option<_>| written.as_ref().and_then(|text| reader.length_of(text, Sign::Any));
    let [front, back, left, right] = [&over.front, &over.back, &over.left, &over.right].map(&mut own);
    let module = |module: &Module| Module {
        id: format!("ledge {}", module.id),
        name: "ledge".to_owned(),
        kind: match module.kind {
            ModuleKind::Filler => ModuleKind::Filler,
            ModuleKind::Base | ModuleKind::OpenBay | ModuleKind::Corner => ModuleKind::Base,
        },
        ..module.clone()
    };
    Leg {
        id: format!("{} ledge", leg.id),
        modules: leg.modules.iter().map(module).collect(),
        own: Own {
            depth: Some(depth),
            height: Some(raised(leg.own.height.unwrap_or(height), above)),
            overhang_front: front,
            overhang_back: back.or(leg.own.overhang_back),
            overhang_left: left.or(leg.own.overhang_left),
            overhang_right: right.or(leg.own.overhang_right),
            behind: Some(index),
            ledge: true,
            surveyed: leg.own.surveyed.clone(),
            ..Own::default()
        },
        place: Some(ledge.above.place.clone()),
        ..leg.clone()
    }
}

/// A level moved up.
fn raised(height: Height, above: Length) -> Height {
    match height {
        Height::CounterTop(top) => Height::CounterTop(top + above),
        Height::FrameTop(top) => Height::FrameTop(top + above),
    }
}
