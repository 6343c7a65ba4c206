//! A counter that runs into a surveyed wall or post, or into the way of a door.

use crate::findings::{Finding, Origin, Place, Severity, Subject};
use crate::geometry::{LegPoint, Outline, PlanPoint};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Leg, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "run-clears-what-was-surveyed",
    severity: Severity::Stop,
    about: "No counter or frame crosses a wall or stands over a post or a step as they were surveyed, and no door swings into it.",
    why: "What was measured on the site is what the run has to fit, whatever the sketch said.",
    instead: "move or turn the first leg with `at`, or check the survey",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

/// Rounding of a survey, mm.
const SURVEY: f64 = 1.0;
/// Straight steps that a door's way is checked in.
const SWINGS: usize = 12;

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let rings = [ring(leg, &leg.counter.region.outer), frame(leg)];
        let mut say = |what: String, place: Option<&Place>| {
            let message = format!("leg {} {what}", leg.id);
            findings.push(RULE.finding(
                Severity::Stop,
                Subject::Leg(index),
                place.or(leg.place.as_ref()),
                message,
                RULE.instead,
            ));
        };
        for wall in &solved.survey.walls {
            if wall.points.windows(2).any(|pair| rings.iter().any(|ring| cuts(ring, pair[0], pair[1]))) {
                say(format!("runs into {} as it was surveyed", wall.name), wall.place.as_ref());
            }
        }
        for post in &solved.survey.posts {
            let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
            let corners = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)];
            let sides = (0..4).map(|at| (corners[at], corners[(at + 1) % 4]));
            let met = |ring: &[(f64, f64)]| sides.clone().any(|(a, b)| cuts(ring, a, b)) || inside(ring, post.at);
            if met(&rings[0]) {
                say(format!("stands over {} as it was surveyed", post.name), post.place.as_ref());
            } else if met(&rings[1]) {
                // A counter may be notched round a post; a frame is not.
                say(format!("has its frame where {} stands", post.name), post.place.as_ref());
            }
        }
        for step in &solved.survey.steps {
            if cuts(&rings[1], step.from, step.to) {
                say("has its frame across a step in the floor".to_owned(), step.place.as_ref());
            }
        }
        for door in &solved.survey.doors {
            let swept = (0..=SWINGS).map(|at| {
                let turn = door.shut + door.opens * at as f64 / SWINGS as f64;
                (door.hinge.0 + door.width * turn.cos(), door.hinge.1 + door.width * turn.sin())
            });
            if swept.into_iter().any(|tip| rings.iter().any(|ring| cuts(ring, door.hinge, tip))) {
                say(format!("stands in the way of {}", door.name), door.place.as_ref());
            }
        }
    }
    findings
}

/// An outline of a leg in plan, shrunk by nothing, as points.
fn ring(leg: &Leg, outline: &Outline) -> Vec<(f64, f64)> {
    let point = |(x, y)| leg.placement.to_plan(LegPoint::new(x, y));
    outline.flattened(SURVEY / 4.0).into_iter().map(point).map(|p: PlanPoint| (p.x, p.y)).collect()
}

fn frame(leg: &Leg) -> Vec<(f64, f64)> {
    let d = &leg.datums;
    ring(leg, &Outline::from_corners(d.frame_left.mm(), d.frame_face.mm(), d.frame_right.mm(), d.frame_back.mm()))
}

/// Whether a stretch runs through a ring by more than the survey's rounding.
fn cuts(ring: &[(f64, f64)], a: (f64, f64), b: (f64, f64)) -> bool {
    let count = 64;
    (0..=count).any(|at| {
        let share = f64::from(at) / f64::from(count);
        let p = (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share);
        inside(ring, p) && distance(ring, p) > SURVEY
    })
}

fn inside(ring: &[(f64, f64)], p: (f64, f64)) -> bool {
    let mut within = false;
    for (at, a) in ring.iter().enumerate() {
        let b = ring[(at + 1) % ring.len()];
        if (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1) {
            within = !within;
        }
    }
    within
}

/// Distance of a point from a ring.
fn distance(ring: &[(f64, f64)], p: (f64, f64)) -> f64 {
    let mut least = f64::INFINITY;
    for (at, a) in ring.iter().enumerate() {
        let b = ring[(at + 1) % ring.len()];
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let long = dx * dx + dy * dy;
        let share = if long > 0.0 { (((p.0 - a.0) * dx + (p.1 - a.1) * dy) / long).clamp(0.0, 1.0) } else { 0.0 };
        least = least.min((p.0 - a.0 - share * dx).hypot(p.1 - a.1 - share * dy));
    }
    least
}
