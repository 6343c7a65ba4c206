//! Running a compiled expression.

use super::expression::{Program, Step};
use crate::units::reading::ReadError;
use crate::units::{Dimension, Quantity};
use std::ops::Range;

/// The value of a program whose names have these values, in the order of [`Program::names`].
///
/// # Errors
/// When dimensions don't go together, on division by zero, and when a number grows out of range.
pub(super) fn run(program: &Program, text: &str, names: &[Quantity]) -> Result<Quantity, ReadError> {
    let mut stack: Vec<Quantity> = Vec::new();
    for (step, span) in &program.steps {
        let value = match step {
            Step::Value(quantity) => *quantity,
            Step::Name(index) => names.get(*index).copied().ok_or_else(|| incomplete(span))?,
            Step::Negate => {
                let value = pop(&mut stack, span)?;
                Quantity { value: -value.value, ..value }
            }
            Step::Add | Step::Subtract | Step::Multiply | Step::Divide | Step::Round => {
                let second = pop(&mut stack, span)?;
                let first = pop(&mut stack, span)?;
                pair(step, first, second, text, span)?
            }
            Step::Least(count) | Step::Greatest(count) => {
                let values = stack.split_off(stack.len().saturating_sub(*count));
                among(step, &values, text, span)?
            }
        };
        if !value.value.is_finite() {
            return Err(ReadError::new("this comes out too large", "", span.clone()));
        }
        stack.push(value);
    }
    stack.pop().ok_or_else(|| incomplete(&(0..text.len())))
}

fn pop(stack: &mut Vec<Quantity>, span: &Range<usize>) -> Result<Quantity, ReadError> {
    stack.pop().ok_or_else(|| incomplete(span))
}

fn incomplete(span: &Range<usize>) -> ReadError {
    ReadError::new("this expression is incomplete", "", span.clone())
}

/// A step that takes two values.
fn pair(
    step: &Step,
    first: Quantity,
    second: Quantity,
    text: &str,
    span: &Range<usize>,
) -> Result<Quantity, ReadError> {
    let combined = |value: f64, dimension: Option<Dimension>| {
        dimension
            .map(|dimension| Quantity { value, dimension })
            .ok_or_else(|| ReadError::new("this multiplies too many units", "", span.clone()))
    };
    match step {
        Step::Multiply => combined(first.value * second.value, first.dimension.times(second.dimension)),
        Step::Divide if second.value == 0.0 => {
            Err(ReadError::new(format!("`{}` divides by zero", of(text, span)), "", span.clone()))
        }
        Step::Divide => combined(first.value / second.value, first.dimension.over(second.dimension)),
        Step::Round => {
            same(step, &[first, second], text, span)?;
            if second.value <= 0.0 {
                return Err(ReadError::new("a step to round to must be more than zero", "", span.clone()));
            }
            Ok(Quantity { value: (first.value / second.value).round() * second.value, ..first })
        }
        Step::Subtract => {
            same(step, &[first, second], text, span)?;
            Ok(Quantity { value: first.value - second.value, ..first })
        }
        _ => {
            same(step, &[first, second], text, span)?;
            Ok(Quantity { value: first.value + second.value, ..first })
        }
    }
}

/// The least or greatest of several values.
fn among(step: &Step, values: &[Quantity], text: &str, span: &Range<usize>) -> Result<Quantity, ReadError> {
    same(step, values, text, span)?;
    let better = |one: Quantity, other: Quantity| match step {
        Step::Least(_) => {
            if other.value < one.value {
                other
            } else {
                one
            }
        }
        _ => {
            if other.value > one.value {
                other
            } else {
                one
            }
        }
    };
    values.iter().copied().reduce(better).ok_or_else(|| incomplete(span))
}

/// Refuses values of different dimensions.
fn same(step: &Step, values: &[Quantity], text: &str, span: &Range<usize>) -> Result<(), ReadError> {
    let Some((first, rest)) = values.split_first() else { return Ok(()) };
    let Some(other) = rest.iter().find(|other| other.dimension != first.dimension) else { return Ok(()) };
    let does = match step {
        Step::Add => "adds",
        Step::Subtract => "subtracts",
        Step::Round => "rounds",
        _ => "compares",
    };
    let (one, two) = (first.dimension.words(), other.dimension.words());
    let bare = first.dimension == Dimension::NUMBER || other.dimension == Dimension::NUMBER;
    let instead = if bare { "give every number its unit" } else { "" };
    Err(ReadError::new(format!("`{}` {does} {one} and {two}", of(text, span)), instead, span.clone()))
}

fn of<'t>(text: &'t str, span: &Range<usize>) -> &'t str {
    text.get(span.clone()).unwrap_or(text)
}
