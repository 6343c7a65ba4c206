//! How legs meet, what a leg has of its own, and the site as it was surveyed.

use super::Height;
use crate::findings::Place;
use crate::units::Length;

/// Where the right end of one leg meets the left end of the next, left and right being the cook's.
#[derive(Clone, Debug)]
pub struct Joint {
    /// The leg whose right end it is, by index.
    pub left: usize,
    /// The leg whose left end it is, by index.
    pub right: usize,
    /// How they meet.
    pub kind: JointKind,
    /// Where written.
    pub place: Option<Place>,
}

/// How two legs meet.
#[derive(Clone, Debug)]
pub enum JointKind {
    /// Round a corner.
    Corner(Corner),
    /// In one line, with their counters at different heights.
    Step,
}

/// A corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Turn of +u from the left leg to the right one, radians: positive is clockwise from above, towards the cook, who
    /// then stands in the corner (inside); negative turns away from the cook (outside).
    pub turn: f64,
    /// Which frame runs through the corner.
    pub through: Through,
    /// How the counter's pieces meet.
    pub seam: CornerSeam,
    /// Radius of the counter's inside corner, where `inner` says nothing else; zero when sharp.
    pub radius: Length,
    /// Shape of the counter's inside corner: clipped, a straight edge fills it, so far along both edges.
    pub inner: CornerShape,
    /// Shape of the counter's outside corner, where it is free.
    pub outer: CornerShape,
}

/// Which frame runs through a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Through {
    /// The left leg's; the right leg butts against it.
    Left,
    /// The right leg's.
    Right,
    /// Neither: both end square, clear of the line that halves the corner.
    Neither,
}

/// How the counter's pieces meet at a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CornerSeam {
    /// One piece ends square against the edge of the one whose leg runs through.
    Butt,
    /// Both are cut along the line from the inside corner to the outside one.
    Mitre,
    /// They don't: one piece turns the corner.
    None,
}

/// Shape of an outside corner in plan.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CornerShape {
    /// What the counter's corner radius says.
    #[default]
    Common,
    /// Rounded with this radius; zero is sharp.
    Round(Length),
    /// Clipped: this much taken off both edges.
    Clipped(Length),
}

/// What a leg has otherwise than the job; nothing for most legs.
#[derive(Clone, Debug, Default)]
pub struct Own {
    /// Depth of its bare frame.
    pub depth: Option<Length>,
    /// Its height.
    pub height: Option<Height>,
    /// Front overhang.
    pub overhang_front: Option<Length>,
    /// Back overhang.
    pub overhang_back: Option<Length>,
    /// Left overhang.
    pub overhang_left: Option<Length>,
    /// Right overhang.
    pub overhang_right: Option<Length>,
    /// The leg that it stands behind, by index, as a raised bar does; it is placed by that.
    pub behind: Option<usize>,
    /// How far to the right of that leg's finished left end its own lies.
    pub offset: Length,
    /// Its counter's front edge.
    pub front: FrontEdge,
    /// How much farther each end of its counter, left and right, reaches at the back than at the front.
    pub skew: [Length; 2],
    /// Its counter's corners: front left, front right, back right, back left.
    pub corners: [CornerShape; 4],
    /// Seating along its back.
    pub seating: Option<Seating>,
    /// Its place in the plan was written, not taken as zero.
    pub placed: bool,
    /// It is the ledge of the leg that it stands behind, box by box as wide as that.
    pub ledge: bool,
    /// Its room is to be taken from the survey.
    pub surveyed: Option<FromSurvey>,
}

/// A room that is taken from the survey.
#[derive(Clone, Debug, Default)]
pub struct FromSurvey {
    /// What it was found to lie between, left and right, as the survey names it; `None` until the run is laid out.
    pub between: Option<[String; 2]>,
    /// Where written.
    pub place: Option<Place>,
}

/// A counter's front edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FrontEdge {
    /// Along the face, an overhang off it.
    #[default]
    Straight,
    /// A straight line with these overhangs at its two ends.
    Sloped(Length, Length),
    /// An arc that stands this much farther out in its middle than at its ends.
    Arc(Length),
}

/// People who sit at a leg's back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seating {
    /// How many.
    pub seats: u32,
    /// Width for each.
    pub width: Length,
}

/// The site as it was surveyed, over the plan's x and y, mm.
#[derive(Clone, Debug, Default)]
pub struct Survey {
    /// Walls.
    pub walls: Vec<SurveyWall>,
    /// Posts.
    pub posts: Vec<SurveyPost>,
    /// Steps in the floor.
    pub steps: Vec<FloorStep>,
    /// Doors that swing.
    pub doors: Vec<DoorSwing>,
}

/// A wall as a measured line.
#[derive(Clone, Debug)]
pub struct SurveyWall {
    /// As the job names it.
    pub name: String,
    /// Its corners in plan, mm.
    pub points: Vec<(f64, f64)>,
    /// Where written.
    pub place: Option<Place>,
}

/// A post.
#[derive(Clone, Debug)]
pub struct SurveyPost {
    /// As the job names it.
    pub name: String,
    /// Its centre in plan, mm.
    pub at: (f64, f64),
    /// Its sides along x and y, mm.
    pub size: (f64, f64),
    /// Where written.
    pub place: Option<Place>,
}

/// A step in the floor.
#[derive(Clone, Debug)]
pub struct FloorStep {
    /// Its edge in plan, mm.
    pub from: (f64, f64),
    /// Where it ends, mm.
    pub to: (f64, f64),
    /// How far the floor drops on the right of the way from start to end.
    pub drop: Length,
    /// Where written.
    pub place: Option<Place>,
}

/// A door and the quarter circle that it sweeps.
#[derive(Clone, Debug)]
pub struct DoorSwing {
    /// As the job names it.
    pub name: String,
    /// Its hinge in plan, mm.
    pub hinge: (f64, f64),
    /// Where its leaf points when shut, radians from the plan's x, counter-clockwise.
    pub shut: f64,
    /// How far it opens, radians, counter-clockwise positive.
    pub opens: f64,
    /// Width of its leaf, mm.
    pub width: f64,
    /// Where written.
    pub place: Option<Place>,
}
