//! Chance that can be repeated: the same seed gives the same numbers on every machine.

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

/// A generator of the xoshiro256++ family (Blackman and Vigna, "Scrambled linear pseudorandom
/// number generators", ACM TOMS 47, 2021), started from one number by splitmix64.
#[derive(Clone, Debug)]
pub(crate) struct Random(Xoshiro256PlusPlus);

impl Random {
    /// A stream of its own for each seed and each worker.
    pub(crate) fn new(seed: u64, stream: u64) -> Self {
        Self(Xoshiro256PlusPlus::seed_from_u64(
            seed ^ stream.wrapping_mul(0xD1B5_4A32_D192_ED03),
        ))
    }

    /// At least 0, below 1.
    pub(crate) fn unit(&mut self) -> f64 {
        (self.0.next_u64() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Between the two, or the first when the range is empty.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        if high > low {
            low + self.unit() * (high - low)
        } else {
            low
        }
    }

    /// A whole number below `n`; 0 when `n` is 0.
    pub(crate) fn below(&mut self, n: usize) -> usize {
        ((self.unit() * n as f64) as usize).min(n.saturating_sub(1))
    }

    /// From the normal distribution about 0 (Box and Muller 1958).
    pub(crate) fn normal(&mut self, deviation: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.unit()).ln()).sqrt();
        deviation * radius * (std::f64::consts::TAU * self.unit()).cos()
    }

    /// Puts the items in an order of chance.
    pub(crate) fn shuffle<T>(&mut self, items: &mut [T]) {
        for i in (1..items.len()).rev() {
            let j = self.below(i + 1);
            items.swap(i, j);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_numbers_and_streams_differ() {
        let take = |seed, stream| {
            let mut r = Random::new(seed, stream);
            (0..50).map(|_| r.0.next_u64()).collect::<Vec<_>>()
        };
        assert_eq!(take(7, 1), take(7, 1));
        assert_ne!(take(7, 1), take(7, 2));
        assert_ne!(take(7, 1), take(8, 1));
    }

    #[test]
    fn the_numbers_fill_their_range_evenly() {
        let mut r = Random::new(1, 0);
        let n = 20_000;
        let mean = (0..n).map(|_| r.between(-1.0, 3.0)).sum::<f64>() / n as f64;
        // The mean of n such numbers has a standard deviation of 4 / sqrt(12 n) = 0.008.
        assert!((mean - 1.0).abs() < 0.05, "{mean}");
        assert!((0..n).all(|_| r.below(7) < 7));
        assert_eq!(r.below(0), 0);
    }
}
