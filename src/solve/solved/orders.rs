//! One order a supplier.

/// An order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// To whom, by trade: `frame maker`, `board merchant`.
    pub supplier: String,
    /// Its lines.
    pub lines: Vec<OrderLine>,
}

/// One line of an order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderLine {
    /// The mark on the drawings, where it has one.
    pub mark: String,
    /// How many.
    pub count: u64,
    /// What.
    pub what: String,
    /// Left or right, cutouts, sizes: what must not be got wrong.
    pub mind: String,
}
