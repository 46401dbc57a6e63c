//! Small lays whose best length is known.
#![allow(clippy::unwrap_used)]

mod common;

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use common::{limited, points, rectangle};
use geometry::Rect;
use lay::{
    Ended, LayError, Limits, OnEdge, Options, Piece, Placement, Problem, StraightSide, Turn, check,
    search, search_on,
};
use trade::Length;

fn lay(problem: &Problem, places: u64) -> lay::Lay {
    let lay = search(
        problem,
        &limited(places, 1),
        &AtomicBool::new(false),
        &mut |_| {},
    )
    .unwrap();
    assert_eq!(check(problem, &lay.placements, lay.length), []);
    lay
}

/// Eight rectangles cut from a strip of 100 by 250, so the best lay wastes nothing.
#[test]
fn rectangles_that_tile_the_cloth_are_laid_without_waste() {
    let pieces = [
        (60.0, 50.0),
        (40.0, 50.0),
        (50.0, 50.0),
        (50.0, 50.0),
        (100.0, 30.0),
        (100.0, 70.0),
        (50.0, 30.0),
        (50.0, 70.0),
    ];
    let problem = Problem {
        width: Length::mm(100.0),
        pieces: pieces
            .iter()
            .enumerate()
            .map(|(i, (w, h))| rectangle(&format!("r{i}"), *w, *h, 1))
            .collect(),
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let lay = lay(&problem, 400_000);
    assert_eq!(lay.bounds.best(), Length::mm(250.0));
    assert!((lay.length.to_mm() - 250.0).abs() < 0.01, "{}", lay.length);
}

/// Two L shapes that make a rectangle when one is turned head to tail.
#[test]
fn an_l_pair_closes_up_when_it_may_be_turned() {
    let ell = points(&[
        (0.0, 0.0),
        (80.0, 0.0),
        (80.0, 40.0),
        (40.0, 40.0),
        (40.0, 80.0),
        (0.0, 80.0),
    ]);
    let mut problem = Problem {
        width: Length::mm(120.0),
        pieces: vec![Piece {
            key: "L".into(),
            outline: ell,
            demand: 2,
            turns: vec![Turn::None, Turn::Half],
            on_edge: None,
            within: None,
        }],
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    // Turned, the second lies in the corner of the first, 40 to the right of it or 40 above.
    assert!((lay(&problem, 100_000).length.to_mm() - 80.0).abs() < 0.01);
    // On cloth with a nap the two corners point the same way and the second lies 40 further on
    // at best: 80 + 40, when it is pushed 40 up.
    problem.pieces[0].turns = vec![Turn::None];
    assert!((lay(&problem, 100_000).length.to_mm() - 120.0).abs() < 0.01);
}

fn panel(key: &str, length: f64, hip: f64, side: StraightSide, turns: &[Turn]) -> Piece {
    // A leg-like panel: straight along one side, the other side narrowing from hip to hem.
    let y = |v: f64| if side == StraightSide::Lower { v } else { -v };
    Piece {
        key: key.into(),
        outline: points(&[
            (0.0, y(0.0)),
            (length, y(0.0)),
            (length, y(hip * 0.5)),
            (length * 0.3, y(hip * 0.8)),
            (-20.0, y(hip)),
            (-20.0, y(hip * 0.4)),
        ]),
        demand: 1,
        turns: turns.to_vec(),
        on_edge: Some(OnEdge {
            side,
            inset: Length::ZERO,
        }),
        within: None,
    }
}

/// Six panels, three on each edge of cloth too wide for them to meet across it. Every order of
/// each edge is tried here; how near one panel follows another comes from sliding the outlines.
#[test]
fn edge_pieces_reach_the_optimum_of_all_orders() {
    let shapes = [(300.0, 120.0), (260.0, 160.0), (330.0, 90.0)];
    let mut pieces = Vec::new();
    for (i, (length, hip)) in shapes.iter().enumerate() {
        pieces.push(panel(
            &format!("left {i}"),
            *length,
            *hip,
            StraightSide::Lower,
            &[Turn::None],
        ));
        pieces.push(panel(
            &format!("right {i}"),
            *length,
            *hip,
            StraightSide::Upper,
            &[Turn::None],
        ));
    }
    let problem = Problem {
        width: Length::mm(400.0),
        pieces,
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let lay = lay(&problem, 200_000);
    let lefts: Vec<&Piece> = problem.pieces.iter().step_by(2).collect();
    let best = common::orders(3)
        .iter()
        .map(|order| common::row_length(&order.iter().map(|i| lefts[*i]).collect::<Vec<_>>()))
        .fold(f64::INFINITY, f64::min);
    assert!(
        (lay.length.to_mm() - best).abs() < 0.01,
        "{} against {best}",
        lay.length
    );
    // The path bound sees the overhang at the waist that the straight sides alone do not.
    assert!(
        (lay.bounds.path.to_mm() - best).abs() < 0.01,
        "{}",
        lay.bounds.path
    );
    assert!((lay.bounds.segment.to_mm() - 890.0).abs() < 0.01);
    assert_eq!(lay.ended, Ended::Bound);
}

/// Two panels on opposite edges of cloth of which their hips together take more than there is. Each hip
/// can only lie beside the other's leg, so one panel lies 40 further on: seen by the bound of both edges
/// together alone.
#[test]
fn panels_on_opposite_edges_of_narrow_cloth_bar_each_other() {
    let stepped = |key: &str, side: StraightSide| {
        let y = |v: f64| if side == StraightSide::Lower { v } else { -v };
        Piece {
            key: key.into(),
            outline: points(&[
                (0.0, y(0.0)),
                (100.0, y(0.0)),
                (100.0, y(45.0)),
                (60.0, y(45.0)),
                (60.0, y(30.0)),
                (0.0, y(30.0)),
            ]),
            demand: 1,
            turns: vec![Turn::None],
            on_edge: Some(OnEdge {
                side,
                inset: Length::ZERO,
            }),
            within: None,
        }
    };
    let mut problem = Problem {
        width: Length::mm(76.0),
        pieces: vec![
            stepped("lower", StraightSide::Lower),
            stepped("upper", StraightSide::Upper),
        ],
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let wide_enough = lay(&problem, 50_000);
    assert!((wide_enough.bounds.segment.to_mm() - 100.0).abs() < 0.01);
    assert!((wide_enough.bounds.path.to_mm() - 100.0).abs() < 0.01);
    assert!((wide_enough.bounds.skeleton.to_mm() - 140.0).abs() < 0.01);
    assert!((wide_enough.length.to_mm() - 140.0).abs() < 0.01);
    // Narrower still, hip and leg do not fit beside each other either.
    problem.width = Length::mm(70.0);
    let narrow = lay(&problem, 50_000);
    assert!((narrow.bounds.skeleton.to_mm() - 200.0).abs() < 0.01);
    assert!((narrow.length.to_mm() - 200.0).abs() < 0.01);
}

/// An order of many pieces is laid in portions first, and a longer search begins with what is known.
#[test]
fn many_pieces_are_all_laid_and_a_known_lay_is_only_bettered() {
    let problem = Problem {
        width: Length::mm(100.0),
        pieces: vec![
            rectangle("large", 40.0, 33.0, 61),
            rectangle("small", 25.0, 17.0, 90),
        ],
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let short = lay(&problem, 60_000);
    assert_eq!(short.placements.len(), 151);
    assert_eq!(short.placements, lay(&problem, 60_000).placements);
    let go_on = |known: &[Placement]| {
        let cancel = AtomicBool::new(false);
        let mut first = None;
        let lay = search_on(&problem, &limited(20_000, 2), known, &cancel, &mut |p| {
            first.get_or_insert(p.length);
        })
        .unwrap();
        assert_eq!(check(&problem, &lay.placements, lay.length), []);
        (first.unwrap(), lay.length)
    };
    let (first, better) = go_on(&short.placements);
    assert!((first.to_mm() - short.length.to_mm()).abs() < 1e-6);
    assert!(better <= short.length);
    // What is no lay of these pieces is not begun with.
    let (afresh, _) = go_on(&short.placements[1..]);
    assert!(afresh > short.length);
}

/// On cloth without a nap a panel turned head to tail goes to the other edge, and the two edges
/// share the panels.
#[test]
fn turning_sends_an_edge_piece_to_the_other_edge() {
    let both = [Turn::None, Turn::Half];
    let pieces = (0..4)
        .map(|i| panel(&format!("p{i}"), 300.0, 100.0, StraightSide::Lower, &both))
        .collect();
    let problem = Problem {
        width: Length::mm(300.0),
        pieces,
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let lay = lay(&problem, 100_000);
    let upper = lay
        .placements
        .iter()
        .filter(|p| p.turn == Turn::Half)
        .count();
    assert_eq!(upper, 2);
    assert!((lay.bounds.segment.to_mm() - 600.0).abs() < 0.1);
    assert!(lay.length.to_mm() < 650.0, "{}", lay.length);
}

#[test]
fn a_fault_is_kept_clear_of() {
    let mut problem = Problem {
        width: Length::mm(100.0),
        pieces: vec![rectangle("r", 50.0, 50.0, 4)],
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    assert!((lay(&problem, 50_000).length.to_mm() - 100.0).abs() < 0.01);
    // A hole in the lower half from 40 to 60: three above, and below one right of it.
    problem.faults = vec![Rect::new(40.0, 20.0, 60.0, 30.0)];
    assert!((lay(&problem, 100_000).length.to_mm() - 150.0).abs() < 0.01);
}

#[test]
fn the_gap_is_kept_between_pieces_and_not_at_the_edges() {
    let problem = Problem {
        width: Length::mm(106.0),
        pieces: vec![rectangle("r", 50.0, 50.0, 4)],
        gap: Length::mm(6.0),
        faults: vec![],
        sets: vec![],
    };
    let lay = lay(&problem, 100_000);
    assert!((lay.length.to_mm() - 106.0).abs() < 0.01, "{}", lay.length);
}

#[test]
fn the_same_seed_and_places_give_the_same_lay() {
    let problem = common::mixed(3);
    let find = |seed, workers| {
        let options = Options {
            workers,
            ..limited(60_000, seed)
        };
        search(&problem, &options, &AtomicBool::new(false), &mut |_| {}).unwrap()
    };
    let first = find(5, 2);
    assert_eq!(first, find(5, 2));
    assert_eq!(first.ended, Ended::Places);
    assert_ne!(first.placements, find(6, 2).placements);
}

#[test]
fn a_cancelled_search_gives_its_best_lay() {
    let problem = common::mixed(4);
    let cancel = AtomicBool::new(false);
    let options = Options {
        limits: Limits {
            time: None,
            places: None,
        },
        ..Options::default()
    };
    let mut told = Vec::new();
    let lay = search(&problem, &options, &cancel, &mut |p| {
        told.push(p.clone());
        if told.len() == 3 {
            cancel.store(true, Ordering::Relaxed);
        }
    })
    .unwrap();
    assert_eq!(lay.ended, Ended::Cancelled);
    assert_eq!(check(&problem, &lay.placements, lay.length), []);
    assert!(told.windows(2).all(|w| w[1].length <= w[0].length));
    assert!(told.iter().all(|p| p.bound <= p.length));
}

#[test]
fn time_ends_a_search() {
    let options = Options {
        limits: Limits {
            time: Some(Duration::from_millis(50)),
            places: None,
        },
        ..Options::default()
    };
    let problem = common::mixed(5);
    let lay = search(&problem, &options, &AtomicBool::new(false), &mut |_| {}).unwrap();
    assert_eq!(lay.ended, Ended::Time);
    assert_eq!(check(&problem, &lay.placements, lay.length), []);
}

#[test]
fn what_cannot_be_laid_is_refused_with_a_reason() {
    let good = Problem {
        width: Length::mm(100.0),
        pieces: vec![rectangle("pocket", 50.0, 50.0, 1)],
        gap: Length::ZERO,
        faults: vec![],
        sets: vec![],
    };
    let wrong = |change: &dyn Fn(&mut Problem)| {
        let mut problem = good.clone();
        change(&mut problem);
        search(
            &problem,
            &limited(1_000, 1),
            &AtomicBool::new(false),
            &mut |_| {},
        )
        .unwrap_err()
    };
    assert_eq!(wrong(&|p| p.pieces[0].demand = 0), LayError::Empty);
    assert_eq!(
        wrong(&|p| p.width = Length::ZERO),
        LayError::Width(Length::ZERO)
    );
    assert_eq!(
        wrong(&|p| p.gap = Length::mm(-1.0)),
        LayError::Gap(Length::mm(-1.0))
    );
    assert_eq!(
        wrong(&|p| p.pieces[0].turns.clear()),
        LayError::NoTurn("pocket".into())
    );
    assert_eq!(
        wrong(&|p| p.pieces[0].demand = usize::MAX),
        LayError::TooMany(usize::MAX)
    );
    assert_eq!(
        wrong(&|p| p.pieces.push(rectangle("pocket", 9.0, 9.0, 1))),
        LayError::Twice("pocket".into())
    );
    assert_eq!(
        wrong(&|p| p.faults.push(Rect::new(0.0, 0.0, 0.0, 5.0))),
        LayError::Fault(1)
    );
    let said =
        wrong(&|p| p.pieces[0].outline = points(&[(0.0, 0.0), (9.0, 9.0), (9.0, 0.0), (0.0, 5.0)]))
            .to_string();
    assert_eq!(
        said,
        "piece pocket: it crosses itself; its outline must be a closed line that does not cross itself"
    );
    let said = wrong(&|p| p.width = Length::mm(40.0)).to_string();
    assert_eq!(
        said,
        "piece pocket: it is 5 cm across and the cloth 4 cm wide; cut it in two or take wider cloth"
    );
    let edge = OnEdge {
        side: StraightSide::Lower,
        inset: Length::ZERO,
    };
    let said = wrong(&|p| {
        p.pieces[0].on_edge = Some(edge);
        p.pieces[0].turns = vec![Turn::Quarter];
    });
    assert_eq!(said, LayError::EdgeTurn("pocket".into()));
}

#[test]
fn the_check_sees_every_kind_of_mistake() {
    let problem = Problem {
        width: Length::mm(100.0),
        pieces: vec![
            rectangle("r", 50.0, 50.0, 2),
            panel("p", 300.0, 40.0, StraightSide::Lower, &[Turn::None]),
        ],
        gap: Length::mm(2.0),
        faults: vec![Rect::new(900.0, 0.0, 910.0, 100.0)],
        sets: vec![],
    };
    let good = lay(&problem, 100_000);
    let said = |change: &dyn Fn(&mut Vec<lay::Placement>)| {
        let mut placements = good.placements.clone();
        change(&mut placements);
        check(&problem, &placements, Length::mm(2_000.0))
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("; ")
    };
    assert_eq!(said(&|_| {}), "");
    assert!(said(&|p| drop(p.pop())).contains("piece p: 0 laid, 1 wanted"));
    assert!(said(&|p| p[0].turn = Turn::Half).contains("turned by 180 degrees"));
    assert!(said(&|p| p[0].y = Length::mm(60.0)).contains("reaches 1 cm beyond the cloth"));
    assert!(
        said(&|p| p[2].y += Length::mm(1.0)).contains("1 mm off its place on the finished edge")
    );
    assert!(said(&|p| (p[1].x, p[1].y) = (p[0].x, p[0].y)).contains("pieces r and r overlap"));
    let beside = |p: &mut Vec<lay::Placement>| {
        (p[0].x, p[0].y) = (Length::mm(1_000.0), Length::ZERO);
        (p[1].x, p[1].y) = (Length::mm(1_051.0), Length::ZERO);
    };
    assert!(said(&beside).contains("are 1 mm apart, nearer than the gap of 2 mm"));
    assert!(said(&|p| p[0].x = Length::mm(880.0)).contains("(fault of the cloth) overlap"));
}
