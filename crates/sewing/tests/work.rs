//! The sewing order: everything is sewn once, nothing before what it needs, and the order is the
//! one a workroom can sew.
//!
//! Long because one exact order of a whole garment is written out, and every test asks the same list.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use std::collections::BTreeSet;

use common::ferryman;
use draft::{EdgeId, PieceId};
use proptest::prelude::*;
use sewing::work::{Operation, Stage, Work, closing_seam, order_notes, sewing_order};
use sewing::yarn::consumption;
use sewing::{Finish, FixingKind, Garment, On, RowEnd, StitchRow, describe, make};
use style::{
    BandMethod, Closing, Construction, FlyTopstitch, HemEnds, Lining, Loaded, MeasureId, RowEnding,
    RowSpec, SeamId, SetAfter, Size, known,
};
use trade::{Length, MachineId, StitchDensity, StitchType, Unwashed, Washed};
use words::{Key, Words, key};

fn sewn(change: impl FnOnce(&mut Loaded)) -> Garment {
    let mut loaded = ferryman();
    change(&mut loaded);
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn place(order: &[Operation], key: &str) -> usize {
    let found = order.iter().position(|o| o.key.code() == key);
    found.unwrap_or_else(|| panic!("no {key} among {:?}", keys(order)))
}

fn keys(order: &[Operation]) -> Vec<String> {
    order.iter().map(|o| o.key.code()).collect()
}

/// How the needles of an operation stand, in words.
fn gauge(order: &[Operation], key: &str) -> String {
    let gauge = named(order, key).gauge_words();
    gauge.map_or_else(String::new, |gauge| Words::english().say(gauge))
}

/// Whether an operation says this of what to mind.
fn minds(operation: &Operation, key: Key) -> bool {
    operation.mind.contains(&key.into())
}

/// Whether an operation says this, in words.
fn says(order: &[Operation], key: &str, wanted: &str) -> bool {
    let said = named(order, key).mind.iter();
    let mut said = said.map(|mind| Words::english().saying(mind));
    said.any(|said| said.contains(wanted))
}

fn named<'a>(order: &'a [Operation], key: &str) -> &'a Operation {
    &order[place(order, key)]
}

fn has(order: &[Operation], key: &str) -> bool {
    order.iter().any(|o| o.key.code() == key)
}

