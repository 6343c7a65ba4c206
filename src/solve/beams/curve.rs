//! How a beam bends: shear, moment, slope and deflection anywhere, and the greatest of each.
//!
//! The moment is integrated twice with brackets, exactly, for any loads. Greatest values are looked for between the
//! places where loads and supports stand: the moment is greatest where the shear passes through nothing, the deflection
//! where the slope does.

use super::{Beam, Held, Load};

/// Halvings by which the place of a greatest value is found: to a millionth of a millionth of a stretch.
const HALVINGS: usize = 48;
/// Stretches looked at between two places. Within one of them the slope is a polynomial of degree three or less.
const STRETCHES: usize = 8;

/// A beam with the constants of its curve.
#[derive(Clone, Debug)]
pub struct Bent<'a> {
    beam: &'a Beam,
    left: f64,
    right: f64,
    second: f64,
    fixing: f64,
    slope: f64,
}

impl<'a> Bent<'a> {
    pub(super) fn of(beam: &'a Beam) -> Bent<'a> {
        let (left, right) = beam.reactions();
        let mut bent = Bent { beam, left, right, second: beam.second(), fixing: beam.fixing(), slope: 0.0 };
        if beam.held != Held::Cantilever {
            // Both supports stay where they are.
            bent.slope = -bent.integrated(bent.second)[3] / bent.second;
        }
        bent
    }

    /// Shear, moment (sagging positive), and the moment integrated once and twice from the left end.
    fn integrated(&self, x: f64) -> [f64; 4] {
        let reaction = |force: f64, at: f64| Load::Point { force, at }.brackets(x);
        let mut sum = [self.left, self.left * x - self.fixing, 0.0, 0.0];
        sum[2] = self.left * x * x / 2.0 - self.fixing * x;
        sum[3] = self.left * x * x * x / 6.0 - self.fixing * x * x / 2.0;
        if self.beam.held != Held::Cantilever {
            for (sum, part) in sum.iter_mut().zip(reaction(self.right, self.second)) {
                *sum += part;
            }
        }
        for load in &self.beam.loads {
            for (sum, part) in sum.iter_mut().zip(load.brackets(x)) {
                *sum -= part;
            }
        }
        sum
    }

    /// Moment at `x`, sagging positive.
    pub fn moment(&self, x: f64) -> f64 {
        self.integrated(x)[1]
    }

    /// Deflection at `x`, downwards positive.
    pub fn deflection(&self, x: f64) -> f64 {
        -(self.integrated(x)[3] + self.slope * x) / self.beam.stiffness
    }

    /// Deflection at the free end, downwards positive.
    pub fn tip(&self) -> f64 {
        self.deflection(self.beam.length)
    }

    /// Deflection half way along, between the supports, downwards positive.
    pub fn middle(&self) -> f64 {
        self.deflection(self.second / 2.0)
    }

    /// The greatest moment without its sign.
    pub fn greatest_moment(&self) -> f64 {
        self.greatest(|x| self.integrated(x)[0], |x| self.moment(x))
    }

    /// The greatest shear without its sign, looked for beside every place where it jumps.
    pub fn greatest_shear(&self) -> f64 {
        let beside = self.beam.length * 1e-9;
        let places = self.places();
        let near = places.iter().flat_map(|x| [x - beside, x + beside]);
        near.filter(|x| (0.0..=self.beam.length).contains(x)).map(|x| self.integrated(x)[0].abs()).fold(0.0, f64::max)
    }

    /// The greatest deflection without its sign, anywhere.
    pub fn greatest_deflection(&self) -> f64 {
        self.greatest(|x| self.integrated(x)[2] + self.slope, |x| self.deflection(x))
    }

    /// Where loads and supports stand, from left to right.
    fn places(&self) -> Vec<f64> {
        let mut places: Vec<f64> = self.beam.loads.iter().flat_map(Load::places).collect();
        places.extend([0.0, self.second, self.beam.length]);
        places.retain(|x| (0.0..=self.beam.length).contains(x));
        places.sort_by(f64::total_cmp);
        places.dedup();
        places
    }

    /// The greatest of `value` without its sign, where `change` passes through nothing or loads and supports stand.
    fn greatest(&self, change: impl Fn(f64) -> f64, value: impl Fn(f64) -> f64) -> f64 {
        let places = self.places();
        let mut greatest = places.iter().map(|&x| value(x).abs()).fold(0.0, f64::max);
        for pair in places.windows(2) {
            let at = |k: usize| pair[0] + (pair[1] - pair[0]) * k as f64 / STRETCHES as f64;
            for k in 0..STRETCHES {
                greatest = greatest.max(value(at(k)).abs());
                // Just inside the stretch: the shear jumps at its ends.
                let inside = (at(k + 1) - at(k)) * 1e-9;
                let (mut low, mut high) = (at(k) + inside, at(k + 1) - inside);
                let rising = change(high) > 0.0;
                if (change(low) > 0.0) == rising {
                    continue;
                }
                for _ in 0..HALVINGS {
                    let middle = (low + high) / 2.0;
                    if (change(middle) > 0.0) == rising { high = middle } else { low = middle }
                }
                greatest = greatest.max(value(low).abs());
            }
        }
        greatest
    }
}
