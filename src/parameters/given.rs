//! A job with every value worked out, in plain lengths: what the solver reads.

mod around;
mod path;
mod services;

pub use around::*;
pub use path::*;
pub use services::*;

use crate::findings::Place;
use crate::units::{Length, System};

/// A whole job, every expression evaluated and every default filled in.
#[derive(Clone, Debug)]
pub struct Given {
    /// The facts of the title block.
    pub job: Job,
    /// The floor and what comes up through it.
    pub site: Site,
    /// The bare frame.
    pub frame: Frame,
    /// The counter.
    pub counter: Counter,
    /// The sheet under the counter.
    pub substrate: Substrate,
    /// Where the top of the run is.
    pub height: Height,
    /// The base trim, where there is one.
    pub trim: Option<Trim>,
    /// The straight rows of modules.
    pub legs: Vec<Leg>,
    /// Where legs meet.
    pub joints: Vec<Joint>,
    /// Everything set into the run, in the order written.
    pub fittings: Vec<Fitting>,
    /// Fuel gas, where the job says what feeds the run.
    pub services: Option<Services>,
    /// Limits of rules that the job sets itself.
    pub limits: Vec<LimitSet>,
    /// What the builder, the finish and the placing may be off by.
    pub tolerances: Tolerances,
    /// The paper.
    pub paper: Paper,
    /// Named values that the job did not give, as filled in.
    pub defaults: Vec<DefaultUsed>,
}

/// The facts that title blocks carry.
#[derive(Clone, Debug, Default)]
pub struct Job {
    /// The job's title.
    pub title: String,
    /// For whom.
    pub client: String,
    /// Where.
    pub address: String,
    /// The drawing number that sheet numbers are made from.
    pub number: String,
    /// Legal owner of the drawings (ISO 7200).
    pub owner: String,
    /// Who drew it.
    pub drawn_by: String,
    /// Who approved it; empty when nobody has.
    pub approved_by: String,
    /// Date of issue as written; never the clock.
    pub date: String,
    /// The revisions, oldest first.
    pub revisions: Vec<Revision>,
    /// Units to show.
    pub units: System,
    /// Where it is written.
    pub place: Option<Place>,
}

/// One revision of the drawings.
#[derive(Clone, Debug)]
pub struct Revision {
    /// Its mark, as `B`.
    pub mark: String,
    /// Its date, as written.
    pub date: String,
    /// What changed.
    pub note: String,
}

/// The ground.
#[derive(Clone, Debug)]
pub struct Site {
    /// The floor's surface.
    pub floor: Floor,
    /// Pipes and cables that come up or out.
    pub stubs: Vec<Stub>,
    /// What lies underfoot, as the client elevation names and draws it.
    pub paving: String,
    /// What is round the run.
    pub around: Around,
    /// Walls, posts, steps and doors as surveyed.
    pub survey: Survey,
}

/// The floor's surface over a leg's (u, v), heights relative to one another (z = 0 is set by the solver).
#[derive(Clone, Debug)]
pub enum Floor {
    /// Level.
    Level,
    /// A plane. Falls are drops per length: positive `along` drops to the right (+u), positive
    /// `across` drops towards the cook (-v).
    Fall {
        /// Drop per unit length towards +u.
        along: f64,
        /// Drop per unit length towards -v (away from the back).
        across: f64,
    },
    /// Measured heights at points of the first leg's (u, v).
    Spots(Vec<Spot>),
}

/// One measured height of the floor.
#[derive(Clone, Copy, Debug)]
pub struct Spot {
    /// Along the face, from the finished left end.
    pub u: Length,
    /// Depth from the finished face.
    pub v: Length,
    /// Height over any one level, the same for all spots.
    pub z: Length,
}

/// A service that comes up in the run.
#[derive(Clone, Debug)]
pub struct Stub {
    /// What it carries.
    pub service: Service,
    /// The leg, by index.
    pub leg: usize,
    /// From the finished left end.
    pub u: Length,
    /// From the finished face.
    pub v: Length,
    /// Over the floor, where given.
    pub z: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}

