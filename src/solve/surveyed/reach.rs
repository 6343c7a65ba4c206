//! How far along a leg each surveyed thing reaches into its depth.

use crate::geometry::{Placement, PlanPoint};
use crate::parameters::given::{DoorSwing, Survey};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// What a survey can't tell, mm: a thing that grazes a leg by less doesn't bound it.
pub const GRAZE: f64 = 1.0;

/// The depth of a leg, and the line that its end is.
#[derive(Clone, Copy, Debug)]
pub struct Strip {
    /// Its front on v, mm.
    pub front: f64,
    /// Its back on v, mm.
    pub back: f64,
    /// How much farther along u the leg's end lies for each unit of v; 0 is square.
    pub lean: f64,
}

impl Strip {
    /// Whether a thing with these outermost points reaches into it.
    fn meets(&self, points: &[(f64, f64)]) -> bool {
        let low = points.iter().map(|p| p.1).fold(f64::INFINITY, f64::min);
        let high = points.iter().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
        high > self.front + GRAZE && low < self.back - GRAZE
    }

    /// Where the end's line through a point crosses v = 0, mm along u.
    fn along(&self, p: (f64, f64)) -> f64 {
        p.0 - self.lean * p.1
    }
}

/// A surveyed thing that reaches into a strip, with the least and the most of its place along the leg, mm.
#[derive(Clone, Debug)]
pub struct Reach {
    /// As the survey names it.
    pub name: String,
    /// Nearest to the leg's left.
    pub least: f64,
    /// Nearest to its right.
    pub most: f64,
}

/// Points on u and v, mm.
type Points = Vec<(f64, f64)>;

/// All that reaches into the strip, each straight stretch by itself.
pub fn reaches(survey: &Survey, placement: Placement, strip: &Strip) -> Vec<Reach> {
    let leg = |p: (f64, f64)| {
        let p = placement.to_leg(PlanPoint::new(p.0, p.1));
        (p.x, p.y)
    };
    let mut all = Vec::new();
    let mut take = |name: &str, outermost: &[(f64, f64)], points: Vec<(f64, f64)>| {
        if !strip.meets(outermost) {
            return;
        }
        let along: Vec<f64> = points.into_iter().map(|p| strip.along(p)).filter(|u| u.is_finite()).collect();
        if !along.is_empty() {
            let least = along.iter().copied().fold(f64::INFINITY, f64::min);
            let most = along.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            all.push(Reach { name: name.to_owned(), least, most });
        }
    };
    for wall in &survey.walls {
        for pair in wall.points.windows(2) {
            let ends = [leg(pair[0]), leg(pair[1])];
            take(&wall.name, &ends, held(ends[0], ends[1], strip));
        }
    }
    for post in &survey.posts {
        let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
        let corners = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)].map(leg);
        take(&post.name, &corners, (0..4).flat_map(|at| held(corners[at], corners[(at + 1) % 4], strip)).collect());
    }
    for step in &survey.steps {
        let ends = [leg(step.from), leg(step.to)];
        take("the step in the floor", &ends, held(ends[0], ends[1], strip));
    }
    for door in &survey.doors {
        let (outermost, points) = swept(door, placement, strip);
        take(&format!("the way of {}", door.name), &outermost, points);
    }
    all
}

/// The ends of what of a stretch lies in the strip.
fn held(a: (f64, f64), b: (f64, f64), strip: &Strip) -> Vec<(f64, f64)> {
    let (low, high) = (a.1.min(b.1), a.1.max(b.1));
    if high < strip.front || low > strip.back {
        return Vec::new();
    }
    let at = |v: f64| {
        if high - low < f64::MIN_POSITIVE { a } else { (a.0 + (b.0 - a.0) * (v - a.1) / (b.1 - a.1), v) }
    };
    if a.1 == b.1 { vec![a, b] } else { [a.1, b.1].map(|v| at(v.clamp(strip.front, strip.back))).to_vec() }
}

