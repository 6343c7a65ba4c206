//! A pipe or a cable behind boards, with nothing that opens before it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Face, Fitting, Leg, Look, ModuleKind, Service, Solved, Stub};
use crate::units::Length;

const REACH: Limit = Limit::new("", "24 in", "along the run from a front that opens to what has to be reached");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "closed-in-service-is-reached",
    severity: Severity::Warn,
    about: "Once the boards are on, a hand still gets to every pipe and cable that comes up in the run.",
    why: "A shutoff, a trap or a splice that is closed in is reached only by breaking the face.",
    instead: "set a door or an access panel there, or move the stub",
    origin: Origin::FromMemory,
    concerns: Concern::Orders,
    limits: &[REACH],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let reach = RULE.length(solved, &REACH);
    let mut findings = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        for stub in leg.stubs.iter().filter(|stub| !is_reached(leg, stub, reach)) {
            let service = match stub.service {
                Service::Gas => "gas",
                Service::Power => "power",
                Service::Water => "water",
                Service::Drain => "the drain",
            };
            let at = leg.modules.iter().position(|module| module.left <= stub.u && stub.u < module.right);
            let subject = at.map_or(Subject::Leg(index), |at| Subject::Module(index, at));
            let message = format!(
                "nothing opens within {} of where {service} comes up, {} from the finished left end: once the boards are on it is closed in",
                solved.show.plain(reach),
                solved.show.plain(stub.u)
            );
            let instead = "set an access panel before it, or move it behind a door";
            findings.push(RULE.finding(Severity::Warn, subject, stub.place.as_ref(), message, instead));
        }
    }
    findings
}

/// Whether a hand gets to a stub: through a front that opens near it, an open bay, or a long face without boards that
/// nothing stands behind.
fn is_reached(leg: &Leg, stub: &Stub, reach: Length) -> bool {
    let near = |left: Length, right: Length| stub.u >= left - reach && stub.u <= right + reach;
    let open_bay =
        leg.modules.iter().any(|module| module.kind == ModuleKind::OpenBay && near(module.left, module.right));
    let bare = |face: Face| leg.build(face).board == Length::ZERO && (face == Face::Front || leg.back.is_open());
    let opens = |fitting: &Fitting| match fitting.face {
        Face::Front | Face::Back => opens(fitting, stub.service) && near(fitting.left, fitting.right),
        // Through an end, from that end.
        Face::Left => opens(fitting, stub.service) && stub.u <= reach,
        Face::Right => opens(fitting, stub.service) && stub.u >= leg.datums.finished_right - reach,
    };
    open_bay || bare(Face::Front) || bare(Face::Back) || leg.fittings.iter().any(opens)
}

/// A front that gives way to a hand. A drawer that is taken out lets a cable be reached, but is no way to a shutoff or to
/// a trap in a hurry.
fn opens(fitting: &Fitting, service: Service) -> bool {
    match fitting.look {
        Look::Door { .. } | Look::Doors | Look::Panel | Look::Refrigerator => true,
        Look::Drawers(_) | Look::WastePullOut => service == Service::Power,
        _ => false,
    }
}
