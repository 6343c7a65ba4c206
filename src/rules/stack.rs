//! How far a sum of dimensions may be off: in the worst case, and by the root of the sum of squares.

/// How a dimension is spread within its tolerance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread {
    /// Bell-shaped; the tolerance is three standard deviations.
    Normal,
    /// Even over the whole tolerance.
    Uniform,
}

/// One dimension of a sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// What it is multiplied by in the sum.
    pub factor: f64,
    /// Its nominal value.
    pub nominal: f64,
    /// It may be off by this much either way.
    pub tolerance: f64,
    /// How it is spread.
    pub spread: Spread,
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
    /// Off by so much, either way, within three standard deviations when they are independent.
    pub rss: f64,
}

/// The sum of the terms, in their unit.
pub fn stack(terms: &[Term]) -> Stack {
    let (mut nominal, mut worst, mut squares) = (0.0, 0.0, 0.0);
    for term in terms {
        let count = f64::from(term.count);
        let off = (term.factor * term.tolerance).abs();
        // Three standard deviations of an even spread are the root of three times its half width.
        let three_sigma = match term.spread {
            Spread::Normal => off,
            Spread::Uniform => off * 3.0_f64.sqrt(),
        };
        nominal += count * term.factor * term.nominal;
        worst += count * off;
        squares += count * three_sigma * three_sigma;
    }
    Stack { nominal, worst, rss: squares.sqrt() }
}
