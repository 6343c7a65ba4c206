//! What is set into the run.

use crate::solve::{Fitting, FittingKind, Fuel, Look, Measure, OpeningSort, Order, OrderLine, Solved, Supplier};

/// The order to the fittings supplier: alike ones together.
pub fn order(solved: &Solved) -> Order {
    let mut lines: Vec<OrderLine> = Vec::new();
    let bought = |fitting: &&Fitting| !matches!(fitting.kind, FittingKind::Opening(OpeningSort::PassThrough));
    for fitting in solved.legs.iter().flat_map(|leg| &leg.fittings).filter(bought) {
        let one = line(solved, fitting);
        let alike = |other: &&mut OrderLine| {
            (&other.what, &other.mind, other.mass, &other.missing) == (&one.what, &one.mind, one.mass, &one.missing)
        };
        match lines.iter_mut().find(alike) {
            Some(other) => {
                other.count += 1;
                other.mark = format!("{}, {}", other.mark, one.mark);
                other.fittings.extend(one.fittings);
            }
            None => lines.push(one),
        }
    }
    let mind = vec![
        "What comes has to fit the cutout; where its sheet says otherwise, tell us before you deliver.".to_owned(),
        "Send each manual with, or before, the thing: the run is checked against it.".to_owned(),
    ];
    Order { supplier: Supplier::Fittings, lines, mind }
}

fn line(solved: &Solved, fitting: &Fitting) -> OrderLine {
    let show = solved.show;
    let named = |name: &str| fitting.measures.iter().find(|(other, _)| *other == name).map(|(_, measure)| measure);
    let said = |name: &str, words: &str| {
        let measure: &Measure = named(name)?;
        let how = match (measure.measured, measure.published) {
            (Some(_), Some(published)) if Some(published) != measure.measured => {
                format!(", measured (its sheet says {})", show.prose(published))
            }
            (Some(_), _) => ", measured".to_owned(),
            (None, _) => String::new(),
        };
        Some(format!("{} {words}{how}", show.prose(measure.value())))
    };
    let size: Vec<String> = [("width", "wide"), ("diameter", "across"), ("height", "high"), ("depth", "deep")]
        .into_iter()
        .filter_map(|(name, words)| said(name, words))
        .collect();
    let mut mind = Vec::new();
    if !size.is_empty() {
        let floor = if fitting.to_floor { ", open to the floor" } else { "" };
        mind.push(format!("cutout {}{floor}", size.join(", ")));
    }
    let open: Vec<&str> = fitting
        .measures
        .iter()
        .filter(|(name, measure)| !name.starts_with("body") && measure.measured.is_none())
        .map(|(name, _)| *name)
        .collect();
    if !open.is_empty() {
        mind.push(format!("not yet measured: {}", open.join(", ")));
    }
    let (hand, mut missing) = hand(fitting);
    mind.extend(hand);
    if burns_gas(fitting) {
        match fuel(solved, fitting) {
            Some(words) => mind.push(words.to_owned()),
            None => missing.push("which gas".to_owned()),
        }
    }
    let needs = &fitting.needs;
    if let Some(area) = needs.free_area {
        mind.push(format!("free area {} or more", show.area(area)));
    }
    if needs.liner == Some(true) {
        mind.push("with its maker\u{2019}s insulated liner".to_owned());
    }
    if let Some(power) = &needs.power {
        mind.push(format!("power: {power}"));
    }
    if let Some(face) = needs.most_face {
        mind.push(format!("takes a face of {} at most", show.prose(face)));
    }
    if let Some(top) = needs.most_top {
        mind.push(format!("hangs in a counter of {} at most", show.prose(top)));
    }
    OrderLine {
        mark: fitting.mark.clone(),
        count: 1,
        what: fitting.name.clone(),
        mind,
        mass: fitting.mass,
        fittings: vec![fitting.at],
        missing,
    }
}

/// Its left or right, and what has to be asked.
fn hand(fitting: &Fitting) -> (Option<String>, Vec<String>) {
    let said = match (fitting.look, fitting.needs.hinge_right) {
        (Look::Door { pull_right }, _) => Some(!pull_right),
        (Look::Refrigerator, hinge) => hinge,
        _ => return (None, Vec::new()),
    };
    match said {
        Some(right) => {
            let (hinge, pull) = if right { ("right", "left") } else { ("left", "right") };
            (Some(format!("hinged on the {hinge}, pull at the {pull}")), Vec::new())
        }
        None => (None, vec!["hinge side".to_owned()]),
    }
}

fn burns_gas(fitting: &Fitting) -> bool {
    matches!(fitting.look, Look::Grill | Look::SideBurner) && !fitting.needs.no_gas
}

/// The gas that it burns, as far as the job says.
fn fuel(solved: &Solved, fitting: &Fitting) -> Option<&'static str> {
    let run = solved.services.as_ref().and_then(|services| services.fuel);
    Some(match fitting.needs.fuel.or(run)? {
        Fuel::Natural => "for natural gas",
        Fuel::Propane => "for propane",
        Fuel::Convertible => "for natural gas and propane, with the parts to convert it",
    })
}
