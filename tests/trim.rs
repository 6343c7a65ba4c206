//! Base trim: where it runs, how it is scribed, notched, joined and fastened, by geometry worked out here.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::geometry::{Paper, Point};
use faceline::parameters::given::{Face, Floor, Given, OpeningSort, Spot, Trim, TrimCorner};
use faceline::solve::{Role, Solved, TrimEnd, TrimPiece, solve};
use faceline::units::Length;
use support::*;

/// The run of the look sheets with trim 4 in high, 3/4 in thick, on a floor that falls 1 in 96 to the right.
fn trimmed(change: impl Fn(&mut Given, &mut Trim)) -> Solved {
    let mut given = terrace();
    given.site.floor = Floor::Fall { along: 1.0 / 96.0, across: 0.0 };
    let mut trim = Trim::default();
    change(&mut given, &mut trim);
    given.trim = Some(trim);
    solve(&given).unwrap()
}

fn along(solved: &Solved, face: Face) -> Vec<&TrimPiece> {
    solved.shop.trim.pieces.iter().filter(|piece| piece.face == face).collect()
}

fn near(found: f64, wanted: f64, what: &str) {
    assert!((found - wanted).abs() < 1e-4, "{what}: {found} is not {wanted}");
}

#[test]
fn a_scribed_piece_has_the_area_of_its_trapezoid_and_the_floor_under_it() {
    let solved = trimmed(|_, _| {});
    let leg = &solved.legs[0];
    for piece in along(&solved, Face::Front) {
        // Height at a place: top less the gap less the floor there, the floor by its fall alone.
        let zero = leg.feet.iter().map(|foot| foot.u.inches()).fold(f64::MAX, f64::min);
        let height = |u: f64| 4.0 - 0.25 + (u - zero) / 96.0;
        let (a, b) = (piece.from.inches(), piece.to.inches());
        let trapezoid = (b - a) * (height(a) + height(b)) / 2.0;
        near(piece.region.area() / 25.4 / 25.4, trapezoid, "area of a trapezoid, sq in");
        for station in &piece.stations {
            near(station.height.inches(), height(station.at.inches()), "height at a station, in");
        }
        // 35 lb/ft3 by 3/4 in.
        near(piece.mass, trapezoid / 144.0 * (0.75 / 12.0) * 35.0 * 0.453_592_37, "mass, kg");
    }
}

#[test]
fn outside_corners_mitre_where_the_seen_faces_meet() {
    let solved = trimmed(|_, _| {});
    let (leg, front, left) = (&solved.legs[0], along(&solved, Face::Front), along(&solved, Face::Left));
    let thick = inches(0.75);
    assert_eq!(front[0].from, leg.datums.board_left - thick);
    assert_eq!(left[0].from, leg.datums.board_face - thick);
    assert_eq!(front[0].ends[0], TrimEnd::Mitre(std::f64::consts::FRAC_PI_4));
    // Butted, the end stops at the back of the front's trim, which is the board's face.
    let solved = trimmed(|_, trim| trim.corners = TrimCorner::Butted);
    let (front, left) = (along(&solved, Face::Front), along(&solved, Face::Left));
    assert_eq!((front[0].from, front[0].ends[0]), (leg.datums.board_left - thick, TrimEnd::Past));
    assert_eq!((left[0].from, left[0].ends[0]), (leg.datums.board_face, TrimEnd::Butt));
}

#[test]
fn a_bay_that_reaches_the_floor_breaks_the_trim() {
    let solved = trimmed(|_, _| {});
    let leg = &solved.legs[0];
    let bay = leg.fittings.iter().find(|fitting| fitting.to_floor).expect("the refrigerator stands on the floor");
    let pieces = along(&solved, Face::Front);
    assert!(pieces.iter().all(|piece| piece.to <= bay.left || piece.from >= bay.right));
    assert!(pieces.iter().any(|piece| piece.to == bay.left && piece.ends[1] == TrimEnd::Square));
    assert!(pieces.iter().any(|piece| piece.from == bay.right && piece.ends[0] == TrimEnd::Square));
}

/// The run with a vent in module A whose cutout ends 3 in over the floor's high point.
fn vented(top: f64) -> Solved {
    trimmed(|given, trim| {
        let mut vent = fitting("vent", faceline::parameters::given::Look::Vent, 0, opening(8.0, 29.0, Some(4.0)));
        if let faceline::parameters::given::Cut::Opening { sort, .. } = &mut vent.cut {
            *sort = OpeningSort::Vent;
        }
        given.fittings.retain(|other| other.module != 0);
        given.fittings.push(vent);
        trim.top = inches(top);
    })
}

