//! Before and after the wash.

use cutting::{
    AgainstSkew, BandCut, ClothWash, CutSize, Follows, Leg, Plan, Settled, Shrinkage, cut, skew,
};
use draft::{EdgeId, PieceId, PointId, Severity};
use sewing::On;
use style::{SeamId, Size};
use trade::{Length, Share};

use crate::common::{all_cut, all_sizes, base, copy, ferryman, piece, plan, sewn};

/// A cut piece shrunk by what it was cut for is the finished piece, to 0.01 mm, in every piece and size.
#[test]
fn the_wash_gives_the_finished_piece() {
    let skewed = ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(8.0),
            weft: Share::percent(4.0),
        },
        skew: Share::percent(2.0),
    };
    for plan in [
        plan(),
        Plan {
            shell: Some(skewed),
            against_skew: AgainstSkew::Sheared,
            ..plan()
        },
    ] {
        let mut compared = 0;
        for garment in all_sizes() {
            let all = cut(garment, &plan);
            for piece in &all.pieces {
                let finished = garment.pattern.piece(piece.piece).unwrap();
                for edge in &piece.edges {
                    let Some(path) = finished.edge(edge.id) else {
                        assert_eq!(edge.id, EdgeId::CentreBack);
                        continue;
                    };
                    let line = path.dense(Length::mm(0.25));
                    for p in &edge.sewn {
                        let back = piece.scale.after_wash(*p);
                        let off = line
                            .windows(2)
                            .map(|w| {
                                let along = w[1] - w[0];
                                let t = (back - w[0]).dot(along) / along.hypot2().max(1e-12);
                                (back - w[0].lerp(w[1], t.clamp(0.0, 1.0))).hypot()
                            })
                            .fold(f64::INFINITY, f64::min);
                        assert!(
                            off < 0.01,
                            "{} {} {}: {off}",
                            all.size,
                            piece.code(),
                            edge.id.code()
                        );
                        compared += 1;
                    }
                }
            }
        }
        assert!(compared > 100_000, "{compared}");
    }
}

/// Allowances are what the machine takes, before and after; only the depth of the hem, a finished
/// measure, is larger by the warp.
#[test]
fn allowances_do_not_grow() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let all = cut(&garment, &plan());
    for stated in &garment.cut {
        for piece in all.of(stated.piece).filter(|p| p.on == stated.on) {
            for (id, allowance) in &stated.allowances {
                let Some(edge) = piece.edge(*id) else {
                    continue;
                };
                if edge.seam == Some(SeamId::Hem) {
                    // 12 mm finished is 13.04 mm before the wash; twice that and 3 mm for two turns.
                    assert!((edge.allowance.to_mm() - (2.0 * 12.0 / 0.92 + 3.0)).abs() < 1e-9);
                } else {
                    assert_eq!(edge.allowance, *allowance, "{} {id:?}", piece.code());
                }
            }
        }
    }
}

/// Every seam is walked before the wash; what is left is small and said.
#[test]
fn seams_still_walk_before_the_wash() {
    for all in all_cut() {
        assert!(all.walked.len() >= 12);
        for seam in &all.walked {
            assert_ne!(
                seam.settled,
                Settled::No,
                "{} {}: {}",
                all.size,
                seam.join.name.code(),
                seam.gap()
            );
        }
        let seat = all
            .walked
            .iter()
            .find(|w| w.join.seam == SeamId::Seat)
            .unwrap();
        assert_eq!(seat.leg, Leg::Both);
        assert!(seat.gap().to_mm().abs() < 1e-9);
        let errors: Vec<_> = all
            .findings
            .iter()
            .filter(|f| f.severity == Severity::Error)
            .collect();
        assert!(errors.is_empty(), "{errors:?}");
    }
}

/// The band is refused until somebody says how it is cut, with three ways and their figures.
#[test]
fn a_warp_cut_band_on_a_weft_shrinking_body_is_refused() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let all = cut(&garment, &Plan::default());
    assert_eq!(all.of(PieceId::Band).count(), 0);
    let conflict = &all.refused[0];
    assert_eq!(conflict.ways.len(), 3);
    // 33 1/2 in finished: body 850.9 ÷ 0.96, a warp-cut band 850.9 ÷ 0.92. The waist seam of the
    // body is curved, so it is longer before the wash than the weft alone would make it.
    assert!((conflict.finished.to_mm() - 850.9).abs() < 0.05);
    assert!((conflict.along_warp.to_mm() - 850.9 / 0.92).abs() < 0.05);
    let body = conflict.body.to_mm();
    assert!(
        body > 850.9 / 0.96 - 0.1 && body < 850.9 / 0.96 + 4.0,
        "{body}"
    );
    assert!(conflict.ways[0].holds && conflict.ways[0].cut == BandCut::AlongWeft);
    let error = all
        .findings
        .iter()
        .find(|f| f.code == "cutting::band")
        .unwrap();
    assert_eq!(error.severity, Severity::Error);
    assert!(
        error
            .remedy(words::Words::english())
            .unwrap()
            .contains("centre back")
    );
}

