//! What has to be bought.

/// The trade's group that a line is bought in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MaterialGroup {
    /// Tube, angle, feet.
    Metal,
    /// Cement board and substrate.
    Board,
    /// Screws, tape, adhesive.
    Hardware,
    /// Thin-set, skim coat, veneer, tile, paint, sealant.
    Finish,
    /// Counter concrete or slab.
    Counter,
    /// Base trim.
    Trim,
    /// Vents and what else is bought to be set in.
    Vent,
}

impl MaterialGroup {
    /// Every group, in the order in which a run is built.
    pub const ALL: [MaterialGroup; 7] = [
        MaterialGroup::Metal,
        MaterialGroup::Board,
        MaterialGroup::Hardware,
        MaterialGroup::Finish,
        MaterialGroup::Counter,
        MaterialGroup::Trim,
        MaterialGroup::Vent,
    ];

    /// As a heading.
    pub const fn words(self) -> &'static str {
        match self {
            MaterialGroup::Metal => "Metal",
            MaterialGroup::Board => "Board and substrate",
            MaterialGroup::Hardware => "Screws, tape, adhesive",
            MaterialGroup::Finish => "Finish and sealant",
            MaterialGroup::Counter => "Counter",
            MaterialGroup::Trim => "Base trim",
            MaterialGroup::Vent => "Vents",
        }
    }
}

/// One line of what has to be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialLine {
    /// Its group.
    pub group: MaterialGroup,
    /// What.
    pub name: String,
    /// Net amount, in `unit`.
    pub net: f64,
    /// Unit of the net amount in the job's units, as `sq ft`; empty for a plain count.
    pub unit: String,
    /// Added for waste, as a share: 0.1 is a tenth.
    pub waste: f64,
    /// What it is bought in, as `bag of 50 lb`.
    pub order_unit: String,
    /// How many to buy.
    pub count: u64,
    /// How the count was worked out, in one line of figures.
    pub how: String,
    /// Where the coverage or spacing comes from.
    pub origin: String,
    /// What the net amount is the sum of, where it is of several: what, and how much in `unit`.
    pub parts: Vec<(String, f64)>,
}
