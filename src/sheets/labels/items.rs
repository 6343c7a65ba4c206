//! What gets a label: modules, boards and substrate, supports, trim, pieces of the counter.

use crate::sheets::schedules::module_words;
use crate::sheets::set::{Kind, Set};
use crate::solve::{Face, Leg, SheetPart, SheetPiece, Solved};
use crate::units::Length;

/// What a label says.
pub struct Item {
    /// The mark, as on the drawings.
    pub mark: String,
    /// What it is.
    pub what: String,
    /// Its size.
    pub size: String,
    /// Which side is up or out, where that matters; `true` for the side that takes a finish.
    pub side: Option<(&'static str, bool)>,
    /// Mass, kg, where it is known.
    pub mass: Option<f64>,
    /// The kind of sheet that it is drawn on.
    pub drawn: Option<Kind>,
}

/// All labels of a run: what is set up first, what is cut after it.
pub fn all(set: &Set<'_>) -> Vec<Item> {
    let solved = set.solved;
    let mut items = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        modules(solved, index, leg, &mut items);
    }
    for support in &solved.shop.supports.members {
        let module = solved.legs.get(support.leg).and_then(|leg| leg.modules.get(support.module));
        items.push(Item {
            mark: support.mark.clone(),
            what: format!("{} in module {}", support.role.words(), module.map_or("", |module| module.id.as_str())),
            size: format!("{}, {} long", support.section, solved.show.prose(support.length)),
            side: None,
            mass: Some(support.mass).filter(|mass| *mass > 0.0),
            drawn: Some(Kind::Supports),
        });
    }
    if solved.shop.pieces.is_empty() {
        solved.legs.iter().enumerate().for_each(|(index, leg)| boards(solved, index, leg, &mut items));
    } else {
        items.extend(solved.shop.pieces.iter().map(|piece| sheet_piece(solved, piece)));
    }
    for trim in &solved.shop.trim.pieces {
        let high = trim.region.outer.bounds();
        items.push(Item {
            mark: trim.mark.clone(),
            what: "base trim".to_owned(),
            size: format!(
                "{} long, {} high",
                solved.show.prose(trim.to - trim.from),
                solved.show.prose(Length::from_mm(high.3 - high.1))
            ),
            side: Some(("scribed edge down", false)),
            mass: Some(trim.mass).filter(|mass| *mass > 0.0),
            drawn: Some(Kind::Trim),
        });
    }
    for (index, leg) in solved.legs.iter().enumerate() {
        counter(set, index, leg, &mut items);
    }
    items
}

fn several(solved: &Solved) -> bool {
    solved.legs.len() > 1
}

fn modules(solved: &Solved, index: usize, leg: &Leg, items: &mut Vec<Item>) {
    let show = solved.show;
    for (at, module) in leg.modules.iter().enumerate() {
        let id = |other: Option<usize>| other.and_then(|k| leg.modules.get(k)).map(|module| module.id.as_str());
        let (left, right) = (id(at.checked_sub(1)), id(Some(at + 1)));
        let beside = |side: &str, id: Option<&str>| match id {
            Some(id) => format!("{id} {side}"),
            None => format!("end {side}"),
        };
        let name = module_words(module);
        let leg_words = if several(solved) { format!(", leg {}", leg.id) } else { String::new() };
        let weight = solved.shop.weights.modules.get(index).and_then(|modules| modules.get(at));
        items.push(Item {
            mark: module.id.clone(),
            what: format!(
                "module{}{leg_words}; {}, {}",
                if name.is_empty() { String::new() } else { format!(", {name}") },
                beside("at its left", left),
                beside("at its right", right)
            ),
            size: format!(
                "{} \u{d7} {} \u{d7} {}",
                show.prose(module.width()),
                show.prose(leg.datums.frame_back - leg.datums.frame_face),
                show.prose(leg.datums.frame_top - leg.datums.frame_bottom)
            ),
            side: Some(("this side to the cook", false)),
            mass: weight.map(|weight| weight.frame).filter(|mass| *mass > 0.0),
            drawn: Some(if solved.stands_alone(index) { Kind::Front(index, Face::Front) } else { Kind::Plan }),
        });
    }
}

/// Boards and substrate, where no pieces were worked out.
fn boards(solved: &Solved, index: usize, leg: &Leg, items: &mut Vec<Item>) {
    let show = solved.show;
    for board in &leg.boards {
        let build = leg.build(board.face);
        items.push(Item {
            mark: board.name.clone(),
            what: build.board_name.clone(),
            size: size(solved, board.extent.width(), board.extent.height(), build.board),
            side: Some(out(leg, board.face)),
            mass: None,
            drawn: Some(Kind::Boards(index)),
        });
    }
    let extent = leg.substrate.extent;
    let leg_words = if several(solved) { format!(" {}", leg.id) } else { String::new() };
    items.push(Item {
        mark: format!("substrate{leg_words}"),
        what: solved.substrate.name.clone(),
        size: format!(
            "{} \u{d7} {} \u{d7} {}",
            show.prose(extent.width()),
            show.prose(extent.height()),
            show.prose(solved.substrate.thickness)
        ),
        side: Some(("this side up, front to the cook", false)),
        mass: None,
        drawn: solved.stands_alone(index).then_some(Kind::Substrate(index)),
    });
}

