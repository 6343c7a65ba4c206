//! One board on the sheet: its outline with every opening, located from its own edges and from the finished end and the
//! counter's top.

use super::facing::Facing;
use super::upright::Upright;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::{FrontFace, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Running, Side, Stop, spread};
use crate::sheets::frame::Area;
use crate::sheets::label::{self, Words};
use crate::sheets::scale::Scale;
use crate::sheets::set::{Kind, Set};
use crate::sheets::view::View;
use crate::sheets::{marks, table};
use crate::solve::{Datum, Extent, Fitting};
use crate::units::Length;

/// From the board to its dimension lines, mm.
const OFF: f64 = 7.0;
/// Height of the lines over the drawing, mm.
const HEAD: f64 = 15.0;

/// A board and how it is drawn.
pub struct Cell<'s> {
    set: &'s Set<'s>,
    kind: Kind,
    facing: Facing<'s>,
    scale: Scale,
    /// Least paper over the board, so that boards of one row stand level.
    level: f64,
}

/// One opening of a board, in the board's own coordinates and held to it.
struct Opening<'s> {
    fitting: &'s Fitting,
    hole: Extent,
    open_top: bool,
    open_bottom: bool,
    round: bool,
    radius: Length,
}

/// Paper round the board, mm.
struct Margins {
    left: f64,
    right: f64,
    up: f64,
    down: f64,
}

impl<'s> Cell<'s> {
    /// A board at a scale.
    pub fn new(set: &'s Set<'s>, kind: Kind, facing: Facing<'s>, scale: Scale) -> Cell<'s> {
        Cell { set, kind, facing, scale, level: 0.0 }
    }

    /// The same with at least this much paper over the board, mm.
    pub fn level(self, level: f64) -> Cell<'s> {
        Cell { level, ..self }
    }

    /// Paper over the board, mm.
    pub fn over(&self) -> f64 {
        self.margins().up
    }

