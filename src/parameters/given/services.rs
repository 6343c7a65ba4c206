//! Fuel gas: what feeds the run, in plain values.

use crate::findings::Place;
use crate::units::Length;

/// Which gas an appliance burns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fuel {
    /// Natural gas, lighter than air.
    Natural,
    /// Propane, heavier than air.
    Propane,
    /// May be changed from one to the other.
    Convertible,
}

impl Fuel {
    /// As sentences name it.
    pub const fn words(self) -> &'static str {
        match self {
            Fuel::Natural => "natural gas",
            Fuel::Propane => "propane",
            Fuel::Convertible => "natural gas or propane",
        }
    }
}

/// Nominal size of schedule 40 pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PipeSize {
    /// 3/8 in.
    ThreeEighths,
    /// 1/2 in.
    Half,
    /// 3/4 in.
    ThreeQuarters,
    /// 1 in.
    One,
    /// 1 1/4 in.
    OneAndQuarter,
    /// 1 1/2 in.
    OneAndHalf,
    /// 2 in.
    Two,
}

impl PipeSize {
    /// Every size, the smallest first.
    pub const ALL: [PipeSize; 7] = [
        PipeSize::ThreeEighths,
        PipeSize::Half,
        PipeSize::ThreeQuarters,
        PipeSize::One,
        PipeSize::OneAndQuarter,
        PipeSize::OneAndHalf,
        PipeSize::Two,
    ];

    /// Inside diameter, in. Source: heads of the schedule 40 tables of the 2018 IFGC; 3/8 from an older NFPA 54 table.
    pub const fn inside(self) -> f64 {
        match self {
            PipeSize::ThreeEighths => 0.493,
            PipeSize::Half => 0.622,
            PipeSize::ThreeQuarters => 0.824,
            PipeSize::One => 1.049,
            PipeSize::OneAndQuarter => 1.380,
            PipeSize::OneAndHalf => 1.610,
            PipeSize::Two => 2.067,
        }
    }

    /// Nominal size, in.
    pub const fn nominal(self) -> f64 {
        match self {
            PipeSize::ThreeEighths => 0.375,
            PipeSize::Half => 0.5,
            PipeSize::ThreeQuarters => 0.75,
            PipeSize::One => 1.0,
            PipeSize::OneAndQuarter => 1.25,
            PipeSize::OneAndHalf => 1.5,
            PipeSize::Two => 2.0,
        }
    }

    /// In plain letters, as `3/4 in`: pipe keeps its inch names everywhere.
    pub const fn words(self) -> &'static str {
        match self {
            PipeSize::ThreeEighths => "3/8 in",
            PipeSize::Half => "1/2 in",
            PipeSize::ThreeQuarters => "3/4 in",
            PipeSize::One => "1 in",
            PipeSize::OneAndQuarter => "1 1/4 in",
            PipeSize::OneAndHalf => "1 1/2 in",
            PipeSize::Two => "2 in",
        }
    }

    /// The size of this nominal bore, if pipe is made in it.
    pub fn of(bore: Length) -> Option<PipeSize> {
        PipeSize::ALL.into_iter().find(|size| (bore.inches() - size.nominal()).abs() < 1e-3)
    }
}

/// What feeds the run with gas.
#[derive(Clone, Debug)]
pub struct Services {
    /// The gas, if it is said.
    pub fuel: Option<Fuel>,
    /// Pressure at the source, Pa.
    pub supply: Option<f64>,
    /// Pressure that may be lost on the way to the farthest appliance, Pa.
    pub drop: Option<f64>,
    /// Heat in a volume of gas, J/m3, for each gas: natural, propane.
    pub heating_value: (f64, f64),
    /// Smallest pipe to use.
    pub smallest: PipeSize,
    /// A share to add to every length, in place of counted fittings or beside them.
    pub allowance: f64,
    /// The pipe, from the source on.
    pub pipe: Vec<Segment>,
    /// Appliances on the pipe that are no fittings of the run.
    pub loads: Vec<Load>,
    /// How fittings hang on the pipe.
    pub connections: Vec<Connection>,
    /// Cylinders that stand in the run.
    pub cylinders: Vec<Cylinder>,
    /// Where written.
    pub place: Option<Place>,
}

/// A length of pipe between two points.
#[derive(Clone, Debug)]
pub struct Segment {
    /// Its id.
    pub id: String,
    /// The point nearer the source.
    pub from: String,
    /// The point nearer the appliances: a junction's name, a fitting's id or a load's.
    pub to: String,
    /// Length along the pipe.
    pub length: Length,
    /// Fittings in it.
    pub bends: Bends,
    /// The size that is there, or is planned, if the job says.
    pub installed: Option<PipeSize>,
    /// Where written.
    pub place: Option<Place>,
}

/// Fittings that make a pipe longer than it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bends {
    /// 90 degree elbows.
    pub elbows: u16,
    /// 45 degree elbows.
    pub elbows_45: u16,
    /// Tees that the gas turns in.
    pub tees: u16,
    /// 180 degree bends.
    pub bends_180: u16,
}

/// An appliance on the pipe that is no fitting of the run.
#[derive(Clone, Debug)]
pub struct Load {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Heat input, W.
    pub heat: f64,
    /// Where written.
    pub place: Option<Place>,
}

/// How a fitting hangs on the pipe.
#[derive(Clone, Debug)]
pub struct Connection {
    /// The fitting's id.
    pub fitting: String,
    /// Its shutoff: along, depth, height over the floor.
    pub shutoff: Option<(Length, Length, Length)>,
    /// Length of the connector past the shutoff.
    pub connector: Option<Length>,
    /// Size of connector and inlet, where it differs from the pipe's.
    pub inlet: Option<PipeSize>,
    /// What the connector's maker rates it for, W.
    pub rated: Option<f64>,
    /// Where written.
    pub place: Option<Place>,
}

/// Propane cylinders in a module.
#[derive(Clone, Debug)]
pub struct Cylinder {
    /// The leg, by index.
    pub leg: usize,
    /// The module, by index.
    pub module: usize,
    /// Fuel in one cylinder, kg.
    pub holds: f64,
    /// How many.
    pub count: u8,
    /// A tight wall parts the bay from its neighbours; `None` when the job doesn't say.
    pub partition: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}
