//! Every kind of mistake a file can hold gives a message with its place and what would be right.
//! The whole rendered messages are in `snapshots/`; the code and the line are checked here.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, demo_collection, demo_style, demo_text, with};
use style::{Report, parse};

/// A mistake: its name, its code, what is replaced in the demo's style and by what.
const MISTAKES: &[(&str, &str, &str, &str)] = &[
    (
        "unknown_key",
        "style::unknown-key",
        "seat_split = ",
        "seat_splitt = ",
    ),
    (
        "muted_without_reason",
        "style::unfit-text",
        "[bartacks]",
        "[[muted]]\ncode = \"sewing::patch-hangs\"\nabout = \"patch\"\nreason = \" \"\n\n[bartacks]",
    ),
    (
        "unknown_key_far_from_any",
        "style::unknown-key",
        "seat_split = ",
        "wobble = ",
    ),
    (
        "unknown_section",
        "style::unknown-key",
        "[bartacks]",
        "[bartack]",
    ),
    (
        "unknown_key_in_row",
        "style::unknown-key",
        "density = \"9 /in\", yarn = \"night-80\"",
        "dencity = \"9 /in\", yarn = \"night-80\"",
    ),
    (
        "unknown_band_cut",
        "style::unknown-word",
        "band = \"weft\"",
        "band = \"warp\"",
    ),
    (
        "missing_unit",
        "style::missing-unit",
        "value = \"33 1/2 in\"",
        "value = \"33 1/2\"",
    ),
    (
        "bare_number",
        "style::missing-unit",
        "value = \"33 1/2 in\"",
        "value = 33.5",
    ),
    (
        "wrong_unit",
        "style::wrong-unit",
        "value = \"33 1/2 in\"",
        "value = \"33 1/2 oz\"",
    ),
    (
        "unknown_unit",
        "style::wrong-unit",
        "value = \"33 1/2 in\"",
        "value = \"33 1/2 furlongs\"",
    ),
    (
        "no_number",
        "style::unreadable-quantity",
        "value = \"33 1/2 in\"",
        "value = \"wide\"",
    ),
    (
        "decimal_comma",
        "style::unreadable-quantity",
        "value = \"7 cm\"",
        "value = \"7,5 cm\"",
    ),
    (
        "negative_measure",
        "style::negative",
        "value = \"33 1/2 in\"",
        "value = \"-33 1/2 in\"",
    ),
    (
        "negative_tolerance",
        "style::negative",
        "tolerance = \"1.3 cm\"",
        "tolerance = \"-1.3 cm\"",
    ),
    (
        "nothing_where_something_is_needed",
        "style::out-of-range",
        "value = \"33 1/2 in\"",
        "value = \"0 cm\"",
    ),
    (
        "far_too_large",
        "style::out-of-range",
        "value = \"33 1/2 in\"",
        "value = \"33 m\"",
    ),
    (
        "nan_in_quotes",
        "style::not-a-number",
        "value = \"33 1/2 in\"",
        "value = \"NaN cm\"",
    ),
    (
        "nan_bare",
        "style::not-a-number",
        "value = \"33 1/2 in\"",
        "value = nan",
    ),
    (
        "infinite",
        "style::not-a-number",
        "value = \"33 1/2 in\"",
        "value = -inf",
    ),
    (
        "larger_than_any_number",
        "style::not-a-number",
        "value = \"33 1/2 in\"",
        "value = \"1e999 cm\"",
    ),
    (
        "wrong_type",
        "style::wrong-type",
        "value = \"33 1/2 in\"",
        "value = [33]",
    ),
    (
        "value_for_a_section",
        "style::wrong-type",
        "[pockets.coin]\n",
        "[pockets]\ncoin = 3\n[pockets.other]\n",
    ),
    (
        "duplicate_size",
        "style::duplicate-size",
        "[28, 29, 30,",
        "[28, 29, 28,",
    ),
    (
        "sizes_out_of_order",
        "style::size-order",
        "[28, 29, 30,",
        "[28, 30, 29,",
    ),
    (
        "no_sizes",
        "style::empty-list",
        "waists = [28, 29, 30, 31, 32, 33, 34, 36, 38]",
        "waists = []",
    ),
    (
        "base_not_in_run",
        "style::base-not-in-run",
        "base = \"32x32\"",
        "base = \"35x32\"",
    ),
    (
        "unreadable_size",
        "style::unreadable-size",
        "base = \"32x32\"",
        "base = \"32\"",
    ),
    (
        "negative_size",
        "style::negative",
        "[28, 29, 30,",
        "[-28, 29, 30,",
    ),
    (
        "unknown_cloth",
        "style::unknown-cloth",
        "shell = \"tideline-14\"",
        "shell = \"tideline-15\"",
    ),
    (
        "unknown_yarn",
        "style::unknown-yarn",
        "yarn = \"night-80\", under = \"night-40\", offset = \"0 mm\"",
        "yarn = \"nigth-80\", under = \"night-40\", offset = \"0 mm\"",
    ),
    (
        "unknown_trim",
        "style::unknown-trim",
        "band_button = \"shank-27\"",
        "band_button = \"anchor\"",
    ),
    (
        "wrong_kind_of_trim",
        "style::wrong-trim",
        "band_button = \"shank-27\"",
        "band_button = \"rivet-9\"",
    ),
    (
        "unknown_workroom",
        "style::unknown-workroom",
        "workroom = \"azenha\"",
        "workroom = \"azena\"",
    ),
    (
        "like_circle",
        "style::like-circle",
        "[seams.seat]\nconstruction = \"lap-felled\"\n",
        "[seams.seat]\nlike = \"yoke\"\n",
    ),
    (
        "like_itself",
        "style::like-circle",
        "like = \"seat\"",
        "like = \"yoke\"",
    ),
    (
        "like_nothing",
        "style::unknown-seam",
        "like = \"seat\"",
        "like = \"seam\"",
    ),
    (
        "unknown_seam",
        "style::unknown-seam",
        "[seams.extra_hem]",
        "[seams.extra_ham]",
    ),
    (
        "missing_seam",
        "style::missing-seam",
        "[seams.hem]\nconstruction = \"rolled-hem\"\nrows = [{ stitch = \"401\", density = \"7 /in\", yarn = \"rope-105\", under = \"rope-60\", offset = \"10.5 mm\" }]\n",
        "",
    ),
    (
        "unknown_construction",
        "style::unknown-construction",
        "\"mock-felled\"",
        "\"mock-feled\"",
    ),
    (
        "unfit_construction",
        "style::unfit-construction",
        "\"rolled-hem\"",
        "\"lap-felled\"",
    ),
    (
        "unfit_lap",
        "style::unfit-lap",
        "lap = \"front over back\"",
        "lap = \"left over right\"",
    ),
    (
        "unknown_stitch",
        "style::unknown-stitch",
        "stitch = \"401\", density = \"7 /in\"",
        "stitch = \"409\", density = \"7 /in\"",
    ),
    (
        "no_rows",
        "style::row-count",
        "rows = [{ stitch = \"401\", density = \"7 /in\", yarn = \"rope-105\", under = \"rope-60\", offset = \"10.5 mm\" }]",
        "rows = []",
    ),
    (
        "unknown_measure",
        "style::unknown-measure",
        "[chart.thigh]",
        "[chart.thihg]",
    ),
    (
        "missing_measure",
        "style::missing-measure",
        "[chart.band_height]\nvalue = \"3.8 cm\"\ntolerance = \"0.3 cm\"\n",
        "",
    ),
    (
        "level_where_none_is",
        "style::no-level",
        "[chart.waist]\n",
        "[chart.waist]\nat = \"2 cm\"\n",
    ),
    (
        "grade_runs_out",
        "style::grade-runs-out",
        "value = \"18 in\"\nat = \"14 in\"                      # below the crotch\ngrade = \"1/4 in\"",
        "value = \"18 in\"\nat = \"14 in\"\ngrade = \"5 in\"",
    ),
    (
        "breaks_out_of_order",
        "style::break-order",
        "breaks = [{ above = 34, grade = \"0 in\" }]",
        "breaks = [{ above = 34, grade = \"0 in\" }, { above = 30, grade = \"1 in\" }]",
    ),
    (
        "missing_key",
        "style::missing-key",
        "code = \"SY-101\"\n",
        "",
    ),
    (
        "missing_section",
        "style::missing-section",
        "[cloth]\nshell = \"tideline-14\"\npocketing = \"bargeman-drill\"\nlining = \"oar-lining\"\n",
        "",
    ),
    (
        "unknown_word",
        "style::unknown-word",
        "fit = \"straight\"",
        "fit = \"strait\"",
    ),
    (
        "empty_text",
        "style::unfit-text",
        "name = \"Ferryman\"",
        "name = \" \"",
    ),
    (
        "line_break_in_text",
        "style::unfit-text",
        "name = \"Ferryman\"",
        "name = \"Ferry\\nman\"",
    ),
    (
        "art_outside_by_dots",
        "style::art-outside",
        "art = \"art/patch.svg\"",
        "art = \"../../../secret.svg\"",
    ),
    (
        "art_outside_from_the_root",
        "style::art-outside",
        "art = \"art/patch.svg\"",
        "art = \"/etc/hostname\"",
    ),
    (
        "another_format",
        "style::unknown-format",
        "format = 1",
        "format = 2",
    ),
    (
        "unclosed_text",
        "style::syntax",
        "name = \"Ferryman\"",
        "name = \"Ferryman",
    ),
    (
        "key_twice",
        "style::syntax",
        "code = \"SY-101\"\n",
        "code = \"SY-101\"\ncode = \"SY-102\"\n",
    ),
    (
        "section_twice",
        "style::syntax",
        "[chart.seat]\n",
        "[chart.waist]\n",
    ),
    ("not_toml_at_all", "style::syntax", "format = 1", "<html>"),
];

