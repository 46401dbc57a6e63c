//! The sewing order: everything is sewn once, nothing before what it needs, and the order is the
//! one a workroom can sew.
//!
//! Long because one exact order of a whole garment is written out, and every test asks the same list.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use std::collections::BTreeSet;

use common::ferryman;
use draft::PieceId;
use proptest::prelude::*;
use sewing::work::{Operation, Stage, Work, closing_seam, sewing_order};
use sewing::yarn::consumption;
use sewing::{FixingKind, Garment, On, describe, make};
use style::{
    BandMethod, Closing, Construction, HemEnds, Lining, Loaded, MeasureId, RowEnding, RowSpec,
    SeamId, Size, known,
};
use trade::{Length, StitchDensity, StitchType};

fn sewn(change: impl FnOnce(&mut Loaded)) -> Garment {
    let mut loaded = ferryman();
    change(&mut loaded);
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn place(order: &[Operation], key: &str) -> usize {
    let found = order.iter().position(|o| o.key == key);
    found.unwrap_or_else(|| panic!("no {key} among {:?}", keys(order)))
}

fn keys(order: &[Operation]) -> Vec<&str> {
    order.iter().map(|o| o.key.as_str()).collect()
}

fn named<'a>(order: &'a [Operation], key: &str) -> &'a Operation {
    &order[place(order, key)]
}

fn has(order: &[Operation], key: &str) -> bool {
    order.iter().any(|o| o.key == key)
}

/// Everything that has to come before an operation, by its own word and that of others.
fn before<'a>(order: &'a [Operation], key: &str) -> BTreeSet<&'a str> {
    let mut out = BTreeSet::new();
    let mut open: Vec<&str> = vec![key];
    while let Some(key) = open.pop() {
        for wanted in &named(order, key).after {
            if out.insert(wanted.as_str()) {
                open.push(wanted);
            }
        }
    }
    out
}

fn is_before(order: &[Operation], first: &str, then: &str) {
    assert!(before(order, then).contains(first), "{first} before {then}");
}

/// What holds of every order, whatever the style.
fn sound(garment: &Garment) -> Vec<Operation> {
    let order = sewing_order(garment);
    let mut rows = vec![0; garment.rows.len()];
    let mut fixings = vec![0; garment.fixings.len()];
    let mut done: BTreeSet<&str> = BTreeSet::new();
    for (index, operation) in order.iter().enumerate() {
        let key = operation.key.as_str();
        assert_eq!(operation.number, index + 1, "{key}");
        for wanted in &operation.after {
            assert!(done.contains(wanted.as_str()), "{key} needs {wanted}");
        }
        assert!(done.insert(key), "{key} twice");
        assert!(!operation.name.is_empty() && !operation.machine.is_empty());
        assert!(
            !operation.mind.is_empty() || operation.not_stated.is_some() || key == "set-rest",
            "{key}"
        );
        assert!(
            !operation
                .mind
                .iter()
                .any(|m| m.is_empty() || m.ends_with('.')),
            "{key}"
        );
        assert!(!operation.parts.is_empty() || key == "look-over", "{key}");
        assert!(operation.pieces.is_sorted(), "{key}");
        operation.rows().for_each(|row| rows[row] += 1);
        operation
            .fixings
            .iter()
            .for_each(|fixing| fixings[*fixing] += 1);
        needles_are_sound(garment, operation);
    }
    let missed = |counts: &[i32]| counts.iter().position(|n| *n != 1);
    if let Some(row) = missed(&rows) {
        let row = &garment.rows[row];
        panic!("{} row {} is not sewn once", row.seam.code(), row.number);
    }
    if let Some(fixing) = missed(&fixings) {
        panic!("{:?} is not set once", garment.fixings[fixing]);
    }
    assert!(order.is_sorted_by_key(|o| match o.stage {
        // Fronts and backs are sewn side by side.
        Stage::Backs => Stage::Fronts,
        stage => stage,
    }));
    not_stated_is_said(garment, &order);
    order
}

