//! Which sizes lie in which lay, and how many plies of it: the order cut exactly with the least cloth.
//!
//! A plan is a few lays; each holds some pairs of each size in every ply, and has some plies. The
//! product of the two, summed over the lays, has to be what was ordered, neither more nor less. That
//! is a small integer program with a product in it. It begins with plans that can be put together
//! without a search ([`begin`](crate::begin)) and betters them by one ([`search`](crate::search)), which
//! is exact as long as it need not be broken off.
//!
//! A wider limit only adds to what is weighed: every plan belongs to one part of the search, by its
//! fullest ply and its highest lay, each part has its own steps, and the parts come in one order whatever
//! the limits are. So no plan is lost or becomes worse because more is allowed, searched to the end or not.

use std::ops::RangeInclusive;

use trade::Length;

use crate::begin;
use crate::search::{Ground, Search};

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

    /// No ply is longer than this, without its ends.
    fn longest(&self) -> Length;
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
    /// Whether every possibility was weighed: then no plan takes less cloth, and where there is no plan none
    /// keeps the limits.
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
pub(crate) const SAME: Length = Length::mm(0.01);

/// Finds the plan of least cloth for each number of lays asked for.
#[must_use]
pub fn plan(task: &Task, cost: &dyn PlyLength) -> Plans {
    let mut plans = Plans {
        of_lays: Vec::new(),
        proved: true,
        no_less: Length::ZERO,
    };
    let Some(ground) = Ground::new(task, cost) else {
        return plans;
    };
    plans.no_less = ground.no_less();
    let begun = begin::plans(&ground);
    let mut fewer: Option<Plan> = None;
    // Fewer lays than asked for are planned too: parted in two, they are a plan of more.
    for lays in 1..=*task.lays.end() {
        let mut search = Search::new(&ground, lays);
        let known = begun.iter().chain(fewer.as_ref());
        for plan in known.filter_map(|plan| parted(plan, lays)) {
            search.offer(plan);
        }
        let (best, proved) = search.run();
        if task.lays.contains(&lays) {
            plans.proved &= proved;
            plans.of_lays.extend(best.clone());
        }
        fewer = best.or(fewer);
    }
    plans
}

/// A plan with its highest lays spread in two parts until there are so many; `None` where there are more
/// already, or too few plies.
fn parted(plan: &Plan, lays: usize) -> Option<Plan> {
    let mut plan = plan.clone();
    while plan.lays.len() < lays {
        let highest = plan.lays.iter_mut().max_by_key(|lay| lay.plies)?;
        let half = highest.plies / 2;
        if half == 0 {
            return None;
        }
        highest.plies -= half;
        let other = PlannedLay {
            plies: half,
            ..highest.clone()
        };
        plan.lays.push(other);
    }
    plan.lays.sort_by_key(|lay| std::cmp::Reverse(lay.plies));
    (plan.lays.len() == lays).then_some(plan)
}
