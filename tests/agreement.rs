//! One number, wherever it stands: what any sheet dimensions, the schedules list the same, and both are what was solved.

mod program;

use std::collections::BTreeMap;
use std::path::Path;

use faceline::drawing::{Colour, Group, Item, Page, Text};
use faceline::solve::{Datum, Face, Fitting, FittingKind, Leg};
use faceline::units::Length;
use faceline::{rules, sheets};
use program::solved;

const JOBS: [&str; 4] =
    ["samples/terrace.ron", "samples/island.ron", "samples/courtyard.ron", "tests/worked_example.ron"];

/// One dimension as it is drawn: its datums, its true length in mm, and its figures.
struct Drawn {
    page: String,
    from: String,
    to: String,
    mm: f64,
    printed: String,
}

fn dimensions(group: &Group, page: &Page, found: &mut Vec<Drawn>) {
    let fact = |name: &str| group.facts.iter().find(|(it, _)| *it == name).map(|(_, value)| value.clone());
    if let (Some(from), Some(to), Some(mm)) = (fact("data-from-datum"), fact("data-to-datum"), fact("data-dim-mm")) {
        let figures = group.items.iter().find_map(|item| match item {
            Item::Text(text) if text.facts.iter().any(|(_, value)| value == "dimtext") => Some(text.content()),
            _ => None,
        });
        if let Some(printed) = figures {
            found.push(Drawn { page: page.name.clone(), from, to, mm: mm.parse().expect("a number"), printed });
        }
    }
    for item in &group.items {
        if let Item::Group(inner) = item {
            dimensions(inner, page, found);
        }
    }
}

fn texts<'p>(group: &'p Group, found: &mut Vec<&'p Text>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => texts(inner, found),
            Item::Text(text) => found.push(text),
            Item::Path(_) => {}
        }
    }
}

/// What the tables of located edges say: by mark and edge, the printed numbers from left to right.
fn scheduled(pages: &[Page], marks: &[String]) -> BTreeMap<(String, String), Vec<String>> {
    let mut rows = BTreeMap::new();
    for page in pages.iter().filter(|page| page.name.contains("schedules")) {
        let mut all = Vec::new();
        texts(&page.root, &mut all);
        let edges = ["left edge", "centreline", "right edge", "front edge", "back edge", "top", "bottom"];
        for edge in all.iter().filter(|text| text.colour == Colour::INK && edges.contains(&text.content().as_str())) {
            let mark = all
                .iter()
                .filter(|text| marks.contains(&text.content()) && text.at.y <= edge.at.y + 0.01)
                .filter(|text| text.at.x < edge.at.x && edge.at.x - text.at.x < 25.0)
                .max_by(|a, b| a.at.y.total_cmp(&b.at.y))
                .expect("every edge has its mark");
            let mut numbers: Vec<&&Text> = all
                .iter()
                .filter(|text| {
                    (text.at.y - edge.at.y).abs() < 0.01 && text.at.x > edge.at.x && text.at.x < edge.at.x + 165.0
                })
                .filter(|text| !text.content().starts_with('['))
                .collect();
            numbers.sort_by(|a, b| a.at.x.total_cmp(&b.at.x));
            // Depths have a centreline too: rows of one mark and edge follow one another.
            let entry: &mut Vec<String> = rows.entry((mark.content(), edge.content())).or_default();
            entry.extend(numbers.iter().map(|text| text.content()));
        }
    }
    rows
}

/// Where an edge of a fitting lies, and across which axis; `None` for what is no edge of it.
fn edge(fitting: &Fitting, edge: &str) -> Option<Length> {
    // Whoever stands behind the run sees a back opening's left towards the right end.
    let behind = fitting.face == Face::Back && matches!(fitting.kind, FittingKind::Opening(_));
    match edge {
        "left edge" => Some(if behind { fitting.right } else { fitting.left }),
        "right edge" => Some(if behind { fitting.left } else { fitting.right }),
        "centreline" => Some(fitting.centre()),
        "back edge" if on_an_end(fitting) => Some(fitting.right),
        "front edge" if on_an_end(fitting) => Some(fitting.left),
        "back edge" => fitting.back,
        "front edge" => fitting.front,
        "top edge" => fitting.top,
        "bottom edge" => fitting.bottom.filter(|_| !fitting.to_floor),
        _ => None,
    }
}

const DATUMS: [Datum; 11] = [
    Datum::FinishedLeftEnd,
    Datum::BoardLeftEnd,
    Datum::FrameLeftEnd,
    Datum::FinishedRightEnd,
    Datum::FinishedFace,
    Datum::CounterEdge,
    Datum::BoardFace,
    Datum::FrameFace,
    Datum::CounterTop,
    Datum::SubstrateTop,
    Datum::FrameTop,
];

const FROM_FRONT: [Datum; 4] =
    [Datum::FinishedLeftEnd, Datum::BoardLeftEnd, Datum::FrameLeftEnd, Datum::FinishedRightEnd];
