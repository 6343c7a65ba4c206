//! What a section cuts through: everything of the run at one place across, as stretches in depth and height.
//!
//! Depths here are w: 0 at the finished face that the fitting counts from, positive away from whoever stands before
//! that face. For the front w is v; for the back it runs the other way.

use super::behind::Behind;
use super::supports::{self, Shown};
use crate::geometry::Region;
use crate::solve::{Bound, BoundKind, Build, Cutout, Datum, Extent, Face, Fitting, Leg, Plane, Solved, Support};
use crate::units::Length;

/// From and to, from < to.
pub type Span = (Length, Length);

/// Board and finish of a long face where they are cut.
pub struct Skin<'s> {
    /// What is fixed to the frame there.
    pub build: &'s Build,
    /// The outside of the finish, of the board, and of the bare frame, on w.
    pub at: [Length; 3],
    /// Heights that the board is cut at.
    pub board: Vec<Span>,
    /// Heights that the finish is cut at.
    pub finish: Vec<Span>,
    /// The finish runs up to the counter, past a substrate that keeps behind it.
    pub clears_substrate: bool,
    /// Heights where there is an opening, and which fitting is in it.
    pub openings: Vec<(Span, usize)>,
}

/// The cut.
pub struct Slice<'s> {
    /// The solved run.
    pub solved: &'s Solved,
    /// The leg, and its index.
    pub leg: &'s Leg,
    leg_index: usize,
    /// The fitting whose cutout is shown, and its index.
    pub fitting: &'s Fitting,
    /// Its index.
    pub index: usize,
    /// The face that its depths count from.
    pub facing: Face,
    /// Where it is cut, on u.
    pub u: Length,
    /// The counter's cutout.
    pub cutout: &'s Cutout,
    /// The cutout's near and far edge on w; a notch's near edge is the counter's edge.
    pub hole: Span,
    /// The skin before and behind, as whoever faces it sees it.
    pub near: Skin<'s>,
    /// The skin behind.
    pub far: Skin<'s>,
    /// The counter, on w.
    pub counter: Vec<Span>,
    /// The whole counter's near and far edge.
    pub counter_edges: Span,
    /// The substrate, on w.
    pub substrate: Vec<Span>,
    /// The whole substrate's near and far edge.
    pub substrate_edges: Span,
    /// Tubes that are cut across: (w, z).
    pub tubes: Vec<Extent>,
    /// Tubes seen beyond the cut, each with how far, the farthest first.
    pub beyond: Vec<(Length, Extent)>,
    /// What is added to the frame, cut and beyond, the farthest first.
    pub supports: Vec<Shown<'s>>,
    /// Feet seen: (w, floor, frame's underside).
    pub feet: Vec<(Length, Length, Length)>,
    /// What stands behind, its face at the floor and at counter height on w, where it is near enough to show.
    pub wall: Option<(&'s Bound, Length, Length)>,
    /// The upstand on w, and its top.
    pub splash: Option<(Span, Length)>,
    /// The leg behind, cut too.
    pub behind: Option<Behind<'s>>,
    turn: Turn,
}

