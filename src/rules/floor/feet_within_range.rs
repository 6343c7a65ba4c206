//! A foot that would have to be shorter or longer than it can be.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Foot, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "feet-within-range",
    severity: Severity::Stop,
    about: "Every foot can be set to the height that the floor asks of it.",
    why: "A frame that can't be levelled tilts the counter, or stands on three feet.",
    instead: "choose longer feet, pack under the far ones, lay a plinth, or make the frame higher or lower",
    origin: Origin::Geometry,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (shortest, longest) = (solved.frame.foot_shortest, solved.frame.foot_longest);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let mut first = 0;
        for feet in leg.feet.chunk_by(|a, b| a.module == b.module) {
            let from = first;
            first += feet.len();
            let off = |foot: &Foot| (foot.height - longest).max(shortest - foot.height);
            let out: Vec<(usize, &Foot)> =
                feet.iter().enumerate().filter(|(_, foot)| off(foot) > Length::ZERO).collect();
            let Some(&(worst, foot)) = out.iter().max_by_key(|(index, foot)| (off(foot), std::cmp::Reverse(*index)))
            else {
                continue;
            };
            let module = leg.modules.get(foot.module);
            let id = module.map_or("", |module| module.id.as_str());
            let others = match out.len() {
                1 => String::new(),
                count => format!("; {count} feet of the module are out of range"),
            };
            findings.push(RULE.finding(
                Severity::Stop,
                Subject::Foot(at, from + worst),
                module.and_then(|module| module.place.as_ref()),
                format!(
                    "the foot of module {id} at {} from the finished left end and {} from the finished face has to be \
                     {} high; it can be from {} to {}{others}",
                    plain(foot.u),
                    plain(foot.v),
                    plain(foot.height),
                    plain(shortest),
                    plain(longest)
                ),
                way_out(solved, foot),
            ));
        }
    }
    findings
}

/// What to do about a foot, with figures: only ways that leave every other foot in range are named.
fn way_out(solved: &Solved, foot: &Foot) -> String {
    let (shortest, longest) = (solved.frame.foot_shortest, solved.frame.foot_longest);
    let plain = |length| solved.show.plain(length);
    let heights = || solved.legs.iter().flat_map(|leg| leg.feet.iter().map(|foot| foot.height));
    let (least, most) = (heights().min().unwrap_or_default(), heights().max().unwrap_or_default());
    let mut ways = Vec::new();
    if foot.height > longest {
        let lacking = foot.height - longest;
        ways.push(format!(
            "pack under it with a shim or paver of {} to {}",
            plain(lacking),
            plain(foot.height - shortest)
        ));
        ways.push(format!("feet that go from {} to {} everywhere", plain(shortest.min(least)), plain(most)));
        let lower = most - longest;
        if least - lower >= shortest {
            ways.push(format!("lower frame and counter by {}", plain(lower)));
        }
        ways.push(format!("lay a level plinth {} high under this module", plain(lacking)));
    } else {
        let lacking = shortest - foot.height;
        ways.push(format!("feet that go down to {}", plain(foot.height.max(Length::ZERO))));
        let raise = shortest - least;
        if most + raise <= longest {
            ways.push(format!("raise frame and counter by {}", plain(raise)));
        } else {
            ways.push(format!("take the floor down by {} under it", plain(lacking)));
        }
    }
    ways.join("; or ")
}
