//! Fittings: where each stands, what is cut for it, what it weighs.

use super::fitted::Fitted;
use super::given::{
    Across, AcrossFrom, AcrossLine, Body, Cut, DepthFrom, DepthLine, Face, Fitting, Flange, HeightFrom, Look, Measure,
    Needs, OpeningSort, WellShape,
};
use super::index::Index;
use super::reader::{Reader, Sign};
use super::services;
use crate::findings;
use crate::model::{
    AcrossFromText, AcrossText, CutText, DepthText, DimensionText, DropText, ExtentText, FaceText, JobFile, LookText,
    SetbackText, SideText, Text,
};
use crate::units::{Dimension, Length};

/// Works out every fitting that has a place and a cut.
pub(super) fn read(job: &JobFile, fitted: &[Fitted<'_>], reader: &mut Reader) -> Vec<Fitting> {
    let index = Index::new(job, fitted);
    fitted.iter().filter_map(|one| fitting(&index, *one, reader)).collect()
}

fn fitting(index: &Index<'_>, one: Fitted<'_>, reader: &mut Reader) -> Option<Fitting> {
    let id = &one.own.id;
    check_measured(one, reader);
    let place = module(index, one, reader);
    let Some(written) = one.cut() else {
        if !one.lacks_base() {
            reader.tell(format!("`{}` has no `cut`", id.text), "write its cut, or take it `from` a library", &id.place);
        }
        return None;
    };
    let across = across(index, one, reader);
    let cut = cut(one, written, reader);
    let (leg, module) = place?;
    let named = |property: &str| format!("{}.{property}", id.text);
    Some(Fitting {
        id: id.text.clone(),
        name: reader.words(one.field(|fitting| fitting.name.as_ref()), &id.text.replace('_', " ")),
        mark: one.field(|fitting| fitting.mark.as_ref()).map(|mark| reader.words(Some(mark), "")),
        look: look(one, written, reader),
        leg,
        module,
        face: match one.field(|fitting| fitting.face.as_ref()) {
            None | Some(FaceText::Front) => Face::Front,
            Some(FaceText::Left) => Face::Left,
            Some(FaceText::Right) => Face::Right,
            Some(FaceText::Back) => Face::Back,
        },
        across,
        cut,
        flange: flange(one, reader),
        body: one.body().map(|body| Body {
            width: measure(one, "body_width", &body.width, Sign::Positive, reader),
            depth: measure(one, "body_depth", &body.depth, Sign::Positive, reader),
            height: measure(one, "body_height", &body.height, Sign::Positive, reader),
        }),
        clearance: reader.length_or(
            &named("clearance"),
            "fitting.clearance",
            one.field(|fitting| fitting.clearance.as_ref()),
            Sign::NotNegative,
        ),
        mass: reader.quantity_if(&named("weight"), one.field(|fitting| fitting.weight.as_ref()), Dimension::MASS),
        heat: reader.quantity_if(&named("heat"), one.field(|fitting| fitting.heat.as_ref()), Dimension::POWER),
        needs: needs(one, reader),
        place: Some(id.place.clone()),
    })
}

/// What its manual asks for.
fn needs(one: Fitted<'_>, reader: &mut Reader) -> Needs {
    let id = &one.own.id.text;
    let mut length =
        |name: &str, text: Option<&Text>| reader.length_if(&format!("{id}.{name}"), text, Sign::NotNegative);
    let keep = one.field(|fitting| fitting.clear_of_combustibles.as_ref());
    let beside = length("clear_beside", keep.and_then(|keep| keep.beside.as_ref()));
    let behind = length("clear_behind", keep.and_then(|keep| keep.behind.as_ref()));
    let above = length("clear_above", keep.and_then(|keep| keep.above.as_ref()));
    let lid = length("lid", one.field(|fitting| fitting.lid.as_ref()));
    let most_top = length("most_top", one.field(|fitting| fitting.most_top.as_ref()));
    let most_face = length("most_face", one.field(|fitting| fitting.most_face.as_ref()));
    let fuel = one.field(|fitting| fitting.fuel.as_ref()).copied();
    Needs {
        fuel: fuel.and_then(services::fuel),
        no_gas: fuel.is_some_and(|fuel| services::fuel(fuel).is_none()),
        beside,
        behind,
        above,
        lid,
        liner: one.field(|fitting| fitting.liner.as_ref()).copied(),
        most_top,
        most_face,
        power: one.field(|fitting| fitting.power.as_ref()).map(|text| reader.words(Some(text), "")),
        hinge_right: one.field(|fitting| fitting.hinge.as_ref()).map(|side| matches!(side, SideText::Right)),
        free_area: reader.quantity_if(
            &format!("{id}.free_area"),
            one.field(|fitting| fitting.free_area.as_ref()),
            Dimension::AREA,
        ),
    }
}

/// The leg and module that a fitting is in.
fn module(index: &Index<'_>, one: Fitted<'_>, reader: &mut Reader) -> Option<(usize, usize)> {
    let id = &one.own.id;
    let Some(named) = &one.own.module else {
        reader.tell(format!("`{}` is in no module", id.text), "write `in: \"…\"` with a module's id", &id.place);
        return None;
    };
    let found = index.modules.get(named.text.as_str()).copied();
    if found.is_none() {
        let ids = &index.module_ids;
        let instead = findings::nearest(&named.text, ids.iter().copied())
            .map_or_else(|| format!("the modules are {}", ids.join(", ")), |meant| format!("write \"{meant}\""));
        reader.tell(format!("there is no module `{}` for `{}`", named.text, id.text), instead, &named.place);
    }
    found
}

fn look(one: Fitted<'_>, cut: &CutText, reader: &mut Reader) -> Look {
    match (one.field(|fitting| fitting.look.as_ref()), cut) {
        (Some(look), _) => match *look {
            LookText::Grill => Look::Grill,
            LookText::SideBurner => Look::SideBurner,
            LookText::Sink => Look::Sink,
            LookText::Faucet => Look::Faucet,
            LookText::Door { pull } => Look::Door { pull_right: matches!(pull, SideText::Right) },
            LookText::Doors => Look::Doors,
            LookText::Drawers(count) => {
                if !(1..=8).contains(&count) {
                    reader.tell("a stack has one to eight drawers", "write `drawers(3)`", &one.own.id.place);
                }
                Look::Drawers(count.clamp(1, 8))
            }
            LookText::WastePullOut => Look::WastePullOut,
            LookText::Refrigerator => Look::Refrigerator,
            LookText::Panel => Look::Panel,
            LookText::Vent => Look::Vent,
            LookText::Hole => Look::Hole,
        },
        (None, CutText::Vent { .. }) => Look::Vent,
        (None, CutText::PassThrough { .. } | CutText::RoundWell { .. }) => Look::Hole,
        (None, _) => {
            let id = &one.own.id;
            reader.tell(format!("`{}` has no `look`", id.text), "write how it looks, as `look: doors`", &id.place);
            Look::Hole
        }
    }
}

fn across(index: &Index<'_>, one: Fitted<'_>, reader: &mut Reader) -> Across {
    let none = Measure::published(Length::ZERO);
    let (line, from, distance) = match one.across() {
        None | Some(AcrossText::Centred) => {
            return Across { line: AcrossLine::Centre, from: AcrossFrom::ModuleCentre, distance: none };
        }
        Some(AcrossText::AlignedWith(other)) => {
            let from = other_fitting(index, one, other, reader);
            return Across { line: AcrossLine::Centre, from, distance: none };
        }
        Some(AcrossText::LeftEdge { from, distance }) => (AcrossLine::LeftEdge, from, distance),
        Some(AcrossText::Centreline { from, distance }) => (AcrossLine::Centre, from, distance),
        Some(AcrossText::RightEdge { from, distance }) => (AcrossLine::RightEdge, from, distance),
    };
    let from = match from {
        AcrossFromText::ModuleCentre => AcrossFrom::ModuleCentre,
        AcrossFromText::ModuleLeft => AcrossFrom::ModuleLeft,
        AcrossFromText::ModuleRight => AcrossFrom::ModuleRight,
        AcrossFromText::FinishedLeft => AcrossFrom::FinishedLeft,
        AcrossFromText::FinishedRight => AcrossFrom::FinishedRight,
        AcrossFromText::FrameLeft => AcrossFrom::FrameLeft,
        AcrossFromText::FrameRight => AcrossFrom::FrameRight,
        AcrossFromText::BoardLeft => AcrossFrom::BoardLeft,
        AcrossFromText::BoardRight => AcrossFrom::BoardRight,
        AcrossFromText::FinishedFace => AcrossFrom::FinishedFace,
        AcrossFromText::Fitting(other) => other_fitting(index, one, other, reader),
    };
    Across { line, from, distance: measure(one, "across", distance, Sign::Any, reader) }
}

/// Another fitting by its id. One that goes back to itself is refused.
fn other_fitting(index: &Index<'_>, one: Fitted<'_>, other: &Text, reader: &mut Reader) -> AcrossFrom {
    let Some(found) = index.fittings.get(other.text.as_str()).copied() else {
        let ids = index.fittings.keys().copied();
        let instead = findings::nearest(&other.text, ids)
            .map_or_else(|| "write another fitting's id".to_owned(), |meant| format!("write \"{meant}\""));
        reader.tell(format!("there is no fitting `{}` to align with", other.text), instead, &other.place);
        return AcrossFrom::ModuleCentre;
    };
    if let Some(members) = index.circles.get(one.own.id.text.as_str()) {
        /// More members than this are left out.
        const MOST: usize = 12;
        let shown = members.iter().take(MOST).copied();
        let left_out = (members.len() > MOST).then_some("…");
        let last = (members.len() > MOST).then(|| members.last().copied()).flatten();
        let chain = shown.chain(left_out).chain(last).collect::<Vec<_>>().join(" -> ");
        let message = format!("these fittings are placed from each other: {chain}");
        reader.tell(message, "place one of them in its module", &other.place);
        return AcrossFrom::ModuleCentre;
    }
    AcrossFrom::Fitting(found)
}

fn cut(one: Fitted<'_>, written: &CutText, reader: &mut Reader) -> Cut {
    let radius = |default: &str, reader: &mut Reader| {
        let name = format!("{}.radius", one.own.id.text);
        reader.length_or(&name, default, written.radius(), Sign::NotNegative)
    };
    match written {
        CutText::Notch { width, depth, .. } => {
            let (drop, drop_from) = self::drop(one, reader);
            Cut::Notch {
                width: measure(one, "cutout_width", width, Sign::Positive, reader),
                depth: measure(one, "cutout_depth", depth.dimension(), Sign::Positive, reader),
                depth_from: depth_from(depth),
                drop,
                drop_from,
                radius: radius("fitting.radius.notch", reader),
            }
        }
        CutText::Well { width, depth, setback, .. } => {
            let shape = WellShape::Rectangle {
                width: measure(one, "cutout_width", width, Sign::Positive, reader),
                depth: measure(one, "cutout_depth", depth, Sign::Positive, reader),
                radius: radius("fitting.radius.well", reader),
            };
            well(one, shape, setback, reader)
        }
        CutText::RoundWell { diameter, setback } => {
            let shape = WellShape::Circle { diameter: measure(one, "diameter", diameter, Sign::Positive, reader) };
            well(one, shape, setback, reader)
        }
        CutText::Opening { width, height, .. }
        | CutText::Vent { width, height, .. }
        | CutText::PassThrough { width, height, .. } => {
            let (drop, drop_from) = self::drop(one, reader);
            Cut::Opening {
                width: measure(one, "cutout_width", width, Sign::Positive, reader),
                height: match height {
                    ExtentText::ToFloor => None,
                    ExtentText::High(height) => Some(measure(one, "cutout_height", height, Sign::Positive, reader)),
                },
                drop,
                drop_from,
                radius: radius("fitting.radius.opening", reader),
                sort: match written {
                    CutText::Vent { .. } => OpeningSort::Vent,
                    CutText::PassThrough { .. } => OpeningSort::PassThrough,
                    _ => OpeningSort::Fitting,
                },
            }
        }
    }
}

/// A well goes down through everything: it has no drop.
fn well(one: Fitted<'_>, shape: WellShape, setback: &SetbackText, reader: &mut Reader) -> Cut {
    Cut::Well {
        shape,
        line: match setback {
            SetbackText::FrontEdge(_) => DepthLine::Front,
            SetbackText::Centre(_) => DepthLine::Centre,
            SetbackText::BackEdge(_) => DepthLine::Back,
        },
        setback: measure(one, "setback", setback.depth().dimension(), Sign::Positive, reader),
        setback_from: depth_from(setback.depth()),
    }
}

fn drop(one: Fitted<'_>, reader: &mut Reader) -> (Measure, HeightFrom) {
    let Some(drop) = one.drop() else {
        let id = &one.own.id;
        let instead = "write `drop: from_counter_top(\"…\")`, beside the cut or in it";
        reader.tell(format!("`{}` has no `drop`", id.text), instead, &id.place);
        return (Measure::published(Length::ZERO), HeightFrom::CounterTop);
    };
    let from = match drop {
        DropText::FromCounterTop(_) => HeightFrom::CounterTop,
        DropText::FromSubstrateTop(_) => HeightFrom::SubstrateTop,
        DropText::FromFrameTop(_) => HeightFrom::FrameTop,
        DropText::FromFloor(_) => HeightFrom::Floor,
    };
    (measure(one, "drop", drop.dimension(), Sign::NotNegative, reader), from)
}

fn depth_from(depth: &DepthText) -> DepthFrom {
    match depth {
        DepthText::FromFinishedFace(_) => DepthFrom::FinishedFace,
        DepthText::FromCounterEdge(_) => DepthFrom::CounterEdge,
        DepthText::FromBoardFace(_) => DepthFrom::BoardFace,
        DepthText::FromFrameFace(_) => DepthFrom::FrameFace,
    }
}

/// A dimension, published, measured or both; one set on the command line stands alone.
fn measure(one: Fitted<'_>, property: &str, dimension: &DimensionText, sign: Sign, reader: &mut Reader) -> Measure {
    let measured = one.measured(property).or(dimension.measured.as_ref());
    let place = Some(measured.map_or(&dimension.whole.place, |text| &text.place).clone());
    if let Some(text) = reader.override_of(&format!("{}.{property}", one.own.id.text)) {
        return Measure { published: reader.length_of(&text, sign), measured: None, place };
    }
    if dimension.published.is_none() && measured.is_none() {
        reader.tell(
            "neither `published` nor `measured` is given",
            "write at least one of them",
            &dimension.whole.place,
        );
    }
    Measure {
        published: dimension.published.as_ref().and_then(|text| reader.length_of(text, sign)),
        measured: measured.and_then(|text| reader.length_of(text, sign)),
        place,
    }
}

/// Refuses names under `measured` that the fitting has no dimension of, and names that come twice.
fn check_measured(one: Fitted<'_>, reader: &mut Reader) {
    let known: Vec<&str> = one.dimensions().into_iter().map(|(name, _)| name).collect();
    for (index, (name, _)) in one.own.measured.0.iter().enumerate() {
        let before = one.own.measured.0.iter().take(index);
        if before.clone().any(|(other, _)| other.text == name.text) {
            reader.tell(format!("`{}` is measured twice", name.text), "keep one of them", &name.place);
        }
        if !known.contains(&name.text.as_str()) && !one.lacks_base() {
            let instead = findings::nearest(&name.text, known.iter().copied())
                .map_or_else(|| format!("it has {}", known.join(", ")), |meant| format!("write \"{meant}\""));
            reader.tell(format!("`{}` has no dimension `{}`", one.own.id.text, name.text), instead, &name.place);
        }
    }
}

/// The laps of the flange. In a counter the far side is the back; in a board, the top.
fn flange(one: Fitted<'_>, reader: &mut Reader) -> Flange {
    let Some(flange) = one.flange() else { return Flange::default() };
    let mut side = |name: &str, text: Option<&Text>| {
        let name = format!("{}.flange_{name}", one.own.id.text);
        reader.length_if(&name, text, Sign::NotNegative)
    };
    let (back, top) = (side("back", flange.back.as_ref()), side("top", flange.top.as_ref()));
    let (front, bottom) = (side("front", flange.front.as_ref()), side("bottom", flange.bottom.as_ref()));
    let flange = Flange {
        left: side("left", flange.left.as_ref()).unwrap_or_default(),
        right: side("right", flange.right.as_ref()).unwrap_or_default(),
        far: back.or(top).unwrap_or_default(),
        near: front.or(bottom).unwrap_or_default(),
    };
    let in_board =
        matches!(one.cut(), Some(CutText::Opening { .. } | CutText::Vent { .. } | CutText::PassThrough { .. }));
    let (wrong, instead) = if in_board {
        (back.or(front), "in a board a flange has `left`, `right`, `top`, `bottom`")
    } else {
        (top.or(bottom), "in a counter a flange has `left`, `right`, `back`, `front`")
    };
    if wrong.is_some() {
        reader.tell(
            format!("the flange of `{}` has a side that its cut hasn't", one.own.id.text),
            instead,
            &one.own.id.place,
        );
    }
    flange
}
