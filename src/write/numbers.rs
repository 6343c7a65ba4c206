//! The one place where a coordinate becomes text.

/// A coordinate to a ten-thousandth of a millimetre, without trailing zeros and without a negative zero.
pub fn coordinate(value: f64) -> String {
    let mut text = String::new();
    push_coordinate(&mut text, value);
    text
}

/// Appends a coordinate.
pub fn push_coordinate(text: &mut String, value: f64) {
    let scaled = (value * 1e4).round();
    if !scaled.is_finite() || scaled.abs() >= 9e15 {
        text.push('0');
        return;
    }
    let scaled = scaled as i64;
    if scaled < 0 {
        text.push('-');
    }
    let (whole, rest) = (scaled.unsigned_abs() / 10_000, scaled.unsigned_abs() % 10_000);
    text.push_str(&whole.to_string());
    if rest > 0 {
        let digits = format!("{rest:04}");
        text.push('.');
        text.push_str(digits.trim_end_matches('0'));
    }
}

#[cfg(test)]
mod tests {
    use super::coordinate;

    #[test]
    fn no_trailing_zeros_no_negative_zero_no_exponent() {
        assert_eq!(coordinate(-0.00001), "0");
        assert_eq!(coordinate(12.5), "12.5");
        assert_eq!(coordinate(-3.10004), "-3.1");
        assert_eq!(coordinate(6.1e-17), "0");
        assert_eq!(coordinate(f64::NAN), "0");
    }
}
