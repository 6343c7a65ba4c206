//! A whole run, step by step.

use super::across::{Row, across};
use super::boards::{Covered, boards};
use super::counter::counter;
use super::cutouts::cutouts;
use super::depths::{Depths, depths};
use super::feet::{Stand, feet};
use super::frame::members;
use super::layout::{Layout, layout};
use super::levels::{Levels, levels};
use super::limits::limits;
use super::marks::{chosen, marked};
use super::numbered::numbered;
use super::path::{self, Chain, Ends};
use super::shop::shop;
use super::tube;
use super::{
    Counter, CounterFacts, CounterNotch, Fitting, FrameFacts, Joint, Leg, Module, SheetFacts, Shop, Slab, Solved, Stub,
    Substrate, notches, services, substrate, surveyed,
};
use crate::findings::Problem;
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
    let chains = path::chains(given)?;
    let given = &path::prepared(given);
    let depths: Vec<Depths> = (0..given.legs.len()).map(|leg| depths(given, leg)).collect();
    let ends = path::ends(given, &depths)?;
    let given = &surveyed::rooms(given, &chains, &depths, &ends)?;
    let mut keep = |more: Vec<Problem>| problems.extend(more);

    let rows: Vec<Option<(Layout, Levels)>> = given
        .legs
        .iter()
        .zip(depths.iter().zip(&ends))
        .map(|(leg, (depths, ends))| {
            let layout = layout(leg, ends, given.frame.tube, show).map_err(|problem| keep(vec![problem])).ok()?;
            let levels = levels(given, leg, depths, ends, &layout).map_err(&mut keep).ok()?;
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

    let of = |row: &Option<(Layout, Levels)>, pick: fn(&Levels) -> Length| {
        row.as_ref().map_or(Length::ZERO, |(_, levels)| pick(levels))
    };
    let rights: Vec<Length> = rows.iter().map(|row| of(row, |levels| levels.datums.finished_right)).collect();
    let backs: Vec<Length> = rows.iter().map(|row| of(row, |levels| levels.datums.finished_back)).collect();
    let placements = path::placements(given, &chains, &rights, &backs);
    let stands: Vec<Stand> = rows
        .iter()
        .zip(&placements)
        .filter_map(|(row, &placement)| {
            let (layout, levels) = row.as_ref()?;
            Some(Stand { placement, modules: &layout.modules, datums: &levels.datums })
        })
        .collect();
    let grounds = feet(&given.site, &given.frame, &stands).map_err(|problem| keep(vec![problem]));

    let located: Vec<_> = stands.iter().map(|stand| (stand.datums, stand.placement)).collect();
    let mut notches = vec![Vec::new(); given.legs.len()];
    // Where a leg could not be laid out, that is what is said.
    if located.len() == given.legs.len() {
        match notches::notches(given, &located) {
            Ok(found) => notches = found,
            Err(problems) => keep(problems),
        }
    }
    let (sheets, slabs) = sheets(given, &chains, &rows, (&of_leg, &notches), show, &mut keep);

    let Ok(grounds) = grounds else { return Err(problems) };
    if !problems.is_empty() {
        return Err(problems);
    }
    let covered: Vec<Covered> = (0..given.legs.len()).map(|leg| covered(given, leg, &depths, &ends[leg])).collect();
    let of_leg = of_leg.into_iter().zip(notches);
    let parts = rows.into_iter().flatten().zip(of_leg).zip(grounds).zip(sheets).zip(placements);
    let mut legs: Vec<Leg> = parts
        .enumerate()
        .map(|(index, (((((layout, levels), (fittings, notches)), (floor, feet)), (counter, sheet)), placement))| {
            let from = &given.legs[index];
            let datums = levels.datums;
            let members = members(&given.frame, &from.faces, &layout.modules, &datums, &fittings);
            let extent = substrate::extent(given.substrate.edge, &datums, &levels.bounds);
            let substrate = match sheet {
                Some(sheet) => substrate::screwed(sheet, &members),
                None => substrate::substrate(extent, &layout.modules, &fittings, &members, &given.stock.substrate),
            };
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
                surveyed: from.own.surveyed.as_ref().and_then(|room| room.between.clone()),
                boards: boards(&from.faces, &layout.modules, &datums, &fittings, &covered[index]),
                substrate,
                members,
                modules: layout.modules,
                behind: from.own.behind,
                seating: from.own.seating,
                fittings,
                counter,
                notches,
                floor,
                feet,
                stubs: stubs(given, index),
                place: from.place.clone(),
            }
        })
        .collect();

    numbered(&mut legs, &slabs);
    let mut solved = whole(given, show, legs, slabs);
    solved.shop = shop(given, &solved);
    solved.defaults.extend(solved.shop.supports.assumed.iter().cloned());
    Ok(solved)
}

