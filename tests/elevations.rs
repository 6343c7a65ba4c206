//! Elevations of legs that meet: every leg has its own, they fold where the finished faces meet, and every opening is
//! located from its leg's finished end, whatever the corner.
//!
//! Jobs are made up from a seed (splitmix64); each is read, solved and drawn by the library, as the program would.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::drawing::{Fact, Group, Item, Page, Shape};
use faceline::geometry::{LegPoint, PlanPoint};
use faceline::sheets::Kind;
use faceline::solve::{Face, JointKind, Plane, SheetPart, Solved};
use faceline::{rules, sheets};
use support::made_up::{sample, solved};
use support::meeting;

fn is_elevation(kind: Kind) -> bool {
    matches!(kind, Kind::Front(..) | Kind::Ends(..) | Kind::Section(..))
}

fn fact<'f>(facts: &'f [Fact], name: &str) -> Option<&'f str> {
    facts.iter().find(|fact| fact.0 == name).map(|fact| fact.1.as_str())
}

/// What is looked for on a page: fold lines as (leg that is met, model x), and running dimensions as (what to, mm).
#[derive(Default)]
struct Found {
    folds: Vec<(String, f64)>,
    tapes: Vec<(String, f64)>,
    /// Joints of boards that stand upright, as model x.
    joints: Vec<f64>,
    keyed: bool,
}

fn walk(group: &Group, view: Option<(f64, f64)>, found: &mut Found) {
    let mut view = view;
    if let (Some(name), Some(scale), Some(origin)) =
        (fact(&group.facts, "data-view"), fact(&group.facts, "data-scale"), fact(&group.facts, "data-origin-mm"))
    {
        let x = origin.split(',').next().unwrap().parse::<f64>().unwrap();
        view = (name == "front").then(|| (x, scale.parse::<f64>().unwrap()));
        found.keyed |= name == "key-plan";
    }
    if let (Some(to), Some(mm)) = (fact(&group.facts, "data-to-datum"), fact(&group.facts, "data-dim-mm")) {
        found.tapes.push((to.to_owned(), mm.parse().unwrap()));
    }
    for item in &group.items {
        match item {
            Item::Group(inner) => walk(inner, view, found),
            Item::Path(path) => {
                if let (Some("board joint"), Shape::Line(a, _), Some((x, scale))) =
                    (fact(&path.facts, "data-feature"), &path.shape, view)
                {
                    found.joints.push((a.x - x) / scale);
                }
                if let (Some(met), Shape::Line(a, b), Some((x, scale))) =
                    (fact(&path.facts, "data-meets"), &path.shape, view)
                {
                    assert!((a.x - b.x).abs() < 1e-9, "a fold stands upright");
                    if path.class == "fold" {
                        found.folds.push((met.to_owned(), (a.x - x) / scale));
                    }
                }
            }
            Item::Text(_) => {}
        }
    }
}

/// A page's name without its number in the set and its number in the sheet.
fn base(name: &str) -> &str {
    let name = name.split_once('-').map_or(name, |(_, rest)| rest);
    match name.rsplit_once('-') {
        Some((base, page)) if page.parse::<usize>().is_ok() && !base.ends_with("leg") => base,
        _ => name,
    }
}

fn found(pages: &[&Page]) -> Found {
    let mut all = Found::default();
    for page in pages {
        walk(&page.root, None, &mut all);
    }
    all
}

/// Where two upright planes meet on a leg's u: this leg's at depth `own`, the other's at depth `across`, from the plan.
fn meeting_at(solved: &Solved, leg: usize, other: usize, own: f64, across: f64) -> f64 {
    let at = |leg: usize, u: f64, v: f64| solved.legs[leg].placement.to_plan(LegPoint::new(u, v));
    let (p, q) = (at(other, 0.0, across), at(other, 1000.0, across));
    let (p, q) = (solved.legs[leg].placement.to_leg(p), solved.legs[leg].placement.to_leg(q));
    p.x + (q.x - p.x) * (own - p.y) / (q.y - p.y)
}

