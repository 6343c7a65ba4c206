//! Why a counter or a substrate over a chain can't be had, in words.

use super::Chain;
use super::sheet::Broken;
use super::whole::{Job, Layer};
use crate::findings::{Place, Problem};
use crate::parameters::given::{CornerShape, FrontEdge, JointKind};
use crate::units::Length;

impl Job<'_> {
    /// What is wrong with the seams across the legs of a chain.
    pub(super) fn refused(&self, chain: &Chain, layer: Layer) -> Vec<Problem> {
        let mut problems = Vec::new();
        if layer == Layer::Substrate {
            return problems;
        }
        let place = self.given.counter.place.as_ref();
        let mut say = |message: String, instead: &str, place: Option<&Place>| {
            problems.push(Problem { message, instead: instead.to_owned(), place: place.cloned() });
        };
        for &leg in &chain.legs {
            let (given, levels) = self.leg(leg);
            let d = &levels.datums;
            for &(_, u) in self.given.counter.seams.iter().filter(|(on, _)| *on == leg) {
                let text = self.show.plain(u);
                if u <= d.counter_left || u >= d.counter_right {
                    say(
                        format!("a seam at {text} lies off the counter of leg {}", given.id),
                        "place it on the leg",
                        place,
                    );
                }
            }
        }
        for &leg in &chain.legs {
            let (given, levels) = self.leg(leg);
            let FrontEdge::Sloped(a, b) = given.own.front else { continue };
            if (a - b).abs() > levels.datums.finished_right {
                let message = format!("the front edge of leg {} slopes by more than 45 degrees", given.id);
                say(message, "slope it less, or write a leg of its own between two corners", given.place.as_ref());
            }
        }
        for &index in &chain.joints {
            let joint = &self.given.joints[index];
            let JointKind::Corner(corner) = &joint.kind else { continue };
            let inner = match corner.inner {
                CornerShape::Common => CornerShape::Round(corner.radius),
                shaped => shaped,
            };
            let shape = if corner.turn > 0.0 { inner } else { corner.outer };
            let (left, right) = (self.bends(joint.left), self.bends(joint.right));
            let refused = match shape {
                CornerShape::Common => false,
                CornerShape::Round(radius) => radius > Length::ZERO && left && right,
                CornerShape::Clipped(_) => left || right,
            };
            if refused {
                let message = "a corner of the counter is shaped beside a front edge that is an arc".to_owned();
                let instead = "leave the corner sharp, or make the front edges straight";
                say(message, instead, joint.place.as_ref());
            }
        }
        problems
    }

    /// What broke, to a person.
    pub(super) fn told(&self, broken: Broken, chain: &Chain, layer: Layer) -> Problem {
        let what = layer.word();
        let leg = |at: usize| &self.given.legs[chain.legs[at.min(chain.legs.len() - 1)]];
        let problem = |at: usize, message: String, instead: &str| Problem {
            message,
            instead: instead.to_owned(),
            place: leg(at).place.clone(),
        };
        match broken {
            Broken::TooShort(at) => problem(
                at,
                format!("leg {} is too short for its corners: nothing of its {what} would be left", leg(at).id),
                "make the leg longer than the depth of the leg that it meets, or let the other leg run through",
            ),
            Broken::TooRound(size) => {
                let size = self.show.plain(Length::from_mm(size));
                problem(
                    0,
                    format!("a corner or an arc of the {what} is shaped by {size}, more than its edges have room for"),
                    "make the radius, the clip or the rise of the arc smaller",
                )
            }
            Broken::Bitten(at) => problem(
                at,
                format!("a notch on leg {} runs into the end or the back of the {what}, or into a corner", leg(at).id),
                "move it away from the corner, or make it less deep",
            ),
            Broken::Nicked(at) => problem(
                at,
                format!(
                    "a notch of the counter reaches a corner of the {what} of leg {}, through it, or into a cutout",
                    leg(at).id
                ),
                "move it along its edge, or make it smaller or less deep",
            ),
            Broken::Seam(at, u) => Problem {
                message: format!(
                    "the seam at {} on leg {} lies in a corner of the {what}, at its end, or on another seam",
                    self.show.plain(Length::from_mm(u)),
                    leg(at).id
                ),
                instead: "move it along its leg, or leave it out".to_owned(),
                place: self.given.counter.place.clone(),
            },
            Broken::Parallel(at) => problem(
                at,
                format!("the edges of the {what} of leg {} never meet those of the next one", leg(at).id),
                "check the angle of the corner and the slope of the front edges",
            ),
        }
    }
}
