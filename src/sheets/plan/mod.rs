//! The plan: all legs with what bounds them, and what every reader of the set needs first.

mod covered;
mod cuts;
mod kept;
mod key;
mod landing;
mod levels;
mod lines;
mod lists;
mod looks;
mod marks;
mod path;
mod run;
mod seen;
mod sheet;
mod supports;
mod walls;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use crate::drawing::Page;

/// Draws its pages: a run of several legs, a turned or a surveyed one, has a plan of the whole first, then each leg by itself.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let legs = &set.solved.legs;
    let mut views = Vec::new();
    let turned = legs.iter().any(|leg| leg.placement.angle.abs() > 1e-9);
    let survey = &set.solved.survey;
    let surveyed =
        !(survey.walls.is_empty() && survey.posts.is_empty() && survey.steps.is_empty() && survey.doors.is_empty());
    if legs.len() > 1 || turned || surveyed {
        views.push(key::draw(set, kind));
    }
    let wanted = if views.is_empty() { lists::index_height(set) } else { 0.0 };
    // A leg that meets others has its dimensions in the plan of the whole and in the lists.
    let mut without_fan: Vec<usize> = (0..legs.len()).filter(|leg| !set.solved.stands_alone(*leg)).collect();
    for index in (0..legs.len()).filter(|leg| set.solved.stands_alone(*leg)) {
        let (view, fan) = sheet::draw(set, kind, index, wanted);
        views.push(view);
        if !fan {
            without_fan.push(index);
        }
    }
    let heads = Heads { title: "Plan".to_owned(), document: "Plan".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::beside(set, kind, heads, views);
    lists::add(&mut flow, set, &without_fan);
    flow.finish()
}
