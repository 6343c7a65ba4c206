//! Every piece cut from sheet: faces, bottoms, substrate.
//!
//! A face has one piece a module, with a gap where two meet; one that no sheet takes is parted over tubes. The edges
//! of a run's faces stay where the boards' datums are, since finish and counter are measured from them.

mod bottoms;
mod faces;
mod framing;
mod part;
mod under;

use super::super::{SheetJoint, SheetMaterial, SheetPart, SheetPiece, Shop, Solved};
use super::weights::Densities;
use crate::geometry::Region;
use crate::parameters::given::{Given, SheetStock};
use crate::units::Length;

/// What the pieces are made of, the pieces, and where they meet.
#[derive(Default)]
pub struct Pieces {
    /// The sheet materials.
    pub materials: Vec<SheetMaterial>,
    /// The pieces.
    pub pieces: Vec<SheetPiece>,
    /// Where pieces of one face, or of a substrate, meet.
    pub joints: Vec<SheetJoint>,
}

/// Every piece cut from sheet.
pub fn pieces(given: &Given, solved: &Solved, _shop: &Shop) -> Pieces {
    let densities = Densities::of(given);
    let mut all = Pieces::default();
    let several = solved.legs.len() > 1;
    for (index, leg) in solved.legs.iter().enumerate() {
        for board in &leg.boards {
            let build = leg.build(board.face);
            let material = all.material(&build.board_name, build.board, densities.board, (&given.stock.board, false));
            faces::cut(&mut all, &given.laying, (index, leg), (board, several), material);
        }
    }
    if given.laying.bottoms {
        for (index, leg) in solved.legs.iter().enumerate() {
            let Some(build) = [&leg.front_build, &leg.back_build, &leg.left_build, &leg.right_build]
                .into_iter()
                .find(|build| build.board > Length::ZERO)
            else {
                continue;
            };
            let material = all.material(&build.board_name, build.board, densities.board, (&given.stock.board, false));
            bottoms::cut(&mut all, given, (index, leg), material);
        }
    }
    let under = &solved.substrate;
    for (index, leg) in solved.legs.iter().enumerate() {
        let material = all.material(&under.name, under.thickness, densities.substrate, (&given.stock.substrate, true));
        under::cut(&mut all, &solved.slabs, (index, leg), material);
    }
    all.number_substrate();
    all.tell_apart();
    all
}

impl Pieces {
    /// The index of a sheet material, added where it is new.
    fn material(
        &mut self,
        name: &str,
        thickness: Length,
        density: f64,
        (stock, under_counter): (&SheetStock, bool),
    ) -> usize {
        let same = |one: &SheetMaterial| one.name == name && one.thickness == thickness;
        if let Some(index) = self.materials.iter().position(same) {
            return index;
        }
        self.materials.push(SheetMaterial {
            name: name.to_owned(),
            thickness,
            mass: density * thickness.mm() / 1e3,
            kerf: stock.kerf,
            edge_to_edge: stock.edge_to_edge,
            turned: stock.turned,
            sizes: stock.sheets.clone(),
            offcuts: stock.offcuts.iter().map(|offcut| (offcut.name.clone(), offcut.size)).collect(),
            under_counter,
            place: stock.place.clone(),
        });
        self.materials.len() - 1
    }

    /// Adds a piece with what follows from its material and its outline.
    fn add(&mut self, piece: SheetPiece) {
        let Some(material) = self.materials.get(piece.material) else { return };
        // A bevel that leaves the inside longer takes that much more of the sheet.
        let more = |bevel: f64| Length::from_mm((-bevel.tan()).max(0.0) * material.thickness.mm());
        let width = piece.extent.width() + piece.bevels.iter().map(|bevel| more(*bevel)).sum();
        let mass = piece.region.area() * 1e-6 * material.mass;
        let fixed_way = !material.turned;
        self.pieces.push(SheetPiece { blank: (width, piece.extent.height()), mass, fixed_way, ..piece });
    }

    /// The substrate's pieces are numbered through the run: short enough to be written on the smallest.
    fn number_substrate(&mut self) {
        let mut own: Vec<&mut SheetPiece> =
            self.pieces.iter_mut().filter(|piece| piece.part == SheetPart::Substrate).collect();
        if own.len() > 1 {
            for (index, piece) in own.iter_mut().enumerate() {
                piece.mark = format!("substrate {}", index + 1);
            }
        }
    }

    /// Marks that come twice get a number.
    fn tell_apart(&mut self) {
        let mut seen = std::collections::BTreeMap::<String, usize>::new();
        for piece in &mut self.pieces {
            let count = seen.entry(piece.mark.clone()).or_default();
            *count += 1;
            if *count > 1 {
                piece.mark = format!("{}, {}", piece.mark, *count);
            }
        }
    }
}

/// A piece that has still to be given its material's facts.
fn plain(mark: String, part: SheetPart, (leg, module): (usize, Option<usize>), material: usize) -> SheetPiece {
    SheetPiece {
        mark,
        part,
        leg,
        module,
        material,
        extent: super::super::Extent { x0: Length::ZERO, y0: Length::ZERO, x1: Length::ZERO, y1: Length::ZERO },
        region: Region::default(),
        fittings: Vec::new(),
        bevels: [0.0; 2],
        blank: (Length::ZERO, Length::ZERO),
        fixed_way: false,
        mass: 0.0,
    }
}
