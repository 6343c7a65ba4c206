//! What holds up counters, substrate and fittings besides the frame's own tubes.

use super::{BodyBox, Role};
use crate::findings::Place;
use crate::solve::{DefaultUsed, SupportWork};
use crate::units::Length;

/// The supports of a run.
#[derive(Clone, Debug, Default)]
pub struct Supports {
    /// What is added to the frame, leg by leg. Their mass is not in the frame's.
    pub members: Vec<Support>,
    /// The frame's own tubes that back an edge or carry a cutout's rim, leg by leg: tubes of `Leg::members`, in whose
    /// mass they are.
    pub framed: Vec<Support>,
    /// Every tube of the frame by length, its supports included: what to cut when the frame is made in the shop.
    pub tubes: Vec<TubeCut>,
    /// What of the values for supports the run goes by and the job did not give.
    pub assumed: Vec<DefaultUsed>,
    /// Heavy fittings, and grills of unknown weight, that found no room for arms, as (leg, index), each with why.
    pub unheld: Vec<((usize, usize), String)>,
    /// Metals, loads and limits.
    pub work: Option<SupportWork>,
}

/// What a support is there for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SupportRole {
    /// Carries a heavy fitting, front to back.
    Arm,
    /// Level across the back (or front) of a module; arms lie against it.
    ArmRail,
    /// Stands under the front of an arm.
    FrontPost,
    /// Level at the frame's top, at an edge of a counter cutout.
    CutoutRail,
    /// Behind an edge that a fitting screws to.
    Backing,
    /// Under a substrate joint, or between tubes that are too far apart.
    Intermediate,
    /// Carries an overhang.
    Bracket,
}

impl SupportRole {
    /// Every role, in the order in which lists have them.
    pub const ALL: [SupportRole; 7] = [
        SupportRole::Arm,
        SupportRole::ArmRail,
        SupportRole::FrontPost,
        SupportRole::CutoutRail,
        SupportRole::Intermediate,
        SupportRole::Bracket,
        SupportRole::Backing,
    ];

    /// As sheets name it.
    pub const fn words(self) -> &'static str {
        match self {
            SupportRole::Arm => "arm",
            SupportRole::ArmRail => "arm rail",
            SupportRole::FrontPost => "front post",
            SupportRole::CutoutRail => "cutout rail",
            SupportRole::Backing => "backing",
            SupportRole::Intermediate => "intermediate",
            SupportRole::Bracket => "bracket",
        }
    }
}

/// Which way a support runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// Along the face.
    U,
    /// Front to back.
    V,
    /// Upright.
    Z,
}

/// One support.
#[derive(Clone, Debug)]
pub struct Support {
    /// Its mark, unique in the run.
    pub mark: String,
    /// What it is there for.
    pub role: SupportRole,
    /// Its leg, by index.
    pub leg: usize,
    /// Its module, by index.
    pub module: usize,
    /// The fitting that it serves, by index in its leg, where it serves one.
    pub fitting: Option<usize>,
    /// Its box in leg coordinates.
    pub body: BodyBox,
    /// Which way it runs.
    pub along: Along,
    /// Its section as a supplier names it, as `tube 1 1/2 x 1 1/2 x 1/8 in`.
    pub section: String,
    /// Its metal.
    pub alloy: String,
    /// It is of the frame's own tube, and bought and cut with it.
    pub of_frame_tube: bool,
    /// Cut length.
    pub length: Length,
    /// Holes along it, from its left, front or lower end, each with its diameter.
    pub holes: Vec<(Length, Length)>,
    /// Mass, kg.
    pub mass: f64,
    /// How it bends under its load; `None` for what carries next to nothing, or a weight that nobody gave.
    pub check: Option<SupportCheck>,
    /// The fitting's or module's place in the model.
    pub place: Option<Place>,
}

/// How a support bends under its load.
#[derive(Clone, Debug, PartialEq)]
pub struct SupportCheck {
    /// What lies on it, in words.
    pub load_words: String,
    /// All that lies on it, N.
    pub load: f64,
    /// How it is held, in words: `simple`, `cantilever`, `overhang`.
    pub held: &'static str,
    /// Between its supports; what is free of a cantilever or an overhang.
    pub span: Length,
    /// Greatest moment, N m.
    pub moment: f64,
    /// Greatest stress, Pa.
    pub stress: f64,
    /// The stress that its metal is allowed, Pa.
    pub allowed: f64,
    /// Greatest deflection.
    pub deflection: Length,
    /// The most that it may deflect.
    pub most: Length,
    /// Span over the most deflection, as 720.
    pub share: f64,
    /// What would hold where it doesn't, in a sentence.
    pub remedy: Option<String>,
}

impl SupportCheck {
    /// Whether it is strong enough.
    pub fn is_strong(&self) -> bool {
        self.stress <= self.allowed
    }

    /// Whether it is stiff enough.
    pub fn is_stiff(&self) -> bool {
        self.deflection <= self.most
    }
}

/// Tubes of the frame of one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TubeCut {
    /// Mark, unique in the run, as `F3`.
    pub mark: String,
    /// Leg, by index.
    pub leg: usize,
    /// Module, by index.
    pub module: usize,
    /// What it does.
    pub role: Role,
    /// Length.
    pub length: Length,
    /// How many.
    pub count: usize,
}

impl Supports {
    /// All supports, those added to the frame first.
    pub fn all(&self) -> impl Iterator<Item = &Support> {
        self.members.iter().chain(&self.framed)
    }
}
