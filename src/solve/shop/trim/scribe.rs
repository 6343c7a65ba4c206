//! One piece of trim: its scribed bottom, its notches, its fasteners.

use super::metal::Metal;
use super::{Stretch, Wanted};
use crate::geometry::{Outline, Region};
use crate::solve::{Face, Leg, Trim, TrimNotch, TrimPiece, TrimStation};
use crate::units::Length;

/// A bend of the floor that is flatter than this is no station of its own: 1/32 in, finer than a scribe is cut.
const BEND: f64 = 25.4 / 32.0;
/// From an end of a tube to a fastener in it, 3/8 in: common practice.
const EDGE: Length = Length::from_sixty_fourths(24);

/// The piece, without its mark.
pub fn piece(
    leg: &Leg,
    (at, face): (usize, Face),
    trim: &Trim,
    part: Stretch,
    wanted: &[Wanted],
    metal: &Metal,
) -> TrimPiece {
    let bottom = bottom(leg, face, trim, part.from, part.to);
    let notches: Vec<TrimNotch> = wanted
        .iter()
        .filter(|notch| notch.1 < part.to && notch.2 > part.from)
        .map(|&(fitting, from, to, low)| {
            let (from, to) = (from.max(part.from), to.min(part.to));
            let highest = between(&bottom, from.mm(), to.mm()).iter().map(|p| p.1).fold(f64::MIN, f64::max);
            TrimNotch { fitting, from, to, bottom: low, left_over: low - Length::from_mm(highest) }
        })
        .collect();
    let region = Region::solid(outline(&bottom, trim.top.mm(), &notches));
    let (fasteners, into_frame) = fasteners(part, trim, metal, &notches);
    TrimPiece {
        mark: String::new(),
        leg: at,
        face,
        from: part.from,
        to: part.to,
        top: trim.top,
        stations: stations(&bottom, part, trim, face),
        notches,
        ends: part.ends,
        fasteners,
        fastener_z: metal.z,
        into_frame,
        mass: region.area() * trim.thickness.mm() * 1e-9 * trim.density,
        region,
    }
}

/// The scribed bottom between two places, (place, z) mm: a gap over the floor, and never over the top.
fn bottom(leg: &Leg, face: Face, trim: &Trim, from: Length, to: Length) -> Vec<(f64, f64)> {
    let most = trim.top.mm() - 1.0;
    let line = leg.floor_along(face, from, to);
    line.into_iter().map(|(at, z)| (at, (z + trim.floor_gap.mm()).min(most))).collect()
}

/// The highest place of the scribed bottom between two places.
pub fn highest(leg: &Leg, face: Face, trim: &Trim, from: Length, to: Length) -> Length {
    let line = bottom(leg, face, trim, from, to.max(from));
    Length::from_mm(line.iter().map(|point| point.1).fold(f64::MIN, f64::max))
}

/// The part of a line between two places, both ends on it.
fn between(line: &[(f64, f64)], from: f64, to: f64) -> Vec<(f64, f64)> {
    let mut part = vec![(from, read(line, from))];
    part.extend(line.iter().copied().filter(|point| point.0 > from && point.0 < to));
    part.push((to, read(line, to)));
    part
}

/// Height of a line at a place.
fn read(line: &[(f64, f64)], at: f64) -> f64 {
    let after = line.partition_point(|point| point.0 <= at);
    match (after.checked_sub(1).and_then(|before| line.get(before)), line.get(after)) {
        (Some(a), Some(b)) => a.1 + (b.1 - a.1) * (at - a.0) / (b.0 - a.0),
        (Some(only), None) | (None, Some(only)) => only.1,
        (None, None) => 0.0,
    }
}