/// What a stub carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Service {
    /// Fuel gas.
    Gas,
    /// Electricity.
    Power,
    /// Water supply.
    Water,
    /// Drain.
    Drain,
}

/// The bare metal frame.
#[derive(Clone, Debug)]
pub struct Frame {
    /// Front to back.
    pub depth: Length,
    /// Outside of the square tube.
    pub tube: Length,
    /// Wall of the tube.
    pub wall: Length,
    /// Height of the frame itself; when absent the frame reaches down to the shortest foot.
    pub height: Option<Length>,
    /// What it is made of.
    pub material: FrameMaterial,
    /// Upright tubes behind boards, this far apart at most; `None` for none beyond the posts.
    pub studs: Option<Length>,
    /// The adjustable feet.
    pub feet: Feet,
    /// Clear space between a board's opening and the frame, on each side (rough opening).
    pub rough_gap: Length,
    /// Where written.
    pub place: Option<Place>,
}

/// Adjustable feet.
#[derive(Clone, Debug)]
pub struct Feet {
    /// Shortest setting.
    pub shortest: Length,
    /// Longest setting.
    pub longest: Length,
    /// From each side of the module to the foot's centre.
    pub inset: Length,
    /// A module wider than this has a middle pair.
    pub middle_over: Length,
    /// What one foot carries, kg.
    pub rating: f64,
    /// Where written.
    pub place: Option<Place>,
}

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

/// Base trim.
#[derive(Clone, Debug)]
pub struct Trim {
    /// As the job names it.
    pub name: String,
    /// Its top over the highest floor point.
    pub top: Length,
    /// Thickness.
    pub thickness: Length,
}

/// A straight row of modules with one face line.
#[derive(Clone, Debug)]
pub struct Leg {
    /// Its id.
    pub id: String,
    /// Origin in the plan: its finished left end at the finished face, mm.
    pub origin: (f64, f64),
    /// Turn of +u from the plan's x, counter-clockwise, radians.
    pub angle: f64,
    /// What bounds its left end.
    pub left: Bound,
    /// What bounds its right end.
    pub right: Bound,
    /// What stands behind it.
    pub back: Bound,
    /// Room for it along u: between the bounds' faces, or to the finished end where an end is open.
    pub room: Option<Length>,
    /// Board and finish of each face.
    pub faces: Faces,
    /// Its modules, left to right.
    pub modules: Vec<Module>,
    /// What it has otherwise than the job.
    pub own: Own,
    /// Where written.
    pub place: Option<Place>,
}

/// What stands at an end of a leg, or behind it.
#[derive(Clone, Debug)]
pub struct Bound {
    /// Kind of thing.
    pub kind: BoundKind,
    /// As the job names it, as `garden wall`; empty when open.
    pub name: String,
    /// From its face to the outermost layer of the run there, at the level where the face stands nearest.
    pub gap: Length,
    /// How far its face leans towards the run at counter height, less what it is at the floor; negative leans away.
    pub lean: Length,
    /// Its height over the floor.
    pub height: Length,
    /// Its width along u as seen from the front (a pier, a post), or its thickness.
    pub width: Length,
    /// Whether it burns, skin or studs; `None` when the job doesn't say.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

/// Kind of bound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoundKind {
    /// Nothing there.
    Open,
    /// A wall.
    Wall,
    /// A pier of masonry.
    Pier,
    /// A post.
    Post,
    /// Another leg of the run.
    Leg,
}

/// Board and finish on the four faces of a leg.
#[derive(Clone, Debug)]
pub struct Faces {
    /// Towards the cook.
    pub front: Build,
    /// The left end.
    pub left: Build,
    /// The right end.
    pub right: Build,
    /// The back.
    pub back: Build,
}

