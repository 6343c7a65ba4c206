//! The tubes of the bare frame: a box for each module, and what is added round its cutouts.
//!
//! Everything keeps the rough gap off a cutout. Tubes are square; a box has posts at its corners, rails at top and
//! bottom between them. Where a box is narrower than two posts it has no tubes and hangs between its neighbours.

use super::{BodyBox, Datums, Extent, Face, Fitting, FittingKind, Member, Module, ModuleKind, Plane, Role};
use crate::parameters::given::{Faces, Frame};
use crate::units::Length;

/// A tube shorter than this isn't worth cutting: half an inch, common practice.
const SHORTEST_PIECE: Length = Length::from_sixty_fourths(32);

/// All tubes of a leg, module by module.
pub fn members(frame: &Frame, faces: &Faces, modules: &[Module], datums: &Datums, fittings: &[Fitting]) -> Vec<Member> {
    let mut all = Vec::new();
    let mut of_module: Vec<Vec<&Fitting>> = vec![Vec::new(); modules.len()];
    for fitting in fittings {
        if let Some(own) = of_module.get_mut(fitting.module) {
            own.push(fitting);
        }
    }
    for (index, module) in modules.iter().enumerate() {
        if module.width() < frame.tube * 2 {
            continue;
        }
        let ends = (index == 0, index + 1 == modules.len());
        let carcass = Carcass { frame, faces, module, index, datums, fittings: &of_module[index], ends };
        carcass.build(&mut all);
    }
    all
}

/// One module's box while it is built.
struct Carcass<'a> {
    frame: &'a Frame,
    faces: &'a Faces,
    module: &'a Module,
    index: usize,
    datums: &'a Datums,
    fittings: &'a [&'a Fitting],
    ends: (bool, bool),
}

/// A side of the box, seen as a panel: posts at x0 and x1, a layer of tubes between `inner` and `outer`.
struct Side {
    face: Face,
    x0: Length,
    x1: Length,
    layer: (Length, Length),
    bottom_rail: bool,
}

impl Side {
    /// A box in this side's layer, `x` along its face.
    fn body(&self, x: (Length, Length), z: (Length, Length)) -> BodyBox {
        match self.face {
            Face::Front | Face::Back => BodyBox { u: x, v: self.layer, z },
            Face::Left | Face::Right => BodyBox { u: self.layer, v: x, z },
        }
    }
}

