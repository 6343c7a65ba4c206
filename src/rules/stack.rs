//! How far a sum of dimensions may be off: in the worst case, and by the root of the sum of squares.

/// One dimension of a sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// What it is multiplied by in the sum.
    pub factor: f64,
    /// Its nominal value.
    pub nominal: f64,
    /// It may be off by this much either way.
    pub tolerance: f64,
    /// So many independent ones of it are added.
    pub count: u32,
}

/// A sum and how far it may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stack {
    /// When every dimension is as it should be.
    pub nominal: f64,
    /// Off by so much, either way, when all are off at once.
    pub worst: f64,
    /// Off by so much, either way, when they are independent of one another: the root of the sum of the squared
    /// tolerances, each taken as it stands however the dimension is spread within it.
    pub rss: f64,
}

/// The sum of the terms, in their unit.
pub fn stack(terms: &[Term]) -> Stack {
    let (mut nominal, mut worst, mut squares) = (0.0, 0.0, 0.0);
    for term in terms {
        let count = f64::from(term.count);
        let off = (term.factor * term.tolerance).abs();
        nominal += count * term.factor * term.nominal;
        worst += count * off;
        squares += count * off * off;
    }
    Stack { nominal, worst, rss: squares.sqrt() }
}
