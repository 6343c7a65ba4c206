//! How many slabs a counter of stone or porcelain takes, its pieces laid out in rows.

use super::book::{Book, Kind, counted};
use crate::parameters::given::Figure;
use crate::solve::{MaterialGroup, MaterialLine, Solved, takeoff};
use crate::units::{Exact, Length};

/// The usable slab: the job's own, or the usual one.
pub fn size(book: &Book, solved: &Solved) -> (Length, Length) {
    let usual = || (book.length(Figure::SlabLength), book.length(Figure::SlabWidth));
    solved.counter.needs.slab.unwrap_or_else(usual)
}

/// The line of the slabs. Pieces that no slab takes count one slab each; a rule reports them.
pub fn line(book: &Book, solved: &Solved) -> Option<MaterialLine> {
    let given = solved.counter.needs.slab;
    let (long, wide) = size(book, solved);
    let kerf = book.length(Figure::SlabKerf);
    let mut pieces: Vec<(Length, Length)> = Vec::new();
    let mut net = Exact::zero();
    let all = solved.legs.iter().flat_map(|leg| &leg.counter.pieces);
    for piece in all {
        pieces.push((piece.extent.width(), piece.extent.height()));
        net = net + takeoff::area(&piece.region);
    }
    let mut splashes = Exact::zero();
    if let Some(splash) = &solved.counter.splash {
        for (_, from, to, _) in solved.legs.iter().flat_map(|leg| &leg.counter.splashes) {
            splashes = splashes + takeoff::rectangle(*to - *from, splash.height);
            if splash.thickness == solved.counter.thickness {
                pieces.push((*to - *from, splash.height));
            }
        }
    }
    if !net.is_positive() {
        return None;
    }
    let same = solved.counter.splash.is_some_and(|splash| splash.thickness == solved.counter.thickness);
    let parts = if same && splashes.is_positive() {
        vec![("counter".to_owned(), net.clone()), ("upstand".to_owned(), splashes.clone())]
    } else {
        Vec::new()
    };
    let net = if same { net + splashes.clone() } else { net };
    let count = rows(&mut pieces, long, wide, kerf);
    let slab = takeoff::rectangle(long, wide);
    let size = format!("{} by {}", book.show.prose(long), book.show.prose(wide));
    let gross = slab.clone() * Exact::whole(i128::from(count));
    let mut how = format!(
        "{} in {}, laid in rows on slabs of {} with {} between them; {} are left over",
        book.words(Kind::Area, &net),
        counted(pieces.len(), "piece"),
        book.words(Kind::Area, &slab),
        book.show.prose(kerf),
        book.words(Kind::Area, &(gross - net.clone()).not_less_than_nothing())
    );
    if !same && splashes.is_positive() {
        how = format!(
            "{how}; upstands of another thickness, {}, are not counted: buy their stone besides",
            book.words(Kind::Area, &splashes)
        );
    }
    let over: Vec<String> = solved
        .legs
        .iter()
        .flat_map(|leg| leg.counter.pieces.iter().map(move |piece| (leg, piece)))
        .filter(|(_, piece)| !piece.fits((long, wide)))
        .map(|(leg, piece)| {
            let on = if solved.legs.len() > 1 { format!(", {}", leg.id) } else { String::new() };
            format!("{}{on} ({})", piece.name, book.show.prose(piece.extent.width().max(piece.extent.height())))
        })
        .collect();
    if !over.is_empty() {
        how = format!("{how}; no such slab takes {}: a seam or a larger slab, then count again", over.join(", "));
    }
    let by = if given.is_some() {
        vec![Figure::SlabKerf]
    } else {
        vec![Figure::SlabLength, Figure::SlabWidth, Figure::SlabKerf]
    };
    Some(MaterialLine {
        group: MaterialGroup::Counter,
        name: format!("{}, {}", solved.counter.name, book.show.prose(solved.counter.thickness)),
        net: book.amount(Kind::Area, &net),
        unit: book.unit(Kind::Area).to_owned(),
        waste: 0.0,
        order_unit: format!("slab of {size} usable"),
        count,
        how,
        origin: book.origin(&by),
        parts: parts.into_iter().map(|(name, part)| (name, book.amount(Kind::Area, &part))).collect(),
    })
}

/// A slab that is being filled: rows with what is left of their length, and what is left of its width.
struct Slab {
    rows: Vec<(Length, Length)>,
    left: Length,
}

/// Slabs that the pieces take when each is laid along the slab in the first row that takes it, widest first.
fn rows(pieces: &mut [(Length, Length)], long: Length, wide: Length, kerf: Length) -> u64 {
    for piece in pieces.iter_mut() {
        *piece = (piece.0.max(piece.1), piece.0.min(piece.1));
    }
    pieces.sort_by_key(|&(length, width)| std::cmp::Reverse((width, length)));
    let mut slabs: Vec<Slab> = Vec::new();
    for &(length, width) in pieces.iter() {
        let placed = slabs.iter_mut().any(|slab| {
            if let Some(row) = slab.rows.iter_mut().find(|row| row.0 >= width && row.1 >= length + kerf) {
                row.1 -= length + kerf;
                return true;
            }
            let room = slab.left >= width + kerf && length <= long;
            if room {
                slab.rows.push((width, long - length));
                slab.left -= width + kerf;
            }
            room
        });
        if !placed {
            slabs.push(Slab { rows: vec![(width, (long - length).max(Length::ZERO))], left: wide - width });
        }
    }
    slabs.len() as u64
}

#[cfg(test)]
mod tests {
    use super::rows;
    use crate::units::Length;

    #[test]
    fn pieces_share_slabs_where_rows_and_widths_allow() {
        let inches = Length::from_inches;
        let count = |sizes: &[(f64, f64)]| {
            let mut pieces: Vec<_> = sizes.iter().map(|&(a, b)| (inches(a), inches(b))).collect();
            rows(&mut pieces, inches(120.0), inches(63.0), inches(0.125))
        };
        // Two rows of 31 7/16 in with the saw between them fill a slab of 63 in to the last.
        assert_eq!(count(&[(100.0, 31.4375), (100.0, 31.4375)]), 1);
        assert_eq!(count(&[(100.0, 31.5), (100.0, 31.4375)]), 2);
        assert_eq!(count(&[(60.0, 30.0), (59.875, 30.0), (60.0, 30.0), (59.875, 30.0)]), 1);
        assert_eq!(count(&[(200.0, 30.0)]), 1);
        assert_eq!(count(&[]), 0);
    }
}
