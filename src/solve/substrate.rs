//! The sheet between the frame and the counter.

use super::slab::{Bite, bitten, outline, sharp_box};
use super::{BodyBox, Bound, Cutout, Datums, Extent, Fitting, Member, Module, Plane, Role, Substrate};
use crate::findings::Problem;
use crate::geometry::Region;
use crate::parameters::given::{SheetStock, SubstrateEdge};
use crate::units::{Length, Show};

/// Where the substrate's edges lie, (u, v). Free edges follow `edge`; an edge at a bound is flush with the run's
/// outermost layer there, and never reaches past the counter.
pub fn extent(edge: SubstrateEdge, datums: &Datums, bounds: &[Bound; 3]) -> Extent {
    let d = datums;
    let [left, right, back] = bounds.each_ref().map(Bound::is_open);
    let zero = Length::ZERO;
    let (front_edge, left_edge, right_edge, back_edge) = match edge {
        SubstrateEdge::Frame => (d.frame_face, d.frame_left, d.frame_right, d.frame_back),
        SubstrateEdge::Board => (d.board_face, d.board_left, d.board_right, d.board_back),
        SubstrateEdge::Finish => (zero, zero, d.finished_right, d.finished_back),
        SubstrateEdge::HeldBack(by) => (by, by, d.finished_right - by, d.finished_back - by),
    };
    Extent {
        x0: if left { left_edge } else { zero.max(d.counter_left) },
        y0: front_edge,
        x1: if right { right_edge } else { d.finished_right.min(d.counter_right) },
        y1: if back { back_edge } else { d.finished_back.min(d.counter_back) },
    }
}

/// Why a substrate with these edges can't be had: its edges leave nothing between them.
pub fn missing(extent: &Extent, id: &str, tube: Length, show: Show) -> Option<Problem> {
    let gone = extent.width() < tube || extent.height() < tube;
    gone.then(|| {
        let (wide, deep) = (show.plain(extent.width()), show.plain(extent.height()));
        Problem::new(
            format!("leg {id} has no substrate: its edges would lie {wide} and {deep} apart"),
            "hold the substrate back less",
        )
    })
}

/// The substrate with its cutouts, its joints over supports, and the lines that screws may follow.
pub fn substrate(
    extent: Extent,
    modules: &[Module],
    fittings: &[Fitting],
    members: &[Member],
    stock: &SheetStock,
) -> Substrate {
    let cutouts = || fittings.iter().filter_map(|fitting| fitting.cutout(Plane::Substrate));
    let bite = |cutout: &Cutout| Bite {
        x0: cutout.extent.x0.mm(),
        x1: cutout.extent.x1.mm(),
        y: cutout.extent.y1.min(extent.y1).mm(),
        mouth: 0.0,
        inner: cutout.radius.mm(),
    };
    let bites: Vec<Bite> = cutouts().filter(|cutout| cutout.open).map(bite).collect();
    let corners = sharp_box(extent.x0.mm(), extent.y0.mm(), extent.x1.mm(), extent.y1.mm());
    let outer = outline(&bitten(&corners, 0, &bites));
    let holes = cutouts().filter(|c| !c.open && c.extent.meets(&extent)).map(|cutout| cutout.outline.clone()).collect();
    let joints = joints(&extent, modules, stock);
    screwed(Substrate { extent, region: Region { outer, holes }, joints, screw_lines: Vec::new() }, members)
}

/// The same with the lines that screws may follow.
pub fn screwed(sheet: Substrate, members: &[Member]) -> Substrate {
    Substrate { screw_lines: screw_lines(members), ..sheet }
}

/// Joints over the posts of neighbouring modules: from each joint on, the last module edge within a sheet's
/// length; where a module is longer than a sheet, its far edge.
pub fn joints(extent: &Extent, modules: &[Module], stock: &SheetStock) -> Vec<Length> {
    let longest = longest(extent.height(), stock);
    let edges: Vec<Length> = modules.iter().skip(1).map(|module| module.left).collect();
    let (mut joints, mut from, mut next) = (Vec::new(), extent.x0, 0);
    while extent.x1 - from > longest {
        let within = edges[next..].iter().take_while(|&&edge| edge - from <= longest).count();
        let take = next + within.max(1) - 1;
        let Some(&edge) = edges.get(take) else { break };
        (from, next) = (edge, take + 1);
        if edge > extent.x0 && edge < extent.x1 {
            joints.push(edge);
        }
    }
    joints
}

/// The longest piece of so much depth that a sheet gives; where none is deep enough, as long as the longest sheet, and a
/// rule tells of it.
fn longest(depth: Length, stock: &SheetStock) -> Length {
    let lying = stock.sheets.iter().filter(|size| depth <= size.0).map(|size| size.1);
    let standing = stock.sheets.iter().filter(|size| stock.turned && depth <= size.1).map(|size| size.0);
    let any = stock.sheets.iter().map(|size| size.0.max(size.1));
    lying.chain(standing).max().or(any.max()).unwrap_or(depth)
}

/// Centrelines of the tubes that run front to back at the frame's top, with their span in v over the whole depth of
/// the frame where posts carry on.
fn screw_lines(members: &[Member]) -> Vec<(Length, Length, Length)> {
    let Some(top) = members.iter().map(|member| member.body.z.1).max() else { return Vec::new() };
    let mut lines: Vec<(Length, Length, Length)> = Vec::new();
    for member in members.iter().filter(|member| member.body.z.1 == top) {
        let BodyBox { u, v, .. } = member.body;
        let along = v.1 - v.0 > u.1 - u.0;
        if member.role == Role::Post || along {
            lines.push(((u.0 + u.1).half(), v.0, v.1));
        }
    }
    // Posts and the rail between them are one line.
    lines.sort();
    let mut joined: Vec<(Length, Length, Length)> = Vec::new();
    for line in lines {
        match joined.last_mut() {
            Some(last) if last.0 == line.0 && line.1 <= last.2 => last.2 = last.2.max(line.2),
            _ => joined.push(line),
        }
    }
    joined
}