fn needles_are_sound(garment: &Garment, operation: &Operation) {
    let key = &operation.key;
    let sews = operation.work == Work::Sewn;
    assert_eq!(operation.needle_count > 0, sews, "{key}");
    assert_eq!(operation.gauge_words().is_empty(), !sews, "{key}");
    assert_eq!(
        sews && operation.needles.is_empty(),
        operation.not_stated.is_some(),
        "{key}"
    );
    let mut longest = Length::ZERO;
    for needle in &operation.needles {
        assert!(!needle.ends.is_empty(), "{key}");
        let Some(number) = needle.row else { continue };
        assert_eq!(operation.gauges.len() + 1, operation.needles.len(), "{key}");
        let of_row = || {
            garment
                .rows
                .iter()
                .filter(|r| needle.seam == r.seam && r.number == number)
        };
        let twice = |on| if on == On::Both { 2.0 } else { 1.0 };
        let length: Length = of_row().map(|r| r.length() * twice(r.on)).sum();
        assert!((length - needle.sewn).abs() < Length::mm(1e-6), "{key}");
        assert_eq!(of_row().count(), needle.rows.len(), "{key}");
        for index in &needle.rows {
            let row = &garment.rows[*index];
            assert_eq!(
                (Some(row.seam), row.number),
                (needle.seam.seam(), number),
                "{key}"
            );
            assert_eq!(row.stitch, needle.stitch, "{key}");
            assert_eq!(Some(row.density), needle.density, "{key}");
            assert_eq!(
                (&row.needle, &row.under),
                (&needle.yarn, &needle.under),
                "{key}"
            );
        }
        longest = longest.max(needle.sewn);
    }
    if longest > Length::ZERO {
        assert_eq!(operation.sewn, longest, "{key}");
    }
}

/// What the yarn list counts as not stated is in the order, as long as it says; what has no estimate
/// there has none here.
fn not_stated_is_said(garment: &Garment, order: &[Operation]) {
    let listed: Length = consumption(garment).unstated.iter().map(|u| u.sewn).sum();
    let estimated = |o: &&Operation| o.not_stated.as_ref().is_some_and(|n| n.stitch.is_some());
    let said: Length = order.iter().filter(estimated).map(|o| o.sewn).sum();
    let what: Vec<&String> = order.iter().filter(estimated).map(|o| &o.key).collect();
    assert!(
        (listed - said).abs() < Length::mm(1e-6),
        "{listed} {said} {what:?}"
    );
    for operation in order
        .iter()
        .filter(|o| o.not_stated.is_some() && !estimated(o))
    {
        assert_eq!(operation.sewn, Length::ZERO, "{}", operation.key);
    }
}

fn row(stitch: StitchType, per_inch: f64, offset_mm: f64) -> RowSpec {
    RowSpec {
        stitch,
        density: StitchDensity::per_inch(per_inch),
        yarn: "rope-105".to_owned(),
        under: "rope-60".to_owned(),
        offset: Length::mm(offset_mm),
        begin: None,
        end: None,
    }
}

fn set(loaded: &mut Loaded, seam: SeamId, construction: Construction, rows: &[RowSpec]) {
    let spec = loaded.style.seams.get_mut(&seam).unwrap();
    spec.construction = Some(construction);
    spec.rows = Some(rows.to_vec());
}

fn joined(loaded: &mut Loaded, seam: SeamId, construction: Construction) {
    let rows: &[RowSpec] = match construction {
        Construction::LapFelled => &[
            row(StitchType::S401, 8.0, 1.6),
            row(StitchType::S401, 8.0, 8.0),
        ],
        Construction::MockFelled => &[
            row(StitchType::S301, 8.0, 1.6),
            row(StitchType::S301, 8.0, 8.0),
            row(StitchType::S516, 9.0, 0.0),
        ],
        Construction::PressedOpen => &[row(StitchType::S401, 9.0, 0.0)],
        _ => &[row(StitchType::S516, 9.0, 0.0)],
    };
    set(loaded, seam, construction, rows);
}

#[test]
fn every_size_of_the_demo_is_sewn_in_the_same_order() {
    let loaded = ferryman();
    let run = sewing::make_run(&loaded.style, &loaded.collection);
    let orders: Vec<_> = run.iter().map(sound).collect();
    for order in &orders {
        assert_eq!(keys(order), keys(&orders[0]));
    }
}