#[test]
fn each_way_of_cutting_the_band_gives_one_that_fits_its_words() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    for way in [
        BandCut::AlongWeft,
        BandCut::Preshrunk(Shrinkage::NONE),
        BandCut::StatedEase,
    ] {
        let all = cut(
            &garment,
            &Plan {
                band: way,
                ..Plan::default()
            },
        );
        let join: f64 = all
            .of(PieceId::Band)
            .filter_map(|p| p.edge(EdgeId::Join))
            .map(|e| geometry::polyline_length(&e.sewn).to_mm())
            .sum();
        let seam = all
            .walked
            .iter()
            .find(|w| w.join.seam == SeamId::Band)
            .unwrap();
        assert!((join - seam.b.to_mm()).abs() < 1e-6, "{way:?}");
        let said = all
            .findings
            .iter()
            .find(|f| f.code == "cutting::band")
            .unwrap();
        let holds = way == BandCut::AlongWeft;
        let severity = if holds {
            Severity::Note
        } else {
            Severity::Warning
        };
        assert_eq!(
            said.severity,
            severity,
            "{}",
            said.message(words::Words::english())
        );
    }
    // Cut along the weft, its grain runs across it.
    let all = base();
    for half in all.of(PieceId::Band) {
        assert!((half.grain.1.x - half.grain.0.x).abs() < 1e-9);
        assert!(half.on_cloth(false).outline.iter().all(|p| p.y < 780.0));
    }
    assert_eq!(all.of(PieceId::Band).count(), 2);
}

/// Warp and weft alike: no conflict, the band in one piece along the warp.
#[test]
fn a_cloth_that_shrinks_alike_needs_no_decision() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let alike = ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(3.0),
            weft: Share::percent(2.0),
        },
        skew: Share::ZERO,
    };
    let all = cut(
        &garment,
        &Plan {
            shell: Some(alike),
            ..Plan::default()
        },
    );
    assert!(all.refused.is_empty());
    let band = piece(&all, PieceId::Band);
    assert_eq!(all.of(PieceId::Band).count(), 1);
    let join = geometry::polyline_length(&band.edge(EdgeId::Join).unwrap().sewn);
    assert!((join.to_mm() - 850.9 / 0.97).abs() < 0.05);
    // Pocketing at 3 % keeps its own shrinkage.
    assert_eq!(
        piece(&all, PieceId::PocketBag).scale.follows,
        Follows::OwnCloth
    );
}

/// Pocketing that shrinks less than the shell is cut to fit the shell when it is sewn.
#[test]
fn pocket_bags_fit_the_mouth_when_they_are_sewn() {
    let all = base();
    let bag = piece(&all, PieceId::PocketBag);
    assert_eq!(bag.scale.follows, Follows::Shell);
    let mouth = all
        .walked
        .iter()
        .find(|w| w.join.seam == SeamId::Mouth)
        .unwrap();
    assert!(mouth.gap().to_mm().abs() < 0.01);
    assert!(
        all.findings
            .iter()
            .any(|f| f.code == "cutting::inner-cloth")
    );
}