/// Draws the elevations of a job and looks at each of them; what is wrong.
fn looked_at(solved: &Solved) -> Result<(), String> {
    let findings = rules::check(solved);
    let kinds = sheets::kinds(solved);
    for (index, leg) in solved.legs.iter().enumerate() {
        assert!(kinds.contains(&Kind::Front(index, Face::Front)), "leg {} has no elevation", leg.id);
        let sees_back = leg.back.is_open() && leg.boards.iter().any(|board| board.face == Face::Back);
        assert_eq!(kinds.contains(&Kind::Front(index, Face::Back)), sees_back, "the back of leg {}", leg.id);
    }
    let said = |unplaced: Vec<sheets::Unplaced>| {
        unplaced
            .iter()
            .map(|u| format!("{} ({}): {}", u.sheet, solved.paper.name, u.what.join("; ")))
            .collect::<Vec<_>>()
            .join("\n")
    };
    let pages = sheets::draw(solved, &findings, is_elevation).map_err(said)?;
    for kind in kinds.iter().copied() {
        let Kind::Front(index, face) = kind else { continue };
        let number = if solved.legs.len() > 1 { format!("-leg-{}", index + 1) } else { String::new() };
        let name = format!("front-elevation{number}{}", if face == Face::Back { "-back" } else { "" });
        let own: Vec<&Page> = pages.iter().filter(|page| base(&page.name) == name).collect();
        assert!(!own.is_empty(), "{kind:?} has no page");
        let found = found(&own);
        let leg = &solved.legs[index];
        let length = leg.datums.finished_right.mm();
        let seen = |u: f64| if face == Face::Back { length - u } else { u };
        for joint in &solved.joints {
            let JointKind::Corner(_) = joint.kind else { continue };
            let Some(other) = [(joint.left, joint.right), (joint.right, joint.left)]
                .iter()
                .find(|pair| pair.0 == index)
                .map(|pair| pair.1)
            else {
                continue;
            };
            let depth = |leg: usize| if face == Face::Back { solved.legs[leg].datums.finished_back.mm() } else { 0.0 };
            let wanted = seen(meeting_at(solved, index, other, depth(index), depth(other)));
            let id = &solved.legs[other].id;
            let fold = found.folds.iter().find(|fold| fold.0 == *id);
            let Some(fold) = fold else { return Err(format!("{kind:?}: no fold at leg {id}")) };
            assert!((fold.1 - wanted).abs() < 0.01, "{kind:?}: the fold at leg {id} is at {}, not {wanted}", fold.1);
        }
        for joint in solved.shop.cutting.joints.iter().filter(|one| !one.between_modules && !one.level) {
            if joint.leg == index && joint.part == SheetPart::Face(face) {
                let wanted = seen(joint.at.mm());
                assert!(found.joints.iter().any(|x| (x - wanted).abs() < 0.01), "{kind:?}: no joint at {wanted}");
            }
        }
        for fitting in leg.fittings.iter().filter(|fitting| fitting.face == face) {
            let Some(cutout) = fitting.cutout(Plane::of(face)) else { continue };
            let (x0, x1) = (seen(cutout.extent.x0.mm()), seen(cutout.extent.x1.mm()));
            for (word, wanted) in [("left edge", x0.min(x1)), ("right edge", x0.max(x1))] {
                let name = format!("{} {word}", fitting.mark);
                let tape = found.tapes.iter().find(|tape| tape.0 == name);
                let Some(tape) = tape else { return Err(format!("{kind:?}: no dimension to {name}")) };
                assert!((tape.1 - wanted).abs() < 1e-5, "{kind:?}: {name} at {}, not {wanted}", tape.1);
            }
        }
    }
    Ok(())
}

#[test]
fn made_up_corners_have_every_elevation() {
    let count = std::env::var("FACELINE_SEEDS").ok().and_then(|n| n.parse().ok()).unwrap_or(36);
    let (mut failed, mut drawn) = (Vec::new(), 0);
    for seed in 1..=count {
        match solved(meeting::job(seed, None)) {
            Ok(solved) => {
                drawn += 1;
                failed.extend(looked_at(&solved).err().map(|why| format!("seed {seed}: {why}")));
            }
            Err(why) => failed.push(format!("seed {seed} is not solved: {why}")),
        }
    }
    assert!(drawn > count / 2, "most jobs are solved");
    assert!(failed.is_empty(), "{} of {count}:\n{}", failed.len(), failed.join("\n"));
}

#[test]
fn the_samples_have_every_elevation() {
    for name in ["corner", "bar"] {
        let solved = sample(name);
        // The bar's back is wider than a sheet, so that its boards are parted within a module.
        let parted = solved.shop.cutting.joints.iter().filter(|joint| !joint.between_modules).count();
        assert_eq!(parted > 0, name == "bar", "{name}");
        looked_at(&solved).unwrap();
    }
}

/// All texts of a group.
fn texts(group: &Group, all: &mut Vec<String>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => texts(inner, all),
            Item::Text(text) => all.push(text.content()),
            Item::Path(_) => {}
        }
    }
}