/// Front and back lie on the cloth's finished edge; only facing and yoke are raw there. Cut from cloth
/// without one, every edge is.
#[test]
fn an_edge_the_cloth_finishes_is_not_overedged() {
    let neatened = |garment: &Garment| {
        let order = sewing_order(garment);
        let found = order.into_iter().find(|o| o.key == "outseam-neaten");
        let mut pieces = found.unwrap().pieces;
        pieces.sort();
        pieces
    };
    let demo = sewn(|_| ());
    assert_eq!(neatened(&demo), [PieceId::Yoke, PieceId::PocketFacing]);
    let plain = sewn(|l| {
        let shell = l.style.cloth.shell.clone();
        l.collection.cloths[&shell].selvedge = false;
    });
    assert!(neatened(&plain).contains(&PieceId::Front));
}

#[test]
fn the_demo_is_sewn_in_this_order() {
    let order = sewing_order(&sewn(|_| ()));
    let wanted = [
        "loop-edge",
        "loops-cut",
        "coin-hem",
        "coin-pocket-press",
        "coin-set",
        "coin-pocket-rivets",
        "back-pocket-hem",
        "decoration",
        "back-pockets-line",
        "back-pockets-press",
        "extra-hem",
        "extra-pocket-press",
        "fly-buttonholes",
        "fly-edge-neaten",
        "fly-shield-close",
        "band-mark",
        "label-set",
        "extra-set",
        "facing-set",
        "mouth-join",
        "mouth-press",
        "mouth-topstitch",
        "bag-close",
        "bags-baste",
        "fly-join",
        "fly-press",
        "fly-shield-join",
        "front-rise-join",
        "front-rise-neaten",
        "front-rise-press",
        "front-rise-topstitch",
        "fly-topstitch",
        "back-pockets-rivets",
        "back-pocket-set",
        "yoke-fell",
        "seat-fell",
        "inseam-fell",
        "labels-seam",
        "outseam-neaten",
        "outseam-join",
        "outseam-press",
        "band-set",
        "band-round",
        "patch-set",
        "loops-set",
        "hem",
        "hem-tie",
        "bartacks-mouths",
        "bartacks-fly",
        "bartacks-crotch",
        "band-buttonhole",
        "band-button",
        "fly-buttons",
        "mouth-rivets",
        "look-over",
    ];
    assert_eq!(keys(&order), wanted);
    let asked: Vec<&str> = order
        .iter()
        .filter(|o| o.not_stated.is_some())
        .map(|o| o.key.as_str())
        .collect();
    assert_eq!(
        asked,
        [
            "fly-shield-close",
            "mouth-join",
            "bags-baste",
            "fly-join",
            "fly-shield-join",
            "labels-seam",
            "outseam-neaten"
        ]
    );
}

#[test]
fn every_construction_of_every_seam_has_an_order() {
    for seam in known::seams() {
        for construction in seam.constructions {
            let orders = [
                sewn(|l| {
                    l.style.seams.get_mut(&seam.id).unwrap().construction = Some(*construction)
                }),
                sewn(|l| {
                    set(
                        l,
                        seam.id,
                        *construction,
                        &[row(StitchType::S301, 8.0, 0.0)],
                    )
                }),
                sewn(|l| {
                    let rows = [
                        row(StitchType::S401, 8.0, 2.0),
                        row(StitchType::S401, 8.0, 8.0),
                        row(StitchType::S401, 7.0, 12.0),
                        row(StitchType::S504, 8.0, 0.0),
                    ];
                    set(l, seam.id, *construction, &rows);
                }),
            ];
            for garment in &orders {
                sound(garment);
            }
        }
    }
}

