//! A bar for each module, layer by layer.

use super::{module_name, reading, title};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, corners};
use crate::sheets::frame::Area;
use crate::sheets::materials::{Material, hatch};
use crate::sheets::set::Set;
use crate::sheets::title_block::shortened;
use crate::solve::{FinishKind, ModuleWeight};

/// From bar to bar, and a bar's height, mm.
const PITCH: f64 = 7.2;
const BAR: f64 = 4.6;
/// Width of the names, and of the weights after them, mm.
const NAMES: f64 = 40.0;
const FIGURES: f64 = 26.0;
/// A swatch of the key, mm.
const SWATCH: (f64, f64) = (7.0, 3.6);

/// How a layer is filled.
#[derive(Clone, Copy)]
enum Look {
    Dark,
    White,
    Hatched(Material, Colour),
}

/// A layer of a module: its name, how it is filled, its share of the weight.
type Layered = (&'static str, Look, fn(&ModuleWeight) -> f64);

/// The layers of a module from the inside out.
fn layers(set: &Set<'_>) -> [Layered; 6] {
    let counter = Material::Counter(set.solved.counter.material);
    [
        ("frame", Look::Dark, |weight| weight.frame),
        ("boards", Look::Hatched(Material::Board, Colour::TINT_BOARD), |weight| weight.boards),
        ("finish", Look::Hatched(Material::Finish(FinishKind::Veneer), Colour::TINT_BED), |weight| weight.finish),
        ("substrate", Look::Hatched(Material::Substrate, Colour::WHITE), |weight| weight.substrate),
        ("counter", Look::Hatched(counter, Colour::TINT_BEYOND), |weight| weight.counter),
        ("fittings", Look::White, |weight| weight.fittings),
    ]
}

/// Draws the chart and returns its bottom; nothing where the run has too many modules for it.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, area: Area) -> Option<f64> {
    let weights = &set.solved.shop.weights;
    let list: Vec<(usize, usize, &ModuleWeight)> = weights
        .modules
        .iter()
        .enumerate()
        .flat_map(|(leg, modules)| modules.iter().enumerate().map(move |(index, weight)| (leg, index, weight)))
        .collect();
    let most = list.iter().map(|(_, _, weight)| weight.total()).fold(0.0, f64::max);
    let room = area.width() - NAMES - FIGURES;
    let high = 16.0 + list.len() as f64 * PITCH;
    if most <= 0.0 || room < 40.0 || high > area.height() * 0.62 {
        return None;
    }
    let show = set.solved.show;
    let after = format!("{} in all", show.mass(weights.total));
    let mut y = title(canvas, area, "What each module weighs, dressed", &after);
    let layer = canvas.layer(Canvas::ROOT, "weights");
    y = key(canvas, set, layer, area, y) + 3.2;
    let bars = area.left + NAMES + FIGURES;
    for (leg, index, weight) in list {
        let base = y + BAR / 2.0 + BODY / 2.0;
        let name = shortened(&module_name(set, leg, index), NAMES - 2.0, &Style::body().bold());
        canvas.text(layer, PaperPoint::new(area.left, base), &name, &Style::body().bold());
        let total = reading(set).mass(weight.total());
        canvas.text(layer, PaperPoint::new(bars - 4.0, base), &total, &Style::body().end());
        let mut x = bars;
        for (_, look, of) in layers(set) {
            let long = of(weight) / most * room;
            if long > 0.0 {
                patch(canvas, layer, PaperPoint::new(x, y), (long, BAR), look);
                x += long;
            }
        }
        y += PITCH;
    }
    Some(y - PITCH + BAR)
}

/// The key of the layers. Returns its bottom.
fn key(canvas: &mut Canvas, set: &Set<'_>, layer: Layer, area: Area, top: f64) -> f64 {
    let (mut x, mut y) = (area.left, top);
    for (name, look, _) in layers(set) {
        let wide = SWATCH.0 + 1.6 + lettering::width(name, BODY, Weight::Regular) + 6.0;
        if x + wide > area.right && x > area.left {
            (x, y) = (area.left, y + 5.4);
        }
        patch(canvas, layer, PaperPoint::new(x, y), SWATCH, look);
        let base = PaperPoint::new(x + SWATCH.0 + 1.6, y + SWATCH.1 / 2.0 + BODY / 2.0);
        canvas.text(layer, base, name, &Style::caption());
        x += wide;
    }
    y + SWATCH.1
}

/// A filled box.
fn patch(canvas: &mut Canvas, layer: Layer, corner: PaperPoint, size: (f64, f64), look: Look) {
    let far = corner.moved(size.0, size.1);
    let fill = match look {
        Look::Dark => Fill::tint(Colour::GREY_TEXT),
        Look::White => Fill::WHITE,
        Look::Hatched(_, tint) => Fill::tint(tint),
    };
    canvas.rectangle(layer, corner, far, Paint::fill(fill));
    if let Look::Hatched(material, _) = look {
        hatch(canvas, layer, &[corners(corner, far).to_vec()], material, false);
    }
    canvas.rectangle(layer, corner, far, Paint::pen(Pen::SECONDARY));
}
