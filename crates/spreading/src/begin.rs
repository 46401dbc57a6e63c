//! Plans that need no search: enough to begin with, and never missing where one lay a size will do.

use crate::plan::{Plan, PlannedLay};
use crate::search::Ground;

/// Plies of the highest lay that are tried; which of them do not depend on what is allowed.
const HEIGHTS: [u32; 17] = [
    1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 36, 48, 72, 120, 300,
];

/// Plans with every number of pairs in a ply that is allowed, and several heights.
pub fn plans(ground: &Ground<'_>) -> Vec<Plan> {
    let mut plans = Vec::new();
    let highest = ground.wanted().iter().copied().max().unwrap_or(0);
    let heights = HEIGHTS.iter().copied().filter(|height| *height < highest);
    let heights = heights.chain([u32::MAX]);
    for height in heights {
        for pairs in 1..=ground.most_pairs() {
            plans.extend(each_by_itself(ground, pairs, height));
            plans.extend(most_first(ground, pairs, height));
        }
    }
    plans
}

/// Every size in lays of its own, so many pairs in a ply; what is left over in one ply.
fn each_by_itself(ground: &Ground<'_>, most: u32, height: u32) -> Option<Plan> {
    let mut lays = Vec::new();
    for (size, &wanted) in ground.wanted().iter().enumerate() {
        let mut left = wanted;
        while left > 0 {
            let here = most.min(left);
            let plies = (left / here).min(height);
            let mut pairs = vec![0; ground.wanted().len()];
            pairs[size] = here;
            lays.push((pairs, plies));
            left -= here * plies;
            if lays.len() > ground.most_lays() {
                return None;
            }
        }
    }
    laid(ground, lays)
}

/// Lay after lay the one that cuts most of what is left.
fn most_first(ground: &Ground<'_>, most: u32, height: u32) -> Option<Plan> {
    let mut left = ground.wanted().to_vec();
    let mut lays = Vec::new();
    while left.iter().any(|&pairs| pairs > 0) {
        if lays.len() == ground.most_lays() {
            return None;
        }
        let highest = left.iter().copied().max()?.min(height);
        let cut = |plies: u32| {
            let fits: u32 = left.iter().map(|pairs| pairs / plies).sum();
            u64::from(fits.min(most)) * u64::from(plies)
        };
        let plies = (1..=highest).max_by_key(|&plies| (cut(plies), plies))?;
        let mut room = most;
        let mut pairs = vec![0; left.len()];
        // The sizes of which most is left come first.
        let mut sizes: Vec<usize> = (0..left.len()).collect();
        sizes.sort_by_key(|&size| std::cmp::Reverse(left[size]));
        for size in sizes {
            let here = (left[size] / plies).min(room);
            pairs[size] = here;
            left[size] -= here * plies;
            room -= here;
        }
        lays.push((pairs, plies));
    }
    laid(ground, lays)
}

/// The plan of these lays, where the limits allow them.
fn laid(ground: &Ground<'_>, lays: Vec<(Vec<u32>, u32)>) -> Option<Plan> {
    let allowed = lays.len() <= ground.most_lays()
        && lays.iter().all(|(_, plies)| *plies <= ground.most_plies());
    if !allowed {
        return None;
    }
    let lays = lays.into_iter().map(|(pairs, plies)| {
        let length = ground.length(&pairs)?;
        Some(PlannedLay {
            pairs,
            plies,
            length,
        })
    });
    Some(ground.plan(lays.collect::<Option<Vec<_>>>()?))
}
