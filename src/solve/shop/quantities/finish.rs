//! What covers the boards: mortar, skim coat, veneer, tile, grout, sealer.

use super::book::{Book, Draft, Kind};
use super::faces::{Corner, Faced};
use super::joints::taped;
use crate::parameters::given::{Figure, Finish, FinishKind};
use crate::solve::{MaterialGroup, MaterialLine, takeoff};
use crate::units::{Exact, Length};

/// The faces that have one finish.
struct Covered<'a> {
    finish: &'a Finish,
    faces: Vec<usize>,
}

impl Covered<'_> {
    fn area(&self, faced: &[Faced]) -> Exact {
        self.faces.iter().map(|&face| faced[face].area.clone()).sum()
    }

    /// Outside corners that it turns.
    fn corners(&self, corners: &[Corner]) -> Exact {
        let both = |corner: &&Corner| corner.outside && corner.faces.iter().all(|face| self.faces.contains(face));
        corners.iter().filter(both).map(|corner| Exact::length(corner.high)).sum()
    }

    fn parts(&self, faced: &[Faced]) -> Vec<(String, Exact)> {
        self.faces.iter().map(|&face| (faced[face].word.clone(), faced[face].area.clone())).collect()
    }
}

/// Finishes of a run, each once, with the faces that have it.
fn finishes<'a>(faced: &'a [Faced]) -> Vec<Covered<'a>> {
    let mut all: Vec<Covered> = Vec::new();
    for (index, one) in faced.iter().enumerate() {
        let Some(finish) = &one.build.finish else { continue };
        match all.iter_mut().find(|other| other.finish == finish) {
            Some(other) => other.faces.push(index),
            None => all.push(Covered { finish, faces: vec![index] }),
        }
    }
    all
}

/// Every line of the finish.
pub fn lines(book: &Book, faced: &[Faced], corners: &[Corner]) -> Vec<MaterialLine> {
    let covered = finishes(faced);
    let mut lines: Vec<Option<MaterialLine>> = vec![mortar(book, &covered, faced, corners)];
    for one in &covered {
        match one.finish.kind {
            FinishKind::SkimCoat => lines.push(skim(book, one, faced)),
            FinishKind::Veneer => lines.extend(veneer(book, one, faced, corners)),
            FinishKind::Tile { width, height, joint, .. } => {
                let size = Tile { width, height, joint };
                lines.push(tile(book, one, faced, size));
                lines.push(grout(book, one, faced, size));
            }
        }
    }
    lines.push(sealer(book, &covered, faced));
    lines.into_iter().flatten().collect()
}

/// Thickness of the bed that a finish lies in; a usual one where none is given.
pub fn bed(book: &Book, finish: &Finish) -> Length {
    if finish.bed > Length::ZERO { finish.bed } else { book.length(Figure::MortarKey) }
}

/// Mortar under veneer and tile, and over the tape.
fn mortar(book: &Book, covered: &[Covered], faced: &[Faced], corners: &[Corner]) -> Option<MaterialLine> {
    let bedded = covered.iter().filter(|one| one.finish.kind != FinishKind::SkimCoat);
    let mut by = vec![Figure::MortarBag, Figure::MortarYield];
    let (mut parts, mut sums) = (Vec::new(), Vec::new());
    for one in bedded {
        let (area, bed) = (one.area(faced), bed(book, one.finish));
        sums.push(format!("{} × {}", book.words(Kind::Area, &area), book.show.prose(bed)));
        parts.push((format!("under the {}", one.finish.name), takeoff::layers(&area, &[bed])));
        if one.finish.bed == Length::ZERO {
            by.push(Figure::MortarKey);
        }
    }
    let tape: Exact = taped(faced, corners).into_iter().sum();
    if tape.is_positive() {
        let (band, thick) = (book.length(Figure::TapeBand), book.length(Figure::TapeBed));
        let (long, wide) = (book.words(Kind::Length, &tape), book.show.prose(band));
        sums.push(format!("{long} × {wide} × {}", book.show.prose(thick)));
        parts.push(("over joint tape".to_owned(), tape * Exact::length(band) * Exact::length(thick)));
        by.extend([Figure::TapeBand, Figure::TapeBed]);
    }
    book.line(Draft {
        group: MaterialGroup::Finish,
        name: "polymer-modified thin-set mortar".to_owned(),
        kind: Kind::Volume,
        net: parts.iter().map(|(_, part)| part.clone()).sum(),
        from: sums.join(" + "),
        waste: Some(Figure::MortarWaste),
        each: book.exact(Figure::MortarYield),
        unit: format!("bag of {}", book.mass(Figure::MortarBag)),
        gives: "a bag makes",
        by,
        parts: if parts.len() > 1 { parts } else { Vec::new() },
    })
}

