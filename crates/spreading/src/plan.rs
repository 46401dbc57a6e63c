//! Which sizes lie in which lay, and how many plies of it: the order cut exactly with the least cloth.
//!
//! A plan is a few lays; each holds some pairs of each size in every ply, and has some plies. The
//! product of the two, summed over the lays, has to be what was ordered, neither more nor less. That
//! is a small integer program with a product in it. It is solved exactly, by branch and bound, in the
//! order in which a choice decides most: how many plies in all (fewer lose fewer ends), how many in each
//! lay, how many pairs in a ply of each, and then size by size, since for stated plies each size alone
//! has only few ways to be divided over the lays. Each step is left out when what it takes at least is no
//! less than the best plan so far.

use std::ops::RangeInclusive;

use trade::Length;

/// What is to be planned.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// The pairs wanted of each size.
    pub wanted: Vec<u32>,
    /// The most plies in one lay.
    pub most_plies: u32,
    /// The most pairs in one lay.
    pub most_pairs: u32,
    /// How many lays there may be.
    pub lays: RangeInclusive<usize>,
    /// What is lost at both ends of a ply together.
    pub ends: Length,
}

/// What a ply takes.
pub trait PlyLength {
    /// The length of a ply with so many pairs of each size, without its ends; `None` where no such ply
    /// can be laid.
    fn of(&self, pairs: &[u32]) -> Option<Length>;

    /// What one pair of a size takes at least, up to the factor.
    fn rate(&self, size: usize) -> Length;

    /// A ply of so many pairs takes no less than this times the rates of its pairs.
    fn factor(&self, pairs_in_ply: u32) -> f64;
}

/// One lay of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedLay {
    /// The pairs of each size in every ply.
    pub pairs: Vec<u32>,
    /// How many plies.
    pub plies: u32,
    /// The length of a ply without its ends.
    pub length: Length,
}

impl PlannedLay {
    /// The pairs in one ply.
    #[must_use]
    pub fn pairs_in_ply(&self) -> u32 {
        self.pairs.iter().sum()
    }
}

/// Lays that cut an order exactly.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The lays, the one with the most plies first.
    pub lays: Vec<PlannedLay>,
    /// The cloth of all plies, their ends included.
    pub cloth: Length,
}

/// The best plan for each number of lays.
#[derive(Clone, Debug, PartialEq)]
pub struct Plans {
    /// The best plan of each number of lays for which there is one, fewest first.
    pub of_lays: Vec<Plan>,
    /// Whether every possibility was weighed: then no plan takes less cloth.
    pub proved: bool,
    /// By the rates and factors no plan takes less than this.
    pub no_less: Length,
}

impl Plans {
    /// The plan that takes the least cloth; of several, the one with the fewest lays.
    #[must_use]
    pub fn best(&self) -> Option<&Plan> {
        let mut best: Option<&Plan> = None;
        for plan in &self.of_lays {
            if best.is_none_or(|best| plan.cloth < best.cloth - SAME) {
                best = Some(plan);
            }
        }
        best
    }
}

/// Cloth that differs by less is the same cloth.
const SAME: Length = Length::mm(0.01);

/// How many combinations are weighed before a search is broken off, for each number of lays.
const MOST_STEPS: u64 = 4_000_000;

/// Finds the plan of least cloth for each number of lays asked for.
#[must_use]
pub fn plan(task: &Task, cost: &dyn PlyLength) -> Plans {
    let sizes: Vec<usize> = (0..task.wanted.len())
        .filter(|&size| task.wanted[size] > 0)
        .collect();
    let pairs: u32 = task.wanted.iter().sum();
    let mut plans = Plans {
        of_lays: Vec::new(),
        proved: true,
        no_less: Length::ZERO,
    };
    if sizes.is_empty() || task.most_pairs == 0 || task.most_plies == 0 {
        return plans;
    }
    let factors = (1..=task.most_pairs).map(|pairs| cost.factor(pairs));
    let factors: Vec<f64> = std::iter::once(f64::INFINITY).chain(factors).collect();
    let lowest = factors.iter().copied().fold(f64::INFINITY, f64::min);
    let mut rates: Vec<(Length, u32)> = sizes
        .iter()
        .map(|&size| (cost.rate(size), task.wanted[size]))
        .collect();
    rates.sort_by(|a, b| a.0.total_cmp(&b.0));
    let least = rates.iter().fold(Length::ZERO, |sum, (rate, pairs)| {
        sum + *rate * (lowest * f64::from(*pairs))
    });
    plans.no_less = least + task.ends * f64::from(pairs.div_ceil(task.most_pairs));
    for lays in task.lays.clone().filter(|lays| *lays > 0) {
        let mut search = Search {
            task,
            cost,
            sizes: &sizes,
            pairs,
            rates: &rates,
            factors: &factors,
            least,
            best: None,
            steps: 0,
        };
        search.of(lays);
        plans.proved &= search.steps < MOST_STEPS;
        plans.of_lays.extend(search.best);
    }
    plans
}

