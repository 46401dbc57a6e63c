//! A pattern the maker brought: read with its style, or refused with the place of every mistake.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, demo_style};
use indexmap::IndexMap;
use style::{
    Beside, EdgeId, PieceBlock, PieceFile, PieceId, SaveError, Size, piece_file_text, save_beside,
    with_pattern,
};
use trade::Length;

const SIZE: Size = Size::new(32, 32);

fn block(corners: &[(f64, f64)], sewn: bool) -> PieceBlock {
    let place = |x: f64, y: f64| [Length::mm(x), Length::mm(y)];
    PieceBlock {
        sewn,
        outline: corners.iter().map(|(x, y)| place(*x, *y)).collect(),
        corners: (0..corners.len())
            .map(|k| ((k + 1).to_string(), k))
            .collect(),
        grain: Some([place(0.0, -700.0), place(0.0, -100.0)]),
        notches: Vec::new(),
    }
}

/// A front, a back and a yoke of straight lines.
fn pieces(sewn: bool) -> PieceFile {
    let blocks: [(&str, &[(f64, f64)]); 3] = [
        (
            "FRENTE",
            &[
                (10.0, 200.0),
                (-50.0, 0.0),
                (-20.0, -800.0),
                (180.0, -800.0),
                (220.0, 0.0),
                (210.0, 220.0),
            ],
        ),
        (
            "COSTAS",
            &[
                (40.0, 180.0),
                (-90.0, -8.0),
                (-30.0, -800.0),
                (190.0, -800.0),
                (240.0, 160.0),
            ],
        ),
        (
            "PALA",
            &[(55.0, 245.0), (40.0, 180.0), (240.0, 160.0), (235.0, 200.0)],
        ),
    ];
    let one = |(name, corners): (&str, &[(f64, f64)])| {
        let sizes: IndexMap<Size, PieceBlock> =
            [(SIZE, block(corners, sewn))].into_iter().collect();
        (name.to_owned(), sizes)
    };
    PieceFile {
        from: "frente.dxf".to_owned(),
        pieces: blocks.into_iter().map(one).collect(),
    }
}

const TABLE: &str = r#"[pattern]
file = "pattern/harbour.toml"

[pattern.front]
piece = "FRENTE"
fly = ["1", "2"]
inseam = ["2", "3"]
hem = ["3", "4"]
side = ["4", "6"]
waist = ["6", "1"]

[pattern.back]
piece = "COSTAS"
seat = ["1", "2"]
inseam = ["2", "3"]
hem = ["3", "4"]
side = ["4", "5"]
top = ["5", "1"]

[pattern.yoke]
piece = "PALA"
centre = ["1", "2"]
lower = ["2", "3"]
side = ["3", "4"]
top = ["4", "1"]
"#;

/// The demo with a pattern in one size.
fn written(table: &str, pieces: &str) -> Copy {
    let copy = Copy::new();
    let folder = copy.style_folder().join("pattern");
    std::fs::create_dir(&folder).unwrap();
    std::fs::write(folder.join("harbour.toml"), pieces).unwrap();
    let text = with_pattern(demo_style(), table, Some(&[SIZE]));
    copy.write(style::demo::STYLE, text);
    copy
}

#[test]
fn edges_are_found_between_their_corners() {
    let copy = written(TABLE, &piece_file_text(&pieces(true)));
    let style = copy.loaded().style;
    let pattern = style.pattern.unwrap();
    let front = pattern.outline(PieceId::Front, SIZE).unwrap();
    let edges: Vec<&str> = front.edges.iter().map(|e| e.0.code()).collect();
    assert_eq!(edges, ["fly", "inseam", "hem", "side", "waist"]);
    let (_, side) = &front.edges[3];
    let ys: Vec<f64> = side.iter().map(|p| p[1].to_mm()).collect();
    assert_eq!(ys, [-800.0, 0.0, 220.0]);
    // What the wash takes from the demo's shell is known with it.
    let shrinkage = pattern.shrinkage.unwrap().map(|s| s.to_percent());
    assert!((shrinkage[0] - 8.0).abs() < 1e-9 && (shrinkage[1] - 4.0).abs() < 1e-9);
}

#[test]
fn a_piece_may_run_the_other_way_round() {
    let turned = TABLE
        .replace("fly = [\"1\", \"2\"]", "fly = [\"6\", \"4\"]")
        .replace("side = [\"4\", \"6\"]", "side = [\"2\", \"1\"]")
        .replace("waist = [\"6\", \"1\"]", "waist = [\"1\", \"6\"]")
        .replace(
            "\ninseam = [\"2\", \"3\"]\nhem = [\"3\", \"4\"]\nside = [\"2\"",
            "\ninseam = [\"4\", \"3\"]\nhem = [\"3\", \"2\"]\nside = [\"2\"",
        );
    let copy = written(&turned, &piece_file_text(&pieces(true)));
    let style = copy.loaded().style;
    let pattern = style.pattern.unwrap();
    let front = pattern.outline(PieceId::Front, SIZE).unwrap();
    assert_eq!(front.edges[0].1.len(), 3);
}

