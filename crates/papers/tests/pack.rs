//! The pack as a PDF: that it is made, is the same every time, and survives any text.
//!
//! What the pages say and look like (text, fonts, bookmarks, tags) is read back by `suite` with outside
//! programs; here only what needs none is checked.
#![allow(clippy::unwrap_used)]

mod sample;

use papers::{
    Ask, Caution, Change, ChartRow, ChartValues, CheckGroup, CheckRow, Checks, ClothCut, CutRow,
    CuttingPart, Drawing, Fact, Figure, FindingRow, GradeRow, GradeTable, LengthLine,
    MaterialGroup, MaterialRow, MoveRow, MoveTable, OpenGroup, OpenPart, OpenRow, OperationRow,
    OperationStitch, Pack, PackWords, PaperError, PdfOptions, PieceRow, Scale, SeamBlock,
    SeamYarnRow, Severity, SizeRow, SizeTable, StageBlock, StitchRowText, Who, YarnNeedRow,
    YarnNote, YarnOnClothRow, YarnPart, YarnText, pack_pdf,
};

fn options() -> PdfOptions {
    PdfOptions {
        date: Some(jiff::civil::date(2026, 11, 25)),
    }
}

fn count(pdf: &[u8], what: &str) -> usize {
    pdf.windows(what.len())
        .filter(|window| *window == what.as_bytes())
        .count()
}

/// Pages are plain objects in our PDFs; their tree is made of "/Type/Pages".
fn pages(pdf: &[u8]) -> usize {
    count(pdf, "/Type/Page") - count(pdf, "/Type/Pages")
}

#[test]
fn the_sample_has_a_page_for_every_part() {
    let pdf = pack_pdf(&sample::pack(), &options()).unwrap();
    assert!(pdf.starts_with(b"%PDF-1.7"));
    // Cover, what to settle with the materials after it, chart, three of measures, four views, pieces, piece sheets,
    // the order with its seams, yarn, a plate, the annex; small pieces stand below large ones.
    assert_eq!(pages(&pdf), 17);
    assert!(count(&pdf, "/StructTreeRoot") > 0, "tagged");
    assert!(count(&pdf, "/Outlines") > 0, "bookmarks");
}

#[test]
fn the_same_pack_gives_the_same_bytes() {
    let first = pack_pdf(&sample::pack(), &options()).unwrap();
    // Another pack in between, so that a remembered layout could show.
    pack_pdf(&hostile("x"), &options()).unwrap();
    let second = pack_pdf(&sample::pack(), &options()).unwrap();
    assert!(first == second);
}

#[test]
fn the_date_is_the_one_given() {
    let dated = pack_pdf(&sample::pack(), &options()).unwrap();
    assert!(count(&dated, "D:20261125") > 0);
    let undated = pack_pdf(&sample::pack(), &PdfOptions::default()).unwrap();
    assert_eq!(count(&undated, "/CreationDate"), 0);
}

#[test]
fn a_pack_of_empty_parts_is_a_cover_and_a_clean_bill() {
    let mut pack = Pack::default();
    pack.style.name = "Ferryman".into();
    assert_eq!(pages(&pack_pdf(&pack, &PdfOptions::default()).unwrap()), 2);
}

#[test]
fn a_pack_without_a_name_is_refused() {
    assert_eq!(
        pack_pdf(&Pack::default(), &options()),
        Err(PaperError::NoStyleName)
    );
}

#[test]
fn a_drawing_that_is_not_svg_inside_is_refused() {
    let mut pack = sample::pack();
    let broken = "<svg xmlns='http://www.w3.org/2000/svg' width='10mm' height='10mm'><path";
    pack.cover.drawings[0].drawing = Drawing::from_svg(broken, "the front view").unwrap();
    assert!(matches!(
        pack_pdf(&pack, &options()),
        Err(PaperError::Drawing { .. })
    ));
}

#[test]
fn any_text_in_any_field_prints() {
    let long = "x".repeat(400);
    for text in [
        "",
        " ",
        "#panic(\"no\") $x^2$ *bold* _em_ `raw` <label> @ref \\ // /* \"q\" 'q' [ ] { } ~ -- ...",
        "#{",
        "\u{0}\u{1}\u{7}\t\r\n\u{7f}\u{85}",
        "\u{202e}right to left\u{202c} שלום مرحبا",
        "日本語の文字 한국어 👖",
        "e\u{301}\u{301}\u{301}\u{200b}\u{feff}\u{fffd}\u{10ffff}",
        &long,
    ] {
        let pdf = pack_pdf(&hostile(text), &options())
            .unwrap_or_else(|error| panic!("{text:?}: {error}"));
        assert!(pages(&pdf) > 3, "{text:?}");
    }
}