impl<'s> Slice<'s> {
    /// Cuts a leg at the centreline of a fitting. `None` when the fitting isn't cut into the counter.
    pub fn new(solved: &'s Solved, leg: usize, index: usize) -> Option<Slice<'s>> {
        let leg_index = leg;
        let leg = solved.legs.get(leg)?;
        let fitting = leg.fittings.get(index)?;
        let cutout = fitting.cutout(Plane::Counter)?;
        let facing = if fitting.face == Face::Back { Face::Back } else { Face::Front };
        let (u, d) = (fitting.centre(), &leg.datums);
        let turn = Turn { back: facing == Face::Back, finished_back: d.finished_back, off: Length::ZERO };
        let behind = if turn.back { Face::Front } else { Face::Back };
        let in_front = leg.substrate.extent;
        let counter_edges = turn.span(leg.counter.extent.y0, leg.counter.extent.y1);
        let substrate_edges = turn.span(in_front.y0, in_front.y1);
        let snaps: Vec<Length> = leg
            .fittings
            .iter()
            .filter_map(|f| f.cutout(Plane::Counter))
            .flat_map(|c| [c.extent.y0, c.extent.y1])
            .collect();
        let across = |region: &Region, extent: &Extent| -> Vec<Span> {
            let near: Vec<Length> = snaps.iter().copied().chain([extent.y0, extent.y1]).collect();
            stretches_of(region, u, &turn, &near)
        };
        let skin = |face: Face, own: bool| skin(leg, face, u, &turn, own, solved);
        Some(Slice {
            solved,
            leg,
            leg_index,
            fitting,
            index,
            facing,
            u,
            cutout,
            hole: turn.span(cutout.extent.y0, cutout.extent.y1),
            near: skin(facing, true),
            far: skin(behind, false),
            counter: across(&leg.counter.region, &leg.counter.extent),
            counter_edges,
            substrate: across(&leg.substrate.region, &in_front),
            substrate_edges,
            tubes: tubes(leg, u, &turn),
            beyond: beyond(leg, fitting.module, u, &turn),
            supports: supports::shown(solved, leg_index, Some(fitting.module), u, &turn),
            feet: feet(leg, fitting.module, u, &turn),
            behind: if turn.back { None } else { Behind::new(solved, leg_index, u) },
            wall: (!matches!(leg.back.kind, BoundKind::Open | BoundKind::Leg) && !turn.back)
                .then_some((&leg.back, leg.back.at, leg.back.at_counter))
                .filter(|(_, at, _)| *at - d.finished_back < d.frame_back - d.frame_face),
            turn,
            splash: solved
                .counter
                .splash
                .filter(|_| !turn.back && leg.counter.splashes.iter().any(|(_, a, b, _)| *a <= u && u <= *b))
                .map(|splash| ((counter_edges.1 - splash.thickness, counter_edges.1), d.counter_top + splash.height)),
        })
    }

    /// Where one of the four depth datums lies on w, with its words: counter edge, finished face, board face, bare frame.
    pub fn depth_datums(&self) -> [(Datum, Length); 4] {
        let back = self.facing == Face::Back;
        let pick = |front: Datum, rear: Datum| if back { rear } else { front };
        [
            (pick(Datum::CounterEdge, Datum::CounterBack), self.counter_edges.0),
            (pick(Datum::FinishedFace, Datum::FinishedBack), Length::ZERO),
            (pick(Datum::BoardFace, Datum::BoardBack), self.near.at[1]),
            (pick(Datum::FrameFace, Datum::FrameBack), self.near.at[2]),
        ]
    }

    /// The depth datums that differ, from the outermost in, the words of those that fall together joined.
    pub fn distinct_depths(&self) -> Vec<(Datum, Length, String)> {
        let mut list: Vec<(Datum, Length, String)> = Vec::new();
        for (datum, at) in self.depth_datums() {
            match list.iter_mut().find(|(_, other, _)| *other == at) {
                // A counter that ends at the finished face, or a face without finish or board.
                Some(same) if same.0.is_finished() => {}
                Some(same) if datum.is_finished() => *same = (datum, at, datum.words().to_owned()),
                Some(same) => *same = (datum, at, datum.words().to_owned()),
                None => list.push((datum, at, datum.words().to_owned())),
            }
        }
        list.sort_by_key(|(_, at, _)| *at);
        list
    }

    /// A depth of the leg on w.
    pub fn w(&self, v: Length) -> Length {
        self.turn.at(v)
    }

    /// The frame's middle on w.
    pub fn middle(&self) -> Length {
        (self.near.at[2] + self.far.at[2]).half()
    }

    /// Which of the supports that are the frame's own a cut tube is.
    pub fn own_support(&self, tube: &Extent) -> Option<&'s Support> {
        let own = |one: &&Support| {
            let (a, b) = one.body.u;
            let over = self.turn.span(one.body.v.0, one.body.v.1) == (tube.x0, tube.x1);
            over && one.body.z == (tube.y0, tube.y1) && a < self.u && self.u < b && one.module == self.fitting.module
        };
        self.solved.shop.supports.framed.iter().filter(|one| one.leg == self.leg_index).find(own)
    }

    /// The body of a fitting, (w, z).
    pub fn body(&self, fitting: &Fitting) -> Option<Extent> {
        let body = fitting.body?;
        let (x0, x1) = self.turn.span(body.v.0, body.v.1);
        Some(Extent { x0, y0: body.z.0, x1, y1: body.z.1 })
    }

