//! Whatever the run, its sheets are legible or the program says why not: no text on a text, a line or the edge.
//!
//! Jobs are made up from a seed; each is read, solved and drawn by the library, as the program would.

mod support;

use faceline::{rules, sheets};
use support::made_up::{Dice, solved};
use support::meeting;

fn job(seed: u64) -> String {
    let mut dice = Dice(seed);
    let finish = dice.of(&[
        r#"veneer(name: "stone", thickness: "1 1/4 in", bed: "3/8 in", spread: "1/8 in")"#,
        r#"skim_coat(name: "skim coat", thickness: "1/8 in", spread: "1/16 in")"#,
        r#"tile(name: "tile", thickness: "3/8 in", bed: "1/8 in", width: "8 in", height: "4 in", joint: "1/8 in")"#,
    ]);
    let units = dice.of(&["inches", "millimetres", "both"]);
    let paper = dice.of(&["A4", "A3", "A2", "A1", "ANSI B", "ANSI D", "ARCH A", "ARCH C", "ARCH D"]);
    let right = dice.of(&[
        "open",
        r#"pier(name: "pier", gap: "3/8 in", width: "18 in", height: "60 in")"#,
        r#"wall(name: "end wall", gap: "1/2 in", height: "80 in")"#,
    ]);
    let back = dice.of(&["open", r#"wall(name: "wall", gap: "1/2 in", height: "60 in")"#]);
    let floor = dice.of(&[
        "level",
        r#"fall(along: "1/8 in per ft", across: "1/4 in per ft")"#,
        r#"fall(along: "-1/8 in per ft", across: "0 %")"#,
    ]);
    let right_face = if right == "open" { "clad" } else { "bare" };
    let back_face = if back == "open" { "boarded" } else { "bare" };
    let count = 1 + dice.roll(9) as usize;
    let grill = dice.roll(count as u64) as usize;
    let (mut modules, mut fittings) = (String::new(), String::new());
    for index in 0..count {
        let (width, inside) = if index == grill {
            (38 + dice.roll(8), 0)
        } else {
            let w = 18 + dice.roll(14);
            (w, w - 4)
        };
        modules.push_str(&format!("(id: \"M{index}\", name: \"part {index}\", width: \"{width} in\"),\n"));
        let place = format!("in: \"M{index}\", across: centred");
        if index == grill {
            fittings.push_str(&format!(
                "(id: \"grill\", name: \"grill\", look: grill, {place}, cut: notch(width: \"{}\", depth: from_finished_face(\"{}\"), \
                 drop: from_counter_top(\"{}\"), radius: \"3/8 in\"), flange: (left: \"1/2 in\", right: \"1/2 in\", back: \"3/4 in\"), \
                 weight: \"120 lb\", heat: \"60000 Btu/h\"),\n\
                 (id: \"doors\", name: \"access doors\", look: doors, in: \"M{index}\", across: aligned_with(\"grill\"), \
                 cut: opening(width: \"28 in\", height: \"12 in\", drop: from_counter_top(\"17 in\"))),\n",
                dice.inches(28, 32), dice.inches(19, 22), dice.inches(8, 10),
            ));
            continue;
        }
        fittings.push_str(&match dice.roll(5) {
            0 => format!("(id: \"f{index}\", name: \"drawer stack\", look: drawers(3), {place}, cut: opening(width: \"{inside} in\", height: \"22 in\", drop: from_counter_top(\"{}\"))),\n", dice.inches(4, 7)),
            1 => format!("(id: \"f{index}\", name: \"refrigerator\", look: refrigerator, {place}, cut: opening(width: \"{inside} in\", height: to_floor, drop: from_counter_top(\"4 in\"))),\n"),
            2 => format!("(id: \"f{index}\", name: \"side burner\", look: side_burner, {place}, cut: well(width: \"{} in\", depth: \"18 in\", radius: \"1 in\", setback: front_edge(from_finished_face(\"4 in\")))),\n", inside - 3),
            3 => format!("(id: \"f{index}\", name: \"a fitting with quite a long name\", look: door(pull: right), {place}, cut: opening(width: \"{inside} in\", height: \"{}\", drop: from_counter_top(\"5 1/2 in\"))),\n", dice.inches(6, 22)),
            _ => String::new(),
        });
    }
    format!(
        r#"(
    job: (title: "Seed {seed}", client: "C", address: "A", number: "{seed}", owner: "O", drawn_by: "D", date: "2026-01-01", units: {units}),
    site: (left: open, right: {right}, back: {back}, floor: {floor}, paving: "slabs"),
    frame: (depth: "{}", tube: "1 1/2 in", feet: (shortest: "1 in", longest: "9 in", inset: "2 in")),
    build_up: (board: (name: "cement board", thickness: "1/2 in"), finish: {finish},
        front: clad, left: clad, right: {right_face}, back: {back_face}),
    substrate: (name: "sheet", thickness: "3/4 in", edge: {}),
    counter: (material: {}, name: "top", thickness: "{}", overhang: (front: "{}", left: "1 in", right: "1 in", back: "1 in"), corner_radius: "1/2 in"),
    height: counter_top("36 in"),
    legs: [(id: "leg", modules: [{modules}])],
    fittings: [{fittings}],
    paper: (size: "{paper}"),
)"#,
        dice.inches(24, 29),
        dice.of(&["flush_with_board", "flush_with_frame", "flush_with_finish"]),
        dice.of(&["concrete", "stone", "porcelain"]),
        dice.of(&["3/4 in", "1 1/4 in", "1 1/2 in", "2 in"]),
        dice.inches(0, 3),
    )
}

/// Draws a job; what went wrong, if anything.
fn drawn(text: String) -> Result<(), String> {
    let solved = solved(text)?;
    let findings = rules::check(&solved);
    let unplaced = match sheets::draw(&solved, &findings, |_| true) {
        Ok(pages) => return if pages.len() >= 8 { Ok(()) } else { Err("too few sheets".to_owned()) },
        Err(unplaced) => unplaced,
    };
    let lines: Vec<String> =
        unplaced.iter().map(|u| format!("{} ({}): {}", u.sheet, solved.paper.name, u.what.join("; "))).collect();
    Err(lines.join("\n"))
}

#[test]
fn made_up_runs_are_lettered_without_an_overlap() {
    let count = std::env::var("FACELINE_SEEDS").ok().and_then(|n| n.parse().ok()).unwrap_or(60);
    let failed: Vec<String> =
        (1..=count).filter_map(|seed| drawn(job(seed)).err().map(|why| format!("seed {seed}: {why}"))).collect();
    assert!(failed.is_empty(), "{} of {count}:\n{}", failed.len(), failed.join("\n"));
}

/// Legs that meet: every shape in turn, at any angle and on any paper, all sheets of the set.
#[test]
fn made_up_corners_are_lettered_without_an_overlap() {
    let count = std::env::var("FACELINE_SEEDS").ok().and_then(|n| n.parse().ok()).unwrap_or(2 * meeting::SHAPES);
    let tried = (1..=count).map(|seed| (seed, drawn(meeting::job(seed, Some(seed % meeting::SHAPES)))));
    let failed: Vec<String> =
        tried.filter_map(|(seed, done)| done.err().map(|why| format!("seed {seed}: {why}"))).collect();
    assert!(failed.is_empty(), "{} of {count}:\n{}", failed.len(), failed.join("\n"));
}
