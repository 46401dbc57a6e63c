//! The pair as it is sewn, against the published rule of a length before shrinkage.

#![allow(clippy::unwrap_used)]

mod common;

use common::ferryman;
use draft::{EdgeId, PieceId};
use sewing::work::{Operation, sewing_order};
use sewing::yarn::{Sewn, consumption};
use sewing::{FixingKind, make};
use style::{BandCutting, MeasureId, SeamId, Wash, WashFinish, WashedBy};
use trade::{Length, Share, Washed};
use words::Words;

/// A finished length is sewn L ÷ (1 − s) long (foralltex.com, "shrinkage math"): the demo's shell loses 8 % along
/// its warp and 4 % along its weft, worked out here from the chart alone. What lies along one thread is
/// exact; the inseam and the rises lean, so they lie between the two.
#[test]
fn the_chart_before_the_wash_follows_from_the_one_after() {
    let loaded = ferryman();
    for size in loaded.style.sizes.all() {
        let garment = make(&loaded.style, &loaded.collection, size);
        let after = |measure| garment.pattern.measure(measure).unwrap();
        let before = |measure| garment.measure_before_wash(measure).unwrap().figure();
        for (measure, lost) in [
            (MeasureId::Seat, 4.0),
            (MeasureId::Thigh, 4.0),
            (MeasureId::Knee, 4.0),
            // The band is cut along the weft, so its height lies along the warp.
            (MeasureId::Waist, 4.0),
            (MeasureId::BandHeight, 8.0),
            (MeasureId::HemDepth, 8.0),
        ] {
            let wanted = after(measure) / (1.0 - lost / 100.0);
            let miss = before(measure) - wanted;
            assert!(miss.abs() < Length::mm(0.05), "{size} {measure:?}: {miss}");
        }
        for measure in [MeasureId::Inseam, MeasureId::FrontRise, MeasureId::BackRise] {
            let grown = before(measure) / after(measure);
            assert!(
                (1.0 / 0.96..=1.0 / 0.92).contains(&grown),
                "{measure:?}: {grown}"
            );
        }
        let level = garment
            .level_before_wash(Washed::new(Length::cm(8.0)))
            .figure();
        assert!((level.to_mm() - 80.0 / 0.92).abs() < 1e-6);
    }
}

/// What a band is cut for follows from how the style has it cut.
#[test]
fn a_band_grows_as_it_is_cut() {
    let mut loaded = ferryman();
    let size = loaded.style.sizes.base;
    let mut grown = |cutting: BandCutting| {
        loaded.style.cutting.band = Some(cutting);
        loaded.style.cutting.residual_warp = Share::percent(1.0);
        let garment = make(&loaded.style, &loaded.collection, size);
        garment
            .measure_before_wash(MeasureId::Waist)
            .unwrap()
            .figure()
            / garment.pattern.measure(MeasureId::Waist).unwrap()
    };
    assert!((grown(BandCutting::Weft) - 1.0 / 0.96).abs() < 1e-9);
    assert!((grown(BandCutting::Preshrunk) - 1.0 / 0.99).abs() < 1e-9);
    // Along the warp it would be cut 1 ÷ 0.92 as long; the body is only 1 ÷ 0.96, and 2 % is eased on.
    let eased = grown(BandCutting::Eased);
    assert!(eased > 1.0 / 0.96 && eased < 1.0 / 0.96 / 0.97, "{eased}");
}

/// A pair that is sold raw is cut as its chart says, and what it is expected to be once washed is less by what the
/// cloth loses: worked out by hand for what lies along one thread.
#[test]
fn a_raw_pair_is_cut_as_it_measures() {
    let mut loaded = ferryman();
    loaded.style.wash = Some(Wash {
        finish: WashFinish::Raw,
        by: WashedBy::Wearer,
        set_after: Vec::new(),
        steps: Vec::new(),
    });
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    for (measure, lost) in [
        (MeasureId::Seat, 0.04),
        (MeasureId::Thigh, 0.04),
        (MeasureId::Waist, 0.04),
        (MeasureId::BandHeight, 0.08),
    ] {
        let chart = garment.pattern.measure(measure).unwrap();
        let sewn = garment.measure_before_wash(measure).unwrap().figure();
        assert!((sewn - chart).abs() < Length::mm(0.001), "{measure:?}");
        let washed = garment.once_washed().measure(measure).unwrap().figure();
        let miss = washed - chart * (1.0 - lost);
        assert!(miss.abs() < Length::mm(0.05), "{measure:?}: {miss}");
    }
}

