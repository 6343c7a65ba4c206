//! What is hung in a notch or stands over the counter on its own: grills, side burners, an apron sink.

use super::brush::{Brush, DARK, MID, SHADE};
use super::chance::Chance;
use super::fronts;
use super::metal::{self, LINE, REVEAL, RIM};
use super::patch::{Patch, Rect, Ring, arc, disc};
use super::scene::{Front, INCH, Scene};
use crate::drawing::Colour;
use crate::solve::{Fitting, Look};

/// A fitting hung in a notch: its hood over the counter and its fascia in the face.
pub fn hung(brush: &mut Brush<'_>, scene: &Scene<'_>, front: &Front<'_>) {
    let fitting = front.fitting;
    let outside = front.outside;
    match fitting.look {
        Look::Grill => hood(
            brush,
            scene,
            fitting,
            Rect { x0: outside.x0 + 0.5 * INCH, x1: outside.x1 - 0.5 * INCH, ..outside },
            false,
        ),
        Look::SideBurner => low_lid(brush, scene, fitting, outside),
        _ => {}
    }
    fascia(brush, front);
}

/// The part of a hung fitting that is seen in the face.
pub fn fascia(brush: &mut Brush<'_>, front: &Front<'_>) {
    let (fitting, outside) = (front.fitting, front.outside);
    let patch = outside.rounded(0.5 * INCH);
    let mut chance = Chance::named(&format!("{} fascia", fitting.id));
    metal::bands(brush, &patch, metal::STEEL, true, 0.0);
    metal::grain(brush, &mut chance, &patch, 0.5 * INCH, Colour::from_hex(0xbcc2c5));
    metal::lit(brush, outside, 0.6 * INCH, 0.6, 0.10);
    if matches!(fitting.look, Look::Grill | Look::SideBurner) {
        controls(brush, outside, &patch, fitting.look);
    }
    brush.outline_with(&patch, 0.5, DARK, fronts::facts(front));
}

/// Knobs, a seam under the sill, and a drip tray where the fascia is high enough for both.
fn controls(brush: &mut Brush<'_>, outside: Rect, on: &Patch, look: Look) {
    let (w, h) = (outside.width(), outside.height());
    let seam = outside.y1 - (0.75 * INCH).min(h * 0.1);
    brush.edge(&[[outside.x0 + 0.1 * INCH, seam], [outside.x1 - 0.1 * INCH, seam]], 0.18, REVEAL);
    brush.glaze_rect(
        Rect {
            x0: outside.x0 + 0.2 * INCH,
            x1: outside.x1 - 0.2 * INCH,
            y1: seam,
            y0: seam - (0.5 * INCH).min(h * 0.06),
        },
        SHADE,
        0.12,
    );
    let tray = look == Look::Grill && h > 7.0 * INCH;
    let radius = (1.35 * INCH).min(h * 0.17);
    let count = (w / (6.4 * INCH)).round().clamp(1.0, 7.0) as usize;
    let pitch = (6.2 * INCH).min(w / (count as f64 + 0.4));
    let y = outside.y0 + h * if tray { 0.55 } else { 0.47 };
    for k in 0..count {
        let x = outside.middle() + (k as f64 - (count as f64 - 1.0) / 2.0) * pitch;
        metal::knob(brush, [x, y], radius, on);
    }
    if tray {
        let half = (9.0 * INCH).min(w * 0.3);
        let y = outside.y0 + 0.8 * INCH;
        let drawer = Rect::new(outside.middle() - half, y, outside.middle() + half, y + 1.3 * INCH);
        brush.fill([&drawer.rounded(0.3 * INCH)], Colour::from_hex(0xcdd2d5));
        brush.outline(&drawer.rounded(0.3 * INCH), 0.18, LINE);
        let slot =
            Rect::new(outside.middle() - half * 0.44, y + 0.3 * INCH, outside.middle() + half * 0.44, y + 0.75 * INCH);
        brush.fill_rect(slot, REVEAL);
    }
}

/// The outline of a hood: upright ends, round shoulders.
fn profile(rect: Rect) -> Patch {
    let height = rect.height();
    let (rx, ry) = ((4.6 * INCH).min(rect.width() * 0.2), (5.0 * INCH).min(height * 0.4));
    let squash = |centre: [f64; 2], from: f64, to: f64| -> Ring {
        arc([0.0, 0.0], 1.0, from, to, 10).into_iter().map(|[x, y]| [centre[0] + x * rx, centre[1] + y * ry]).collect()
    };
    let mut ring = vec![[rect.x0, rect.y0], [rect.x1, rect.y0]];
    ring.extend(squash([rect.x1 - rx, rect.y1 - ry], 0.0, 90.0));
    ring.extend(squash([rect.x0 + rx, rect.y1 - ry], 90.0, 180.0));
    Patch::of(ring)
}

/// The outline of the hood of a grill whose ends over the counter are those of `ends`.
pub fn hood_outline(scene: &Scene<'_>, fitting: &Fitting, ends: Rect) -> Patch {
    let top = scene.levels.1;
    let body = fitting.body.map_or(0.0, |body| body.z.1.mm());
    let height = Scene::hood_height(Look::Grill, fitting.width().mm());
    let y1 = if body > top + 4.0 * INCH { body } else { top + height };
    profile(Rect { x0: ends.x0, x1: ends.x1, y0: top + 0.1 * INCH, y1 })
}