const FROM_BEHIND: [Datum; 4] =
    [Datum::FinishedRightEnd, Datum::BoardRightEnd, Datum::FrameRightEnd, Datum::FinishedLeftEnd];

fn on_an_end(fitting: &Fitting) -> bool {
    matches!(fitting.kind, FittingKind::Opening(_)) && matches!(fitting.face, Face::Left | Face::Right)
}

/// An end is seen from outside: at the left end the cook's side is to the right. The schedules say front and back.
fn across_end<'w>(fitting: &Fitting, which: &'w str) -> &'w str {
    match (fitting.face, which) {
        (Face::Left, "left edge") | (Face::Right, "right edge") => "back edge",
        (Face::Left, "right edge") | (Face::Right, "left edge") => "front edge",
        (_, other) => other,
    }
}

#[test]
fn every_dimension_to_an_edge_of_a_cutout_is_the_one_in_the_schedules() {
    for job in JOBS {
        let solved = solved(Path::new(job));
        let findings = rules::check(&solved);
        let pages = sheets::draw(&solved, &findings, |_| true).unwrap_or_else(|why| panic!("{job}: {why:?}"));
        let leg = &solved.legs[0];
        let marks: Vec<String> = leg.fittings.iter().map(|fitting| fitting.mark.clone()).collect();
        let rows = scheduled(&pages, &marks);
        let mut drawn = Vec::new();
        for page in &pages {
            dimensions(&page.root, page, &mut drawn);
        }
        let mut compared = 0;
        for it in &drawn {
            let Some((mark, which)) = it.to.split_once(' ') else { continue };
            let Some(fitting) = leg.fittings.iter().find(|fitting| fitting.mark == mark) else { continue };
            let Some(datum) = DATUMS.into_iter().find(|datum| datum.words() == it.from) else { continue };
            let which = if on_an_end(fitting) { across_end(fitting, which) } else { which };
            let Some(at) = edge(fitting, which) else { continue };
            let true_length = leg.datums.from(datum, at).abs();
            assert!(
                (true_length.mm() - it.mm).abs() < 1e-3,
                "{job}, {}: {} from {} is {} mm, solved as {} mm",
                it.page,
                it.to,
                it.from,
                it.mm,
                true_length.mm()
            );
            let row = which.trim_end_matches(" edge");
            let listed =
                rows.get(&(mark.to_owned(), which.to_owned())).or_else(|| rows.get(&(mark.to_owned(), row.to_owned())));
            let listed = listed.unwrap_or_else(|| panic!("{job}: no row for {mark} {which}"));
            assert!(
                listed.contains(&it.printed),
                "{job}, {}: {} from {} is {}, not among {listed:?}",
                it.page,
                it.to,
                it.from,
                it.printed
            );
            compared += 1;
        }
        assert!(compared >= 8, "{job}: only {compared} dimensions were compared");
    }
}

#[test]
fn the_schedules_list_every_edge_from_every_datum() {
    for job in JOBS {
        let solved = solved(Path::new(job));
        let pages = sheets::draw(&solved, &[], |kind| kind == sheets::Kind::Schedules).expect("schedules");
        let leg = &solved.legs[0];
        let marks: Vec<String> = leg.fittings.iter().map(|fitting| fitting.mark.clone()).collect();
        let rows = scheduled(&pages, &marks);
        let shown = |leg: &Leg, datum: Datum, at: Length| solved.show.text(leg.datums.from(datum, at).abs());
        for fitting in leg.fittings.iter().filter(|fitting| !on_an_end(fitting)) {
            for which in ["left edge", "centreline", "right edge"] {
                let at = edge(fitting, which).expect("every cutout has it");
                let behind = fitting.face == Face::Back && matches!(fitting.kind, FittingKind::Opening(_));
                let datums = if behind { FROM_BEHIND } else { FROM_FRONT };
                let wanted: Vec<String> = datums.iter().map(|datum| shown(leg, *datum, at)).collect();
                let listed = &rows[&(fitting.mark.clone(), which.to_owned())];
                assert_eq!(listed[..4], wanted[..], "{job}: {} {which}", fitting.mark);
            }
            if let Some(back) = fitting.back {
                let wanted: Vec<String> = DATUMS[4..8].iter().map(|datum| shown(leg, *datum, back)).collect();
                assert_eq!(
                    rows[&(fitting.mark.clone(), "back edge".to_owned())],
                    wanted,
                    "{job}: {} back edge",
                    fitting.mark
                );
            }
            if let Some(bottom) = fitting.bottom.filter(|_| !fitting.to_floor) {
                let wanted: Vec<String> = DATUMS[8..].iter().map(|datum| shown(leg, *datum, bottom)).collect();
                let listed = &rows[&(fitting.mark.clone(), "bottom".to_owned())];
                assert_eq!(listed[..3], wanted[..], "{job}: {} bottom", fitting.mark);
            }
        }
    }
}
