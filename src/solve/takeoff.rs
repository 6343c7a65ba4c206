//! How much to buy of what: figures without rounding until a count is rounded up, once, after waste.
//!
//! Areas are in square nanometres, volumes in cubic ones, shares and counts plain.

use crate::geometry::{Outline, Region};
use crate::units::{Exact, Length};

/// With a share added: 1/10 adds a tenth.
pub fn with_waste(net: &Exact, waste: &Exact) -> Exact {
    net.clone() * (Exact::whole(1) + waste.clone())
}

/// How many units to buy, each holding or covering so much.
pub fn units(net: &Exact, waste: &Exact, each: &Exact) -> u64 {
    (with_waste(net, waste) / each.clone()).up()
}

/// Area of a rectangle.
pub fn rectangle(width: Length, height: Length) -> Exact {
    Exact::length(width) * Exact::length(height)
}

/// Volume of a layer, or of several one over the other.
pub fn layers(area: &Exact, thicknesses: &[Length]) -> Exact {
    thicknesses.iter().map(|&thick| area.clone() * Exact::length(thick)).sum()
}

/// Volume of a liquid for so many coats over an area.
pub fn coats(area: &Exact, coats: &Exact, coverage: &Exact) -> Exact {
    area.clone() * coats.clone() / coverage.clone()
}

/// Cans of a liquid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cans {
    /// Quarts in all.
    pub quarts: u64,
    /// Of them as gallons.
    pub gallon_cans: u64,
    /// The rest.
    pub quart_cans: u64,
}

/// The fewest cans of gallons and quarts that hold a volume without a quart to spare.
pub fn cans(volume: &Exact, quart: &Exact) -> Cans {
    let quarts = (volume.clone() / quart.clone()).up();
    Cans { quarts, gallon_cans: quarts / 4, quart_cans: quarts % 4 }
}

/// Screws along one tube behind a board: one near each end and between them no farther apart than the spacing. A board
/// too low for two has one.
pub fn screws(long: Length, edge: Length, spacing: Length) -> u64 {
    let between = (Exact::length(long) - Exact::length(edge) * Exact::whole(2)).not_less_than_nothing();
    (between / Exact::length(spacing)).up() + 1
}

/// Screws between two others that are so far apart, no farther apart than the spacing.
pub fn between(apart: Length, spacing: Length) -> u64 {
    (Exact::length(apart) / Exact::length(spacing)).up().saturating_sub(1)
}

/// Volume of a round bead.
pub fn bead(long: &Exact, thick: Length) -> Exact {
    // Archimedes' upper bound of pi, 0.04 % too much, keeps the figure a fraction.
    let quarter = Exact::ratio(22, 28);
    long.clone() * Exact::length(thick) * Exact::length(thick) * quarter
}

/// Free area of openings through louvres or mesh: width, height, open share and number of each.
pub fn free_area(vents: &[(Length, Length, Exact, u64)]) -> Exact {
    vents
        .iter()
        .map(|(width, height, share, count)| {
            rectangle(*width, *height) * share.clone() * Exact::whole(i128::from(*count))
        })
        .sum()
}

/// Area of a region: to the square nanometre along straight edges, arcs to the nearest one.
pub fn area(region: &Region) -> Exact {
    let holes: i128 = region.holes.iter().map(|hole| twice(hole).abs()).sum();
    Exact::ratio(twice(&region.outer).abs() - holes, 2).not_less_than_nothing()
}

/// Twice the area of an outline, nm2.
fn twice(outline: &Outline) -> i128 {
    let nm = |mm: f64| i128::from(Length::from_mm(mm).nm());
    let straight: i128 = outline.edges().map(|(a, b)| nm(a.x) * nm(b.y) - nm(b.x) * nm(a.y)).sum();
    let chords = Outline::from_points(outline.vertices.iter().map(|corner| (corner.x, corner.y)));
    let arcs = outline.edges().any(|(a, _)| a.bulge != 0.0);
    let bent = if arcs { outline.area() - chords.area() } else { 0.0 };
    straight + (bent * 2e12).round() as i128
}

#[cfg(test)]
mod tests {
    use super::{area, bead, between, screws, units};
    use crate::geometry::{Outline, Region};
    use crate::units::{Exact, Length};

    #[test]
    fn an_area_in_inches_is_exact_and_an_arc_is_near() {
        // 96 by 34 1/2 in less a hole of 20 1/2 by 21 in.
        let box_of =
            |x: f64, y: f64, w: f64, h: f64| Outline::from_corners(x * 25.4, y * 25.4, (x + w) * 25.4, (y + h) * 25.4);
        let region = Region { outer: box_of(1.0, 2.0, 96.0, 34.5), holes: vec![box_of(10.0, 5.0, 20.5, 21.0)] };
        assert_eq!(area(&region), Exact::read("2881.5 in2").unwrap());
        let round = Region::solid(Outline::from_circle(0.0, 0.0, 100.0));
        assert!((area(&round).to_f64() / (std::f64::consts::PI * 1e16) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn exactly_full_buys_no_more_and_a_hair_over_buys_one() {
        let (none, each) = (Exact::zero(), Exact::read("15 ft2").unwrap());
        let sixty = Exact::read("60 ft2").unwrap();
        assert_eq!(units(&sixty, &none, &each), 4);
        assert_eq!(units(&(sixty.clone() + Exact::whole(1)), &none, &each), 5);
        // 12 % on 53.571428... ft2, which is 375/7, is 60 ft2 to the last square nanometre.
        let net = sixty * Exact::ratio(100, 112);
        assert_eq!(units(&net, &Exact::ratio(12, 100), &each), 4);
    }

    #[test]
    fn screws_stand_no_farther_apart_than_the_spacing() {
        let inches = Length::from_inches;
        assert_eq!(screws(inches(34.0), inches(0.5), inches(8.0)), 6);
        assert_eq!(screws(inches(33.0), inches(0.5), inches(8.0)), 5);
        assert_eq!(screws(inches(0.75), inches(0.5), inches(8.0)), 1);
        assert_eq!(between(inches(16.0), inches(8.0)), 1);
        assert_eq!(between(inches(16.5), inches(8.0)), 2);
        assert_eq!(between(inches(8.0), inches(8.0)), 0);
    }

    #[test]
    fn a_cartridge_makes_the_bead_that_its_volume_allows() {
        // Trade facts, section 5: a cartridge of 18.3 in3 runs 55, 31, 13.8 and 7.8 ft at 3/16, 1/4, 3/8 and 1/2 in.
        let cartridge = Exact::read("18.3 in3").unwrap();
        for (thick, feet) in [("3/16 in", 55.0), ("1/4 in", 31.0), ("3/8 in", 13.8), ("1/2 in", 7.8)] {
            let thick = crate::units::reading::quantity(thick).unwrap().as_length().unwrap();
            let foot = bead(&Exact::read("1 ft").unwrap(), thick);
            let found = (cartridge.clone() / foot).to_f64();
            assert!((found / feet - 1.0).abs() < 0.01, "{found}");
        }
    }
}
