//! Legs that meet: how far each part of a leg reaches beyond its finished end, where the legs lie in the plan, and the
//! sheets that run over several legs.
//!
//! # What the datums of a leg mean at a corner
//!
//! The finished faces of two legs that meet are two upright planes; they meet in one upright line, which the plan
//! shows as a point. **At a corner the finished end of both legs is that line**: the right leg's u = 0, the left leg's
//! `finished_right`. It is what a person can see and hold a tape to once the run is clad. Everything else
//! is a distance beyond it, measured along the leg's own u, away from the leg:
//!
//! * the bare frame's end: of the leg that runs through, at the other leg's far side (inside corner) or at the other
//!   leg's bare front (outside corner); of the leg that butts, at the bare face that it stands against. A
//!   frame is square, so that at any other angle than 90 degrees it ends where its nearer corner touches;
//! * the board's end: of the leg that runs through, at the other leg's bare frame; of the leg that butts, at the
//!   through board's face. Both are taken on the outside of the board, and the edge is bevelled to the angle;
//! * the counter's end: where the two front edges meet (`counter_left`, `counter_right`).
//!
//! At a step the higher leg keeps its own clad end, whose finished face is the finished end of both legs. A leg that
//! stands behind another has its finished face standing over the other's counter; that face is the other's finished back.

mod band;
mod bites;
mod chain;
mod cuts;
mod edges;
mod ends;
mod holes;
mod line;
mod nicks;
mod place;
mod polygon;
mod refused;
mod round;
mod sheet;
mod sheets;
mod turn;
mod whole;

pub use chain::{Chain, chains};
pub use ends::{End, Ends, ends, prepared};
pub use place::{next, placements, written};
pub use sheets::{Shaped, is_shaped, shaped};
pub use turn::Turn;
pub use whole::Job;
