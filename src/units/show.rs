//! The one place where a length becomes text.

use super::Length;

/// Which system of units a job shows its lengths in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum System {
    /// Inches and fractions of an inch, to 1/16.
    #[default]
    Inches,
    /// Whole millimetres.
    Millimetres,
    /// Inches first, millimetres after them in brackets.
    Both,
}

/// Shows lengths in a job's units, each rounded once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Show {
    /// The units of the job.
    pub system: System,
}

/// U+2009, between a whole number and its fraction.
const THIN_SPACE: char = '\u{2009}';
/// U+2044, between the figures of a fraction. Lettering sets figures on both sides of it small.
pub const FRACTION_SLASH: char = '\u{2044}';
/// U+2033, the inch mark.
pub const INCH_MARK: char = '\u{2033}';
/// Exact by definition (NIST SP 811).
const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// The conventional inch of water (NIST SP 811).
const PASCALS_PER_INCH_OF_WATER: f64 = 249.088_9;
/// The international table unit (NIST SP 811).
const WATTS_PER_BTU_AN_HOUR: f64 = 0.293_071_07;
/// U+2212, the minus sign.
const MINUS: char = '\u{2212}';

impl Show {
    /// Showing in the given system.
    pub const fn new(system: System) -> Show {
        Show { system }
    }

    /// The step that printed lengths are rounded to: 1/16 in, or 1 mm.
    pub const fn step(self) -> Length {
        match self.system {
            System::Inches | System::Both => Length::from_sixty_fourths(4),
            System::Millimetres => Length::from_nm(1_000_000),
        }
    }

    /// The length as it is printed (rounded to [`Show::step`]), still as a length.
    pub fn rounded(self, length: Length) -> Length {
        length.rounded_to(self.step())
    }

    /// The printed text of a length: `24 7⁄16″` or `621`. Dual units print their inches here.
    pub fn text(self, length: Length) -> String {
        match self.system {
            System::Inches | System::Both => format!("{}{INCH_MARK}", inch_figures(length)),
            System::Millimetres => millimetre_figures(length),
        }
    }

    /// The figures alone, without a unit mark.
    pub fn figures(self, length: Length) -> String {
        match self.system {
            System::Inches | System::Both => inch_figures(length),
            System::Millimetres => millimetre_figures(length),
        }
    }

    /// The second reading in brackets, where the job shows both: `[621]`.
    pub fn second(self, length: Length) -> Option<String> {
        (self.system == System::Both).then(|| format!("[{}]", millimetre_figures(length)))
    }

    /// For running text, with the unit spelt: `24 7⁄16″`, `621 mm`, or `24 7⁄16″ [621 mm]`.
    pub fn prose(self, length: Length) -> String {
        match self.system {
            System::Inches => self.text(length),
            System::Millimetres => format!("{} mm", millimetre_figures(length)),
            System::Both => format!("{} [{} mm]", self.text(length), millimetre_figures(length)),
        }
    }

    /// A length as it is read on a tape in inches, for files: `24 7/16 in`, the fraction in plain figures.
    pub fn tape(self, length: Length) -> String {
        let plain = |c| match c {
            THIN_SPACE => ' ',
            FRACTION_SLASH => '/',
            other => other,
        };
        format!("{} in", inch_figures(length).chars().map(plain).collect::<String>())
    }

    /// A heat input given in watts, in British thermal units an hour.
    pub fn btu_an_hour(watts: f64) -> f64 {
        watts / WATTS_PER_BTU_AN_HOUR
    }

    /// A mass given in kilograms, in pounds.
    pub fn pounds(kilograms: f64) -> f64 {
        kilograms / KILOGRAMS_PER_POUND
    }

    /// For a terminal, in plain ASCII: `24 7/16 in`, `621 mm`, or `24 7/16 in (621 mm)`.
    pub fn plain(self, length: Length) -> String {
        let inches = || {
            let figures: String = inch_figures(length)
                .chars()
                .map(|c| match c {
                    THIN_SPACE => ' ',
                    FRACTION_SLASH => '/',
                    MINUS => '-',
                    other => other,
                })
                .collect();
            format!("{figures} in")
        };
        let millimetres = || format!("{} mm", millimetre_figures(length).replace(MINUS, "-"));
        match self.system {
            System::Inches => inches(),
            System::Millimetres => millimetres(),
            System::Both => format!("{} ({})", inches(), millimetres()),
        }
    }

    /// A mass given in kilograms, to the nearest pound or kilogram: `236 lb`, `107 kg`, or `236 lb [107 kg]`.
    pub fn mass(self, kilograms: f64) -> String {
        let pounds = format!("{:.0} lb", kilograms / KILOGRAMS_PER_POUND);
        match self.system {
            System::Inches => pounds,
            System::Millimetres => format!("{kilograms:.0} kg"),
            System::Both => format!("{pounds} [{kilograms:.0} kg]"),
        }
    }

