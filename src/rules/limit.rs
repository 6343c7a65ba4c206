//! Limits that rules check against, and that a job may set otherwise with a reason.

use super::Rule;
use crate::solve::{LimitSet, Solved};
use crate::units::{Length, Quantity, reading};

/// A limit of a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limit {
    /// What a job calls it behind the rule's name and a point; empty for a rule's only or chief limit.
    pub name: &'static str,
    /// Its value, as a job would write it.
    pub value: &'static str,
    /// What it is, in words.
    pub about: &'static str,
}

impl Limit {
    /// A limit with its value and what it is.
    pub const fn new(name: &'static str, value: &'static str, about: &'static str) -> Limit {
        Limit { name, value, about }
    }

    /// Its own value.
    fn quantity(&self) -> Quantity {
        // A test holds that every limit can be read.
        reading::quantity(self.value).unwrap_or(Quantity::number(0.0))
    }
}

impl Rule {
    /// What a job calls a limit of this rule.
    pub fn limit_name(&self, limit: &Limit) -> String {
        if limit.name.is_empty() { self.name.to_owned() } else { format!("{}.{}", self.name, limit.name) }
    }

    /// What the job sets in the place of a limit, where it does and can.
    pub fn limit_set<'s>(&self, solved: &'s Solved, limit: &Limit) -> Option<&'s LimitSet> {
        let name = self.limit_name(limit);
        let own = limit.quantity().dimension;
        solved.limits.iter().find(|set| set.name == name && set.value.dimension == own)
    }

    fn value(&self, solved: &Solved, limit: &Limit) -> Quantity {
        self.limit_set(solved, limit).map_or_else(|| limit.quantity(), |set| set.value)
    }

    /// A limit that is a length.
    pub fn length(&self, solved: &Solved, limit: &Limit) -> Length {
        self.value(solved, limit).as_length().unwrap_or_default()
    }

    /// A limit that is something else, in SI units or as a plain number.
    pub fn number(&self, solved: &Solved, limit: &Limit) -> f64 {
        self.value(solved, limit).si()
    }
}

/// Whether a limit that a job sets is one, and of the right kind; else what is wrong with it and what to write.
pub fn fault(set: &LimitSet) -> Option<(String, String)> {
    let known = || super::ALL.iter().flat_map(|rule| rule.limits.iter().map(move |limit| (rule, limit)));
    let found = known().find(|(rule, limit)| rule.limit_name(limit) == set.name);
    match found {
        Some((_, limit)) if limit.quantity().dimension == set.value.dimension => None,
        Some((_, limit)) => Some((
            format!("the limit {} is {}", set.name, set.value.dimension.words()),
            format!("write it as its own value is written, as \"{}\"", limit.value),
        )),
        None => {
            let names: Vec<String> = known().map(|(rule, limit)| rule.limit_name(limit)).collect();
            let meant = crate::findings::nearest(&set.name, names.iter().map(String::as_str));
            let own: Vec<&String> = names.iter().filter(|name| name.starts_with(&set.name)).collect();
            let instead = match (meant, own.as_slice()) {
                (Some(meant), _) => format!("write \"{meant}\""),
                (None, [one, ..]) => format!("write \"{one}\""),
                (None, []) => "`faceline rule` lists the rules, `faceline rule NAME` a rule's limits".to_owned(),
            };
            Some((format!("no rule has a limit {}", set.name), instead))
        }
    }
}
