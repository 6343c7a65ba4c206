//! The named values that a job need not give. Every one that is used is stated on the sheets.

/// A value filled in where the job is silent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Default {
    /// Its name, as an expression and `--set` write it; for fittings and finishes, the last word
    /// stands behind their own name.
    pub(super) name: &'static str,
    /// The value, as a job would write it.
    pub(super) value: &'static str,
    /// Where it comes from.
    pub(super) origin: &'static str,
}

const PRACTICE: &str = "common practice";
const MEMORY: &str = "from memory, verify";

const fn value(name: &'static str, value: &'static str, origin: &'static str) -> Default {
    Default { name, value, origin }
}

const ALL: &[Default] = &[
    value("frame.tube", "1 1/2 in", PRACTICE),
    value("frame.wall", "0.12 in", MEMORY),
    value("frame.rough_gap", "1/8 in", MEMORY),
    value("frame.feet.shortest", "1 in", MEMORY),
    value("frame.feet.longest", "4 in", MEMORY),
    value("frame.feet.inset", "2 in", PRACTICE),
    value("frame.feet.middle_over", "36 in", MEMORY),
    value("frame.feet.spacing", "30 in", PRACTICE),
    value("frame.feet.spot_reach", "2 in", PRACTICE),
    value("frame.feet.rating", "300 lb", MEMORY),
    value("finish.bed", "0 in", PRACTICE),
    value("finish.spread.skim_coat", "1/16 in", MEMORY),
    value("finish.spread.veneer", "1/8 in", MEMORY),
    value("finish.spread.tile", "1/16 in", MEMORY),
    value("finish.weight.skim_coat", "1.5 lb/ft2", MEMORY),
    value("finish.weight.veneer", "15 lb/ft2", MEMORY),
    value("finish.weight.tile", "6.5 lb/ft2", MEMORY),
    value("finish.joint", "1/8 in", PRACTICE),
    value("counter.density.concrete", "150 lb/ft3", PRACTICE),
    value("counter.density.stone", "168 lb/ft3", PRACTICE),
    value("counter.density.porcelain", "150 lb/ft3", MEMORY),
    value("counter.overhang_front", "1 in", PRACTICE),
    value("counter.overhang_left", "1 in", PRACTICE),
    value("counter.overhang_right", "1 in", PRACTICE),
    value("counter.overhang_back", "1 in", PRACTICE),
    value("counter.wall_joint", "1/8 in", PRACTICE),
    value("counter.seam_joint", "1/16 in", PRACTICE),
    value("counter.corner_radius", "1/2 in", PRACTICE),
    value("counter.arris", "1/8 in", PRACTICE),
    value("counter.drip", "0 in", PRACTICE),
    value("counter.notch.clearance", "1/4 in", MEMORY),
    value("counter.notch.radius", "3/8 in", PRACTICE),
    value("counter.tolerance", "1/8 in", PRACTICE),
    value("trim.lap", "1 in", PRACTICE),
    value("trim.floor_gap", "1/4 in", PRACTICE),
    value("trim.notch_gap", "1/8 in", PRACTICE),
    value(
        "trim.joint_gap",
        "1/16 in",
        "trade pages on cellular PVC: 1/16 in between 60 and 80 \u{b0}F in an 18 ft length",
    ),
    value("stock.board.width", "36 in", "cement board makers' sheets: 36 x 60 in and more"),
    value("stock.board.length", "60 in", "cement board makers' sheets: 36 x 60 in and more"),
    value("stock.board.kerf", "1/8 in", PRACTICE),
    value("stock.substrate.width", "48 in", PRACTICE),
    value("stock.substrate.length", "96 in", PRACTICE),
    value("stock.substrate.kerf", "1/8 in", PRACTICE),
    value("stock.bars.length", "20 ft", PRACTICE),
    value("stock.bars.kerf", "1/8 in", PRACTICE),
    value("stock.bars.end_trim", "1/4 in", MEMORY),
    value("stock.keep", "6 in", PRACTICE),
    value("boards.gap", "1/8 in", "a board maker's manual: 1/8 in, said of floors and counters"),
    value("boards.off_floor", "1/4 in", "a board specification: at least 1/4 in at the floor"),
    value("boards.off_corner", "1 1/2 in", "common practice: a tube's width beside the cutout's own backing"),
    value("boards.least_strip", "4 in", MEMORY),
    value("trim.stations", "16 in", PRACTICE),
    value("trim.stations.metric", "400 mm", PRACTICE),
    value("trim.stock", "96 in", PRACTICE),
    value("trim.fasteners", "16 in", "trade pages on PVC trim: stainless screws 16 in apart"),
    value("trim.fasteners.metric", "400 mm", "trade pages on PVC trim: stainless screws 16 in apart"),
    value("trim.fastener_end", "2 in", "trade pages on PVC trim: 2 in from ends at most"),
    value("trim.joint_off", "2 in", PRACTICE),
    value("trim.density", "35 lb/ft3", MEMORY),
    value("services.heating_value.natural", "1000 Btu/ft3", "2018 IFGC worked examples"),
    value("services.heating_value.propane", "2500 Btu/ft3", "2018 IFGC table 402.4(28) over the code's own equation"),
    value("services.smallest", "1/2 in", "steel tables of the 2018 IFGC start here"),
    value("bound.height", "72 in", PRACTICE),
    value("bound.width", "8 in", PRACTICE),
    value("bound.lean", "0 in", PRACTICE),
    value("corner.radius", "0 in", PRACTICE),
    value("ledge.depth", "6 in", PRACTICE),
    value("seating.width", "24 in", PRACTICE),
    value("fitting.clearance", "0 in", PRACTICE),
    value("fitting.radius.notch", "3/8 in", PRACTICE),
    value("fitting.radius.well", "3/8 in", PRACTICE),
    value("fitting.radius.opening", "0 in", PRACTICE),
    value("waits.joint_mortar", "24 hours", MEMORY),
    value("waits.skim_coat", "24 hours", MEMORY),
    value("waits.veneer", "48 hours", MEMORY),
    value("waits.tile", "24 hours", MEMORY),
    value("waits.grout", "72 hours", MEMORY),
    value("waits.concrete", "7 days", MEMORY),
    value("waits.sealer", "24 hours", MEMORY),
    value("waits.sealant", "24 hours", MEMORY),
    value("tolerances.cut", "1/16 in", PRACTICE),
    value("tolerances.placing", "1/16 in", PRACTICE),
    value("tolerances.published", "1/16 in", PRACTICE),
    value("tolerances.least_strip", "2 in", PRACTICE),
    value("tolerances.least_cover", "1/8 in", MEMORY),
];

/// The default of this name.
pub(super) fn default(name: &str) -> Option<Default> {
    ALL.iter().find(|default| default.name == name).copied()
}

#[cfg(test)]
mod tests {
    use super::{ALL, default};
    use crate::units::reading;

    #[test]
    fn every_default_is_a_quantity_and_has_one_name() {
        for one in ALL {
            assert!(reading::quantity(one.value).is_ok(), "{}", one.name);
            assert_eq!(default(one.name), Some(*one), "{} comes twice", one.name);
        }
    }
}
