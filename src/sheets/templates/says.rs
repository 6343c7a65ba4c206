//! Words at the lines of a part: what a datum is, where a centreline lies, what a corner's radius is.

use super::piece::{Corner, Family, LineKind};
use super::tile::{FINE, NOTE, Sheet};
use crate::drawing::Colour;
use crate::drawing::lettering::{self, Style};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::marks::{self, LeaderEnd};
use crate::units::Length;

/// Shares along a line at which its words may stand.
const SHARES: [f64; 11] = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.12, 0.88];

/// Each datum line and centreline says what it is; the cut says on which side the waste lies.
pub fn lines(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "words");
    let trim = sheet.trim;
    let (x0, y0, x1, y1) = sheet.template.bounds();
    for line in &sheet.template.lines {
        let inside =
            if line.upright { line.at > trim.x0 && line.at < trim.x1 } else { line.at > trim.y0 && line.at < trim.y1 };
        let (low, high) =
            if line.upright { (trim.y0.max(y0), trim.y1.min(y1)) } else { (trim.x0.max(x0), trim.x1.min(x1)) };
        if !inside || high - low < 8.0 {
            continue;
        }
        let colour = if line.kind == LineKind::Datum { NOTE } else { Colour::ACCENT };
        if line.kind == LineKind::Finished && flagged(sheet, layer, line.upright, line.at, (low, high), &line.words) {
            continue;
        }
        let style = Style::body().coloured(colour).middle();
        let style = if line.kind == LineKind::Finished { style.bold() } else { style };
        along(sheet, layer, line.upright, line.at, (low, high), &line.words, &style);
    }
    if sheet.template.family != Family::Card {
        waste(sheet, layer);
    }
}

/// Words along a line, beside or above it, at the first white place. The words are shortened before they are left out.
fn along(
    sheet: &mut Sheet<'_>,
    layer: Layer,
    upright: bool,
    at: f64,
    (low, high): (f64, f64),
    words: &str,
    style: &Style,
) -> bool {
    let short = words.split(", ").last().unwrap_or(words).to_owned();
    for words in [words, short.as_str()] {
        let half = lettering::width(words, style.height, style.weight) / 2.0 + 1.5;
        let middles = SHARES.map(|share| (low + (high - low) * share).clamp(low + half, (high - half).max(low + half)));
        if high - low < 2.0 * half {
            continue;
        }
        let mut places = Vec::new();
        for middle in middles {
            let point = if upright { sheet.at(at, middle) } else { sheet.at(middle, at) };
            places.extend(if upright {
                [point.moved(-1.3, 0.0), point.moved(4.0, 0.0)]
            } else {
                [point.moved(0.0, -1.3), point.moved(0.0, 4.0)]
            });
        }
        let style = if upright { style.clone().upright() } else { style.clone() };
        if sheet.canvas.text_at_first(layer, &places, words, &style).is_some() {
            return true;
        }
    }
    false
}

/// A flag on a finished face, where there is room for one.
fn flagged(sheet: &mut Sheet<'_>, layer: Layer, upright: bool, at: f64, (low, high): (f64, f64), words: &str) -> bool {
    let width = marks::flag_width(words);
    for share in [0.3, 0.5, 0.7, 0.2, 0.8, 0.1, 0.6, 0.4] {
        let middle = low + (high - low) * share;
        let foot = if upright { sheet.at(at, middle) } else { sheet.at(middle, at) };
        // Upright, the flag flies from the line itself; level, from a staff on it.
        let top = if upright { foot } else { foot.moved(0.0, -8.6) };
        let trim = sheet.area(&sheet.trim.clone());
        if top.x + width > trim.right || top.y < trim.top || top.y + 5.2 > trim.bottom {
            continue;
        }
        let staff = upright || sheet.canvas.is_box_free(top.x - 0.3, top.y, top.x + 0.3, foot.y - 0.8);
        if staff && sheet.canvas.is_box_free(top.x + 0.6, top.y - 0.5, top.x + width + 0.5, top.y + 5.7) {
            if !upright {
                sheet.canvas.line(layer, top, foot, crate::drawing::Pen::SECONDARY.accent());
            }
            marks::flag(&mut sheet.canvas, layer, top, words, true);
            return true;
        }
    }
    false
}

