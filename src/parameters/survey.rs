//! The site as surveyed: from stretches and turns to points of the plan.

use super::given::{DoorSwing, FloorStep, Survey, SurveyPost, SurveyWall};
use super::reader::{Reader, Sign};
use crate::model::{PlanPointText, SurveyText};
use crate::units::Dimension;
use std::f64::consts::FRAC_PI_2;

/// Works out the survey.
pub(super) fn read(survey: &SurveyText, reader: &mut Reader) -> Survey {
    let walls = survey.walls.iter().map(|wall| {
        let mut at = point(&wall.from, reader);
        let mut points = vec![at];
        let mut heading = 0.0;
        for stretch in &wall.stretches {
            let turn = stretch.turn.as_ref().and_then(|turn| reader.si_of(turn, Dimension::ANGLE, Sign::Any));
            heading += turn.unwrap_or(0.0);
            let length = reader.length_of(&stretch.length, Sign::Positive).unwrap_or_default().mm();
            at = (at.0 + length * heading.cos(), at.1 + length * heading.sin());
            points.push(at);
        }
        SurveyWall { name: reader.words(wall.name.as_ref(), "wall"), points, place: Some(wall.from.x.place.clone()) }
    });
    let walls = walls.collect();
    let posts = survey.posts.iter().map(|post| {
        let width = reader.length_of(&post.width, Sign::Positive).unwrap_or_default().mm();
        let depth = post.depth.as_ref().and_then(|depth| reader.length_of(depth, Sign::Positive));
        SurveyPost {
            name: reader.words(post.name.as_ref(), "post"),
            at: point(&post.at, reader),
            size: (width, depth.map_or(width, |depth| depth.mm())),
            place: Some(post.at.x.place.clone()),
        }
    });
    let posts = posts.collect();
    let steps = survey.steps.iter().map(|step| FloorStep {
        from: point(&step.from, reader),
        to: point(&step.to, reader),
        drop: reader.length_of(&step.drop, Sign::Any).unwrap_or_default(),
        place: Some(step.from.x.place.clone()),
    });
    let steps = steps.collect();
    let doors = survey.doors.iter().map(|door| {
        let mut angle = |text| reader.si_of(text, Dimension::ANGLE, Sign::Any);
        let shut = angle(&door.shut).unwrap_or(0.0);
        let opens = door.opens.as_ref().and_then(angle).unwrap_or(FRAC_PI_2);
        DoorSwing {
            name: reader.words(door.name.as_ref(), "door"),
            hinge: point(&door.hinge, reader),
            shut,
            opens,
            width: reader.length_of(&door.width, Sign::Positive).unwrap_or_default().mm(),
            place: Some(door.hinge.x.place.clone()),
        }
    });
    let doors = doors.collect();
    Survey { walls, posts, steps, doors }
}

fn point(point: &PlanPointText, reader: &mut Reader) -> (f64, f64) {
    let mut of = |text| reader.length_of(text, Sign::Any).unwrap_or_default().mm();
    (of(&point.x), of(&point.y))
}
