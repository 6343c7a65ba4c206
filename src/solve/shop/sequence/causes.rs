//! What of a run makes a step of the work needed.

use crate::parameters::given::{Given, WaitFor, Waits};
use crate::solve::{
    CounterMaterial, EdgeKind, Face, FinishKind, FittingKind, JointKind, Leg, Look, OpeningSort, Role, Service,
    SheetPart, Shop, Solved, SupportRole,
};
use crate::units::{Length, Show};

/// The causes of steps, and what their sentences name.
#[derive(Clone, Debug, Default)]
pub struct Causes {
    /// How lengths and masses are shown.
    pub show: Show,
    /// Modules of the run.
    pub modules: usize,
    /// Legs meet at corners, so many times.
    pub corners: usize,
    /// A leg stands behind another and higher, or a counter steps.
    pub raised: bool,
    /// Adjustable feet, and the module over the highest ground where it is known.
    pub feet: usize,
    /// The module over the highest ground.
    pub high: Option<String>,
    /// Support arms, posts, rails, intermediate members.
    pub supports: usize,
    /// Tubes that fittings screw to.
    pub backing: usize,
    /// Gas comes up, or something burns it.
    pub gas: bool,
    /// Marks of what burns gas.
    pub burners: Vec<String>,
    /// Cylinders stand in the run.
    pub cylinders: bool,
    /// Power comes up, or is wanted.
    pub power: bool,
    /// Water or a drain comes up, or there is a sink.
    pub water: bool,
    /// Boards on the faces, as they are cut.
    pub boards: usize,
    /// Names of finishes by kind.
    pub skim_coat: Option<String>,
    /// Veneer.
    pub veneer: Option<String>,
    /// Tile.
    pub tile: Option<String>,
    /// A substrate.
    pub substrate: bool,
    /// The counter's family.
    pub cast: bool,
    /// Its surface takes a sealer.
    pub sealed: bool,
    /// As the job names it.
    pub counter: String,
    /// Pieces.
    pub pieces: usize,
    /// Its heaviest piece, kg.
    pub heaviest: f64,
    /// Pieces meet.
    pub seams: bool,
    /// Upstands.
    pub splash: bool,
    /// What is bought and measured: marks.
    pub fittings: Vec<String>,
    /// One of them hangs in a liner.
    pub liner: bool,
    /// Hung through the front.
    pub notches: Vec<String>,
    /// Set in the counter.
    pub wells: Vec<String>,
    /// Doors, drawers, panels.
    pub fronts: Vec<String>,
    /// Vents.
    pub vents: Vec<String>,
    /// Appliances that stand on the floor.
    pub standing: Vec<String>,
    /// Joints that take sealant.
    pub joints: bool,
    /// Base trim.
    pub trim: bool,
    /// How far the counter reaches over the finished face at the front, leg by leg where legs differ, in words.
    pub overhang: String,
    /// Bottoms of modules.
    pub bottoms: usize,
    /// Of what hangs through the front, what lies on support arms: marks.
    pub on_arms: Vec<String>,
    waits: Waits,
}

