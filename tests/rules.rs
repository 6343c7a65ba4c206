//! Every rule has a job that makes it fire and one that leaves it quiet.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::findings::{Finding, Severity};
use faceline::parameters::given::*;
use faceline::rules;
use faceline::solve::{Solved, SupportRole, solve};
use faceline::units::Length;

use support::*;

/// A rule's name, a job in which it fires (with the gravest severity and words its messages have), and a quiet one.
struct Fixture {
    rule: &'static str,
    fires: fn() -> Given,
    severity: Severity,
    says: &'static str,
    quiet: fn() -> Given,
}

/// The look sheets' run, everything measured.
fn measured() -> Given {
    let mut given = terrace();
    for fitting in &mut given.fittings {
        if let Cut::Opening { width, height, drop, .. } = &mut fitting.cut {
            for measure in [Some(width), height.as_mut(), Some(drop)].into_iter().flatten() {
                measure.measured = measure.published;
            }
        }
        if let Cut::Notch { width, depth, drop, .. } = &mut fitting.cut {
            for measure in [width, depth, drop] {
                measure.measured = measure.published;
            }
        }
    }
    given.tolerances.least_strip = inches(2.0);
    for fitting in given.fittings.iter_mut().filter(|fitting| fitting.look == Look::Refrigerator) {
        fitting.needs.hinge_right = Some(true);
    }
    given
}

fn with(change: fn(&mut Given)) -> Given {
    let mut given = measured();
    change(&mut given);
    given
}

/// The measured run with base trim.
fn trimmed(change: fn(&mut Trim)) -> Given {
    let mut given = measured();
    let mut trim = Trim::default();
    change(&mut trim);
    given.trim = Some(trim);
    given
}

fn body(width: f64, depth: f64, height: f64) -> Option<Body> {
    Some(Body { width: published(width), depth: published(depth), height: published(height) })
}

const INCH_OF_WATER: f64 = 249.088_9;
const BTU_PER_HOUR: f64 = 0.293_071_07;
const SQUARE_INCH: f64 = 0.0254 * 0.0254;

/// The measured run on natural gas, vented, cleared and framed as it should be: nothing is found in it.
fn safe() -> Given {
    let mut given = measured();
    given.frame.feet.longest = inches(5.0);
    given.frame.feet.inset = inches(0.75);
    given.frame.studs = Some(inches(16.0));
    given.frame.wall = inches(0.12);
    given.counter.overhang_back = inches(3.0);
    given.counter.needs.lifters = Some(9);
    given.site.stubs.push(stub(Service::Power, 96.0, 26.0, Some(18.0)));
    given.site.around =
        Around { overhead: Overhead::Open, aisle: Some(inches(60.0)), sun: Some(true), ..Around::default() };
    for fitting in given.fittings.iter_mut().filter(|one| matches!(one.look, Look::Grill | Look::Refrigerator)) {
        fitting.mass = Some(50.0);
    }
    let grill = &mut given.fittings[0];
    grill.heat = Some(64_000.0 * BTU_PER_HOUR);
    grill.cut = rounded(grill.cut.clone());
    grill.needs = Needs { liner: Some(true), most_top: Some(inches(2.0)), ..Needs::default() };
    for (id, face, module) in [("vent1", Face::Left, 0), ("vent2", Face::Back, 3)] {
        let mut vent = fitting(id, Look::Vent, module, opening(12.0, 5.0, Some(3.0)));
        let Cut::Opening { sort, width, height, drop, .. } = &mut vent.cut else { panic!("a vent is an opening") };
        *sort = OpeningSort::Vent;
        for measure in [Some(width), height.as_mut(), Some(drop)].into_iter().flatten() {
            measure.measured = measure.published;
        }
        vent.face = face;
        vent.needs.free_area = Some(18.0 * SQUARE_INCH);
        if face == Face::Left {
            vent.across =
                Across { line: AcrossLine::Centre, from: AcrossFrom::FinishedFace, distance: published(16.0) };
        }
        given.fittings.push(vent);
    }
    given.services = Some(Services {
        fuel: Some(Fuel::Natural),
        supply: Some(7.0 * INCH_OF_WATER),
        drop: Some(0.5 * INCH_OF_WATER),
        heating_value: (1000.0 * 37_258.95, 2500.0 * 37_258.95),
        smallest: PipeSize::Half,
        allowance: 0.0,
        pipe: vec![Segment {
            id: "1".to_owned(),
            from: "meter".to_owned(),
            to: "grill".to_owned(),
            length: inches(70.0 * 12.0),
            bends: Bends { elbows: 4, ..Bends::default() },
            installed: Some(PipeSize::ThreeQuarters),
            place: None,
        }],
        loads: Vec::new(),
        connections: vec![Connection {
            fitting: "grill".to_owned(),
            shutoff: Some((inches(44.0), inches(16.0), inches(10.0))),
            connector: Some(inches(36.0)),
            inlet: None,
            rated: None,
            place: None,
        }],
        cylinders: Vec::new(),
        place: None,
    });
    given
}

fn gas(change: fn(&mut Given)) -> Given {
    let mut given = safe();
    change(&mut given);
    given
}

/// The safe run with a grill of so many kilograms on arms of a square tube, inches, of 6063-T5.
fn heavy_on(side: f64, wall: f64, mass: f64) -> Given {
    let mut given = safe();
    let section = Profiled { profile: Profile::Tube, width: inches(side), height: inches(side), wall: inches(wall) };
    given.supports = SupportWork::assumed_for(&given.frame, &given.counter);
    given.supports.arm = Bar { section, alloy: Alloy::aluminium_6063_t5() };
    given.fittings[0].mass = Some(mass);
    given.fittings[0].body = body(32.5, 20.5, 8.5);
    given
}

fn fed(given: &mut Given) -> &mut Services {
    given.services.as_mut().expect("the safe run is fed")
}

fn pipe(given: &mut Given) -> &mut Vec<Segment> {
    &mut fed(given).pipe
}

fn vents(given: &mut Given) -> impl Iterator<Item = &mut Fitting> {
    given.fittings.iter_mut().filter(|fitting| fitting.look == Look::Vent)
}

