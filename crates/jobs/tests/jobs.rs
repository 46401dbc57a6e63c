//! Work that is done, kept, gone on with and cancelled.

#![allow(clippy::unwrap_used)]

use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use cutting::Way;
use jobs::{
    Finder, JobError, Kept, LayJob, LayOrder, PackOrder, PackStage, PatternKind, PatternOrder,
    kept_lay,
};
use lay::{Ended, Limits, Options};
use style::{Loaded, Size};
use trade::Length;

fn demo(folder: &Path) -> Loaded {
    style::load(&style::write_demo(folder).unwrap()).unwrap()
}

fn order(cloth: Option<&str>, pairs: &[(Size, u32)]) -> LayOrder {
    LayOrder {
        cloth: cloth.map(str::to_owned),
        pairs: pairs.to_vec(),
        way: Way::TwoWay,
        gap: Length::ZERO,
        zones: 1,
        band: None,
    }
}

fn finder(collection: &Path, kept: Kept, seconds: u64) -> Finder<'_> {
    Finder {
        collection,
        options: Options {
            workers: 1,
            limits: Limits {
                time: Some(Duration::from_secs(seconds)),
                places: None,
            },
            ..Options::default()
        },
        kept,
    }
}

#[test]
fn a_cancelled_search_keeps_what_it_found_for_as_long_as_it_looked() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(folder.path());
    let job = LayJob::new(&loaded, &order(None, &[])).unwrap();
    let (cancel, mut told) = (AtomicBool::new(false), 0);
    let found = finder(folder.path(), Kept::LongEnough, 3000)
        .find(&job.spread, &job.words, &cancel, &mut |progress| {
            told += 1;
            assert_eq!(progress.placements.len(), 19);
            cancel.store(true, Ordering::Relaxed);
        })
        .unwrap();
    assert_eq!((found.lay.ended, found.kept), (Ended::Cancelled, false));
    assert!(told >= 2 && found.not_kept.is_none());
    let (kept, seconds) = kept_lay(folder.path(), &job.spread, &job.words).unwrap();
    assert_eq!(kept.length, found.lay.length);
    assert!(seconds < 3000, "{seconds}");

    // It will do for somebody who takes any; whoever goes on gets none longer.
    let never = AtomicBool::new(false);
    let find = |kept, seconds| {
        finder(folder.path(), kept, seconds)
            .find(&job.spread, &job.words, &never, &mut |_| ())
            .unwrap()
    };
    assert!(find(Kept::Always, 3000).kept);
    let further = find(Kept::ToGoOn, 1);
    assert!(further.lay.length <= found.lay.length);
    let (_, longer) = kept_lay(folder.path(), &job.spread, &job.words).unwrap();
    assert_eq!(longer, seconds + 1);
}

#[test]
fn a_search_that_is_killed_leaves_what_it_had_found() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(folder.path());
    let job = LayJob::new(&loaded, &order(None, &[])).unwrap();
    let cancel = AtomicBool::new(false);
    let mut there = None;
    // A search that is killed never comes to its end, so what counts is what is kept while it goes on.
    finder(folder.path(), Kept::LongEnough, 120)
        .find(&job.spread, &job.words, &cancel, &mut |_| {
            if there.is_none() {
                there = kept_lay(folder.path(), &job.spread, &job.words);
                cancel.store(there.is_some(), Ordering::Relaxed);
            }
        })
        .unwrap();
    let (kept, seconds) = there.unwrap();
    assert_eq!(kept.placements.len(), 19);
    assert!(kept.bounds.best() > Length::ZERO && kept.length >= kept.bounds.best());
    assert!(seconds >= 2, "{seconds}");
    // What is kept at the end counts each second once.
    let (_, all) = kept_lay(folder.path(), &job.spread, &job.words).unwrap();
    assert!((seconds..120).contains(&all), "{seconds} {all}");
}

#[test]
fn what_the_style_does_not_have_is_refused_with_what_it_has() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(folder.path());
    let refused = |order: &LayOrder| LayJob::new(&loaded, order).unwrap_err();
    let cloth = refused(&order(Some("moon"), &[]));
    assert!(cloth.instead().unwrap().contains("tideline-14"));
    let size = refused(&order(None, &[(Size::new(99, 99), 1)]));
    assert!(matches!(size, JobError::NoSuchSize { .. }), "{size}");
    assert!(size.instead().unwrap().contains("its waists are 28"));
}

#[test]
fn a_pack_and_patterns_end_when_nobody_waits() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(folder.path());
    let date = "2026-03-01".parse().unwrap();
    let cancel = AtomicBool::new(false);
    let mut stages = Vec::new();
    let pack = jobs::pack(
        &loaded,
        &PackOrder { size: None, date },
        &cancel,
        &mut |stage| {
            stages.push(stage);
            cancel.store(stage == PackStage::Lays(1, 3), Ordering::Relaxed);
        },
    );
    assert!(matches!(pack, Err(JobError::Cancelled)), "{pack:?}");
    assert_eq!(stages.first(), Some(&PackStage::Sizes(0, 27)));
    assert_eq!(stages.last(), Some(&PackStage::Lays(1, 3)));

    let order = PatternOrder {
        kind: PatternKind::Dxf,
        sizes: Vec::new(),
        date,
        band: None,
        nested: false,
    };
    let mut sizes = 0;
    let cancel = AtomicBool::new(false);
    let made = jobs::patterns(&loaded, &order, &cancel, &mut |done, _| {
        sizes = done;
        cancel.store(done == 2, Ordering::Relaxed);
    });
    assert!(matches!(made, Err(JobError::Cancelled)), "{made:?}");
    assert_eq!(sizes, 2);
}