#[test]
fn every_leg_is_closed_by_one_seam_and_in_its_turn() {
    use Construction::{LapFelled, MockFelled, Overlocked, PressedOpen, SafetyStitched};
    let all = [
        PressedOpen,
        LapFelled,
        MockFelled,
        SafetyStitched,
        Overlocked,
    ];
    // Closes the leg: which, for the outseam down and the inseam across, in the order above.
    let (i, o) = (SeamId::Inseam, SeamId::Outseam);
    let wanted = [
        [i, o, o, i, i],
        [i, i, i, i, i],
        [i, o, i, i, i],
        [o, o, o, o, o],
        [o, o, o, o, o],
    ];
    for (outseam, row) in all.iter().zip(wanted) {
        for (inseam, closes) in all.iter().zip(row) {
            let garment = sewn(|l| {
                joined(l, SeamId::Outseam, *outseam);
                joined(l, SeamId::Inseam, *inseam);
            });
            assert_eq!(closing_seam(&garment), closes, "{outseam} {inseam}");
            let order = sound(&garment);
            let last = |seam: SeamId| {
                let sews =
                    |o: &Operation| o.needles.iter().any(|n| n.row.is_some() && n.seam == seam);
                order.iter().rposition(sews).unwrap()
            };
            let first = if closes == i { o } else { i };
            assert!(last(first) < last(closes), "{outseam} {inseam}");
            is_before(&order, &order[last(closes)].key, "band-set");
            is_before(&order, &order[last(first)].key, &order[last(closes)].key);
            is_before(&order, "labels-seam", &order[last(o)].key);
            is_before(&order, "seat-fell", &order[last(first)].key);
        }
    }
}

/// Another inseam is another order: its passes, its machine, its length, and which seam closes.
#[test]
fn another_inseam_is_another_order() {
    let felled = sound(&sewn(|_| ()));
    let plain = sound(&sewn(|l| {
        joined(l, SeamId::Inseam, Construction::SafetyStitched)
    }));
    assert!(has(&felled, "inseam-fell") && !has(&felled, "inseam-join"));
    assert!(has(&plain, "inseam-join") && !has(&plain, "inseam-fell"));
    assert!(place(&felled, "inseam-fell") < place(&felled, "outseam-join"));
    assert!(place(&plain, "inseam-join") > place(&plain, "outseam-join"));
    let kept = |order: &[Operation]| -> Vec<String> {
        let others = order.iter().filter(|o| !o.key.starts_with("inseam"));
        others.map(|o| o.key.clone()).collect()
    };
    assert_eq!(kept(&felled), kept(&plain));
}

/// Felled flat on a machine with an arm; the outseam is joined right sides together in the tube and
/// pressed open over a board.
#[test]
fn a_felled_inseam_goes_before_a_pressed_open_outseam() {
    let order = sewing_order(&sewn(|_| ()));
    is_before(&order, "inseam-fell", "outseam-join");
    let inseam = named(&order, "inseam-fell");
    assert_eq!(inseam.machine, "feed-off-the-arm");
    assert!(inseam.mind.iter().any(|m| m.contains("lie flat")));
    let press = named(&order, "outseam-press");
    assert_eq!((press.work, press.machine), (Work::Pressed, "iron"));
    assert!(press.mind.iter().any(|m| m.contains("tube")));
    assert!(named(&order, "outseam-join").needles.len() == 1);
}

#[test]
fn a_plain_inseam_closes_the_leg_after_the_outseam_is_pressed_open_flat() {
    let order = sound(&sewn(|l| {
        joined(l, SeamId::Inseam, Construction::SafetyStitched)
    }));
    is_before(&order, "outseam-press", "inseam-join");
    let flat = |key: &str| !named(&order, key).mind.iter().any(|m| m.contains("tube"));
    assert!(flat("outseam-press"));
    assert_eq!(named(&order, "inseam-join").machine, "safety overedge");
}

#[test]
fn rows_seen_outside_in_a_closed_leg_are_sewn_over_an_arm() {
    let order = sound(&sewn(|l| {
        joined(l, SeamId::Inseam, Construction::MockFelled);
        joined(l, SeamId::Outseam, Construction::MockFelled);
    }));
    is_before(&order, "outseam-topstitch", "inseam-join");
    assert_eq!(
        named(&order, "outseam-topstitch").machine,
        "two-needle lockstitch"
    );
    assert_eq!(
        named(&order, "inseam-topstitch").machine,
        "cylinder-arm lockstitch"
    );
}

