//! Yarn of the demo style: figures by hand, totals, the published range, orders and the plan.

#![allow(clippy::unwrap_used)]

mod common;

use common::ferryman;
use proptest::prelude::*;
use sewing::yarn::{
    Basis, Consumption, Item, Role, Sewn, Used, consumption, order, order_with, plan,
};
use sewing::{Garment, make};
use style::{Construction, Loaded, RowSpec, SeamId, SeamSpec, Size};
use trade::colour_difference::Contrast;
use trade::consumption::{RatioRow, USUAL_WASTE, with_waste};
use trade::{Colour, Length, Share, StitchDensity, StitchType};
use words::Words;

fn sewn(loaded: &Loaded, waist: u32, length: u32) -> Garment {
    make(&loaded.style, &loaded.collection, Size::new(waist, length))
}

fn base() -> Garment {
    sewn(&ferryman(), 32, 32)
}

fn said(words: &words::Said) -> String {
    Words::english().saying(words)
}

fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} ± {within}"
    );
}

fn row(all: &Consumption, seam: SeamId, number: usize) -> &Item {
    all.items
        .iter()
        .find(|i| i.seam == seam && i.sewn == Sewn::Row(number))
        .unwrap()
}

/// A row in the yarns of the demo's outseam.
fn stated(stitch: StitchType, offset: f64) -> RowSpec {
    let outseam = ferryman().style.seam(SeamId::Outseam).unwrap();
    RowSpec {
        stitch,
        density: StitchDensity::per_inch(8.0),
        offset: Length::mm(offset),
        ..outseam.rows[0].clone()
    }
}

/// The demo style with one seam made another way.
fn with_seam(seam: SeamId, construction: Construction, rows: Vec<RowSpec>) -> Loaded {
    let mut loaded = ferryman();
    change(&mut loaded, seam, construction, rows);
    loaded
}

fn change(loaded: &mut Loaded, seam: SeamId, construction: Construction, rows: Vec<RowSpec>) {
    // Neither laps another nor is like one.
    let outseam = loaded.style.seams[&SeamId::Outseam].clone();
    let spec = SeamSpec {
        construction: Some(construction),
        rows: Some(rows),
        ..outseam
    };
    loaded.style.seams.insert(seam, spec);
}

/// Worked by hand: an inseam of 81.28 cm whose cloth loses 8 % is sewn 88.35 cm long, and 8 stitches per inch
/// are set as 7.36 (2.8976 to the centimetre); twice that through four plies of 0.82 mm takes
/// 1 + 2 × 0.328 × 2.8976 on the needle and 3 on the looper.
#[test]
fn the_inseam_by_hand() {
    let all = consumption(&base());
    let inseam = row(&all, SeamId::Inseam, 1);
    near(inseam.plies.thickness.to_mm(), 3.28, 1e-9);
    near(inseam.used.needle.to_m(), 5.126, 0.01);
    near(inseam.used.under.to_m(), 5.301, 0.01);
    assert_eq!(
        said(&inseam.explain(&ferryman().collection)),
        "inseam lap-felled, row 1, 401, 2.90 stitches/cm, 2 × 88.3 cm, T 3.3 mm → 5.1 m needle, \
         5.3 m under"
    );
    assert!(said(&inseam.source()).starts_with("T: 4 plies shell; yarn: geometric formula ("));
}

/// Worked by hand: the two stated rows of the loop strip are the two needles of one pass of 406,
/// 6 mm apart through two plies, set to 2.8976 to the centimetre: 7 + 2 × 2.8976 (0.164 + 0.6) times its
/// length.
#[test]
fn both_rows_of_a_coverstitch_are_one_pass() {
    let all = consumption(&base());
    let rows: Vec<&Item> = all
        .items
        .iter()
        .filter(|i| i.seam == SeamId::LoopEdge && i.row.is_some())
        .collect();
    assert_eq!(rows.len(), 2);
    let found: Length = rows.iter().map(|i| i.used.total()).sum();
    near(found / rows[0].length.figure(), 11.4276, 0.001);

    let alone = with_seam(
        SeamId::LoopEdge,
        Construction::Strip,
        vec![stated(StitchType::S406, 3.0)],
    );
    let all = consumption(&sewn(&alone, 32, 32));
    let only = row(&all, SeamId::LoopEdge, 1);
    assert_eq!(only.width.pass, 1.0);
    // The middle of the usual gauges of a loop folder instead of the distance of the rows.
    assert!(only.width.width > Length::mm(5.0) && only.width.width < Length::mm(7.0));
    near(only.used.total() / only.length.figure(), 12.0, 0.6);
}

