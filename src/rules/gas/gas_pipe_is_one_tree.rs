//! Pipe that doesn't lead from one source to every appliance.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Rule};
use crate::solve::Solved;
use crate::solve::services::sizing::Fault;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-pipe-is-one-tree",
    severity: Severity::Warn,
    about: "The pipe leads from one source to every appliance that burns gas, by one way each.",
    why: "What isn't on the diagram isn't counted, and pipe that feeds more than was counted starves the farthest appliance.",
    instead: "write every segment with the point that it comes from and the point that it leads to",
    origin: Origin::Standard("2018 IFGC 402.4.1 and appendix A.3 (longest-length method)"),
    concerns: Concern::Gas,
    limits: &[],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.services.is_none() {
        return super::unsaid(solved);
    }
    super::piped(solved)
        .filter(|services| services.pipe.is_empty())
        .map(|services| {
            let instead = "write `pipe: [(id: \"1\", from: \"meter\", to: \"grill\", length: \"38 ft\", elbows: 3)]`";
            Lack::of_safety("services.pipe", Subject::Services, services.place.as_ref(), instead)
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let told = |fault: &Fault| {
        let (subject, place, message, instead) = match fault {
            Fault::SeveralSources(points) => (
                Subject::Services,
                services.place.as_ref(),
                format!("the pipe begins at {} points: {}", points.len(), points.join(", ")),
                "let every segment but the first begin where another ends".to_owned(),
            ),
            Fault::FedTwice(point) => (
                Subject::Services,
                services.place.as_ref(),
                format!("two segments lead to {point}"),
                "a point is fed by one segment".to_owned(),
            ),
            Fault::Circle(point) => (
                Subject::Services,
                services.place.as_ref(),
                format!("the pipe goes round in a circle through {point}"),
                "let the segments lead away from the source".to_owned(),
            ),
            Fault::LeadsNowhere(index) => {
                let segment = services.pipe.get(*index);
                let (id, to) = segment.map_or(("", ""), |segment| (segment.id.as_str(), segment.to.as_str()));
                (
                    Subject::Segment(*index),
                    segment.and_then(|segment| segment.place.as_ref()),
                    format!(
                        "segment {id} ends at {to}, which is neither an appliance nor the start of another segment"
                    ),
                    "let it end at a fitting's id or a load's, or add what hangs there under `loads`".to_owned(),
                )
            }
            Fault::NotReached(id) => {
                let appliance = services.appliances.iter().find(|appliance| appliance.id == *id);
                let place = appliance.and_then(|appliance| appliance.place.as_ref());
                (
                    Subject::Services,
                    place,
                    format!("no pipe leads to {id}"),
                    format!("add a segment with `to: \"{id}\"`; `fuel: electric` or `solid` if it burns no gas"),
                )
            }
        };
        RULE.finding(Severity::Warn, subject, place, message, instead)
    };
    services.faults.iter().map(told).collect()
}