#[test]
fn charts_of_any_width_are_printed() {
    for sizes in [0, 1, 10, 11, 18, 19, 60] {
        let mut pack = Pack {
            chart: sample::pack().chart,
            ..Pack::default()
        };
        pack.style.name = "Ferryman".into();
        pack.chart.sizes = (0..sizes).map(|n| (20 + n).to_string()).collect();
        pack.chart.sample = Some(sizes + 3);
        // Rows keep their nine figures: columns without one print as nothing.
        let pdf =
            pack_pdf(&pack, &options()).unwrap_or_else(|error| panic!("{sizes} sizes: {error}"));
        // Cover, findings, and at least one page each of chart and of how measures are taken.
        assert!(pages(&pdf) >= 4, "{sizes} sizes");
    }
}

/// A pack with `text` in every field that takes text.
fn hostile(text: &str) -> Pack {
    let t = || text.to_owned();
    let figure = |scale| Figure {
        callouts: vec![text.to_owned(); 2],
        state: text.to_owned(),
        drawing: sample::garment(false, 5.0),
        title: t(),
        caption: t(),
        scale,
    };
    let yarn = YarnText {
        name: t(),
        what: t(),
        colour: None,
    };
    let row = StitchRowText {
        row: t(),
        stitch: t(),
        density: t(),
        needle: yarn.clone(),
        under: yarn.clone(),
        offset: t(),
        gauge: t(),
        ends: t(),
    };
    let mut pack = Pack::default();
    pack.style.collection = t();
    pack.style.name = format!("Ferryman {text}");
    pack.style.code = t();
    pack.style.revision = t();
    pack.style.workroom = t();
    pack.style.summary = t();
    pack.cover.drawings = vec![figure(None)];
    let asks = || {
        let ask = Ask {
            who: Who::Sewer,
            what: t(),
            said: t(),
        };
        vec![ask; 2]
    };
    pack.open = OpenPart {
        title: t(),
        count: t(),
        note: t(),
        heads: [t(), t(), t()],
        groups: vec![OpenGroup {
            who: t(),
            rows: vec![OpenRow {
                number: t(),
                what: t(),
                place: t(),
            }],
        }],
    };
    pack.words = PackWords {
        yarn_on_cloth: t(),
        yarn_on_cloth_note: t(),
        measures_basis: t(),
        moves_basis: t(),
        changes: t(),
        changes_lead: t(),
        before: t(),
        after: t(),
        before_all: t(),
        after_all: t(),
        findings: t(),
        findings_lead: t(),
        findings_none: t(),
        mind: t(),
        mind_lead: t(),
        materials: t(),
        annex: t(),
        annex_title: t(),
        by_size: t(),
        checks: t(),
        codes: t(),
        codes_lead: t(),
        why: t(),
        why_lead: t(),
        why_about: t(),
        left_so: t(),
        other_seams: t(),
        class: t(),
        rows: t(),
    };
    pack.by_size = vec![SizeTable {
        title: t(),
        note: t(),
        sizes: vec![t(); 11],
        rows: vec![SizeRow {
            what: t(),
            values: vec![t(); 11],
        }],
    }];
    pack.checks = Checks {
        note: t(),
        groups: vec![CheckGroup {
            heading: t(),
            rows: vec![CheckRow {
                what: t(),
                how: t(),
                asks: asks(),
                basis: t(),
            }],
        }],
    };
    pack.cover.contact = vec![Fact {
        label: t(),
        value: t(),
        asks: asks(),
    }];
    pack.cover.facts = vec![
        Fact {
            label: t(),
            value: t(),
            asks: asks(),
        };
        3
    ];
    pack.changes = vec![Change {
        about: t(),
        before: t(),
        after: t(),
    }];
    pack.chart.note = t();
    pack.chart.sizes_label = t();
    pack.chart.lengths_label = t();
    pack.chart.sizes = vec![t(), t(), t()];
    let values = [
        ChartValues::BySize(vec![t()]),
        ChartValues::ByLength(vec![LengthLine {
            length: t(),
            values: vec![t(), "1".into()],
        }]),
        ChartValues::ByLength(vec![LengthLine {
            length: t(),
            values: vec![t(); 3],
        }]),
        ChartValues::ByLength(Vec::new()),
    ];
    pack.chart.rows = values
        .map(|values| ChartRow {
            number: t(),
            name: t(),
            how: t(),
            tolerance: t(),
            values,
        })
        .into();
    pack.diagrams = vec![figure(None)];
    let fact = Fact {
        label: t(),
        value: t(),
        asks: asks(),
    };
    pack.cutting = CuttingPart {
        note: t(),
        asks: asks(),
        cloths: vec![ClothCut {
            name: t(),
            facts: vec![fact; 2],
            rows: vec![CutRow {
                number: t(),
                piece: t(),
                as_drawn: t(),
                mirrored: t(),
                side: t(),
                area: t(),
            }],
        }],
        lays: vec![figure(Scale::one_to(10))],
        corners: vec![figure(None)],
        nests: vec![figure(Scale::one_to(5))],
        grades: vec![GradeTable {
            title: t(),
            steps: vec![t(); 8],
            rows: vec![GradeRow {
                measure: t(),
                by: vec![t(); 8],
                breaks: vec![true; 8],
            }],
        }],
        moves: vec![MoveTable {
            piece: t(),
            at: t(),
            base: t(),
            sizes: vec![t(); 8],
            rows: vec![MoveRow {
                point: t(),
                base: [t(), t()],
                by: vec![[t(), t()]; 8],
            }],
        }],
    };
    pack.construction_note = t();
    pack.seams = vec![SeamBlock {
        name: t(),
        joins: t(),
        construction: t(),
        class: t(),
        machine: t(),
        plies: t(),
        allowances: t(),
        lies: t(),
        rows: vec![row; 2],
        section: Some(sample::garment(true, 30.0)),
    }];
    pack.order_note = t();
    pack.order_asks = asks();
    pack.order = vec![StageBlock {
        name: t(),
        operations: vec![operation(text, &yarn); 2],
    }];
    pack.yarn = yarns(text, &yarn);
    pack.yarn.sheets = vec![figure(None)];
    pack.plates = vec![figure(Some(Scale::Shown(t())))];
    pack.views = vec![figure(Scale::one_to(5)), figure(None)];
    pack.pieces_note = t();
    pack.pieces = vec![PieceRow {
        number: t(),
        name: t(),
        cloth: t(),
        count: t(),
        pairing: t(),
        area: t(),
        notes: t(),
        thumbnail: None,
    }];
    pack.materials_note = t();
    pack.materials = vec![MaterialGroup {
        heading: t(),
        rows: vec![MaterialRow {
            name: t(),
            spec: t(),
            colour: None,
            supply: t(),
            asks: asks(),
            used: t(),
            quantity: t(),
        }],
    }];
    pack.findings = vec![FindingRow {
        severity: Severity::Error,
        code: t(),
        about: t(),
        place: t(),
        message: t(),
        remedy: t(),
        basis: t(),
        muted: true,
    }];
    pack.why = vec![(t(), t())];
    pack.cautions = vec![Caution {
        heading: t(),
        text: t(),
        asks: asks(),
    }];
    pack
}

