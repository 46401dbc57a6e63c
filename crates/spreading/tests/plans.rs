//! The planner against every possible plan, and what always has to hold of its answers.
#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;

use proptest::prelude::*;
use spreading::{PlyLength, Task, plan};
use trade::Length;

/// A length that depends on the pairs in no simple way: some combinations nest well, others do not.
struct Uneven {
    each: Vec<f64>,
    seed: u32,
    longest: f64,
}

impl PlyLength for Uneven {
    fn of(&self, pairs: &[u32]) -> Option<Length> {
        let even: f64 = pairs
            .iter()
            .zip(&self.each)
            .map(|(n, each)| f64::from(*n) * each)
            .sum();
        let mixed = pairs.iter().fold(self.seed, |sum, n| {
            (sum ^ n.wrapping_add(0x9e37))
                .wrapping_mul(0x85eb_ca6b)
                .rotate_left(13)
        });
        let length = even * (1.0 + f64::from(mixed % 100) / 500.0);
        (length <= self.longest).then_some(Length::mm(length))
    }

    fn rate(&self, size: usize) -> Length {
        Length::mm(self.each[size])
    }

    fn factor(&self, _: u32) -> f64 {
        1.0
    }

    fn longest(&self) -> Length {
        Length::mm(self.longest)
    }
}

/// The least cloth of exactly so many lays, by trying every lay on what is left.
fn exhaustive(
    task: &Task,
    cost: &Uneven,
    left: &[u32],
    lays: usize,
    seen: &mut BTreeMap<(Vec<u32>, usize), Option<f64>>,
) -> Option<f64> {
    if lays == 0 {
        return left.iter().all(|n| *n == 0).then_some(0.0);
    }
    if let Some(known) = seen.get(&(left.to_vec(), lays)) {
        return *known;
    }
    let mut best: Option<f64> = None;
    for plies in 1..=task.most_plies {
        for pairs in every_ratio(left, plies, task.most_pairs) {
            let Some(length) = cost.of(&pairs) else {
                continue;
            };
            let after: Vec<u32> = left
                .iter()
                .zip(&pairs)
                .map(|(l, n)| l - n * plies)
                .collect();
            if let Some(rest) = exhaustive(task, cost, &after, lays - 1, seen) {
                let cloth = rest + f64::from(plies) * (length + task.ends).to_mm();
                best = Some(best.map_or(cloth, |best| best.min(cloth)));
            }
        }
    }
    seen.insert((left.to_vec(), lays), best);
    best
}

fn every_ratio(left: &[u32], plies: u32, most: u32) -> Vec<Vec<u32>> {
    let mut ratios = vec![Vec::new()];
    for wanted in left {
        ratios = ratios
            .iter()
            .flat_map(|ratio: &Vec<u32>| {
                (0..=wanted / plies).map(move |n| [ratio.as_slice(), &[n]].concat())
            })
            .collect();
    }
    let held = |ratio: &Vec<u32>| ratio.iter().sum::<u32>();
    ratios.retain(|ratio| (1..=most).contains(&held(ratio)));
    ratios
}

fn agrees(task: &Task, cost: &Uneven) {
    let plans = plan(task, cost);
    assert!(plans.proved);
    for lays in task.lays.clone() {
        let found = plans.of_lays.iter().find(|plan| plan.lays.len() == lays);
        let best = exhaustive(task, cost, &task.wanted, lays, &mut BTreeMap::new());
        match (found, best) {
            (None, None) => {}
            (Some(found), Some(best)) => {
                assert!(
                    (found.cloth.to_mm() - best).abs() < 0.02,
                    "{task:?} {found:?} {best}"
                );
                assert!(plans.no_less.to_mm() < best + 0.02, "{task:?} {plans:?}");
            }
            other => panic!("{task:?}: {other:?}"),
        }
    }
}

#[test]
fn every_small_order_is_planned_as_well_as_can_be() {
    for a in 1..=7 {
        for b in 0..=6 {
            for most_plies in [2, 5] {
                let task = Task {
                    wanted: vec![a, b],
                    most_plies,
                    most_pairs: 3,
                    lays: 1..=3,
                    ends: Length::cm(4.0),
                };
                let cost = Uneven {
                    each: vec![1000.0, 1300.0],
                    seed: a * 7 + b,
                    longest: 1e9,
                };
                agrees(&task, &cost);
            }
        }
    }
    for (a, b, c) in [(1, 2, 3), (4, 4, 2), (5, 3, 1), (2, 6, 4), (3, 3, 3)] {
        for ends in [0.0, 40.0, 900.0] {
            let task = Task {
                wanted: vec![a, b, c],
                most_plies: 4,
                most_pairs: 4,
                lays: 1..=3,
                ends: Length::mm(ends),
            };
            let cost = Uneven {
                each: vec![1000.0, 1100.0, 1250.0],
                seed: a + b,
                longest: 4200.0,
            };
            agrees(&task, &cost);
        }
    }
}

