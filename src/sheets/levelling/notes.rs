//! What has to be known to level the run.

use super::plan::slope_words;
use crate::sheets::set::Set;
use crate::units::Length;

/// The notes.
pub fn list(set: &Set<'_>) -> Vec<(String, String)> {
    let solved = set.solved;
    let show = solved.show;
    let note = |lead: &str, text: String| (lead.to_owned(), text);
    let mut notes = Vec::new();
    if let Some((leg, foot)) = solved.shop.levelling.high {
        let module =
            solved.legs.get(leg).and_then(|leg| leg.feet.get(foot).and_then(|foot| leg.modules.get(foot.module)));
        let module = module.map_or("", |module| module.id.as_str());
        notes.push(note(
            "Begin",
            format!(
                "at foot {}, module {module}: it stands on the highest ground, and every height counts from there. Set it, then level away \
                 from it.",
                solved.foot_tag(leg, foot)
            ),
        ));
    }
    if let Some(leg) = solved.legs.first() {
        let floor = &leg.floor;
        let way = |slope: f64, low: &str, high: &str| {
            let words = slope_words(set, slope);
            (slope.abs() >= 2e-4).then(|| format!("{words} to the {}", if slope < 0.0 { high } else { low }))
        };
        let ways: Vec<String> =
            [way(floor.per_u, "left", "right"), way(floor.per_v, "front", "back")].into_iter().flatten().collect();
        let of = if solved.legs.len() > 1 { format!(" as leg {} lies", leg.id) } else { String::new() };
        // A floor through spots has a fall of its own between any three of them.
        let whole = if floor.facets.is_empty() { "" } else { "on the whole " };
        let text =
            if ways.is_empty() { "level.".to_owned() } else { format!("falls {whole}{}{of}.", ways.join(" and ")) };
        let taken = match (floor.spots.is_empty(), floor.facets.is_empty()) {
            (true, _) => String::new(),
            (false, true) => format!(
                " Best plane through {} measured spots; a foot near a spot stands at that spot\u{2019}s height.",
                floor.spots.len()
            ),
            (false, false) => {
                let bends = if floor.facets.len() > 1 { " and bends along the pale lines" } else { "" };
                format!(" It goes through all {} measured spots{bends}.", floor.spots.len())
            }
        };
        notes.push(note("Floor", text + &taken));
    }
    let (shortest, longest) = (solved.frame.foot_shortest, solved.frame.foot_longest);
    let mut feet = format!("can be set from {} to {}", show.prose(shortest), show.prose(longest));
    if solved.frame.foot_rating > 0.0 {
        feet += &format!(", rated {} each", show.mass(solved.frame.foot_rating));
    }
    notes.push(note("Feet", feet + "."));
    let heights = || solved.legs.iter().flat_map(|leg| leg.feet.iter().map(|foot| foot.height));
    if let (Some(least), Some(most)) = (heights().min(), heights().max())
        && most > longest
    {
        let lower = most - longest;
        let mut ways =
            format!("pack {} under the lowest feet, or take feet that reach {}", show.prose(lower), show.prose(most));
        if least - lower >= shortest && lower > Length::ZERO {
            ways += &format!(", or lower the run by {}", show.prose(lower));
        }
        notes.push(note("Too low", ways + "."));
    }
    notes.push(note(
        "Loads",
        "each module dressed, a rigid box on its own feet, its weight at its centre of mass; what stands on the floor itself is left out. \
         On three feet: the most that a foot takes while one hangs free. No snow, no people on the counter."
            .to_owned(),
    ));
    if !solved.shop.weights.unknown.is_empty() {
        notes.push(note("Missing", "some fittings have no weight in the job: add theirs to these loads.".to_owned()));
    }
    notes.push(note(
        "Turn",
        "every foot until none can be turned by hand, then check the frame\u{2019}s top in both directions and across corners.".to_owned(),
    ));
    notes.push(note(
        "Caution",
        "never reach under a frame that stands on blocks or a jack; two people, gloves. Local code governs.".to_owned(),
    ));
    notes
}