    fn openings(&self) -> Vec<Opening<'s>> {
        let (facing, board) = (&self.facing, self.facing.board);
        let whole = board.extent;
        let fittings = board.fittings.iter().filter_map(|&index| facing.leg.fittings.get(index));
        fittings
            .filter_map(|fitting| {
                let cutout = fitting.cutout(board.plane)?;
                let cut = cutout.extent;
                let (a, b) = (facing.x(cut.x0.max(whole.x0)), facing.x(cut.x1.min(whole.x1)));
                let (y0, y1) = (facing.y(cut.y0.max(whole.y0)), facing.y(cut.y1.min(whole.y1)));
                Some(Opening {
                    fitting,
                    hole: Extent { x0: a.min(b), y0, x1: a.max(b), y1 },
                    open_top: cut.y1 >= whole.y1,
                    open_bottom: cut.y0 <= whole.y0,
                    round: cutout.round,
                    radius: cutout.radius,
                })
            })
            .collect()
    }

    /// Stops along the board: the points at the openings' upper or lower edges.
    fn stops(&self, upper: bool) -> Vec<Stop> {
        let mut stops = Vec::new();
        for opening in self.openings() {
            let hole = opening.hole;
            let mark = &opening.fitting.mark;
            let y = if upper { hole.y1 } else { hole.y0 };
            let stop =
                |x: Length, y: Length, what: &str| Stop { at: (x, y), name: format!("{mark} {what}"), witness: None };
            if opening.round {
                stops.push(stop(hole.centre_x(), hole.centre_y(), "centre"));
            } else {
                stops.push(stop(hole.x0, y, "left edge"));
                stops.push(stop(hole.x1, y, "right edge"));
            }
        }
        stops.sort_by_key(|stop| (stop.at.0, if upper { -stop.at.1 } else { stop.at.1 }));
        stops
    }

    /// Heights that drops are read at: y, name, x of the point.
    fn levels(&self) -> Vec<(Length, String, Length)> {
        let mut levels = Vec::new();
        for opening in self.openings() {
            let (hole, mark) = (opening.hole, &opening.fitting.mark);
            if opening.round {
                levels.push((hole.centre_y(), format!("{mark} centre"), hole.x0));
                continue;
            }
            if !opening.open_top {
                levels.push((hole.y1, format!("{mark} top edge"), hole.x0));
            }
            if !opening.open_bottom {
                levels.push((hole.y0, format!("{mark} bottom edge"), hole.x0));
            }
        }
        levels
    }

    /// The running line under the board, from its own edge.
    fn edge_line(&self, line: f64) -> Running {
        let (width, edge) = (self.facing.board.extent.width(), self.facing.edge_x());
        let mut stops = self.stops(false);
        let far = if self.facing.is_read_leftwards() { Length::ZERO } else { width };
        stops.push(Stop { at: (far, Length::ZERO), name: "board edge".to_owned(), witness: None });
        stops.retain(|stop| stop.at.0 != edge);
        Running {
            datum: (edge, Length::ZERO),
            datum_name: "board edge".to_owned(),
            line,
            side: Side::Below,
            finished: false,
            stops,
        }
    }

    /// The running line over the board, from the finished end or face.
    fn finished_line(&self, line: f64) -> Running {
        let datum = self.facing.datum();
        Running {
            datum: (self.facing.datum_x(), self.facing.board.extent.height()),
            datum_name: datum.words().to_owned(),
            line,
            side: Side::Above,
            finished: true,
            stops: self.stops(true),
        }
    }

    fn reach(&self, running: &Running) -> f64 {
        let mut places: Vec<f64> = running.stops.iter().map(|stop| stop.at.0.mm() * self.scale.factor()).collect();
        places.sort_by(f64::total_cmp);
        places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        let moved = spread(&places).iter().zip(&places).any(|(a, b)| (a - b).abs() > 0.01);
        running.reach(self.set.solved.show) + if moved { 4.0 } else { 0.0 }
    }

    /// The counter's top in the board's y.
    fn counter_top(&self) -> Length {
        self.facing.y(self.facing.leg.datums.at(Datum::CounterTop))
    }

    fn margins(&self) -> Margins {
        let show = self.set.solved.show;
        let height = self.facing.board.extent.height();
        let counter = self.counter_top();
        let drops = |from: Length| self.levels().into_iter().map(move |level| from - level.0).collect::<Vec<_>>();
        let words = 3.0 + lettering::width("counter top", BODY, Weight::Regular);
        let own = drops(height).into_iter().chain([height]);
        let over = (counter - height).mm() * self.scale.factor();
        Margins {
            left: OFF + Upright::reach(own, show),
            right: OFF + Upright::reach(drops(counter).into_iter(), show).max(words),
            up: self.level.max(HEAD + self.reach(&self.finished_line(0.0)) + OFF.max(over + 3.0)),
            down: OFF + self.reach(&self.edge_line(0.0)) + 1.0,
        }
    }

    /// Width and height of the whole cell, mm.
    pub fn size(&self) -> (f64, f64) {
        let margins = self.margins();
        let s = self.scale.factor();
        let extent = self.facing.board.extent;
        let head = self.head_width();
        let width = (margins.left + margins.right + extent.width().mm() * s).max(head);
        (width, margins.up + margins.down + extent.height().mm() * s)
    }

    fn name(&self) -> String {
        let mut name = self.facing.board.name.clone();
        if let Some(first) = name.get(..1).map(str::to_uppercase) {
            name.replace_range(..1, &first);
        }
        name
    }

    fn size_words(&self) -> String {
        let (show, extent) = (self.set.solved.show, self.facing.board.extent);
        let both = |length: Length| {
            format!("{}{}", show.text(length), show.second(length).map_or(String::new(), |text| format!(" {text}")))
        };
        format!("{} \u{d7} {}", both(extent.width()), both(extent.height()))
    }

    fn sheet_words(&self) -> String {
        let build = self.facing.leg.build(self.facing.board.face);
        let name = if build.board_name.is_empty() { "board" } else { &build.board_name };
        format!("{} {name}, {}", self.set.solved.show.prose(build.board), self.facing.seen_from())
    }

    fn datum_words(&self) -> String {
        format!("from the {}", self.facing.datum().words())
    }

    fn head_width(&self) -> f64 {
        let title = lettering::width(&self.name(), TITLE, Weight::SemiBold) + 4.0;
        let size = lettering::width(&self.size_words(), TITLE, Weight::Regular);
        let sheet = lettering::width(&self.sheet_words(), BODY, Weight::Regular);
        let from = 3.6 + lettering::width(&self.datum_words(), BODY, Weight::SemiBold);
        (title + size).max(sheet).max(from)
    }

    /// Draws it with its top left corner at a place.
    pub fn draw(&self, canvas: &mut Canvas, corner: PaperPoint) {
        let margins = self.margins();
        let extent = self.facing.board.extent;
        let height = extent.height();
        let s = self.scale.factor();
        let origin = corner.moved(margins.left, margins.up + height.mm() * s);
        let view: View<FrontFace> =
            View::open(canvas, &format!("board {}", self.facing.board.name), self.scale, origin);
        self.head(canvas, view.layer, corner);
        self.outline(canvas, &view);
        let dims = canvas.layer(view.layer, "dimensions");
        self.dimension(canvas, dims, &view);
        let labels = canvas.layer(view.layer, "labels");
        let (w, h) = self.size();
        let within = Area { left: corner.x, top: corner.y + HEAD, right: corner.x + w, bottom: corner.y + h };
        self.label(canvas, labels, &view, within);
    }

    fn head(&self, canvas: &mut Canvas, at: Layer, corner: PaperPoint) {
        let bold = Style::body().bold().sized(TITLE);
        let width = canvas.text(at, corner.moved(0.0, 3.5), &self.name(), &bold);
        canvas.text(at, corner.moved(width + 4.0, 3.5), &self.size_words(), &Style::body().sized(TITLE));
        canvas.text(at, corner.moved(0.0, 8.2), &self.sheet_words(), &Style::caption());
        if !self.openings().is_empty() {
            let place = corner.moved(0.0, 12.8);
            marks::flaglet(canvas, at, place);
            canvas.text(at, place.moved(3.6, 0.0), &self.datum_words(), &Style::body().bold().coloured(Colour::ACCENT));
        }
    }

    fn outline(&self, canvas: &mut Canvas, view: &View<FrontFace>) {
        let board = self.facing.board;
        let at = canvas.layer(view.layer, "board");
        let region = self.facing.region(&board.region);
        let tint = Paint::fill(Fill::tint(Colour::TINT_BOARD));
        canvas.shape(at, Shape::Steps(view.region(&region)), tint, "", Vec::new());
        let facts = view.feature(
            format!("board {}", board.name),
            Length::ZERO,
            Length::ZERO,
            board.extent.width(),
            board.extent.height(),
        );
        canvas.shape(at, Shape::Steps(view.steps(&region.outer)), Paint::pen(Pen::CUT), "", facts);
        let at = canvas.layer(view.layer, "openings");
        for &index in &board.fittings {
            let Some(fitting) = self.facing.leg.fittings.get(index) else { continue };
            let Some(cutout) = fitting.cutout(board.plane) else { continue };
            let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", board.plane.word().to_owned())];
            let whole = cutout.extent.x0 >= board.extent.x0 && cutout.extent.x1 <= board.extent.x1;
            let inside = whole && cutout.extent.y0 > board.extent.y0 && cutout.extent.y1 < board.extent.y1;
            // One that is open at an edge is part of the board's outline, drawn already; it only carries its facts here.
            let pen = if inside { Pen::CUT } else { Pen::GHOST };
            let steps = view.steps(&self.facing.outline(&cutout.outline));
            canvas.shape(at, Shape::Steps(steps), Paint::pen(pen), "cutout", facts);
        }
    }

    fn dimension(&self, canvas: &mut Canvas, at: Layer, view: &View<FrontFace>) {
        let show = self.set.solved.show;
        let extent = self.facing.board.extent;
        let (width, height) = (extent.width(), extent.height());
        let s = self.scale.factor();
        let counter = self.counter_top();
        let (left, right) = (view.x(Length::ZERO), view.x(width));
        let (top, bottom) = (view.y(height), view.y(Length::ZERO));
        self.edge_line(bottom + OFF).draw(canvas, at, view, show);
        let openings = self.openings();
        let own: Vec<(Length, String, Length)> =
            self.levels().into_iter().chain([(Length::ZERO, "board bottom".to_owned(), Length::ZERO)]).collect();
        let line = Upright {
            level: height,
            level_name: "board top".to_owned(),
            line: left - OFF,
            at_left: true,
            stops: own,
            witness: left - 1.5,
        };
        line.draw(canvas, at, view, show);
        if openings.is_empty() {
            return;
        }
        let over = (counter - height).mm() * s;
        let line = top - OFF.max(over + 3.0);
        let running = self.finished_line(line);
        // The datum is drawn where it lies near; else the line comes in from its side.
        let (zero, edge) = (view.x(self.facing.datum_x()), view.x(self.facing.edge_x()));
        let begin = ((zero - edge).abs() > OFF).then(|| edge + (zero - edge).signum() * 4.0);
        running.draw_from(canvas, at, view, show, begin);
        let levels = self.levels();
        if !levels.is_empty() {
            let line = Upright {
                level: counter,
                level_name: Datum::CounterTop.words().to_owned(),
                line: right + OFF,
                at_left: false,
                stops: levels,
                witness: right + 1.5,
            };
            line.draw(canvas, at, view, show);
            let y = view.y(counter);
            let p = |x: f64| PaperPoint::new(x, y);
            canvas.line(at, p(right + OFF - 3.0), p(right + OFF - 0.9), Pen::DIMENSION);
            canvas.text(at, PaperPoint::new(right + OFF + 2.0, y + 1.25), Datum::CounterTop.words(), &Style::body());
        }
    }

    fn label(&self, canvas: &mut Canvas, at: Layer, view: &View<FrontFace>, within: Area) {
        let show = self.set.solved.show;
        let text = |length: Length| match show.second(length) {
            Some(second) => format!("{} {second}", show.text(length)),
            None => show.text(length),
        };
        let extent = self.facing.board.extent;
        let (mut crowded, mut taken) = (Vec::new(), Vec::new());
        for opening in self.openings() {
            let hole = opening.hole;
            let room =
                Area { left: view.x(hole.x0), top: view.y(hole.y1), right: view.x(hole.x1), bottom: view.y(hole.y0) };
            taken.push(room);
            let mut more = match (opening.round, show.second(hole.width())) {
                (true, _) => vec![format!("\u{d8} {}", text(hole.width()))],
                (_, Some(_)) => vec![format!("{} \u{d7}", text(hole.width())), text(hole.height())],
                (_, None) => vec![format!("{} \u{d7} {}", text(hole.width()), text(hole.height()))],
            };
            if opening.radius > Length::ZERO && !opening.round {
                more.push(format!("corners R {}", text(opening.radius)));
            }
            let words =
                Words { mark: opening.fitting.mark.clone(), name: opening.fitting.name.clone(), more, whole: true };
            let aim = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
            if !label::inside(canvas, at, &words, room, aim) {
                crowded.push((words, room));
            }
            let place = PaperPoint::new(room.right - 5.0, aim.y + 6.0);
            self.set.mark(canvas, at, self.kind, &opening.fitting.subject(), place);
        }
        for (words, room) in crowded {
            // On the board itself before beside it, where the leader would cross the dimensions.
            let board = Area {
                left: view.x(Length::ZERO),
                top: view.y(extent.height()),
                right: view.x(extent.width()),
                bottom: view.y(Length::ZERO),
            };
            if label::outside(canvas, at, &words, room, board, &taken)
                || label::outside(canvas, at, &words, room, within, &taken)
            {
                continue;
            }
            let aim = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
            let words = Words { whole: false, ..words };
            if !label::inside(canvas, at, &words, room, aim) {
                label::outside(canvas, at, &words, room, within, &taken);
            }
        }
    }
}

/// Width of a column of lengths, for the list of plain boards.
pub fn column(set: &Set<'_>, greatest: Length) -> f64 {
    table::figures_width(set.solved.show, greatest) + 3.0
}
