//! Pieces that have to match in shade: left and right of a pair close together.
//!
//! Cloth changes its shade across the width and, more slowly, along the length. Two pieces that are
//! seen side by side are cut from one zone across the width, which [`Piece::within`](crate::Piece)
//! holds, or not too far apart along the cloth, which is judged here.

use trade::Length;

use crate::check::Mistake;
use crate::lay::Placement;
use crate::problem::Problem;
use geometry::bounds_of;

/// Two pieces of a problem whose copies belong together, one of each.
#[derive(Clone, Debug, PartialEq)]
pub struct Matched {
    /// One piece.
    pub first: String,
    /// The other, with as many copies.
    pub second: String,
    /// How far apart along the cloth, from middle to middle, two that belong together may lie.
    pub within: Length,
}

/// Numbers the copies of matched pieces anew, so that those of one number lie as near each other along
/// the cloth as can be.
///
/// Copies of a piece are alike, so it is free which left goes with which right. Taken in order along
/// the cloth the largest distance is as small as it can be.
pub fn match_copies(problem: &Problem, placements: &mut [Placement], matched: &[Matched]) {
    for pair in matched {
        for key in [&pair.first, &pair.second] {
            for (copy, index) in along(problem, placements, key).into_iter().enumerate() {
                placements[index].copy = copy;
            }
        }
    }
}

/// The placements of a piece in order along the cloth.
fn along(problem: &Problem, placements: &[Placement], key: &str) -> Vec<usize> {
    let mut found: Vec<(f64, usize)> = placements
        .iter()
        .enumerate()
        .filter(|(_, placed)| placed.key == key)
        .filter_map(|(index, placed)| Some((middle(problem, placed)?, index)))
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found.into_iter().map(|(_, index)| index).collect()
}

fn middle(problem: &Problem, placed: &Placement) -> Option<f64> {
    let piece = problem.pieces.iter().find(|p| p.key == placed.key)?;
    Some(bounds_of(&placed.outline(piece)).center().x)
}

/// Every two copies of one number that lie too far apart, and copies that have no partner.
#[must_use]
pub fn check_matches(
    problem: &Problem,
    placements: &[Placement],
    matched: &[Matched],
) -> Vec<Mistake> {
    let mut mistakes = Vec::new();
    for pair in matched {
        for placed in placements.iter().filter(|p| p.key == pair.first) {
            let partner = placements
                .iter()
                .find(|other| other.key == pair.second && other.copy == placed.copy);
            let apart = partner
                .and_then(|partner| Some(middle(problem, placed)? - middle(problem, partner)?));
            let apart = apart.map_or(f64::INFINITY, f64::abs);
            if apart > pair.within.to_mm() {
                mistakes.push(Mistake::Apart {
                    first: pair.first.clone(),
                    second: pair.second.clone(),
                    apart: Length::mm(apart),
                    within: pair.within,
                });
            }
        }
    }
    mistakes
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::{Piece, Turn};
    use geometry::Point;

    fn problem() -> Problem {
        let piece = |key: &str| Piece {
            key: key.to_owned(),
            outline: [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
                .map(Point::from)
                .to_vec(),
            demand: 2,
            turns: vec![Turn::None],
            on_edge: None,
            within: None,
        };
        Problem {
            width: Length::mm(20.0),
            pieces: vec![piece("left"), piece("right")],
            gap: Length::ZERO,
            faults: Vec::new(),
            sets: vec![],
        }
    }

    fn at(key: &str, copy: usize, x: f64, y: f64) -> Placement {
        Placement {
            key: key.to_owned(),
            copy,
            turn: Turn::None,
            x: Length::mm(x),
            y: Length::mm(y),
        }
    }

    #[test]
    fn copies_are_numbered_so_that_neighbours_belong_together() {
        let matched = [Matched {
            first: "left".to_owned(),
            second: "right".to_owned(),
            within: Length::mm(30.0),
        }];
        let problem = problem();
        let mut placements = vec![
            at("left", 0, 200.0, 0.0),
            at("left", 1, 0.0, 0.0),
            at("right", 0, 10.0, 10.0),
            at("right", 1, 225.0, 10.0),
        ];
        assert_eq!(check_matches(&problem, &placements, &matched).len(), 2);
        match_copies(&problem, &mut placements, &matched);
        assert!(check_matches(&problem, &placements, &matched).is_empty());
        let near = [Matched {
            within: Length::mm(20.0),
            ..matched[0].clone()
        }];
        let mistakes = check_matches(&problem, &placements, &near);
        assert_eq!(
            mistakes,
            [Mistake::Apart {
                first: "left".to_owned(),
                second: "right".to_owned(),
                apart: Length::mm(25.0),
                within: Length::mm(20.0),
            }]
        );
    }
}
