//! AC1009: no handles, no classes, heavy polylines.

use super::{Codes, LINE_TYPES, Version, entities, look, unit_codes};
use crate::drawing::cutting::{Cutting, Layer};

/// The whole file.
pub fn document(cutting: &Cutting) -> String {
    let mut codes = Codes::new(cutting.unit, 1);
    let c = &mut codes;
    c.pair(0, "SECTION");
    c.pair(2, "HEADER");
    let (x0, y0, x1, y1) = cutting.bounds();
    let (units, measurement) = unit_codes(cutting.unit);
    c.pair(9, "$ACADVER");
    c.pair(1, "AC1009");
    for (name, x, y) in [("$EXTMIN", x0, y0), ("$EXTMAX", x1, y1)] {
        c.pair(9, name);
        c.length(10, x);
        c.length(20, y);
        c.real(30, 0.0);
    }
    c.pair(9, "$INSUNITS");
    c.whole(70, units);
    c.pair(9, "$MEASUREMENT");
    c.whole(70, measurement);
    c.pair(0, "ENDSEC");

    c.pair(0, "SECTION");
    c.pair(2, "TABLES");
    line_types(c);
    c.pair(0, "TABLE");
    c.pair(2, "LAYER");
    c.whole(70, Layer::ALL.len() as i64 + 1);
    for (name, (colour, line, _)) in
        std::iter::once(("0", (7, "CONTINUOUS", 0))).chain(Layer::ALL.map(|layer| (layer.word(), look(layer))))
    {
        c.pair(0, "LAYER");
        c.pair(2, name);
        c.whole(70, 0);
        c.whole(62, colour);
        c.pair(6, line);
    }
    c.pair(0, "ENDTAB");
    c.pair(0, "TABLE");
    c.pair(2, "STYLE");
    c.whole(70, 1);
    c.pair(0, "STYLE");
    c.pair(2, "STANDARD");
    c.whole(70, 0);
    for (code, value) in [(40, 0.0), (41, 1.0), (50, 0.0)] {
        c.real(code, value);
    }
    c.whole(71, 0);
    c.real(42, 2.5);
    c.pair(3, "txt");
    c.pair(4, "");
    c.pair(0, "ENDTAB");
    c.pair(0, "ENDSEC");

    c.pair(0, "SECTION");
    c.pair(2, "BLOCKS");
    c.pair(0, "ENDSEC");
    c.pair(0, "SECTION");
    c.pair(2, "ENTITIES");
    entities::write(c, cutting, Version::R12, "");
    c.pair(0, "ENDSEC");
    c.pair(0, "EOF");
    codes.text
}

fn line_types(c: &mut Codes) {
    c.pair(0, "TABLE");
    c.pair(2, "LTYPE");
    c.whole(70, LINE_TYPES.len() as i64 + 1);
    for (name, says, parts) in std::iter::once(("CONTINUOUS", "solid line", &[][..])).chain(LINE_TYPES) {
        c.pair(0, "LTYPE");
        c.pair(2, name);
        c.whole(70, 0);
        c.pair(3, says);
        c.whole(72, 65);
        c.whole(73, parts.len() as i64);
        c.length(40, parts.iter().map(|part| part.abs()).sum());
        for part in parts {
            c.length(49, *part);
        }
    }
    c.pair(0, "ENDTAB");
}
