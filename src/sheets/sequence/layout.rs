//! Where each step stands on the chart: as early as what holds it up lets it, one division a step, one more for each day
//! of waiting.

use crate::solve::Step;

/// Hours of a division of waiting.
const DAY: f64 = 24.0;
/// Longer waits are drawn as this many divisions.
pub const MOST: usize = 10;

/// A step on the chart, in divisions from the left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Where the work begins; it takes one division.
    pub from: usize,
    /// Divisions of waiting after it.
    pub wait: usize,
    /// The step that holds it up longest, by index, and the lane that its line runs in.
    pub held_by: Option<(usize, usize)>,
}

impl Bar {
    /// Where work and waiting end.
    pub fn end(&self) -> usize {
        self.from + 1 + self.wait
    }
}

/// All steps, which come in an order in which each follows those that it comes after.
pub fn bars(steps: &[Step]) -> Vec<Bar> {
    let mut bars: Vec<Bar> = Vec::new();
    for step in steps {
        // The last of equals, so that lines are short.
        let held = step
            .after
            .iter()
            .copied()
            .filter(|&before| before < bars.len())
            .max_by_key(|&before| (bars[before].end(), before));
        let from = held.map_or(0, |before| bars[before].end());
        let wait = step.wait.map_or(0, |hours| ((hours / DAY).ceil() as usize).clamp(1, MOST));
        bars.push(Bar { from, wait, held_by: held.map(|before| (before, 0)) });
    }
    lanes(&mut bars);
    bars
}

/// Lines that go down at one place from different steps run in lanes of their own.
fn lanes(bars: &mut [Bar]) {
    for place in 0..=bars.iter().map(|bar| bar.from).max().unwrap_or(0) {
        let mut known: Vec<usize> = Vec::new();
        for bar in bars.iter_mut().filter(|bar| bar.from == place) {
            if let Some((before, lane)) = &mut bar.held_by {
                *lane = known.iter().position(|other| other == before).unwrap_or_else(|| {
                    known.push(*before);
                    known.len() - 1
                });
            }
        }
    }
}

/// Divisions of the whole chart.
pub fn divisions(bars: &[Bar]) -> usize {
    bars.iter().map(Bar::end).max().unwrap_or(1)
}

/// A time as people say it: days where they are whole.
pub fn time(hours: f64) -> String {
    let days = hours / DAY;
    if days >= 2.0 && (days - days.round()).abs() < 1e-9 {
        format!("{days:.0} days")
    } else if (hours - hours.round()).abs() < 1e-9 {
        format!("{hours:.0} h")
    } else {
        format!("{hours:.1} h")
    }
}

#[cfg(test)]
mod tests {
    use super::{bars, divisions, time};
    use crate::solve::Step;

    fn step(after: &[usize], wait: Option<f64>) -> Step {
        Step { after: after.to_vec(), wait, ..Step::default() }
    }

    #[test]
    fn a_step_begins_when_the_last_of_those_before_it_is_dry() {
        let steps = [step(&[], None), step(&[0], Some(48.0)), step(&[0], None), step(&[1, 2], None)];
        let bars = bars(&steps);
        assert_eq!(bars.iter().map(|bar| bar.from).collect::<Vec<_>>(), [0, 1, 1, 4]);
        assert_eq!(bars[3].held_by, Some((1, 0)));
        assert_eq!(divisions(&bars), 5);
    }

    #[test]
    fn lines_from_two_steps_at_one_place_keep_apart() {
        let steps = [step(&[], None), step(&[], None), step(&[0], None), step(&[1], None), step(&[0], None)];
        let lanes: Vec<usize> = bars(&steps).iter().filter_map(|bar| bar.held_by).map(|(_, lane)| lane).collect();
        assert_eq!(lanes, [0, 1, 0]);
    }

    #[test]
    fn times_are_said_in_days_where_they_are_whole() {
        assert_eq!([24.0, 48.0, 168.0, 36.0, 0.5].map(time), ["24 h", "2 days", "7 days", "36 h", "0.5 h"]);
    }
}
