//! The front layers in a circle, as large as the sheet allows: which face lies where, with its name.

use super::lens::{Lens, NAME_ROW, chain_fits, layers, names, stack};
use super::ring::{Ring, contains, place_in};
use super::slice::Slice;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{self, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension, NEXT, Number};
use crate::sheets::frame::Area;
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::sheets::notes;
use crate::sheets::title_block::shortened;
use crate::sheets::view::View;
use crate::units::{Length, Show};

type Detail = View<geometry::Cut>;

/// What the parts of the drawing share.
struct Drawn<'a, 's> {
    slice: &'a Slice<'s>,
    view: Detail,
    ring: Ring,
    fill: Layer,
    outline: Layer,
    datums: Layer,
    dimensions: Layer,
    labels: Layer,
    lens: Lens,
    top: f64,
    area: Area,
    show: Show,
}

/// Draws the detail in an area.
pub fn draw(canvas: &mut Canvas, slice: &Slice, lens: &Lens, area: &Area, show: Show) {
    let factor = lens.scale.factor();
    let spare = (area.height() - lens.height(slice)).max(0.0);
    let top = area.top + (spare / 2.0).min(14.0);
    let centre = PaperPoint::new(area.left + 6.0 + lens.radius, top + lens.above() + lens.radius);
    let spare = area.right - (centre.x + lens.radius + lens.label_room(slice, show));
    let centre = centre.moved((spare / 2.0).max(0.0), 0.0);
    let origin = centre.moved(-lens.middle.0 * factor, lens.middle.1 * factor);
    let view: Detail = View::open(canvas, "detail", lens.scale, origin);
    let [fill, outline, datums, dimensions, labels] =
        ["cut-fill", "cut", "datums", "dimensions", "labels"].map(|class| canvas.layer(view.layer, class));
    let ring = Ring { centre, radius: lens.radius };
    let drawn =
        Drawn { slice, view, ring, fill, outline, datums, dimensions, labels, lens: *lens, top, area: *area, show };
    let named = drawn.parts(canvas);
    canvas.circle(outline, centre, lens.radius, Paint::pen(Pen::DIMENSION));
    drawn.uprights(canvas);
    drawn.thicknesses(canvas);
    drawn.leader(canvas, &named);
}

impl Drawn<'_, '_> {
    /// A cut part: hatched, its edges inside the circle outlined. Returns whether its name stands in it.
    #[allow(clippy::too_many_arguments)]
    fn part(
        &self,
        canvas: &mut Canvas,
        x: (Length, Length),
        z: (Length, Length),
        material: Material,
        name: &str,
        sides: &str,
    ) -> bool {
        // Layers get their names from the leader, all together, where their thicknesses don't fit under the circle.
        let named =
            matches!(material, Material::Counter(_) | Material::Substrate) || chain_fits(self.slice, &self.lens);
        let (a, b) = (self.view.at(x.0, z.1), self.view.at(x.1, z.0));
        let polygon = self.ring.cut(a, b);
        if polygon.len() < 3 {
            return false;
        }
        let thin = self.view.size(x.1 - x.0).min(self.view.size(z.1 - z.0));
        let tint = if material == Material::Bed || thin < 1.5 { Fill::tint(Colour::TINT_BED) } else { Fill::WHITE };
        canvas.polyline(self.fill, &polygon, true, Paint::fill(tint));
        let place = if named { place_in(&polygon, name, &self.upright_places()) } else { None };
        let mut rings = vec![polygon];
        if let Some((text, ring)) = place.as_ref() {
            canvas.put(self.labels, text.clone());
            rings.push(ring.clone());
        }
        if material == Material::Bed {
            self.mortar(canvas, &rings);
        } else if thin >= 1.5 {
            materials::hatch(canvas, self.fill, &rings, material, self.lens.scale.0 <= 2);
        }
        let pen = if thin < 1.5 { Pen::SECONDARY } else { Pen::CUT };
        let (c, d) = (PaperPoint::new(a.x, b.y), PaperPoint::new(b.x, a.y));
        for side in sides.chars() {
            let (p, q) = match side {
                'l' => (a, c),
                'r' => (d, b),
                't' => (a, d),
                _ => (c, b),
            };
            if let Some((p, q)) = self.ring.chord(p, q) {
                canvas.line(self.outline, p, q, pen.square());
            }
        }
        place.is_some()
    }

