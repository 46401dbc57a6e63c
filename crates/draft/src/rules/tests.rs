//! Every rule holds for the demo style and is broken by a pattern spoilt on purpose.
#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;

use geometry::{Affine, Path, Point, Vec2};
use style::{Figure, MeasureId, OutseamLine, Size, StyleDoc};
use trade::{Angle, Length};

use super::{RULES, findings};
use crate::drafted::{Drafted, draft};
use crate::finding::{Finding, Severity};
use crate::piece::{EdgeId, NotchId, Piece, PieceId, PointId};
use crate::spec::Spec;
use Severity::{Error, Note, Warning};

const SIZE: Size = Size::new(32, 32);

fn ferryman() -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap().style
}

/// What the rule with this code says about the demo style after `spoil`; before it says nothing.
fn after(code: &str, spoil: impl FnOnce(&mut Drafted)) -> Vec<Finding> {
    after_in(&ferryman(), code, spoil)
}

/// The same for the demo style with its outseam shaped, so that the leg has a crease.
fn after_shaped(code: &str, spoil: impl FnOnce(&mut Drafted)) -> Vec<Finding> {
    let mut doc = ferryman();
    doc.shape.outseam = OutseamLine::Shaped;
    after_in(&doc, code, spoil)
}

fn after_in(doc: &StyleDoc, code: &str, spoil: impl FnOnce(&mut Drafted)) -> Vec<Finding> {
    let mut drafted = draft(&Spec::of(doc, SIZE));
    let of = |drafted: &Drafted| -> Vec<Finding> {
        let mut found = findings(drafted, SIZE, doc);
        found.retain(|f| f.code == code);
        found
    };
    assert_eq!(of(&drafted), [], "{code} before");
    spoil(&mut drafted);
    of(&drafted)
}

/// What the rule says when the style itself is changed and drafted anew.
fn redrafted(code: &str, change: impl FnOnce(&mut Spec)) -> Vec<Finding> {
    let doc = ferryman();
    let mut spec = Spec::of(&doc, SIZE);
    change(&mut spec);
    let drafted = draft(&spec);
    assert!(drafted.conflict.is_none(), "{:?}", drafted.conflict);
    let mut found = findings(&drafted, SIZE, &doc);
    found.retain(|f| f.code == code);
    found
}

fn severities(found: &[Finding]) -> Vec<Severity> {
    found.iter().map(|f| f.severity).collect()
}

fn piece(drafted: &mut Drafted, id: PieceId) -> &mut Piece {
    let pieces = &mut drafted.pattern.pieces;
    pieces.iter_mut().find(|p| p.id == id).unwrap()
}

fn path(drafted: &mut Drafted, id: PieceId, edge: EdgeId) -> &mut Path {
    let edges = &mut piece(drafted, id).edges;
    &mut edges.iter_mut().find(|e| e.id == edge).unwrap().path
}

/// Makes an edge longer or shorter, its start kept.
fn scale(drafted: &mut Drafted, id: PieceId, edge: EdgeId, by: f64) {
    let path = path(drafted, id, edge);
    *path = path.transformed(Affine::scale_about(by, path.start()));
}

/// Turns an edge about its start.
fn turn(drafted: &mut Drafted, id: PieceId, edge: EdgeId, deg: f64) {
    let path = path(drafted, id, edge);
    *path = path.transformed(Affine::rotate_about(deg.to_radians(), path.start()));
}

fn shift(drafted: &mut Drafted, id: PieceId, edge: EdgeId, by: (f64, f64)) {
    let path = path(drafted, id, edge);
    *path = path.transformed(Affine::translate(by));
}

fn move_notch(drafted: &mut Drafted, id: PieceId, name: NotchId, by_mm: f64) {
    let notches = &mut piece(drafted, id).notches;
    let notch = notches.iter_mut().find(|n| n.id == name).unwrap();
    notch.along += Length::mm(by_mm);
}

