//! Reading quantities as people write them: `20 3/4 in`, `5'-3 1/2"`, `1/4 in per ft`, `120 lb`.
//!
//! ```text
//! quantity = length-pair | number unit [ "per" length-unit ] | number ":" number | number
//! length-pair = number ( "ft" | "'" ) number ( "in" | '"' )     also with a hyphen after the foot mark
//! number   = digits [ "." digits ] | whole whole "/" whole | whole "-" whole "/" whole | whole "/" whole
//! ```
//!
//! A fraction without a whole part is read as one number only where a unit follows it, so that in
//! arithmetic `a/6/2` keeps its usual meaning; `20-3/4 in` without blanks is twenty and three quarters.

use super::quantity::{Dimension, Quantity};
use super::symbols::{self, Unit};
use std::ops::Range;

/// Why a quantity can't be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadError {
    /// What is wrong.
    pub message: String,
    /// What to write instead; may be empty.
    pub instead: String,
    /// The bytes of the text that are at fault.
    pub span: Range<usize>,
}

impl ReadError {
    pub(crate) fn new(message: impl Into<String>, instead: impl Into<String>, span: Range<usize>) -> ReadError {
        ReadError { message: message.into(), instead: instead.into(), span }
    }
}

/// Reads a text that is one quantity and nothing else, with an optional minus.
///
/// # Errors
/// When the text isn't a quantity, or something follows it.
pub fn quantity(text: &str) -> Result<Quantity, ReadError> {
    let body = text.trim();
    let (sign, body) = body.strip_prefix('-').map_or((1.0, body), |rest| (-1.0, rest.trim_start()));
    let start = body.as_ptr() as usize - text.as_ptr() as usize;
    let shift = |error: ReadError| ReadError { span: error.span.start + start..error.span.end + start, ..error };
    match scan(body).map_err(shift)? {
        Some((quantity, used)) if used == body.len() => Ok(Quantity { value: sign * quantity.value, ..quantity }),
        Some((_, used)) => {
            let rest = body.get(used..).unwrap_or("").trim();
            Err(ReadError::new(format!("`{rest}` is not expected here"), "", start + used..start + body.len()))
        }
        None => Err(ReadError::new(
            format!("`{body}` is not a quantity"),
            "write a number with its unit, as 20 3/4 in or 527 mm",
            start..start + body.len(),
        )),
    }
}

/// Reads the quantity that `text` begins with; `None` when it begins with no number. Gives the
/// quantity and how many bytes it takes.
///
/// # Errors
/// On an unknown unit, a zero denominator, a number out of range, or a hyphen that may be a minus.
pub(crate) fn scan(text: &str) -> Result<Option<(Quantity, usize)>, ReadError> {
    let Some(number) = number(text)? else { return Ok(None) };
    let Some((unit, after)) = unit_after(text, number.end)? else {
        return without_unit(text, number).map(Some);
    };
    let mut value = number.value * unit.scale;
    let mut end = after;
    if is_foot(unit)
        && let Some((inches, used)) = inches_after(text, end, unit)?
    {
        value += inches;
        end = used;
    }
    if unit.dimension == Dimension::LENGTH
        && let Some((per, used)) = per_after(text, end)?
    {
        return Ok(Some((finite(value / per.scale, Dimension::NUMBER, 0..used)?, used)));
    }
    Ok(Some((finite(value, unit.dimension, 0..end)?, end)))
}

/// A number and where it ends.
#[derive(Clone, Copy)]
struct Number {
    value: f64,
    end: usize,
    /// End of the whole part and its value, when a bare fraction follows that needs a unit to be one.
    loose: Option<(f64, usize)>,
    /// A hyphen joins whole part and fraction.
    hyphen: bool,
}

/// The number that `text` begins with.
fn number(text: &str) -> Result<Option<Number>, ReadError> {
    let Some((first, end, whole)) = decimal(text)? else { return Ok(None) };
    let plain = Number { value: first, end, loose: None, hyphen: false };
    if !whole {
        return Ok(Some(plain));
    }
    let rest = text.get(end..).unwrap_or("");
    if let Some(after_slash) = rest.strip_prefix('/')
        && let Some((below, used, true)) = decimal(after_slash)?
    {
        let end_of_fraction = end + 1 + used;
        let value = over(first, below, 0..end_of_fraction)?;
        return Ok(Some(Number { value, end: end_of_fraction, loose: Some((first, end)), hyphen: false }));
    }
    let blanks = rest.len() - rest.trim_start_matches(' ').len();
    let hyphen = rest.starts_with('-');
    let skip = if hyphen { 1 } else { blanks };
    if skip > 0
        && let Some((above, above_end, true)) = decimal(rest.get(skip..).unwrap_or(""))?
        && let Some(after_slash) = rest.get(skip + above_end..).and_then(|rest| rest.strip_prefix('/'))
        && let Some((below, below_end, true)) = decimal(after_slash)?
    {
        let end = end + skip + above_end + 1 + below_end;
        return Ok(Some(Number { value: first + over(above, below, 0..end)?, end, loose: None, hyphen }));
    }
    Ok(Some(plain))
}

