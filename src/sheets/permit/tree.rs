//! The pipe as a tree: columns by how far a point is from the source, rows by what hangs on it.

use crate::solve::services::Services;

/// A segment in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Branch {
    /// The segment, by its index.
    pub segment: usize,
    /// Column of its near end; its far end lies one further.
    pub column: usize,
    /// Row of its near end, as a number of rows from the top.
    pub from: f64,
    /// Row of its far end.
    pub to: f64,
}

/// The whole tree.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tree {
    /// Every segment, from the source on.
    pub branches: Vec<Branch>,
    /// How many columns of segments there are.
    pub columns: usize,
    /// How many rows there are.
    pub rows: usize,
    /// Row of the source.
    pub source: f64,
}

/// Lays a sound tree out; `None` for pipe that is no tree, or none at all.
pub fn tree(services: &Services) -> Option<Tree> {
    if services.pipe.is_empty() || !services.faults.is_empty() {
        return None;
    }
    let fed = |point: &str| services.pipe.iter().any(|segment| segment.to == point);
    let source = services.pipe.iter().map(|segment| segment.from.as_str()).find(|from| !fed(from))?;
    let mut tree = Tree::default();
    tree.source = place(services, source, 0, &mut tree)?;
    Some(tree)
}

/// Places all that hangs on a point, and says in which row the point is.
fn place(services: &Services, point: &str, column: usize, tree: &mut Tree) -> Option<f64> {
    /// Deeper than this no house is piped, and a page is not wide enough.
    const DEEPEST: usize = 40;
    if column > DEEPEST {
        return None;
    }
    let mut rows: Vec<(usize, f64)> = Vec::new();
    for (index, segment) in services.pipe.iter().enumerate().filter(|(_, segment)| segment.from == point) {
        tree.columns = tree.columns.max(column + 1);
        let row = place(services, &segment.to, column + 1, tree)?;
        rows.push((index, row));
    }
    let own = match (rows.first(), rows.last()) {
        (Some((_, first)), Some(_)) => *first,
        _ => {
            tree.rows += 1;
            (tree.rows - 1) as f64
        }
    };
    tree.branches.extend(rows.into_iter().map(|(segment, to)| Branch { segment, column, from: own, to }));
    Some(own)
}