fn report_of(text: &str) -> Report {
    parse(text, "styles/ferryman/style.toml", &demo_collection()).unwrap_err()
}

#[test]
fn every_mistake_is_told_with_its_place() {
    let mut settings = insta::Settings::clone_current();
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        for (name, code, from, to) in MISTAKES {
            let report = report_of(&with(from, to));
            assert!(
                report.problems.iter().any(|p| p.code == *code),
                "{name}: {report}"
            );
            insta::assert_snapshot!(*name, report.render());
        }
    });
}

#[test]
fn places_are_those_of_the_offending_text() {
    let text = with("value = \"33 1/2 in\"", "value = \"33 1/2\"");
    let report = report_of(&text);
    let [problem] = report.problems.as_slice() else {
        panic!("{report}")
    };
    let line = text.lines().nth(problem.line - 1).unwrap();
    assert_eq!(line, "value = \"33 1/2\"");
    assert_eq!(problem.column, 9);
    assert_eq!(problem.text, "\"33 1/2\"");
}

#[test]
fn a_report_is_data_too() {
    let report = report_of(&with("seat_split = ", "seat_splitt = "));
    let json = serde_json::to_value(&report).unwrap();
    let problem = &json["problems"][0];
    assert_eq!(problem["file"], "styles/ferryman/style.toml");
    assert_eq!(problem["code"], "style::unknown-key");
    assert_eq!(problem["message"], "`seat_splitt` is not known in [shape]");
    assert_eq!(problem["hint"], "did you mean `seat_split`?");
    assert_eq!(problem["text"], "seat_splitt");
    assert_eq!(problem["column"], 1);
    assert!(problem["line"].as_u64().unwrap() > 100);
}

