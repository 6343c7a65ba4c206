//! Pieces on stock: rectangles on sheets, lengths on bars, as few of them as can be.
//!
//! Knows no kitchens: whole lengths in, places out. The same request gives the same layout on any machine: every search
//! stops after a counted number of tries, never by the clock.
//!
//! A cut takes a kerf, and none is needed at a stock's edge, so that pieces and stock are both made larger by one kerf and
//! then laid side by side without gaps.
//!
//! Whether a layout has as few sheets as any is often known: a bound from below ([`bound`]) that the layout meets, or, for
//! cuts from edge to edge, a search through every way of cutting ([`exact`]). Packing heuristics alone, the general ones
//! (maximal rectangles, guillotine splits) in many orders, miss the fewest sheets of tight jobs; orders that learn which
//! pieces were left over ([`tries`]) find most of those.

mod bars;
mod bin;
mod bound;
mod cuts;
mod exact;
mod mend;
mod request;
mod sheets;
mod tries;

pub use bars::{BarCuts, bars};
pub use request::{Bought, Layout, Offcut, Part, Placement, Request, Sheet, Way};
pub use sheets::sheets;
