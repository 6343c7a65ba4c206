//! The run's materials, painted with the functions of the picture: large swatches where they fit in a row, small ones in
//! lines where the sheet is small.

use super::brush::{Brush, DARK, SHADE};
use super::chance::Chance;
use super::face::{BOARD, TRIM};
use super::metal;
use super::patch::{Rect, Ring};
use super::scene::{INCH, Scene, Side};
use super::surround::{self, PAVING, Texture};
use super::{masonry, skim, slab, tile};
use crate::drawing::Colour;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::Area;
use crate::sheets::notes::wrapped;
use crate::sheets::title_block::{self, shortened};
use crate::solve::{CounterMaterial, FinishKind, Look};

/// Width of a large swatch, mm of paper.
const WIDE: f64 = 21.0;
/// Its height.
const HIGH: f64 = 17.0;
/// Models are painted on swatches at 1:12.
const FACTOR: f64 = 1.0 / 12.0;

enum Kind {
    Ledger,
    Coat(skim::Coat),
    Tiles(tile::Grid),
    Slab(CounterMaterial),
    Steel,
    Ashlar,
    Plain,
    Board,
    Paving,
    Trim,
}

struct Material {
    name: String,
    place: &'static str,
    kind: Kind,
}

/// The band at the sheet's foot: beside the title block, or above it where the sheet is too narrow for both.
pub fn band(canvas: &Canvas, room: Area) -> Area {
    let corner = title_block::corner(canvas);
    Area { left: room.left, top: corner.y, right: corner.x - 6.0, bottom: room.bottom }
}

