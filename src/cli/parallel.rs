//! Work spread over the machine's cores, answers in the order of the questions.

use std::num::NonZero;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// What `work` answers for each item, in the order of the items.
pub fn map<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let cores = thread::available_parallelism().map_or(1, NonZero::get).min(items.len());
    if cores < 2 {
        return items.iter().map(work).collect();
    }
    let next = AtomicUsize::new(0);
    let answers: Vec<Mutex<Option<R>>> = items.iter().map(|_| Mutex::new(None)).collect();
    thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                while let Some(index) = Some(next.fetch_add(1, Ordering::Relaxed)).filter(|index| *index < items.len())
                {
                    let answer = work(&items[index]);
                    if let Ok(mut slot) = answers[index].lock() {
                        *slot = Some(answer);
                    }
                }
            });
        }
    });
    // A worker that panicked has ended the program when the scope closed, so that every answer is there.
    answers.into_iter().filter_map(|slot| slot.into_inner().ok().flatten()).collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn answers_keep_the_order_of_the_questions() {
        let items: Vec<u64> = (0..500).collect();
        let answers = super::map(&items, |n| n * n);
        assert!(answers.iter().enumerate().all(|(index, answer)| *answer == (index * index) as u64));
        assert!(super::map(&[] as &[u8], |n| *n).is_empty());
    }
}
