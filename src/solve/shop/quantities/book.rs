//! The figures that lines are worked out by, which of them were used, and how figures read in a line.

use crate::parameters::given::{FIGURES, Figure, Materials};
use crate::solve::{DefaultUsed, MaterialGroup, MaterialLine, takeoff};
use crate::units::{Exact, Length, Show, System, exact};
use std::cell::RefCell;
use std::collections::BTreeSet;

/// What an amount measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Things.
    Count,
    /// Length.
    Length,
    /// Area.
    Area,
    /// Volume of mortar and concrete.
    Volume,
    /// Volume of sealant and adhesive.
    Small,
    /// Volume of paint and sealer.
    Liquid,
}

/// The figures of a job.
pub struct Book<'a> {
    materials: &'a Materials,
    /// How figures are shown.
    pub show: Show,
    used: RefCell<BTreeSet<Figure>>,
}

/// A line before its count is worked out.
pub struct Draft {
    /// Its group.
    pub group: MaterialGroup,
    /// What.
    pub name: String,
    /// What it measures.
    pub kind: Kind,
    /// Net amount.
    pub net: Exact,
    /// What `net` was worked out from, as `44 sq ft × 1/4 in`; may be empty.
    pub from: String,
    /// Share added for waste.
    pub waste: Option<Figure>,
    /// What one unit holds, makes or covers, in the measure of `net`.
    pub each: Exact,
    /// A unit, as `bag of 50 lb`.
    pub unit: String,
    /// What a unit does, as `a bag makes`; empty where one is one.
    pub gives: &'static str,
    /// The figures that it goes by.
    pub by: Vec<Figure>,
    /// What `net` is the sum of.
    pub parts: Vec<(String, Exact)>,
}

impl<'a> Book<'a> {
    /// The figures of a job.
    pub fn new(materials: &'a Materials, show: Show) -> Book<'a> {
        Book { materials, show, used: RefCell::default() }
    }

    /// A figure without rounding.
    pub fn exact(&self, figure: Figure) -> Exact {
        self.materials.exact(figure)
    }

    /// A figure that the job may leave out.
    pub fn if_given(&self, figure: Figure) -> Option<Exact> {
        self.materials.worth(figure).map(|worth| worth.exact.clone())
    }

    /// A figure that is a length.
    pub fn length(&self, figure: Figure) -> Length {
        Length::from_nm(self.exact(figure).to_f64().round() as i64)
    }

    /// A figure that is a mass, in the job's units.
    pub fn mass(&self, figure: Figure) -> String {
        self.show.mass(self.materials.si(figure))
    }

    /// Notes that a figure was used, which a line does for all that it goes by.
    pub fn note(&self, figure: Figure) {
        self.used.borrow_mut().insert(figure);
    }

    /// The figures that were used and that the job didn't give.
    pub fn assumed(&self) -> Vec<DefaultUsed> {
        let used = self.used.borrow();
        let known = FIGURES.iter().filter(|known| used.contains(&known.figure));
        known
            .filter_map(|known| {
                let worth = self.materials.worth(known.figure).filter(|worth| !worth.given)?;
                let name = format!("materials.{}", known.name);
                Some(DefaultUsed { name, value: worth.text.clone(), origin: known.origin })
            })
            .collect()
    }

    /// The unit that amounts are told in.
    pub fn unit(&self, kind: Kind) -> &'static str {
        let metric = self.show.system == System::Millimetres;
        match (kind, metric) {
            (Kind::Count, _) => "",
            (Kind::Length, false) => "ft",
            (Kind::Length, true) => "m",
            (Kind::Area, false) => "sq ft",
            (Kind::Area, true) => "sq m",
            (Kind::Volume, false) => "cu ft",
            (Kind::Small, false) => "cu in",
            (Kind::Liquid, false) => "gal",
            (Kind::Volume | Kind::Liquid, true) => "litres",
            (Kind::Small, true) => "ml",
        }
    }

    /// An amount in that unit.
    pub fn amount(&self, kind: Kind, amount: &Exact) -> f64 {
        let symbol = match self.unit(kind) {
            "sq ft" => "ft2",
            "sq m" => "m2",
            "cu ft" => "ft3",
            "cu in" => "in3",
            other => other,
        };
        exact::scale(symbol).map_or(0.0, |unit| amount.per(&unit))
    }

