//! A seeded generator of numbers, one for each texture by its name: adding a thing moves nothing else.
//!
//! Only whole-number steps and plain sums, so that every machine draws the same picture.

/// A named stream of numbers (splitmix64).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    /// The stream of a name (FNV-1a of its bytes).
    pub fn named(name: &str) -> Chance {
        let start = 0xcbf2_9ce4_8422_2325_u64;
        Chance(name.bytes().fold(start, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 up to but not 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Between two numbers.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// A whole number below `count`; 0 for none.
    pub fn below(&mut self, count: usize) -> usize {
        ((self.share() * count as f64) as usize).min(count.saturating_sub(1))
    }

    /// An index, each as likely as its weight.
    pub fn weighted(&mut self, weights: &[u32]) -> usize {
        let total: u32 = weights.iter().sum();
        let mut left = self.share() * f64::from(total);
        for (index, weight) in weights.iter().enumerate() {
            left -= f64::from(*weight);
            if left < 0.0 {
                return index;
            }
        }
        weights.len().saturating_sub(1)
    }

    /// Whether something happens that does so in this share of cases.
    pub fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// About a middle, with a spread (the standard deviation): the sum of twelve even numbers, so no logarithms.
    pub fn near(&mut self, middle: f64, spread: f64) -> f64 {
        let sum: f64 = (0..12).map(|_| self.share()).sum();
        middle + (sum - 6.0) * spread
    }
}

#[cfg(test)]
mod tests {
    use super::Chance;

    #[test]
    fn the_same_name_gives_the_same_numbers_and_another_name_others() {
        let take =
            |name| (0..4).map(|_| 0).scan(Chance::named(name), |c, _: i32| Some(c.below(1000))).collect::<Vec<_>>();
        assert_eq!(take("stone"), take("stone"));
        assert_ne!(take("stone"), take("tile"));
    }

    #[test]
    fn numbers_keep_to_their_bounds() {
        let mut chance = Chance::named("bounds");
        for _ in 0..1000 {
            assert!((2.0..3.0).contains(&chance.between(2.0, 3.0)));
            assert!(chance.below(3) < 3 && chance.weighted(&[1, 0, 2]) != 1);
        }
    }
}
