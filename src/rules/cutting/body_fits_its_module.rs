//! A body that doesn't fit behind its cutout: between the posts, before the back, clear of its neighbours.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{BodyBox, Face, Fitting, FittingKind, Leg, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "body-fits-its-module",
    severity: Severity::Stop,
    about: "A fitting's body, with the clearance it needs, fits the clear inside of its module beside the other bodies.",
    why: "A cutout can be right and the fitting still not go in: a tube, the back board or another fitting is in its way.",
    instead: "make the module wider or the frame deeper, or move one of the fittings",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            if let Some(body) = &fitting.body {
                findings.extend(inside(solved, leg, fitting, body));
            }
        }
        // Fittings are listed module by module.
        for module in leg.fittings.chunk_by(|a, b| a.module == b.module) {
            for (at, first) in module.iter().enumerate() {
                findings.extend(module[at + 1..].iter().filter_map(|second| against(solved, first, second)));
            }
        }
    }
    findings
}

/// Against posts, back and bottom. A body stands between the posts, and ends before the tubes of the far side.
fn inside(solved: &Solved, leg: &Leg, fitting: &Fitting, body: &BodyBox) -> Option<Finding> {
    let (d, tube) = (&leg.datums, solved.frame.tube);
    let module = leg.modules.get(fitting.module)?;
    let (left, right) = (module.left + tube, module.right - tube);
    let (near, far) = (d.frame_face + tube, d.frame_back - tube);
    let well = fitting.kind == FittingKind::Well;
    let mut sides: Vec<(Length, &str)> = Vec::new();
    match fitting.face {
        Face::Front | Face::Back => {
            sides.push((left - body.u.0, "the left post"));
            sides.push((body.u.1 - right, "the right post"));
        }
        Face::Left => sides.push((body.u.1 - right, "the far post")),
        Face::Right => sides.push((left - body.u.0, "the far post")),
    }
    if well || fitting.face != Face::Back {
        sides.push((body.v.1 - far, "the back of the frame"));
    }
    if well || fitting.face != Face::Front {
        sides.push((near - body.v.0, "the front of the frame"));
    }
    if !fitting.to_floor {
        sides.push((d.frame_bottom - body.z.0, "the bottom of the frame"));
    } else {
        sides.push((body.z.1 - fitting.top.unwrap_or(d.frame_top), "the top of its opening"));
    }
    let (over, what) = sides.into_iter().max_by_key(|(over, _)| *over)?;
    let lacking = over + fitting.clearance;
    if lacking <= Length::ZERO {
        return None;
    }
    let plain = |length| solved.show.plain(length);
    let (severity, message) = if over > Length::ZERO {
        (Severity::Stop, format!("the body of {} reaches {} past {what}", named(fitting), plain(over)))
    } else {
        let found = plain(-over);
        let wanted = plain(fitting.clearance);
        (Severity::Warn, format!("the body of {} has {found} clear to {what}; it needs {wanted}", named(fitting)))
    };
    Some(RULE.finding(
        severity,
        fitting.subject(),
        fitting.place.as_ref(),
        format!(
            "{message} (clear inside of module {}: {} wide, {} deep)",
            module.id,
            plain(right - left),
            plain(far - d.frame_face)
        ),
        format!("give it {} more there", plain(lacking)),
    ))
}

/// Two bodies of one module, each with its clearance; the greater one counts between them.
fn against(solved: &Solved, a: &Fitting, b: &Fitting) -> Option<Finding> {
    let (one, two) = (a.body.as_ref()?, b.body.as_ref()?);
    let apart = |p: (Length, Length), q: (Length, Length)| (q.0 - p.1).max(p.0 - q.1);
    let clear = apart(one.u, two.u).max(apart(one.v, two.v)).max(apart(one.z, two.z));
    let wanted = a.clearance.max(b.clearance);
    if clear >= wanted {
        return None;
    }
    let plain = |length| solved.show.plain(length);
    let (severity, found) = if clear < Length::ZERO {
        (Severity::Stop, format!("run {} into one another", plain(-clear)))
    } else {
        (Severity::Warn, format!("are {} apart", plain(clear)))
    };
    Some(RULE.finding(
        severity,
        a.subject(),
        a.place.as_ref(),
        format!("the bodies of {} and {} {found}; {} is wanted between them", named(a), named(b), plain(wanted)),
        format!("move them {} farther apart, or choose one that is less deep", plain(wanted - clear)),
    ))
}
