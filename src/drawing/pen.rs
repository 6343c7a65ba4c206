//! Line widths, tones and dash patterns of every sheet.

/// A colour, red green blue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    /// Black.
    pub const INK: Colour = Colour(0, 0, 0);
    /// White, for what hides what lies under it.
    pub const WHITE: Colour = Colour(255, 255, 255);
    /// Finished faces, and dimensions that start at one. Nothing else.
    pub const ACCENT: Colour = Colour(0xa3, 0x16, 0x0f);
    /// Captions, column heads, edges beyond a cut.
    pub const GREY_TEXT: Colour = Colour(0x59, 0x59, 0x59);
    /// Frames behind boards, other trades' work.
    pub const GREY_LINE: Colour = Colour(0x80, 0x80, 0x80);
    /// Rules between rows of a table.
    pub const GREY_RULE: Colour = Colour(0xb9, 0xb9, 0xb9);
    /// Tint: seen beyond the cut.
    pub const TINT_BEYOND: Colour = Colour(0xf4, 0xf4, 0xf4);
    /// Tint: boards.
    pub const TINT_BOARD: Colour = Colour(0xe9, 0xe9, 0xe9);
    /// Tint: beds.
    pub const TINT_BED: Colour = Colour(0xd9, 0xd9, 0xd9);

    /// As `#rrggbb`.
    pub fn hex(self) -> String {
        format!("#{:02x}{:02x}{:02x}", self.0, self.1, self.2)
    }

    /// From 0xRRGGBB.
    pub const fn from_hex(rgb: u32) -> Colour {
        Colour((rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8)
    }

    /// Mixed with another: 0 is itself, 1 the other.
    pub fn mixed(self, other: Colour, share: f64) -> Colour {
        let mix = |a: u8, b: u8| (f64::from(a) + (f64::from(b) - f64::from(a)) * share).round() as u8;
        Colour(mix(self.0, other.0), mix(self.1, other.1), mix(self.2, other.2))
    }
}

/// A dash pattern, mm, dash and gap in turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dash(pub &'static [f64]);

impl Dash {
    /// Hidden edges (ISO 128 type 02).
    pub const HIDDEN: Dash = Dash(&[3.0, 0.75]);
    /// Centrelines (ISO 128 type 04, long dash dot).
    pub const CENTRE: Dash = Dash(&[6.0, 0.75, 0.3, 0.75]);
    /// Other trades' work and moved positions (ISO 128 type 05, long dash two dots).
    pub const PHANTOM: Dash = Dash(&[6.0, 0.8, 0.3, 0.8, 0.3, 0.8]);
    /// The finished face, and nothing else (ISO 128 type 08, long dash short dash).
    pub const FINISHED: Dash = Dash(&[12.0, 1.5, 3.0, 1.5]);

    /// Stretched so that a line of this length (mm) starts and ends with its first dash; `None` where it is too short
    /// to be broken at all.
    pub fn stretched(self, length: f64) -> Option<Vec<f64>> {
        let (total, first) = (self.0.iter().sum::<f64>(), *self.0.first()?);
        let mut count = ((length - first) / total).round().max(0.0);
        if count == 0.0 && length > 1.25 * first {
            count = 1.0;
        }
        (count > 0.0).then(|| {
            let by = length / (count * total + first);
            self.0.iter().map(|part| part * by).collect()
        })
    }
}

/// How a line ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Cap {
    /// Flat, at its end point.
    #[default]
    Butt,
    /// Round, past it.
    Round,
    /// Square, past it.
    Square,
}

/// A pen: width, tone, dashes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width, mm.
    pub width: f64,
    /// Tone.
    pub colour: Colour,
    /// Dashes, or a solid line.
    pub dash: Option<Dash>,
    /// Ends.
    pub cap: Cap,
    /// Its strokes don't count when lettering looks for white (textures, tints).
    pub quiet: bool,
    /// Not drawn at all: a line that carries facts for a checker and no ink.
    pub ghost: bool,
}

impl Pen {
    /// Outlines of cuts.
    pub const CUT: Pen = Pen::new(0.7);
    /// Outlines that are seen.
    pub const VISIBLE: Pen = Pen::new(0.5);
    /// Secondary outlines, rules of tables, dimensions that start at a finished face.
    pub const SECONDARY: Pen = Pen::new(0.35);
    /// Dimensions, leaders, hidden edges.
    pub const DIMENSION: Pen = Pen::new(0.25);
    /// Hatches, rules between rows.
    pub const FINE: Pen = Pen::new(0.18);
    /// Carries facts, no ink.
    pub const GHOST: Pen = Pen { ghost: true, quiet: true, ..Pen::new(0.25) };

    /// A solid black pen of a width, mm.
    pub const fn new(width: f64) -> Pen {
        Pen { width, colour: Colour::INK, dash: None, cap: Cap::Butt, quiet: false, ghost: false }
    }

    /// In another tone.
    pub const fn coloured(self, colour: Colour) -> Pen {
        Pen { colour, ..self }
    }

    /// In the accent.
    pub const fn accent(self) -> Pen {
        Pen { colour: Colour::ACCENT, ..self }
    }

    /// Broken.
    pub const fn dashed(self, dash: Dash) -> Pen {
        Pen { dash: Some(dash), ..self }
    }

    /// With round ends.
    pub const fn round(self) -> Pen {
        Pen { cap: Cap::Round, ..self }
    }

    /// With square ends.
    pub const fn square(self) -> Pen {
        Pen { cap: Cap::Square, ..self }
    }

    /// Not counted when lettering looks for white.
    pub const fn quiet(self) -> Pen {
        Pen { quiet: true, ..self }
    }
}
