//! Reading jobs, good and bad.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use faceline::findings::Problem;
use faceline::model::{self, Files, JobFile};
use faceline::parameters::given::{
    CornerShape, Cut, DepthFrom, Face, Figure, Floor, Given, Height, HeightFrom, JointKind, NotchCut, Width,
};
use faceline::parameters::resolve;
use faceline::units::{Exact, Length};
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

/// Files that a test holds in its hand.
#[derive(Default)]
struct Held {
    files: BTreeMap<PathBuf, Vec<u8>>,
    /// A path that is a link to another.
    links: BTreeMap<PathBuf, PathBuf>,
}

impl Held {
    fn with(mut self, path: &str, bytes: impl Into<Vec<u8>>) -> Held {
        self.files.insert(path.into(), bytes.into());
        self
    }

    fn get(&self, path: &Path) -> io::Result<&Vec<u8>> {
        let path = self.links.get(path).map_or(path, PathBuf::as_path);
        self.files.get(path).ok_or_else(|| io::ErrorKind::NotFound.into())
    }
}

impl Files for Held {
    fn size(&self, path: &Path) -> io::Result<u64> {
        Ok(self.get(path)?.len() as u64)
    }

    fn read(&self, path: &Path, limit: u64) -> io::Result<Vec<u8>> {
        Ok(self.get(path)?.iter().copied().take(limit as usize).collect())
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        let path = self.links.get(path).map_or(path, PathBuf::as_path);
        if self.files.keys().any(|file| file.starts_with(path)) {
            Ok(path.to_path_buf())
        } else {
            Err(io::ErrorKind::NotFound.into())
        }
    }
}

fn read(files: &Held) -> Result<JobFile, Vec<Problem>> {
    model::read(Path::new("/job/job.ron"), &[PathBuf::from("/shelf")], files)
}

fn solve(files: &Held, set: &[(&str, &str)]) -> Result<Given, Vec<Problem>> {
    let set: Vec<(String, String)> = set.iter().map(|(name, value)| ((*name).into(), (*value).into())).collect();
    resolve(&read(files)?, &set)
}

fn job(text: &str) -> Held {
    Held::default().with("/job/job.ron", text)
}

const EXAMPLE: &str = include_str!("worked_example.ron");
const TERRACE: &str = include_str!("../samples/terrace.ron");

/// The worked example with one stretch of its text replaced.
fn broken(from: &str, to: &str) -> Vec<Problem> {
    assert!(EXAMPLE.contains(from), "the example has no {from}");
    solve(&job(&EXAMPLE.replacen(from, to, 1)), &[]).err().unwrap_or_default()
}

/// The one problem that this change makes: its message, remedy, and the words at its place.
fn one(from: &str, to: &str) -> (String, String, String) {
    let problems = broken(from, to);
    assert_eq!(problems.len(), 1, "{problems:#?}");
    said(&problems[0])
}

fn said(problem: &Problem) -> (String, String, String) {
    let at = problem.place.as_ref().map_or("", |place| &place.file.text[place.start..place.end]);
    (problem.message.clone(), problem.instead.clone(), at.to_owned())
}

fn inches(length: Length) -> f64 {
    length.inches()
}

#[test]
fn the_worked_example_reads_as_written() {
    let given = solve(&job(EXAMPLE), &[]).unwrap();
    assert_eq!(inches(given.frame.depth), 28.0);
    assert_eq!(inches(given.legs[0].faces.front.total()), 2.125);
    assert_eq!(inches(given.legs[0].faces.left.total()), 2.125);
    assert_eq!(given.height, Height::CounterTop(Length::from_inches(36.0)));
    let Cut::Notch { depth, depth_from, drop, drop_from, .. } = &given.fittings[0].cut else { panic!("no notch") };
    assert_eq!((inches(depth.value()), *depth_from), (21.25, DepthFrom::FinishedFace));
    assert_eq!((inches(drop.value()), *drop_from), (9.0, HeightFrom::CounterTop));
    assert!(given.defaults.iter().any(|used| used.name == "frame.tube" && used.value == "1 1/2 in"));
    assert!(!given.defaults.iter().any(|used| used.name == "counter.overhang_front"));
}

#[test]
fn the_terrace_reads_whole() {
    let given = solve(&job(TERRACE), &[]).unwrap_or_else(|problems| panic!("{problems:#?}"));
    assert_eq!(given.fittings.len(), 7);
    assert!(matches!(given.site.floor, Floor::Fall { along, .. } if (along - 0.125 / 12.0).abs() < 1e-15));
    assert_eq!(given.legs[0].modules[2].width, Width::WhatIsLeft);
    let Cut::Opening { drop, width, .. } = &given.fittings[1].cut else { panic!("no opening") };
    assert_eq!(inches(drop.value()), 12.5);
    assert_eq!((inches(width.value()), inches(width.published.unwrap())), (30.0625, 30.0));
}

