//! How many pages an elevation takes and at what scale: the largest at which everything stands on one page, else
//! the schedule moves on, else the run is split at module edges.

use super::elevation::Elevation;
use super::facing::Facing;
use super::key;
use super::part::{Part, parts};
use super::{HEADING, said, schedule};
use crate::sheets::canvas::Canvas;
use crate::sheets::frame;
use crate::sheets::notes;
use crate::sheets::scale::{STANDARD, Scale};
use crate::sheets::set::{Kind, Set};
use crate::sheets::title_block;
use crate::solve::{Fitting, Leg};
use crate::units::Length;

/// Largest scale of an elevation.
const LARGEST: Scale = Scale(5);
/// Smallest that still reads; a run that needs a smaller one is split.
const SMALLEST: Scale = Scale(20);

/// What was decided.
pub struct Plan<'s> {
    set: &'s Set<'s>,
    kind: Kind,
    /// The leg.
    pub leg: &'s Leg,
    /// Its index.
    pub leg_index: usize,
    /// How it is seen.
    pub facing: Facing,
    /// The scale of all its elevations.
    pub scale: Scale,
    /// A page each.
    pub parts: Vec<Part>,
    /// Schedule, notes and key stand under the elevation.
    pub under: bool,
}

impl<'s> Plan<'s> {
    /// Decides.
    pub fn new(set: &'s Set<'s>, kind: Kind, leg: &'s Leg, facing: Facing) -> Plan<'s> {
        let leg_index = if let Kind::Front(index, _) = kind { index } else { 0 };
        let mut plan = Plan { set, kind, leg, leg_index, facing, scale: SMALLEST, parts: Vec::new(), under: false };
        let canvas = Canvas::new(set.solved.paper.width, set.solved.paper.height);
        let bounded = |largest: Scale| STANDARD.iter().copied().filter(move |scale| *scale >= largest);
        // As few parts as fit at the smallest readable scale, then the largest scale at which they fit.
        plan.parts = parts(leg, &facing, plan.widest(&canvas, SMALLEST));
        let alone = bounded(LARGEST).find(|scale| plan.fits(&canvas, *scale, false));
        let together = bounded(LARGEST).find(|scale| plan.fits(&canvas, *scale, true));
        let limit = alone.map_or(SMALLEST.0, |scale| (scale.0 * 8 / 5).min(SMALLEST.0).max(scale.0));
        plan.under = together.is_some_and(|scale| scale.0 <= limit);
        let chosen = if plan.under { together } else { alone };
        plan.scale = chosen.or(STANDARD.last().copied()).unwrap_or(SMALLEST);
        plan
    }

    /// The whole leg as one part.
    pub fn whole(&self) -> Part {
        let (x0, x1) = self.facing.span(self.leg.datums.frame_left, self.leg.datums.frame_right);
        Part { modules: 0..self.leg.modules.len(), x0, x1, first: true, last: true }
    }

    fn elevation(&self, part: &Part, page: usize) -> Elevation<'s> {
        Elevation::new(self.set, self.kind, self.leg, self.facing, part.clone(), page)
    }

    /// The widest stretch of modules that has room at a scale.
    fn widest(&self, canvas: &Canvas, scale: Scale) -> Length {
        let whole = self.elevation(&self.whole(), 0);
        let width = frame::inside(canvas).width();
        let rooms = whole.rooms(scale);
        let modules = self.whole().width();
        let own = width - rooms.left - rooms.right;
        if modules.mm() * scale.factor() <= own {
            return modules;
        }
        let middle = Part { first: false, last: false, ..self.whole() };
        let rooms_between = self.elevation(&middle, 1).rooms(scale);
        let paper = width - rooms.left.max(rooms_between.left) - rooms.right.max(rooms_between.right);
        Length::from_mm(paper.max(20.0) / scale.factor())
    }

    fn fits(&self, canvas: &Canvas, scale: Scale, under: bool) -> bool {
        let inside = frame::inside(canvas);
        self.parts.iter().enumerate().all(|(page, part)| {
            let e = self.elevation(part, page);
            let Some(band) = (if under { self.band_under(canvas, &e) } else { Some(self.band_alone(canvas)) }) else {
                return false;
            };
            e.fits(scale, inside.width(), band - 5.0 - inside.top - 8.0)
        })
    }

    /// Paper y where what stands under an elevation begins.
    pub fn band(&self, canvas: &Canvas, e: &Elevation<'_>) -> f64 {
        let alone = self.band_alone(canvas);
        if self.under { self.band_under(canvas, e).unwrap_or(alone) } else { alone }
    }

    fn band_alone(&self, canvas: &Canvas) -> f64 {
        title_block::corner(canvas).y
    }

    /// `None` where the schedule is wider than what the title block leaves.
    fn band_under(&self, canvas: &Canvas, e: &Elevation<'_>) -> Option<f64> {
        let inside = frame::inside(canvas);
        let corner = title_block::corner(canvas);
        let room = corner.x - 6.0 - inside.left;
        let fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
        let table = schedule::table(self.set, self.leg, &self.facing, &fittings, room);
        if !fittings.is_empty() && table.width() > room {
            return None;
        }
        let table_height = if fittings.is_empty() { 0.0 } else { HEADING + table.height(table.rows.len()) + 2.0 };
        let left = table_height + 4.6 + notes::list_height(&said::notes(e), room) - 3.0;
        let right = key::HEIGHT + title_block::HEIGHT;
        let border = frame::border(canvas);
        Some((inside.bottom - left).min(border.bottom - right))
    }

    /// What stands beside the title block when schedule and notes are on a further page: where they are.
    pub fn left_notes(&self, e: &Elevation<'_>) -> Vec<(String, String)> {
        let sheet = e.sheet_of(self.parts.len());
        vec![
            ("Openings".to_owned(), format!("schedule, notes and key on sheet {sheet}.")),
            ("Caution".to_owned(), "local code and the fittings\u{2019} manuals govern; gas, power and water by licensed trades.".to_owned()),
        ]
    }
}
