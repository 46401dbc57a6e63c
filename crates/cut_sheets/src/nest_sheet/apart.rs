//! Where the sizes of a nest lie furthest apart, which of them lie together, and what those are called.

use geometry::Rect;
use geometry::tolerance::ROUNDING;
use style::{Size, Tag};
use words::Words;

use super::{Laid, Side, reach};

/// How many levels are tried for the place where the sizes lie furthest apart.
const LEVELS: u32 = 40;

/// Lines nearer than this lie on each other.
const TOGETHER_MM: f64 = 0.05;

/// The sizes whose lines lie on each other, the outermost first: it gets the label that its leader
/// reaches without crossing another's.
pub(super) fn groups(reaches: &[f64]) -> Vec<Vec<usize>> {
    let mut order: Vec<usize> = (0..reaches.len()).collect();
    order.sort_by(|a, b| reaches[*b].total_cmp(&reaches[*a]));
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for k in order {
        match groups.last_mut() {
            Some(group) if (reaches[group[0]] - reaches[k]).abs() < TOGETHER_MM => group.push(k),
            _ => groups.push(vec![k]),
        }
    }
    groups
}

/// What sizes that share a line are called among all: by waist or by length where they are all of it.
pub(super) fn called(group: &[Size], all: &[Size], words: &Words) -> String {
    if group.len() == all.len() {
        return words.nest_all_sizes().to_owned();
    }
    let whole = |of: fn(&Size) -> Tag| {
        let mut tags: Vec<Tag> = group.iter().map(of).collect();
        tags.sort_unstable();
        tags.dedup();
        let held = all.iter().filter(|size| tags.contains(&of(size)));
        let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
        (held.count() == group.len()).then(|| tags.join(", "))
    };
    let one = |of: fn(&Size) -> Tag| all.windows(2).all(|w| of(&w[0]) == of(&w[1]));
    let (waists, lengths) = (whole(|s| s.waist), whole(|s| s.length));
    if let Some(waists) = waists.filter(|_| !one(|s| s.waist)) {
        return match one(|s| s.length) {
            true => waists,
            false => words.nest_waist(waists),
        };
    }
    if let Some(lengths) = lengths.filter(|_| !one(|s| s.length)) {
        return words.nest_length(lengths);
    }
    let sizes: Vec<String> = group.iter().map(Size::to_string).collect();
    sizes.join(", ")
}

/// The side and level at which neighbouring sizes lie furthest apart, and how far out each reaches.
pub(super) fn widest(sizes: &[Laid], bounds: Rect) -> Option<(Side, f64, Vec<f64>)> {
    let mut best: Option<(f64, Side, f64, Vec<f64>)> = None;
    for side in Side::ALL {
        let (from, to) = match side {
            Side::Right | Side::Left => (bounds.y0, bounds.y1),
            Side::Foot | Side::Top => (bounds.x0, bounds.x1),
        };
        for k in 1..LEVELS {
            let level = from + (to - from) * f64::from(k) / f64::from(LEVELS);
            let reaches: Option<Vec<f64>> =
                sizes.iter().map(|s| reach(&s.cut, side, level)).collect();
            let Some(reaches) = reaches.filter(|r| !r.is_empty()) else {
                continue;
            };
            let mut order = reaches.clone();
            order.sort_by(f64::total_cmp);
            let gaps = order.windows(2).map(|w| w[1] - w[0]);
            // The least gap counts, and a little the whole spread where sizes coincide.
            let spread = order[order.len() - 1] - order[0];
            let apart = gaps.fold(f64::INFINITY, f64::min).min(spread) + 0.01 * spread;
            if best.as_ref().is_none_or(|(b, ..)| apart > *b + ROUNDING) {
                best = Some((apart, side, level, reaches));
            }
        }
    }
    best.map(|(_, side, level, reaches)| (side, level, reaches))
}
