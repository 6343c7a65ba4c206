//! A shutoff that can't be reached when it is needed.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::{Connection, Face, Fitting, Leg, Look, ModuleKind, Solved};
use crate::units::Length;

const REACH: Limit = Limit::new("", "6 ft", "from the appliance to its shutoff");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-shutoff-within-reach",
    severity: Severity::Stop,
    about: "Each gas appliance has a shutoff of its own near it, reached through a front that opens, outside the hot zone.",
    why: "A shutoff over the fire, or behind a board, is none when the connector fails.",
    instead: "bring the shutoff into a bay with a door beside the appliance, below its body",
    origin: Origin::Trade("IFGC 409.5.1 as quoted in trade pages; reach through a door and hot zone: grill manuals"),
    concerns: Concern::Gas,
    limits: &[REACH],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.services.is_none() {
        return super::unsaid(solved);
    }
    let without =
        super::burners(solved).filter(|fitting| connection(solved, fitting).and_then(|c| c.shutoff).is_none());
    without
        .map(|fitting| {
            let instead = format!(
                "write `connections: [(fitting: \"{}\", shutoff: (along: \"…\", depth: \"…\", height: \"…\"))]`",
                fitting.id
            );
            Lack::of_safety("services.connections", fitting.subject(), fitting.place.as_ref(), &instead)
                .for_what(format!("the shutoff of {}", named(fitting)))
        })
        .collect()
}

fn connection<'s>(solved: &'s Solved, fitting: &Fitting) -> Option<&'s Connection> {
    solved.services.as_ref()?.connections.iter().find(|connection| connection.fitting == fitting.id)
}

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            let Some(connection) = connection(solved, fitting) else { continue };
            let Some(point) = connection.shutoff else { continue };
            let place = connection.place.as_ref();
            let plain = |length| solved.show.plain(length);
            let mut tell = |severity, message: String, instead: &str| {
                findings.push(RULE.finding(severity, fitting.subject(), place, message, instead));
            };
            let away = distance(fitting, leg, point);
            let reach = RULE.length(solved, &REACH);
            if away > reach {
                let message = format!(
                    "the shutoff of {} is {} from it; {} is the most",
                    named(fitting),
                    plain(away),
                    plain(reach)
                );
                tell(Severity::Warn, message, "move the shutoff nearer to its appliance");
            }
            if leg
                .fittings
                .iter()
                .any(|hot| crate::rules::hot::is_hot(hot) && crate::rules::hot::zone_holds(leg, hot, point))
            {
                let message = format!("the shutoff of {} lies in the hot zone", named(fitting));
                tell(Severity::Stop, message, "move it below the body, or into a bay beside it");
            }
            if !reached(leg, point.0) {
                let message = format!("nothing in the front opens before the shutoff of {}", named(fitting));
                tell(Severity::Warn, message, "move it behind a door, or set an access panel there");
            }
        }
    }
    findings
}

/// From a point to the nearest of a fitting's body, or of its cutout.
fn distance(fitting: &Fitting, leg: &Leg, (u, v, z): (Length, Length, Length)) -> Length {
    let off = |at: Length, (low, high): (Length, Length)| (low - at).max(at - high).max(Length::ZERO).mm();
    let across = (fitting.left, fitting.right);
    let back = fitting.back.unwrap_or(leg.datums.frame_back);
    let down = (fitting.bottom.unwrap_or(leg.datums.frame_top), leg.datums.counter_top);
    let (us, vs, zs) = fitting.body.map_or((across, (Length::ZERO, back), down), |body| (body.u, body.v, body.z));
    Length::from_mm(off(u, us).hypot(off(v, vs)).hypot(off(z, zs)))
}

/// Whether a hand gets to this place along the run: a front that opens, or an open bay, in its module.
fn reached(leg: &Leg, u: Length) -> bool {
    let Some(at) = leg.modules.iter().position(|module| module.left <= u && u < module.right) else { return false };
    let opens = |fitting: &Fitting| {
        let look = matches!(fitting.look, Look::Door { .. } | Look::Doors | Look::Panel | Look::Refrigerator);
        fitting.module == at && look && matches!(fitting.face, Face::Front | Face::Back)
    };
    leg.modules[at].kind == ModuleKind::OpenBay || leg.fittings.iter().any(opens)
}