#[test]
fn a_larger_order_by_hand() {
    // 6, 12 and 6 pairs, four in a ply, six plies: 1 + 2 + 1 in one lay, and nothing shorter exists.
    let task = Task {
        wanted: vec![6, 12, 6],
        most_plies: 6,
        most_pairs: 4,
        lays: 1..=4,
        ends: Length::cm(4.0),
    };
    let cost = Uneven {
        each: vec![1000.0; 3],
        seed: 0,
        longest: 1e9,
    };
    struct Even(Uneven);
    impl PlyLength for Even {
        fn of(&self, pairs: &[u32]) -> Option<Length> {
            Some(Length::m(f64::from(pairs.iter().sum::<u32>())))
        }
        fn rate(&self, size: usize) -> Length {
            self.0.rate(size)
        }
        fn factor(&self, _: u32) -> f64 {
            1.0
        }
        fn longest(&self) -> Length {
            self.0.longest()
        }
    }
    let plans = plan(&task, &Even(cost));
    let best = plans.best().unwrap();
    assert_eq!(best.lays.len(), 1);
    assert_eq!(best.lays[0].pairs, [1, 2, 1]);
    assert_eq!(best.lays[0].plies, 6);
    assert!((best.cloth - Length::mm(24_000.0 + 6.0 * 40.0)).abs() < Length::mm(1e-6));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// What is allowed beyond a plan's limits never makes the answer worse, however much there is to weigh.
    #[test]
    fn a_wider_limit_never_loses_a_plan_nor_makes_it_worse(
        wanted in prop::collection::vec(1u32..26, 1..8),
        most_plies in 1u32..30,
        most_pairs in 1u32..10,
        fewest_lays in 1usize..4,
        more_lays in 0usize..5,
        seed in any::<u32>(),
        longest in 1500.0..12_000.0f64,
        wider in 0usize..5,
        by in 1u32..12,
    ) {
        let task = Task {
            wanted: wanted.clone(),
            most_plies,
            most_pairs,
            lays: fewest_lays..=fewest_lays + more_lays,
            ends: Length::cm(4.0),
        };
        let each: Vec<f64> = (0..wanted.len()).map(|n| 1000.0 + 60.0 * n as f64).collect();
        let cost = Uneven { each: each.clone(), seed, longest };
        let mut more = task.clone();
        let mut wide = Uneven { each, seed, longest };
        match wider {
            0 => more.most_plies += by,
            1 => more.most_pairs += by,
            2 => more.lays = fewest_lays..=fewest_lays + more_lays + by.min(3) as usize,
            3 => more.lays = 1..=fewest_lays + more_lays,
            _ => wide.longest += 300.0 * f64::from(by),
        }
        let (tight, loose) = (plan(&task, &cost), plan(&more, &wide));
        for plan in &tight.of_lays {
            let same = loose.of_lays.iter().find(|other| other.lays.len() == plan.lays.len());
            prop_assert!(same.is_some(), "{task:?} {more:?}");
            prop_assert!(same.unwrap().cloth <= plan.cloth + Length::mm(0.01), "{task:?} {more:?}");
        }
        if let Some(best) = tight.best() {
            prop_assert!(loose.best().unwrap().cloth <= best.cloth + Length::mm(0.02));
        }
    }

    #[test]
    fn pairs_are_exact_and_limits_kept(
        wanted in prop::collection::vec(0u32..30, 1..6),
        most_plies in 1u32..40,
        most_pairs in 1u32..6,
        most_lays in 1usize..5,
        seed in any::<u32>(),
        longest in 1500.0..9000.0f64,
    ) {
        let task = Task {
            wanted: wanted.clone(),
            most_plies,
            most_pairs,
            lays: 1..=most_lays,
            ends: Length::cm(4.0),
        };
        let each = (0..wanted.len()).map(|n| 1000.0 + 60.0 * n as f64).collect();
        let cost = Uneven { each, seed, longest };
        let plans = plan(&task, &cost);
        for plan in &plans.of_lays {
            let mut cut = vec![0; wanted.len()];
            let mut cloth = 0.0;
            for lay in &plan.lays {
                prop_assert!((1..=most_plies).contains(&lay.plies));
                prop_assert!((1..=most_pairs).contains(&lay.pairs_in_ply()));
                prop_assert_eq!(cost.of(&lay.pairs), Some(lay.length));
                for (cut, pairs) in cut.iter_mut().zip(&lay.pairs) {
                    *cut += pairs * lay.plies;
                }
                cloth += f64::from(lay.plies) * (lay.length.to_mm() + 40.0);
            }
            prop_assert_eq!(&cut, &wanted);
            prop_assert!(task.lays.contains(&plan.lays.len()));
            prop_assert!((plan.cloth.to_mm() - cloth).abs() < 1e-6);
        }
        // One size in each lay always cuts the order, when there are lays and table enough.
        let kinds = wanted.iter().filter(|n| **n > 0).count();
        let simple = wanted.iter().all(|n| *n <= most_plies) && (1..=most_lays).contains(&kinds);
        if simple && longest > 1600.0 {
            prop_assert!(!plans.of_lays.is_empty());
        }
    }
}
