//! A sheet over several legs on a page: at which scale, where, and what is left beside it.

use crate::geometry::{LegPoint, PaperPoint, Plan, PlanPoint, Region};
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::{self, Area};
use crate::sheets::scale::{STANDARD, Scale};
use crate::sheets::set::{Kind, Set};
use crate::sheets::view::View;
use crate::sheets::{marks, title_block};
use crate::solve::{Cutout, Edge, Fitting, Leg, Plane, SheetPart, SheetPiece, Slab};

/// White beside the outline, and over and under it, for dimensions, tags and walls, mm.
const MARGIN: (f64, f64) = (31.0, 26.0);
/// Height of the view's heading, mm.
const HEADING: f64 = 9.0;
/// Least width of a column of lists beside the outline, mm.
const COLUMN: f64 = 92.0;
/// White between the outline's margin and lists, mm.
const GUTTER: f64 = 4.0;

/// The counter or the substrate over several legs, from above, in the coordinates of its first leg.
pub struct Joined<'s> {
    /// The set.
    pub set: &'s Set<'s>,
    /// The sheet.
    pub kind: Kind,
    /// The counter over the legs.
    pub slab: &'s Slab,
    /// Counter or substrate.
    pub plane: Plane,
    /// Where it is drawn.
    pub view: View<Plan>,
    /// The outline with the white round it, on the page: nothing of the view leaves it.
    pub area: Area,
}

/// A piece, with the leg whose coordinates it is in.
pub struct Shown<'s> {
    /// Its leg.
    pub leg: usize,
    /// Its name.
    pub name: String,
    /// Its outline and holes.
    pub region: &'s Region,
    /// Its edges.
    pub edges: &'s [Edge],
    /// Mass, kg, where it is known.
    pub mass: Option<f64>,
}

impl<'s> Joined<'s> {
    /// Its whole outline.
    pub fn region(&self) -> &'s Region {
        if self.plane == Plane::Substrate { &self.slab.substrate } else { &self.slab.region }
    }

    /// The legs with their index.
    pub fn legs(&self) -> impl Iterator<Item = (usize, &'s Leg)> + use<'s> {
        let (legs, all) = (&self.slab.legs, &self.set.solved.legs);
        legs.iter().filter_map(move |&leg| Some((leg, all.get(leg)?)))
    }

    /// A leg's point on the sheet, mm.
    pub fn at(&self, leg: usize, u: f64, v: f64) -> PaperPoint {
        self.view.point(self.home(leg, u, v))
    }

    /// A leg's point in the coordinates of the first leg.
    pub fn home(&self, leg: usize, u: f64, v: f64) -> PlanPoint {
        let legs = &self.set.solved.legs;
        let first = legs[self.slab.legs.first().copied().unwrap_or(0)].placement;
        let p = first.to_leg(legs[leg].placement.to_plan(LegPoint::new(u, v)));
        PlanPoint::new(p.x, p.y)
    }

    /// A point of the first leg's coordinates in another leg's.
    pub fn in_leg(&self, leg: usize, x: f64, y: f64) -> LegPoint {
        let legs = &self.set.solved.legs;
        let first = legs[self.slab.legs.first().copied().unwrap_or(0)].placement;
        legs[leg].placement.to_leg(first.to_plan(LegPoint::new(x, y)))
    }

    /// The pieces, left to right.
    pub fn pieces(&self) -> Vec<Shown<'s>> {
        let legs = &self.set.solved.legs;
        if self.plane == Plane::Substrate {
            // By the marks of lists, labels and the cutting sheet: a leg's pieces come in the same order there.
            let name = |number: usize| {
                let before = &self.slab.sheets[..number];
                let leg = self.slab.sheets[number].leg;
                let nth = before.iter().filter(|under| under.leg == leg).count();
                let own = |piece: &&SheetPiece| piece.part == SheetPart::Substrate && piece.leg == leg;
                let mark = self.set.solved.shop.pieces.iter().filter(own).nth(nth).map(|piece| piece.mark.as_str());
                let mark = mark.map_or_else(|| format!("sheet {}", number + 1), str::to_owned);
                mark.chars().take(1).flat_map(char::to_uppercase).chain(mark.chars().skip(1)).collect()
            };
            let shown = |(number, under): (usize, &'s crate::solve::Under)| Shown {
                leg: under.leg,
                name: name(number),
                region: &under.region,
                edges: &under.edges,
                mass: None,
            };
            return self.slab.sheets.iter().enumerate().map(shown).collect();
        }
        let piece = |(leg, index, _): &(usize, usize, Vec<usize>)| {
            let piece = legs[*leg].counter.pieces.get(*index)?;
            let (name, mass) = (piece.name.clone(), Some(piece.mass));
            Some(Shown { leg: *leg, name, region: &piece.region, edges: &piece.edges, mass })
        };
        self.slab.pieces.iter().filter_map(piece).collect()
    }

    /// Every cutout with its leg.
    pub fn cutouts(&self) -> Vec<(usize, &'s Fitting, &'s Cutout)> {
        let plane = self.plane;
        let of = |(index, leg): (usize, &'s Leg)| {
            leg.fittings.iter().filter_map(move |f| Some((index, f, f.cutout(plane)?)))
        };
        self.legs().flat_map(of).collect()
    }
}

