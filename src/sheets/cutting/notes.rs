//! What has to be known to cut by the layouts.

use crate::sheets::set::Set;
use crate::sheets::shelves::{self, Block};

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
    note("Sizes", "are of the whole piece; openings are cut after, by the board and substrate templates.".to_owned());
    note(
        "Measure",
        "each cut on the piece in hand: the number is from the edge named, to the cut\u{2019}s near side.".to_owned(),
    );
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
