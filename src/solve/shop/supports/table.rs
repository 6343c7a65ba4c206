//! Sections that merchants have, in inches, with what each is worth.
//!
//! Source: trade facts, section 8: sections computed with sharp corners and checked there against printed tables (angles
//! and 2 x 1 tubes). `tests/reference_beams.rs` holds the statics against those tables.

use crate::solve::beams::Shape;
use crate::solve::{Profile, Profiled};
use crate::units::{Length, Show, System};

/// Tube and angle by profile, level side, upright side, wall, in inches; the lighter ones first.
const TABLE: [(Profile, f64, f64, f64); 15] = [
    (Profile::Tube, 1.0, 1.0, 0.065),
    (Profile::Tube, 1.0, 1.0, 0.125),
    (Profile::Tube, 1.5, 1.5, 0.083),
    (Profile::Tube, 1.0, 2.0, 0.083),
    (Profile::Tube, 2.0, 2.0, 0.083),
    (Profile::Tube, 1.5, 1.5, 0.12),
    (Profile::Tube, 1.0, 2.0, 0.12),
    (Profile::Tube, 2.0, 2.0, 0.125),
    (Profile::Angle, 1.5, 1.5, 0.125),
    (Profile::Angle, 1.5, 1.5, 0.1875),
    (Profile::Angle, 2.0, 2.0, 0.125),
    (Profile::Angle, 2.0, 2.0, 0.1875),
    (Profile::Angle, 2.0, 2.0, 0.25),
    (Profile::Angle, 2.5, 2.5, 0.25),
    (Profile::Angle, 3.0, 3.0, 0.25),
];

/// Flat bars as brackets, width by thickness, in inches.
const FLATS: [(f64, f64); 6] = [(3.0, 0.375), (2.0, 0.5), (3.0, 0.5), (4.0, 0.5), (3.0, 0.625), (4.0, 0.75)];

/// The sections of a kind in the table.
pub(super) fn of_kind(profile: Profile) -> Vec<Profiled> {
    let inches = Length::from_inches;
    if profile == Profile::Flat {
        let flat = |&(width, thick): &(f64, f64)| Profiled {
            profile,
            width: inches(width),
            height: inches(thick),
            wall: inches(thick),
        };
        return FLATS.iter().map(flat).collect();
    }
    let tubes =
        TABLE.iter().filter(|(kind, ..)| *kind == profile || profile == Profile::Channel && *kind == Profile::Tube);
    let section = |&(profile, width, height, wall): &(Profile, f64, f64, f64)| Profiled {
        profile,
        width: inches(width),
        height: inches(height),
        wall: inches(wall),
    };
    tubes.map(section).collect()
}

/// A section's shape, metres.
pub(super) fn shape(section: &Profiled) -> Shape {
    let m = |length: Length| length.mm() / 1e3;
    let (width, height, wall) = (m(section.width), m(section.height), m(section.wall));
    match section.profile {
        // A tube without a wall, as a frame of wood has, is a solid bar.
        Profile::Tube if wall <= 0.0 || wall * 2.0 >= width.min(height) => Shape::Rectangle { width, height },
        Profile::Tube => Shape::Tube { width, height, wall },
        Profile::Angle => Shape::Angle { width, height, wall },
        Profile::Channel => Shape::Channel { width, height, wall },
        Profile::Flat => Shape::Rectangle { width, height },
    }
}

/// A section as suppliers name it, as `tube 1 1/2 x 1 1/2 x 0.12 in`: by millimetres where the run is shown in them.
pub fn name(section: &Profiled, show: Show) -> String {
    let word = section.profile.word();
    let metric = show.step() < Length::from_sixty_fourths(4);
    let unit = if metric { " mm" } else { " in" };
    let plain = |length: Length| {
        let show = Show::new(if metric { System::Millimetres } else { System::Inches });
        show.plain(length).trim_end_matches(unit).to_owned()
    };
    let (width, height) = (plain(section.width), plain(section.height));
    if section.profile == Profile::Flat {
        return format!("{word} {width} x {height}{unit}");
    }
    let sixteenth = Length::from_sixty_fourths(4);
    let wall = if metric {
        format!("{:.1}", section.wall.mm())
    } else if section.wall.nm() % sixteenth.nm() == 0 {
        plain(section.wall)
    } else {
        // Walls between sixteenths go by decimals.
        format!("{:.3}", section.wall.inches()).trim_end_matches('0').to_owned()
    };
    format!("{word} {width} x {height} x {wall}{unit}")
}
