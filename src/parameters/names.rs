//! Everything that an expression may name, each worked out once.

use super::evaluate;
use super::expression::{self, Program};
use crate::findings::{self, Place, Problem};
use crate::model::Text;
use crate::units::Quantity;
use crate::units::reading::ReadError;
use std::collections::HashMap;
use std::ops::Range;

/// The names of a job with what they are written as, and their values once asked for.
#[derive(Debug, Default)]
pub(super) struct Names {
    index: HashMap<String, usize>,
    entries: Vec<Entry>,
    /// What went wrong, each reason once.
    pub(super) problems: Vec<Problem>,
}

#[derive(Debug)]
struct Entry {
    name: String,
    body: Body,
    state: State,
    /// Which other entries it asks for, with the places of their names; known once compiled.
    program: Option<(Program, Vec<usize>)>,
}

/// What a name stands for.
#[derive(Clone, Debug)]
pub(super) enum Body {
    /// An expression.
    Written(Text),
    /// Nothing that an expression can use, for this reason.
    Later(String),
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum State {
    Fresh,
    Working,
    Done(Quantity),
    Failed,
}

impl Names {
    /// Adds a name; the first of two with one name stays, and `false` comes back.
    pub(super) fn add(&mut self, name: impl Into<String>, body: Body) -> bool {
        let name = name.into();
        if self.index.contains_key(&name) {
            return false;
        }
        self.index.insert(name.clone(), self.entries.len());
        self.entries.push(Entry { name, body, state: State::Fresh, program: None });
        true
    }

    /// Puts another expression in a name's place; `false` when there is no such name.
    pub(super) fn replace(&mut self, name: &str, text: Text) -> bool {
        let entry = self.index.get(name).and_then(|index| self.entries.get_mut(*index));
        entry.map(|entry| entry.body = Body::Written(text)).is_some()
    }

    /// The expression that a name has now.
    pub(super) fn written(&self, name: &str) -> Option<&Text> {
        match &self.entries.get(*self.index.get(name)?)?.body {
            Body::Written(text) => Some(text),
            Body::Later(_) => None,
        }
    }

    /// The name that a misspelt one may have meant.
    pub(super) fn nearest(&self, name: &str) -> Option<&str> {
        /// After so many problems a remedy for one more isn't worth going through every name.
        const MOST: usize = 200;
        if self.problems.len() > MOST {
            return None;
        }
        let names = || self.entries.iter().map(|entry| entry.name.as_str());
        findings::nearest(name, names()).or_else(|| {
            let (owner, property) = name.split_once('.')?;
            let owned = names().filter_map(|full| full.split_once('.').map(|(head, tail)| (full, head, tail)));
            owned
                .filter(|(_, head, _)| *head == owner)
                .map(|(full, _, tail)| (strsim::damerau_levenshtein(property, tail), full))
                .min()
                .map(|(_, full)| full)
        })
    }

    /// Works out every name, so that a mistake shows even where nothing uses it.
    pub(super) fn work_out_all(&mut self) {
        for index in 0..self.entries.len() {
            self.work_out(index);
        }
    }

    /// The value of an expression; `None` after a problem, which is kept.
    pub(super) fn value(&mut self, text: &Text) -> Option<Quantity> {
        let program = self.compile(text)?;
        let needed = self.needed(&program, text)?;
        for index in &needed {
            self.work_out(*index);
        }
        self.run(&program, &needed, text)
    }

    /// Works out one name and all that it asks for, on a stack of its own: a chain may be as long as
    /// the file allows.
    fn work_out(&mut self, index: usize) {
        let mut stack: Vec<(usize, usize)> = Vec::new();
        if self.begin(index) {
            stack.push((index, 0));
        }
        while let Some((index, next)) = stack.last_mut() {
            let index = *index;
            let asked = self.asked(index, *next);
            *next += 1;
            match asked {
                Some(asked) => match self.state(asked) {
                    State::Fresh => {
                        if self.begin(asked) {
                            stack.push((asked, 0));
                        }
                    }
                    State::Working => {
                        let from = stack.iter().position(|(member, _)| *member == asked).unwrap_or(0);
                        let members: Vec<usize> = stack.iter().skip(from).map(|(member, _)| *member).collect();
                        self.tell_of_cycle(&members);
                        self.set(index, State::Failed);
                        stack.pop();
                    }
                    State::Done(_) | State::Failed => {}
                },
                None => {
                    self.finish(index);
                    stack.pop();
                }
            }
        }
    }

