//! The counter and the substrate over a chain of legs: one outline, and its pieces.

use super::Chain;
use super::cuts::Part;
use super::edges::edges;
use super::holes::Hole;
use super::polygon::{Side, Tag};
use super::sheet::{Band, Broken, Seen, Sheet};
use crate::findings::Problem;
use crate::geometry::cut::{Ring, outline_of};
use crate::geometry::{LegPoint, Outline, Region};
use crate::parameters::given::{self, Given};
use crate::solve::levels::Levels;
use crate::solve::{CounterNotch, Edge, EdgeKind, Extent, Fitting, Module, substrate};
use crate::units::{Length, Show};

/// A sheet over a chain, solved.
#[derive(Clone, Debug)]
pub struct Over {
    /// The whole outline with its holes, in the first leg's (u, v), mm.
    pub region: Region,
    /// Its edges, in the first leg's (u, v), counter-clockwise, radii left out of account.
    pub edges: Vec<Edge>,
    /// Its pieces, left to right.
    pub pieces: Vec<Piece>,
    /// Each leg's share between its corners, in the leg's own (u, v).
    pub shares: Vec<Region>,
    /// Where each leg's share is cut across, as u.
    pub across: Vec<Vec<Length>>,
}

/// A piece of such a sheet.
#[derive(Clone, Debug)]
pub struct Piece {
    /// The leg whose coordinates it is given in: the first one that it lies on.
    pub leg: usize,
    /// All legs that it lies on.
    pub legs: Vec<usize>,
    /// Its outline and holes in that leg's (u, v), mm.
    pub region: Region,
    /// Its edges in that leg's (u, v).
    pub edges: Vec<Edge>,
}

/// Which sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The counter.
    Counter,
    /// The substrate.
    Substrate,
}

impl Layer {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Layer::Counter => "counter",
            Layer::Substrate => "substrate",
        }
    }
}

/// What a sheet is worked out from.
pub struct Job<'a> {
    /// The prepared job.
    pub given: &'a Given,
    /// The datums and bounds of each leg.
    pub levels: &'a [&'a Levels],
    /// The modules of each leg.
    pub modules: &'a [&'a [Module]],
    /// The fittings of each leg.
    pub fittings: &'a [Vec<Fitting>],
    /// The notches of each leg that no fitting makes.
    pub notches: &'a [Vec<CounterNotch>],
    /// How lengths are told.
    pub show: Show,
}

/// Most that pieces may differ from the whole, mm2. They are cut out of it, so that a greater difference is a mistake of
/// the program, and nothing may be cut from such a drawing.
const SUMS: f64 = 1.0;

/// The counter or the substrate over a chain. A substrate is cut at its corners, and over the posts of its legs as a
/// sheet's length asks.
///
/// Errors: a leg too short for its corners, a radius with no room, a seam in a corner, a cutout that leaves the sheet.
pub fn over(job: &Job, chain: &Chain, layer: Layer) -> Result<Over, Vec<Problem>> {
    let problems = job.refused(chain, layer);
    if !problems.is_empty() {
        return Err(problems);
    }
    let seam = Tag { kind: EdgeKind::Seam, overhang: None, joint: Some(job.given.counter.seam_joint), bulge: 0.0 };
    let mut sheet = Sheet {
        bands: chain.legs.iter().map(|&leg| job.band(leg, layer)).collect(),
        meetings: chain.joints.iter().filter_map(|&joint| job.meeting(joint, layer)).collect(),
        seam,
    };
    let seen = sheet.seen();
    let told = |broken: Broken| vec![job.told(broken, chain, layer)];
    let whole = sheet.whole(&seen).map_err(told)?;
    let outer = outline_of(&whole);
    let holes = job.holes(chain, layer, &seen);
    let lost: Vec<Problem> = holes.iter().filter(|hole| !holds(&outer, hole)).map(|hole| hole.lost(layer)).collect();
    if !lost.is_empty() {
        return Err(lost);
    }
    let rings: Vec<Ring<Side>> = holes.iter().map(|hole| hole.ring.clone()).collect();
    let parted = |sheet: &Sheet, cuts: Result<Vec<_>, Broken>| sheet.parted(whole.clone(), rings.clone(), &cuts?);
    let shares = parted(&sheet, sheet.corners(&seen)).map_err(told)?;
    let shares: Vec<Region> = (0..chain.legs.len()).filter_map(|leg| share(&shares, leg, &seen[leg])).collect();
    if layer == Layer::Substrate {
        for (at, (share, &leg)) in shares.iter().zip(&chain.legs).enumerate() {
            let joints = substrate::joints(&extent(share), job.modules[leg], &job.given.stock.substrate);
            sheet.bands[at].seams = sheet.clear_of_corners(at, &joints, &seen).map_err(told)?;
        }
    }
    let parts = parted(&sheet, sheet.cuts(&seen)).map_err(told)?;
    let region = Region { outer, holes: rings.iter().map(|ring| outline_of(ring).reversed()).collect() };
    let pieces: Vec<Piece> = parts.iter().map(|part| piece(part, &seen[part.first], chain)).collect();
    let apart = pieces.iter().map(|piece| piece.region.area()).sum::<f64>() - region.area();
    if apart.abs() > SUMS {
        return Err(vec![Problem::new(
            format!(
                "the pieces of the {} do not add up to its outline: {:.0} mm\u{b2} apart",
                layer.word(),
                apart.abs()
            ),
            "move the seams clear of corners, cutouts and one another, and report it: this is a mistake of the program",
        )]);
    }
    let exact = |band: &Band| band.seams.iter().map(|&u| Length::from_mm(u)).collect();
    let across = sheet.bands.iter().map(exact).collect();
    Ok(Over { edges: edges(&whole, |p| p), region, pieces, shares, across })
}

fn piece(part: &Part, seen: &Seen, chain: &Chain) -> Piece {
    Piece {
        leg: chain.legs[part.first],
        legs: chain.legs[part.first..=part.last].to_vec(),
        region: part.region(|x, y| seen.back((x, y))),
        edges: edges(&part.outer, |p| seen.back(p)),
    }
}

/// A leg's share; where it falls into several, the largest.
fn share(parts: &[Part], leg: usize, seen: &Seen) -> Option<Region> {
    let own = parts.iter().filter(|part| part.first == leg).map(|part| part.region(|x, y| seen.back((x, y))));
    own.max_by(|a, b| a.area().total_cmp(&b.area()))
}

/// The box round a region.
pub fn extent(region: &Region) -> Extent {
    let (x0, y0, x1, y1) = region.outer.bounds();
    let exact = Length::from_mm;
    Extent { x0: exact(x0), y0: exact(y0), x1: exact(x1), y1: exact(y1) }
}

/// Whether a hole lies in an outline altogether.
fn holds(outer: &Outline, hole: &Hole) -> bool {
    // A tenth of a millimetre of chord is far finer than what may lie between a hole and an edge.
    outline_of(&hole.ring).flattened(0.1).iter().all(|&(x, y)| outer.contains(LegPoint::new(x, y)))
}

impl Job<'_> {
    /// A leg as given and as solved.
    pub(super) fn leg(&self, leg: usize) -> (&given::Leg, &Levels) {
        (&self.given.legs[leg], self.levels[leg])
    }
}
