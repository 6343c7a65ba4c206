//! Tables and notes that flow down the columns of a page, and on to further pages with their headings repeated.

pub mod fit;
mod slots;

use super::canvas::{Canvas, Layer};
use super::frame::Area;
use super::notes::{self, PITCH};
use super::set::{Kind, Set};
use super::table::{ROW, Table};
use super::title_block::{self, TitleBlock};
use crate::drawing::lettering::{BODY, Style, TITLE, Weight, width as lettering_width};
use crate::drawing::{Colour, Dash, Page, Pen};
use crate::geometry::PaperPoint;
use slots::Slot;

/// White after a block, mm.
const AFTER: f64 = 8.0;
/// Tables of no more rows than this are not broken.
const KEPT_WHOLE: usize = 10;
/// From the top of a block's title to the top of what it titles, mm.
const TITLED: f64 = TITLE + 2.6;

/// What the title blocks of the pages say.
#[derive(Clone, Debug, Default)]
pub struct Heads {
    /// Title of the sheet.
    pub title: String,
    /// Document type.
    pub document: String,
    /// Scale of the first page; the others carry no view.
    pub scale: String,
}

/// Pages that are being filled.
pub struct Flow<'f, 's> {
    set: &'f Set<'s>,
    kind: Kind,
    heads: Heads,
    sheets: Vec<Sheet>,
    current: usize,
    anywhere: bool,
}

struct Sheet {
    canvas: Canvas,
    layer: Layer,
    slots: Vec<Slot>,
    scale: String,
}

impl<'f, 's> Flow<'f, 's> {
    /// Starts on an empty page; blocks keep their order.
    pub fn new(set: &'f Set<'s>, kind: Kind, heads: Heads) -> Flow<'f, 's> {
        let mut flow = Flow { set, kind, heads, sheets: Vec::new(), current: 0, anywhere: false };
        flow.open_page();
        flow
    }

    /// Starts beside views that are drawn already: every block goes to the first area that takes it whole, and only
    /// what fits nowhere goes on to further pages.
    pub fn beside(set: &'f Set<'s>, kind: Kind, heads: Heads, views: Vec<(Canvas, Vec<Area>, String)>) -> Flow<'f, 's> {
        let sheets = views
            .into_iter()
            .map(|(mut canvas, areas, scale)| {
                let layer = canvas.layer(Canvas::ROOT, "tables");
                Sheet { canvas, layer, slots: areas.into_iter().map(Slot::new).collect(), scale }
            })
            .collect();
        Flow { set, kind, heads, sheets, current: usize::MAX, anywhere: true }
    }

    /// Adds a table under a title. `build` makes it for a width; when it comes out wider, its columns after the first
    /// `keys` are shared out to several tables, each with the key columns before them. Empty tables are left out.
    pub fn table(&mut self, title: &str, keys: usize, build: &dyn Fn(f64) -> Table) {
        if self.anywhere && self.table_anywhere(title, build) {
            return;
        }
        self.ready();
        let width = self.width();
        for table in fit::parts(build(width), keys, width) {
            self.rows(title, &fit::unfolded(table));
        }
    }

    /// Adds a table where a page that is there already has room for it whole, and says whether one has.
    pub fn table_if_room(&mut self, title: &str, build: &dyn Fn(f64) -> Table) -> bool {
        self.table_anywhere(title, build)
    }

    /// Adds notes under a title: lead words in semi-bold, sentences beside them.
    pub fn notes(&mut self, title: &str, notes: &[(String, String)]) {
        if notes.is_empty() || (self.anywhere && self.notes_anywhere(title, notes)) {
            return;
        }
        self.ready();
        let mut left = notes.to_vec();
        let mut continued = false;
        while !left.is_empty() {
            let (width, room) = (self.width(), self.room());
            let fits = |notes: &[(String, String)]| TITLED + notes_height(notes, width) <= room;
            let mut count = left.len();
            while count > 1 && !fits(&left[..count]) {
                count -= 1;
            }
            if !fits(&left[..count]) && !self.is_fresh() {
                self.next_slot();
                continue;
            }
            // One that is higher than a whole column goes on in the next.
            if !fits(&left[..count])
                && let Some((first, rest)) = parted(&left[0], fits)
            {
                left.splice(..1, [first, rest]);
            }
            let index = self.current;
            if let Some(sheet) = self.sheets.last_mut() {
                sheet.put_notes(index, title, &left[..count], continued);
            }
            left.drain(..count);
            continued = true;
            if !left.is_empty() {
                self.next_slot();
            }
        }
    }