/// Digits with an optional decimal part: value, end, and whether it is whole.
fn decimal(text: &str) -> Result<Option<(f64, usize, bool)>, ReadError> {
    let digits = |text: &str| text.len() - text.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let whole = digits(text);
    let part = text.get(whole..).and_then(|rest| rest.strip_prefix('.')).map_or(0, digits);
    if whole + part == 0 {
        return Ok(None);
    }
    let end = if part > 0 { whole + 1 + part } else { whole };
    let value: f64 = text.get(..end).and_then(|figures| figures.parse().ok()).unwrap_or(f64::INFINITY);
    if !value.is_finite() {
        return Err(ReadError::new("this number is too large", "", 0..end));
    }
    Ok(Some((value, end, part == 0)))
}

/// A fraction's value.
fn over(above: f64, below: f64, span: Range<usize>) -> Result<f64, ReadError> {
    if below == 0.0 {
        return Err(ReadError::new("this fraction divides by zero", "", span));
    }
    Ok(above / below)
}

/// The unit after a number, and its end. A word there that is no unit is an error.
fn unit_after(text: &str, from: usize) -> Result<Option<(Unit, usize)>, ReadError> {
    let rest = text.get(from..).unwrap_or("");
    let body = rest.trim_start();
    let start = from + rest.len() - body.len();
    if let Some(unit) = symbols::at_start(body) {
        return Ok(Some((unit, start + unit.symbol.len())));
    }
    let word_end = body.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(body.len());
    let word = body.get(..word_end).unwrap_or("");
    if word.starts_with(|c: char| c.is_alphabetic()) {
        return Err(ReadError::new(format!("`{word}` is not a unit"), unit_hint(word), start..start + word_end));
    }
    Ok(None)
}

/// What may have been meant by a word in a unit's place.
fn unit_hint(word: &str) -> String {
    let lower = word.to_lowercase();
    let meant = symbols::symbols()
        .find(|symbol| symbol.to_lowercase() == lower)
        .or_else(|| symbols::symbols().filter(|s| s.len() > 1).find(|s| strsim::levenshtein(s, &lower) <= 1));
    meant.map_or_else(
        || "units are in, ft, mm, cm, m; lb, kg; Btu/h, kW; psi, kPa, in wc; deg, %".to_owned(),
        |symbol| format!("write `{symbol}`"),
    )
}

fn is_foot(unit: Unit) -> bool {
    matches!(unit.symbol, "ft" | "foot" | "feet" | "'" | "\u{2032}")
}

/// The inches after feet, in nanometres, and where they end.
fn inches_after(text: &str, from: usize, foot: Unit) -> Result<Option<(f64, usize)>, ReadError> {
    let rest = text.get(from..).unwrap_or("");
    let mark = matches!(foot.symbol, "'" | "\u{2032}");
    let hyphen = rest.starts_with('-');
    let body = if hyphen { rest.get(1..).unwrap_or("") } else { rest.trim_start() };
    let start = from + rest.len() - body.len();
    let Ok(Some(number)) = number(body) else { return Ok(None) };
    let after = body.get(number.end..).unwrap_or("");
    let Some(unit) = symbols::at_start(after.trim_start()) else { return Ok(None) };
    if !matches!(unit.symbol, "in" | "inch" | "inches" | "\"" | "\u{2033}") {
        return Ok(None);
    }
    let end = start + number.end + (after.len() - after.trim_start().len()) + unit.symbol.len();
    if hyphen && !mark {
        return Err(ReadError::new(
            "this hyphen may join feet and inches or be a minus",
            "write `5 ft 3 in` for the sum, `5 ft - 3 in` for the difference",
            from..end,
        ));
    }
    Ok(Some((number.value * unit.scale, end)))
}

/// The unit after `per`, and where it ends.
fn per_after(text: &str, from: usize) -> Result<Option<(Unit, usize)>, ReadError> {
    let rest = text.get(from..).unwrap_or("");
    let Some(body) = rest.trim_start().strip_prefix("per ") else { return Ok(None) };
    let word = body.trim_start();
    let start = from + rest.len() - word.len();
    match symbols::at_start(word) {
        Some(unit) if unit.dimension == Dimension::LENGTH => Ok(Some((unit, start + unit.symbol.len()))),
        _ => Err(ReadError::new(
            "a length is expected after `per`",
            "write `1/4 in per ft` or `10 mm per m`",
            from..text.len(),
        )),
    }
}

