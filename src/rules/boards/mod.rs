//! Pieces of sheet: whether they can be cut, and where they meet.

pub mod joint_clear_of_cutout_corners;
pub mod joint_lies_on_framing;
pub mod length_fits_a_bar;
pub mod no_narrow_strip;
pub mod piece_fits_a_sheet;

use crate::solve::SheetPart;

/// What is joined, in words.
const fn part(part: SheetPart) -> &'static str {
    match part {
        SheetPart::Face(crate::solve::Face::Front) => "the front",
        SheetPart::Face(crate::solve::Face::Back) => "the back",
        SheetPart::Face(_) => "an end",
        SheetPart::Bottom => "a bottom",
        SheetPart::Substrate => "the substrate",
    }
}
