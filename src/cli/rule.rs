//! `faceline rule`: the rules that a job is checked by, and one of them at length.

use super::outcome::Outcome;
use crate::findings::{self, Severity};
use crate::rules::{self, Concern, Limit, Rule};

/// Runs the command.
pub fn run(name: Option<&str>) -> Outcome {
    let Some(name) = name else { return super::print(listed().as_bytes()) };
    match rules::named_rule(name) {
        Some(rule) => super::print(explained(rule).as_bytes()),
        None => {
            let nearest = findings::nearest(name, rules::ALL.iter().map(|rule| rule.name));
            let instead = nearest.map_or_else(
                || "`faceline rule` lists them".to_owned(),
                |nearest| format!("`faceline rule {nearest}`"),
            );
            eprintln!("error: there is no rule `{name}`\n  = instead: {instead}");
            Outcome::Unreadable
        }
    }
}

/// One line a rule, its name first, in groups by what they concern.
fn listed() -> String {
    let widest = rules::ALL.iter().map(|rule| rule.name.len()).max().unwrap_or(0);
    let mut text = String::new();
    for concern in Concern::ALL {
        for rule in rules::ALL.iter().filter(|rule| rule.concerns == concern) {
            let group = concern.words().to_lowercase();
            text.push_str(&format!("{:widest$}  {:4}  {group}\n", rule.name, rule.severity.word()));
        }
    }
    text
}

/// A rule at length.
fn explained(rule: &Rule) -> String {
    let severity = match rule.severity {
        Severity::Stop => "stop: don't cut",
        Severity::Warn => "warn: decide",
        Severity::Note => "note: know",
    };
    let mut text = format!("{}\n\n", rule.name);
    let mut say = |lead: &str, words: &str| {
        text.push_str(&format!("{lead:<10}{}\n", wrapped(words, 10)));
    };
    say("wants", rule.about);
    say("why", rule.why);
    say("instead", rule.instead);
    say("severity", &format!("{severity}, at its gravest"));
    say("concerns", &rule.concerns.words().to_lowercase());
    say("source", rule.origin.words());
    for (index, limit) in rule.limits.iter().enumerate() {
        say(if index == 0 { "limits" } else { "" }, &stated(rule, limit));
    }
    if let Some(limit) = rule.limits.first() {
        let name = rule.limit_name(limit);
        let example = format!("limits: {{ \"{name}\": (value: \"{}\", because: \"…\") }}", limit.value);
        say("set one", &format!("{example}; the sheets print it with its reason"));
    }
    text.push_str("\nIt never replaces local code, the appliance's manual or a licensed trade: they govern.\n");
    text
}

fn stated(rule: &Rule, limit: &Limit) -> String {
    format!("{}: {}, {}", rule.limit_name(limit), limit.value, limit.about)
}

/// Words in lines of at most 96 letters, further lines set in.
fn wrapped(words: &str, indent: usize) -> String {
    const WIDTH: usize = 96;
    let mut text = String::new();
    let mut at = indent;
    for word in words.split_whitespace() {
        let long = word.chars().count();
        if at > indent && at + 1 + long > WIDTH {
            text.push('\n');
            text.push_str(&" ".repeat(indent));
            at = indent;
        } else if at > indent {
            text.push(' ');
            at += 1;
        }
        text.push_str(word);
        at += long;
    }
    text
}
