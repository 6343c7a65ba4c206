//! A cutout in front of a post, or through a rail of the box.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{Cutout, Extent, Fitting, FittingKind, Leg, Member, Plane, Role, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cutout-clears-frame-members",
    severity: Severity::Stop,
    about: "A cutout keeps the rough gap off the posts and rails of its box.",
    why: "The fitting's body meets the tube behind the hole.",
    instead: "make the module wider, move the cutout, or break the rail and frame round it",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        let boxes = by_module(leg);
        for fitting in &leg.fittings {
            let members = boxes.get(fitting.module).copied().unwrap_or_default();
            if let Some((need, what, post)) = worst(solved, leg, fitting, members) {
                let gap = solved.frame.rough_gap;
                let plain = |length| solved.show.plain(length);
                let meets = need > gap;
                let found = if meets {
                    format!("meets {what} by {}", plain(need - gap))
                } else {
                    format!("stands {} off {what}", plain(gap - need))
                };
                let severity = if meets && post { Severity::Stop } else { Severity::Warn };
                findings.push(RULE.finding(
                    severity,
                    fitting.subject(),
                    fitting.place.as_ref(),
                    format!("{} {found}; the rough gap wanted is {}", named(fitting), plain(gap)),
                    format!("give it {} more, by a wider module or another place", plain(need)),
                ));
            }
        }
    }
    findings
}

/// The members of each module: they are listed module by module.
fn by_module(leg: &Leg) -> Vec<&[Member]> {
    let mut boxes: Vec<&[Member]> = vec![&[]; leg.modules.len()];
    for run in leg.members.chunk_by(|a, b| a.module == b.module) {
        if let Some(own) = run.first().and_then(|member| boxes.get_mut(member.module)) {
            *own = run;
        }
    }
    boxes
}

/// The member that a fitting's cutouts come too near to: how much is lacking (more than the gap where they meet), which
/// it is, and whether it is a post.
fn worst(solved: &Solved, leg: &Leg, fitting: &Fitting, members: &[Member]) -> Option<(Length, &'static str, bool)> {
    let gap = solved.frame.rough_gap;
    let mut found: Option<(Length, &'static str, bool)> = None;
    let mut note = |lacking: Length, what, post| {
        if lacking > Length::ZERO && found.is_none_or(|(known, _, was_post)| (post, lacking) > (was_post, known)) {
            found = Some((lacking, what, post));
        }
    };
    for cutout in &fitting.cutouts {
        for member in members.iter().filter(|member| member.role != Role::Backing) {
            let Some(seen) = face_of(member, cutout, leg) else { continue };
            note(lacking(&cutout.extent, &seen, gap), words(member), member.role == Role::Post);
        }
        // The top rail was broken for an opening that reaches up to it; that is worth a word.
        let board = !matches!(cutout.plane, Plane::Counter | Plane::Substrate);
        if board && fitting.kind != FittingKind::Notch {
            let rail = leg.datums.frame_top - solved.frame.tube;
            if cutout.extent.y0 < leg.datums.frame_top {
                note(cutout.extent.y1 + gap - rail, "the top rail", false);
            }
        }
    }
    found
}

fn words(member: &Member) -> &'static str {
    if member.role == Role::Post { "a post" } else { "a rail" }
}

/// A member as it lies behind a cutout's sheet, in that sheet's plane; `None` when it doesn't lie right behind it.
fn face_of(member: &Member, cutout: &Cutout, leg: &Leg) -> Option<Extent> {
    let (u, v, z, d) = (member.body.u, member.body.v, member.body.z, &leg.datums);
    let flat = |x: (Length, Length), y: (Length, Length)| Extent { x0: x.0, x1: x.1, y0: y.0, y1: y.1 };
    match cutout.plane {
        Plane::FrontBoard => (v.0 == d.frame_face && v.1 < d.frame_back).then(|| flat(u, z)),
        Plane::BackBoard => (v.1 == d.frame_back && v.0 > d.frame_face).then(|| flat(u, z)),
        Plane::LeftBoard => (u.0 == d.frame_left && u.1 < d.frame_right).then(|| flat(v, z)),
        Plane::RightBoard => (u.1 == d.frame_right && u.0 > d.frame_left).then(|| flat(v, z)),
        Plane::Counter => None,
        Plane::Substrate => (z.1 == d.frame_top).then(|| flat(u, v)),
    }
}

/// How much is lacking between a cutout and a member to keep the gap; more than the gap where they meet, nothing
/// where they are clear.
fn lacking(cut: &Extent, member: &Extent, gap: Length) -> Length {
    let apart = (member.x0 - cut.x1).max(cut.x0 - member.x1).max(member.y0 - cut.y1).max(cut.y0 - member.y1);
    gap - apart
}
