//! A fitting as the job sets it in: its own words first, its library's behind them.

use super::reader::Reader;
use crate::findings;
use crate::model::{
    AcrossFromText, AcrossText, BodyText, CutText, DepthText, DimensionText, DropText, ExtentText, FittingText,
    FlangeText, JobFile, SetbackText, Text,
};
use std::collections::HashMap;

/// A fitting with the library's fitting that it is made from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fitted<'j> {
    /// As the job writes it.
    pub(super) own: &'j FittingText,
    /// As the library writes it.
    base: Option<&'j FittingText>,
}

/// Every fitting of the job with its base.
pub(super) fn all<'j>(job: &'j JobFile, reader: &mut Reader) -> Vec<Fitted<'j>> {
    let mut shelf: HashMap<&str, &FittingText> = HashMap::new();
    for fitting in &job.library_fittings {
        if fitting.module.is_some() || fitting.from.is_some() {
            let instead = "write `in` and `from` where the job uses it";
            reader.tell("a library's fitting has no `in` and no `from`", instead, &fitting.id.place);
        }
        if shelf.insert(&fitting.id.text, fitting).is_some() {
            let message = format!("two library fittings have the id `{}`", fitting.id.text);
            reader.tell(message, "give each an id of its own", &fitting.id.place);
        }
    }
    job.fittings.iter().map(|own| Fitted { own, base: base(job, &shelf, own, reader) }).collect()
}

fn base<'j>(
    job: &'j JobFile,
    shelf: &HashMap<&str, &'j FittingText>,
    own: &FittingText,
    reader: &mut Reader,
) -> Option<&'j FittingText> {
    let from = own.from.as_ref()?;
    let found = shelf.get(from.text.as_str()).copied();
    if found.is_none() && !job.library_missing {
        let ids = job.library_fittings.iter().map(|fitting| fitting.id.text.as_str());
        let instead = findings::nearest(&from.text, ids.clone()).map_or_else(
            || match ids.collect::<Vec<_>>().as_slice() {
                [] => "name the library's file under `libraries`".to_owned(),
                ids => format!("the libraries have {}", ids.join(", ")),
            },
            |meant| format!("write \"{meant}\""),
        );
        reader.tell(format!("no library has a fitting `{}`", from.text), instead, &from.place);
    }
    found
}

impl<'j> Fitted<'j> {
    /// A field: the job's, else the library's.
    pub(super) fn field<T>(self, of: impl Fn(&'j FittingText) -> Option<&'j T>) -> Option<&'j T> {
        of(self.own).or_else(|| self.base.and_then(of))
    }

    /// Whether it waits for a library that could not be read.
    pub(super) fn lacks_base(self) -> bool {
        self.own.from.is_some() && self.base.is_none()
    }