#[test]
fn each_thing_is_set_while_its_place_is_reached() {
    let garment = sewn(|_| ());
    let order = sound(&garment);
    for (first, then) in [
        ("back-pockets-rivets", "back-pocket-set"),
        ("coin-pocket-rivets", "facing-set"),
        ("extra-set", "bag-close"),
        ("facing-set", "bag-close"),
        ("fly-buttonholes", "fly-join"),
        ("decoration", "back-pocket-set"),
        ("decoration", "back-pockets-line"),
        ("labels-seam", "outseam-join"),
        ("label-set", "band-set"),
        ("band-round", "patch-set"),
        ("patch-set", "loops-set"),
        ("band-round", "band-buttonhole"),
        ("outseam-press", "mouth-rivets"),
        ("bartacks-mouths", "mouth-rivets"),
        ("outseam-press", "hem"),
        ("yoke-fell", "seat-fell"),
        ("front-rise-topstitch", "fly-topstitch"),
        ("front-rise-join", "inseam-fell"),
    ] {
        is_before(&order, first, then);
    }
    let sets = |key: &str| -> Vec<(&FixingKind, PieceId)> {
        let at = named(&order, key)
            .fixings
            .iter()
            .map(|index| &garment.fixings[*index]);
        at.map(|fixing| (&fixing.kind, fixing.piece)).collect()
    };
    assert_eq!(sets("back-pockets-rivets").len(), 4);
    assert_eq!(sets("loops-set").len(), 15);
    assert_eq!(sets("label-set").len(), 2);
    assert!(matches!(
        sets("labels-seam")[..],
        [(FixingKind::Label(..), PieceId::Front)]
    ));
    assert!(matches!(
        sets("patch-set")[..],
        [(FixingKind::Patch(..), PieceId::Band)]
    ));
    let parts = &named(&order, "back-pockets-rivets").parts;
    assert!(parts.contains(&"fixing:rivet-9".to_owned()), "{parts:?}");
    assert!(
        parts.contains(&"piece:back_pocket_left".to_owned()),
        "{parts:?}"
    );
    assert!(
        named(&order, "inseam-fell")
            .parts
            .contains(&"seam:inseam".to_owned())
    );
}

#[test]
fn without_rivets_the_coin_pocket_is_tacked_before_the_bag_covers_it() {
    let order = sound(&sewn(|l| l.style.rivets.as_mut().unwrap().coin = false));
    assert!(!has(&order, "coin-pocket-rivets"));
    is_before(&order, "coin-pocket-bartacks", "facing-set");
    let order = sound(&sewn(|l| l.style.rivets = None));
    assert!(!has(&order, "back-pockets-rivets") && !has(&order, "mouth-rivets"));
}

/// Two rows alike go through a two-needle machine at once; others one after the other.
#[test]
fn rows_alike_are_sewn_in_one_pass() {
    let order = sound(&sewn(|_| ()));
    let inseam = named(&order, "inseam-fell");
    let yarns: Vec<&str> = inseam.needles.iter().map(|n| n.yarn.key.as_str()).collect();
    assert_eq!(yarns, ["rope-105", "night-80"]);
    assert_eq!(
        (inseam.needle_count, inseam.gauge_words().as_str()),
        (2, "two needles, 6.4 mm")
    );
    assert_eq!(
        named(&order, "mouth-topstitch").machine,
        "two-needle lockstitch"
    );
    assert_eq!(
        named(&order, "loop-edge").gauge_words(),
        "two needles, 6.0 mm"
    );
    assert_eq!(
        named(&order, "bag-close").gauge_words(),
        "two needles, bite 5.6 mm"
    );

    let denser = sound(&sewn(|l| {
        let rows = [
            row(StitchType::S301, 8.0, 1.6),
            row(StitchType::S301, 9.0, 8.0),
        ];
        set(l, SeamId::Mouth, Construction::TurnedEdge, &rows);
    }));
    let [first, second] = ["mouth-topstitch", "mouth-topstitch-2"].map(|key| named(&denser, key));
    assert_eq!(
        (first.machine, second.machine),
        ("lockstitch", "lockstitch")
    );
    assert_eq!(
        (first.needles[0].row, second.needles[0].row),
        (Some(1), Some(2))
    );
    assert_eq!(second.after, ["mouth-topstitch"]);

    let crowded = sound(&sewn(|l| {
        let rows = [
            row(StitchType::S301, 8.0, 1.6),
            row(StitchType::S301, 8.0, 3.2),
        ];
        set(l, SeamId::Mouth, Construction::TurnedEdge, &rows);
    }));
    assert!(has(&crowded, "mouth-topstitch-2"));

    let three = sound(&sewn(|l| {
        let rows = [1.6, 5.0, 8.4].map(|offset| row(StitchType::S401, 8.0, offset));
        set(l, SeamId::Yoke, Construction::LapFelled, &rows);
    }));
    assert_eq!(
        named(&three, "yoke-fell").gauge_words(),
        "three needles, 3.4 and 3.4 mm"
    );
    let locked = sound(&sewn(|l| {
        let rows = [1.6, 8.0, 12.0].map(|offset| row(StitchType::S301, 8.0, offset));
        set(l, SeamId::Yoke, Construction::LapFelled, &rows);
    }));
    assert_eq!(named(&locked, "yoke-fell").machine, "two-needle lockstitch");
    assert_eq!(named(&locked, "yoke-fell-2").machine, "lockstitch");
}

