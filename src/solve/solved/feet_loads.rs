//! The feet as a whole: the high point, and what each carries.

/// What levelling a run needs, besides each foot's own height (`Foot`).
#[derive(Clone, Debug, Default)]
pub struct Levelling {
    /// The foot on the highest ground, as (leg, foot); the first of several. `None` where a run has no feet.
    pub high: Option<(usize, usize)>,
    /// What stands on the feet of each module of each leg.
    pub boxes: Vec<Vec<BoxLoad>>,
    /// What each foot of each leg carries by statics, kg.
    pub loads: Vec<Vec<FootLoad>>,
}

/// What stands on the feet of a module.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BoxLoad {
    /// Its mass dressed, what stands on the floor by itself left out, kg; with its share of neighbours that hang on it.
    pub mass: f64,
    /// Where its centre of mass lies, (u, v) mm.
    pub centre: (f64, f64),
}

/// What one foot carries, kg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FootLoad {
    /// With all feet of its module bearing.
    pub all: f64,
    /// The most that it may carry when its module rocks on three of its feet.
    pub tripod: f64,
}
