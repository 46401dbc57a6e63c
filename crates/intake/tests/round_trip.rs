//! The demo's own pieces, written as a pattern file before the wash, and brought back into its style.
#![allow(clippy::unwrap_used)]

use std::path::PathBuf;

use cutting::{AgainstSkew, BandCut, ClothWash, Plan, Shrinkage, cut};
use geometry::{Path, Point};
use intake::{Asked, Look, SizeName, look, table};
use patterns::{PatternFile, dxf, from_cut, svg};
use sewing::Garment;
use style::{
    Beside, Drawn, EdgeId, Loaded, MeasureId, Size, Subject, Tag, piece_file_text, save_beside,
    with_pattern,
};
use tempfile::TempDir;
use trade::{Length, Share};

const SIZES: [Size; 3] = [Size::new(28, 32), Size::new(32, 32), Size::new(38, 32)];

fn plan() -> Plan {
    Plan {
        band: BandCut::AlongWeft,
        ..Plan::default()
    }
}

fn demo(folder: &TempDir) -> Loaded {
    let path = style::write_demo(&folder.path().join("saltmarsh")).unwrap();
    style::load(&path).unwrap()
}

fn sewn(loaded: &Loaded, size: Size) -> Garment {
    sewing::make(&loaded.style, &loaded.collection, size)
}

/// The demo's pieces as our own file holds them.
fn written(loaded: &Loaded) -> PatternFile {
    written_as(loaded, &plan())
}

/// The same as a file of another program would hand them over: nothing says for which state of the cloth they are drawn.
fn written_elsewhere(loaded: &Loaded) -> PatternFile {
    let mut file = written(loaded);
    for piece in &mut file.pieces {
        piece.notes.clear();
    }
    file
}

fn written_as(loaded: &Loaded, plan: &Plan) -> PatternFile {
    let sizes = SIZES.iter();
    let pieces =
        sizes.flat_map(|size| from_cut(&cut(&sewn(loaded, *size), plan), words::Words::english()));
    let file = PatternFile {
        style: "Ferryman".to_owned(),
        sample_size: "32x32".to_owned(),
        pieces: pieces.collect(),
        ..PatternFile::default()
    };
    dxf::read(dxf::write(&file).as_bytes(), None)
        .unwrap()
        .pattern
}

fn brought(loaded: &Loaded, seen: &Look, drawn: Drawn) -> Loaded {
    let pieces = Beside::new(
        loaded,
        "pattern",
        "ferryman",
        "toml",
        piece_file_text(&seen.file).into_bytes(),
    );
    let pattern = table(seen, &pieces.name, drawn, None);
    let text = with_pattern(&loaded.text, &pattern, Some(&seen.sizes));
    save_beside(loaded, &text, &[pieces]).unwrap().loaded
}

fn file_of_demo() -> (TempDir, Loaded, Look) {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let seen = look(&written(&loaded), "ferryman.dxf", &Asked::default()).unwrap();
    (folder, loaded, seen)
}

#[test]
fn own_names_are_taken_as_they_are() {
    let (_folder, _, seen) = file_of_demo();
    for name in [
        "front",
        "back",
        "yoke",
        "pocket_facing",
        "coin_pocket",
        "back_pocket_left",
        "back_pocket_right",
    ] {
        let piece = seen
            .pieces
            .iter()
            .find(|p| p.taken_for.is_some_and(|k| k.id.code() == name));
        let piece = piece.unwrap_or_else(|| panic!("{name}"));
        assert_eq!(piece.because, "as the file says");
        assert!(piece.edges.iter().all(|e| e.sure), "{name}");
        assert_eq!(piece.sizes, SIZES);
    }
    assert_eq!(seen.sizes, SIZES);
}