    /// Adds something of a known height under a title, drawn into the area that it is given; mm.
    pub fn block(&mut self, title: &str, height: f64, draw: &dyn Fn(&mut Canvas, Layer, Area)) {
        self.ready();
        if TITLED + height > self.room() && !self.is_fresh() {
            self.next_slot();
        }
        let index = self.current;
        let Some(sheet) = self.sheets.last_mut() else { return };
        let Some(slot) = sheet.slots.get_mut(index) else { return };
        heading(&mut sheet.canvas, slot, title, false);
        let area = Area { top: slot.top + TITLED, bottom: slot.top + TITLED + height, ..slot.area };
        slot.top = area.bottom + AFTER;
        draw(&mut sheet.canvas, sheet.layer, area);
    }

    /// Goes on in the next column unless this one still has a height free; mm. Nothing can keep what is higher than a
    /// column together.
    pub fn keep(&mut self, height: f64) {
        self.ready();
        if height > self.room() && !self.is_fresh() {
            self.next_slot();
        }
    }

    /// A broken line to cut along, where something stands above it in this column.
    pub fn cut_line(&mut self) {
        self.ready();
        let index = self.current;
        let Some(sheet) = self.sheets.last_mut() else { return };
        let Some(slot) = sheet.slots.get_mut(index).filter(|slot| !slot.is_fresh()) else { return };
        let (left, right) = (PaperPoint::new(slot.area.left, slot.top), PaperPoint::new(slot.area.right, slot.top));
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
        sheet.canvas.line(sheet.layer, left, right, pen);
        slot.top += AFTER;
    }

    /// Width of the column that is being filled, mm.
    pub fn column(&mut self) -> f64 {
        self.ready();
        self.width()
    }

    /// Height that a table with its title takes, mm.
    pub fn table_height(table: &Table) -> f64 {
        TITLED + table.height(table.rows.len()) + AFTER
    }

    /// Height that a block with its title takes, mm.
    pub fn block_height(height: f64) -> f64 {
        TITLED + height + AFTER
    }

    /// Height that a line to cut along takes, mm.
    pub const CUT_LINE: f64 = AFTER;

    /// Height that notes with their title take in a width, mm.
    pub fn notes_room(notes: &[(String, String)], width: f64) -> f64 {
        TITLED + notes_height(notes, width) + AFTER
    }

    /// The finished pages.
    pub fn finish(self) -> Vec<Page> {
        let Flow { set, kind, heads, sheets, .. } = self;
        let pages = sheets.into_iter().enumerate().map(|(page, sheet)| {
            let (title, kind_words) = (heads.title.clone(), heads.document.clone());
            let block = TitleBlock { title, kind: kind_words, scale: sheet.scale, ..set.title_block(kind, page) };
            set.finish(sheet.canvas, kind, page, &block)
        });
        pages.collect()
    }

    fn table_anywhere(&mut self, title: &str, build: &dyn Fn(f64) -> Table) -> bool {
        for sheet in &mut self.sheets {
            for index in slots::order(&sheet.slots) {
                let width = sheet.slots[index].area.width();
                let table = build(width);
                if table.rows.is_empty() {
                    return true;
                }
                if table.width() > width + 0.01 || title_width(title) > width {
                    continue;
                }
                let table = fit::unfolded(fit::stretched(table, width));
                if TITLED + table.height(table.rows.len()) <= sheet.slots[index].room() {
                    sheet.put_rows(self.set, index, title, &table, 0, table.rows.len());
                    return true;
                }
            }
        }
        false
    }

    fn notes_anywhere(&mut self, title: &str, notes: &[(String, String)]) -> bool {
        for sheet in &mut self.sheets {
            for index in slots::order(&sheet.slots) {
                let (width, room) = (sheet.slots[index].area.width(), sheet.slots[index].room());
                if width >= 60.0 && title_width(title) <= width && TITLED + notes_height(notes, width) <= room {
                    sheet.put_notes(index, title, notes, false);
                    return true;
                }
            }
        }
        false
    }

    /// Puts a table's rows into as many slots as it needs.
    fn rows(&mut self, title: &str, table: &Table) {
        let mut from = 0;
        while from < table.rows.len() {
            let head = TITLED + table.height(0);
            let fitting = ((self.room() - head) / ROW).floor().max(0.0) as usize;
            let to = cut(table, from, fitting, self.is_fresh());
            if to == from {
                self.next_slot();
                continue;
            }
            let (index, set) = (self.current, self.set);
            let shown = fit::continued(table, from);
            if let Some(sheet) = self.sheets.last_mut() {
                sheet.put_rows(set, index, title, &shown, from, to);
            }
            from = to;
            if from < table.rows.len() {
                self.next_slot();
            }
        }
    }

    /// Makes sure that the last page is one of the flow's own.
    fn ready(&mut self) {
        if self.current == usize::MAX {
            self.open_page();
        }
    }

    fn open_page(&mut self) {
        let mut canvas = self.set.sheet();
        let layer = canvas.layer(Canvas::ROOT, "tables");
        let slots = slots::columns(&canvas);
        let scale = if self.sheets.is_empty() { self.heads.scale.clone() } else { "\u{2013}".to_owned() };
        self.sheets.push(Sheet { canvas, layer, slots, scale });
        self.current = 0;
    }

