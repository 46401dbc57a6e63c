//! The search for the plan of least cloth with a given number of lays.
//!
//! It is made in parts: by how many pairs lie in the fullest ply, and how many plies in the highest lay.
//! In each the plies are divided over the lays in every way, fewest plies in all first, since fewer lose
//! fewer ends; [`divide`](crate::divide) then divides the sizes. A part is left out where all it holds
//! takes no less than the best plan so far, and broken off after its own number of steps. Neither depends
//! on parts that come later or on limits, so a wider limit never makes the answer worse.

use trade::Length;

use crate::plan::{Plan, PlannedLay, PlyLength, SAME, Task};
use geometry::tolerance::SAME_MM;

/// How many steps are made with each number of pairs in the fullest ply, for each number of lays.
const MOST_STEPS: u64 = 1_500_000;

/// With more pairs than this in the fullest ply there are fewer steps for each: so full a ply is rare.
const USUAL_PAIRS: u32 = 6;

/// No height of the highest lay gets more than this part of them.
const MOST_OF_ONE_HEIGHT: u64 = 2;

/// What is the same for every number of lays.
pub struct Ground<'a> {
    task: &'a Task,
    cost: &'a dyn PlyLength,
    /// The sizes that are wanted at all, the most wanted first.
    sizes: Vec<usize>,
    pairs: u32,
    /// Rate and pairs of each of them, the smallest rate first.
    rates: Vec<(f64, u32)>,
    /// The factor of each number of pairs in a ply.
    factors: Vec<f64>,
    /// What any plan with no fuller ply takes at least, without ends.
    least: Vec<f64>,
}

impl<'a> Ground<'a> {
    /// `None` where nothing is to be planned or nothing is allowed.
    pub fn new(task: &'a Task, cost: &'a dyn PlyLength) -> Option<Self> {
        let wanted = |size: &usize| task.wanted[*size];
        let mut sizes: Vec<usize> = (0..task.wanted.len()).filter(|s| wanted(s) > 0).collect();
        if sizes.is_empty() || task.most_pairs == 0 || task.most_plies == 0 {
            return None;
        }
        let mut rates: Vec<(f64, u32)> = sizes
            .iter()
            .map(|size| (cost.rate(*size).to_mm(), wanted(size)))
            .collect();
        rates.sort_by(|a, b| a.0.total_cmp(&b.0));
        sizes.sort_by_key(|size| std::cmp::Reverse(wanted(size)));
        let pairs = task
            .wanted
            .iter()
            .fold(0, |sum: u32, n| sum.saturating_add(*n));
        // No ply holds more pairs than were ordered.
        let most_pairs = task.most_pairs.min(pairs);
        let mut factors = vec![f64::INFINITY];
        factors.extend((1..=most_pairs).map(|pairs| cost.factor(pairs)));
        let every: f64 = rates.iter().map(|(rate, n)| rate * f64::from(*n)).sum();
        let mut lowest = f64::INFINITY;
        let least = factors
            .iter()
            .map(|factor| {
                lowest = lowest.min(*factor);
                every * lowest
            })
            .collect();
        Some(Self {
            task,
            cost,
            sizes,
            pairs,
            rates,
            factors,
            least,
        })
    }

    /// By the rates and factors no plan takes less than this.
    pub fn no_less(&self) -> Length {
        let most = self.most_pairs();
        let ends = self.ends() * f64::from(self.pairs.div_ceil(most));
        Length::mm(self.least.last().map_or(0.0, |least| least + ends))
    }

    pub fn wanted(&self) -> &[u32] {
        &self.task.wanted
    }

    pub fn most_pairs(&self) -> u32 {
        self.task.most_pairs.min(self.pairs)
    }

    pub fn most_plies(&self) -> u32 {
        self.task.most_plies
    }

    pub fn most_lays(&self) -> usize {
        *self.task.lays.end()
    }

    /// The length of a ply, where it can be laid.
    pub fn length(&self, pairs: &[u32]) -> Option<Length> {
        self.cost.of(pairs)
    }

    /// The plan of these lays.
    pub fn plan(&self, mut lays: Vec<PlannedLay>) -> Plan {
        lays.sort_by_key(|lay| std::cmp::Reverse(lay.plies));
        let cloth = lays.iter().fold(Length::ZERO, |sum, lay| {
            sum + (lay.length + self.task.ends) * f64::from(lay.plies)
        });
        Plan { lays, cloth }
    }

    pub(crate) fn sizes(&self) -> &[usize] {
        &self.sizes
    }

    pub(crate) fn rate(&self, size: usize) -> f64 {
        self.cost.rate(size).to_mm()
    }

    pub(crate) fn factor(&self, pairs: u32) -> f64 {
        self.factors
            .get(pairs as usize)
            .copied()
            .unwrap_or(f64::INFINITY)
    }

    pub(crate) fn ends(&self) -> f64 {
        self.task.ends.to_mm()
    }