#[test]
fn the_band_is_sewn_by_its_method() {
    let round = sound(&sewn(|_| ()));
    is_before(&round, "band-set", "band-round");
    assert!(!has(&round, "band-ends"));
    let lower = named(&round, "band-set");
    assert!(
        lower
            .mind
            .iter()
            .any(|m| m.contains("tuck the thread ends into the fold"))
    );
    assert!(
        named(&round, "band-round")
            .mind
            .iter()
            .any(|m| m.contains('V'))
    );

    let two_row = |l: &mut Loaded| {
        l.style.band.method = BandMethod::TwoRow;
        let rows = [
            row(StitchType::S401, 8.0, 2.0),
            row(StitchType::S401, 8.0, 36.0),
        ];
        set(l, SeamId::Band, Construction::BandOverEdge, &rows);
    };
    let order = sound(&sewn(two_row));
    let band = named(&order, "band-set");
    assert_eq!(band.machine, "waistband machine");
    assert_eq!(band.gauge_words(), "two needles, 34.0 mm");
    assert!(named(&order, "band-ends").not_stated.is_some());
    is_before(&order, "band-ends", "band-buttonhole");

    let order = sound(&sewn(|l| {
        l.style.band.method = BandMethod::TwoRow;
        let rows = [
            row(StitchType::S301, 9.0, 0.0),
            row(StitchType::S301, 8.0, 2.0),
        ];
        set(l, SeamId::Band, Construction::BandTurned, &rows);
    }));
    assert_eq!(named(&order, "band-mark").work, Work::Pressed);
    is_before(&order, "band-mark", "band-join");
    is_before(&order, "band-join", "band-ends");
    is_before(&order, "band-ends", "band-topstitch");
}

#[test]
fn a_zip_is_sewn_in_where_buttons_would_be() {
    let order = sound(&sewn(|l| {
        let fly = &mut l.style.fly;
        fly.closing = Closing::Zip;
        fly.buttons = 0;
        fly.button = None;
        fly.zip = Some("zip-16".to_owned());
    }));
    assert!(!has(&order, "fly-buttonholes") && !has(&order, "fly-buttons"));
    let left = named(&order, "zip-left");
    assert_eq!((left.fixings.len(), left.not_stated.is_some()), (1, true));
    is_before(&order, "zip-left", "fly-shield-join");
    is_before(&order, "zip-left", "fly-join");
}

#[test]
fn a_row_of_the_fly_that_is_caught_later_is_sewn_before_the_rise() {
    let order = sound(&sewn(|l| {
        let fly = l
            .style
            .seams
            .get_mut(&SeamId::Fly)
            .unwrap()
            .rows
            .as_mut()
            .unwrap();
        fly.iter_mut()
            .for_each(|row| row.end = Some(RowEnding::CaughtInSeam));
    }));
    is_before(&order, "fly-topstitch", "front-rise-join");
}

