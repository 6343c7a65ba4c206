//! What has to be known before a support is welded or drilled.

use crate::sheets::set::Set;
use crate::solve::SupportRole;

/// The notes, lead words first.
pub fn list(set: &Set<'_>) -> Vec<(String, String)> {
    let supports = &set.solved.shop.supports;
    let has = |role| supports.members.iter().any(|support| support.role == role);
    let mut notes = Vec::new();
    let mut say = |lead: &str, words: &str| notes.push((lead.to_owned(), words.to_owned()));
    say(
        "Caution",
        "figured by beam formulas with assumed loads; no engineer's design. Local code governs; ask an engineer where people sit, lean or stand.",
    );
    if supports.members.iter().any(|support| support.alloy.starts_with("alumin")) {
        say(
            "Welds",
            "aluminium loses half its strength and more within an inch of a weld: screw it, or have it designed.",
        );
    }
    say(
        "Hot work",
        "where anything is welded, nothing that burns near, an extinguisher at hand and a watch after; eyes and skin covered. Zinc on galvanised tube makes poisonous fume: grind it off, fresh air, a mask for it. Before any gas pipe is there.",
    );
    if has(SupportRole::Arm) {
        say(
            "Arms",
            "lie flush under the body of the appliance in hand: check its height and feet before they are fixed.",
        );
        say("Ends", "arms and rails butt against the tubes: weld all round, or bolt each end through a cleat.");
        say("Hot", "an arm beside a burner gets hot: the appliance's manual says what may touch it.");
    }
    if has(SupportRole::FrontPost) {
        say("Front posts", "stand under the arms' front ends, since the tube over the opening would bend too far.");
    }
    if has(SupportRole::Bracket) {
        say(
            "Brackets",
            "are let into the substrate and screwed down to the frame: the inner screws hold against lifting. Each is figured alone, without the counter's help; its limit goes by twice what is free, as for cantilevers; from memory, verify.",
        );
    }
    say("Grey", "what is grey is the frame's own. Check every place against the fitting in hand before welding.");
    for (index, leg) in set.solved.legs.iter().enumerate() {
        for (at, fitting) in leg.fittings.iter().enumerate().filter(|(_, fitting)| fitting.mass.is_none()) {
            let own = supports.members.iter().filter(|one| one.leg == index && one.fitting == Some(at));
            let carry = own.filter(|one| matches!(one.role, SupportRole::Arm | SupportRole::ArmRail));
            let marks: Vec<&str> = carry.map(|one| one.mark.as_str()).collect();
            if !marks.is_empty() {
                let words = format!("its weight is not given: {} are not checked.", super::tables::marks(&marks));
                notes.push((format!("{} {}", fitting.mark, fitting.name), words));
            }
        }
    }
    for ((leg, index), why) in &supports.unheld {
        let fitting = set.solved.legs.get(*leg).and_then(|leg| leg.fittings.get(*index));
        if let Some(fitting) = fitting {
            notes.push((format!("{} {}", fitting.mark, fitting.name), format!("no arms: {why}.")));
        }
    }
    notes
}
