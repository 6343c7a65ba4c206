//! A graph of what comes before what: steps that a run doesn't need are bridged, what follows from other arrows is left
//! out, and the order is always the same.

/// The wanted nodes, each after all that comes before it; of those that could come next the one first in the table does.
/// `befores` lists for each node the nodes before it. Nodes on a circle have no order and come last, as in the table.
pub fn order(befores: &[Vec<usize>], wanted: &[usize]) -> Vec<usize> {
    let mut done: Vec<usize> = Vec::new();
    let mut left: Vec<usize> = wanted.to_vec();
    while !left.is_empty() {
        let ready = |node: &usize| bridged(befores, wanted, *node).iter().all(|before| done.contains(before));
        let next = left.iter().position(ready).unwrap_or(0);
        done.push(left.remove(next));
    }
    done
}

/// The wanted nodes that come straight before one: those that no other of them comes after.
pub fn nearest(befores: &[Vec<usize>], wanted: &[usize], node: usize) -> Vec<usize> {
    let all = bridged(befores, wanted, node);
    let follows = |one: usize| all.iter().any(|&other| other != one && comes_before(befores, one, other));
    all.iter().copied().filter(|&one| !follows(one)).collect()
}

/// The wanted nodes that come before one, over unwanted ones that stand between.
fn bridged(befores: &[Vec<usize>], wanted: &[usize], node: usize) -> Vec<usize> {
    let mut found = Vec::new();
    let mut seen = vec![node];
    let mut open: Vec<usize> = befores.get(node).cloned().unwrap_or_default();
    while let Some(one) = open.pop() {
        if seen.contains(&one) {
            continue;
        }
        seen.push(one);
        if wanted.contains(&one) {
            found.push(one);
        } else {
            open.extend(befores.get(one).into_iter().flatten());
        }
    }
    found.sort_unstable();
    found
}

/// Whether one node comes somewhere before another.
fn comes_before(befores: &[Vec<usize>], one: usize, other: usize) -> bool {
    let mut seen = Vec::new();
    let mut open: Vec<usize> = befores.get(other).cloned().unwrap_or_default();
    while let Some(node) = open.pop() {
        if node == one {
            return true;
        }
        if !seen.contains(&node) {
            seen.push(node);
            open.extend(befores.get(node).into_iter().flatten());
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use super::{nearest, order};

    /// 0 before 1 before 2; 0 before 2 too; 3 before 1.
    fn befores() -> Vec<Vec<usize>> {
        vec![vec![], vec![0, 3], vec![0, 1], vec![]]
    }

    #[test]
    fn each_comes_after_what_it_needs_and_the_first_ready_one_is_next() {
        assert_eq!(order(&befores(), &[0, 1, 2, 3]), [0, 3, 1, 2]);
    }

    #[test]
    fn an_arrow_that_follows_from_others_is_left_out() {
        assert_eq!(nearest(&befores(), &[0, 1, 2, 3], 2), [1]);
    }

    #[test]
    fn what_is_not_wanted_is_bridged() {
        assert_eq!(nearest(&befores(), &[0, 2, 3], 2), [0, 3]);
        assert_eq!(order(&befores(), &[2, 3]), [3, 2]);
    }
}
