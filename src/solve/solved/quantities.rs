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

/// One line of what has to be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialLine {
    /// Its group.
    pub group: MaterialGroup,
    /// What.
    pub name: String,
    /// Net amount, in `unit`.
    pub net: f64,
    /// Unit of the net amount, as `ft2`.
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
}