fn move_point(drafted: &mut Drafted, id: PieceId, name: PointId, by: (f64, f64)) {
    let points = &mut piece(drafted, id).points;
    let point = points.iter_mut().find(|p| p.id == name).unwrap();
    point.at += Vec2::new(by.0, by.1);
}

#[test]
fn outseam_walk() {
    let longer = after("fit::outseam-walk", |d| {
        scale(d, PieceId::Front, EdgeId::Side, 1.002)
    });
    assert!(severities(&longer).contains(&Error));
    assert!(
        longer[0]
            .message(words::Words::english())
            .starts_with("the front is 0.20 cm longer than the back with its yoke"),
        "{}",
        longer[0].message(words::Words::english())
    );
    let notch = after("fit::outseam-walk", |d| {
        move_notch(d, PieceId::Back, NotchId::Hip, 0.6)
    });
    assert_eq!(severities(&notch), [Error, Error]);
    assert_eq!(
        notch[0].about(words::Words::english()),
        "outseam, knee to hip"
    );
}

#[test]
fn inseam_below_knee() {
    let found = after("fit::inseam-below-knee", |d| {
        move_notch(d, PieceId::Back, NotchId::InseamKnee, 0.8);
    });
    assert_eq!(severities(&found), [Error]);
}

#[test]
fn inseam_stretch() {
    let code = "fit::inseam-stretch";
    let unlike = after(code, |d| {
        move_notch(d, PieceId::Back, NotchId::InseamKnee, 0.8)
    });
    assert_eq!(severities(&unlike), [Error]);
    let much = redrafted(code, |s| s.inseam_stretch = Length::mm(12.0));
    assert_eq!(severities(&much), [Warning]);
    let none = redrafted(code, |s| s.inseam_stretch = Length::ZERO);
    assert_eq!(severities(&none), [Note]);
}

#[test]
fn crotch_drop() {
    let code = "fit::crotch-drop";
    let above = after(code, |d| {
        move_point(d, PieceId::Back, PointId::Crotch, (0.0, 20.0))
    });
    assert_eq!(severities(&above), [Warning]);
    assert!(
        above[0]
            .message(words::Words::english())
            .contains("above the front one"),
        "{}",
        above[0].message(words::Words::english())
    );
    let below = after(code, |d| {
        move_point(d, PieceId::Back, PointId::Crotch, (0.0, -10.0))
    });
    assert_eq!(severities(&below), [Warning]);
}

#[test]
fn crotch_level() {
    let found = after("fit::crotch-level", |d| {
        shift(d, PieceId::Back, EdgeId::Seat, (0.0, -10.0))
    });
    assert_eq!(severities(&found), [Warning]);
}

#[test]
fn crotch_smooth() {
    let code = "fit::crotch-smooth";
    let found = after(code, |d| turn(d, PieceId::Front, EdgeId::Inseam, 7.0));
    assert_eq!(severities(&found), [Warning]);
    let found = after(code, |d| turn(d, PieceId::Front, EdgeId::Inseam, 12.0));
    assert_eq!(severities(&found), [Error]);
}

#[test]
fn line_smooth() {
    let found = after("fit::line-smooth", |d| {
        turn(d, PieceId::Yoke, EdgeId::Top, 3.0)
    });
    assert_eq!(severities(&found), [Warning]);
    assert_eq!(
        found[0].about(words::Words::english()),
        "waist across the outseam"
    );
}

#[test]
fn corner_square() {
    let code = "fit::corner-square";
    let band = after(code, |d| turn(d, PieceId::Band, EdgeId::EndRight, 3.0));
    assert_eq!(severities(&band), [Warning, Warning]);
    let grain = after(code, |d| {
        let grain = &mut piece(d, PieceId::Front).grain;
        grain.1.x += 0.05 * (grain.1.y - grain.0.y);
    });
    assert_eq!(
        grain[0].about(words::Words::english()),
        "front hem at the crease"
    );
}

