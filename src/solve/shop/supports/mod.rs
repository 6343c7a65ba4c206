//! The members that hold up counters, substrate and fittings: placed, marked, checked.

mod arms;
mod between;
mod brackets;
mod checked;
mod draft;
mod drafts;
mod framed;
mod rails;
mod table;

use crate::parameters::given::{FrameMaterial, Given};
use crate::solve::{DefaultUsed, Solved, Support, SupportRole, SupportWork, Supports};
use crate::units::Length;
use checked::Loads;
use draft::{Carries, Draft, Room};
use drafts::Drafts;
use std::collections::BTreeSet;

pub use table::name as section_name;

/// The supports of a run.
///
/// Arms first, since what they lie against is decided by the fitting; then rails round cutouts, members between tubes,
/// brackets. Each looks for its room among the frame's tubes, the fittings' bodies and cutouts, and the supports before it.
pub fn supports(given: &Given, solved: &Solved) -> Supports {
    let work = &given.supports;
    let dead = 9.806_65
        * (solved.counter.density * solved.counter.thickness.mm()
            + super::weights::substrate_density(given) * solved.substrate.thickness.mm())
        / 1e3;
    let frame = SupportWork::assumed_for(&given.frame, &given.counter).rail;
    let loads = Loads { solved, work, dead };
    let mut all = Supports { work: Some(work.clone()), ..Supports::default() };
    let (mut marks, mut tubes) = (0, 0);
    let mut framed: Vec<Support> = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let mut room =
            Room { leg, tube: given.frame.tube, gap: given.frame.rough_gap, drafts: Drafts::new(leg.modules.len()) };
        for fitting in 0..leg.fittings.len() {
            if !arms::is_heavy(&leg.fittings[fitting], work) {
                continue;
            }
            if let Err(why) = arms::arms(&mut room, fitting, work) {
                room.drafts.take_back(leg.fittings[fitting].module, fitting);
                all.unheld.push(((index, fitting), why));
                continue;
            }
            let weak = |room: &Room| {
                let module = leg.fittings[fitting].module;
                let own = room.drafts.of(module..=module).filter(|draft| draft.fitting == Some(fitting)).cloned();
                let of_frame = framed::framed(room, module..=module, &frame)
                    .into_iter()
                    .filter(|draft| matches!(draft.carries, Carries::Arms(_)));
                own.chain(of_frame).any(|draft| draft.body.v.0 == leg.datums.frame_face && !loads.holds(&draft))
            };
            if weak(&room) {
                arms::front_posts(&mut room, fitting, work);
            }
        }
        rails::rails(&mut room, work);
        between::between(&mut room, work);
        brackets::brackets(&mut room, solved.counter.needs.brackets, work);
        let mut own = framed::framed(&room, 0..=leg.modules.len(), &frame);
        unload(&mut room);
        own.sort_by_key(order);
        // A frame of wood has no tube: what is beside it is of metal.
        let tubed = given.frame.material != FrameMaterial::Wood;
        let finish =
            |draft: &Draft| Support { of_frame_tube: tubed && draft.bar == frame, ..finished(draft, index, &loads) };
        all.members.extend(room.drafts.sorted(order).into_iter().map(finish));
        framed.extend(own.iter().map(finish));
        all.tubes.extend(framed::tubes(index, leg, &mut tubes));
    }
    let letters = letters(solved);
    for support in all.members.iter_mut().chain(&mut framed) {
        marks += 1;
        support.mark = format!("{letters}{marks}");
    }
    all.framed = framed;
    all.assumed = assumed(&all, given);
    all
}

/// What marks of supports begin with: `S`, or more where a module or a fitting is marked so, as all in a module S are.
fn letters(solved: &Solved) -> &'static str {
    let taken = |letters: &str| {
        let is = |mark: &str| {
            mark.strip_prefix(letters)
                .is_some_and(|rest| !rest.is_empty() && rest.bytes().all(|byte| byte.is_ascii_digit()))
        };
        let mut legs = solved.legs.iter();
        legs.any(|leg| {
            leg.fittings.iter().any(|fitting| is(&fitting.mark)) || leg.modules.iter().any(|module| is(&module.id))
        })
    };
    ["S", "SP", "SUP"].into_iter().find(|letters| !taken(letters)).unwrap_or("SUPP")
}