fn veneers(given: &mut Given, change: fn(&mut Build)) {
    let faces = &mut given.legs[0].faces;
    [&mut faces.front, &mut faces.left, &mut faces.right].into_iter().for_each(change);
}

fn rounded(mut cut: Cut) -> Cut {
    if let Cut::Notch { radius, .. } = &mut cut {
        *radius = inches(0.375);
    }
    cut
}

fn stub(service: Service, u: f64, v: f64, z: Option<f64>) -> Stub {
    Stub { service, leg: 0, u: inches(u), v: inches(v), z: z.map(inches), place: None }
}

fn cylinder(module: usize, partition: Option<bool>) -> Cylinder {
    Cylinder { leg: 0, module, holds: 20.0 * 0.453_592_37, count: 1, partition, place: None }
}

fn person(name: &str, stature: f64) -> Person {
    Person { name: name.to_owned(), stature: Some(inches(stature)), seated: false, place: None }
}

fn roof(height: f64, combustible: Option<bool>, hood: bool) -> Overhead {
    Overhead::Roof { name: "pergola".to_owned(), height: inches(height), combustible, hood, place: None }
}

fn limit(name: &str, value: &str) -> LimitSet {
    LimitSet {
        name: name.to_owned(),
        value: faceline::units::reading::quantity(value).expect("a quantity"),
        written: value.to_owned(),
        because: "the terrace ends there".to_owned(),
        place: None,
    }
}

/// A deep overhang behind, on flat bars so thick, inches.
fn bracketed(thick: f64) -> Given {
    let thick = inches(thick);
    let mut given = gas(|g| g.counter.overhang_back = inches(15.0));
    given.supports.bracket.section =
        Profiled { profile: Profile::Flat, width: inches(8.0), height: thick, wall: thick };
    given
}