/// Against a skew the two copies of a panel are no longer each other's mirror image, and both legs of a
/// pair still walk.
#[test]
fn a_skew_turns_both_copies_the_same_way_on_the_cloth() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let shell = ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(8.0),
            weft: Share::percent(4.0),
        },
        skew: Share::percent(3.0),
    };
    let all = cut(
        &garment,
        &Plan {
            shell: Some(shell),
            against_skew: AgainstSkew::Sheared,
            ..plan()
        },
    );
    let fronts: Vec<On> = all.of(PieceId::Front).map(|p| p.on).collect();
    assert_eq!(fronts, [On::AsDrawn, On::Mirrored]);
    let level = |mirrored: bool| {
        let front = copy(&all, PieceId::Front, mirrored).unwrap();
        let at = |id| front.points.iter().find(|p| p.0 == id).unwrap().1;
        let (a, b) = (at(PointId::KneeIn), at(PointId::KneeOut));
        (b.y - a.y) / (b.x - a.x)
    };
    let expected = 0.03 * 0.96 / 0.92;
    assert!((level(false) - expected).abs() < 1e-9);
    assert!((level(true) + expected).abs() < 1e-9);
    // Against it the lower leg would turn 3 % of its length, less than counts as a fault.
    let said = all.findings.iter().find(|f| f.code == "cutting::skew");
    assert!(
        said.unwrap().message(words::Words::english()).contains(
            "about 13.7 mm between knee and hem, the left outseam forward and the right one back"
        ),
        "{said:?}"
    );
    for leg in [Leg::Left, Leg::Right] {
        let seam = |id| {
            all.walked
                .iter()
                .find(|w| w.join.seam == id && w.leg == leg)
        };
        for id in [SeamId::Outseam, SeamId::Inseam] {
            let settled = seam(id).unwrap().settled;
            assert_ne!(settled, Settled::No, "{} {leg:?}", id.code());
        }
    }
    // The yoke's grain lies at an angle to the back's, so against a skew their seam no longer walks where the
    // dart of the seat is as deep as a shaped outseam lets it be: that is said.
    let mut shaped = ferryman();
    shaped.style.shape.outseam = style::OutseamLine::Shaped;
    let shaped = cut(
        &sewn(&shaped, Size::new(32, 32)),
        &Plan {
            shell: Some(shell),
            against_skew: AgainstSkew::Sheared,
            ..plan()
        },
    );
    let yoke = shaped
        .findings
        .iter()
        .find(|f| f.about(words::Words::english()) == "Yoke seam")
        .unwrap();
    assert!(
        yoke.remedy(words::Words::english())
            .unwrap()
            .contains("grain"),
        "{yoke:?}"
    );
    let edge = copy(&all, PieceId::Front, true).unwrap().cloth_edge.clone();
    assert!(edge.is_some());
    assert!(skew::twist(Share::percent(3.0), Length::cm(46.0)).moves < skew::MOST_TWIST);
}

/// With the grain turned instead, every seam still walks; but nothing can lie on the cloth's own edge.
#[test]
fn a_turned_grain_keeps_the_seams() {
    let mut loaded = ferryman();
    let shell = ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(8.0),
            weft: Share::percent(4.0),
        },
        skew: Share::percent(3.0),
    };
    let turned = Plan {
        shell: Some(shell),
        against_skew: AgainstSkew::GrainTurned,
        ..plan()
    };
    let on_edge = cut(&sewn(&loaded, Size::new(32, 32)), &turned);
    let said = |all: &CutSize| {
        let code = "cutting::cloth-edge";
        let found = all.findings.iter().filter(|f| f.code == code);
        found.filter(|f| f.severity == Severity::Error).count()
    };
    assert_eq!(said(&on_edge), 2);
    for cloth in loaded.collection.cloths.values_mut() {
        cloth.selvedge = false;
    }
    let all = cut(&sewn(&loaded, Size::new(32, 32)), &turned);
    assert_eq!(said(&all), 0);
    for seam in &all.walked {
        assert_ne!(seam.settled, Settled::No, "{:?}", seam.join.name);
    }
    let lean = |mirrored| {
        let grain = copy(&all, PieceId::Front, mirrored).unwrap().grain;
        (grain.1.x - grain.0.x) / (grain.1.y - grain.0.y)
    };
    // On the cloth both copies lie turned the same way: in the frame of the drawing, opposite ways.
    assert!(lean(false) > 0.02 && (lean(false) + lean(true)).abs() < 1e-9);
}

#[test]
fn what_no_cloth_does_is_said_and_not_cut() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let absurd = ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(45.0),
            weft: Share::percent(4.0),
        },
        skew: Share::ZERO,
    };
    let all = cut(
        &garment,
        &Plan {
            shell: Some(absurd),
            ..Plan::default()
        },
    );
    let said = all
        .findings
        .iter()
        .find(|f| f.code == "cutting::shrinkage")
        .unwrap();
    assert_eq!(said.severity, Severity::Error);
    assert_eq!(piece(&all, PieceId::Front).scale.shrinkage, Shrinkage::NONE);
}

/// A washed band that would shrink as no cloth does is refused, and the band with it.
#[test]
fn a_washed_band_is_believed_or_refused() {
    let garment = sewn(&ferryman(), Size::new(32, 32));
    let residual = Shrinkage {
        warp: Share::percent(120.0),
        weft: Share::ZERO,
    };
    let plan = Plan {
        band: BandCut::Preshrunk(residual),
        ..Plan::default()
    };
    let all = cut(&garment, &plan);
    assert!(all.findings.iter().any(|f| f.code == "cutting::shrinkage"));
    assert_eq!(all.refused.len(), 1);
}

#[test]
fn the_thread_note_says_how_to_set_the_machine() {
    let all = base();
    let said = all
        .findings
        .iter()
        .find(|f| f.code == "cutting::thread")
        .unwrap();
    assert!(
        said.message(words::Words::english()).contains("7.4 /in")
            || said.message(words::Words::english()).contains("7.36"),
        "{}",
        said.message(words::Words::english())
    );
}
