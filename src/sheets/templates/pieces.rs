//! Every template of a solved run.

use super::piece::{Family, Line, LineKind, Template};
use crate::geometry::{Outline, Region};
use crate::solve::{Board, Cutout, Datum, Extent, Face, Fitting, Leg, Plane, Solved, TrimPiece};
use crate::units::{Length, Show};

/// All templates: counter, substrate, boards, base trim, and a card for each fitting with a cutout, leg by leg.
pub fn all(solved: &Solved) -> Vec<Template> {
    let several = solved.legs.len() > 1;
    let mut templates = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let maker = Maker {
            solved,
            leg,
            show: solved.show,
            prefix: if several { format!("{}, ", leg.id) } else { String::new() },
        };
        templates.extend(maker.counter());
        templates.extend(maker.substrate());
        let boards = solved.shop.boards.get(index).into_iter().flatten();
        templates.extend(boards.map(|board| maker.board(board)));
        let trim = solved.shop.trim.pieces.iter().filter(|piece| piece.leg == index);
        templates.extend(trim.map(|piece| maker.trim(piece)));
        templates.extend(leg.fittings.iter().filter_map(|fitting| maker.card(fitting)));
    }
    // Two parts never share a file.
    for index in 1..templates.len() {
        let (before, rest) = templates.split_at_mut(index);
        let taken = |slug: &str| before.iter().any(|other| other.slug == slug);
        if taken(&rest[0].slug) {
            rest[0].slug = format!("{}-{}", rest[0].slug, index + 1);
        }
    }
    templates
}

/// Letters and figures of a name, the rest as hyphens.
pub fn slug(name: &str) -> String {
    let mut slug = String::new();
    for c in name.chars() {
        if c.is_ascii_alphanumeric() {
            slug.push(c.to_ascii_lowercase());
        } else if !slug.ends_with('-') && !slug.is_empty() {
            slug.push('-');
        }
    }
    slug.trim_end_matches('-').chars().take(60).collect()
}

struct Maker<'s> {
    solved: &'s Solved,
    leg: &'s Leg,
    show: Show,
    prefix: String,
}

