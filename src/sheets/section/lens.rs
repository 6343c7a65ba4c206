//! What the detail shows, how large, and what of it stands where.

use super::slice::Slice;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::dimensions::NEXT;
use crate::sheets::frame::Area;
use crate::sheets::materials::Material;
use crate::sheets::scale::{STANDARD, Scale};
use crate::units::{Length, Show};

/// What the circle shows and how large.
#[derive(Clone, Copy, Debug)]
pub struct Lens {
    /// Scale of the detail.
    pub scale: Scale,
    /// Its middle, w and z, mm of the model.
    pub middle: (f64, f64),
    /// Its radius on the detail, mm of paper.
    pub radius: f64,
    /// Rows of datum names over it.
    pub name_rows: usize,
}

/// White kept between the circle and the counter's nose, mm.
const SPARE: f64 = 3.0;
/// Row of names, mm.
pub const NAME_ROW: f64 = 5.0;

impl Lens {
    /// The smallest circle that holds the counter's nose, the whole build-up and one wall of the frame, at the largest
    /// scale that an area takes.
    pub fn fitting(slice: &Slice, area: &Area, show: Show) -> Lens {
        let d = &slice.leg.datums;
        let mut lens = Lens { scale: Scale(1), middle: (0.0, 0.0), radius: 0.0, name_rows: 1 };
        for scale in STANDARD {
            let factor = scale.factor();
            let wall = slice.solved.frame.wall.mm().max(1.0);
            let (left, right) = (slice.counter_edges.0.mm().min(0.0), slice.near.at[2].mm() + wall + 5.0 / factor);
            let deep = (d.counter_top - d.frame_top).mm() + 15.0 / factor;
            let half = ((right - left) / 2.0 * factor, deep / 2.0 * factor);
            let radius = half.0.hypot(half.1) + SPARE;
            lens = Lens {
                scale: *scale,
                middle: ((left + right) / 2.0, d.counter_top.mm() - deep / 2.0),
                radius,
                name_rows: 1,
            };
            lens.name_rows = names(slice, &lens).iter().map(|name| name.row + 1).max().unwrap_or(1);
            let wide = 2.0 * radius + 6.0 + lens.label_room(slice, show);
            if wide <= area.width() && lens.height(slice) <= area.height() {
                break;
            }
        }
        lens
    }

    /// How far the circle reaches over the counter's top, mm of the model.
    pub fn over(&self, slice: &Slice) -> f64 {
        self.middle.1 + self.radius / self.scale.factor() - slice.leg.datums.counter_top.mm()
    }

    /// Where the circle begins on w, mm of the model.
    pub fn left(&self) -> f64 {
        self.middle.0 - self.radius / self.scale.factor()
    }

    /// Room over the circle: flag, names, overhang.
    pub fn above(&self) -> f64 {
        6.2 + NAME_ROW * self.name_rows as f64 + 5.4
    }

    fn below(&self, slice: &Slice) -> f64 {
        8.0 + NEXT * rows(slice, self).saturating_sub(1) as f64 + 2.2
    }

    /// Height of the whole detail, mm.
    pub fn height(&self, slice: &Slice) -> f64 {
        self.above() + 2.0 * self.radius + self.below(slice)
    }

    /// Room right of the circle for the names that don't fit into their layers.
    pub fn label_room(&self, slice: &Slice, show: Show) -> f64 {
        let widest = stack(slice, &Vec::new(), show)
            .iter()
            .map(|(_, name)| lettering::width(name, BODY, Weight::Regular))
            .fold(0.0, f64::max);
        widest.clamp(16.0, 34.0) + 6.0
    }
}

/// Layers of the front from the outside in: from and to on w, name, thickness, material.
pub fn layers(slice: &Slice) -> Vec<(Length, Length, String, Material)> {
    let skin = &slice.near;
    let [finished, board, frame] = skin.at;
    let mut all = Vec::new();
    if let Some(finish) = &skin.build.finish {
        let bed = board - finish.bed;
        all.push((finished, bed, finish.name.clone(), Material::Finish(finish.kind)));
        if finish.bed > Length::ZERO {
            all.push((bed, board, "bed".to_owned(), Material::Bed));
        }
    }
    if frame > board {
        all.push((board, frame, skin.build.board_name.clone(), Material::Board));
    }
    all
}

/// Names for the leader beside the circle, with the place of each on w.
pub fn stack(slice: &Slice, named: &[Length], show: Show) -> Vec<(Length, String)> {
    let mut all: Vec<(Length, String)> = layers(slice)
        .into_iter()
        .filter(|(a, ..)| !named.contains(a))
        .map(|(a, b, name, _)| ((a + b).half(), format!("{name} {}", show.text(b - a))))
        .collect();
    let wall = slice.solved.frame.wall.max(Length::from_mm(1.0));
    all.push((slice.near.at[2] + wall.half(), "bare frame".to_owned()));
    all
}

pub fn chain_fits(slice: &Slice, lens: &Lens) -> bool {
    let parts = layers(slice);
    let show = slice.solved.show;
    let fits = |part: &Length| {
        let second = show.second(*part).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
        let need = lettering::width(&show.text(*part), BODY, Weight::Regular) + second + 2.0;
        part.mm() * lens.scale.factor() >= need.max(6.0)
    };
    parts.len() > 1 && parts.iter().all(|(a, b, ..)| fits(&(*b - *a)))
}

/// Rows of dimensions under the circle.
pub fn rows(slice: &Slice, lens: &Lens) -> usize {
    let [_, board, frame] = slice.near.at;
    usize::from(chain_fits(slice, lens))
        + usize::from(board > Length::ZERO && frame > board)
        + usize::from(frame > Length::ZERO)
}

/// A datum's name over the circle.
pub struct Name {
    /// Where it lies on w.
    pub at: Length,
    /// The datum's words.
    pub words: &'static str,
    /// Its row, the lowest first.
    pub row: usize,
    /// It stands left of its upright.
    pub left: bool,
}

/// Which row each name stands in, the lowest first: farther in is lower, so that no upright crosses a name.
pub fn names(slice: &Slice, lens: &Lens) -> Vec<Name> {
    let mut all = Vec::new();
    let factor = lens.scale.factor();
    let mut next_row = 0;
    for (datum, at, _) in slice.distinct_depths().into_iter().rev().filter(|(datum, ..)| !datum.is_finished()) {
        let words = datum.words();
        let wide = lettering::width(words, BODY, Weight::Regular) + 4.0;
        let before: Length = slice
            .distinct_depths()
            .iter()
            .map(|(_, other, _)| *other)
            .filter(|other| *other < at)
            .max()
            .unwrap_or(Length::from_mm(-1e6));
        let last = all.is_empty();
        let left = at < Length::ZERO || (!last && (at - before).mm() * factor >= wide);
        let row = if left { 0 } else { next_row };
        if !left {
            next_row += 1;
        }
        all.push(Name { at, words, row, left });
    }
    all
}