/// One straight piece of cut line says where the waste is.
fn waste(sheet: &mut Sheet<'_>, layer: Layer) {
    let trim = sheet.trim;
    let style = Style::body().middle();
    let words = "cut line, waste on the hatched side";
    let mut edges: Vec<(bool, f64, f64, f64, f64)> = Vec::new();
    for (index, outline) in sheet.template.region.outlines().enumerate() {
        for (a, b) in outline.edges().filter(|(a, _)| a.bulge == 0.0) {
            let upright = (a.x - b.x).abs() < 0.01;
            if !upright && (a.y - b.y).abs() > 0.01 {
                continue;
            }
            // The material lies to the left of travel on the outer outline, to the right on a hole.
            let turn = if index == 0 { 1.0 } else { -1.0 };
            let inside = if upright { -(b.y - a.y).signum() * turn } else { (b.x - a.x).signum() * turn };
            let (at, low, high) =
                if upright { (a.x, a.y.min(b.y), a.y.max(b.y)) } else { (a.y, a.x.min(b.x), a.x.max(b.x)) };
            let (from, to, near, far) =
                if upright { (trim.y0, trim.y1, trim.x0, trim.x1) } else { (trim.x0, trim.x1, trim.y0, trim.y1) };
            if at > near + 6.0 && at < far - 6.0 {
                edges.push((upright, at, low.max(from), high.min(to), inside));
            }
        }
    }
    edges.sort_by(|a, b| (b.3 - b.2).total_cmp(&(a.3 - a.2)));
    for (upright, at, low, high, inside) in edges.into_iter().take(4) {
        let half = lettering::width(words, style.height, style.weight) / 2.0 + 2.0;
        if high - low < 2.0 * half {
            continue;
        }
        let places: Vec<PaperPoint> = SHARES
            .iter()
            .map(|share| (low + (high - low) * share).clamp(low + half, high - half))
            .map(|middle| match (upright, inside > 0.0) {
                // Upright words read from the right: their feet are to the right of them.
                (true, true) => sheet.at(at, middle).moved(4.2, 0.0),
                (true, false) => sheet.at(at, middle).moved(-1.7, 0.0),
                (false, true) => sheet.at(middle, at).moved(0.0, -1.7),
                (false, false) => sheet.at(middle, at).moved(0.0, 4.2),
            })
            .collect();
        let style = if upright { style.clone().upright() } else { style.clone() };
        if sheet.canvas.text_at_first(layer, &places, words, &style).is_some() {
            return;
        }
    }
}

/// The centre of each rounded corner is crossed.
pub fn crosses(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "centres");
    let window = sheet.window;
    for corner in sheet.template.corners() {
        let (x, y) = corner.centre;
        let arm = if corner.radius < 3.0 { 1.2 } else { 2.0 };
        if x > window.x0 + arm && x < window.x1 - arm && y > window.y0 + arm && y < window.y1 - arm {
            let centre = sheet.at(x, y);
            sheet.canvas.line(layer, centre.moved(-arm, 0.0), centre.moved(arm, 0.0), FINE);
            sheet.canvas.line(layer, centre.moved(0.0, -arm), centre.moved(0.0, arm), FINE);
        }
    }
}

/// The radius and the drill of each rounded corner are written on a leader.
pub fn corners(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "corners");
    let trim = sheet.trim;
    let mut written = Vec::new();
    for corner in sheet.template.corners() {
        let (mx, my) = corner.middle;
        if mx > trim.x0 && mx < trim.x1 && my > trim.y0 && my < trim.y1 {
            radius(sheet, layer, &corner, &mut written);
        }
    }
}