/// The plies at each row, counted on the section of its construction.
#[test]
fn plies_follow_the_construction() {
    let garment = base();
    let all = consumption(&garment);
    let count = |seam, number| row(&all, seam, number).plies.count();
    for (seam, rows) in [
        (SeamId::Outseam, vec![2]),
        (SeamId::Inseam, vec![4, 4]),
        (SeamId::Seat, vec![4, 4]),
        (SeamId::FrontRise, vec![3, 3]),
        // Through the body at the seam, through the band alone along its top.
        (SeamId::Band, vec![5, 2]),
        (SeamId::Hem, vec![3]),
        (SeamId::Mouth, vec![4, 4]),
        (SeamId::Fly, vec![4, 4]),
        // Pocket and turned edge, each with the lining, and the back.
        (SeamId::BackPocketSet, vec![5, 5]),
        // Turned twice, over the lining.
        (SeamId::BackPocketHem, vec![4]),
        (SeamId::BagClose, vec![2]),
        (SeamId::LoopEdge, vec![2, 2]),
        (SeamId::Decoration, vec![1]),
    ] {
        for (index, wanted) in rows.into_iter().enumerate() {
            assert_eq!(
                count(seam, index + 1),
                wanted,
                "{} {}",
                seam.code(),
                index + 1
            );
        }
    }
    for item in all.items.iter().filter(|i| i.row.is_some()) {
        let most = sewing::construct(item.construction.unwrap()).plies;
        let more = match item.seam.seam().unwrap() {
            // A hem is turned over a lining, a set edge turned in with it.
            SeamId::BackPocketHem => 1,
            SeamId::BackPocketSet => 2,
            // The edge of the fly facing is neatened together with the strip that carries the holes.
            SeamId::FlyEdge => 2,
            _ => 0,
        };
        assert!(
            item.plies.count() <= most + more,
            "{}",
            said(&item.explain(&ferryman().collection))
        );
    }
    // Front and bag with their allowances: two of 0.82 mm and two of 0.45 mm.
    near(
        row(&all, SeamId::Mouth, 1).plies.thickness.to_mm(),
        2.54,
        1e-9,
    );
}

#[test]
fn every_row_and_tack_is_counted_once() {
    let garment = base();
    let all = consumption(&garment);
    let rows: Vec<usize> = all.items.iter().filter_map(|i| i.row).collect();
    assert_eq!(rows, (0..garment.rows.len()).collect::<Vec<_>>());
    let fixings = |wanted: fn(&Sewn) -> bool| -> u32 {
        let of_kind = all.items.iter().filter(|i| wanted(&i.sewn));
        of_kind.map(|i| i.count).sum()
    };
    // Ten on the loops, fly 2, crotch 1, two on each back pocket; rivets hold the mouths.
    assert_eq!(fixings(|s| matches!(s, Sewn::Bartack(28))), 10 + 2 + 1 + 4);
    assert_eq!(fixings(|s| *s == Sewn::Buttonhole), 5);
    for item in &all.items {
        assert!(item.used.needle > Length::ZERO && item.used.under > Length::ZERO);
        assert!(!matches!(item.basis, Basis::Unknown | Basis::RatioTable(_)));
    }
}

#[test]
fn seams_yarns_and_plan_add_up_to_the_pair() {
    let garment = base();
    let all = consumption(&garment);
    let used = all.used();
    let by_seam: Vec<Used> = all.by_seam().into_iter().map(|(_, used)| used).collect();
    let by_yarn: Vec<Used> = all.by_yarn().into_iter().map(|(_, used)| used).collect();
    for parts in [by_seam, by_yarn] {
        let needle: Length = parts.iter().map(|used| used.needle).sum();
        let under: Length = parts.iter().map(|used| used.under).sum();
        near(needle.to_mm(), used.needle.to_mm(), 1e-6);
        near(under.to_mm(), used.under.to_mm(), 1e-6);
    }
    let plan = plan(&garment);
    for (role, wanted) in [(Role::Needle, used.needle), (Role::Under, used.under)] {
        let groups = plan.groups.iter().filter(|g| g.role == role);
        let found: Length = groups.map(|g| g.yarn).sum();
        near(found.to_mm(), wanted.to_mm(), 1e-6);
    }
    for group in &plan.groups {
        let rows: Length = group.rows.iter().map(|r| r.yarn).sum();
        near(rows.to_mm(), group.yarn.to_mm(), 1e-6);
        let sewn: Length = group.rows.iter().map(|r| r.length.figure()).sum();
        let lies: Length = group.grounds.iter().map(|g| g.sewn.figure()).sum();
        near(sewn.to_mm(), lies.to_mm(), 1e-6);
    }
}

