//! Pages as one vector PDF: exact page sizes, searchable lettering, a bookmark for each page, and the same bytes each
//! time: no date, no random identifier.

mod content;
mod font;

use pdf_writer::types::PageMode;
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, TextStr};

use crate::drawing::Page;
use font::Font;

/// Points of 1/72 in to a millimetre.
const POINTS: f64 = 72.0 / 25.4;

/// Longest side that a page may have, mm: 14 400 points (ISO 32000-1, annex C), 200 in.
pub const LONGEST: f64 = 200.0 * 25.4;

/// A document's pages in order. Viewers are asked to show `title` and to print without scaling.
pub fn document(title: &str, pages: &[Page]) -> Vec<u8> {
    let mut pdf = Pdf::new();
    let mut last = 0;
    let mut next = || {
        last += 1;
        Ref::new(last)
    };
    let (catalog, tree, outline, info) = (next(), next(), next(), next());
    let mut fonts = [Font::regular(), Font::semi_bold()];
    let font_refs = fonts.each_ref().map(|_| std::array::from_fn::<Ref, 5, _>(|_| next()));
    let mut opacities: Vec<u32> = Vec::new();
    let streams: Vec<Vec<u8>> = pages.iter().map(|page| content::stream(page, &mut fonts, &mut opacities)).collect();
    let places: Vec<[Ref; 3]> = pages.iter().map(|_| [next(), next(), next()]).collect();

    let mut root = pdf.catalog(catalog);
    root.pages(tree).outlines(outline).page_mode(PageMode::UseOutlines).lang(TextStr("en"));
    let mut wishes = root.viewer_preferences();
    wishes.display_doc_title(true);
    wishes.pair(Name(b"PrintScaling"), Name(b"None"));
    wishes.pair(Name(b"PickTrayByPDFSize"), true);
    wishes.finish();
    root.finish();
    pdf.document_info(info).title(TextStr(title)).producer(TextStr("faceline"));
    pdf.pages(tree).kids(places.iter().map(|refs| refs[0])).count(pages.len() as i32);

    for ((page, [at, data, mark]), (index, stream)) in pages.iter().zip(&places).zip(streams.iter().enumerate()) {
        let mut node = pdf.page(*at);
        let (width, height) = (points(page.width), points(page.height));
        node.parent(tree).media_box(Rect::new(0.0, 0.0, width, height)).contents(*data);
        let mut resources = node.resources();
        let mut names = resources.fonts();
        for (font, refs) in fonts.iter().zip(&font_refs) {
            names.pair(font.name(), refs[0]);
        }
        names.finish();
        if !opacities.is_empty() {
            let mut states = resources.ext_g_states();
            for thousandths in &opacities {
                let name = content::opacity_name(*thousandths);
                states.insert(Name(name.as_bytes())).dict().pair(Name(b"ca"), *thousandths as f32 / 1000.0);
            }
        }
        resources.finish();
        node.finish();
        pdf.stream(*data, &packed(stream)).filter(Filter::FlateDecode);

        let mut bookmark = pdf.outline_item(*mark);
        bookmark.parent(outline).title(TextStr(&page.title)).dest().page(*at).fit();
        if index > 0 {
            bookmark.prev(places[index - 1][2]);
        }
        if index + 1 < places.len() {
            bookmark.next(places[index + 1][2]);
        }
    }
    let mut marks = pdf.outline(outline);
    if let (Some(first), Some(last)) = (places.first(), places.last()) {
        marks.first(first[2]).last(last[2]).count(places.len() as i32);
    }
    marks.finish();
    for (font, refs) in fonts.iter().zip(&font_refs) {
        font.write(&mut pdf, *refs);
    }
    pdf.finish()
}

/// Millimetres as points; worked out in f64 and cut to f32 last.
fn points(mm: f64) -> f32 {
    (mm * POINTS) as f32
}

/// Zlib, the same on every machine.
fn packed(bytes: &[u8]) -> Vec<u8> {
    miniz_oxide::deflate::compress_to_vec_zlib(bytes, 6)
}

#[cfg(test)]
mod tests {
    use super::document;
    use crate::drawing::lettering::{self, Style};
    use crate::drawing::{Group, Item, Page};
    use crate::geometry::PaperPoint;

    fn page() -> Page {
        let text = lettering::set(PaperPoint::new(10.0, 20.0), "24\u{2009}7\u{2044}16\u{2033} (left)", &Style::body());
        let root = Group { items: vec![Item::Text(text)], ..Group::default() };
        Page {
            name: "01".into(),
            title: "One (a)".into(),
            width: 215.9,
            height: 279.4,
            stretch: (1.0, 1.0),
            remarks: Vec::new(),
            root,
        }
    }

    #[test]
    fn the_page_is_the_paper_and_nothing_comes_from_a_clock() {
        let bytes = document("A job", &[page()]);
        let text = String::from_utf8_lossy(&bytes);
        assert!(text.contains("/MediaBox [0 0 612 792]"));
        assert!(text.contains("/PrintScaling /None"));
        assert!(!text.contains("Date") && !text.contains("/ID"));
        assert_eq!(bytes, document("A job", &[page()]));
    }

    #[test]
    fn a_document_without_pages_is_still_a_document() {
        assert!(document("", &[]).starts_with(b"%PDF-"));
    }
}
