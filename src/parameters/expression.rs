//! The arithmetic that any value may be written in, compiled to a short program.
//!
//! ```text
//! sum     = product { ("+" | "-") product }
//! product = signed { ("*" | "/") signed }
//! signed  = { "-" | "+" } atom
//! atom    = quantity | name | call | "(" sum ")"
//! call    = ("min" | "max") "(" sum { "," sum } ")" | "round" "(" sum "," sum ")"
//! name    = word { "." word }          word = letter or "_", then letters, digits, "_"
//! ```
//!
//! A quantity is a number with its unit, read by [`crate::units::reading`]: the unit belongs to the
//! number before it, so `3 1/2 in + rail` adds three and a half inches, `20-3/4 in` is one length,
//! and `20 in - 3/4 in` a difference.

use crate::units::Quantity;
use crate::units::reading::{self, ReadError};
use std::ops::Range;

/// The longest expression, in bytes.
pub const LONGEST: usize = 2_000;
/// How deep brackets, calls and signs may nest.
pub const DEEPEST: usize = 50;

/// One step of a program that works on a stack.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Step {
    /// Puts a quantity on the stack.
    Value(Quantity),
    /// Puts the value of the name with this index in [`Program::names`] on the stack.
    Name(usize),
    /// Takes two, puts their sum.
    Add,
    /// Takes two, puts their difference.
    Subtract,
    /// Takes two, puts their product.
    Multiply,
    /// Takes two, puts their quotient.
    Divide,
    /// Turns the sign of the topmost.
    Negate,
    /// Takes this many, puts the least.
    Least(usize),
    /// Takes this many, puts the greatest.
    Greatest(usize),
    /// Takes a value and a step, puts the value rounded to the step.
    Round,
}

/// A compiled expression.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Program {
    /// The steps, each with the bytes of the text that it comes from.
    pub(super) steps: Vec<(Step, Range<usize>)>,
    /// The names used, each with its place in the text.
    pub(super) names: Vec<(String, Range<usize>)>,
}

/// Compiles an expression.
///
/// # Errors
/// When the text is no expression, is too long or nests too deep.
pub(super) fn compile(text: &str) -> Result<Program, ReadError> {
    if text.len() > LONGEST {
        return Err(ReadError::new(
            format!("this expression is longer than {LONGEST} characters"),
            "give its parts names under `parameters`",
            0..text.len(),
        ));
    }
    let mut compiler = Compiler { text, at: 0, depth: 0, program: Program::default() };
    compiler.blanks();
    if compiler.rest().is_empty() {
        return Err(ReadError::new("this value is empty", "write a length as 20 3/4 in or 527 mm", 0..text.len()));
    }
    compiler.sum()?;
    if compiler.rest().is_empty() { Ok(compiler.program) } else { Err(compiler.unexpected()) }
}

struct Compiler<'t> {
    text: &'t str,
    at: usize,
    depth: usize,
    program: Program,
}