    /// A heat input given in watts: `64000 Btu/h`, `18.8 kW`, or both.
    pub fn heat(self, watts: f64) -> String {
        let british = format!("{:.0} Btu/h", watts / WATTS_PER_BTU_AN_HOUR);
        let metric = format!("{:.1} kW", watts / 1000.0);
        match self.system {
            System::Inches => british,
            System::Millimetres => metric,
            System::Both => format!("{british} [{metric}]"),
        }
    }

    /// A mass per area given in kg/m2: `13 lb/ft2`, `63 kg/m2`, or both.
    pub fn area_mass(self, kilograms: f64) -> String {
        let british = format!("{} lb/ft2", trimmed(kilograms / KILOGRAMS_PER_POUND * 0.3048 * 0.3048, 1));
        let metric = format!("{kilograms:.0} kg/m2");
        match self.system {
            System::Inches => british,
            System::Millimetres => metric,
            System::Both => format!("{british} [{metric}]"),
        }
    }

    /// A pressure given in pascals: `7.0 in w.c.`, `1.74 kPa`, or both.
    pub fn pressure(self, pascals: f64) -> String {
        let british = format!("{} in w.c.", trimmed(pascals / PASCALS_PER_INCH_OF_WATER, 2));
        let metric = format!("{} kPa", trimmed(pascals / 1000.0, 3));
        match self.system {
            System::Inches => british,
            System::Millimetres => metric,
            System::Both => format!("{british} [{metric}]"),
        }
    }

    /// An area given in square metres, to the nearest square inch or square centimetre: `40 sq in`, `258 sq cm`, or both.
    pub fn area(self, square_metres: f64) -> String {
        let british = format!("{} sq in", trimmed(square_metres / (0.0254 * 0.0254), 1));
        let metric = format!("{:.0} sq cm", square_metres * 1e4);
        match self.system {
            System::Inches => british,
            System::Millimetres => metric,
            System::Both => format!("{british} [{metric}]"),
        }
    }

    /// A way too long for a tape's fractions: `38 ft`, `11.6 m`, or both.
    pub fn way(self, length: Length) -> String {
        let british = format!("{} ft", trimmed(length.inches() / 12.0, 1));
        let metric = format!("{} m", trimmed(length.mm() / 1000.0, 2));
        match self.system {
            System::Inches => british,
            System::Millimetres => metric,
            System::Both => format!("{british} [{metric}]"),
        }
    }

    /// What the title block says of the units.
    pub fn caption(self) -> String {
        match self.system {
            System::Inches => format!("inches, to 1{FRACTION_SLASH}16"),
            System::Millimetres => "millimetres".to_owned(),
            System::Both => "inches [mm]".to_owned(),
        }
    }
}

/// At most this many decimals, none that say nothing.
fn trimmed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// Nearest 1/16 in, reduced: `24 7⁄16`, `3⁄4`, `9`.
fn inch_figures(length: Length) -> String {
    let sixteenths = length.rounded_to(Length::from_sixty_fourths(4)).nm() / Length::from_sixty_fourths(4).nm();
    let (whole, rest) = (sixteenths.abs() / 16, sixteenths.abs() % 16);
    let mut text = String::new();
    if sixteenths < 0 {
        text.push(MINUS);
    }
    if whole > 0 || rest == 0 {
        text.push_str(&whole.to_string());
    }
    if rest > 0 {
        if whole > 0 {
            text.push(THIN_SPACE);
        }
        let shared = 1 << rest.trailing_zeros().min(4);
        text.push_str(&format!("{}{FRACTION_SLASH}{}", rest / shared, 16 / shared));
    }
    text
}

/// Nearest whole millimetre.
fn millimetre_figures(length: Length) -> String {
    let millimetres = length.rounded_to(Length::from_nm(1_000_000)).nm() / 1_000_000;
    if millimetres < 0 { format!("{MINUS}{}", -millimetres) } else { millimetres.to_string() }
}

#[cfg(test)]
mod tests {
    use super::{Show, System};
    use crate::units::Length;

    #[test]
    fn inches_are_reduced_fractions() {
        let show = Show::new(System::Inches);
        assert_eq!(show.text(Length::from_inches(24.4375)), "24\u{2009}7\u{2044}16\u{2033}");
        assert_eq!(show.text(Length::from_inches(0.75)), "3\u{2044}4\u{2033}");
        assert_eq!(show.text(Length::ZERO), "0\u{2033}");
        assert_eq!(show.text(Length::from_inches(-0.5)), "\u{2212}1\u{2044}2\u{2033}");
        assert_eq!(show.plain(Length::from_inches(19.125)), "19 1/8 in");
    }

    #[test]
    fn both_prints_inches_and_brackets_millimetres() {
        let show = Show::new(System::Both);
        assert_eq!(show.second(Length::from_inches(24.4375)).as_deref(), Some("[621]"));
    }

    #[test]
    fn masses_and_heat_follow_the_units() {
        assert_eq!(Show::new(System::Inches).mass(61.235), "135 lb");
        assert_eq!(Show::new(System::Millimetres).mass(61.235), "61 kg");
        assert_eq!(Show::new(System::Inches).heat(18_756.5), "64000 Btu/h");
        assert_eq!(Show::new(System::Both).heat(18_756.5), "64000 Btu/h [18.8 kW]");
    }
}
