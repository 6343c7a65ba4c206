//! The set of sheets of a job: which there are, in what order, and how they are numbered.

use std::collections::BTreeMap;

use super::canvas::{Canvas, Layer, Paint};
use super::title_block::{self, TitleBlock};
use super::{frame, marks};
use crate::drawing::lettering::{self, Style, TITLE, Weight};
use crate::drawing::{Colour, Fill, Page};
use crate::findings::{Finding, Severity, Subject};
use crate::geometry::PaperPoint;
use crate::solve::{Face, Solved};

/// Which sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// The finished run for the client, one long face of a leg.
    Client(usize, Face),
    /// The whole run for the client, in parallel projection.
    Axonometric,
    /// The plan of all legs.
    Plan,
    /// Construction elevation of a leg's long face.
    Front(usize, Face),
    /// The two ends of a leg.
    Ends(usize),
    /// Section of a leg at a fitting (by index) that is cut into the counter.
    Section(usize, usize),
    /// Substrate template of a leg.
    Substrate(usize),
    /// Board templates of a leg.
    Boards(usize),
    /// Counter sheet of a leg.
    Counter(usize),
    /// What is added to the frames to carry counters and fittings.
    Supports,
    /// The feet and the floor of the whole run.
    Levelling,
    /// What is cut from which stock sheet and bar.
    Cutting,
    /// The base trim of the whole run.
    Trim,
    /// Services and safety, for a permit.
    Permit,
    /// Schedules of the job.
    Schedules,
    /// What has to be bought.
    Materials,
    /// What things weigh, and who lifts them.
    Weights,
    /// What to measure twice.
    MeasureTwice,
    /// What is done before what.
    Sequence,
    /// One order a supplier.
    Orders,
    /// Labels to stick on modules and pieces.
    Labels,
}

impl Kind {
    /// The leg that it shows; `None` for sheets of the whole job.
    pub const fn leg(self) -> Option<usize> {
        match self {
            Kind::Client(leg, _) | Kind::Front(leg, _) | Kind::Ends(leg) | Kind::Section(leg, _) => Some(leg),
            Kind::Substrate(leg) | Kind::Boards(leg) | Kind::Counter(leg) => Some(leg),
            Kind::Axonometric
            | Kind::Plan
            | Kind::Supports
            | Kind::Levelling
            | Kind::Cutting
            | Kind::Trim
            | Kind::Permit => None,
            Kind::Schedules | Kind::MeasureTwice | Kind::Sequence | Kind::Orders | Kind::Labels => None,
            Kind::Materials | Kind::Weights => None,
        }
    }

    /// The word that `--sheet` takes.
    pub const fn word(self) -> &'static str {
        match self {
            Kind::Client(..) => "client",
            Kind::Axonometric => "axonometric",
            Kind::Plan => "plan",
            Kind::Front(..) => "front",
            Kind::Ends(..) => "ends",
            Kind::Section(..) => "section",
            Kind::Substrate(..) => "substrate",
            Kind::Boards(..) => "boards",
            Kind::Counter(..) => "counter",
            Kind::Supports => "supports",
            Kind::Levelling => "levelling",
            Kind::Cutting => "cutting",
            Kind::Trim => "trim",
            Kind::Permit => "permit",
            Kind::Schedules => "schedules",
            Kind::Materials => "materials",
            Kind::Weights => "weights",
            Kind::MeasureTwice => "measure-twice",
            Kind::Sequence => "sequence",
            Kind::Orders => "orders",
            Kind::Labels => "labels",
        }
    }

    /// Every word that `--sheet` takes.
    pub const WORDS: &'static [&'static str] = &[
        "client",
        "axonometric",
        "plan",
        "front",
        "ends",
        "section",
        "substrate",
        "boards",
        "counter",
        "supports",
        "levelling",
        "cutting",
        "trim",
        "permit",
        "schedules",
        "materials",
        "weights",
        "measure-twice",
        "sequence",
        "orders",
        "labels",
    ];
}

/// Everything that a sheet is drawn from.
pub struct Set<'s> {
    /// The solved run.
    pub solved: &'s Solved,
    /// What the rules found, in the order that their numbers on sheets follow.
    pub findings: &'s [Finding],
    /// The kinds of sheet in order.
    pub kinds: Vec<Kind>,
    /// How many pages each kind takes where it is not one.
    pub pages: BTreeMap<Kind, usize>,
}