/// Where the outline goes on a page, and what is left of it.
struct Place {
    scale: Scale,
    /// Lower left corner of the outline on the sheet.
    corner: PaperPoint,
    areas: Vec<(Area, bool)>,
}

/// Opens a page with the outline placed on it; `over` is the height of what stands on the title block, mm. What is left
/// of the page is given back.
pub fn open<'s>(
    set: &'s Set<'s>,
    kind: Kind,
    slab: &'s Slab,
    plane: Plane,
    over: f64,
    title: &str,
) -> (Canvas, Joined<'s>, Vec<(Area, bool)>) {
    let mut canvas = set.sheet();
    let region = if plane == Plane::Substrate { &slab.substrate } else { &slab.region };
    let (x0, y0, x1, y1) = region.outer.bounds();
    let place = place(&canvas, (x1 - x0, y1 - y0), over);
    let factor = place.scale.factor();
    let origin = place.corner.moved(-x0 * factor, y0 * factor);
    let inside = frame::inside(&canvas);
    let y = inside.top + 3.5;
    let end = title_block::heading(&mut canvas, inside.left, y, title, &place.scale.words());
    let view = View::open(&mut canvas, plane.word(), place.scale, origin);
    if inside.right - end > 90.0 {
        let bar = canvas.layer(view.layer, "scale-bar");
        marks::scale_bar(&mut canvas, bar, inside.right - 3.0, y + 1.0, place.scale, set.solved.show.system);
    }
    let (low, high) = (place.corner, place.corner.moved((x1 - x0) * factor, (y0 - y1) * factor));
    let area =
        Area { left: low.x - MARGIN.0, right: high.x + MARGIN.0, top: high.y - MARGIN.1, bottom: low.y + MARGIN.1 };
    (canvas, Joined { set, kind, slab, plane, view, area }, place.areas)
}

/// The largest scale at which an outline of a size (model mm) has its place: over the title block, or beside it.
fn place(canvas: &Canvas, size: (f64, f64), over: f64) -> Place {
    let (inside, block) = (frame::inside(canvas), title_block::corner(canvas));
    let (top, floor) = (inside.top + HEADING, block.y - over - GUTTER);
    let around = |scale: &Scale| (size.0 * scale.factor() + 2.0 * MARGIN.0, size.1 * scale.factor() + 2.0 * MARGIN.1);
    let high = |wide: f64| if inside.left + wide <= block.x - GUTTER { inside.bottom } else { floor };
    let fits = |scale: &&Scale| {
        let (wide, tall) = around(scale);
        wide <= inside.width() && (top + tall <= floor || top + tall <= high(wide))
    };
    let scale = STANDARD.iter().filter(|scale| scale.0 >= 4).find(fits).copied();
    let scale = scale.unwrap_or_else(|| STANDARD.last().copied().unwrap_or(Scale(100)));
    let (wide, tall) = around(&scale);
    let left = top + tall > floor;
    let spare = inside.width() - wide;
    let beside = spare >= COLUMN + GUTTER;
    let start = if left || !beside {
        inside.left + if beside { 0.0 } else { (spare / 2.0).max(0.0) }
    } else {
        inside.right - wide
    };
    let bottom = top + tall;
    let mut areas = Vec::new();
    let area = |left: f64, top: f64, right: f64, bottom: f64| Area { left, top, right, bottom };
    if left {
        if beside {
            areas.push((area(start + wide + GUTTER, top + 3.0, inside.right, floor), true));
        }
        areas.push((area(inside.left, bottom + GUTTER, block.x - 6.0, inside.bottom), false));
    } else if beside {
        areas.push((area(inside.left, top + 3.0, start - GUTTER, inside.bottom.min(bottom)), false));
        areas.push((area(inside.left, bottom + GUTTER, block.x - 6.0, inside.bottom), false));
        areas.push((area(block.x + 1.8, bottom + GUTTER, inside.right, floor), true));
    } else {
        areas.push((area(inside.left, bottom + GUTTER, block.x - 6.0, inside.bottom), false));
        areas.push((area(block.x + 1.8, bottom + GUTTER, inside.right, floor), true));
    }
    areas.retain(|(area, _)| area.width() > 40.0 && area.height() > 12.0);
    let corner = PaperPoint::new(start + MARGIN.0, bottom - MARGIN.1);
    Place { scale, corner, areas }
}
