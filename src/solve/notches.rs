//! Where the counter's notches lie.

use super::{CounterNotch, Datums, Extent, Face};
use crate::findings::Problem;
use crate::geometry::{Placement, PlanPoint};
use crate::parameters::given::{Given, Notch, NotchCut, SurveyPost};
use crate::units::{Length, Show};

/// Each leg's notches, in the order given. `legs` are the datums and the placement of each leg.
///
/// Errors: a post that stands off the counter, inside it, or across two of its edges.
pub fn notches(given: &Given, legs: &[(&Datums, Placement)]) -> Result<Vec<Vec<CounterNotch>>, Vec<Problem>> {
    let mut all = vec![Vec::new(); legs.len()];
    let mut problems = Vec::new();
    for notch in &given.counter.notches {
        let Some(&(datums, placement)) = legs.get(notch.leg) else { continue };
        let located = match notch.cut {
            NotchCut::Edge { edge, along, width, depth } => Ok(out_of(notch, datums, edge, (along, width, depth))),
            NotchCut::Post { post, clearance } => match given.site.survey.posts.get(post) {
                Some(post) => round(given, notch, datums, &seen(post, &placement, clearance), clearance),
                None => continue,
            },
        };
        match located {
            Ok(one) => all[notch.leg].push(one),
            Err(problem) => problems.push(problem),
        }
    }
    if problems.is_empty() { Ok(all) } else { Err(problems) }
}

/// A notch as measured: along its edge, its width, its depth from the counter's edge.
fn out_of(notch: &Notch, d: &Datums, edge: Face, (along, width, depth): (Length, Length, Length)) -> CounterNotch {
    let (from, to) = (along, along + width);
    let extent = match edge {
        Face::Front => Extent { x0: from, x1: to, y0: d.counter_front, y1: d.counter_front + depth },
        Face::Back => Extent { x0: from, x1: to, y0: d.counter_back - depth, y1: d.counter_back },
        Face::Left => Extent { x0: d.counter_left, x1: d.counter_left + depth, y0: from, y1: to },
        Face::Right => Extent { x0: d.counter_right - depth, x1: d.counter_right, y0: from, y1: to },
    };
    let place = notch.place.clone();
    CounterNotch { name: notch.name.clone(), edge, extent, radius: notch.radius, clearance: None, place }
}

/// The box round a post with its clearance, over a leg's (u, v).
fn seen(post: &SurveyPost, placement: &Placement, clearance: Length) -> Extent {
    let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
    let corners = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)]
        .map(|(x, y)| placement.to_leg(PlanPoint::new(x, y)));
    let least = |pick: fn(&crate::geometry::LegPoint) -> f64| corners.iter().map(pick).fold(f64::INFINITY, f64::min);
    let most = |pick: fn(&crate::geometry::LegPoint) -> f64| corners.iter().map(pick).fold(f64::NEG_INFINITY, f64::max);
    Extent {
        x0: Length::from_mm(least(|p| p.x)) - clearance,
        x1: Length::from_mm(most(|p| p.x)) + clearance,
        y0: Length::from_mm(least(|p| p.y)) - clearance,
        y1: Length::from_mm(most(|p| p.y)) + clearance,
    }
}

/// A notch round the box of a post, out of the edge that it reaches across.
fn round(given: &Given, notch: &Notch, d: &Datums, post: &Extent, clearance: Length) -> Result<CounterNotch, Problem> {
    let counter = Extent { x0: d.counter_left, y0: d.counter_front, x1: d.counter_right, y1: d.counter_back };
    let show = Show::new(given.job.units);
    let leg = given.legs.get(notch.leg).map_or("?", |leg| leg.id.as_str());
    let refuse = |message: String, instead: &str| {
        Err(Problem { message, instead: instead.to_owned(), place: notch.place.clone() })
    };
    let where_ = format!(
        "with its clearance it reaches from {} to {} along the leg, and from {} to {} behind the finished face",
        show.plain(post.x0),
        show.plain(post.x1),
        show.plain(post.y0),
        show.plain(post.y1)
    );
    if !post.meets(&counter) {
        let message = format!("{} stands off the counter of leg {leg}: {where_}", notch.name);
        return refuse(message, "leave the notch out, or check the survey and the leg's `at`");
    }
    let over = [
        (post.y0 <= counter.y0, Face::Front),
        (post.x1 >= counter.x1, Face::Right),
        (post.y1 >= counter.y1, Face::Back),
        (post.x0 <= counter.x0, Face::Left),
    ];
    let mut edges = over.iter().filter(|(is, _)| *is).map(|(_, face)| *face);
    let edge = match (edges.next(), edges.next()) {
        (Some(edge), None) => edge,
        (None, _) => {
            let message =
                format!("{} stands inside the counter of leg {leg}, clear of its edges: {where_}", notch.name);
            return refuse(message, "move the leg, or cut a well for it with a seam through it");
        }
        (Some(_), Some(_)) => {
            let message = format!("{} stands across two edges of the counter of leg {leg}: {where_}", notch.name);
            return refuse(message, "end the leg short of it, or clip that corner with `counter_corners`");
        }
    };
    let extent = match edge {
        Face::Front => Extent { y0: counter.y0, ..*post },
        Face::Right => Extent { x1: counter.x1, ..*post },
        Face::Back => Extent { y1: counter.y1, ..*post },
        Face::Left => Extent { x0: counter.x0, ..*post },
    };
    let (name, place) = (notch.name.clone(), notch.place.clone());
    Ok(CounterNotch { name, edge, extent, radius: notch.radius, clearance: Some(clearance), place })
}
