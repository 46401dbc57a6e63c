//! Any chart either drafts in full or says what fights; no chart, however wild, makes drafting fail.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::{Chart, table_rows};
use draft::{Spec, draft, findings, remedies, walk};
use proptest::prelude::*;
use style::{Level, MeasureId};
use trade::{Angle, Length};

/// One of the table's charts with every measure moved by up to 3 % on its own.
fn plausible() -> impl Strategy<Value = Chart> {
    let rows = table_rows();
    let moved = prop::array::uniform8(0.97..1.03f64);
    (0..rows.len(), moved).prop_map(move |(k, by)| {
        let c = &rows[k];
        Chart {
            waist: c.waist * by[0],
            seat: c.seat * by[1],
            thigh: c.thigh * by[2],
            knee: c.knee * by[3],
            hem: c.hem * by[4],
            front_rise: c.front_rise * by[5],
            back_rise: c.back_rise * by[6],
            inseam: c.inseam * by[7],
            ..c.clone()
        }
    })
}

/// A length nobody would chart.
fn wild() -> impl Strategy<Value = f64> {
    prop_oneof![
        Just(0.0),
        Just(-0.0),
        Just(1e-9),
        Just(1e6),
        Just(-1e6),
        -500.0..0.0f64,
        0.0..2000.0f64,
    ]
}

type Field = fn(&mut Spec) -> &mut Length;

/// The lengths of a size beside its measures and levels.
const FIELDS: [Field; 18] = [
    |s| &mut s.seat_split,
    |s| &mut s.thigh_split,
    |s| &mut s.knee_split,
    |s| &mut s.hem_split,
    |s| &mut s.waist_split,
    |s| &mut s.front_tilt,
    |s| &mut s.seat_dart,
    |s| &mut s.inseam_stretch,
    |s| &mut s.band_ease,
    |s| &mut s.coin_below_band,
    |s| &mut s.coin_from_side,
    |s| &mut s.coin_lower_narrowing,
    |s| &mut s.bag_depth,
    |s| &mut s.bag_width,
    |s| &mut s.facing,
    |s| &mut s.back_pocket_left.foot_width,
    |s| &mut s.back_pocket_left.side_length,
    |s| &mut s.back_pocket_right.outer_drop,
];

/// How many lengths a size has.
const LENGTHS: usize = MeasureId::ALL.len() + Level::ALL.len() + FIELDS.len();

/// Puts a length of a size: its measures come first, then its levels, then the others.
fn put(spec: &mut Spec, which: usize, to: Length) {
    let (levels, others) = (
        MeasureId::ALL.len(),
        MeasureId::ALL.len() + Level::ALL.len(),
    );
    if let Some(measure) = MeasureId::ALL.get(which) {
        spec.set(*measure, to);
    } else if which < others {
        spec.set_level(Level::ALL[which - levels], to);
    } else {
        *FIELDS[which - others](spec) = to;
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn plausible_charts_draft_or_say_why_not(chart in plausible()) {
        let drafted = draft(&chart.spec());
        match &drafted.conflict {
            None => {
                prop_assert!(drafted.pattern.worst_measure() <= Length::mm(0.01));
                for walked in walk(&drafted.pattern) {
                    prop_assert!(walked.gap().abs() <= Length::mm(0.1), "{}", walked.join.name.code());
                }
            }
            // So near a chart that drafts, some change must put it right.
            Some(conflict) => prop_assert!(!remedies(&chart.doc()).is_empty(), "{conflict:?}"),
        }
    }

    #[test]
    fn wild_charts_never_fail(
        changes in prop::collection::vec((0..LENGTHS, wild()), 1..6),
        slope in -400.0..400.0f64,
        loops in prop_oneof![Just(0), Just(1), Just(u32::MAX), 2..12u32],
    ) {
        let chart = Chart::straight();
        let mut spec = chart.spec();
        for (field, mm) in changes {
            put(&mut spec, field, Length::mm(mm));
        }
        spec.seat_angle = Angle::deg(slope);
        spec.loop_count = loops;
        let drafted = draft(&spec);
        let found = findings(&drafted, chart.size, &chart.doc());
        prop_assert_eq!(
            drafted.conflict.is_some(),
            found.iter().any(|f| f.code == "fit::conflict")
        );
    }
}
