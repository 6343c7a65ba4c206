//! Section at a counter cutout: the datum stack drawn large, the cutout from every face that a tape may be held to.

mod behind;
mod detail;
mod labels;
mod ladder;
mod lens;
mod measure;
mod others;
mod picture;
mod ring;
mod sentences;
mod slice;
mod supports;

use super::canvas::{Canvas, Layer};
use super::frame::{self, Area};
use super::levels::{self, Level};
use super::notes;
use super::scale::{STANDARD, Scale};
use super::set::{Kind, Set};
use super::table::Table;
use super::title_block::{self, TitleBlock};
use super::view::View;
use super::{marks, section::lens::Lens};
use crate::drawing::lettering::{BODY, Style, TITLE};
use crate::drawing::{Page, Pen};
use crate::geometry::PaperPoint;
use crate::solve::{Extent, Face};
use crate::units::Show;
use ladder::Ladder;
use picture::{CutView, Layers};
use slice::Slice;

/// Width of the right column: detail, table and title block share its edges, mm.
const COLUMN: f64 = 166.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let Kind::Section(leg, index) = kind else { return Vec::new() };
    let Some(slice) = Slice::new(set.solved, leg, index) else { return Vec::new() };
    let sheet = Sheet {
        set,
        kind,
        slice: &slice,
        show: set.solved.show,
        letter: set.section_letter(kind).unwrap_or_else(|| "X".to_owned()),
    };
    let canvas = set.sheet();
    let inside = frame::inside(&canvas);
    if inside.width() >= COLUMN + 196.0 && inside.height() >= 230.0 {
        vec![sheet.on_one_page(canvas)]
    } else {
        sheet.on_pages(canvas)
    }
}

struct Sheet<'a, 's> {
    set: &'a Set<'s>,
    kind: Kind,
    slice: &'a Slice<'s>,
    show: Show,
    letter: String,
}

/// How the section's view lies in its area.
struct Setting {
    scale: Scale,
    ladder: Ladder,
    bounds: Extent,
    left: f64,
    right: f64,
    above: f64,
    levels: bool,
}

/// Room that a view's heading takes, mm.
const HEADING: f64 = 5.4;
/// Room under the floor's line: its hatch, the end of the pole.
const BELOW: f64 = 4.8;

impl Sheet<'_, '_> {
    fn on_one_page(&self, mut canvas: Canvas) -> Page {
        let (inside, corner) = (frame::inside(&canvas), title_block::corner(&canvas));
        let column =
            Area { left: corner.x + 8.0, top: inside.top, right: corner.x + 8.0 + COLUMN, bottom: corner.y - 6.0 };
        let left = Area { left: inside.left, top: inside.top, right: corner.x - 6.0, bottom: inside.bottom };
        let sentences = sentences::notes(self.slice, self.show);
        let height = notes::list_height(&sentences, left.width());
        let first = left.bottom - height + notes::PITCH - 0.5;
        let area = Area { top: left.top + HEADING, bottom: first - BODY - 3.0, ..left };
        let tables = measure::tables(self.slice, self.show, COLUMN);
        let table_height = tables_height(&tables);
        let detail_area = Area { top: column.top + HEADING, bottom: column.bottom - table_height - 5.0, ..column };
        let lens = Lens::fitting(self.slice, &detail_area, self.show);
        let setting = self.setting(&area, &lens);
        self.view(&mut canvas, &area, &setting, &lens);
        self.detail(&mut canvas, &column, &detail_area, &lens);
        self.tables(&mut canvas, &tables, PaperPoint::new(column.left, column.bottom - table_height + TITLE));
        let layer = canvas.layer(Canvas::ROOT, "notes");
        notes::list(&mut canvas, layer, PaperPoint::new(left.left, first), &sentences, left.width());
        let scale = format!("{}, detail {}", setting.scale.words(), lens.scale.words());
        self.finish(canvas, 0, scale)
    }

