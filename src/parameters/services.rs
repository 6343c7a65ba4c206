//! Fuel gas, and limits of rules that the job sets itself.

use super::fitted::Fitted;
use super::given::{Bends, Connection, Cylinder, Fuel, LimitSet, Load, PipeSize, Segment, Services};
use super::reader::{Reader, Sign};
use crate::findings;
use crate::model::{CylinderText, FuelText, JobFile, LimitsText, PointText, SegmentText, ServicesText, Text};
use crate::units::{Dimension, Length};

/// No run has more segments of pipe than this, nor more loads on it.
const MOST: usize = 500;

/// Works out what feeds the run; `None` where the job says nothing of it.
pub(super) fn read(job: &JobFile, fitted: &[Fitted<'_>], reader: &mut Reader) -> Option<Services> {
    let written = job.services.as_ref()?;
    if written.pipe.len().max(written.loads.len()) > MOST {
        let message = format!("more than {MOST} segments of pipe, or loads on it");
        reader.tell(
            message,
            "draw the house's pipe elsewhere, and begin here where the run's begins",
            &job.job.title.place,
        );
        return None;
    }
    unique(written, reader);
    let value = written.heating_value.as_ref();
    let mut heating = |gas: &str| {
        let name = format!("services.heating_value.{gas}");
        reader.quantity_or(&name, &name, value, Dimension::PRESSURE)
    };
    // Only the gas that is burnt needs its value stated.
    let heating_value = match written.fuel {
        Some(FuelText::NaturalGas) => (heating("natural"), 0.0),
        Some(FuelText::Propane) => (0.0, heating("propane")),
        _ => (heating("natural"), heating("propane")),
    };
    let smallest = reader.length("services.smallest", written.smallest.as_ref(), Sign::Positive);
    let smallest = match (PipeSize::of(smallest), &written.smallest) {
        (Some(size), _) => size,
        (None, Some(text)) => size(text, reader).unwrap_or(PipeSize::Half),
        (None, None) => PipeSize::Half,
    };
    Some(Services {
        fuel: written.fuel.and_then(fuel),
        supply: reader.quantity_if("services.supply", written.supply.as_ref(), Dimension::PRESSURE),
        drop: reader.quantity_if("services.drop", written.drop.as_ref(), Dimension::PRESSURE),
        heating_value,
        smallest,
        allowance: written
            .allowance
            .as_ref()
            .and_then(|text| reader.si_of(text, Dimension::NUMBER, Sign::NotNegative))
            .unwrap_or(0.0),
        pipe: written.pipe.iter().map(|segment| self::segment(segment, reader)).collect(),
        loads: written
            .loads
            .iter()
            .map(|load| Load {
                id: reader.words(Some(&load.id), ""),
                name: reader.words(load.name.as_ref(), &load.id.text.replace('_', " ")),
                heat: reader.si_of(&load.heat, Dimension::POWER, Sign::Positive).unwrap_or(0.0),
                place: Some(load.id.place.clone()),
            })
            .collect(),
        connections: connections(written, fitted, reader),
        cylinders: written.cylinders.iter().filter_map(|cylinder| self::cylinder(job, cylinder, reader)).collect(),
        place: written
            .supply
            .as_ref()
            .or(written.drop.as_ref())
            .map(|text| text.place.clone())
            .or_else(|| written.pipe.first().map(|segment| segment.id.place.clone())),
    })
}

/// A gas as written; `None` for what is no gas.
pub(super) fn fuel(written: FuelText) -> Option<Fuel> {
    match written {
        FuelText::NaturalGas => Some(Fuel::Natural),
        FuelText::Propane => Some(Fuel::Propane),
        FuelText::Convertible => Some(Fuel::Convertible),
        FuelText::Electric | FuelText::Solid => None,
    }
}

fn segment(written: &SegmentText, reader: &mut Reader) -> Segment {
    Segment {
        id: reader.words(Some(&written.id), ""),
        from: reader.words(Some(&written.from), ""),
        to: reader.words(Some(&written.to), ""),
        length: reader.length_of(&written.length, Sign::Positive).unwrap_or_default(),
        bends: Bends {
            elbows: written.elbows,
            elbows_45: written.elbows_45,
            tees: written.tees,
            bends_180: written.bends_180,
        },
        installed: written.installed.as_ref().and_then(|text| size(text, reader)),
        place: Some(written.id.place.clone()),
    }
}

/// A nominal size of pipe.
fn size(text: &Text, reader: &mut Reader) -> Option<PipeSize> {
    let bore = reader.length_of(text, Sign::Positive)?;
    let found = PipeSize::of(bore);
    if found.is_none() {
        let sizes = PipeSize::ALL.map(PipeSize::words).join(", ");
        reader.tell(format!("no pipe is made in `{}`", text.text), format!("choose from {sizes}"), &text.place);
    }
    found
}

fn connections(written: &ServicesText, fitted: &[Fitted<'_>], reader: &mut Reader) -> Vec<Connection> {
    let mut all = Vec::with_capacity(written.connections.len());
    for connection in &written.connections {
        let named = &connection.fitting;
        if !fitted.iter().any(|one| one.own.id.text == named.text) {
            let ids = fitted.iter().map(|one| one.own.id.text.as_str());
            let instead = findings::nearest(&named.text, ids)
                .map_or_else(|| "write a fitting's id".to_owned(), |meant| format!("write \"{meant}\""));
            reader.tell(format!("there is no fitting `{}` to connect", named.text), instead, &named.place);
            continue;
        }
        let mut point = |point: &PointText| {
            let along = reader.length_of(&point.along, Sign::Any)?;
            let depth = reader.length_of(&point.depth, Sign::Any)?;
            Some((along, depth, reader.length_of(&point.height, Sign::NotNegative)?))
        };
        let shutoff: Option<(Length, Length, Length)> = connection.shutoff.as_ref().and_then(&mut point);
        all.push(Connection {
            fitting: named.text.clone(),
            shutoff,
            connector: connection.connector.as_ref().and_then(|text| reader.length_of(text, Sign::Positive)),
            inlet: connection.inlet.as_ref().and_then(|text| size(text, reader)),
            rated: connection.rated.as_ref().and_then(|text| reader.si_of(text, Dimension::POWER, Sign::Positive)),
            place: Some(named.place.clone()),
        });
    }
    all
}

fn cylinder(job: &JobFile, written: &CylinderText, reader: &mut Reader) -> Option<Cylinder> {
    let named = &written.module;
    let mut at = None;
    for (leg, row) in job.legs.iter().enumerate() {
        if let Some(module) = row.modules.iter().position(|module| module.id.text == named.text) {
            at = at.or(Some((leg, module)));
        }
    }
    let Some((leg, module)) = at else {
        let ids = job.legs.iter().flat_map(|leg| &leg.modules).map(|module| module.id.text.as_str());
        let instead = findings::nearest(&named.text, ids)
            .map_or_else(|| "write a module's id".to_owned(), |meant| format!("write \"{meant}\""));
        reader.tell(format!("there is no module `{}` for a cylinder", named.text), instead, &named.place);
        return None;
    };
    Some(Cylinder {
        leg,
        module,
        holds: reader.si_of(&written.holds, Dimension::MASS, Sign::Positive)?,
        count: written.count.unwrap_or(1).max(1),
        partition: written.partition,
        place: Some(named.place.clone()),
    })
}

/// Refuses segments and loads that bear one id.
fn unique(written: &ServicesText, reader: &mut Reader) {
    let segments = written.pipe.iter().map(|segment| &segment.id);
    let ids: Vec<&Text> = segments.chain(written.loads.iter().map(|load| &load.id)).collect();
    let mut seen = std::collections::HashSet::new();
    for id in ids {
        if !seen.insert(id.text.as_str()) {
            reader.tell(format!("the id `{}` is given twice", id.text), "give each an id of its own", &id.place);
        }
    }
}

/// Works out the limits that the job sets. Whether a rule has such a limit is the rules' business.
pub(super) fn limits(written: &LimitsText, reader: &mut Reader) -> Vec<LimitSet> {
    let mut all: Vec<LimitSet> = Vec::with_capacity(written.0.len());
    for (name, limit) in &written.0 {
        let because = reader.words(Some(&limit.because), "");
        if because.trim().is_empty() {
            let instead = "say why: the reason is printed on the sheets beside the limit";
            reader.tell(format!("the limit `{}` has no reason", name.text), instead, &limit.because.place);
        }
        if all.iter().any(|other| other.name == name.text) {
            reader.tell(format!("the limit `{}` is set twice", name.text), "keep one of them", &name.place);
        }
        if let Some(value) = reader.names.value(&limit.value) {
            let written = limit.value.text.clone();
            all.push(LimitSet { name: name.text.clone(), value, written, because, place: Some(name.place.clone()) });
        }
    }
    all
}