#[test]
fn the_command_line_puts_other_values_in_place() {
    let drop = |set: &[(&str, &str)]| {
        let given = solve(&job(TERRACE), set).unwrap();
        let Cut::Opening { drop, .. } = &given.fittings[1].cut else { panic!("no opening") };
        inches(drop.value())
    };
    assert_eq!(drop(&[("rail", "4 in")]), 13.5);
    assert_eq!(drop(&[("grill.drop", "10 in")]), 13.0);
    assert_eq!(drop(&[("frame.tube", "2 in")]), 13.0);
    let problems = solve(&job(TERRACE), &[("rial", "4 in")]).unwrap_err();
    let (message, instead, at) = said(&problems[0]);
    assert_eq!((message.as_str(), instead.as_str(), at.as_str()), ("nothing is called `rial`", "write `rail`", "rial"));
}

/// Message, remedy and place of the one problem that a change of the worked example makes.
#[track_caller]
fn expect(from: &str, to: &str, message: &str, instead: &str, at: &str) {
    let found = one(from, to);
    assert!(found.0.contains(message), "{found:?}");
    assert!(found.1.contains(instead), "{found:?}");
    assert_eq!(found.2, at, "{found:?}");
}

#[test]
fn a_bare_number_asks_for_its_unit() {
    expect("\"28 in\"", "28", "`28` has no unit", "write \"28 in\" or \"28 mm\"", "28");
    expect("\"28 in\"", "\"28\"", "`28` has no unit", "write \"28 in\"", "\"28\"");
    expect("\"28 in\"", "\"2 * 14\"", "a plain number", "20 3/4 in", "\"2 * 14\"");
}

#[test]
fn a_wrong_unit_is_named() {
    expect("\"28 in\"", "\"28 inchs\"", "`inchs` is not a unit", "", "inchs");
    expect("\"28 in\"", "\"28 lb\"", "is a weight, and a length is wanted", "", "\"28 lb\"");
    expect("\"28 in\"", "\"28 in * 1 in\"", "is an area", "", "\"28 in * 1 in\"");
    expect("\"28 in\"", "\"28 in + 1\"", "adds a length and a plain number", "unit", "28 in + 1");
}

#[test]
fn lengths_that_cannot_be_are_refused() {
    expect("\"28 in\"", "\"-28 in\"", "negative", "", "\"-28 in\"");
    expect("\"28 in\"", "\"0 in\"", "zero", "", "\"0 in\"");
    expect("\"28 in\"", "\"1001 m\"", "kilometre", "", "\"1001 m\"");
    expect("\"28 in\"", &format!("\"{} in\"", "9".repeat(400)), "too large", "", &"9".repeat(400));
    expect("\"28 in\"", "\"28 in / (1 - 1)\"", "divides by zero", "", "28 in / (1 - 1)");
    expect("\"28 in\"", "\"\"", "empty", "20 3/4 in", "\"\"");
    expect("\"28 in\"", "[1, 2]", "text is expected", "", "[1, 2]");
}

#[test]
fn misspelt_names_are_told_with_the_nearest() {
    expect("depth: \"28 in\"", "dept: \"28 in\"", "`dept` is not a field of `frame`", "write `depth`", "dept");
    expect("look: grill", "look: gril", "`gril` is not one of the choices", "write `grill`", "gril");
    expect(
        "\"28 in\"",
        "\"grill.cutout_wdth\"",
        "nothing is called",
        "write `grill.cutout_width`",
        "grill.cutout_wdth",
    );
    expect("in: \"B\"", "in: \"E\"", "no module `E`", "", "\"E\"");
    expect("thickness: \"3/4 in\",", "", "`thickness` is missing from `substrate`", "", ")");
    expect("id: \"A\"", "id: \"B\"", "given twice", "", "\"B\"");
    expect("id: \"A\"", "id: \"frame\"", "can't be the id", "", "\"frame\"");
    expect("across: centred", "across: aligned_with(\"gril\")", "no fitting `gril`", "write \"grill\"", "\"gril\"");
    expect("across: centred", "across: aligned_with(\"grill\")", "placed from each other", "", "\"grill\"");
}