fn skim(book: &Book, one: &Covered, faced: &[Faced]) -> Option<MaterialLine> {
    let (area, thick) = (one.area(faced), one.finish.total());
    book.line(Draft {
        group: MaterialGroup::Finish,
        name: format!("{}, in coats", one.finish.name),
        kind: Kind::Volume,
        net: takeoff::layers(&area, &[one.finish.thickness, one.finish.bed]),
        from: format!("{} × {}", book.words(Kind::Area, &area), book.show.prose(thick)),
        waste: Some(Figure::SkimWaste),
        each: book.exact(Figure::SkimYield),
        unit: format!("bag of {}", book.mass(Figure::SkimBag)),
        gives: "a bag makes",
        by: vec![Figure::SkimBag, Figure::SkimYield],
        parts: Vec::new(),
    })
}

/// Flat pieces by area less what the corner pieces cover, and corner pieces by the length of the outside corners.
fn veneer(book: &Book, one: &Covered, faced: &[Faced], corners: &[Corner]) -> [Option<MaterialLine>; 2] {
    let (area, corner) = (one.area(faced), one.corners(corners));
    let band = book.length(Figure::VeneerCorner);
    let covers = corner.clone() * Exact::length(band);
    let mut by = Vec::new();
    let from = if corner.is_positive() {
        by.push(Figure::VeneerCorner);
        let (long, wide) = (book.words(Kind::Length, &corner), book.show.prose(band));
        let parts = one.parts(faced);
        let flat = if parts.len() > 1 { book.sum(Kind::Area, &parts) } else { book.words(Kind::Area, &area) };
        format!("{flat} \u{2212} {long} of corner × {wide}")
    } else {
        String::new()
    };
    let pack = |kind, figure, loose: &str| -> (Exact, String, &'static str) {
        match book.if_given(figure) {
            Some(each) => {
                let unit = format!("box of {}", book.words(kind, &each));
                (each, unit, "a box holds")
            }
            None => (one_of(book, kind), loose.to_owned(), ""),
        }
    };
    let (each, unit, gives) = pack(Kind::Area, Figure::VeneerBox, book.unit(Kind::Area));
    let flats = book.line(Draft {
        group: MaterialGroup::Finish,
        name: format!("{}, flat pieces", one.finish.name),
        kind: Kind::Area,
        net: (area - covers).not_less_than_nothing(),
        from,
        waste: Some(Figure::VeneerWaste),
        each,
        unit,
        gives,
        by,
        parts: one.parts(faced),
    });
    let (each, unit, gives) = pack(Kind::Length, Figure::VeneerCornerBox, book.unit(Kind::Length));
    let turns = book.line(Draft {
        group: MaterialGroup::Finish,
        name: format!("{}, corner pieces", one.finish.name),
        kind: Kind::Length,
        net: corner,
        from: String::new(),
        waste: Some(Figure::VeneerWaste),
        each,
        unit,
        gives,
        by: Vec::new(),
        parts: Vec::new(),
    });
    // What the faces sum to is more than what is left of them beside corners.
    [flats.map(|line| if line.parts.len() > 1 { line } else { MaterialLine { parts: Vec::new(), ..line } }), turns]
}