#[test]
fn all_problems_are_told_at_once_in_the_order_of_the_file() {
    let text = with("value = \"33 1/2 in\"", "value = \"33 1/2\"")
        .replacen("fit = \"straight\"", "fit = \"strait\"", 1)
        .replacen("shell = \"tideline-14\"", "shell = \"tide\"", 1)
        .replacen("stitches = 28", "stitches = 28\nstiches = 3", 1);
    let report = report_of(&text);
    let codes: Vec<&str> = report.problems.iter().map(|p| p.code).collect();
    let expected = [
        "style::unknown-word",
        "style::unknown-cloth",
        "style::missing-unit",
        "style::unknown-key",
    ];
    assert_eq!(codes, expected);
}

#[test]
fn a_circle_of_three_is_named_once_and_whole() {
    let text = with(
        "like = \"seat\"\nlap = \"yoke over back\"",
        "like = \"inseam\"",
    )
    .replacen(
        "[seams.inseam]\nconstruction = \"lap-felled\"",
        "[seams.inseam]\nlike = \"seat\"",
        1,
    )
    .replacen(
        "[seams.seat]\nconstruction = \"lap-felled\"",
        "[seams.seat]\nlike = \"yoke\"",
        1,
    );
    let report = report_of(&text);
    let [problem] = report.problems.as_slice() else {
        panic!("{report}")
    };
    assert_eq!(
        problem.message,
        "inseam is sewn like seat, seat like yoke, yoke like inseam"
    );
}

#[test]
fn a_flood_of_problems_is_counted_not_listed() {
    let flood: String = (0..5000).map(|n| format!("key_{n} = 1\n")).collect();
    let report = report_of(&format!("{}\n{flood}", demo_style()));
    assert_eq!(report.problems.len(), style::MOST_PROBLEMS);
    assert_eq!(report.more, 5000 - style::MOST_PROBLEMS);
    assert!(report.render().ends_with("and 4900 more\n"));
}

