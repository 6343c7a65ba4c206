//! Where lengths of trim meet: as few joints as the stock allows, on tube, off notches, the pieces as even as can be.

use super::metal::Metal;
use super::{Stretch, Wanted};
use crate::solve::{Trim, TrimEnd};
use crate::units::Length;

/// Joints are looked for at uprights, and where there are none at places this far apart: 1 in.
const STEP: Length = Length::from_sixty_fourths(64);

/// A stretch in lengths that the stock yields.
pub fn parted(whole: Stretch, trim: &Trim, metal: &Metal, notches: &[Wanted]) -> Vec<Stretch> {
    let longest = trim.stock.first().copied().unwrap_or_default();
    if longest <= Length::ZERO || whole.to - whole.from <= longest {
        return vec![whole];
    }
    let off_notches = |at: &Length| {
        *at > whole.from
            && *at < whole.to
            && !notches.iter().any(|notch| *at > notch.1 - trim.joint_off && *at < notch.2 + trim.joint_off)
    };
    let uprights: Vec<Length> = metal.uprights.iter().copied().filter(off_notches).collect();
    if let Some(joints) = fewest(whole, &uprights, longest) {
        return cut(whole, &joints, trim, true);
    }
    // No upright where one would have to be: anywhere off the notches, and what is behind it is said.
    let count = (whole.to - whole.from).nm() / STEP.nm();
    let anywhere: Vec<Length> = (1..count.min(MOST)).map(|k| whole.from + STEP * k).filter(off_notches).collect();
    let joints = fewest(whole, &anywhere, longest).unwrap_or_else(|| {
        let parts = ((whole.to - whole.from).nm() / longest.nm() + 1).min(MOST);
        (1..parts).map(|k| whole.from + Length::from_nm((whole.to - whole.from).nm() / parts * k)).collect()
    });
    cut(whole, &joints, trim, false)
}

/// Places that are tried at most.
const MOST: i64 = 4000;

/// The fewest joints among sorted places so that no piece is longer than `longest`; of those the ones whose shortest
/// piece is longest. `None` where the places don't allow it.
fn fewest(whole: Stretch, places: &[Length], longest: Length) -> Option<Vec<Length>> {
    let mut at: Vec<Length> = vec![whole.from];
    at.extend(places);
    at.push(whole.to);
    // For each place: joints up to it, the shortest piece so far (negative, so that less is better), the place before.
    let mut best: Vec<Option<(usize, Length, usize)>> = vec![None; at.len()];
    best[0] = Some((0, -(whole.to - whole.from), 0));
    let mut first = 0;
    for index in 1..at.len() {
        while at[index] - at[first] > longest {
            first += 1;
        }
        best[index] = (first..index)
            .filter_map(|before| {
                let (count, shortest, _) = best[before]?;
                Some((count + 1, shortest.max(-(at[index] - at[before])), before))
            })
            .min();
    }
    best[at.len() - 1]?;
    let mut joints = Vec::new();
    let mut index = at.len() - 1;
    while let Some((_, _, before)) = best[index].filter(|_| index > 0) {
        if before > 0 {
            joints.push(at[before]);
        }
        index = before;
    }
    joints.reverse();
    Some(joints)
}

/// The pieces between joints, a gap between each two.
fn cut(whole: Stretch, joints: &[Length], trim: &Trim, backed: bool) -> Vec<Stretch> {
    let half = trim.joint_gap.half();
    let mut from = (whole.from, whole.ends[0]);
    let mut parts = Vec::new();
    for &joint in joints {
        let end = TrimEnd::Joint(backed);
        parts.push(Stretch { from: from.0, to: joint - half, ends: [from.1, end] });
        from = (joint - half + trim.joint_gap, end);
    }
    parts.push(Stretch { from: from.0, to: whole.to, ends: [from.1, whole.ends[1]] });
    parts
}

#[cfg(test)]
mod tests {
    use super::{Stretch, fewest};
    use crate::solve::TrimEnd;
    use crate::units::Length;

    #[test]
    fn joints_are_few_and_pieces_even() {
        let inches = |count: i64| Length::from_sixty_fourths(count * 64);
        let whole = Stretch { from: inches(0), to: inches(150), ends: [TrimEnd::Square; 2] };
        let places: Vec<Length> = [10, 60, 76, 90, 140].map(inches).to_vec();
        // One joint does for 150 in of 96 in stock; of 60, 76 and 90 the one in the middle leaves the longest short piece.
        assert_eq!(fewest(whole, &places, inches(96)), Some(vec![inches(76)]));
        assert_eq!(fewest(whole, &[inches(140)], inches(96)), None);
        assert_eq!(fewest(whole, &places, inches(66)), Some(vec![inches(60), inches(90)]));
    }
}
