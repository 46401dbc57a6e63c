//! Closing an outline that was drawn in parts.

use std::collections::BTreeMap;

use geometry::Point;

use crate::grid::Key;

/// Joins lines end to end where they meet, turning them as needed, and gives those that close, without
/// repeating the first point. Lines that do not close are given back as they are.
pub(crate) fn closed(parts: Vec<Vec<Point>>) -> (Vec<Vec<Point>>, Vec<Vec<Point>>) {
    let mut parts: Vec<Option<Vec<Point>>> = parts.into_iter().map(Some).collect();
    let mut ends: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
    for (k, part) in parts.iter().enumerate() {
        for end in part
            .iter()
            .flat_map(|p| p.first().into_iter().chain(p.last()))
        {
            ends.entry(Key::of(*end)).or_default().push(k);
        }
    }
    let (mut rings, mut open) = (Vec::new(), Vec::new());
    for k in 0..parts.len() {
        let Some(mut line) = parts.get_mut(k).and_then(Option::take) else {
            continue;
        };
        while let (Some(first), Some(last)) = (line.first().copied(), line.last().copied()) {
            if line.len() > 3 && Key::of(first) == Key::of(last) {
                break;
            }
            let here = ends.get_mut(&Key::of(last));
            let next = here.and_then(|list| {
                while let Some(j) = list.pop() {
                    if let Some(part) = parts.get_mut(j).and_then(Option::take) {
                        return Some(part);
                    }
                }
                None
            });
            let Some(mut next) = next else {
                break;
            };
            if next.first().is_some_and(|p| Key::of(*p) != Key::of(last)) {
                next.reverse();
            }
            line.extend(next.into_iter().skip(1));
        }
        if line.len() > 3 && line.first() == line.last() {
            line.pop();
            rings.push(line);
        } else {
            open.push(line);
        }
    }
    (rings, open)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sides_drawn_in_any_order_and_direction_close() {
        let p = |x: f64, y: f64| Point::new(x, y);
        let side = |a: Point, b: Point| vec![a, b];
        let (rings, open) = closed(vec![
            side(p(0.0, 0.0), p(10.0, 0.0)),
            side(p(0.0, 10.0), p(10.0, 10.0)),
            side(p(50.0, 0.0), p(60.0, 0.0)),
            side(p(0.0, 10.0), p(0.0, 0.0)),
            side(p(10.0, 0.0), p(10.0, 10.0)),
        ]);
        assert_eq!(rings.len(), 1);
        assert!((geometry::area(&rings[0]).to_mm2().abs() - 100.0).abs() < 1e-9);
        assert_eq!(open, [side(p(50.0, 0.0), p(60.0, 0.0))]);
    }
}
