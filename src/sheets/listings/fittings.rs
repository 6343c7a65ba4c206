//! Fittings: what each is set into, its flange, its body, what it weighs and burns.

use super::module_id;
use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::sheets::schedules::set_into;
use crate::solve::Solved;
use crate::units::{Show, System};

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let british = solved.show.system != System::Millimetres;
    let columns = vec![
        Column::words("leg"),
        Column::words("mark"),
        Column::words("fitting"),
        Column::words("set into"),
        Column::words("module"),
        Column::words("located from"),
        Column::lengths("flange laps left"),
        Column::lengths("flange laps right"),
        Column::lengths("flange laps back or top"),
        Column::lengths("flange laps front or bottom"),
        Column::lengths("body width"),
        Column::lengths("body depth"),
        Column::lengths("body height"),
        Column::lengths("clear round it"),
        Column::masses("weight"),
        Column::numbers("heat", if british { "Btu/h" } else { "kW" }),
    ];
    let mut list = Listing::new("fittings", "Fittings", columns)
        .noted("An empty weight or body was not given: look it up before you order or lift.");
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            let body = fitting.body.map(|body| [body.u, body.v, body.z].map(|(low, high)| Value::Length(high - low)));
            let [width, depth, height] = body.unwrap_or_default();
            let heat = fitting.heat.map(|heat| match british {
                true => Value::Number(Show::btu_an_hour(heat), 0),
                false => Value::Number(heat / 1000.0, 1),
            });
            let lap = fitting.flange;
            list.push(vec![
                leg.id.as_str().into(),
                fitting.mark.as_str().into(),
                fitting.name.as_str().into(),
                set_into(fitting).into(),
                module_id(leg, fitting.module),
                fitting.given_from.as_str().into(),
                lap.left.into(),
                lap.right.into(),
                lap.far.into(),
                lap.near.into(),
                width,
                depth,
                height,
                fitting.clearance.into(),
                fitting.mass.map(Value::Mass).unwrap_or_default(),
                heat.unwrap_or_default(),
            ]);
        }
    }
    list
}
