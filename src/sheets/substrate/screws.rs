//! Where screws may go: over the tubes that run front to back, clear of edges and cutouts.

use super::Task;
use crate::solve::{Extent, Plane};
use crate::units::{Length, Show, System};

/// Screws keep this far from edges of the sheet and of cutouts: common practice, no source.
pub fn keep_off(show: Show) -> Length {
    if show.system == System::Millimetres { Length::from_mm(25.0) } else { Length::from_inches(1.0) }
}

/// Screws along a line stand no further apart: common practice, no source.
pub fn apart(show: Show) -> Length {
    if show.system == System::Millimetres { Length::from_mm(200.0) } else { Length::from_inches(8.0) }
}

/// Stretches of the screw lines: u, from v, to v.
pub fn lines(task: &Task<'_>) -> Vec<(Length, Length, Length)> {
    let (sheet, off) = (task.leg.substrate.extent, keep_off(task.show));
    let holes: Vec<Extent> =
        task.leg.fittings.iter().filter_map(|f| f.cutout(Plane::Substrate)).map(|c| c.extent).collect();
    let mut lines = Vec::new();
    for &(u, from, to) in &task.leg.substrate.screw_lines {
        if u - sheet.x0 < off.half() || sheet.x1 - u < off.half() {
            continue;
        }
        let mut spans = vec![(from.max(sheet.y0 + off), to.min(sheet.y1 - off))];
        for hole in &holes {
            if u <= hole.x0 - off || u >= hole.x1 + off {
                continue;
            }
            let split = |(a, b): (Length, Length)| [(a, b.min(hole.y0 - off)), (a.max(hole.y1 + off), b)];
            spans = spans.into_iter().flat_map(split).filter(|(a, b)| a < b).collect();
        }
        lines.extend(spans.into_iter().filter(|(a, b)| *b - *a > off).map(|(a, b)| (u, a, b)));
    }
    lines
}