#[test]
fn a_file_cut_off_anywhere_is_refused_or_lacks_something() {
    let collection = demo_collection();
    let text = demo_style();
    let whole = text.rfind("stitches").unwrap();
    for cut in (0..whole)
        .step_by(7)
        .filter(|&cut| text.is_char_boundary(cut))
    {
        let read = parse(&text[..cut], "style.toml", &collection);
        // The bartacks' last lines have defaults: from their yarn on, the style is whole.
        if cut < text.rfind("yarn = \"rope-80\"").unwrap() {
            assert!(read.is_err(), "cut at {cut}");
        }
    }
}

fn snapshot(name: &str, copy: &Copy) {
    let report = copy.load().unwrap_err();
    let mut settings = insta::Settings::clone_current();
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, copy.render(&report)));
}

#[test]
fn a_file_that_is_not_utf8_is_refused_with_the_byte() {
    let copy = Copy::new();
    let mut bytes = demo_style().as_bytes().to_vec();
    bytes.insert(100, 0xff);
    copy.write(style::demo::STYLE, bytes);
    snapshot("file_not_utf8", &copy);
    let report = copy.load().unwrap_err();
    assert_eq!(
        (report.problems[0].line, report.problems[0].column),
        (2, 41)
    );
}

#[test]
fn a_huge_file_is_refused_unread() {
    let copy = Copy::new();
    let file = std::fs::File::options()
        .write(true)
        .open(copy.style())
        .unwrap();
    file.set_len(100 * 1024 * 1024).unwrap();
    snapshot("file_too_large", &copy);
}

#[test]
fn a_missing_sibling_is_named() {
    let copy = Copy::new();
    std::fs::remove_file(copy.root().join("yarns.toml")).unwrap();
    snapshot("file_missing_sibling", &copy);
}

#[test]
fn a_style_outside_any_collection_is_told_so() {
    let copy = Copy::new();
    std::fs::remove_file(copy.root().join("collection.toml")).unwrap();
    snapshot("file_no_collection", &copy);
}

#[test]
fn a_path_to_nothing_is_told_so() {
    let copy = Copy::new();
    let codes = |path: &str| style::load(&copy.root().join(path)).unwrap_err().problems[0].code;
    assert_eq!(codes("styles/nothing"), "style::missing-file");
    assert_eq!(codes("styles"), "style::missing-file");
    assert_eq!(codes("styles/nothing/style.toml"), "style::missing-file");
}

#[test]
fn mistakes_in_sibling_files_are_told_with_the_file() {
    let copy = Copy::new();
    let cloths = demo_text("cloths.toml");
    copy.write(
        "cloths.toml",
        cloths.replacen("weight = \"14 oz/yd2\"", "weight = \"14 oz\"", 1),
    );
    let trims = demo_text("trims.toml");
    copy.write("trims.toml", trims.replacen("diameter = \"9 mm\"\n", "", 1));
    let yarns = demo_text("yarns.toml").replacen("[yarns.rope-105]", "[yarns.\"rope 105\"]", 1);
    copy.write("yarns.toml", yarns);
    let label = demo_text("collection.toml").replacen("\"EUR\"", "\"euro\"", 1);
    copy.write("collection.toml", label);
    snapshot("mistakes_in_sibling_files", &copy);
}

#[test]
fn a_wash_test_needs_both_threads_and_whole_marks() {
    let copy = Copy::new();
    let cloths = demo_text("cloths.toml")
        .replace("along = \"weft\"", "along = \"warp\"")
        .replacen("falling = \"35.1 cm\"", "falling = \"0 cm\"", 1);
    copy.write("cloths.toml", cloths);
    snapshot("wash_test_of_one_thread", &copy);
}

#[test]
fn drawings_stay_inside_the_style_folder() {
    let copy = Copy::new();
    let text = with("art/patch.svg", "art/other.svg");
    copy.write(style::demo::STYLE, &text);
    assert_eq!(
        copy.load().unwrap_err().problems[0].code,
        "style::missing-art"
    );
    let art = copy.style_folder().join("art");
    std::fs::create_dir_all(&art).unwrap();
    std::fs::write(art.join("other.svg"), "<svg><path d=\"M5 5 L60 5\"/></svg>").unwrap();
    let loaded = copy.load().unwrap();
    let named: Vec<String> = loaded
        .style
        .art()
        .into_iter()
        .map(|(path, _)| path)
        .collect();
    assert_eq!(named, ["pockets.back.right.art", "patch.art"]);
    #[cfg(unix)]
    {
        std::fs::remove_file(art.join("other.svg")).unwrap();
        std::os::unix::fs::symlink(copy.root().join("yarns.toml"), art.join("other.svg")).unwrap();
        assert_eq!(
            copy.load().unwrap_err().problems[0].code,
            "style::art-outside"
        );
    }
}