fn fixtures() -> Vec<Fixture> {
    vec![
        Fixture {
            rule: "bracket-fills-its-recess",
            fires: || bracketed(1.0),
            severity: Severity::Warn,
            says: "in a substrate of 3/4 in stand 1/4 in over it and lift the counter",
            quiet: || bracketed(0.75),
        },
        Fixture {
            rule: "support-is-strong-enough",
            fires: || heavy_on(1.0, 0.065, 270.0),
            severity: Severity::Warn,
            says: "its metal is allowed",
            quiet: || heavy_on(1.5, 0.12, 100.0),
        },
        Fixture {
            rule: "support-is-stiff-enough",
            fires: || heavy_on(1.0, 0.065, 270.0),
            severity: Severity::Warn,
            says: "of its span",
            quiet: || heavy_on(2.0, 0.12, 60.0),
        },
        Fixture {
            rule: "heavy-fitting-finds-its-arms",
            fires: || {
                let mut given = heavy_on(1.5, 0.12, 136.0);
                let mut drawers = fitting("drawers", Look::Drawers(2), 1, opening(30.0, 12.0, Some(14.0)));
                drawers.body = body(36.0, 25.0, 24.0);
                given.fittings.push(drawers);
                given
            },
            severity: Severity::Warn,
            says: "hangs without arms",
            quiet: || heavy_on(1.5, 0.12, 136.0),
        },
        Fixture {
            rule: "piece-fits-a-sheet",
            fires: || gas(|g| g.stock.substrate.sheets = vec![(inches(12.0), inches(12.0))]),
            severity: Severity::Warn,
            says: "holds it",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "length-fits-a-bar",
            fires: || gas(|g| g.stock.bars.lengths = vec![inches(30.0)]),
            severity: Severity::Warn,
            says: "no stock bar has that",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "joint-lies-on-framing",
            fires: || gas(|g| g.stock.board.sheets = vec![(inches(9.0), inches(9.0))]),
            severity: Severity::Warn,
            says: "has no tube behind it",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "joint-clear-of-cutout-corners",
            fires: || {
                gas(|g| {
                    g.stock.board.sheets = vec![(inches(9.0), inches(9.0))];
                    g.laying.off_corner = inches(14.0);
                })
            },
            severity: Severity::Warn,
            says: "from a cutout",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "no-narrow-strip",
            fires: || gas(|g| g.laying.least_strip = inches(25.0)),
            severity: Severity::Note,
            says: "25\u{2033} is the least",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "floor-carries-the-run",
            fires: || gas(|g| g.site.around.carries = Some(50.0)),
            severity: Severity::Warn,
            says: "the floor carries",
            quiet: || {
                gas(|g| {
                    g.site.around.carries = Some(2000.0);
                    g.fittings.iter_mut().for_each(|fitting| fitting.mass = Some(20.0));
                })
            },
        },
        Fixture {
            rule: "part-has-its-lifters",
            fires: || {
                gas(|g| {
                    g.fittings[0].mass = Some(110.0);
                    g.counter.needs.lifters = None;
                })
            },
            severity: Severity::Note,
            says: "B1 grill (243 lb, 5 people)",
            quiet: || gas(|g| g.fittings[0].mass = Some(110.0)),
        },
        Fixture {
            rule: "one-name-one-material",
            fires: || {
                gas(|g| {
                    if let Some(finish) = &mut g.legs[0].faces.left.finish {
                        finish.thickness = inches(0.75);
                    }
                })
            },
            severity: Severity::Warn,
            says: "two finishes are called thin stone veneer: one is 1 1/4 in on a bed of 3/8 in",
            quiet: safe,
        },
        Fixture {
            rule: "bed-of-a-finish-is-given",
            fires: || {
                gas(|g| {
                    veneers(g, |build| {
                        if let Some(finish) = &mut build.finish {
                            finish.bed = Length::ZERO;
                        }
                    });
                })
            },
            severity: Severity::Note,
            says: "has no bed",
            quiet: || {
                gas(|g| {
                    veneers(g, |build| {
                        if let Some(finish) = &mut build.finish {
                            finish.kind = FinishKind::SkimCoat;
                            finish.bed = Length::ZERO;
                        }
                    });
                })
            },
        },
        Fixture {
            rule: "run-fits-its-site",
            fires: || with(|g| g.legs[0].room = Some(inches(110.0))),
            severity: Severity::Stop,
            says: "8 1/4 in too long",
            quiet: || with(|g| g.legs[0].room = Some(inches(118.25))),
        },
        Fixture {
            rule: "fitting-inside-its-module",
            fires: || with(|g| g.legs[0].modules[1].width = Width::Fixed(inches(33.0))),
            severity: Severity::Stop,
            says: "33 3/8 in wide, module B is 33 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutouts-keep-a-strip-between-them",
            fires: || with(|g| g.fittings[2].cut = opening(30.5, 8.5, Some(16.5))),
            severity: Severity::Stop,
            says: "meet in the front board by 1/2 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-stays-in-its-board",
            fires: || with(|g| g.fittings[2].cut = opening(30.5, 13.0, Some(21.5))),
            severity: Severity::Stop,
            says: "1/2 in past the bottom edge of the front board",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-clears-frame-members",
            fires: || with(|g| g.legs[0].modules[1].width = Width::Fixed(inches(36.0))),
            severity: Severity::Stop,
            says: "meets a post by 3/16 in",
            quiet: measured,
        },
        Fixture {
            rule: "body-fits-its-module",
            fires: || {
                with(|g| {
                    g.fittings[0].body = body(33.0, 21.0, 11.0);
                    g.fittings[2].body = body(30.0, 20.0, 21.0);
                })
            },
            severity: Severity::Stop,
            says: "run 1/4 in into one another",
            quiet: || with(|g| g.fittings[0].body = body(33.0, 21.0, 11.0)),
        },
        Fixture {
            rule: "body-passes-its-cutout",
            fires: || with(|g| g.fittings[1].body = body(14.625, 20.0, 21.0)),
            severity: Severity::Stop,
            says: "is 14 5/8 in in width, its cutout 14 1/2 in",
            quiet: || with(|g| g.fittings[1].body = body(14.25, 20.0, 21.0)),
        },
        Fixture {
            rule: "flange-covers-its-gap",
            fires: || with(|g| g.fittings[0].flange.far = inches(0.1875)),
            severity: Severity::Stop,
            says: "(worst case) it leaves a gap of 1/16 in, by root sum of squares a cover of 1/16 in",
            quiet: measured,
        },
        Fixture {
            rule: "flange-finds-its-backing",
            fires: || {
                with(|g| {
                    // 1 in is left to the post: too little for a tube, too much for the flange.
                    g.fittings[1].cut = opening(13.0, 8.0, Some(21.5));
                    g.fittings[1].flange = Flange { left: inches(0.75), right: inches(0.75), ..Flange::default() };
                })
            },
            severity: Severity::Warn,
            says: "(waste) on both sides: it laps 3/4 in, the nearest tube stands 1 in off the cutout",
            quiet: || {
                with(|g| {
                    // 1/4 in off, the post itself is what the flange is screwed to.
                    g.fittings[1].flange = Flange { left: inches(0.75), right: inches(0.75), ..Flange::default() };
                })
            },
        },
        Fixture {
            rule: "feet-within-range",
            fires: || with(|g| g.frame.feet.longest = inches(3.0)),
            severity: Severity::Stop,
            says: "it can be from 2 in to 3 in",
            quiet: || with(|g| g.frame.feet.longest = inches(5.0)),
        },
        Fixture {
            rule: "published-agrees-with-measured",
            fires: || {
                with(|g| {
                    if let Cut::Notch { depth, .. } = &mut g.fittings[0].cut {
                        depth.measured = Some(inches(21.0));
                    }
                })
            },
            severity: Severity::Warn,
            says: "published as 21 1/4 in and measured as 21 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-was-measured",
            fires: terrace,
            severity: Severity::Note,
            says: "width 33 3/8 in, depth 21 1/4 in, drop 9 in as published",
            quiet: measured,
        },
        // Fuel gas.
        Fixture {
            rule: "gas-pipe-is-one-tree",
            fires: || gas(|g| pipe(g)[0].to = "tap".to_owned()),
            severity: Severity::Warn,
            says: "ends at tap, which is neither an appliance nor the start of another segment",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "gas-pipe-carries-its-load",
            fires: || gas(|g| pipe(g)[0].installed = Some(PipeSize::Half)),
            severity: Severity::Stop,
            says: "is 1/2 in pipe, which carries",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "gas-pressure-reaches-its-appliance",
            fires: || gas(|g| fed(g).supply = Some(5.0 * INCH_OF_WATER)),
            severity: Severity::Warn,
            says: "5 in w.c. is wanted there",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "gas-shutoff-within-reach",
            fires: || gas(|g| fed(g).connections[0].shutoff = Some((inches(40.0), inches(10.0), inches(30.0)))),
            severity: Severity::Stop,
            says: "lies in the hot zone",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "gas-connector-short-enough",
            fires: || gas(|g| fed(g).connections[0].connector = Some(inches(84.0))),
            severity: Severity::Stop,
            says: "is 7 ft long; 6 ft is the most",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "gas-inlet-reduced-past-its-shutoff",
            fires: || {
                gas(|g| {
                    g.fittings[0].heat = Some(200_000.0 * BTU_PER_HOUR);
                    fed(g).connections[0].inlet = Some(PipeSize::ThreeEighths);
                })
            },
            severity: Severity::Stop,
            says: "the 3/8 in inlet of B1 (grill) carries",
            quiet: || gas(|g| fed(g).connections[0].inlet = Some(PipeSize::Half)),
        },
        // Vents.
        Fixture {
            rule: "gas-space-is-vented",
            fires: || gas(|g| g.fittings.retain(|fitting| fitting.look != Look::Vent)),
            severity: Severity::Stop,
            says: "no high vent within 5 in under the counter; natural gas rises",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "vent-lets-enough-through",
            fires: || gas(|g| vents(g).for_each(|vent| vent.needs.free_area = Some(8.0 * SQUARE_INCH))),
            severity: Severity::Warn,
            says: "lets 8 sq in through; 10 sq in is wanted",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "vent-is-left-open",
            fires: || {
                gas(|g| {
                    g.trim = Some(Trim { name: "base".to_owned(), top: inches(32.0), ..Trim::default() });
                })
            },
            severity: Severity::Warn,
            says: "the base covers the lower",
            quiet: || gas(|g| g.trim = Some(Trim { name: "base".to_owned(), top: inches(4.0), ..Trim::default() })),
        },
        Fixture {
            rule: "cylinder-bay-is-vented",
            fires: || gas(|g| fed(g).cylinders.push(cylinder(3, Some(true)))),
            severity: Severity::Stop,
            says: "the cylinder bay D has no opening at its floor; 10 sq in is wanted there",
            quiet: || {
                gas(|g| {
                    fed(g).cylinders.push(cylinder(3, Some(true)));
                    g.legs[0].modules[3].kind = ModuleKind::OpenBay;
                })
            },
        },
        Fixture {
            rule: "cylinder-bay-apart-from-heat",
            fires: || gas(|g| fed(g).cylinders.push(cylinder(1, None))),
            severity: Severity::Stop,
            says: "the cylinder in B stands under a hot appliance, and no partition is between them",
            quiet: || gas(|g| fed(g).cylinders.push(cylinder(2, Some(true)))),
        },
        // Heat.
        Fixture {
            rule: "combustibles-keep-their-distance",
            fires: || {
                gas(|g| {
                    g.site.around.combustibles.push(Combustible {
                        name: "cedar fence".to_owned(),
                        leg: 0,
                        side: Face::Back,
                        distance: inches(6.0),
                        place: None,
                    });
                    g.fittings[0].needs.behind = Some(inches(18.0));
                })
            },
            severity: Severity::Stop,
            says: "cedar fence burns and is",
            quiet: || {
                gas(|g| {
                    g.site.around.combustibles.push(Combustible {
                        name: "cedar fence".to_owned(),
                        leg: 0,
                        side: Face::Back,
                        distance: inches(30.0),
                        place: None,
                    });
                })
            },
        },
        Fixture {
            rule: "nothing-that-burns-overhead",
            fires: || gas(|g| g.site.around.overhead = roof(96.0, Some(true), true)),
            severity: Severity::Stop,
            says: "the pergola burns and is 60 in over the counter",
            quiet: || gas(|g| g.site.around.overhead = roof(108.0, Some(false), true)),
        },
        Fixture {
            rule: "burnable-parts-have-a-liner",
            fires: || {
                gas(|g| {
                    g.frame.material = FrameMaterial::Wood;
                    g.fittings[0].needs.liner = None;
                })
            },
            severity: Severity::Stop,
            says: "hangs in a wooden frame, without an insulated liner",
            quiet: || gas(|g| g.frame.material = FrameMaterial::Wood),
        },
        Fixture {
            rule: "stubs-outside-the-hot-zone",
            fires: || gas(|g| g.site.stubs.push(stub(Service::Power, 41.0, 12.0, Some(30.0)))),
            severity: Severity::Stop,
            says: "the power stub comes 30 in high, into the hot zone",
            quiet: || gas(|g| g.site.stubs.push(stub(Service::Power, 100.0, 12.0, Some(30.0)))),
        },
        Fixture {
            rule: "body-has-its-air-gap",
            fires: || gas(|g| g.fittings[0].body = body(33.25, 21.0, 9.0)),
            severity: Severity::Warn,
            says: "has 1/16 in of air at its sides; 1/4 in is wanted",
            quiet: || gas(|g| g.fittings[0].body = body(32.75, 21.0, 9.0)),
        },
        Fixture {
            rule: "lid-has-room-to-open",
            fires: || {
                gas(|g| {
                    g.legs[0].back = wall("wall", 0.25);
                    g.fittings[0].needs.lid = Some(inches(12.0));
                })
            },
            severity: Severity::Warn,
            says: "behind it; 12 in is wanted",
            quiet: || gas(|g| g.legs[0].back = wall("wall", 0.25)),
        },
        // Landing, reach, height.
        Fixture {
            rule: "landing-beside-heat",
            fires: || gas(|g| g.legs[0].modules[0].width = Width::Fixed(inches(4.0))),
            severity: Severity::Warn,
            says: "24 in on one side and 12 in on the other are wanted",
            quiet: || gas(|g| g.legs[0].modules[0].width = Width::Fixed(inches(20.0))),
        },
        Fixture {
            rule: "landing-beside-water",
            fires: || gas(|g| g.fittings.push(fitting("sink", Look::Sink, 0, well(14.0, 14.0, 0.5, 6.0)))),
            severity: Severity::Warn,
            says: "of clear counter on its left",
            quiet: || gas(|g| g.fittings.push(fitting("sink", Look::Sink, 3, well(14.0, 14.0, 0.5, 6.0)))),
        },
        Fixture {
            rule: "landing-behind-an-island-grill",
            fires: || gas(|g| g.counter.overhang_back = inches(-1.0)),
            severity: Severity::Warn,
            says: "of counter is behind B1 (grill); 9 in is wanted",
            quiet: || gas(|g| g.counter.overhang_back = inches(3.0)),
        },
        Fixture {
            rule: "landing-by-the-refrigerator",
            fires: || gas(|g| g.fittings.push(fitting("sink", Look::Sink, 3, well(25.0, 14.0, 0.5, 6.0)))),
            severity: Severity::Warn,
            says: "is clear at",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "aisle-wide-enough",
            fires: || gas(|g| g.site.around.aisle = Some(inches(40.0))),
            severity: Severity::Warn,
            says: "the aisle is 40 in wide; 48 in is wanted for one cook",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "counter-height-suits-its-people",
            fires: || gas(|g| g.site.around.accessible = true),
            severity: Severity::Warn,
            says: "the counter is 36 in high; 34 in is the highest accessible one",
            quiet: || gas(|g| g.site.around.people.push(person("Ada", 66.0))),
        },
        Fixture {
            rule: "fronts-open-freely",
            fires: || {
                gas(|g| {
                    g.legs[0].right = wall("house", 0.0);
                    g.legs[0].faces.right = bare();
                    g.fittings[6].flange.right = inches(2.5);
                })
            },
            severity: Severity::Warn,
            says: "from the house; 1 in is wanted to open it",
            quiet: || gas(|g| g.legs[0].right = wall("house", 0.25)),
        },
        Fixture {
            rule: "pier-between-openings",
            fires: || {
                gas(|g| {
                    g.fittings.push(fitting(
                        "door",
                        Look::Door { pull_right: true },
                        2,
                        opening(18.5, 4.0, Some(28.0)),
                    ));
                })
            },
            severity: Severity::Note,
            says: "of face is between",
            quiet: || gas(|_| {}),
        },
        // Counter.
        Fixture {
            rule: "counter-span-within-limit",
            fires: || {
                gas(|g| {
                    g.substrate.thickness = inches(0.5);
                    g.counter.thickness = inches(0.75);
                })
            },
            severity: Severity::Warn,
            says: "spans 25 in over module",
            quiet: || gas(|g| g.counter.thickness = inches(0.75)),
        },
        Fixture {
            rule: "counter-overhang-supported",
            fires: || {
                gas(|g| {
                    g.counter.overhang_back = inches(15.0);
                    g.counter.needs.brackets = Some(inches(60.0));
                })
            },
            severity: Severity::Warn,
            says: "on brackets 56 1/2 in apart; 36 in is the most",
            quiet: || bracketed(0.75),
        },
        Fixture {
            rule: "counter-strip-strong-enough",
            fires: || gas(|g| g.fittings[0].cut = rounded(notch(33.375, 31.5, 9.0))),
            severity: Severity::Warn,
            says: "of counter is left behind B1 (grill); 2 1/2 in is the least",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "inside-corner-has-a-radius",
            fires: || gas(|g| g.fittings[0].cut = notch(33.375, 21.25, 9.0)),
            severity: Severity::Warn,
            says: "has inside corners of 0 in radius; 3/8 in is the least",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "seam-clear-of-cutouts",
            fires: || gas(|g| g.counter.seams.push((0, inches(41.0)))),
            severity: Severity::Warn,
            says: "runs through the cutout of B1 (grill)",
            quiet: || gas(|g| g.counter.seams.push((0, inches(74.0)))),
        },
        Fixture {
            rule: "piece-fits-its-slab",
            fires: || gas(|g| g.counter.needs.slab = Some((inches(100.0), inches(60.0)))),
            severity: Severity::Stop,
            says: "the slab gives 100 in by 60 in",
            quiet: || gas(|g| g.counter.needs.slab = Some((inches(126.0), inches(63.0)))),
        },
        Fixture {
            rule: "piece-can-be-lifted",
            fires: || gas(|g| g.counter.needs.lifters = Some(2)),
            severity: Severity::Note,
            says: "for each of 2; 50 lb is the most",
            quiet: || gas(|g| g.counter.needs.lifters = Some(12)),
        },
        Fixture {
            rule: "counter-joint-at-walls",
            fires: || {
                gas(|g| {
                    g.legs[0].back = wall("house", 0.25);
                    g.counter.wall_joint = Length::ZERO;
                })
            },
            severity: Severity::Warn,
            says: "has a joint of 0 in to the house",
            quiet: || gas(|g| g.legs[0].back = wall("house", 0.25)),
        },
        Fixture {
            rule: "frame-stiff-enough-for-its-top",
            fires: || {
                gas(|g| {
                    g.frame.tube = inches(0.75);
                    g.legs[0].modules[0].width = Width::Fixed(inches(70.0));
                })
            },
            severity: Severity::Warn,
            says: "the top rail of module A spans",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "resin-top-out-of-sun-and-heat",
            fires: || gas(|g| g.counter.needs.resin = Some(true)),
            severity: Severity::Warn,
            says: "resin binds the cast concrete, and B1 (grill) is set into it",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "top-thin-enough-to-hang-in",
            fires: || gas(|g| g.fittings[0].needs.most_top = Some(inches(1.25))),
            severity: Severity::Warn,
            says: "the counter is 1 1/2 in thick; B1 (grill) takes 1 1/4 in",
            quiet: || gas(|_| {}),
        },
        // Cladding.
        Fixture {
            rule: "board-carries-its-cladding",
            fires: || gas(|g| veneers(g, |build| build.finish.as_mut().unwrap().mass = 120.0)),
            severity: Severity::Warn,
            says: "weighs 24.6 lb/ft2; the board carries 15 lb/ft2",
            quiet: || {
                gas(|g| {
                    veneers(g, |build| {
                        build.finish.as_mut().unwrap().mass = 120.0;
                        build.carries = Some(150.0);
                    })
                })
            },
        },
        Fixture {
            rule: "framing-close-enough-for-its-board",
            fires: || gas(|g| g.frame.studs = None),
            severity: Severity::Warn,
            says: "from the nearest tube",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "cladding-has-its-joints",
            fires: || {
                gas(|g| {
                    veneers(g, |build| build.finish.as_mut().unwrap().kind = FinishKind::SkimCoat);
                    g.legs[0].modules[0].width = Width::Fixed(inches(120.0));
                })
            },
            severity: Severity::Warn,
            says: "without a joint; 16 ft is the most",
            quiet: || {
                gas(|g| {
                    veneers(g, |build| {
                        build.finish.as_mut().unwrap().kind = FinishKind::SkimCoat;
                        build.joints = Some(inches(96.0));
                    });
                    g.legs[0].modules[0].width = Width::Fixed(inches(120.0));
                })
            },
        },
        Fixture {
            rule: "cladding-clears-the-floor",
            fires: || gas(|g| g.frame.feet.shortest = inches(1.0)),
            severity: Severity::Warn,
            says: "ends 1 in over the floor's high point; 2 in is wanted",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "face-thin-enough-for-its-fitting",
            fires: || {
                gas(|g| {
                    g.fittings[1].flange = Flange { left: inches(0.75), ..Flange::default() };
                    g.fittings[1].needs.most_face = Some(inches(2.0));
                })
            },
            severity: Severity::Warn,
            says: "are 2 1/8 in thick; it takes 2 in",
            quiet: || {
                gas(|g| {
                    g.fittings[1].flange = Flange { left: inches(0.75), ..Flange::default() };
                    g.fittings[1].needs.most_face = Some(inches(2.25));
                })
            },
        },
        // Water and power.
        Fixture {
            rule: "sink-has-water-and-drain",
            fires: || gas(|g| g.fittings.push(fitting("sink", Look::Sink, 3, well(14.0, 14.0, 0.5, 6.0)))),
            severity: Severity::Warn,
            says: "neither water comes up nor a drain goes down in leg leg1",
            quiet: || {
                gas(|g| {
                    g.fittings.push(fitting("sink", Look::Sink, 3, well(14.0, 14.0, 0.5, 6.0)));
                    g.site.stubs.push(stub(Service::Water, 100.0, 24.0, None));
                    g.site.stubs.push(stub(Service::Drain, 104.0, 24.0, None));
                })
            },
        },
        Fixture {
            rule: "power-where-it-is-wanted",
            fires: || gas(|g| g.site.stubs.retain(|stub| stub.service != Service::Power)),
            severity: Severity::Warn,
            says: "no power comes up in leg leg1 for D1 (fridge)",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "power-apart-from-gas",
            fires: || gas(|g| g.site.stubs.push(stub(Service::Gas, 99.0, 24.0, None))),
            severity: Severity::Warn,
            says: "gas and power come up in one bay, module D",
            quiet: || gas(|g| g.site.stubs.push(stub(Service::Gas, 70.0, 28.0, None))),
        },
        // Orders and sequence.
        Fixture {
            rule: "closed-in-service-is-reached",
            fires: || {
                gas(|g| {
                    g.fittings.retain(|fitting| fitting.id != "doors");
                    g.site.stubs.push(stub(Service::Gas, 8.0, 24.0, None));
                })
            },
            severity: Severity::Warn,
            says: "nothing opens within 24 in of where gas comes up, 8 in from the finished left end",
            quiet: || {
                gas(|g| {
                    g.fittings.retain(|fitting| fitting.id != "doors" && fitting.id != "waste");
                    let cut = opening(14.5, 8.0, Some(12.0));
                    g.fittings.push(fitting("panel", Look::Panel, 0, cut));
                    g.site.stubs.push(stub(Service::Gas, 8.0, 24.0, None));
                })
            },
        },
        Fixture {
            rule: "order-says-left-or-right",
            fires: || {
                with(|g| {
                    for fitting in &mut g.fittings {
                        fitting.needs.hinge_right = None;
                    }
                })
            },
            severity: Severity::Warn,
            says: "doesn't say on which side D1 (fridge) is hinged",
            quiet: || with(|_| {}),
        },
        Fixture {
            rule: "order-rests-on-measured-lengths",
            fires: terrace,
            severity: Severity::Note,
            says: "to the frame maker (A1, B1, B2, C1, C2, C3, D1), to the counter fabricator (B1)",
            quiet: measured,
        },
        // Legs that meet, seats, the survey.
        Fixture {
            rule: "run-clears-what-was-surveyed",
            fires: || {
                with(|g| {
                    let post =
                        |x, y| SurveyPost { name: "post".to_owned(), at: (x, y), size: (100.0, 100.0), place: None };
                    g.site.survey.posts.push(post(300.0, 300.0));
                })
            },
            severity: Severity::Stop,
            says: "leg leg1 stands over post",
            quiet: || {
                with(|g| {
                    let post =
                        |x, y| SurveyPost { name: "post".to_owned(), at: (x, y), size: (100.0, 100.0), place: None };
                    g.site.survey.posts.push(post(800.0, -300.0));
                    let points = vec![(-2000.0, 900.0), (5000.0, 900.0)];
                    g.site.survey.walls.push(SurveyWall { name: "wall".to_owned(), points, place: None });
                })
            },
        },
        Fixture {
            rule: "fronts-clear-the-corner",
            fires: || cornered(0.0),
            severity: Severity::Warn,
            says: "to open past leg leg1 and its pulls",
            quiet: || cornered(4.0),
        },
        Fixture {
            rule: "seats-have-knee-space",
            fires: || with(|g| g.legs[0].own.seating = Some(Seating { seats: 3, width: inches(24.0) })),
            severity: Severity::Warn,
            says: "leaves 1 in for knees under a counter 36 in high; 15 in is wanted",
            quiet: || {
                with(|g| {
                    g.legs[0].own.seating = Some(Seating { seats: 3, width: inches(24.0) });
                    g.legs[0].own.overhang_back = Some(inches(15.0));
                })
            },
        },
        Fixture {
            rule: "corner-is-cut-to-its-angle",
            fires: || {
                let mut given = cornered(4.0);
                if let JointKind::Corner(corner) = &mut given.joints[0].kind {
                    corner.turn = 91.4_f64.to_radians();
                }
                given
            },
            severity: Severity::Note,
            says: "meet at 88.6 degrees",
            quiet: || cornered(4.0),
        },
        // Floor.
        Fixture {
            rule: "feet-keep-some-travel",
            fires: || gas(|g| g.frame.feet.longest = inches(4.625)),
            severity: Severity::Note,
            says: "of travel left; 1/4 in is wanted",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "foot-carries-its-load",
            fires: || gas(|g| g.frame.feet.rating = 10.0),
            severity: Severity::Warn,
            says: "on it with all feet of the module bearing; it carries 22 lb",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "foot-carries-a-rocking-module",
            // 60 kg: more than any foot has on it with all bearing.
            fires: || gas(|g| g.frame.feet.rating = 60.0),
            severity: Severity::Warn,
            says: "on it when the module rocks on three feet",
            quiet: || gas(|g| g.frame.feet.rating = 400.0),
        },
        Fixture {
            rule: "trim-hides-the-feet",
            fires: || trimmed(|trim| trim.top = inches(2.5)),
            severity: Severity::Warn,
            says: "laps 1/2 in over the board",
            quiet: || trimmed(|_| {}),
        },
        Fixture {
            rule: "trim-keeps-a-strip",
            fires: || trimmed(|trim| trim.floor_gap = inches(3.0)),
            severity: Severity::Warn,
            says: "1 1/2 in is wanted",
            quiet: || trimmed(|_| {}),
        },
        Fixture {
            rule: "trim-joint-is-backed",
            // Lengths shorter than the way from post to post.
            fires: || trimmed(|trim| trim.stock = vec![inches(15.0)]),
            severity: Severity::Warn,
            says: "without tube behind the joint",
            quiet: || trimmed(|_| {}),
        },
        Fixture {
            rule: "trim-screws-into-tube",
            // So low that it ends under the frame.
            fires: || trimmed(|trim| trim.top = inches(1.75)),
            severity: Severity::Warn,
            says: "has no tube behind it",
            quiet: || trimmed(|_| {}),
        },
        Fixture {
            rule: "floor-sheds-water",
            fires: || gas(|g| g.site.floor = Floor::Level),
            severity: Severity::Warn,
            says: "falls by 0.0 %; 1.0 % is the least",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "drain-stays-open",
            fires: || gas(|g| g.site.around.drains.push((0, inches(5.0), inches(15.0)))),
            severity: Severity::Warn,
            says: "nothing opens before the drain at 5 in",
            quiet: || gas(|g| g.site.around.drains.push((0, inches(40.0), inches(15.0)))),
        },
        Fixture {
            rule: "foot-stands-under-a-tube",
            fires: || {
                gas(|g| {
                    g.frame.feet.inset = inches(2.0);
                    g.fittings[6].cut = opening(26.5, 4.0, None);
                })
            },
            severity: Severity::Warn,
            says: "a foot stands in the opening of D1 (fridge), 1/4 in within its edge",
            quiet: || gas(|_| {}),
        },
        Fixture {
            rule: "stub-comes-up-beside-the-tubes",
            fires: || gas(|g| g.site.stubs.push(stub(Service::Water, 19.0, 20.0, None))),
            severity: Severity::Warn,
            says: "water comes up 19 in along and 20 in deep, where a tube of the bottom frame lies from",
            quiet: || gas(|g| g.site.stubs.push(stub(Service::Water, 10.0, 20.0, None))),
        },
        Fixture {
            rule: "limit-belongs-to-a-rule",
            fires: || gas(|g| g.limits.push(limit("aisle-wide-enogh", "40 in"))),
            severity: Severity::Stop,
            says: "no rule has a limit aisle-wide-enogh",
            quiet: || gas(|g| g.limits.push(limit("aisle-wide-enough", "40 in"))),
        },
    ]
}

