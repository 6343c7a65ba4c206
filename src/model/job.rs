//! The job's file as a whole.

use super::{
    BoardsText, BuildUpText, CornerText, CounterText, FittingText, FrameText, HeightText, LegText, LimitsText,
    PrinterText, PrintersText, ServicesText, SiteText, StepText, StockText, SubstrateText, SupportsText, Text,
    TrimText, WaitsText,
};
use crate::findings::Problem;
use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use std::fmt;

/// A job as written, with the library fittings that it names.
#[derive(Debug, Deserialize)]
#[serde(rename = "job", deny_unknown_fields)]
pub struct JobFile {
    pub(crate) job: JobText,
    #[serde(default)]
    pub(crate) parameters: Entries,
    #[serde(default)]
    pub(crate) libraries: Vec<Text>,
    #[serde(default)]
    pub(crate) site: SiteText,
    pub(crate) frame: FrameText,
    pub(crate) build_up: BuildUpText,
    pub(crate) substrate: SubstrateText,
    pub(crate) counter: CounterText,
    pub(crate) height: HeightText,
    pub(crate) trim: Option<TrimText>,
    #[serde(default)]
    pub(crate) supports: SupportsText,
    pub(crate) legs: Vec<LegText>,
    #[serde(default)]
    pub(crate) corners: Vec<CornerText>,
    #[serde(default)]
    pub(crate) steps: Vec<StepText>,
    #[serde(default)]
    pub(crate) fittings: Vec<FittingText>,
    pub(crate) services: Option<ServicesText>,
    /// How boards are laid on the frame.
    #[serde(default)]
    pub(crate) boards: BoardsText,
    /// What pieces are cut from.
    #[serde(default)]
    pub(crate) stock: StockText,
    /// Figures by which materials are weighed and bought.
    #[serde(default)]
    pub(crate) materials: Entries,
    /// Limits of rules that the job sets itself.
    #[serde(default)]
    pub(crate) limits: LimitsText,
    #[serde(default)]
    pub(crate) tolerances: TolerancesText,
    /// How long things dry or harden before the next step.
    #[serde(default)]
    pub(crate) waits: WaitsText,
    #[serde(default)]
    pub(crate) paper: PaperText,
    /// Fittings of the libraries, in the order read.
    #[serde(skip)]
    pub(crate) library_fittings: Vec<FittingText>,
    /// A library could not be read, so that a fitting may be missing for that reason alone.
    #[serde(skip)]
    pub(crate) library_missing: bool,
    /// Every file that was read, as given or found.
    #[serde(skip)]
    pub(crate) files_read: Vec<std::path::PathBuf>,
    /// What could be said while reading.
    #[serde(skip)]
    pub(crate) complaints: Vec<Problem>,
}

impl JobFile {
    /// Every file that was read, the job's own first.
    pub fn files_read(&self) -> &[std::path::PathBuf] {
        &self.files_read
    }
}

/// The facts of the title block.
#[derive(Debug, Deserialize)]
#[serde(rename = "job", deny_unknown_fields)]
pub struct JobText {
    pub(crate) title: Text,
    pub(crate) client: Option<Text>,
    pub(crate) address: Option<Text>,
    pub(crate) number: Option<Text>,
    pub(crate) owner: Option<Text>,
    pub(crate) drawn_by: Option<Text>,
    pub(crate) approved_by: Option<Text>,
    pub(crate) date: Text,
    pub(crate) units: Option<UnitsText>,
    #[serde(default)]
    pub(crate) revisions: Vec<RevisionText>,
}

/// Which units the sheets show.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "units", rename_all = "snake_case")]
pub enum UnitsText {
    Inches,
    Millimetres,
    Both,
}

/// One revision.
#[derive(Debug, Deserialize)]
#[serde(rename = "revision", deny_unknown_fields)]
pub struct RevisionText {
    pub(crate) mark: Text,
    pub(crate) date: Text,
    pub(crate) note: Text,
}

/// What may be off.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "tolerances", deny_unknown_fields)]
pub struct TolerancesText {
    pub(crate) cut: Option<Text>,
    pub(crate) placing: Option<Text>,
    pub(crate) published: Option<Text>,
    pub(crate) least_strip: Option<Text>,
    pub(crate) least_cover: Option<Text>,
}

/// Paper.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "paper", deny_unknown_fields)]
pub struct PaperText {
    pub(crate) size: Option<Text>,
    pub(crate) templates: Option<Text>,
    pub(crate) margin: Option<Text>,
    pub(crate) overlap: Option<Text>,
    pub(crate) printer: Option<PrinterText>,
    #[serde(default)]
    pub(crate) printers: PrintersText,
}

/// Names with their values in the order written, names that come twice included.
#[derive(Clone, Debug, Default)]
pub struct Entries(pub(crate) Vec<(Text, Text)>);

impl<'de> Deserialize<'de> for Entries {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Entries, D::Error> {
        deserializer.deserialize_map(EntriesVisitor)
    }
}

struct EntriesVisitor;

impl<'de> Visitor<'de> for EntriesVisitor {
    type Value = Entries;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("names with values, as { \"rail\": \"2 in\" }")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Entries, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = map.next_entry::<Text, Text>()? {
            entries.push(entry);
        }
        Ok(Entries(entries))
    }
}