/// What is fixed to the frame on one face.
#[derive(Clone, Debug)]
pub struct Build {
    /// Thickness of the board; zero for none.
    pub board: Length,
    /// As the job names it.
    pub board_name: String,
    /// What covers the board; `None` leaves it bare.
    pub finish: Option<Finish>,
    /// Control or movement joints in the finish, this far apart; `None` when the job names none.
    pub joints: Option<Length>,
    /// What the board carries, kg/m2, where its maker is quoted.
    pub carries: Option<f64>,
}

impl Build {
    /// Thickness of what covers the board.
    pub fn finish_thickness(&self) -> Length {
        self.finish.as_ref().map_or(Length::ZERO, Finish::total)
    }

    /// Board and finish together: how far the finished face stands proud of the bare frame.
    pub fn total(&self) -> Length {
        self.board + self.finish_thickness()
    }
}

/// What covers a board.
#[derive(Clone, Debug, PartialEq)]
pub struct Finish {
    /// Which kind.
    pub kind: FinishKind,
    /// As the job names it.
    pub name: String,
    /// Thickness of the outer layer.
    pub thickness: Length,
    /// Thickness of the bed it lies in; zero for none.
    pub bed: Length,
    /// The finished face may lie this much either way.
    pub spread: Length,
    /// Mass per area of finish and bed, kg/m2.
    pub mass: f64,
}

impl Finish {
    /// Outer layer and bed together.
    pub fn total(&self) -> Length {
        self.thickness + self.bed
    }
}

/// Kind of finish, with what its drawing needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FinishKind {
    /// Troweled skim coat.
    SkimCoat,
    /// Thin stone veneer in courses.
    Veneer,
    /// Tile on a grid.
    Tile {
        /// Width of a tile.
        width: Length,
        /// Height of a tile.
        height: Length,
        /// Joint between tiles.
        joint: Length,
        /// Half-width offset from row to row.
        staggered: bool,
    },
}

/// One framed box of a leg.
#[derive(Clone, Debug)]
pub struct Module {
    /// Its id, as `B`.
    pub id: String,
    /// What the client calls it, as `grill`; may be empty.
    pub name: String,
    /// Kind of box.
    pub kind: ModuleKind,
    /// Its width along u.
    pub width: Width,
    /// Where written.
    pub place: Option<Place>,
}

/// Kind of module.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ModuleKind {
    /// A framed box.
    Base,
    /// Framed over, open below.
    OpenBay,
    /// A strip that fills.
    Filler,
    /// A box in a corner, part of it behind the other leg.
    Corner,
}

/// How wide a module is to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Width {
    /// Just this.
    Fixed(Length),
    /// Anything between these; all ranges of a leg grow in proportion to what they may.
    Range(Length, Length),
    /// What is left when the others have their width.
    WhatIsLeft,
}

/// A dimension that may have been published, measured, or both.
#[derive(Clone, Debug)]
pub struct Measure {
    /// From the fitting's sheet.
    pub published: Option<Length>,
    /// From the fitting in hand; wins.
    pub measured: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}

impl Measure {
    /// The length to work with: measured if there is one, else published, else zero.
    pub fn value(&self) -> Length {
        self.measured.or(self.published).unwrap_or(Length::ZERO)
    }

    /// A published dimension that nobody has measured yet.
    pub fn published(length: Length) -> Measure {
        Measure { published: Some(length), measured: None, place: None }
    }
}