#[test]
fn crotch_curve() {
    let bent = |to: [(f64, f64); 4]| {
        after("fit::crotch-curve", move |d| {
            let p = to.map(|(x, y)| Point::new(x, y));
            *path(d, PieceId::Front, EdgeId::Crotch) = Path::cubic(p[0], p[1], p[2], p[3]);
        })
    };
    let wavy = bent([(0.0, 60.0), (60.0, 40.0), (-100.0, 20.0), (-50.0, 0.0)]);
    assert!(
        wavy[0]
            .message(words::Words::english())
            .contains("first one way"),
        "{}",
        wavy[0].message(words::Words::english())
    );
    let tight = bent([(0.0, 20.0), (0.0, 8.0), (-8.0, 0.0), (-20.0, 0.0)]);
    assert_eq!(severities(&tight), [Warning]);
    assert!(
        tight[0].message(words::Words::english()).contains("radius"),
        "{}",
        tight[0].message(words::Words::english())
    );
}

#[test]
fn yoke_walk() {
    let found = after("fit::yoke-walk", |d| {
        scale(d, PieceId::Yoke, EdgeId::Lower, 1.01)
    });
    assert_eq!(severities(&found), [Error]);
}

#[test]
fn band_walk() {
    let code = "fit::band-walk";
    let found = after(code, |d| scale(d, PieceId::Band, EdgeId::Join, 0.99));
    assert_eq!(severities(&found), [Error]);
    let eased = redrafted(code, |s| s.band_ease = Length::mm(3.0));
    assert_eq!(eased, []);
    let much = redrafted(code, |s| s.band_ease = Length::mm(12.0));
    assert_eq!(severities(&much), [Warning]);
}

#[test]
fn band_overlap() {
    let code = "fit::band-overlap";
    let found = after(code, |d| scale(d, PieceId::Band, EdgeId::Inner, 1.001));
    assert_eq!(severities(&found), [Error]);
    let wide = redrafted(code, |s| s.set(MeasureId::BandOverlap, Length::mm(60.0)));
    assert_eq!(severities(&wide), [Warning]);
}

#[test]
fn crease() {
    let code = "fit::crease";
    let aside = after_shaped(code, |d| {
        let grain = &mut piece(d, PieceId::Front).grain;
        grain.0.x += 2.0;
        grain.1.x += 2.0;
    });
    assert_eq!(severities(&aside), [Error, Error]);
    let crotch = after_shaped(code, |d| {
        move_point(d, PieceId::Back, PointId::Crotch, (-30.0, 0.0))
    });
    assert_eq!(severities(&crotch), [Warning]);
    // A straight outseam has no crease; it has to run on the grain instead.
    let strayed = after(code, |d| {
        let side = &mut piece(d, PieceId::Front).edges;
        let edge = side.iter_mut().find(|e| e.id == EdgeId::Side).unwrap();
        edge.path = edge.path.transformed(Affine::rotate(0.01));
    });
    assert_eq!(severities(&strayed), [Error]);
}

#[test]
fn leg_taper() {
    let found = redrafted("fit::leg-taper", |s| s.hem_split = Length::mm(16.0));
    assert_eq!(severities(&found), [Warning]);
}

#[test]
fn balance() {
    let found = after_shaped("fit::balance", |d| {
        let grain = &mut piece(d, PieceId::Back).grain;
        grain.0.x += 15.0;
        grain.1.x += 15.0;
    });
    assert_eq!(severities(&found), [Note]);
}

#[test]
fn seat_slope() {
    let code = "fit::seat-slope";
    let flat = redrafted(code, |s| s.seat_angle = Angle::deg(10.0));
    assert_eq!(severities(&flat), [Warning]);
    assert_eq!(redrafted(code, |s| s.seat_angle = Angle::deg(15.0)), []);
}

#[test]
fn rise_difference() {
    let code = "fit::rise-difference";
    let rises = |front: f64, back: f64| {
        after(code, move |d| {
            d.pattern.spec.set(MeasureId::FrontRise, Length::cm(front));
            d.pattern.spec.set(MeasureId::BackRise, Length::cm(back));
        })
    };
    assert_eq!(severities(&rises(28.0, 34.0)), [Warning]);
    assert_eq!(severities(&rises(28.0, 39.0)), [Warning]);
    // The published low-rise chart.
    assert_eq!(rises(23.5, 37.5), []);
}