#[test]
fn a_drawing_brings_the_same_as_a_dxf() {
    let (_folder, loaded, seen) = file_of_demo();
    let file = written(&loaded);
    let drawn = svg::read(svg::write(&file).as_bytes()).unwrap().pattern;
    let again = look(&drawn, "ferryman.dxf", &Asked::default()).unwrap();
    assert_eq!(again.file.pieces.len(), seen.file.pieces.len());
    for (name, sizes) in &seen.file.pieces {
        for (size, block) in sizes {
            let other = &again.file.pieces[name][size];
            assert_eq!(other.outline, block.outline, "{name} {size}");
            assert_eq!(other.corners, block.corners, "{name} {size}");
        }
    }
}

/// A drawing by hand: closed paths with ids, in millimetres, y down, and nothing else.
#[test]
fn a_plain_drawing_is_made_out_when_size_line_and_grain_are_said() {
    let mut text = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"2000mm\" height=\"2000mm\" viewBox=\"0 0 2000 2000\">\n",
    );
    for (k, piece) in fixture("harbour.dxf").pieces.iter().enumerate() {
        let line = &piece.sewn[0].line;
        let at = |p: &Point| format!("{:.4} {:.4}", p.x + 400.0 + 500.0 * k as f64, 900.0 - p.y);
        let path: Vec<String> = line.iter().map(at).collect();
        text += &format!(
            "<path id=\"{}\" d=\"M {} Z\"/>\n",
            piece.name,
            path.join(" L ")
        );
    }
    text += "</svg>\n";
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let drawn = svg::read(text.as_bytes()).unwrap().pattern;
    let asked = Asked {
        sizes: vec!["32x32".parse().unwrap()],
        sewn: true,
        grain_up: true,
        ..asked(&loaded)
    };
    let seen = look(&drawn, "harbour.svg", &asked).unwrap();
    let again = brought(&loaded, &seen, Drawn::AfterWash);
    let garment = sewn(&again, Size::new(32, 32));
    assert!(garment.pattern.own.is_some());
    let back = garment.pattern.piece(draft::PieceId::Back).unwrap();
    for (edge, wanted) in HARBOUR[1].1 {
        let found = back
            .edge(EdgeId::of(edge).unwrap())
            .unwrap()
            .length()
            .to_mm();
        assert!(
            (found - wanted).abs() < 0.05,
            "{edge}: {found} is not {wanted} mm"
        );
    }
}

/// How far the furthest point of one outline lies from the other.
fn apart(a: &[Point], b: &[Point]) -> Length {
    let mut ring = b.to_vec();
    ring.extend(b.first());
    let ring = Path::polyline(&ring);
    let far = a.iter().map(|p| ring.nearest(*p).1);
    far.fold(Length::ZERO, Length::max)
}

/// That a style with its pattern brought back is the style it was exported from: measures, yarn and cut pieces.
fn same_again(loaded: &Loaded, again: &Loaded, plan: &Plan, sizes: &[Size], when: &str) {
    for &size in sizes {
        let (one, other) = (sewn(loaded, size), sewn(again, size));
        assert!(other.pattern.own.is_some(), "{when}: {:?}", other.findings);
        for (a, b) in one.pattern.measures().iter().zip(other.pattern.measures()) {
            let off = (a.pattern - b.pattern).abs().to_mm();
            assert!(off < 0.05, "{when}: {size} {:?}: {off} mm", a.measure);
        }
        let yarn = |g: &Garment| sewing::yarn::consumption(g).used().total().to_mm();
        let share = yarn(&other) / yarn(&one) - 1.0;
        assert!(share.abs() < 0.001, "{when}: {size}: yarn {share}");
        let (before, after) = (cut(&one, plan), cut(&other, plan));
        assert_eq!(before.pieces.len(), after.pieces.len(), "{when}");
        for (a, b) in before.pieces.iter().zip(&after.pieces) {
            assert_eq!((a.piece, a.on), (b.piece, b.on), "{when}");
            let off = apart(&a.cut, &b.cut).max(apart(&b.cut, &a.cut)).to_mm();
            assert!(off < 0.1, "{when}: {size} {}: {off} mm", a.piece);
        }
        let errors = |g: &Garment| {
            g.findings
                .iter()
                .filter(|f| f.severity == draft::Severity::Error)
                .count()
        };
        assert_eq!(errors(&other), errors(&one), "{when}: {:?}", other.findings);
    }
}