#[test]
fn all_mistakes_are_told_at_once() {
    let text = EXAMPLE
        .replacen("depth: \"28 in\"", "dept: \"28 in\", depth: 28", 1)
        .replacen("id: \"A\"", "it: (1, \")\"), id: \"A\"", 1)
        .replacen("\"42 in\"", "\"42 inch + 3\"", 1)
        .replacen("\"9 in\"", "\"nine\"", 1);
    let problems = solve(&job(&text), &[]).unwrap_err();
    let messages: Vec<&str> = problems.iter().map(|problem| problem.message.as_str()).collect();
    assert_eq!(
        messages,
        [
            "`dept` is not a field of `frame`",
            "`28` has no unit: it is a plain number",
            "`it` is not a field of `module`",
            "`42 inch + 3` adds a length and a plain number",
            "nothing is called `nine`",
        ]
    );
    let lines: Vec<usize> = problems.iter().map(|problem| problem.place.as_ref().unwrap().line_column().0).collect();
    assert!(lines.is_sorted(), "{lines:?}");
}

#[test]
fn services_and_limits_are_refused_with_their_remedy() {
    let told = |services: &str, message: &str, instead: &str| {
        let text = EXAMPLE.replacen("fittings: [", &format!("{services}\n    fittings: ["), 1);
        assert_ne!(text, EXAMPLE);
        let problems = solve(&job(&text), &[]).expect_err(services);
        let found = problems.iter().find(|p| p.message.contains(message)).unwrap_or_else(|| panic!("{problems:#?}"));
        assert!(found.instead.contains(instead), "{found:#?}");
        assert!(found.place.is_some(), "{found:#?}");
    };
    told("services: (fuel: naturel_gas),", "is not one of the choices", "natural_gas");
    told("services: (supply: \"7 in\"),", "a pressure is wanted here", "7 in wc");
    told("services: (pipes: []),", "`pipes` is not a field of `services`", "pipe");
    let pipe = |size: &str| {
        format!("services: (pipe: [(id: \"1\", from: \"m\", to: \"grill\", length: \"9 ft\", installed: \"{size}\")]),")
    };
    told(&pipe("5/8 in"), "no pipe is made in `5/8 in`", "1/2 in, 3/4 in");
    told("services: (connections: [(fitting: \"gril\")]),", "no fitting `gril` to connect", "write \"grill\"");
    told("services: (cylinders: [(in: \"Z\", holds: \"20 lb\")]),", "no module `Z` for a cylinder", "");
    told("services: (loads: [(id: \"a\", heat: \"0 kW\")]),", "zero", "");
    told("limits: { \"aisle-wide-enough\": (value: \"44 in\", because: \"  \") },", "has no reason", "say why");
    told("limits: { \"aisle-wide-enough\": (value: \"44 in\") },", "`because` is missing", "");
    let many = "(id: \"a\", from: \"b\", to: \"c\", length: \"1 ft\"),".repeat(501);
    told(&format!("services: (pipe: [{many}]),"), "more than 500 segments", "");
}

#[test]
fn figures_of_materials_are_read_as_the_bag_says_them_and_refused_with_their_remedy() {
    let with = |line: &str| EXAMPLE.replacen("fittings: [", &format!("{line}\n    fittings: ["), 1);
    let given = solve(
        &job(&with("materials: { \"mortar.yield\": \"0.5 ft3\", \"screws.box\": 250, \"tape.roll\": \"2 * 75 ft\" },")),
        &[],
    );
    let given = given.unwrap_or_else(|problems| panic!("{problems:#?}"));
    let worth = |figure| given.materials.worth(figure).map(|worth| (worth.text.as_str(), worth.given));
    assert_eq!(worth(Figure::MortarYield), Some(("0.5 ft3", true)));
    assert_eq!(worth(Figure::MortarBag), Some(("50 lb", false)));
    assert_eq!(worth(Figure::VeneerBox), None);
    assert_eq!(given.materials.exact(Figure::MortarYield), Exact::read("0.5 ft3").unwrap());
    assert_eq!(given.materials.exact(Figure::TapeRoll), Exact::read("150 ft").unwrap());
    let set =
        solve(&job(&with("materials: { \"mortar.yield\": \"0.5 ft3\" },")), &[("materials.mortar.yield", "0.4 ft3")]);
    assert_eq!(set.unwrap().materials.exact(Figure::MortarYield), Exact::read("0.4 ft3").unwrap());
    let told = |line: &str, message: &str, instead: &str| {
        let problems = solve(&job(&with(line)), &[]).err().unwrap_or_default();
        let found = problems.iter().find(|problem| problem.message.contains(message));
        let found = found.unwrap_or_else(|| panic!("{line}: {problems:#?}"));
        assert!(found.instead.contains(instead) && found.place.is_some(), "{found:#?}");
    };
    told("materials: { \"mortar.yeild\": \"0.5 ft3\" },", "no figure of materials", "mortar.yield");
    told("materials: { \"mortar.yield\": \"50 lb\" },", "a weight, and a volume is wanted", "0.45 ft3");
    told("materials: { \"mortar.yield\": \"0 ft3\" },", "is zero", "0.45 ft3");
    told("materials: { \"tape.roll\": \"9 ft\", \"tape.roll\": \"8 ft\" },", "given twice", "keep one");
}

