//! How the trim is made, scribed and fixed.

use crate::sheets::set::Set;
use crate::sheets::shelves::{self, Block};
use crate::solve::{FrameMaterial, TrimCorner, TrimEnd};

/// The notes as a block.
pub fn block<'a>(set: &Set<'_>, width: f64) -> Block<'a> {
    shelves::noted(list(set), width, 3.0)
}

fn list(set: &Set<'_>) -> Vec<(String, String)> {
    let solved = set.solved;
    let Some(trim) = &solved.trim else { return Vec::new() };
    let show = solved.show;
    let pieces = &solved.shop.trim.pieces;
    let note = |lead: &str, text: String| (lead.to_owned(), text);
    let widest = pieces.iter().map(|piece| piece.width()).max().unwrap_or_default();
    let lap = solved.legs.first().map(|leg| trim.top - leg.datums.frame_bottom).unwrap_or_default();
    let mut notes = vec![
        note(
            "Stock",
            format!("{}, {} thick, at least {} wide.", trim.name, show.prose(trim.thickness), show.prose(widest)),
        ),
        note(
            "Top",
            format!(
                "level, {} over the floor\u{2019}s high point; it laps {} over the foot of the board, and the finish ends on it.",
                show.prose(trim.top),
                show.prose(lap)
            ),
        ),
        note(
            "Scribe",
            format!(
                "each piece is drawn as it is seen from outside, true to scale. Heights run from the level top to a bottom {} off the floor; set them \
                 out at the stations, join them with a batten, then hold the piece in place and scribe the rest.",
                show.prose(trim.floor_gap)
            ),
        ),
    ];
    if pieces.iter().any(|piece| !piece.notches.is_empty()) {
        notes.push(note(
            "Notches",
            format!("clear each fitting with its flange by {} all round.", show.prose(trim.notch_gap)),
        ));
    }
    let has = |wanted: fn(&TrimEnd) -> bool| pieces.iter().any(|piece| piece.ends.iter().any(wanted));
    if has(|end| matches!(end, TrimEnd::Joint(_))) {
        notes.push(note(
            "Joints",
            format!(
                "{} apart over a post, {} and more off notches; seal them.",
                show.prose(trim.joint_gap),
                show.prose(trim.joint_off)
            ),
        ));
    }
    if has(|end| matches!(end, TrimEnd::AtBound)) {
        notes.push(note("Gap", format!("{} off a wall, pier or post; seal it.", show.prose(trim.notch_gap))));
    }
    if has(|end| matches!(end, TrimEnd::Mitre(_))) {
        notes.push(note(
            "Corners",
            "mitred from the back; the length given is that of the side that is seen.".to_owned(),
        ));
    } else if trim.corners == TrimCorner::Butted && has(|end| matches!(end, TrimEnd::Butt)) {
        notes.push(note("Corners", "the long faces run past, the ends butt against their backs.".to_owned()));
    }
    let count: usize = pieces.iter().map(|piece| piece.fasteners.len()).sum();
    let into = match solved.frame.material {
        FrameMaterial::Wood => "into the frame\u{2019}s bottom rail",
        _ => "into the tube of the frame\u{2019}s bottom rail",
    };
    notes.push(note(
        "Fasten",
        format!(
            "{count} stainless screws, crosses on the drawing, {into}; {} apart at most, {} from ends.",
            show.prose(trim.fasteners),
            show.prose(trim.fastener_end)
        ),
    ));
    match solved.frame.material {
        FrameMaterial::Steel => notes.push(note(
            "Pre-drill",
            "a clearance hole through trim and board and the screw maker\u{2019}s pilot in the steel; blow out swarf, touch up the bare edge with zinc \
             paint. No hole where a gas line or cable runs behind: look first."
                .to_owned(),
        )),
        FrameMaterial::Aluminium => notes.push(note(
            "Pre-drill",
            "a clearance hole through trim and board and the screw maker\u{2019}s pilot in the aluminium; keep stainless and aluminium apart with a sealant or \
             a washer. No hole where a gas line or cable runs behind: look first."
                .to_owned(),
        )),
        FrameMaterial::Wood => {}
    }
    notes.push(note("Caution", "cutting board or trim makes dust, and cement board frees silica: extraction, eye and breathing protection. Local rules govern.".to_owned()));
    notes
}