    /// Whether a ply of so many pairs may be short enough, with the smallest sizes in it.
    fn may_fit(&self, pairs: u32) -> bool {
        let mut free = pairs;
        let smallest = self.rates.iter().map(|(rate, n)| {
            let here = free.min(*n);
            free -= here;
            rate * f64::from(here)
        });
        let least = smallest.sum::<f64>() * self.factor(pairs);
        least <= self.cost.longest().to_mm() + SAME.to_mm()
    }

    /// What plies and pairs in them take at least: the smallest sizes lie in the lays with the highest
    /// factors, which makes the sum of the products as small as it can be.
    pub(crate) fn floor(&self, plies: &[u32], loads: &[u32]) -> f64 {
        let mut places: Vec<(f64, u32)> = plies
            .iter()
            .zip(loads)
            .map(|(plies, pairs)| (self.factor(*pairs), plies * pairs))
            .collect();
        places.sort_by(|a, b| b.0.total_cmp(&a.0));
        let plies: u32 = plies.iter().sum();
        let mut floor = self.ends() * f64::from(plies);
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
}

/// Cloth in steps of [`SAME`], so that which of two plans is better never depends on a third.
fn stepped(mm: f64) -> i64 {
    (mm / SAME.to_mm()).round() as i64
}

/// The search with one number of lays.
pub struct Search<'a> {
    pub(crate) ground: &'a Ground<'a>,
    lays: usize,
    best: Option<(i64, Plan)>,
    /// The steps that are left in this part.
    steps: u64,
    proved: bool,
}

impl<'a> Search<'a> {
    pub fn new(ground: &'a Ground<'a>, lays: usize) -> Self {
        Self {
            ground,
            lays,
            best: None,
            steps: 0,
            proved: true,
        }
    }

    /// Takes a plan where it is better than the best so far.
    pub fn offer(&mut self, plan: Plan) {
        let cloth = stepped(plan.cloth.to_mm());
        if self.best.as_ref().is_none_or(|(best, _)| cloth < *best) {
            self.best = Some((cloth, plan));
        }
    }

    /// Searches all parts: the best plan, and whether everything was weighed.
    pub fn run(mut self) -> (Option<Plan>, bool) {
        if let Ok(count) = u32::try_from(self.lays) {
            for most in (1..=self.ground.most_pairs()).rev() {
                if self.ground.may_fit(most) {
                    self.with_fullest(most, count);
                }
            }
        }
        (self.best.map(|(_, plan)| plan), self.proved)
    }

    /// All plans with so many pairs in the fullest ply.
    fn with_fullest(&mut self, most: u32, count: u32) {
        let ground = self.ground;
        let pairs = ground.pairs;
        let least = ground.least.get(most as usize).copied().unwrap_or(0.0);
        // A lay holds a pair of some size, so it has no more plies than are wanted of that.
        let wanted = ground.wanted().iter().copied().max().unwrap_or(0);
        let highest = ground.task.most_plies.min(wanted);
        let lowest = pairs.div_ceil(most.saturating_mul(count)).max(1);
        let mut left = MOST_STEPS * u64::from(USUAL_PAIRS) / u64::from(most.max(USUAL_PAIRS));
        for height in lowest..=highest {
            let fewest = pairs.div_ceil(most).max(height.saturating_add(count - 1));
            // Higher lays have no fewer plies.
            if self.over(least + ground.ends() * f64::from(fewest)) {
                break;
            }
            let granted = left.min(MOST_STEPS / MOST_OF_ONE_HEIGHT);
            self.steps = granted;
            let mut plies = Vec::with_capacity(self.lays);
            plies.push(height);
            for total in fewest..=pairs.min(height.saturating_mul(count)) {
                if self.over(least + ground.ends() * f64::from(total)) || self.steps == 0 {
                    break;
                }
                self.divide_plies(total - height, most, &mut plies);
            }
            self.proved &= self.steps > 0;
            left -= granted - self.steps;
            if left == 0 {
                break;
            }
        }
    }

    /// Whether nothing that takes so much at least can be better.
    pub(crate) fn over(&self, floor: f64) -> bool {
        // A little less, so that a sum that was rounded up does not hide its own plan.
        self.best
            .as_ref()
            .is_some_and(|(best, _)| *best <= stepped(floor - SAME_MM))
    }

    /// Takes steps off what this part has; `false` where it has no more.
    pub(crate) fn step(&mut self, count: usize) -> bool {
        self.steps = self.steps.saturating_sub(count as u64);
        self.steps > 0
    }

    /// Not everything was weighed.
    pub(crate) fn passed_over(&mut self) {
        self.proved = false;
    }

    /// Divides the plies that are left over the lays that are left in every way, no lay with more than the
    /// one before.
    fn divide_plies(&mut self, left: u32, most: u32, plies: &mut Vec<u32>) {
        if !self.step(1) {
            return;
        }
        let Ok(count) = u32::try_from(self.lays - plies.len()) else {
            return;
        };
        if count == 0 {
            if left == 0 {
                self.divide_sizes(plies, most);
            }
            return;
        }
        let before = plies.last().copied().unwrap_or(left);
        let highest = before.min((left + 1).saturating_sub(count));
        for here in left.div_ceil(count)..=highest {
            plies.push(here);
            self.divide_plies(left - here, most, plies);
            plies.pop();
        }
    }
}