/// An L with drawers in both legs beside its inside corner; the second leg starts with a filler of this width.
fn cornered(filler: f64) -> Given {
    let mut given = worked_example();
    let mut second = given.legs[0].clone();
    second.id = "leg2".to_owned();
    second.modules = vec![fixed("C", 24.0), fixed("D", 30.0)];
    if filler > 0.0 {
        second.modules.insert(0, fixed("F", filler));
    }
    given.legs[0].modules.push(fixed("K", 36.0));
    given.legs.push(second);
    let corner = Corner {
        turn: std::f64::consts::FRAC_PI_2,
        through: Through::Left,
        seam: CornerSeam::Butt,
        radius: Length::ZERO,
        inner: CornerShape::Common,
        outer: CornerShape::Common,
    };
    given.joints.push(Joint { left: 0, right: 1, kind: JointKind::Corner(corner), place: None });
    let mut beside = fitting("drawers", Look::Drawers(3), usize::from(filler > 0.0), opening(17.0, 8.0, Some(16.0)));
    beside.leg = 1;
    let mut far = fitting("doors", Look::Doors, 1, opening(20.0, 14.0, Some(12.0)));
    far.across = Across { line: AcrossLine::RightEdge, from: AcrossFrom::FinishedRight, distance: published(6.0) };
    given.fittings.extend([beside, far]);
    given
}