impl Maker<'_> {
    fn template(&self, family: Family, name: String, region: Region) -> Template {
        let name = format!("{}{name}", self.prefix);
        Template {
            slug: slug(&name),
            name,
            family,
            region: region.tidied(),
            flanges: Vec::new(),
            lines: Vec::new(),
            names: Vec::new(),
            material: String::new(),
            side: String::new(),
            below: String::new(),
            check: "check against what is in hand".to_owned(),
            mirrored: false,
        }
    }

    fn thick(&self, name: &str, thickness: Length) -> String {
        let name = if name.is_empty() { "as specified" } else { name };
        format!("{name}, {} thick", self.show.text(thickness))
    }

    fn counter(&self) -> Vec<Template> {
        let counter = &self.leg.counter;
        let several = counter.pieces.len() > 1;
        let piece = |piece: &crate::solve::Piece| {
            let name = if several { format!("counter, {}", piece.name.to_lowercase()) } else { "counter".to_owned() };
            let mut template = self.template(Family::Counter, name, piece.region.clone());
            template.material = self.thick(&self.solved.counter.name, self.solved.counter.thickness);
            template.side = "face up".to_owned();
            template.below = "front".to_owned();
            self.add_fittings(&mut template, Plane::Counter, &piece.extent);
            self.add_datums(
                &mut template,
                &[Datum::FinishedFace, Datum::FinishedBack, Datum::FinishedLeftEnd, Datum::FinishedRightEnd],
            );
            template
        };
        counter.pieces.iter().map(piece).collect()
    }

    fn substrate(&self) -> Vec<Template> {
        let substrate = &self.leg.substrate;
        let mut ends = vec![substrate.extent.x0];
        ends.extend(&substrate.joints);
        ends.push(substrate.extent.x1);
        let mut parts = Vec::new();
        for pair in ends.windows(2) {
            let extent = Extent { x0: pair[0], x1: pair[1], ..substrate.extent };
            for region in substrate.region.strip(pair[0].mm(), pair[1].mm()) {
                parts.push((extent, region));
            }
        }
        let several = parts.len() > 1;
        let part = |(index, (extent, region)): (usize, (Extent, Region))| {
            let name = if several { format!("substrate, piece {}", index + 1) } else { "substrate".to_owned() };
            let mut template = self.template(Family::Substrate, name, region);
            template.material = self.thick(&self.solved.substrate.name, self.solved.substrate.thickness);
            template.side = "face up".to_owned();
            template.below = "front".to_owned();
            self.add_fittings(&mut template, Plane::Substrate, &extent);
            self.add_datums(
                &mut template,
                &[
                    Datum::FinishedFace,
                    Datum::FrameFace,
                    Datum::FrameBack,
                    Datum::FinishedLeftEnd,
                    Datum::FrameLeftEnd,
                    Datum::FrameRightEnd,
                    Datum::FinishedRightEnd,
                ],
            );
            template
        };
        parts.into_iter().enumerate().map(part).collect()
    }

    /// A board as seen on its outside: the left end and the back are seen from where u or v run to the left.
    fn board(&self, board: &Board) -> Template {
        let build = self.leg.build(board.face);
        let mut template = self.template(Family::Board, format!("board, {}", board.name), board.region.clone());
        template.material = self.thick(&build.board_name, build.board);
        template.side = "outside towards you".to_owned();
        template.below = "bottom".to_owned();
        self.add_fittings(&mut template, board.plane, &board.extent);
        let levels: &[Datum] = match board.face {
            Face::Front | Face::Back => &[Datum::FrameLeftEnd, Datum::FrameRightEnd],
            Face::Left | Face::Right => &[],
        };
        self.add_datums(&mut template, levels);
        match board.face {
            Face::Front | Face::Right => template,
            Face::Back => Template { mirrored: false, ..template.turned_over(self.leg.datums.finished_right.mm()) },
            Face::Left => Template { mirrored: false, ..template.turned_over(self.leg.datums.finished_back.mm()) },
        }
    }

    /// A piece of base trim as seen on its outside, scribed: lines at its stations, and the foot of the frame behind it.
    fn trim(&self, piece: &TrimPiece) -> Template {
        let mut template = self.template(Family::Trim, format!("base trim, {}", piece.mark), piece.region.clone());
        if let Some(trim) = &self.solved.trim {
            template.material = self.thick(&trim.name, trim.thickness);
        }
        template.side = "outside towards you".to_owned();
        template.below = "floor".to_owned();
        template.check = "hold it to the floor as it is".to_owned();
        for station in piece.stations.iter().filter(|station| station.at > piece.from && station.at < piece.to) {
            let at = self.show.text(super::super::trim::ends::seen(piece, station.at));
            let words = format!("{at} from the left end, {} high", self.show.text(station.height));
            template.lines.push(Line { kind: LineKind::Datum, upright: true, at: station.at.mm(), words });
        }
        self.add_datums(&mut template, &[Datum::FrameBottom]);
        match piece.face {
            Face::Front | Face::Right => template,
            Face::Back => Template { mirrored: false, ..template.turned_over(self.leg.datums.finished_right.mm()) },
            Face::Left => Template { mirrored: false, ..template.turned_over(self.leg.datums.finished_back.mm()) },
        }
    }

    /// Cutout and flange of a fitting, to lay on the fitting itself.
    fn card(&self, fitting: &Fitting) -> Option<Template> {
        let plane = if fitting.cutout(Plane::Counter).is_some() { Plane::Counter } else { Plane::of(fitting.face) };
        let cutout = fitting.cutout(plane)?;
        let name = format!("flange card, {} {}", fitting.mark, fitting.name);
        let mut template = self.template(Family::Card, name, Region::solid(cutout.outline.clone()));
        template.material = "paper".to_owned();
        template.side = "flange side towards you".to_owned();
        template.below = if plane == Plane::Counter { "front" } else { "bottom" }.to_owned();
        template.check = format!("lay it on the {} in hand", fitting.name);
        template.flanges = self.flange(fitting, cutout, plane).into_iter().collect();
        let (x, y) = (cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm());
        template.lines.push(Line { kind: LineKind::Centre, upright: true, at: x, words: "centreline".to_owned() });
        template.names.push((format!("{} cutout", fitting.name), (x, y)));
        let mirrored = matches!(plane, Plane::BackBoard | Plane::LeftBoard);
        Some(if mirrored { Template { mirrored: false, ..template.turned_over(2.0 * x) } } else { template })
    }

    /// Outline of a fitting's flange in a plane, where it laps at all.
    fn flange(&self, fitting: &Fitting, cutout: &Cutout, plane: Plane) -> Option<(Outline, String)> {
        let (lap, cut) = (fitting.flange, cutout.extent);
        let none = [lap.left, lap.right, lap.far, lap.near].iter().all(|lap| *lap <= Length::ZERO);
        if none
            || !matches!(
                plane,
                Plane::Counter | Plane::FrontBoard | Plane::BackBoard | Plane::LeftBoard | Plane::RightBoard
            )
        {
            return None;
        }
        // A notch's flange lies on the counter; in its front board it only hangs.
        if plane != Plane::Counter && fitting.cutout(Plane::Counter).is_some() {
            return None;
        }
        let near = if cutout.open { Length::ZERO } else { lap.near };
        let words = format!("flange of {}", fitting.name);
        if cutout.round {
            let radius = cut.width().mm() / 2.0 + lap.left.mm();
            return Some((Outline::from_circle(cut.centre_x().mm(), cut.centre_y().mm(), radius), words));
        }
        let outline =
            Extent { x0: cut.x0 - lap.left, y0: cut.y0 - near, x1: cut.x1 + lap.right, y1: cut.y1 + lap.far }.outline();
        Some((outline, words))
    }

    /// Names, flanges and centrelines of the fittings that are cut into a part.
    fn add_fittings(&self, template: &mut Template, plane: Plane, extent: &Extent) {
        let cut = self.leg.fittings.iter().filter_map(|fitting| fitting.cutout(plane).map(|cutout| (fitting, cutout)));
        let cut: Vec<(&Fitting, &Cutout)> = cut.filter(|(_, cutout)| cutout.extent.meets(extent)).collect();
        let (across, from) = match plane {
            Plane::Counter | Plane::Substrate | Plane::FrontBoard | Plane::BackBoard => {
                (Datum::FinishedLeftEnd, "finished left end")
            }
            Plane::LeftBoard | Plane::RightBoard => (Datum::FinishedFace, "finished face"),
        };
        debug_assert_eq!(across.words(), from);
        let mut middles: Vec<(Length, Vec<&str>)> = Vec::new();
        for (fitting, cutout) in &cut {
            let inside = |x: Length, low: Length, high: Length| x > low && x < high;
            let (x, y) = (cutout.extent.centre_x(), cutout.extent.centre_y());
            template.names.push((format!("{} {}", fitting.mark, fitting.name), (x.mm(), y.mm())));
            if inside(x, extent.x0, extent.x1) {
                match middles.iter_mut().find(|(at, _)| *at == x) {
                    Some((_, names)) => names.push(&fitting.name),
                    None => middles.push((x, vec![&fitting.name])),
                }
            }
            if matches!(plane, Plane::Counter | Plane::Substrate) && !cutout.open {
                let words = format!("{}, centreline, {} from the finished face", fitting.name, self.show.text(y));
                template.lines.push(Line { kind: LineKind::Centre, upright: false, at: y.mm(), words });
            }
            if plane != Plane::Substrate && inside(x, extent.x0, extent.x1) {
                template.flanges.extend(self.flange(fitting, cutout, plane).filter(|(outline, _)| {
                    let (x0, y0, x1, y1) = outline.bounds();
                    x0 >= extent.x0.mm() && x1 <= extent.x1.mm() && y0 >= extent.y0.mm() && y1 <= extent.y1.mm()
                }));
            }
        }
        for (at, names) in middles {
            let words = format!("{}, centreline, {} from the {from}", names.join(" and "), self.show.text(at));
            template.lines.push(Line { kind: LineKind::Centre, upright: true, at: at.mm(), words });
        }
        let mut check: Vec<&str> = cut.iter().map(|(fitting, _)| fitting.name.as_str()).collect();
        check.dedup();
        template.check = match check.as_slice() {
            [] => "check against the frame as built".to_owned(),
            [one] => format!("check against the {one} in hand"),
            [one, other] if one.len() + other.len() < 16 => format!("check against {one} and {other} in hand"),
            _ => "check against all fittings in hand".to_owned(),
        };
    }

    /// The datums that cross a part.
    fn add_datums(&self, template: &mut Template, datums: &[Datum]) {
        let (x0, y0, x1, y1) = template.bounds();
        for &datum in datums {
            let at = self.leg.datums.at(datum).mm();
            let upright = datum.axis() == crate::solve::Axis::U;
            let (low, high) = if upright { (x0, x1) } else { (y0, y1) };
            if at > low + 0.5 && at < high - 0.5 {
                let kind = if datum.is_finished() { LineKind::Finished } else { LineKind::Datum };
                let words = if self.is_corner(datum) { "where the faces meet" } else { datum.words() };
                template.lines.push(Line { kind, upright, at, words: words.to_owned() });
            }
        }
    }

    /// Whether a datum is the finished end of a leg that turns a corner there: nothing ends at it.
    fn is_corner(&self, datum: Datum) -> bool {
        let Some(own) = self.solved.legs.iter().position(|leg| std::ptr::eq(leg, self.leg)) else { return false };
        let corner = |joint: &&crate::solve::Joint| matches!(joint.kind, crate::solve::JointKind::Corner(_));
        self.solved.joints.iter().filter(corner).any(|joint| match datum {
            Datum::FinishedLeftEnd => joint.right == own,
            Datum::FinishedRightEnd => joint.left == own,
            _ => false,
        })
    }
}
