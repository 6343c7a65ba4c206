//! Jobs of legs that meet, made up from a seed (splitmix64), so that a seed gives the same job on any machine.

use super::made_up::Dice;

/// Modules of a leg between two corners, with a grill and doors in some.
fn leg(dice: &mut Dice, id: &str, corners: [bool; 2], more: &str, grill: bool) -> (String, String) {
    let (mut modules, mut fittings) = (String::new(), String::new());
    let count = 1 + dice.roll(3) as usize;
    let mut add = |name: String, width: u64| {
        modules.push_str(&format!("(id: \"{name}\", name: \"part\", width: \"{width} in\"),\n"));
    };
    // At a corner a module that may be hidden holds nothing.
    if corners[0] {
        add(format!("{id}l"), 38 + dice.roll(8));
    }
    for index in 0..count {
        let name = format!("{id}{index}");
        let width = 24 + dice.roll(16);
        let (wide, deep) = (width - 6, 12 + dice.roll(8));
        if grill && index == 0 {
            add(name.clone(), 40);
            fittings.push_str(&format!(
                "(id: \"g{name}\", name: \"grill\", look: grill, in: \"{name}\", across: centred, \
                 cut: notch(width: \"30 in\", depth: from_finished_face(\"20 in\"), drop: from_counter_top(\"9 in\")), \
                 flange: (left: \"1/2 in\", right: \"1/2 in\", back: \"3/4 in\"), weight: \"120 lb\", heat: \"60000 Btu/h\"),\n"
            ));
            continue;
        }
        add(name.clone(), width);
        fittings.push_str(&match dice.roll(4) {
            0 => format!(
                "(id: \"w{name}\", name: \"burner\", look: side_burner, in: \"{name}\", across: centred, cut: well(width: \"12 in\", \
                 depth: \"14 in\", setback: front_edge(from_finished_face(\"5 in\")))),\n"
            ),
            1 => String::new(),
            _ => format!(
                "(id: \"d{name}\", name: \"doors\", look: doors, in: \"{name}\", across: centred, \
                 cut: opening(width: \"{wide} in\", height: \"{deep} in\", drop: from_counter_top(\"6 in\"))),\n"
            ),
        });
    }
    if corners[1] {
        add(format!("{id}r"), 38 + dice.roll(8));
    }
    (format!("(id: \"{id}\", {more} modules: [{modules}]),\n"), fittings)
}

/// How many shapes there are.
pub const SHAPES: u64 = 6;

/// A job of legs that meet, by its seed: an inside corner, an outside one, a U, a diagonal, a step, a bar behind; of any
/// of these, or of the one asked for.
pub fn job(seed: u64, shape: Option<u64>) -> String {
    let mut dice = Dice(seed);
    let units = dice.of(&["inches", "millimetres", "both"]);
    let paper = dice.of(&["A4", "A3", "A2", "ANSI B", "ARCH C", "A1"]);
    let finish = dice.of(&[
        r#"veneer(name: "stone", thickness: "1 1/4 in", bed: "3/8 in", spread: "1/8 in")"#,
        r#"skim_coat(name: "skim coat", thickness: "1/8 in", spread: "1/16 in")"#,
    ]);
    let back = dice.of(&["clad", "boarded"]);
    let wall = r#"back: wall(name: "wall", gap: "1/2 in", height: "60 in"),"#;
    let rolled = dice.roll(SHAPES);
    let shape = shape.unwrap_or(rolled);
    let angle = dice.of(&["90 deg", "88.6 deg", "91.3 deg", "120 deg"]);
    let through = dice.of(&["a", "b"]);
    let seam = dice.of(&["butt", "mitre"]);
    let (mut legs, mut fittings, mut corners, mut steps) = (String::new(), String::new(), String::new(), String::new());
    let mut add = |part: (String, String)| {
        legs.push_str(&part.0);
        fittings.push_str(&part.1);
    };
    let own = if dice.roll(2) == 0 { wall } else { "" };
    match shape {
        0 => {
            add(leg(&mut dice, "a", [false, true], own, true));
            add(leg(&mut dice, "b", [true, false], own, false));
            corners = format!(
                "(left: \"a\", right: \"b\", angle: inside(\"{angle}\"), through: \"{through}\", seam: {seam})"
            );
        }
        1 => {
            add(leg(&mut dice, "a", [false, true], "", true));
            add(leg(&mut dice, "b", [true, false], "", false));
            corners = format!(
                "(left: \"a\", right: \"b\", angle: outside(\"{angle}\"), through: \"{through}\", seam: {seam})"
            );
        }
        2 => {
            add(leg(&mut dice, "a", [false, true], own, true));
            add(leg(&mut dice, "b", [true, true], own, false));
            add(leg(&mut dice, "c", [true, false], own, false));
            corners = "(left: \"a\", right: \"b\", angle: inside(\"90 deg\"), through: \"a\"), \
                       (left: \"b\", right: \"c\", angle: inside(\"90 deg\"), through: \"b\")"
                .to_owned();
        }
        3 => {
            add(leg(&mut dice, "a", [false, true], "", true));
            add(leg(&mut dice, "b", [true, true], "", false));
            add(leg(&mut dice, "c", [true, false], "", false));
            corners = "(left: \"a\", right: \"b\", angle: inside(\"135 deg\"), through: \"a\", seam: mitre), \
                       (left: \"b\", right: \"c\", angle: inside(\"135 deg\"), through: \"c\", seam: mitre)"
                .to_owned();
        }
        4 => {
            add(leg(&mut dice, "a", [false, false], "", true));
            add(leg(&mut dice, "b", [false, false], "height: counter_top(\"42 in\"),", false));
            steps = "(left: \"a\", right: \"b\")".to_owned();
        }
        _ => {
            add(leg(&mut dice, "a", [false, false], "", true));
            add((
                "(id: \"b\", behind: \"a\", depth: \"8 in\", height: counter_top(\"42 in\"), modules: [(id: \"b0\", name: \"bar\", width: \"48 in\")]),"
                    .to_owned(),
                String::new(),
            ));
        }
    }
    format!(
        r#"(
    job: (title: "Seed {seed}", client: "C", address: "A", number: "{seed}", owner: "O", drawn_by: "D", date: "2026-01-01", units: {units}),
    site: (floor: fall(along: "1/8 in per ft", across: "1/8 in per ft"), paving: "slabs"),
    frame: (depth: "26 in", tube: "1 1/2 in", feet: (shortest: "1 in", longest: "9 in", inset: "2 in")),
    build_up: (board: (name: "cement board", thickness: "1/2 in"), finish: {finish}, front: clad, left: clad, right: clad, back: {back}),
    substrate: (name: "sheet", thickness: "3/4 in", edge: flush_with_board),
    counter: (material: stone, name: "top", thickness: "1 1/4 in", overhang: (front: "1 in", left: "1 in", right: "1 in", back: "1 in"), corner_radius: "1/2 in"),
    height: counter_top("36 in"),
    legs: [{legs}],
    corners: [{corners}],
    steps: [{steps}],
    fittings: [{fittings}],
    paper: (size: "{paper}"),
)"#
    )
}
