//! The base trim.

use super::given::{Counter, Frame, Height, Substrate, Trim, TrimCorner};
use super::reader::{Reader, Sign};
use super::site;
use crate::model::{TrimCornerText, TrimText};
use crate::units::{Dimension, Length};

/// Works out the base trim. Without a top it laps over the board, whose foot is the frame's underside, as far as it is to.
pub(super) fn read(
    trim: &TrimText,
    frame: &Frame,
    height: Height,
    (counter, substrate): (&Counter, &Substrate),
    metric: bool,
    reader: &mut Reader,
) -> Trim {
    // Distances that a tape is read at are round in the job's own units.
    let by = |name: &str| if metric { format!("{name}.metric") } else { name.to_owned() };
    let stations = reader.length_or("trim.stations", &by("trim.stations"), trim.stations.as_ref(), Sign::Positive);
    let fasteners = reader.length_or("trim.fasteners", &by("trim.fasteners"), trim.fasteners.as_ref(), Sign::Positive);
    let lap = reader.length("trim.lap", trim.lap.as_ref(), Sign::NotNegative);
    let bottom = frame.height.map_or(frame.feet.shortest, |own| match height {
        Height::CounterTop(top) => top - counter.thickness - substrate.thickness - own,
        Height::FrameTop(top) => top - own,
    });
    let top = match reader.length_if("trim.top", trim.top.as_ref(), Sign::Positive) {
        Some(top) => top,
        None => {
            reader.record("trim.top", "the frame\u{2019}s underside and trim.lap", "common practice");
            bottom + lap
        }
    };
    let mut stock: Vec<Length> = trim.stock.iter().filter_map(|text| reader.length_of(text, Sign::Positive)).collect();
    if trim.stock.is_empty() {
        stock.push(reader.length("trim.stock", None, Sign::Positive));
    }
    stock.sort_by_key(|length| -*length);
    let mut length = |name: &str, written, sign| reader.length(name, written, sign);
    Trim {
        top,
        lap,
        stock,
        thickness: length("trim.thickness", Some(&trim.thickness), Sign::Positive),
        floor_gap: length("trim.floor_gap", trim.floor_gap.as_ref(), Sign::NotNegative),
        notch_gap: length("trim.notch_gap", trim.notch_gap.as_ref(), Sign::NotNegative),
        joint_gap: length("trim.joint_gap", trim.joint_gap.as_ref(), Sign::NotNegative),
        stations,
        fasteners,
        fastener_end: length("trim.fastener_end", trim.fastener_end.as_ref(), Sign::NotNegative),
        joint_off: length("trim.joint_off", trim.joint_off.as_ref(), Sign::NotNegative),
        corners: match trim.corners {
            Some(TrimCornerText::Butted) => TrimCorner::Butted,
            Some(TrimCornerText::Mitred) | None => TrimCorner::Mitred,
        },
        faces: trim.faces.as_ref().map(|faces| faces.iter().map(|face| site::face(*face)).collect()),
        density: reader.quantity_or("trim.density", "trim.density", trim.density.as_ref(), Dimension::DENSITY),
        name: reader.words(trim.name.as_ref(), "base trim"),
        place: Some(trim.thickness.place.clone()),
    }
}
