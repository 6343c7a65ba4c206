//! Points that can't be mixed up, and outlines with true arcs. Everything here is in millimetres.

mod clip;
pub mod cut;
mod outline;
mod region;
mod space;
mod strip;
mod tidy;
mod winding;
mod window;

pub use clip::clip_segments;
pub use outline::{Outline, Vertex};
pub use region::Region;
pub use space::{Cut, EndFace, FrontFace, Leg, LegPoint, Paper, PaperPoint, Placement, Plan, PlanPoint, Point};
pub use window::{Chain, Within};