    /// An amount in words, to three figures or so.
    pub fn words(&self, kind: Kind, amount: &Exact) -> String {
        let (figure, unit) = (figures(self.amount(kind, amount)), self.unit(kind));
        if unit.is_empty() { figure } else { format!("{figure} {unit}") }
    }

    /// A line, unless there is nothing to buy.
    pub fn line(&self, draft: Draft) -> Option<MaterialLine> {
        if !draft.net.is_positive() || !draft.each.is_positive() {
            return None;
        }
        let waste = draft.waste.map_or_else(Exact::zero, |figure| self.exact(figure));
        let gross = takeoff::with_waste(&draft.net, &waste);
        let count = takeoff::units(&draft.net, &waste, &draft.each);
        let net = self.words(draft.kind, &draft.net);
        let summed = draft.parts.iter().filter(|(_, part)| part.is_positive()).count() > 1;
        let mut how = match (draft.from.is_empty(), summed) {
            (true, true) => format!("{} = {net}", self.sum(draft.kind, &draft.parts)),
            (true, false) => net,
            (false, _) => format!("{} = {net}", draft.from),
        };
        if waste.is_positive() {
            let share = figures(waste.to_f64() * 100.0);
            how = format!("{how}, + {share} % = {}", self.words(draft.kind, &gross));
        }
        if !draft.gives.is_empty() {
            let ratio = figures((gross / draft.each.clone()).to_f64());
            how = format!("{how}; {} {}: {ratio}", draft.gives, self.words(draft.kind, &draft.each));
        }
        let by: Vec<Figure> = draft.by.into_iter().chain(draft.waste).collect();
        Some(MaterialLine {
            group: draft.group,
            name: draft.name,
            net: self.amount(draft.kind, &draft.net),
            unit: self.unit(draft.kind).to_owned(),
            waste: waste.to_f64(),
            order_unit: draft.unit,
            count,
            how,
            origin: self.origin(&by),
            parts: draft
                .parts
                .into_iter()
                .filter(|(_, part)| part.is_positive())
                .map(|(name, part)| (name, self.amount(draft.kind, &part)))
                .collect(),
        })
    }

    /// Parts with their amounts, as `front 9.25 + left end 5.44`.
    pub fn sum(&self, kind: Kind, parts: &[(String, Exact)]) -> String {
        let told = parts.iter().filter(|(_, part)| part.is_positive());
        let told: Vec<String> =
            told.map(|(name, part)| format!("{name} {}", figures(self.amount(kind, part)))).collect();
        told.join(" + ")
    }

    /// Where figures come from, each origin once with the figures that have it.
    pub fn origin(&self, by: &[Figure]) -> String {
        let mut origins: Vec<(&str, Vec<&str>)> = Vec::new();
        for known in by.iter().filter_map(|figure| FIGURES.get(*figure as usize)) {
            self.note(known.figure);
            let given = self.materials.worth(known.figure).is_some_and(|worth| worth.given);
            let origin = if given { "given" } else { known.origin };
            let word = known.name.rsplit('.').next().unwrap_or(known.name);
            match origins.iter_mut().find(|(other, _)| *other == origin) {
                Some((_, words)) if words.contains(&word) => {}
                Some((_, words)) => words.push(word),
                None => origins.push((origin, vec![word])),
            }
        }
        let told: Vec<String> =
            origins.iter().map(|(origin, words)| format!("{}: {origin}", words.join(", "))).collect();
        told.join("; ")
    }
}

/// A figure as a person would write it: whole from a hundred up, one place from ten, two from a tenth, else three; none
/// that say nothing.
pub fn figures(value: f64) -> String {
    let places = if value.abs() >= 99.95 {
        0
    } else if value.abs() >= 9.995 {
        1
    } else if value.abs() >= 0.0995 {
        2
    } else {
        3
    };
    let text = format!("{value:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// A count with its noun: `1 piece`, `3 pieces`.
pub fn counted(count: usize, noun: &str) -> String {
    if count == 1 { format!("1 {noun}") } else { format!("{count} {noun}s") }
}
