//! Whatever the numbers, there is a garment and no panic.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use proptest::prelude::*;
use sewing::{findings_of_run, make, placements};
use style::{Closing, Construction, MeasureId, Size};
use trade::{Length, StitchDensity};

/// Lengths no chart should hold, and some it might.
fn wild() -> impl Strategy<Value = f64> {
    prop_oneof![
        Just(0.0),
        Just(-1.0),
        Just(1.0e-9),
        Just(1.0e7),
        Just(-1.0e7),
        -500.0..1500.0_f64,
    ]
}

fn cases(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(cases(24))]

    /// Charts: one or two measures are anything at all.
    #[test]
    fn any_chart_gives_a_garment(
        changes in prop::collection::vec((0..MeasureId::ALL.len(), wild()), 1..3),
        waist in 1_u32..90,
    ) {
        let mut loaded = ferryman();
        for (index, value) in changes {
            if let Some((_, entry)) = loaded.style.chart.get_index_mut(index) {
                entry.value = Length::mm(value);
            }
        }
        let garment = make(&loaded.style, &loaded.collection, Size::new(waist, 32));
        prop_assert!(garment.cut.len() >= 15);
        for row in &garment.rows {
            prop_assert!(row.length().is_finite());
        }
        let _ = placements(&garment.pattern);
    }
}

proptest! {
    #![proptest_config(cases(64))]

    /// Seams, pockets, trims and labels: anything at all on a sound chart.
    #[test]
    fn any_seam_gives_a_garment(
        seam in 0_usize..19,
        construction in prop::sample::select(Construction::WORDS),
        offset in wild(),
        density in prop_oneof![Just(0.0), Just(f64::NAN), Just(-3.0), 0.1..50.0_f64],
        lengths in prop::collection::vec(wild(), 10),
        counts in (0_u32..100_000, 0_u32..100_000),
        place in "[a-z ,]{0,40}",
    ) {
        let mut loaded = ferryman();
        let style = &mut loaded.style;
        if let Some((_, spec)) = style.seams.get_index_mut(seam) {
            spec.construction = Some(construction.1);
            if let Some(row) = spec.rows.as_mut().and_then(|rows| rows.first_mut()) {
                row.offset = Length::mm(offset);
                row.density = StitchDensity::per_cm(density);
                row.yarn = place.clone();
            }
        }
        let length = |k: usize| Length::mm(lengths[k]);
        style.pockets.coin.below_band = length(0);
        style.pockets.bag.depth = length(1);
        style.pockets.bag.facing = length(2);
        style.pockets.back.left.foot_width = length(3);
        style.pockets.back.right.outer_drop = length(4);
        style.bartacks.length = length(5);
        style.bartacks.width = length(6);
        if let Some(patch) = &mut style.patch {
            patch.from_centre = length(7);
        }
        for trim in loaded.collection.trims.values_mut() {
            trim.diameter = trim.diameter.map(|_| length(8));
            trim.width = trim.width.map(|_| length(9));
        }
        style.fly.buttons = counts.0;
        style.fly.closing = if counts.0 % 2 == 0 { Closing::Buttons } else { Closing::Zip };
        style.loops.count = counts.1;
        style.labels[0].place = place;
        let garment = make(style, &loaded.collection, Size::new(32, 32));
        for row in &garment.rows {
            let _ = row.stitches();
        }
        for fixing in &garment.fixings {
            prop_assert!(fixing.at.is_finite());
        }
        prop_assert_eq!(findings_of_run(std::slice::from_ref(&garment)).len(), garment.findings.len());
    }
}
