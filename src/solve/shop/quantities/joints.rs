//! What closes the joints between boards, and the mesh over them.

use super::book::{Book, Draft, Kind};
use super::faces::{Corner, Faced, joints};
use crate::parameters::given::{Figure, FinishKind};
use crate::solve::{MaterialGroup, MaterialLine};
use crate::units::Exact;

/// Length of the taped joints and corners of finished faces.
pub fn taped(faced: &[Faced], corners: &[Corner]) -> [Exact; 2] {
    let finished = |one: &Faced| one.build.finish.is_some();
    let flat = faced.iter().filter(|one| finished(one)).map(|one| Exact::length(joints(one))).sum();
    let round = corners
        .iter()
        .filter(|corner| corner.faces.iter().any(|&face| finished(&faced[face])))
        .map(|corner| Exact::length(corner.high))
        .sum();
    [flat, round]
}

/// Tape over joints and corners, and mesh under skim coat.
pub fn lines(book: &Book, faced: &[Faced], corners: &[Corner]) -> Vec<MaterialLine> {
    let [flat, round] = taped(faced, corners);
    let tape = book.line(Draft {
        group: MaterialGroup::Hardware,
        name: "joint tape, alkali-resistant, 2 in or wider".to_owned(),
        kind: Kind::Length,
        net: flat.clone() + round.clone(),
        from: String::new(),
        waste: Some(Figure::TapeWaste),
        each: book.exact(Figure::TapeRoll),
        unit: format!("roll of {}", book.words(Kind::Length, &book.exact(Figure::TapeRoll))),
        gives: "a roll holds",
        by: vec![Figure::TapeRoll],
        parts: vec![("board joints".to_owned(), flat), ("corners".to_owned(), round)],
    });
    let skimmed = |one: &&Faced| one.build.finish.as_ref().is_some_and(|finish| finish.kind == FinishKind::SkimCoat);
    let area: Exact = faced.iter().filter(skimmed).map(|one| one.area.clone()).sum();
    // A lap is lost along every width of it.
    let roll = (book.exact(Figure::MeshWidth) - book.exact(Figure::MeshLap)) * book.exact(Figure::MeshRoll);
    let mesh = book.line(Draft {
        group: MaterialGroup::Finish,
        name: "reinforcing mesh under the skim coat".to_owned(),
        kind: Kind::Area,
        net: area,
        from: String::new(),
        waste: Some(Figure::TapeWaste),
        each: roll,
        unit: format!(
            "roll of {} by {}",
            book.show.prose(book.length(Figure::MeshWidth)),
            book.words(Kind::Length, &book.exact(Figure::MeshRoll))
        ),
        gives: "a roll less its lap covers",
        by: vec![Figure::MeshWidth, Figure::MeshRoll, Figure::MeshLap],
        parts: Vec::new(),
    });
    tape.into_iter().chain(mesh).collect()
}