impl Carcass<'_> {
    fn build(&self, all: &mut Vec<Member>) {
        let (tube, d) = (self.frame.tube, self.datums);
        let (a, b) = (self.module.left, self.module.right);
        let (v0, v1) = (d.frame_face, d.frame_back);
        for u in [a, b - tube] {
            for v in [v0, v1 - tube] {
                let body = BodyBox { u: (u, u + tube), v: (v, v + tube), z: (d.frame_bottom, d.frame_top) };
                all.push(Member { role: Role::Post, module: self.index, body });
            }
        }
        let open = self.module.kind == ModuleKind::OpenBay;
        let sides = [
            Side { face: Face::Front, x0: a, x1: b, layer: (v0, v0 + tube), bottom_rail: !open },
            Side { face: Face::Back, x0: a, x1: b, layer: (v1 - tube, v1), bottom_rail: true },
            Side { face: Face::Left, x0: v0, x1: v1, layer: (a, a + tube), bottom_rail: true },
            Side { face: Face::Right, x0: v0, x1: v1, layer: (b - tube, b), bottom_rail: true },
        ];
        for side in &sides {
            self.panel(side, all);
            self.studs(side, all);
        }
        self.under_the_counter(all);
    }

    /// The cutouts in one side's board, each as its box.
    fn cuts(&self, side: &Side) -> Vec<(Extent, bool)> {
        let seen = match side.face {
            Face::Front | Face::Back => true,
            Face::Left => self.ends.0,
            Face::Right => self.ends.1,
        };
        let plane = Plane::of(side.face);
        let cutouts = self.fittings.iter().filter(|_| seen);
        let mut cuts: Vec<(Extent, bool)> = cutouts
            .filter_map(|fitting| {
                fitting.cutout(plane).map(|cutout| (cutout.extent, fitting.kind == FittingKind::Notch))
            })
            .collect();
        cuts.sort_by_key(|(cut, _)| (-cut.y1, cut.x0));
        cuts
    }

    /// Rails and backing of one side.
    fn panel(&self, side: &Side, all: &mut Vec<Member>) {
        let (t, e, d) = (self.frame.tube, self.frame.rough_gap, self.datums);
        let (from, to) = (side.x0 + t, side.x1 - t);
        let (low, high) = (d.frame_bottom, d.frame_top);
        let cuts = self.cuts(side);
        let mut put = |role, upright: bool, x0: Length, x1: Length, z0: Length, z1: Length| {
            for (start, end) in self.clear(all, side, upright, (x0, x1), (z0, z1)) {
                let (x, z) = if upright { ((x0, x1), (start, end)) } else { ((start, end), (z0, z1)) };
                let body = side.body(x, z);
                all.push(Member { role, module: self.index, body });
            }
        };
        for (x0, x1) in spans(from, to, high - t, high, &cuts, e, None) {
            put(Role::Rail, false, x0, x1, high - t, high);
        }
        let to_floor = cuts.iter().any(|(cut, _)| cut.y0 <= low);
        if side.bottom_rail && !to_floor {
            put(Role::Rail, false, from, to, low, low + t);
        }
        for (index, &(cut, notch)) in cuts.iter().enumerate() {
            let overlaps = |other: &Extent| other.x0 < cut.x1 && cut.x0 < other.x1;
            let others = || cuts.iter().enumerate().filter(move |&(at, _)| at != index).map(|(_, other)| other);
            let above = others().filter(|(o, _)| overlaps(o) && o.y0 >= cut.y1).map(|(o, n)| (o.y0, *n)).min();
            let below = others().filter(|(o, _)| overlaps(o) && o.y1 <= cut.y0).map(|(o, _)| o.y1).max();
            let two_rails = t * 2 + e * 2;
            let mut level = |z0: Length| {
                if z0 >= low + t && z0 + t <= high - t {
                    for (x0, x1) in spans(from, to, z0, z0 + t, &cuts, e, Some(index)) {
                        put(Role::Backing, false, x0, x1, z0, z0 + t);
                    }
                }
            };
            // Above: its own rail, or one rail in the middle of a narrow strip, or the one under a notch.
            match above {
                _ if notch => {}
                Some((z, under_notch)) if z - cut.y1 < two_rails => {
                    if !under_notch && z - cut.y1 >= t {
                        level((z + cut.y1 - t).half());
                    }
                }
                _ => level(cut.y1 + e),
            }
            // Below: the one above the next cutout will do in a narrow strip.
            let narrow = below.is_some_and(|z| cut.y0 - z < two_rails);
            if cut.y0 > low && (notch || !narrow) {
                level(cut.y0 - e - t);
            }
            let bottom = if cut.y0 <= low { low } else { cut.y0 - e };
            let top = if notch { high - t } else { (cut.y1 + e).min(high) };
            for (x0, x1) in [(cut.x0 - e - t, cut.x0 - e), (cut.x1 + e, cut.x1 + e + t)] {
                // Where a whole tube doesn't pass between the cutout and the post, the post backs the edge or nothing does.
                let passes = x0 >= from && x1 <= to;
                let met = others().any(|(o, _)| o.x0 < x1 && x0 < o.x1 && o.y0 < top && bottom < o.y1);
                if passes && !met {
                    put(Role::Backing, true, x0, x1, bottom, top);
                }
            }
        }
    }

    /// What is left of a tube in a side's layer, along its length, between the tubes that are there already: tubes butt, none
    /// runs through another. Bits too short to cut are left out.
    fn clear(
        &self,
        all: &[Member],
        side: &Side,
        upright: bool,
        x: (Length, Length),
        z: (Length, Length),
    ) -> Vec<(Length, Length)> {
        let body = side.body(x, z);
        let (start, end) = if upright { z } else { x };
        let level = |body: &BodyBox| if matches!(side.face, Face::Front | Face::Back) { body.u } else { body.v };
        let taken = all.iter().filter(|other| other.module == self.index && met(&other.body, &body));
        let mut taken: Vec<(Length, Length)> =
            taken.map(|other| if upright { other.body.z } else { level(&other.body) }).collect();
        taken.sort();
        let (mut left, mut at) = (Vec::new(), start);
        for (from, to) in taken.into_iter().chain([(end, end)]) {
            if from - at >= SHORTEST_PIECE {
                left.push((at, from));
            }
            at = at.max(to);
        }
        left
    }

    /// Upright tubes behind a side's board, evenly between the posts, broken round its cutouts and left out where another
    /// upright does as well.
    fn studs(&self, side: &Side, all: &mut Vec<Member>) {
        let (t, e, d) = (self.frame.tube, self.frame.rough_gap, self.datums);
        let (seen, build) = match side.face {
            Face::Front => (true, &self.faces.front),
            Face::Back => (true, &self.faces.back),
            Face::Left => (self.ends.0, &self.faces.left),
            Face::Right => (self.ends.1, &self.faces.right),
        };
        let (Some(apart), true) = (self.frame.studs, seen && build.board > Length::ZERO) else { return };
        let wide = side.x1 - side.x0 - t;
        if apart <= t || wide <= apart || (side.face == Face::Front && self.module.kind == ModuleKind::OpenBay) {
            return;
        }
        let bays = (wide.nm() + apart.nm() - 1) / apart.nm();
        let cuts = self.cuts(side);
        let (low, high) = (d.frame_bottom + t, d.frame_top - t);
        for bay in 1..bays {
            let x = side.x0 + Length::from_nm(wide.nm() * bay / bays);
            // A notch takes what is above its bottom; any other cutout breaks the stud where it is.
            let mut breaks: Vec<(Length, Length)> = cuts
                .iter()
                .filter(|(cut, _)| cut.x0 - e < x + t && x < cut.x1 + e)
                .map(|(cut, notch)| (cut.y0 - e - t, if *notch { high } else { cut.y1 + e + t }))
                .collect();
            breaks.sort();
            let mut at = low;
            for (z0, z1) in breaks.into_iter().chain([(high, high)]) {
                let upright = side.body((x, x + t), (at, z0.min(high)));
                if z0.min(high) - at >= t * 3
                    && !all.iter().any(|other| other.module == self.index && met(&other.body, &upright))
                {
                    all.push(Member { role: Role::Backing, module: self.index, body: upright });
                }
                at = at.max(z1);
            }
        }
    }

    /// Tubes at the frame's top that carry the substrate's edges round notches and wells.
    fn under_the_counter(&self, all: &mut Vec<Member>) {
        let (t, e, d) = (self.frame.tube, self.frame.rough_gap, self.datums);
        let z = (d.frame_top - t, d.frame_top);
        let (from, to) = (self.module.left + t, self.module.right - t);
        let (near, far) = (d.frame_face + t, d.frame_back - t);
        let mut put = |u: (Length, Length), v: (Length, Length)| {
            let body = BodyBox { u, v, z };
            let taken = all.iter().any(|other| other.module == self.index && met(&other.body, &body));
            if !taken && u.1 - u.0 >= SHORTEST_PIECE && v.1 - v.0 >= SHORTEST_PIECE {
                all.push(Member { role: Role::Backing, module: self.index, body });
            }
        };
        for fitting in self.fittings {
            match (fitting.kind, fitting.back) {
                (FittingKind::Notch, Some(back)) if back + e + t <= far => {
                    put((from, to), (back + e, back + e + t));
                }
                (FittingKind::Well, _) => {
                    for u in [fitting.left - e - t, fitting.right + e] {
                        // Not through the bowl that a faucet stands behind.
                        let crosses = self.fittings.iter().any(|other| {
                            other.kind == FittingKind::Well && other.left - e < u + t && u < other.right + e
                        });
                        if u >= from && u + t <= to && !crosses {
                            put((u, u + t), (near, far));
                        }
                    }
                }
                _ => {}
            }
        }
    }
}

