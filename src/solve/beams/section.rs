//! Cross sections: area, centroid, second moment and section modulus about the level axis, corners taken as sharp.

/// A cross section by its sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A solid bar.
    Rectangle {
        /// Level side.
        width: f64,
        /// Upright side.
        height: f64,
    },
    /// A tube with four walls.
    Tube {
        /// Level side, outside.
        width: f64,
        /// Upright side, outside.
        height: f64,
        /// Wall.
        wall: f64,
    },
    /// An angle with its level leg at the bottom.
    Angle {
        /// Level leg.
        width: f64,
        /// Upright leg.
        height: f64,
        /// Thickness.
        wall: f64,
    },
    /// A channel with an upright web and two level flanges.
    Channel {
        /// Flange.
        width: f64,
        /// Web, over the flanges.
        height: f64,
        /// Thickness.
        wall: f64,
    },
}

/// What a cross section is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Area.
    pub area: f64,
    /// Second moment about the level axis through the centroid.
    pub inertia: f64,
    /// Height of the centroid over the bottom.
    pub centroid: f64,
    /// From the centroid to the farther of top and bottom.
    pub extreme: f64,
}

impl Section {
    /// Section modulus.
    pub fn modulus(&self) -> f64 {
        self.inertia / self.extreme
    }
}

/// Level rectangles, width, bottom and top, that a shape is the sum of; those taken away have a negative width.
type Rectangles = [(f64, f64, f64); 3];

impl Shape {
    /// Its outside: level and upright.
    pub fn outside(&self) -> (f64, f64) {
        match *self {
            Shape::Rectangle { width, height }
            | Shape::Tube { width, height, .. }
            | Shape::Angle { width, height, .. }
            | Shape::Channel { width, height, .. } => (width, height),
        }
    }

    fn rectangles(&self) -> Rectangles {
        const NONE: (f64, f64, f64) = (0.0, 0.0, 0.0);
        match *self {
            Shape::Rectangle { width, height } => [(width, 0.0, height), NONE, NONE],
            Shape::Tube { width, height, wall } => {
                let inside = (width - 2.0 * wall).max(0.0);
                [(width, 0.0, height), (-inside, wall.min(height / 2.0), (height - wall).max(height / 2.0)), NONE]
            }
            Shape::Angle { width, height, wall } => [(width, 0.0, wall), (wall, wall, height), NONE],
            Shape::Channel { width, height, wall } => {
                [(width, 0.0, wall), (wall, wall, height - wall), (width, height - wall, height)]
            }
        }
    }

    /// What it is worth: the sum of its rectangles about their common centroid.
    pub fn section(&self) -> Section {
        let parts = self.rectangles();
        let area: f64 = parts.iter().map(|(w, low, high)| w * (high - low)).sum();
        let first: f64 = parts.iter().map(|(w, low, high)| w * (high * high - low * low) / 2.0).sum();
        let centroid = first / area;
        let inertia =
            parts.iter().map(|(w, low, high)| w * ((high - centroid).powi(3) - (low - centroid).powi(3)) / 3.0).sum();
        let (_, height) = self.outside();
        Section { area, inertia, centroid, extreme: centroid.max(height - centroid) }
    }
}