#[test]
fn what_a_style_leaves_out_is_left_out() {
    let order = sound(&sewn(|l| {
        let style = &mut l.style;
        style.pockets.extra = None;
        style.seams.shift_remove(&SeamId::ExtraHem);
        style.seams.shift_remove(&SeamId::ExtraSet);
        style.seams.shift_remove(&SeamId::Decoration);
        style.pockets.back.left.lining = Lining::None;
        style.pockets.back.right.lining = Lining::None;
        style.patch = None;
        style.seams.shift_remove(&SeamId::PatchSet);
        style.labels.clear();
        style.loops.count = 0;
        style.hem.ends = HemEnds::Overlapped;
    }));
    for key in [
        "extra-hem",
        "extra-set",
        "decoration",
        "back-pockets-line",
        "patch-set",
        "label-set",
        "labels-seam",
        "loops-cut",
        "loops-set",
        "hem-tie",
    ] {
        assert!(!has(&order, key), "{key}");
    }
    assert!(has(&order, "hem") && has(&order, "band-round"));
}

/// Work without a row is asked about, not left out.
#[test]
fn what_no_row_states_is_marked() {
    let order = sound(&sewn(|l| {
        for seam in [
            SeamId::PatchSet,
            SeamId::LabelSet,
            SeamId::FlyEdge,
            SeamId::Outseam,
        ] {
            l.style.seams.shift_remove(&seam);
        }
        let rows = [
            row(StitchType::S301, 8.0, 1.6),
            row(StitchType::S301, 8.0, 8.0),
        ];
        set(l, SeamId::FrontRise, Construction::MockFelled, &rows);
    }));
    for key in [
        "patch-set",
        "label-set",
        "fly-edge-sew",
        "outseam-sew",
        "front-rise-join",
        "front-rise-neaten",
    ] {
        let operation = named(&order, key);
        assert!(operation.not_stated.is_some(), "{key}");
        assert!(operation.needles.is_empty(), "{key}");
    }
    is_before(&order, "front-rise-neaten", "front-rise-topstitch");
    assert_eq!(named(&order, "patch-set").fixings.len(), 1);
    let stated = sound(&sewn(|_| ()));
    assert!(named(&stated, "front-rise-join").not_stated.is_none());
}

#[test]
fn hems_are_tied_where_the_style_says_so() {
    let order = sound(&sewn(|_| ()));
    is_before(&order, "hem", "hem-tie");
    assert!(
        named(&order, "hem")
            .mind
            .iter()
            .any(|m| m == "begin and end at the inseam")
    );
    let folded = sound(&sewn(|l| {
        set(
            l,
            SeamId::Hem,
            Construction::FoldedHem,
            &[row(StitchType::S301, 8.0, 10.5)],
        );
    }));
    is_before(&folded, "hem-press", "hem");
    assert_eq!(named(&folded, "hem").machine, "cylinder-bed lockstitch");
}

/// Each machine is one the table of operations names for that work.
#[test]
fn machines_are_those_of_the_trade() {
    let order = sewing_order(&sewn(|_| ()));
    for operation in order
        .iter()
        .filter(|o| o.needles.iter().any(|n| n.row.is_some()))
    {
        let usual = trade::seam::operation(operation.usual.unwrap()).unwrap();
        let kinds = [
            "overedge",
            "lockstitch",
            "chainstitch",
            "coverstitch",
            "feed-off-the-arm",
            "waistband machine",
        ];
        let kind = kinds
            .iter()
            .find(|kind| operation.machine.contains(*kind))
            .unwrap();
        let stitch = operation.needles[0].stitch;
        if usual.stitches.contains(&stitch) {
            assert!(
                usual.machine.contains(kind),
                "{}: {}",
                operation.key,
                usual.machine
            );
        }
    }
}

