//! A service that comes up where a tube of the frame lies.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{BodyBox, Leg, Service, Solved, Stub};
use crate::units::Length;

const CLEAR: Limit = Limit::new("", "1 in", "from the middle of a stub to the next tube of the bottom frame");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "stub-comes-up-beside-the-tubes",
    severity: Severity::Warn,
    about: "Gas, water, drain and power come up clear of the frame's bottom tubes.",
    why: "The stub is cast in before the frame comes: what stands on it has to be cut on site.",
    instead: "move the stub before it is cast in, or the module's edges",
    origin: Origin::CommonPractice,
    concerns: Concern::WaterAndPower,
    limits: &[CLEAR],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let clear = RULE.length(solved, &CLEAR);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for stub in &leg.stubs {
            let Some(tube) = tubes(leg, stub).find(|body| meets(body, stub.u, stub.v, clear)) else { continue };
            let service = match stub.service {
                Service::Gas => "gas",
                Service::Power => "power",
                Service::Water => "water",
                Service::Drain => "the drain",
            };
            let where_to = match nearest(leg, stub, clear) {
                Some((u, v)) => {
                    format!("the nearest clear place is {} along and {} deep", plain(u), plain(v))
                }
                None => RULE.instead.to_owned(),
            };
            let module = leg.modules.iter().position(|module| module.left <= stub.u && stub.u < module.right);
            findings.push(RULE.finding(
                Severity::Warn,
                module.map_or(Subject::Leg(at), |module| Subject::Module(at, module)),
                stub.place.as_ref(),
                format!(
                    "{service} comes up {} along and {} deep, where a tube of the bottom frame lies from {} to {} along",
                    plain(stub.u),
                    plain(stub.v),
                    plain(tube.u.0),
                    plain(tube.u.1)
                ),
                where_to,
            ));
        }
    }
    findings
}

/// The tubes of a leg's bottom that a stub may meet: all under its height where that is given, else those at the bottom.
fn tubes<'a>(leg: &'a Leg, stub: &Stub) -> impl Iterator<Item = &'a BodyBox> {
    let bottom = leg.datums.frame_bottom;
    let high = stub.z.unwrap_or(bottom).max(bottom);
    leg.members.iter().map(|member| &member.body).filter(move |body| body.z.0 <= high)
}

fn meets(body: &BodyBox, u: Length, v: Length, clear: Length) -> bool {
    let in_range = |range: (Length, Length), at: Length| range.0 - clear < at && at < range.1 + clear;
    in_range(body.u, u) && in_range(body.v, v)
}

/// The nearest place to a stub that is clear of the bottom's tubes and still under the frame: moved along, or in depth.
fn nearest(leg: &Leg, stub: &Stub, clear: Length) -> Option<(Length, Length)> {
    let d = &leg.datums;
    let ends = |body: &BodyBox| {
        [(body.u.0 - clear, stub.v), (body.u.1 + clear, stub.v), (stub.u, body.v.0 - clear), (stub.u, body.v.1 + clear)]
    };
    let free = |&(u, v): &(Length, Length)| {
        let within = d.frame_left <= u && u <= d.frame_right && d.frame_face <= v && v <= d.frame_back;
        within && !tubes(leg, stub).any(|body| meets(body, u, v, clear))
    };
    let away = |&(u, v): &(Length, Length)| (u - stub.u).abs() + (v - stub.v).abs();
    tubes(leg, stub).flat_map(ends).filter(free).min_by_key(away)
}
