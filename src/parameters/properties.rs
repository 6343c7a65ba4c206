//! Which values of a job an expression can name: `grill.cutout_width`, `B.width`, `frame.depth`.

use super::defaults;
use super::expression::FUNCTIONS;
use super::fitted::Fitted;
use super::given::WaitFor;
use super::names::Body;
use super::reader::Reader;
use super::{waits, width};
use crate::model::{FinishText, HeightText, JobFile, MaterialText, Text};
use crate::units::symbols;
use std::collections::HashMap;

/// The parts of a job whose names no module or fitting may take.
const PARTS: [&str; 16] = [
    "frame",
    "counter",
    "substrate",
    "board",
    "finish",
    "height",
    "trim",
    "tolerances",
    "site",
    "services",
    "materials",
    "limits",
    "supports",
    "waits",
    "boards",
    "stock",
];

/// Gives every name to the reader, then puts the overrides in their places.
pub(super) fn register(job: &JobFile, fittings: &[Fitted<'_>], overrides: &[(String, String)], reader: &mut Reader) {
    parameters(job, reader);
    parts(job, reader);
    figures(job, reader);
    supports(job, reader);
    modules_and_fittings(job, fittings, reader);
    for (name, value) in overrides {
        override_one(name, value, reader);
    }
}

fn parameters(job: &JobFile, reader: &mut Reader) {
    for (name, value) in &job.parameters.0 {
        let word = match name.words() {
            Ok(word) => word,
            Err(problem) => {
                reader.problems.push(problem);
                continue;
            }
        };
        if !is_word(word)
            || FUNCTIONS.contains(&word)
            || symbols().any(|symbol| symbol == word)
            || PARTS.contains(&word)
        {
            let message = format!("`{word}` can't be the name of a parameter");
            let instead =
                "a name has letters, digits and `_`, begins with a letter, and is no unit, function or part of a job";
            reader.tell(message, instead, &name.place);
        } else if !reader.names.add(word, Body::Written(value.clone())) {
            reader.tell(format!("the parameter `{word}` is given twice"), "keep one of them", &name.place);
        }
    }
}

fn parts(job: &JobFile, reader: &mut Reader) {
    let mut add = |name: &str, default: &str, written: Option<&Text>| {
        let text = written.cloned().or_else(|| {
            defaults::default(default).map(|default| Text::made("default", default.value, 0..default.value.len()))
        });
        if let Some(text) = text {
            reader.names.add(name, Body::Written(text));
        }
    };
    let mut same = |name: &str, written: Option<&Text>| add(name, name, written);
    let frame = &job.frame;
    same("frame.depth", Some(&frame.depth));
    same("frame.tube", frame.tube.as_ref());
    same("frame.wall", frame.wall.as_ref());
    same("frame.height", frame.height.as_ref());
    same("frame.rough_gap", frame.rough_gap.as_ref());
    same("frame.feet.shortest", frame.feet.shortest.as_ref());
    same("frame.feet.longest", frame.feet.longest.as_ref());
    same("frame.feet.inset", frame.feet.inset.as_ref());
    same("frame.feet.middle_over", frame.feet.middle_over.as_ref());
    same("frame.feet.spacing", frame.feet.spacing.as_ref());
    same("frame.feet.spot_reach", frame.feet.spot_reach.as_ref());
    same("frame.feet.rating", frame.feet.rating.as_ref());
    if let Some(services) = &job.services {
        same("services.supply", services.supply.as_ref());
        same("services.drop", services.drop.as_ref());
        same("services.smallest", services.smallest.as_ref());
    }
    for what in WaitFor::ALL {
        same(&format!("waits.{}", what.word()), waits::of(&job.waits, what));
    }
    same("site.aisle", job.site.aisle.as_ref());
    same("site.carries", job.site.carries.as_ref());
    let counter = &job.counter;
    same("counter.thickness", Some(&counter.thickness));
    same("counter.overhang_front", counter.overhang.front.as_ref());
    same("counter.overhang_left", counter.overhang.left.as_ref());
    same("counter.overhang_right", counter.overhang.right.as_ref());
    same("counter.overhang_back", counter.overhang.back.as_ref());
    same("counter.wall_joint", counter.wall_joint.as_ref());
    same("counter.seam_joint", counter.seam_joint.as_ref());
    same("counter.corner_radius", counter.corner_radius.as_ref());
    same("counter.arris", counter.arris.as_ref());
    same("counter.drip", counter.drip.as_ref());
    same("counter.tolerance", counter.tolerance.as_ref());
    same("counter.splash_height", counter.splash.as_ref().map(|splash| &splash.height));
    same("counter.splash_thickness", counter.splash.as_ref().map(|splash| &splash.thickness));
    same("substrate.thickness", Some(&job.substrate.thickness));
    same("board.thickness", Some(&job.build_up.board.thickness));
    match &job.height {
        HeightText::CounterTop(text) => same("height.counter_top", Some(text)),
        HeightText::FrameTop(text) => same("height.frame_top", Some(text)),
    }
    same("trim.top", job.trim.as_ref().and_then(|trim| trim.top.as_ref()));
    same("trim.thickness", job.trim.as_ref().map(|trim| &trim.thickness));
    for (name, text) in job.trim.iter().flat_map(|trim| {
        [
            ("trim.lap", &trim.lap),
            ("trim.floor_gap", &trim.floor_gap),
            ("trim.notch_gap", &trim.notch_gap),
            ("trim.joint_gap", &trim.joint_gap),
            ("trim.stations", &trim.stations),
            ("trim.fasteners", &trim.fasteners),
            ("trim.fastener_end", &trim.fastener_end),
            ("trim.joint_off", &trim.joint_off),
            ("trim.density", &trim.density),
        ]
    }) {
        same(name, text.as_ref());
    }
    let stock = &job.stock;
    // One size is assumed only where the job lists none.
    if stock.board.sheets.is_empty() {
        same("stock.board.width", None);
        same("stock.board.length", None);
    }
    if stock.substrate.sheets.is_empty() {
        same("stock.substrate.width", None);
        same("stock.substrate.length", None);
    }
    if stock.bars.lengths.is_empty() {
        same("stock.bars.length", None);
    }
    same("stock.board.kerf", stock.board.kerf.as_ref());
    same("stock.substrate.kerf", stock.substrate.kerf.as_ref());
    same("stock.bars.kerf", stock.bars.kerf.as_ref());
    same("stock.bars.end_trim", stock.bars.end_trim.as_ref());
    same("stock.keep", stock.keep.as_ref());
    same("boards.gap", job.boards.gap.as_ref());
    same("boards.off_floor", job.boards.off_floor.as_ref());
    same("boards.off_corner", job.boards.off_corner.as_ref());
    same("boards.least_strip", job.boards.least_strip.as_ref());
    same("tolerances.cut", job.tolerances.cut.as_ref());
    same("tolerances.placing", job.tolerances.placing.as_ref());
    same("tolerances.published", job.tolerances.published.as_ref());
    same("tolerances.least_strip", job.tolerances.least_strip.as_ref());
    same("tolerances.least_cover", job.tolerances.least_cover.as_ref());
    let density = match counter.material {
        MaterialText::Concrete => "counter.density.concrete",
        MaterialText::Stone => "counter.density.stone",
        MaterialText::Porcelain => "counter.density.porcelain",
    };
    add("counter.density", density, counter.density.as_ref());
    if let Some(finish) = &job.build_up.finish {
        let parts = finish.parts();
        add("finish.thickness", "", Some(parts.thickness));
        add("finish.bed", "finish.bed", parts.bed);
        add("finish.spread", &format!("finish.spread.{}", parts.kind), parts.spread);
        add("finish.weight", &format!("finish.weight.{}", parts.kind), parts.weight);
        if let FinishText::Tile { width, height, joint, .. } = finish {
            add("finish.width", "", Some(width));
            add("finish.height", "", Some(height));
            add("finish.joint", "finish.joint", joint.as_ref());
        }
    }
}

fn figures(job: &JobFile, reader: &mut Reader) {
    for known in super::given::FIGURES {
        let written = super::materials::written(&job.materials, known);
        // A figure without an origin has no worth unless the job gives it.
        let assumed = || (!known.origin.is_empty()).then(|| Text::made("default", known.value, 0..known.value.len()));
        if let Some(text) = written.cloned().or_else(assumed) {
            reader.names.add(super::materials::full_name(known), Body::Written(text));
        }
    }
}

fn supports(job: &JobFile, reader: &mut Reader) {
    for (name, written) in super::supports::values(&job.supports) {
        // What they are taken to be hangs on frame and counter, which aren't worked out yet.
        let silent = || Body::Later("it is given by the job or worked out from the counter".into());
        reader.names.add(name, written.cloned().map_or_else(silent, Body::Written));
    }
}

fn modules_and_fittings(job: &JobFile, fittings: &[Fitted<'_>], reader: &mut Reader) {
    let mut seen: HashMap<&str, &str> = HashMap::new();
    let known = |id: &'_ Text, kind: &'static str, reader: &mut Reader| -> bool {
        let word = match id.words() {
            Ok(word) => word,
            Err(problem) => {
                reader.problems.push(problem);
                return false;
            }
        };
        if !is_word(word) || PARTS.contains(&word) {
            let instead = "an id has letters, digits and `_`, begins with a letter, and is no part of a job";
            reader.tell(format!("`{word}` can't be the id of a {kind}"), instead, &id.place);
            return false;
        }
        true
    };
    for module in job.legs.iter().flat_map(|leg| &leg.modules) {
        if !known(&module.id, "module", reader) {
            continue;
        }
        if seen.insert(&module.id.text, "module").is_some() {
            reader.tell(
                format!("the id `{}` is given twice", module.id.text),
                "give each module an id of its own",
                &module.id.place,
            );
            continue;
        }
        let body = match width::later(&module.width) {
            Some(reason) => Body::Later(reason),
            None => Body::Written(module.width.clone()),
        };
        reader.names.add(format!("{}.width", module.id.text), body);
    }
    for fitting in fittings {
        let id = &fitting.own.id;
        if !known(id, "fitting", reader) {
            continue;
        }
        if let Some(other) = seen.insert(&id.text, "fitting") {
            let message = format!("the id `{}` is given twice, here and to a {other}", id.text);
            reader.tell(message, "give each module and fitting an id of its own", &id.place);
            continue;
        }
        for (property, text) in fitting.properties() {
            reader.names.add(format!("{}.{property}", id.text), Body::Written(text.clone()));
        }
    }
    let mut legs: HashMap<&str, ()> = HashMap::new();
    for leg in &job.legs {
        if leg.id.words().is_ok() && legs.insert(&leg.id.text, ()).is_some() {
            reader.tell(
                format!("the id `{}` is given twice", leg.id.text),
                "give each leg an id of its own",
                &leg.id.place,
            );
        }
    }
}

fn override_one(name: &str, value: &str, reader: &mut Reader) {
    let line = format!("{name}={value}");
    let text = Text::made("--set", &line, name.len() + 1..line.len());
    if reader.names.replace(name, text.clone()) {
        reader.overridden.insert(name.to_owned());
    } else {
        let whole = Text::made("--set", &line, 0..name.len());
        let problem = reader.names.unknown(name, &whole.place);
        reader.problems.push(problem);
    }
}

fn is_word(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_alphabetic() || c == '_')
        && word.chars().all(|c| c.is_ascii_alphanumeric() || c == '_')
}
