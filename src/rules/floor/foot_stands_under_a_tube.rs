//! A foot with nothing over it, or in the way of what rolls in.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{Face, Foot, Leg, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "foot-stands-under-a-tube",
    severity: Severity::Warn,
    about: "A foot stands under a tube of the bottom frame or under a post, and none within an opening that reaches the floor.",
    why: "A foot beside its tube has nothing to push against, and one in an opening keeps the appliance from sliding in.",
    instead: "write the feet's inset as half the tube, so that they stand under its middle",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    let plain = |length| solved.show.plain(length);
    for (at, leg) in solved.legs.iter().enumerate() {
        for (index, foot) in leg.feet.iter().enumerate() {
            let blocked = leg.fittings_of(foot.module).iter().find(|fitting| {
                let (from, to) = (fitting.left, fitting.right);
                fitting.to_floor && matches!(fitting.face, Face::Front | Face::Back) && from < foot.u && foot.u < to
            });
            if let Some(fitting) = blocked {
                let message = format!(
                    "a foot stands in the opening of {}, {} within its edge",
                    named(fitting),
                    plain((foot.u - fitting.left).min(fitting.right - foot.u))
                );
                let (severity, subject) = (Severity::Warn, Subject::Foot(at, index));
                findings.push(RULE.finding(severity, subject, fitting.place.as_ref(), message, RULE.instead));
            }
        }
        let beside: Vec<(usize, &Foot)> =
            leg.feet.iter().enumerate().filter(|(_, foot)| !is_under_a_tube(leg, foot)).collect();
        if let Some(&(index, foot)) = beside.first() {
            let of = &leg.modules[foot.module].id;
            let message = format!(
                "{} of {} feet of leg {} stand beside the bottom frame's tubes, the first at {} in module {of}",
                beside.len(),
                leg.feet.len(),
                leg.id,
                plain(foot.u)
            );
            let instead = "write the feet's inset as half the tube, or weld a plate between the tubes over each";
            findings.push(RULE.finding(Severity::Note, Subject::Foot(at, index), leg.place.as_ref(), message, instead));
        }
    }
    findings
}

/// Whether a tube of the frame's bottom, or a post, lies over a foot's middle.
fn is_under_a_tube(leg: &Leg, foot: &Foot) -> bool {
    let within = |range: (Length, Length), at: Length| range.0 <= at && at <= range.1;
    let bottom = leg.datums.frame_bottom;
    let tubes = leg.members_of(foot.module..=foot.module).iter().map(|member| &member.body);
    tubes.filter(|body| body.z.0 == bottom).any(|body| within(body.u, foot.u) && within(body.v, foot.v))
}
