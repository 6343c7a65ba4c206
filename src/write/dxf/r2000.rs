//! AC1015: tables, blocks and objects that its readers insist on, then the entities.

use super::{Codes, LINE_TYPES, Version, entities, look, unit_codes};
use crate::drawing::cutting::{Cutting, Layer};

/// Handles below this are given out by hand, so that owners can be named before they are written.
const FIRST_FREE: u32 = 0x100;

const LTYPES: &str = "5";
const LAYERS: &str = "2";
const STYLES: &str = "3";
const VPORTS: &str = "8";
const VIEWS: &str = "6";
const UCSS: &str = "7";
const APPIDS: &str = "9";
const DIMSTYLES: &str = "A";
const BLOCK_RECORDS: &str = "1";
const MODEL: &str = "1F";
const PAPER: &str = "1B";
const ROOT: &str = "C";
const GROUPS: &str = "D";
const LAYOUTS: &str = "1A";
const MODEL_LAYOUT: &str = "22";
const PAPER_LAYOUT: &str = "1E";

/// The whole file.
pub fn document(cutting: &Cutting) -> String {
    let mut body = Codes::new(cutting.unit, FIRST_FREE);
    tables(&mut body, cutting);
    blocks(&mut body);
    section(&mut body, "ENTITIES");
    entities::write(&mut body, cutting, Version::R2000, MODEL);
    body.pair(0, "ENDSEC");
    objects(&mut body);
    body.pair(0, "EOF");
    // The seed must lie above every handle that was given out.
    let mut head = Codes::new(cutting.unit, 0);
    header(&mut head, cutting, body.handle);
    head.text + &body.text
}

fn section(c: &mut Codes, name: &str) {
    c.pair(0, "SECTION");
    c.pair(2, name);
}

fn header(c: &mut Codes, cutting: &Cutting, seed: u32) {
    section(c, "HEADER");
    let (x0, y0, x1, y1) = cutting.bounds();
    let (units, measurement) = unit_codes(cutting.unit);
    c.pair(9, "$ACADVER");
    c.pair(1, "AC1015");
    c.pair(9, "$DWGCODEPAGE");
    c.pair(3, "ANSI_1252");
    for (name, x, y) in [("$EXTMIN", x0, y0), ("$EXTMAX", x1, y1)] {
        c.pair(9, name);
        c.length(10, x);
        c.length(20, y);
        c.real(30, 0.0);
    }
    c.pair(9, "$HANDSEED");
    c.pair(5, &format!("{seed:X}"));
    for (name, value) in [("$INSUNITS", units), ("$MEASUREMENT", measurement), ("$LUNITS", 2), ("$LUPREC", 4)] {
        c.pair(9, name);
        c.whole(70, value);
    }
    c.pair(0, "ENDSEC");
    section(c, "CLASSES");
    c.pair(0, "ENDSEC");
}

fn table(c: &mut Codes, name: &str, handle: &str, count: usize, rows: impl FnOnce(&mut Codes)) {
    c.pair(0, "TABLE");
    c.pair(2, name);
    c.pair(5, handle);
    c.pair(330, "0");
    c.pair(100, "AcDbSymbolTable");
    c.whole(70, count as i64);
    if name == "DIMSTYLE" {
        c.pair(100, "AcDbDimStyleTable");
    }
    rows(c);
    c.pair(0, "ENDTAB");
}

/// The start of a row: kind, handle, owner, classes, name.
fn row(c: &mut Codes, kind: &str, owner: &str, handle: Option<&str>, class: &str, name: &str) {
    c.pair(0, kind);
    let code = if kind == "DIMSTYLE" { 105 } else { 5 };
    match handle {
        Some(handle) => c.pair(code, handle),
        None => {
            c.take_handle(code);
        }
    }
    c.pair(330, owner);
    c.pair(100, "AcDbSymbolTableRecord");
    c.pair(100, class);
    c.pair(2, name);
}

