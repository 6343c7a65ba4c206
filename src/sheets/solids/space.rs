//! Places in the site's space, and flat frames in it.

use crate::sheets::client::patch::Spot;

/// A place: the plan's x and y, and z up, mm. Also a direction.
pub type Place = [f64; 3];

/// Scalar product.
pub fn dot(a: Place, b: Place) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Vector product.
pub fn cross(a: Place, b: Place) -> Place {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// `a` and `by` times `b`.
pub fn plus(a: Place, b: Place, by: f64) -> Place {
    [a[0] + b[0] * by, a[1] + b[1] * by, a[2] + b[2] * by]
}

/// From `b` to `a`.
pub fn minus(a: Place, b: Place) -> Place {
    plus(a, b, -1.0)
}

/// Of length 1; nothing stays nothing.
pub fn unit(a: Place) -> Place {
    let length = dot(a, a).sqrt();
    if length > 0.0 { a.map(|c| c / length) } else { a }
}

/// A flat frame: `across` runs to the right of whoever looks at its outside, `up` upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Where its (0, 0) lies.
    pub at: Place,
    /// Direction of its x, of length 1.
    pub across: Place,
    /// Direction of its y, of length 1, square to `across`.
    pub up: Place,
}

impl Pose {
    /// Out of the solid that it bounds, towards whoever looks at it.
    pub fn normal(&self) -> Place {
        cross(self.across, self.up)
    }

    /// A spot of it in space.
    pub fn place(&self, [x, y]: Spot) -> Place {
        plus(plus(self.at, self.across, x), self.up, y)
    }

    /// How far a place lies in front of it.
    pub fn ahead(&self, place: Place) -> f64 {
        dot(self.normal(), minus(place, self.at))
    }

    /// Moved out along its normal.
    pub fn out(&self, by: f64) -> Pose {
        Pose { at: plus(self.at, self.normal(), by), ..*self }
    }
}
