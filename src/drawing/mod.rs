//! A finished page: items in paper millimetres, pens, lettering. Knows nothing of kitchens, and nothing of
//! files or formats.

pub mod clash;
mod curves;
pub mod cutting;
mod grid;
pub mod lettering;
mod listing;
mod page;
pub mod pen;

pub use grid::{Grid, GridCell};
pub use listing::{Holds, Listing, ListingColumn, Value};
pub use page::{Fact, Fill, Group, Item, Page, Path, Run, Shape, Step, Text};
pub use pen::{Cap, Colour, Dash, Pen};
