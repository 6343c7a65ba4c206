//! Which legs follow each other.

use crate::findings::{Place, Problem};
use crate::parameters::given::{Given, Height, JointKind, Leg};
use crate::units::Show;

/// Legs that follow each other from left to right, and the joints between them, by index.
#[derive(Clone, Debug)]
pub struct Chain {
    /// The legs.
    pub legs: Vec<usize>,
    /// The joint after each leg but the last.
    pub joints: Vec<usize>,
}

impl Chain {
    /// The parts of it whose counters lie at one height: cut at every step.
    pub fn level_parts(&self, given: &Given) -> Vec<Chain> {
        let mut parts = Vec::new();
        let mut part = Chain { legs: Vec::new(), joints: Vec::new() };
        for (at, &leg) in self.legs.iter().enumerate() {
            part.legs.push(leg);
            match self.joints.get(at) {
                Some(&joint) if matches!(given.joints[joint].kind, JointKind::Corner(_)) => part.joints.push(joint),
                _ => parts.push(std::mem::replace(&mut part, Chain { legs: Vec::new(), joints: Vec::new() })),
            }
        }
        parts
    }
}

/// Every leg in one chain; a leg that meets no other is a chain by itself.
///
/// Errors: joints that name no leg or one leg twice, an end with two joints, a ring, a place in the plan for a leg whose
/// place follows from another.
pub fn chains(given: &Given) -> Result<Vec<Chain>, Vec<Problem>> {
    let count = given.legs.len();
    let mut problems: Vec<Problem> = Vec::new();
    let mut say = |message: String, instead: &str, place: Option<&Place>| {
        problems.push(Problem { message, instead: instead.to_owned(), place: place.cloned() });
    };
    let id = |leg: usize| given.legs.get(leg).map_or("?", |leg| leg.id.as_str());
    let mut next: Vec<Option<usize>> = vec![None; count];
    let mut before: Vec<Option<usize>> = vec![None; count];
    for (index, joint) in given.joints.iter().enumerate() {
        let place = joint.place.as_ref();
        if joint.left >= count || joint.right >= count {
            say("a corner names a leg that isn't there".to_owned(), "name legs of the run", place);
        } else if joint.left == joint.right {
            say(format!("leg {} meets itself", id(joint.left)), "name two legs", place);
        } else if next[joint.left].is_some() {
            say(format!("the right end of leg {} meets two legs", id(joint.left)), "keep one of them", place);
        } else if before[joint.right].is_some() {
            say(format!("the left end of leg {} meets two legs", id(joint.right)), "keep one of them", place);
        } else {
            (next[joint.left], before[joint.right]) = (Some(index), Some(index));
        }
    }
    for (leg, one) in given.legs.iter().enumerate() {
        let place = one.place.as_ref();
        let Some(front) = one.own.behind else { continue };
        if front >= count || front == leg {
            say(format!("leg {} stands behind no other leg", one.id), "name another leg of the run", place);
        } else if one.own.ledge && (next[front].is_some() || before[front].is_some()) {
            let instead = "write the ledge as a leg of its own, with `behind`, its own modules and its own room";
            say(format!("leg {} meets another leg, and has a ledge along its whole back", id(front)), instead, place);
        } else if given.legs[front].own.behind.is_some() {
            let instead = "let each stand behind a leg that stands behind none";
            say(format!("leg {} stands behind leg {}, which stands behind another", one.id, id(front)), instead, place);
        } else if next[leg].is_some() || before[leg].is_some() {
            let instead = "write a leg behind each of the legs that turn the corner";
            say(format!("leg {} stands behind another and turns a corner itself", one.id), instead, place);
        } else if given.legs[..leg].iter().any(|other| other.own.behind == Some(front)) {
            say(format!("two legs stand behind leg {}", id(front)), "keep one of them", place);
        }
    }
    for ledge in given.legs.iter().filter(|leg| leg.own.ledge) {
        if let Some(message) = low(given, ledge) {
            say(message, "raise the ledge", ledge.place.as_ref());
        }
    }
    for (leg, one) in given.legs.iter().enumerate() {
        if one.own.placed && (before.get(leg).is_some_and(Option::is_some) || one.own.behind.is_some()) {
            let instead = "leave its `at` out: where it lies follows from the leg that it meets";
            say(
                format!("leg {} is placed twice, by `at` and by the leg that it meets", one.id),
                instead,
                one.place.as_ref(),
            );
        }
    }
    let mut seen = vec![false; count];
    let mut chains = Vec::new();
    for start in (0..count).filter(|&leg| before[leg].is_none()) {
        let mut chain = Chain { legs: vec![start], joints: Vec::new() };
        let mut leg = start;
        seen[leg] = true;
        while let Some(joint) = next[leg] {
            leg = given.joints[joint].right;
            seen[leg] = true;
            chain.joints.push(joint);
            chain.legs.push(leg);
        }
        chains.push(chain);
    }
    if let Some(leg) = seen.iter().position(|seen| !seen) {
        let place = given.legs[leg].place.as_ref();
        say(format!("the legs meet in a ring that leg {} is part of", id(leg)), "leave one corner open", place);
    }
    if problems.is_empty() { Ok(chains) } else { Err(problems) }
}

/// Why a ledge can't be had where it lies: its counter and substrate would lie in the counter before it.
fn low(given: &Given, ledge: &Leg) -> Option<String> {
    let front = given.legs.get(ledge.own.behind?)?;
    let level = |leg: &Leg| match leg.own.height.unwrap_or(given.height) {
        Height::CounterTop(top) | Height::FrameTop(top) => top,
    };
    let (above, stack) = (level(ledge) - level(front), given.counter.thickness + given.substrate.thickness);
    let show = Show::new(given.job.units);
    (above < stack).then(|| {
        format!(
            "the ledge of leg {} lies {} above its counter, less than its own counter and substrate, {}",
            front.id,
            show.plain(above),
            show.plain(stack)
        )
    })
}
