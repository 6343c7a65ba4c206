//! Fuel gas: demand, pipe, shutoffs, connectors.

pub(super) mod gas_connector_short_enough;
pub(super) mod gas_inlet_reduced_past_its_shutoff;
pub(super) mod gas_pipe_carries_its_load;
pub(super) mod gas_pipe_is_one_tree;
pub(super) mod gas_pressure_reaches_its_appliance;
pub(super) mod gas_shutoff_within_reach;

use crate::rules::{Lack, named};
use crate::solve::services::{Services, burns_gas};
use crate::solve::{Fitting, Solved};

/// Services that feed something by pipe: some appliance of the run burns what isn't only in cylinders inside it.
fn piped(solved: &Solved) -> impl Iterator<Item = &Services> {
    solved.services.iter().filter(|services| !services.appliances.is_empty())
}

/// What every rule here lacks where the job says nothing of what feeds the run.
fn unsaid(solved: &Solved) -> Vec<Lack> {
    if solved.services.is_some() {
        return Vec::new();
    }
    let instead =
        "write `services: (fuel: natural_gas, supply: \"7 in wc\", drop: \"0.5 in wc\", pipe: […], connections: […])`";
    burners(solved)
        .map(|fitting| {
            Lack::of_safety("services", fitting.subject(), fitting.place.as_ref(), instead).for_what(named(fitting))
        })
        .collect()
}

/// Everything in the run that burns gas.
fn burners(solved: &Solved) -> impl Iterator<Item = &Fitting> {
    solved.legs.iter().flat_map(|leg| leg.fittings.iter().filter(|fitting| burns_gas(fitting)))
}