/// The outermost points of what a door sweeps, and every place at which it may reach farthest along the strip: its two
/// edges, its arc where that leaves the strip, and where the arc runs along the leg's end.
fn swept(door: &DoorSwing, placement: Placement, strip: &Strip) -> (Points, Points) {
    let hinge = placement.to_leg(PlanPoint::new(door.hinge.0, door.hinge.1));
    let shut = door.shut - placement.angle;
    let tip = |angle: f64| (hinge.x + door.width * angle.cos(), hinge.y + door.width * angle.sin());
    let within = |angle: &f64| ((angle - shut) * door.opens.signum()).rem_euclid(TAU) <= door.opens.abs();
    let (hinge, edges) = ((hinge.x, hinge.y), [shut, shut + door.opens].map(tip));
    let mut outermost = vec![hinge, edges[0], edges[1]];
    outermost.extend([FRAC_PI_2, -FRAC_PI_2].into_iter().filter(within).map(tip));
    let normal = (-strip.lean).atan2(1.0);
    let mut angles = vec![normal, normal + PI];
    for v in [strip.front, strip.back] {
        let share = (v - hinge.1) / door.width;
        if share.abs() <= 1.0 {
            angles.extend([share.asin(), PI - share.asin()]);
        }
    }
    let inside = |p: &(f64, f64)| p.1 >= strip.front - 1e-9 && p.1 <= strip.back + 1e-9;
    let mut points: Vec<(f64, f64)> = edges.iter().flat_map(|&edge| held(hinge, edge, strip)).collect();
    points.extend(angles.into_iter().filter(within).map(tip).filter(inside));
    (outermost, points)
}

#[cfg(test)]
mod tests {
    use super::{Strip, reaches};
    use crate::geometry::{Placement, PlanPoint};
    use crate::parameters::given::{DoorSwing, Survey};
    use std::f64::consts::{FRAC_PI_2, PI};

    /// A door 1000 wide, hinged 300 behind the face at u = 3000, shut along the face to the right, opening over the face
    /// towards the left: it sweeps half a circle before the line v = 300. In a strip from -25 to 700 its tip reaches
    /// u = 2000 at v = 300; where it opens a quarter only, the leaf ends at u = 3000 and the arc stays right of it.
    #[test]
    fn what_a_door_sweeps() {
        let strip = Strip { front: -25.0, back: 700.0, lean: 0.0 };
        let door = |opens| DoorSwing {
            name: "door".to_owned(),
            hinge: (3000.0, 300.0),
            shut: 0.0,
            opens,
            width: 1000.0,
            place: None,
        };
        let least = |opens| {
            let survey = Survey { doors: vec![door(opens)], ..Survey::default() };
            let at = Placement { origin: PlanPoint::new(0.0, 0.0), angle: 0.0 };
            reaches(&survey, at, &strip)[0].least
        };
        assert!((least(-PI) - 2000.0).abs() < 1e-9);
        assert!((least(-FRAC_PI_2) - 3000.0).abs() < 1e-9);
        // Opened to 30 degrees short of a half circle, the tip stands at v = 300 - 500, before the strip: the leaf and the
        // arc leave it at v = -25, 325 from the hinge; the arc there is sqrt(1000² - 325²) = 945.7 off.
        let arc = 3000.0 - (1000.0_f64 * 1000.0 - 325.0 * 325.0).sqrt();
        assert!((least(-PI + 0.1) - (3000.0 - 1000.0 * 0.1_f64.cos())).abs() < 1e-9);
        let at = least(-PI + PI / 6.0);
        assert!(at > arc && (at - (3000.0 - 325.0 / (PI / 6.0).tan())).abs() < 1e-9, "{at}");
    }

    /// A door that dips a sixth of a turn's arc into the strip from behind, neither of its edges reaching it: 1000 wide,
    /// hinged 600 behind a strip 700 deep, it reaches where the arc leaves the strip, sqrt(1000² - 600²) to the left.
    #[test]
    fn what_a_door_sweeps_from_behind() {
        let strip = Strip { front: -25.0, back: 700.0, lean: 0.0 };
        let door = DoorSwing {
            name: "door".to_owned(),
            hinge: (3000.0, 1300.0),
            shut: -2.6,
            opens: 2.0,
            width: 1000.0,
            place: None,
        };
        let at = Placement { origin: PlanPoint::new(0.0, 0.0), angle: 0.0 };
        let found = reaches(&Survey { doors: vec![door], ..Survey::default() }, at, &strip);
        assert!((found[0].least - 2200.0).abs() < 1e-9 && (found[0].most - 3800.0).abs() < 1e-9, "{found:?}");
        // One that stands open across the whole strip counts from where it enters it.
        let open = DoorSwing {
            name: "gate".to_owned(),
            hinge: (3000.0, -200.0),
            shut: FRAC_PI_2,
            opens: 0.0,
            width: 1000.0,
            place: None,
        };
        let found = reaches(&Survey { doors: vec![open], ..Survey::default() }, at, &strip);
        assert!((found[0].least - 3000.0).abs() < 1e-9, "{found:?}");
    }
}