#[test]
fn files_that_are_no_jobs_are_refused() {
    let said = |bytes: Vec<u8>| read(&Held::default().with("/job/job.ron", bytes)).unwrap_err()[0].message.clone();
    assert!(said(Vec::new()).contains("empty"));
    assert!(said(b" \n\t".to_vec()).contains("empty"));
    assert!(said(b"// only a comment\n".to_vec()).len() > 5);
    assert!(said(vec![0xff, 0xfe, 0x00]).contains("not UTF-8"));
    assert!(said(b"(job\0)".to_vec()).contains("zero bytes"));
    assert!(said(vec![b' '; 50_000_000]).contains("too large"));
    assert!(read(&Held::default()).unwrap_err()[0].message.contains("no such file"));
}

#[test]
fn deep_nesting_is_refused() {
    for text in [
        "(".repeat(100_000),
        "[".repeat(100_000),
        format!("(job: {}", "(".repeat(100_000)),
        format!("(job: (title: {}", "[".repeat(100_000)),
        EXAMPLE.replacen("\"28 in\"", &"[".repeat(100_000), 1),
        EXAMPLE.replacen("\"33 3/8 in\"", &"(published: ".repeat(100_000), 1),
        EXAMPLE.replacen("\"33 3/8 in\"", &"/*".repeat(100_000), 1),
    ] {
        let problems = read(&job(&text)).unwrap_err();
        assert_eq!(problems.len(), 1);
        assert!(problems[0].place.is_some());
    }
    let nested = format!("\"{}1 in{}\"", "(".repeat(500), ")".repeat(500));
    assert!(broken("\"28 in\"", &nested)[0].message.contains("nested"));
}

#[test]
fn cycles_name_their_members_in_order() {
    let with = |entries: &str| broken("frame:", &format!("parameters: {{ {entries} }},\n    frame:"));
    let problems = with("\"a\": \"b + 1 in\", \"b\": \"c\", \"c\": \"a * 2\", \"d\": \"a\"");
    assert_eq!(problems.len(), 1, "{problems:#?}");
    assert!(problems[0].message.contains("a -> b -> c -> a"), "{}", problems[0].message);
    assert!(with("\"a\": \"a\"")[0].message.contains("in terms of itself"));
    assert!(broken("\"28 in\"", "\"frame.depth\"")[0].message.contains("in terms of itself"));
    assert!(with("\"a\": \"1 in\", \"a\": \"2 in\"")[0].message.contains("given twice"));
    assert!(with("\"mm\": \"1 in\"")[0].message.contains("can't be the name"));
    assert!(with("\"a\": \"1 in / 0\"")[0].message.contains("divides by zero"));
    assert!(with("\"a\": \"1 in / (2 in - 2 in)\"")[0].message.contains("divides by zero"));
}

#[test]
fn a_long_chain_is_worked_out_and_a_long_circle_told() {
    let chain = |last: &str| {
        let mut entries: String = (0..60_000).map(|n| format!("\"p{n}\": \"p{} + 1 mm\",\n", n + 1)).collect();
        entries.push_str(&format!("\"p60000\": \"{last}\""));
        let text = EXAMPLE.replacen(
            "frame: (depth: \"28 in\")",
            &format!("parameters: {{ {entries} }},\n frame: (depth: \"p0\")"),
            1,
        );
        solve(&job(&text), &[])
    };
    assert_eq!(chain("1 mm").unwrap().frame.depth, Length::from_mm(60_001.0));
    let problems = chain("p0").unwrap_err();
    assert_eq!(problems.len(), 1);
    assert!(problems[0].message.contains("more) -> p0"), "{}", problems[0].message);
}

#[test]
fn widths_that_wait_for_the_layout_are_not_for_arithmetic() {
    let text = |width: &str| EXAMPLE.replacen("\"18 in\"", width, 1).replacen("\"28 in\"", "\"A.width\"", 1);
    for width in ["\"what is left\"", "\"18 in to 24 in\""] {
        let problems = solve(&job(&text(width)), &[]).unwrap_err();
        assert_eq!(problems.len(), 1, "{problems:#?}");
        assert!(problems[0].message.contains("known only once"), "{}", problems[0].message);
    }
    assert_eq!(inches(solve(&job(&text("\"18 in\"")), &[]).unwrap().frame.depth), 18.0);
    expect("\"18 in\"", "\"24 in to 18 in\"", "begins above its end", "", "\"24 in to 18 in\"");
    expect("\"18 in\"", "\"18 to 24 in\"", "`18` has no unit", "", "18");
}

fn with_libraries(libraries: &str) -> Held {
    job(&EXAMPLE.replacen("frame:", &format!("libraries: [{libraries}],\n    frame:"), 1))
}

