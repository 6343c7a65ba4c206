//! A whole run, step by step.

use super::across::{Row, across};
use super::boards::boards;
use super::counter::{Slab, counter};
use super::cutouts::cutouts;
use super::feet::{Stand, feet};
use super::frame::members;
use super::layout::{Layout, layout};
use super::levels::{Levels, levels};
use super::limits::limits;
use super::marks::{chosen, marked};
use super::{CounterFacts, Fitting, FrameFacts, Leg, SheetFacts, Solved, Stub, services, substrate};
use crate::findings::Problem;
use crate::geometry::{Placement, PlanPoint};
use crate::parameters::given::{self, Given};
use crate::units::{Length, Show};

/// Solves a run: layout, datums, cutouts, boards, frame, counter, substrate, floor and feet.
///
/// It either succeeds whole or returns every reason that it can't. Two fittings that meet, a flange that
/// doesn't cover and the like are no such reasons: they can be drawn, and the rules report them.
pub fn solve(given: &Given) -> Result<Solved, Vec<Problem>> {
    let show = Show::new(given.job.units);
    let mut problems = limits(given);
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut keep = |more: Vec<Problem>| problems.extend(more);

    let rows: Vec<Option<(Layout, Levels)>> = given
        .legs
        .iter()
        .map(|leg| {
            let layout = layout(leg, given.frame.tube, show).map_err(|problem| keep(vec![problem])).ok()?;
            let levels = levels(given, leg, &layout).map_err(&mut keep).ok()?;
            Some((layout, levels))
        })
        .collect();

    let (mut taken, twice) = chosen(given.fittings.iter());
    keep(twice);
    let mut of_leg = located(given, &rows, show, &mut keep);
    for (leg, (fittings, row)) in of_leg.iter_mut().zip(&rows).enumerate() {
        if let Some((layout, _)) = row {
            *fittings = marked(std::mem::take(fittings), &layout.modules, &mut taken);
        }
        for (index, fitting) in fittings.iter_mut().enumerate() {
            fitting.at = (leg, index);
        }
    }

    let placements: Vec<Placement> = given
        .legs
        .iter()
        .map(|leg| Placement { origin: PlanPoint::new(leg.origin.0, leg.origin.1), angle: leg.angle })
        .collect();
    let stands: Vec<Stand> = rows
        .iter()
        .zip(&placements)
        .filter_map(|(row, &placement)| {
            let (layout, levels) = row.as_ref()?;
            Some(Stand { placement, modules: &layout.modules, datums: &levels.datums })
        })
        .collect();
    let grounds = feet(&given.site.floor, &given.frame, &stands).map_err(|problem| keep(vec![problem]));

    let mut counters = Vec::with_capacity(rows.len());
    for (index, row) in rows.iter().enumerate() {
        let Some((_, levels)) = row else { continue };
        let under = substrate::extent(given.substrate.edge, &levels.datums, &levels.bounds);
        keep(substrate::missing(&under, &given.legs[index].id, given.frame.tube, show).into_iter().collect());
        let slab =
            Slab { counter: &given.counter, datums: &levels.datums, bounds: &levels.bounds, fittings: &of_leg[index] };
        let seams: Vec<Length> = given.counter.seams.iter().filter(|(leg, _)| *leg == index).map(|&(_, u)| u).collect();
        counters.extend(counter(&slab, &seams, show).map_err(&mut keep).ok());
    }

    let Ok(grounds) = grounds else { return Err(problems) };
    if !problems.is_empty() {
        return Err(problems);
    }
    let parts = rows.into_iter().flatten().zip(of_leg).zip(grounds).zip(counters).zip(placements);
    let legs = parts
        .enumerate()
        .map(|(index, (((((layout, levels), fittings), (floor, feet)), counter), placement))| {
            let from = &given.legs[index];
            let datums = levels.datums;
            let members = members(&given.frame, &from.faces, &layout.modules, &datums, &fittings);
            let extent = substrate::extent(given.substrate.edge, &datums, &levels.bounds);
            let [left, right, back] = levels.bounds;
            Leg {
                id: from.id.clone(),
                placement,
                datums,
                left,
                right,
                back,
                front_build: from.faces.front.clone(),
                left_build: from.faces.left.clone(),
                right_build: from.faces.right.clone(),
                back_build: from.faces.back.clone(),
                room: layout.room,
                boards: boards(&from.faces, &layout.modules, &datums, &fittings),
                substrate: substrate::substrate(extent, &layout.modules, &fittings, &members),
                members,
                modules: layout.modules,
                fittings,
                counter,
                floor,
                feet,
                stubs: stubs(given, index),
                place: from.place.clone(),
            }
        })
        .collect();
    Ok(whole(given, show, legs))
}