#[test]
fn measures_yarn_and_cut_pieces_come_back_by_the_shells_shrinkage() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let file = written_elsewhere(&loaded);
    let seen = look(&file, "ferryman.dxf", &Asked::default()).unwrap();
    let again = brought(&loaded, &seen, Drawn::BeforeWash);
    same_again(&loaded, &again, &plan(), &SIZES, "before the wash");
}

/// Our own files say how they were cut, so whatever `[cutting]` holds they come back, from DXF and from SVG.
#[test]
fn every_way_of_cutting_comes_back() {
    let residual = Shrinkage {
        warp: Share::percent(1.2),
        weft: Share::percent(0.7),
    };
    let bands = [
        BandCut::Unstated,
        BandCut::AlongWeft,
        BandCut::Preshrunk(Shrinkage::NONE),
        BandCut::Preshrunk(residual),
        BandCut::StatedEase,
    ];
    let skews = [
        AgainstSkew::Straight,
        AgainstSkew::Sheared,
        AgainstSkew::GrainTurned,
    ];
    let wash = |warp, weft| ClothWash {
        shrinkage: Shrinkage {
            warp: Share::percent(warp),
            weft: Share::percent(weft),
        },
        skew: Share::percent(3.0),
    };
    for band in bands {
        for against_skew in skews {
            let when = format!("{band:?}, {against_skew:?}");
            // A band nobody decides about is cut where warp and weft shrink nearly alike.
            let shell = match band {
                BandCut::Unstated => wash(3.0, 2.0),
                _ => wash(9.0, 3.5),
            };
            let plan = Plan {
                shell: Some(shell),
                band,
                against_skew,
                ..Plan::default()
            };
            let folder = tempfile::tempdir().unwrap();
            let loaded = demo(&folder);
            let file = written_as(&loaded, &plan);
            let drawing = svg::read(svg::write(&file).as_bytes()).unwrap().pattern;
            for (kind, file) in [("svg", &drawing), ("dxf", &file)] {
                let seen = look(file, "ferryman.dxf", &Asked::default())
                    .unwrap_or_else(|why| panic!("{when}, {kind}: {why}"));
                assert_eq!(seen.drawn, Some(Drawn::AfterWash), "{when}, {kind}");
                let taken = seen.pieces.iter().filter(|p| p.taken_for.is_some());
                // A band cut in two is laid out again and not brought.
                let pieces = if band == BandCut::AlongWeft { 7 } else { 8 };
                assert_eq!(taken.count(), pieces, "{when}, {kind}");
                if kind == "dxf" {
                    // What is asked beside it changes nothing: the file knows.
                    let as_asked = |drawn| table(&seen, "pattern/ferryman.toml", drawn, None);
                    assert_eq!(as_asked(Drawn::AfterWash), as_asked(Drawn::BeforeWash));
                    let again = brought(&loaded, &seen, Drawn::BeforeWash);
                    same_again(&loaded, &again, &plan, &SIZES[1..], &when);
                }
            }
        }
    }
}

#[test]
fn a_file_that_says_it_of_some_pieces_only_is_asked_about() {
    let folder = tempfile::tempdir().unwrap();
    let mut file = written(&demo(&folder));
    for piece in &mut file.pieces {
        if piece.category.starts_with("yoke") {
            piece.notes.clear();
        }
    }
    let why = look(&file, "ferryman.dxf", &Asked::default()).unwrap_err();
    assert_eq!(
        why.what,
        "\"Front\" says what the wash takes from it, and \"Yoke\" does not say for which state of the cloth it is drawn"
    );
    let mut file = written(&demo(&tempfile::tempdir().unwrap()));
    for piece in &mut file.pieces {
        if piece.category == "coin_pocket" {
            piece.sewn.clear();
        }
    }
    let why = look(&file, "ferryman.dxf", &Asked::default()).unwrap_err();
    assert!(
        why.what.contains("has no line it is sewn along"),
        "{}",
        why.what
    );
    let mut file = written(&demo(&tempfile::tempdir().unwrap()));
    for piece in &mut file.pieces {
        for note in &mut piece.notes {
            *note = note.replace("warp", "warp 9");
        }
    }
    let why = look(&file, "ferryman.dxf", &Asked::default()).unwrap_err();
    assert!(
        why.what.contains("which is nothing a cloth does"),
        "{}",
        why.what
    );
}