/// What a pair takes with the usual waste, and what the work without stated rows adds.
fn with_everything(loaded: &Loaded) -> (f64, f64) {
    let all = consumption(&sewn(loaded, 32, 32));
    let net = all.used().total();
    let more = net + all.unstated_estimate(Length::mm(100.0));
    (
        with_waste(net, USUAL_WASTE).to_m(),
        with_waste(more, USUAL_WASTE).to_m(),
    )
}

/// Published for adult five-pocket jeans, waste included: about 180 m (melgeecrafts.com), 200 to
/// 250 yd (183 to 229 m) and 223 yd (204 m) on trade pages; a two-row build with overlocked
/// outseams worked from the formulas comes to 168 m. So the range is 168 to 229 m.
const PUBLISHED_PAIR: std::ops::RangeInclusive<f64> = 168.0..=229.0;

/// The demo pair lies below the published range, and the reason is its make, not the count: the
/// published pairs have their leg seams closed by a five-thread safety stitch, which takes about
/// 19 times the length of the seam. A selvedge outseam pressed open takes one row of chainstitch,
/// about 5 times. Sewn the published way, with overlocked and topstitched legs, the same pattern
/// comes into the range, once the work for which the style states no row is added. Also left out:
/// a second pass round the pocket bags, overedge of facing and shield, setting of pocket linings.
#[test]
fn the_pair_against_the_published_range() {
    let demo = ferryman();
    let (stated_only, all_work) = with_everything(&demo);
    assert!(all_work > stated_only && all_work < *PUBLISHED_PAIR.start());
    near(stated_only, 122.5, 3.0);
    near(all_work, 131.0, 4.0);

    let outseam = |loaded: &mut Loaded| {
        let rows = vec![stated(StitchType::S516, 0.0)];
        change(loaded, SeamId::Outseam, Construction::SafetyStitched, rows);
    };
    let mut overlocked = ferryman();
    outseam(&mut overlocked);
    let (_, outseams) = with_everything(&overlocked);
    // About 2.1 m of seam at 19 instead of 5, with waste.
    near(outseams - all_work, 30.0, 4.0);

    let rows = vec![stated(StitchType::S516, 0.0), stated(StitchType::S401, 1.6)];
    change(
        &mut overlocked,
        SeamId::Inseam,
        Construction::SafetyStitched,
        rows,
    );
    let (_, both) = with_everything(&overlocked);
    assert!(PUBLISHED_PAIR.contains(&both), "{both}");
}

/// The ratio table (Carr and Latham) holds for denser stitches in thinner cloth, so over a whole
/// pair it need only come near: within a quarter of the formulas.
#[test]
fn the_ratio_table_comes_near_the_formulas() {
    let all = consumption(&base());
    let rows = || all.items.iter().filter(|i| i.row.is_some());
    let by_formula: Length = rows().map(|i| i.used.total()).sum();
    let by_table: Length = rows()
        .map(|i| i.sewn_length().figure() * i.width.pass * RatioRow::of(i.stitch).unwrap().total)
        .sum();
    let off = by_table / by_formula - 1.0;
    assert!(off.abs() < 0.25, "{off}");
    // Two-thread chainstitch alone agrees better: felled seams take a little more than 5.5.
    let chain = || rows().filter(|i| i.stitch == StitchType::S401);
    let found: Length = chain().map(|i| i.used.total()).sum();
    let sewn: Length = chain().map(|item| item.sewn_length().figure()).sum();
    near(found / sewn, 5.5, 0.55);
}

#[test]
fn another_construction_changes_its_own_seam_alone() {
    let before = consumption(&base());
    let changed = with_seam(
        SeamId::Inseam,
        Construction::SafetyStitched,
        vec![stated(StitchType::S516, 0.0)],
    );
    let after = consumption(&sewn(&changed, 32, 32));
    for ((seam, old), (same, new)) in before.by_seam().into_iter().zip(after.by_seam()) {
        assert_eq!(seam, same);
        assert_eq!(old == new, *seam != SeamId::Inseam, "{}", seam.code());
    }
    // 9 + 2 × 2.8976 (2 × 0.55563 + 3 × 0.164) over 2 × 88.35 cm, worked by hand.
    let row = row(&after, SeamId::Inseam, 1);
    near(row.used.total().to_m(), 18.291 * 1.7670, 0.05);
}

