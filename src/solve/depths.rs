//! Where the faces and levels of a leg lie on v and z: what doesn't depend on how long it is.

use super::layout::{gap, lean_in};
use crate::parameters::given::{self, FrontEdge, Given, Height};
use crate::units::Length;

/// Depths and levels of a leg.
#[derive(Clone, Copy, Debug)]
pub struct Depths {
    /// The board's face.
    pub board_face: Length,
    /// The frame's front.
    pub frame_face: Length,
    /// The frame's back.
    pub frame_back: Length,
    /// The back board's outside.
    pub board_back: Length,
    /// The finished back.
    pub finished_back: Length,
    /// Face of what stands behind, at the floor.
    pub back_at: Length,
    /// The counter's front edge; of a sloped or bent one, where it lies farthest out.
    pub counter_front: Length,
    /// The counter's back edge.
    pub counter_back: Length,
    /// The frame's underside.
    pub frame_bottom: Length,
    /// The frame's top.
    pub frame_top: Length,
    /// The substrate's top.
    pub substrate_top: Length,
    /// The counter's top.
    pub counter_top: Length,
}

/// Locates them. Where another leg stands behind, this one's frame touches that one's frame, and the finished
/// face of that one, which stands over this one's counter, is this one's finished back.
pub fn depths(given: &Given, index: usize) -> Depths {
    let leg = &given.legs[index];
    let faces = &leg.faces;
    let frame_face = faces.front.total();
    let frame_back = frame_face + leg.own.depth.unwrap_or(given.frame.depth);
    let bar = given.legs.iter().find(|other| other.own.behind == Some(index));
    let finished_back = match bar {
        Some(bar) => frame_back - bar.faces.front.total(),
        None => frame_back + faces.back.total(),
    };
    let back_at = finished_back + gap(&leg.back) + lean_in(&leg.back);
    let lean = if leg.back.kind == given::BoundKind::Open { Length::ZERO } else { leg.back.lean };
    let counter = &given.counter;
    let over_back = leg.own.overhang_back.unwrap_or(counter.overhang_back);
    let over_front = leg.own.overhang_front.unwrap_or(counter.overhang_front);
    let open = leg.back.kind == given::BoundKind::Open;
    let counter_back = if open { finished_back + over_back } else { back_at - lean - counter.wall_joint };
    let out = match leg.own.front {
        FrontEdge::Straight | FrontEdge::Arc(_) => over_front,
        FrontEdge::Sloped(left, right) => left.max(right),
    };
    let stack = counter.thickness + given.substrate.thickness;
    let frame_top = match leg.own.height.unwrap_or(given.height) {
        Height::CounterTop(top) => top - stack,
        Height::FrameTop(top) => top,
    };
    Depths {
        board_face: faces.front.finish_thickness(),
        frame_face,
        frame_back,
        board_back: frame_back + faces.back.board,
        finished_back,
        back_at,
        counter_front: -out,
        counter_back,
        frame_bottom: given.frame.height.map_or(given.frame.feet.shortest, |height| frame_top - height),
        frame_top,
        substrate_top: frame_top + given.substrate.thickness,
        counter_top: frame_top + stack,
    }
}