/// What is replaced in the table or in the file of pieces, and what is then said, where and with what help.
const MISTAKES: &[(&str, &str, &str, &str)] = &[
    (
        "piece = \"FRENTE\"",
        "piece = \"FRENTA\"",
        "pattern/harbour.toml has no piece named \"FRENTA\"",
        "did you mean \"FRENTE\"?",
    ),
    (
        "hem = [\"3\", \"4\"]\nside = [\"4\", \"6\"]",
        "hem = [\"3\", \"9\"]\nside = [\"9\", \"6\"]",
        "\"FRENTE\" in 32x32 has no corner named \"9\"",
        "its corners are \"1\", \"2\", \"3\", \"4\", \"5\", \"6\"",
    ),
    (
        "inseam = [\"2\", \"3\"]\nhem = [\"3\", \"4\"]\nside = [\"4\", \"6\"]",
        "inseam = [\"2\", \"4\"]\nhem = [\"3\", \"4\"]\nside = [\"4\", \"6\"]",
        "`hem` begins at \"3\", and `inseam` ends at \"4\"",
        "each edge begins where the one before it ends, once round the front: fly, inseam, hem, side, waist",
    ),
    (
        "seat = [\"1\", \"2\"]\ninseam = [\"2\", \"3\"]\nhem = [\"3\", \"4\"]",
        "seat = [\"1\", \"3\"]\ninseam = [\"3\", \"2\"]\nhem = [\"2\", \"4\"]",
        "the edges of \"COSTAS\" in 32x32 do not go once round it",
        "name their corners in the order in which they lie: seat, inseam, hem, side, top",
    ),
    (
        "side = [\"4\", \"6\"]",
        "side = [\"4\", \"5\"]\nmouth = [\"5\", \"6\"]",
        "the front has its pocket mouth cut away, and [pattern] has no pocket_facing to fill the corner",
        "add [pattern.pocket_facing], or bring a front that reaches the outseam and leave out `mouth`",
    ),
    (
        "\n[pattern.yoke]\npiece = \"PALA\"\ncentre = [\"1\", \"2\"]\nlower = [\"2\", \"3\"]\nside = [\"3\", \"4\"]\ntop = [\"4\", \"1\"]\n",
        "",
        "[pattern] has no yoke",
        "front, back and yoke are brought together",
    ),
    (
        "waist = [\"6\", \"1\"]\n",
        "",
        "[pattern.front] has no `waist`",
        "add waist = [\"1\", \"2\"], the corners it runs between",
    ),
    (
        "hem = [\"3\", \"4\"]\nside = [\"4\", \"6\"]",
        "hem = [\"3\"]\nside = [\"4\", \"6\"]",
        "`pattern.front.hem` names 1 corner",
        "write [\"1\", \"2\"]",
    ),
    (
        "file = \"pattern/harbour.toml\"",
        "file = \"pattern/harbor.toml\"",
        "there is no file pattern/harbor.toml in the style's folder",
        "put the file into the style's own folder with fellwork bring",
    ),
    (
        "file = \"pattern/harbour.toml\"",
        "file = \"../harbour.toml\"",
        "`file`: the path leads out of the style's folder",
        "name a file inside the style's own folder",
    ),
    (
        "file = \"pattern/harbour.toml\"",
        "file = \"pattern/harbour.toml\"\ndrawn = \"wet\"",
        "`pattern.drawn` cannot be \"wet\"",
        "write \"after wash\" or \"before wash\"",
    ),
];

#[test]
fn mistakes_are_told_where_they_are() {
    for (from, to, message, hint) in MISTAKES {
        assert!(TABLE.contains(from), "{from}");
        let copy = written(
            &TABLE.replacen(from, to, 1),
            &piece_file_text(&pieces(true)),
        );
        let report = copy.load().unwrap_err();
        let said = report
            .problems
            .iter()
            .find(|p| p.message.starts_with(message))
            .unwrap_or_else(|| panic!("{message}\n{report}"));
        let help = said.hint.as_deref().unwrap();
        assert!(help.starts_with(hint), "{help}");
        assert!(
            said.file.ends_with("style.toml") && said.line > 100,
            "{}:{}",
            said.file,
            said.line
        );
    }
}

