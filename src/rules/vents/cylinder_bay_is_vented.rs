//! A cylinder bay without openings high and at its floor.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Cylinder, Fitting, Leg, ModuleKind, Solved};

const UPPER: Limit = Limit::new("upper", "20 in2", "free area near the top, for 20 lb of fuel");
const LOWER: Limit = Limit::new("lower", "10 in2", "free area at the floor, for 20 lb of fuel");
const TOP: Limit = Limit::new("top", "5 in", "from the top of the bay to its upper openings");
const FLOOR: Limit = Limit::new("floor", "1 in", "from the floor of the bay to the bottom of its lower openings");
const FLOOR_TOP: Limit = Limit::new("floor_top", "5 in", "from the floor of the bay to the top of its lower openings");

/// 20 lb in kg.
const TWENTY_POUNDS: f64 = 20.0 * 0.453_592_37;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cylinder-bay-is-vented",
    severity: Severity::Stop,
    about: "A bay that holds a propane cylinder is open on a side, or has two upper openings near its top and openings at its \
            floor, sized by the weight of fuel, on two sides.",
    why: "A cylinder leaks at its valve. Older manuals want openings at valve level too, two of 10 sq in, on opposite sides; the \
          manual in hand governs, and which edition it follows is worth asking.",
    instead: "set vents in two faces of the bay, near the top and at the floor, or leave the bay open",
    origin: Origin::Trade(
        "grill manuals quoting the outdoor-appliance standard (Z21.58 family): 1 and 1/2 sq in a pound of fuel",
    ),
    concerns: Concern::Vents,
    limits: &[UPPER, LOWER, TOP, FLOOR, FLOOR_TOP],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let mut findings = Vec::new();
    for cylinder in &services.cylinders {
        let Some(leg) = solved.legs.get(cylinder.leg) else { continue };
        let Some(module) = leg.modules.get(cylinder.module) else { continue };
        if module.kind == ModuleKind::OpenBay {
            continue;
        }
        let own: Vec<&Fitting> = super::vents(leg).filter(|vent| vent.module == cylinder.module).collect();
        let (top, floor, floor_top) =
            (RULE.length(solved, &TOP), RULE.length(solved, &FLOOR), RULE.length(solved, &FLOOR_TOP));
        let upper: Vec<&Fitting> = own.iter().copied().filter(|v| super::under_the_top(leg, v) <= top).collect();
        let at_floor = |vent: &&Fitting| {
            let low = super::over_the_base(leg, vent);
            low <= floor && low + (vent.top.unwrap_or_default() - vent.bottom.unwrap_or_default()) <= floor_top
        };
        let lower: Vec<&Fitting> = own.iter().copied().filter(at_floor).collect();
        for (vents, limit, word) in [(upper, &UPPER, "near its top"), (lower, &LOWER, "at its floor")] {
            findings.extend(openings(solved, (leg, cylinder, &module.id), &vents, limit, word));
        }
    }
    findings
}

fn openings(
    solved: &Solved,
    (leg, cylinder, module): (&Leg, &Cylinder, &str),
    vents: &[&Fitting],
    limit: &Limit,
    word: &str,
) -> Option<Finding> {
    let wanted = RULE.number(solved, limit) * cylinder.holds / TWENTY_POUNDS * f64::from(cylinder.count);
    // Where a maker's free area isn't stated the share that is open is from memory: it may warn, and only a face that is too
    // small as a whole stops.
    let free: f64 = vents.iter().map(|vent| super::free_area(vent)).sum();
    let most: f64 = vents.iter().map(|vent| vent.needs.free_area.unwrap_or_else(|| super::face_area(vent))).sum();
    let area = |area| solved.show.area(area);
    let (severity, message) = if vents.is_empty() {
        (Severity::Stop, format!("the cylinder bay {module} has no opening {word}; {} is wanted there", area(wanted)))
    } else if most < wanted - 1e-9 {
        (
            Severity::Stop,
            format!("the cylinder bay {module} has {} at most {word}; {} is wanted", area(most), area(wanted)),
        )
    } else if free < wanted - 1e-9 {
        let message = format!(
            "the cylinder bay {module} may have only {} free {word}, 40 % of the faces; {} is wanted: write `free_area`",
            area(free),
            area(wanted)
        );
        (Severity::Warn, message)
    } else if vents.len() < 2 || !vents.iter().any(|vent| vent.face != vents[0].face) {
        let message = format!("the openings of the cylinder bay {module} {word} are not on two sides");
        (Severity::Warn, message)
    } else {
        return None;
    };
    let place = cylinder.place.as_ref().or(leg.place.as_ref());
    Some(RULE.finding(severity, Subject::Module(cylinder.leg, cylinder.module), place, message, RULE.instead))
}
