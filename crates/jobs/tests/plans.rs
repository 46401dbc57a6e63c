//! Orders that are planned, told of on the way and cancelled.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use jobs::{Finder, JobError, Kept, PlanStage, PlannedCloth, plan_order};
use lay::{Limits, Options};
use style::LoadedOrder;
use trade::System;

/// The demo's order, with words of its file changed.
fn order(folder: &Path, changes: &[(&str, &str)]) -> LoadedOrder {
    style::write_demo(folder).unwrap();
    let file = folder.join(style::demo::ORDER);
    let mut text = fs::read_to_string(&file).unwrap();
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    fs::write(&file, text).unwrap();
    style::load_order(&file).unwrap()
}

/// Looks briefly, and takes what is kept.
fn finder(collection: &Path) -> Finder<'_> {
    Finder {
        collection,
        options: Options {
            workers: 1,
            limits: Limits {
                time: Some(Duration::from_secs(1)),
                places: None,
            },
            ..Options::default()
        },
        kept: Kept::Always,
    }
}

const LINING: Option<&str> = Some("oar-lining");

#[test]
fn every_cloth_is_planned_by_estimates_and_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = order(folder.path(), &[]);
    let (never, mut told) = (AtomicBool::new(false), Vec::new());
    let planned = plan_order(&loaded, None, None, &never, &mut |stage| match stage {
        PlanStage::Cloths(done, of) => told.push((done, of)),
        other => panic!("nothing is looked for: {other:?}"),
    })
    .unwrap();
    assert_eq!(told, [(0, 3), (1, 3), (2, 3)]);
    let names: Vec<&str> = planned.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, ["tideline-14", "bargeman-drill", "oar-lining"]);
    // Rolls are stated of the first cloth only; what was not looked for has no drawing.
    assert!(planned[0].rolls.is_some() && planned[1].rolls.is_none());
    assert!(planned.iter().all(|one| {
        one.drawings(System::Metric, words::Words::english())
            .is_empty()
    }));
    // One cloth alone is planned as it is among all.
    let alone = plan_order(&loaded, LINING, None, &never, &mut |_| ()).unwrap();
    assert_eq!(format!("{:?}", alone[0]), format!("{:?}", planned[2]));
}

#[test]
fn lays_are_looked_for_told_of_kept_and_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = order(folder.path(), &[]);
    let never = AtomicBool::new(false);
    let plan = |told: &mut Vec<(String, bool)>| -> Vec<PlannedCloth> {
        let finder = finder(folder.path());
        plan_order(&loaded, LINING, Some(&finder), &never, &mut |stage| {
            if let PlanStage::Found {
                cloth,
                pairs,
                found,
            } = stage
            {
                told.push((format!("{cloth} {pairs}"), found.kept));
            }
        })
        .unwrap()
    };
    let (mut first, mut again) = (Vec::new(), Vec::new());
    let planned = plan(&mut first);
    assert!(
        !first.is_empty() && first.iter().all(|(_, kept)| !kept),
        "{first:?}"
    );
    let lays = &planned[0].plan.lays;
    let pairs: Vec<String> = lays
        .iter()
        .map(|lay| {
            format!(
                "oar-lining {}",
                planned[0].job().in_words(&lay.planned.pairs)
            )
        })
        .collect();
    assert!(
        pairs
            .iter()
            .all(|pairs| first.iter().any(|(told, _)| told == pairs))
    );
    let drawings = planned[0].drawings(System::Metric, words::Words::english());
    assert_eq!(drawings.len(), lays.len());
    assert_eq!(drawings[0].name, "oar-lining-1.svg");
    let heading = format!("Lay 1 of {}: ", lays.len());
    let marks = planned[0].marks(0, lays[0].found.as_ref().unwrap());
    assert!(marks.heading.starts_with(&heading), "{}", marks.heading);
    // What was found is found again, and the plan is the same.
    let planned_again = plan(&mut again);
    assert!(again.iter().all(|(_, kept)| *kept), "{again:?}");
    assert_eq!(planned_again[0].plan.cloth, planned[0].plan.cloth);
}

#[test]
fn a_cancelled_plan_ends_at_once_and_keeps_the_lay_it_had() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = order(folder.path(), &[]);
    let (cancel, mut found_so_far) = (AtomicBool::new(false), Vec::new());
    let mut longer = finder(folder.path());
    longer.options.limits.time = Some(Duration::from_secs(3000));
    let ended = plan_order(
        &loaded,
        None,
        Some(&longer),
        &cancel,
        &mut |stage| match stage {
            PlanStage::Cloths(..) => {}
            PlanStage::Looking { progress, .. } => {
                assert!(!progress.placements.is_empty());
                cancel.store(true, Ordering::Relaxed);
            }
            PlanStage::Found { pairs, found, .. } => {
                found_so_far.push(pairs.to_owned());
                assert!(!found.kept && found.not_kept.is_none());
            }
        },
    );
    assert!(matches!(ended, Err(JobError::Cancelled)), "{ended:?}");
    assert_eq!(found_so_far.len(), 1);
    let kept = fs::read_dir(folder.path().join(style::LAYS_FOLDER)).unwrap();
    assert!(kept.count() >= 1);
    // One that is cancelled before it begins looks for nothing.
    let nothing = plan_order(&loaded, LINING, None, &cancel, &mut |_| ());
    assert!(matches!(nothing, Err(JobError::Cancelled)));
}

#[test]
fn what_cannot_be_planned_is_said_with_what_would_be_right() {
    let folder = tempfile::tempdir().unwrap();
    order(folder.path(), &[("most_lays = 5", "most_lays = 1")]);
    let cloths = folder.path().join(style::CLOTHS_FILE);
    let text = fs::read_to_string(&cloths).unwrap();
    let (_, lining) = text.split_once("[cloths.oar-lining]").unwrap();
    fs::write(&cloths, format!("{text}\n[cloths.spare-lining]{lining}")).unwrap();
    let loaded = style::load_order(&folder.path().join(style::demo::ORDER)).unwrap();
    let never = AtomicBool::new(false);
    let refused = |cloth| plan_order(&loaded, cloth, None, &never, &mut |_| ()).unwrap_err();
    let velvet = refused(Some("velvet"));
    assert_eq!(
        velvet.to_string(),
        "the collection has no cloth named velvet"
    );
    assert!(velvet.instead().unwrap().contains("tideline-14"));
    let other = refused(Some("spare-lining"));
    assert!(matches!(other, JobError::NothingOfCloth { .. }), "{other}");
    assert_eq!(
        other.instead().unwrap(),
        "it has pieces of tideline-14, bargeman-drill, oar-lining"
    );
    let tight = refused(Some("tideline-14"));
    assert!(tight.to_string().contains("in 1 lay of"), "{tight}");
    assert!(tight.instead().unwrap().contains("allow more lays"));
}