fn found(given: &Given, rule: &str) -> Vec<Finding> {
    let solved = solve(given).expect("a fixture solves");
    rules::check(&solved).into_iter().filter(|finding| finding.rule == rule).collect()
}

#[test]
fn every_rule_has_a_job_that_fires_and_one_that_stays_quiet() {
    let fixtures = fixtures();
    for rule in rules::ALL {
        assert!(fixtures.iter().any(|fixture| fixture.rule == rule.name), "{} has no fixture", rule.name);
        assert!(rule.name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{}", rule.name);
        assert!(!rule.about.is_empty() && !rule.why.is_empty() && !rule.instead.is_empty(), "{}", rule.name);
    }
    let mut wrong: Vec<String> = Vec::new();
    for fixture in fixtures {
        assert!(rules::ALL.iter().any(|rule| rule.name == fixture.rule), "{} is no rule", fixture.rule);
        let told = |found: &[Finding]| found.iter().map(|f| f.message.clone()).collect::<Vec<_>>();
        let fired = found(&(fixture.fires)(), fixture.rule);
        let gravest = fired.iter().map(|f| f.severity).max();
        if gravest != Some(fixture.severity) || !fired.iter().any(|f| f.message.contains(fixture.says)) {
            wrong.push(format!("{} fires with {gravest:?}: {:#?}", fixture.rule, told(&fired)));
        }
        assert!(fired.iter().all(|f| !f.instead.is_empty()), "{}", fixture.rule);
        let quiet = found(&(fixture.quiet)(), fixture.rule);
        if !quiet.is_empty() {
            wrong.push(format!("{} is not quiet: {:#?}", fixture.rule, told(&quiet)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_look_sheets_run_has_nothing_that_stops() {
    let found: Vec<Finding> = rules::check(&solve(&safe()).unwrap());
    assert!(found.is_empty(), "{found:#?}");
}

/// Arms are placed under a grill whatever it weighs; without its weight they are said to be unchecked, by name and what to write.
#[test]
fn arms_under_a_fitting_without_a_weight_are_said_to_be_unchecked() {
    let said = |given: Given| -> Vec<Finding> {
        let found = rules::check(&solve(&given).unwrap());
        found.into_iter().filter(|one| one.rule == "support-is-strong-enough").collect()
    };
    assert_eq!(said(safe()), []);
    let mut given = safe();
    given.fittings[0].mass = None;
    let arms = |given: &Given| {
        let solved = solve(given).unwrap();
        solved.shop.supports.members.iter().filter(|one| one.role == SupportRole::Arm).count()
    };
    assert_eq!(arms(&given), 2);
    let found = said(given);
    assert_eq!(found.len(), 1, "{found:#?}");
    let (words, severity) = (&found[0].message, found[0].severity);
    assert_eq!(severity, Severity::Warn);
    assert!(words.starts_with("`weight` is not given for ") && words.contains("(grill)"), "{words}");
    assert!(words.contains("support-is-strong-enough, support-is-stiff-enough"), "{words}");
    assert!(found[0].instead.contains("`weight: \"135 lb\"`"), "{}", found[0].instead);
    // What carries next to nothing hangs on no arm, and needs no weight.
    let mut given = safe();
    for fitting in given.fittings.iter_mut().filter(|one| one.look == Look::Refrigerator) {
        fitting.mass = None;
    }
    assert_eq!(said(given), []);
}

#[test]
fn every_input_that_is_lacking_is_named_once_and_nothing_passes_for_it() {
    type Strip = (&'static str, fn(&mut Given));
    let strip: [Strip; 13] = [
        ("weight", |g| g.fittings[0].mass = None),
        ("services", |g| g.services = None),
        ("services.fuel", |g| fed(g).fuel = None),
        ("services.supply", |g| fed(g).supply = None),
        ("services.drop", |g| fed(g).drop = None),
        ("services.pipe", |g| fed(g).pipe.clear()),
        ("services.connections", |g| fed(g).connections.clear()),
        ("services.connections.connector", |g| fed(g).connections[0].connector = None),
        ("grill.heat", |g| g.fittings[0].heat = None),
        ("site.overhead", |g| g.site.around.overhead = Overhead::Unsaid),
        ("site.aisle", |g| g.site.around.aisle = None),
        ("substrate.combustible", |g| {
            g.substrate.combustible = None;
            g.fittings[0].needs.liner = None;
        }),
        ("grill.most_top", |g| g.fittings[0].needs.most_top = None),
    ];
    for (input, take) in strip {
        let mut given = safe();
        take(&mut given);
        let found = rules::check(&solve(&given).unwrap());
        let said: Vec<&Finding> =
            found.iter().filter(|f| f.message.starts_with(&format!("`{input}` is not given"))).collect();
        assert_eq!(said.len(), 1, "{input}: {found:#?}");
        assert!(said[0].message.contains("can't be checked") && !said[0].instead.is_empty(), "{input}");
    }
}

#[test]
fn every_limit_can_be_read_and_a_job_may_set_each() {
    let mut names = std::collections::BTreeSet::new();
    for rule in rules::ALL {
        for limit in rule.limits {
            let value = faceline::units::reading::quantity(limit.value);
            assert!(value.is_ok(), "{}: {}", rule.limit_name(limit), limit.value);
            assert!(names.insert(rule.limit_name(limit)), "{} comes twice", rule.limit_name(limit));
        }
    }
    let mut given = safe();
    given.site.around.aisle = Some(inches(44.0));
    assert_eq!(found(&given, "aisle-wide-enough").len(), 1);
    given.limits.push(limit("aisle-wide-enough", "42 in"));
    assert!(found(&given, "aisle-wide-enough").is_empty());
    given.limits[0] = limit("aisle-wide-enough", "3 lb");
    assert_eq!(found(&given, "limit-belongs-to-a-rule").len(), 1);
}

#[test]
fn what_is_from_memory_alone_never_stops() {
    for rule in rules::ALL {
        let memory = rule.origin == faceline::findings::Origin::FromMemory;
        assert!(!memory || rule.severity < Severity::Stop, "{}", rule.name);
    }
}

#[test]
fn the_gravest_come_first() {
    let mut given = terrace();
    given.frame.feet.longest = inches(3.0);
    given.legs[0].room = Some(inches(110.0));
    let found = rules::check(&solve(&given).unwrap());
    assert!(found.is_sorted_by(|a, b| a.severity >= b.severity));
    assert_eq!(found[0].rule, "run-fits-its-site");
}

#[test]
fn a_strip_at_the_counters_back_is_worth_a_word() {
    let mut given = measured();
    given.fittings[0].cut = notch(33.375, 30.5, 9.0);
    let found = found(&given, "cutouts-keep-a-strip-between-them");
    assert!(
        found.iter().any(|f| f.severity == Severity::Warn && f.message.contains("the counter's back edge")),
        "{found:#?}"
    );
}

/// Slabs are counted by the usual one, 120 by 63 in, where the job names none: a piece that it doesn't give is told.
#[test]
fn a_piece_that_the_usual_slab_does_not_give_is_told_and_the_count_says_so() {
    let made = |width: f64| {
        let mut given = worked_example();
        given.counter.material = CounterMaterial::Stone;
        given.counter.needs.slab = None;
        given.legs[0].modules[0].width = Width::Fixed(inches(width));
        solve(&given).unwrap()
    };
    let told = |solved: &Solved| {
        let found = rules::check(solved);
        let own: Vec<_> = found.into_iter().filter(|one| one.rule == "piece-fits-its-slab").collect();
        own.iter().map(|one| (one.severity, one.message.contains("usual slab"))).collect::<Vec<_>>()
    };
    let how = |solved: &Solved| {
        let line = solved.shop.quantities.iter().find(|line| line.order_unit.starts_with("slab")).unwrap();
        line.how.contains("no such slab takes Piece 1")
    };
    // 42 in of the second module, about 6 in of build-ups and overhangs.
    let (short, long) = (made(18.0), made(90.0));
    assert!(short.legs[0].counter.pieces[0].extent.width() < inches(120.0));
    assert!(long.legs[0].counter.pieces[0].extent.width() > inches(120.0));
    assert_eq!((told(&short), how(&short)), (vec![], false));
    assert_eq!((told(&long), how(&long)), (vec![(Severity::Warn, true)], true));
}