/// Something set into the run.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// Its id, as `grill`.
    pub id: String,
    /// What it is called, as `grill` or `access doors`.
    pub name: String,
    /// Its mark on drawings if the job chose one, as `B1`.
    pub mark: Option<String>,
    /// How it looks from the front.
    pub look: Look,
    /// Its leg, by index.
    pub leg: usize,
    /// Its module in that leg, by index.
    pub module: usize,
    /// The face that it is set into, or that its depth counts from.
    pub face: Face,
    /// Where it stands across.
    pub across: Across,
    /// Its cutout.
    pub cut: Cut,
    /// How far its flange laps over the cutout, per side.
    pub flange: Flange,
    /// Its body behind the face or under the counter.
    pub body: Option<Body>,
    /// Clear space it needs round and behind its body.
    pub clearance: Length,
    /// Mass, kg; `None` when not given.
    pub mass: Option<f64>,
    /// Heat input, W; `None` when not given or none.
    pub heat: Option<f64>,
    /// What its manual asks for.
    pub needs: Needs,
    /// Where written.
    pub place: Option<Place>,
}

/// How a fitting looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// A grill with a lid.
    Grill,
    /// A burner set in the counter.
    SideBurner,
    /// A sink.
    Sink,
    /// A hole for a faucet.
    Faucet,
    /// One door, hinged on the left (pull at the right) or the right.
    Door {
        /// The pull is at the right.
        pull_right: bool,
    },
    /// A pair of doors.
    Doors,
    /// A stack of drawers, this many.
    Drawers(u8),
    /// A pull-out for waste.
    WastePullOut,
    /// A refrigerator.
    Refrigerator,
    /// An access panel.
    Panel,
    /// A vent with louvres.
    Vent,
    /// A plain hole.
    Hole,
}

/// A face of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// Towards the cook.
    Front,
    /// The left end as the cook sees it.
    Left,
    /// The right end as the cook sees it.
    Right,
    /// Away from the cook.
    Back,
}

/// Where a fitting stands along its face.
#[derive(Clone, Debug)]
pub struct Across {
    /// Which of its own lines is placed.
    pub line: AcrossLine,
    /// From which datum.
    pub from: AcrossFrom,
    /// How far; positive is to the right of a left datum or centreline, and to the left of a right datum.
    pub distance: Measure,
}

/// The line of a fitting that is placed across.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AcrossLine {
    /// Left edge of the cutout.
    LeftEdge,
    /// Centreline.
    Centre,
    /// Right edge of the cutout.
    RightEdge,
}

/// What a place across is from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AcrossFrom {
    /// The module's centreline.
    ModuleCentre,
    /// The module's left edge.
    ModuleLeft,
    /// The module's right edge.
    ModuleRight,
    /// The finished left end.
    FinishedLeft,
    /// The finished right end.
    FinishedRight,
    /// The frame's left end.
    FrameLeft,
    /// The frame's right end.
    FrameRight,
    /// The board's left end.
    BoardLeft,
    /// The board's right end.
    BoardRight,
    /// Another fitting's centreline, by its index.
    Fitting(usize),
    /// Along an end face: from the finished face.
    FinishedFace,
}

/// A datum for depths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DepthFrom {
    /// The finished face.
    FinishedFace,
    /// The counter's front edge.
    CounterEdge,
    /// The outside of the board.
    BoardFace,
    /// The bare frame's front.
    FrameFace,
}

/// A datum for heights. From the tops distances run down; from the floor they run up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeightFrom {
    /// The top of the counter.
    CounterTop,
    /// The top of the substrate.
    SubstrateTop,
    /// The top of the bare frame.
    FrameTop,
    /// The highest floor point.
    Floor,
}

/// A fitting's cutout.
#[derive(Clone, Debug)]
pub enum Cut {
    /// A counter cutout open to the front edge, continuing down the front board.
    Notch {
        /// Along the face.
        width: Measure,
        /// To the back edge.
        depth: Measure,
        /// Datum of the depth.
        depth_from: DepthFrom,
        /// To the bottom.
        drop: Measure,
        /// Datum of the drop.
        drop_from: HeightFrom,
        /// Radius of the back corners in plan.
        radius: Length,
    },
    /// A closed cutout in the counter.
    Well {
        /// Its shape and size.
        shape: WellShape,
        /// Which of its lines is placed in depth.
        line: DepthLine,
        /// How far back that line is.
        setback: Measure,
        /// Datum of the setback.
        setback_from: DepthFrom,
    },
    /// A cutout in a front, back or end board; also a vent or pass-through.
    Opening {
        /// Along the face.
        width: Measure,
        /// Its height; `None` reaches the floor.
        height: Option<Measure>,
        /// To its top edge.
        drop: Measure,
        /// Datum of the drop.
        drop_from: HeightFrom,
        /// Radius of its corners.
        radius: Length,
        /// What sort of opening.
        sort: OpeningSort,
    },
}