#[test]
fn a_pattern_before_the_wash_taken_as_finished_is_found_out_by_its_chart() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let file = written_elsewhere(&loaded);
    let seen = look(&file, "ferryman.dxf", &Asked::default()).unwrap();
    assert_eq!(seen.drawn, None);
    let again = brought(&loaded, &seen, Drawn::AfterWash);
    let garment = sewn(&again, Size::new(32, 32));
    let about: Vec<String> = garment
        .findings
        .iter()
        .filter(|f| f.code == "pattern::measure")
        .map(|f| f.subject.code())
        .collect();
    for measure in [MeasureId::Inseam, MeasureId::Thigh, MeasureId::Hem] {
        let code = Subject::Measure(measure).code();
        assert!(about.contains(&code), "{code}: {about:?}");
    }
}

fn fixture(name: &str) -> PatternFile {
    let path =
        PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../suite/tests/data")).join(name);
    dxf::read(&std::fs::read(path).unwrap(), None)
        .unwrap()
        .pattern
}

/// The lengths that `crates/suite/checks/harbour_pattern.py` prints when it writes the file, in millimetres.
const HARBOUR: &[(&str, &[(&str, f64)])] = &[
    (
        "front",
        &[
            ("inseam", 806.7052),
            ("hem", 198.12),
            ("side", 1043.9855),
            ("waist", 222.5182),
        ],
    ),
    (
        "back",
        &[
            ("seat", 276.578),
            ("inseam", 805.8445),
            ("hem", 228.6),
            ("side", 1003.5912),
            ("top", 229.0265),
        ],
    ),
    (
        "yoke",
        &[
            ("centre", 66.04),
            ("lower", 229.6345),
            ("side", 41.3981),
            ("top", 217.7473),
        ],
    ),
];

fn asked(loaded: &Loaded) -> Asked {
    Asked {
        lengths: vec![Tag::inches(32)],
        base: Some(loaded.style.sizes.base),
        ..Asked::default()
    }
}

#[test]
fn a_pattern_of_another_hand_is_made_out_by_name_and_shape() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let seen = look(&fixture("harbour.dxf"), "harbour.dxf", &asked(&loaded)).unwrap();
    let again = brought(&loaded, &seen, Drawn::AfterWash);
    assert!(again.text.contains("please confirm"));
    let garment = sewn(&again, Size::new(32, 32));
    let own = garment.pattern.own.as_ref().unwrap();
    assert_eq!(own.pieces.len(), 3);
    for (name, edges) in HARBOUR {
        let piece = garment
            .pattern
            .pieces
            .iter()
            .find(|p| p.id.code() == *name)
            .unwrap();
        for (edge, wanted) in *edges {
            // The uncut front: its outseam and waist go on behind the pocket mouth.
            let id = EdgeId::of(edge).unwrap();
            let behind = || {
                let facing = garment.pattern.piece(draft::PieceId::PocketFacing).unwrap();
                facing.edge(id).unwrap().length()
            };
            let mut found = piece.edge(id).unwrap().length();
            if *name == "front" && ["side", "waist"].contains(edge) {
                found += behind();
            }
            let off = (found.to_mm() - wanted).abs();
            assert!(off < 0.05, "{name} {edge}: {found} is not {wanted} mm");
        }
    }
    // All the rest is laid out, sewn and cut.
    assert_eq!(
        garment.pattern.pieces.len(),
        sewn(&loaded, Size::new(32, 32)).pattern.pieces.len()
    );
    assert!(!cut(&garment, &plan()).pieces.is_empty());
}

