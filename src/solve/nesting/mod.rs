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
//!
//! Why it is written here: on the ten sheet cases of `tests/reference/nesting.json`, three seeds each, the well-kept genetic
//! packing library that was measured lay one sheet over the proven count in two or three cases of cuts from edge to edge and
//! in one or two of any cuts, which ones by its seed (0.02 s a case); the heuristics of another in one, in the one layout of
//! 60 pieces that was tried. This search reaches all of them.

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