#[test]
fn a_notch_clears_its_fitting_by_the_gap_and_takes_its_own_area() {
    let solved = vented(4.0);
    let leg = &solved.legs[0];
    let vent = leg.fittings.iter().find(|fitting| fitting.id == "vent").unwrap();
    near(vent.bottom.unwrap().inches(), 3.0, "the vent's bottom");
    let pieces = along(&solved, Face::Front);
    let piece = pieces.iter().find(|piece| !piece.notches.is_empty()).expect("a notch");
    let [notch] = piece.notches[..] else { panic!("one notch") };
    let gap = inches(0.125);
    assert_eq!(notch.from, vent.left - vent.flange.left - gap);
    assert_eq!(notch.to, vent.right + vent.flange.right + gap);
    assert_eq!(notch.bottom, vent.bottom.unwrap() - vent.flange.near - gap);
    let plain = trimmed(|_, _| {});
    let whole = along(&plain, Face::Front)[0].region.area();
    let cut = (notch.to - notch.from).mm() * (inches(4.0) - notch.bottom).mm();
    near(piece.region.area(), whole - cut, "area less the notch, mm2");
    let inside = |u: f64, z: f64| piece.region.outer.contains::<Paper>(Point::new(u, z));
    let middle = (notch.from + notch.to).half().mm();
    assert!(!inside(middle, inches(3.9).mm()) && inside(middle, inches(1.0).mm()));
    assert!(inside(notch.from.mm() - 1.0, inches(3.9).mm()) && inside(notch.to.mm() + 1.0, inches(3.9).mm()));
    // Trim that ends under the vent has none.
    assert!(vented(2.75).shop.trim.pieces.iter().all(|piece| piece.notches.is_empty()));
}

#[test]
fn lengths_meet_over_posts_and_are_no_longer_than_the_stock() {
    let stock = inches(48.0);
    let solved = trimmed(|_, trim| trim.stock = vec![inches(48.0)]);
    let leg = &solved.legs[0];
    let pieces = along(&solved, Face::Front);
    assert!(pieces.len() > along(&trimmed(|_, _| {}), Face::Front).len());
    for piece in &pieces {
        assert!(piece.to - piece.from <= stock);
    }
    for pair in pieces.windows(2).filter(|pair| matches!(pair[0].ends[1], TrimEnd::Joint(_))) {
        assert_eq!(pair[0].ends[1], TrimEnd::Joint(true));
        assert_eq!(pair[1].from - pair[0].to, inches(0.0625), "the gap of a joint");
        let joint = (pair[0].to + pair[1].from).half();
        let posts = leg.members.iter().filter(|member| member.role == Role::Post);
        let over = posts.filter(|post| post.body.u.0 <= joint && post.body.u.1 >= joint).count();
        assert!(over > 0, "a joint at {} in lies over no post", joint.inches());
    }
}

#[test]
fn fasteners_keep_their_distances_and_lie_on_tube() {
    let solved = trimmed(|_, _| {});
    let leg = &solved.legs[0];
    for piece in solved.shop.trim.pieces.iter().filter(|piece| piece.length() > inches(6.0)) {
        let (first, last) = (piece.fasteners[0], *piece.fasteners.last().unwrap());
        assert!(first - piece.from <= inches(2.5) && piece.to - last <= inches(2.5), "{}: near its ends", piece.mark);
        for pair in piece.fasteners.windows(2) {
            assert!(pair[1] - pair[0] <= inches(17.0), "{}: {} in apart", piece.mark, (pair[1] - pair[0]).inches());
        }
        let end = matches!(piece.face, Face::Left | Face::Right);
        for &at in &piece.fasteners {
            let on = leg.members.iter().any(|member| {
                let span = if end { member.body.v } else { member.body.u };
                span.0 <= at
                    && span.1 >= at
                    && member.body.z.0 <= piece.fastener_z
                    && member.body.z.1 >= piece.fastener_z
            });
            assert!(on, "{}: a fastener at {} in meets no tube", piece.mark, at.inches());
        }
    }
}

#[test]
fn the_scribe_follows_a_floor_that_bends() {
    // Half an inch up in the middle of the run, at u = 50 in, level across.
    let spots: Vec<Spot> = [(0.0, 0.0), (50.0, 0.5), (120.0, 0.0)]
        .iter()
        .flat_map(|&(u, z)| [0.0, 30.0].map(|v| Spot { u: inches(u), v: inches(v), z: inches(z) }))
        .collect();
    let solved = trimmed(|given, _| given.site.floor = Floor::ThroughSpots(spots.clone()));
    let pieces = along(&solved, Face::Front);
    let piece = pieces.iter().find(|piece| piece.from < inches(50.0) && piece.to > inches(50.0)).unwrap();
    let least = piece.stations.iter().min_by_key(|station| station.height).unwrap();
    assert!((least.at - inches(50.0)).abs() < Length::from_mm(0.01), "the bend is a station of its own");
    let at = |u: f64| solved.legs[0].floor.height(inches(u).mm(), solved.legs[0].feet[0].v.mm());
    for station in &piece.stations {
        near(station.height.mm(), inches(3.75).mm() - at(station.at.inches()), "height over the bent floor, mm");
    }
}