fn tables(c: &mut Codes, cutting: &Cutting) {
    section(c, "TABLES");
    let bounds = cutting.bounds();
    table(c, "VPORT", VPORTS, 1, |c| view_port(c, bounds));
    table(c, "LTYPE", LTYPES, LINE_TYPES.len() + 3, |c| {
        let plain = ["ByBlock", "ByLayer", "Continuous"].map(|name| (name, "", &[][..]));
        for (name, says, parts) in plain.into_iter().chain(LINE_TYPES) {
            row(c, "LTYPE", LTYPES, None, "AcDbLinetypeTableRecord", name);
            c.whole(70, 0);
            c.pair(3, says);
            c.whole(72, 65);
            c.whole(73, parts.len() as i64);
            c.length(40, parts.iter().map(|part| part.abs()).sum());
            for part in parts {
                c.length(49, *part);
                c.whole(74, 0);
            }
        }
    });
    table(c, "LAYER", LAYERS, Layer::ALL.len() + 1, |c| {
        let all =
            std::iter::once(("0", (7, "CONTINUOUS", -3))).chain(Layer::ALL.map(|layer| (layer.word(), look(layer))));
        for (name, (colour, line, width)) in all {
            row(c, "LAYER", LAYERS, None, "AcDbLayerTableRecord", name);
            c.whole(70, 0);
            c.whole(62, colour);
            c.pair(6, if line == "CONTINUOUS" { "Continuous" } else { line });
            c.whole(370, width);
            c.pair(390, "F");
        }
    });
    table(c, "STYLE", STYLES, 1, |c| {
        row(c, "STYLE", STYLES, None, "AcDbTextStyleTableRecord", "Standard");
        c.whole(70, 0);
        for (code, value) in [(40, 0.0), (41, 1.0), (50, 0.0)] {
            c.real(code, value);
        }
        c.whole(71, 0);
        c.real(42, 2.5);
        c.pair(3, "txt");
        c.pair(4, "");
    });
    table(c, "VIEW", VIEWS, 0, |_| {});
    table(c, "UCS", UCSS, 0, |_| {});
    table(c, "APPID", APPIDS, 1, |c| {
        row(c, "APPID", APPIDS, None, "AcDbRegAppTableRecord", "ACAD");
        c.whole(70, 0);
    });
    table(c, "DIMSTYLE", DIMSTYLES, 1, |c| {
        row(c, "DIMSTYLE", DIMSTYLES, None, "AcDbDimStyleTableRecord", "Standard");
        c.whole(70, 0);
    });
    table(c, "BLOCK_RECORD", BLOCK_RECORDS, 2, |c| {
        for (handle, name, layout) in [(MODEL, "*Model_Space", MODEL_LAYOUT), (PAPER, "*Paper_Space", PAPER_LAYOUT)] {
            row(c, "BLOCK_RECORD", BLOCK_RECORDS, Some(handle), "AcDbBlockTableRecord", name);
            c.pair(340, layout);
        }
    });
    c.pair(0, "ENDSEC");
}

fn view_port(c: &mut Codes, (x0, y0, x1, y1): (f64, f64, f64, f64)) {
    row(c, "VPORT", VPORTS, None, "AcDbViewportTableRecord", "*Active");
    c.whole(70, 0);
    for (code, x, y) in [(10, 0.0, 0.0), (11, 1.0, 1.0)] {
        c.real(code, x);
        c.real(code + 10, y);
    }
    c.length(12, (x0 + x1) / 2.0);
    c.length(22, (y0 + y1) / 2.0);
    for (code, x, y) in [(13, 0.0, 0.0), (14, 1.0, 1.0), (15, 1.0, 1.0)] {
        c.real(code, x);
        c.real(code + 10, y);
    }
    for (code, values) in [(16, [0.0, 0.0, 1.0]), (17, [0.0, 0.0, 0.0])] {
        for (index, value) in values.into_iter().enumerate() {
            c.real(code + 10 * index as u16, value);
        }
    }
    c.length(40, ((y1 - y0).max((x1 - x0) / 1.6) * 1.1).max(1.0));
    c.real(41, 1.6);
    for (code, value) in [(42, 50.0), (43, 0.0), (44, 0.0), (50, 0.0), (51, 0.0)] {
        c.real(code, value);
    }
    for (code, value) in [(71, 0), (72, 100), (73, 1), (74, 3), (75, 0), (76, 0), (77, 0), (78, 0)] {
        c.whole(code, value);
    }
}

