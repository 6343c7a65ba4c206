//! Where legs meet, and what a leg has otherwise than the job.

use super::given::{Corner, CornerSeam, CornerShape, FrontEdge, Joint, JointKind, Own, Seating, Through};
use super::reader::{Reader, Sign};
use super::{parts, site};
use crate::model::{AngleText, CornerSeamText, CornerShapeText, CornerText, FrontEdgeText, JobFile, LegText, Text};
use crate::units::{Dimension, Length};
use std::f64::consts::PI;

/// Least and greatest angle between the faces of a corner, degrees.
const ANGLES: (f64, f64) = (30.0, 175.0);

/// Works out where legs meet.
pub(super) fn joints(job: &JobFile, reader: &mut Reader) -> Vec<Joint> {
    let corners = job.corners.iter().map(|corner| {
        let (left, right) = (leg(job, &corner.left, reader), leg(job, &corner.right, reader));
        let kind = JointKind::Corner(self::corner(corner, reader));
        Joint { left, right, kind, place: Some(corner.left.place.clone()) }
    });
    let mut joints: Vec<Joint> = corners.collect();
    for step in &job.steps {
        let (left, right) = (leg(job, &step.left, reader), leg(job, &step.right, reader));
        joints.push(Joint { left, right, kind: JointKind::Step, place: Some(step.left.place.clone()) });
    }
    joints
}

fn leg(job: &JobFile, id: &Text, reader: &mut Reader) -> usize {
    site::leg(job, Some(id), reader)
}

fn corner(corner: &CornerText, reader: &mut Reader) -> Corner {
    let (text, sign) = match &corner.angle {
        AngleText::Inside(text) => (text, 1.0),
        AngleText::Outside(text) => (text, -1.0),
    };
    let angle = reader.si_of(text, Dimension::ANGLE, Sign::Positive);
    let (least, most) = (ANGLES.0.to_radians() - 1e-9, ANGLES.1.to_radians() + 1e-9);
    if angle.is_some_and(|angle| angle < least || angle > most) {
        let message = format!("`{}` is no angle between two faces", text.text.trim());
        let instead = format!(
            "measure it between the finished faces, from {} deg to {} deg; legs in one line meet in a step",
            ANGLES.0, ANGLES.1
        );
        reader.tell(message, instead, &text.place);
    }
    let angle = angle.filter(|angle| (least..=most).contains(angle)).unwrap_or(PI / 2.0);
    let through = match &corner.through {
        None => Through::Left,
        Some(id) if id.text == corner.left.text => Through::Left,
        Some(id) if id.text == corner.right.text => Through::Right,
        Some(id) if id.text == "neither" => Through::Neither,
        Some(id) => {
            let instead = format!("write \"{}\", \"{}\" or \"neither\"", corner.left.text, corner.right.text);
            reader.tell(format!("`{}` is not a leg of this corner", id.text), instead, &id.place);
            Through::Left
        }
    };
    if corner.through.is_none() {
        reader.record("corner.through", &corner.left.text, "common practice");
    }
    if let (Some(radius), Some(_)) = (&corner.radius, &corner.inner) {
        let instead = "keep one of the two: `inner: rounded(...)` and `radius` say the same";
        reader.tell("the inside of this corner is shaped twice, by `radius` and by `inner`", instead, &radius.place);
    }
    Corner {
        turn: sign * (PI - angle),
        through,
        seam: match corner.seam {
            None | Some(CornerSeamText::Butt) => CornerSeam::Butt,
            Some(CornerSeamText::Mitre) => CornerSeam::Mitre,
            Some(CornerSeamText::None) => CornerSeam::None,
        },
        radius: match corner.inner {
            Some(_) => Length::ZERO,
            None => reader.length_or("corner.radius", "corner.radius", corner.radius.as_ref(), Sign::NotNegative),
        },
        inner: shape(corner.inner.as_ref(), reader),
        outer: shape(corner.outer.as_ref(), reader),
    }
}

fn shape(shape: Option<&CornerShapeText>, reader: &mut Reader) -> CornerShape {
    match shape {
        None => CornerShape::Common,
        Some(CornerShapeText::Sharp) => CornerShape::Round(Length::ZERO),
        Some(CornerShapeText::Rounded(text)) => {
            CornerShape::Round(reader.length_of(text, Sign::NotNegative).unwrap_or_default())
        }
        Some(CornerShapeText::Clipped(text)) => {
            CornerShape::Clipped(reader.length_of(text, Sign::Positive).unwrap_or_default())
        }
    }
}

/// Works out what a leg has of its own.
pub(super) fn own(job: &JobFile, leg: &LegText, reader: &mut Reader) -> Own {
    let any = |text: &Option<Text>, reader: &mut Reader| text.as_ref().and_then(|t| reader.length_of(t, Sign::Any));
    let shapes = &leg.counter_corners;
    Own {
        depth: leg.depth.as_ref().and_then(|text| reader.length_of(text, Sign::Positive)),
        height: leg.height.as_ref().map(|height| parts::height_of(height, reader)),
        overhang_front: any(&leg.overhang.front, reader),
        overhang_back: any(&leg.overhang.back, reader),
        overhang_left: any(&leg.overhang.left, reader),
        overhang_right: any(&leg.overhang.right, reader),
        behind: leg.behind.as_ref().map(|id| self::leg(job, id, reader)),
        offset: any(&leg.offset, reader).unwrap_or_default(),
        front: match &leg.front_edge {
            None => FrontEdge::Straight,
            Some(FrontEdgeText::Sloped { left, right }) => {
                let mut of = |text| reader.length_of(text, Sign::Any).unwrap_or_default();
                FrontEdge::Sloped(of(left), of(right))
            }
            Some(FrontEdgeText::Arc { rise }) => {
                FrontEdge::Arc(reader.length_of(rise, Sign::Positive).unwrap_or_default())
            }
        },
        skew: [any(&leg.skew.left, reader).unwrap_or_default(), any(&leg.skew.right, reader).unwrap_or_default()],
        corners: [&shapes.front_left, &shapes.front_right, &shapes.back_right, &shapes.back_left]
            .map(|one| shape(one.as_ref(), reader)),
        seating: leg.seating.as_ref().map(|seating| Seating {
            seats: seating.seats,
            width: reader.length_or("seating.width", "seating.width", seating.width.as_ref(), Sign::Positive),
        }),
        placed: leg.at.is_some(),
        surveyed: None,
        ledge: false,
    }
}
