//! The counter, the sheet under it, and how high its top is.

use super::{CounterNeeds, Notch};
use crate::findings::Place;
use crate::units::Length;

/// The counter.
#[derive(Clone, Debug)]
pub struct Counter {
    /// Which look and density family.
    pub material: CounterMaterial,
    /// As the job names it.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Mass per volume, kg/m3.
    pub density: f64,
    /// Overhang past the finished face at the front.
    pub overhang_front: Length,
    /// Past the finished left end; ignored where a bound is.
    pub overhang_left: Length,
    /// Past the finished right end; ignored where a bound is.
    pub overhang_right: Length,
    /// Past the finished back; ignored where a wall is.
    pub overhang_back: Length,
    /// Joint to a wall or pier.
    pub wall_joint: Length,
    /// Joint between pieces.
    pub seam_joint: Length,
    /// Radius of free outside corners, in plan.
    pub corner_radius: Length,
    /// Radius of the arris of finished edges, in section.
    pub arris: Length,
    /// Drip groove under the front edge: width (and depth) and 0 for none.
    pub drip: Length,
    /// Upstand along the back.
    pub splash: Option<Splash>,
    /// Where pieces meet, as u from the finished left end, per leg: (leg, u).
    pub seams: Vec<(usize, Length)>,
    /// Notches that no fitting makes.
    pub notches: Vec<Notch>,
    /// Fabricator's tolerance on the outline.
    pub tolerance: Length,
    /// Slab, support, lifting.
    pub needs: CounterNeeds,
    /// Where written.
    pub place: Option<Place>,
}

/// What the counter is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CounterMaterial {
    /// Cast or sprayed concrete.
    Concrete,
    /// Natural stone slab.
    Stone,
    /// Porcelain or sintered slab.
    Porcelain,
}

/// An upstand at the back of the counter.
#[derive(Clone, Copy, Debug)]
pub struct Splash {
    /// Height over the counter's top.
    pub height: Length,
    /// Thickness.
    pub thickness: Length,
}

/// The sheet between frame and counter.
#[derive(Clone, Debug)]
pub struct Substrate {
    /// As the job names it.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Where its free edges end.
    pub edge: SubstrateEdge,
    /// Whether it burns; `None` when neither said nor plain from its name.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

/// Where the substrate's free edges end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SubstrateEdge {
    /// Flush with the bare frame.
    Frame,
    /// Flush with the outside of the board.
    Board,
    /// Flush with the finished face.
    Finish,
    /// Held back from the finished face by this much.
    HeldBack(Length),
}

/// Which level the job fixes, over the highest floor point under the feet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Height {
    /// Top of the counter.
    CounterTop(Length),
    /// Top of the bare frame.
    FrameTop(Length),
}
