//! Paper by its name.

use super::given::Paper;
use super::reader::Reader;
use crate::findings;
use crate::model::PaperText;

/// Name, long side and short side in mm. A sizes: ISO 216. ANSI and ARCH sizes: ANSI/ASME Y14.1,
/// whole and half inches.
const SIZES: [(&str, f64, f64); 12] = [
    ("A4", 297.0, 210.0),
    ("A3", 420.0, 297.0),
    ("A2", 594.0, 420.0),
    ("A1", 841.0, 594.0),
    ("ANSI A", 11.0 * 25.4, 8.5 * 25.4),
    ("ANSI B", 17.0 * 25.4, 11.0 * 25.4),
    ("ANSI C", 22.0 * 25.4, 17.0 * 25.4),
    ("ANSI D", 34.0 * 25.4, 22.0 * 25.4),
    ("ARCH A", 12.0 * 25.4, 9.0 * 25.4),
    ("ARCH B", 18.0 * 25.4, 12.0 * 25.4),
    ("ARCH C", 24.0 * 25.4, 18.0 * 25.4),
    ("ARCH D", 36.0 * 25.4, 24.0 * 25.4),
];

/// The paper, A3 unless the job says otherwise.
pub(super) fn read(paper: &PaperText, reader: &mut Reader) -> Paper {
    let name = reader.words(paper.size.as_ref(), "A3");
    let place = paper.size.as_ref().map(|size| size.place.clone());
    let found = SIZES.iter().find(|(known, _, _)| known.eq_ignore_ascii_case(name.trim()));
    if let (None, Some(place)) = (found, &place) {
        let names = || SIZES.iter().map(|(known, _, _)| *known);
        let instead = findings::nearest(&name.to_uppercase(), names()).map_or_else(
            || format!("choose from {}", names().collect::<Vec<_>>().join(", ")),
            |meant| format!("write \"{meant}\""),
        );
        reader.tell(format!("`{name}` is not a paper size"), instead, place);
    }
    let (name, width, height) = *found.unwrap_or(&SIZES[1]);
    Paper { name: name.to_owned(), width, height, place }
}
