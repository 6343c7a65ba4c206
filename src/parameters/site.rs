//! The site.

use super::given::{Around, Bound, BoundKind, Combustible, Face, Floor, Overhead, Person, Service, Site, Spot, Stub};
use super::reader::{Reader, Sign};
use crate::findings;
use crate::model::{BoundText, FaceText, FloorText, JobFile, OverheadText, ServiceText, SpotText, StubText, Text};
use crate::units::{Dimension, Length};

/// Works out the floor and what comes up through it.
pub(super) fn read(job: &JobFile, reader: &mut Reader) -> Site {
    Site {
        floor: floor(job.site.floor.as_ref(), reader),
        stubs: job.site.stubs.iter().map(|stub| self::stub(job, stub, reader)).collect(),
        paving: reader.words(job.site.paving.as_ref(), "paving"),
        around: around(job, reader),
        survey: super::survey::read(&job.site.survey, reader),
    }
}

/// What is above, beside and before the run, and who works at it.
fn around(job: &JobFile, reader: &mut Reader) -> Around {
    let site = &job.site;
    let length = |text: &Text, sign, reader: &mut Reader| reader.length_of(text, sign).unwrap_or_default();
    Around {
        overhead: match &site.overhead {
            None => Overhead::Unsaid,
            Some(OverheadText::Open) => Overhead::Open,
            Some(OverheadText::Roof { name, height, combustible, hood }) => Overhead::Roof {
                name: reader.words(name.as_ref(), "roof"),
                height: length(height, Sign::Positive, reader),
                combustible: *combustible,
                hood: *hood,
                place: Some(height.place.clone()),
            },
        },
        combustibles: site
            .combustibles
            .iter()
            .map(|thing| Combustible {
                name: reader.words(Some(&thing.name), ""),
                leg: leg(job, thing.leg.as_ref(), reader),
                side: face(thing.side),
                distance: length(&thing.distance, Sign::NotNegative, reader),
                place: Some(thing.name.place.clone()),
            })
            .collect(),
        aisle: reader.length_if("site.aisle", site.aisle.as_ref(), Sign::Positive),
        carries: reader.quantity_if("site.carries", site.carries.as_ref(), Dimension::AREA_MASS),
        people: site
            .people
            .iter()
            .map(|person| Person {
                name: reader.words(Some(&person.name), ""),
                stature: person.stature.as_ref().and_then(|text| reader.length_of(text, Sign::Positive)),
                seated: person.seated,
                place: Some(person.name.place.clone()),
            })
            .collect(),
        accessible: site.accessible,
        sun: site.sun,
        drains: site
            .drains
            .iter()
            .map(|drain| {
                let leg = leg(job, drain.leg.as_ref(), reader);
                (leg, length(&drain.along, Sign::Any, reader), length(&drain.depth, Sign::Any, reader))
            })
            .collect(),
    }
}

/// A face as written.
pub(super) fn face(written: FaceText) -> Face {
    match written {
        FaceText::Front => Face::Front,
        FaceText::Left => Face::Left,
        FaceText::Right => Face::Right,
        FaceText::Back => Face::Back,
    }
}

fn floor(floor: Option<&FloorText>, reader: &mut Reader) -> Floor {
    match floor {
        None | Some(FloorText::Level) => Floor::Level,
        Some(FloorText::Fall { along, across }) => {
            let along = along.as_ref().map_or(0.0, |text| fall(text, reader));
            let across = across.as_ref().map_or(0.0, |text| fall(text, reader));
            Floor::Fall { along, across }
        }
        Some(FloorText::Spots(spots)) => Floor::Spots(self::spots(spots, reader)),
        Some(FloorText::ThroughSpots(spots)) => Floor::ThroughSpots(self::spots(spots, reader)),
    }
}

fn spots(spots: &[SpotText], reader: &mut Reader) -> Vec<Spot> {
    let spot = |spot: &SpotText| Spot {
        u: reader.length_of(&spot.along, Sign::Any).unwrap_or_default(),
        v: reader.length_of(&spot.depth, Sign::Any).unwrap_or_default(),
        z: reader.length_of(&spot.height, Sign::Any).unwrap_or_default(),
    };
    spots.iter().map(spot).collect()
}