/// Every fitting with its cutouts, leg by leg, in the order given.
fn located(
    given: &Given,
    rows: &[Option<(Layout, Levels)>],
    show: Show,
    keep: &mut impl FnMut(Vec<Problem>),
) -> Vec<Vec<Fitting>> {
    let frames: Vec<Option<Row>> = rows
        .iter()
        .map(|row| row.as_ref().map(|(layout, levels)| Row { datums: &levels.datums, modules: &layout.modules }))
        .collect();
    let mut of_leg: Vec<Vec<Fitting>> = vec![Vec::new(); rows.len()];
    for (fitting, edges) in given.fittings.iter().zip(across(&given.fittings, &frames)) {
        let edges = match edges {
            Ok(edges) => edges,
            Err(problem) => {
                keep(problem.into_iter().collect());
                continue;
            }
        };
        let Some(Some((_, levels))) = rows.get(fitting.leg) else { continue };
        let front = substrate::extent(given.substrate.edge, &levels.datums, &levels.bounds).y0;
        match cutouts(fitting, edges, &levels.datums, front, show) {
            Ok(solved) => of_leg[fitting.leg].push(solved),
            Err(problem) => keep(vec![problem]),
        }
    }
    of_leg
}

fn stubs(given: &Given, leg: usize) -> Vec<Stub> {
    let own = given.site.stubs.iter().filter(|stub| stub.leg == leg);
    own.map(|stub| Stub { service: stub.service, u: stub.u, v: stub.v, z: stub.z, place: stub.place.clone() }).collect()
}

/// The legs with the facts that all of them share.
fn whole(given: &Given, show: Show, legs: Vec<Leg>) -> Solved {
    let given::Counter { ref name, ref splash, ref place, .. } = given.counter;
    let (counter, frame, feet) = (&given.counter, &given.frame, &given.frame.feet);
    let mut defaults = given.defaults.clone();
    if legs.iter().any(|leg| !leg.substrate.joints.is_empty()) {
        defaults.push(substrate::defaults());
    }
    if legs.iter().any(|leg| !leg.floor.spots.is_empty()) {
        defaults.push(super::feet::defaults());
    }
    let services = given.services.as_ref().map(|from| services::services(from, &legs));
    Solved {
        job: given.job.clone(),
        show,
        paper: given.paper.clone(),
        tolerances: given.tolerances,
        legs,
        counter: CounterFacts {
            material: counter.material,
            name: name.clone(),
            thickness: counter.thickness,
            density: counter.density,
            wall_joint: counter.wall_joint,
            seam_joint: counter.seam_joint,
            corner_radius: counter.corner_radius,
            arris: counter.arris,
            drip: counter.drip,
            splash: *splash,
            tolerance: counter.tolerance,
            needs: counter.needs.clone(),
            place: place.clone(),
        },
        frame: FrameFacts {
            tube: frame.tube,
            wall: frame.wall,
            rough_gap: frame.rough_gap,
            foot_shortest: feet.shortest,
            foot_longest: feet.longest,
            foot_rating: feet.rating,
            material: frame.material,
        },
        substrate: SheetFacts {
            name: given.substrate.name.clone(),
            thickness: given.substrate.thickness,
            combustible: given.substrate.combustible,
            place: given.substrate.place.clone(),
        },
        trim: given.trim.clone(),
        paving: given.site.paving.clone(),
        around: given.site.around.clone(),
        services,
        limits: given.limits.clone(),
        defaults,
    }
}
