//! Jobs as values, for tests that need no parser.
#![allow(dead_code, clippy::unwrap_used, clippy::expect_used, clippy::panic)]

pub mod made_up;
pub mod meeting;
pub mod reference;

use faceline::parameters::given::*;
use faceline::units::{Length, System};

pub fn inches(value: f64) -> Length {
    Length::from_inches(value)
}

pub fn published(value: f64) -> Measure {
    Measure::published(inches(value))
}

pub fn open() -> Bound {
    Bound {
        kind: BoundKind::Open,
        name: String::new(),
        gap: Length::ZERO,
        lean: Length::ZERO,
        height: Length::ZERO,
        width: Length::ZERO,
        combustible: None,
        place: None,
    }
}

pub fn wall(name: &str, gap: f64) -> Bound {
    Bound { kind: BoundKind::Wall, name: name.to_owned(), gap: inches(gap), height: inches(72.0), ..open() }
}

/// Cement board and thin stone veneer on its bed: 2 1/8 in in all.
pub fn veneer() -> Build {
    Build {
        board: inches(0.5),
        board_name: "cement board".to_owned(),
        finish: Some(Finish {
            kind: FinishKind::Veneer,
            name: "thin stone veneer".to_owned(),
            thickness: inches(1.25),
            bed: inches(0.375),
            spread: inches(0.125),
            mass: 60.0,
        }),
        joints: None,
        carries: None,
    }
}

pub fn board_only() -> Build {
    Build { finish: None, ..veneer() }
}

pub fn bare() -> Build {
    Build { board: Length::ZERO, board_name: String::new(), finish: None, joints: None, carries: None }
}

pub fn module(id: &str, width: Width) -> Module {
    Module { id: id.to_owned(), name: String::new(), kind: ModuleKind::Base, width, place: None }
}

pub fn fixed(id: &str, width: f64) -> Module {
    module(id, Width::Fixed(inches(width)))
}

/// A fitting centred in its module.
pub fn fitting(id: &str, look: Look, module: usize, cut: Cut) -> Fitting {
    Fitting {
        id: id.to_owned(),
        name: id.to_owned(),
        mark: None,
        look,
        leg: 0,
        module,
        face: Face::Front,
        across: Across { line: AcrossLine::Centre, from: AcrossFrom::ModuleCentre, distance: published(0.0) },
        cut,
        flange: Flange::default(),
        body: None,
        clearance: Length::ZERO,
        mass: None,
        heat: None,
        needs: Needs::default(),
        place: None,
    }
}

pub fn notch(width: f64, depth: f64, drop: f64) -> Cut {
    Cut::Notch {
        width: published(width),
        depth: published(depth),
        depth_from: DepthFrom::FinishedFace,
        drop: published(drop),
        drop_from: HeightFrom::CounterTop,
        radius: Length::ZERO,
    }
}

pub fn well(width: f64, depth: f64, radius: f64, setback: f64) -> Cut {
    Cut::Well {
        shape: WellShape::Rectangle { width: published(width), depth: published(depth), radius: inches(radius) },
        line: DepthLine::Front,
        setback: published(setback),
        setback_from: DepthFrom::FinishedFace,
    }
}

pub fn opening(width: f64, drop: f64, height: Option<f64>) -> Cut {
    Cut::Opening {
        width: published(width),
        height: height.map(published),
        drop: published(drop),
        drop_from: HeightFrom::CounterTop,
        radius: Length::ZERO,
        sort: OpeningSort::Fitting,
    }
}

/// The grill of the worked example, centred in module B (index 1).
pub fn grill() -> Fitting {
    let laps = Flange { left: inches(0.75), right: inches(0.75), far: inches(0.75), near: Length::ZERO };
    Fitting { flange: laps, ..fitting("grill", Look::Grill, 1, notch(33.375, 21.25, 9.0)) }
}

/// Frame and counter of the worked example.
fn frame_and_counter() -> (Frame, Counter) {
    let frame = Frame {
        depth: inches(28.0),
        tube: inches(1.5),
        wall: inches(0.0625),
        height: None,
        material: FrameMaterial::Steel,
        studs: None,
        feet: Feet {
            shortest: inches(2.0),
            longest: inches(4.5),
            inset: inches(1.5),
            middle_over: inches(36.0),
            spacing: inches(30.0),
            spot_reach: inches(2.0),
            rating: 136.0,
            place: None,
        },
        rough_gap: inches(0.125),
        place: None,
    };
    let counter = Counter {
        material: CounterMaterial::Concrete,
        name: "cast concrete".to_owned(),
        thickness: inches(1.5),
        density: 2300.0,
        overhang_front: inches(1.0),
        overhang_left: inches(1.0),
        overhang_right: inches(1.0),
        overhang_back: inches(1.0),
        wall_joint: inches(0.25),
        seam_joint: inches(0.125),
        corner_radius: Length::ZERO,
        arris: inches(0.125),
        drip: Length::ZERO,
        splash: None,
        seams: Vec::new(),
        notches: Vec::new(),
        tolerance: inches(0.0625),
        needs: CounterNeeds::default(),
        place: None,
    };
    (frame, counter)
}

