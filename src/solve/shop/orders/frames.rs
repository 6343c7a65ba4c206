//! Modules, with their ends and their openings, and the supports that go into them.

use crate::parameters::given::Given;
use crate::solve::{
    Bound, BoundKind, Face, Fitting, FrameMaterial, Leg, Module, ModuleKind, Order, OrderLine, Plane, Shop, Solved,
    Supplier, Support,
};

/// The order to the frame maker.
pub fn order(_given: &Given, solved: &Solved, shop: &Shop) -> Order {
    let mut lines = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        for (at, one) in leg.modules.iter().enumerate() {
            lines.push(module(solved, shop, (index, at), leg, one));
        }
    }
    for support in &shop.supports.members {
        let holes: Vec<String> = support
            .holes
            .iter()
            .map(|(at, size)| format!("\u{d8} {} at {}", solved.show.prose(*size), solved.show.prose(*at)))
            .collect();
        let module = solved.legs.get(support.leg).and_then(|leg| leg.modules.get(support.module));
        let mut mind =
            vec![format!("into module {}{}", module.map_or("", |module| module.id.as_str()), serves(solved, support))];
        if !holes.is_empty() {
            mind.push(format!("holes from its left or front end: {}", holes.join(", ")));
        }
        lines.push(OrderLine {
            mark: support.mark.clone(),
            count: 1,
            what: format!(
                "{}, {}, cut to {}",
                support.role.words(),
                support.section,
                solved.show.prose(support.length)
            ),
            mind,
            mass: Some(support.mass).filter(|mass| *mass > 0.0),
            ..OrderLine::default()
        });
    }
    let mind = vec![
        "Left and right are those of the cook who faces the run.".to_owned(),
        "Widths are of the bare frame; openings are clear, in the frame, and larger than those in the board."
            .to_owned(),
        "Heights are up from the underside of the frame, without its feet.".to_owned(),
    ];
    Order { supplier: Supplier::FrameMaker, lines, mind }
}

fn module(solved: &Solved, shop: &Shop, (leg_index, at): (usize, usize), leg: &Leg, module: &Module) -> OrderLine {
    let show = solved.show;
    let datums = &leg.datums;
    let material = match solved.frame.material {
        FrameMaterial::Steel => "steel",
        FrameMaterial::Aluminium => "aluminium",
        FrameMaterial::Wood => "wood",
    };
    let kind = match module.kind {
        ModuleKind::Base => "module",
        ModuleKind::OpenBay => "open bay, framed over only",
        ModuleKind::Filler => "filler",
        ModuleKind::Corner => "corner module",
    };
    let name = if module.name.is_empty() || kind.starts_with(module.name.as_str()) {
        String::new()
    } else {
        format!(" \u{201c}{}\u{201d}", module.name)
    };
    let what = format!(
        "{kind}{name}, {} wide, {} deep, {} high; {material} tube {}",
        show.prose(module.width()),
        show.prose(datums.frame_back - datums.frame_face),
        show.prose(datums.frame_top - datums.frame_bottom),
        show.prose(solved.frame.tube),
    );
    let last = at + 1 == leg.modules.len();
    let mut mind = vec![format!(
        "left: {}; right: {}",
        side(leg, at.checked_sub(1), &leg.left, Face::Left),
        side(leg, Some(at + 1).filter(|_| !last), &leg.right, Face::Right)
    )];
    let openings: Vec<String> =
        leg.fittings_of(at).iter().flat_map(|fitting| opening(solved, leg, module, fitting)).collect();
    mind.extend(openings);
    let feet = leg.feet.iter().filter(|foot| foot.module == at).count();
    if feet > 0 {
        mind.push(format!("{feet} adjustable feet"));
    }
    // Its supports have lines of their own.
    let supports = shop.supports.members.iter().filter(|support| (support.leg, support.module) == (leg_index, at));
    let supports: f64 = supports.map(|support| support.mass).sum();
    let weight = shop.weights.modules.get(leg_index).and_then(|modules| modules.get(at));
    let mass = weight.map(|weight| weight.frame - supports);
    if supports > 0.0 {
        mind.push("weighed without its supports, which have lines of their own".to_owned());
    }
    OrderLine {
        mark: module.id.clone(),
        count: 1,
        what,
        mind,
        mass: mass.filter(|mass| *mass > 0.0),
        fittings: leg.fittings_of(at).iter().map(|fitting| fitting.at).collect(),
        ..OrderLine::default()
    }
}

/// The fitting that a support serves.
fn serves(solved: &Solved, support: &Support) -> String {
    let fitting = support.fitting.and_then(|index| solved.legs.get(support.leg)?.fittings.get(index));
    fitting.map_or(String::new(), |fitting| format!(", for {}", fitting.mark))
}

/// What a module's left or right is against.
fn side(leg: &Leg, neighbour: Option<usize>, bound: &Bound, face: Face) -> String {
    if let Some(other) = neighbour.and_then(|other| leg.modules.get(other)) {
        return format!("against {}", other.id);
    }
    let covered = leg.build(face).board > crate::units::Length::ZERO;
    match (bound.kind, covered) {
        (BoundKind::Leg, _) => "the end at the corner".to_owned(),
        (BoundKind::Open, true) => "an end, takes board".to_owned(),
        (BoundKind::Open, false) => "an end, left bare".to_owned(),
        _ => format!("an end, at {}", if bound.name.is_empty() { "a wall" } else { &bound.name }),
    }
}

/// The clear openings that a fitting needs in its module's frame: size, and place from the module's own left edge.
fn opening(solved: &Solved, leg: &Leg, module: &Module, fitting: &Fitting) -> Option<String> {
    let show = solved.show;
    let gap = solved.frame.rough_gap;
    let cutout = fitting.cutout(Plane::of(fitting.face))?;
    let extent = cutout.extent;
    let wide = show.prose(extent.width() + gap * 2);
    let face = match fitting.face {
        Face::Front => "front",
        Face::Left => "left end",
        Face::Right => "right end",
        Face::Back => "back",
    };
    let along = match fitting.face {
        Face::Front | Face::Back => format!("left edge {} from its left", show.prose(extent.x0 - gap - module.left)),
        Face::Left | Face::Right => {
            format!("front edge {} from its front", show.prose(extent.x0 - gap - leg.datums.frame_face))
        }
    };
    if fitting.to_floor {
        return Some(format!("{}: {face}, {wide} wide, open to the floor, {along}", fitting.mark));
    }
    let gaps = if cutout.open { 1 } else { 2 };
    let high = show.prose(extent.height() + gap * gaps);
    let bottom = show.prose(extent.y0 - gap - leg.datums.frame_bottom);
    let open = if cutout.open { ", open at the top" } else { "" };
    Some(format!("{}: {face}, {wide} \u{d7} {high}{open}, {along}, bottom {bottom} up", fitting.mark))
}
