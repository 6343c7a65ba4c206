//! The supports that a leg has so far, module by module, so that what is near a place is found without looking at all.

use super::draft::Draft;
use std::ops::RangeInclusive;

/// The supports of a leg, each in the row of its module.
pub(super) struct Drafts {
    rows: Vec<Vec<Draft>>,
}

impl Drafts {
    /// None yet, for so many modules.
    pub(super) fn new(modules: usize) -> Drafts {
        Drafts { rows: vec![Vec::new(); modules] }
    }

    /// Adds one.
    pub(super) fn push(&mut self, draft: Draft) {
        if let Some(row) = self.rows.get_mut(draft.module) {
            row.push(draft);
        }
    }

    /// Adds several.
    pub(super) fn extend(&mut self, drafts: impl IntoIterator<Item = Draft>) {
        drafts.into_iter().for_each(|draft| self.push(draft));
    }

    /// Takes away what serves a fitting of a module.
    pub(super) fn take_back(&mut self, module: usize, fitting: usize) {
        if let Some(row) = self.rows.get_mut(module) {
            row.retain(|draft| draft.fitting != Some(fitting));
        }
    }

    /// Those of some modules.
    pub(super) fn of(&self, modules: RangeInclusive<usize>) -> impl Iterator<Item = &Draft> {
        let end = self.rows.len().min(modules.end() + 1);
        self.rows.get(*modules.start()..end).unwrap_or(&[]).iter().flatten()
    }

    /// Those of one module, to be changed.
    pub(super) fn of_mut(&mut self, module: usize) -> impl Iterator<Item = &mut Draft> {
        self.rows.get_mut(module).into_iter().flatten()
    }

    /// All of them.
    pub(super) fn iter_mut(&mut self) -> impl Iterator<Item = &mut Draft> {
        self.rows.iter_mut().flatten()
    }

    /// All of them, in an order.
    pub(super) fn sorted<K: Ord>(&self, key: impl Fn(&Draft) -> K) -> Vec<&Draft> {
        let mut all: Vec<&Draft> = self.rows.iter().flatten().collect();
        all.sort_by_key(|draft| key(draft));
        all
    }
}
