//! The demo's order, from its file to its lays.
#![allow(clippy::unwrap_used)]

use std::path::PathBuf;
use std::sync::atomic::AtomicBool;

use lay::{Limits, Options, check, check_matches, match_copies, search};
use spreading::{
    ClothJob, CutOrder, Estimates, OrderError, PlyLength, Task, Unsure, plan, plan_cloth,
};
use style::{LoadedOrder, load_order};
use tempfile::TempDir;
use trade::Length;

/// The demo's order with parts of its text replaced.
fn order(changes: &[(&str, &str)]) -> (TempDir, LoadedOrder) {
    let folder = tempfile::tempdir().unwrap();
    let root = folder.path().join("saltmarsh");
    style::write_demo(&root).unwrap();
    let file: PathBuf = root.join(style::demo::ORDER);
    let mut text = std::fs::read_to_string(&file).unwrap();
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    std::fs::write(&file, text).unwrap();
    let loaded = load_order(&file).unwrap();
    (folder, loaded)
}

const FEW: (&str, &str) = (
    "pairs = { 30x32 = 6, 31x32 = 8, 32x32 = 14, 33x32 = 10, 34x32 = 10, 36x32 = 4, 32x34 = 6, 34x34 = 4 }",
    "pairs = { 30x32 = 2, 32x32 = 4 }",
);

fn quick(places: u64) -> Options {
    Options {
        limits: Limits {
            time: None,
            places: Some(places),
        },
        ..Options::default()
    }
}

fn cut_exactly(job: &ClothJob<'_>, plan: &spreading::ClothPlan) {
    let mut cut = vec![0; job.kinds.len()];
    for lay in &plan.lays {
        for (cut, pairs) in cut.iter_mut().zip(&lay.planned.pairs) {
            *cut += pairs * lay.planned.plies;
        }
        assert!(lay.ply <= job.limits.table);
        assert!(lay.planned.plies <= job.limits.plies(job.cloth.thickness));
        assert!(lay.planned.pairs_in_ply() <= job.limits.most_pairs);
    }
    assert_eq!(cut, job.wanted());
    assert!(plan.lays.len() <= job.limits.most_lays as usize);
}

#[test]
fn every_cloth_of_the_demo_order_is_planned_exactly() {
    let (_folder, loaded) = order(&[]);
    let cut = CutOrder::new(&loaded).unwrap();
    let jobs = cut.jobs();
    let names: Vec<&str> = jobs.iter().map(|job| job.name).collect();
    assert_eq!(names, ["tideline-14", "bargeman-drill", "oar-lining"]);
    for job in &jobs {
        let plan = plan_cloth(job, None).unwrap();
        cut_exactly(job, &plan);
        assert!(plan.proved, "{}", job.name);
        assert_eq!(plan.pairs, 62);
        assert!(plan.lays.iter().all(|lay| lay.found.is_none()));
        // A pair of jeans of narrow cloth takes between two and three metres.
        if job.name == "tideline-14" {
            assert!((2.0..3.0).contains(&plan.each().to_m()), "{}", plan.each());
        }
    }
}

#[test]
fn searched_lays_take_the_place_of_estimates() {
    let (_folder, loaded) = order(&[FEW]);
    let cut = CutOrder::new(&loaded).unwrap();
    let jobs = cut.jobs();
    let job = &jobs[0];
    let mut searched = Vec::new();
    let plan = plan_cloth(
        job,
        Some(&mut |spread, pairs| {
            searched.push(pairs.to_vec());
            search(
                &spread.problem,
                &quick(400),
                &AtomicBool::new(false),
                &mut |_| (),
            )
        }),
    )
    .unwrap();
    cut_exactly(job, &plan);
    let mut cloth = Length::ZERO;
    for lay in &plan.lays {
        let found = lay.found.as_ref().unwrap();
        assert!(searched.contains(&lay.planned.pairs));
        assert_eq!(found.length, lay.planned.length);
        assert!(check(&lay.spread.problem, &found.placements, found.length).is_empty());
        assert!(lay.splices.iter().all(|s| s.lap() <= job.limits.most_lap));
        cloth += (found.length + Length::cm(4.0)) * f64::from(lay.planned.plies);
    }
    assert!((cloth - plan.cloth).abs() < Length::mm(1e-6));
    // Nothing is looked for twice.
    let count = searched.len();
    searched.sort();
    searched.dedup();
    assert_eq!(searched.len(), count);
}

#[test]
fn left_and_right_lie_in_one_zone_or_near_each_other() {
    let (_folder, loaded) = order(&[
        FEW,
        (
            "most_lays = 5",
            "most_lays = 5\nzones = 2\nmatch_within = \"1.5 m\"",
        ),
    ]);
    let cut = CutOrder::new(&loaded).unwrap();
    let jobs = cut.jobs();
    let spread = jobs[0].spread(&[1, 1]);
    let zoned: Vec<_> = spread
        .problem
        .pieces
        .iter()
        .filter(|p| p.within.is_some())
        .collect();
    assert!(!zoned.is_empty());
    // Each piece with a zone has its twin with the same zone and as many copies.
    for piece in &zoned {
        let named = spread.named(&piece.key).unwrap();
        let twin = zoned.iter().find(|other| {
            let other_named = spread.named(&other.key).unwrap();
            other.within == piece.within
                && other_named.mirrored != named.mirrored
                && (&other_named.size, &other_named.piece) == (&named.size, &named.piece)
        });
        assert_eq!(twin.unwrap().demand, piece.demand, "{}", piece.key);
    }
    // The legs lie on the edges, so they are matched along the cloth.
    let legs = spread.matched.iter().filter(|m| m.first.contains("32x32"));
    assert!(legs.count() >= 2);
    let mut lay = search(
        &spread.problem,
        &quick(300),
        &AtomicBool::new(false),
        &mut |_| (),
    )
    .unwrap();
    match_copies(&spread.problem, &mut lay.placements, &spread.matched);
    assert!(check(&spread.problem, &lay.placements, lay.length).is_empty());
    let loose: Vec<_> = spread
        .matched
        .iter()
        .map(|matched| lay::Matched {
            within: lay.length,
            ..matched.clone()
        })
        .collect();
    assert!(check_matches(&spread.problem, &lay.placements, &loose).is_empty());
}

