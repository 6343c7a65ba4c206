//! The levelling sheet, for the builder: the feet of the whole run from above, each with its height; the floor along each leg, its
//! falls drawn larger than they are; every foot in a table with what it carries.

mod bends;
mod lanes;
mod notes;
mod plan;
mod profile;
mod table;

use super::canvas::Canvas;
use super::flow::{Flow, Heads};
use super::frame::{self, Area, MARGIN};
use super::scale::{STANDARD, Scale};
use super::set::{Kind, Set};
use super::title_block;
use crate::drawing::Page;
use crate::geometry::PaperPoint;

/// Largest scale of the plan: a foot needs no more.
const LARGEST: Scale = Scale(8);
/// Plan and profiles share a page down to this scale; smaller ones go on pages of their own.
const SMALLEST_SHARED: Scale = Scale(32);
/// And down to this one where the tables then find room on it as well.
const SMALLEST_WITH_TABLES: Scale = Scale(24);
/// White between two views, mm.
const BETWEEN: f64 = 8.0;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let views = together(set).unwrap_or_else(|| apart(set));
    let heads =
        Heads { title: "Levelling".to_owned(), document: "Levelling plan".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::beside(set, kind, heads, views);
    flow.notes("Before levelling", &notes::list(set));
    for leg in 0..set.solved.legs.len() {
        table::add(&mut flow, set, leg);
    }
    flow.finish()
}

/// Where views lie on one page: the plan's corner, the profiles' corners, and what is left for tables.
struct Layout {
    plan: PaperPoint,
    profiles: Vec<PaperPoint>,
    left: Vec<Area>,
}

/// All views on one page at one scale; `None` where they don't fit.
fn together(set: &Set<'_>) -> Option<Vec<(Canvas, Vec<Area>, String)>> {
    let scales = || STANDARD.iter().copied().filter(|scale| *scale >= LARGEST && *scale <= SMALLEST_SHARED);
    let mut canvas = set.sheet();
    let layouts = |scale: Scale| {
        let found = [beside(set, &canvas, scale), under(set, &canvas, scale)];
        found.into_iter().flatten().map(move |layout| (scale, layout))
    };
    // A smaller scale, where that lets the tables share the page.
    let shared = scales().filter(|scale| *scale <= SMALLEST_WITH_TABLES).flat_map(layouts);
    let mut shared = shared.filter(|(_, layout)| table::fits(set, &layout.left, &notes::list(set)));
    let list = notes::list(set);
    let (scale, mut layout) = match shared.next() {
        Some(found) => found,
        None => {
            // The notes alone share the page, so that no leg's table stands before another's.
            let (scale, mut layout) = scales().flat_map(layouts).next()?;
            layout.left.sort_by(|a, b| b.height().total_cmp(&a.height()));
            layout.left.truncate(1);
            layout.left.iter_mut().for_each(|area| area.bottom = area.bottom.min(area.top + noted(&list, area)));
            (scale, layout)
        }
    };
    if let ([right, left], 1) = (layout.left.as_mut_slice(), set.solved.legs.len())
        && left.height() > right.height()
        && table::fits(set, &[*left], &[])
    {
        // The notes under the profile, the table under the plan.
        right.bottom = right.bottom.min(right.top + noted(&list, right));
    }
    plan::draw(&mut canvas, set, scale, layout.plan);
    for (leg, corner) in layout.profiles.iter().enumerate() {
        profile::draw(&mut canvas, set, leg, scale, *corner);
    }
    Some(vec![(canvas, layout.left, words(set, scale))])
}

/// Height that the notes take in an area, mm.
fn noted(list: &[(String, String)], area: &Area) -> f64 {
    9.0 + super::notes::list_height(list, area.width())
}

/// The scale as the title block has it.
fn words(set: &Set<'_>, scale: Scale) -> String {
    let mut times: Vec<_> = (0..set.solved.legs.len()).map(|leg| profile::times(set, leg, scale)).collect();
    times.sort_unstable();
    times.dedup();
    if times.iter().all(|up| *up <= 1) {
        return scale.words();
    }
    let times: Vec<String> = times.iter().map(|up| format!("\u{d7}{up}")).collect();
    format!("{}, heights {}", scale.words(), times.join(", "))
}