#[test]
fn a_cut_line_is_freed_of_its_allowance() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let seen = look(
        &fixture("harbour_cut.dxf"),
        "harbour_cut.dxf",
        &asked(&loaded),
    )
    .unwrap();
    assert!(
        seen.pieces.iter().all(|p| !p.sewn && p.taken_for.is_some()),
        "{:?}",
        seen.pieces
    );
    let pieces = Beside::new(
        &loaded,
        "pattern",
        "harbour",
        "toml",
        piece_file_text(&seen.file).into_bytes(),
    );
    let pattern = table(
        &seen,
        &pieces.name,
        Drawn::AfterWash,
        Some(Length::inches(0.375)),
    );
    let pattern = pattern.replacen(
        "\n[pattern.front]",
        "\n[pattern.allowances]\nhem = \"1 1/4 in\"\n\n[pattern.front]",
        1,
    );
    let text = with_pattern(&loaded.text, &pattern, Some(&seen.sizes));
    let again = save_beside(&loaded, &text, &[pieces]).unwrap().loaded;
    let garment = sewn(&again, Size::new(32, 32));
    let back = garment.pattern.piece(draft::PieceId::Back).unwrap();
    for (edge, wanted) in HARBOUR[1].1 {
        let found = back
            .edge(EdgeId::of(edge).unwrap())
            .unwrap()
            .length()
            .to_mm();
        assert!(
            (found - wanted).abs() < 0.3,
            "{edge}: {found} is not {wanted} mm"
        );
    }
}

#[test]
fn without_size_or_with_a_wrong_name_it_is_asked() {
    let file = fixture("harbour.dxf");
    let plain = look(&file, "harbour.dxf", &Asked::default()).unwrap_err();
    assert_eq!(plain.what, "\"32\" is not a size of waist and length");
    assert_eq!(plain.instead, "say which it is: --size \"32=32x32\"");
    let said = |piece: &str, name: &str| Asked {
        sizes: vec!["32x32".parse::<SizeName>().unwrap()],
        pieces: vec![(piece.to_owned(), name.to_owned())],
        ..Asked::default()
    };
    let why = look(&file, "harbour.dxf", &said("front", "FRONT")).unwrap_err();
    assert_eq!(
        why.instead,
        "its pieces are \"FRENTE\", \"COSTAS\", \"PALA\""
    );
    let why = look(&file, "harbour.dxf", &said("sleeve", "PALA")).unwrap_err();
    assert_eq!(why.what, "\"sleeve\" is no piece that can be brought");
}

#[test]
fn corners_can_be_named_by_hand() {
    let file = fixture("harbour.dxf");
    let with = |corners: &[&str]| Asked {
        sizes: vec!["32x32".parse().unwrap()],
        corners: vec![(
            "yoke".to_owned(),
            corners.iter().map(|c| (*c).to_owned()).collect(),
        )],
        ..Asked::default()
    };
    let seen = look(&file, "harbour.dxf", &with(&["1", "2", "3", "4"])).unwrap();
    let yoke = seen.pieces.iter().find(|p| p.name == "PALA").unwrap();
    assert!(yoke.edges.iter().all(|e| e.sure));
    let why = look(&file, "harbour.dxf", &with(&["1", "2"])).unwrap_err();
    assert_eq!(
        why.what,
        "\"PALA\": 2 corners are named; it takes 4, one where each edge begins: centre, lower, side, top"
    );
    let why = look(&file, "harbour.dxf", &with(&["1", "2", "3", "7"])).unwrap_err();
    assert!(
        why.what
            .contains("it has no corner \"7\"; its corners are 1, 2, 3, 4"),
        "{}",
        why.what
    );
}

