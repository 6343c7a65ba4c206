//! Pipe too small for what hangs on it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Rule};
use crate::solve::services::equation::HIGHEST;
use crate::solve::services::{Segment, Services};
use crate::solve::{PipeSize, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-pipe-carries-its-load",
    severity: Severity::Stop,
    about: "Every segment of gas pipe carries the whole input of all that hangs on it, over the length to the farthest \
            appliance with its fittings, within the drop that is allowed.",
    why: "An undersized pipe starves burners: they lift, soot or go out while gas still flows. All burn at once unless it is \
          shown otherwise. Propane past 60 ft is computed from the code's equation: rows 80 and 100 ft of table 402.4(28) \
          carry 6 % and 11 % more than it.",
    instead: "install the size that is needed, shorten the way, or feed it by a branch of its own; a licensed gas fitter decides",
    origin: Origin::Standard("2018 IFGC 402.2, 402.4.1, appendix A.4 equation, fittings by table A.2.2"),
    concerns: Concern::Gas,
    limits: &[],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let Some(services) = &solved.services else { return super::unsaid(solved) };
    if services.appliances.is_empty() {
        return Vec::new();
    }
    let mut lacks = Vec::new();
    let mut want = |input: &str, missing: bool, instead: &str| {
        if missing {
            lacks.push(Lack::of_safety(input, Subject::Services, services.place.as_ref(), instead));
        }
    };
    want("services.fuel", services.fuel.is_none(), "write `fuel: natural_gas`, `propane` or `convertible`");
    want("services.supply", services.supply.is_none(), "write the pressure at the source, as `supply: \"7 in wc\"`");
    want("services.drop", services.drop.is_none(), "write the drop that is allowed, as `drop: \"0.5 in wc\"`");
    for fitting in super::burners(solved).filter(|fitting| fitting.heat.is_none()) {
        let instead = "write its full input from its rating plate, as `heat: \"64000 Btu/h\"`";
        let input = format!("{}.heat", fitting.id);
        lacks.push(Lack::of_safety(input, fitting.subject(), fitting.place.as_ref(), instead));
    }
    lacks
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let mut findings = Vec::new();
    if services.supply.is_some_and(|supply| supply >= HIGHEST) {
        findings.push(RULE.finding(
            Severity::Warn,
            Subject::Services,
            services.place.as_ref(),
            "the supply is 1.5 psi or more, and the sizes are those of the low-pressure equation".to_owned(),
            "size what lies before the last regulator by the table for its pressure, and start the pipe here behind it",
        ));
    }
    let segments = services.pipe.iter().enumerate();
    findings.extend(segments.filter_map(|(index, segment)| self::segment(solved, services, index, segment)));
    findings
}

fn segment(solved: &Solved, services: &Services, index: usize, segment: &Segment) -> Option<Finding> {
    let load = segment.load?;
    let show = solved.show;
    let place = segment.place.as_ref();
    let longest = format!("{:.0} ft", services.longest);
    let Some(needed) = segment.needed else {
        let most = PipeSize::Two.words();
        return Some(RULE.finding(
            Severity::Stop,
            Subject::Segment(index),
            place,
            format!(
                "segment {} has to carry {}, more than {most} pipe does over {longest}",
                segment.id,
                show.heat(load)
            ),
            "raise the pressure up to a regulator near the run, or feed it by two pipes",
        ));
    };
    let installed = segment.installed.filter(|size| *size < needed)?;
    let carries = segment.carries?;
    if carries >= load {
        return Some(RULE.finding(
            Severity::Warn,
            Subject::Segment(index),
            place,
            format!(
                "segment {} is {} pipe: it carries its {}, but is smaller than {}, the smallest to use",
                segment.id,
                installed.words(),
                show.heat(load),
                services.smallest.words()
            ),
            format!("install {}, or set `smallest` if your code lets you", needed.words()),
        ));
    }
    Some(RULE.finding(
        Severity::Stop,
        Subject::Segment(index),
        place,
        format!(
            "segment {} is {} pipe, which carries {} over the longest way of {longest}; it has to carry {}",
            segment.id,
            installed.words(),
            show.heat(carries),
            show.heat(load)
        ),
        format!("install {}", needed.words()),
    ))
}