    fn next_slot(&mut self) {
        let count = self.sheets.last().map_or(0, |sheet| sheet.slots.len());
        if self.current + 1 < count {
            self.current += 1;
        } else {
            self.open_page();
        }
    }

    fn slot(&self) -> Option<&Slot> {
        self.sheets.last().and_then(|sheet| sheet.slots.get(self.current))
    }

    fn width(&self) -> f64 {
        self.slot().map_or(100.0, |slot| slot.area.width())
    }

    fn room(&self) -> f64 {
        self.slot().map_or(0.0, Slot::room)
    }

    fn is_fresh(&self) -> bool {
        self.slot().is_some_and(Slot::is_fresh)
    }
}

impl Sheet {
    fn put_rows(&mut self, set: &Set<'_>, index: usize, title: &str, table: &Table, from: usize, to: usize) {
        let Some(slot) = self.slots.get_mut(index) else { return };
        heading(&mut self.canvas, slot, title, from > 0);
        let corner = PaperPoint::new(slot.area.left, slot.top + TITLED);
        slot.top = table.draw_rows(&mut self.canvas, self.layer, corner, set.solved.show, from, to) + AFTER;
    }

    fn put_notes(&mut self, index: usize, title: &str, list: &[(String, String)], continued: bool) {
        let Some(slot) = self.slots.get_mut(index) else { return };
        heading(&mut self.canvas, slot, title, continued);
        let place = PaperPoint::new(slot.area.left, slot.top + TITLED + 2.8);
        let next = notes::list(&mut self.canvas, self.layer, place, list, slot.area.width());
        slot.top = next - PITCH + AFTER;
    }
}

fn heading(canvas: &mut Canvas, slot: &Slot, title: &str, continued: bool) {
    let after = if continued { "continued" } else { "" };
    let style = Style::body().bold().sized(TITLE);
    let room = slot.area.width() - if continued { 28.0 } else { 0.0 };
    let title = title_block::shortened(title, room, &style);
    title_block::heading(canvas, slot.area.left, slot.top + TITLE, &title, after);
}

fn title_width(title: &str) -> f64 {
    lettering_width(title, TITLE, Weight::SemiBold)
}

/// A note as two, the first as long as it fits; `None` when not one of its words does, or all do.
fn parted(
    (lead, sentence): &(String, String),
    fits: impl Fn(&[(String, String)]) -> bool,
) -> Option<((String, String), (String, String))> {
    let words: Vec<&str> = sentence.split(' ').collect();
    let first = |count: usize| (lead.clone(), words[..count].join(" "));
    let counts: Vec<usize> = (1..words.len()).collect();
    let most = counts.partition_point(|&count| fits(&[first(count)]));
    (most > 0).then(|| (first(most), (lead.clone(), words[most..].join(" "))))
}

fn notes_height(list: &[(String, String)], width: f64) -> f64 {
    // The first baseline lies a capital's height under the top.
    notes::list_height(list, width) - PITCH + BODY + 1.5
}

/// Where to cut a table of which `fitting` more rows fit: at the end of a group if that leaves no great gap, else
/// between rows; never inside a row of several lines, and not so that a row or two stand alone. `from` when the rest
/// should start in the next slot.
fn cut(table: &Table, from: usize, fitting: usize, fresh: bool) -> usize {
    let count = table.rows.len();
    if from + fitting >= count {
        return count;
    }
    // A short table, or a short rest, starts in the next slot rather than leave a row or two behind.
    if !fresh && (fitting < 4 || count - from <= KEPT_WHOLE) {
        return from;
    }
    let fitting = if fitting > 6 { fitting.min(count - from - 3) } else { fitting };
    let whole = |to: &usize| !table.goes_on(*to);
    let group = |to: &usize| table.breaks.contains(&(to - 1));
    let latest = from + fitting;
    let by_group = (from + fitting.div_ceil(2).max(1)..=latest).rev().find(|to| group(to) && whole(to));
    let by_row = (from + 1..=latest).rev().find(whole);
    by_group.or(by_row).unwrap_or(if fresh { latest.max(from + 1) } else { from })
}

#[cfg(test)]
mod tests {
    use super::parted;

    #[test]
    fn a_note_too_long_for_a_column_goes_on_and_loses_no_word() {
        let note = ("Weight".to_owned(), "one two three four five".to_owned());
        let short = |notes: &[(String, String)]| notes.iter().all(|(_, words)| words.len() <= 13);
        let (first, rest) = parted(&note, short).expect("parted");
        assert_eq!((first.1.as_str(), rest.1.as_str()), ("one two three", "four five"));
        assert_eq!(first.0, rest.0);
        assert!(parted(&note, |_| false).is_none());
    }
}
