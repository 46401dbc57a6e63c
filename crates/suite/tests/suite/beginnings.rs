//! Whatever a maker answers before a style begins, what begins can be drafted, sewn and cut in every size offered, and
//! in the usual run of sizes no sewer or pattern cutter is warned of anything.

use cutting::{Plan, cut_run};
use draft::Severity;
use style::{
    Answers, Collection, Figure, Fit, Leg, MeasureId, NewStyle, OFFERED_LENGTHS, OutseamLine,
    SeamId, StyleDoc, Taste, foresee, offered_waists,
};

fn collection() -> Collection {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    style::load(&file).unwrap().collection
}

/// The same, its shell as wide as cloth from a modern loom is, with no edge to show.
fn without_an_edge() -> Collection {
    let mut collection = collection();
    let shell = collection.cloths.get_mut("tideline-14").unwrap();
    shell.selvedge = false;
    shell.width = trade::Length::cm(150.0);
    collection
}

fn begun(answers: Answers, collection: &Collection) -> StyleDoc {
    let asked = NewStyle {
        name: "Bittern".into(),
        code: "B-1".into(),
        answers,
        ..NewStyle::default()
    };
    foresee(&asked, Some(collection)).unwrap().0
}

/// What is found in any size that is as grave or graver; empty is right.
fn found(doc: &StyleDoc, collection: &Collection, grave: Severity) -> Vec<String> {
    let run = sewing::make_run(doc, collection);
    let cuts = cut_run(&run, &Plan::of(doc));
    let sewn = run.iter().flat_map(|garment| &garment.findings);
    let cut = cuts.iter().flat_map(|cut| &cut.findings);
    let graver = sewn.chain(cut).filter(|f| f.severity >= grave);
    graver
        .map(|f| {
            format!(
                "{} {:?}: {}",
                f.code,
                f.size,
                f.message(words::Words::english())
            )
        })
        .collect()
}

#[test]
fn every_figure_fit_and_leg_drafts_in_every_size_offered() {
    let (edged, edgeless) = (collection(), without_an_edge());
    let mut seen = 0;
    for (_, figure) in Figure::WORDS {
        for (_, fit) in Fit::WORDS {
            for (_, leg) in Leg::WORDS {
                for (collection, outseam) in [
                    (&edged, None),
                    (&edged, Some(OutseamLine::Shaped)),
                    (&edgeless, None),
                ] {
                    let answers = Answers {
                        figure: *figure,
                        fit: *fit,
                        leg: *leg,
                        outseam,
                        waists: offered_waists(*figure).map(style::Tag::inches).collect(),
                        lengths: [*OFFERED_LENGTHS.start(), *OFFERED_LENGTHS.end()]
                            .map(style::Tag::inches)
                            .into(),
                        ..Answers::default()
                    };
                    let doc = begun(answers, collection);
                    let found = found(&doc, collection, Severity::Error);
                    assert!(
                        found.is_empty(),
                        "{figure} {fit} {leg} {outseam:?}: {found:#?}"
                    );
                    seen += doc.sizes.all().count();
                }
            }
        }
    }
    assert!(seen > 1000, "{seen}");
}

/// All that can be answered but the run: the usual one.
#[test]
fn every_beginning_starts_without_a_warning() {
    let (edged, edgeless) = (collection(), without_an_edge());
    let mut seen = 0;
    for (_, figure) in Figure::WORDS {
        for (_, fit) in Fit::WORDS {
            for (_, leg) in Leg::WORDS {
                for (_, taste) in Taste::WORDS {
                    for (collection, outseam) in [
                        (&edged, OutseamLine::Straight),
                        (&edged, OutseamLine::Shaped),
                        (&edgeless, OutseamLine::Shaped),
                    ] {
                        let answers = Answers {
                            figure: *figure,
                            fit: *fit,
                            leg: *leg,
                            taste: *taste,
                            outseam: Some(outseam),
                            ..Answers::default()
                        };
                        let doc = begun(answers, collection);
                        let found = found(&doc, collection, Severity::Warning);
                        assert!(
                            found.is_empty(),
                            "{figure} {fit} {leg} {taste} {outseam}: {found:#?}"
                        );
                        seen += 1;
                    }
                }
            }
        }
    }
    assert_eq!(seen, 2 * 4 * 2 * 3 * 3);
}

#[test]
fn every_taste_sews_the_inseam_in_its_own_way() {
    let collection = collection();
    let seams: Vec<_> = Taste::WORDS
        .iter()
        .map(|(_, taste)| {
            let answers = Answers {
                taste: *taste,
                ..Answers::default()
            };
            begun(answers, &collection).seam(SeamId::Inseam).unwrap()
        })
        .collect();
    for (index, seam) in seams.iter().enumerate() {
        assert!(!seams[..index].contains(seam), "{seam:?}");
    }
}

#[test]
fn a_base_off_the_chart_s_own_size_keeps_the_chart() {
    let collection = collection();
    let of = |waists: &[u32]| {
        let answers = Answers {
            waists: waists.iter().copied().map(style::Tag::inches).collect(),
            ..Answers::default()
        };
        begun(answers, &collection)
    };
    let (usual, high) = (of(&[30, 32, 36]), of(&[36, 38]));
    assert_eq!(high.sizes.base.waist, style::Tag::inches(36));
    let size = style::Size::new(36, 32);
    for measure in [
        MeasureId::Waist,
        MeasureId::Seat,
        MeasureId::Thigh,
        MeasureId::Knee,
        MeasureId::Hem,
        MeasureId::BackRise,
    ] {
        let (a, b) = (usual.value(measure, size), high.value(measure, size));
        let off = (a.unwrap() - b.unwrap()).abs();
        assert!(off < trade::Length::mm(0.01), "{measure:?}: {a:?} {b:?}");
    }
}
