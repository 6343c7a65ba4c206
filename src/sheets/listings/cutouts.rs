//! Cutouts sheet by sheet: each hole in each sheet, and what the frame has to clear.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::sheets::schedules::{cut_in, frame_opening};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("mark"),
        Column::words("fitting"),
        Column::words("cut in"),
        Column::lengths("across"),
        Column::lengths("deep or high"),
        Column::lengths("corner radius"),
        Column::lengths("in the frame, across"),
        Column::lengths("in the frame, high"),
    ];
    let mut list = Listing::new("cutouts", "Cutouts", columns)
        .noted("Measure the fitting in hand before its cutout is cut; the list \u{201c}Located\u{201d} says where each edge lies.");
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            for cutout in &fitting.cutouts {
                let to_floor = fitting.to_floor && cutout.open;
                let high = match (cutout.round, to_floor) {
                    (true, _) => "round".into(),
                    (_, true) => "to floor".into(),
                    _ => Value::Length(cutout.extent.height()),
                };
                let (across_frame, high_frame) = match frame_opening(solved, fitting, cutout) {
                    Some((across, Some(high))) => (across.into(), high.into()),
                    Some((across, None)) => (across.into(), "to floor".into()),
                    None => (Value::Empty, Value::Empty),
                };
                list.push(vec![
                    leg.id.as_str().into(),
                    fitting.mark.as_str().into(),
                    fitting.name.as_str().into(),
                    cut_in(fitting, cutout).into(),
                    cutout.extent.width().into(),
                    high,
                    if cutout.round { Value::Empty } else { cutout.radius.into() },
                    across_frame,
                    high_frame,
                ]);
            }
        }
    }
    list
}
