//! Metals, sections, loads and limits of what carries counters and heavy fittings.

use super::DefaultUsed;
use crate::findings::Place;
use crate::units::Length;

/// A metal as supports are checked with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Alloy {
    /// As a supplier names it.
    pub name: String,
    /// Elasticity, Pa.
    pub elasticity: f64,
    /// Yield strength, Pa; the least that is guaranteed, unwelded.
    pub yields: f64,
    /// Yield strength over the stress that is allowed.
    pub safety: f64,
    /// Mass by volume, kg/m3.
    pub density: f64,
}

/// One ksi in Pa (SP 811: 6.894 757 E+06).
const KSI: f64 = 6_894_757.0;
/// One pound in a cubic inch of a foot of bar, kg/m3: `lb/ft` for each square inch of section.
const LB_FT_IN2: f64 = 0.453_592_37 / (0.3048 * 0.0254 * 0.0254);

impl Alloy {
    /// ASTM A36: 36 ksi, 29 000 ksi (trade facts 8: course book); allowed by AISC 360: yield over 1.67. Structural tube is
    /// mostly of a stronger steel: A36 is the lower value. 3.40 lb/ft for each square inch.
    pub fn steel_a36() -> Alloy {
        Alloy::new("steel A36", 29_000.0, 36.0, 1.67, 3.40)
    }

    /// 6061-T6 extrusions: 35 ksi at least (49 CFR 178.46, table 2), 10 100 ksi; allowed by the Aluminum Design Manual, yield
    /// over 1.65. Within an inch of a weld it yields at 11 to 15 ksi. 1.18 lb/ft for each square inch.
    pub fn aluminium_6061_t6() -> Alloy {
        Alloy::new("aluminium 6061-T6", 10_100.0, 35.0, 1.65, 1.18)
    }

    /// 6063-T5 up to 1/2 in: 16 ksi at least (scan of an Aluminum Association table), 10 100 ksi; allowed as of 6061-T6.
    pub fn aluminium_6063_t5() -> Alloy {
        Alloy::new("aluminium 6063-T5", 10_100.0, 16.0, 1.65, 1.18)
    }

    fn new(name: &str, elasticity: f64, yields: f64, safety: f64, density: f64) -> Alloy {
        let (elasticity, yields) = (elasticity * KSI, yields * KSI);
        Alloy { name: name.to_owned(), elasticity, yields, safety, density: density * LB_FT_IN2 }
    }

    /// The stress that is allowed, Pa.
    pub fn allowed(&self) -> f64 {
        self.yields / self.safety
    }
}

/// Which kind of section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Profile {
    /// Tube with four walls.
    Tube,
    /// Angle, its level leg at the bottom.
    Angle,
    /// Channel with an upright web.
    Channel,
    /// Flat bar.
    Flat,
}

impl Profile {
    /// As suppliers call it.
    pub const fn word(self) -> &'static str {
        match self {
            Profile::Tube => "tube",
            Profile::Angle => "angle",
            Profile::Channel => "channel",
            Profile::Flat => "flat bar",
        }
    }
}

/// A section by its sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Profiled {
    /// Its kind.
    pub profile: Profile,
    /// Level side.
    pub width: Length,
    /// Upright side.
    pub height: Length,
    /// Wall; the height of a flat bar.
    pub wall: Length,
}

/// A section in a metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// The section.
    pub section: Profiled,
    /// The metal.
    pub alloy: Alloy,
}

/// What supports are made of, what they carry, and how far they may bend.
#[derive(Clone, Debug)]
pub struct SupportWork {
    /// Front to back under a heavy fitting, with what stands or lies under that.
    pub arm: Bar,
    /// At the frame's top, round cutouts and between tubes.
    pub rail: Bar,
    /// Under an overhang.
    pub bracket: Bar,
    /// From this mass on a fitting gets arms, kg.
    pub heavy: f64,
    /// What is laid on a heavy fitting, kg.
    pub food: f64,
    /// Who kneels or sits on the counter, kg.
    pub person: f64,
    /// Who leans on an overhang, kg.
    pub lean: f64,
    /// Span over the most deflection under the counter.
    pub stiffness: f64,
    /// The same under a fitting.
    pub arm_stiffness: f64,
    /// The most between supports of the substrate.
    pub apart: Length,
    /// The most that the counter hangs past the frame without brackets.
    pub overhang: Length,
    /// Diameter of the holes for screws.
    pub hole: Length,
    /// From an end to the hole's centre.
    pub hole_inset: Length,
    /// The values that the job did not give; they are stated where they are used.
    pub assumed: Vec<DefaultUsed>,
    /// Where written.
    pub place: Option<Place>,
}

impl SupportWork {
    /// The value that the job did not give, by its name behind `supports.`.
    pub fn assumed(&self, name: &str) -> Option<&DefaultUsed> {
        self.assumed.iter().find(|one| one.name.strip_prefix("supports.") == Some(name))
    }
}