impl Causes {
    /// Of a run.
    pub fn of(given: &Given, solved: &Solved, shop: &Shop) -> Causes {
        let fittings = || solved.legs.iter().flat_map(|leg| &leg.fittings);
        let marks = |wanted: &dyn Fn(&crate::solve::Fitting) -> bool| -> Vec<String> {
            fittings().filter(|fitting| wanted(fitting)).map(|fitting| fitting.mark.clone()).collect()
        };
        let finish = |wanted: fn(FinishKind) -> bool| {
            let covered = |leg: &'_ Leg, face: Face| {
                let seen = leg.boards.iter().any(|board| board.face == face);
                leg.finish(face).filter(|finish| seen && wanted(finish.kind)).map(|finish| finish.name.clone())
            };
            let faces = [Face::Front, Face::Left, Face::Right, Face::Back];
            solved.legs.iter().find_map(|leg| faces.into_iter().find_map(|face| covered(leg, face)))
        };
        let comes_up = |wanted: &[Service]| {
            solved.legs.iter().flat_map(|leg| &leg.stubs).any(|stub| wanted.contains(&stub.service))
        };
        let burners = marks(&|fitting| matches!(fitting.look, Look::Grill | Look::SideBurner) && !fitting.needs.no_gas);
        let wired = fittings().any(|fitting| fitting.needs.power.is_some() || fitting.look == Look::Refrigerator);
        let sinks = fittings().any(|fitting| matches!(fitting.look, Look::Sink | Look::Faucet));
        let edges = || solved.legs.iter().flat_map(|leg| &leg.counter.pieces).flat_map(|piece| &piece.edges);
        let meets = |kind: EdgeKind| edges().any(|edge| edge.kind == kind);
        let splash = solved.legs.iter().any(|leg| !leg.counter.splashes.is_empty());
        let wells = marks(&|fitting| fitting.kind == FittingKind::Well);
        let pieces: usize = solved.legs.iter().map(|leg| leg.counter.pieces.len()).sum();
        let slabs: usize = solved.legs.iter().filter(|leg| !leg.counter.pieces.is_empty()).count();
        let masses = solved.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|piece| piece.mass);
        let standing = |fitting: &crate::solve::Fitting| fitting.to_floor && fitting.look == Look::Refrigerator;
        let frame_backing =
            solved.legs.iter().flat_map(|leg| &leg.members).filter(|member| member.role == Role::Backing).count();
        let more_backing =
            shop.supports.members.iter().filter(|support| support.role == crate::solve::SupportRole::Backing).count();
        let corner = |joint: &&crate::solve::Joint| matches!(joint.kind, JointKind::Corner(_));
        let corners = solved.joints.iter().filter(corner).count();
        Causes {
            show: solved.show,
            modules: solved.legs.iter().map(|leg| leg.modules.len()).sum(),
            corners,
            raised: solved.legs.iter().any(|leg| leg.behind.is_some()) || solved.joints.len() > corners,
            feet: solved.legs.iter().map(|leg| leg.feet.len()).sum(),
            high: high(solved, shop),
            supports: shop.supports.members.len() - more_backing,
            backing: frame_backing + more_backing,
            gas: !burners.is_empty() || comes_up(&[Service::Gas]),
            burners,
            cylinders: solved.services.as_ref().is_some_and(|services| !services.cylinders.is_empty()),
            power: wired || comes_up(&[Service::Power]),
            water: sinks || comes_up(&[Service::Water, Service::Drain]),
            boards: match pieces_of(shop, |part| matches!(part, SheetPart::Face(_))) {
                0 => solved.legs.iter().map(|leg| leg.boards.len()).sum(),
                pieces => pieces,
            },
            skim_coat: finish(|kind| matches!(kind, FinishKind::SkimCoat)),
            veneer: finish(|kind| matches!(kind, FinishKind::Veneer)),
            tile: finish(|kind| matches!(kind, FinishKind::Tile { .. })),
            substrate: solved.substrate.thickness > Length::ZERO,
            cast: solved.counter.material == CounterMaterial::Concrete,
            sealed: solved.counter.material != CounterMaterial::Porcelain,
            counter: solved.counter.name.clone(),
            pieces,
            heaviest: masses.fold(0.0, f64::max),
            seams: pieces > slabs || meets(EdgeKind::Seam),
            splash,
            fittings: marks(&|fitting| fitting.kind != FittingKind::Opening(OpeningSort::PassThrough)),
            liner: fittings().any(|fitting| fitting.needs.liner == Some(true)),
            notches: marks(&|fitting| fitting.kind == FittingKind::Notch),
            fronts: marks(&|fitting| fitting.kind == FittingKind::Opening(OpeningSort::Fitting) && !standing(fitting)),
            vents: marks(&|fitting| fitting.kind == FittingKind::Opening(OpeningSort::Vent)),
            standing: marks(&|fitting| standing(fitting)),
            joints: splash
                || !wells.is_empty()
                || [EdgeKind::Wall, EdgeKind::Splash, EdgeKind::Seam].into_iter().any(meets),
            wells,
            trim: solved.trim.is_some(),
            overhang: overhang(solved),
            bottoms: pieces_of(shop, |part| part == SheetPart::Bottom),
            on_arms: on_arms(solved, shop),
            waits: given.waits.clone(),
        }
    }

    /// Whether anything covers a board.
    pub fn finished(&self) -> bool {
        self.skim_coat.is_some() || self.veneer.is_some() || self.tile.is_some()
    }

    /// How long something is waited for, hours, and where that comes from.
    pub fn wait(&self, what: WaitFor) -> Option<(f64, String)> {
        self.waits.get(&what).filter(|wait| wait.hours > 0.0).map(|wait| (wait.hours, wait.origin.clone()))
    }
}

/// Pieces cut from sheet that are part of something.
fn pieces_of(shop: &Shop, wanted: impl Fn(SheetPart) -> bool) -> usize {
    shop.pieces.iter().filter(|piece| wanted(piece.part)).count()
}

/// The overhang at the front: one length where all legs have the same, else each leg's own.
fn overhang(solved: &Solved) -> String {
    let own = |leg: &Leg| -leg.datums.counter_front;
    let legs: Vec<&Leg> = solved.legs.iter().filter(|leg| !leg.counter.pieces.is_empty()).collect();
    let Some(first) = legs.first() else { return String::new() };
    if legs.iter().all(|leg| own(leg) == own(first)) {
        return solved.show.prose(own(first));
    }
    let each: Vec<String> =
        legs.iter().map(|leg| format!("{} at leg {}", solved.show.prose(own(leg)), leg.id)).collect();
    each.join(", ")
}

/// Marks of what hangs through the front and lies on support arms.
fn on_arms(solved: &Solved, shop: &Shop) -> Vec<String> {
    let mut marks = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for (index, fitting) in leg.fittings.iter().enumerate() {
            let mut own = shop.supports.members.iter().filter(|one| (one.leg, one.fitting) == (at, Some(index)));
            if fitting.kind == FittingKind::Notch && own.any(|one| one.role == SupportRole::Arm) {
                marks.push(fitting.mark.clone());
            }
        }
    }
    marks
}

/// The module over the highest ground, by its id: as the levelling says, else the foot that stands highest.
fn high(solved: &Solved, shop: &Shop) -> Option<String> {
    let found = shop.levelling.high.or_else(|| {
        let feet = solved
            .legs
            .iter()
            .enumerate()
            .flat_map(|(leg, it)| it.feet.iter().enumerate().map(move |(foot, one)| (one.ground, leg, foot)));
        feet.max_by_key(|&(ground, leg, foot)| (ground, std::cmp::Reverse((leg, foot))))
            .map(|(_, leg, foot)| (leg, foot))
    });
    let (leg, foot) = found?;
    let leg = solved.legs.get(leg)?;
    let module = leg.modules.get(leg.feet.get(foot)?.module)?;
    Some(module.id.clone())
}
