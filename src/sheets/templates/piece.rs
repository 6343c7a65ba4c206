//! What a full-size template shows: one flat part, its datum lines, its corners, and the words that go with it.

use crate::geometry::{Outline, Region, Vertex};

/// Which kind of part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// A piece of the counter.
    Counter,
    /// A piece of the substrate.
    Substrate,
    /// A board.
    Board,
    /// A piece of base trim.
    Trim,
    /// The card of a fitting: its cutout and its flange, to lay on the fitting itself.
    Card,
}

impl Family {
    /// The word that the command line takes.
    pub const fn word(self) -> &'static str {
        match self {
            Family::Counter => "counter",
            Family::Substrate => "substrate",
            Family::Board => "board",
            Family::Trim => "trim",
            Family::Card => "card",
        }
    }
}

/// What a straight line across a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineKind {
    /// A finished face or end.
    Finished,
    /// Another face or edge that a tape is held to.
    Datum,
    /// The middle of a cutout, its distance counted from a finished face.
    Centre,
}

/// A line right across a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it is.
    pub kind: LineKind,
    /// It runs up the part (x = `at`), not across it (y = `at`).
    pub upright: bool,
    /// Where, mm.
    pub at: f64,
    /// What it says.
    pub words: String,
}

/// One part at full size; x to the right, y up, mm.
#[derive(Clone, Debug)]
pub struct Template {
    /// Its name, as `counter, piece 1`.
    pub name: String,
    /// Its name in file names.
    pub slug: String,
    /// Its kind.
    pub family: Family,
    /// The material that stays.
    pub region: Region,
    /// Outlines that lie on the part for reference, with what they are.
    pub flanges: Vec<(Outline, String)>,
    /// Datum lines and centrelines.
    pub lines: Vec<Line>,
    /// Names of cutouts, at the middle of each.
    pub names: Vec<(String, (f64, f64))>,
    /// Material and thickness.
    pub material: String,
    /// Which side is seen.
    pub side: String,
    /// What lies towards the bottom of the paper, as `front`.
    pub below: String,
    /// What to check against before cutting.
    pub check: String,
    /// It is seen from the side that it isn't drawn from.
    pub mirrored: bool,
}

/// A rounded corner of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Centre of its arc.
    pub centre: (f64, f64),
    /// Middle of its arc.
    pub middle: (f64, f64),
    /// Radius.
    pub radius: f64,
    /// The material lies outside the arc, so that a drill of twice the radius makes it.
    pub inside: bool,
    /// It is a whole circle.
    pub round: bool,
}

impl Template {
    /// The box of the part and what lies on it: least and greatest x and y.
    pub fn bounds(&self) -> (f64, f64, f64, f64) {
        let flanges = self.flanges.iter().map(|(outline, _)| outline.bounds());
        flanges.fold(self.region.outer.bounds(), |a, b| (a.0.min(b.0), a.1.min(b.1), a.2.max(b.2), a.3.max(b.3)))
    }

    /// The same part turned over: left and right change sides about x = `axis` / 2.
    pub fn turned_over(mut self, axis: f64) -> Template {
        let turn = |outline: &Outline| outline.mapped(|x, y| (axis - x, y), true);
        self.region = Region { outer: turn(&self.region.outer), holes: self.region.holes.iter().map(turn).collect() };
        self.flanges = self.flanges.iter().map(|(outline, words)| (turn(outline), words.clone())).collect();
        for line in self.lines.iter_mut().filter(|line| line.upright) {
            line.at = axis - line.at;
        }
        for (_, place) in &mut self.names {
            place.0 = axis - place.0;
        }
        self.mirrored = !self.mirrored;
        self
    }

    /// Every rounded corner and round hole, in order of the outlines.
    pub fn corners(&self) -> Vec<Corner> {
        let mut found = Vec::new();
        for (index, outline) in self.region.outlines().enumerate() {
            // The material lies to the left of the outer outline and to the right of the holes (both counter-clockwise).
            let hole = index > 0;
            let round = outline.vertices.len() == 2 && outline.vertices.iter().all(|v| v.bulge != 0.0);
            for (a, b) in outline.edges().filter(|(a, _)| a.bulge != 0.0) {
                found.push(Corner { round, ..corner(a, b, (a.bulge > 0.0) == hole) });
                if round {
                    break;
                }
            }
        }
        found
    }
}

fn corner(a: Vertex, b: Vertex, inside: bool) -> Corner {
    let off = (1.0 - a.bulge * a.bulge) / (4.0 * a.bulge);
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let centre = ((a.x + b.x) / 2.0 - dy * off, (a.y + b.y) / 2.0 + dx * off);
    let radius = (a.x - centre.0).hypot(a.y - centre.1);
    // The arc bulges to the right of travel for a positive bulge.
    let chord = dx.hypot(dy).max(1e-12);
    let rise = a.bulge * chord / 2.0;
    let middle = ((a.x + b.x) / 2.0 + dy / chord * rise, (a.y + b.y) / 2.0 - dx / chord * rise);
    Corner { centre, middle, radius, inside, round: false }
}

#[cfg(test)]
mod tests {
    use super::{Family, Template};
    use crate::geometry::{Outline, Region};

    fn template() -> Template {
        Template {
            name: "counter".to_owned(),
            slug: "counter".to_owned(),
            family: Family::Counter,
            region: Region {
                outer: Outline::from_corners(0.0, 0.0, 100.0, 50.0).rounded(|_| 5.0),
                holes: vec![
                    Outline::from_corners(20.0, 10.0, 60.0, 40.0).rounded(|_| 3.0),
                    Outline::from_circle(80.0, 25.0, 4.0),
                ],
            },
            flanges: Vec::new(),
            lines: Vec::new(),
            names: vec![("sink".to_owned(), (40.0, 25.0))],
            material: String::new(),
            side: String::new(),
            below: String::new(),
            check: String::new(),
            mirrored: false,
        }
    }

    #[test]
    fn corners_say_which_of_them_a_drill_makes() {
        let corners = template().corners();
        assert_eq!(corners.len(), 4 + 4 + 1);
        assert!(corners[..4].iter().all(|c| !c.inside && (c.radius - 5.0).abs() < 1e-9));
        assert!(corners[4..8].iter().all(|c| c.inside && (c.radius - 3.0).abs() < 1e-9));
        assert!(corners[8].round && corners[8].inside);
        for corner in corners {
            let reach = (corner.middle.0 - corner.centre.0).hypot(corner.middle.1 - corner.centre.1);
            assert!((reach - corner.radius).abs() < 1e-9);
        }
    }

    #[test]
    fn turned_over_twice_it_is_as_it_was() {
        let (once, twice) = (template().turned_over(100.0), template().turned_over(100.0).turned_over(100.0));
        assert_eq!(once.names[0].1, (60.0, 25.0));
        assert!(once.mirrored && !twice.mirrored);
        assert!((once.region.area() - template().region.area()).abs() < 1e-9);
        assert_eq!(once.corners().iter().filter(|corner| corner.inside).count(), 5);
        let (a, b) = (twice.region.outer.bounds(), template().region.outer.bounds());
        assert!((a.0 - b.0).abs() + (a.1 - b.1).abs() + (a.2 - b.2).abs() + (a.3 - b.3).abs() < 1e-9);
    }
}
