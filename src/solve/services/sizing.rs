//! The longest-length method: every segment by the length to the farthest appliance.
//!
//! Source: IFGC 402.4.1 and appendix A.3.1. Fittings lengthen the way by the bore that is chosen, so lengths and sizes are
//! worked out in turn until neither changes; sizes only grow, so that ends.

use std::collections::HashMap;

use super::equation::{self, Gas};
use crate::parameters::given::{PipeSize, Segment};
use crate::units::Length;

/// What a pipe is sized for.
#[derive(Clone, Debug)]
pub struct Demand<'d> {
    /// The gas.
    pub gas: Gas,
    /// Heat in a cubic foot, Btu.
    pub heating_value: f64,
    /// Drop that may be lost to the farthest appliance, inches of water.
    pub drop: f64,
    /// Smallest pipe to use.
    pub smallest: PipeSize,
    /// A share to add to every length.
    pub allowance: f64,
    /// Heat input of each appliance, Btu/h, by the name of its point.
    pub loads: &'d HashMap<&'d str, f64>,
}

/// One segment, sized.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sized {
    /// Heat that it carries, Btu/h.
    pub load: f64,
    /// Flow, ft3/h.
    pub flow: f64,
    /// The smallest size that carries it; `None` when none does.
    pub size: Option<PipeSize>,
}

/// A tree of pipe, sized.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    /// To the farthest appliance, fittings and allowance counted, ft.
    pub longest: f64,
    /// The segments in their own order.
    pub segments: Vec<Sized>,
}

/// What is wrong with a tree of pipe.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// More points than one that nothing leads to.
    SeveralSources(Vec<String>),
    /// Two segments lead to one point.
    FedTwice(String),
    /// Segments go round in a circle.
    Circle(String),
    /// A segment ends where there is no appliance.
    LeadsNowhere(usize),
    /// No segment leads to this appliance.
    NotReached(String),
}

/// Which segments lead to each appliance, from the source on; or what is wrong with the tree.
pub fn paths(pipe: &[Segment], appliances: &[&str]) -> Result<HashMap<String, Vec<usize>>, Vec<Fault>> {
    let mut feeds: HashMap<&str, usize> = HashMap::new();
    let mut faults = Vec::new();
    for (index, segment) in pipe.iter().enumerate() {
        if feeds.insert(&segment.to, index).is_some() {
            faults.push(Fault::FedTwice(segment.to.clone()));
        }
    }
    let mut sources: Vec<&str> =
        pipe.iter().map(|segment| segment.from.as_str()).filter(|from| !feeds.contains_key(from)).collect();
    sources.sort_unstable();
    sources.dedup();
    if sources.len() > 1 {
        faults.push(Fault::SeveralSources(sources.into_iter().map(str::to_owned).collect()));
    }
    let starts: std::collections::HashSet<&str> = pipe.iter().map(|segment| segment.from.as_str()).collect();
    for (index, segment) in pipe.iter().enumerate() {
        if !starts.contains(segment.to.as_str()) && !appliances.contains(&segment.to.as_str()) {
            faults.push(Fault::LeadsNowhere(index));
        }
    }
    let mut paths = HashMap::new();
    for &appliance in appliances {
        let (mut path, mut at) = (Vec::new(), appliance);
        while let Some(&index) = feeds.get(at) {
            if path.len() > pipe.len() {
                faults.push(Fault::Circle(at.to_owned()));
                return Err(faults);
            }
            path.push(index);
            at = &pipe[index].from;
        }
        if path.is_empty() && !pipe.is_empty() {
            faults.push(Fault::NotReached(appliance.to_owned()));
        }
        path.reverse();
        paths.insert(appliance.to_owned(), path);
    }
    faults.dedup();
    if faults.is_empty() { Ok(paths) } else { Err(faults) }
}

/// Sizes every segment of a sound tree.
pub fn size(pipe: &[Segment], paths: &HashMap<String, Vec<usize>>, demand: &Demand<'_>) -> Sizing {
    let mut loads = vec![0.0; pipe.len()];
    let mut named: Vec<(&String, &Vec<usize>)> = paths.iter().collect();
    // Sums of floating numbers in one order, whatever the map's.
    named.sort_unstable();
    for (name, path) in &named {
        let load = demand.loads.get(name.as_str()).copied().unwrap_or(0.0);
        for &index in *path {
            loads[index] += load;
        }
    }
    let mut sizes: Vec<Option<PipeSize>> = vec![Some(demand.smallest); pipe.len()];
    let mut longest = 0.0;
    for _ in 0..=PipeSize::ALL.len() * pipe.len().max(1) {
        let long = |index: usize| run_length(&pipe[index], sizes[index].unwrap_or(PipeSize::Two), demand.allowance);
        longest = named.iter().map(|(_, path)| path.iter().map(|&index| long(index)).sum::<f64>()).fold(0.0, f64::max);
        let next: Vec<Option<PipeSize>> = sizes
            .iter()
            .zip(&loads)
            .map(|(now, load)| {
                let flow = load / demand.heating_value;
                let fits = |size: &PipeSize| equation::capacity(demand.gas, *size, longest, demand.drop) >= flow;
                let least = PipeSize::ALL.into_iter().filter(|size| *size >= demand.smallest).find(fits)?;
                now.map(|now| now.max(least))
            })
            .collect();
        if next == sizes {
            break;
        }
        sizes = next;
    }
    let segments = loads
        .iter()
        .zip(&sizes)
        .map(|(load, size)| Sized { load: *load, flow: load / demand.heating_value, size: *size })
        .collect();
    Sizing { longest, segments }
}

/// Length of a segment in one size, fittings and allowance counted, ft.
pub fn run_length(segment: &Segment, size: PipeSize, allowance: f64) -> f64 {
    feet(segment.length) * (1.0 + allowance) + equation::equivalent(size, &segment.bends)
}

/// A length in feet.
pub fn feet(length: Length) -> f64 {
    length.inches() / 12.0
}