/// A sheet that can't be drawn without something running into something else.
#[derive(Clone, Debug, PartialEq)]
pub struct Unplaced {
    /// The sheet.
    pub sheet: String,
    /// What could not be placed, and against what.
    pub what: Vec<String>,
}

impl<'s> Set<'s> {
    /// Number of the first page of a kind, from 1; `None` when the set has none.
    pub fn number(&self, kind: Kind) -> Option<usize> {
        let before = self.kinds.iter().take_while(|other| **other != kind);
        self.kinds.contains(&kind).then(|| 1 + before.map(|other| self.page_count(*other)).sum::<usize>())
    }

    /// Pages of a kind.
    pub fn page_count(&self, kind: Kind) -> usize {
        self.pages.get(&kind).copied().unwrap_or(1)
    }

    /// Pages of the set.
    pub fn total(&self) -> usize {
        self.kinds.iter().map(|kind| self.page_count(*kind)).sum()
    }

    /// The letter of a section, the same wherever the set shows where it is cut: from the end of the alphabet, since
    /// modules begin at its start. `None` for kinds that are no section of this set.
    pub fn section_letter(&self, kind: Kind) -> Option<String> {
        let sections: Vec<&Kind> = self.kinds.iter().filter(|kind| matches!(kind, Kind::Section(..))).collect();
        let index = sections.iter().position(|section| **section == kind)?;
        let first = match sections.len() {
            0..=3 => b'X',
            4..=9 => b'R',
            _ => return Some(format!("S{}", index + 1)),
        };
        Some(char::from(first + index as u8).to_string())
    }

    /// An empty sheet of the job's paper with its border.
    pub fn sheet(&self) -> Canvas {
        let mut canvas = Canvas::new(self.solved.paper.width, self.solved.paper.height);
        frame::draw(&mut canvas);
        canvas
    }

    /// The fields of a title block that are the same on every sheet, with the number of page `page` (from 0) of a kind.
    pub fn title_block(&self, kind: Kind, page: usize) -> TitleBlock {
        let job = &self.solved.job;
        let number = self.number(kind).unwrap_or(1) + page;
        let or = |text: &str, other: &str| if text.trim().is_empty() { other.to_owned() } else { text.to_owned() };
        TitleBlock {
            owner: or(&job.owner, "\u{2013}"),
            drawn_by: or(&job.drawn_by, "\u{2013}"),
            approved_by: or(&job.approved_by, "not yet"),
            status: if self.stops(kind) { "Not for cutting".to_owned() } else { "For review".to_owned() },
            subtitle: job.title.clone(),
            number: format!("{}-{number:02}", or(&job.number, "0")),
            units: self.solved.show.caption(),
            paper: self.solved.paper.name.clone(),
            revision: job.revisions.last().map_or_else(|| "\u{2013}".to_owned(), |r| r.mark.clone()),
            date: job.date.clone(),
            sheet: format!("{number} / {}", self.total()),
            ..TitleBlock::default()
        }
    }

    /// Findings that concern a kind of sheet, with their numbers from 1.
    pub fn concerning(&self, kind: Kind) -> Vec<(usize, &'s Finding)> {
        let concerns = |subject: &Subject| match (kind, subject) {
            (Kind::Schedules | Kind::MeasureTwice | Kind::Plan, _) => true,
            (Kind::Labels, _) => false,
            (_, Subject::Job) => true,
            (Kind::Sequence | Kind::Orders, _) => true,
            (Kind::Levelling, Subject::Foot(..) | Subject::Leg(_)) | (Kind::Trim, Subject::Leg(_)) => true,
            (Kind::Supports | Kind::Cutting, _) => !matches!(subject, Subject::Counter(_) | Subject::Foot(..)),
            (Kind::Levelling | Kind::Trim, _) => false,
            (Kind::Permit, Subject::Counter(_) | Subject::Foot(..)) => false,
            (Kind::Permit, _) => true,
            (Kind::Section(leg, fitting), Subject::Fitting(..)) => *subject == Subject::Fitting(leg, fitting),
            (Kind::Section(..) | Kind::Client(..), Subject::Foot(..)) => false,
            (Kind::Counter(_) | Kind::Substrate(_) | Kind::Boards(_), Subject::Foot(..)) => false,
            _ => kind.leg() == subject.leg(),
        };
        let numbered = self.findings.iter().enumerate().map(|(index, finding)| (index + 1, finding));
        numbered.filter(|(_, finding)| concerns(&finding.subject)).collect()
    }

    /// Whether a finding that stops concerns a kind of sheet.
    pub fn stops(&self, kind: Kind) -> bool {
        self.concerning(kind).iter().any(|(_, finding)| finding.severity == Severity::Stop)
    }