fn operation(text: &str, yarn: &YarnText) -> OperationRow {
    let t = || text.to_owned();
    let stitch = OperationStitch {
        stitch: t(),
        needle: yarn.clone(),
        under: yarn.clone(),
    };
    OperationRow {
        number: t(),
        name: t(),
        pieces: t(),
        machine: t(),
        attachment: t(),
        stitches: vec![stitch; 2],
        needles: t(),
        ends: t(),
        mind: vec![t(); 2],
        ask: t(),
        asks: Vec::new(),
        basis: t(),
        seams: vec![0, 7],
        section_at: t(),
    }
}

fn yarns(text: &str, yarn: &YarnText) -> YarnPart {
    let t = || text.to_owned();
    let need = YarnNeedRow {
        yarn: yarn.clone(),
        needles: t(),
        needle: t(),
        under: t(),
        net: t(),
        with_waste: t(),
        order: t(),
        cone: t(),
        cones: t(),
    };
    YarnPart {
        sheets: Vec::new(),
        note: t(),
        order_label: t(),
        waste: t(),
        yarns: vec![need.clone(); 2],
        total: Some(need),
        seams: vec![SeamYarnRow {
            seam: t(),
            stitches: t(),
            sewn: t(),
            needle: t(),
            under: t(),
            net: t(),
            with_waste: t(),
            basis: vec![t(); 2],
        }],
        unstated: vec![(t(), t())],
        unstated_total: t(),
        unreckoned: t(),
        on_cloth: vec![YarnOnClothRow {
            yarns: text.into(),
            cloth: text.into(),
            difference: text.into(),
            contrast: text.into(),
        }],
        notes: vec![YarnNote {
            mark: t(),
            text: t(),
        }],
    }
}