/// `R 3/8″, drill 3/4″` on a leader to the middle of the arc.
fn radius(sheet: &mut Sheet<'_>, layer: Layer, corner: &Corner, written: &mut Vec<[PaperPoint; 4]>) {
    let show = |mm: f64| sheet.solved.show.text(Length::from_mm(mm));
    let words = match (corner.round, corner.inside) {
        (true, _) => format!("Ø {}", show(2.0 * corner.radius)),
        (false, true) => format!("R {}, drill Ø {}", show(corner.radius), show(2.0 * corner.radius)),
        (false, false) => format!("R {}", show(corner.radius)),
    };
    let tip = sheet.at(corner.middle.0, corner.middle.1);
    let centre = sheet.at(corner.centre.0, corner.centre.1);
    let reach = tip.distance(centre).max(1e-9);
    let (ux, uy) = ((tip.x - centre.x) / reach, (tip.y - centre.y) / reach);
    let width = lettering::width(&words, lettering::BODY, lettering::Weight::Regular);
    let ink = sheet.ink();
    // Into the material first, where the hatch isn't; then outwards past the hatch.
    let sides = if corner.inside { [1.0, -1.0] } else { [-1.0, 1.0] };
    for side in sides {
        for far in [10.0, 16.0, 24.0, 34.0] {
            let elbow = tip.moved(ux * far * side, uy * far * side);
            let rightward = ux * side >= 0.0;
            let end = elbow.moved(if rightward { 3.0 } else { -3.0 }, 0.0);
            let start = if rightward { end.x + 1.2 } else { end.x - 1.2 - width };
            if start < ink.left + 1.0
                || start + width > ink.right - 1.0
                || elbow.y < ink.top + 4.0
                || elbow.y > ink.bottom - 2.0
            {
                continue;
            }
            let text = lettering::set(PaperPoint::new(start, elbow.y + 1.25), &words, &Style::body());
            let clear = sheet.canvas.is_box_free(
                elbow.x.min(end.x) - 0.3,
                elbow.y - 0.6,
                elbow.x.max(end.x) + 0.3,
                elbow.y + 0.6,
            );
            if clear && sheet.canvas.is_free(&text) && !crosses_words(written, tip, elbow) {
                written.push(text.corners());
                marks::leader(&mut sheet.canvas, layer, &[tip, elbow, end], LeaderEnd::Arrow, NOTE);
                sheet.canvas.put(layer, text);
                return;
            }
        }
    }
}

/// Whether a slanted leader would run through words that another leader carries.
fn crosses_words(written: &[[PaperPoint; 4]], tip: PaperPoint, elbow: PaperPoint) -> bool {
    let near = |box_of: &[PaperPoint; 4], p: PaperPoint| {
        let (left, top, right, bottom) = (box_of[3].x - 0.8, box_of[3].y - 0.8, box_of[1].x + 0.8, box_of[1].y + 0.8);
        p.x > left && p.x < right && p.y > top && p.y < bottom
    };
    (0..=40).any(|k| written.iter().any(|words| near(words, tip.towards(elbow, f64::from(k) / 40.0))))
}

/// Names of cutouts near their middles, where this tile shows them.
pub fn names(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "names");
    let trim = sheet.trim;
    for (words, (x, y)) in &sheet.template.names {
        if *x < trim.x0 || *x > trim.x1 || *y < trim.y0 || *y > trim.y1 {
            continue;
        }
        let place = sheet.at(*x, *y);
        let style = Style::body().bold().sized(lettering::TITLE).middle();
        let mut places = Vec::new();
        for down in [-3.0, 7.0, -12.0, 16.0, -24.0, 28.0] {
            for across in [0.0, 25.0, -25.0, 40.0, -40.0] {
                places.push(place.moved(across, down));
            }
        }
        sheet.canvas.text_at_first(layer, &places, words, &style);
    }
    for (outline, words) in &sheet.template.flanges {
        let (x0, y0, x1, y1) = outline.bounds();
        let style = Style::caption().middle();
        let edges = [(false, y1, x0, x1), (false, y0, x0, x1), (true, x0, y0, y1), (true, x1, y0, y1)];
        for (upright, at, low, high) in edges {
            let (near, far, from, to) =
                if upright { (trim.x0, trim.x1, trim.y0, trim.y1) } else { (trim.y0, trim.y1, trim.x0, trim.x1) };
            let (low, high) = (low.max(from), high.min(to));
            if at > near + 5.0
                && at < far - 5.0
                && high - low > 20.0
                && along(sheet, layer, upright, at, (low, high), words, &style)
            {
                break;
            }
        }
    }
}