    /// On small paper: the view, the detail, the tables with the notes.
    fn on_pages(&self, mut canvas: Canvas) -> Vec<Page> {
        let (inside, corner) = (frame::inside(&canvas), title_block::corner(&canvas));
        let whole = Area { bottom: corner.y - 5.0, ..inside };
        let area = Area { top: whole.top + HEADING, ..whole };
        let lens = Lens::fitting(self.slice, &area, self.show);
        let setting = self.setting(&area, &lens);
        self.view(&mut canvas, &area, &setting, &lens);
        let mut pages = vec![self.finish(canvas, 0, setting.scale.words())];
        let mut canvas = self.set.sheet();
        self.detail(&mut canvas, &whole, &area, &lens);
        pages.push(self.finish(canvas, 1, lens.scale.words()));
        let mut canvas = self.set.sheet();
        let tables = measure::tables(self.slice, self.show, whole.width().min(200.0));
        let end = self.tables(&mut canvas, &tables, PaperPoint::new(whole.left, whole.top + TITLE));
        let layer = canvas.layer(Canvas::ROOT, "notes");
        let sentences = sentences::notes(self.slice, self.show);
        notes::list(&mut canvas, layer, PaperPoint::new(whole.left, end + 9.0), &sentences, whole.width());
        pages.push(self.finish(canvas, 2, "none".to_owned()));
        pages
    }

    fn finish(&self, canvas: Canvas, page: usize, scale: String) -> Page {
        let fitting = self.slice.fitting;
        let block = self.set.title_block(self.kind, page);
        let module = self.slice.leg.modules.get(fitting.module).map_or("", |module| module.id.as_str());
        let leg = if self.set.solved.legs.len() > 1 { format!("leg {}, ", self.slice.leg.id) } else { String::new() };
        let block = TitleBlock {
            title: format!("Section at the {}", self.slice.word()),
            subtitle: format!("{}, {leg}module {module}, {} {}", block.subtitle, fitting.mark, fitting.name),
            kind: "Section".to_owned(),
            scale,
            ..block
        };
        self.set.finish(canvas, self.kind, page, &block)
    }

    fn levels(&self) -> Vec<Level> {
        let d = &self.slice.leg.datums;
        let behind = self.slice.behind.as_ref();
        let mut all: Vec<Level> = behind
            .map(|behind| Level::new(format!("counter, leg {}", behind.leg.id), behind.leg.datums.counter_top))
            .into_iter()
            .collect();
        let others =
            others::beside(self.slice).into_iter().filter(|other| other.leg.datums.counter_top != d.counter_top);
        all.extend(
            others.map(|other| Level::new(format!("counter, leg {}", other.leg.id), other.leg.datums.counter_top)),
        );
        all.push(Level::new("counter top", d.counter_top));
        if d.substrate_top != d.frame_top {
            all.push(Level::new("substrate top", d.substrate_top));
        }
        all.push(Level::new("frame top", d.frame_top));
        if let Some(bottom) = self.slice.fitting.bottom {
            all.push(Level::new("notch bottom", bottom));
        }
        if let (Some(trim), Face::Front) = (&self.set.solved.trim, self.slice.facing) {
            all.push(Level::new("base trim top", trim.top));
        }
        all.push(Level::new("frame bottom", d.frame_bottom));
        all.push(Level::new("floor, high point", crate::units::Length::ZERO));
        all
    }

    /// The largest scale at which everything of the view fits its area.
    fn setting(&self, area: &Area, lens: &Lens) -> Setting {
        let slice = self.slice;
        let bounds = picture::bounds(slice);
        let mut setting = None;
        for scale in STANDARD {
            let factor = scale.factor();
            let ladder = Ladder::new(slice, factor, self.show, lens.over(slice) * factor);
            let past = (bounds.x1 - slice.hole.1).mm() * factor;
            let wall = if slice.wall.is_some() { picture::WALL_STRIP + 6.0 } else { 3.0 };
            let right = wall.max(ladder.reach(slice, self.show) - past).max(2.0);
            let left = if slice.is_notch() {
                ladder::drops_reach(slice, factor, lens) + bounds.x0.mm() * factor
            } else {
                25.0
            };
            let above = (ladder.height() + 5.4)
                .max(ladder::drops_height(slice, factor, self.show))
                .max((bounds.y1 - slice.leg.datums.counter_top).mm() * factor + 8.0);
            let wide = left + bounds.width().mm() * factor + right;
            let high = above + (slice.leg.datums.counter_top - bounds.y0).mm() * factor + BELOW;
            let fan = levels::width(&self.levels(), self.show) + 4.0;
            // The levels stand under what is lettered over the counter.
            let beside = right.max(wall + fan);
            let with_levels = wide - right + beside <= area.width();
            let found = Setting {
                scale: *scale,
                ladder,
                bounds,
                left,
                right: if with_levels { beside } else { right },
                above,
                levels: with_levels,
            };
            let fits = wide <= area.width() && high <= area.height();
            setting = Some(found);
            if fits {
                break;
            }
        }
        // The list of scales isn't empty.
        setting.unwrap_or(Setting {
            scale: Scale(5000),
            ladder: Ladder::new(slice, 1.0, self.show, 0.0),
            bounds,
            left: 0.0,
            right: 0.0,
            above: 0.0,
            levels: false,
        })
    }