#[track_caller]
fn complains(files: &Held, part: &str) {
    let problems = solve(files, &[]).unwrap_err();
    assert!(problems.iter().any(|problem| problem.message.contains(part)), "{problems:#?}");
    assert!(problems.iter().all(|problem| problem.place.is_some()));
}

#[test]
fn libraries_that_cannot_be_used_are_told() {
    complains(&with_libraries("\"none.ron\""), "`/job/none.ron` (there is no such file)");
    complains(&with_libraries("\"../other/secret.ron\"").with("/other/secret.ron", "()"), "outside");
    complains(&with_libraries("\"/other/secret.ron\"").with("/other/secret.ron", "()"), "path from the job's folder");
    let mut linked = with_libraries("\"link.ron\"").with("/other/secret.ron", "()");
    linked.links.insert("/job/link.ron".into(), "/other/secret.ron".into());
    complains(&linked, "outside");
    let looping = with_libraries("\"a.ron\"")
        .with("/job/a.ron", "(libraries: [\"deep/b.ron\"])")
        .with("/job/deep/b.ron", "(libraries: [\"../a.ron\"])");
    complains(&looping, "a.ron -> deep/b.ron -> ../a.ron");
    complains(
        &with_libraries("\"a.ron\"").with("/job/a.ron", "(fitings: [])"),
        "`fitings` is not a field of `library`",
    );
    complains(&with_libraries("\"a.ron\"").with("/job/a.ron", "(fittings: [(id: \"x\", in: \"B\")])"), "no `in`");
}

#[test]
fn a_library_gives_what_the_job_does_not_say() {
    let library = "(fittings: [(id: \"wide\", look: doors, name: \"doors\", weight: \"20 lb\",
        cut: opening(width: \"20 in\", height: \"10 in\", drop: from_counter_top(\"20 in\")))])";
    let used = |own: &str| {
        let text = EXAMPLE.replacen("frame:", "libraries: [\"shelf.ron\"],\n    frame:", 1).replacen(
            "fittings: [",
            &format!("fittings: [(id: \"d\", from: \"wide\", in: \"B\", {own}),"),
            1,
        );
        solve(&job(&text).with("/shelf/shelf.ron", library), &[])
    };
    let given = used("weight: \"25 lb\", measured: {\"cutout_width\": \"20 1/16 in\"}").unwrap();
    let Cut::Opening { width, .. } = &given.fittings[0].cut else { panic!("no opening") };
    assert_eq!(
        (width.published, width.measured),
        (Some(Length::from_inches(20.0)), Some(Length::from_inches(20.0625)))
    );
    assert_eq!(given.fittings[0].mass.map(|mass| (mass * 1e6).round()), Some(11_339_809.0));
    let wrong = used("measured: {\"cutout_widht\": \"20 in\"}").unwrap_err();
    assert!(wrong[0].instead.contains("cutout_width"), "{wrong:#?}");
}

#[test]
fn a_title_may_hold_anything() {
    let title = "<&\\\"'/..\\n\\u{7}";
    let given = solve(&job(&EXAMPLE.replacen("Worked example", title, 1)), &[]).unwrap();
    assert_eq!(given.job.title, "<&\"'/..\n\u{7}");
}

#[test]
fn escaped_text_keeps_its_place() {
    expect("\"28 in\"", "\"5'-3 1/2\\\" + rail\"", "nothing is called `rail`", "", "\"5'-3 1/2\\\" + rail\"");
    expect("\"28 in\"", "r#\"5'-3 1/2\" + rail\"#", "nothing is called `rail`", "", "rail");
    expect("\"28 in\"", "/* depth */ \"x\" // here\n", "nothing is called `x`", "", "x");
}

struct Disk;

impl Files for Disk {
    fn size(&self, path: &Path) -> io::Result<u64> {
        std::fs::metadata(path).map(|facts| facts.len())
    }

    fn read(&self, path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
        std::fs::read(path)
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        path.canonicalize()
    }
}

#[test]
fn the_samples_read_from_the_disk() {
    for (name, fittings, files) in [("terrace", 7, 1), ("island", 11, 1), ("courtyard", 7, 3)] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("samples/{name}.ron"));
        let written = model::read(&path, &[], &Disk).unwrap_or_else(|problems| panic!("{problems:#?}"));
        assert_eq!(written.files_read().len(), files);
        let given = resolve(&written, &[]).unwrap_or_else(|problems| panic!("{name}: {problems:#?}"));
        assert_eq!(given.fittings.len(), fittings, "{name}");
    }
}

