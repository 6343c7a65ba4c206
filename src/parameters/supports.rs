//! Metals, sections, loads and limits of supports.

use super::given::{Alloy, Bar, Counter, Frame, Profile, Profiled, SupportWork};
use super::reader::{Reader, Sign};
use crate::model::{AlloyText, BarText, SectionText, SupportsText, Text};
use crate::units::{Dimension, Length};

/// Every plain value of supports: its name, and what the job writes for it.
pub(super) fn values(written: &SupportsText) -> [(&'static str, Option<&Text>); 10] {
    [
        ("supports.heavy", written.heavy.as_ref()),
        ("supports.food", written.food.as_ref()),
        ("supports.person", written.person.as_ref()),
        ("supports.lean", written.lean.as_ref()),
        ("supports.stiffness", written.stiffness.as_ref()),
        ("supports.arm_stiffness", written.arm_stiffness.as_ref()),
        ("supports.apart", written.apart.as_ref()),
        ("supports.overhang", written.overhang.as_ref()),
        ("supports.hole", written.hole.as_ref()),
        ("supports.hole_inset", written.hole_inset.as_ref()),
    ]
}

/// Works out what supports are made of, carry, and may bend. Of a frame and a counter follows what the job leaves out;
/// that is recorded where it is used, since few jobs use all of it.
pub(super) fn read(written: &SupportsText, frame: &Frame, counter: &Counter, reader: &mut Reader) -> SupportWork {
    let mut work = SupportWork::assumed_for(frame, counter);
    for (name, text) in values(written) {
        let Some(text) = reader.override_of(name).or_else(|| text.cloned()) else { continue };
        work.place = work.place.or_else(|| Some(text.place.clone()));
        let masses = [
            ("supports.heavy", &mut work.heavy),
            ("supports.food", &mut work.food),
            ("supports.person", &mut work.person),
            ("supports.lean", &mut work.lean),
        ];
        let shares = [("supports.stiffness", &mut work.stiffness), ("supports.arm_stiffness", &mut work.arm_stiffness)];
        let lengths = [
            ("supports.apart", &mut work.apart, Sign::Positive),
            ("supports.overhang", &mut work.overhang, Sign::NotNegative),
            ("supports.hole", &mut work.hole, Sign::Positive),
            ("supports.hole_inset", &mut work.hole_inset, Sign::Positive),
        ];
        if let Some((_, mass)) = masses.into_iter().find(|(known, _)| *known == name) {
            *mass = reader.si_of(&text, Dimension::MASS, Sign::NotNegative).unwrap_or(0.0);
        } else if let Some((_, share)) = shares.into_iter().find(|(known, _)| *known == name) {
            *share = reader.si_of(&text, Dimension::NUMBER, Sign::Positive).unwrap_or(1.0);
        } else if let Some((_, length, sign)) = lengths.into_iter().find(|(known, ..)| *known == name) {
            *length = reader.length_of(&text, sign).unwrap_or_default();
        }
        work.assumed.retain(|one| one.name != name);
    }
    for (name, text, own) in [
        ("supports.arm", &written.arm, &mut work.arm),
        ("supports.rail", &written.rail, &mut work.rail),
        ("supports.bracket", &written.bracket, &mut work.bracket),
    ] {
        if let Some(text) = text {
            bar(text, own, reader);
            work.assumed.retain(|one| one.name != name);
        }
    }
    work
}

fn bar(text: &BarText, own: &mut Bar, reader: &mut Reader) {
    if let Some(section) = &text.section {
        own.section = self::section(section, reader);
    }
    match &text.alloy {
        None => {}
        Some(AlloyText::SteelA36) => own.alloy = Alloy::steel_a36(),
        Some(AlloyText::Aluminium6061T6) => own.alloy = Alloy::aluminium_6061_t6(),
        Some(AlloyText::Aluminium6063T5) => own.alloy = Alloy::aluminium_6063_t5(),
        Some(AlloyText::Other { name, elasticity, yields, safety, density }) => {
            let mut si = |text, dimension| reader.si_of(text, dimension, Sign::Positive).unwrap_or(1.0);
            let (elasticity, yields) = (si(elasticity, Dimension::PRESSURE), si(yields, Dimension::PRESSURE));
            let (safety, density) = (si(safety, Dimension::NUMBER), si(density, Dimension::DENSITY));
            own.alloy = Alloy { name: reader.words(Some(name), "metal"), elasticity, yields, safety, density };
        }
    }
}

fn section(text: &SectionText, reader: &mut Reader) -> Profiled {
    let (profile, [width, height, wall]) = match text {
        SectionText::Tube { width, height, wall } => (Profile::Tube, [width, height, wall]),
        SectionText::Angle { width, height, wall } => (Profile::Angle, [width, height, wall]),
        SectionText::Channel { width, height, wall } => (Profile::Channel, [width, height, wall]),
        SectionText::Flat { width, thickness } => (Profile::Flat, [width, thickness, thickness]),
    };
    // An inch stands in for what can't be read, so that only the first problem is told.
    let mut length = |text| reader.length_of(text, Sign::Positive).unwrap_or(Length::from_sixty_fourths(64));
    let read = Profiled { profile, width: length(width), height: length(height), wall: length(wall) };
    let walls = match profile {
        Profile::Flat => Length::ZERO,
        Profile::Angle => read.wall,
        Profile::Tube | Profile::Channel => read.wall * 2,
    };
    if walls >= read.height.min(if profile == Profile::Channel { read.height } else { read.width })
        && profile != Profile::Flat
    {
        reader.tell(
            format!("a {} of these sides has no room for its walls", profile.word()),
            "check the wall against the sides",
            &wall.place,
        );
    }
    read
}