/// Whether two tubes share some space.
fn met(a: &BodyBox, b: &BodyBox) -> bool {
    let over = |p: (Length, Length), q: (Length, Length)| p.0 < q.1 && q.0 < p.1;
    over(a.u, b.u) && over(a.v, b.v) && over(a.z, b.z)
}

/// What is left of a level tube between `from` and `to` when it is broken, a gap clear, at every cutout that
/// it would cross. `own` is the cutout that it belongs to, which it doesn't cross.
fn spans(
    from: Length,
    to: Length,
    z0: Length,
    z1: Length,
    cuts: &[(Extent, bool)],
    gap: Length,
    own: Option<usize>,
) -> Vec<(Length, Length)> {
    let mut breaks: Vec<(Length, Length)> = cuts
        .iter()
        .enumerate()
        .filter(|&(index, (cut, _))| Some(index) != own && cut.y0 < z1 && z0 < cut.y1)
        .map(|(_, (cut, _))| (cut.x0 - gap, cut.x1 + gap))
        .collect();
    breaks.sort();
    let (mut spans, mut at) = (Vec::new(), from);
    for (x0, x1) in breaks {
        if x0 > at {
            spans.push((at, x0.min(to)));
        }
        at = at.max(x1);
    }
    if to > at {
        spans.push((at, to));
    }
    spans
}