    /// Paper x of every upright that comes down over the circle.
    fn upright_places(&self) -> Vec<f64> {
        self.slice.depth_datums().iter().map(|(_, at)| self.view.x(*at)).collect()
    }

    /// Dots of a bed, none under its name.
    fn mortar(&self, canvas: &mut Canvas, rings: &[Vec<PaperPoint>]) {
        let Some(outer) = rings.first() else { return };
        let mut steps = Vec::new();
        let (x0, x1) = outer.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.x), b.max(p.x)));
        let (y0, y1) = outer.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.y), b.max(p.y)));
        let (step, radius) = (1.5, 0.16);
        for row in 0..((y1 - y0) / (step / 2.0)) as i64 {
            let y = y0 + 0.5 + row as f64 * step / 2.0;
            let shift = if row % 2 == 1 { step / 2.0 } else { 0.0 };
            for column in 0..((x1 - x0) / step) as i64 + 1 {
                let p = PaperPoint::new(x0 + 0.6 + shift + column as f64 * step, y);
                let holds = |ring: &Vec<PaperPoint>| contains(ring, p);
                if p.x < x1 - 0.4 && holds(outer) && !rings[1..].iter().any(holds) {
                    steps.extend(crate::sheets::canvas::circle_steps(p, radius));
                }
            }
        }
        if !steps.is_empty() {
            canvas.steps(self.fill, steps, Paint::fill(Fill::tint(Colour::INK)));
        }
    }

    /// All parts; returns where on w those begin whose name stands in them.
    fn parts(&self, canvas: &mut Canvas) -> Vec<Length> {
        let (d, slice) = (&self.slice.leg.datums, self.slice);
        let deep = Length::from_mm(self.lens.radius * 2.0 / self.lens.scale.factor());
        let far = slice.near.at[2] + deep;
        let low = d.frame_top - deep;
        let mut named = Vec::new();
        let counter = Material::Counter(slice.solved.counter.material);
        if self.part(canvas, (slice.counter_edges.0, far), (d.substrate_top, d.counter_top), counter, "counter", "ltb")
        {
            named.push(d.counter_top);
        }
        if d.substrate_top > d.frame_top
            && self.part(
                canvas,
                (slice.substrate_edges.0, far),
                (d.frame_top, d.substrate_top),
                Material::Substrate,
                &slice.solved.substrate.name,
                "ltb",
            )
        {
            named.push(d.substrate_top);
        }
        for (a, b, name, material) in layers(slice) {
            let board = material == Material::Board;
            let top = if !board && slice.near.clears_substrate { d.substrate_top } else { d.frame_top };
            if self.part(canvas, (a, b), (low, top), material, &name, if board { "lrt" } else { "rt" }) {
                named.push(a);
            }
        }
        self.tube(canvas);
        self.finished_edge(canvas, low);
        named
    }

    /// The frame's tube: its walls hatched.
    fn tube(&self, canvas: &mut Canvas) {
        let (d, frame) = (&self.slice.leg.datums, self.slice.solved.frame);
        let (x0, x1, z1) = (self.slice.near.at[2], self.slice.near.at[2] + frame.tube, d.frame_top);
        let z0 = z1 - frame.tube;
        let wall = frame.wall.max(Length::from_mm(1.0));
        let bars = [
            ((x0, x1), (z1 - wall, z1)),
            ((x0, x0 + wall), (z0, z1 - wall)),
            ((x1 - wall, x1), (z0, z1 - wall)),
            ((x0 + wall, x1 - wall), (z0, z0 + wall)),
        ];
        let thick = self.view.size(wall);
        for ((a, b), (low, high)) in bars {
            let polygon = self.ring.cut(self.view.at(a, high), self.view.at(b, low));
            if polygon.len() < 3 {
                continue;
            }
            let paint = if thick < 1.2 { Fill::ink(Colour::INK) } else { Fill::WHITE };
            canvas.polyline(self.fill, &polygon, true, Paint::fill(paint));
            if thick >= 1.2 {
                canvas.hatch(self.fill, &[polygon], 45.0, 0.8, Pen::FINE);
            }
        }
        let p = |x: Length, z: Length| self.view.at(x, z);
        let outside = [(p(x0, z0), p(x0, z1)), (p(x0, z1), p(x1, z1)), (p(x1, z0), p(x1, z1)), (p(x0, z0), p(x1, z0))];
        let (x0, x1, z0, z1) = (x0 + wall, x1 - wall, z0 + wall, z1 - wall);
        let inside = [(p(x0, z0), p(x0, z1)), (p(x0, z1), p(x1, z1)), (p(x1, z0), p(x1, z1)), (p(x0, z0), p(x1, z0))];
        for (lines, pen) in [(outside, Pen::CUT), (inside, Pen::VISIBLE)] {
            for (a, b) in lines {
                if let (Some((a, b)), true) = (self.ring.chord(a, b), thick >= 1.2 || pen == Pen::CUT) {
                    canvas.line(self.outline, a, b, if thick < 1.2 { Pen::SECONDARY } else { pen }.square());
                }
            }
        }
    }

    /// The finished face where it is a real edge.
    fn finished_edge(&self, canvas: &mut Canvas, low: Length) {
        let d = &self.slice.leg.datums;
        let top = if self.slice.near.build.finish.is_some() && self.slice.near.clears_substrate {
            d.substrate_top
        } else {
            d.frame_top
        };
        if let Some((a, b)) = self.ring.chord(self.view.at(Length::ZERO, top), self.view.at(Length::ZERO, low)) {
            let facts = vec![("data-datum", self.slice.depth_datums()[1].0.words().to_owned())];
            canvas.shape(self.datums, Shape::Line(a, b), Paint::pen(Pen::CUT.accent()), "datum", facts);
        }
    }

    /// The datums over the circle: the flag on its pole, the names of the others, the overhang.
    fn uprights(&self, canvas: &mut Canvas) {
        let d = &self.slice.leg.datums;
        let words = self.slice.depth_datums()[1].0.words();
        let top = if self.slice.near.build.finish.is_some() && self.slice.near.clears_substrate {
            d.substrate_top
        } else {
            d.frame_top
        };
        let x = self.view.x(Length::ZERO);
        let pole = Shape::Line(PaperPoint::new(x, self.top), PaperPoint::new(x, self.view.y(top)));
        let facts = vec![("data-datum", words.to_owned())];
        canvas.shape(self.datums, pole, Paint::pen(Pen::VISIBLE.accent().dashed(Dash::FINISHED)), "datum", facts);
        let lowest = self.top + 5.2 + NAME_ROW * self.lens.name_rows as f64 + 0.6;
        for name in names(self.slice, &self.lens) {
            let baseline = lowest - NAME_ROW * name.row as f64;
            let (x, end) = (self.view.x(name.at), self.level_below(name.at));
            let shape = Shape::Line(PaperPoint::new(x, baseline - 2.8), PaperPoint::new(x, self.view.y(end) - 1.0));
            canvas.shape(
                self.datums,
                shape,
                Paint::pen(Pen::DIMENSION),
                "datum",
                vec![("data-datum", name.words.to_owned())],
            );
            let (off, style) = if name.left { (-1.4, Style::body().end()) } else { (1.4, Style::body()) };
            canvas.text(self.labels, PaperPoint::new(x + off, baseline), name.words, &style);
        }
        marks::flag(canvas, self.datums, PaperPoint::new(x, self.top), words, true);
        self.overhang(canvas, words);
    }

    /// The level at which an upright over a datum ends.
    fn level_below(&self, at: Length) -> Length {
        let d = &self.slice.leg.datums;
        if at == self.slice.counter_edges.0 {
            d.counter_top
        } else if at == self.slice.near.at[2] || !self.slice.near.clears_substrate {
            d.frame_top
        } else {
            d.substrate_top
        }
    }

    fn overhang(&self, canvas: &mut Canvas, words: &str) {
        let (d, edge) = (&self.slice.leg.datums, self.slice.counter_edges.0);
        if edge == Length::ZERO {
            return;
        }
        let line = self.top + self.lens.above() - 0.2;
        let plain = Dimension::new(Across::X, (Length::ZERO, d.counter_top), (edge, d.counter_top), line)
            .datums(words, "counter edge")
            .witnesses(Some(line + 1.0), Some(line + 1.0))
            .from_finished();
        let named = plain.clone().label(if edge < Length::ZERO { "overhang" } else { "held back" });
        let fits = |dimension: &Dimension| dimension.fits(&self.view, self.show);
        let left = self.view.x(edge.min(Length::ZERO)) - 6.5;
        let dimension = match () {
            _ if fits(&named) => named,
            _ if left - named.lettering_width(self.show) >= self.area.left => named.number(Number::Before(6.5)),
            _ if fits(&plain) => plain,
            _ => plain.number(Number::Before(6.5)),
        };
        dimension.draw(canvas, self.dimensions, &self.view, self.show);
    }

    /// Thicknesses under and beside the circle.
    fn thicknesses(&self, canvas: &mut Canvas) {
        let [_, board, frame] = self.slice.near.at;
        let (view, show, at) = (&self.view, self.show, self.dimensions);
        let low = Length::from_mm(self.lens.middle.1 - self.lens.radius / self.lens.scale.factor());
        let start = |w: Length| Some(self.ring.lower(view.x(w)) + 1.2);
        let words = self.slice.depth_datums()[1].0.words();
        let mut line = self.ring.centre.y + self.ring.radius + 8.0;
        if chain_fits(self.slice, &self.lens) {
            for (k, (a, b, name, _)) in layers(self.slice).into_iter().enumerate() {
                Dimension::new(Across::X, (a, low), (b, low), line)
                    .datums(if k == 0 { words.to_owned() } else { "layer".to_owned() }, name)
                    .witnesses(start(a), start(b))
                    .ghosts(true, k > 0)
                    .draw(canvas, at, view, show);
            }
            line += NEXT;
        }
        let total = |to: Length, name: &str, label: &str, line: f64, canvas: &mut Canvas| {
            let dimension = Dimension::new(Across::X, (Length::ZERO, low), (to, low), line)
                .datums(words, name)
                .label(label)
                .witnesses(start(Length::ZERO), start(to))
                .from_finished();
            let dimension = if dimension.fits(view, show) { dimension } else { dimension.number(Number::Before(6.5)) };
            dimension.draw(canvas, at, view, show);
        };
        let depths = self.slice.depth_datums();
        if board > Length::ZERO && frame > board {
            total(board, depths[2].0.words(), "finish", line, canvas);
            line += NEXT;
        }
        if frame > Length::ZERO {
            total(
                frame,
                depths[3].0.words(),
                if board > Length::ZERO && frame > board { "build-up" } else { "to bare frame" },
                line,
                canvas,
            );
        }
        self.heights(canvas);
    }

    /// Counter and substrate, right of the circle.
    fn heights(&self, canvas: &mut Canvas) {
        let d = &self.slice.leg.datums;
        let line = self.ring.centre.x + self.ring.radius + 7.0;
        let w = self.slice.near.at[2];
        let start = |z: Length| Some(self.ring.right(self.view.y(z)) + 1.2);
        let levels = [
            (d.substrate_top, d.counter_top, "substrate top", "counter top"),
            (d.frame_top, d.substrate_top, "frame top", "substrate top"),
        ];
        for (k, (low, high, from, to)) in levels.into_iter().enumerate().filter(|(_, (low, high, ..))| high > low) {
            let dimension = Dimension::new(Across::Y, (w, low), (w, high), line)
                .datums(from, to)
                .witnesses(start(low), start(high))
                .ghosts(false, k > 0);
            let level = !dimension.fits(&self.view, self.show);
            // Two level numbers one over the other need their height; the view names the thickness too.
            if level && k > 0 && self.view.size((d.counter_top - d.frame_top).half()) < 4.0 {
                continue;
            }
            let dimension = if level { dimension.number(Number::Level(2.6)) } else { dimension };
            dimension.draw(canvas, self.dimensions, &self.view, self.show);
        }
    }

    /// One leader through the layers that have no name in them, and the frame's wall.
    fn leader(&self, canvas: &mut Canvas, named: &[Length]) {
        let d = &self.slice.leg.datums;
        let shown: Vec<Length> = if chain_fits(self.slice, &self.lens) { named.to_vec() } else { Vec::new() };
        let list = stack(self.slice, &shown, self.show);
        let right = self.ring.centre.x + self.ring.radius + 3.0;
        let room = (self.area.right - right - 3.0).max(10.0);
        let set = |name: &String| {
            notes::wrapped(name, room, BODY, Weight::Regular)
                .iter()
                .map(|line| shortened(line, room, &Style::body()))
                .collect()
        };
        let lines: Vec<Vec<String>> = list.iter().map(|(_, name)| set(name)).collect();
        let count: usize = lines.iter().map(Vec::len).sum();
        self.missing_levels(canvas, named);
        let Some((first, _)) = list.first() else { return };
        let (top, bottom) = (self.view.y(d.frame_top) + 4.0, self.ring.centre.y + self.ring.radius - 2.0);
        let fits = |y: &f64| {
            let texts = lines.iter().flatten().enumerate();
            let mut places = texts.map(|(k, line)| {
                lettering::set(PaperPoint::new(right + 3.0, y + 4.8 * k as f64 + 1.25), line, &Style::body())
            });
            let spine = [
                PaperPoint::new(self.view.x(*first), *y),
                PaperPoint::new(right, *y),
                PaperPoint::new(right, y + 4.8 * (count as f64 - 1.0)),
            ];
            canvas.is_clear_of_text(&spine) && places.all(|text| canvas.is_free(&text))
        };
        let deep = |y: f64| y + 4.8 * (count as f64 - 1.0);
        let levels: Vec<f64> =
            (0..60).map(|k| top + 7.0 + f64::from(k)).chain((0..7).map(|k| top + f64::from(k))).collect();
        let chosen =
            levels.iter().copied().filter(|y| *y < bottom - 3.0).find(|y| fits(y) && deep(*y) <= bottom + 10.0);
        let y = chosen.or(levels.iter().copied().find(fits)).unwrap_or(top);
        let (from, last) = (
            PaperPoint::new(self.view.x(*first), y),
            PaperPoint::new(right, y + 4.8 * (count - lines.last().map_or(1, Vec::len)) as f64),
        );
        canvas.polyline(self.labels, &[from, PaperPoint::new(right, y), last], false, Paint::pen(Pen::DIMENSION));
        let mut row = 0;
        for ((w, _), lines) in list.iter().zip(&lines) {
            canvas.circle(self.labels, PaperPoint::new(self.view.x(*w), y), 0.45, Paint::fill(Fill::ink(Colour::INK)));
            for (k, line) in lines.iter().enumerate() {
                let level = y + 4.8 * row as f64;
                if k == 0 {
                    canvas.line(
                        self.labels,
                        PaperPoint::new(right, level),
                        PaperPoint::new(right + 2.0, level),
                        Pen::DIMENSION,
                    );
                }
                canvas.text(self.labels, PaperPoint::new(right + 3.0, level + 1.25), line, &Style::body());
                row += 1;
            }
        }
    }

    /// Counter or substrate too thin for a name in it: by leader past the thicknesses.
    fn missing_levels(&self, canvas: &mut Canvas, named: &[Length]) {
        let d = &self.slice.leg.datums;
        let parts = [
            (d.counter_top, d.substrate_top, "counter"),
            (d.substrate_top, d.frame_top, self.slice.solved.substrate.name.as_str()),
        ];
        for (top, low, name) in parts.into_iter().filter(|(top, low, _)| top > low && !named.contains(top)) {
            let right = self.ring.centre.x + self.ring.radius + 11.0;
            let room = (self.area.right - right - 1.0).max(8.0);
            let lines: Vec<String> = notes::wrapped(name, room, BODY, Weight::Regular)
                .iter()
                .map(|line| shortened(line, room, &Style::body()))
                .collect();
            // Past the thickness's number, not through it.
            let levels =
                [0.5, 0.78, 0.22, 0.88, 0.12, 0.96, 0.04].map(|share| self.view.y(low + (top - low).scaled(share)));
            let dot = |y: f64| PaperPoint::new(self.ring.right(y) - 5.0, y);
            let place = |y: f64, k: usize| {
                PaperPoint::new(right + 1.0, y + 1.25 + 4.4 * (k as f64 - (lines.len() - 1) as f64 / 2.0))
            };
            let fits = |y: &f64| {
                let free =
                    |(k, line): (usize, &String)| canvas.is_free(&lettering::set(place(*y, k), line, &Style::body()));
                canvas.is_clear_of_text(&[dot(*y), PaperPoint::new(right, *y)]) && lines.iter().enumerate().all(free)
            };
            let Some(y) = levels.iter().copied().find(fits) else { continue };
            canvas.polyline(self.labels, &[dot(y), PaperPoint::new(right, y)], false, Paint::pen(Pen::DIMENSION));
            canvas.circle(self.labels, dot(y), 0.45, Paint::fill(Fill::ink(Colour::INK)));
            for (k, line) in lines.iter().enumerate() {
                canvas.text(self.labels, place(y, k), line, &Style::body());
            }
        }
    }
}
