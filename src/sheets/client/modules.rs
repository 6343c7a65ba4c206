//! The line of modules under the picture: their names over it, their widths under it.

use super::scene::Scene;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fact, Pen, Shape};
use crate::geometry::{FrontFace, PaperPoint};
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::notes::wrapped;
use crate::sheets::view::{View, number};
use crate::solve::Face;
use crate::units::Length;

/// Where a text stands: in its row, in the next row outward, or nowhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Level {
    Near,
    Far,
    Nowhere,
}

struct Label {
    left: Length,
    right: Length,
    name: String,
    name_level: Level,
    width: String,
    width_level: Level,
    second: Option<String>,
}

/// Names and widths, placed so that none meets another; what finds no place goes into a key.
pub struct Row {
    labels: Vec<Label>,
    /// Lines of the key.
    pub key: Vec<String>,
}

/// Puts texts (middle, width, room of their own) on two rows: those with room beside the line, the others beyond it, first
/// come first. Where many lack room, they stand on the two rows in turn.
///
/// None reaches past `ends` of the line.
fn levels(texts: &[(f64, f64, f64)], ends: (f64, f64)) -> Vec<Level> {
    let narrow = texts.iter().filter(|(_, width, own)| *width > own - 1.6).count();
    let in_turn = narrow * 4 > texts.len() && texts.len() > 2;
    let mut taken = [ends.0 - 1.6; 2];
    texts
        .iter()
        .enumerate()
        .map(|(k, &(middle, width, own))| {
            let row = if in_turn { k % 2 } else { usize::from(width > own - 1.6) };
            if middle - width / 2.0 <= taken[row] + 1.6 || middle + width / 2.0 >= ends.1 {
                return Level::Nowhere;
            }
            taken[row] = middle + width / 2.0;
            if row == 0 { Level::Near } else { Level::Far }
        })
        .collect()
}

/// Most lines that the key of crowded modules takes.
const MOST_LINES: usize = 6;

impl Row {
    /// Labels of a leg's modules at a scale, their key wrapped to a width.
    pub fn new(scene: &Scene<'_>, factor: f64, room: f64) -> Row {
        let show = scene.solved.show;
        let end = scene.leg.datums.finished_right;
        let place = |u: Length| if scene.face == Face::Back { end - u } else { u };
        let mut modules: Vec<_> = scene.leg.modules.iter().collect();
        if scene.face == Face::Back {
            modules.reverse();
        }
        let mut labels: Vec<Label> = modules
            .iter()
            .map(|module| {
                let (a, b) = (place(module.left), place(module.right));
                // Running positions are rounded, not widths, as on every other sheet.
                let printed = show.rounded(module.right) - show.rounded(module.left);
                Label {
                    left: a.min(b),
                    right: a.max(b),
                    name: if module.name.trim().is_empty() { module.id.clone() } else { module.name.clone() },
                    name_level: Level::Near,
                    width: show.text(printed),
                    width_level: Level::Near,
                    second: show.second(printed),
                }
            })
            .collect();
        let size =
            |label: &Label| ((label.left + label.right).half().mm() * factor, (label.right - label.left).mm() * factor);
        let texts = |labels: &[Label], of: fn(&Label) -> &str, weight: Weight| -> Vec<(f64, f64, f64)> {
            labels
                .iter()
                .map(|label| (size(label).0, lettering::width(of(label), BODY, weight), size(label).1))
                .collect()
        };
        let mut key = Vec::new();
        // Names may reach past the run's ends; widths stay over the line, which at a corner goes on past a finished end.
        let free = (f64::NEG_INFINITY, f64::INFINITY);
        let first = labels.iter().map(|label| label.left).min().map_or(Length::ZERO, |left| left.min(Length::ZERO));
        let last = labels.iter().map(|label| label.right).max().map_or(end, |right| right.max(end));
        let line = (first.mm() * factor + 0.8, last.mm() * factor - 0.8);
        let mut named = levels(&texts(&labels, |label| &label.name, Weight::SemiBold), free);
        let wide = levels(&texts(&labels, |label| &label.width, Weight::Regular), line);
        let lost = |k: &usize| named[*k] == Level::Nowhere || wide[*k] == Level::Nowhere;
        let mut keyed: Vec<usize> = (0..labels.len()).filter(lost).collect();
        if keyed.len() * 4 > labels.len() {
            // With so many in the key, all are: one way to read the line.
            keyed = (0..labels.len()).collect();
        }
        for &k in &keyed {
            let (id, label) = (modules[k].id.clone(), &mut labels[k]);
            let entry = if label.name == id { id.clone() } else { format!("{id} {}", label.name) };
            key.push(format!("{entry}, {}", label.width));
            label.name = id;
        }
        if !keyed.is_empty() {
            named = levels(&texts(&labels, |label| &label.name, Weight::SemiBold), free);
        }
        for (k, label) in labels.iter_mut().enumerate() {
            (label.name_level, label.width_level) = (named[k], wide[k]);
            let own = (label.right - label.left).mm() * factor;
            let first = lettering::width(&label.width, BODY, Weight::Regular);
            label.second = label
                .second
                .take()
                .filter(|second| first + 1.0 + lettering::width(second, BODY, Weight::Regular) < own - 1.6);
        }
        let mut key = if key.is_empty() { Vec::new() } else { wrapped(&key.join(";  "), room, BODY, Weight::Regular) };
        if key.len() > MOST_LINES {
            // A key as long as that would be read by nobody, and would push the picture off the sheet.
            key = vec!["Names and widths of the modules: front elevation and schedules.".to_owned()];
        }
        Row { labels, key }
    }

