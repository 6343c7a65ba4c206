//! Frame, counter, substrate, height, trim and tolerances.

use super::given::{
    Counter, CounterMaterial, CounterNeeds, Feet, Frame, FrameMaterial, Height, RailHelp, Splash, Substrate,
    SubstrateEdge, Tolerances,
};
use super::reader::{Reader, Sign};
use super::site;
use crate::model::{
    CounterText, FrameMaterialText, FrameText, HeightText, JobFile, MaterialText, RailsText, SubstrateEdgeText,
    SubstrateText, TolerancesText,
};
use crate::units::{Dimension, Length};

/// Works out the bare frame; `measured` says whether the floor has spots that its feet may stand on.
pub(super) fn frame(frame: &FrameText, measured: bool, reader: &mut Reader) -> Frame {
    let feet = &frame.feet;
    let shortest = reader.length("frame.feet.shortest", feet.shortest.as_ref(), Sign::NotNegative);
    let longest = reader.length("frame.feet.longest", feet.longest.as_ref(), Sign::Positive);
    let place = feet.longest.as_ref().or(feet.shortest.as_ref()).map(|text| text.place.clone());
    if let (true, Some(place)) = (longest < shortest, &place) {
        reader.tell("the longest foot is shorter than the shortest", "exchange the two", place);
    }
    let read = Frame {
        depth: reader.length("frame.depth", Some(&frame.depth), Sign::Positive),
        tube: reader.length("frame.tube", frame.tube.as_ref(), Sign::Positive),
        wall: reader.length("frame.wall", frame.wall.as_ref(), Sign::Positive),
        height: reader.length_if("frame.height", frame.height.as_ref(), Sign::Positive),
        material: match frame.material {
            None | Some(FrameMaterialText::Steel) => FrameMaterial::Steel,
            Some(FrameMaterialText::Aluminium) => FrameMaterial::Aluminium,
            Some(FrameMaterialText::Wood) => FrameMaterial::Wood,
        },
        studs: reader.length_if("frame.studs", frame.studs.as_ref(), Sign::Positive),
        feet: Feet {
            shortest,
            longest,
            inset: reader.length("frame.feet.inset", feet.inset.as_ref(), Sign::NotNegative),
            middle_over: reader.length("frame.feet.middle_over", feet.middle_over.as_ref(), Sign::Positive),
            spacing: reader.length("frame.feet.spacing", feet.spacing.as_ref(), Sign::Positive),
            spot_reach: match measured {
                true => reader.length("frame.feet.spot_reach", feet.spot_reach.as_ref(), Sign::NotNegative),
                false => Length::ZERO,
            },
            rating: reader.quantity_or("frame.feet.rating", "frame.feet.rating", feet.rating.as_ref(), Dimension::MASS),
            place: place.or_else(|| Some(frame.depth.place.clone())),
        },
        rough_gap: reader.length("frame.rough_gap", frame.rough_gap.as_ref(), Sign::NotNegative),
        place: Some(frame.depth.place.clone()),
    };
    if let (Some(tube), true) = (&frame.tube, read.tube * 2 >= read.depth && read.depth.nm() > 0) {
        reader.tell("two tubes are as deep as the whole frame", "check tube and depth", &tube.place);
    }
    read
}

/// Works out the counter.
pub(super) fn counter(job: &JobFile, reader: &mut Reader) -> Counter {
    let counter = &job.counter;
    let overhang = &counter.overhang;
    let (material, density, name) = match counter.material {
        MaterialText::Concrete => (CounterMaterial::Concrete, "counter.density.concrete", "concrete"),
        MaterialText::Stone => (CounterMaterial::Stone, "counter.density.stone", "stone"),
        MaterialText::Porcelain => (CounterMaterial::Porcelain, "counter.density.porcelain", "porcelain"),
    };
    Counter {
        material,
        name: reader.words(counter.name.as_ref(), name),
        thickness: reader.length("counter.thickness", Some(&counter.thickness), Sign::Positive),
        density: reader.quantity_or("counter.density", density, counter.density.as_ref(), Dimension::DENSITY),
        overhang_front: reader.length("counter.overhang_front", overhang.front.as_ref(), Sign::Any),
        overhang_left: reader.length("counter.overhang_left", overhang.left.as_ref(), Sign::Any),
        overhang_right: reader.length("counter.overhang_right", overhang.right.as_ref(), Sign::Any),
        overhang_back: reader.length("counter.overhang_back", overhang.back.as_ref(), Sign::Any),
        wall_joint: reader.length("counter.wall_joint", counter.wall_joint.as_ref(), Sign::NotNegative),
        seam_joint: reader.length("counter.seam_joint", counter.seam_joint.as_ref(), Sign::NotNegative),
        corner_radius: reader.length("counter.corner_radius", counter.corner_radius.as_ref(), Sign::NotNegative),
        arris: reader.length("counter.arris", counter.arris.as_ref(), Sign::NotNegative),
        drip: reader.length("counter.drip", counter.drip.as_ref(), Sign::NotNegative),
        splash: counter.splash.as_ref().map(|splash| Splash {
            height: reader.length("counter.splash_height", Some(&splash.height), Sign::Positive),
            thickness: reader.length("counter.splash_thickness", Some(&splash.thickness), Sign::Positive),
        }),
        seams: counter
            .seams
            .iter()
            .map(|seam| {
                let leg = site::leg(job, seam.leg.as_ref(), reader);
                (leg, reader.length_of(&seam.along, Sign::Any).unwrap_or_default())
            })
            .collect(),
        notches: super::notch::read(job, reader),
        tolerance: reader.length("counter.tolerance", counter.tolerance.as_ref(), Sign::NotNegative),
        needs: counter_needs(counter, reader),
        place: Some(counter.thickness.place.clone()),
    }
}

