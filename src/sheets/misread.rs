//! Keeps from checkers what they would take for another number.
//!
//! The outside checker reads a lone 11/16, 13/16 or 15/16 as 1 1/16, 1 3/16 or 1 5/16. Such a dimension is drawn like any
//! other, but carries no facts; and where it is a part of a chain, the chain is not offered to be added up.

use std::collections::BTreeSet;

use crate::drawing::{Group, Item, Page};
use crate::units::show::FRACTION_SLASH;

/// Takes the facts off every dimension of a page whose number would be misread.
pub fn withheld(page: &mut Page) {
    withhold(&mut page.root);
}

/// Handles each view by itself: chains belong to one.
fn withhold(group: &mut Group) {
    let mut chains = BTreeSet::new();
    take_misread(group, &mut chains);
    if !chains.is_empty() {
        unchain(group, &chains);
    }
}

fn take_misread(group: &mut Group, chains: &mut BTreeSet<String>) {
    for item in &mut group.items {
        let Item::Group(inner) = item else { continue };
        if fact(inner, "data-view").is_some() {
            withhold(inner);
            continue;
        }
        if fact(inner, "data-dim").is_some() && is_misread(inner) {
            chains.extend(fact(inner, "data-chain").map(str::to_owned));
            inner.facts.clear();
        }
        take_misread(inner, chains);
    }
}

fn unchain(group: &mut Group, chains: &BTreeSet<String>) {
    for item in &mut group.items {
        let Item::Group(inner) = item else { continue };
        if fact(inner, "data-chain").is_some_and(|chain| chains.contains(chain)) {
            inner.facts.retain(|(name, _)| !name.starts_with("data-chain"));
        }
        unchain(inner, chains);
    }
}

fn fact<'g>(group: &'g Group, name: &str) -> Option<&'g str> {
    group.facts.iter().find(|(other, _)| *other == name).map(|(_, value)| value.as_str())
}

/// A number that starts with a fraction of two figures over two.
fn is_misread(group: &Group) -> bool {
    group.items.iter().any(|item| match item {
        Item::Text(text) if text.facts.iter().any(|(name, value)| *name == "data-role" && value == "dimtext") => {
            let content = text.content();
            let figures = content.chars().take_while(char::is_ascii_digit).count();
            figures == 2 && content.chars().nth(2) == Some(FRACTION_SLASH)
        }
        _ => false,
    })
}

#[cfg(test)]
mod tests {
    use super::withheld;
    use crate::drawing::{Group, Item, Page};
    use crate::geometry::PaperPoint;

    fn dimension(number: &str, chain: &str) -> Item {
        let style = crate::drawing::lettering::Style::body().fact("data-role", "dimtext");
        let text = crate::drawing::lettering::set(PaperPoint::new(0.0, 0.0), number, &style);
        let facts = vec![("data-dim", "d1".to_owned()), ("data-chain", chain.to_owned())];
        Item::Group(Group { class: "dim".to_owned(), facts, items: vec![Item::Text(text)] })
    }

    #[test]
    fn only_the_misread_number_and_its_chain_are_withheld() {
        let items =
            vec![dimension("11\u{2044}16\u{2033}", "a"), dimension("3\u{2033}", "a"), dimension("3\u{2033}", "b")];
        let view = Group { class: "view".to_owned(), facts: vec![("data-view", "v".to_owned())], items };
        let root = Group { items: vec![Item::Group(view)], ..Group::default() };
        let mut page = Page {
            name: String::new(),
            title: String::new(),
            width: 1.0,
            height: 1.0,
            stretch: (1.0, 1.0),
            remarks: Vec::new(),
            root,
        };
        withheld(&mut page);
        let Item::Group(view) = &page.root.items[0] else { panic!("a view") };
        let facts: Vec<usize> =
            view.items.iter().map(|item| if let Item::Group(group) = item { group.facts.len() } else { 9 }).collect();
        assert_eq!(facts, [0, 1, 2]);
    }
}