/// Each leg's counter, and its substrate where that is no box, with the slabs that turn corners.
#[allow(clippy::type_complexity, reason = "a pair for each leg, used once")]
fn sheets(
    given: &Given,
    chains: &[Chain],
    rows: &[Option<(Layout, Levels)>],
    (fittings, notches): (&[Vec<Fitting>], &[Vec<CounterNotch>]),
    show: Show,
    keep: &mut impl FnMut(Vec<Problem>),
) -> (Vec<(Counter, Option<Substrate>)>, Vec<Slab>) {
    let mut sheets: Vec<Option<(Counter, Option<Substrate>)>> = rows.iter().map(|_| None).collect();
    let mut slabs = Vec::new();
    for chain in chains.iter().flat_map(|chain| chain.level_parts(given)) {
        let levels: Option<Vec<&Levels>> = rows.iter().map(|row| row.as_ref().map(|(_, levels)| levels)).collect();
        if path::is_shaped(given, &chain) {
            let Some(levels) = levels else { continue };
            let modules: Vec<&[Module]> = rows.iter().flatten().map(|(layout, _)| layout.modules.as_slice()).collect();
            let job = path::Job { given, levels: &levels, modules: &modules, fittings, notches, show };
            match path::shaped(&job, &chain) {
                Ok(shaped) => {
                    slabs.push(shaped.slab);
                    for (leg, counter, substrate) in shaped.legs {
                        sheets[leg] = Some((counter, Some(substrate)));
                    }
                }
                Err(problems) => keep(problems),
            }
            continue;
        }
        for leg in chain.legs {
            let Some((_, levels)) = &rows[leg] else { continue };
            let under = substrate::extent(given.substrate.edge, &levels.datums, &levels.bounds);
            keep(substrate::missing(&under, &given.legs[leg].id, given.frame.tube, show).into_iter().collect());
            let slab = super::counter::Slab {
                counter: &given.counter,
                datums: &levels.datums,
                bounds: &levels.bounds,
                fittings: &fittings[leg],
            };
            let seams: Vec<Length> = given.counter.seams.iter().filter(|(on, _)| *on == leg).map(|&(_, u)| u).collect();
            sheets[leg] = counter(&slab, &seams, show).map_err(&mut *keep).ok().map(|counter| (counter, None));
        }
    }
    (sheets.into_iter().flatten().collect(), slabs)
}

/// What of a leg's faces other legs cover.
fn covered(given: &Given, leg: usize, depths: &[Depths], ends: &Ends) -> Covered {
    let below = |side: usize| ends[side].seen_from.map(|low| depths[low].frame_top);
    let front = given.legs[leg].own.behind.map(|front| depths[front].frame_top);
    let meets = |side: usize| {
        let bound = if side == 0 { &given.legs[leg].left } else { &given.legs[leg].right };
        bound.kind == super::BoundKind::Leg
    };
    Covered { from: [front, below(0), below(1)], bevels: [ends[0].bevel, ends[1].bevel], meets: [meets(0), meets(1)] }
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

/// Where the legs meet, in plan.
fn joints(given: &Given, legs: &[Leg]) -> Vec<Joint> {
    let located = given.joints.iter().map(|joint| Joint {
        left: joint.left,
        right: joint.right,
        kind: joint.kind.clone(),
        at: legs[joint.right].placement.origin,
        place: joint.place.clone(),
    });
    located.collect()
}

/// The legs with the facts that all of them share.
fn whole(given: &Given, show: Show, legs: Vec<Leg>, slabs: Vec<Slab>) -> Solved {
    let given::Counter { ref name, ref splash, ref place, .. } = given.counter;
    let (counter, frame, feet) = (&given.counter, &given.frame, &given.frame.feet);
    let defaults = given.defaults.clone();
    let services = given.services.as_ref().map(|from| services::services(from, &legs));
    Solved {
        job: given.job.clone(),
        show,
        paper: given.paper.clone(),
        tolerances: given.tolerances,
        joints: joints(given, &legs),
        slabs,
        survey: given.site.survey.clone(),
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
            stiffness: tube::stiffness(frame),
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
        shop: Shop::default(),
        limits: given.limits.clone(),
        defaults,
    }
}
