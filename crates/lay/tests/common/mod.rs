//! Small problems and an independent look at rows of pieces.
#![allow(dead_code, reason = "each test file uses some of these")]

use geometry::Point;
use lay::{Limits, Options, Piece, Problem, Turn};
use trade::Length;

pub fn points(xy: &[(f64, f64)]) -> Vec<Point> {
    xy.iter().map(|&p| p.into()).collect()
}

pub fn rectangle(key: &str, along: f64, across: f64, demand: usize) -> Piece {
    Piece {
        key: key.into(),
        outline: points(&[(0.0, 0.0), (along, 0.0), (along, across), (0.0, across)]),
        demand,
        turns: vec![Turn::None],
        on_edge: None,
        within: None,
    }
}

/// A search bounded by places tried, on two threads.
pub fn limited(places: u64, seed: u64) -> Options {
    Options {
        seed,
        workers: 2,
        limits: Limits {
            time: None,
            places: Some(places),
        },
    }
}

/// A dozen pieces of four kinds, some of them hollow on one side.
pub fn mixed(demand: usize) -> Problem {
    let turns = vec![Turn::None, Turn::Half];
    let kinds = [
        (
            "wedge",
            points(&[(0.0, 0.0), (70.0, 10.0), (60.0, 40.0), (5.0, 30.0)]),
        ),
        (
            "hook",
            points(&[
                (0.0, 0.0),
                (50.0, 0.0),
                (50.0, 15.0),
                (20.0, 18.0),
                (18.0, 45.0),
                (0.0, 45.0),
            ]),
        ),
        (
            "kite",
            points(&[(0.0, 20.0), (30.0, 0.0), (45.0, 22.0), (28.0, 41.0)]),
        ),
        (
            "bow",
            points(&[
                (0.0, 0.0),
                (25.0, 12.0),
                (50.0, 0.0),
                (50.0, 30.0),
                (25.0, 20.0),
                (0.0, 30.0),
            ]),
        ),
    ];
    Problem {
        width: Length::mm(110.0),
        pieces: kinds
            .into_iter()
            .map(|(key, outline)| Piece {
                key: key.into(),
                outline,
                demand,
                turns: turns.clone(),
                on_edge: None,
                within: None,
            })
            .collect(),
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    }
}

/// All orders of 0..n.
pub fn orders(n: usize) -> Vec<Vec<usize>> {
    if n == 0 {
        return vec![vec![]];
    }
    let mut out = Vec::new();
    for order in orders(n - 1) {
        for at in 0..n {
            let mut longer = order.clone();
            longer.insert(at, n - 1);
            out.push(longer);
        }
    }
    out
}

/// The length of a row of pieces on the lower edge in the given order, each as near to the one
/// before as the outlines allow: the largest horizontal distance needed at any height.
pub fn row_length(row: &[&Piece]) -> f64 {
    let left = |p: &Piece| p.outline.iter().map(|q| q.x).fold(f64::INFINITY, f64::min);
    let right = |p: &Piece| {
        p.outline
            .iter()
            .map(|q| q.x)
            .fold(f64::NEG_INFINITY, f64::max)
    };
    let mut at = -left(row[0]);
    for pair in row.windows(2) {
        at += nearest(pair[0], pair[1]);
    }
    at + right(row[row.len() - 1])
}

fn nearest(a: &Piece, b: &Piece) -> f64 {
    let heights: Vec<f64> = a.outline.iter().chain(&b.outline).map(|p| p.y).collect();
    heights
        .iter()
        .filter_map(|&y| Some(extent(a, y)?.1 - extent(b, y)?.0))
        .fold(f64::NEG_INFINITY, f64::max)
}

/// The leftmost and rightmost point of the outline at a height.
fn extent(piece: &Piece, y: f64) -> Option<(f64, f64)> {
    let n = piece.outline.len();
    let mut out: Option<(f64, f64)> = None;
    for i in 0..n {
        let (p, q) = (piece.outline[i], piece.outline[(i + 1) % n]);
        if y < p.y.min(q.y) || y > p.y.max(q.y) {
            continue;
        }
        let ends = if p.y == q.y {
            [p.x, q.x]
        } else {
            [p.x + (y - p.y) / (q.y - p.y) * (q.x - p.x); 2]
        };
        for x in ends {
            out = Some(out.map_or((x, x), |(a, b)| (a.min(x), b.max(x))));
        }
    }
    out
}