    /// Closes a sheet: title block, stamp, and the page.
    pub fn finish(&self, mut canvas: Canvas, kind: Kind, page: usize, block: &TitleBlock) -> Page {
        title_block::draw(&mut canvas, block);
        self.stamp(&mut canvas, kind);
        let number = self.number(kind).unwrap_or(1) + page;
        let name = format!("{number:02}-{}", slug(kind, self.solved, page));
        let title = format!("{}, {}", block.title, self.solved.job.title);
        let remarks = self.concerning(kind).iter().map(|(number, _)| *number).collect();
        Page { remarks, ..canvas.finish(name, title) }
    }

    /// A black band in the upper margin of a sheet that must not be cut from.
    fn stamp(&self, canvas: &mut Canvas, kind: Kind) {
        let stops: Vec<String> = self
            .concerning(kind)
            .iter()
            .filter(|(_, finding)| finding.severity == Severity::Stop)
            .map(|(number, finding)| format!("{number} {}", finding.rule))
            .collect();
        if stops.is_empty() {
            return;
        }
        let layer = canvas.layer(Canvas::ROOT, "stamp");
        let text = format!("NOT FOR CUTTING   stopped by finding {}", stops.join(", "));
        let style = Style::body().bold().sized(TITLE).coloured(Colour::WHITE);
        let text = title_block::shortened(&text, canvas.width / 2.0 - 30.0, &style);
        let width = lettering::width(&text, TITLE, Weight::SemiBold) + 6.0;
        let (a, b) = (PaperPoint::new(20.0, 2.6), PaperPoint::new(20.0 + width, 8.6));
        canvas.rectangle(layer, a, b, Paint::fill(Fill::ink(Colour::INK)));
        canvas.text(layer, PaperPoint::new(23.0, 7.3), &text, &style);
    }

    /// Puts the numbered marks of the findings about a subject near a place, where the sheet is white.
    pub fn mark(&self, canvas: &mut Canvas, at: Layer, kind: Kind, subject: &Subject, place: PaperPoint) {
        let about = self.concerning(kind).into_iter().filter(|(_, finding)| finding.subject == *subject);
        for (number, finding) in about {
            if finding.severity != Severity::Note {
                marks::finding(canvas, at, place, number);
            }
        }
    }
}

/// The end of a sheet's file name: letters, figures and hyphens only.
fn slug(kind: Kind, solved: &Solved, page: usize) -> String {
    let several = solved.legs.len() > 1;
    let leg = |leg: usize| if several { format!("-leg-{}", leg + 1) } else { String::new() };
    let face = |face: Face| match face {
        Face::Front => "",
        Face::Back => "-back",
        Face::Left => "-left",
        Face::Right => "-right",
    };
    let base = match kind {
        Kind::Client(l, f) => format!("client-elevation{}{}", leg(l), face(f)),
        Kind::Axonometric => "axonometric".to_owned(),
        Kind::Plan => "plan".to_owned(),
        Kind::Front(l, f) => format!("front-elevation{}{}", leg(l), face(f)),
        Kind::Ends(l) => format!("end-elevations{}", leg(l)),
        Kind::Section(l, f) => {
            let mark = solved.legs.get(l).and_then(|l| l.fittings.get(f)).map_or("", |f| f.mark.as_str());
            let mark: String = mark.chars().filter(char::is_ascii_alphanumeric).collect();
            format!("section{}-{}", leg(l), mark.to_lowercase())
        }
        Kind::Substrate(l) => format!("substrate-template{}", leg(l)),
        Kind::Boards(l) => format!("board-templates{}", leg(l)),
        Kind::Counter(l) => format!("counter-sheet{}", leg(l)),
        Kind::Supports => "supports".to_owned(),
        Kind::Levelling => "levelling".to_owned(),
        Kind::Cutting => "cutting".to_owned(),
        Kind::Trim => "base-trim".to_owned(),
        Kind::Permit => "permit".to_owned(),
        Kind::Schedules => "schedules".to_owned(),
        Kind::Materials => "materials".to_owned(),
        Kind::Weights => "weights".to_owned(),
        Kind::MeasureTwice => "measure-twice".to_owned(),
        Kind::Sequence => "sequence".to_owned(),
        Kind::Orders => "orders".to_owned(),
        Kind::Labels => "labels".to_owned(),
    };
    if page == 0 { base } else { format!("{base}-{}", page + 1) }
}
