//! A flange with nothing behind it to screw to.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{BodyBox, Extent, Face, Fitting, FittingKind, Leg, OpeningSort, Plane, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "flange-finds-its-backing",
    severity: Severity::Warn,
    about: "A post or a backing tube lies behind both sides of a fitting's flange.",
    why: "Screws through the flange hold in the board alone, and pull out of it under a heavy door or full drawers.",
    instead: "make the module wider so that a tube fits beside the cutout, or pack the gap to the post with flat bar",
    origin: Origin::CommonPractice,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (leg, fitting) in fittings(solved) {
        if fitting.kind != FittingKind::Opening(OpeningSort::Fitting) {
            continue;
        }
        let Some(cut) = fitting.cutout(Plane::of(fitting.face)) else { continue };
        let sides = [("left", fitting.flange.left), ("right", fitting.flange.right)];
        let bare: Vec<(&str, Length, Option<Length>)> = sides
            .into_iter()
            .filter(|(_, lap)| *lap > Length::ZERO)
            .filter_map(|(side, lap)| {
                let nearest = nearest(leg, fitting, &cut.extent, side == "left");
                nearest.is_none_or(|gap| gap >= lap).then_some((side, lap, nearest))
            })
            .collect();
        let Some(&(side, lap, gap)) = bare.first() else { continue };
        let which = if bare.len() == 2 { "both sides" } else { side };
        let plain = |length| solved.show.plain(length);
        let stands = match gap {
            Some(gap) => format!("the nearest tube stands {} off the cutout", plain(gap)),
            None => "no tube stands beside the cutout".to_owned(),
        };
        let which = if bare.len() == 2 { which.to_owned() } else { format!("the {which}") };
        findings.push(RULE.finding(
            Severity::Warn,
            fitting.subject(),
            fitting.place.as_ref(),
            format!("nothing backs the flange of {} on {which}: it laps {}, {stands}", named(fitting), plain(lap)),
            RULE.instead,
        ));
    }
    findings
}

/// How far from a cutout's side the next tube stands that runs along a good part of it, in its board's layer.
fn nearest(leg: &Leg, fitting: &Fitting, cut: &Extent, left: bool) -> Option<Length> {
    let d = &leg.datums;
    let in_layer = |body: &BodyBox| match fitting.face {
        Face::Front => body.v.0 == d.frame_face && body.v.1 < d.frame_back,
        Face::Back => body.v.1 == d.frame_back && body.v.0 > d.frame_face,
        Face::Left => body.u.0 == d.frame_left && body.u.1 < d.frame_right,
        Face::Right => body.u.1 == d.frame_right && body.u.0 > d.frame_left,
    };
    // Tubes of the next module count: its post lies just as well behind a flange.
    let near = fitting.module.saturating_sub(1)..=(fitting.module + 1).min(leg.modules.len().saturating_sub(1));
    let gaps =
        leg.members_of(near).iter().map(|member| &member.body).filter(|body| in_layer(body)).filter_map(|body| {
            let x = if matches!(fitting.face, Face::Front | Face::Back) { body.u } else { body.v };
            let (low, high) = (body.z.0.max(cut.y0), body.z.1.min(cut.y1));
            let along = (high - low) * 3 >= cut.y1 - cut.y0;
            let gap = if left { cut.x0 - x.1 } else { x.0 - cut.x1 };
            (along && gap >= Length::ZERO).then_some(gap)
        });
    gaps.min()
}
