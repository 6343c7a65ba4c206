//! Counter outlines against reference values.
//!
//! Every case goes through the construction that the counter uses (bites set into a polygon's edges, corners rounded
//! last, holes): areas, perimeters, centroid, volume, weight. Cases of one straight leg also go through the whole solver
//! here, and with them the pieces at seams; those with corners of their own, clips, slanted ends, two or more legs, and
//! all mitred offsets, do so in `tests/corners.rs`. Between the two, every case does.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::geometry::{Outline, Region};
use faceline::parameters::given::*;
use faceline::solve::counter::mass;
use faceline::solve::slab::{Bite, Corner, bitten, outline};
use faceline::solve::solve;
use faceline::units::Length;
use serde_json::Value;
use support::reference::{cases, compare, compare_all, id, number, points};
use support::{bare, fitting, fixed, inches, open, published, wall, worked_example};

const MM: f64 = 25.4;
/// Kilograms in a pound, by definition.
const POUND: f64 = 0.45359237;
/// Kilograms per cubic metre in a pound per cubic foot.
const DENSITY: f64 = POUND / (0.3048 * 0.3048 * 0.3048);

fn list<'a>(input: &'a Value, key: &str) -> &'a [Value] {
    input.get(key).and_then(Value::as_array).map_or(&[], Vec::as_slice)
}

fn get(value: &Value, key: &str) -> f64 {
    number(value, key).unwrap_or_else(|| panic!("{key} is missing in {value}"))
}

/// The region of a case in mm, and the outline without its notches.
fn region(input: &Value) -> (Region, Outline) {
    let radius = |index: usize| input["corner_radius_in"].get(index.to_string()).and_then(Value::as_f64).unwrap_or(0.0);
    let corners: Vec<Corner> = points(&input["outline_in"])
        .iter()
        .enumerate()
        .map(|(at, p)| Corner { x: p[0] * MM, y: p[1] * MM, radius: radius(at) * MM })
        .collect();
    let whole = outline(&corners);
    let mut bitten_corners = corners;
    for side in ["front", "back"] {
        let y = bitten_corners.iter().map(|c| c.y).fold(f64::NAN, if side == "front" { f64::min } else { f64::max });
        let inwards = if side == "front" { 1.0 } else { -1.0 };
        let bites: Vec<Bite> = list(input, "notches")
            .iter()
            .filter(|notch| notch["edge"] == side)
            .map(|notch| Bite {
                x0: get(notch, "x0") * MM,
                x1: (get(notch, "x0") + get(notch, "w")) * MM,
                y: y + inwards * get(notch, "depth") * MM,
                mouth: 0.0,
                inner: get(notch, "r") * MM,
            })
            .collect();
        let count = bitten_corners.len();
        let level = |at: &usize| bitten_corners[*at].y == y && bitten_corners[(at + 1) % count].y == y;
        if let Some(edge) = (0..count).find(level).filter(|_| !bites.is_empty()) {
            bitten_corners = bitten(&bitten_corners, edge, &bites);
        }
    }
    let holes = list(input, "cutouts").iter().map(hole).collect();
    (Region { outer: outline(&bitten_corners), holes }, whole)
}

fn hole(cut: &Value) -> Outline {
    if cut["kind"] == "circle" {
        return Outline::from_circle(get(cut, "cx") * MM, get(cut, "cy") * MM, get(cut, "d") / 2.0 * MM);
    }
    let (x, y, w, h, r) = (get(cut, "x"), get(cut, "y"), get(cut, "w"), get(cut, "h"), get(cut, "r"));
    Outline::from_corners(x * MM, y * MM, (x + w) * MM, (y + h) * MM).rounded(|_| r * MM)
}

fn held(case: &Value, region: &Region, whole: Option<&Outline>, mass: f64) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let square = MM * MM;
    let holes: f64 = region.holes.iter().map(Outline::perimeter).sum();
    let (x, y) = region.centroid();
    if let Some(whole) = whole {
        compare(case, expected, "gross_area_in2", whole.area() / square);
        compare(case, expected, "removed_area_in2", (whole.area() - region.area()) / square);
    }
    compare(case, expected, "net_area_in2", region.area() / square);
    compare(case, expected, "outer_perimeter_in", region.outer.perimeter() / MM);
    compare(case, expected, "cutout_perimeter_in", holes / MM);
    compare(case, expected, "centroid_x_in", x / MM);
    compare(case, expected, "centroid_y_in", y / MM);
    compare(case, expected, "volume_ft3", region.area() / square * get(input, "thickness_in") / 1728.0);
    assert!(compare(case, expected, "weight_lb", mass / POUND), "{}", id(case));
}

#[test]
fn outlines_by_construction() {
    for case in cases("geometry") {
        let input = &case["input"];
        let (region, whole) = region(input);
        let volume = region.area() * get(input, "thickness_in") * MM;
        held(&case, &region, Some(&whole), mass(volume, get(input, "density_lb_ft3") * DENSITY));
    }
}

