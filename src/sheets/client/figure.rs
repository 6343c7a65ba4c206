//! A walking figure of 67 in, for scale: flat greys, limbs as tapered strokes along smooth spines.

use super::brush::Brush;
use super::patch::{Patch, Ring, Spot, disc, smooth};
use super::scene::INCH;
use crate::drawing::Colour;

/// Height, mm.
pub const HEIGHT: f64 = 67.0 * INCH;
/// From its middle to the end of its reach, either way, mm.
pub const REACH: f64 = 16.0 * INCH;

const SKIN: Colour = Colour::from_hex(0xdddcd9);
const CLOTH: Colour = Colour::from_hex(0xd6d5d2);
const DARK: Colour = Colour::from_hex(0xc9c8c5);
const BOWL: Colour = Colour::from_hex(0xe4e3e0);
const PARTING: Colour = Colour::from_hex(0xf3f1ed);

fn limb(points: &[(f64, f64)], widths: &[f64]) -> Patch {
    let spots: Vec<Spot> = points.iter().map(|(x, y)| [*x, *y]).collect();
    let wide: Vec<Spot> = widths.iter().map(|w| [*w, 0.0]).collect();
    let (spine, wide) = (smooth(&spots, false, 5), smooth(&wide, false, 5));
    let (mut left, mut right) = (Ring::new(), Ring::new());
    for (k, p) in spine.iter().enumerate() {
        let (a, b) = (spine[k.saturating_sub(1)], spine[(k + 1).min(spine.len() - 1)]);
        let length = (b[0] - a[0]).hypot(b[1] - a[1]).max(1e-9);
        let half = wide[k][0] / 2.0;
        let (nx, ny) = (-(b[1] - a[1]) / length * half, (b[0] - a[0]) / length * half);
        left.push([p[0] + nx, p[1] + ny]);
        right.push([p[0] - nx, p[1] - ny]);
    }
    left.extend(right.into_iter().rev());
    let end = |k: usize, w: f64| disc(spine[k], w / 2.0, 12);
    Patch::union(&[Patch::of(left), end(0, widths[0]), end(spine.len() - 1, widths[widths.len() - 1])])
}

fn shape(points: &[(f64, f64)]) -> Patch {
    let spots: Vec<Spot> = points.iter().map(|(x, y)| [*x, *y]).collect();
    Patch::of(smooth(&spots, true, 5))
}

/// Paints the figure with its middle at `foot`, walking to the viewer's right (`way` 1) or left (-1).
pub fn draw(brush: &mut Brush<'_>, foot: Spot, way: f64) {
    let back_leg =
        limb(&[(-1.2, 31.0), (-1.4, 24.0), (-2.2, 17.5), (-5.6, 10.5), (-9.0, 5.0)], &[7.0, 5.6, 4.1, 3.5, 2.2]);
    let back_foot = shape(&[
        (-10.6, 5.6),
        (-9.6, 2.6),
        (-7.6, 0.5),
        (-5.0, 0.05),
        (-4.0, 0.5),
        (-4.7, 1.9),
        (-6.6, 3.8),
        (-7.6, 5.6),
    ]);
    let front_leg = limb(&[(1.2, 31.0), (3.3, 24.5), (5.6, 18.0), (7.4, 10.5), (9.2, 3.4)], &[7.2, 5.9, 4.3, 3.6, 2.3]);
    let front_foot =
        shape(&[(7.9, 4.3), (7.7, 1.2), (8.6, 0.15), (11.6, 0.75), (14.6, 1.7), (15.0, 2.7), (12.8, 3.4), (10.6, 4.6)]);
    let far_arm = limb(&[(1.0, 53.2), (2.6, 49.0), (3.6, 45.0), (7.4, 43.6), (10.6, 43.5)], &[3.6, 3.4, 2.8, 2.3, 1.7]);
    let coat = shape(&[
        (-1.2, 57.4),
        (-3.4, 55.4),
        (-4.3, 51.5),
        (-4.2, 47.5),
        (-3.3, 43.0),
        (-4.0, 38.0),
        (-5.2, 32.0),
        (-5.9, 27.2),
        (-2.0, 26.4),
        (2.0, 26.5),
        (5.6, 27.4),
        (5.0, 32.0),
        (4.0, 38.0),
        (3.3, 43.0),
        (4.1, 47.5),
        (4.2, 51.0),
        (3.0, 54.8),
        (1.3, 57.3),
    ]);
    let near_arm =
        limb(&[(-0.6, 53.4), (-1.5, 49.0), (-1.3, 44.6), (3.2, 42.4), (9.2, 42.9)], &[4.4, 3.9, 3.2, 2.5, 1.7]);
    let neck = limb(&[(0.0, 56.0), (0.45, 58.0), (0.9, 60.0)], &[3.0, 2.9, 2.7]);
    let head = shape(&[
        (1.2, 66.6),
        (3.4, 65.6),
        (4.3, 63.0),
        (4.15, 61.5),
        (4.65, 60.6),
        (4.1, 60.0),
        (3.8, 58.4),
        (2.3, 57.7),
        (0.6, 58.6),
        (-1.0, 60.0),
        (-1.9, 62.6),
        (-1.3, 65.4),
    ]);
    let hair = shape(&[
        (1.2, 67.0),
        (3.3, 66.2),
        (3.6, 64.9),
        (2.0, 64.2),
        (1.1, 62.4),
        (0.7, 60.0),
        (-0.9, 58.8),
        (-1.9, 60.2),
        (-2.3, 63.0),
        (-1.5, 65.8),
    ]);
    let hair = Patch::union(&[hair, disc([-2.9, 62.2], 1.55, 12)]);
    let bowl = shape(&[(7.8, 46.2), (8.2, 44.4), (9.8, 43.3), (12.2, 43.3), (13.8, 44.4), (14.2, 46.2), (11.0, 46.5)]);
    let parts: [(&Patch, Colour, bool); 11] = [
        (&far_arm, DARK, false),
        (&back_leg, DARK, false),
        (&back_foot, DARK, false),
        (&front_leg, CLOTH, true),
        (&front_foot, DARK, false),
        (&neck, SKIN, false),
        (&head, SKIN, false),
        (&hair, DARK, false),
        (&coat, CLOTH, true),
        (&bowl, BOWL, true),
        (&near_arm, CLOTH, true),
    ];
    for (part, colour, parted) in parts {
        let placed = part.mapped(|[x, y]| [foot[0] + way * x * INCH, foot[1] + y * INCH]);
        brush.fill([&placed], colour);
        if parted {
            brush.outline(&placed, 0.18, PARTING);
        }
    }
}