/// Posts take what the rail over them would have to carry.
fn unload(room: &mut Room) {
    let posted: BTreeSet<usize> = room
        .drafts
        .iter_mut()
        .filter(|draft| draft.role == SupportRole::FrontPost)
        .filter_map(|draft| draft.fitting)
        .collect();
    let face = room.leg.datums.frame_face;
    let tube = room.tube;
    for rail in
        room.drafts.iter_mut().filter(|draft| draft.role == SupportRole::ArmRail && draft.body.v.1 <= face + tube)
    {
        if rail.fitting.is_some_and(|fitting| posted.contains(&fitting)) {
            rail.carries = Carries::Nothing;
        }
    }
}

fn order(draft: &Draft) -> (usize, SupportRole, Length, Length, Length) {
    let body = &draft.body;
    (draft.module, draft.role, body.u.0, body.v.0, body.z.0)
}

/// A support with everything but its mark.
fn finished(draft: &Draft, leg: usize, loads: &Loads) -> Support {
    let (solved, work) = (loads.solved, loads.work);
    let length = draft.length();
    let inset = work.hole_inset;
    let mut places = draft.holes.clone();
    // Both ends are screwed, through the clip or the tube that they lie against.
    if draft.role != SupportRole::Bracket && length > inset * 2 {
        places.extend([inset, length - inset]);
    }
    places.retain(|&at| at > Length::ZERO && at < length);
    places.sort();
    places.dedup();
    let area = table::shape(&draft.bar.section).section().area;
    let from = &solved.legs[leg];
    let fitting = draft.fitting.and_then(|fitting| from.fittings.get(fitting));
    Support {
        mark: String::new(),
        role: draft.role,
        leg,
        module: draft.module,
        fitting: draft.fitting,
        body: draft.body,
        along: draft.along,
        section: table::name(&draft.bar.section, solved.show),
        alloy: draft.bar.alloy.name.clone(),
        of_frame_tube: false,
        length,
        holes: places.into_iter().map(|at| (at, work.hole)).collect(),
        mass: area * draft.bar.alloy.density * length.mm() / 1e3,
        check: loads.check(draft),
        place: fitting
            .map_or_else(|| from.modules.get(draft.module).and_then(|own| own.place.clone()), |own| own.place.clone()),
    }
}

/// Which of the assumed values the run goes by.
fn assumed(all: &Supports, given: &Given) -> Vec<DefaultUsed> {
    let work: &SupportWork = &given.supports;
    let has = |roles: &[SupportRole]| all.members.iter().any(|support| roles.contains(&support.role));
    let arms = has(&[SupportRole::Arm]);
    let rails = has(&[SupportRole::CutoutRail, SupportRole::Intermediate]);
    let brackets = has(&[SupportRole::Bracket]);
    let mut names: Vec<&str> = Vec::new();
    if arms || !all.unheld.is_empty() {
        names.extend(["heavy"]);
    }
    if arms {
        names.extend(["arm", "food", "arm_stiffness"]);
    }
    if rails {
        names.extend(["rail", "person"]);
    }
    if brackets {
        names.extend(["bracket", "lean", "overhang"]);
    }
    if rails || brackets {
        names.push("stiffness");
    }
    if has(&[SupportRole::Intermediate]) {
        names.push("apart");
    }
    if !all.members.is_empty() {
        names.extend(["hole", "hole_inset"]);
    }
    let mut used: Vec<DefaultUsed> = names.into_iter().filter_map(|name| work.assumed(name).cloned()).collect();
    if brackets && given.counter.needs.brackets.is_none() {
        used.push(DefaultUsed {
            name: "counter.brackets".to_owned(),
            value: "24 in".to_owned(),
            origin: "shops: 30 to 36 in at most; 24 in by common practice",
        });
    }
    used
}
