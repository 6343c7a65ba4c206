//! One order a supplier.

/// To whom an order goes, in the order in which orders are listed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Supplier {
    /// Makes the modules and what is welded to them.
    #[default]
    FrameMaker,
    /// Sells tube, angle and feet to whoever welds the frames himself.
    Metal,
    /// Sells what is set into the run.
    Fittings,
    /// Sells board and substrate by the sheet.
    Boards,
    /// Sells screws, tape, adhesive, vents.
    Hardware,
    /// Sells mortar, veneer, tile, skim coat, sealant.
    Finish,
    /// Makes the counter.
    Counter,
    /// Sells base trim.
    Trim,
}

impl Supplier {
    /// By trade.
    pub const fn words(self) -> &'static str {
        match self {
            Supplier::FrameMaker => "frame maker",
            Supplier::Metal => "metal supplier",
            Supplier::Fittings => "fittings supplier",
            Supplier::Boards => "board merchant",
            Supplier::Hardware => "hardware supplier",
            Supplier::Finish => "finish supplier",
            Supplier::Counter => "counter fabricator",
            Supplier::Trim => "trim supplier",
        }
    }
}

/// An order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// To whom.
    pub supplier: Supplier,
    /// Its lines.
    pub lines: Vec<OrderLine>,
    /// What goes for all of its lines, one sentence each.
    pub mind: Vec<String>,
}

/// One line of an order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderLine {
    /// The mark on the drawings, where it has one; several, joined by commas, where alike things are ordered together.
    pub mark: String,
    /// How many.
    pub count: u64,
    /// What.
    pub what: String,
    /// Left or right, cutouts, sizes: what must not be got wrong.
    pub mind: Vec<String>,
    /// Mass of one, kg, where it is known.
    pub mass: Option<f64>,
    /// Fittings whose lengths this line depends on, as (leg, index).
    pub fittings: Vec<(usize, usize)>,
    /// What has to be asked before it can be ordered, as `hinge side`.
    pub missing: Vec<String>,
}

impl Order {
    /// Things ordered, over all lines.
    pub fn count(&self) -> u64 {
        self.lines.iter().map(|line| line.count).sum()
    }

    /// Mass of all things whose mass is known, kg, and how many things that leaves out.
    pub fn mass(&self) -> (f64, u64) {
        self.lines.iter().fold((0.0, 0), |(mass, unknown), line| match line.mass {
            Some(one) => (mass + one * line.count as f64, unknown),
            None => (mass, unknown + line.count),
        })
    }
}
