//! Lettering: widths from the carried font, fractions set small, every text a list of runs.
//!
//! The font has no kerning, so a width is the sum of advances in every program that shows it. Heights are those of
//! capitals (ISO 3098); the em is that over [`CAPITAL`].

use std::sync::OnceLock;

use super::page::{Fact, Run, Text};
use super::pen::Colour;
use crate::geometry::PaperPoint;

/// Height of a capital in ems, of the carried font.
pub const CAPITAL: f64 = 0.698;
/// Height of ordinary lettering, mm.
pub const BODY: f64 = 2.5;
/// Height of view titles and of numbers that are cut to, mm.
pub const TITLE: f64 = 3.5;
/// Height of the sheet's title, mm.
pub const SHEET_TITLE: f64 = 5.0;
/// Figures of a fraction over whole figures.
const SMALL: f64 = 0.74;
/// U+2044 between the figures of a fraction.
const SLASH: char = '\u{2044}';

/// The two weights of the carried font, TrueType.
pub const REGULAR_TTF: &[u8] = include_bytes!("font/FacelineSans-Regular.ttf");
/// Semi-bold, TrueType.
pub const SEMIBOLD_TTF: &[u8] = include_bytes!("font/FacelineSans-SemiBold.ttf");
/// The same for web pages.
pub const REGULAR_WOFF2: &[u8] = include_bytes!("font/FacelineSans-Regular.woff2");
/// Semi-bold for web pages.
pub const SEMIBOLD_WOFF2: &[u8] = include_bytes!("font/FacelineSans-SemiBold.woff2");
/// The font's licence, which travels with it.
pub const LICENCE: &str = include_str!("font/OFL.txt");
/// Family name of the carried font.
pub const FAMILY: &str = "Faceline Sans";

/// Weight of a letter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Weight {
    /// 400.
    #[default]
    Regular,
    /// 600: titles, marks, numbers that a tape is held to.
    SemiBold,
}

impl Weight {
    /// As a number.
    pub const fn number(self) -> u16 {
        match self {
            Weight::Regular => 400,
            Weight::SemiBold => 600,
        }
    }
}

/// Which end of a text its place is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    #[default]
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// How a text is set.
#[derive(Clone, Debug)]
pub struct Style {
    /// Height of capitals, mm.
    pub height: f64,
    /// Weight.
    pub weight: Weight,
    /// Which end its place is.
    pub anchor: Anchor,
    /// Tone.
    pub colour: Colour,
    /// Turn, degrees clockwise; -90 reads from the right.
    pub turn: f64,
    /// Facts.
    pub facts: Vec<Fact>,
}

impl Default for Style {
    fn default() -> Style {
        Style {
            height: BODY,
            weight: Weight::Regular,
            anchor: Anchor::Start,
            colour: Colour::INK,
            turn: 0.0,
            facts: Vec::new(),
        }
    }
}

impl Style {
    /// Ordinary lettering.
    pub fn body() -> Style {
        Style::default()
    }
    /// Captions and column heads.
    pub fn caption() -> Style {
        Style::default().coloured(Colour::GREY_TEXT)
    }
    /// Semi-bold.
    pub fn bold(self) -> Style {
        Style { weight: Weight::SemiBold, ..self }
    }
    /// Another height, mm.
    pub fn sized(self, height: f64) -> Style {
        Style { height, ..self }
    }
    /// Place is the middle.
    pub fn middle(self) -> Style {
        Style { anchor: Anchor::Middle, ..self }
    }
    /// Place is the right end.
    pub fn end(self) -> Style {
        Style { anchor: Anchor::End, ..self }
    }
    /// Another tone.
    pub fn coloured(self, colour: Colour) -> Style {
        Style { colour, ..self }
    }
    /// Reading from the right.
    pub fn upright(self) -> Style {
        Style { turn: -90.0, ..self }
    }
    /// With a fact.
    pub fn fact(mut self, name: &'static str, value: impl Into<String>) -> Style {
        self.facts.push((name, value.into()));
        self
    }
}

/// Advances of the carried font, ems, by character.
struct Advances {
    low: Vec<Option<f64>>,
    high: Vec<(char, f64)>,
}

/// Characters below this are looked up directly.
const DIRECT: usize = 0x180;

fn advances(weight: Weight) -> &'static Advances {
    static TABLES: [OnceLock<Advances>; 2] = [OnceLock::new(), OnceLock::new()];
    let (slot, data) = match weight {
        Weight::Regular => (&TABLES[0], REGULAR_TTF),
        Weight::SemiBold => (&TABLES[1], SEMIBOLD_TTF),
    };
    slot.get_or_init(|| read_advances(data))
}

fn read_advances(data: &'static [u8]) -> Advances {
    let mut table = Advances { low: vec![None; DIRECT], high: Vec::new() };
    let Ok(face) = ttf_parser::Face::parse(data, 0) else { return table };
    let em = f64::from(face.units_per_em());
    let advance = |c: char| {
        let glyph = face.glyph_index(c)?;
        Some(f64::from(face.glyph_hor_advance(glyph)?) / em)
    };
    for code in 0x20..DIRECT as u32 {
        table.low[code as usize] = char::from_u32(code).and_then(advance);
    }
    for code in 0x2000..0x2300 {
        if let Some(c) = char::from_u32(code)
            && let Some(width) = advance(c)
        {
            table.high.push((c, width));
        }
    }
    table
}

/// Advance of a character, ems; `None` when the font lacks it.
fn advance(c: char, weight: Weight) -> Option<f64> {
    let table = advances(weight);
    if (c as usize) < DIRECT {
        return table.low[c as usize];
    }
    table.high.binary_search_by_key(&c, |entry| entry.0).ok().map(|index| table.high[index].1)
}