/// The side that is seen: along the bottom, then back along the top, down into every notch and up again.
fn outline(bottom: &[(f64, f64)], top: f64, notches: &[TrimNotch]) -> Outline {
    let (Some(&(from, _)), Some(&(to, _))) = (bottom.first(), bottom.last()) else { return Outline::default() };
    let mut upper: Vec<(f64, f64)> = Vec::new();
    let mut reached = from;
    for notch in notches {
        let (a, b, low) = (notch.from.mm().max(reached), notch.to.mm(), notch.bottom.mm());
        if b <= a {
            continue;
        }
        if a > reached {
            upper.extend([(reached, top), (a, top)]);
        }
        upper.extend([(a, low), (b, low)]);
        reached = b;
    }
    if reached < to {
        upper.extend([(reached, top), (to, top)]);
    }
    upper.dedup_by(|a, b| (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9);
    Outline::from_points(bottom.iter().copied().chain(upper.into_iter().rev()))
}

/// Heights along the piece: at its ends, at even distances from its left end as it is seen, and wherever the floor bends or
/// steps.
fn stations(bottom: &[(f64, f64)], part: Stretch, trim: &Trim, face: Face) -> Vec<TrimStation> {
    let height = |z: f64| trim.top - Length::from_mm(z);
    let mut all: Vec<TrimStation> = Vec::new();
    // Seen from outside, u runs to the left on the back and v does on the left end.
    let mirrored = matches!(face, Face::Back | Face::Left);
    let length = part.to - part.from;
    let count = if trim.stations > Length::ZERO { (length.nm() - 1) / trim.stations.nm() } else { 0 };
    let mut places: Vec<Length> = vec![part.from, part.to];
    // One right beside the far end would only repeat it.
    let even = (1..=count.min(400)).map(|k| trim.stations * k).filter(|by| (length - *by) * 6 >= trim.stations);
    places.extend(even.map(|by| if mirrored { part.to - by } else { part.from + by }));
    for (index, window) in bottom.windows(3).enumerate() {
        let [a, b, c] = [window[0], window[1], window[2]];
        let steps = (b.0 - a.0).abs() < 1e-6 || (c.0 - b.0).abs() < 1e-6;
        let straight = a.1 + (c.1 - a.1) * (b.0 - a.0) / (c.0 - a.0).max(1e-9);
        if steps {
            all.push(TrimStation { at: Length::from_mm(bottom[index + 1].0), height: height(bottom[index + 1].1) });
        } else if (b.1 - straight).abs() > BEND {
            places.push(Length::from_mm(b.0));
        }
    }
    places.sort();
    places.dedup();
    let stepped = |place: &Length| all.iter().any(|station| (station.at - *place).abs() < Length::from_mm(1e-3));
    let smooth: Vec<Length> = places.iter().copied().filter(|place| !stepped(place)).collect();
    all.extend(smooth.into_iter().map(|at| TrimStation { at, height: height(read(bottom, at.mm())) }));
    all.sort_by_key(|station| station.at);
    all
}

/// Fasteners: near both ends and evenly between, each moved to the nearest tube, none in a notch; and whether all are in tube.
fn fasteners(part: Stretch, trim: &Trim, metal: &Metal, notches: &[TrimNotch]) -> (Vec<Length>, bool) {
    let length = part.to - part.from;
    let (first, last) = (part.from + trim.fastener_end, part.to - trim.fastener_end);
    let even: Vec<Length> = if first >= last {
        vec![part.from + length.half()]
    } else {
        let gaps = ((last - first).nm() + trim.fasteners.nm() - 1) / trim.fasteners.nm().max(1);
        let gaps = gaps.clamp(1, 4000);
        (0..=gaps).map(|k| first + Length::from_nm((last - first).nm() * k / gaps)).collect()
    };
    let notched = |at: Length| {
        notches.iter().any(|notch| notch.bottom < metal.z + EDGE && at > notch.from - EDGE && at < notch.to + EDGE)
    };
    let mut into_frame = true;
    let mut all: Vec<Length> = even
        .into_iter()
        .map(|at| {
            let near = metal.nearest(at, EDGE).filter(|near| *near > part.from && *near < part.to);
            into_frame &= near.is_some();
            near.unwrap_or(at)
        })
        .filter(|at| !notched(*at))
        .collect();
    all.sort();
    all.dedup_by(|a, b| *a - *b < EDGE);
    (all, into_frame)
}
