//! Parts as DXF for saws, routers and waterjets: closed polylines with bulges, circles as circles, no splines, layers in
//! plain words, the unit said in both header variables, the same bytes each time.

mod entities;
mod r12;
mod r2000;
mod words;

use crate::drawing::cutting::{Cutting, Layer, Unit};

/// Which form of the format.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Version {
    /// AC1015, which every current program reads.
    #[default]
    R2000,
    /// AC1009, for old machines.
    R12,
}

/// A part as a DXF file.
pub fn part(cutting: &Cutting, version: Version) -> Vec<u8> {
    let text = match version {
        Version::R2000 => r2000::document(cutting),
        Version::R12 => r12::document(cutting),
    };
    text.into_bytes()
}

/// Pairs of group code and value, and the numbering of handles.
struct Codes {
    text: String,
    handle: u32,
    per_mm: f64,
}

impl Codes {
    fn new(unit: Unit, first_handle: u32) -> Codes {
        let per_mm = match unit {
            Unit::Inch => 1.0 / 25.4,
            Unit::Millimetre => 1.0,
        };
        Codes { text: String::new(), handle: first_handle, per_mm }
    }

    fn pair(&mut self, code: u16, value: &str) {
        self.text.push_str(&format!("{code:>3}\r\n{value}\r\n"));
    }

    fn whole(&mut self, code: u16, value: i64) {
        self.pair(code, &value.to_string());
    }

    /// A number without a unit.
    fn real(&mut self, code: u16, value: f64) {
        self.pair(code, &decimal(value));
    }

    /// A length in mm, written in the file's unit.
    fn length(&mut self, code: u16, mm: f64) {
        self.real(code, mm * self.per_mm);
    }

    /// The next handle under this code.
    fn take_handle(&mut self, code: u16) -> String {
        let handle = format!("{:X}", self.handle);
        self.handle += 1;
        self.pair(code, &handle);
        handle
    }
}

/// A number with a point, at most ten decimals, no exponent and no negative zero.
fn decimal(value: f64) -> String {
    let value = if value.is_finite() { value } else { 0.0 };
    let text = format!("{value:.10}");
    let text = text.trim_end_matches('0');
    let text = if text.ends_with('.') { format!("{text}0") } else { text.to_owned() };
    if text == "-0.0" { "0.0".to_owned() } else { text }
}

/// `$INSUNITS` and `$MEASUREMENT`, which must agree.
fn unit_codes(unit: Unit) -> (i64, i64) {
    match unit {
        Unit::Inch => (1, 0),
        Unit::Millimetre => (4, 1),
    }
}

/// Colour number, line type and width (hundredths of a millimetre) of a layer.
fn look(layer: Layer) -> (i64, &'static str, i64) {
    match layer {
        Layer::Cut => (7, "CONTINUOUS", 70),
        Layer::Outline => (8, "CONTINUOUS", 35),
        Layer::Datum => (1, "FINISHED", 50),
        Layer::Centreline => (3, "CENTRE", 25),
        Layer::Text => (7, "CONTINUOUS", 25),
    }
}

/// Broken lines: name, what it is for, dashes and gaps in mm (gaps negative).
const LINE_TYPES: [(&str, &str, &[f64]); 2] =
    [("CENTRE", "centreline", &[12.0, -1.5, 0.6, -1.5]), ("FINISHED", "finished face", &[12.0, -1.5, 3.0, -1.5])];

#[cfg(test)]
mod tests {
    use super::{Version, decimal, part};
    use crate::drawing::cutting::{Cutting, Layer, Mark, Unit};
    use crate::geometry::Outline;

    #[test]
    fn numbers_have_a_point_and_no_exponent() {
        assert_eq!(decimal(-0.0), "0.0");
        assert_eq!(decimal(1e-13), "0.0");
        assert_eq!(decimal(33.375), "33.375");
        assert_eq!(decimal(f64::NAN), "0.0");
    }

    #[test]
    fn a_circle_is_a_circle_and_a_rounded_box_keeps_its_bulges() {
        let marks = vec![
            Mark::Outline(Layer::Cut, Outline::from_circle(20.0, 20.0, 5.0)),
            Mark::Outline(Layer::Cut, Outline::from_corners(0.0, 0.0, 100.0, 40.0).rounded(|_| 4.0)),
        ];
        let cutting = Cutting { name: "a".to_owned(), unit: Unit::Millimetre, marks };
        for version in [Version::R2000, Version::R12] {
            let text = String::from_utf8(part(&cutting, version)).expect("text");
            assert!(text.is_ascii());
            assert_eq!(text.matches("\r\nCIRCLE\r\n").count(), 1);
            assert_eq!(text.matches(" 42\r\n0.4142135624\r\n").count(), 4);
            assert!(text.ends_with("  0\r\nEOF\r\n"));
        }
    }
}