/// The pack answers for every row: class, stitch, density, yarns, gauge, begin and end, and which
/// way the allowance lies.
#[test]
fn every_row_of_the_demo_is_described() {
    let garment = sewn(|_| ());
    for seam in &garment.seams {
        let told = describe(&garment, seam);
        let name = seam.id.code();
        assert!(
            told.class.contains("ISO 4916") && told.class.contains("ASTM D6193"),
            "{name}"
        );
        assert!(!told.lies.is_empty() && !told.joins.is_empty(), "{name}");
        assert_eq!(
            (told.gauges.len(), told.ends.len()),
            (seam.rows.len(), seam.rows.len())
        );
        for (index, row) in seam.rows.iter().enumerate() {
            let (gauge, ends) = (&told.gauges[index], &told.ends[index]);
            assert!(
                gauge.contains("needle") || gauge.contains("bite"),
                "{name}: {gauge}"
            );
            let ended = ends.contains("both ends: ")
                || (ends.contains("begins: ") && ends.contains("ends: "));
            assert!(ended, "{name}: {ends}");
            assert!(row.density.to_per_inch() > 0.0, "{name}");
            assert!(garment.collection.yarns.contains_key(&row.yarn), "{name}");
            assert!(garment.collection.yarns.contains_key(&row.under), "{name}");
        }
    }
    let gauges = |id: SeamId| {
        let seam = garment.seams.iter().find(|s| s.id == id).unwrap();
        describe(&garment, seam).gauges
    };
    assert_eq!(
        gauges(SeamId::Inseam),
        ["two needles, 6.4 mm", "two needles, 6.4 mm"]
    );
    assert_eq!(gauges(SeamId::Outseam), ["single needle"]);
    assert_eq!(
        gauges(SeamId::Band),
        ["single needle", "single needle, 34.0 mm from row 1"]
    );
    assert_eq!(gauges(SeamId::FlyEdge), ["single needle, bite 5.6 mm"]);
}

/// The same label in the band and in the outseam: each operation has its own.
#[test]
fn labels_alike_are_told_apart() {
    let order = sound(&sewn(|l| {
        l.style.seams.shift_remove(&SeamId::LabelSet);
        let trim = l.style.labels[0].trim.clone();
        l.style.labels[2].trim = trim;
    }));
    for (key, labels) in [("label-set", 2), ("labels-seam", 1)] {
        assert_eq!(named(&order, key).fixings.len(), labels, "{key}");
    }
}

fn any_row() -> impl Strategy<Value = RowSpec> {
    let stitch = prop::sample::select(&StitchType::ALL[..]);
    let offset = prop_oneof![Just(0.0), Just(-4.0), Just(f64::NAN), 0.0..60.0_f64];
    (stitch, prop::sample::select(&[7.0, 8.0][..]), offset)
        .prop_map(|(stitch, per_inch, offset)| row(stitch, per_inch, offset))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any rows on any two seams, in any construction: everything is sewn once, in an order.
    #[test]
    fn any_seams_have_an_order(
        seams in prop::collection::vec((
            prop::sample::select(known::seams().collect::<Vec<_>>()),
            prop::sample::select(Construction::WORDS),
            prop::collection::vec(any_row(), 0..5),
        ), 2),
        round in any::<bool>(),
    ) {
        let garment = sewn(|l| {
            if !round {
                l.style.band.method = BandMethod::TwoRow;
            }
            for (seam, (_, construction), rows) in &seams {
                set(l, seam.id, *construction, rows);
            }
        });
        sound(&garment);
    }

    /// Whatever the numbers, there is an order and no panic.
    #[test]
    fn any_chart_has_an_order(
        measure in 0..MeasureId::ALL.len(),
        value in prop_oneof![Just(0.0), Just(-1.0e7), Just(1.0e7), Just(f64::NAN), -500.0..1500.0_f64],
    ) {
        let garment = sewn(|l| {
            if let Some((_, entry)) = l.style.chart.get_index_mut(measure) {
                entry.value = Length::mm(value);
            }
        });
        let order = sewing_order(&garment);
        let once: BTreeSet<&str> = keys(&order).into_iter().collect();
        prop_assert_eq!(once.len(), order.len());
        let sewn: Vec<usize> = order.iter().flat_map(Operation::rows).collect();
        prop_assert_eq!(sewn.len(), garment.rows.len());
    }
}