#[test]
fn sewing_without_stated_rows_is_listed_beside_the_total() {
    let mut bare = ferryman();
    let topstitched = bare.style.seam(SeamId::FrontRise).unwrap().rows[..2].to_vec();
    change(
        &mut bare,
        SeamId::FrontRise,
        Construction::MockFelled,
        topstitched,
    );
    for seam in [SeamId::PatchSet, SeamId::LabelSet] {
        bare.style.seams.shift_remove(&seam);
    }
    let all = consumption(&sewn(&bare, 32, 32));
    let english = Words::english();
    let said: Vec<String> = all
        .unstated
        .iter()
        .map(|u| english.saying(&u.what))
        .collect();
    for wanted in [
        "front rise seam, joining row below the topstitching",
        "front rise seam, overedge of raw edges",
        "pocket mouth, joining row below the topstitching",
        "fly, joining row below the topstitching",
        "Saltmarsh patch, patch sewn on",
        "Main label, label sewn in",
    ] {
        assert!(said.iter().any(|said| said == wanted), "{said:?}");
    }
    assert!(
        !said
            .iter()
            .any(|s| s.contains("inseam") || s.contains("bag"))
    );
    // Stated, as the demo does, it is counted instead.
    let all = consumption(&base());
    let not_stated = |of: &str| all.unstated.iter().any(|u| u.of.code() == of);
    for of in ["front_rise", "patch", "main-label", "size-label"] {
        assert!(!not_stated(of), "{of}");
    }
}

#[test]
fn bigger_and_longer_sizes_take_more() {
    let loaded = ferryman();
    let total = |w, l| consumption(&sewn(&loaded, w, l)).used().total();
    let sizes = [(28, 30), (32, 30), (32, 32), (32, 34), (38, 34)];
    let found: Vec<Length> = sizes.iter().map(|(w, l)| total(*w, *l)).collect();
    assert!(found.is_sorted_by(|a, b| a < b), "{found:?}");
}

#[test]
fn an_order_adds_up_and_rounds_cones_up() {
    let loaded = ferryman();
    let (small, large) = (sewn(&loaded, 30, 30), sewn(&loaded, 36, 34));
    let both = order(&[(&small, 40), (&large, 60)]);
    assert_eq!((both.pairs, both.waste), (100, USUAL_WASTE));
    for need in &both.yarns {
        let of = |garment: &Garment| {
            let all = consumption(garment);
            let found = all.by_yarn().into_iter().find(|(k, _)| *k == need.yarn);
            found.unwrap().1.total()
        };
        let net = of(&small) * 40.0 + of(&large) * 60.0;
        near(need.net.total().to_m(), net.to_m(), 1e-6);
        near(need.with_waste.to_m(), net.to_m() * 1.15, 1e-6);
        let cone = need.per_cone.unwrap();
        let cones = need.cones.unwrap() as f64;
        assert!(cone * cones >= need.with_waste && cone * (cones - 1.0) < need.with_waste);
    }
    // About 2100 m of rope-105 with waste: one cone of 2500 m.
    let rope = both.yarns.iter().find(|y| y.yarn == "rope-105").unwrap();
    assert_eq!(rope.cones, Some(1));

    let none = order_with(&[(&small, 1)], Share::percent(f64::NAN));
    assert_eq!(none.waste, Share::ZERO);
    near(
        none.total().to_mm(),
        consumption(&small).used().total().to_mm(),
        1e-6,
    );
    assert!(order(&[]).yarns.is_empty());
}

#[test]
fn the_plan_groups_by_colour_size_and_density() {
    let plan = plan(&base());
    let mut seen = Vec::new();
    for g in &plan.groups {
        let key = (g.role, g.colour, g.size, g.density);
        assert!(!seen.contains(&key), "{key:?}");
        seen.push(key);
    }
    let tonal = plan
        .groups
        .iter()
        .find(|g| g.role == Role::Needle && g.rows.iter().any(|r| r.seam == SeamId::Outseam))
        .unwrap();
    assert_eq!(tonal.colour, "#222b40".parse::<Colour>().unwrap());
    assert_eq!(tonal.grounds[0].difference.contrast(), Contrast::Tonal);
    // The joining row of an outseam pressed open is seen on neither face.
    assert!(!tonal.rows[0].seen);
    assert_eq!(Words::english().say(tonal.rows[0].said()), "outseam 1");

    let ochre = &plan.groups[0];
    assert_eq!(ochre.colour_name, "ochre");
    assert_eq!(ochre.grounds[0].difference.contrast(), Contrast::Strong);
    // A hem turned to the inside shows the face of the cloth there, a felled seam its reverse.
    let hem = plan
        .groups
        .iter()
        .find(|g| g.role == Role::Under && g.rows[0].seam == SeamId::Hem)
        .unwrap();
    assert!(!hem.grounds[0].reverse);
    let night = plan
        .groups
        .iter()
        .find(|g| {
            g.role == Role::Under && g.rows[0].seam == SeamId::Inseam && g.colour != hem.colour
        })
        .unwrap();
    assert!(night.grounds[0].reverse);
}