fn sheet_piece(solved: &Solved, piece: &SheetPiece) -> Item {
    let leg = solved.legs.get(piece.leg);
    let material = solved.shop.cutting.materials.get(piece.material);
    let thickness = material.map_or(Length::ZERO, |material| material.thickness);
    // Every piece is drawn where it is cut from its sheet; what its board looks like the templates show.
    let drawn = (!solved.shop.cutting.sheets.is_empty()).then_some(Kind::Cutting);
    let side = match (piece.part, leg) {
        (SheetPart::Face(face), Some(leg)) => out(leg, face),
        _ => ("this side up, front to the cook", false),
    };
    let (across, high) = match piece.part {
        // With what a bevelled edge adds: so it is cut.
        SheetPart::Face(_) => piece.blank,
        SheetPart::Bottom | SheetPart::Substrate => (piece.extent.width(), piece.extent.height()),
    };
    let size = match piece.part {
        SheetPart::Face(_) => size(solved, across, high, thickness),
        SheetPart::Bottom | SheetPart::Substrate => flat(solved, across, high, thickness),
    };
    let part = match piece.part {
        SheetPart::Face(Face::Front) => "front",
        SheetPart::Face(Face::Left) => "left end",
        SheetPart::Face(Face::Right) => "right end",
        SheetPart::Face(Face::Back) => "back",
        SheetPart::Bottom => "bottom",
        SheetPart::Substrate => "substrate",
    };
    Item {
        mark: piece.mark.clone(),
        what: format!("{part}, {}", material.map_or("", |material| material.name.as_str())),
        size,
        side: Some(side),
        mass: Some(piece.mass).filter(|mass| *mass > 0.0),
        drawn,
    }
}

/// The side of a board that looks out.
fn out(leg: &Leg, face: Face) -> (&'static str, bool) {
    if leg.finish(face).is_some() { ("this side out, takes the finish", true) } else { ("this side out", false) }
}

fn size(solved: &Solved, across: Length, high: Length, thick: Length) -> String {
    let show = solved.show;
    format!("{} across \u{d7} {} high \u{d7} {}", show.prose(across), show.prose(high), show.prose(thick))
}

/// Of a piece that lies.
fn flat(solved: &Solved, across: Length, deep: Length, thick: Length) -> String {
    let show = solved.show;
    format!("{} across \u{d7} {} deep \u{d7} {}", show.prose(across), show.prose(deep), show.prose(thick))
}

fn counter(set: &Set<'_>, index: usize, leg: &Leg, items: &mut Vec<Item>) {
    let solved = set.solved;
    let show = solved.show;
    // A counter over several legs is drawn on the sheet of its first.
    let first = solved.slabs.iter().find(|slab| slab.legs.contains(&index)).and_then(|slab| slab.legs.first());
    let drawn = Kind::Counter(first.copied().unwrap_or(index));
    let weights = solved.shop.weights.counter_pieces.get(index);
    for (at, piece) in leg.counter.pieces.iter().enumerate() {
        let lifted = weights.and_then(|pieces| pieces.get(at)).copied().filter(|mass| *mass > 0.0);
        let leg_words = if several(solved) { format!(", leg {}", leg.id) } else { String::new() };
        items.push(Item {
            mark: piece.name.clone(),
            what: format!("counter{leg_words}, {}", solved.counter.name),
            size: format!(
                "{} \u{d7} {} \u{d7} {}",
                show.prose(piece.extent.width()),
                show.prose(piece.extent.height()),
                show.prose(solved.counter.thickness)
            ),
            side: Some(("this side up, finished edge to the cook", false)),
            mass: Some(lifted.unwrap_or(piece.mass)),
            drawn: Some(drawn),
        });
    }
    let Some(splash) = solved.counter.splash else { return };
    for (name, from, to, mass) in &leg.counter.splashes {
        let leg_words = if several(solved) { format!(", leg {}", leg.id) } else { String::new() };
        items.push(Item {
            mark: name.clone(),
            what: format!("upstand{leg_words}, {}", solved.counter.name),
            size: format!(
                "{} long \u{d7} {} high \u{d7} {}",
                show.prose(*to - *from),
                show.prose(splash.height),
                show.prose(splash.thickness)
            ),
            side: None,
            mass: Some(*mass),
            drawn: Some(drawn),
        });
    }
}