/// The plan of legs that meet names every section and elevation by what its own sheet says: its heading, its number.
#[test]
fn the_plan_marks_every_section_and_elevation() {
    for sample in ["corner", "bar"] {
        let solved = self::sample(sample);
        let findings = rules::check(&solved);
        let pages =
            sheets::draw(&solved, &findings, |kind| kind == Kind::Plan || is_elevation(kind)).expect("it is drawn");
        let named = |page: &Page| {
            let mut all = Vec::new();
            texts(&page.root, &mut all);
            all
        };
        let plan = named(pages.iter().find(|page| base(&page.name) == "plan").expect("a plan"));
        let marked = |words: &str| plan.iter().filter(|text| *text == words).count();
        let (mut sections, mut faces) = (0, 0);
        for page in &pages {
            let number = page.name.split('-').next().unwrap().trim_start_matches('0').to_owned();
            let leg = page.name.split("-leg-").nth(1).map(|rest| &rest[..1]);
            let Some(leg) = leg.and_then(|leg| leg.parse::<usize>().ok()) else { continue };
            let (id, words) = (&solved.legs[leg - 1].id, named(page));
            let heading = |start: &str| words.iter().any(|text| text.starts_with(start));
            match base(&page.name) {
                name if name.starts_with("section") => {
                    sections += 1;
                    let letter = ["X", "Y", "Z"].into_iter().find(|l| heading(&format!("Section {l}\u{2013}{l}")));
                    // One mark before the leg, one behind it.
                    assert_eq!(marked(letter.expect("a section has a letter")), 2, "{sample}: {}", page.name);
                    assert!(marked(&format!("sheet {number}")) >= 1, "{sample}: {}", page.name);
                }
                name if name.starts_with("front") => {
                    faces += 1;
                    let title = if name.ends_with("back") { "Back elevation" } else { "Front elevation" };
                    assert!(heading(title) && marked(title) >= 1, "{sample}: {}", page.name);
                    assert_eq!(marked(&format!("leg {id}, sheet {number}")), 1, "{sample}: {}", page.name);
                }
                name if name.starts_with("end") => {
                    faces += 1;
                    assert!(marked(&format!("leg {id}, sheet {number}")) >= 1, "{sample}: {}", page.name);
                    assert!(["Left end", "Right end"].iter().any(|end| heading(end) && marked(end) >= 1));
                }
                _ => {}
            }
        }
        assert!(sections >= 1 && faces >= 4, "{sample}");
    }
}

/// Heavy lines of the key plans of a group, in plan millimetres.
fn heavy(group: &Group, view: Option<[f64; 3]>, all: &mut Vec<[PlanPoint; 2]>) {
    let mut view = view;
    if let Some(name) = fact(&group.facts, "data-view") {
        let number = |name: &str| fact(&group.facts, name).unwrap().split(',').map(|n| n.parse::<f64>().unwrap());
        let origin: Vec<f64> = number("data-origin-mm").collect();
        view = (name == "key-plan").then(|| [origin[0], origin[1], number("data-scale").next().unwrap()]);
    }
    for item in &group.items {
        match item {
            Item::Group(inner) => heavy(inner, view, all),
            Item::Path(path) => {
                if let (Shape::Line(a, b), Some(pen), Some([x, y, scale])) = (&path.shape, path.pen, view)
                    && pen.width > 0.9
                {
                    let plan =
                        |p: &faceline::geometry::PaperPoint| PlanPoint::new((p.x - x) / scale, (y - p.y) / scale);
                    all.push([plan(a), plan(b)]);
                }
            }
            Item::Text(_) => {}
        }
    }
}

/// The key plan of every elevation draws heavy the faces that its sheet shows and no others, in every sample.
#[test]
fn key_plans_show_the_face_of_their_sheet() {
    for name in ["terrace", "courtyard", "island", "corner", "bar"] {
        let solved = sample(name);
        let pages = sheets::draw(&solved, &rules::check(&solved), is_elevation).expect("it is drawn");
        for kind in sheets::kinds(&solved) {
            let (index, sheet, wanted) = match kind {
                Kind::Front(leg, Face::Back) => (leg, ("front-elevation", "-back"), vec![Face::Back]),
                Kind::Front(leg, face) => (leg, ("front-elevation", ""), vec![face]),
                Kind::Ends(leg) => (leg, ("end-elevations", ""), vec![Face::Left, Face::Right]),
                _ => continue,
            };
            let number = if solved.legs.len() > 1 { format!("-leg-{}", index + 1) } else { String::new() };
            let sheet = format!("{}{number}{}", sheet.0, sheet.1);
            let mut lines = Vec::new();
            let own = pages.iter().filter(|page| base(&page.name) == sheet);
            own.for_each(|page| heavy(&page.root, None, &mut lines));
            let leg = &solved.legs[index];
            let (long, deep) = (leg.datums.finished_right.mm(), leg.datums.finished_back.mm());
            let edges = [
                (Face::Front, [(0.0, 0.0), (long, 0.0)]),
                (Face::Back, [(long, deep), (0.0, deep)]),
                (Face::Left, [(0.0, deep), (0.0, 0.0)]),
                (Face::Right, [(long, 0.0), (long, deep)]),
            ];
            assert!(!lines.is_empty(), "{name}: {sheet} has no key plan");
            for line in &lines {
                let at = line.map(|p| leg.placement.to_leg(p));
                // Places on paper are exact to a thousandth of a millimetre, at 1:1000 at the smallest.
                let on = |ends: &[(f64, f64); 2]| at.iter().zip(ends).all(|(p, e)| (p.x - e.0).hypot(p.y - e.1) < 2.0);
                let face = edges.iter().find(|(_, ends)| on(ends)).map(|(face, _)| *face);
                assert!(face.is_some_and(|face| wanted.contains(&face)), "{name}: {sheet} shows {face:?} at {at:?}");
            }
        }
    }
}
