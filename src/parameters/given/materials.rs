//! Figures by which materials are weighed and bought: densities, spacings, coverages, containers, waste.

use crate::units::{Exact, reading};

/// A figure with what a job may call it, what it is taken to be where the job is silent, and where that comes from.
pub struct Known {
    /// The figure.
    pub figure: Figure,
    /// As a job writes it under `materials`.
    pub name: &'static str,
    /// What it is taken to be; of a figure without an origin only an example of how to write it.
    pub value: &'static str,
    /// Where the value comes from; empty where there is none, and lines that need it are worked out otherwise.
    pub origin: &'static str,
}

/// The figures of a job, in the order of [`FIGURES`].
#[derive(Clone, Debug, Default)]
pub struct Materials {
    /// Each figure's worth, `None` where the job doesn't give it and nothing is assumed.
    pub worth: Vec<Option<Worth>>,
}

/// What one figure is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    /// Without rounding, in nanometres to its power or as a plain number; zero for masses.
    pub exact: Exact,
    /// In SI units.
    pub si: f64,
    /// As written.
    pub text: String,
    /// The job gives it.
    pub given: bool,
}

impl Materials {
    /// The figures of a job that gives none.
    pub fn assumed() -> Materials {
        let worth = |known: &Known| {
            let quantity = reading::quantity(known.value).ok().filter(|_| !known.origin.is_empty())?;
            let exact = Exact::read(known.value).unwrap_or_else(|| Exact::of(quantity));
            Some(Worth { exact, si: quantity.si(), text: known.value.to_owned(), given: false })
        };
        Materials { worth: FIGURES.iter().map(worth).collect() }
    }

    /// What a figure is worth, if it is worth anything.
    pub fn worth(&self, figure: Figure) -> Option<&Worth> {
        self.worth.get(figure as usize)?.as_ref()
    }

    /// A figure in SI units; nothing where it has no worth.
    pub fn si(&self, figure: Figure) -> f64 {
        self.worth(figure).map_or(0.0, |worth| worth.si)
    }

    /// A figure without rounding; nothing where it has no worth.
    pub fn exact(&self, figure: Figure) -> Exact {
        self.worth(figure).map_or_else(Exact::zero, |worth| worth.exact.clone())
    }
}

const PRACTICE: &str = "common practice";
const MEMORY: &str = "from memory, verify";
const JOINT_PAGE: &str = "a trade page: 8 in on walls and counters, 3/8 to 5/8 in from edges";
const TUBES: &str = "a sealant supplier's table of cartridges";

/// Names the figures once: in the enumeration, and in the table beside their values.
macro_rules! figures {
    ($($figure:ident, $name:literal, $value:literal, $origin:expr, $about:literal;)*) => {
        /// One figure.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Figure {
            $(#[doc = $about] $figure,)*
        }

        /// Every figure, in the order of [`Figure`].
        pub const FIGURES: &[Known] =
            &[$(Known { figure: Figure::$figure, name: $name, value: $value, origin: $origin },)*];
    };
}

