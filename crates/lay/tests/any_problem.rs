//! Whatever is asked for, a lay that comes back keeps every rule.
#![allow(clippy::unwrap_used)]

mod common;

use std::sync::atomic::AtomicBool;

use geometry::{Point, Rect};
use lay::{OnEdge, Piece, Problem, StraightSide, Turn, check, search};
use proptest::prelude::*;
use trade::Length;

/// A star-shaped outline: corners at growing angles and any distance from the middle.
fn outline() -> impl Strategy<Value = Vec<Point>> {
    prop::collection::vec((0.1..1.0f64, 5.0..60.0f64), 3..12).prop_map(|corners| {
        let whole: f64 = corners.iter().map(|c| c.0).sum();
        let mut angle = 0.0;
        corners
            .iter()
            .map(|(share, radius)| {
                angle += share / whole * std::f64::consts::TAU;
                Point::new(radius * angle.cos() + 7.0, radius * angle.sin() - 3.0)
            })
            .collect()
    })
}

fn piece(key: usize) -> impl Strategy<Value = Piece> {
    (
        outline(),
        1..4usize,
        0..4usize,
        prop::option::of(any::<bool>()),
    )
        .prop_map(move |(outline, demand, turns, edge)| {
            let turns: &[Turn] = match (turns, edge) {
                (0, _) => &[Turn::None],
                (_, Some(_)) | (1, _) => &[Turn::None, Turn::Half],
                (2, _) => &[Turn::Quarter],
                _ => &Turn::ALL,
            };
            let side = |lower| {
                if lower {
                    StraightSide::Lower
                } else {
                    StraightSide::Upper
                }
            };
            Piece {
                key: format!("piece {key}"),
                outline,
                demand,
                turns: turns.to_vec(),
                on_edge: edge.map(|lower| OnEdge {
                    side: side(lower),
                    inset: Length::ZERO,
                }),
                within: None,
            }
        })
}

fn problem() -> impl Strategy<Value = Problem> {
    let pieces = (piece(0), piece(1), piece(2), piece(3)).prop_map(|(a, b, c, d)| vec![a, b, c, d]);
    let fault = (0.0..300.0f64, 0.0..100.0f64, 1.0..40.0f64, 1.0..30.0f64)
        .prop_map(|(x, y, w, h)| Rect::new(x, y, x + w, y + h));
    (
        pieces,
        prop_oneof![Just(0.0), 0.5..5.0f64],
        prop::collection::vec(fault, 0..3),
        125.0..200.0f64,
    )
        .prop_map(|(pieces, gap, faults, width)| Problem {
            width: Length::mm(width),
            pieces,
            gap: Length::mm(gap),
            faults,
            sets: vec![],
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn every_lay_keeps_every_rule(problem in problem(), seed in 0..1_000u64) {
        match search(&problem, &common::limited(6_000, seed), &AtomicBool::new(false), &mut |_| {}) {
            Ok(lay) => {
                prop_assert_eq!(check(&problem, &lay.placements, lay.length), vec![]);
                prop_assert!(lay.length >= lay.bounds.best() - Length::mm(1e-3), "{} under the bound {:?}", lay.length, lay.bounds);
            }
            Err(refused) => prop_assert!(problem.validate().is_err(), "{}", refused),
        }
    }

    #[test]
    fn nothing_panics(
        xy in prop::collection::vec((any::<f64>(), -9.0..9.0f64), 0..8),
        width in any::<f64>(),
        gap in any::<f64>(),
        demand in 0..3usize,
    ) {
        let problem = Problem {
            width: Length::mm(width),
            pieces: vec![Piece {
                key: "p".into(),
                outline: xy.into_iter().map(Point::from).collect(),
                demand,
                turns: vec![Turn::None],
                on_edge: None,
                within: None,
            }],
            gap: Length::mm(gap),
            faults: vec![],
            sets: vec![],
        };
        let _ = search(&problem, &common::limited(500, 1), &AtomicBool::new(false), &mut |_| {});
    }
}