struct Search<'a> {
    task: &'a Task,
    cost: &'a dyn PlyLength,
    /// The sizes that are wanted at all.
    sizes: &'a [usize],
    pairs: u32,
    /// Rate and pairs of each of them, the smallest rate first.
    rates: &'a [(Length, u32)],
    /// The factor of each number of pairs in a ply.
    factors: &'a [f64],
    /// What any plan takes at least, without ends.
    least: Length,
    best: Option<Plan>,
    steps: u64,
}

/// The ways one size can be divided over the lays.
struct Division {
    size: usize,
    ways: Vec<Vec<u32>>,
}

/// Plies of each lay and pairs in one of them, and what that takes at least.
struct Frame<'f> {
    plies: &'f [u32],
    loads: &'f [u32],
    floor: Length,
}

impl Search<'_> {
    fn of(&mut self, lays: usize) {
        let Ok(count) = u32::try_from(lays) else {
            return;
        };
        let fewest = self.pairs.div_ceil(self.task.most_pairs).max(count);
        let most = self.pairs.min(count.saturating_mul(self.task.most_plies));
        for total in fewest..=most {
            if self.over(self.least + self.task.ends * f64::from(total)) {
                return;
            }
            self.divide_plies(total, lays, &mut Vec::with_capacity(lays));
        }
    }

    /// Whether nothing that takes so much at least can be better, or the search has to end.
    fn over(&self, floor: Length) -> bool {
        let reached = self
            .best
            .as_ref()
            .is_some_and(|best| best.cloth <= floor + SAME);
        reached || self.steps >= MOST_STEPS
    }

    /// Divides the plies over the lays in every way, no lay with more than the one before.
    fn divide_plies(&mut self, left: u32, lays: usize, plies: &mut Vec<u32>) {
        self.steps += 1;
        if self.steps >= MOST_STEPS {
            return;
        }
        if lays == 0 {
            self.divide_pairs(plies);
            return;
        }
        let Ok(count) = u32::try_from(lays) else {
            return;
        };
        let most = plies
            .last()
            .copied()
            .unwrap_or(self.task.most_plies)
            .min((left + 1).saturating_sub(count));
        for here in left.div_ceil(count)..=most {
            plies.push(here);
            self.divide_plies(left - here, lays - 1, plies);
            plies.pop();
        }
    }

    /// For stated plies: first every size alone, then how many pairs lie in a ply of each lay.
    fn divide_pairs(&mut self, plies: &[u32]) {
        let mut divisions = Vec::with_capacity(self.sizes.len());
        for &size in self.sizes {
            let mut ways = Vec::new();
            self.ways(self.task.wanted[size], plies, &mut Vec::new(), &mut ways);
            if ways.is_empty() {
                return;
            }
            divisions.push(Division { size, ways });
        }
        divisions.sort_by_key(|division| division.ways.len());
        self.loads(
            plies,
            &divisions,
            self.pairs,
            &mut Vec::with_capacity(plies.len()),
        );
    }

    /// Every number of pairs in a ply of each lay with which all pairs are cut.
    fn loads(&mut self, plies: &[u32], divisions: &[Division], left: u32, loads: &mut Vec<u32>) {
        self.steps += 1;
        let Some(&here) = plies.get(loads.len()) else {
            if left == 0 {
                self.divide_sizes(plies, divisions, loads);
            }
            return;
        };
        // Each later lay holds one pair at least and as many as allowed at most.
        let later: u32 = plies[loads.len() + 1..].iter().sum();
        let most = left.saturating_sub(later) / here;
        let fewest = left
            .saturating_sub(later * self.task.most_pairs)
            .div_ceil(here);
        // Of two lays with as many plies the first holds no fewer.
        let tied = loads.last().filter(|_| plies[loads.len() - 1] == here);
        let most = most.min(tied.copied().unwrap_or(self.task.most_pairs));
        for pairs in (fewest.max(1)..=most.min(self.task.most_pairs)).rev() {
            loads.push(pairs);
            self.loads(plies, divisions, left - pairs * here, loads);
            loads.pop();
        }
    }

    fn divide_sizes(&mut self, plies: &[u32], divisions: &[Division], loads: &[u32]) {
        let frame = Frame {
            plies,
            loads,
            floor: self.floor(plies, loads),
        };
        if self.over(frame.floor) {
            return;
        }
        let mut lays = vec![vec![0; self.task.wanted.len()]; plies.len()];
        let same = |two: usize| plies[two] == plies[two + 1] && loads[two] == loads[two + 1];
        let tied = (0..plies.len() - 1).map(same).collect();
        self.combine(&frame, divisions, &mut lays, tied);
    }

    /// What plies and pairs in them take at least: the smallest sizes lie in the lays with the highest
    /// factors, which makes the sum of the products as small as it can be.
    fn floor(&self, plies: &[u32], loads: &[u32]) -> Length {
        let mut places: Vec<(f64, u32)> = plies
            .iter()
            .zip(loads)
            .map(|(plies, pairs)| (self.factors[*pairs as usize], plies * pairs))
            .collect();
        places.sort_by(|a, b| b.0.total_cmp(&a.0));
        let plies: u32 = plies.iter().sum();
        let mut floor = self.task.ends * f64::from(plies);
        let mut rates = self.rates.iter().copied();
        let mut next = rates.next();
        for (factor, mut free) in places {
            while let Some((rate, pairs)) = next.filter(|_| free > 0) {
                let here = pairs.min(free);
                floor += rate * (factor * f64::from(here));
                free -= here;
                next = if here < pairs {
                    Some((rate, pairs - here))
                } else {
                    rates.next()
                };
            }
        }
        floor
    }

    /// Every way to cut so many pairs of one size with these plies.
    fn ways(
        &mut self,
        wanted: u32,
        plies: &[u32],
        so_far: &mut Vec<u32>,
        ways: &mut Vec<Vec<u32>>,
    ) {
        self.steps += 1;
        let Some((&here, rest)) = plies.split_first() else {
            if wanted == 0 {
                ways.push(so_far.clone());
            }
            return;
        };
        // The last lay has to take what is left.
        if rest.is_empty() && !wanted.is_multiple_of(here) {
            return;
        }
        for pairs in (0..=(wanted / here).min(self.task.most_pairs)).rev() {
            so_far.push(pairs);
            self.ways(wanted - pairs * here, rest, so_far, ways);
            so_far.pop();
        }
    }

    /// Adds one size after another. `tied` says of each lay whether it is still the same as the next:
    /// of two lays alike only one order is tried.
    fn combine(
        &mut self,
        frame: &Frame<'_>,
        left: &[Division],
        lays: &mut Vec<Vec<u32>>,
        tied: Vec<bool>,
    ) {
        let Some((division, rest)) = left.split_first() else {
            self.weigh(frame.plies, lays);
            return;
        };
        for way in &division.ways {
            self.steps += 1;
            if self.over(frame.floor) {
                return;
            }
            let turned = |(tied, two): (&bool, &[u32])| *tied && two[0] < two[1];
            if tied.iter().zip(way.windows(2)).any(turned) {
                continue;
            }
            let mut fits = true;
            for ((lay, pairs), load) in lays.iter_mut().zip(way).zip(frame.loads) {
                lay[division.size] = *pairs;
                fits &= lay.iter().sum::<u32>() <= *load;
            }
            if fits {
                let still = |(tied, two): (&bool, &[u32])| *tied && two[0] == two[1];
                let tied = tied.iter().zip(way.windows(2)).map(still).collect();
                self.combine(frame, rest, lays, tied);
            }
            for lay in lays.iter_mut() {
                lay[division.size] = 0;
            }
        }
    }

    fn weigh(&mut self, plies: &[u32], lays: &[Vec<u32>]) {
        let mut cloth = Length::ZERO;
        let mut planned = Vec::with_capacity(lays.len());
        for (pairs, &plies) in lays.iter().zip(plies) {
            let Some(length) = self.cost.of(pairs) else {
                return;
            };
            cloth += (length + self.task.ends) * f64::from(plies);
            planned.push(PlannedLay {
                pairs: pairs.clone(),
                plies,
                length,
            });
        }
        if self
            .best
            .as_ref()
            .is_none_or(|best| cloth < best.cloth - SAME)
        {
            self.best = Some(Plan {
                lays: planned,
                cloth,
            });
        }
    }
}