/// The characters of a text that the font lacks, once each, in order. Line breaks and tabs don't count: they are set as spaces.
pub fn missing(text: &str) -> Vec<char> {
    let mut lacking = Vec::new();
    for c in text.chars() {
        if !c.is_whitespace() && advance(c, Weight::Regular).is_none() && !lacking.contains(&c) {
            lacking.push(c);
        }
    }
    lacking
}

/// The character that is set: a space for white space, a question mark for what the font lacks.
fn settable(c: char) -> char {
    match c {
        c if advance(c, Weight::Regular).is_some() => c,
        c if c.is_whitespace() => ' ',
        _ => '?',
    }
}

fn width_of(text: &str, size: f64, weight: Weight) -> f64 {
    text.chars().map(|c| advance(c, weight).unwrap_or(0.6) * size).sum()
}

/// Width of a text, mm, at a height of capitals.
pub fn width(text: &str, height: f64, weight: Weight) -> f64 {
    runs(text, height, weight).1
}

/// Sets a text at a place.
pub fn set(at: PaperPoint, text: &str, style: &Style) -> Text {
    let (runs, width) = runs(text, style.height, style.weight);
    let back = match style.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => width / 2.0,
        Anchor::End => width,
    };
    let (sin, cos) = style.turn.to_radians().sin_cos();
    Text {
        at: at.moved(-back * cos, -back * sin),
        turn: style.turn,
        descends: text.chars().any(|c| "gjpqyQ,;()[]/@{}|_ç".contains(c)),
        runs,
        width,
        height: style.height,
        colour: style.colour,
        facts: style.facts.clone(),
    }
}

/// Splits a text into runs with their places, and its whole width.
fn runs(text: &str, height: f64, weight: Weight) -> (Vec<Run>, f64) {
    let clean: Vec<char> = text.chars().map(settable).collect();
    let size = height / CAPITAL;
    let (mut runs, mut x) = (Vec::new(), 0.0);
    let mut plain = String::new();
    let mut index = 0;
    while index < clean.len() {
        let Some((top, bottom, end)) = fraction_at(&clean, index) else {
            plain.push(clean[index]);
            index += 1;
            continue;
        };
        flush(&mut plain, &mut runs, &mut x, size, weight);
        runs.push(fraction_run(&top, &bottom, size, height, &mut x));
        index = end;
    }
    flush(&mut plain, &mut runs, &mut x, size, weight);
    (runs, x)
}

fn flush(plain: &mut String, runs: &mut Vec<Run>, x: &mut f64, size: f64, weight: Weight) {
    if plain.is_empty() {
        return;
    }
    let text = std::mem::take(plain);
    let width = width_of(&text, size, weight);
    runs.push(Run { text, places: vec![(*x, 0.0)], size, weight: weight.number() });
    *x += width;
}

/// Figures, a fraction slash, figures, starting here and not inside a number.
fn fraction_at(text: &[char], start: usize) -> Option<(String, String, usize)> {
    if start > 0 && text[start - 1].is_ascii_digit() {
        return None;
    }
    let figures = |from: usize| text[from..].iter().take_while(|c| c.is_ascii_digit()).collect::<String>();
    let top = figures(start);
    let slash = start + top.len();
    if top.is_empty() || text.get(slash) != Some(&SLASH) {
        return None;
    }
    let bottom = figures(slash + 1);
    if bottom.is_empty() {
        return None;
    }
    let end = slash + 1 + bottom.len();
    Some((top, bottom, end))
}

/// A fraction: small figures of the heavier weight (so that strokes match), raised to the cap line and on the baseline.
fn fraction_run(top: &str, bottom: &str, size: f64, height: f64, x: &mut f64) -> Run {
    let small = size * SMALL;
    let weight = Weight::SemiBold;
    let raised = -height * (1.03 - SMALL);
    let mut places = Vec::new();
    for c in top.chars() {
        places.push((*x, raised));
        *x += advance(c, weight).unwrap_or(0.6) * small * 0.94;
    }
    *x += 0.06 * size;
    places.push((*x, raised * 0.42));
    *x += (advance(SLASH, weight).unwrap_or(0.2)) * small + 0.075 * size;
    for c in bottom.chars() {
        places.push((*x, height * 0.03));
        *x += advance(c, weight).unwrap_or(0.6) * small * 0.94;
    }
    *x += 0.02 * size;
    Run { text: format!("{top}{SLASH}{bottom}"), places, size: small, weight: weight.number() }
}

#[cfg(test)]
mod tests {
    use super::{Style, Weight, missing, set, width};
    use crate::geometry::PaperPoint;

    #[test]
    fn a_fraction_is_one_run_with_a_place_for_each_figure() {
        let text = set(PaperPoint::new(0.0, 0.0), "24\u{2009}7\u{2044}16\u{2033}", &Style::body());
        let fraction = &text.runs[1];
        assert_eq!(fraction.text, "7\u{2044}16");
        assert_eq!(fraction.places.len(), 4);
        assert_eq!(text.content(), "24\u{2009}7\u{2044}16\u{2033}");
    }

    #[test]
    fn what_the_font_lacks_is_named_and_the_latin_alphabets_are_there() {
        assert_eq!(missing("Żółć Ærø Größe fin façade ± Ø × °"), Vec::<char>::new());
        assert_eq!(missing("台\u{1f525}a\n"), vec!['台', '\u{1f525}']);
    }

    #[test]
    fn semi_bold_is_wider() {
        assert!(width("finished face", 2.5, Weight::SemiBold) > width("finished face", 2.5, Weight::Regular));
    }
}
