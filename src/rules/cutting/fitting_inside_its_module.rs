//! A cutout wider than its module, or off to one side of it.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{Face, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "fitting-inside-its-module",
    severity: Severity::Stop,
    about: "A fitting's cutout lies between the edges of the module that carries it.",
    why: "Beyond the module's edge stand the posts of two frames.",
    instead: "make the module wider, or place the fitting elsewhere",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (leg, fitting) in fittings(solved) {
        let Some(module) = leg.modules.get(fitting.module) else { continue };
        let d = &leg.datums;
        let (low, high, what) = match fitting.face {
            Face::Front | Face::Back => (module.left, module.right, format!("module {}", module.id)),
            Face::Left | Face::Right => (d.frame_face, d.frame_back, "the frame's depth".to_owned()),
        };
        let plain = |length| solved.show.plain(length);
        let (under, over) = (low - fitting.left, fitting.right - high);
        if under <= Length::ZERO && over <= Length::ZERO {
            continue;
        }
        let (wide, room) = (fitting.width(), high - low);
        let (message, instead) = if wide > room {
            (
                format!("{} is {} wide, {what} is {}", named(fitting), plain(wide), plain(room)),
                format!("make it at least {} wide, posts and gaps not counted", plain(wide)),
            )
        } else {
            let by = under.max(over);
            (
                format!("{} reaches {} past the edge of {what}", named(fitting), plain(by)),
                format!("move it by at least {}, posts and gaps not counted", plain(by)),
            )
        };
        findings.push(RULE.finding(Severity::Stop, fitting.subject(), fitting.place.as_ref(), message, instead));
    }
    findings
}
