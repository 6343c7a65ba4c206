//! From a given job to a solved run: pure functions, no files, no clock, no paper.

mod across;
pub mod beams;
mod boards;
pub mod counter;
mod cutouts;
mod datums;
mod depths;
mod feet;
mod fill;
mod frame;
mod layout;
pub mod levelling;
mod levels;
mod limits;
mod marks;
pub mod nesting;
mod notches;
mod numbered;
pub mod path;
mod run;
pub mod services;
mod shop;
pub mod slab;
mod solved;
pub mod statics;
mod substrate;
mod surveyed;
pub mod takeoff;
mod tube;

pub use crate::parameters::given::{
    Alloy, Around, Bar, Bends, BoundKind, Build, Combustible, Connection, Corner, CornerSeam, CornerShape,
    CounterMaterial, CounterNeeds, Cylinder, DefaultUsed, DoorSwing, Face, Finish, FinishKind, FloorStep,
    FrameMaterial, FrontEdge, Fuel, Job, JointKind, Laying, LimitSet, Load, Look, Measure, ModuleKind, Needs,
    OpeningSort, Overhead, Paper, Person, PipeSize, Printer, Profile, Profiled, RailHelp, Seating, Service, Splash,
    SupportWork, Survey, SurveyPost, SurveyWall, Through, Tolerances, Trim, TrimCorner, Width,
};
pub use datums::{Axis, Datum, Datums};
pub use run::solve;
pub use solved::*;