    /// Draws the line, at `y` on the sheet.
    pub fn draw(&self, canvas: &mut Canvas, view: &View<FrontFace>, y: f64, show: crate::units::Show) {
        for (k, label) in self.labels.iter().enumerate() {
            // A width that is only in the key is no dimension here.
            let facts =
                if label.width_level == Level::Nowhere { Vec::new() } else { facts(canvas.next_number(), label, show) };
            let group = canvas.layer_with(view.layer, "dim", facts);
            let (a, b) = (view.x(label.left), view.x(label.right));
            let role = |role: &str| vec![("data-role", role.to_owned())];
            let witness = |end: &str| vec![("data-role", "witness".to_owned()), ("data-end", end.to_owned())];
            let grey = Colour::from_hex(0x5a5a58);
            let line = Shape::Line(PaperPoint::new(a, y), PaperPoint::new(b, y));
            canvas.shape(group, line, Paint::pen(Pen::FINE.coloured(grey)), "", role("dimline"));
            let tick = |x: f64| Shape::Line(PaperPoint::new(x, y - 1.6), PaperPoint::new(x, y + 1.6));
            let pen = Pen::DIMENSION.coloured(grey);
            let after = self.labels.get(k + 1).is_some_and(|next| next.left == label.right);
            canvas.shape(group, tick(a), Paint::pen(pen), "", witness("from"));
            canvas.shape(group, tick(b), Paint::pen(if after { Pen::GHOST } else { pen }), "", witness("to"));
            let middle = (a + b) / 2.0;
            let up = match label.name_level {
                Level::Near => Some(3.0),
                Level::Far => Some(7.2),
                Level::Nowhere => None,
            };
            if let Some(up) = up {
                canvas.text(group, PaperPoint::new(middle, y - up), &label.name, &Style::body().bold().middle());
            }
            let down = match label.width_level {
                Level::Near => Some(4.8),
                Level::Far => Some(9.0),
                Level::Nowhere => None,
            };
            if let Some(down) = down {
                let style = Style::caption().fact("data-role", "dimtext");
                let width = lettering::width(&label.width, BODY, Weight::Regular);
                let beside = label.second.as_ref().filter(|_| label.width_level == Level::Near);
                let both = width + beside.map_or(0.0, |second| 1.0 + lettering::width(second, BODY, Weight::Regular));
                let left = PaperPoint::new(middle - both / 2.0, y + down);
                canvas.text(group, left, &label.width, &style);
                if let Some(second) = beside {
                    canvas.text(group, left.moved(width + 1.0, 0.0), second, &Style::caption());
                }
            }
        }
    }
}

fn facts(id: usize, label: &Label, show: crate::units::Show) -> Vec<Fact> {
    let length = label.right - label.left;
    vec![
        ("data-dim", format!("d{id}")),
        ("data-dim-mm", number(length.mm(), 6)),
        ("data-from", format!("{},0", number(label.left.mm(), 6))),
        ("data-to", format!("{},0", number(label.right.mm(), 6))),
        ("data-axis", "x".to_owned()),
        ("data-round-mm", number((show.step() * 2).mm(), 6)),
        ("data-from-datum", "module edge".to_owned()),
        ("data-to-datum", "module edge".to_owned()),
    ]
}

#[cfg(test)]
mod tests {
    use super::{Level, levels};

    const FREE: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);

    #[test]
    fn one_long_name_stands_over_the_others_and_many_stand_in_turn() {
        let one = levels(&[(10.0, 8.0, 20.0), (30.0, 24.0, 20.0), (50.0, 8.0, 20.0), (70.0, 8.0, 20.0)], FREE);
        assert_eq!(one, [Level::Near, Level::Far, Level::Near, Level::Near]);
        let many = levels(&[(5.0, 12.0, 10.0), (15.0, 12.0, 10.0), (25.0, 12.0, 10.0), (35.0, 12.0, 10.0)], FREE);
        assert_eq!(many, [Level::Near, Level::Far, Level::Near, Level::Far]);
    }

    #[test]
    fn what_would_meet_its_neighbour_finds_no_place() {
        let crowded = levels(&[(2.0, 30.0, 4.0), (6.0, 30.0, 4.0), (10.0, 30.0, 4.0)], FREE);
        assert_eq!(crowded, [Level::Near, Level::Far, Level::Nowhere]);
        assert_eq!(levels(&[(2.0, 6.0, 10.0)], (0.0, 10.0)), [Level::Nowhere]);
    }
}
