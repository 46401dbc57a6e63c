//! The demo's own panels, taken away as points and brought back.
#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;
use std::sync::Arc;

use geometry::{Affine, Point};
use indexmap::IndexMap;
use style::{
    ArtPath, Drawn, MeasureId, OWN_PIECES, OwnOutline, OwnPattern, OwnPiece, OwnPieceName, Place,
    Size, StyleDoc,
};
use trade::{Length, Share};

use crate::drafted::draft_style;
use crate::finding::Severity;
use crate::pattern::Pattern;
use crate::piece::{EdgeId, PieceId};
use crate::rules::findings;

const SIZE: Size = Size::new(32, 32);

fn ferryman() -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap().style
}

fn place(p: Point) -> Place {
    [Length::mm(p.x), Length::mm(p.y)]
}

/// A piece of the pattern as a file would hold it: points no chord of which strays by more than a
/// hundredth of a millimetre, under a map.
fn taken_away(pattern: &Pattern, known: &OwnPieceName, map: Affine) -> Option<OwnOutline> {
    let piece = pattern.pieces.iter().find(|p| p.id == known.id)?;
    let notches = piece.notches.iter().filter_map(|n| piece.notch_point(n));
    Some(OwnOutline {
        edges: known
            .edges()
            .iter()
            .map(|id| {
                let points = piece.edge(*id).unwrap().flattened(Length::mm(0.01));
                (*id, points.iter().map(|p| place(map * *p)).collect())
            })
            .collect(),
        sewn: true,
        grain: Some([place(map * piece.grain.0), place(map * piece.grain.1)]),
        notches: notches.map(|p| place(map * p)).collect(),
    })
}

fn own(pattern: &Pattern, map: Affine) -> OwnPattern {
    let pieces: IndexMap<PieceId, OwnPiece> = OWN_PIECES
        .iter()
        .filter_map(|known| {
            let outline = taken_away(pattern, known, map)?;
            let outlines = BTreeMap::from([(SIZE, outline)]);
            let piece = OwnPiece {
                piece: known.title.to_uppercase(),
                edges: Vec::new(),
                outlines: Arc::new(outlines),
            };
            Some((known.id, piece))
        })
        .collect();
    OwnPattern {
        file: ArtPath::new("pattern/harbour.toml").unwrap(),
        drawn: Drawn::AfterWash,
        allowance: None,
        allowances: IndexMap::new(),
        pieces,
        shrinkage: None,
    }
}

fn brought(own: OwnPattern) -> Pattern {
    let mut doc = ferryman();
    doc.pattern = Some(own);
    let drafted = draft_style(&doc, SIZE);
    assert_eq!(drafted.unused, None);
    drafted.pattern
}

fn same(a: &Pattern, b: &Pattern, within: f64) {
    for (one, other) in a.measures().iter().zip(b.measures()) {
        assert_eq!(one.measure, other.measure);
        let off = (one.pattern - other.pattern).abs().to_mm();
        assert!(off < within, "{:?}: {off} mm", one.measure);
    }
    for (one, other) in a.pieces.iter().zip(&b.pieces) {
        assert_eq!((one.id, one.edges.len()), (other.id, other.edges.len()));
        for (x, y) in one.edges.iter().zip(&other.edges) {
            assert_eq!(x.id, y.id);
            let off = (x.path.length() - y.path.length()).abs().to_mm();
            assert!(off < within, "{} {:?}: {off} mm", one.id, x.id);
        }
        for (x, y) in one.notches.iter().zip(&other.notches) {
            let off = (x.along - y.along).abs().to_mm();
            assert!(off < within, "{} notch {:?}: {off} mm", one.id, x.id);
        }
        for (x, y) in one.points.iter().zip(&other.points) {
            let off = (x.at - y.at).hypot();
            assert!(off < within * 2.0, "{} {:?}: {off} mm", one.id, x.id);
        }
    }
}

#[test]
fn own_panels_come_back_as_they_were() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let again = brought(own(&drafted, Affine::IDENTITY));
    same(&drafted, &again, 0.05);
    assert_eq!(again.own.unwrap().pieces.len(), 8);
}

#[test]
fn it_does_not_matter_how_a_piece_lies_in_the_file() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let away = Affine::translate((3210.0, -77.0)) * Affine::rotate(2.1);
    same(&drafted, &brought(own(&drafted, away)), 0.05);
    let over = away * Affine::new([-1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
    same(&drafted, &brought(own(&drafted, over)), 0.05);
}

#[test]
fn what_the_wash_takes_comes_off_again() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let mut own = own(&drafted, Affine::IDENTITY);
    for piece in own.pieces.values_mut() {
        let outlines = Arc::make_mut(&mut piece.outlines);
        let outline = outlines.get_mut(&SIZE).unwrap();
        let grain = outline
            .grain
            .unwrap()
            .map(|[x, y]| Point::new(x.to_mm(), y.to_mm()));
        // 8 % along the grain, 4 % across, worked without the program's own map.
        let along = (grain[1] - grain[0]) / (grain[1] - grain[0]).hypot();
        let grown = |p: &Place| -> Place {
            let v = Point::new(p[0].to_mm(), p[1].to_mm()) - grain[0];
            let up = along * v.dot(along);
            place(grain[0] + up / 0.92 + (v - up) / 0.96)
        };
        for (_, points) in &mut outline.edges {
            *points = points.iter().map(grown).collect();
        }
        outline.notches = outline.notches.iter().map(grown).collect();
    }
    own.drawn = Drawn::BeforeWash;
    own.shrinkage = Some([Share::percent(8.0), Share::percent(4.0)]);
    same(&drafted, &brought(own), 0.05);
}

