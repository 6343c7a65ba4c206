//! Counters and substrates with many cutouts, seams and odd papers: every page is legible, names every cutout, and
//! gives each from its finished faces.

use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

use faceline::drawing::{Group, Item, Page};
use faceline::sheets::Kind;
use faceline::{model, parameters, rules, sheets, solve};

struct Memory(BTreeMap<PathBuf, Vec<u8>>);

impl model::Files for Memory {
    fn size(&self, path: &Path) -> io::Result<u64> {
        self.0.get(path).map(|bytes| bytes.len() as u64).ok_or_else(|| io::ErrorKind::NotFound.into())
    }
    fn read(&self, path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
        self.0.get(path).cloned().ok_or_else(|| io::ErrorKind::NotFound.into())
    }
    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        Ok(path.to_path_buf())
    }
}

/// The same sequence for a seed on any machine (splitmix64).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % sides
    }
    fn of<'a>(&mut self, options: &[&'a str]) -> &'a str {
        options[self.roll(options.len() as u64) as usize]
    }
    /// Sixteenths of an inch between two whole inches, in inches.
    fn between(&mut self, from: u64, to: u64) -> f64 {
        from as f64 + self.roll((to - from) * 16) as f64 / 16.0
    }
}

fn job(seed: u64) -> String {
    let mut dice = Dice(seed);
    let units = dice.of(&["inches", "millimetres", "both"]);
    let paper = dice
        .of(&["A4", "A3", "A2", "A1", "ANSI A", "ANSI B", "ANSI C", "ANSI D", "ARCH A", "ARCH B", "ARCH C", "ARCH D"]);
    let end = r#"pier(name: "masonry pier", gap: "3/8 in", width: "20 in", height: "66 in")"#;
    let (left, right) = (dice.of(&["open", "open", end]), dice.of(&["open", end]));
    let back = dice.of(&["open", r#"wall(name: "garden wall", gap: "1/2 in", height: "58 in")"#]);
    let face = |bound: &str| if bound == "open" { "clad" } else { "bare" };
    let count = 1 + dice.roll(12) as usize;
    let (mut modules, mut fittings, mut seams, mut at) = (String::new(), String::new(), String::new(), 2.0);
    for index in 0..count {
        let width = dice.between(20, 40);
        modules.push_str(&format!("(id: \"M{index}\", name: \"part\", width: \"{width} in\"),"));
        let flange = r#"flange: (left: "1/2 in", right: "1/2 in", back: "1/2 in", front: "1/2 in")"#;
        let lap = if dice.roll(2) == 0 { flange } else { "clearance: \"0 in\"" };
        let (wide, deep) = (dice.between(9, 15), dice.between(10, 17));
        fittings.push_str(&match dice.roll(6) {
            0 => format!(
                "(id: \"f{index}\", name: \"grill\", look: grill, in: \"M{index}\", across: centred, cut: notch(width: \"{} in\", \
                 depth: from_finished_face(\"{} in\"), drop: from_counter_top(\"9 in\"), radius: \"3/8 in\"), \
                 flange: (left: \"1/2 in\", right: \"1/2 in\", back: \"3/4 in\"), weight: \"120 lb\", heat: \"60000 Btu/h\"),",
                width - 5.0, dice.between(17, 22),
            ),
            1 | 2 => format!(
                "(id: \"f{index}\", name: \"side burner\", look: side_burner, in: \"M{index}\", across: centred, \
                 cut: well(width: \"{wide} in\", depth: \"{deep} in\", radius: \"1/2 in\", setback: front_edge(from_finished_face(\"4 in\"))), {lap}),"
            ),
            3 | 4 => format!(
                "(id: \"f{index}\", name: \"sink\", look: sink, in: \"M{index}\", across: centred, \
                 cut: well(width: \"{wide} in\", depth: \"{deep} in\", radius: \"3/4 in\", setback: centre(from_finished_face(\"12 in\"))), {lap}),\
                 (id: \"g{index}\", name: \"faucet\", look: faucet, in: \"M{index}\", across: aligned_with(\"f{index}\"), \
                 cut: round_well(diameter: \"1 3/8 in\", setback: centre(from_finished_face(\"23 in\")))),"
            ),
            _ => String::new(),
        });
        at += width;
        if index + 1 < count && dice.roll(3) == 0 {
            seams.push_str(&format!("(leg: \"leg\", along: \"{at} in\"),"));
        }
    }
    let splash = if back == "open" { "" } else { dice.of(&["", r#", splash: (height: "4 in", thickness: "3/4 in")"#]) };
    format!(
        r#"(
    job: (title: "Seed {seed}", client: "C", address: "A", number: "{seed}", owner: "O", drawn_by: "D", date: "2026-01-01", units: {units}),
    site: (left: {left}, right: {right}, back: {back}, floor: level, paving: "slabs"),
    frame: (depth: "26 in", tube: "1 1/2 in", feet: (shortest: "1 in", longest: "9 in", inset: "2 in")),
    build_up: (board: (name: "cement board", thickness: "1/2 in"),
        finish: veneer(name: "stone", thickness: "1 in", bed: "1/4 in", spread: "1/8 in"),
        front: clad, left: {}, right: {}, back: {}),
    substrate: (name: "cement board", thickness: "3/4 in", edge: {}),
    counter: (material: concrete, name: "cast concrete", thickness: "{} in", overhang: (front: "{} in", left: "1 in", right: "1 in", back: "1 in"),
        corner_radius: "1/2 in", drip: "1/4 in"{splash}, seams: [{seams}]),
    height: counter_top("36 in"),
    legs: [(id: "leg", modules: [{modules}])],
    fittings: [{fittings}],
    paper: (size: "{paper}"),
)"#,
        face(left),
        face(right),
        face(back),
        dice.of(&["flush_with_board", "flush_with_frame", "flush_with_finish"]),
        dice.between(1, 3),
        dice.between(0, 3),
    )
}

fn texts(group: &Group, found: &mut Vec<String>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => texts(inner, found),
            Item::Text(text) => found.push(text.content()),
            Item::Path(_) => {}
        }
    }
}

/// Draws one kind of sheet for a seed and holds it to what it must carry; what is missing, if anything.
fn held(seed: u64, wanted: fn(Kind) -> bool, plane: solve::Plane) -> Result<(), String> {
    let path = PathBuf::from("job.ron");
    let files = Memory(BTreeMap::from([(path.clone(), job(seed).into_bytes())]));
    let said = |problems: Vec<faceline::findings::Problem>| {
        problems.iter().map(|p| p.message.clone()).collect::<Vec<_>>().join("\n")
    };
    let written = model::read(&path, &[], &files).map_err(said)?;
    let given = parameters::resolve(&written, &[]).map_err(said)?;
    let solved = solve::solve(&given).map_err(said)?;
    let findings = rules::check(&solved);
    let pages: Vec<Page> = sheets::draw(&solved, &findings, wanted).map_err(|unplaced| {
        unplaced
            .iter()
            .map(|u| format!("{} ({}): {}", u.sheet, solved.paper.name, u.what.join("; ")))
            .collect::<Vec<_>>()
            .join("\n")
    })?;
    let mut said = Vec::new();
    pages.iter().for_each(|page| texts(&page.root, &mut said));
    for leg in &solved.legs {
        for fitting in leg.fittings.iter().filter(|f| f.cutout(plane).is_some()) {
            let times = said.iter().filter(|text| **text == fitting.mark).count();
            if times < 2 {
                return Err(format!(
                    "{} ({}) stands {times} times, wanted in the view and in the table",
                    fitting.mark, solved.paper.name
                ));
            }
        }
    }
    if !said.iter().any(|text| text.contains("silica dust")) {
        return Err("the caution is missing".to_owned());
    }
    Ok(())
}

fn all_held(wanted: fn(Kind) -> bool, plane: solve::Plane) {
    let count = std::env::var("FACELINE_SEEDS").ok().and_then(|n| n.parse().ok()).unwrap_or(12);
    let failed: Vec<String> = (1..=count)
        .filter_map(|seed| held(seed, wanted, plane).err().map(|why| format!("seed {seed}: {why}")))
        .collect();
    assert!(failed.is_empty(), "{} of {count}:\n{}", failed.len(), failed.join("\n"));
}

#[test]
fn counters_are_legible_and_name_every_cutout() {
    all_held(|kind| matches!(kind, Kind::Counter(_)), solve::Plane::Counter);
}

#[test]
fn substrates_are_legible_and_name_every_cutout() {
    all_held(|kind| matches!(kind, Kind::Substrate(_)), solve::Plane::Substrate);
}
