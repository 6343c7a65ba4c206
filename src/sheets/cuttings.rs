//! The parts of a run as files for machines: the counter, each board, each piece of substrate.

use super::templates::{Family, LineKind, Template, pieces};
use crate::drawing::cutting::{Cutting, Layer, Mark, Unit};
use crate::solve::Solved;
use crate::units::System;

/// Pieces of one counter lie this far apart, mm, so that the two cuts of a seam don't coincide.
const APART: f64 = 4.0 * 25.4;
/// Height of the words, mm.
const WORDS: f64 = 12.0;

/// One part a file; the pieces of a leg's counter together in one.
pub fn cuttings(solved: &Solved) -> Vec<Cutting> {
    let unit = match solved.show.system {
        System::Inches | System::Both => Unit::Inch,
        System::Millimetres => Unit::Millimetre,
    };
    let mut cuttings: Vec<Cutting> = Vec::new();
    let mut pieces_so_far = 0;
    for template in pieces::all(solved).iter().filter(|template| template.family != Family::Card) {
        let whole = template.slug.split("-piece-").next().unwrap_or(&template.slug);
        let name =
            if template.family == Family::Counter { format!("cut-{whole}") } else { format!("cut-{}", template.slug) };
        let shares = template.family == Family::Counter && cuttings.last().is_some_and(|last| last.name == name);
        pieces_so_far = if shares { pieces_so_far + 1 } else { 0 };
        let marks = marks(template, solved, f64::from(pieces_so_far) * APART);
        match cuttings.last_mut().filter(|_| shares) {
            Some(last) => last.marks.extend(marks),
            None => cuttings.push(Cutting { name, unit, marks }),
        }
    }
    cuttings
}

/// What is drawn of a part that is moved by `right` mm.
fn marks(template: &Template, solved: &Solved, right: f64) -> Vec<Mark> {
    let mut marks: Vec<Mark> = Vec::new();
    for outline in template.region.outlines() {
        marks.push(Mark::Outline(Layer::Cut, outline.moved(right, 0.0)));
    }
    for (outline, _) in &template.flanges {
        marks.push(Mark::Outline(Layer::Outline, outline.moved(right, 0.0)));
    }
    let (x0, y0, x1, y1) = template.region.outer.bounds();
    let past = 2.0 * WORDS;
    let text = |x: f64, y: f64, turn: f64, words: &str| Mark::Text {
        at: (x + right, y),
        height: WORDS,
        turn,
        words: words.to_owned(),
    };
    for line in &template.lines {
        let layer = if line.kind == LineKind::Centre { Layer::Centreline } else { Layer::Datum };
        let (from, to) = if line.upright {
            ((line.at + right, y0 - past), (line.at + right, y1 + past))
        } else {
            ((x0 - past + right, line.at), (x1 + past + right, line.at))
        };
        marks.push(Mark::Line(layer, from, to));
        marks.push(if line.upright {
            text(line.at + WORDS / 3.0, y1 + past + WORDS / 2.0, 90.0, &line.words)
        } else {
            text(x1 + past + WORDS / 2.0, line.at + WORDS / 3.0, 0.0, &line.words)
        });
    }
    let job = &solved.job;
    let revision = job.revisions.last().map_or_else(String::new, |r| format!(", revision {}", r.mark));
    let towards = format!("{} at the bottom, {}", template.below, template.side);
    let mut lines = vec![
        format!("{}: {}", job.title, template.name),
        format!("{}{revision}, {}", job.number, job.date).trim_start_matches(", ").to_owned(),
        template.material.clone(),
        towards,
        format!("tool centre is not offset: lines are the finished edge; {}", template.check),
    ];
    if right > 0.0 {
        lines.push(format!(
            "drawn {} to the right of its place, clear of the piece before",
            solved.show.text(crate::units::Length::from_mm(right))
        ));
    }
    for (index, words) in lines.iter().enumerate() {
        marks.push(text(x0, y0 - past - WORDS * 2.0 * (index + 1) as f64, 0.0, words));
    }
    marks
}
