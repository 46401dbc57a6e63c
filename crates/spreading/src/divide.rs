//! For stated plies: every way to divide the sizes over the lays.
//!
//! First the sizes are put in quickly, as they come, for a first plan. Then, size after size, everything is
//! worked out that the plies of the lays can hold together; going back through that, no way is a dead end.

use trade::Length;

use crate::lanes::{Lanes, MOST_IN_LANE, MOST_LANES};
use crate::plan::PlannedLay;
use crate::search::Search;

/// How many steps the quick way takes for each size.
const QUICK: usize = 60;

/// Sizes are not divided in every way where a step of that would have more to weigh than this.
const MOST_TOGETHER: usize = 400_000;

/// The ways one size can be divided over the lays.
struct Division {
    size: usize,
    /// What its pairs take at least, up to the factor.
    rate: f64,
    wanted: u32,
    ways: Vec<Lanes>,
}

/// One filling of the lays: plies, pairs in a ply of each, and the factor that goes with them.
struct Frame<'f> {
    plies: &'f [u32],
    factors: &'f [f64],
    /// The lowest factor, times the rates of all sizes before each.
    rest: &'f [f64],
}

impl Search<'_> {
    /// Every division of the sizes with so many pairs in the fullest ply.
    pub(crate) fn divide_sizes(&mut self, plies: &[u32], most: u32) {
        let total: u32 = plies.iter().sum();
        if !self.each_can_be_cut(plies) {
            return;
        }
        self.quickly(plies, most);
        let lowest = (1..=most).map(|pairs| self.ground.factor(pairs));
        let lowest = lowest.fold(f64::INFINITY, f64::min);
        let sizes = self.ground.sizes();
        let wanted = |size: usize| self.ground.wanted()[size];
        let rates = sizes
            .iter()
            .map(|&size| self.ground.rate(size) * f64::from(wanted(size)));
        let least = rates.sum::<f64>() * lowest + self.ground.ends() * f64::from(total);
        if self.over(least) {
            return;
        }
        if plies.len() > MOST_LANES || most > MOST_IN_LANE {
            return self.passed_over();
        }
        let mut divisions = Vec::with_capacity(sizes.len());
        for &size in sizes {
            let mut ways = Vec::new();
            let wanted = self.ground.wanted()[size];
            self.ways(wanted, plies, most, &mut Vec::new(), &mut ways);
            if ways.is_empty() {
                return;
            }
            if ways.len() > MOST_TOGETHER {
                return self.passed_over();
            }
            divisions.push(Division {
                size,
                rate: self.ground.rate(size),
                wanted,
                ways,
            });
        }
        divisions.sort_by_key(|division| division.ways.len());
        if let Some(reached) = self.reached(&divisions, most) {
            self.fill(plies, most, &divisions, &reached);
        }
    }

    /// Whether each size by itself is some multiples of these plies. Most divisions of the plies end here.
    fn each_can_be_cut(&mut self, plies: &[u32]) -> bool {
        let wanted = self.ground.wanted();
        let most = wanted.iter().copied().max().unwrap_or(0) as usize;
        if !self.step(1 + most * plies.len() / 32) {
            return false;
        }
        let mut sums = vec![false; most + 1];
        sums[0] = true;
        for (k, &here) in plies.iter().enumerate() {
            let here = here as usize;
            if k > 0 && plies[k - 1] as usize == here {
                continue;
            }
            for sum in here..=most {
                sums[sum] |= sums[sum - here];
            }
        }
        wanted.iter().all(|&pairs| sums[pairs as usize])
    }

    /// The first divisions one comes upon, for a plan to begin with.
    fn quickly(&mut self, plies: &[u32], most: u32) {
        let sizes = self.ground.sizes();
        let mut lays = vec![vec![0; self.ground.wanted().len()]; plies.len()];
        let mut room = vec![most; plies.len()];
        let mut steps = QUICK * sizes.len();
        let first = self.ground.wanted()[sizes[0]];
        self.put(plies, (0, 0, first), &mut room, &mut lays, &mut steps);
    }

    /// Puts pairs of a size, of which so many are left, into a lay and those after it, then the next size.
    fn put(
        &mut self,
        plies: &[u32],
        (number, lay, left): (usize, usize, u32),
        room: &mut Vec<u32>,
        lays: &mut Vec<Vec<u32>>,
        steps: &mut usize,
    ) {
        if *steps == 0 || !self.step(1) {
            return;
        }
        *steps -= 1;
        let ground = self.ground;
        let sizes = ground.sizes();
        if left == 0 {
            match sizes.get(number + 1) {
                Some(&next) => {
                    let wanted = ground.wanted()[next];
                    self.put(plies, (number + 1, 0, wanted), room, lays, steps);
                }
                None => self.weigh(plies, lays),
            }
            return;
        }
        let Some(&here) = plies.get(lay) else { return };
        let rest = plies.iter().zip(room.iter()).skip(lay + 1);
        let rest: u32 = rest.map(|(plies, room)| plies * room).sum();
        let fewest = left.saturating_sub(rest).div_ceil(here);
        let size = sizes[number];
        for pairs in (fewest..=(left / here).min(room[lay])).rev() {
            lays[lay][size] = pairs;
            room[lay] -= pairs;
            self.put(
                plies,
                (number, lay + 1, left - pairs * here),
                room,
                lays,
                steps,
            );
            room[lay] += pairs;
            lays[lay][size] = 0;
        }
    }

    /// Every way to cut so many pairs of one size with these plies.
    fn ways(
        &mut self,
        wanted: u32,
        plies: &[u32],
        most: u32,
        so_far: &mut Vec<u32>,
        ways: &mut Vec<Lanes>,
    ) {
        if !self.step(1) || ways.len() > MOST_TOGETHER {
            return;
        }
        let Some((&here, rest)) = plies.split_first() else {
            if wanted == 0 {
                ways.push(Lanes::of(so_far));
            }
            return;
        };
        let later: u32 = rest.iter().sum();
        let fewest = wanted
            .saturating_sub(later.saturating_mul(most))
            .div_ceil(here);
        for pairs in (fewest..=(wanted / here).min(most)).rev() {
            so_far.push(pairs);
            self.ways(wanted - pairs * here, rest, most, so_far, ways);
            so_far.pop();
        }
    }

    /// What the plies can hold after each size, and before the first. `None` where nothing holds all, or
    /// where it is too much to work out.
    fn reached(&mut self, divisions: &[Division], most: u32) -> Option<Vec<Vec<Lanes>>> {
        let mut reached = vec![vec![Lanes::default()]];
        for division in divisions {
            let before = reached.last()?;
            let steps = before.len().saturating_mul(division.ways.len());
            if steps > MOST_TOGETHER {
                self.passed_over();
                return None;
            }
            if !self.step(steps) {
                return None;
            }
            let mut after: Vec<Lanes> = before
                .iter()
                .flat_map(|held| {
                    let sums = division.ways.iter();
                    sums.filter_map(|way| held.plus(*way, most))
                })
                .collect();
            after.sort_unstable();
            after.dedup();
            if after.is_empty() {
                return None;
            }
            reached.push(after);
        }
        Some(reached)
    }

    /// Goes back from every filling of the lays to the divisions that make it, the least floor first.
    fn fill(&mut self, plies: &[u32], most: u32, divisions: &[Division], reached: &[Vec<Lanes>]) {
        let count = plies.len();
        let mut fillings: Vec<(f64, Lanes)> = Vec::new();
        for held in reached.last().map_or(&[][..], Vec::as_slice) {
            let loads: Vec<u32> = (0..count).map(|lay| held.get(lay)).collect();
            // Of two lays with as many plies the first holds no fewer; lower plies are another part.
            let turned = (1..count).any(|k| plies[k - 1] == plies[k] && loads[k - 1] < loads[k]);
            let here = loads.iter().all(|load| *load > 0) && loads.contains(&most);
            if here && !turned {
                fillings.push((self.ground.floor(plies, &loads), *held));
            }
        }
        fillings.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let total: u32 = plies.iter().sum();
        let ends = self.ground.ends() * f64::from(total);
        for (floor, held) in fillings {
            if self.over(floor) {
                return;
            }
            let same = |k: &usize| plies[k - 1] == plies[*k] && held.get(k - 1) == held.get(*k);
            let tied = (1..count).filter(same).fold(0, |all, k| all | 1 << (k - 1));
            let factors: Vec<f64> = (0..count)
                .map(|lay| self.ground.factor(held.get(lay)))
                .collect();
            let lowest = factors.iter().copied().fold(f64::INFINITY, f64::min);
            let mut rest = vec![0.0];
            for division in divisions {
                let all = lowest * division.rate * f64::from(division.wanted);
                rest.push(rest.last().copied().unwrap_or(0.0) + all);
            }
            let frame = Frame {
                plies,
                factors: &factors,
                rest: &rest,
            };
            let mut lays = vec![vec![0; self.ground.wanted().len()]; count];
            self.back(&frame, (divisions, reached), held, tied, ends, &mut lays);
        }
    }

    /// Takes one size after another out again, the last first. `tied` says which lays are still like the one
    /// after: of two alike only one order is tried.
    fn back(
        &mut self,
        frame: &Frame<'_>,
        (divisions, reached): (&[Division], &[Vec<Lanes>]),
        held: Lanes,
        tied: u32,
        taken: f64,
        lays: &mut Vec<Vec<u32>>,
    ) {
        let Some((division, fewer)) = divisions.split_last() else {
            self.weigh(frame.plies, lays);
            return;
        };
        let before = &reached[fewer.len()];
        if !self.step(division.ways.len()) {
            return;
        }
        for way in &division.ways {
            let Some(left) = held.minus(*way) else {
                continue;
            };
            let alike = |k: &usize| tied & (1 << (k - 1)) != 0;
            let mut pairs = (1..frame.plies.len()).filter(alike);
            if pairs.any(|k| way.get(k - 1) < way.get(k)) || before.binary_search(&left).is_err() {
                continue;
            }
            let still = (1..frame.plies.len())
                .filter(|k| alike(k) && way.get(k - 1) == way.get(*k))
                .fold(0, |all, k| all | 1 << (k - 1));
            let mut cloth = taken;
            for (lay, plies) in frame.plies.iter().enumerate() {
                lays[lay][division.size] = way.get(lay);
                cloth += division.rate * frame.factors[lay] * f64::from(plies * way.get(lay));
            }
            if !self.over(cloth + frame.rest[fewer.len()]) {
                self.back(frame, (fewer, reached), left, still, cloth, lays);
            }
            for lay in lays.iter_mut() {
                lay[division.size] = 0;
            }
        }
    }

    fn weigh(&mut self, plies: &[u32], lays: &[Vec<u32>]) {
        let mut planned = Vec::with_capacity(lays.len());
        for (pairs, &plies) in lays.iter().zip(plies) {
            let empty = pairs.iter().all(|n| *n == 0);
            let Some(length) = self.ground.length(pairs).filter(|_| !empty) else {
                return;
            };
            planned.push(PlannedLay {
                pairs: pairs.clone(),
                plies,
                length,
            });
        }
        debug_assert!(planned.iter().all(|lay| lay.length > Length::ZERO));
        self.offer(self.ground.plan(planned));
    }
}
