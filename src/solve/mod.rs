//! From a given job to a solved run: pure functions, no files, no clock, no paper.

mod across;
mod boards;
pub mod counter;
mod cutouts;
mod datums;
mod feet;
mod fill;
mod frame;
mod layout;
pub mod levelling;
mod levels;
mod limits;
mod marks;
mod run;
pub mod slab;
mod solved;
mod substrate;

pub use crate::parameters::given::{
    BoundKind, Build, CounterMaterial, DefaultUsed, Face, Finish, FinishKind, Job, Look, Measure, ModuleKind,
    OpeningSort, Paper, Printer, Service, Splash, Tolerances, Trim, Width,
};
pub use datums::{Axis, Datum, Datums};
pub use run::solve;
pub use solved::*;