/// A grill's hood; seen from behind it is plain, with a row of slots.
pub fn hood(brush: &mut Brush<'_>, scene: &Scene<'_>, fitting: &Fitting, ends: Rect, behind: bool) {
    let patch = hood_outline(scene, fitting, ends);
    let b = patch.bounds();
    metal::bands(brush, &patch, metal::HOOD, false, 0.0);
    let mut chance = Chance::named(&format!("{} hood", fitting.id));
    metal::grain(brush, &mut chance, &patch, 0.5 * INCH, Colour::from_hex(0xbfc5c8));
    let end = (1.7 * INCH).min(b.width() * 0.06);
    for cheek in [Rect { x1: b.x0 + end, ..b }, Rect { x0: b.x1 - end, ..b }] {
        brush.glaze([&cheek.patch().within(&patch)], Colour::from_hex(0x8d9397), 0.45);
    }
    let shoulder = |x: f64| {
        let top =
            (0..=40).map(|k| b.y0 + b.height() * f64::from(k) / 40.0).rfind(|&y| patch.holds([x, y])).unwrap_or(b.y1);
        vec![[x, b.y0], [x, top]]
    };
    brush.lines([&shoulder(b.x0 + end), &shoulder(b.x1 - end)], 0.18, Colour::from_hex(0x5c6062));
    brush.outline(&patch, 0.5, DARK);
    let middle = b.middle();
    if behind {
        let half = b.width() * 0.32;
        let slots: Vec<Ring> = (0..3)
            .map(|k| b.y0 + b.height() * (0.3 + 0.09 * f64::from(k)))
            .map(|y| vec![[middle - half, y], [middle + half, y]])
            .collect();
        brush.lines(&slots, 0.25, REVEAL);
        return;
    }
    // A dial and a bar across.
    let dial = [middle, b.y0 + b.height() * 0.66];
    let radius = (1.75 * INCH).min(b.height() * 0.13);
    brush.fill([&disc(dial, radius, 20)], Colour::from_hex(0xd8dcde));
    brush.outline(&disc(dial, radius, 20), 0.25, LINE);
    brush.fill([&disc(dial, radius * 0.77, 20)], Colour::from_hex(0xfbfbfa));
    brush.outline(&disc(dial, radius * 0.77, 20), 0.18, REVEAL);
    let ticks: Vec<Ring> = (0..9)
        .map(|k| (f64::from(k) * 30.0 - 30.0).to_radians())
        .map(|a| [0.52, 0.64].map(|r| [dial[0] + radius * r * a.cos(), dial[1] + radius * r * a.sin()]).to_vec())
        .collect();
    brush.lines(&ticks, 0.13, MID);
    brush.lines([&vec![dial, [dial[0] + radius * 0.45, dial[1] + radius * 0.3]]], 0.18, DARK);
    let (half, y) = (b.width() * 0.37, b.y0 + b.height() * 0.27);
    let thick = (1.1 * INCH).min(b.height() * 0.09);
    for x in [middle - half * 0.89, middle + half * 0.89] {
        let stud = Rect::new(x - thick * 0.6, y - thick * 0.9, x + thick * 0.6, y + thick * 0.9).rounded(0.3 * INCH);
        brush.fill([&stud], Colour::from_hex(0xb9bfc3));
        brush.outline(&stud, 0.18, LINE);
    }
    let bar = Rect::new(middle - half, y - thick / 2.0, middle + half, y + thick / 2.0);
    let round = bar.rounded(thick / 2.0);
    brush.cast(&round, 1.4 * thick, &patch, (0.14, 0.10));
    brush.fill([&round], Colour::from_hex(0xeef0f1));
    brush.glaze([&Rect { y1: bar.y0 + thick * 0.34, ..bar }.patch().within(&round)], Colour::from_hex(0x8d9397), 0.7);
    brush.outline(&round, 0.25, RIM);
}

/// The low lid of a side burner, on the counter.
pub fn low_lid(brush: &mut Brush<'_>, scene: &Scene<'_>, fitting: &Fitting, ends: Rect) {
    let top = scene.levels.1;
    let rim = Rect { x0: ends.x0, x1: ends.x1, y0: top, y1: top + 0.35 * INCH };
    let lid = Rect {
        x0: ends.x0 + 0.5 * INCH,
        x1: ends.x1 - 0.5 * INCH,
        y0: rim.y1,
        y1: top + Scene::hood_height(Look::SideBurner, 0.0),
    };
    let patch = lid.rounded(0.5 * INCH);
    metal::bands(brush, &patch, metal::HOOD, false, 0.0);
    let mut chance = Chance::named(&format!("{} lid", fitting.id));
    metal::grain(brush, &mut chance, &patch, 0.5 * INCH, Colour::from_hex(0xbfc5c8));
    brush.outline(&patch, 0.35, RIM);
    brush.fill_rect(rim, Colour::from_hex(0xd9dddf));
    brush.outline(&rim.patch(), 0.25, LINE);
    let half = (2.5 * INCH).min(lid.width() * 0.2);
    let grip =
        Rect::new(lid.middle() - half, lid.y0 + lid.height() * 0.36, lid.middle() + half, lid.y0 + lid.height() * 0.62);
    brush.fill([&grip.rounded(0.2 * INCH)], Colour::from_hex(0xeef0f1));
    brush.outline(&grip.rounded(0.2 * INCH), 0.18, LINE);
}

/// A grill let into the counter from above: a strip with knobs under its hood.
pub fn let_in(brush: &mut Brush<'_>, scene: &Scene<'_>, fitting: &Fitting, ends: Rect) {
    let strip = Rect { y1: scene.levels.1 + 3.2 * INCH, ..ends };
    hood(brush, scene, fitting, Rect { x0: ends.x0 + 0.5 * INCH, x1: ends.x1 - 0.5 * INCH, ..ends }, false);
    let patch = strip.rounded(0.3 * INCH);
    metal::bands(brush, &patch, metal::STEEL, true, 0.0);
    controls(brush, strip, &patch, Look::SideBurner);
    brush.outline(&patch, 0.35, DARK);
}