/// A fall: a plain number, refused when it is written without a unit or steeper than a stair.
fn fall(text: &Text, reader: &mut Reader) -> f64 {
    const STEEPEST: f64 = 0.5;
    let written = text.text.trim();
    if written.parse::<f64>().is_ok_and(|number| number != 0.0) {
        let instead = format!("write \"{written} %\", \"1/4 in per ft\" or \"1:60\"");
        reader.tell(format!("the fall `{written}` has no unit"), instead, &text.place);
        return 0.0;
    }
    let value = match reader.names.value(text) {
        Some(value) if value.dimension == Dimension::NUMBER => value.value,
        Some(value) => {
            let message = format!("`{written}` is {}, and a fall is wanted here", value.dimension.words());
            reader.tell(message, "write it as \"1/4 in per ft\", \"2 %\" or \"1:60\"", &text.place);
            return 0.0;
        }
        None => return 0.0,
    };
    if value.abs() > STEEPEST {
        reader.tell("this floor is steeper than a stair", "write a fall as \"1/4 in per ft\" or \"2 %\"", &text.place);
        return 0.0;
    }
    value
}

fn stub(job: &JobFile, stub: &StubText, reader: &mut Reader) -> Stub {
    Stub {
        service: match stub.service {
            ServiceText::Gas => Service::Gas,
            ServiceText::Power => Service::Power,
            ServiceText::Water => Service::Water,
            ServiceText::Drain => Service::Drain,
        },
        leg: leg(job, stub.leg.as_ref(), reader),
        u: reader.length_of(&stub.along, Sign::Any).unwrap_or_default(),
        v: reader.length_of(&stub.depth, Sign::Any).unwrap_or_default(),
        z: stub.height.as_ref().and_then(|text| reader.length_of(text, Sign::NotNegative)),
        place: Some(stub.along.place.clone()),
    }
}

/// A leg's index by its id; the first where none is named.
pub(super) fn leg(job: &JobFile, named: Option<&Text>, reader: &mut Reader) -> usize {
    let Some(named) = named else { return 0 };
    job.legs.iter().position(|leg| leg.id.text == named.text).unwrap_or_else(|| {
        let ids: Vec<&str> = job.legs.iter().map(|leg| leg.id.text.as_str()).collect();
        let instead = findings::nearest(&named.text, ids.iter().copied())
            .map_or_else(|| format!("the legs are {}", ids.join(", ")), |meant| format!("write \"{meant}\""));
        reader.tell(format!("there is no leg `{}`", named.text), instead, &named.place);
        0
    })
}

/// What stands at an end or behind; nothing where nothing is written.
pub(super) fn bound(bound: Option<&BoundText>, reader: &mut Reader) -> Bound {
    let Some(parts) = bound.and_then(BoundText::parts) else {
        return Bound {
            kind: BoundKind::Open,
            name: String::new(),
            gap: Length::ZERO,
            lean: Length::ZERO,
            height: Length::ZERO,
            width: Length::ZERO,
            combustible: None,
            place: None,
        };
    };
    let kind = match parts.kind {
        "wall" => BoundKind::Wall,
        "pier" => BoundKind::Pier,
        _ => BoundKind::Post,
    };
    let name = reader.words(parts.name, parts.kind);
    Bound {
        kind,
        gap: reader.length_of(parts.gap, Sign::NotNegative).unwrap_or_default(),
        lean: reader.length_or(&format!("{name} lean"), "bound.lean", parts.lean, Sign::Any),
        height: reader.length_or(&format!("{name} height"), "bound.height", parts.height, Sign::Positive),
        width: reader.length_or(&format!("{name} width"), "bound.width", parts.width, Sign::Positive),
        name,
        combustible: parts.combustible,
        place: Some(parts.gap.place.clone()),
    }
}
