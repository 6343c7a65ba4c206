//! Fuel gas: demand, pipe sizes, and the pressure that is left at each appliance.

pub mod equation;
pub mod sizing;

use std::collections::HashMap;

use super::Leg;
use crate::findings::Place;
use crate::parameters::given::{self, Bends, Connection, Cylinder, Fuel, PipeSize};
use crate::units::Length;
use equation::Gas;
use sizing::{Demand, Fault};

/// 1 Btu/h in W (NIST SP 811, international table).
const BTU_PER_HOUR: f64 = 0.293_071_07;
/// 1 Btu/ft3 in J/m3.
const BTU_PER_CUBIC_FOOT: f64 = 1_055.055_852_62 / 0.028_316_846_592;
/// Conventional inch of water in Pa (NIST SP 811).
pub const INCH_OF_WATER: f64 = 249.088_9;

/// What feeds the run, sized as far as what is given allows.
#[derive(Clone, Debug)]
pub struct Services {
    /// The gas, if it is said.
    pub fuel: Option<Fuel>,
    /// Pressure at the source, Pa.
    pub supply: Option<f64>,
    /// Drop to the farthest appliance, Pa.
    pub drop: Option<f64>,
    /// Heat in a cubic foot of the gas that the pipe is sized for, Btu.
    pub heating_value: f64,
    /// Smallest pipe to use.
    pub smallest: PipeSize,
    /// A share added to every length.
    pub allowance: f64,
    /// Everything that burns gas, in the order of the run, then loads outside it.
    pub appliances: Vec<Appliance>,
    /// The pipe.
    pub pipe: Vec<Segment>,
    /// To the farthest appliance, fittings counted, ft; zero when nothing is sized.
    pub longest: f64,
    /// What is wrong with the tree of pipe.
    pub faults: Vec<Fault>,
    /// How fittings hang on the pipe.
    pub connections: Vec<Connection>,
    /// Cylinders that stand in the run.
    pub cylinders: Vec<Cylinder>,
    /// Where written.
    pub place: Option<Place>,
}

/// Something that burns gas.
#[derive(Clone, Debug)]
pub struct Appliance {
    /// Its id.
    pub id: String,
    /// Its mark, or nothing for a load outside the run.
    pub mark: String,
    /// What it is called.
    pub name: String,
    /// Leg and index of the fitting, where it is one.
    pub fitting: Option<(usize, usize)>,
    /// Heat input, W; `None` when not given.
    pub heat: Option<f64>,
    /// Length of pipe to it, fittings left out; `None` when no pipe leads to it.
    pub length: Option<Length>,
    /// Pressure that is left at its point, Pa, in the sizes installed or else needed.
    pub pressure: Option<f64>,
    /// Where written.
    pub place: Option<Place>,
}

/// A segment of pipe.
#[derive(Clone, Debug)]
pub struct Segment {
    /// Its id.
    pub id: String,
    /// The point nearer the source.
    pub from: String,
    /// The point nearer the appliances.
    pub to: String,
    /// Its length.
    pub length: Length,
    /// Its fittings.
    pub bends: Bends,
    /// The size that the job says.
    pub installed: Option<PipeSize>,
    /// Heat that it carries, W; `None` when not sized.
    pub load: Option<f64>,
    /// Flow, ft3/h.
    pub flow: Option<f64>,
    /// The smallest size that carries it; `None` when not sized or too much for any.
    pub needed: Option<PipeSize>,
    /// What the installed size carries over the longest length, W.
    pub carries: Option<f64>,
    /// Drop in it, Pa, in the size installed or else needed.
    pub drop: Option<f64>,
    /// Where written.
    pub place: Option<Place>,
}

impl Services {
    /// The gas that the pipe is sized for: the one that needs more of it where both may come.
    pub fn gas(&self) -> Option<Gas> {
        self.fuel.map(gas_of)
    }

    /// Sum of all inputs, W, all burning at once (IFGC 402.2); `None` when one is not known.
    pub fn demand(&self) -> Option<f64> {
        self.appliances.iter().map(|appliance| appliance.heat).sum()
    }

    /// A flow as heat, W.
    pub fn heat_of(&self, flow: f64) -> f64 {
        flow * self.heating_value * BTU_PER_HOUR
    }
}

/// Natural gas carries less heat in the same pipe, so a convertible run is sized for it.
fn gas_of(fuel: Fuel) -> Gas {
    match fuel {
        Fuel::Natural | Fuel::Convertible => Gas::Natural,
        Fuel::Propane => Gas::Propane,
    }
}