#[test]
fn an_order_that_cannot_be_cut_says_why() {
    let (_folder, loaded) = order(&[("most_lays = 5", "most_lays = 1")]);
    let cut = CutOrder::new(&loaded).unwrap();
    let error = plan_cloth(&cut.jobs()[0], None).unwrap_err();
    assert_eq!(
        error.to_string(),
        "tideline-14: no plan cuts 62 pairs exactly in 1 lay of at most 4 pairs and 48 plies on a table of 1200.0 cm"
    );
}

/// A table as long as a pair may need at least, but not by the first estimate: that is no proof that there is no plan.
#[test]
fn a_table_that_is_too_short_by_estimates_only_is_not_said_to_leave_no_plan() {
    let (_folder, loaded) = order(&[FEW]);
    let cut = CutOrder::new(&loaded).unwrap();
    let jobs = cut.jobs();
    let at = |table: Length, searching: bool| {
        let limits = style::SpreadLimits {
            table,
            ..jobs[0].limits.clone()
        };
        let job = ClothJob {
            limits: &limits,
            ..jobs[0].clone()
        };
        let mut find = |spread: &cutting::Spread, _: &[u32]| {
            search(
                &spread.problem,
                &quick(200),
                &AtomicBool::new(false),
                &mut |_| (),
            )
        };
        plan_cloth(&job, searching.then_some(&mut find)).map(|plan| plan.cloth)
    };
    let one = |job: &ClothJob<'_>| {
        let bounds = Estimates::new(job).unwrap().bounds();
        PlyLength::of(&bounds, &[0, 1]).unwrap() + job.limits.end_loss * 2.0
    };
    let least = one(&jobs[0]);
    let none = at(least - Length::mm(1.0), false).unwrap_err();
    assert!(matches!(none, OrderError::NoPlan { .. }), "{none}");
    let unsure = at(least + Length::mm(1.0), false).unwrap_err();
    assert!(
        matches!(
            unsure,
            OrderError::NotFound {
                why: Unsure::Estimated,
                ..
            }
        ),
        "{unsure}"
    );
    let looked_for = at(least + Length::mm(1.0), true);
    assert!(
        matches!(
            looked_for,
            Ok(_)
                | Err(OrderError::NotFound {
                    why: Unsure::LookedFor,
                    ..
                })
        ),
        "{looked_for:?}"
    );
}

/// Every piece of a lay belongs to one pair of it, whatever zones its copies are parted into.
#[test]
fn the_sets_of_a_lay_are_its_pairs() {
    for zones in ["", "zones = 2\n", "zones = 3\n"] {
        let limits = format!("[limits]\n{zones}");
        let (_folder, loaded) = order(&[FEW, ("[limits]\n", &limits)]);
        let cut = CutOrder::new(&loaded).unwrap();
        for job in &cut.jobs() {
            let problem = job.spread(&[1, 3]).problem;
            assert_eq!(problem.sets.len(), 4, "{}", job.name);
            for (k, piece) in problem.pieces.iter().enumerate() {
                let counts = problem
                    .sets
                    .iter()
                    .map(|set| set.get(k).copied().unwrap_or(0));
                assert_eq!(counts.sum::<usize>(), piece.demand, "{}", piece.key);
            }
            let pieces = |set: &Vec<usize>| set.iter().sum::<usize>();
            let one: usize = job
                .spread(&[1, 0])
                .problem
                .pieces
                .iter()
                .map(|p| p.demand)
                .sum();
            assert!(
                problem.sets.iter().all(|set| pieces(set) == one),
                "{}",
                job.name
            );
        }
    }
}

/// Whatever more is allowed, the order that can be cut can still be cut, with no more cloth.
#[test]
fn allowing_more_pairs_or_lays_never_loses_a_plan() {
    let (_folder, loaded) = order(&[]);
    let cut = CutOrder::new(&loaded).unwrap();
    let jobs = cut.jobs();
    for table in [Length::m(12.0), Length::m(60.0)] {
        let limits = style::SpreadLimits {
            table,
            ..jobs[0].limits.clone()
        };
        let job = ClothJob {
            limits: &limits,
            ..jobs[0].clone()
        };
        let estimates = Estimates::new(&job).unwrap();
        for wanted in [job.wanted(), vec![12, 10, 0, 9, 0, 7, 0, 0]] {
            let mut before: Vec<Option<Length>> = vec![None; 9];
            for most_pairs in [4, 6, 8, 12, 20] {
                let task = Task {
                    wanted: wanted.clone(),
                    most_plies: limits.plies(job.cloth.thickness),
                    most_pairs,
                    lays: 1..=8,
                    ends: limits.end_loss * 2.0,
                };
                let plans = plan(&task, &estimates);
                for (lays, before) in before.iter_mut().enumerate() {
                    let here = plans.of_lays.iter().find(|plan| plan.lays.len() == lays);
                    let here = here.map(|plan| plan.cloth);
                    if let Some(known) = *before {
                        assert!(here.unwrap() <= known + Length::mm(0.01), "{task:?} {lays}");
                    }
                    *before = here;
                }
                assert!(before[4..].iter().all(Option::is_some), "{task:?}");
                assert!(plans.proved, "{task:?}");
            }
        }
    }
}
