//! The pieces cut from sheet, where they meet, and what is cut from each stock sheet and bar.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::{Face, Plane, SheetPart, SheetPiece, Solved};

/// The pieces.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("piece"),
        Column::words("leg"),
        Column::words("part"),
        Column::words("of"),
        Column::lengths("thick"),
        Column::lengths("width to cut"),
        Column::lengths("height to cut"),
        Column::words("cut for"),
        Column::masses("weight"),
    ];
    let mut list = Listing::new("sheet-pieces", "Pieces cut from sheet", columns)
        .noted("Widths and heights are those of the piece before its openings are cut, bevels included.");
    for piece in &solved.shop.pieces {
        let (Some(leg), Some(material)) =
            (solved.legs.get(piece.leg), solved.shop.cutting.materials.get(piece.material))
        else {
            continue;
        };
        let marks: Vec<&str> =
            piece.fittings.iter().filter_map(|&k| leg.fittings.get(k)).map(|fitting| fitting.mark.as_str()).collect();
        list.push(vec![
            piece.mark.as_str().into(),
            leg.id.as_str().into(),
            part(piece.part).into(),
            material.name.as_str().into(),
            material.thickness.into(),
            piece.blank.0.into(),
            piece.blank.1.into(),
            marks.join(", ").into(),
            Value::Mass(piece.mass),
        ]);
    }
    list
}

/// The cutouts of each piece from its own lower left corner, as its plane is drawn.
pub fn located(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("piece"),
        Column::words("cut for"),
        Column::lengths("from its left edge"),
        Column::lengths("from its lower edge"),
        Column::lengths("width"),
        Column::lengths("height"),
        Column::lengths("radius"),
    ];
    let mut list = Listing::new("piece-cutouts", "Cutouts of the pieces, from two edges", columns)
        .noted("Left is the side of the smaller coordinate: the cook\u{2019}s left, and the front of an end.")
        .noted("The lower edge is the foot of a face, and the front edge of the substrate.");
    for piece in &solved.shop.pieces {
        let (Some(leg), Some(plane)) = (solved.legs.get(piece.leg), plane(piece)) else { continue };
        let e = piece.extent;
        for fitting in piece.fittings.iter().filter_map(|&k| leg.fittings.get(k)) {
            let Some(cutout) = fitting.cutout(plane).filter(|cutout| cutout.extent.meets(&e)) else { continue };
            // A joint through a cutout leaves each piece its share.
            let cut = cutout.extent.held_to(&e);
            list.push(vec![
                piece.mark.as_str().into(),
                fitting.mark.as_str().into(),
                (cut.x0 - e.x0).into(),
                (cut.y0 - e.y0).into(),
                cut.width().into(),
                cut.height().into(),
                cutout.radius.into(),
            ]);
        }
    }
    list
}

/// Where pieces meet.
pub fn joints(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("part"),
        Column::words("runs"),
        Column::lengths("at"),
        Column::words("lies on"),
        Column::lengths("from the nearest cutout\u{2019}s side"),
    ];
    let mut list = Listing::new("sheet-joints", "Joints of the boards", columns)
        .noted("Places are those of the middle of the gap, from the finished left end or face, or over the floor.");
    for joint in &solved.shop.cutting.joints {
        let Some(leg) = solved.legs.get(joint.leg) else { continue };
        let on = match (joint.on_framing, joint.between_modules) {
            (true, true) => "two posts",
            (true, false) => "a tube",
            (false, _) => "nothing",
        };
        list.push(vec![
            leg.id.as_str().into(),
            part(joint.part).into(),
            if joint.level { "level" } else { "across" }.into(),
            joint.at.into(),
            on.into(),
            joint.off_corner.map_or(Value::Empty, Value::Length),
        ]);
    }
    list
}

/// What is cut from each stock sheet.
pub fn on_sheets(solved: &Solved) -> Listing {
    let columns = vec![
        Column::counts("sheet"),
        Column::words("of"),
        Column::lengths("width"),
        Column::lengths("length"),
        Column::words("bought or offcut"),
        Column::words("piece"),
        Column::lengths("along the length"),
        Column::lengths("along the width"),
        Column::lengths("takes along the length"),
        Column::lengths("takes along the width"),
    ];
    let mut list = Listing::new("cut-sheets", "Pieces on stock sheets", columns).noted(
        "Places are those of each piece\u{2019}s lower left corner on the sheet, its length lying to the right.",
    );
    let shop = &solved.shop;
    for (index, sheet) in shop.cutting.sheets.iter().enumerate() {
        let name = shop.cutting.materials.get(sheet.material).map_or("", |material| material.name.as_str());
        for placed in &sheet.placed {
            let Some(piece) = shop.pieces.get(placed.piece) else { continue };
            let (wide, high) = if placed.turned { (piece.blank.1, piece.blank.0) } else { piece.blank };
            list.push(vec![
                Value::Count(index as u64 + 1),
                name.into(),
                sheet.size.0.into(),
                sheet.size.1.into(),
                sheet.offcut.as_deref().unwrap_or("bought").into(),
                piece.mark.as_str().into(),
                placed.at.0.into(),
                placed.at.1.into(),
                wide.into(),
                high.into(),
            ]);
        }
    }
    list
}

/// What is cut from each stock bar, in order.
pub fn on_bars(solved: &Solved) -> Listing {
    let columns = vec![
        Column::counts("bar"),
        Column::words("of"),
        Column::lengths("stock length"),
        Column::counts("cut"),
        Column::words("piece"),
        Column::lengths("length"),
        Column::lengths("left of the bar"),
    ];
    let mut list = Listing::new("cut-bars", "Lengths on stock bars", columns);
    for (index, bar) in solved.shop.cutting.bars.iter().enumerate() {
        for (turn, (mark, length)) in bar.cuts.iter().enumerate() {
            list.push(vec![
                Value::Count(index as u64 + 1),
                bar.name.as_str().into(),
                bar.length.into(),
                Value::Count(turn as u64 + 1),
                mark.as_str().into(),
                (*length).into(),
                if turn + 1 == bar.cuts.len() { Value::Length(bar.left) } else { Value::Empty },
            ]);
        }
    }
    list
}

fn part(part: SheetPart) -> &'static str {
    match part {
        SheetPart::Face(Face::Front) => "front",
        SheetPart::Face(Face::Left) => "left end",
        SheetPart::Face(Face::Right) => "right end",
        SheetPart::Face(Face::Back) => "back",
        SheetPart::Bottom => "bottom",
        SheetPart::Substrate => "substrate",
    }
}

fn plane(piece: &SheetPiece) -> Option<Plane> {
    match piece.part {
        SheetPart::Face(face) => Some(Plane::of(face)),
        SheetPart::Substrate => Some(Plane::Substrate),
        SheetPart::Bottom => None,
    }
}
