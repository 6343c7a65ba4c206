//! A piece that no stock sheet is large enough for.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{SheetPiece, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "piece-fits-a-sheet",
    severity: Severity::Warn,
    about: "Every piece of board and substrate can be cut from a sheet that is bought, or from an offcut at hand.",
    why: "A piece that fits none is on no cutting layout and in no count of sheets.",
    instead: "name a larger size under `stock`, or make the module narrower so that a joint finds framing",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let shop = &solved.shop;
    let mut placed = vec![false; shop.pieces.len()];
    for one in shop.cutting.sheets.iter().flat_map(|sheet| &sheet.placed) {
        if let Some(placed) = placed.get_mut(one.piece) {
            *placed = true;
        }
    }
    let left = shop.pieces.iter().zip(placed).filter(|(_, placed)| !placed);
    left.map(|(piece, _)| finding(solved, piece)).collect()
}

fn finding(solved: &Solved, piece: &SheetPiece) -> Finding {
    let show = solved.show;
    let material = solved.shop.cutting.materials.get(piece.material);
    let largest = material.and_then(|material| material.sizes.iter().max_by_key(|size| size.0.nm().max(size.1.nm())));
    let largest = largest.map_or("none is named".to_owned(), |size| {
        format!("the largest is {} by {}", show.prose(size.0), show.prose(size.1))
    });
    let message = format!(
        "{} is {} by {}; no sheet of {} holds it, {largest}",
        piece.mark,
        show.prose(piece.blank.0),
        show.prose(piece.blank.1),
        material.map_or("its material", |material| &material.name),
    );
    let place = material.and_then(|material| material.place.as_ref());
    RULE.finding(Severity::Warn, Subject::Leg(piece.leg), place, message, RULE.instead)
}
