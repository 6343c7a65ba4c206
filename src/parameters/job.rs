//! The title block's facts.

use super::given::{Job, Revision};
use super::reader::Reader;
use crate::model::{JobText, UnitsText};
use crate::units::System;

/// Works out the facts of the title block.
pub(super) fn read(job: &JobText, reader: &mut Reader) -> Job {
    Job {
        title: reader.words(Some(&job.title), ""),
        client: reader.words(job.client.as_ref(), ""),
        address: reader.words(job.address.as_ref(), ""),
        number: reader.words(job.number.as_ref(), ""),
        owner: reader.words(job.owner.as_ref(), ""),
        drawn_by: reader.words(job.drawn_by.as_ref(), ""),
        approved_by: reader.words(job.approved_by.as_ref(), ""),
        date: reader.words(Some(&job.date), ""),
        revisions: job
            .revisions
            .iter()
            .map(|revision| Revision {
                mark: reader.words(Some(&revision.mark), ""),
                date: reader.words(Some(&revision.date), ""),
                note: reader.words(Some(&revision.note), ""),
            })
            .collect(),
        units: match job.units {
            None | Some(UnitsText::Inches) => System::Inches,
            Some(UnitsText::Millimetres) => System::Millimetres,
            Some(UnitsText::Both) => System::Both,
        },
        place: Some(job.title.place.clone()),
    }
}
