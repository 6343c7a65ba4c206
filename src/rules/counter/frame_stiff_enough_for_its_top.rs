//! A frame that gives more than a slab can.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{FrameMaterial, Role, Solved};

const SHARE: Limit = Limit::new("", "720", "the span over its deflection, under a hard top");
const LIVE: Limit = Limit::new("live", "50 lb/ft2", "load on the counter (from memory)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "frame-stiff-enough-for-its-top",
    severity: Severity::Warn,
    about: "Under counter and load the long tubes at the frame's top bend by no more than 1/720 of their span.",
    why: "Stone and tile don't bend: what they lie on has to be stiff enough. Tile asks 1/360, stone 1/720.",
    instead: "choose a larger or thicker tube, or narrow the module",
    origin: Origin::Trade("tile and stone manuals, as quoted: stone L/720 under total load; 5wL4/384EI"),
    concerns: Concern::Counter,
    limits: &[SHARE, LIVE],
    needs: nothing,
    check,
};

/// Stiffness, Pa: steel 29 000 ksi, aluminium 10 000 ksi; wood 1 400 ksi from memory.
fn modulus(material: FrameMaterial) -> f64 {
    match material {
        FrameMaterial::Steel => 200e9,
        FrameMaterial::Aluminium => 69e9,
        FrameMaterial::Wood => 9.6e9,
    }
}

/// Sag of a simple beam under an even load: 5 w L4 / 384 E I, m, N/m, Pa, m4.
pub fn sag(load: f64, span: f64, modulus: f64, inertia: f64) -> f64 {
    5.0 * load * span.powi(4) / (384.0 * modulus * inertia)
}

/// Second moment of a square tube, m4; a wall of nothing is a solid bar.
fn inertia(outside: f64, wall: f64) -> f64 {
    let inside = if wall <= 0.0 { 0.0 } else { (outside - 2.0 * wall).max(0.0) };
    (outside.powi(4) - inside.powi(4)) / 12.0
}

fn check(solved: &Solved) -> Vec<Finding> {
    let share = RULE.number(solved, &SHARE).max(1.0);
    let live = RULE.number(solved, &LIVE);
    let frame = &solved.frame;
    let own = solved.counter.density * solved.counter.thickness.mm() / 1e3;
    let stiff = modulus(frame.material) * inertia(frame.tube.mm() / 1e3, frame.wall.mm() / 1e3);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let half = (leg.datums.frame_back - leg.datums.frame_face).mm() / 2e3;
        let load = (own + live) * 9.806_65 * half;
        for (index, module) in leg.modules.iter().enumerate() {
            let rails = leg
                .members_of(index..=index)
                .iter()
                .filter(|member| member.role == Role::Rail && member.body.z.1 == leg.datums.frame_top);
            let Some(span) = rails.map(|member| member.body.u.1 - member.body.u.0).max() else { continue };
            let span_m = span.mm() / 1e3;
            let bent = sag(load, span_m, stiff, 1.0);
            if bent * share > span_m {
                let plain = |length| solved.show.plain(length);
                let message = format!(
                    "the top rail of module {} spans {} and bends by 1/{:.0} of it; 1/{share:.0} is the most",
                    module.id,
                    plain(span),
                    span_m / bent
                );
                let place = module.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Module(at, index), place, message, RULE.instead));
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::{inertia, sag};

    #[test]
    fn published_beams_sag_as_published() {
        // Trade facts, section 8, example 2: 100 lb/in, 100 in, 29e6 psi, 285 in4: 0.0158 in.
        assert!((sag(100.0, 100.0, 29e6, 285.0) - 0.0158).abs() < 5e-5);
        // Example 3: 6 N/mm, 5000 mm, 200 GPa, 8.196e7 mm4: 2.98 mm.
        assert!((sag(6.0, 5000.0, 200e3, 8.196e7) - 2.98).abs() < 5e-3);
        // Tube 1 1/2 by 0.120 in: 0.212 in4.
        assert!((inertia(1.5, 0.12) - 0.212).abs() < 1e-3);
    }
}
