//! Reading past a field: its name and value are blanked, every other byte keeps its place.

use std::ops::Range;

/// The text with the field at `name` blanked, its value and comma included; `None` when that is no
/// field with a value.
pub(super) fn field(text: &str, name: Range<usize>) -> Option<String> {
    if name.is_empty() {
        return None;
    }
    let bytes = text.as_bytes();
    let mut at = skip_blanks(bytes, name.end);
    if bytes.get(at) != Some(&b':') {
        return None;
    }
    at = value_end(bytes, at + 1)?;
    if bytes.get(at) == Some(&b',') {
        at += 1;
    }
    let mut blanked = text.as_bytes().to_vec();
    for byte in blanked.get_mut(name.start..at)? {
        if *byte != b'\n' {
            *byte = b' ';
        }
    }
    String::from_utf8(blanked).ok()
}

/// Where the value from `at` on ends: at a comma or a closing bracket that isn't its own.
fn value_end(bytes: &[u8], mut at: usize) -> Option<usize> {
    let mut depth = 0_usize;
    loop {
        at = skip_blanks(bytes, at);
        match bytes.get(at)? {
            b'(' | b'[' | b'{' => depth += 1,
            b')' | b']' | b'}' if depth == 0 => return Some(at),
            b')' | b']' | b'}' => depth -= 1,
            b',' if depth == 0 => return Some(at),
            b'"' => at = string_end(bytes, at)?,
            b'#' if at > 0 && bytes.get(at - 1) == Some(&b'r') => at = raw_string_end(bytes, at)?,
            _ => {}
        }
        at += 1;
    }
}

/// The closing quote of the string that opens at `at`.
fn string_end(bytes: &[u8], at: usize) -> Option<usize> {
    let raw = at > 0 && bytes.get(at - 1) == Some(&b'r');
    let mut end = at + 1;
    while *bytes.get(end)? != b'"' {
        end += if !raw && bytes.get(end) == Some(&b'\\') { 2 } else { 1 };
    }
    Some(end)
}

/// The last `#` of the raw string whose first `#` is at `at`.
fn raw_string_end(bytes: &[u8], at: usize) -> Option<usize> {
    let hashes = bytes.get(at..)?.iter().take_while(|byte| **byte == b'#').count();
    let mut end = at + hashes + 1;
    loop {
        let rest = bytes.get(end..)?;
        let closing =
            rest.first()? == &b'"' && rest.iter().skip(1).take(hashes).filter(|b| **b == b'#').count() == hashes;
        if closing {
            return Some(end + hashes);
        }
        end += 1;
    }
}

/// The first byte from `at` on that is neither blank nor comment.
fn skip_blanks(bytes: &[u8], mut at: usize) -> usize {
    loop {
        match (bytes.get(at), bytes.get(at + 1)) {
            (Some(b' ' | b'\t' | b'\r' | b'\n'), _) => at += 1,
            (Some(b'/'), Some(b'/')) => {
                while bytes.get(at).is_some_and(|byte| *byte != b'\n') {
                    at += 1;
                }
            }
            (Some(b'/'), Some(b'*')) => {
                let mut depth = 1;
                at += 2;
                while depth > 0 && at < bytes.len() {
                    match (bytes.get(at), bytes.get(at + 1)) {
                        (Some(b'*'), Some(b'/')) => (depth, at) = (depth - 1, at + 2),
                        (Some(b'/'), Some(b'*')) => (depth, at) = (depth + 1, at + 2),
                        _ => at += 1,
                    }
                }
            }
            _ => return at,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::field;

    #[test]
    fn only_the_field_is_blanked() {
        let text = "(a: 1, bad /* ) */ : (x: \"),\", y: [1, 2]), // ,\n c: 3)";
        let start = text.find("bad").unwrap();
        let rest = field(text, start..start + 3).unwrap();
        assert_eq!(rest.len(), text.len());
        assert!(rest.starts_with("(a: 1,  ") && rest.ends_with("// ,\n c: 3)"), "{rest}");
    }

    #[test]
    fn raw_strings_and_ends_are_seen() {
        let text = "(bad: r#\"a\"),\"#)";
        assert_eq!(field(text, 1..4).unwrap(), format!("({})", " ".repeat(text.len() - 2)));
        assert_eq!(field("(bad)", 1..4), None);
        assert_eq!(field("(bad: \"", 1..4), None);
    }
}
