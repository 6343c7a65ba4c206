//! What everything weighs: outlines by thickness and density, finishes by area, tubes by section and length.

mod density;
mod lifts;
mod parts;

use crate::parameters::given::{Figure, Given};
use crate::solve::{Face, FloorLoad, ModuleWeight, Shop, Solved, Weights};
pub use density::Densities;
use parts::{Kind, Part};

/// What everything weighs.
pub fn weights(given: &Given, solved: &Solved, shop: &Shop) -> Weights {
    let densities = Densities::of(given);
    let modules: Vec<Vec<ModuleWeight>> = (0..solved.legs.len())
        .map(|leg| {
            let parts = parts::parts(solved, shop, &densities, leg);
            let mut modules: Vec<Vec<&Part>> = vec![Vec::new(); solved.legs[leg].modules.len()];
            for part in &parts {
                if let Some(own) = modules.get_mut(part.module) {
                    own.push(part);
                }
            }
            modules.iter().map(|parts| summed(parts)).collect()
        })
        .collect();
    let trims: Vec<f64> = (0..solved.legs.len()).map(|leg| trim(solved, &densities, leg)).collect();
    let floors: Vec<FloorLoad> = solved
        .legs
        .iter()
        .zip(modules.iter().zip(&trims))
        .map(|(leg, (modules, trim))| {
            let d = &leg.datums;
            let (wide, deep) = ((d.frame_right - d.frame_left).mm(), (d.frame_back - d.frame_face).mm());
            let mass = modules.iter().map(ModuleWeight::total).sum::<f64>() + trim;
            FloorLoad { mass, footprint: (wide * deep).max(0.0) / 1e6 }
        })
        .collect();
    Weights {
        counter_pieces: solved
            .legs
            .iter()
            .map(|leg| leg.counter.pieces.iter().map(|piece| piece.mass).collect())
            .collect(),
        lifts: lifts::lifts(solved, shop, &densities),
        two_lift: given.materials.si(Figure::TwoLift),
        lift_given: given.materials.worth(Figure::TwoLift).is_some_and(|worth| worth.given),
        trim: trims.iter().sum(),
        total: floors.iter().map(|floor| floor.mass).sum(),
        unknown: lifts::unknown(solved),
        modules,
        floors,
    }
}

/// The figures that weights go by.
pub fn figures(given: &Given) -> Vec<Figure> {
    let mut all = vec![density::frame_figure(given), Figure::Board, density::substrate_figure(given)];
    if given.trim.is_some() {
        all.push(Figure::Wood);
    }
    all
}

/// Density of the substrate, kg/m3.
pub fn substrate_density(given: &Given) -> f64 {
    Densities::of(given).substrate
}

/// The parts of one module together.
fn summed(parts: &[&Part]) -> ModuleWeight {
    let mut sum = ModuleWeight::default();
    let (mut mass, mut moment) = (0.0, (0.0, 0.0));
    for part in parts {
        *match part.kind {
            Kind::Frame => &mut sum.frame,
            Kind::Board => &mut sum.boards,
            Kind::Finish => &mut sum.finish,
            Kind::Substrate => &mut sum.substrate,
            Kind::Counter => &mut sum.counter,
            Kind::Fitting | Kind::OnFloor => &mut sum.fittings,
        } += part.mass;
        if part.kind == Kind::OnFloor {
            sum.on_floor += part.mass;
        } else {
            mass += part.mass;
            moment = (moment.0 + part.mass * part.centre.0, moment.1 + part.mass * part.centre.1);
        }
    }
    if mass > 0.0 {
        sum.centre = (moment.0 / mass, moment.1 / mass);
    }
    sum
}

/// The base trim along a leg's clad faces, kg: its full height, the scribe not taken off.
fn trim(solved: &Solved, densities: &Densities, leg: usize) -> f64 {
    let (leg, Some(trim)) = (&solved.legs[leg], &solved.trim) else { return 0.0 };
    let d = &leg.datums;
    let faces = [
        (Face::Front, d.finished_right),
        (Face::Back, d.finished_right),
        (Face::Left, d.finished_back),
        (Face::Right, d.finished_back),
    ];
    let long: f64 = faces.iter().filter(|(face, _)| leg.finish(*face).is_some()).map(|(_, long)| long.mm()).sum();
    long * trim.top.mm() * trim.thickness.mm() * 1e-9 * densities.wood
}