#[test]
fn what_nothing_is_published_for_is_left_out_and_said() {
    let zigzag = with_seam(
        SeamId::Hem,
        Construction::RolledHem,
        vec![stated(StitchType::S404, 10.0)],
    );
    let all = consumption(&sewn(&zigzag, 32, 32));
    let hem = row(&all, SeamId::Hem, 1);
    assert_eq!(hem.basis, Basis::Unknown);
    assert!(said(&hem.explain(&ferryman().collection)).ends_with("→ not counted"));
    assert!(said(&hem.source()).ends_with("so it is left out"));
    let overedge = with_seam(
        SeamId::Hem,
        Construction::RolledHem,
        vec![stated(StitchType::S503, 10.0)],
    );
    let all = consumption(&sewn(&overedge, 32, 32));
    let hem = row(&all, SeamId::Hem, 1);
    near(hem.used.total() / hem.sewn_length().figure(), 12.0, 1e-9);
    assert!(said(&hem.source()).contains("ratio table, no formula being published"));
}

#[test]
fn a_yarn_that_is_not_in_the_collection_is_still_counted() {
    let mut loaded = ferryman();
    loaded.collection.yarns.clear();
    loaded.collection.cloths.clear();
    let garment = sewn(&loaded, 32, 32);
    let order = order(&[(&garment, 10)]);
    assert!(order.yarns.iter().all(|y| y.cones.is_none()));
    assert!(order.total() > Length::m(500.0));
    assert!(plan(&garment).groups.iter().all(|g| g.size.is_none()));
}

fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.01..60.0_f64,
        1 => Just(0.0),
        1 => Just(-1.0),
        1 => Just(f64::NAN),
        1 => Just(f64::INFINITY),
        1 => Just(1e300),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_row_is_counted_without_a_panic(
        stitch in prop::sample::select(StitchType::ALL.to_vec()),
        kind in prop::sample::select(Construction::WORDS.to_vec()),
        density in any_number(),
        offset in any_number(),
        thickness in any_number(),
    ) {
        let mut loaded = with_seam(SeamId::Inseam, kind.1, vec![
            RowSpec { density: StitchDensity::per_cm(density), ..stated(stitch, offset) },
            stated(stitch, 8.0),
        ]);
        for cloth in loaded.collection.cloths.values_mut() {
            cloth.thickness = Length::mm(thickness);
        }
        let garment = sewn(&loaded, 32, 32);
        let all = consumption(&garment);
        prop_assert!(all.used().total().is_finite());
        prop_assert!(all.items.iter().all(|i| i.used.needle >= Length::ZERO));
        prop_assert!(all.items.iter().all(|i| !said(&i.explain(&ferryman().collection)).is_empty()));
        let plan = plan(&garment);
        prop_assert!(!plan.groups.is_empty());
        prop_assert!(order(&[(&garment, u32::MAX)]).yarns.len() > 2);
    }
}

/// Yarn is taken before the wash: along the warp, which this shell shrinks by 8 %, a row of the inseam is sewn
/// longer by 1 ÷ (1 − 0.08) than it measures on the finished pair, with the stitches farther apart, and
/// no fewer or more of them.
#[test]
fn yarn_is_reckoned_on_the_pair_as_it_is_sewn() {
    let mut loaded = ferryman();
    let shell = loaded.style.cloth.shell.clone();
    let cloth = loaded.collection.cloths.get_mut(&shell).unwrap();
    cloth.warp_shrinkage = Some(Share::percent(8.0));
    cloth.weft_shrinkage = Some(Share::percent(8.0));
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let consumption = consumption(&garment);
    for item in consumption.items.iter().filter(|item| item.row.is_some()) {
        let row = &garment.rows[item.row.unwrap()];
        // Set after the wash.
        if row.seam == SeamId::PatchSet
            || garment.before_wash.scale(item.piece).is_none_or(|scale| {
                (scale.shrinkage.warp, scale.shrinkage.weft)
                    != (Share::percent(8.0), Share::percent(8.0))
            })
        {
            continue;
        }
        let grown = item.length.figure() / row.length();
        assert!(
            (grown - 1.0 / 0.92).abs() < 1e-6,
            "{}: {grown}",
            row.seam.code()
        );
        let set = item.set_to.unwrap().figure().to_per_inch();
        assert!((set - row.density.to_per_inch() * 0.92).abs() < 1e-6);
    }
}
