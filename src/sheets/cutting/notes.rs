//! What has to be known to cut by the layouts.

use crate::sheets::schedules::feet::service_words;
use crate::sheets::set::Set;
use crate::sheets::shelves::{self, Block};
use crate::solve::{SheetCut, SheetPart, SheetPiece};
use crate::units::Length;

/// A strip that is narrower doesn't snap along a score, common practice: 1 in.
const SNAPS: Length = Length::from_nm(25_400_000);

/// The notes as a block.
pub fn block<'a>(set: &Set<'_>, width: f64) -> Block<'a> {
    shelves::noted(list(set), width, 3.0)
}

fn list(set: &Set<'_>) -> Vec<(String, String)> {
    let cutting = &set.solved.shop.cutting;
    let show = set.solved.show;
    let mut list: Vec<(String, String)> = Vec::new();
    let mut note = |lead: &str, text: String| list.push((lead.to_owned(), text));
    for (index, material) in cutting.materials.iter().enumerate() {
        let own: Vec<_> = cutting.sheets.iter().filter(|sheet| sheet.material == index).collect();
        if own.is_empty() {
            continue;
        }
        let way =
            if material.edge_to_edge { "cut from edge to edge, in the order of the numbers" } else { "cut any way" };
        let turned = if material.turned { "" } else { "; no piece is turned" };
        let bought = own.iter().filter(|sheet| sheet.offcut.is_none()).count();
        let fewest = match (bought, own.iter().all(|sheet| sheet.fewest)) {
            (0, _) => String::new(),
            (_, true) => " No layout buys fewer.".to_owned(),
            (_, false) => " Fewer may be possible: not every layout was looked at.".to_owned(),
        };
        let letter = char::from(b'a' + (index % 26) as u8);
        note(
            &format!("Sheets {letter}"),
            format!(
                "{} {}: {way}; a cut takes {}{turned}. {bought} to buy.{fewest}",
                material.name,
                show.prose(material.thickness),
                show.prose(material.kerf),
            ),
        );
    }
    let sawn: Vec<String> = (0..cutting.sheets.len()).filter_map(|index| narrow(set, index)).collect();
    if !sawn.is_empty() {
        note(
            "Saw it",
            format!(
                "{}: what such a cut leaves at its side is narrower than {}, and board so narrow doesn\u{2019}t snap along a score.",
                sawn.join("; "),
                show.prose(SNAPS)
            ),
        );
    }
    note("Sizes", "are of the whole piece; openings are cut after, by the board and substrate templates.".to_owned());
    note(
        "Measure",
        "each cut on the piece in hand: the number is from the edge named, to the cut\u{2019}s near side.".to_owned(),
    );
    let holes: Vec<String> = set.solved.shop.pieces.iter().filter_map(|piece| holes(set, piece)).collect();
    if !holes.is_empty() {
        note("Bottoms", format!("holes for what comes up, to their middle: {}.", holes.join("; ")));
    }
    if cutting.sheets.iter().any(|sheet| !sheet.kept.is_empty()) {
        note("Dashed", "worth keeping: write its size and the material on it.".to_owned());
    }
    note(
        "Caution",
        "cutting cement board frees silica dust: score and snap, or cut wet or with extraction; eyes, ears and breathing \
         protected. Two people carry a whole sheet, on edge. The maker\u{2019}s data sheet and local rules govern."
            .to_owned(),
    );
    list
}

/// What comes up through a bottom, from two of its edges.
fn holes(set: &Set<'_>, piece: &SheetPiece) -> Option<String> {
    if piece.part != SheetPart::Bottom {
        return None;
    }
    let (show, e) = (set.solved.show, &piece.extent);
    let stubs = set.solved.legs.get(piece.leg)?.stubs.iter();
    let through = stubs.filter(|stub| e.x0 < stub.u && stub.u < e.x1 && e.y0 < stub.v && stub.v < e.y1);
    let said: Vec<String> = through
        .map(|stub| {
            let (left, front) = (show.prose(stub.u - e.x0), show.prose(stub.v - e.y0));
            format!("{} {left} from its left edge, {front} from its front edge", service_words(stub.service).1)
        })
        .collect();
    (!said.is_empty()).then(|| format!("{}: {}", piece.mark, said.join(", ")))
}

/// A sheet's name and the numbers of its cuts that leave a strip too narrow to snap.
fn narrow(set: &Set<'_>, index: usize) -> Option<String> {
    let cutting = &set.solved.shop.cutting;
    let sheet = &cutting.sheets[index];
    let kerf = cutting.materials.get(sheet.material).map_or(Length::ZERO, |material| material.kerf);
    let numbers: Vec<String> = (0..sheet.cuts.len())
        .filter(|&at| beside(&sheet.cuts, at, (sheet.size.1, sheet.size.0), kerf) < SNAPS)
        .map(|at| (at + 1).to_string())
        .collect();
    let word = if numbers.len() == 1 { "cut" } else { "cuts" };
    (!numbers.is_empty()).then(|| format!("{}, {word} {}", super::name(set, index), numbers.join(", ")))
}

/// The narrower of the two strips that a cut parts, less what the cuts at their sides take: up to the nearest edge of the
/// sheet, or cut made before, that runs along all of it. Sides are (length, width) of the sheet.
fn beside(cuts: &[SheetCut], at: usize, sides: (Length, Length), kerf: Length) -> Length {
    let upright = |cut: &SheetCut| cut.from.0 == cut.to.0;
    let cut = cuts[at];
    let way = upright(&cut);
    let place = |cut: &SheetCut| if way { cut.from.0 } else { cut.from.1 };
    let span = |cut: &SheetCut| if way { (cut.from.1, cut.to.1) } else { (cut.from.0, cut.to.0) };
    let own = place(&cut);
    let (mut low, mut high) = (own - kerf.half(), (if way { sides.0 } else { sides.1 }) - own - kerf.half());
    for other in cuts[..at].iter().filter(|other| upright(other) == way) {
        let along = span(other).0 <= span(&cut).0 && span(other).1 >= span(&cut).1;
        let apart = place(other) - own;
        if along && apart < Length::ZERO {
            low = low.min(-apart - kerf);
        } else if along {
            high = high.min(apart - kerf);
        }
    }
    low.min(high)
}

#[cfg(test)]
mod tests {
    use super::{SNAPS, beside};
    use crate::solve::SheetCut;
    use crate::units::Length;

    #[test]
    fn the_narrower_strip_beside_a_cut_is_up_to_the_nearest_edge_or_earlier_cut() {
        let inches = Length::from_inches;
        let cut = |from: (f64, f64), to: (f64, f64)| SheetCut {
            from: (inches(from.0), inches(from.1)),
            to: (inches(to.0), inches(to.1)),
        };
        // A sheet of 60 by 36 in cut at 35 7/8 in of its width: 1/8 in is left over.
        let cuts =
            [cut((0.0, 35.875), (60.0, 35.875)), cut((30.0, 0.0), (30.0, 35.875)), cut((30.5, 0.0), (30.5, 35.875))];
        let sides = (inches(60.0), inches(36.0));
        assert_eq!(beside(&cuts, 0, sides, Length::ZERO), inches(0.125));
        assert_eq!(beside(&cuts, 1, sides, Length::ZERO), inches(30.0));
        assert_eq!(beside(&cuts, 2, sides, inches(0.125)), inches(0.375));
        assert!(beside(&cuts, 1, sides, inches(0.125)) > SNAPS);
    }
}
