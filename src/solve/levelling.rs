//! The floor, and how far each foot reaches down to it.
//!
//! Heights here are plain numbers in one unit of the caller's choice. Measured spots give a plane by least squares; a foot
//! that stands on a spot (within a reach) stands on that spot's own height, any other on the plane. So a step
//! in the floor is met exactly where it was measured under the feet, and one stone that stands proud elsewhere
//! doesn't tilt a foot.

/// A plane over (u, v): z = `at_origin` + `per_u` u + `per_v` v.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Surface {
    /// Height at (0, 0).
    pub at_origin: f64,
    /// Rise per unit of u.
    pub per_u: f64,
    /// Rise per unit of v.
    pub per_v: f64,
}

impl Surface {
    /// Height at (u, v).
    pub fn height(&self, u: f64, v: f64) -> f64 {
        self.at_origin + self.per_u * u + self.per_v * v
    }

    /// The plane with the least sum of squared vertical distances to the points (u, v, z). `None` when there
    /// are fewer than three, or all lie in a line.
    pub fn through(points: &[(f64, f64, f64)]) -> Option<Surface> {
        let count = points.len() as f64;
        if points.len() < 3 {
            return None;
        }
        let mean = |pick: fn(&(f64, f64, f64)) -> f64| points.iter().map(pick).sum::<f64>() / count;
        // About the middle, so that points far from the origin lose no figures.
        let (mu, mv, mz) = (mean(|p| p.0), mean(|p| p.1), mean(|p| p.2));
        let (mut uu, mut uv, mut vv, mut uz, mut vz) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for &(u, v, z) in points {
            let (u, v, z) = (u - mu, v - mv, z - mz);
            uu += u * u;
            uv += u * v;
            vv += v * v;
            uz += u * z;
            vz += v * z;
        }
        let determinant = uu * vv - uv * uv;
        if determinant.is_nan() || determinant <= 1e-9 * (uu + vv) * (uu + vv) {
            return None;
        }
        let per_u = (uz * vv - vz * uv) / determinant;
        let per_v = (vz * uu - uz * uv) / determinant;
        Some(Surface { at_origin: mz - per_u * mu - per_v * mv, per_u, per_v })
    }
}

/// The floor's height under each foot: the spot's own where one lies within `reach`, the plane's elsewhere.
pub fn ground_under(feet: &[(f64, f64)], plane: &Surface, spots: &[(f64, f64, f64)], reach: f64) -> Vec<f64> {
    feet.iter()
        .map(|&(u, v)| {
            let near = spots
                .iter()
                .map(|spot| ((spot.0 - u).hypot(spot.1 - v), spot.2))
                .filter(|(distance, _)| *distance <= reach)
                .min_by(|a, b| a.0.total_cmp(&b.0));
            near.map_or_else(|| plane.height(u, v), |(_, z)| z)
        })
        .collect()
}

/// How far each foot extends when the one on the highest ground is at its shortest.
pub fn extensions(ground: &[f64], shortest: f64) -> Vec<f64> {
    let highest = ground.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    ground.iter().map(|z| shortest + (highest - z)).collect()
}

#[cfg(test)]
mod tests {
    use super::{Surface, extensions, ground_under};

    #[test]
    fn a_foot_on_a_spot_stands_on_it() {
        let spots = [(0.0, 0.0, 0.0), (10.0, 0.0, 0.0), (0.0, 10.0, 0.0), (10.0, 10.0, 1.0)];
        let plane = Surface::through(&spots).unwrap();
        assert_eq!(ground_under(&[(10.0, 10.5)], &plane, &spots, 1.0), vec![1.0]);
        assert!((ground_under(&[(5.0, 5.0)], &plane, &spots, 1.0)[0] - 0.25).abs() < 1e-12);
        assert_eq!(extensions(&[0.0, -2.0], 0.5), vec![0.5, 2.5]);
    }

    #[test]
    fn spots_in_a_line_give_no_plane() {
        assert_eq!(Surface::through(&[(0.0, 0.0, 1.0), (5.0, 5.0, 2.0), (9.0, 9.0, 3.0)]), None);
    }
}
