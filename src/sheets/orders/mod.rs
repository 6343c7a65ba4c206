//! One order a supplier: what to buy, how many, what must not be got wrong, with room for a number and a signature.

mod form;
mod lines;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use crate::drawing::Page;
use crate::solve::{Order, Service, Solved};

/// Draws its pages. An order stands in one column where it fits one, so that it can be cut out and sent by itself.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads = Heads { title: "Orders".to_owned(), document: "Order".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::new(set, kind, heads);
    for order in &set.solved.shop.orders {
        add(&mut flow, set, order);
    }
    let left = left_to_trades(set.solved);
    if !left.is_empty() {
        flow.notes("Not ordered here", &left);
    }
    flow.finish()
}

fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, order: &Order) {
    let width = flow.column();
    let table = lines::table(set, order, width);
    let notes = notes(order);
    let whole = Flow::block_height(form::HEIGHT) + Flow::table_height(&table) + Flow::notes_room(&notes, width);
    flow.keep(whole + Flow::CUT_LINE);
    flow.cut_line();
    let title = format!("Order to the {}", order.supplier.words());
    flow.block(&title, form::HEIGHT, &|canvas, layer, area| form::draw(canvas, layer, area, set));
    flow.table(&lines::title(set, order), 0, &|width| lines::table(set, order, width));
    flow.notes("For all of it", &notes);
}

fn notes(order: &Order) -> Vec<(String, String)> {
    order.mind.iter().map(|sentence| ("\u{2013}".to_owned(), sentence.clone())).collect()
}

/// What licensed trades choose and bring.
fn left_to_trades(solved: &Solved) -> Vec<(String, String)> {
    let comes_up = |service: Service| solved.legs.iter().flat_map(|leg| &leg.stubs).any(|stub| stub.service == service);
    let does = |key: &str| solved.shop.sequence.iter().any(|step| step.key == key);
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    let mut notes = Vec::new();
    if does("gas-pipe") {
        let text = "pipe, valves, regulators and connectors are chosen, brought and signed for by a licensed gas fitter; the permit sheet tells the demands.";
        notes.push(note("Gas", text));
    }
    if does("power-cable") {
        notes.push(note(
            "Power",
            "cable, conduit, boxes, outlets and their ground-fault device are chosen and brought by a licensed electrician.",
        ));
    }
    if comes_up(Service::Water) || comes_up(Service::Drain) || does("water-pipe") {
        notes.push(note("Water", "pipe, trap, valves and what keeps them from frost are the plumber\u{2019}s."));
    }
    notes
}
