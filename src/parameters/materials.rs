//! The figures by which materials are weighed and bought.

use super::given::{FIGURES, Figure, Known, Materials, Worth};
use super::reader::{Reader, Sign};
use crate::findings;
use crate::model::{Entries, Text};
use crate::units::{Dimension, Exact, reading};

/// A figure as expressions and `--set` call it.
pub(super) fn full_name(known: &Known) -> String {
    format!("materials.{}", known.name)
}

/// What a job writes for a figure.
pub(super) fn written<'w>(entries: &'w Entries, known: &Known) -> Option<&'w Text> {
    entries.0.iter().find(|(name, _)| name.text == known.name).map(|(_, value)| value)
}

/// Works out every figure. What is assumed is recorded where it is used, since few jobs use all of it.
pub(super) fn read(entries: &Entries, reader: &mut Reader) -> Materials {
    for (index, (name, _)) in entries.0.iter().enumerate() {
        if !FIGURES.iter().any(|known| known.name == name.text) {
            let meant = findings::nearest(&name.text, FIGURES.iter().map(|known| known.name));
            let instead = meant.map_or_else(
                || FIGURES.iter().map(|known| known.name).collect::<Vec<_>>().join(", "),
                |meant| format!("write \"{meant}\""),
            );
            reader.tell(format!("`{}` is no figure of materials", name.text), instead, &name.place);
        }
        if entries.0[..index].iter().any(|(other, _)| other.text == name.text) {
            reader.tell(format!("`{}` is given twice", name.text), "keep one of them", &name.place);
        }
    }
    Materials { worth: FIGURES.iter().map(|known| worth(known, entries, reader)).collect() }
}

fn worth(known: &Known, entries: &Entries, reader: &mut Reader) -> Option<Worth> {
    // A test holds that every figure can be read.
    let dimension = reading::quantity(known.value).map_or(Dimension::NUMBER, |quantity| quantity.dimension);
    let name = full_name(known);
    let text = reader.override_of(&name).or_else(|| written(entries, known).cloned());
    let given = text.is_some();
    if !given && known.origin.is_empty() {
        return None;
    }
    let text = text.unwrap_or_else(|| Text::made("default", known.value, 0..known.value.len()));
    let quantity = reader.quantity_of(&text, dimension, sign(known.figure))?;
    let exact = Exact::read(&text.text).unwrap_or_else(|| Exact::of(quantity));
    Some(Worth { exact, si: quantity.si(), text: text.text.trim().to_owned(), given })
}

/// Shares and coats may be none, all else divides or spaces something.
fn sign(figure: Figure) -> Sign {
    use Figure::{
        AdhesiveWaste, ConcreteWaste, GroutWaste, MeshLap, MortarWaste, PaintCoats, ScrewEdge, ScrewSpare,
        SealantWaste, SealerCoats, SealerWaste, SheetWaste, SkimWaste, SlabKerf, TapeWaste, TileWaste, TrimWaste,
        TubeWaste, VeneerCorner, VeneerWaste,
    };
    match figure {
        AdhesiveWaste | ConcreteWaste | GroutWaste | MeshLap | MortarWaste | PaintCoats | ScrewEdge | ScrewSpare
        | SealantWaste | SealerCoats | SealerWaste | SheetWaste | SkimWaste | SlabKerf | TapeWaste | TileWaste
        | TrimWaste | TubeWaste | VeneerCorner | VeneerWaste => Sign::NotNegative,
        _ => Sign::Positive,
    }
}

#[cfg(test)]
mod tests {
    use super::FIGURES;
    use crate::units::reading;

    #[test]
    fn every_figure_can_be_read_and_stands_in_its_place() {
        for (index, known) in FIGURES.iter().enumerate() {
            assert!(reading::quantity(known.value).is_ok(), "{}", known.name);
            assert_eq!(known.figure as usize, index);
            assert_eq!(FIGURES.iter().filter(|other| other.name == known.name).count(), 1, "{}", known.name);
        }
    }
}
