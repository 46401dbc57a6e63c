//! Pieces that keep to a zone across the cloth: the search keeps it, the check proves it.
#![allow(clippy::unwrap_used)]

use std::sync::atomic::AtomicBool;

use lay::{
    LayError, Limits, Mistake, OnEdge, Options, Piece, Problem, StraightSide, Turn, Zone, check,
    search,
};
use proptest::prelude::*;
use trade::Length;

fn rectangle(key: &str, along: f64, across: f64, demand: usize, zone: (f64, f64)) -> Piece {
    let corners = [(0.0, 0.0), (along, 0.0), (along, across), (0.0, across)];
    Piece {
        key: key.to_owned(),
        outline: corners.map(Into::into).to_vec(),
        demand,
        turns: vec![Turn::None, Turn::Half],
        on_edge: None,
        within: Some(Zone {
            from: Length::mm(zone.0),
            to: Length::mm(zone.1),
        }),
    }
}

fn cloth(pieces: Vec<Piece>) -> Problem {
    Problem {
        width: Length::mm(100.0),
        pieces,
        gap: Length::ZERO,
        faults: Vec::new(),
        sets: vec![],
    }
}

fn found(problem: &Problem, places: u64) -> lay::Lay {
    let options = Options {
        limits: Limits {
            time: None,
            places: Some(places),
        },
        ..Options::default()
    };
    search(problem, &options, &AtomicBool::new(false), &mut |_| ()).unwrap()
}

#[test]
fn what_would_lie_side_by_side_lies_in_its_zone() {
    // Two pieces that would fill the width together have to follow each other in one zone.
    let zone = (0.0, 50.0);
    let problem = cloth(vec![
        rectangle("left", 80.0, 50.0, 1, zone),
        rectangle("right", 80.0, 50.0, 1, zone),
    ]);
    let lay = found(&problem, 20_000);
    assert!(check(&problem, &lay.placements, lay.length).is_empty());
    assert!(
        (lay.length - Length::mm(160.0)).abs() < Length::mm(0.5),
        "{}",
        lay.length
    );
}

#[test]
fn the_check_sees_a_piece_out_of_its_zone() {
    let free = cloth(vec![rectangle("a", 30.0, 20.0, 1, (0.0, 100.0))]);
    let mut lay = found(&free, 1_000);
    lay.placements[0].turn = Turn::None;
    lay.placements[0].x = Length::ZERO;
    lay.placements[0].y = Length::mm(40.0);
    let zoned = cloth(vec![rectangle("a", 30.0, 20.0, 1, (0.0, 50.0))]);
    assert_eq!(
        check(&zoned, &lay.placements, Length::mm(30.0)),
        [Mistake::OutOfZone {
            key: "a".to_owned(),
            by: Length::mm(10.0)
        }]
    );
}

#[test]
fn a_zone_that_cannot_be_kept_is_refused() {
    let narrow = cloth(vec![rectangle("a", 30.0, 60.0, 1, (50.0, 100.0))]);
    assert!(matches!(narrow.validate(), Err(LayError::Zone { .. })));
    // Beyond the cloth's own edge there is no zone.
    let beyond = cloth(vec![rectangle("a", 30.0, 20.0, 1, (90.0, 150.0))]);
    assert!(matches!(beyond.validate(), Err(LayError::Zone { .. })));
    let none = cloth(vec![rectangle("a", 30.0, 20.0, 1, (f64::NAN, 150.0))]);
    let _ = none.validate();
    let mut edge = cloth(vec![rectangle("a", 30.0, 20.0, 1, (0.0, 50.0))]);
    edge.pieces[0].on_edge = Some(OnEdge {
        side: StraightSide::Lower,
        inset: Length::ZERO,
    });
    assert_eq!(edge.validate(), Err(LayError::EdgeZone("a".to_owned())));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn every_lay_keeps_its_zones(
        sizes in prop::collection::vec((10.0..60.0f64, 5.0..33.0f64, 1usize..3, 0u32..3), 1..6),
        gap in 0.0..2.0f64,
    ) {
        let pieces = sizes.iter().enumerate().map(|(number, (along, across, demand, zone))| {
            let from = 100.0 / 3.0 * f64::from(*zone);
            rectangle(&number.to_string(), *along, *across, *demand, (from, from + 100.0 / 3.0))
        });
        let mut problem = cloth(pieces.collect());
        problem.gap = Length::mm(gap);
        let lay = found(&problem, 2_000);
        prop_assert_eq!(check(&problem, &lay.placements, lay.length), []);
    }
}
