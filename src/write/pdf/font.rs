//! The carried font in a PDF: only the glyphs that are used, with what each of them says.

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, Str};
use std::collections::BTreeMap;
use subsetter::GlyphRemapper;
use ttf_parser::{Face, GlyphId};

use super::packed;
use crate::drawing::lettering::{REGULAR_TTF, SEMIBOLD_TTF};

/// One weight and the glyphs of it that the document uses.
pub struct Font {
    name: &'static str,
    base: &'static str,
    data: &'static [u8],
    face: Option<Face<'static>>,
    glyphs: GlyphRemapper,
    says: BTreeMap<u16, char>,
    stem: f32,
}

const IDENTITY: SystemInfo = SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };

impl Font {
    /// 400.
    pub fn regular() -> Font {
        Font::new("F4", "FLNREG+FacelineSans-Regular", REGULAR_TTF, 80.0)
    }

    /// 600.
    pub fn semi_bold() -> Font {
        Font::new("F6", "FLNSEM+FacelineSans-SemiBold", SEMIBOLD_TTF, 120.0)
    }

    fn new(name: &'static str, base: &'static str, data: &'static [u8], stem: f32) -> Font {
        let face = Face::parse(data, 0).ok();
        Font { name, base, data, face, glyphs: GlyphRemapper::new(), says: BTreeMap::new(), stem }
    }

    /// Its name in a page's resources.
    pub fn name(&self) -> Name<'static> {
        Name(self.name.as_bytes())
    }

    /// A text as glyph numbers of the subset, two bytes each.
    pub fn encoded(&mut self, text: &str) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(text.len() * 2);
        for c in text.chars() {
            let glyph = self.face.as_ref().and_then(|face| face.glyph_index(c)).unwrap_or(GlyphId(0));
            let new = self.glyphs.remap(glyph.0);
            self.says.entry(new).or_insert(c);
            bytes.extend(new.to_be_bytes());
        }
        bytes
    }

    /// Writes the font's objects: composite font, its part, its description, its file, what its glyphs say.
    pub fn write(&self, pdf: &mut Pdf, [whole, part, description, file, says]: [Ref; 5]) {
        let Some(face) = &self.face else { return };
        let em = 1000.0 / f32::from(face.units_per_em());
        let base = Name(self.base.as_bytes());
        pdf.type0_font(whole)
            .base_font(base)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(part)
            .to_unicode(says);

        let mut cid = pdf.cid_font(part);
        cid.subtype(CidFontType::Type2).base_font(base).system_info(IDENTITY).font_descriptor(description);
        cid.default_width(0.0).cid_to_gid_map_predefined(Name(b"Identity"));
        let advance = |old: u16| f32::from(face.glyph_hor_advance(GlyphId(old)).unwrap_or(0)) * em;
        cid.widths().consecutive(0, self.glyphs.remapped_gids().map(advance));
        cid.finish();

        let bounds = face.global_bounding_box();
        let scaled = |value: i16| f32::from(value) * em;
        pdf.font_descriptor(description)
            .name(base)
            .flags(FontFlags::SYMBOLIC)
            .bbox(Rect::new(scaled(bounds.x_min), scaled(bounds.y_min), scaled(bounds.x_max), scaled(bounds.y_max)))
            .italic_angle(0.0)
            .ascent(scaled(face.ascender()))
            .descent(scaled(face.descender()))
            .cap_height(face.capital_height().map_or(698.0, scaled))
            .stem_v(self.stem)
            .font_file2(file);

        // The program's own font always subsets; a test holds that, so that the whole file is never the answer.
        let subset = subsetter::subset(self.data, 0, &self.glyphs).unwrap_or_else(|_| self.data.to_vec());
        let mut stream = packed(&subset);
        pdf.stream(file, &stream).filter(Filter::FlateDecode).pair(Name(b"Length1"), subset.len() as i32);

        let mut map = UnicodeCmap::new(Name(b"Faceline"), IDENTITY);
        for (glyph, c) in &self.says {
            map.pair(*glyph, *c);
        }
        stream = packed(map.finish().as_slice());
        pdf.stream(says, &stream).filter(Filter::FlateDecode);
    }
}

#[cfg(test)]
mod tests {
    use super::Font;

    #[test]
    fn both_weights_can_be_made_smaller() {
        for mut font in [Font::regular(), Font::semi_bold()] {
            font.encoded("24\u{2009}7\u{2044}16\u{2033} finished face");
            let subset = subsetter::subset(font.data, 0, &font.glyphs).expect("a subset");
            assert!(subset.len() < font.data.len());
        }
    }
}