#[test]
fn large_jobs_full_of_mistakes_end_soon() {
    let began = std::time::Instant::now();
    let unknown: String = (0..40_000).map(|n| format!("\"p{n}\": \"q{n} + 1 mm\",\n")).collect();
    let text = EXAMPLE.replacen("frame:", &format!("parameters: {{ {unknown} }},\n frame:"), 1);
    assert_eq!(solve(&job(&text), &[]).unwrap_err().len(), 40_000);
    let chain: String = (0..20_000)
        .map(|n| {
            let next = (n + 1) % 20_000;
            format!("(id: \"f{n}\", in: \"B\", look: vent, across: aligned_with(\"f{next}\"), cut: round_well(diameter: \"1 in\", setback: centre(from_frame_face(\"3 in\")))),\n")
        })
        .collect();
    let text = EXAMPLE.replacen("fittings: [", &format!("fittings: [{chain}"), 1);
    let problems = solve(&job(&text), &[]).unwrap_err();
    assert_eq!(problems.len(), 1, "{:?}", problems.first());
    assert!(problems[0].message.contains("placed from each other"));
    assert!(began.elapsed().as_secs() < 60, "{:?}", began.elapsed());
}

/// The worked example with a stock of its own.
fn stocked(stock: &str) -> String {
    format!("stock: ({stock}),\n    frame: (depth: \"28 in\")")
}

#[test]
fn stock_reads_as_written_and_its_kerf_can_be_set() {
    let stock = stocked(
        "board: (sheets: [(width: \"900 mm\", length: \"1200 mm\")], offcuts: [(name: \"rest\", width: \"1 ft\", \
         length: \"2 ft\")], cuts: any, turned: false), bars: (lengths: [\"6 m\", \"7 m\"])",
    );
    let text = EXAMPLE.replacen("frame: (depth: \"28 in\")", &stock, 1);
    let given = solve(&job(&text), &[("stock.board.kerf", "3 mm")]).unwrap();
    let board = &given.stock.board;
    assert_eq!(board.sheets, [(Length::from_mm(900.0), Length::from_mm(1200.0))]);
    assert_eq!((board.offcuts.len(), board.offcuts[0].name.as_str()), (1, "rest"));
    assert!(!board.edge_to_edge && !board.turned);
    assert_eq!(board.kerf, Length::from_mm(3.0));
    assert_eq!(given.stock.bars.lengths, [Length::from_mm(7000.0), Length::from_mm(6000.0)]);
    // What is not written is stated: the substrate's sheets, and no longer the boards'.
    let stated = |name: &str| given.defaults.iter().any(|default| default.name == name);
    assert!(stated("stock.substrate.width") && stated("boards.gap") && stated("boards.bottoms"));
    assert!(!stated("stock.board.width") && !stated("stock.board.kerf"));
}

#[test]
fn stock_that_cannot_be_is_told() {
    let from = "frame: (depth: \"28 in\")";
    let twice = "board: (offcuts: [(name: \"rest\", width: \"1 ft\", length: \"2 ft\"), \
                 (name: \"rest\", width: \"1 ft\", length: \"3 ft\")])";
    let (message, instead, at) = one(from, &stocked(twice));
    assert_eq!((message.as_str(), at.as_str()), ("two offcuts are called `rest`", "\"rest\""));
    assert!(instead.contains("a name of its own"));
    let (message, instead, at) = one(from, &stocked("board: (sheets: [(width: \"0 in\", length: \"60 in\")])"));
    assert_eq!((message.as_str(), at.as_str()), ("this length is zero and must be more than that", "\"0 in\""));
    assert!(instead.starts_with("write it as"));
    let (message, _, at) = one(from, &stocked("substrate: (kerf: \"3\")"));
    assert_eq!((message.as_str(), at.as_str()), ("`3` has no unit: it is a plain number", "\"3\""));
}

#[test]
fn a_room_is_a_length_or_as_surveyed() {
    let corner = include_str!("../samples/corner.ron");
    let given = solve(&job(corner), &[]).unwrap_or_else(|problems| panic!("{problems:#?}"));
    let surveyed = given.legs[0].own.surveyed.as_ref().expect("it is taken from the survey");
    let place = surveyed.place.as_ref().unwrap();
    assert_eq!(&place.file.text[place.start..place.end], "\"as surveyed\"");
    assert_eq!((given.legs[0].room, surveyed.between.clone()), (None, None));
    assert_eq!(given.legs[1].room.map(inches), Some(120.0));
    let problems = solve(&job(&corner.replacen("\"as surveyed\"", "\"surveyed\"", 1)), &[]).err().unwrap_or_default();
    assert_eq!(problems.len(), 1, "{problems:#?}");
    let (message, instead, at) = said(&problems[0]);
    assert_eq!((message.as_str(), at.as_str()), ("`surveyed` is no room", "\"surveyed\""));
    assert!(instead.contains("\"as surveyed\""), "{instead}");
}