#[test]
fn edges_that_are_left_out_are_cut_as_the_chart_says() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let mut own = own(&drafted, Affine::IDENTITY);
    let mut join = |piece: PieceId, first: EdgeId, second: EdgeId, keep: EdgeId| {
        let outlines = Arc::make_mut(&mut own.pieces.get_mut(&piece).unwrap().outlines);
        let edges = &mut outlines.get_mut(&SIZE).unwrap().edges;
        let at = edges.iter().position(|e| e.0 == first).unwrap();
        assert_eq!(edges[at + 1].0, second);
        let (_, rest) = edges.remove(at + 1);
        edges[at].0 = keep;
        edges[at].1.extend(rest.into_iter().skip(1));
    };
    join(PieceId::Front, EdgeId::Fly, EdgeId::Crotch, EdgeId::Fly);
    join(PieceId::Band, EdgeId::Join, EdgeId::Overlap, EdgeId::Join);
    join(
        PieceId::PocketFacing,
        EdgeId::Waist,
        EdgeId::WaistUnder,
        EdgeId::Waist,
    );
    join(
        PieceId::PocketFacing,
        EdgeId::SideUnder,
        EdgeId::Side,
        EdgeId::Side,
    );
    same(&drafted, &brought(own), 0.05);
}

#[test]
fn a_pattern_unlike_its_chart_is_told_and_not_judged() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let mut doc = ferryman();
    doc.pattern = Some(own(&drafted, Affine::IDENTITY));
    let entry = doc.chart.get_mut(&MeasureId::Thigh).unwrap();
    entry.value += Length::cm(1.0);
    let entry = doc.chart.get_mut(&MeasureId::Knee).unwrap();
    entry.value += Length::mm(1.0);
    let found = findings(&draft_style(&doc, SIZE), SIZE, &doc);
    let told: Vec<(String, Severity)> = found
        .iter()
        .filter(|f| f.code == "pattern::measure")
        .map(|f| (f.subject.code(), f.severity))
        .collect();
    assert_eq!(
        told,
        [
            ("measure:thigh", Severity::Warning),
            ("measure:knee", Severity::Note)
        ]
        .map(|(subject, severity)| (subject.to_owned(), severity))
    );
    assert!(
        found.iter().all(|f| f.severity < Severity::Error),
        "{found:?}"
    );
    let laid = found
        .iter()
        .find(|f| f.code == "pattern::laid-out")
        .unwrap();
    assert!(
        laid.message(words::Words::english()).contains("pocket bag")
            && !laid.message(words::Words::english()).contains("yoke")
    );
    let thigh = found
        .iter()
        .find(|f| f.about(words::Words::english()) == "thigh")
        .unwrap();
    assert!(
        thigh
            .message(words::Words::english())
            .contains("1.00 cm less"),
        "{}",
        thigh.message(words::Words::english())
    );
    // In the base size the chart can be made to say what the pattern measures; then there is nothing to tell.
    assert_eq!(SIZE, doc.sizes.base);
    let Some(style::Edit::Set { path, value }) = &thigh.edit else {
        panic!("{:?}", thigh.edit)
    };
    let style::EditValue::Text(value) = value else {
        panic!("{value:?}")
    };
    assert_eq!(
        (path.to_string().as_str(), value.as_str()),
        ("chart.thigh.value", "62.23 cm")
    );
    doc.chart.get_mut(&MeasureId::Thigh).unwrap().value = Length::cm(62.23);
    let found = findings(&draft_style(&doc, SIZE), SIZE, &doc);
    assert!(
        found
            .iter()
            .all(|f| f.about(words::Words::english()) != "thigh"),
        "{found:?}"
    );
}

#[test]
fn edges_that_no_longer_fit_each_other_are_found() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let mut own = own(&drafted, Affine::IDENTITY);
    let outlines = Arc::make_mut(&mut own.pieces.get_mut(&PieceId::Yoke).unwrap().outlines);
    // The yoke 2 % larger than the back it is sewn to.
    for (_, points) in &mut outlines.get_mut(&SIZE).unwrap().edges {
        for p in points {
            *p = p.map(|x| x * 1.02);
        }
    }
    let mut doc = ferryman();
    doc.pattern = Some(own);
    let found = findings(&draft_style(&doc, SIZE), SIZE, &doc);
    for code in ["fit::yoke-walk", "fit::band-walk"] {
        assert!(
            found
                .iter()
                .any(|f| f.code == code && f.severity == Severity::Error),
            "{code}"
        );
    }
}

#[test]
fn a_pattern_that_cannot_be_used_says_so() {
    let drafted = draft_style(&ferryman(), SIZE).pattern;
    let mut own = own(&drafted, Affine::IDENTITY);
    let outlines = Arc::make_mut(&mut own.pieces.get_mut(&PieceId::Back).unwrap().outlines);
    outlines.get_mut(&SIZE).unwrap().grain = None;
    let mut doc = ferryman();
    doc.pattern = Some(own);
    let drafted = draft_style(&doc, SIZE);
    assert!(drafted.pattern.piece(PieceId::Back).is_some());
    let found = findings(&drafted, SIZE, &doc);
    assert_eq!(
        (found[0].code, found[0].severity),
        ("pattern::unused", Severity::Error)
    );
    assert!(
        found[0]
            .message(words::Words::english())
            .ends_with("back: it has no grain line"),
        "{}",
        found[0].message(words::Words::english())
    );
}