/// A case as a job: one bare box, no overhangs. `None` for what `tests/corners.rs` states: another outline than a box
/// from the origin, a radius at other corners than the front or all four, a radius with a notch (its mouth is rounded
/// too).
fn job(input: &Value) -> Option<Given> {
    let corners = points(&input["outline_in"]);
    let (width, depth) = (corners.get(1)?[0], corners.get(2)?[1]);
    let square = [[0.0, 0.0], [width, 0.0], [width, depth], [0.0, depth]];
    if corners.len() != 4 || corners.iter().zip(square).any(|(a, b)| a[0] != b[0] || a[1] != b[1]) {
        return None;
    }
    let radius = |at: usize| input["corner_radius_in"].get(at.to_string()).and_then(Value::as_f64).unwrap_or(0.0);
    let radii = [0, 1, 2, 3].map(radius);
    let (notches, cutouts) = (list(input, "notches"), list(input, "cutouts"));
    let against_wall = radii[2] == 0.0;
    let stated = radii[0] == radii[1] && radii[2] == radii[3] && (against_wall || radii[2] == radii[0]);
    if !stated || (radii[0] > 0.0 && !notches.is_empty()) {
        return None;
    }
    let mut given = worked_example();
    given.frame.depth = inches(depth);
    let counter = &mut given.counter;
    counter.thickness = inches(get(input, "thickness_in"));
    counter.density = get(input, "density_lb_ft3") * DENSITY;
    counter.corner_radius = inches(radii[0]);
    counter.wall_joint = Length::ZERO;
    for overhang in [
        &mut counter.overhang_front,
        &mut counter.overhang_left,
        &mut counter.overhang_right,
        &mut counter.overhang_back,
    ] {
        *overhang = Length::ZERO;
    }
    for seam in list(input, "seams") {
        let (from, to) = (&seam["from"], &seam["to"]);
        if from[0] != to[0] {
            return None;
        }
        counter.seams.push((0, inches(from[0].as_f64()?)));
    }
    let leg = &mut given.legs[0];
    leg.faces = Faces { front: bare(), left: bare(), right: bare(), back: bare() };
    leg.modules = vec![fixed("M", width)];
    leg.back = if against_wall { wall("wall", 0.0) } else { open() };
    let placed = |at: usize, look, left: f64, cut| {
        let mut one = fitting(&format!("f{at}"), look, 0, cut);
        one.across = Across { line: AcrossLine::LeftEdge, from: AcrossFrom::FinishedLeft, distance: published(left) };
        one
    };
    given.fittings.clear();
    for (at, notch) in notches.iter().enumerate() {
        if notch["edge"] == "back" {
            given.counter.notches.push(Notch {
                leg: 0,
                name: "post".to_owned(),
                cut: NotchCut::Edge {
                    edge: Face::Back,
                    along: inches(get(notch, "x0")),
                    width: inches(get(notch, "w")),
                    depth: inches(get(notch, "depth")),
                },
                radius: inches(get(notch, "r")),
                place: None,
            });
            continue;
        }
        let mut cut = support::notch(get(notch, "w"), get(notch, "depth"), 9.0);
        if let Cut::Notch { radius, .. } = &mut cut {
            *radius = inches(get(notch, "r"));
        }
        given.fittings.push(placed(at, Look::Grill, get(notch, "x0"), cut));
    }
    for (at, cut) in cutouts.iter().enumerate() {
        let at = at + notches.len();
        let one = if cut["kind"] == "circle" {
            let d = get(cut, "d");
            let well = Cut::Well {
                shape: WellShape::Circle { diameter: published(d) },
                line: DepthLine::Centre,
                setback: published(get(cut, "cy")),
                setback_from: DepthFrom::FinishedFace,
            };
            placed(at, Look::SideBurner, get(cut, "cx") - d / 2.0, well)
        } else {
            let well = support::well(get(cut, "w"), get(cut, "h"), get(cut, "r"), get(cut, "y"));
            placed(at, Look::Sink, get(cut, "x"), well)
        };
        given.fittings.push(one);
    }
    Some(given)
}

#[test]
fn straight_legs_through_the_whole_solver() {
    let mut compared = 0;
    for case in cases("geometry") {
        let Some(given) = job(&case["input"]) else { continue };
        let solved = solve(&given).unwrap_or_else(|problems| panic!("{}: {problems:?}", id(&case)));
        let counter = &solved.legs[0].counter;
        let mass: f64 = counter.pieces.iter().map(|piece| piece.mass).sum();
        held(&case, &counter.region, None, mass);
        let areas: Vec<f64> = counter.pieces.iter().map(|piece| piece.region.area() / MM / MM).collect();
        let masses: Vec<f64> = counter.pieces.iter().map(|piece| piece.mass / POUND).collect();
        compare_all(&case, "seam_piece_areas_in2", &areas);
        compare_all(&case, "seam_piece_weights_lb", &masses);
        compared += 1;
    }
    // s01, s02, s07 and s08; the others in `tests/corners.rs`.
    assert_eq!(compared, 4, "cases of one straight leg");
}

#[test]
fn pieces_add_up_to_the_whole_wherever_the_seams_fall() {
    for seam in [9.0, 12.0, 20.0, 27.5, 48.0, 66.0, 70.0, 74.9] {
        let input = serde_json::json!({
            "outline_in": [[0, 0], [96, 0], [96, 30], [0, 30]],
            "notches": [{"edge": "front", "x0": 33, "w": 30.5, "depth": 23.25, "r": 0.5}],
            "cutouts": [
                {"kind": "rect", "x": 10, "y": 6, "w": 17.5, "h": 15.25, "r": 1.5},
                {"kind": "circle", "cx": 70.25, "cy": 14, "d": 9.5}
            ],
            "thickness_in": 1.25, "density_lb_ft3": 165, "seams": [{"from": [seam, -5], "to": [seam, 35]}]
        });
        let solved = solve(&job(&input).expect("a straight leg")).expect("it solves");
        let counter = &solved.legs[0].counter;
        let sum: f64 = counter.pieces.iter().map(|piece| piece.region.area()).sum();
        assert!((sum - counter.region.area()).abs() < 1e-6, "seam at {seam}: {sum}, {}", counter.region.area());
        assert_eq!(counter.pieces.len(), 2);
    }
}
