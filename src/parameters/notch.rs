//! Notches in the counter's outline.

use super::given::{Notch, NotchCut};
use super::reader::{Reader, Sign};
use super::site;
use crate::findings;
use crate::model::{JobFile, NotchText, Text};
use crate::units::Length;

/// Works out the counter's notches.
pub(super) fn read(job: &JobFile, reader: &mut Reader) -> Vec<Notch> {
    job.counter.notches.iter().filter_map(|notch| one(job, notch, reader)).collect()
}

fn one(job: &JobFile, notch: &NotchText, reader: &mut Reader) -> Option<Notch> {
    let rounded = |radius: &Option<Text>, reader: &mut Reader| {
        reader.length_or("counter.notch.radius", "counter.notch.radius", radius.as_ref(), Sign::NotNegative)
    };
    match notch {
        NotchText::RoundPost { post, leg, clearance, radius } => {
            let index = self::post(job, post, reader)?;
            let name = "counter.notch.clearance";
            let clearance = reader.length_or(name, name, clearance.as_ref(), Sign::NotNegative);
            Some(Notch {
                leg: site::leg(job, leg.as_ref(), reader),
                name: post.text.clone(),
                cut: NotchCut::Post { post: index, clearance },
                radius: rounded(radius, reader),
                place: Some(post.place.clone()),
            })
        }
        NotchText::OutOf { edge, leg, along, width, depth, radius, name } => {
            let size = |text: &Text, reader: &mut Reader| reader.length_of(text, Sign::Positive);
            let (width, depth) = (size(width, reader), size(depth, reader));
            Some(Notch {
                leg: site::leg(job, leg.as_ref(), reader),
                name: reader.words(name.as_ref(), "notch"),
                cut: NotchCut::Edge {
                    edge: site::face(*edge),
                    along: reader.length_of(along, Sign::Any).unwrap_or_default(),
                    width: width.unwrap_or(Length::ZERO),
                    depth: depth.unwrap_or(Length::ZERO),
                },
                radius: rounded(radius, reader),
                place: Some(along.place.clone()),
            })
        }
    }
}

/// A post of the survey by its name.
fn post(job: &JobFile, named: &Text, reader: &mut Reader) -> Option<usize> {
    let names =
        || job.site.survey.posts.iter().map(|post| post.name.as_ref().map_or("post", |name| name.text.as_str()));
    let found: Vec<usize> = names().enumerate().filter(|(_, name)| *name == named.text).map(|(at, _)| at).collect();
    match found.as_slice() {
        [only] => return Some(*only),
        [] => {
            let instead = findings::nearest(&named.text, names()).map_or_else(
                || "write it under `site: (survey: (posts: [...]))`, or measure the notch: `out_of(...)`".to_owned(),
                |meant| format!("write \"{meant}\""),
            );
            reader.tell(format!("the survey has no post `{}`", named.text), instead, &named.place);
        }
        _ => {
            let message = format!("the survey has {} posts called `{}`", found.len(), named.text);
            reader.tell(message, "give each a name of its own", &named.place);
        }
    }
    None
}