/// The plan over the profiles.
fn under(set: &Set<'_>, canvas: &Canvas, scale: Scale) -> Option<Layout> {
    let (inside, block) = (frame::inside(canvas), title_block::corner(canvas));
    let floor = |right: f64| if right > block.x - MARGIN { block.y - MARGIN } else { inside.bottom };
    let (wide, high) = plan::size(set, scale);
    let mut y = inside.top + high;
    if wide > inside.width() || y > floor(inside.left + wide) {
        return None;
    }
    let mut profiles = Vec::new();
    for leg in 0..set.solved.legs.len() {
        let (wide, high) = profile::size(set, leg, scale);
        y += BETWEEN;
        if wide > inside.width() || y + high > floor(inside.left + wide) {
            return None;
        }
        // One leg's profile lies right under its plan.
        let along = if set.solved.legs.len() == 1 { (plan::margin(set) - profile::BEGIN).max(0.0) } else { 0.0 };
        profiles.push(PaperPoint::new(inside.left + along, y));
        y += high;
    }
    Some(Layout { plan: PaperPoint::new(inside.left, inside.top), profiles, left: left_under(canvas, y + BETWEEN) })
}

/// The plan at the left, the profiles in a column at the right.
fn beside(set: &Set<'_>, canvas: &Canvas, scale: Scale) -> Option<Layout> {
    let (inside, block) = (frame::inside(canvas), title_block::corner(canvas));
    let (wide, high) = plan::size(set, scale);
    let sizes: Vec<(f64, f64)> = (0..set.solved.legs.len()).map(|leg| profile::size(set, leg, scale)).collect();
    let column = sizes.iter().map(|size| size.0).fold(0.0, f64::max);
    let tall: f64 = sizes.iter().map(|size| size.1 + BETWEEN).sum::<f64>() - BETWEEN;
    let x = (inside.right - column).min(block.x + 2.0).max(inside.left + wide + BETWEEN);
    let below = if inside.left + wide > block.x - MARGIN { block.y - MARGIN } else { inside.bottom };
    if x + column > inside.right || inside.top + high > below || inside.top + tall > block.y - MARGIN {
        return None;
    }
    let mut y = inside.top;
    let profiles = sizes
        .iter()
        .map(|size| {
            let corner = PaperPoint::new(x, y);
            y += size.1 + BETWEEN;
            corner
        })
        .collect();
    let mut left = vec![Area { left: x, top: y, right: inside.right, bottom: block.y - MARGIN }];
    let top = inside.top + high + BETWEEN;
    left.push(Area { left: inside.left, top, right: (x - BETWEEN).min(block.x - MARGIN), bottom: inside.bottom });
    left.retain(|area| area.height() > 20.0);
    Some(Layout { plan: PaperPoint::new(inside.left, inside.top), profiles, left })
}

/// What is free under views that end at `top`: left of the title block and over it.
fn left_under(canvas: &Canvas, top: f64) -> Vec<Area> {
    let (inside, block) = (frame::inside(canvas), title_block::corner(canvas));
    let mut areas = vec![
        Area { left: inside.left, top, right: block.x - MARGIN, bottom: inside.bottom },
        Area { left: block.x + 1.8, top, right: inside.right, bottom: block.y - MARGIN },
    ];
    areas.retain(|area| area.height() > 20.0 && area.width() > 60.0);
    areas
}

/// The plan on a page of its own, the profiles on as many more as they take, each view at its own largest scale.
fn apart(set: &Set<'_>) -> Vec<(Canvas, Vec<Area>, String)> {
    let blank = set.sheet();
    let (inside, block) = (frame::inside(&blank), title_block::corner(&blank));
    let bottom = block.y - MARGIN;
    let fitting = |size: &dyn Fn(Scale) -> (f64, f64)| {
        let fits = |scale: &&Scale| {
            let (wide, high) = size(**scale);
            **scale >= LARGEST && wide <= inside.width() && inside.top + high <= bottom
        };
        STANDARD.iter().find(fits).or(STANDARD.last()).copied().unwrap_or(Scale(100))
    };
    let mut pages = Vec::new();
    let scale = fitting(&|scale| plan::size(set, scale));
    let mut canvas = set.sheet();
    plan::draw(&mut canvas, set, scale, PaperPoint::new(inside.left, inside.top));
    let mut y = inside.top + plan::size(set, scale).1 + BETWEEN;
    let mut scales = scale.words();
    for leg in 0..set.solved.legs.len() {
        let scale = fitting(&|scale| profile::size(set, leg, scale));
        let high = profile::size(set, leg, scale).1;
        if y + high > bottom {
            let full = std::mem::replace(&mut canvas, set.sheet());
            pages.push((full, left_under(&blank, y), std::mem::take(&mut scales)));
            y = inside.top;
        }
        profile::draw(&mut canvas, set, leg, scale, PaperPoint::new(inside.left, y));
        y += high + BETWEEN;
        let own = words(set, scale);
        if !scales.contains(&own) {
            scales = if scales.is_empty() { own } else { format!("{scales}; {own}") };
        }
    }
    pages.push((canvas, left_under(&blank, y), scales));
    pages
}
