//! What each foot under a rigid box carries. Places in mm, loads in the unit of the weight.

/// Feet more than these have no tripod tried of every three: a diagonal pair then counts as carrying all.
const MOST_TRIED: usize = 24;

/// Shares of a weight over feet that all bear, the box rigid and the feet alike: loads vary in a plane over the feet,
/// add up to the weight and have its moment about both axes. A foot can't pull, so that one that would lift off carries
/// nothing and the others take over. Feet in one line carry what lies on that line; what tips the box over it is its
/// neighbours' to hold.
pub fn shared(feet: &[(f64, f64)], weight: f64, centre: (f64, f64)) -> Vec<f64> {
    let mut bearing: Vec<usize> = (0..feet.len()).collect();
    loop {
        let places: Vec<(f64, f64)> = bearing.iter().map(|&k| feet[k]).collect();
        let loads = linear(&places, weight, centre);
        let lifted = (0..loads.len()).filter(|&k| loads[k] < -1e-9 * weight.abs());
        match lifted.min_by(|&a, &b| loads[a].total_cmp(&loads[b])) {
            Some(worst) if bearing.len() > 1 => {
                bearing.remove(worst);
            }
            _ => {
                let mut all = vec![0.0; feet.len()];
                for (&foot, load) in bearing.iter().zip(loads) {
                    all[foot] = load.max(0.0);
                }
                return all;
            }
        }
    }
}

/// The plane of loads over the feet that has the weight's sum and moments.
fn linear(feet: &[(f64, f64)], weight: f64, centre: (f64, f64)) -> Vec<f64> {
    let count = feet.len() as f64;
    if feet.is_empty() {
        return Vec::new();
    }
    let middle = feet.iter().fold((0.0, 0.0), |sum, foot| (sum.0 + foot.0 / count, sum.1 + foot.1 / count));
    let off: Vec<(f64, f64)> = feet.iter().map(|foot| (foot.0 - middle.0, foot.1 - middle.1)).collect();
    let sum = |of: fn(&(f64, f64)) -> f64| off.iter().map(of).sum::<f64>();
    let (xx, xy, yy) = (sum(|p| p.0 * p.0), sum(|p| p.0 * p.1), sum(|p| p.1 * p.1));
    let (mx, my) = (weight * (centre.0 - middle.0), weight * (centre.1 - middle.1));
    let (all, determinant) = (xx + yy, xx * yy - xy * xy);
    let (per_x, per_y) = if determinant > 1e-9 * all * all {
        ((mx * yy - my * xy) / determinant, (my * xx - mx * xy) / determinant)
    } else if all > 0.0 {
        // All in one line: along its direction (x, y), the spread along it is `all`.
        let (x, y) = if xx >= yy { (xx, xy) } else { (xy, yy) };
        let long = x.hypot(y);
        let (x, y) = (x / long, y / long);
        let slope = (mx * x + my * y) / all;
        (slope * x, slope * y)
    } else {
        (0.0, 0.0)
    };
    off.iter().map(|p| weight / count + per_x * p.0 + per_y * p.1).collect()
}

/// The most that each foot carries when the box rocks on any three of them that hold it up by themselves, by statics. Feet
/// that no three hold up have what [`shared`] gives.
pub fn tripod(feet: &[(f64, f64)], weight: f64, centre: (f64, f64)) -> Vec<f64> {
    let count = feet.len();
    let mut most = shared(feet, weight, centre);
    if count > MOST_TRIED {
        return most.into_iter().map(|load| load.max(weight / 2.0)).collect();
    }
    for a in 0..count {
        for b in a + 1..count {
            for c in b + 1..count {
                if let Some(shares) = held_by([feet[a], feet[b], feet[c]], centre) {
                    for (foot, share) in [a, b, c].into_iter().zip(shares) {
                        most[foot] = most[foot].max(weight * share);
                    }
                }
            }
        }
    }
    most
}

/// Shares of a weight over three feet; `None` where it doesn't stand on them.
fn held_by([a, b, c]: [(f64, f64); 3], at: (f64, f64)) -> Option<[f64; 3]> {
    let twice = (b.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (b.1 - a.1);
    if twice.abs() < 1e-6 {
        return None;
    }
    let second = ((at.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (at.1 - a.1)) / twice;
    let third = ((b.0 - a.0) * (at.1 - a.1) - (at.0 - a.0) * (b.1 - a.1)) / twice;
    let shares = [1.0 - second - third, second, third];
    shares.iter().all(|share| *share >= -1e-9).then_some(shares)
}
