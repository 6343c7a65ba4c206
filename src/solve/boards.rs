//! The boards fixed to the frame: one a module on the long faces, one on each end.

use super::slab::{Bite, bitten, outline, sharp_box};
use super::{Board, Cutout, Datums, Extent, Face, Fitting, Module, ModuleKind, Plane};
use crate::geometry::Region;
use crate::parameters::given::Faces;
use crate::units::Length;

/// All boards of a leg: front, left end, right end, back, each from left to right. A face without a board has none;
/// an open bay has a front board only where a fitting is cut into it.
///
/// The outer boards of the long faces cover the edges of the end boards, which lie between them.
pub fn boards(faces: &Faces, modules: &[Module], datums: &Datums, fittings: &[Fitting], over: &Covered) -> Vec<Board> {
    let mut all = Vec::new();
    for face in [Face::Front, Face::Left, Face::Right, Face::Back] {
        let thickness = match face {
            Face::Front => faces.front.board,
            Face::Left => faces.left.board,
            Face::Right => faces.right.board,
            Face::Back => faces.back.board,
        };
        if thickness > Length::ZERO {
            all.extend(face_boards(face, modules, datums, fittings, over));
        }
    }
    all
}

/// What of a leg's faces is covered by other legs, and how its boards are cut where it meets them.
#[derive(Clone, Copy, Debug, Default)]
pub struct Covered {
    /// The level below which a face isn't seen, since another leg stands against it: front, left, right.
    pub from: [Option<Length>; 3],
    /// Bevels of the front boards' outer edges from square, left and right, radians.
    pub bevels: [f64; 2],
    /// The leg meets another one at its left, at its right end.
    pub meets: [bool; 2],
}

fn face_boards(face: Face, modules: &[Module], datums: &Datums, fittings: &[Fitting], over: &Covered) -> Vec<Board> {
    let plane = Plane::of(face);
    let from = match face {
        Face::Front => over.from[0],
        Face::Left => over.from[1],
        Face::Right => over.from[2],
        Face::Back => None,
    };
    let (y0, y1) = (from.unwrap_or(datums.frame_bottom), datums.frame_top);
    if y1 <= y0 {
        return Vec::new();
    }
    let blank = |name: String, x0, x1, module| Board {
        name,
        face,
        plane,
        extent: Extent { x0, y0, x1, y1 },
        region: Region::default(),
        fittings: Vec::new(),
        module,
        bevels: [0.0; 2],
    };
    let mut boards: Vec<Board> = match face {
        Face::Left | Face::Right => {
            let (name, module) =
                if face == Face::Left { ("left end", 0) } else { ("right end", modules.len().saturating_sub(1)) };
            vec![blank(name.to_owned(), datums.frame_face, datums.frame_back, Some(module))]
        }
        Face::Front | Face::Back => {
            let word = if face == Face::Front { "front" } else { "back" };
            let last = modules.len().saturating_sub(1);
            // Behind a leg that it meets a face has no board; at an outside corner the board reaches on past the frame.
            let (low, high) = if face == Face::Front {
                (datums.board_left, datums.board_right)
            } else {
                (
                    if over.meets[0] { datums.frame_left } else { datums.board_left },
                    if over.meets[1] { datums.frame_right } else { datums.board_right },
                )
            };
            let board = |(index, module): (usize, &Module)| {
                let x0 = if index == 0 { low } else { module.left.max(low) };
                let x1 = if index == last { high } else { module.right.min(high) };
                blank(format!("{word} {}", module.id), x0, x1, Some(index))
            };
            let mut row: Vec<Board> =
                modules.iter().enumerate().map(board).filter(|board| board.extent.x1 > board.extent.x0).collect();
            if let (Face::Front, Some(first)) = (face, row.first_mut()) {
                first.bevels[0] = over.bevels[0];
            }
            if let (Face::Front, Some(end)) = (face, row.last_mut()) {
                end.bevels[1] = over.bevels[1];
            }
            row
        }
    };
    // Boards lie side by side, so that the ones a cutout touches are neighbours.
    for (index, fitting) in fittings.iter().enumerate() {
        let Some(cutout) = fitting.cutout(plane) else { continue };
        let first = boards.partition_point(|board| board.extent.x1 <= cutout.extent.x0);
        for board in boards[first..].iter_mut().take_while(|board| board.extent.x0 < cutout.extent.x1) {
            if board.extent.meets(&cutout.extent) {
                board.fittings.push(index);
            }
        }
    }
    if face == Face::Front {
        boards.retain(|board| {
            let open_bay = board.module.is_some_and(|module| modules[module].kind == ModuleKind::OpenBay);
            !open_bay || !board.fittings.is_empty()
        });
    }
    for board in &mut boards {
        board.region = region(board, fittings, plane);
    }
    boards
}

/// A board less what is cut out of it: what is open at its edge or reaches past its top or bottom is cut away, the
/// rest are holes.
fn region(board: &Board, fittings: &[Fitting], plane: Plane) -> Region {
    let whole = board.extent;
    let (mut top, mut bottom, mut holes): (Vec<Bite>, Vec<Bite>, _) = (Vec::new(), Vec::new(), Vec::new());
    for cutout in board.fittings.iter().filter_map(|&index| fittings[index].cutout(plane)) {
        let cut = cutout.extent;
        let bite =
            |y: Length| Bite { x0: cut.x0.mm(), x1: cut.x1.mm(), y: y.mm(), mouth: 0.0, inner: cutout.radius.mm() };
        if cut.y1 >= whole.y1 {
            top.push(bite(cut.y0.max(whole.y0)));
        } else if cut.y0 <= whole.y0 {
            bottom.push(bite(cut.y1));
        } else {
            holes.push(hole(cutout, &whole));
        }
    }
    let (x0, y0, x1, y1) = (whole.x0.mm(), whole.y0.mm(), whole.x1.mm(), whole.y1.mm());
    // Where a bay and a notch would meet, the board is cut through; the bay ends where the notch does.
    for bay in &mut bottom {
        let met = top.iter().filter(|notch| notch.x0 < bay.x1 && bay.x0 < notch.x1);
        bay.y = met.map(|notch| notch.y).fold(bay.y, f64::min);
    }
    let corners = bitten(&sharp_box(x0, y0, x1, y1), 2, &top);
    let corners = bitten(&corners, 0, &bottom);
    Region { outer: outline(&corners), holes }
}

/// A hole, held to the sheet that it is cut in.
fn hole(cutout: &Cutout, whole: &Extent) -> crate::geometry::Outline {
    let cut = cutout.extent;
    if cut.x0 >= whole.x0 && cut.x1 <= whole.x1 {
        return cutout.outline.clone();
    }
    cut.held_to(whole).outline()
}