/// A number that no unit follows: plain, or a ratio as `1:60`.
fn without_unit(text: &str, number: Number) -> Result<(Quantity, usize), ReadError> {
    if number.hyphen {
        return Err(ReadError::new(
            "this hyphen may join a whole and a fraction or be a minus",
            "write `20 3/4` for the sum, `20 - 3/4` for the difference",
            0..number.end,
        ));
    }
    let (value, end) = number.loose.unwrap_or((number.value, number.end));
    let rest = text.get(end..).unwrap_or("");
    if let Some(after) = rest.trim_start().strip_prefix(':') {
        let body = after.trim_start();
        if let Some((below, used, _)) = decimal(body)? {
            let end = text.len() - body.len() + used;
            return Ok((Quantity::number(over(value, below, 0..end)?), end));
        }
    }
    Ok((Quantity::number(value), end))
}

/// A quantity, unless it is out of range.
fn finite(value: f64, dimension: Dimension, span: Range<usize>) -> Result<Quantity, ReadError> {
    if value.is_finite() {
        Ok(Quantity { value, dimension })
    } else {
        Err(ReadError::new("this number is too large", "", span))
    }
}

#[cfg(test)]
mod tests {
    use super::quantity;
    use crate::units::Length;
    use crate::units::quantity::Dimension;

    fn inches(text: &str) -> f64 {
        quantity(text).unwrap().as_length().unwrap().inches()
    }

    #[test]
    fn lengths_as_people_write_them() {
        for text in [
            "20 3/4 in",
            "20.75 in",
            "20-3/4 in",
            "20-3/4\"",
            "20 3/4\u{2033}",
            "1 ft 8 3/4 in",
            "1'-8 3/4\"",
            "1' 8.75\"",
        ] {
            assert_eq!(inches(text), 20.75, "{text}");
        }
        assert_eq!(inches("5 ft 3 1/2 in"), 63.5);
        assert_eq!(inches("5'-3 1/2\""), 63.5);
        assert_eq!(inches("3/8 in"), 0.375);
        assert_eq!(inches("-3/8 in"), -0.375);
        for (text, mm) in [("527 mm", 527.0), ("52.7 cm", 527.0), ("0.5 m", 500.0), (".5 m", 500.0), ("2 ft", 609.6)] {
            assert_eq!(quantity(text).unwrap().as_length(), Some(Length::from_mm(mm)), "{text}");
        }
    }

    #[test]
    fn falls_are_plain_numbers() {
        for (text, fall) in [("1/4 in per ft", 0.25 / 12.0), ("2 %", 0.02), ("10 mm per m", 0.01), ("1:60", 1.0 / 60.0)]
        {
            let read = quantity(text).unwrap();
            assert_eq!(read.dimension, Dimension::NUMBER, "{text}");
            assert!((read.value - fall).abs() < 1e-15, "{text}");
        }
    }

    #[test]
    fn the_other_quantities() {
        for (text, dimension, si) in [
            ("120 lb", Dimension::MASS, 54.4310844),
            ("54 kg", Dimension::MASS, 54.0),
            ("140 lb/ft3", Dimension::DENSITY, 2242.58487235),
            ("2250 kg/m3", Dimension::DENSITY, 2250.0),
            ("60 kg/m2", Dimension::AREA_MASS, 60.0),
            ("17.6 kW", Dimension::POWER, 17_600.0),
            ("60000 Btu/h", Dimension::POWER, 17_584.2642103),
            ("1.7 kPa", Dimension::PRESSURE, 1_700.0),
            ("7 in wc", Dimension::PRESSURE, 1743.6223),
            ("0.25 psi", Dimension::PRESSURE, 1723.68925),
            ("45 deg", Dimension::ANGLE, std::f64::consts::FRAC_PI_4),
        ] {
            let read = quantity(text).unwrap();
            assert_eq!(read.dimension, dimension, "{text}");
            assert!((read.si() / si - 1.0).abs() < 1e-10, "{text}: {}", read.si());
        }
    }

    #[test]
    fn what_is_unclear_is_refused() {
        for (text, part) in [
            ("36 inchs", "not a unit"),
            ("20-3/4", "hyphen"),
            ("5 ft-3 in", "hyphen"),
            ("1/0 in", "zero"),
            ("", "not a quantity"),
            ("wide", "not a quantity"),
            ("3 in 4", "not expected"),
            ("1/4 in per lb", "after `per`"),
        ] {
            let error = quantity(text).unwrap_err();
            assert!(error.message.contains(part), "{text}: {}", error.message);
        }
        assert!(quantity(&"9".repeat(400)).is_err());
        assert!(quantity("36 MM").unwrap_err().instead.contains("`mm`"));
    }
}