#[test]
fn notches_of_the_counter_are_read() {
    let corner = include_str!("../samples/corner.ron");
    let with = |notches: &str| {
        let from = "corner_radius: \"1/2 in\",";
        assert!(corner.contains(from));
        job(&corner.replacen(from, &format!("{from} notches: [{notches}],"), 1))
    };
    let given = solve(
        &with("round_post(post: \"pergola post\", leg: \"east\"), out_of(edge: back, along: \"2 ft\", width: \"6 in\", depth: \"rail\", radius: \"1/2 in\")"),
        &[],
    )
    .unwrap_or_else(|problems| panic!("{problems:#?}"));
    let [post, out] = given.counter.notches.as_slice() else { panic!("two notches") };
    assert_eq!((post.leg, post.name.as_str(), inches(post.radius)), (1, "pergola post", 0.375));
    assert_eq!(post.cut, NotchCut::Post { post: 0, clearance: Length::from_inches(0.25) });
    assert_eq!((out.leg, out.name.as_str(), inches(out.radius)), (0, "notch", 0.5));
    let NotchCut::Edge { edge, along, width, depth } = out.cut else { panic!("as measured") };
    assert_eq!((edge, inches(along), inches(width), inches(depth)), (Face::Back, 24.0, 6.0, 3.0));
    // Both defaults are stated.
    let stated = |name: &str| given.defaults.iter().find(|used| used.name == name).map(|used| used.value.as_str());
    assert_eq!(stated("counter.notch.clearance"), Some("1/4 in"));
    assert_eq!(stated("counter.notch.radius"), Some("3/8 in"));
    // Bad ones: a post that isn't there, another edge, no size.
    let said_of = |notches: &str| {
        let problems = solve(&with(notches), &[]).err().unwrap_or_default();
        assert_eq!(problems.len(), 1, "{problems:#?}");
        said(&problems[0])
    };
    let (message, instead, at) = said_of("round_post(post: \"pergola pots\")");
    assert_eq!(message, "the survey has no post `pergola pots`");
    assert_eq!((instead.as_str(), at.as_str()), ("write \"pergola post\"", "\"pergola pots\""));
    let (message, instead, at) = said_of("out_of(edge: back, along: \"2 ft\", width: \"0 in\", depth: \"3 in\")");
    assert!(message.contains("zero") && !instead.is_empty() && at == "\"0 in\"", "{message} {at}");
    let (message, _, _) = said_of("out_of(edge: top, along: \"2 ft\", width: \"1 in\", depth: \"3 in\")");
    assert!(message.contains("top"), "{message}");
}

#[test]
fn the_inside_of_a_corner_has_one_shape() {
    let corner = include_str!("../samples/corner.ron");
    let from = "radius: \"1 in\",";
    assert!(corner.contains(from));
    let with = |to: &str| solve(&job(&corner.replacen(from, to, 1)), &[]);
    let joint = |given: &Given| match &given.joints[0].kind {
        JointKind::Corner(corner) => (corner.radius, corner.inner),
        JointKind::Step => panic!("a corner"),
    };
    assert_eq!(joint(&with(from).unwrap()), (Length::from_inches(1.0), CornerShape::Common));
    let clipped = with("inner: clipped(\"4 in\"),").unwrap();
    assert_eq!(joint(&clipped), (Length::ZERO, CornerShape::Clipped(Length::from_inches(4.0))));
    assert_eq!(joint(&with("inner: rounded(\"2 in\"),").unwrap()).1, CornerShape::Round(Length::from_inches(2.0)));
    let problems = with("radius: \"1 in\", inner: clipped(\"4 in\"),").err().unwrap_or_default();
    assert_eq!(problems.len(), 1, "{problems:#?}");
    let (message, instead, at) = said(&problems[0]);
    assert_eq!(message, "the inside of this corner is shaped twice, by `radius` and by `inner`");
    assert!(instead.contains("keep one") && at == "\"1 in\"", "{instead} {at}");
    let problems = with("inner: clipped(\"0 in\"),").err().unwrap_or_default();
    assert_eq!((problems.len(), said(&problems[0]).2.as_str()), (1, "\"0 in\""));
}