/// The run of the worked example: modules A 18 in and B 42 in, clad at both ends, the grill in B.
pub fn worked_example() -> Given {
    let (frame, counter) = frame_and_counter();
    Given {
        supports: SupportWork::assumed_for(&frame, &counter),
        job: Job { title: "worked example".to_owned(), units: System::Inches, ..Job::default() },
        site: Site {
            floor: Floor::Level,
            stubs: Vec::new(),
            paving: "pavers".to_owned(),
            around: Around::default(),
            survey: Survey::default(),
        },
        frame,
        counter,
        substrate: Substrate {
            name: "exterior plywood".to_owned(),
            thickness: inches(0.75),
            edge: SubstrateEdge::Board,
            combustible: Some(true),
            place: None,
        },
        height: Height::CounterTop(inches(36.0)),
        trim: None,
        legs: vec![Leg {
            id: "leg1".to_owned(),
            origin: (0.0, 0.0),
            angle: 0.0,
            left: open(),
            right: open(),
            back: open(),
            room: None,
            faces: Faces { front: veneer(), left: veneer(), right: veneer(), back: board_only() },
            modules: vec![fixed("A", 18.0), fixed("B", 42.0)],
            own: Own::default(),
            place: None,
        }],
        joints: Vec::new(),
        fittings: vec![grill()],
        services: None,
        stock: stock(),
        laying: Laying {
            gap: inches(0.125),
            off_floor: inches(0.25),
            off_corner: inches(1.5),
            least_strip: inches(4.0),
            bottoms: false,
        },
        materials: Materials::assumed(),
        limits: Vec::new(),
        tolerances: Tolerances {
            cut: inches(0.0625),
            placing: inches(0.0625),
            published: inches(0.125),
            least_strip: inches(3.0),
            least_cover: inches(0.125),
        },
        paper: Paper {
            name: "A3".to_owned(),
            width: 420.0,
            height: 297.0,
            place: None,
            templates: None,
            margin: None,
            overlap: None,
            printer: None,
            printers: Vec::new(),
        },
        waits: Waits::new(),
        defaults: Vec::new(),
    }
}

/// Sheets of board 36 x 60 in and of plywood 48 x 96 in, bars of 20 ft.
fn stock() -> Stock {
    let sheet = |width, length| SheetStock {
        sheets: vec![(inches(width), inches(length))],
        offcuts: Vec::new(),
        edge_to_edge: true,
        kerf: inches(0.125),
        turned: true,
        place: None,
    };
    Stock {
        board: sheet(36.0, 60.0),
        substrate: sheet(48.0, 96.0),
        bars: BarStock { lengths: vec![inches(240.0)], kerf: inches(0.125), end_trim: inches(0.25) },
        keep: inches(6.0),
    }
}

/// The four modules of the look sheets: waste pull-out, grill over doors, three drawers, refrigerator bay.
pub fn terrace() -> Given {
    let mut given = worked_example();
    given.legs[0].modules = vec![fixed("A", 18.0), fixed("B", 42.0), fixed("C", 24.0), fixed("D", 30.0)];
    given.site.floor = Floor::Fall { along: 1.0 / 48.0, across: 1.0 / 96.0 };
    given.fittings.extend([
        fitting("waste", Look::WastePullOut, 0, opening(14.5, 8.0, Some(21.5))),
        fitting("doors", Look::Doors, 1, opening(30.5, 13.0, Some(16.5))),
        fitting("drawer1", Look::Drawers(1), 2, opening(18.5, 4.0, Some(5.5))),
        fitting("drawer2", Look::Drawers(1), 2, opening(18.5, 11.5, Some(8.0))),
        fitting("drawer3", Look::Drawers(1), 2, opening(18.5, 21.5, Some(8.0))),
        fitting("fridge", Look::Refrigerator, 3, opening(24.25, 4.0, None)),
    ]);
    given
}