#[test]
fn seat_share() {
    let found = after("fit::seat-share", |d| {
        d.pattern.spec.set(MeasureId::BackRise, Length::cm(45.0));
    });
    assert_eq!(severities(&found), [Warning]);
    assert!(
        found[0].message(words::Words::english()).contains("62 %"),
        "{}",
        found[0].message(words::Words::english())
    );
}

#[test]
fn pocket_facing() {
    let code = "fit::pocket-facing";
    let found = after(code, |d| {
        shift(d, PieceId::PocketFacing, EdgeId::Side, (1.0, 0.0))
    });
    assert_eq!(severities(&found), [Error]);
    let found = after(code, |d| scale(d, PieceId::PocketBag, EdgeId::Mouth, 1.01));
    assert_eq!(severities(&found), [Error]);
}

#[test]
fn outline() {
    let code = "fit::outline";
    let open = after(code, |d| {
        shift(d, PieceId::CoinPocket, EdgeId::Foot, (0.0, 1.0))
    });
    assert!(
        open[0]
            .message(words::Words::english())
            .starts_with("the outline is open by 0.10 cm"),
        "{}",
        open[0].message(words::Words::english())
    );
    let crossing = after(code, |d| {
        let corners = [
            (0.0, 0.0),
            (50.0, 80.0),
            (50.0, 0.0),
            (0.0, 80.0),
            (0.0, 0.0),
        ];
        let corners = corners.map(|(x, y)| Point::new(x, y));
        let coin = piece(d, PieceId::CoinPocket);
        for (edge, w) in coin.edges.iter_mut().zip(corners.windows(2)) {
            edge.path = Path::line(w[0], w[1]);
        }
    });
    assert_eq!(
        crossing[0].message(words::Words::english()),
        "the outline crosses itself"
    );
    let turned = after(code, |d| {
        let coin = piece(d, PieceId::CoinPocket);
        coin.edges.reverse();
        for edge in &mut coin.edges {
            edge.path = edge.path.reversed();
        }
    });
    assert_eq!(
        turned[0].message(words::Words::english()),
        "the outline runs the wrong way round"
    );
    let stray = after(code, |d| {
        move_notch(d, PieceId::Yoke, NotchId::YokeMiddle, 400.0)
    });
    assert_eq!(severities(&stray), [Error, Error]);
    let apart = after(code, |d| move_notch(d, PieceId::Back, NotchId::Hip, 1.5));
    assert_eq!(severities(&apart), [Error]);
    let alone = after(code, |d| piece(d, PieceId::Back).notches.clear());
    assert_eq!(alone.len(), 4);
}

#[test]
fn extensions_and_fork() {
    for (code, small, large) in [
        ("fit::front-extension", 0.5, 1.8),
        ("fit::back-extension", 0.5, 1.8),
        ("fit::fork", 0.5, 1.8),
    ] {
        for (seat, word) in [(small, "large for the seat"), (large, "small for the seat")] {
            let found = after(code, |d| {
                d.pattern
                    .spec
                    .set(MeasureId::Seat, d.pattern.spec[MeasureId::Seat] * seat)
            });
            assert_eq!(severities(&found), [Warning], "{code}");
            assert!(
                found[0]
                    .remedy(words::Words::english())
                    .as_deref()
                    .unwrap()
                    .contains(word),
                "{found:?}"
            );
        }
    }
}

