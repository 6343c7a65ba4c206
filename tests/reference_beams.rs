//! Beams and sections against independent values: the reference cases (closed forms that three other programs confirm),
//! published worked examples, and printed tables of sections. Inches, pounds-force and psi, or newtons and millimetres,
//! as each source has them: the formulas take any consistent units.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::solve::beams::{Beam, Held, Load, Section, Shape};
use serde_json::Value;
use support::reference::{cases, compare, id, number};

fn get(value: &Value, key: &str) -> f64 {
    number(value, key).unwrap_or_else(|| panic!("{key} is missing in {value}"))
}

fn shape(of: &Value) -> Shape {
    let (width, height) = (get(of, "b_in"), get(of, "h_in"));
    let wall = || get(of, "t_in");
    match of["kind"].as_str() {
        Some("rect") => Shape::Rectangle { width, height },
        Some("box") => Shape::Tube { width, height, wall: wall() },
        Some("angle") => Shape::Angle { width, height, wall: wall() },
        Some("channel") => Shape::Channel { width, height, wall: wall() },
        other => panic!("no section {other:?}"),
    }
}

fn beam(input: &Value, section: &Section) -> Beam {
    let (span, over) = (get(input, "L_in"), number(input, "overhang_in").unwrap_or(0.0));
    let held = match input["kind"].as_str() {
        Some("simple") => Held::Simple,
        Some("cantilever") => Held::Cantilever,
        Some("overhang") => Held::Overhang(span),
        other => panic!("no beam {other:?}"),
    };
    let length = span + over;
    let mut loads = Vec::new();
    if let Some(point) = input.get("point") {
        loads.push(Load::Point { force: get(point, "P_lbf"), at: get(point, "at_in") });
    }
    if let Some(by_length) = number(input, "udl_lbf_in") {
        loads.push(Load::Even { by_length, from: 0.0, to: length });
    }
    Beam { held, length, stiffness: get(input, "E_psi") * section.inertia, loads }
}

/// Source: `tests/reference/beams.json`. Every key of every case is compared, so that none goes by unseen.
#[test]
fn every_key_of_every_reference_case() {
    for case in cases("beams") {
        let (input, expected) = (&case["input"], &case["expected"]);
        let section = shape(&input["section"]).section();
        let of_section = [
            ("A_in2", section.area),
            ("Ixx_in4", section.inertia),
            ("ybar_in", section.centroid),
            ("c_in", section.extreme),
            ("S_in3", section.modulus()),
        ];
        for (key, found) in of_section {
            assert!(compare(&case, &expected["section"], key, found), "{} {key} is missing", id(&case));
        }
        assert_eq!(expected["section"].as_object().unwrap().len(), of_section.len(), "{}", id(&case));

        let beam = beam(input, &section);
        let (bent, (left, right)) = (beam.bent(), beam.reactions());
        let at_support = if let Held::Overhang(at) = beam.held { bent.moment(at).abs() } else { f64::NAN };
        let found = [
            ("M_max_lbf_in", bent.greatest_moment()),
            ("M_at_support_lbf_in", at_support),
            ("V_max_lbf", bent.greatest_shear()),
            ("reaction_left_lbf", left),
            ("reaction_right_lbf", right),
            ("deflection_tip_in", bent.tip()),
            ("deflection_max_in", bent.greatest_deflection()),
            ("deflection_mid_in", bent.middle()),
            ("stress_max_psi", bent.greatest_moment() / section.modulus()),
        ];
        let compared = found.iter().filter(|(key, found)| compare(&case, expected, key, *found)).count();
        assert_eq!(compared + 1, expected.as_object().unwrap().len(), "{}: a key was not compared", id(&case));
    }
}

fn close(found: f64, published: f64, within: f64) {
    assert!((found - published).abs() <= within, "published {published}, found {found}");
}

/// Source: a published worked example of a cantilever, in newtons and millimetres: 3000 N at the end of 5000 mm,
/// I 8.196e7 mm4, E 200 GPa, 150 mm to the extreme fibre: 7.6 mm, 27.4 MPa (recomputed: 7.626, 27.45).
#[test]
fn published_cantilever() {
    let beam = Beam {
        held: Held::Cantilever,
        length: 5000.0,
        stiffness: 200e3 * 8.196e7,
        loads: vec![Load::Point { force: 3000.0, at: 5000.0 }],
    };
    close(beam.bent().greatest_moment(), 1.5e7, 1.0);
    close(beam.bent().tip(), 7.626, 5e-4);
    close(beam.bent().greatest_moment() * 150.0 / 8.196e7, 27.45, 6e-3);
}

