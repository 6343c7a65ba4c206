//! A beam: how it is held, what lies on it.

use super::Bent;

/// How a beam is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Held {
    /// On a support at either end.
    Simple,
    /// Fixed at its left end, free at its right.
    Cantilever,
    /// On a support at its left end and on one this far along; free beyond that.
    Overhang(f64),
}

/// What lies on a beam, downwards positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// A force at one place.
    Point {
        /// The force.
        force: f64,
        /// Where, from the left end.
        at: f64,
    },
    /// The same force on every unit of length between two places.
    Even {
        /// Force by length.
        by_length: f64,
        /// From here.
        from: f64,
        /// To here.
        to: f64,
    },
}

impl Load {
    /// All of it.
    pub fn force(&self) -> f64 {
        match *self {
            Load::Point { force, .. } => force,
            Load::Even { by_length, from, to } => by_length * (to - from),
        }
    }

    /// Its moment about the left end.
    fn moment(&self) -> f64 {
        match *self {
            Load::Point { force, at } => force * at,
            Load::Even { by_length, from, to } => by_length * (to - from) * (from + to) / 2.0,
        }
    }

    /// What it takes off the moment at `x`, and that integrated once and twice, by brackets that are nothing left of
    /// where they start.
    pub(super) fn brackets(&self, x: f64) -> [f64; 4] {
        let beyond = |from: f64, power: i32| if x > from { (x - from).powi(power) } else { 0.0 };
        match *self {
            Load::Point { force, at } => {
                [force * beyond(at, 0), force * beyond(at, 1), force * beyond(at, 2) / 2.0, force * beyond(at, 3) / 6.0]
            }
            Load::Even { by_length, from, to } => {
                let part = |power, by: f64| by_length * (beyond(from, power) - beyond(to, power)) / by;
                [part(1, 1.0), part(2, 2.0), part(3, 6.0), part(4, 24.0)]
            }
        }
    }

    pub(super) fn places(&self) -> [f64; 2] {
        match *self {
            Load::Point { at, .. } => [at, at],
            Load::Even { from, to, .. } => [from, to],
        }
    }
}

/// A straight beam of one section.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// How it is held.
    pub held: Held,
    /// Its whole length, what hangs over included.
    pub length: f64,
    /// Elasticity times second moment.
    pub stiffness: f64,
    /// What lies on it.
    pub loads: Vec<Load>,
}

impl Beam {
    /// Reactions, upwards positive: at the left end and at the other support (nothing for a cantilever).
    pub fn reactions(&self) -> (f64, f64) {
        let force: f64 = self.loads.iter().map(Load::force).sum();
        let moment: f64 = self.loads.iter().map(Load::moment).sum();
        match self.held {
            Held::Cantilever => (force, 0.0),
            Held::Simple => (force - moment / self.length, moment / self.length),
            Held::Overhang(at) => (force - moment / at, moment / at),
        }
    }

    /// Moment that holds a cantilever's left end; nothing for other beams.
    pub(super) fn fixing(&self) -> f64 {
        match self.held {
            Held::Cantilever => self.loads.iter().map(Load::moment).sum(),
            _ => 0.0,
        }
    }

    /// Where its second support stands.
    pub(super) fn second(&self) -> f64 {
        if let Held::Overhang(at) = self.held { at } else { self.length }
    }

    /// How it bends.
    pub fn bent(&self) -> Bent<'_> {
        Bent::of(self)
    }
}
