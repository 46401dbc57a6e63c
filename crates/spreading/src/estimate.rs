//! How long a lay will be before it has been looked for.

use std::collections::BTreeMap;

use lay::LayError;
use trade::Length;

use crate::cut_order::ClothJob;
use crate::plan::PlyLength;

/// A first guess of how much longer a lay is than its bound, until lays of this cloth have been found.
/// Every plan that is made with it has its lays searched and is then made again.
const FIRST_GUESS: f64 = 1.15;

/// What one pair of a size takes at least.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rate {
    /// Its pieces' area over the width of the cloth.
    area: f64,
    /// Its straight sides on the fuller finished edge.
    edge: f64,
    /// Its longest piece.
    longest: f64,
}

/// The lengths of lays: those that were found, and for all others the lower bound made longer by as
/// much as the lays found with about as many pairs are longer than theirs.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimates {
    rates: Vec<Rate>,
    /// Whether the edges decide how long the order's lays are, and not the area.
    by_edge: bool,
    found: BTreeMap<Vec<u32>, Length>,
    longest: Length,
    only_found: bool,
}

impl Estimates {
    /// Estimates for one cloth of an order, from the bounds of one pair of each size. A ply may be no
    /// longer than the table less its ends.
    ///
    /// # Errors
    /// When a single pair cannot be laid on the cloth, and why.
    pub fn new(job: &ClothJob<'_>) -> Result<Self, (Vec<u32>, LayError)> {
        let mut rates = Vec::with_capacity(job.kinds.len());
        for number in 0..job.kinds.len() {
            let mut one = vec![0; job.kinds.len()];
            one[number] = 1;
            let bounds = match lay::bounds(&job.spread(&one).problem) {
                Ok(bounds) => bounds,
                Err(why) => return Err((one, why)),
            };
            rates.push(Rate {
                area: bounds.area.to_mm(),
                edge: bounds.segment.to_mm(),
                longest: bounds.longest.to_mm(),
            });
        }
        let all = |of: fn(&Rate) -> f64| -> f64 {
            let pairs = rates.iter().zip(&job.kinds);
            pairs
                .map(|(rate, kind)| of(rate) * f64::from(kind.pairs))
                .sum()
        };
        Ok(Self {
            by_edge: all(|rate| rate.edge) > all(|rate| rate.area),
            rates,
            found: BTreeMap::new(),
            longest: job.limits.table - job.limits.end_loss * 2.0,
            only_found: false,
        })
    }

    /// Takes in how long a lay really is.
    pub fn learn(&mut self, pairs: &[u32], length: Length) {
        self.found.insert(pairs.to_vec(), length);
    }

    /// Whether this lay was found.
    #[must_use]
    pub fn is_found(&self, pairs: &[u32]) -> bool {
        self.found.contains_key(pairs)
    }

    /// The same, but of lays that were found alone.
    #[must_use]
    pub fn of_found(&self) -> Self {
        Self {
            only_found: true,
            ..self.clone()
        }
    }

    /// What area and edges take at least.
    fn at_least(&self, pairs: &[u32]) -> f64 {
        let sum = |of: fn(&Rate) -> f64| -> f64 {
            let pairs = self.rates.iter().zip(pairs);
            pairs.map(|(rate, n)| of(rate) * f64::from(*n)).sum()
        };
        sum(|rate| rate.area).max(sum(|rate| rate.edge))
    }

    /// How much longer lays of so many pairs are than that: as those found with the number of pairs
    /// nearest to it.
    fn usual(&self, wanted: u32) -> f64 {
        let nearest = self.found.keys().map(|known| count(known).abs_diff(wanted));
        let Some(nearest) = nearest.min() else {
            return FIRST_GUESS;
        };
        let like: Vec<f64> = self
            .found
            .iter()
            .filter(|(known, _)| count(known).abs_diff(wanted) == nearest)
            .map(|(known, length)| length.to_mm() / self.at_least(known))
            .collect();
        like.iter().sum::<f64>() / like.len() as f64
    }
}

impl PlyLength for Estimates {
    fn of(&self, pairs: &[u32]) -> Option<Length> {
        let length = match self.found.get(pairs) {
            Some(found) => *found,
            None if self.only_found => return None,
            None => {
                let longest = self.rates.iter().zip(pairs).filter(|(_, n)| **n > 0);
                let longest = longest.map(|(rate, _)| rate.longest).fold(0.0, f64::max);
                Length::mm((self.at_least(pairs) * self.usual(count(pairs))).max(longest))
            }
        };
        (length <= self.longest).then_some(length)
    }

    fn rate(&self, size: usize) -> Length {
        let rate = self.rates.get(size);
        let rate = rate.map_or(0.0, |rate| if self.by_edge { rate.edge } else { rate.area });
        Length::mm(rate)
    }

    fn factor(&self, pairs_in_ply: u32) -> f64 {
        let found = self.found.iter();
        found
            .filter(|(pairs, _)| count(pairs) == pairs_in_ply)
            .map(|(pairs, length)| {
                let rates = pairs.iter().enumerate();
                let rates: f64 = rates
                    .map(|(size, n)| self.rate(size).to_mm() * f64::from(*n))
                    .sum();
                length.to_mm() / rates
            })
            .fold(self.usual(pairs_in_ply), f64::min)
    }
}

/// The pairs in one ply.
fn count(pairs: &[u32]) -> u32 {
    pairs.iter().sum()
}
