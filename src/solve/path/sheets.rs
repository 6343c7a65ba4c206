//! The counters and substrates of the legs that turn corners or whose counters have a shape of their own.

use super::Chain;
use super::whole::{Job, Layer, Over, extent, over};
use crate::findings::Problem;
use crate::geometry::Region;
use crate::parameters::given::{CornerShape, FrontEdge, Given};
use crate::solve::counter::mass;
use crate::solve::{Counter, CounterNotch, Extent, Face, Piece, Slab, Substrate, Under};
use crate::units::Length;

/// What is solved for one chain.
pub struct Shaped {
    /// The slab, as the run lists it.
    pub slab: Slab,
    /// Each leg with its counter, and its substrate without joints and screw lines.
    pub legs: Vec<(usize, Counter, Substrate)>,
}

/// Whether a chain's counter has to be built from its edges: it turns a corner, or has a shape that is not a box.
pub fn is_shaped(given: &Given, chain: &Chain) -> bool {
    chain.legs.len() > 1
        || given.counter.notches.iter().any(|notch| chain.legs.contains(&notch.leg))
        || chain.legs.iter().any(|&leg| {
            let own = &given.legs[leg].own;
            own.front != FrontEdge::Straight || own.skew != [Length::ZERO; 2] || own.corners != [CornerShape::Common; 4]
        })
}

/// The counter and the substrate of a chain.
pub fn shaped(job: &Job, chain: &Chain) -> Result<Shaped, Vec<Problem>> {
    let (counter, substrate) = match (over(job, chain, Layer::Counter), over(job, chain, Layer::Substrate)) {
        (Ok(counter), Ok(substrate)) => (counter, substrate),
        (counter, substrate) => {
            let mut problems: Vec<Problem> = counter.err().into_iter().chain(substrate.err()).flatten().collect();
            problems.dedup();
            return Err(problems);
        }
    };
    let mut legs: Vec<(usize, Counter, Substrate)> = chain
        .legs
        .iter()
        .zip(counter.shares.iter().zip(substrate.shares.iter().zip(substrate.across)))
        .map(|(&leg, (share, (under, joints)))| (leg, blank(job, leg, share), sheet(under, joints)))
        .collect();
    let mut pieces = Vec::new();
    for (number, piece) in counter.pieces.iter().enumerate() {
        let Some((_, own, _)) = legs.iter_mut().find(|(leg, ..)| *leg == piece.leg) else { continue };
        pieces.push((piece.leg, own.pieces.len(), piece.legs.clone()));
        let extent = extent(&piece.region);
        own.pieces.push(Piece {
            name: format!("Piece {}", number + 1),
            extent,
            region: piece.region.clone(),
            mass: mass(piece.region.area() * job.given.counter.thickness.mm(), job.given.counter.density),
            diagonal: Length::from_mm(extent.width().mm().hypot(extent.height().mm())),
            edges: piece.edges.clone(),
        });
    }
    let Over { region, edges, .. } = counter;
    let sheets =
        substrate.pieces.into_iter().map(|piece| Under { leg: piece.leg, region: piece.region, edges: piece.edges });
    let slab =
        Slab { legs: chain.legs.clone(), region, edges, substrate: substrate.region, pieces, sheets: sheets.collect() };
    Ok(Shaped { slab, legs })
}

/// A leg's counter without its pieces.
fn blank(job: &Job, leg: usize, share: &Region) -> Counter {
    let counter = &job.given.counter;
    let d = &job.levels[leg].datums;
    // What all pages of a leg count from: at a corner, from where the front edges meet.
    let extent = Extent { x0: d.counter_left, y0: d.counter_front, x1: d.counter_right, y1: d.counter_back };
    let mut seams: Vec<Length> = counter.seams.iter().filter(|(on, _)| *on == leg).map(|&(_, u)| u).collect();
    seams.sort();
    let back = &job.levels[leg].bounds[2];
    // Upstands butt in a corner: the leg that runs through has the longer one.
    let splashes = counter.splash.filter(|_| !back.is_open()).map_or_else(Vec::new, |splash| {
        let straight = |at: &(Length, Length)| at.1 == d.counter_back;
        let along: Vec<Length> =
            back_corners(share, d.counter_back).into_iter().filter(straight).map(|p| p.0).collect();
        let (Some(&from), Some(&to)) = (along.iter().min(), along.iter().max()) else { return Vec::new() };
        let mut pieces = Vec::new();
        for (from, to) in beside(&job.notches[leg], from, to) {
            let mut ends = vec![from];
            ends.extend(seams.iter().copied().filter(|&u| u > from && u < to));
            ends.push(to);
            for pair in ends.windows(2) {
                let volume = (pair[1] - pair[0]).mm() * splash.height.mm() * splash.thickness.mm();
                let name = format!("Splash {}", pieces.len() + 1);
                pieces.push((name, pair[0], pair[1], mass(volume, counter.density)));
            }
        }
        pieces
    });
    Counter { extent, region: share.clone(), pieces: Vec::new(), seams, splashes }
}

/// What notches out of the back leave of a stretch of it.
fn beside(notches: &[CounterNotch], from: Length, to: Length) -> Vec<(Length, Length)> {
    let mut own: Vec<&CounterNotch> = notches.iter().filter(|notch| notch.edge == Face::Back).collect();
    own.sort_by_key(|notch| notch.extent.x0);
    let (mut left, mut at) = (Vec::new(), from);
    for notch in own {
        left.push((at, notch.extent.x0));
        at = notch.extent.x1;
    }
    left.push((at, to));
    left.retain(|(from, to)| to > from);
    left
}

/// The corners of a share that lie on its back edge, in exact lengths.
fn back_corners(share: &Region, back: Length) -> Vec<(Length, Length)> {
    let near = |v: f64| if (v - back.mm()).abs() < 1e-4 { back } else { Length::from_mm(v) };
    share.outer.vertices.iter().map(|corner| (Length::from_mm(corner.x), near(corner.y))).collect()
}

fn sheet(share: &Region, joints: Vec<Length>) -> Substrate {
    Substrate { extent: extent(share), region: share.clone(), joints, screw_lines: Vec::new() }
}