#[test]
fn a_size_the_pattern_does_not_hold_is_told() {
    let copy = written(TABLE, &piece_file_text(&pieces(true)));
    copy.write(style::demo::STYLE, with_pattern(demo_style(), TABLE, None));
    let report = copy.load().unwrap_err();
    let first = &report.problems[0];
    assert_eq!(
        first.message,
        "pattern/harbour.toml has \"FRENTE\" in 32x32, not in 28x30, and [sizes] asks for it"
    );
    assert!(
        first
            .hint
            .as_deref()
            .unwrap()
            .contains("keep in [sizes] only what the pattern holds")
    );
}

#[test]
fn a_cut_line_needs_its_allowance() {
    let text = piece_file_text(&pieces(false));
    let report = written(TABLE, &text).load().unwrap_err();
    assert_eq!(
        report.problems[0].message,
        "\"FRENTE\" has no line it is sewn along, only the one it is cut along"
    );
    let stated = TABLE.replace(
        "toml\"\n",
        "toml\"\nallowance = \"1 cm\"\n[pattern.allowances]\nhem = \"3 cm\"\n",
    );
    let style = written(&stated, &text).loaded().style;
    let pattern = style.pattern.unwrap();
    assert_eq!(pattern.allowance(EdgeId::Hem), Some(Length::cm(3.0)));
    assert_eq!(pattern.allowance(EdgeId::Side), Some(Length::cm(1.0)));
}

#[test]
fn a_piece_without_grain_is_refused() {
    let mut file = pieces(true);
    file.pieces["COSTAS"][&SIZE].grain = None;
    let report = written(TABLE, &piece_file_text(&file)).load().unwrap_err();
    assert_eq!(
        report.problems[0].message,
        "\"COSTAS\" in 32x32 has no grain line"
    );
}

#[test]
fn what_is_wrong_in_the_file_of_pieces_is_told_there() {
    let text = piece_file_text(&pieces(true)).replace("10 200", "10 two");
    let report = written(TABLE, &text).load().unwrap_err();
    assert!(report.problems[0].file.ends_with("pattern/harbour.toml"));
    assert!(report.problems[0].message.contains("place 1 of"));
    let report = written(TABLE, "not a file of pieces").load().unwrap_err();
    assert!(report.problems[0].file.ends_with("pattern/harbour.toml"));
}

fn everything_in(folder: &std::path::Path) -> Vec<String> {
    let mut names = Vec::new();
    let mut open = vec![folder.to_path_buf()];
    while let Some(folder) = open.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            // Whoever was about to save has looked at the file, which keeps what it held.
            if path.ends_with(style::REVISIONS_FOLDER) {
                continue;
            }
            names.push(path.display().to_string());
            if path.is_dir() {
                open.push(path);
            }
        }
    }
    names.sort();
    names
}

#[test]
fn a_style_and_its_pattern_are_saved_together_or_not_at_all() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    let bytes = piece_file_text(&pieces(true)).into_bytes();
    let beside = Beside::new(&loaded, "pattern", "harbour", "toml", bytes.clone());
    let text = with_pattern(&loaded.text, TABLE, Some(&[SIZE]));
    let wrong = text.replace("PALA", "YOKE");
    let before = everything_in(&copy.style_folder());
    let refused = save_beside(&loaded, &wrong, std::slice::from_ref(&beside));
    assert!(matches!(refused, Err(SaveError::Invalid(_))), "{refused:?}");
    assert_eq!(everything_in(&copy.style_folder()), before);
    assert_eq!(copy.loaded().text, loaded.text);

    let saved = save_beside(&loaded, &text, &[beside]).unwrap();
    assert!(saved.loaded.style.pattern.is_some());
    assert_eq!(saved.loaded.style.sizes.waists, [style::Tag::inches(32)]);
    // Another pattern of the same name never takes the place of the first.
    let other = Beside::new(
        &saved.loaded,
        "pattern",
        "harbour",
        "toml",
        b"other".to_vec(),
    );
    assert_eq!(other.name, "pattern/harbour-2.toml");
    let same = Beside::new(&saved.loaded, "pattern", "Harbour", "toml", bytes);
    assert_eq!(same.name, "pattern/harbour.toml");
    // The version before the pattern can still be read.
    assert!(saved.loaded.with_text(&loaded.text).is_ok());
}

#[test]
fn a_change_of_pattern_is_told() {
    let plain = Copy::new().loaded();
    let with = written(TABLE, &piece_file_text(&pieces(true))).loaded();
    let told: Vec<String> = style::difference(&plain.style, &with.style)
        .iter()
        .map(|change| change.words(words::Words::english(), trade::System::Metric))
        .collect();
    let words = "own pattern: drafted from the chart → pattern/harbour.toml";
    assert!(told.iter().any(|s| s == words), "{told:?}");
}