fn blocks(c: &mut Codes) {
    section(c, "BLOCKS");
    for (owner, name, paper) in [(MODEL, "*Model_Space", false), (PAPER, "*Paper_Space", true)] {
        let head = |c: &mut Codes, kind: &str, class: &str| {
            c.pair(0, kind);
            c.take_handle(5);
            c.pair(330, owner);
            c.pair(100, "AcDbEntity");
            if paper {
                c.whole(67, 1);
            }
            c.pair(8, "0");
            c.pair(100, class);
        };
        head(c, "BLOCK", "AcDbBlockBegin");
        c.pair(2, name);
        c.whole(70, 0);
        for code in [10, 20, 30] {
            c.real(code, 0.0);
        }
        c.pair(3, name);
        c.pair(1, "");
        head(c, "ENDBLK", "AcDbBlockEnd");
    }
    c.pair(0, "ENDSEC");
}

fn dictionary(c: &mut Codes, handle: &str, owner: &str, entries: &[(&str, &str)]) {
    c.pair(0, "DICTIONARY");
    c.pair(5, handle);
    c.pair(330, owner);
    c.pair(100, "AcDbDictionary");
    c.whole(281, 1);
    for (name, value) in entries {
        c.pair(3, name);
        c.pair(350, value);
    }
}

fn objects(c: &mut Codes) {
    section(c, "OBJECTS");
    dictionary(c, ROOT, "0", &[("ACAD_GROUP", GROUPS), ("ACAD_LAYOUT", LAYOUTS), ("ACAD_PLOTSTYLENAME", "E")]);
    dictionary(c, GROUPS, ROOT, &[]);
    dictionary(c, LAYOUTS, ROOT, &[("Layout1", PAPER_LAYOUT), ("Model", MODEL_LAYOUT)]);
    c.pair(0, "ACDBDICTIONARYWDFLT");
    c.pair(5, "E");
    c.pair(330, ROOT);
    c.pair(100, "AcDbDictionary");
    c.whole(281, 1);
    c.pair(3, "Normal");
    c.pair(350, "F");
    c.pair(100, "AcDbDictionaryWithDefault");
    c.pair(340, "F");
    c.pair(0, "ACDBPLACEHOLDER");
    c.pair(5, "F");
    c.pair(330, "E");
    for (handle, name, order, flags, record) in
        [(PAPER_LAYOUT, "Layout1", 1, 1, PAPER), (MODEL_LAYOUT, "Model", 0, 1024, MODEL)]
    {
        c.pair(0, "LAYOUT");
        c.pair(5, handle);
        c.pair(330, LAYOUTS);
        c.pair(100, "AcDbPlotSettings");
        for code in [1, 2, 4, 6] {
            c.pair(code, "");
        }
        for code in [40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141] {
            c.real(code, 0.0);
        }
        c.real(142, 1.0);
        c.real(143, 1.0);
        c.whole(70, flags);
        for (code, value) in [(72, 0), (73, 0), (74, 5)] {
            c.whole(code, value);
        }
        c.pair(7, "");
        c.whole(75, 16);
        c.real(147, 1.0);
        c.real(148, 0.0);
        c.real(149, 0.0);
        c.pair(100, "AcDbLayout");
        c.pair(1, name);
        c.whole(70, 1);
        c.whole(71, order);
        for (code, x, y) in [(10, 0.0, 0.0), (11, 12.0, 9.0)] {
            c.real(code, x);
            c.real(code + 10, y);
        }
        for (code, values) in [
            (12, [0.0, 0.0, 0.0]),
            (14, [0.0, 0.0, 0.0]),
            (15, [0.0, 0.0, 0.0]),
            (13, [0.0, 0.0, 0.0]),
            (16, [1.0, 0.0, 0.0]),
            (17, [0.0, 1.0, 0.0]),
        ] {
            for (index, value) in values.into_iter().enumerate() {
                c.real(code + 10 * index as u16, value);
            }
        }
        c.real(146, 0.0);
        c.whole(76, 0);
        c.pair(330, record);
    }
    c.pair(0, "ENDSEC");
}