/// Slab, support, lifting.
fn counter_needs(counter: &CounterText, reader: &mut Reader) -> CounterNeeds {
    CounterNeeds {
        slab: counter.slab.as_ref().and_then(|slab| {
            let length = reader.length_of(&slab.length, Sign::Positive)?;
            Some((length, reader.length_of(&slab.width, Sign::Positive)?))
        }),
        resin: counter.resin.or_else(|| {
            // Only names that can mean nothing else.
            let name = counter.name.as_ref().map(|name| name.text.to_lowercase()).unwrap_or_default();
            let bound = ["engineered quartz", "quartz composite", "solid surface", "acrylic", "resin"];
            bound.iter().any(|word| name.contains(word)).then_some(true)
        }),
        brackets: reader.length_if("counter.brackets", counter.brackets.as_ref(), Sign::Positive),
        rails: match counter.rails {
            None | Some(RailsText::Plain) => RailHelp::Plain,
            Some(RailsText::Rodded) => RailHelp::Rodded,
            Some(RailsText::Propped) => RailHelp::Propped,
        },
        lifters: counter.lifters,
    }
}

/// Whether a sheet burns, as far as its name is plain about it.
fn burns(name: &str) -> Option<bool> {
    let name = name.to_lowercase();
    let has = |words: &[&str]| words.iter().any(|word| name.contains(word));
    if has(&["plywood", "osb", "mdf", "timber", "wood"]) {
        Some(true)
    } else if has(&["cement", "concrete", "steel", "magnesium oxide", "aluminium", "aluminum"]) {
        Some(false)
    } else {
        None
    }
}

/// Works out the sheet under the counter.
pub(super) fn substrate(substrate: &SubstrateText, reader: &mut Reader) -> Substrate {
    Substrate {
        name: reader.words(substrate.name.as_ref(), "substrate"),
        thickness: reader.length("substrate.thickness", Some(&substrate.thickness), Sign::Positive),
        edge: match &substrate.edge {
            Some(SubstrateEdgeText::FlushWithFrame) => SubstrateEdge::Frame,
            None | Some(SubstrateEdgeText::FlushWithBoard) => SubstrateEdge::Board,
            Some(SubstrateEdgeText::FlushWithFinish) => SubstrateEdge::Finish,
            Some(SubstrateEdgeText::HeldBack(text)) => {
                SubstrateEdge::HeldBack(reader.length_of(text, Sign::NotNegative).unwrap_or_default())
            }
        },
        combustible: substrate.combustible.or_else(|| substrate.name.as_ref().and_then(|name| burns(&name.text))),
        place: Some(substrate.thickness.place.clone()),
    }
}

/// Works out which level the job fixes.
pub(super) fn height(height: &HeightText, reader: &mut Reader) -> Height {
    match height {
        HeightText::CounterTop(text) => {
            Height::CounterTop(reader.length("height.counter_top", Some(text), Sign::Positive))
        }
        HeightText::FrameTop(text) => Height::FrameTop(reader.length("height.frame_top", Some(text), Sign::Positive)),
    }
}

/// Works out a level that one leg has of its own.
pub(super) fn height_of(height: &HeightText, reader: &mut Reader) -> Height {
    match height {
        HeightText::CounterTop(text) => Height::CounterTop(reader.length_of(text, Sign::Positive).unwrap_or_default()),
        HeightText::FrameTop(text) => Height::FrameTop(reader.length_of(text, Sign::Positive).unwrap_or_default()),
    }
}

/// Works out what may be off.
pub(super) fn tolerances(written: &TolerancesText, reader: &mut Reader) -> Tolerances {
    Tolerances {
        cut: reader.length("tolerances.cut", written.cut.as_ref(), Sign::NotNegative),
        placing: reader.length("tolerances.placing", written.placing.as_ref(), Sign::NotNegative),
        published: reader.length("tolerances.published", written.published.as_ref(), Sign::NotNegative),
        least_strip: reader.length("tolerances.least_strip", written.least_strip.as_ref(), Sign::NotNegative),
        least_cover: reader.length("tolerances.least_cover", written.least_cover.as_ref(), Sign::NotNegative),
    }
}