/// Whether a fitting of the run burns gas: it has a heat input, or looks like what has one, and isn't said to burn none.
pub fn burns_gas(fitting: &super::Fitting) -> bool {
    use super::Look;
    let looks = matches!(fitting.look, Look::Grill | Look::SideBurner);
    !fitting.needs.no_gas && (fitting.heat.is_some() || fitting.needs.fuel.is_some() || looks)
}

/// Sizes what is given.
pub fn services(given: &given::Services, legs: &[Leg]) -> Services {
    let mut appliances = appliances(given, legs);
    let heating_value = match given.fuel.map(gas_of) {
        Some(Gas::Propane) => given.heating_value.1,
        _ => given.heating_value.0,
    } / BTU_PER_CUBIC_FOOT;
    let mut pipe: Vec<Segment> = given.pipe.iter().map(unsized_segment).collect();
    let names: Vec<&str> = appliances.iter().map(|appliance| appliance.id.as_str()).collect();
    let (paths, faults) = match sizing::paths(&given.pipe, &names) {
        Ok(paths) => (paths, Vec::new()),
        Err(faults) => (HashMap::new(), faults),
    };
    for appliance in &mut appliances {
        let path = paths.get(&appliance.id).filter(|path| !path.is_empty());
        appliance.length = path.map(|path| path.iter().map(|&index| given.pipe[index].length).sum());
    }
    let mut longest = 0.0;
    let known = appliances.iter().all(|appliance| appliance.heat.is_some()) && !given.pipe.is_empty();
    if let (Some(gas), Some(drop), true, true) = (given.fuel.map(gas_of), given.drop, known, faults.is_empty()) {
        let loads: HashMap<&str, f64> =
            appliances.iter().map(|a| (a.id.as_str(), a.heat.unwrap_or(0.0) / BTU_PER_HOUR)).collect();
        let drop = drop / INCH_OF_WATER;
        let (smallest, allowance) = (given.smallest, given.allowance);
        let demand = Demand { gas, heating_value, drop, smallest, allowance, loads: &loads };
        let sizing = sizing::size(&given.pipe, &paths, &demand);
        longest = sizing.longest;
        for ((segment, sized), written) in pipe.iter_mut().zip(&sizing.segments).zip(&given.pipe) {
            segment.load = Some(sized.load * BTU_PER_HOUR);
            segment.flow = Some(sized.flow);
            segment.needed = sized.size;
            segment.carries = segment
                .installed
                .map(|size| equation::capacity(gas, size, longest, drop) * heating_value * BTU_PER_HOUR);
            segment.drop = segment.installed.or(sized.size).map(|size| {
                let length = sizing::run_length(written, size, allowance);
                equation::drop(gas, size, length, sized.flow) * INCH_OF_WATER
            });
        }
        for appliance in &mut appliances {
            let lost = paths
                .get(&appliance.id)
                .and_then(|path| path.iter().map(|&index| pipe[index].drop).sum::<Option<f64>>());
            appliance.pressure = given.supply.zip(lost).map(|(supply, lost)| supply - lost);
        }
    }
    Services {
        fuel: given.fuel,
        supply: given.supply,
        drop: given.drop,
        heating_value,
        smallest: given.smallest,
        allowance: given.allowance,
        appliances,
        pipe,
        longest,
        faults,
        connections: given.connections.clone(),
        cylinders: given.cylinders.clone(),
        place: given.place.clone(),
    }
}

fn appliances(given: &given::Services, legs: &[Leg]) -> Vec<Appliance> {
    let fittings = legs.iter().enumerate().flat_map(|(leg, row)| {
        // One that burns another gas hangs on another pipe, or on a cylinder.
        let own =
            |fitting: &super::Fitting| fitting.needs.fuel.is_none_or(|fuel| given.fuel.is_none_or(|of| of == fuel));
        let gas = row.fittings.iter().enumerate().filter(move |(_, fitting)| burns_gas(fitting) && own(fitting));
        gas.map(move |(index, fitting)| Appliance {
            id: fitting.id.clone(),
            mark: fitting.mark.clone(),
            name: fitting.name.clone(),
            fitting: Some((leg, index)),
            heat: fitting.heat,
            length: None,
            pressure: None,
            place: fitting.place.clone(),
        })
    });
    let loads = given.loads.iter().map(|load| Appliance {
        id: load.id.clone(),
        mark: String::new(),
        name: load.name.clone(),
        fitting: None,
        heat: Some(load.heat),
        length: None,
        pressure: None,
        place: load.place.clone(),
    });
    fittings.chain(loads).collect()
}

fn unsized_segment(given: &given::Segment) -> Segment {
    Segment {
        id: given.id.clone(),
        from: given.from.clone(),
        to: given.to.clone(),
        length: given.length,
        bends: given.bends,
        installed: given.installed,
        load: None,
        flow: None,
        needed: None,
        carries: None,
        drop: None,
        place: given.place.clone(),
    }
}