    pub(super) fn cut(self) -> Option<&'j CutText> {
        self.field(|fitting| fitting.cut.as_ref())
    }

    /// How far down its cut is: what stands beside the cut goes before what stands in it.
    pub(super) fn drop(self) -> Option<&'j DropText> {
        let beside = |fitting: &'j FittingText| fitting.drop.as_ref();
        let within = |fitting: &'j FittingText| fitting.cut.as_ref().and_then(CutText::drop);
        beside(self.own)
            .or_else(|| within(self.own))
            .or_else(|| self.base.and_then(|base| beside(base).or_else(|| within(base))))
    }

    pub(super) fn body(self) -> Option<&'j BodyText> {
        self.field(|fitting| fitting.body.as_ref())
    }

    pub(super) fn flange(self) -> Option<&'j FlangeText> {
        self.field(|fitting| fitting.flange.as_ref())
    }

    pub(super) fn across(self) -> Option<&'j AcrossText> {
        self.field(|fitting| fitting.across.as_ref())
    }

    /// The fitting that its place across is taken from.
    pub(super) fn aligned_with(self) -> Option<&'j Text> {
        match self.across()? {
            AcrossText::AlignedWith(other)
            | AcrossText::LeftEdge { from: AcrossFromText::Fitting(other), .. }
            | AcrossText::Centreline { from: AcrossFromText::Fitting(other), .. }
            | AcrossText::RightEdge { from: AcrossFromText::Fitting(other), .. } => Some(other),
            _ => None,
        }
    }

    /// What `measured` says of a property.
    pub(super) fn measured(self, property: &str) -> Option<&'j Text> {
        let entries = |fitting: &'j FittingText| {
            fitting.measured.0.iter().find(|(name, _)| name.text == property).map(|(_, text)| text)
        };
        self.field(entries)
    }

    /// Every dimension that may be published and measured, by its name in expressions.
    pub(super) fn dimensions(self) -> Vec<(&'static str, &'j DimensionText)> {
        let mut all = Vec::new();
        match self.cut() {
            Some(CutText::Notch { width, depth, .. }) => {
                all.extend([("cutout_width", width), ("cutout_depth", depth.dimension())]);
            }
            Some(CutText::Well { width, depth, setback, .. }) => {
                all.extend([
                    ("cutout_width", width),
                    ("cutout_depth", depth),
                    ("setback", setback.depth().dimension()),
                ]);
            }
            Some(CutText::RoundWell { diameter, setback }) => {
                all.extend([("diameter", diameter), ("setback", setback.depth().dimension())]);
            }
            Some(
                CutText::Opening { width, height, .. }
                | CutText::Vent { width, height, .. }
                | CutText::PassThrough { width, height, .. },
            ) => {
                all.push(("cutout_width", width));
                if let ExtentText::High(height) = height {
                    all.push(("cutout_height", height));
                }
            }
            None => {}
        }
        if let Some(drop) = self.drop() {
            all.push(("drop", drop.dimension()));
        }
        if let Some(body) = self.body() {
            all.extend([("body_width", &body.width), ("body_depth", &body.depth), ("body_height", &body.height)]);
        }
        if let Some(
            AcrossText::LeftEdge { distance, .. }
            | AcrossText::Centreline { distance, .. }
            | AcrossText::RightEdge { distance, .. },
        ) = self.across()
        {
            all.push(("across", distance));
        }
        all
    }

    /// Every property that an expression can name, with the text that the solver works with.
    pub(super) fn properties(self) -> Vec<(&'static str, &'j Text)> {
        let mut all: Vec<(&'static str, &'j Text)> = self
            .dimensions()
            .into_iter()
            .map(|(name, dimension)| (name, self.measured(name).unwrap_or_else(|| dimension.working())))
            .collect();
        let mut add = |name, text: Option<&'j Text>| all.extend(text.map(|text| (name, text)));
        let flange = self.flange();
        add("flange_left", flange.and_then(|flange| flange.left.as_ref()));
        add("flange_right", flange.and_then(|flange| flange.right.as_ref()));
        add("flange_back", flange.and_then(|flange| flange.back.as_ref()));
        add("flange_front", flange.and_then(|flange| flange.front.as_ref()));
        add("flange_top", flange.and_then(|flange| flange.top.as_ref()));
        add("flange_bottom", flange.and_then(|flange| flange.bottom.as_ref()));
        add("clearance", self.field(|fitting| fitting.clearance.as_ref()));
        add("weight", self.field(|fitting| fitting.weight.as_ref()));
        add("heat", self.field(|fitting| fitting.heat.as_ref()));
        let keep = self.field(|fitting| fitting.clear_of_combustibles.as_ref());
        add("clear_beside", keep.and_then(|keep| keep.beside.as_ref()));
        add("clear_behind", keep.and_then(|keep| keep.behind.as_ref()));
        add("clear_above", keep.and_then(|keep| keep.above.as_ref()));
        add("lid", self.field(|fitting| fitting.lid.as_ref()));
        add("most_top", self.field(|fitting| fitting.most_top.as_ref()));
        add("most_face", self.field(|fitting| fitting.most_face.as_ref()));
        add("free_area", self.field(|fitting| fitting.free_area.as_ref()));
        add("radius", self.cut().and_then(CutText::radius));
        all
    }
}

impl CutText {
    /// The written corner radius.
    pub(super) fn radius(&self) -> Option<&Text> {
        match self {
            CutText::Notch { radius, .. }
            | CutText::Well { radius, .. }
            | CutText::Opening { radius, .. }
            | CutText::Vent { radius, .. }
            | CutText::PassThrough { radius, .. } => radius.as_ref(),
            CutText::RoundWell { .. } => None,
        }
    }
}

impl CutText {
    /// The written drop.
    pub(super) fn drop(&self) -> Option<&DropText> {
        match self {
            CutText::Notch { drop, .. }
            | CutText::Opening { drop, .. }
            | CutText::Vent { drop, .. }
            | CutText::PassThrough { drop, .. } => drop.as_ref(),
            CutText::Well { .. } | CutText::RoundWell { .. } => None,
        }
    }
}

impl DepthText {
    pub(super) fn dimension(&self) -> &DimensionText {
        match self {
            DepthText::FromFinishedFace(dimension)
            | DepthText::FromCounterEdge(dimension)
            | DepthText::FromBoardFace(dimension)
            | DepthText::FromFrameFace(dimension) => dimension,
        }
    }
}

impl DropText {
    pub(super) fn dimension(&self) -> &DimensionText {
        match self {
            DropText::FromCounterTop(dimension)
            | DropText::FromSubstrateTop(dimension)
            | DropText::FromFrameTop(dimension)
            | DropText::FromFloor(dimension) => dimension,
        }
    }
}

impl SetbackText {
    pub(super) fn depth(&self) -> &DepthText {
        match self {
            SetbackText::FrontEdge(depth) | SetbackText::Centre(depth) | SetbackText::BackEdge(depth) => depth,
        }
    }
}
