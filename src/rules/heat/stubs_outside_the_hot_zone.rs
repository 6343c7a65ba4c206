//! Pipe or cable that comes up where it gets hot.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::{is_hot, zone, zone_holds};
use crate::rules::{Concern, Lack, Rule, named};
use crate::solve::{Fitting, Leg, Service, Solved, Stub};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "stubs-outside-the-hot-zone",
    severity: Severity::Stop,
    about: "Gas and power come up outside the space that a hot body and its clearance take: below it, or in a bay beside it.",
    why: "Insulation melts, and sealant lets go, where nobody looks.",
    instead: "end the stub below the body, or bring it up in the bay beside it",
    origin: Origin::Trade("builders' guides and grill manuals"),
    concerns: Concern::Heat,
    limits: &[],
    needs,
    check,
};

/// Gas and power stubs in the plan of a hot fitting's zone.
fn beneath(solved: &Solved) -> impl Iterator<Item = (&Leg, &Fitting, &Stub, &'static str)> {
    let hot = solved
        .legs
        .iter()
        .flat_map(|leg| leg.fittings.iter().filter(|fitting| is_hot(fitting)).map(move |fitting| (leg, fitting)));
    hot.flat_map(|(leg, fitting)| {
        let (us, vs, _) = zone(leg, fitting);
        let within =
            leg.stubs.iter().filter(move |stub| us.0 < stub.u && stub.u < us.1 && vs.0 < stub.v && stub.v < vs.1);
        within.filter_map(move |stub| match stub.service {
            Service::Gas => Some((leg, fitting, stub, "gas")),
            Service::Power => Some((leg, fitting, stub, "power")),
            Service::Water | Service::Drain => None,
        })
    })
}

fn needs(solved: &Solved) -> Vec<Lack> {
    let unknown = beneath(solved).filter(|(_, _, stub, _)| stub.z.is_none());
    unknown
        .map(|(_, fitting, stub, word)| {
            let instead = "write how high it comes, as `height: \"6 in\"` over the floor";
            Lack::of_safety("site.stubs.height", fitting.subject(), stub.place.as_ref(), instead)
                .for_what(format!("the {word} stub under {}", named(fitting)))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let hot = beneath(solved)
        .filter(|(leg, fitting, stub, _)| stub.z.is_some_and(|z| zone_holds(leg, fitting, (stub.u, stub.v, z))));
    hot.map(|(leg, fitting, stub, word)| {
        let plain = |length| solved.show.plain(length);
        let (_, _, under) = zone(leg, fitting);
        let height = plain(stub.z.unwrap_or_default());
        RULE.finding(
            Severity::Stop,
            fitting.subject(),
            stub.place.as_ref(),
            format!(
                "the {word} stub comes {height} high, into the hot zone of {}, which begins at {}",
                named(fitting),
                plain(under)
            ),
            RULE.instead,
        )
    })
    .collect()
}