    /// Compiles a fresh entry and marks it as being worked on; `false` when it is done or can't be.
    fn begin(&mut self, index: usize) -> bool {
        if self.state(index) != State::Fresh {
            return false;
        }
        self.set(index, State::Failed);
        let Some(Body::Written(text)) = self.entries.get(index).map(|entry| entry.body.clone()) else { return false };
        let Some(program) = self.compile(&text) else { return false };
        let Some(needed) = self.needed(&program, &text) else { return false };
        if let Some(entry) = self.entries.get_mut(index) {
            entry.program = Some((program, needed));
            entry.state = State::Working;
        }
        true
    }

    /// Works out an entry whose needs are all settled.
    fn finish(&mut self, index: usize) {
        let taken = self.entries.get_mut(index).and_then(|entry| Some((entry.program.take()?, entry.body.clone())));
        let Some(((program, needed), Body::Written(text))) = taken else { return };
        let state = self.run(&program, &needed, &text).map_or(State::Failed, State::Done);
        self.set(index, state);
    }

    fn asked(&self, index: usize, next: usize) -> Option<usize> {
        self.entries.get(index)?.program.as_ref()?.1.get(next).copied()
    }

    fn state(&self, index: usize) -> State {
        self.entries.get(index).map_or(State::Failed, |entry| entry.state)
    }

    fn set(&mut self, index: usize, state: State) {
        if let Some(entry) = self.entries.get_mut(index) {
            entry.state = state;
        }
    }

    fn compile(&mut self, text: &Text) -> Option<Program> {
        if text.kind == crate::model::TextKind::Other {
            let problem = text.words().err()?;
            self.tell(problem);
            return None;
        }
        expression::compile(&text.text).map_err(|error| self.tell(located(error, text))).ok()
    }

    /// The entries that a program asks for; every name that can't be used is told of.
    fn needed(&mut self, program: &Program, text: &Text) -> Option<Vec<usize>> {
        let mut needed = Vec::with_capacity(program.names.len());
        for (name, span) in &program.names {
            match self.index.get(name) {
                None => self.tell(self.unknown(name, &text.part(span.clone()))),
                Some(index) => match self.entries.get(*index).map(|entry| &entry.body) {
                    Some(Body::Later(reason)) => {
                        let problem = Problem::new(
                            format!("`{name}` can't be used here: {reason}"),
                            "give it a fixed width, or name the length under `parameters`",
                        );
                        self.tell(problem.at(&text.part(span.clone())));
                    }
                    _ => needed.push(*index),
                },
            }
        }
        (needed.len() == program.names.len()).then_some(needed)
    }

    /// That a name isn't known.
    pub(super) fn unknown(&self, name: &str, place: &Place) -> Problem {
        let instead = self.nearest(name).map_or_else(
            || "name it under `parameters`, or write a length with its unit".to_owned(),
            |meant| format!("write `{meant}`"),
        );
        Problem::new(format!("nothing is called `{name}`"), instead).at(place)
    }

    /// Runs a program; silent when something that it needs has failed, as that was told of before.
    fn run(&mut self, program: &Program, needed: &[usize], text: &Text) -> Option<Quantity> {
        let mut values = Vec::with_capacity(needed.len());
        for index in needed {
            match self.state(*index) {
                State::Done(value) => values.push(value),
                _ => return None,
            }
        }
        evaluate::run(program, &text.text, &values).map_err(|error| self.tell(located(error, text))).ok()
    }

    fn tell_of_cycle(&mut self, members: &[usize]) {
        /// More members than this are counted, not named.
        const MOST: usize = 12;
        let entries: Vec<&Entry> = members.iter().filter_map(|index| self.entries.get(*index)).collect();
        let Some(first) = entries.first() else { return };
        let mut chain: Vec<String> = entries.iter().take(MOST).map(|entry| entry.name.clone()).collect();
        if entries.len() > MOST {
            chain.push(format!("({} more)", entries.len() - MOST));
        }
        chain.push(first.name.clone());
        let message = if entries.len() == 1 {
            format!("`{}` is written in terms of itself", first.name)
        } else {
            format!("these values go in a circle: {}", chain.join(" -> "))
        };
        let problem = Problem::new(message, "give one of them a length of its own");
        let problem = match &first.body {
            Body::Written(text) => problem.at(&text.place),
            Body::Later(_) => problem,
        };
        self.tell(problem);
    }

    fn tell(&mut self, problem: Problem) {
        self.problems.push(problem);
    }
}

/// A reading error in the place that it has in the file.
fn located(error: ReadError, text: &Text) -> Problem {
    let span: Range<usize> = error.span;
    Problem::new(error.message, error.instead).at(&text.part(span))
}
