//! The facts of the title block.

use crate::findings::Place;
use crate::units::System;

/// The facts that title blocks carry.
#[derive(Clone, Debug, Default)]
pub struct Job {
    /// The job's title.
    pub title: String,
    /// For whom.
    pub client: String,
    /// Where.
    pub address: String,
    /// The drawing number that sheet numbers are made from.
    pub number: String,
    /// Legal owner of the drawings (ISO 7200).
    pub owner: String,
    /// Who drew it.
    pub drawn_by: String,
    /// Who approved it; empty when nobody has.
    pub approved_by: String,
    /// Date of issue as written; never the clock.
    pub date: String,
    /// The revisions, oldest first.
    pub revisions: Vec<Revision>,
    /// Units to show.
    pub units: System,
    /// Where it is written.
    pub place: Option<Place>,
}

/// One revision of the drawings.
#[derive(Clone, Debug)]
pub struct Revision {
    /// Its mark, as `B`.
    pub mark: String,
    /// Its date, as written.
    pub date: String,
    /// What changed.
    pub note: String,
}
