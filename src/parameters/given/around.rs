//! What is round the run and what its parts ask for, as far as it keeps people and slabs safe.

use super::{Face, Fuel};
use crate::findings::Place;
use crate::units::{Length, Quantity};

/// What is round the run.
#[derive(Clone, Debug, Default)]
pub struct Around {
    /// What is above.
    pub overhead: Overhead,
    /// Things that burn, near the run.
    pub combustibles: Vec<Combustible>,
    /// Clear floor before the run; `None` when not given.
    pub aisle: Option<Length>,
    /// What the floor carries, kg/m2, where it is a deck or a roof; `None` when not given.
    pub carries: Option<f64>,
    /// Who is to work at it.
    pub people: Vec<Person>,
    /// Accessible heights are asked for.
    pub accessible: bool,
    /// The top lies in the sun; `None` when not said.
    pub sun: Option<bool>,
    /// Gullies and floor drains: leg, u, v.
    pub drains: Vec<(usize, Length, Length)>,
}

/// What is above the run.
#[derive(Clone, Debug, Default)]
pub enum Overhead {
    /// The job doesn't say.
    #[default]
    Unsaid,
    /// The sky.
    Open,
    /// A roof, a soffit, a pergola.
    Roof {
        /// As the job names it.
        name: String,
        /// Its underside over the floor.
        height: Length,
        /// Whether it burns; `None` when not said.
        combustible: Option<bool>,
        /// A hood takes the heat and smoke out through it.
        hood: bool,
        /// Where written.
        place: Option<Place>,
    },
}

/// A thing that burns.
#[derive(Clone, Debug)]
pub struct Combustible {
    /// As the job names it.
    pub name: String,
    /// The leg, by index.
    pub leg: usize,
    /// On which side of the run.
    pub side: Face,
    /// From the finished end, or the finished back.
    pub distance: Length,
    /// Where written.
    pub place: Option<Place>,
}

/// Someone who works at the run.
#[derive(Clone, Debug)]
pub struct Person {
    /// As the job names them.
    pub name: String,
    /// Standing height.
    pub stature: Option<Length>,
    /// They work seated.
    pub seated: bool,
    /// Where written.
    pub place: Option<Place>,
}

/// What a fitting's manual asks for.
#[derive(Clone, Debug, Default)]
pub struct Needs {
    /// The gas it burns, where that isn't the run's.
    pub fuel: Option<Fuel>,
    /// It burns no gas, whatever it looks like.
    pub no_gas: bool,
    /// To things that burn beside it.
    pub beside: Option<Length>,
    /// To things that burn behind it.
    pub behind: Option<Length>,
    /// To things that burn above it.
    pub above: Option<Length>,
    /// Depth behind its cutout that its lid swings into.
    pub lid: Option<Length>,
    /// It hangs in an insulated liner; `None` when not said.
    pub liner: Option<bool>,
    /// The thickest counter that it hangs in.
    pub most_top: Option<Length>,
    /// The thickest face, board and finish, that its flange and body take.
    pub most_face: Option<Length>,
    /// Electricity that it wants, in words.
    pub power: Option<String>,
    /// Its one door is hinged on the right (false: on the left); `None` when not said.
    pub hinge_right: Option<bool>,
    /// Free area of a vent, m2.
    pub free_area: Option<f64>,
}

/// A limit of a rule that the job sets.
#[derive(Clone, Debug)]
pub struct LimitSet {
    /// The limit's name.
    pub name: String,
    /// Its value.
    pub value: Quantity,
    /// As written.
    pub written: String,
    /// Why.
    pub because: String,
    /// Where written.
    pub place: Option<Place>,
}

/// What the frame is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FrameMaterial {
    /// Steel.
    #[default]
    Steel,
    /// Aluminium.
    Aluminium,
    /// Wood: it burns.
    Wood,
}

/// How the strips that cutouts leave of a counter are helped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum RailHelp {
    /// Not at all.
    #[default]
    Plain,
    /// With rods or mesh let in.
    Rodded,
    /// Something stands under them.
    Propped,
}

/// What a counter asks for beyond its shape.
#[derive(Clone, Debug, Default)]
pub struct CounterNeeds {
    /// Usable slab: length and width.
    pub slab: Option<(Length, Length)>,
    /// Bound by resin: engineered quartz, solid surface; `None` when not said.
    pub resin: Option<bool>,
    /// Brackets under an overhang, this far apart.
    pub brackets: Option<Length>,
    /// Help for narrow strips.
    pub rails: RailHelp,
    /// So many people lift a piece.
    pub lifters: Option<u8>,
}
