//! What pieces are cut from, and how boards are laid on the frame.

use super::given::{BarStock, Laying, Offcut, SheetStock, Stock};
use super::reader::{Reader, Sign};
use crate::model::{BoardsText, CutsText, SheetStockText, StockText};
use crate::units::Length;

/// Works out the stock. Where the job lists no size, one is assumed.
pub(super) fn read(stock: &StockText, reader: &mut Reader) -> Stock {
    let mut lengths: Vec<Length> =
        stock.bars.lengths.iter().filter_map(|text| reader.length_of(text, Sign::Positive)).collect();
    if lengths.is_empty() {
        lengths.push(reader.length("stock.bars.length", None, Sign::Positive));
    }
    lengths.sort_by_key(|length| -*length);
    Stock {
        board: sheet("stock.board", &stock.board, true, reader),
        substrate: sheet("stock.substrate", &stock.substrate, false, reader),
        bars: BarStock {
            lengths,
            kerf: reader.length("stock.bars.kerf", stock.bars.kerf.as_ref(), Sign::NotNegative),
            end_trim: reader.length("stock.bars.end_trim", stock.bars.end_trim.as_ref(), Sign::NotNegative),
        },
        keep: reader.length("stock.keep", stock.keep.as_ref(), Sign::Positive),
    }
}

fn sheet(name: &str, written: &SheetStockText, snapped: bool, reader: &mut Reader) -> SheetStock {
    let mut sheets: Vec<(Length, Length)> = Vec::new();
    for one in &written.sheets {
        let width = reader.length_of(&one.width, Sign::Positive);
        if let (Some(width), Some(length)) = (width, reader.length_of(&one.length, Sign::Positive)) {
            sheets.push((width, length));
        }
    }
    if sheets.is_empty() {
        let mut side = |side: &str| reader.length(&format!("{name}.{side}"), None, Sign::Positive);
        sheets.push((side("width"), side("length")));
    }
    let mut offcuts: Vec<Offcut> = Vec::new();
    for one in &written.offcuts {
        let called = reader.words(Some(&one.name), "");
        if offcuts.iter().any(|other| other.name == called) {
            let message = format!("two offcuts are called `{called}`");
            reader.tell(message, "give each offcut a name of its own, as it is written on it", &one.name.place);
        }
        let width = reader.length_of(&one.width, Sign::Positive);
        if let (Some(width), Some(length)) = (width, reader.length_of(&one.length, Sign::Positive)) {
            offcuts.push(Offcut { name: called, size: (width, length), place: Some(one.name.place.clone()) });
        }
    }
    let edge_to_edge = match written.cuts {
        Some(CutsText::EdgeToEdge) => true,
        Some(CutsText::Any) => false,
        None => {
            let value =
                if snapped { "edge_to_edge, scored and snapped" } else { "edge_to_edge, with a saw and a rail" };
            reader.record(&format!("{name}.cuts"), value, "common practice");
            true
        }
    };
    let turned = written.turned.unwrap_or_else(|| {
        reader.record(&format!("{name}.turned"), "true", "common practice");
        true
    });
    let kerf = format!("{name}.kerf");
    SheetStock {
        sheets,
        offcuts,
        edge_to_edge,
        kerf: reader.length(&kerf, written.kerf.as_ref(), Sign::NotNegative),
        turned,
        place: written.sheets.first().map(|sheet| sheet.width.place.clone()),
    }
}

/// Works out how boards are laid.
pub(super) fn laying(boards: &BoardsText, reader: &mut Reader) -> Laying {
    Laying {
        gap: reader.length("boards.gap", boards.gap.as_ref(), Sign::NotNegative),
        off_floor: reader.length("boards.off_floor", boards.off_floor.as_ref(), Sign::NotNegative),
        off_corner: reader.length("boards.off_corner", boards.off_corner.as_ref(), Sign::NotNegative),
        least_strip: reader.length("boards.least_strip", boards.least_strip.as_ref(), Sign::NotNegative),
        bottoms: boards.bottoms.unwrap_or_else(|| {
            reader.record("boards.bottoms", "true: each closed module has one", "common practice");
            true
        }),
    }
}
