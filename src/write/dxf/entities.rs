//! What is drawn, in both forms of the format.

use super::words::ascii;
use super::{Codes, Version};
use crate::drawing::cutting::{Cutting, Layer, Mark};
use crate::geometry::Outline;

/// All marks of a part. In the newer form each has a handle and names its owner.
pub fn write(codes: &mut Codes, cutting: &Cutting, version: Version, owner: &str) {
    for mark in &cutting.marks {
        let entity = |codes: &mut Codes, kind: &str, layer: Layer, class: &str| {
            codes.pair(0, kind);
            if version == Version::R2000 {
                codes.take_handle(5);
                codes.pair(330, owner);
                codes.pair(100, "AcDbEntity");
            }
            codes.pair(8, layer.word());
            if version == Version::R2000 {
                codes.pair(100, class);
            }
        };
        match mark {
            Mark::Line(layer, from, to) => {
                entity(codes, "LINE", *layer, "AcDbLine");
                point(codes, 10, *from);
                point(codes, 11, *to);
            }
            Mark::Outline(layer, outline) => {
                if let Some((x, y, radius)) = circle(outline) {
                    entity(codes, "CIRCLE", *layer, "AcDbCircle");
                    point(codes, 10, (x, y));
                    codes.length(40, radius);
                } else if version == Version::R2000 {
                    entity(codes, "LWPOLYLINE", *layer, "AcDbPolyline");
                    light_outline(codes, outline);
                } else {
                    entity(codes, "POLYLINE", *layer, "");
                    heavy_outline(codes, outline, *layer);
                }
            }
            Mark::Text { at, height, turn, words } => {
                entity(codes, "TEXT", Layer::Text, "AcDbText");
                point(codes, 10, *at);
                codes.length(40, *height);
                codes.pair(1, &ascii(words));
                codes.real(50, *turn);
                if version == Version::R2000 {
                    codes.pair(100, "AcDbText");
                }
            }
        }
    }
}

fn point(codes: &mut Codes, code: u16, (x, y): (f64, f64)) {
    codes.length(code, x);
    codes.length(code + 10, y);
    codes.real(code + 20, 0.0);
}

fn light_outline(codes: &mut Codes, outline: &Outline) {
    codes.whole(90, outline.vertices.len() as i64);
    codes.whole(70, 1);
    codes.real(43, 0.0);
    for vertex in &outline.vertices {
        codes.length(10, vertex.x);
        codes.length(20, vertex.y);
        if vertex.bulge != 0.0 {
            codes.real(42, vertex.bulge);
        }
    }
}

fn heavy_outline(codes: &mut Codes, outline: &Outline, layer: Layer) {
    codes.whole(66, 1);
    point(codes, 10, (0.0, 0.0));
    codes.whole(70, 1);
    for vertex in &outline.vertices {
        codes.pair(0, "VERTEX");
        codes.pair(8, layer.word());
        point(codes, 10, (vertex.x, vertex.y));
        if vertex.bulge != 0.0 {
            codes.real(42, vertex.bulge);
        }
    }
    codes.pair(0, "SEQEND");
    codes.pair(8, layer.word());
}

/// Centre and radius of an outline that is two half circles.
fn circle(outline: &Outline) -> Option<(f64, f64, f64)> {
    let [a, b] = outline.vertices.as_slice() else { return None };
    let half = |bulge: f64| (bulge.abs() - 1.0).abs() < 1e-12;
    (half(a.bulge) && a.bulge == b.bulge)
        .then(|| ((a.x + b.x) / 2.0, (a.y + b.y) / 2.0, (b.x - a.x).hypot(b.y - a.y) / 2.0))
}
