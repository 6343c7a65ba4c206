//! One flat face of a solid.

use super::space::{Place, Pose};
use crate::drawing::Colour;
use crate::sheets::client::patch::{Patch, Spot};

/// What a face is painted with. Numbers are places in the model's lists.
#[derive(Clone, Debug, PartialEq)]
pub enum Skin {
    /// A clad face of a leg, its base and open holes (scene).
    Clad(usize),
    /// A front that stands proud (scene, front).
    Front(usize, usize),
    /// What hangs in a notch (scene, front).
    Fascia(usize, usize),
    /// A hood as its cook sees it, or plain from the other side (scene, leg's fitting, from behind).
    Hood(usize, usize, bool),
    /// A low lid (scene, leg's fitting).
    Lid(usize, usize),
    /// A tap, turned to the right (1) or left (-1).
    Tap(f64),
    /// The counter's finished edge.
    Edge(f64),
    /// The counter from above.
    Top,
    /// An upstand: the height of the face.
    Upstand(f64),
    /// Plain metal.
    Metal,
    /// A rendered or built wall behind the run.
    Wall,
    /// A wall cut through.
    Cut,
    /// Paving.
    Paving,
    /// The edge of the paving.
    Ground,
    /// One tone.
    Flat(Colour),
}

impl Skin {
    /// Whether it is of a fitting.
    pub const fn is_fitting(&self) -> bool {
        matches!(self, Skin::Front(..) | Skin::Fascia(..) | Skin::Hood(..) | Skin::Lid(..) | Skin::Tap(_) | Skin::Metal)
    }
}

/// A flat face, seen from one side only.
#[derive(Clone, Debug)]
pub struct Facet {
    /// What it is, for whoever checks the drawing.
    pub name: String,
    /// The thing that it belongs to: things don't throw shadows on themselves.
    pub solid: usize,
    /// The leg that it is of, if it is of one alone.
    pub leg: Option<usize>,
    /// Where it lies.
    pub pose: Pose,
    /// Its outline in its own frame.
    pub patch: Patch,
    /// What it is painted with.
    pub skin: Skin,
    /// Its outlines that are drawn.
    pub lines: Vec<[Spot; 2]>,
    /// Its outlines over which a bent face goes on: drawn only where the bend turns out of sight.
    pub bends: Vec<[Spot; 2]>,
    /// Width of the widest of them, mm of paper.
    pub pen: f64,
}

impl Facet {
    /// Its outlines in space, and whether a bent face goes on over them.
    pub fn edges(&self) -> impl Iterator<Item = (Place, Place, bool)> + '_ {
        let own = |bend: bool| move |[a, b]: &[Spot; 2]| (self.pose.place(*a), self.pose.place(*b), bend);
        self.lines.iter().map(own(false)).chain(self.bends.iter().map(own(true)))
    }
}
