//! From a given job to a solved run: pure functions, no files, no clock, no paper.

mod datums;
mod solved;

pub use crate::parameters::given::{
    BoundKind, Build, CounterMaterial, DefaultUsed, Face, Finish, FinishKind, Job, Look, Measure, ModuleKind,
    OpeningSort, Paper, Service, Splash, Tolerances, Trim, Width,
};
pub use datums::{Datum, Datums};
pub use solved::*;