    /// The base trim where it is cut: it covers the foot of the front's board.
    pub fn trim(&self) -> Option<Extent> {
        let trim = self.solved.trim.as_ref()?;
        let front = if self.facing == Face::Front { &self.near } else { &self.far };
        let open = front.openings.iter().any(|((z0, _), _)| *z0 <= self.leg.datums.frame_bottom);
        let (face, out) = (self.leg.datums.board_face, self.leg.datums.board_face - trim.thickness);
        let (x0, x1) = self.turn.span(out, face);
        let floor = Length::from_mm(self.floor((x0 + x1).half().mm()));
        (!open && trim.top > floor).then_some(Extent { x0, y0: floor, x1, y1: trim.top })
    }

    /// Height of the floor at w, mm over z = 0.
    pub fn floor(&self, w: f64) -> f64 {
        let v = if self.facing == Face::Back { self.leg.datums.finished_back.mm() - w } else { w };
        self.leg.floor.height(self.u.mm(), v)
    }

    /// Whether it is open at the counter's edge.
    pub fn is_notch(&self) -> bool {
        self.cutout.open
    }

    /// What the near and the far edge of the cutout are called: front and back are the run's own.
    pub fn edge_words(&self) -> (&'static str, &'static str) {
        if self.facing == Face::Back { ("back edge", "front edge") } else { ("front edge", "back edge") }
    }

    /// What the cutout is called on this sheet.
    pub fn word(&self) -> &'static str {
        if self.is_notch() { "notch" } else { "well" }
    }
}

/// From v to w.
#[derive(Clone, Copy)]
pub struct Turn {
    /// Seen from behind.
    pub back: bool,
    /// The leg's finished back.
    pub finished_back: Length,
    /// How far behind the finished face that w counts from the leg's own lies.
    pub off: Length,
}

impl Turn {
    fn at(&self, v: Length) -> Length {
        if self.back { self.finished_back - v } else { v + self.off }
    }
    /// A stretch of v on w, rising.
    pub fn span(&self, a: Length, b: Length) -> Span {
        let (a, b) = (self.at(a), self.at(b));
        (a.min(b), a.max(b))
    }
    /// Looking left from the front, right from the back: whether something lies on the side that is seen.
    pub fn is_beyond(&self, middle: Length, u: Length) -> bool {
        if self.back { middle > u } else { middle < u }
    }
}

/// Where a line at u runs through a region: pairs of the second coordinate, mm, rising.
fn stretches(region: &Region, u: Length) -> Vec<(f64, f64)> {
    let at = u.mm();
    let mut crossings = Vec::new();
    for outline in region.outlines() {
        let points = outline.flattened(0.005);
        for (index, &(x0, y0)) in points.iter().enumerate() {
            let (x1, y1) = points[(index + 1) % points.len()];
            if (x0 <= at) != (x1 <= at) {
                crossings.push(y0 + (y1 - y0) * (at - x0) / (x1 - x0));
            }
        }
    }
    crossings.sort_by(f64::total_cmp);
    crossings.chunks_exact(2).filter(|pair| pair[1] - pair[0] > 0.05).map(|pair| (pair[0], pair[1])).collect()
}

/// Where a cut at u runs through a region, on w, rising; `edges` are the exact edges that crossings stand for.
pub fn stretches_of(region: &Region, u: Length, turn: &Turn, edges: &[Length]) -> Vec<Span> {
    let cut = stretches(region, u).into_iter();
    let mut spans: Vec<Span> = cut.map(|(a, b)| turn.span(snapped(a, edges), snapped(b, edges))).collect();
    spans.sort();
    spans
}

/// The exact edge that a crossing of flattened outlines stands for.
fn snapped(mm: f64, edges: &[Length]) -> Length {
    let near = edges.iter().copied().find(|edge| (edge.mm() - mm).abs() < 0.05);
    near.unwrap_or_else(|| Length::from_mm(mm))
}

