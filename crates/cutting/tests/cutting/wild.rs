//! Whatever the style, there are cut pieces, no panic, and no cut line that crosses itself.

use std::collections::BTreeMap;

use cutting::{AgainstSkew, BandCut, ClothWash, Plan, Shrinkage, cut};
use geometry::is_simple;
use proptest::prelude::*;
use style::{Construction, MeasureId, Size, known};
use trade::{Length, Share};

use crate::common::{doubles_back, ferryman, is_shaped, sewn};
use crate::corners;

fn cases(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

fn any_plan() -> impl Strategy<Value = Plan> {
    let wash =
        (-15.0..40.0f64, -15.0..40.0f64, -20.0..20.0f64).prop_map(|(warp, weft, skew)| ClothWash {
            shrinkage: Shrinkage {
                warp: Share::percent(warp),
                weft: Share::percent(weft),
            },
            skew: Share::percent(skew),
        });
    let band = prop_oneof![
        Just(BandCut::Unstated),
        Just(BandCut::AlongWeft),
        Just(BandCut::Preshrunk(Shrinkage::NONE)),
        Just(BandCut::StatedEase),
    ];
    let skew = prop_oneof![
        Just(AgainstSkew::Straight),
        Just(AgainstSkew::Sheared),
        Just(AgainstSkew::GrainTurned)
    ];
    (
        prop::option::of(wash.clone()),
        prop::option::of(wash),
        band,
        skew,
    )
        .prop_map(|(shell, pocketing, band, against_skew)| Plan {
            against_skew,
            shell,
            pocketing,
            lining: pocketing,
            band,
        })
}

proptest! {
    #![proptest_config(cases(48))]

    /// Every seam in any construction it may have, every size: all corners can be shaped.
    #[test]
    fn any_construction_gives_a_simple_cut_line(
        picks in prop::collection::vec(0_usize..8, 24),
        waist in 28_u32..39, length in 30_u32..35, shaped in any::<bool>(),
        plan in any_plan(),
    ) {
        let mut loaded = ferryman();
        if shaped {
            loaded.style.shape.outseam = style::OutseamLine::Shaped;
        }
        for (pick, seam) in picks.iter().zip(known::seams()) {
            if let Some(spec) = loaded.style.seams.get_mut(&seam.id) {
                let choice: &[Construction] = seam.constructions;
                spec.construction = Some(choice[pick % choice.len()]);
                spec.lap = None;
            }
        }
        let all = cut(&sewn(&loaded, Size::new(waist, length)), &plan);
        for piece in &all.pieces {
            prop_assert!(is_simple(&piece.cut), "{} {:?}", piece.code(), piece.on);
            prop_assert!(is_shaped(piece), "{} {:?}", piece.code(), piece.on);
            prop_assert!(!doubles_back(&piece.cut), "{} {:?}", piece.code(), piece.on);
        }
        corners::check(&all, "wild", &mut BTreeMap::new());
        let said: Vec<_> = all.findings.iter().filter(|f| f.code == "cutting::cut-line").collect();
        prop_assert!(said.is_empty(), "{said:?}");
    }
}

proptest! {
    #![proptest_config(cases(24))]

    /// Charts: one or two measures are anything at all.
    #[test]
    fn any_chart_gives_cut_pieces(
        changes in prop::collection::vec((0..MeasureId::ALL.len(), prop_oneof![
            Just(0.0), Just(-1.0), Just(1.0e-9), Just(1.0e7), Just(-1.0e7), -500.0..1500.0_f64,
        ]), 1..3),
        waist in 1_u32..90,
        plan in any_plan(),
    ) {
        let mut loaded = ferryman();
        for (index, value) in changes {
            if let Some((_, entry)) = loaded.style.chart.get_index_mut(index) {
                entry.value = Length::mm(value);
            }
        }
        let all = cut(&sewn(&loaded, Size::new(waist, 32)), &plan);
        for piece in &all.pieces {
            let _ = (piece.on_cloth(true), piece.on_cloth(false), piece.area());
        }
        prop_assert!(all.pieces.len() >= 12);
    }
}