fn capital(name: &str, otherwise: &str) -> String {
    let name = if name.trim().is_empty() { otherwise } else { name.trim() };
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn materials(scene: &Scene<'_>) -> Vec<Material> {
    let mut found: Vec<Material> = Vec::new();
    if let Some(finish) = scene.finish() {
        let (kind, otherwise) = match finish.kind {
            FinishKind::SkimCoat => (Kind::Coat(skim::FACE), "skim coat"),
            FinishKind::Veneer => (Kind::Ledger, "stone veneer"),
            FinishKind::Tile { width, height, joint, staggered } => {
                let grid = tile::Grid { width: width.mm(), height: height.mm(), joint: joint.mm(), staggered };
                (Kind::Tiles(grid), "tile")
            }
        };
        found.push(Material { name: capital(&finish.name, otherwise), place: "face", kind });
    } else {
        let board = &scene.leg.build(scene.face).board_name;
        found.push(Material { name: capital(board, "board"), place: "face", kind: Kind::Board });
    }
    let counter = capital(&scene.solved.counter.name, "counter");
    found.push(Material { name: counter, place: "counter", kind: Kind::Slab(scene.material()) });
    let metal = |look: Look| look != Look::Hole;
    if scene.fronts.iter().any(|front| metal(front.fitting.look)) {
        found.push(Material { name: "Brushed steel".to_owned(), place: "fronts", kind: Kind::Steel });
    }
    if let Some((wall, _)) = scene.wall {
        found.push(Material { name: capital(&wall.name, "wall"), place: "behind", kind: Kind::Coat(skim::WALL) });
    }
    match &scene.bounds {
        // Two of a kind are one material.
        [Some(a), Some(b)] if a.bound.name == b.bound.name && a.bound.kind == b.bound.kind => {
            found.push(end_material(a, "at both ends"));
        }
        [left, right] => {
            let ends = [(left, "at the left"), (right, "at the right")];
            // The wall behind may come forward round a corner: it is one wall.
            let behind = scene.wall.map(|(wall, _)| (wall.kind, wall.name.as_str()));
            let other = |side: &&Side<'_>| Some((side.bound.kind, side.bound.name.as_str())) != behind;
            let ends = ends.into_iter().filter_map(|(side, place)| Some((side.as_ref().filter(other)?, place)));
            found.extend(ends.map(|(side, place)| end_material(side, place)));
        }
    }
    found.push(Material { name: capital(&scene.solved.paving, "paving"), place: "underfoot", kind: Kind::Paving });
    if let Some(trim) = &scene.solved.trim {
        found.push(Material { name: capital(&trim.name, "base trim"), place: "at the floor", kind: Kind::Trim });
    }
    found
}

fn end_material(side: &Side<'_>, place: &'static str) -> Material {
    Material { name: capital(&side.bound.name, side_word(side)), place, kind: side_kind(side) }
}

fn side_kind(side: &Side<'_>) -> Kind {
    match surround::texture_of(side) {
        Texture::Stone => Kind::Ashlar,
        Texture::Coat => Kind::Coat(skim::WALL),
        Texture::Plain => Kind::Plain,
    }
}

fn side_word(side: &Side<'_>) -> &'static str {
    match surround::texture_of(side) {
        Texture::Stone => "masonry",
        Texture::Coat => "wall",
        Texture::Plain => "post",
    }
}

/// Draws the materials into the band.
pub fn draw(canvas: &mut Canvas, scene: &Scene<'_>, band: Area) {
    let materials = materials(scene);
    let pitch = (band.width() + 5.0) / materials.len() as f64;
    if pitch >= WIDE + 4.5 {
        let pitch = pitch.min(29.5);
        for (k, material) in materials.iter().enumerate() {
            large(canvas, material, band.left + pitch * k as f64, band.top, pitch - 3.0);
        }
        return;
    }
    // Lines of small swatches, in as few columns as hold them.
    let line = 6.6;
    let rows = (((band.height() - 3.0) / line).floor().max(1.0)) as usize;
    let columns = materials.len().div_ceil(rows);
    let column = band.width() / columns as f64;
    for (k, material) in materials.iter().enumerate() {
        let (x, y) = (band.left + column * (k / rows) as f64, band.top + 1.0 + line * (k % rows) as f64);
        small(canvas, material, x, y, column - 2.0);
    }
}

fn large(canvas: &mut Canvas, material: &Material, x: f64, y: f64, room: f64) {
    paint(canvas, material, x, y, WIDE, HIGH);
    let layer = canvas.layer(Canvas::ROOT, "materials");
    let bold = Style::body().bold();
    let mut lines = wrapped(&material.name, room, BODY, Weight::SemiBold);
    if lines.len() > 2 {
        let rest = lines.split_off(1).join(" ");
        lines.push(rest);
    }
    let mut at = y + HIGH + 5.2;
    for line in &lines {
        canvas.text(layer, PaperPoint::new(x, at), &shortened(line, room, &bold), &bold);
        at += 4.3;
    }
    canvas.text(layer, PaperPoint::new(x, at), material.place, &Style::caption());
}

fn small(canvas: &mut Canvas, material: &Material, x: f64, y: f64, room: f64) {
    let (wide, high) = (9.0, 5.0);
    paint(canvas, material, x, y, wide, high);
    let layer = canvas.layer(Canvas::ROOT, "materials");
    let (at, bold) = (PaperPoint::new(x + wide + 2.0, y + 3.8), Style::body().bold());
    let place = lettering::width(material.place, BODY, Weight::Regular) + 1.6;
    let free = room - wide - 2.0;
    let whole = lettering::width(&material.name, BODY, Weight::SemiBold);
    if whole + place <= free {
        let width = canvas.text(layer, at, &material.name, &bold);
        canvas.text(layer, at.moved(width + 1.6, 0.0), material.place, &Style::caption());
    } else {
        canvas.text(layer, at, &shortened(&material.name, free, &bold), &bold);
    }
}

fn paint(canvas: &mut Canvas, material: &Material, x: f64, y: f64, wide: f64, high: f64) {
    let layer = canvas.layer(Canvas::ROOT, "swatch");
    let mut brush = Brush::new(canvas, layer, PaperPoint::new(x, y + high), FACTOR);
    let area = Rect::new(0.0, 0.0, wide / FACTOR, high / FACTOR);
    let patch = area.patch();
    match &material.kind {
        Kind::Ledger => {
            brush.fill([&patch], masonry::LEDGER.joint);
            let wider = Rect::new(-3.0 * INCH, -0.9 * INCH, area.x1 + 5.0 * INCH, area.y1 + 0.6 * INCH);
            let stones = masonry::ledger(&mut Chance::named("swatch ledger"), wider, &[], &[], 1.0);
            masonry::paint(&mut brush, &masonry::trimmed(stones, area), &masonry::LEDGER);
        }
        Kind::Ashlar => {
            brush.fill([&patch], masonry::ASHLAR.joint);
            let wider = Rect::new(-4.0 * INCH, -1.5 * INCH, area.x1 + 7.0 * INCH, area.y1 + 2.0 * INCH);
            let stones = masonry::ashlar(&mut Chance::named("swatch ashlar"), wider, 0.7);
            masonry::paint(&mut brush, &masonry::trimmed(stones, area), &masonry::ASHLAR);
        }
        Kind::Coat(coat) => {
            brush.fill([&patch], coat.ground);
            let stronger = skim::Coat {
                pass: coat.pass * 2.0,
                dense: coat.dense * 2.0,
                line: coat.line.mixed(SHADE, 0.1),
                ..*coat
            };
            skim::texture(&mut brush, "swatch coat", area, &[], 0.34, stronger);
        }
        Kind::Tiles(grid) => {
            // At least two tiles each way are seen, at a reduced size if they are large.
            let by =
                (area.width() / (2.4 * grid.width.max(1.0))).min(area.height() / (2.2 * grid.height.max(1.0))).min(1.0);
            let shown =
                tile::Grid { width: grid.width * by, height: grid.height * by, joint: grid.joint * by, ..*grid };
            tile::paint(&mut brush, "swatch tile", area, &[], shown);
        }
        Kind::Slab(kind) => {
            brush.fill([&patch], slab::ground(*kind).0);
            slab::texture(&mut brush, "swatch slab", area.inset(0.2 * INCH), *kind, 6.0);
        }
        Kind::Steel => {
            metal::bands(&mut brush, &patch, metal::STEEL, true, 0.0);
            metal::grain(
                &mut brush,
                &mut Chance::named("swatch steel"),
                &patch,
                0.34 * INCH,
                Colour::from_hex(0xb9bdbf),
            );
        }
        Kind::Plain => {
            brush.fill([&patch], Colour::from_hex(0xd9d7d2));
            brush.glaze_rect(Rect { x0: area.x1 * 0.7, ..area }, SHADE, 0.10);
        }
        Kind::Board => brush.fill([&patch], BOARD),
        Kind::Paving => paving(&mut brush, area),
        Kind::Trim => trim(&mut brush, area),
    }
    brush.outline(&patch, 0.25, DARK);
}

fn paving(brush: &mut Brush<'_>, area: Rect) {
    brush.fill_rect(area, PAVING);
    let mut chance = Chance::named("swatch paving");
    let dots: Vec<_> = (0..90).map(|_| [chance.between(area.x0, area.x1), chance.between(area.y0, area.y1)]).collect();
    brush.dots(&dots, 0.09, Colour::from_hex(0xc6c3bd));
    let (w, h) = (area.width(), area.height());
    let joints: [Ring; 3] = [
        vec![[0.0, h * 0.42], [w, h * 0.42]],
        vec![[w * 0.36, 0.0], [w * 0.36, h * 0.42]],
        vec![[w * 0.72, h * 0.42], [w * 0.72, h]],
    ];
    brush.lines(&joints, 0.5, Colour::WHITE);
    brush.lines(&joints, 0.18, Colour::from_hex(0x8f8c87));
}

fn trim(brush: &mut Brush<'_>, area: Rect) {
    brush.fill_rect(area, TRIM);
    brush.glaze_rect(Rect { y0: area.y1 * 0.82, ..area }, Colour::WHITE, 0.35);
    let mut chance = Chance::named("swatch trim");
    let lines: Vec<Ring> = (0..7)
        .map(|k| area.y1 * (0.1 + 0.1 * f64::from(k)))
        .map(|y| vec![[chance.between(0.0, area.x1 * 0.4), y], [chance.between(area.x1 * 0.6, area.x1), y]])
        .collect();
    brush.lines(&lines, 0.13, Colour::from_hex(0x97948e));
}
