//! Where a roll may end inside a lay and the next one begin.

use trade::Length;

use crate::lay::Placement;
use crate::problem::Problem;
use geometry::bounds_of;

/// A place across the lay where cloth may end and begin again.
///
/// The cloth that ends is cut off at `until` and the next is laid from `from`; between the two lines
/// they lie over each other. Every piece is then whole in one of them: it either ends before `until`
/// or begins after `from`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Splice {
    /// Where the new cloth begins.
    pub from: Length,
    /// Where the old cloth may be cut off; never before `from`.
    pub until: Length,
}

impl Splice {
    /// How far the two lie over each other, which is cloth lost; nothing where no piece crosses.
    #[must_use]
    pub fn lap(&self) -> Length {
        self.until - self.from
    }
}

/// Of two places nearer together than this along the cloth one is enough: the one with the shorter lap.
/// A lay is marked for people, who cannot tell lines a hand apart (common practice).
const APART_MM: f64 = 300.0;

/// The places of a lay where a roll may end, from the start of the cloth, with a lap no longer than
/// `most_lap`.
///
/// Found by sweeping along the cloth: laid again from `from`, the old cloth has to reach to the end of
/// the last piece that begins before it.
#[must_use]
pub fn splices(problem: &Problem, placements: &[Placement], most_lap: Length) -> Vec<Splice> {
    let mut by_lap = every(problem, placements);
    by_lap.retain(|splice| splice.lap() <= most_lap);
    by_lap.sort_by(|a, b| a.lap().total_cmp(&b.lap()));
    let mut chosen: Vec<Splice> = Vec::new();
    for splice in by_lap {
        let near = |other: &Splice| (splice.from - other.from).to_mm().abs() < APART_MM;
        if !chosen.iter().any(near) {
            chosen.push(splice);
        }
    }
    chosen.sort_by(|a, b| a.from.total_cmp(&b.from));
    chosen
}

/// Every place where a roll may end; of those that end at the same line the one with the shortest lap.
fn every(problem: &Problem, placements: &[Placement]) -> Vec<Splice> {
    let mut spans: Vec<(f64, f64)> = placements
        .iter()
        .filter_map(|placed| {
            let piece = problem.pieces.iter().find(|p| p.key == placed.key)?;
            let rect = bounds_of(&placed.outline(piece));
            Some((rect.x0, rect.x1))
        })
        .collect();
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut found: Vec<Splice> = Vec::new();
    let mut until = f64::NEG_INFINITY;
    let start = spans.first().map_or(0.0, |first| first.0);
    for (begins, ends) in &spans {
        // Begun anew at the very start, the old cloth would have been for nothing.
        if *begins > start {
            let splice = Splice {
                from: Length::mm(*begins),
                until: Length::mm(until.max(*begins)),
            };
            match found.last_mut() {
                Some(last) if last.until == splice.until => *last = splice,
                _ => found.push(splice),
            }
        }
        until = until.max(*ends);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::{Piece, Turn};
    use geometry::Point;

    fn lay(spans: &[(f64, f64)]) -> (Problem, Vec<Placement>) {
        let piece = |(number, (from, until)): (usize, &(f64, f64))| {
            let corners = [
                (0.0, 0.0),
                (until - from, 0.0),
                (until - from, 9.0),
                (0.0, 9.0),
            ];
            Piece {
                key: number.to_string(),
                outline: corners.map(Point::from).to_vec(),
                demand: 1,
                turns: vec![Turn::None],
                on_edge: None,
                within: None,
            }
        };
        let placed = |(number, (from, _)): (usize, &(f64, f64))| Placement {
            key: number.to_string(),
            copy: 0,
            turn: Turn::None,
            x: Length::mm(*from),
            y: Length::mm(10.0 * number as f64),
        };
        let problem = Problem {
            width: Length::m(1.0),
            pieces: spans.iter().enumerate().map(piece).collect(),
            gap: Length::ZERO,
            faults: Vec::new(),
            sets: vec![],
        };
        (problem, spans.iter().enumerate().map(placed).collect())
    }

    fn found(spans: &[(f64, f64)], most: f64) -> Vec<(f64, f64)> {
        let (problem, placements) = lay(spans);
        splices(&problem, &placements, Length::mm(most))
            .iter()
            .map(|s| (s.from.to_mm(), s.until.to_mm()))
            .collect()
    }

    #[test]
    fn laps_by_hand() {
        // Two pieces side by side of different length, and one after them: 40 mm lap in the middle of
        // the staggered ones, and a clean line where the second row ends.
        let spans = [(0.0, 500.0), (0.0, 540.0), (500.0, 940.0), (940.0, 1300.0)];
        assert_eq!(found(&spans, 1000.0), [(500.0, 540.0), (940.0, 940.0)]);
        assert_eq!(found(&spans, 39.0), [(940.0, 940.0)]);
        // Two places a hand apart: the shorter lap is marked.
        let near = [(0.0, 500.0), (0.0, 540.0), (500.0, 940.0), (540.0, 900.0)];
        assert_eq!(found(&near, 1000.0), [(500.0, 540.0)]);
        // Where pieces leave a free stretch the new cloth begins after it.
        assert_eq!(found(&[(0.0, 50.0), (80.0, 120.0)], 0.0), [(80.0, 80.0)]);
        // One piece over the whole lay leaves no place.
        assert_eq!(
            found(&[(0.0, 300.0), (10.0, 50.0), (60.0, 90.0)], 200.0),
            []
        );
    }

    #[test]
    fn every_piece_is_whole_in_one_cloth() {
        let spans: Vec<(f64, f64)> = (0..40u32)
            .map(|n| {
                let from = f64::from(n * 37 % 101) * 100.0;
                (from, from + 300.0 + f64::from(n * 53 % 29) * 51.0)
            })
            .collect();
        let found = found(&spans, 1e9);
        assert!(found.len() > 3);
        for (from, until) in found {
            assert!(until >= from);
            assert!(spans.iter().all(|s| s.1 <= until || s.0 >= from));
        }
    }
}