#[test]
fn a_pocket_given_as_half_is_opened_over_its_mirror_line() {
    let folder = tempfile::tempdir().unwrap();
    let file = written_elsewhere(&demo(&folder));
    let pocket = file
        .pieces
        .iter()
        .find(|piece| piece.category == "back_pocket_left" && piece.size == "32x32");
    let whole = patterns::Piece {
        sewn: Vec::new(),
        edge_starts: Vec::new(),
        points: Vec::new(),
        ..pocket.unwrap().clone()
    };
    let reach = |p: &[Point], of: fn(f64, f64) -> f64, from| p.iter().map(|p| p.x).fold(from, of);
    let (low, high) = (
        reach(&whole.cut, f64::min, f64::MAX),
        reach(&whole.cut, f64::max, f64::MIN),
    );
    let middle = (low + high) / 2.0;
    let left =
        [(low, -1e4), (middle, -1e4), (middle, 1e4), (low, 1e4)].map(|p| Point::new(p.0, p.1));
    // From a corner of the other half round to it again, so that what is left is one line.
    let first = whole.cut.iter().position(|p| p.x > middle + 1.0).unwrap();
    let ring: Vec<Point> = whole
        .cut
        .iter()
        .cycle()
        .skip(first)
        .take(whole.cut.len() + 1)
        .copied()
        .collect();
    let half = patterns::Piece {
        cut: geometry::clip_to_polygon(&ring, &left)
            .into_iter()
            .next()
            .unwrap(),
        mirror: Some((Point::new(middle, -1e3), Point::new(middle, 1e3))),
        ..whole.clone()
    };
    let bring = |piece: patterns::Piece| {
        let file = PatternFile {
            pieces: vec![piece],
            ..file.clone()
        };
        let file = dxf::read(dxf::write(&file).as_bytes(), None)
            .unwrap()
            .pattern;
        let seen = look(&file, "pocket.dxf", &Asked::default()).unwrap();
        seen.pieces.into_iter().next().unwrap()
    };
    let (whole, half) = (bring(whole), bring(half));
    assert!(half.half && !whole.half);
    assert_eq!(half.taken_for, whole.taken_for);
    let edges = |piece: &intake::SeenPiece| -> Vec<EdgeId> {
        let mut edges: Vec<EdgeId> = piece.edges.iter().map(|e| e.id).collect();
        edges.sort_unstable();
        edges
    };
    assert!(!edges(&half).is_empty(), "{half:?}");
    assert_eq!(edges(&half), edges(&whole));
    let apart = half.area.to_mm2() / whole.area.to_mm2() - 1.0;
    assert!(apart.abs() < 0.005, "{apart}");
}

/// Sizes between whole inches are named in both kinds of file as on the tag, and come back as they went.
#[test]
fn half_sizes_come_back_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = demo(&folder);
    let sizes = [62, 63, 64].map(|waist| Size::of(Tag::halves(waist), Tag::inches(32)));
    let pieces = sizes.iter();
    let pieces = pieces.flat_map(|size| {
        from_cut(
            &cut(&sewn(&loaded, *size), &plan()),
            words::Words::english(),
        )
    });
    let file = PatternFile {
        style: "Ferryman".to_owned(),
        sample_size: "31.5x32".to_owned(),
        pieces: pieces.collect(),
        ..PatternFile::default()
    };
    let text = dxf::write(&file);
    let as_dxf = dxf::read(text.as_bytes(), None).unwrap().pattern;
    let as_svg = svg::read(svg::write(&file).as_bytes()).unwrap().pattern;
    assert_eq!(as_dxf.sample_size, "31.5x32");
    for read in [as_dxf, as_svg] {
        assert_eq!(read.sizes(), ["31x32", "31.5x32", "32x32"]);
        let seen = look(&read, "ferryman.dxf", &Asked::default()).unwrap();
        assert_eq!(seen.sizes, sizes);
    }
    let read = dxf::read(text.as_bytes(), None).unwrap().pattern;
    let seen = look(&read, "ferryman.dxf", &Asked::default()).unwrap();
    let base = loaded
        .text
        .replacen("base = \"32x32\"", "base = \"31.5x32\"", 1);
    let base = base.replacen(
        "waists = [28, 29, 30, 31, 32,",
        "waists = [28, 29, 30, 31.5, 32,",
        1,
    );
    let loaded = style::save(&loaded, &base).unwrap().loaded;
    let again = brought(&loaded, &seen, Drawn::BeforeWash);
    assert!(again.text.contains("waists = [31, 31.5, 32]"));
    assert!(again.style.sizes.all().eq(sizes));
}