/// A long face's skin where it is cut. `own` is the face that the fitting counts from: its faces lie before the frame.
pub fn skin<'s>(leg: &'s Leg, face: Face, u: Length, turn: &Turn, own: bool, solved: &Solved) -> Skin<'s> {
    let (build, d, plane) = (leg.build(face), &leg.datums, Plane::of(face));
    let faces = match face {
        Face::Back => [d.finished_back, d.board_back, d.frame_back],
        _ => [Length::ZERO, d.board_face, d.frame_face],
    };
    let at = faces.map(|v| turn.at(v));
    let boards = leg.boards.iter().filter(|board| board.face == face);
    let here = boards.filter(|board| board.extent.x0 <= u && u <= board.extent.x1);
    let mut board: Vec<Span> = Vec::new();
    for part in here {
        let edges: Vec<Length> = part
            .fittings
            .iter()
            .filter_map(|&f| leg.fittings[f].cutout(plane))
            .flat_map(|c| [c.extent.y0, c.extent.y1])
            .chain([part.extent.y0, part.extent.y1])
            .collect();
        let spans = stretches(&part.region, u).into_iter().map(|(a, b)| (snapped(a, &edges), snapped(b, &edges)));
        board = spans.collect();
        if !board.is_empty() {
            break;
        }
    }
    let openings: Vec<(Span, usize)> = leg
        .on_face(face)
        .filter_map(|(index, fitting)| {
            let cut = fitting.cutout(plane)?.extent;
            (cut.x0 < u && u < cut.x1).then_some(((cut.y0, cut.y1), index))
        })
        .collect();
    let mut finish = Vec::new();
    let edge = turn.at(if face == Face::Back { leg.substrate.extent.y1 } else { leg.substrate.extent.y0 });
    let clears_substrate = if own { edge >= at[1] } else { edge <= at[1] };
    if build.finish.is_some() {
        let top = if clears_substrate { d.substrate_top } else { d.frame_top };
        // The face of a leg that stands behind another stands over that one's counter.
        let before = leg.behind.and_then(|front| solved.legs.get(front)).filter(|_| face == Face::Front);
        let bottom = match (&solved.trim, before) {
            (_, Some(before)) => before.datums.counter_top,
            (Some(trim), None) if face == Face::Front => trim.top.max(d.frame_bottom),
            _ => d.frame_bottom,
        };
        finish = less(
            vec![(bottom, top)],
            openings.iter().map(|((z0, z1), _)| if *z1 >= d.frame_top { (*z0, d.counter_top) } else { (*z0, *z1) }),
        );
    }
    Skin { build, at, board, finish, clears_substrate, openings }
}

/// Spans less other spans.
pub fn less(spans: Vec<Span>, away: impl Iterator<Item = Span>) -> Vec<Span> {
    away.fold(spans, |left, (a, b)| {
        let cut = |(x, y): Span| [(x, y.min(a)), (x.max(b), y)].into_iter().filter(|(x, y)| x < y).collect::<Vec<_>>();
        left.into_iter().flat_map(|span| if span.1 <= a || span.0 >= b { vec![span] } else { cut(span) }).collect()
    })
}

/// Tubes that a cut at u runs across.
pub fn tubes(leg: &Leg, u: Length, turn: &Turn) -> Vec<Extent> {
    let cut = leg.members.iter().filter(|m| m.body.u.0 < u && u < m.body.u.1);
    let boxed = cut.map(|m| {
        let (x0, x1) = turn.span(m.body.v.0, m.body.v.1);
        Extent { x0, y0: m.body.z.0, x1, y1: m.body.z.1 }
    });
    boxed.collect()
}

fn beyond(leg: &Leg, module: usize, u: Length, turn: &Turn) -> Vec<(Length, Extent)> {
    let own = leg.members.iter().filter(|m| m.module == module && !(m.body.u.0 < u && u < m.body.u.1));
    let mut seen: Vec<(Length, Extent)> = own
        .filter(|m| turn.is_beyond((m.body.u.0 + m.body.u.1).half(), u))
        .map(|m| {
            let (x0, x1) = turn.span(m.body.v.0, m.body.v.1);
            (((m.body.u.0 + m.body.u.1).half() - u).abs(), Extent { x0, y0: m.body.z.0, x1, y1: m.body.z.1 })
        })
        .collect();
    seen.sort_by_key(|(far, _)| -*far);
    seen
}

/// The foot nearest the cut on the side that is seen, of each row.
pub fn feet(leg: &Leg, module: usize, u: Length, turn: &Turn) -> Vec<(Length, Length, Length)> {
    let own: Vec<_> = leg.feet.iter().filter(|f| f.module == module && (f.u == u || turn.is_beyond(f.u, u))).collect();
    let Some(nearest) = own.iter().map(|f| (f.u - u).abs()).min() else { return Vec::new() };
    own.iter().filter(|f| (f.u - u).abs() == nearest).map(|f| (turn.at(f.v), f.ground, f.ground + f.height)).collect()
}
