//! The feet as a whole: the high point, and what each carries.

/// What levelling a run needs, besides each foot's own height (`Foot`).
#[derive(Clone, Debug, Default)]
pub struct Levelling {
    /// The foot on the highest ground, as (leg, foot); `None` where a run has no feet.
    pub high: Option<(usize, usize)>,
    /// What each foot of each leg carries by statics, kg.
    pub loads: Vec<Vec<FootLoad>>,
}

/// What one foot carries, kg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FootLoad {
    /// With all feet of its module bearing.
    pub all: f64,
    /// The most that it may carry when its module rocks on three of its feet.
    pub tripod: f64,
}