impl<'t> Compiler<'t> {
    fn rest(&self) -> &'t str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn blanks(&mut self) {
        self.at = self.text.len() - self.rest().trim_start().len();
    }

    /// Takes a sign of arithmetic and the blanks after it.
    fn take(&mut self, sign: char) -> bool {
        let found = self.rest().starts_with(sign);
        if found {
            self.at += sign.len_utf8();
            self.blanks();
        }
        found
    }

    fn push(&mut self, step: Step, from: usize) {
        let end = self.text.get(..self.at).map_or(self.at, |done| done.trim_end().len());
        self.program.steps.push((step, from..end.max(from)));
    }

    fn sum(&mut self) -> Result<(), ReadError> {
        let start = self.at;
        self.product()?;
        loop {
            let step = if self.take('+') {
                Step::Add
            } else if self.take('-') {
                Step::Subtract
            } else {
                return Ok(());
            };
            self.product()?;
            self.push(step, start);
        }
    }

    fn product(&mut self) -> Result<(), ReadError> {
        let start = self.at;
        self.signed()?;
        loop {
            let step = if self.take('*') {
                Step::Multiply
            } else if self.take('/') {
                Step::Divide
            } else {
                return Ok(());
            };
            self.signed()?;
            self.push(step, start);
        }
    }

    fn signed(&mut self) -> Result<(), ReadError> {
        let start = self.at;
        let mut negative = false;
        loop {
            if self.take('-') {
                negative = !negative;
            } else if !self.take('+') {
                break;
            }
        }
        self.atom()?;
        if negative {
            self.push(Step::Negate, start);
        }
        Ok(())
    }

    fn atom(&mut self) -> Result<(), ReadError> {
        let start = self.at;
        if self.take('(') {
            self.deeper(start)?;
            self.sum()?;
            self.depth -= 1;
            return self.close(start);
        }
        let scanned = reading::scan(self.rest())
            .map_err(|error| ReadError { span: error.span.start + start..error.span.end + start, ..error })?;
        if let Some((quantity, used)) = scanned {
            self.at += used;
            self.blanks();
            self.push(Step::Value(quantity), start);
            return Ok(());
        }
        match self.name() {
            Some(name) if self.rest().starts_with('(') => self.call(&name, start),
            Some(name) => {
                let end = start + name.len();
                self.program.names.push((name, start..end));
                self.push(Step::Name(self.program.names.len() - 1), start);
                Ok(())
            }
            None => Err(self.unexpected()),
        }
    }

    fn deeper(&mut self, start: usize) -> Result<(), ReadError> {
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err(ReadError::new(
                format!("brackets are nested more than {DEEPEST} deep"),
                "give its parts names under `parameters`",
                start..self.at,
            ));
        }
        Ok(())
    }

    fn close(&mut self, opened: usize) -> Result<(), ReadError> {
        if self.take(')') {
            Ok(())
        } else if self.rest().is_empty() {
            Err(ReadError::new("this bracket is never closed", "close it with `)`", opened..opened + 1))
        } else {
            Err(self.unexpected())
        }
    }

    /// Takes a name and the blanks after it.
    fn name(&mut self) -> Option<String> {
        let rest = self.rest();
        let mut end = 0;
        loop {
            let word = rest.get(end..).unwrap_or("");
            if !word.starts_with(|c: char| c.is_ascii_alphabetic() || c == '_') {
                break;
            }
            end += word.find(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).unwrap_or(word.len());
            if !rest.get(end..).is_some_and(|after| after.starts_with('.')) {
                break;
            }
            end += 1;
        }
        let name = rest.get(..end).unwrap_or("");
        if name.is_empty() {
            return None;
        }
        self.at += end;
        self.blanks();
        Some(name.to_owned())
    }

    fn call(&mut self, name: &str, start: usize) -> Result<(), ReadError> {
        let span = start..start + name.len();
        if !FUNCTIONS.contains(&name) {
            let instead = crate::findings::nearest(name, FUNCTIONS.iter().copied())
                .map_or_else(|| "there are min, max and round".to_owned(), |meant| format!("write `{meant}`"));
            return Err(ReadError::new(format!("there is no function `{name}`"), instead, span));
        }
        self.take('(');
        self.deeper(start)?;
        let mut count = 0;
        loop {
            self.sum()?;
            count += 1;
            if !self.take(',') {
                break;
            }
        }
        self.depth -= 1;
        self.close(start + name.len())?;
        let step = match (name, count) {
            ("min", _) => Step::Least(count),
            ("max", _) => Step::Greatest(count),
            (_, 2) => Step::Round,
            _ => {
                let message = format!("`round` takes a value and a step, and {count} are given");
                return Err(ReadError::new(message, "write `round(width, 1/8 in)`", span));
            }
        };
        self.push(step, start);
        Ok(())
    }

    fn unexpected(&self) -> ReadError {
        let Some(sign) = self.rest().chars().next() else {
            let end = self.text.trim_end().len();
            let last = self.text.get(..end).and_then(|done| done.char_indices().next_back()).map_or(0, |(at, _)| at);
            return ReadError::new("this expression ends too early", "a value is missing at its end", last..end);
        };
        let message = format!("`{sign}` is not expected here");
        let instead = match sign {
            '0'..='9' | 'a'..='z' | 'A'..='Z' => "write + - * or / between two values",
            ',' => "write decimals with a point",
            _ => "",
        };
        ReadError::new(message, instead, self.at..self.at + sign.len_utf8())
    }
}

/// The functions, whose names no parameter may take.
pub(super) const FUNCTIONS: [&str; 3] = ["min", "max", "round"];

#[cfg(test)]
mod tests {
    use super::{Step, compile};

    #[test]
    fn a_unit_belongs_to_the_number_before_it() {
        let program = compile("3 1/2 in + rail").unwrap();
        let steps: Vec<&Step> = program.steps.iter().map(|(step, _)| step).collect();
        assert!(matches!(steps.as_slice(), [Step::Value(_), Step::Name(0), Step::Add]));
        assert_eq!(program.names, [("rail".to_owned(), 11..15)]);
    }

    #[test]
    fn what_is_no_expression_is_refused_with_its_place() {
        for (text, part, start) in [
            ("1 in +", "too early", 5),
            ("(1 in", "never closed", 0),
            ("1 in 2", "not expected", 5),
            ("median(1 in)", "no function", 0),
            ("round(1 in)", "takes a value and a step", 0),
            ("a $ b", "not expected", 2),
            (" ", "empty", 0),
            ("2 * 3 inchs", "not a unit", 6),
            ("a.b..c", "not expected", 4),
        ] {
            let error = compile(text).unwrap_err();
            assert!(error.message.contains(part), "{text}: {}", error.message);
            assert_eq!(error.span.start, start, "{text}");
        }
    }

    #[test]
    fn depth_and_length_are_bounded() {
        assert!(compile(&format!("{}1 in{}", "(".repeat(51), ")".repeat(51))).unwrap_err().message.contains("deep"));
        assert!(compile(&"(".repeat(1_900)).is_err());
        assert!(compile(&"-".repeat(1_900)).is_err());
        assert!(compile(&"1+".repeat(2_000)).unwrap_err().message.contains("longer"));
    }
}
