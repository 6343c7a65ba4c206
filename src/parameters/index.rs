//! Where the modules and fittings of a job are, by their ids.

use super::fitted::Fitted;
use crate::model::JobFile;
use std::collections::{BTreeMap, HashMap};

/// Where the modules and fittings of a job are.
#[derive(Debug)]
pub(super) struct Index<'j> {
    /// Leg and module by the module's id; the first of two with one id.
    pub(super) modules: HashMap<&'j str, (usize, usize)>,
    /// The modules' ids in the order written.
    pub(super) module_ids: Vec<&'j str>,
    /// Fittings by their ids; the first of two with one id.
    pub(super) fittings: BTreeMap<&'j str, usize>,
    /// The circle that a fitting is placed in, first member repeated at its end, by the fitting
    /// where it is told of.
    pub(super) circles: HashMap<&'j str, Vec<&'j str>>,
}

impl<'j> Index<'j> {
    /// Looks through a job.
    pub(super) fn new(job: &'j JobFile, fitted: &[Fitted<'j>]) -> Index<'j> {
        let mut index = Index {
            modules: HashMap::new(),
            module_ids: Vec::new(),
            fittings: BTreeMap::new(),
            circles: HashMap::new(),
        };
        for (leg, written) in job.legs.iter().enumerate() {
            for (module, written) in written.modules.iter().enumerate() {
                index.modules.entry(&written.id.text).or_insert((leg, module));
                index.module_ids.push(&written.id.text);
            }
        }
        for (at, one) in fitted.iter().enumerate() {
            index.fittings.entry(&one.own.id.text).or_insert(at);
        }
        index.find_circles(fitted);
        index
    }

    /// Follows every fitting to the one that it is placed from, passing each fitting once.
    fn find_circles(&mut self, fitted: &[Fitted<'j>]) {
        // The walk that passed a fitting first; 0 for none yet.
        let mut passed = vec![0_usize; fitted.len()];
        for start in 0..fitted.len() {
            let walk = start + 1;
            let mut path: Vec<&'j str> = Vec::new();
            let mut next = Some(start);
            while let Some(at) = next {
                let (Some(one), Some(mark)) = (fitted.get(at), passed.get_mut(at)) else { break };
                let id = one.own.id.text.as_str();
                if *mark != 0 {
                    if *mark == walk
                        && let Some(first) = path.iter().position(|member| *member == id)
                    {
                        let mut members = path.split_off(first);
                        members.push(id);
                        self.circles.insert(id, members);
                    }
                    break;
                }
                *mark = walk;
                path.push(id);
                next = one.aligned_with().and_then(|other| self.fittings.get(other.text.as_str()).copied());
            }
        }
    }
}
