//! The floor, and how far each foot reaches down to it.
//!
//! Heights here are plain numbers in one unit of the caller's choice. Measured spots give a plane by least squares, so that
//! one stone that stands proud doesn't tilt a run; or, where the job asks for it, the facets of their Delaunay
//! triangulation, so that the floor goes through every one of them.

use spade::{DelaunayTriangulation, HasPosition, Point2, Triangulation};

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

/// A measured spot as the triangulation takes it.
struct Spot(f64, f64, f64);

impl HasPosition for Spot {
    type Scalar = f64;
    fn position(&self) -> Point2<f64> {
        Point2::new(self.0, self.1)
    }
}

/// The triangles between spots (u, v, z) that make the least thin ones (Delaunay), in a fixed order. Of two spots at one
/// place the later counts. None where all lie in a line.
pub fn facets(spots: &[(f64, f64, f64)]) -> Vec<[(f64, f64, f64); 3]> {
    let spots: Vec<Spot> = spots.iter().map(|&(u, v, z)| Spot(u, v, z)).collect();
    let Ok(net) = DelaunayTriangulation::<Spot>::bulk_load_stable(spots) else { return Vec::new() };
    let corner = |spot: &Spot| (spot.0, spot.1, spot.2);
    net.inner_faces().map(|face| face.vertices().map(|vertex| corner(vertex.data()))).collect()
}

/// How far each foot extends when the one on the highest ground is at its shortest.
pub fn extensions(ground: &[f64], shortest: f64) -> Vec<f64> {
    let highest = ground.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    ground.iter().map(|z| shortest + (highest - z)).collect()
}

#[cfg(test)]
mod tests {
    use super::{Surface, extensions, facets};

    #[test]
    fn facets_cover_the_spots_once() {
        // A square of 4 with a spot inside: four triangles of together 16, whichever way they lie.
        let spots = [(0.0, 0.0, 0.0), (4.0, 0.0, 1.0), (4.0, 4.0, 0.0), (0.0, 4.0, 1.0), (1.0, 2.0, 5.0)];
        let found = facets(&spots);
        let area =
            |[a, b, c]: &[(f64, f64, f64); 3]| ((b.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (b.1 - a.1)).abs() / 2.0;
        assert_eq!(found.len(), 4);
        assert!((found.iter().map(area).sum::<f64>() - 16.0).abs() < 1e-12);
        assert!(found.iter().all(|facet| facet.iter().any(|corner| corner.2 == 5.0)));
        assert!(facets(&[(0.0, 0.0, 0.0), (1.0, 1.0, 0.0), (2.0, 2.0, 0.0)]).is_empty());
    }

    #[test]
    fn the_foot_on_the_highest_ground_is_the_shortest() {
        assert_eq!(extensions(&[0.0, -2.0], 0.5), vec![0.5, 2.5]);
    }

    #[test]
    fn spots_in_a_line_give_no_plane() {
        assert_eq!(Surface::through(&[(0.0, 0.0, 1.0), (5.0, 5.0, 2.0), (9.0, 9.0, 3.0)]), None);
    }
}
