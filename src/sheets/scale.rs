//! Standard scales: the one printed is the one drawn.

/// A standard scale, as the number that the model is divided by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Scale(pub u32);

/// Reductions of ISO 5455 (1:1, 1:2, 1:5 and their tens) and of the architectural scales
/// (3 in = 1 ft is 1:4, 1 1/2 in 1:8, 1 in 1:12, 3/4 in 1:16, 1/2 in 1:24, 3/8 in 1:32, 1/4 in 1:48).
pub const STANDARD: &[Scale] = &[
    Scale(1),
    Scale(2),
    Scale(4),
    Scale(5),
    Scale(8),
    Scale(10),
    Scale(12),
    Scale(16),
    Scale(20),
    Scale(24),
    Scale(32),
    Scale(48),
    Scale(50),
    Scale(100),
    Scale(200),
    Scale(500),
    Scale(1000),
    Scale(2000),
    Scale(5000),
];

impl Scale {
    /// Paper millimetres for a model millimetre.
    pub fn factor(self) -> f64 {
        1.0 / f64::from(self.0)
    }

    /// As the title block says it.
    pub fn words(self) -> String {
        format!("1:{}", self.0)
    }

    /// The largest standard scale at which a model of this size (mm) fits a room of paper (mm); the smallest
    /// when none does. `largest` bounds it from above, so that a small thing isn't blown up.
    pub fn fitting(model: (f64, f64), room: (f64, f64), largest: Scale) -> Scale {
        let fits = |scale: &&Scale| {
            **scale >= largest && model.0 * scale.factor() <= room.0 && model.1 * scale.factor() <= room.1
        };
        STANDARD.iter().find(fits).or(STANDARD.last()).copied().unwrap_or(Scale(1))
    }
}

#[cfg(test)]
mod tests {
    use super::Scale;

    #[test]
    fn the_largest_that_fits_is_taken() {
        assert_eq!(Scale::fitting((3000.0, 900.0), (350.0, 130.0), Scale(1)), Scale(10));
        assert_eq!(Scale::fitting((3600.0, 900.0), (350.0, 130.0), Scale(1)), Scale(12));
        assert_eq!(Scale::fitting((30.0, 9.0), (350.0, 130.0), Scale(5)), Scale(5));
    }
}