/// One of the unit that amounts are told in.
pub fn one_of(book: &Book, kind: Kind) -> Exact {
    let symbol = match book.unit(kind) {
        "sq ft" => "ft2",
        "sq m" => "m2",
        other => other,
    };
    crate::units::exact::scale(symbol).unwrap_or_else(|| Exact::whole(1))
}

/// Sides of a tile and the joint between two.
#[derive(Clone, Copy)]
struct Tile {
    width: Length,
    height: Length,
    joint: Length,
}

fn tile(book: &Book, one: &Covered, faced: &[Faced], tile: Tile) -> Option<MaterialLine> {
    let size = format!("{} by {}", book.show.prose(tile.width), book.show.prose(tile.height));
    let (each, unit, gives, by) = match book.if_given(Figure::TileBox) {
        Some(each) => {
            let unit = format!("box of {}", book.words(Kind::Area, &each));
            (each, unit, "a box holds", vec![Figure::TileBox])
        }
        None => {
            let each = takeoff::rectangle(tile.width + tile.joint, tile.height + tile.joint);
            (each, "tile".to_owned(), "a tile with its joint covers", Vec::new())
        }
    };
    book.line(Draft {
        group: MaterialGroup::Finish,
        name: format!("{}, {size}", one.finish.name),
        kind: Kind::Area,
        net: one.area(faced),
        from: String::new(),
        waste: Some(Figure::TileWaste),
        each,
        unit,
        gives,
        by,
        parts: one.parts(faced),
    })
}

/// Grout by the geometry of the joints: so long on so much, as deep as the tile.
fn grout(book: &Book, one: &Covered, faced: &[Faced], tile: Tile) -> Option<MaterialLine> {
    let module = takeoff::rectangle(tile.width + tile.joint, tile.height + tile.joint);
    let share = Exact::whole(1) - takeoff::rectangle(tile.width, tile.height) / module;
    let area = one.area(faced);
    let told = super::book::figures(share.to_f64() * 100.0);
    let deep = one.finish.thickness;
    book.line(Draft {
        group: MaterialGroup::Finish,
        name: format!("grout for the {}", one.finish.name),
        kind: Kind::Volume,
        net: area.clone() * share * Exact::length(deep),
        from: format!("{} × {told} % joint × {}", book.words(Kind::Area, &area), book.show.prose(deep)),
        waste: Some(Figure::GroutWaste),
        each: book.exact(Figure::GroutYield),
        unit: format!("bag of {}", book.mass(Figure::GroutBag)),
        gives: "a bag makes",
        by: vec![Figure::GroutBag, Figure::GroutYield],
        parts: Vec::new(),
    })
}

/// Sealer over skim coat and veneer, by how rough they are.
fn sealer(book: &Book, covered: &[Covered], faced: &[Faced]) -> Option<MaterialLine> {
    let mut parts = Vec::new();
    let mut by = vec![Figure::SealerCoats];
    let mut sums = Vec::new();
    let coats = book.exact(Figure::SealerCoats);
    for one in covered {
        let figure = match one.finish.kind {
            FinishKind::SkimCoat => Figure::SealerSmooth,
            FinishKind::Veneer => Figure::SealerRough,
            FinishKind::Tile { .. } => continue,
        };
        by.push(figure);
        let (area, coverage) = (one.area(faced), book.exact(figure));
        sums.push(format!(
            "{} × {} coats at {}",
            book.words(Kind::Area, &area),
            super::book::figures(coats.to_f64()),
            super::counter::covers(book, &coverage)
        ));
        parts.push((one.finish.name.clone(), takeoff::coats(&area, &coats, &coverage)));
    }
    super::counter::cans(book, MaterialGroup::Finish, "sealer for the faces".to_owned(), sums.join(" + "), by, parts)
}
