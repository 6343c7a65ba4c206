//! Where a sheet that no stock takes whole is parted.

use crate::solve::SheetMaterial;
use crate::units::Length;

/// A place where a sheet may be parted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// The middle of the gap.
    pub at: Length,
    /// There are tubes behind it as far as there is board.
    pub on_framing: bool,
    /// It keeps its distance from the corners of cutouts.
    pub off_corners: bool,
}

/// How far apart the joints of a sheet may be: across, and up. `None` where it can be cut whole.
pub fn reach(material: &SheetMaterial, width: Length, height: Length) -> (Option<Length>, Option<Length>) {
    if material.takes((width, height)) {
        return (None, None);
    }
    let across = |high: Length| widest(material, high);
    if let Some(most) = across(height) {
        return (Some(most), None);
    }
    // Too high for any sheet: rows, as high as leaves the fewest of them.
    let upright = |&(width, length): &(Length, Length)| if material.turned { width.max(length) } else { width };
    let rows = material.sizes.iter().map(upright).max().unwrap_or(height).min(height);
    let flat = |&(width, length): &(Length, Length)| if material.turned { width.min(length) } else { width };
    let low = material.sizes.iter().map(flat).max().unwrap_or(height);
    let row = if across(rows).is_some_and(|most| most >= width) { rows } else { low.min(height) };
    (across(row).filter(|most| *most < width), Some(row))
}

/// The widest piece of a height.
fn widest(material: &SheetMaterial, height: Length) -> Option<Length> {
    let lying = material.sizes.iter().filter(|size| height <= size.0).map(|size| size.1);
    let standing = material.sizes.iter().filter(|size| material.turned && height <= size.1).map(|size| size.0);
    lying.chain(standing).max()
}

/// Joints between two edges, no piece longer than `most` with its share of the gaps nor shorter than `least`: as few as
/// can be, on framing and off corners before all, then as even as can be. Where no candidate will do, the joints are
/// spaced evenly and lie on nothing.
pub fn joints(
    (from, to): (Length, Length),
    (most, least, gap): (Length, Length, Length),
    candidates: &[Candidate],
) -> Vec<Candidate> {
    let good: Vec<Candidate> = candidates.iter().copied().filter(|one| one.on_framing && one.off_corners).collect();
    let clear: Vec<Candidate> = candidates.iter().copied().filter(|one| one.off_corners).collect();
    for allowed in [good, clear] {
        if let Some(found) = fewest((from, to), (most, least, gap), &allowed) {
            return found;
        }
    }
    let room = most - gap;
    if room <= Length::ZERO {
        return Vec::new();
    }
    let count = (to - from).nm().div_euclid(room.nm()) + i64::from((to - from).nm() % room.nm() != 0);
    let share = |k: i64| from + Length::from_nm((to - from).nm() / count.max(1) * k);
    (1..count).map(|k| Candidate { at: share(k), on_framing: false, off_corners: false }).collect()
}

/// The fewest joints, and among those the set whose longest piece is shortest; `None` where the candidates don't do.
fn fewest(
    (from, to): (Length, Length),
    (most, least, gap): (Length, Length, Length),
    candidates: &[Candidate],
) -> Option<Vec<Candidate>> {
    // Best way to have a joint at each stop: (pieces, longest piece, the stop before).
    let mut stops: Vec<(Length, Option<Candidate>)> = vec![(from, None)];
    stops.extend(candidates.iter().filter(|one| one.at > from && one.at < to).map(|one| (one.at, Some(*one))));
    stops.push((to, None));
    let mut best: Vec<Option<(usize, Length, usize)>> = vec![None; stops.len()];
    best[0] = Some((0, Length::ZERO, 0));
    for k in 1..stops.len() {
        for j in 0..k {
            let Some((pieces, longest, _)) = best[j] else { continue };
            let lost = [j != 0, k + 1 != stops.len()].into_iter().filter(|end| *end).count() as i64;
            let long = stops[k].0 - stops[j].0 - Length::from_nm(gap.nm() * lost / 2);
            if long > most || long < least {
                continue;
            }
            let way = (pieces + 1, longest.max(long), j);
            if best[k].is_none_or(|other| (way.0, way.1) < (other.0, other.1)) {
                best[k] = Some(way);
            }
        }
    }
    let mut at = stops.len() - 1;
    best[at]?;
    let mut found = Vec::new();
    while let Some((_, _, before)) = best[at] {
        if at == 0 {
            break;
        }
        found.extend(stops[at].1);
        at = before;
    }
    found.reverse();
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::{Candidate, joints};
    use crate::units::Length;

    fn inches(value: f64) -> Length {
        Length::from_inches(value)
    }

    fn stud(at: f64) -> Candidate {
        Candidate { at: inches(at), on_framing: true, off_corners: true }
    }

    #[test]
    fn a_long_sheet_is_parted_on_the_stud_that_leaves_the_evenest_pieces() {
        let studs: Vec<Candidate> = [16.0, 32.0, 48.0].map(stud).into();
        let found = joints((inches(0.0), inches(64.0)), (inches(60.0), inches(4.0), inches(0.125)), &studs);
        assert_eq!(found, [stud(32.0)]);
    }

    #[test]
    fn a_corner_of_a_cutout_moves_the_joint_to_the_next_stud() {
        let mut studs: Vec<Candidate> = [16.0, 32.0, 46.0].map(stud).into();
        studs[1].off_corners = false;
        let found = joints((inches(0.0), inches(64.0)), (inches(60.0), inches(4.0), inches(0.125)), &studs);
        assert_eq!(found, [stud(46.0)], "18 in and 46 in, against 16 in and 48 in");
    }

    #[test]
    fn without_framing_the_joints_are_even_and_say_so() {
        let found = joints((inches(0.0), inches(100.0)), (inches(60.0), inches(4.0), inches(0.125)), &[]);
        assert_eq!(found.len(), 1);
        assert!(!found[0].on_framing && found[0].at == inches(50.0));
    }
}