    fn view(&self, canvas: &mut Canvas, area: &Area, setting: &Setting, lens: &Lens) {
        let (slice, factor) = (self.slice, setting.scale.factor());
        let d = &slice.leg.datums;
        let way = if slice.facing == Face::Back { "right" } else { "left" };
        let title = format!("Section {0}\u{2013}{0} at the {1}, looking {way}", self.letter, slice.word());
        title_block::heading(canvas, area.left, area.top - HEADING + TITLE, &title, &setting.scale.words());
        let layer = canvas.layer(Canvas::ROOT, "scale-bar");
        marks::scale_bar(
            canvas,
            layer,
            area.right - 2.0,
            area.top - HEADING + TITLE + 1.0,
            setting.scale,
            self.show.system,
        );
        let wide = setting.left + setting.bounds.width().mm() * factor + setting.right;
        let high = setting.above + (d.counter_top - setting.bounds.y0).mm() * factor + BELOW;
        let x = area.left + (area.width() - wide).max(0.0) / 2.0 + setting.left - setting.bounds.x0.mm() * factor;
        let y =
            area.top + ((area.height() - high).max(0.0) / 2.0).min(30.0) + setting.above + d.counter_top.mm() * factor;
        let view: CutView = View::open(canvas, "section", setting.scale, PaperPoint::new(x, y));
        let layers = Layers::open(canvas, &view);
        let top = view.y(d.counter_top);
        let wall = slice.wall.map_or(0.0, |_| picture::WALL_STRIP);
        let floor = (view.x(setting.bounds.x0) - 20.0, view.x(setting.bounds.x1) + wall + 2.0);
        picture::draw(canvas, &view, &layers, slice, floor, top - setting.ladder.height() - 5.4);
        let (centre, radius) = self.detail_ring(canvas, &view, &layers, lens);
        setting.ladder.draw(canvas, &view, &layers, slice, self.show);
        ladder::drops(canvas, &view, &layers, slice, self.show, lens);
        self.detail_letter(canvas, &layers, centre, radius);
        if setting.levels {
            let left = view.x(setting.bounds.x1) + if wall > 0.0 { wall + 6.0 } else { 3.0 };
            levels::draw(canvas, layers.labels, &view, left, &self.levels(), self.show);
        }
        self.name_behind(canvas, &view, &layers);
        labels::draw(canvas, &view, &layers, slice, self.show, area.right);
        if !setting.levels {
            self.levels_inside(canvas, &view, layers.labels, area);
        }
        others::draw(canvas, layers.phantom, &view, slice, area);
        self.set.mark(
            canvas,
            layers.labels,
            self.kind,
            &slice.fitting.subject(),
            view.at(slice.hole.1 + slice.fitting.flange.far, d.counter_top).moved(8.5, -4.2),
        );
    }

    /// Names the leg behind, in the hollow of its frame or along it, and says how far its counter lies over this one.
    fn name_behind(&self, canvas: &mut Canvas, view: &CutView, layers: &Layers) {
        let Some(behind) = &self.slice.behind else { return };
        let d = &behind.leg.datums;
        let [near, far] = [0, 1].map(|side| view.x(behind.skins[side].at[2]));
        let text = format!("leg {}", behind.leg.id);
        let mut places = Vec::new();
        for share in [0.6, 0.45, 0.75, 0.3] {
            let y = view.y(d.frame_bottom) + (view.y(d.frame_top) - view.y(d.frame_bottom)) * share;
            places.push(PaperPoint::new((near + far) / 2.0, y + 1.25));
        }
        if canvas.text_at_first(layers.labels, &places, &text, &Style::body().middle()).is_none() {
            let places: Vec<PaperPoint> = places.iter().map(|p| p.moved(1.25, -1.25)).collect();
            canvas.text_at_first(layers.labels, &places, &text, &Style::body().upright().middle());
        }
    }