#[test]
fn foot_passage() {
    let code = "fit::foot-passage";
    let hem = |cm: f64| {
        after(code, move |d| {
            d.pattern.spec.set(MeasureId::Hem, Length::cm(cm))
        })
    };
    assert_eq!(hem(34.0), []);
    assert_eq!(severities(&hem(33.0)), [Warning]);
    assert_eq!(severities(&hem(31.9)), [Error]);
    let mut doc = ferryman();
    doc.style.figure = Figure::Women;
    let mut drafted = draft(&Spec::of(&doc, SIZE));
    drafted.pattern.spec.set(MeasureId::Hem, Length::cm(31.5));
    assert!(
        findings(&drafted, SIZE, &doc)
            .iter()
            .all(|f| f.code != code)
    );
}

#[test]
fn seat_ease() {
    let code = "fit::seat-ease";
    let found = after(code, |d| {
        d.pattern.spec.set(MeasureId::Seat, Length::cm(110.0))
    });
    assert_eq!(severities(&found), [Note]);
    // 32 in is 81.28 cm; 0.601 x 81.28 + 45.41 = 94.26.
    assert!(
        found[0]
            .message(words::Words::english())
            .contains("15.7 cm larger"),
        "{}",
        found[0].message(words::Words::english())
    );
    assert!(
        found[0]
            .message(words::Words::english())
            .contains("(94.3 cm)"),
        "{}",
        found[0].message(words::Words::english())
    );
}

#[test]
fn waist_for_size() {
    let code = "fit::waist-for-size";
    let waist = |inches: f64| {
        let found = after(code, move |d| {
            d.pattern.spec.set(MeasureId::Waist, Length::inches(inches));
        });
        found.into_iter().next()
    };
    // The demo's 33 1/2 in for a 32, and the ends of what is usual.
    for inches in [30.0, 33.5, 37.0] {
        assert_eq!(waist(inches), None, "{inches}");
    }
    for (inches, help) in [
        (16.75, "half of it"),
        (33.5 / 2.54, "inches written as centimetres"),
        (33.5 * 2.54, "centimetres written as inches"),
        (42.0, "change the waist"),
        (27.0, "change the waist"),
    ] {
        let found = waist(inches).unwrap();
        assert_eq!(found.severity, Warning);
        assert!(
            found
                .message(words::Words::english())
                .contains("the label says 32"),
            "{found:?}"
        );
        assert!(
            found
                .remedy(words::Words::english())
                .unwrap()
                .contains(help),
            "{inches}"
        );
    }
}

#[test]
fn inseam_for_size() {
    let code = "fit::inseam-for-size";
    let inseam = |cm: f64| {
        after(code, move |d| {
            d.pattern.spec.set(MeasureId::Inseam, Length::cm(cm))
        })
    };
    assert_eq!(inseam(78.0), []);
    assert_eq!(severities(&inseam(72.0)), [Warning]);
    assert_eq!(severities(&inseam(90.0)), [Warning]);
}

#[test]
fn measure_missed() {
    let found = after("fit::measure-missed", |d| {
        scale(d, PieceId::Back, EdgeId::Hem, 1.01)
    });
    assert_eq!(severities(&found), [Error]);
    assert_eq!(found[0].about(words::Words::english()), "hem");
}

#[test]
fn a_piece_the_style_lacks_breaks_no_rule_about_it() {
    let doc = ferryman();
    let mut drafted = draft(&Spec::of(&doc, SIZE));
    drafted
        .pattern
        .pieces
        .retain(|p| p.id == PieceId::CoinPocket);
    let found = findings(&drafted, SIZE, &doc);
    let codes: BTreeSet<&str> = found.iter().map(|f| f.code).collect();
    // Only the pairs of notches are missed.
    assert_eq!(codes, BTreeSet::from(["fit::outline"]));
    drafted.pattern.pieces.clear();
    findings(&drafted, SIZE, &doc);
}

#[test]
fn every_rule_is_told_with_title_and_source() {
    let english = words::Words::english();
    for rule in RULES {
        assert!(rule.code.starts_with("fit::"), "{}", rule.code);
        for key in [rule.title, rule.source] {
            assert!(!english.named(key).is_empty(), "{}", rule.code);
            assert_ne!(english.named(key), key.name(), "{}", rule.code);
        }
    }
}
