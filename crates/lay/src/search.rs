//! The search as a whole: a first lay at once, then better ones for as long as it may go on.

use std::sync::atomic::AtomicBool;
use std::time::Instant;

use trade::{Length, Share};

use crate::bounds::Bounds;
use crate::check::check;
use crate::first_lay::start;
use crate::lay::{Lay, Placement};
use crate::limits::{Options, Progress, left_of};
use crate::parallel_search::ParallelSearch;
use crate::portions::{Begun, Heard, Portions};
use crate::poses::{Poses, placements, poses_of};
use crate::problem::{LayError, Problem};
use crate::shapes::Shapes;
use crate::tables::Tables;

/// Looks for a short lay.
///
/// `tell` is called for the first lay, for every shorter one (a few in a row may be told as one),
/// twice a second while workers try places, and at the end. Setting `cancel` ends the search; the best lay found so far is returned.
///
/// # Errors
/// A [`LayError`] when the problem makes no sense or a piece has no place.
pub fn search(
    problem: &Problem,
    options: &Options,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    search_on(problem, options, &[], cancel, tell)
}

/// Looks for a shorter lay than one that is known, as [`search`] does. Where the known lay does not
/// keep the rules of the problem, the search begins afresh.
///
/// # Errors
/// As [`search`].
pub fn search_on(
    problem: &Problem,
    options: &Options,
    known: &[Placement],
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    let mut portions = Portions::new(cancel);
    let began = Instant::now();
    let mut last: Option<Progress> = None;
    divided(problem, options, known, &mut portions, &mut |heard| {
        match (heard, &mut last) {
            (Heard::Lay(progress), last) => *last = Some(progress),
            (Heard::Going(places), Some(last)) => {
                last.places = last.places.max(places);
                last.elapsed = began.elapsed();
            }
            (Heard::Going(_), None) => {}
        }
        if let Some(progress) = &last {
            tell(progress);
        }
    })
}

/// A search that first divides the problem where it has many pieces.
pub(crate) fn divided(
    problem: &Problem,
    options: &Options,
    known: &[Placement],
    portions: &mut Portions<'_>,
    hear: &mut dyn FnMut(Heard),
) -> Result<Lay, LayError> {
    let before = portions.places;
    let began = Instant::now();
    let shapes = Shapes::new(problem)?;
    let known = poses_of(problem, &shapes, known).filter(|p| {
        check(
            problem,
            &placements(problem, &shapes, p),
            Length::mm(p.length),
        )
        .is_empty()
    });
    // Nobody waits for a first lay of a half of something larger, or asks for its bounds.
    let inner = std::mem::replace(&mut portions.inner, true);
    let half = inner && problem.sets.len() > 1;
    let first = match known {
        None if !half => Some(start(problem, &shapes, options.seed)?),
        _ => None,
    };
    let area = Length::mm(shapes.area / shapes.width);
    let progress = |poses: &Poses, places: u64, bound: Length| Progress {
        placements: placements(problem, &shapes, poses),
        places,
        length: Length::mm(poses.length),
        efficiency: efficiency(&shapes, poses.length),
        bound,
        elapsed: began.elapsed(),
    };
    if let Some(first) = known.as_ref().or(first.as_ref()) {
        hear(Heard::Lay(progress(first, 0, area)));
    }
    let tables = Tables::new(&shapes);
    let bounds = if half {
        Bounds::of_area(area)
    } else {
        crate::bounds::bounds(problem)?
    };
    let bound = bounds.best();
    if !inner {
        portions.by_sets = bounds.edges_decide();
    }
    let Begun { first, row } = match known {
        Some(first) => Begun { first, row: None },
        None => {
            let left = Options {
                limits: left_of(&options.limits, began, 0),
                ..*options
            };
            portions.begin((problem, &tables), &left, first, hear)?
        }
    };
    let mut places = portions.places - before;
    let mut standing = |poses: &Poses, places: u64| {
        let best = row.as_ref().filter(|row| row.length < poses.length);
        hear(Heard::Lay(progress(best.unwrap_or(poses), places, bound)));
    };
    standing(&first, places);
    let effort = ParallelSearch {
        tables: &tables,
        options: Options {
            limits: left_of(&options.limits, began, places),
            ..*options
        },
        bound: bound.to_mm(),
        cancel: portions.cancel,
    };
    let found = if row.is_some() {
        effort.search_in_heats(problem, &first, &mut |best, tried| {
            standing(best, places + tried)
        })
    } else {
        effort.search(&first, &mut |best, tried| standing(best, places + tried))
    };
    let ended = found.ended;
    places += found.tried;
    portions.places += found.tried;
    let best = match row {
        Some(row) if row.length < found.best.length => row,
        _ => found.best,
    };
    hear(Heard::Lay(progress(&best, places, bound)));
    let lay = |poses: &Poses| Lay {
        placements: placements(problem, &shapes, poses),
        length: Length::mm(poses.length),
        efficiency: efficiency(&shapes, poses.length),
        bounds,
        ended,
        places,
    };
    let found = lay(&best);
    // Should the search and the check ever disagree, the first lay stands.
    if check(problem, &found.placements, found.length).is_empty() {
        Ok(found)
    } else {
        Ok(lay(&first))
    }
}

fn efficiency(shapes: &Shapes, length: f64) -> Share {
    Share::ratio(shapes.area / (shapes.width * length))
}
