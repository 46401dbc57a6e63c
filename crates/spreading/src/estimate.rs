//! How long a lay will be before it has been looked for.

use std::collections::BTreeMap;

use lay::LayError;
use trade::Length;

use crate::cut_order::ClothJob;
use crate::plan::PlyLength;

/// A first guess of how much longer a lay is than its bound, until lays of this cloth have been found: where the area
/// decides, and where the finished edges do. Every plan that is made with it has its lays searched and is then made again.
const FIRST_GUESS: f64 = 1.15;
const ON_EDGES: f64 = 1.01;

/// What one pair of a size takes at least.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rate {
    /// By that of the bounds that grow evenly with the pairs which is longest.
    least: f64,
    /// Its longest piece.
    longest: f64,
}

/// The lengths of lays: those that were found, and for all others the lower bound made longer by as
/// much as the lays found with about as many pairs are longer than theirs.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimates {
    rates: Vec<Rate>,
    first_guess: f64,
    found: BTreeMap<Vec<u32>, Length>,
    longest: Length,
    others: Others,
}

/// What is said of a lay that was not found.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Others {
    /// It is as much longer than its bound as those found are.
    Guessed,
    /// It is as short as its bound.
    AtLeast,
    /// There is none.
    None,
}

impl Estimates {
    /// Estimates for one cloth of an order, from the bounds of one pair of each size. A ply may be no
    /// longer than the table less its ends.
    ///
    /// # Errors
    /// When a single pair cannot be laid on the cloth, and why.
    pub fn new(job: &ClothJob<'_>) -> Result<Self, (Vec<u32>, LayError)> {
        let mut rates = Vec::with_capacity(job.kinds.len());
        let mut on_edges = true;
        for number in 0..job.kinds.len() {
            let mut one = vec![0; job.kinds.len()];
            one[number] = 1;
            let bounds = match lay::bounds(&job.spread(&one).problem) {
                Ok(bounds) => bounds,
                Err(why) => return Err((one, why)),
            };
            on_edges &= bounds.edges_decide();
            rates.push(Rate {
                least: bounds.area.max(bounds.segment).max(bounds.lines).to_mm(),
                longest: bounds.longest.to_mm(),
            });
        }
        Ok(Self {
            first_guess: if on_edges { ON_EDGES } else { FIRST_GUESS },
            rates,
            found: BTreeMap::new(),
            longest: job.limits.table - job.limits.end_loss * 2.0,
            others: Others::Guessed,
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
            others: Others::None,
            ..self.clone()
        }
    }

    /// The same, but every lay that was not found is hoped to be as short as its bound.
    #[must_use]
    pub fn hopeful(&self) -> Self {
        Self {
            others: Others::AtLeast,
            ..self.clone()
        }
    }

    /// No lay is shorter than this says, found or not: a search may have missed a shorter one.
    #[must_use]
    pub fn bounds(&self) -> Self {
        Self {
            found: BTreeMap::new(),
            ..self.hopeful()
        }
    }

    /// What the pairs take at least.
    fn at_least(&self, pairs: &[u32]) -> f64 {
        let pairs = self.rates.iter().zip(pairs);
        pairs.map(|(rate, n)| rate.least * f64::from(*n)).sum()
    }

    /// How much longer lays of so many pairs are than that: as those found with the number of pairs
    /// nearest to it.
    fn usual(&self, wanted: u32) -> f64 {
        if self.others == Others::AtLeast {
            return 1.0;
        }
        let nearest = self.found.keys().map(|known| count(known).abs_diff(wanted));
        let Some(nearest) = nearest.min() else {
            return self.first_guess;
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
            None if self.others == Others::None => return None,
            None => {
                let longest = self.rates.iter().zip(pairs).filter(|(_, n)| **n > 0);
                let longest = longest.map(|(rate, _)| rate.longest).fold(0.0, f64::max);
                Length::mm((self.at_least(pairs) * self.usual(count(pairs))).max(longest))
            }
        };
        (length <= self.longest).then_some(length)
    }

    fn rate(&self, size: usize) -> Length {
        Length::mm(self.rates.get(size).map_or(0.0, |rate| rate.least))
    }

    fn factor(&self, pairs_in_ply: u32) -> f64 {
        let found = self.found.iter();
        found
            .filter(|(pairs, _)| count(pairs) == pairs_in_ply)
            .map(|(pairs, length)| length.to_mm() / self.at_least(pairs))
            .fold(self.usual(pairs_in_ply), f64::min)
    }

    fn longest(&self) -> Length {
        self.longest
    }
}

/// The pairs in one ply.
fn count(pairs: &[u32]) -> u32 {
    pairs.iter().sum()
}