/// Shape of a well.
#[derive(Clone, Debug)]
pub enum WellShape {
    /// A rectangle with rounded corners.
    Rectangle {
        /// Along the face.
        width: Measure,
        /// Front to back.
        depth: Measure,
        /// Corner radius.
        radius: Length,
    },
    /// A circle.
    Circle {
        /// Its diameter.
        diameter: Measure,
    },
}

/// The line of a well that is placed in depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DepthLine {
    /// Edge nearest the cook.
    Front,
    /// Centre.
    Centre,
    /// Edge farthest from the cook.
    Back,
}

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpeningSort {
    /// Takes a fitting.
    Fitting,
    /// Lets air through.
    Vent,
    /// Lets a pipe or cable through.
    PassThrough,
}

/// Lap of a flange over the edges of its cutout, per side; zero where there is none.
#[derive(Clone, Copy, Debug, Default)]
pub struct Flange {
    /// Over the left edge.
    pub left: Length,
    /// Over the right edge.
    pub right: Length,
    /// Over the back edge (in a counter) or the top edge (in a board).
    pub far: Length,
    /// Over the front edge (in a counter) or the bottom edge (in a board).
    pub near: Length,
}

/// A fitting's body: what has to clear the frame.
#[derive(Clone, Debug)]
pub struct Body {
    /// Along the face.
    pub width: Measure,
    /// From the finished face back, or front to back for a well.
    pub depth: Measure,
    /// Up and down.
    pub height: Measure,
}

/// What may be off.
#[derive(Clone, Copy, Debug)]
pub struct Tolerances {
    /// Of a cut edge, either way.
    pub cut: Length,
    /// Of placing the fitting in its cutout, either way.
    pub placing: Length,
    /// Published against measured before it is worth a word.
    pub published: Length,
    /// Least width of material left between two cutouts or beside an edge.
    pub least_strip: Length,
    /// Least cover of a flange in the worst case.
    pub least_cover: Length,
}

/// Paper.
#[derive(Clone, Debug)]
pub struct Paper {
    /// Its name as in the table of sizes, as `A3`.
    pub name: String,
    /// Long side, mm.
    pub width: f64,
    /// Short side, mm.
    pub height: f64,
    /// Where written.
    pub place: Option<Place>,
    /// What full-size templates are printed on, as written; `None` leaves it to the units.
    pub templates: Option<String>,
    /// Edge of a sheet that the printer can't reach.
    pub margin: Option<Length>,
    /// How far neighbouring tiles lie over each other.
    pub overlap: Option<Length>,
    /// The printer that templates are corrected for.
    pub printer: Option<Printer>,
    /// Every printer that the job names.
    pub printers: Vec<Printer>,
}

/// A named value that the job did not give.
#[derive(Clone, Debug, PartialEq)]
pub struct DefaultUsed {
    /// Its name, as the model would write it: `frame.tube`.
    pub name: String,
    /// The length filled in.
    pub value: String,
    /// Where it comes from: `common practice` or `from memory, verify`.
    pub origin: &'static str,
}

/// What a printer makes of true lengths.
#[derive(Clone, Debug, PartialEq)]
pub struct Printer {
    /// Its name; empty when it has none.
    pub name: String,
    /// Printed length over true length, across the paper.
    pub across: f64,
    /// The same along the paper.
    pub along: f64,
}