#[test]
fn a_ledge_is_a_leg_behind_its_leg() {
    let from = "id: \"island\",";
    let island = include_str!("../samples/island.ron");
    assert!(island.contains(from));
    let with = |ledge: &str| solve(&job(&island.replacen(from, &format!("{from} {ledge}"), 1)), &[]);
    let given = with("ledge: (above: \"150 mm\"),").unwrap_or_else(|problems| panic!("{problems:#?}"));
    let [leg, ledge] = given.legs.as_slice() else { panic!("a leg and its ledge") };
    assert_eq!((ledge.id.as_str(), ledge.own.behind, ledge.own.ledge), ("island ledge", Some(0), true));
    assert_eq!(ledge.own.height, Some(Height::CounterTop(Length::from_mm(910.0 + 150.0))));
    let ids: Vec<&str> = ledge.modules.iter().map(|module| module.id.as_str()).collect();
    assert_eq!(ids, ["ledge P", "ledge Q", "ledge R"]);
    assert!(leg.modules.iter().zip(&ledge.modules).all(|(one, other)| one.width == other.width));
    // Its depth is taken, and stated; written, it is what was written.
    assert_eq!(ledge.own.depth, Some(Length::from_inches(6.0)));
    assert!(given.defaults.iter().any(|used| used.name == "ledge.depth" && used.value == "6 in"));
    let given = with("ledge: (above: \"150 mm\", depth: \"180 mm\", overhang: (front: \"0 mm\")),").unwrap();
    assert_eq!(
        (given.legs[1].own.depth, given.legs[1].own.overhang_front),
        (Some(Length::from_mm(180.0)), Some(Length::ZERO))
    );
    let problems = with("ledge: (above: \"-5 mm\"),").err().unwrap_or_default();
    assert_eq!((problems.len(), said(&problems[0]).2.as_str()), (1, "\"-5 mm\""), "{problems:#?}");
    let problems = with("ledge: (depth: \"180 mm\"),").err().unwrap_or_default();
    assert!(problems.len() == 1 && problems[0].message.contains("above"), "{problems:#?}");
    // What can't be is said by the solver, at the ledge.
    let refused = |given: &Given| faceline::solve::solve(given).err().unwrap_or_default();
    let problems = refused(&with("ledge: (above: \"20 mm\"),").unwrap());
    assert_eq!(problems.len(), 1, "{problems:#?}");
    let (message, instead, at) = said(&problems[0]);
    assert_eq!(
        message,
        "the ledge of leg island lies 20 mm above its counter, less than its own counter and substrate, 38 mm"
    );
    assert_eq!((instead.as_str(), at.as_str()), ("raise the ledge", "\"20 mm\""));
    let corner =
        include_str!("../samples/corner.ron").replacen("id: \"east\",", "id: \"east\", ledge: (above: \"6 in\"),", 1);
    let problems = refused(&solve(&job(&corner), &[]).unwrap());
    assert_eq!(said(&problems[0]).0, "leg east meets another leg, and has a ledge along its whole back");
}

/// The ledge's boxes stand behind the leg's, whatever width they are left; its back takes the leg's place at the wall.
#[test]
fn a_ledge_stands_box_by_box_behind_its_leg() {
    let from = "id: \"terrace\",";
    assert!(TERRACE.contains(from));
    let with = TERRACE.replacen(from, &format!("{from} ledge: (above: \"6 in\", depth: \"5 in\"),"), 1);
    let surveyed = with.replacen(
        "room: \"9 ft\",",
        "room: \"as surveyed\", survey: (walls: [(name: \"pier\", from: (x: \"107 in\", y: \"-9 in\"), stretches: [(turn: \"91 deg\", length: \"60 in\")])]),",
        1,
    );
    assert_ne!(with, surveyed);
    for text in [with, surveyed] {
        let given = solve(&job(&text), &[]).unwrap_or_else(|problems| panic!("{problems:#?}"));
        let solved = faceline::solve::solve(&given).unwrap_or_else(|problems| panic!("{problems:#?}"));
        let (leg, ledge) = (&solved.legs[0], &solved.legs[1]);
        let edges = |leg: &faceline::solve::Leg| leg.modules.iter().map(|m| (m.left, m.right)).collect::<Vec<_>>();
        assert_eq!(edges(leg), edges(ledge));
        assert_eq!(leg.datums.finished_right, ledge.datums.finished_right);
        assert_eq!(
            (leg.surveyed.clone(), leg.room.map(|room| room.given)),
            (ledge.surveyed.clone(), ledge.room.map(|room| room.given))
        );
        assert_eq!(ledge.datums.counter_top - leg.datums.counter_top, Length::from_inches(6.0));
        assert_eq!(ledge.datums.frame_back - ledge.datums.frame_face, Length::from_inches(5.0));
        // The wall stands behind the ledge; the leg's counter ends at the ledge's finished face.
        assert_eq!((ledge.back.name.as_str(), ledge.back.kind), ("garden wall", faceline::solve::BoundKind::Wall));
        assert_eq!(leg.datums.finished_back, leg.datums.frame_back - ledge.datums.frame_face);
        // Nothing stands where something else does: no finding stops the job but for what the sample has anyway.
        let stops = |solved: &faceline::solve::Solved| {
            faceline::rules::check(solved)
                .into_iter()
                .filter(|f| f.severity == faceline::findings::Severity::Stop)
                .count()
        };
        assert_eq!(stops(&solved), 0);
    }
}
