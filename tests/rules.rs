//! Every rule has a job that makes it fire and one that leaves it quiet.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::findings::{Finding, Severity};
use faceline::parameters::given::*;
use faceline::rules;
use faceline::solve::solve;

use support::*;

/// A rule's name, a job in which it fires (with the gravest severity and words its messages have), and a quiet one.
struct Fixture {
    rule: &'static str,
    fires: fn() -> Given,
    severity: Severity,
    says: &'static str,
    quiet: fn() -> Given,
}

/// The look sheets' run, everything measured.
fn measured() -> Given {
    let mut given = terrace();
    for fitting in &mut given.fittings {
        if let Cut::Opening { width, height, drop, .. } = &mut fitting.cut {
            for measure in [Some(width), height.as_mut(), Some(drop)].into_iter().flatten() {
                measure.measured = measure.published;
            }
        }
        if let Cut::Notch { width, depth, drop, .. } = &mut fitting.cut {
            for measure in [width, depth, drop] {
                measure.measured = measure.published;
            }
        }
    }
    given.tolerances.least_strip = inches(2.0);
    given
}

fn with(change: fn(&mut Given)) -> Given {
    let mut given = measured();
    change(&mut given);
    given
}

fn body(width: f64, depth: f64, height: f64) -> Option<Body> {
    Some(Body { width: published(width), depth: published(depth), height: published(height) })
}

fn fixtures() -> Vec<Fixture> {
    vec![
        Fixture {
            rule: "run-fits-its-site",
            fires: || with(|g| g.legs[0].room = Some(inches(110.0))),
            severity: Severity::Stop,
            says: "8 1/4 in too long",
            quiet: || with(|g| g.legs[0].room = Some(inches(118.25))),
        },
        Fixture {
            rule: "fitting-inside-its-module",
            fires: || with(|g| g.legs[0].modules[1].width = Width::Fixed(inches(33.0))),
            severity: Severity::Stop,
            says: "33 3/8 in wide, module B is 33 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutouts-keep-a-strip-between-them",
            fires: || with(|g| g.fittings[2].cut = opening(30.5, 8.5, Some(16.5))),
            severity: Severity::Stop,
            says: "meet in the front board by 1/2 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-stays-in-its-board",
            fires: || with(|g| g.fittings[2].cut = opening(30.5, 13.0, Some(21.5))),
            severity: Severity::Stop,
            says: "1/2 in past the bottom edge of the front board",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-clears-frame-members",
            fires: || with(|g| g.legs[0].modules[1].width = Width::Fixed(inches(36.0))),
            severity: Severity::Stop,
            says: "meets a post by 3/16 in",
            quiet: measured,
        },
        Fixture {
            rule: "body-fits-its-module",
            fires: || {
                with(|g| {
                    g.fittings[0].body = body(33.0, 21.0, 11.0);
                    g.fittings[2].body = body(30.0, 20.0, 21.0);
                })
            },
            severity: Severity::Stop,
            says: "run 1/4 in into one another",
            quiet: || with(|g| g.fittings[0].body = body(33.0, 21.0, 11.0)),
        },
        Fixture {
            rule: "body-passes-its-cutout",
            fires: || with(|g| g.fittings[1].body = body(14.625, 20.0, 21.0)),
            severity: Severity::Stop,
            says: "is 14 5/8 in in width, its cutout 14 1/2 in",
            quiet: || with(|g| g.fittings[1].body = body(14.25, 20.0, 21.0)),
        },
        Fixture {
            rule: "flange-covers-its-gap",
            fires: || with(|g| g.fittings[0].flange.far = inches(0.1875)),
            severity: Severity::Stop,
            says: "(worst case) it leaves a gap of 1/16 in, by root sum of squares a cover of 1/16 in",
            quiet: measured,
        },
        Fixture {
            rule: "feet-within-range",
            fires: || with(|g| g.frame.feet.longest = inches(3.0)),
            severity: Severity::Stop,
            says: "it can be from 2 in to 3 in",
            quiet: || with(|g| g.frame.feet.longest = inches(5.0)),
        },
        Fixture {
            rule: "published-agrees-with-measured",
            fires: || {
                with(|g| {
                    if let Cut::Notch { depth, .. } = &mut g.fittings[0].cut {
                        depth.measured = Some(inches(21.0));
                    }
                })
            },
            severity: Severity::Warn,
            says: "published as 21 1/4 in and measured as 21 in",
            quiet: measured,
        },
        Fixture {
            rule: "cutout-was-measured",
            fires: terrace,
            severity: Severity::Note,
            says: "width 33 3/8 in, depth 21 1/4 in, drop 9 in as published",
            quiet: measured,
        },
    ]
}

fn found(given: &Given, rule: &str) -> Vec<Finding> {
    let solved = solve(given).expect("a fixture solves");
    rules::check(&solved).into_iter().filter(|finding| finding.rule == rule).collect()
}

#[test]
fn every_rule_has_a_job_that_fires_and_one_that_stays_quiet() {
    let fixtures = fixtures();
    for rule in rules::ALL {
        assert!(fixtures.iter().any(|fixture| fixture.rule == rule.name), "{} has no fixture", rule.name);
        assert!(rule.name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{}", rule.name);
        assert!(!rule.about.is_empty() && !rule.why.is_empty() && !rule.instead.is_empty(), "{}", rule.name);
    }
    for fixture in fixtures {
        assert!(rules::ALL.iter().any(|rule| rule.name == fixture.rule), "{} is no rule", fixture.rule);
        let fired = found(&(fixture.fires)(), fixture.rule);
        assert_eq!(fired.iter().map(|f| f.severity).max(), Some(fixture.severity), "{}: {fired:?}", fixture.rule);
        assert!(fired.iter().any(|f| f.message.contains(fixture.says)), "{}: {fired:#?}", fixture.rule);
        assert!(fired.iter().all(|f| !f.instead.is_empty()), "{}", fixture.rule);
        let quiet = found(&(fixture.quiet)(), fixture.rule);
        assert!(quiet.is_empty(), "{}: {quiet:#?}", fixture.rule);
    }
}

#[test]
fn the_look_sheets_run_has_nothing_that_stops() {
    let mut given = measured();
    given.frame.feet.longest = inches(5.0);
    let found: Vec<Finding> = rules::check(&solve(&given).unwrap());
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn the_gravest_come_first() {
    let mut given = terrace();
    given.frame.feet.longest = inches(3.0);
    given.legs[0].room = Some(inches(110.0));
    let found = rules::check(&solve(&given).unwrap());
    assert!(found.is_sorted_by(|a, b| a.severity >= b.severity));
    assert_eq!(found[0].rule, "run-fits-its-site");
}

#[test]
fn a_strip_at_the_counters_back_is_worth_a_word() {
    let mut given = measured();
    given.fittings[0].cut = notch(33.375, 30.5, 9.0);
    let found = found(&given, "cutouts-keep-a-strip-between-them");
    assert!(
        found.iter().any(|f| f.severity == Severity::Warn && f.message.contains("the counter's back edge")),
        "{found:#?}"
    );
}
