//! A drop from the counter's top to an edge below it: its facts for whoever reads the file, and the lines that carry them.

use crate::drawing::{Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::view::{View, number};
use crate::solve::Datum;
use crate::units::{Length, Show};

/// Half the length of its witness lines, mm.
const HALF: f64 = 2.0;

/// One drop.
pub struct Drop {
    /// Where its line stands, in the view's x.
    pub x: Length,
    /// The counter's top.
    pub top: Length,
    /// The edge.
    pub z: Length,
    /// The edge by name, as `A1 top edge`.
    pub to: String,
}

impl Drop {
    /// The group of one drop, in which its lettering goes. The edges themselves are there and one line may serve several
    /// drops, so that these lines are not seen: they carry facts only.
    pub fn group<S>(self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show) -> Layer {
        let point = |z: Length| format!("{},{}", number(self.x.mm(), 6), number(z.mm(), 6));
        let facts = vec![
            ("data-dim", format!("d{}", canvas.next_number())),
            ("data-dim-mm", number((self.top - self.z).mm(), 6)),
            ("data-from", point(self.top)),
            ("data-to", point(self.z)),
            ("data-axis", "y".to_owned()),
            ("data-round-mm", number(show.step().mm(), 6)),
            ("data-from-datum", Datum::CounterTop.words().to_owned()),
            ("data-to-datum", self.to),
        ];
        let group = canvas.layer_with(at, "dim", facts);
        let (x, from, to) = (view.x(self.x), view.y(self.top), view.y(self.z));
        let p = PaperPoint::new;
        for (y, end) in [(from, "from"), (to, "to")] {
            let facts = vec![("data-role", "witness".to_owned()), ("data-end", end.to_owned())];
            canvas.shape(group, Shape::Line(p(x - HALF, y), p(x + HALF, y)), Paint::pen(Pen::GHOST), "", facts);
        }
        let facts = vec![("data-role", "dimline".to_owned())];
        canvas.shape(group, Shape::Line(p(x, from), p(x, to)), Paint::pen(Pen::GHOST), "", facts);
        group
    }
}
