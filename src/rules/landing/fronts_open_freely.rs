//! Doors and drawers that hit a wall, a post, a corner or one another.

use crate::findings::{Finding, Origin, Severity};
use crate::geometry::LegPoint;
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::{BoundKind, Face, Fitting, JointKind, Leg, Look, Solved};
use crate::units::Length;

const FILLER: Limit = Limit::new("", "1 in", "from a front that opens to a wall, pier or post at the end of the run");
/// A drawer whose body isn't known comes out this far: 22 in, common practice.
const DRAWER: Length = Length::from_sixty_fourths(22 * 64);

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "fronts-open-freely",
    severity: Severity::Warn,
    about: "Doors open and drawers come out without meeting what stands at the end of the run, another leg, or one another.",
    why: "Pulls stand proud of their fronts: beside a wall or in a corner a front stops before it is open.",
    instead: "set a filler there, hinge the door on the other side, or move the front away from the corner",
    origin: Origin::Trade("cabinet planners' pages: an inch of filler at a wall"),
    concerns: Concern::Landing,
    limits: &[FILLER],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for fitting in leg.fittings.iter().filter(|fitting| reach(fitting).is_some()) {
            findings.extend(at_the_end(solved, leg, fitting));
        }
    }
    findings.extend(in_the_corner(solved));
    findings
}

/// How far a front comes out when it opens; `None` for what stays where it is.
fn reach(fitting: &Fitting) -> Option<Length> {
    if !matches!(fitting.face, Face::Front | Face::Back) {
        return None;
    }
    let leaf = fitting.width() + fitting.flange.left + fitting.flange.right;
    match fitting.look {
        Look::Door { .. } | Look::Refrigerator => Some(leaf),
        Look::Doors => Some(leaf.half()),
        Look::Drawers(_) | Look::WastePullOut => Some(fitting.body.as_ref().map_or(DRAWER, |body| body.v.1 - body.v.0)),
        _ => None,
    }
}

/// A front beside what stands at an end of the leg.
fn at_the_end(solved: &Solved, leg: &Leg, fitting: &Fitting) -> Option<Finding> {
    let filler = RULE.length(solved, &FILLER);
    let (hinge_left, hinge_right) = match fitting.look {
        Look::Door { pull_right } => (pull_right, !pull_right),
        _ => (true, true),
    };
    let left = fitting.left - fitting.flange.left - leg.left.at_counter.max(leg.left.at);
    let right = leg.right.at_counter.min(leg.right.at) - fitting.right - fitting.flange.right;
    let tight = [(&leg.left, left, hinge_left), (&leg.right, right, hinge_right)]
        .into_iter()
        // What stands near another leg is told by the rule for corners.
        .filter(|(bound, ..)| bound.kind != BoundKind::Leg)
        .filter(|(bound, room, hinged)| !bound.is_open() && *hinged && *room < filler)
        .min_by_key(|(_, room, _)| *room)?;
    let plain = |length| solved.show.plain(length);
    let (found, name) = (plain(tight.1), &tight.0.name);
    let message = format!("{} is {found} from the {name}; {} is wanted to open it", named(fitting), plain(filler));
    Some(RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead))
}

type Quad = [(f64, f64); 4];

/// Fronts that open into another leg, or into a front of another leg.
fn in_the_corner(solved: &Solved) -> Vec<Finding> {
    if solved.legs.len() < 2 {
        return Vec::new();
    }
    let quad = |leg: &Leg, u: (Length, Length), v: (Length, Length)| -> Quad {
        [(u.0, v.0), (u.1, v.0), (u.1, v.1), (u.0, v.1)].map(|(u, v)| {
            let point = leg.placement.to_plan(LegPoint::new(u.mm(), v.mm()));
            (point.x, point.y)
        })
    };
    let opened: Vec<Vec<(&Fitting, Quad)>> = solved
        .legs
        .iter()
        .map(|leg| {
            let fronts = leg.fittings.iter().filter_map(|fitting| {
                let (reach, d) = (reach(fitting)?, &leg.datums);
                let u = (fitting.left - fitting.flange.left, fitting.right + fitting.flange.right);
                let v = if fitting.face == Face::Front {
                    (-reach, Length::ZERO)
                } else {
                    (d.finished_back, d.finished_back + reach)
                };
                Some((fitting, quad(leg, u, v)))
            });
            fronts.collect()
        })
        .collect();
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let e = &leg.counter.extent;
        let body = quad(leg, (e.x0, e.x1), (leg.datums.counter_front, e.y1));
        for (other, fronts) in opened.iter().enumerate().filter(|(other, _)| *other != at) {
            // What opens past the face of a leg that it meets in an inside corner is told by the rule for corners.
            let told = meet_inside(solved, at, other);
            for (fitting, zone) in fronts {
                let told = told && fitting.face == Face::Front;
                let met = if !told && meet(zone, &body) {
                    format!("the counter of leg {}", leg.id)
                } else if let Some((second, _)) =
                    opened[at].iter().filter(|_| other < at).find(|(_, second)| meet(zone, second))
                {
                    format!("{} when both are open", named(second))
                } else {
                    continue;
                };
                let message = format!("{} opens into {met}", named(fitting));
                findings.push(RULE.finding(
                    Severity::Warn,
                    fitting.subject(),
                    fitting.place.as_ref(),
                    message,
                    RULE.instead,
                ));
            }
        }
    }
    findings
}

/// Whether two legs meet in a corner that the cook stands in.
fn meet_inside(solved: &Solved, one: usize, other: usize) -> bool {
    solved.joints.iter().any(|joint| {
        let inside = matches!(&joint.kind, JointKind::Corner(corner) if corner.turn > 0.0);
        inside && ((joint.left, joint.right) == (one, other) || (joint.left, joint.right) == (other, one))
    })
}

/// Whether the insides of two rectangles of any turn share more than a millimetre: no side of either parts them.
fn meet(a: &Quad, b: &Quad) -> bool {
    let parted = |one: &Quad, two: &Quad| {
        (0..2).any(|side| {
            let (p, q) = (one[side], one[side + 1]);
            let length = (q.0 - p.0).hypot(q.1 - p.1).max(1e-9);
            let along = ((q.0 - p.0) / length, (q.1 - p.1) / length);
            let span = |quad: &Quad| {
                let on = quad.map(|point| point.0 * along.0 + point.1 * along.1);
                (on.iter().copied().fold(f64::MAX, f64::min), on.iter().copied().fold(f64::MIN, f64::max))
            };
            let (x, y) = (span(one), span(two));
            x.1 < y.0 + 1.0 || y.1 < x.0 + 1.0
        })
    };
    !parted(a, b) && !parted(b, a)
}