    /// The levels as a small table where the view leaves no room beside it: in the hollow of the frame, beside the run
    /// under the counter that stands out there, else anywhere in the area.
    fn levels_inside(&self, canvas: &mut Canvas, view: &CutView, at: Layer, area: &Area) {
        use super::table::{Cell, Column, figures_width};
        let slice = self.slice;
        let levels = self.levels();
        let highest = levels.iter().map(|level| level.z).max().unwrap_or(slice.leg.datums.counter_top);
        let figures = figures_width(self.show, highest).max(14.0);
        let columns =
            vec![Column::words(levels::names_width(&levels) + 3.0, "level"), Column::figures(figures, "height")];
        let rows: Vec<Vec<Cell>> =
            levels.into_iter().map(|level| vec![Cell::Words(level.name), Cell::Figure(level.z)]).collect();
        let table = Table { columns, rows, breaks: Vec::new() };
        let (wide, high) = (table.width(), table.height(table.rows.len()));
        let d = &slice.leg.datums;
        let tube = slice.solved.frame.tube;
        let outer = slice.behind.as_ref().map_or(slice.far.at[0].max(slice.far.at[2]), |behind| behind.skins[1].at[0]);
        let (top, bottom) = (view.y(d.frame_top) + 8.0, view.y(d.frame_bottom + tube) - 4.0);
        let hollow = Area {
            left: view.x(slice.near.at[2] + tube) + 4.0,
            top,
            right: view.x(slice.far.at[2] - tube) - 4.0,
            bottom,
        };
        let beside = Area { left: view.x(outer) + 4.0, top, right: area.right, bottom };
        for place in [hollow, beside, *area] {
            let mut y = place.bottom - high;
            while y >= place.top {
                let mut x = place.right - wide;
                while x >= place.left {
                    if canvas.is_box_free(x - 2.0, y - 2.0, x + wide + 2.0, y + high + 2.0) {
                        table.draw(canvas, at, PaperPoint::new(x, y), self.show);
                        return;
                    }
                    x -= 4.0;
                }
                y -= 4.0;
            }
        }
    }

    /// The circle on the view that says where the detail is.
    fn detail_ring(&self, canvas: &mut Canvas, view: &CutView, layers: &Layers, lens: &Lens) -> (PaperPoint, f64) {
        let factor = view.scale.factor();
        let centre = PaperPoint::new(view.x_mm(lens.middle.0), view.y_mm(lens.middle.1));
        let radius = lens.radius / lens.scale.factor() * factor;
        canvas.circle(layers.labels, centre, radius, super::canvas::Paint::pen(Pen::DIMENSION));
        (centre, radius)
    }

    fn detail_letter(&self, canvas: &mut Canvas, layers: &Layers, centre: PaperPoint, radius: f64) {
        let name = self.detail_name();
        let style = Style::body().bold().sized(TITLE).middle();
        let first = [215.0_f64, 200.0, 230.0, 185.0, 165.0, 150.0, 130.0];
        let around = (0..24).map(|k| 245.0 + 15.0 * f64::from(k));
        let places: Vec<PaperPoint> = [4.2, 6.0, 8.0]
            .iter()
            .flat_map(|off| first.iter().copied().chain(around.clone()).map(move |angle| (off, angle.to_radians())))
            .map(|(off, angle)| centre.moved((radius + off) * angle.cos(), (radius + off) * angle.sin() + 1.7))
            .collect();
        canvas.text_at_first(layers.labels, &places, &name, &style);
    }

    fn detail_name(&self) -> String {
        format!("{}1", self.letter)
    }

    fn detail(&self, canvas: &mut Canvas, column: &Area, area: &Area, lens: &Lens) {
        let beside = if self.slice.is_notch() { " beside the notch" } else { "" };
        let face = if self.slice.facing == Face::Back { "back" } else { "front" };
        let title = format!("Detail {}, {face} layers{beside}", self.detail_name());
        title_block::heading(canvas, column.left, column.top + TITLE, &title, &lens.scale.words());
        detail::draw(canvas, self.slice, lens, area, self.show);
    }

    /// The tables under their title, whose baseline is at `place`. Returns the last rule.
    fn tables(&self, canvas: &mut Canvas, tables: &[Table], place: PaperPoint) -> f64 {
        let title = format!("Measure the {} from a face that is there", self.slice.word());
        title_block::heading(canvas, place.x, place.y, &title, "");
        let layer = canvas.layer(Canvas::ROOT, "table");
        let mut y = place.y + 1.6;
        for table in tables {
            y = table.draw(canvas, layer, PaperPoint::new(place.x, y), self.show) + 2.0;
        }
        y - 2.0
    }
}

fn tables_height(tables: &[Table]) -> f64 {
    TITLE + 1.6 + tables.iter().map(|table| table.height(table.rows.len()) + 2.0).sum::<f64>() - 2.0
}
