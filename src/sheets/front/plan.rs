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
use crate::units::{Length, Show, System};

/// Largest scale of an elevation.
const LARGEST: Scale = Scale(5);
/// Smallest that still reads; a run that needs a smaller one is split.
const SMALLEST: Scale = Scale(20);

/// Where the schedule, the notes and the key stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    /// Under the elevation, left of the title block and of the key that stands over it.
    Beside,
    /// Under the elevation, over its whole width, the key under it.
    Across,
    /// On further pages.
    Further,
}

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
    /// How the elevation's own lengths are shown.
    pub show: Show,
    /// Where the schedule stands.
    pub below: Below,
}

/// How an elevation may show lengths, the wanted way first.
fn shows(wanted: Show) -> Vec<Show> {
    match wanted.system {
        System::Both => vec![wanted, Show::new(System::Inches)],
        System::Inches | System::Millimetres => vec![wanted],
    }
}

impl<'s> Plan<'s> {
    /// Decides.
    pub fn new(set: &'s Set<'s>, kind: Kind, leg: &'s Leg, facing: Facing) -> Plan<'s> {
        let leg_index = if let Kind::Front(index, _) = kind { index } else { 0 };
        let mut plan = Plan {
            set,
            kind,
            leg,
            leg_index,
            facing,
            scale: SMALLEST,
            parts: Vec::new(),
            below: Below::Further,
            show: set.solved.show,
        };
        let canvas = Canvas::new(set.solved.paper.width, set.solved.paper.height);
        // With both units on small paper the millimetres are left to the schedule before the drawing gets too small.
        for show in shows(set.solved.show) {
            plan.show = show;
            plan.scale = plan.decide(&canvas);
            if plan.scale <= SMALLEST {
                break;
            }
        }
        plan
    }

    /// Decides parts and place of the schedule, and returns the scale: as few parts as fit at the smallest readable
    /// scale, then the largest scale at which they fit.
    fn decide(&mut self, canvas: &Canvas) -> Scale {
        let mut alone = None;
        for smallest in STANDARD.iter().copied().filter(|scale| *scale >= SMALLEST) {
            self.parts = parts(self.leg, &self.facing, self.widest(canvas, smallest));
            alone = self.best(canvas, Below::Further, smallest);
            if alone.is_some() {
                break;
            }
        }
        let limit = alone.map_or(SMALLEST, |scale| Scale((scale.0 * 2).min(SMALLEST.0).max(scale.0)));
        let near = [Below::Beside, Below::Across].map(|below| (below, self.best(canvas, below, limit)));
        let near = near.into_iter().filter_map(|(below, scale)| Some((below, scale?)));
        let together = near.min_by_key(|(below, scale)| (scale.0, *below == Below::Across));
        self.below = together.map_or(Below::Further, |(below, _)| below);
        together.map(|(_, scale)| scale).or(alone).or(STANDARD.last().copied()).unwrap_or(SMALLEST)
    }

    /// The largest scale, down to `smallest`, at which every page has room.
    fn best(&self, canvas: &Canvas, below: Below, smallest: Scale) -> Option<Scale> {
        let scales = STANDARD.iter().copied().filter(|scale| (LARGEST..=smallest).contains(scale));
        scales.into_iter().find(|scale| self.fits(canvas, *scale, below))
    }

    /// The whole leg as one part.
    pub fn whole(&self) -> Part {
        let (x0, x1) = self.facing.span(self.leg.datums.frame_left, self.leg.datums.frame_right);
        Part { modules: 0..self.leg.modules.len(), x0, x1, first: true, last: true }
    }

    /// A part on its page.
    pub fn elevation(&self, part: &Part, page: usize) -> Elevation<'s> {
        Elevation::new(self.set, self.kind, self.leg, self.facing, part.clone(), page).shown(self.show)
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

    fn fits(&self, canvas: &Canvas, scale: Scale, below: Below) -> bool {
        let inside = frame::inside(canvas);
        self.parts.iter().enumerate().all(|(page, part)| {
            let e = self.elevation(part, page);
            let Some(band) = self.band_of(canvas, &e, below) else { return false };
            e.fits(scale, inside.width(), band - 5.0 - inside.top - 8.0)
        })
    }

    /// Paper y where what stands under an elevation begins.
    pub fn band(&self, canvas: &Canvas, e: &Elevation<'_>) -> f64 {
        self.band_of(canvas, e, self.below).unwrap_or(title_block::corner(canvas).y)
    }

    /// Room for the schedule, mm.
    pub fn table_room(&self, canvas: &Canvas, below: Below) -> f64 {
        let inside = frame::inside(canvas);
        match below {
            Below::Beside => title_block::corner(canvas).x - 6.0 - inside.left,
            Below::Across | Below::Further => inside.width(),
        }
    }

    /// `None` where the schedule is wider than its room.
    fn band_of(&self, canvas: &Canvas, e: &Elevation<'_>, below: Below) -> Option<f64> {
        let inside = frame::inside(canvas);
        let corner = title_block::corner(canvas);
        if below == Below::Further {
            return Some(corner.y);
        }
        let room = self.table_room(canvas, below);
        let fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
        let table = schedule::table(self.set, self.leg, &self.facing, &fittings, room);
        if !fittings.is_empty() && (table.width() > room + 0.01 || !schedule::has_frame(&table)) {
            return None;
        }
        let table_height = if fittings.is_empty() { 0.0 } else { HEADING + table.height(table.rows.len()) + 2.0 };
        let notes = said::notes(e, true);
        let left = table_height + 4.6 + notes::list_height(&notes, corner.x - 6.0 - inside.left) - 3.0;
        let right = key::height(self.leg, &self.facing) + if below == Below::Across { table_height + 4.0 } else { 0.0 };
        Some((inside.bottom - left).min(corner.y - right))
    }

    /// What stands beside the title block when schedule and notes are on a further page: where they are.
    /// In few words where `room` mm of height take no more.
    pub fn left_notes(&self, e: &Elevation<'_>, width: f64, room: f64) -> Vec<(String, String)> {
        let sheet = e.sheet_of(self.parts.len());
        let other = self.show != self.set.solved.show;
        let mut notes = vec![
            ("Openings".to_owned(), format!("schedule, notes and key on sheet {sheet}.")),
            (
                "Caution".to_owned(),
                "local code and the fittings\u{2019} manuals govern; gas, power and water by licensed trades."
                    .to_owned(),
            ),
        ];
        if other {
            notes.insert(1, ("Millimetres".to_owned(), "stand in the schedule.".to_owned()));
        }
        if notes::list_height(&notes, width) <= room {
            return notes;
        }
        let openings = if other { "schedule in both units, key" } else { "schedule and key" };
        vec![
            ("Openings".to_owned(), format!("{openings}: sheet {sheet}.")),
            ("Caution".to_owned(), "local code, manuals, licensed trades govern.".to_owned()),
        ]
    }
}