figures! {
    Steel, "density.steel", "490 lb/ft3", "computed: 3.40 lb/ft for each square inch of section", "Steel.";
    Aluminium, "density.aluminium", "170 lb/ft3", "computed: 1.18 lb/ft for each square inch of section", "Aluminium.";
    Wood, "density.wood", "34 lb/ft3", MEMORY, "Wood of frames and trim.";
    Board, "density.board", "69.6 lb/ft3", "a cement board maker: 2.9 lb/ft2 at 1/2 in", "Cement board.";
    Plywood, "density.plywood", "36 lb/ft3", MEMORY, "Plywood.";
    TwoLift, "lift.two", "100 lb", "from memory, verify: 100 to 150 lb, of which the lower", "What two people lift.";
    ScrewSpacing, "screws.spacing", "8 in", JOINT_PAGE, "Between screws along a tube.";
    ScrewEdge, "screws.edge", "1/2 in", JOINT_PAGE, "From a board's edge to its first screw.";
    ScrewSpare, "screws.spare", "10 %", PRACTICE, "Screws dropped and stripped.";
    ScrewBox, "screws.box", "100", MEMORY, "Screws in a box.";
    TapeRoll, "tape.roll", "150 ft", MEMORY, "Joint tape on a roll.";
    TapeWaste, "tape.waste", "10 %", PRACTICE, "Laps and ends of tape.";
    TapeBed, "tape.bed", "1/16 in", PRACTICE, "Mortar that joint tape lies in.";
    TapeBand, "tape.band", "6 in", PRACTICE, "Width that the mortar over joint tape is feathered to.";
    MeshWidth, "mesh.width", "38 in", MEMORY, "Width of reinforcing mesh.";
    MeshRoll, "mesh.roll", "150 ft", MEMORY, "Mesh on a roll.";
    MeshLap, "mesh.lap", "2 1/2 in", "a bulletin on exterior finish systems: laps of at least 2 1/2 in", "Lap of mesh.";
    MortarBag, "mortar.bag", "50 lb", PRACTICE, "A bag of polymer-modified mortar.";
    MortarYield, "mortar.yield", "0.45 ft3", MEMORY, "Mortar that a bag makes.";
    MortarWaste, "mortar.waste", "15 %", PRACTICE, "Mortar left in buckets and squeezed out.";
    MortarKey, "mortar.key", "1/8 in", PRACTICE, "Bed of a finish whose bed isn't given.";
    SkimBag, "skim.bag", "50 lb", PRACTICE, "A bag of skim coat.";
    SkimYield, "skim.yield", "0.45 ft3", MEMORY, "Skim coat that a bag makes.";
    SkimWaste, "skim.waste", "15 %", PRACTICE, "Skim coat left in buckets.";
    VeneerWaste, "veneer.waste", "10 %", PRACTICE, "Veneer lost in cutting and picking.";
    VeneerCorner, "veneer.corner", "9 in", MEMORY, "Face that a run of corner pieces covers, both returns together.";
    VeneerBox, "veneer.box", "10 ft2", "", "Flat pieces in a box.";
    VeneerCornerBox, "veneer.corner_box", "8 ft", "", "Corner pieces in a box, as a length of corner.";
    TileWaste, "tile.waste", "10 %", PRACTICE, "Tile lost in cutting.";
    TileBox, "tile.box", "10 ft2", "", "Tile in a box.";
    GroutBag, "grout.bag", "25 lb", MEMORY, "A bag of grout.";
    GroutYield, "grout.yield", "0.21 ft3", MEMORY, "Grout that a bag makes.";
    GroutWaste, "grout.waste", "15 %", PRACTICE, "Grout washed off.";
    Cartridge, "sealant.cartridge", "18.3 in3", TUBES, "Sealant in a cartridge of 10.1 fl oz.";
    SealantBead, "sealant.bead", "1/4 in", PRACTICE, "Bead round fittings and along changes of plane.";
    SealantDepth, "sealant.depth", "1/4 in", PRACTICE, "Depth of sealant in a joint, over its backing.";
    SealantWaste, "sealant.waste", "15 %", PRACTICE, "Sealant left in nozzles and tooled off.";
    MovementJoint, "sealant.movement", "3/8 in", "a tile council's guide: 3/8 in at 8 ft", "Movement joint in a finish.";
    AdhesiveCartridge, "adhesive.cartridge", "48.7 in3", TUBES, "Adhesive in a cartridge of 27 fl oz.";
    AdhesiveBead, "adhesive.bead", "1/4 in", PRACTICE, "Bead of adhesive under the counter.";
    AdhesiveSpacing, "adhesive.spacing", "12 in", PRACTICE, "Between beads under the counter.";
    AdhesiveWaste, "adhesive.waste", "10 %", PRACTICE, "Adhesive left in cartridges.";
    SealerCoats, "sealer.coats", "2", PRACTICE, "Coats of sealer.";
    SealerSmooth, "sealer.smooth", "350 ft2/gal", "paint pages: 350 to 400 on smooth", "A coat on a smooth face.";
    SealerRough, "sealer.rough", "75 ft2/gal", "paint pages: 75 to 150 on rough masonry", "A coat on a rough face.";
    SealerWaste, "sealer.waste", "5 %", PRACTICE, "Sealer left in rollers and trays.";
    PaintCoats, "paint.coats", "0", "none: the frame is taken to be galvanised or delivered painted", "Coats of paint on the frame.";
    PaintCoverage, "paint.coverage", "350 ft2/gal", "paint pages: 350 to 400 on smooth", "A coat of paint on tubes.";
    ConcreteBag, "concrete.bag", "80 lb", PRACTICE, "A bag of concrete.";
    ConcreteYield, "concrete.yield", "0.6 ft3", PRACTICE, "Concrete that a bag makes.";
    ConcreteWaste, "concrete.waste", "10 %", PRACTICE, "Concrete left in the mixer and spilt.";
    SlabLength, "slab.length", "120 in", "trade pages: 108 to 120 in usual, porcelain 126", "Usable length of a slab.";
    SlabWidth, "slab.width", "63 in", "trade pages: 54 to 72 in usual, porcelain 63", "Usable width of a slab.";
    SlabKerf, "slab.kerf", "1/8 in", "shops' layouts: 1/8 in between pieces", "Between pieces cut from one slab.";
    SheetWaste, "board.waste", "12 %", PRACTICE, "Board lost in cutting, where no layout is made.";
    TubeWaste, "tube.waste", "5 %", PRACTICE, "Tube lost in cutting, where no layout is made.";
    TrimWaste, "trim.waste", "10 %", PRACTICE, "Trim lost in mitres and scribing.";
}
