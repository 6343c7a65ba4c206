//! The tube behind the trim: what fasteners bite into and joints are backed by.

use super::is_end;
use crate::solve::{Face, Leg, Role, Trim};
use crate::units::Length;

/// The tube behind a face at the height of the fasteners.
pub struct Metal {
    /// Height of the fasteners over z = 0.
    pub z: Length,
    /// Stretches with tube behind the board at that height, sorted and joined.
    pub spans: Vec<(Length, Length)>,
    /// Middles of uprights, and where two modules' posts stand side by side.
    pub uprights: Vec<Length>,
}

impl Metal {
    /// Of a face. The fasteners go into the middle of the bottom rail, but no higher than half-way up the lap.
    pub fn of(leg: &Leg, face: Face, trim: &Trim, tube: Length) -> Metal {
        let d = &leg.datums;
        let z = d.frame_bottom + tube.half().min((trim.top - d.frame_bottom).half());
        let layer = |v: (Length, Length), u: (Length, Length)| match face {
            Face::Front => v.0 == d.frame_face,
            Face::Back => v.1 == d.frame_back,
            Face::Left => u.0 == d.frame_left,
            Face::Right => u.1 == d.frame_right,
        };
        let mut spans = Vec::new();
        let mut uprights: Vec<Length> = Vec::new();
        for member in &leg.members {
            let body = &member.body;
            if !layer(body.v, body.u) || body.z.0 > z || body.z.1 < z {
                continue;
            }
            let span = if is_end(face) { body.v } else { body.u };
            spans.push(span);
            if member.role == Role::Post {
                uprights.push((span.0 + span.1).half());
            }
        }
        if !is_end(face) {
            // Two posts side by side: a joint between the modules gives each piece a post of its own.
            uprights.extend(leg.modules.iter().skip(1).map(|module| module.left));
        }
        spans.sort();
        let mut joined: Vec<(Length, Length)> = Vec::new();
        for span in spans {
            match joined.last_mut() {
                Some(last) if span.0 <= last.1 => last.1 = last.1.max(span.1),
                _ => joined.push(span),
            }
        }
        uprights.sort();
        uprights.dedup();
        Metal { z, spans: joined, uprights }
    }

    /// The place with tube behind it that is nearest to one, `edge` off the tube's ends; `None` without tube.
    pub fn nearest(&self, at: Length, edge: Length) -> Option<Length> {
        let held = |&(from, to): &(Length, Length)| {
            let (low, high) = (from + edge, to - edge);
            if low > high { (from + to).half() } else { at.clamp(low, high) }
        };
        self.spans.iter().map(held).min_by_key(|place| (*place - at).abs())
    }
}
