//! Board and finish of each face of a leg.

use super::given::{Bound, BoundKind, Build, Faces, Finish, FinishKind};
use super::reader::{Reader, Sign};
use crate::model::{BuildUpText, CoverText, FacesText, FinishText};
use crate::units::{Dimension, Length};

/// What a face carries where nothing is written.
#[derive(Clone, Copy)]
enum Unwritten {
    Bare,
    Boarded,
    Clad,
}

/// Works out the four faces of a leg. A face against something is bare unless the job says otherwise.
pub(super) fn faces(job: &BuildUpText, leg: &FacesText, ends: [&Bound; 3], reader: &mut Reader) -> Faces {
    let [left_end, right_end, behind] = ends;
    let end = |bound: &Bound| if bound.kind == BoundKind::Open { Unwritten::Clad } else { Unwritten::Bare };
    let back = if behind.kind == BoundKind::Open { Unwritten::Boarded } else { Unwritten::Bare };
    let mut face = |name: &str, own: &Option<CoverText>, common: &Option<CoverText>, unwritten: Unwritten| {
        build(name, job, own.as_ref().or(common.as_ref()), unwritten, reader)
    };
    Faces {
        front: face("front", &leg.front, &job.front, Unwritten::Clad),
        left: face("left", &leg.left, &job.left, end(left_end)),
        right: face("right", &leg.right, &job.right, end(right_end)),
        back: face("back", &leg.back, &job.back, back),
    }
}

fn build(face: &str, job: &BuildUpText, cover: Option<&CoverText>, unwritten: Unwritten, reader: &mut Reader) -> Build {
    let bare = Build { board: Length::ZERO, board_name: String::new(), finish: None, joints: None, carries: None };
    let Some(cover) = cover else {
        let (value, build) = match unwritten {
            Unwritten::Bare => ("bare", bare),
            Unwritten::Boarded => ("boarded", boarded(job, None, reader)),
            Unwritten::Clad => ("clad", boarded(job, job.finish.as_ref(), reader)),
        };
        reader.record(&format!("build_up.{face}"), value, "common practice");
        return build;
    };
    match cover {
        CoverText::Bare => bare,
        CoverText::Boarded => boarded(job, None, reader),
        CoverText::Clad => {
            if job.finish.is_none() {
                let message = format!("the {face} is clad, but the build-up has no finish");
                reader.tell(message, "give `build_up` a `finish`, or write `boarded`", &job.board.thickness.place);
            }
            boarded(job, job.finish.as_ref(), reader)
        }
        CoverText::CladWith(finish) => boarded(job, Some(finish), reader),
    }
}

fn boarded(job: &BuildUpText, finish: Option<&FinishText>, reader: &mut Reader) -> Build {
    Build {
        board: reader.length("board.thickness", Some(&job.board.thickness), Sign::Positive),
        board_name: reader.words(job.board.name.as_ref(), "board"),
        finish: finish.map(|text| {
            let common = job.finish.as_ref().is_some_and(|common| std::ptr::eq(common, text));
            self::finish(text, common, reader)
        }),
        joints: reader.length_if("build_up.joints", job.joints.as_ref(), Sign::Positive),
        carries: reader.quantity_if("build_up.carries", job.carries.as_ref(), Dimension::AREA_MASS),
    }
}

/// Works out a finish. The job's common one goes by `finish`, others by no name.
fn finish(finish: &FinishText, common: bool, reader: &mut Reader) -> Finish {
    let parts = finish.parts();
    let name = |word: &str| if common { format!("finish.{word}") } else { format!("{} {word}", parts.kind) };
    let (kind, called) = match finish {
        FinishText::SkimCoat { .. } => (FinishKind::SkimCoat, "skim coat"),
        FinishText::Veneer { .. } => (FinishKind::Veneer, "stone veneer"),
        FinishText::Tile { width, height, joint, staggered, .. } => {
            let kind = FinishKind::Tile {
                width: reader.length_or(&name("width"), "", Some(width), Sign::Positive),
                height: reader.length_or(&name("height"), "", Some(height), Sign::Positive),
                joint: reader.length_or(&name("joint"), "finish.joint", joint.as_ref(), Sign::NotNegative),
                staggered: *staggered,
            };
            (kind, "tile")
        }
    };
    let spread = format!("finish.spread.{}", parts.kind);
    let weight = format!("finish.weight.{}", parts.kind);
    Finish {
        kind,
        name: reader.words(parts.name, called),
        thickness: reader.length_or(&name("thickness"), "", Some(parts.thickness), Sign::Positive),
        bed: reader.length_or(&name("bed"), "finish.bed", parts.bed, Sign::NotNegative),
        spread: reader.length_or(&name("spread"), &spread, parts.spread, Sign::NotNegative),
        mass: reader.quantity_or(&name("weight"), &weight, parts.weight, Dimension::AREA_MASS),
    }
}