/// Everything a machine is set to is of the pair as it is cut. By hand from the demo's chart and its shell (8 % along
/// the warp, 4 % along the weft): a band of 38 mm along the warp is folded at 41.3, a hem of 12 at 13.0, a loop of
/// 12 along the weft at 12.5, a row of the inseam at 8 stitches to the inch is set to 7.36.
#[test]
fn the_sewing_order_says_what_machines_are_set_to() {
    let loaded = ferryman();
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let order = sewing_order(&garment);
    let words = Words::english();
    let attachment = |seam: SeamId| {
        let sews = |o: &&Operation| o.needles.iter().any(|n| n.seam == seam);
        let with = order.iter().filter(sews);
        let found = with.filter_map(|o| o.attachment.as_ref());
        found.map(|a| words.saying(&a.what)).collect::<Vec<_>>()
    };
    let said = |seam, wanted: &str| {
        let all = attachment(seam);
        assert!(all.iter().any(|one| one.contains(wanted)), "{all:?}");
    };
    said(SeamId::Band, "41.3 mm");
    said(SeamId::Hem, "13.0 mm");
    said(SeamId::LoopEdge, "12.5 mm");
    // The row round the band keeps the distance from its edges that the style states, whatever the band grows by.
    said(SeamId::Band, "2.0 mm from the band's edges");
    let inseam = order
        .iter()
        .flat_map(|o| &o.needles)
        .find(|n| n.seam == SeamId::Inseam);
    let set = inseam.unwrap().set_to.unwrap().figure().to_per_inch();
    assert!((set - 7.36).abs() < 0.01, "{set}");
    // What the cut pieces need, walked here edge by edge, and not the 3.0 mm the finished pair is drafted with.
    let walked = |piece| {
        let edge = garment.before_wash.pattern.piece(piece).unwrap();
        edge.edge(EdgeId::Inseam).unwrap().length()
    };
    let stretch = walked(PieceId::Front) - walked(PieceId::Back);
    assert!((stretch.to_mm() - 4.0).abs() < 0.1, "{stretch}");
    let minds = order
        .iter()
        .flat_map(|o| &o.mind)
        .map(|mind| words.saying(mind));
    let wanted = format!("stretch the back by {:.1} mm", stretch.to_mm());
    assert!(
        minds.into_iter().any(|mind| mind.contains(&wanted)),
        "{wanted}"
    );
}

/// A patch does not shrink: on the pair as it is sewn its row lies as far inside its edge as on the finished one.
#[test]
fn a_patch_keeps_its_row_on_the_pair_as_it_is_sewn() {
    let loaded = ferryman();
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    for pair in [garment.as_sewn(), garment] {
        let patch = pair.fixings.iter().find_map(|fixing| match fixing.kind {
            FixingKind::Patch(width, height, _) => Some((fixing.at, width, height)),
            _ => None,
        });
        let (at, width, height) = patch.unwrap();
        let row = pair
            .rows
            .iter()
            .find(|row| row.seam == SeamId::PatchSet)
            .unwrap();
        let bounds = row.path.bounds();
        let inside = [
            width.to_mm() / 2.0 - (at.x - bounds.x0),
            width.to_mm() / 2.0 - (bounds.x1 - at.x),
            height.to_mm() / 2.0 - (at.y - bounds.y0),
            height.to_mm() / 2.0 - (bounds.y1 - at.y),
        ];
        assert!(
            inside.iter().all(|by| (by - 3.0).abs() < 1e-6),
            "{inside:?}"
        );
    }
}

/// One machine has one setting: what the order says a row is sewn at, its yarn is reckoned with, and the rows that
/// plates draw and sections name have it, on every piece they run over.
#[test]
fn order_yarn_and_drawings_have_one_setting_a_row() {
    let loaded = ferryman();
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let sewn = garment.as_sewn();
    let taken = consumption(&garment);
    let mut rows = 0;
    for needle in sewing_order(&garment).iter().flat_map(|o| &o.needles) {
        let (Some(seam), Some(number), Some(set)) = (needle.seam.seam(), needle.row, needle.set_to)
        else {
            continue;
        };
        let here = format!("{} {number}", seam.code());
        let figure = set.figure();
        for item in &taken.items {
            if item.seam == seam && item.sewn == Sewn::Row(number) {
                assert_eq!(item.set_to, Some(set), "{here}, yarn of {:?}", item.piece);
            }
        }
        for row in &sewn.rows {
            if row.seam == seam && row.number == number {
                assert_eq!(row.density, figure, "{here}, drawn on {:?}", row.piece);
                rows += 1;
            }
        }
        let spec = sewn.seams.iter().find(|s| s.id == seam).unwrap();
        assert_eq!(spec.rows[number - 1].density, figure, "{here}, named");
    }
    assert_eq!(rows, sewn.rows.len(), "a row the order does not sew");
}
