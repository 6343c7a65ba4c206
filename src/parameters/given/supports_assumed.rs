//! What supports are taken to be where a job is silent.

use super::{Alloy, Bar, Counter, CounterMaterial, DefaultUsed, Frame, FrameMaterial, Profile, Profiled, SupportWork};
use crate::units::{Length, reading};

const PRACTICE: &str = "common practice";
const MEMORY: &str = "from memory, verify";
const INSTITUTE: &str = "natural-stone institute, as quoted on trade pages";

/// A value with its name behind `supports.` and where it comes from.
type Known = (&'static str, &'static str, &'static str);

const HEAVY: Known = ("heavy", "100 lb", "from memory, verify: built-in grills weigh 98 to 300 lb and more");
const FOOD: Known = ("food", "50 lb", MEMORY);
const PERSON: Known = ("person", "200 lb", MEMORY);
const LEAN: Known = ("lean", "150 lb", MEMORY);
const ARM_STIFFNESS: Known = ("arm_stiffness", "240", MEMORY);
const APART: Known = ("apart", "24 in", "natural-stone institute, as quoted: 2 ft for 2 cm; also plywood by practice");
const HOLE: Known = ("hole", "1/4 in", PRACTICE);
const HOLE_INSET: Known = ("hole_inset", "3/4 in", PRACTICE);

fn stiffness(counter: CounterMaterial) -> Known {
    match counter {
        CounterMaterial::Stone => {
            ("stiffness", "720", "tile and stone manuals, as quoted: stone L/720 under total load")
        }
        CounterMaterial::Porcelain => ("stiffness", "720", "as stone; from memory, verify"),
        CounterMaterial::Concrete => ("stiffness", "480", MEMORY),
    }
}

/// 2.5 cm parts slabs of 2 cm from those of 3 cm.
fn overhang(thickness: Length) -> Known {
    if thickness <= Length::from_mm(25.0) { ("overhang", "6 in", INSTITUTE) } else { ("overhang", "10 in", INSTITUTE) }
}

/// Flat bar for brackets, let into the substrate: shops use 3/8 x 3 in, which bends more than stone may.
const FLAT: (f64, f64) = (3.0, 0.5);

impl SupportWork {
    /// For a job that says nothing of supports.
    pub fn assumed_for(frame: &Frame, counter: &Counter) -> SupportWork {
        let known = [
            HEAVY,
            FOOD,
            PERSON,
            LEAN,
            stiffness(counter.material),
            ARM_STIFFNESS,
            APART,
            overhang(counter.thickness),
            HOLE,
            HOLE_INSET,
        ];
        let si = |name: &str| {
            let value = known.iter().find(|(known, ..)| *known == name).map_or("0", |(_, value, _)| value);
            reading::quantity(value).map_or(0.0, |quantity| quantity.si())
        };
        let length = |name: &str| Length::from_mm(si(name) * 1e3);
        let (metal, words) = match frame.material {
            FrameMaterial::Steel => (Alloy::steel_a36(), "as the frame: steel A36"),
            FrameMaterial::Aluminium => (Alloy::aluminium_6063_t5(), "as the frame: aluminium 6063-T5"),
            FrameMaterial::Wood => (Alloy::steel_a36(), "tube as wide as the frame's wood: steel A36"),
        };
        let (side, wall) = (frame.tube, frame.wall.min(frame.tube.half()));
        let tube = Profiled { profile: Profile::Tube, width: side, height: side, wall };
        let flat = Length::from_inches(FLAT.1);
        let bracket = Profiled { profile: Profile::Flat, width: Length::from_inches(FLAT.0), height: flat, wall: flat };
        let mut assumed: Vec<DefaultUsed> = known.iter().map(|known| stated(*known)).collect();
        for name in ["arm", "rail"] {
            assumed.push(stated((name, words, PRACTICE)));
        }
        let bar = "flat bar 3 x 1/2 in, steel A36";
        assumed.push(stated(("bracket", bar, "from memory, verify: shops rout in 3/8 x 3 in flat bar of steel")));
        SupportWork {
            arm: Bar { section: tube, alloy: metal.clone() },
            rail: Bar { section: tube, alloy: metal },
            bracket: Bar { section: bracket, alloy: Alloy::steel_a36() },
            heavy: si("heavy"),
            food: si("food"),
            person: si("person"),
            lean: si("lean"),
            stiffness: si("stiffness"),
            arm_stiffness: si("arm_stiffness"),
            apart: length("apart"),
            overhang: length("overhang"),
            hole: length("hole"),
            hole_inset: length("hole_inset"),
            assumed,
            place: None,
        }
    }
}

fn stated((name, value, origin): Known) -> DefaultUsed {
    DefaultUsed { name: format!("supports.{name}"), value: value.to_owned(), origin }
}

#[cfg(test)]
mod tests {
    use super::{APART, ARM_STIFFNESS, FOOD, HEAVY, HOLE, HOLE_INSET, LEAN, PERSON, overhang, stiffness};
    use crate::parameters::given::CounterMaterial;
    use crate::units::{Length, reading};

    #[test]
    fn every_assumed_value_can_be_read() {
        let of = [HEAVY, FOOD, PERSON, LEAN, ARM_STIFFNESS, APART, HOLE, HOLE_INSET];
        let counters = [CounterMaterial::Stone, CounterMaterial::Porcelain, CounterMaterial::Concrete];
        let overhangs = [20.0, 30.0].map(|thick| overhang(Length::from_mm(thick)));
        for (name, value, _) in of.into_iter().chain(counters.map(stiffness)).chain(overhangs) {
            assert!(reading::quantity(value).is_ok_and(|quantity| quantity.si() > 0.0), "{name}");
        }
        assert_eq!(overhangs.map(|(_, value, _)| value), ["6 in", "10 in"]);
    }
}