/// Everything that has to come before an operation, by its own word and that of others.
fn before(order: &[Operation], key: &str) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    let mut open: Vec<String> = vec![key.to_owned()];
    while let Some(key) = open.pop() {
        for wanted in &named(order, &key).after {
            if out.insert(wanted.code()) {
                open.push(wanted.code());
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
    let mut done: BTreeSet<String> = BTreeSet::new();
    for (index, operation) in order.iter().enumerate() {
        let key = &operation.key.code();
        assert_eq!(operation.number, index + 1, "{key}");
        for wanted in &operation.after {
            assert!(done.contains(&wanted.code()), "{key} needs {wanted:?}");
        }
        assert!(done.insert(key.clone()), "{key} twice");
        assert!(
            !operation.mind.is_empty() || operation.not_stated.is_some() || key == "set-rest",
            "{key}"
        );
        assert!(
            !operation
                .mind
                .iter()
                .map(|mind| Words::english().saying(mind))
                .any(|m| m.is_empty() || m.ends_with('.')),
            "{key}"
        );
        let of_all = matches!(key.as_str(), "look-over" | "wash" | "trim-threads");
        assert!(!operation.parts.is_empty() || of_all, "{key}");
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
    let key = operation.key.code();
    let sews = operation.work == Work::Sewn;
    assert_eq!(operation.needle_count > 0, sews, "{key}");
    assert_eq!(operation.gauge_words().is_some(), sews, "{key}");
    assert_eq!(
        sews && operation.needles.is_empty(),
        operation.not_stated.is_some(),
        "{key}"
    );
    let mut longest = Unwashed::default();
    for needle in &operation.needles {
        assert!(needle.ends.is_some(), "{key}");
        let Some(number) = needle.row else { continue };
        assert_eq!(operation.gauges.len() + 1, operation.needles.len(), "{key}");
        let of_row = || {
            garment
                .rows
                .iter()
                .filter(|r| needle.seam == r.seam && r.number == number)
        };
        let twice = |on| if on == On::Both { 2.0 } else { 1.0 };
        let length: Length = of_row()
            .map(|r| garment.length_at_machine(r).figure() * twice(r.on))
            .sum();
        assert!(
            (length - needle.sewn.figure()).abs() < Length::mm(1e-6),
            "{key}"
        );
        assert_eq!(of_row().count(), needle.rows.len(), "{key}");
        for index in &needle.rows {
            let row = &garment.rows[*index];
            assert_eq!(
                (Some(row.seam), row.number),
                (needle.seam.seam(), number),
                "{key}"
            );
            assert_eq!(row.stitch, needle.stitch, "{key}");
            assert_eq!(Some(Washed::new(row.density)), needle.counted, "{key}");
            assert_eq!(
                (&row.needle, &row.under),
                (&needle.yarn, &needle.under),
                "{key}"
            );
        }
        if needle.sewn > longest {
            longest = needle.sewn;
        }
    }
    if longest > Unwashed::default() {
        assert_eq!(operation.sewn, longest, "{key}");
    }
}

/// What the yarn list counts as not stated is in the order, as long as it says; what has no estimate
/// there has none here.
fn not_stated_is_said(garment: &Garment, order: &[Operation]) {
    let listed: Length = consumption(garment)
        .unstated
        .iter()
        .map(|u| u.sewn.figure())
        .sum();
    let estimated = |o: &&Operation| o.not_stated.as_ref().is_some_and(|n| n.stitch.is_some());
    let said: Length = order
        .iter()
        .filter(estimated)
        .map(|o| o.sewn.figure())
        .sum();
    let what: Vec<_> = order.iter().filter(estimated).map(|o| o.key).collect();
    assert!(
        (listed - said).abs() < Length::mm(1e-6),
        "{listed} {said} {what:?}"
    );
    for operation in order
        .iter()
        .filter(|o| o.not_stated.is_some() && !estimated(o))
    {
        assert_eq!(operation.sewn, Unwashed::default(), "{:?}", operation.key);
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

/// The back lies on the cloth's finished edge, the front does up to where its side line leaves it at the
/// hip; the rest, facing and yoke are raw. Cut from cloth without such an edge, every edge is.
#[test]
fn an_edge_the_cloth_finishes_is_not_overedged() {
    let neatened = |garment: &Garment| {
        let order = sewing_order(garment);
        let found = order.into_iter().find(|o| o.key.code() == "outseam-neaten");
        let mut pieces = found.unwrap().pieces;
        pieces.sort();
        pieces
    };
    let demo = sewn(|_| ());
    assert_eq!(
        neatened(&demo),
        [
            PieceId::Front,
            PieceId::Yoke,
            PieceId::PocketFacing,
            PieceId::PocketBag
        ]
    );
    let plain = sewn(|l| {
        let shell = l.style.cloth.shell.clone();
        l.collection.cloths[&shell].selvedge = false;
    });
    assert!(neatened(&plain).contains(&PieceId::Front));
}

/// Above the hip notch the front is cut, not woven: it is drawn, counted and asked for as raw there, and a row
/// that states the overedge is laid there and nowhere below.
#[test]
fn the_front_is_neatened_from_the_hip_notch_up() {
    let garment = sewn(|_| ());
    let front = garment.pattern.piece(PieceId::Front).unwrap();
    let hip = front.point(draft::PointId::Hip).unwrap();
    let laps: Vec<_> = garment
        .laps
        .iter()
        .filter(|lap| (lap.piece, lap.edge) == (PieceId::Front, draft::EdgeId::Side))
        .collect();
    let [own, raw] = laps[..] else {
        panic!("{laps:?}")
    };
    assert_eq!(
        (own.finish, raw.finish),
        (Finish::Selvedge, Finish::Overedged)
    );
    let starts = raw.line(&garment.pattern).unwrap().start();
    assert!((starts - own.line(&garment.pattern).unwrap().end()).hypot() < 1e-6);
    assert!(
        starts.y >= hip.y - 0.1 && starts.y < hip.y + 60.0,
        "{starts:?}"
    );
    let asked = consumption(&garment).unstated;
    let asked = asked.iter().find(|u| u.of == SeamId::Outseam).unwrap();
    let pieces = [PieceId::Yoke, PieceId::PocketFacing];
    let others: Length = garment
        .laps
        .iter()
        .filter(|lap| lap.seam() == Some(SeamId::Outseam) && pieces.contains(&lap.piece))
        .map(|lap| lap.line(&garment.pattern).unwrap().length() * 2.0)
        .sum();
    let front_alone = raw.line(&garment.pattern).unwrap().length() * 2.0;
    // Counted as it is sewn: along the warp, most of it, by 8 % longer than after the wash.
    let longer = asked.sewn.figure() / (others + front_alone);
    assert!((1.05..1.10).contains(&longer), "{longer}");
    assert!(
        garment
            .findings
            .iter()
            .any(|f| f.code == "sewing::overedge-unstated")
    );

    let stated = sewn(|l| {
        let seam = l.style.seams.get_mut(&SeamId::Outseam).unwrap();
        let rows = seam.rows.as_mut().unwrap();
        let overedge = RowSpec {
            stitch: StitchType::S504,
            ..rows[0].clone()
        };
        rows.push(overedge);
    });
    let laid = |piece| {
        let of_piece = |row: &&sewing::StitchRow| {
            row.piece == piece && row.seam == SeamId::Outseam && row.number == 2
        };
        stated
            .rows
            .iter()
            .find(of_piece)
            .map(|row| row.path.clone())
    };
    assert!((laid(PieceId::Front).unwrap().start() - starts).hypot() < 1.0);
    assert!(laid(PieceId::Back).is_none() && laid(PieceId::Yoke).is_some());
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
        "decoration",
        "back-pockets-line",
        "back-pocket-hem",
        "back-pockets-press",
        "extra-hem",
        "extra-pocket-press",
        "fly-strip-close",
        "fly-buttonholes",
        "fly-edge-neaten",
        "fly-shield-close",
        "band-halves-join",
        "band-halves-press",
        "band-mark",
        "label-set",
        "facing-press",
        "facing-set",
        "extra-set",
        "mouth-join",
        "mouth-press",
        "mouth-topstitch",
        "bag-close",
        "bags-baste",
        "fly-join",
        "fly-press",
        "fly-topstitch",
        "fly-shield-join",
        "fly-shield-neaten",
        "front-rise-join",
        "front-rise-neaten",
        "front-rise-press",
        "front-rise-topstitch",
        "back-pocket-set",
        "yoke-fell",
        "seat-thin",
        "seat-fell",
        "inseam-thin",
        "inseam-fell",
        "labels-seam",
        "outseam-neaten",
        "outseam-join",
        "outseam-press",
        "band-set",
        "band-ends-turn",
        "band-round",
        "loops-set",
        "hem",
        "hem-tie",
        "bartacks-back-pockets",
        "bartacks-fly",
        "bartacks-crotch",
        "band-buttonhole",
        "band-button",
        "fly-buttons",
        "mouth-rivets",
        "trim-threads",
        "wash",
        "patch-set",
        "look-over",
    ];
    assert_eq!(keys(&order), wanted);
    let asked: Vec<String> = order
        .iter()
        .filter(|o| o.not_stated.is_some())
        .map(|o| o.key.code())
        .collect();
    assert_eq!(
        asked,
        [
            "fly-strip-close",
            "fly-shield-close",
            "mouth-join",
            "bags-baste",
            "fly-join",
            "fly-shield-join",
            "fly-shield-neaten",
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
            let code = |place: usize| order[place].key.code();
            assert!(last(first) < last(closes), "{outseam} {inseam}");
            is_before(&order, &code(last(closes)), "band-set");
            is_before(&order, &code(last(first)), &code(last(closes)));
            is_before(&order, "labels-seam", &code(last(o)));
            is_before(&order, "seat-fell", &code(last(first)));
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
        let others = order.iter();
        let others = others.filter(|o| o.key.seam() != Some(SeamId::Inseam));
        others.map(|o| o.key.code()).collect()
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
    assert_eq!(inseam.machine, MachineId::FeedOffTheArm);
    assert!(minds(inseam, key::MIND_REACH_INSEAM_OPEN));
    let press = named(&order, "outseam-press");
    assert_eq!(
        (press.work, press.machine),
        (Work::Pressed, MachineId::Iron)
    );
    assert!(minds(press, key::MIND_PRESS_TUBE));
    assert!(named(&order, "outseam-join").needles.len() == 1);
}

#[test]
fn a_plain_inseam_closes_the_leg_after_the_outseam_is_pressed_open_flat() {
    let order = sound(&sewn(|l| {
        joined(l, SeamId::Inseam, Construction::SafetyStitched)
    }));
    is_before(&order, "outseam-press", "inseam-join");
    assert!(!minds(named(&order, "outseam-press"), key::MIND_PRESS_TUBE));
    assert_eq!(
        named(&order, "inseam-join").machine,
        MachineId::SafetyOveredge
    );
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
        MachineId::TwoNeedleLockstitch
    );
    assert_eq!(
        named(&order, "inseam-topstitch").machine,
        MachineId::CylinderArmLockstitch
    );
}

#[test]
fn each_thing_is_set_while_its_place_is_reached() {
    let garment = sewn(|loaded| {
        loaded.style.wash = None;
        loaded.style.rivets.as_mut().unwrap().back_hidden = true;
        loaded.style.bartacks.mouth = Some(true);
    });
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
        ("fly-topstitch", "front-rise-join"),
        ("back-pockets-line", "back-pocket-hem"),
        ("back-pocket-hem", "back-pockets-press"),
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
        (inseam.needle_count, gauge(&order, "inseam-fell")),
        (2, "two needles, 6.4 mm".to_owned())
    );
    assert_eq!(
        named(&order, "mouth-topstitch").machine,
        MachineId::TwoNeedleLockstitch
    );
    assert_eq!(gauge(&order, "loop-edge"), "two needles, 6.0 mm");
    assert_eq!(gauge(&order, "bag-close"), "two needles, bite 5.6 mm");

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
        (MachineId::Lockstitch, MachineId::Lockstitch)
    );
    assert_eq!(
        (first.needles[0].row, second.needles[0].row),
        (Some(1), Some(2))
    );
    assert_eq!(second.after, [first.key]);

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
    assert_eq!(gauge(&three, "yoke-fell"), "three needles, 3.4 and 3.4 mm");
    let locked = sound(&sewn(|l| {
        let rows = [1.6, 8.0, 12.0].map(|offset| row(StitchType::S301, 8.0, offset));
        set(l, SeamId::Yoke, Construction::LapFelled, &rows);
    }));
    assert_eq!(
        named(&locked, "yoke-fell").machine,
        MachineId::TwoNeedleLockstitch
    );
    assert_eq!(named(&locked, "yoke-fell-2").machine, MachineId::Lockstitch);
}

#[test]
fn the_band_is_sewn_by_its_method() {
    let round = sound(&sewn(|_| ()));
    is_before(&round, "band-set", "band-round");
    assert!(!has(&round, "band-ends"));
    let lower = named(&round, "band-set");
    assert!(minds(lower, key::MIND_ENDS_TUCK));
    assert!(minds(named(&round, "band-round"), key::MIND_ROUND_END));

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
    assert_eq!(band.machine, MachineId::Waistband);
    assert_eq!(gauge(&order, "band-set"), "two needles, 34.0 mm");
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

/// Where each visible row of the rise begins on the left front, in the order of the rows.
fn beginnings_of_the_rise(garment: &Garment) -> Vec<RowEnd> {
    let seen = |row: &&StitchRow| row.seam == SeamId::FrontRise && row.shows_outside;
    garment
        .rows
        .iter()
        .filter(seen)
        .map(|row| row.begins)
        .collect()
}

/// Common practice: the fly is topstitched on the flat left front, and nothing covers where the rise begins.
#[test]
fn the_rise_begins_on_the_rows_of_a_fly_sewn_flat_and_under_those_of_one_sewn_later() {
    let flat = sewn(|_| ());
    let later = sewn(|l| l.style.fly.topstitch = FlyTopstitch::AfterRise);
    assert_eq!(beginnings_of_the_rise(&flat), [RowEnd::Backtacked; 2]);
    assert_eq!(beginnings_of_the_rise(&later), [RowEnd::CaughtInSeam; 2]);
    let order = sound(&later);
    is_before(&order, "fly-shield-join", "fly-topstitch");
    is_before(&order, "front-rise-topstitch", "fly-topstitch");
    let before = sound(&flat);
    let fly = |order, key| minds(named(order, "fly-topstitch"), key);
    assert!(fly(&before, key::MIND_TOPSTITCH_FLY_FLAT));
    assert!(fly(&order, key::MIND_TOPSTITCH_FLY_BUTTONS));
    let rise = |order, key| minds(named(order, "front-rise-topstitch"), key);
    assert!(rise(&before, key::MIND_RISE_ON_FLY));
    assert!(rise(&order, key::MIND_RISE_UNDER_FLY));
}

#[test]
fn a_row_of_the_fly_that_is_caught_later_is_sewn_before_the_rise() {
    let order = sound(&sewn(|l| {
        l.style.fly.topstitch = FlyTopstitch::AfterRise;
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

/// Common practice: the lining's upper edge lies in the hem, so it is laid in before the pocket is hemmed.
#[test]
fn a_lining_is_caught_where_plates_order_rows_and_yarn_say_it_is() {
    use PieceId::{BackLiningLeft, BackPocketLeft};
    for (how_far, caught) in [
        (Lining::Half, key::MIND_SET_BACK_POCKET_HALF_LINING),
        (Lining::Full, key::MIND_SET_BACK_POCKET_FULL_LINING),
    ] {
        let garment = sewn(|l| {
            l.style.pockets.back.left.lining = how_far;
            l.style.pockets.back.right.lining = Lining::None;
        });
        let order = sound(&garment);
        is_before(&order, "decoration", "back-pockets-line");
        is_before(&order, "back-pockets-line", "back-pocket-hem");
        is_before(&order, "back-pocket-hem", "back-pockets-press");
        let hem = named(&order, "back-pocket-hem");
        assert!(hem.pieces.contains(&BackLiningLeft));
        let pressed = named(&order, "back-pockets-line").work == Work::Pressed;
        assert_eq!(pressed, how_far == Lining::Half);
        assert!(minds(named(&order, "back-pocket-set"), caught));
        // Three of the hem and the lining; the turned edge, the back, and the lining turned in with it.
        let all = consumption(&garment);
        for (seam, plain, lined) in [(SeamId::BackPocketHem, 3, 4), (SeamId::BackPocketSet, 3, 5)] {
            for item in all
                .items
                .iter()
                .filter(|item| item.seam == seam && item.row.is_some())
            {
                let wanted = if item.piece == BackPocketLeft {
                    lined
                } else {
                    plain
                };
                assert_eq!(item.plies.count(), wanted, "{:?}", item.seam);
            }
            assert!(garment.catches_lining(seam));
        }
        let cut = garment
            .cut
            .iter()
            .find(|cut| cut.piece == BackLiningLeft)
            .unwrap();
        let top = cut.allowances.iter().find(|(edge, _)| *edge == EdgeId::Top);
        assert_eq!(top.unwrap().1, Length::ZERO);
    }
    let unlined = sewn(|l| {
        l.style.pockets.back.left.lining = Lining::None;
        l.style.pockets.back.right.lining = Lining::None;
    });
    assert!(!unlined.catches_lining(SeamId::BackPocketHem));
    let order = sound(&unlined);
    let set = named(&order, "back-pocket-set");
    assert!(!minds(set, key::MIND_SET_BACK_POCKET_HALF_LINING));
    is_before(&order, "back-pocket-hem", "decoration");
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

/// The demo's cloth is 78 cm wide and its band along the weft longer, so it is joined at the centre back.
#[test]
fn a_band_cut_in_two_is_joined_before_anything_else_is_done_to_it() {
    let joins = |garment: &Garment| {
        consumption(garment)
            .items
            .iter()
            .any(|i| i.seam == SeamId::BandJoin)
    };
    let stated = sewn(|_| ());
    let order = sound(&stated);
    is_before(&order, "band-halves-join", "band-halves-press");
    is_before(&order, "band-halves-press", "band-mark");
    assert!(joins(&stated));
    assert!(minds(
        named(&order, "band-halves-press"),
        key::MIND_BAND_JOIN_RAW
    ));
    let wide = sewn(|l| {
        let shell = l.style.cloth.shell.clone();
        l.collection.cloths[&shell].width = Length::cm(150.0);
    });
    assert!(
        !keys(&sound(&wide))
            .iter()
            .any(|key| key.starts_with("band-halves"))
    );
    assert!(!joins(&wide));
    let asked = sewn(|l| {
        l.style.seams.shift_remove(&SeamId::BandJoin);
    });
    let order = sound(&asked);
    let join = named(&order, "band-halves-join");
    assert!(
        join.not_stated.is_some() && join.sewn.figure() > Length::cm(7.0),
        "{join:?}"
    );
    is_before(&order, "band-halves-press", "band-mark");
    assert!(minds(
        named(&order, "band-halves-press"),
        key::MIND_BAND_JOIN_RAW
    ));
    assert!(asked.findings.iter().any(|f| f.code == "sewing::band-join"));
    assert!(
        !stated
            .findings
            .iter()
            .any(|f| f.code == "sewing::band-join")
    );
}

/// The holes of a button fly are sewn through a strip of two plies that is closed first; a zip needs one facing.
#[test]
fn a_button_fly_has_a_finished_strip_for_its_holes_and_a_zip_one_facing() {
    let cut = |garment: &Garment| {
        let cut = garment.pattern.piece(PieceId::FlyFacing).unwrap().cut;
        cut.as_drawn + cut.mirrored
    };
    let plies = |garment: &Garment| {
        let items = consumption(garment).items;
        let hole = |i: &&sewing::yarn::Item| {
            i.piece == PieceId::FlyFacing && i.sewn == sewing::yarn::Sewn::Buttonhole
        };
        items.iter().find(hole).map(|item| item.plies.count())
    };
    let row = |garment: &Garment| {
        let items = consumption(garment).items;
        let of_fly = |i: &&sewing::yarn::Item| i.seam == SeamId::Fly;
        items.iter().find(of_fly).unwrap().plies.count()
    };
    let buttons = sewn(|_| ());
    let order = sound(&buttons);
    assert_eq!(
        (cut(&buttons), plies(&buttons), row(&buttons)),
        (3, Some(2), 4)
    );
    is_before(&order, "fly-strip-close", "fly-buttonholes");
    let closed = named(&order, "fly-strip-close");
    assert!(closed.not_stated.is_some() && closed.sewn.figure() > Length::cm(16.0));
    let zip = sewn(|l| l.style.fly.closing = Closing::Zip);
    assert!(!has(&sound(&zip), "fly-strip-close"));
    assert_eq!((cut(&zip), plies(&zip), row(&zip)), (1, None, 2));
}

/// Five millimetres of cloth between the end of a hole and the row beside it: 2.5 mm of stitches and as much for
/// the needle. Where a row comes nearer the holes move towards the fly edge, as far as the button stays covered.
#[test]
fn fly_holes_end_clear_of_the_topstitching_or_it_is_said() {
    let holes = |garment: &Garment| -> (f64, f64) {
        let hole = garment.fixings.iter().find_map(|f| match f.kind {
            FixingKind::Buttonhole(long) if f.piece == PieceId::FlyFacing => Some((f.at.x, long)),
            _ => None,
        });
        let (middle, long) = hole.unwrap();
        (middle - long.to_mm() / 2.0, middle + long.to_mm() / 2.0)
    };
    let with_row = |mm: f64| {
        sewn(|l| {
            let fly = l.style.seams.get_mut(&SeamId::Fly).unwrap();
            fly.rows.as_mut().unwrap()[1].offset = Length::mm(mm);
        })
    };
    let said = |garment: &Garment| {
        garment
            .findings
            .iter()
            .any(|f| f.code == "sewing::fly-holes")
    };
    // A button of 14 mm has a hole of 17.2 mm and is covered from 9 mm on.
    for (row, eye, wanted) in [(32.0, 9.5, false), (31.4, 9.225, false), (28.0, 9.0, true)] {
        let garment = with_row(row);
        let (from, to) = holes(&garment);
        assert!((from - eye).abs() < 0.01, "row {row}: eye {from}");
        assert_eq!(row - to < 4.99, wanted, "row {row}: ends {to}");
        assert_eq!(said(&garment), wanted, "row {row}");
    }
}

/// What a machine cannot cross is made thinner by an operation before, or is an error; never a note alone.
#[test]
fn a_crossing_too_thick_for_its_machine_is_thinned_or_stops_the_style() {
    use draft::Severity;
    let severity = |garment: &Garment, code: &str| {
        garment
            .findings
            .iter()
            .filter(|f| f.code == code)
            .map(|f| f.severity)
            .max()
    };
    let demo = sewn(|_| ());
    let order = sound(&demo);
    is_before(&order, "yoke-fell", "seat-thin");
    is_before(&order, "seat-thin", "seat-fell");
    is_before(&order, "inseam-thin", "inseam-fell");
    assert_eq!(
        severity(&demo, "sewing::felled-crossing"),
        Some(Severity::Note)
    );
    let thick = |mm: f64| {
        sewn(|l| {
            let shell = l.style.cloth.shell.clone();
            l.collection.cloths[&shell].thickness = Length::mm(mm);
        })
    };
    // Eight plies are left of sixteen: 8 × 1.3 mm is more than 10 mm; so is a hem of twelve plies.
    let heavy = thick(1.3);
    assert!(!has(&sound(&heavy), "seat-thin"));
    for code in ["sewing::felled-crossing", "sewing::hem-bulk"] {
        assert_eq!(severity(&heavy, code), Some(Severity::Error), "{code}");
    }
    assert!(!has(&sound(&thick(0.5)), "seat-thin"));
}

/// What is cut beyond the curved edge of the fly facing is what the list of seams says.
#[test]
fn the_fly_facing_edge_has_one_allowance() {
    for construction in known::seam(SeamId::FlyEdge).constructions {
        let garment = sewn(|l| {
            let edge = l.style.seams.get_mut(&SeamId::FlyEdge).unwrap();
            edge.construction = Some(*construction);
        });
        let facing = garment.cut.iter().find(|c| c.piece == PieceId::FlyFacing);
        let cut = facing
            .unwrap()
            .allowances
            .iter()
            .find(|(edge, _)| *edge == draft::EdgeId::Back)
            .unwrap()
            .1;
        let seam = garment
            .seams
            .iter()
            .find(|s| s.id == SeamId::FlyEdge)
            .unwrap();
        let said = sewing::allowances(seam, Length::ZERO).over;
        assert!(
            (cut - said).abs() < Length::mm(1e-9),
            "{construction}: {cut}, {said}"
        );
    }
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
    assert!(minds(named(&order, "hem"), key::MIND_HEM_AT_INSEAM));
    let folded = sound(&sewn(|l| {
        set(
            l,
            SeamId::Hem,
            Construction::FoldedHem,
            &[row(StitchType::S301, 8.0, 10.5)],
        );
    }));
    is_before(&folded, "hem-press", "hem");
    assert_eq!(
        named(&folded, "hem").machine,
        MachineId::CylinderBedLockstitch
    );
}

/// Each machine is one the table of operations names for that work.
#[test]
fn machines_are_those_of_the_trade() {
    let order = sewing_order(&sewn(|_| ()));
    for operation in order
        .iter()
        .filter(|o| o.needles.iter().any(|n| n.row.is_some()))
    {
        let usual = trade::seam::operation(operation.usual.unwrap());
        let kinds = [
            "overedge",
            "lockstitch",
            "chainstitch",
            "coverstitch",
            "feed-off-the-arm",
            "waistband machine",
        ];
        let english = Words::english();
        let machine = operation.machine.words(english);
        let kind = kinds.iter().find(|kind| machine.contains(*kind)).unwrap();
        let named = english.named(usual.machine);
        let stitch = operation.needles[0].stitch;
        if usual.stitches.contains(&stitch) {
            assert!(named.contains(kind), "{:?}: {named}", operation.key);
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
        assert!(told.class.is_some(), "{name}");
        assert_eq!(
            (told.gauges.len(), told.ends.len()),
            (seam.rows.len(), seam.rows.len())
        );
        for (index, row) in seam.rows.iter().enumerate() {
            assert!(told.gauges[index].is_some(), "{name}");
            let ends = Words::english().saying(told.ends[index].as_ref().unwrap());
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
        let gauges = describe(&garment, seam).gauges.into_iter().flatten();
        let gauges: Vec<String> = gauges.map(|gauge| Words::english().say(gauge)).collect();
        gauges
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
        let once: BTreeSet<String> = keys(&order).into_iter().collect();
        prop_assert_eq!(once.len(), order.len());
        let sewn: Vec<usize> = order.iter().flat_map(Operation::rows).collect();
        prop_assert_eq!(sewn.len(), garment.rows.len());
    }
}

/// What the style sets after the wash comes behind it, nothing that is sewn before waits for it, and the last look
/// comes after everything; without a stated wash the order has none.
#[test]
fn what_would_suffer_in_the_wash_is_set_after_it() {
    let mut loaded = ferryman();
    let order_of = |loaded: &Loaded| {
        let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
        sound(&garment)
    };
    let place = |order: &[Operation], code: &str| order.iter().position(|o| o.key.code() == code);
    let order = order_of(&loaded);
    let wash = place(&order, "wash").unwrap();
    assert!(place(&order, "patch-set").unwrap() > wash);
    assert!(place(&order, "band-button").unwrap() < wash);
    assert_eq!(place(&order, "look-over").unwrap(), order.len() - 1);
    let patch = place(&order, "patch-set").unwrap();
    let needle = &order[patch].needles[0];
    assert_eq!(
        needle.set_to.unwrap().figure(),
        needle.counted.unwrap().figure()
    );
    let wash_of = loaded.style.wash.as_mut().unwrap();
    wash_of.set_after = vec![SetAfter::Buttons, SetAfter::Rivets];
    let order = order_of(&loaded);
    let wash = place(&order, "wash").unwrap();
    for code in ["band-button", "fly-buttons", "mouth-rivets"] {
        assert!(place(&order, code).unwrap() > wash, "{code}");
    }
    assert!(place(&order, "patch-set").unwrap() < wash);
    loaded.style.wash = None;
    assert_eq!(place(&order_of(&loaded), "wash"), None);
}

/// Tex 105 takes needles of Nm 110 to 130, tex 80 of 110 to 120: both in one pass those of 110 to 120 (from memory).
#[test]
fn each_sewn_operation_says_its_needle_and_the_order_asks_once_which() {
    let garment = sewn(|_| ());
    let order = sound(&garment);
    let needle = |o: &Operation| o.needle_words().map(|said| Words::english().saying(&said));
    for operation in order.iter().filter(|o| !o.needles.is_empty()) {
        assert!(needle(operation).is_some(), "{:?}", operation.key);
    }
    let said = |key| needle(named(&order, key)).unwrap();
    assert_eq!(said("mouth-topstitch"), "needle Nm 110 to 130");
    assert_eq!(said("inseam-fell"), "needle Nm 110 to 120");
    assert!(order_notes(&garment).contains(&key::ORDER_NOTE_NEEDLES_ASK));
}

/// What a way of ending a row means is said once, of the ways that the pair has.
#[test]
fn how_long_a_backtack_is_stands_beside_the_order() {
    let notes = order_notes(&sewn(|_| ()));
    for note in [
        key::ORDER_NOTE_BACKTACKED,
        key::ORDER_NOTE_TIED,
        key::ORDER_NOTE_CHAINED_OFF,
    ] {
        assert!(notes.contains(&note), "{note:?}");
    }
    let overlapped = sewn(|l| l.style.hem.ends = HemEnds::Overlapped);
    assert!(!order_notes(&overlapped).contains(&key::ORDER_NOTE_TIED));
}

#[test]
fn a_pair_is_washed_in_a_machine_with_its_threads_trimmed() {
    let machine = |by| {
        let order = sound(&sewn(|l| l.style.wash.as_mut().unwrap().by = by));
        is_before(&order, "trim-threads", "wash");
        named(&order, "wash").machine
    };
    assert_eq!(machine(style::WashedBy::Laundry), MachineId::Laundry);
    assert_eq!(
        machine(style::WashedBy::Workroom),
        MachineId::WashingMachine
    );
}

/// The operation that meets a crossing says what is done before: twelve plies of 0.82 mm at the hem, ten of fourteen left
/// at the crotch. Needles 6.4 mm apart leave rows 6.1 mm apart along a seam that loses 4 % across.
#[test]
fn the_operation_itself_says_what_is_done_at_its_crossings_and_how_its_rows_lie_after_the_wash() {
    let order = sound(&sewn(|_| ()));
    let says = |key: &str, wanted: &str| {
        let minds = &named(&order, key).mind;
        let said: Vec<String> = minds.iter().map(|m| Words::english().saying(m)).collect();
        assert!(said.iter().any(|s| s.contains(wanted)), "{key}: {said:?}");
    };
    says("hem", "9.8 mm lie there and the machine sews 8.0 mm");
    says("inseam-fell", "leaves 8.2 mm, still more than it sews");
    says(
        "seat-fell",
        "rows of the crossing seam cover, which leaves 6.6 mm",
    );
    says("inseam-fell", "rows about 6.1 mm apart after the wash");
}

/// The ends of a band are turned in before the row that goes round them closes them.
#[test]
fn the_ends_of_a_band_are_turned_in_before_they_are_sewn_round() {
    let order = sound(&sewn(|_| ()));
    is_before(&order, "band-set", "band-ends-turn");
    is_before(&order, "band-ends-turn", "band-round");
    assert!(minds(named(&order, "band-round"), key::MIND_ROUND_CLOSES));
}

/// Nothing is turned in where a row has sewn the plies shut: the folder's row leaves both ends open, and it is sewn on
/// once they are turned in.
#[test]
fn the_row_of_the_folder_leaves_the_ends_of_the_band_open() {
    let order = sound(&sewn(|_| ()));
    assert!(says(&order, "band-set", "stopped 30 mm before the other"));
    assert!(says(&order, "band-set", "both ends run 9.5 mm beyond"));
    assert!(says(
        &order,
        "band-ends-turn",
        "while the foot of the band is open there"
    ));
    assert!(minds(named(&order, "band-round"), key::MIND_ROUND_FEET));
}

/// Facing and strip are cut alike and overedged on one line, so the strip is closed deeper to stand back from the edge.
#[test]
fn the_buttonhole_strip_stands_back_because_it_is_closed_deeper() {
    let order = sound(&sewn(|_| ()));
    assert!(says(
        &order,
        "fly-strip-close",
        "one as drawn and one mirrored"
    ));
    assert!(says(
        &order,
        "fly-strip-close",
        "close them 11.0 mm from the raw fly edge"
    ));
    assert!(says(&order, "fly-strip-close", "stands back 1.5 mm"));
}

/// The bag of the demo reaches under the topstitching of its fly; rows near the fly edge pass beside it.
#[test]
fn a_bag_that_reaches_under_the_fly_is_folded_away() {
    let folded = |order: &[Operation]| {
        let baste = minds(named(order, "bags-baste"), key::MIND_BAGS_BASTE_CLEAR);
        (
            baste,
            minds(named(order, "fly-topstitch"), key::MIND_BAG_AWAY),
        )
    };
    assert_eq!(folded(&sound(&sewn(|_| ()))), (true, true));
    let beside = sewn(|l| {
        let fly = l.style.seams.get_mut(&SeamId::Fly).unwrap();
        for (row, mm) in fly.rows.as_mut().unwrap().iter_mut().zip([3.0, 8.0]) {
            row.offset = Length::mm(mm);
        }
    });
    assert_eq!(folded(&sound(&beside)), (false, false));
}

/// The rivets of the coin pocket are set before the loops, and lie within the tolerance of a foot tack.
#[test]
fn loops_are_tacked_clear_of_the_coin_pockets_rivets() {
    let loops =
        |garment: &Garment| minds(named(&sound(garment), "loops-set"), key::MIND_LOOPS_RIVET);
    assert!(loops(&sewn(|_| ())));
    assert!(!loops(&sewn(|l| l.style.rivets = None)));
}

/// The shield is cut with another allowance than the front, and is longer than the fly.
#[test]
fn the_shield_is_joined_at_a_stated_distance_and_overedged_to_its_foot() {
    let garment = sewn(|_| ());
    let order = sound(&garment);
    let cut = |piece, edge| {
        let cut = garment.cut.iter().find(|c| c.piece == piece).unwrap();
        cut.allowances.iter().find(|(of, _)| *of == edge).unwrap().1
    };
    let front = cut(PieceId::Front, EdgeId::Fly).to_mm();
    let shield = cut(PieceId::FlyShield, EdgeId::Left).to_mm();
    let told = format!(
        "seam line {front:.1} mm from the front's edge and {shield:.1} mm from both edges of the shield"
    );
    assert!(says(&order, "fly-shield-join", &told), "{told}");
    assert!(says(&order, "fly-shield-join", "hangs free there"));
    assert!(says(
        &order,
        "fly-shield-neaten",
        "along the shield's two edges alone to its foot"
    ));
}