/// Source: a published worked example of a simple beam in inches: a wide-flange beam of 285 in4, 100 in long, 100 lbf/in,
/// E 29e6 psi, 6.25 in to the extreme fibre: 2741 psi, 0.0158 in.
#[test]
fn published_simple_beam_in_inches() {
    let beam = Beam {
        held: Held::Simple,
        length: 100.0,
        stiffness: 29e6 * 285.0,
        loads: vec![Load::Even { by_length: 100.0, from: 0.0, to: 100.0 }],
    };
    close(beam.bent().greatest_moment() * 6.25 / 285.0, 2741.0, 0.5);
    close(beam.bent().middle(), 0.0158, 5e-5);
}

/// Source: the same in metric: 6 N/mm on 5000 mm, I 8.196e7 mm4, E 200 GPa, 150 mm: 34.3 MPa, 2.98 mm.
#[test]
fn published_simple_beam_in_millimetres() {
    let beam = Beam {
        held: Held::Simple,
        length: 5000.0,
        stiffness: 200e3 * 8.196e7,
        loads: vec![Load::Even { by_length: 6.0, from: 0.0, to: 5000.0 }],
    };
    close(beam.bent().greatest_moment() * 150.0 / 8.196e7, 34.3, 0.05);
    close(beam.bent().greatest_deflection(), 2.98, 5e-3);
}

/// Source: printed tables of sections (angles from a member table, 2 x 1 tubes from a tube table), in2, in4, in3.
#[test]
fn printed_tables_of_sections() {
    let angle = |width, height, wall| Shape::Angle { width, height, wall }.section();
    let tube = |width, height, wall| Shape::Tube { width, height, wall }.section();
    for (section, area, inertia, modulus) in [
        (angle(2.0, 2.0, 0.125), 0.484, 0.190, 0.131),
        (angle(2.0, 2.0, 0.25), 0.938, 0.348, 0.247),
        (angle(3.0, 3.0, 0.25), 1.44, 1.24, 0.577),
        (tube(1.0, 2.0, 0.083), 0.4704, 0.2379, 0.2379),
    ] {
        close(section.area, area, 5e-3);
        close(section.inertia, inertia, inertia * 6e-3);
        close(section.modulus(), modulus, modulus * 6e-3);
    }
    close(tube(1.0, 2.0, 0.12).inertia, 0.3213, 1e-4);
    close(angle(1.5, 2.0, 0.125).inertia, 0.17, 5e-3);
    close(angle(2.0, 3.0, 0.1875).inertia, 0.83, 0.015);
}

/// Source: the design case of the trade facts, section 8 (computed there): a grill and food of 350 lbf on two arms, 175 lbf
/// evenly on each, 24 in deep: stress in ksi and deflection in inches as a cantilever, deflection with a post at the front.
#[test]
fn arms_of_the_design_case() {
    let (steel, aluminium) = (29e6, 10.1e6);
    let angle = |wall| Shape::Angle { width: 2.0, height: 2.0, wall };
    let square = |side, wall| Shape::Tube { width: side, height: side, wall };
    for (shape, elasticity, ksi, sag, propped) in [
        (angle(0.125), aluminium, 16.0, 0.158, 0.016),
        (angle(0.25), aluminium, 8.5, 0.086, 0.009),
        (square(2.0, 0.125), aluminium, 3.8, 0.054, 0.006),
        (square(1.5, 0.12), steel, 7.4, 0.049, 0.005),
        (angle(0.125), steel, 16.0, 0.055, 0.006),
    ] {
        let section = shape.section();
        let arm = |held| Beam {
            held,
            length: 24.0,
            stiffness: elasticity * section.inertia,
            loads: vec![Load::Even { by_length: 175.0 / 24.0, from: 0.0, to: 24.0 }],
        };
        let (hung, on_post) = (arm(Held::Cantilever), arm(Held::Simple));
        close(hung.bent().greatest_moment() / section.modulus() / 1e3, ksi, 0.08);
        close(hung.bent().tip(), sag, sag * 0.015);
        close(on_post.bent().greatest_deflection(), propped, 5.1e-4);
    }
}

/// By hand: a force on part of a beam bends it as many forces close together do, and it matters where they stand.
#[test]
fn an_even_load_on_a_part_is_the_sum_of_its_points() {
    let even = Load::Even { by_length: 4.0, from: 5.0, to: 15.0 };
    let points: Vec<Load> =
        (0..100).map(|k| Load::Point { force: 0.4, at: 5.0 + (f64::from(k) + 0.5) / 10.0 }).collect();
    for held in [Held::Simple, Held::Cantilever, Held::Overhang(18.0)] {
        let of = |loads| Beam { held, length: 24.0, stiffness: 1e6, loads };
        let (one, many) = (of(vec![even]), of(points.clone()));
        close(one.bent().greatest_moment(), many.bent().greatest_moment(), 2e-2);
        close(one.bent().greatest_deflection(), many.bent().greatest_deflection(), 1e-6);
        assert!(one.bent().greatest_deflection() > 1e-4);
    }
}
