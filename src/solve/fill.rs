//! Shares a length out among widths, exactly.

use crate::parameters::given::Width;
use crate::units::Length;

/// Why widths can't fill a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CannotFill {
    /// Even with every width at its least it is too long, by this much.
    TooLong(Length),
    /// Something is to take what is left, but nobody said of what.
    LeftOfWhat,
}

/// Chooses each width. `least_left` is the least that each 'what is left' may come to, by index. `room` is
/// what all widths together may take; `None` when nothing bounds them. Chosen widths are multiples of
/// `step` where their bounds allow; what doesn't divide goes to the first that has room for it, so that the
/// total is exact.
///
/// - Fixed widths stay, whatever the room.
/// - Ranges grow in proportion to what they may, before anything is 'left'; without a room they stay at their least.
/// - Several 'what is left' share equally.
pub fn fill(
    widths: &[Width],
    least_left: &[Length],
    room: Option<Length>,
    step: Length,
) -> Result<Vec<Length>, CannotFill> {
    let left: Vec<usize> = places(widths, |w| matches!(w, Width::WhatIsLeft));
    let ranges: Vec<usize> = places(widths, |w| matches!(w, Width::Range(..)));
    let mut chosen: Vec<Length> = widths
        .iter()
        .zip(least_left)
        .map(|(width, least)| match *width {
            Width::Fixed(width) => width,
            Width::Range(least, _) => least,
            Width::WhatIsLeft => *least,
        })
        .collect();
    let Some(room) = room else {
        return if left.is_empty() { Ok(chosen) } else { Err(CannotFill::LeftOfWhat) };
    };
    if left.is_empty() && ranges.is_empty() {
        return Ok(chosen);
    }
    let slack = room - chosen.iter().copied().sum();
    if slack < Length::ZERO {
        return Err(CannotFill::TooLong(-slack));
    }
    grow(widths, &ranges, slack, step, &mut chosen);
    if !left.is_empty() {
        let others = chosen.iter().copied().sum::<Length>() - left.iter().map(|&i| chosen[i]).sum();
        share(&left, least_left, room - others, step, &mut chosen);
    }
    Ok(chosen)
}

/// The indices of the widths that satisfy `is`.
fn places(widths: &[Width], is: impl Fn(&Width) -> bool) -> Vec<usize> {
    (0..widths.len()).filter(|&i| is(&widths[i])).collect()
}

/// Gives `slack` to the ranges in proportion to what they may grow.
fn grow(widths: &[Width], ranges: &[usize], slack: Length, step: Length, chosen: &mut [Length]) {
    let may = |i: usize| match widths[i] {
        Width::Range(least, most) => most - least,
        _ => Length::ZERO,
    };
    let all: Length = ranges.iter().map(|&i| may(i)).sum();
    if all <= Length::ZERO {
        return;
    }
    let given = slack.min(all);
    let mut rest = given;
    for &i in ranges {
        let exact = Length::from_nm((i128::from(given.nm()) * i128::from(may(i).nm()) / i128::from(all.nm())) as i64);
        let wide = if given == all { chosen[i] + may(i) } else { down_to(chosen[i] + exact, step).max(chosen[i]) };
        rest -= wide - chosen[i];
        chosen[i] = wide;
    }
    // What rounding kept back: whole steps first, to the first ones; then what is finer than a step.
    let most = |i: usize| match widths[i] {
        Width::Range(_, most) => most,
        _ => Length::ZERO,
    };
    for portion in [step, Length::from_nm(i64::MAX)] {
        for &i in ranges {
            let more = rest.min(portion).min(most(i) - chosen[i]);
            let whole = portion != step || more == step;
            if more > Length::ZERO && whole {
                chosen[i] += more;
                rest -= more;
            }
        }
    }
}

/// Shares `total` equally among the `left` ones, none below its least.
fn share(left: &[usize], least: &[Length], total: Length, step: Length, chosen: &mut [Length]) {
    let (mut open, mut rest) = (left.to_vec(), total);
    loop {
        let each = Length::from_nm(rest.nm() / open.len().max(1) as i64);
        let (held, free): (Vec<usize>, Vec<usize>) = open.iter().partition(|&&i| least[i] > each);
        if held.is_empty() || free.is_empty() {
            break;
        }
        for i in held {
            chosen[i] = least[i];
            rest -= least[i];
        }
        open = free;
    }
    let each = down_to(Length::from_nm(rest.nm() / open.len().max(1) as i64), step);
    let mut over = rest - each * open.len() as i64;
    for &i in &open {
        let extra = over.min(step);
        chosen[i] = each + extra;
        over -= extra;
    }
    if let Some(&first) = open.first() {
        chosen[first] += over;
    }
}

/// The greatest whole multiple of `step` that is not more.
fn down_to(length: Length, step: Length) -> Length {
    if step <= Length::ZERO { length } else { Length::from_nm(length.nm().div_euclid(step.nm()) * step.nm()) }
}

#[cfg(test)]
mod tests {
    use super::{CannotFill, fill};
    use crate::parameters::given::Width;
    use crate::units::Length;

    fn inches(value: f64) -> Length {
        Length::from_inches(value)
    }

    fn run(widths: &[Width], room: Option<f64>) -> Result<Vec<f64>, CannotFill> {
        let least = vec![inches(3.0); widths.len()];
        fill(widths, &least, room.map(inches), Length::from_sixty_fourths(4))
            .map(|all| all.into_iter().map(Length::inches).collect())
    }

    #[test]
    fn ranges_grow_in_proportion_to_what_they_may() {
        let widths = [
            Width::Range(inches(20.0), inches(24.0)),
            Width::Fixed(inches(40.0)),
            Width::Range(inches(10.0), inches(22.0)),
        ];
        assert_eq!(run(&widths, Some(74.0)), Ok(vec![21.0, 40.0, 13.0]));
        assert_eq!(run(&widths, Some(200.0)), Ok(vec![24.0, 40.0, 22.0]));
        assert_eq!(run(&widths, Some(69.0)), Err(CannotFill::TooLong(inches(1.0))));
        assert_eq!(run(&widths, None), Ok(vec![20.0, 40.0, 10.0]));
    }

    #[test]
    fn what_is_left_is_shared_equally_and_adds_up_exactly() {
        let widths = [Width::WhatIsLeft, Width::Fixed(inches(40.0)), Width::WhatIsLeft];
        assert_eq!(run(&widths, Some(70.0625)), Ok(vec![15.0625, 40.0, 15.0]));
        let odd = run(&widths, Some(70.0 + 1.0 / 64.0)).unwrap();
        assert_eq!(odd.iter().sum::<f64>(), 70.0 + 1.0 / 64.0);
        assert_eq!(run(&widths, None), Err(CannotFill::LeftOfWhat));
        assert_eq!(run(&widths, Some(45.0)), Err(CannotFill::TooLong(inches(1.0))));
    }

    #[test]
    fn fixed_widths_stay_whatever_the_room() {
        let widths = [Width::Fixed(inches(40.0)), Width::Fixed(inches(30.0))];
        assert_eq!(run(&widths, Some(10.0)), Ok(vec![40.0, 30.0]));
    }
}
