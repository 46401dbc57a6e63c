//! An edit changes what it says and leaves every other byte of the file alone.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, demo_style};
use style::{Edit, EditValue, apply};

/// Applies an edit and gives the lines that are in only one of the two texts: ("- ..." and "+ ...").
fn lines_touched(text: &str, edit: &Edit) -> Vec<String> {
    let changed = match apply(text, edit) {
        Ok(changed) => changed,
        Err(report) => panic!("{edit:?}\n{report}"),
    };
    let old: Vec<&str> = text.split_inclusive('\n').collect();
    let new: Vec<&str> = changed.split_inclusive('\n').collect();
    let before = old.iter().zip(&new).take_while(|(a, b)| a == b).count();
    let most = old.len().min(new.len()) - before;
    let ends = old.iter().rev().zip(new.iter().rev()).take(most);
    let after = ends.take_while(|(a, b)| a == b).count();
    let gone = old[before..old.len() - after]
        .iter()
        .map(|line| format!("-{line}"));
    let come = new[before..new.len() - after]
        .iter()
        .map(|line| format!("+{line}"));
    gone.chain(come)
        .map(|line| line.trim_end_matches('\n').to_owned())
        .collect()
}

fn set(path: &str, text: &str) -> Edit {
    Edit::set(path, text).unwrap()
}

#[test]
fn one_value_changes_one_line_and_keeps_its_comment() {
    let touched = lines_touched(demo_style(), &set("chart.seat.at", "9 cm"));
    assert_eq!(
        touched,
        [
            "-at = \"8 cm\"                       # above the crotch",
            "+at = \"9 cm\"                       # above the crotch",
        ]
    );
}

#[test]
fn what_the_bench_edits_can_be_set() {
    let cases = [
        ("chart.thigh.value", "63 cm", "value = \"63 cm\""),
        ("chart.thigh.grade", "0.6 in", "grade = \"0.6 in\""),
        ("chart.thigh.tolerance", "1 cm", "tolerance = \"1 cm\""),
        ("chart.inseam.grade", "1/16 in", "grade = \"1/16 in\""),
        ("shape.seat_angle", "14 deg", "seat_angle = \"14 deg\""),
        (
            "seams.inseam.construction",
            "safety-stitched",
            "construction = \"safety-stitched\"",
        ),
        ("fly.buttons", "5", "buttons = 5"),
        ("loops.count", "7", "count = 7"),
        ("rivets.back_hidden", "true", "back_hidden = true"),
        ("sizes.waists", "30, 32 34", "waists = [30, 32, 34]"),
        ("sizes.lengths[0]", "31", "lengths = [31, 32, 34]"),
        ("sizes.base", "34x32", "base = \"34x32\""),
        (
            "sizes.waists",
            "30 31.5, 32.0 33",
            "waists = [30, 31.5, 32, 33]",
        ),
        (
            "sizes.waists[2]",
            "29.5",
            "waists = [28, 29, 29.5, 31, 32, 33, 34, 36, 38]",
        ),
        ("labels[1].place", "band inside", "place = \"band inside\""),
        (
            "cloth.lining",
            "bargeman-drill",
            "lining = \"bargeman-drill\"",
        ),
        ("style.name", "Ferry \"two\"", "name = 'Ferry \"two\"'"),
    ];
    for (path, value, line) in cases {
        let touched = lines_touched(demo_style(), &set(path, value));
        let come: Vec<&String> = touched
            .iter()
            .filter(|line| line.starts_with('+'))
            .collect();
        assert_eq!(come.len(), 1, "{path}: {touched:?}");
        assert!(come[0][1..].starts_with(line), "{path}: {touched:?}");
    }
}

#[test]
fn a_row_field_changes_inside_its_line() {
    let touched = lines_touched(demo_style(), &set("seams.inseam.rows[1].density", "10 /in"));
    assert_eq!(
        touched,
        [
            "-  { stitch = \"401\", density = \"8 /in\", yarn = \"night-80\", under = \"night-40\", offset = \"8 mm\" },",
            "+  { stitch = \"401\", density = \"10 /in\", yarn = \"night-80\", under = \"night-40\", offset = \"8 mm\" },",
        ]
    );
}

#[test]
fn a_seam_that_is_like_another_gets_rows_of_its_own() {
    let changed = apply(demo_style(), &set("seams.yoke.rows[0].yarn", "night-80")).unwrap();
    let at = changed.find("[seams.yoke]").unwrap();
    let end = at + changed[at..].find("[seams.front_rise]").unwrap();
    assert_eq!(
        &changed[at..end],
        "[seams.yoke]\nlike = \"seat\"\nlap = \"yoke over back\"\nrows = [\n  \
         { stitch = \"401\", density = \"8 /in\", yarn = \"night-80\", under = \"rope-60\", offset = \"1.6 mm\" },\n  \
         { stitch = \"401\", density = \"8 /in\", yarn = \"rope-105\", under = \"rope-60\", offset = \"8 mm\" },\n]\n\n"
    );
}

#[test]
fn members_of_lists_come_and_go_on_lines_of_their_own() {
    let row: EditValue = serde_json::from_str(
        r#"{"stitch": "301", "density": "9 /in", "yarn": "rope-80", "under": "rope-60", "offset": "5 mm"}"#,
    )
    .unwrap();
    for index in 0..=2 {
        let path = format!("seams.inseam.rows[{index}]").parse().unwrap();
        let touched = lines_touched(
            demo_style(),
            &Edit::Insert {
                path,
                value: row.clone(),
            },
        );
        assert_eq!(
            touched,
            [
                "+  { stitch = \"301\", density = \"9 /in\", yarn = \"rope-80\", under = \"rope-60\", offset = \"5 mm\" },"
            ],
            "{index}"
        );
    }
    for index in 0..2 {
        let touched = lines_touched(
            demo_style(),
            &Edit::remove(&format!("seams.inseam.rows[{index}]")).unwrap(),
        );
        assert_eq!(touched.len(), 1, "{touched:?}");
        assert!(touched[0].starts_with("-  {"), "{touched:?}");
    }
    let touched = lines_touched(demo_style(), &Edit::remove("labels[1]").unwrap());
    assert_eq!(touched.len(), 4, "{touched:?}");
    let label: EditValue =
        serde_json::from_str(r#"{"trim": "main-label", "place": "left side"}"#).unwrap();
    let edit = Edit::Insert {
        path: "labels[1]".parse().unwrap(),
        value: label,
    };
    let touched = lines_touched(demo_style(), &edit);
    assert!(
        touched.iter().all(|line| line.starts_with('+')),
        "{touched:?}"
    );
    let places: Vec<String> = reread(&apply(demo_style(), &edit).unwrap())
        .labels
        .into_iter()
        .map(|label| label.place)
        .collect();
    assert_eq!(places[1], "left side");
    assert_eq!(places.len(), 4);
}

#[test]
fn sections_come_and_go_where_they_belong() {
    let touched = lines_touched(demo_style(), &Edit::remove("chart.loop_width").unwrap());
    assert!(
        touched.iter().all(|line| line.starts_with('-')),
        "{touched:?}"
    );
    assert_eq!(touched.len(), 4);
    let without = apply(demo_style(), &Edit::remove("chart.loop_width").unwrap()).unwrap();
    let again = lines_touched(&without, &set("chart.loop_width.value", "1.3 cm"));
    assert!(again.iter().all(|line| line.starts_with('+')), "{again:?}");
    let back = apply(&without, &set("chart.loop_width.value", "1.3 cm")).unwrap();
    assert!(back.contains("[chart.loop_width]\nvalue = \"1.3 cm\"\n"));
    assert!(back.find("[chart.loop_width]").unwrap() < back.find("[seams.outseam]").unwrap());
    let pocket = Edit::remove("pockets.extra").unwrap();
    assert!(
        lines_touched(demo_style(), &pocket)
            .iter()
            .all(|line| line.starts_with('-'))
    );
}

#[test]
fn windows_line_ends_and_odd_spacing_stay() {
    let text = demo_style().replace('\n', "\r\n");
    let touched = lines_touched(&text, &set("chart.thigh.value", "63 cm"));
    assert_eq!(
        touched,
        ["-value = \"24 1/2 in\"\r", "+value = \"63 cm\"\r"]
    );
    let mixed = demo_style().replacen(
        "fit = \"straight\"
",
        "fit   =   'straight'  
",
        1,
    );
    let touched = lines_touched(&mixed, &Edit::remove("chart.loop_width").unwrap());
    assert!(
        touched.iter().all(|line| line.starts_with('-')),
        "{touched:?}"
    );
}

#[test]
fn a_file_without_a_last_line_end_can_be_edited_everywhere() {
    // Up to the last key that has a value.
    let (before, _) = demo_style().split_once("# mouth = true").unwrap();
    let text = before.trim_end().to_owned();
    let touched = lines_touched(&text, &set("chart.thigh.value", "63 cm"));
    assert_eq!(touched, ["-value = \"24 1/2 in\"", "+value = \"63 cm\""]);
    let changed = apply(&text, &set("bartacks.stitches", "30")).unwrap();
    assert!(changed.trim_end().ends_with("\nstitches = 30"));
    let short = text.strip_suffix("\nstitches = 28").unwrap();
    let changed = apply(short, &set("bartacks.stitches", "30")).unwrap();
    assert_eq!(changed.trim_end(), format!("{short}\nstitches = 30"));
}

#[test]
fn the_mark_some_editors_put_first_stays() {
    let text = format!("\u{feff}{}", demo_style());
    let touched = lines_touched(&text, &set("chart.thigh.value", "63 cm"));
    assert_eq!(touched, ["-value = \"24 1/2 in\"", "+value = \"63 cm\""]);
    assert_eq!(reread(&text), reread(demo_style()));
    let broken = text.replacen("33 1/2 in", "33 1/2", 1);
    let report = style::parse(&broken, "style.toml", &common::demo_collection()).unwrap_err();
    assert_eq!(report.problems[0].text, "\"33 1/2\"");
}

#[test]
fn a_wrong_edit_is_refused_with_what_would_be_right() {
    let code = |edit: &Edit| apply(demo_style(), edit).unwrap_err().problems[0].code;
    assert_eq!(code(&set("chart.thigh.value", "63")), "style::missing-unit");
    assert_eq!(
        code(&set("chart.thihg.value", "63 cm")),
        "style::unknown-measure"
    );
    assert_eq!(code(&set("fly.buttons", "four")), "style::wrong-type");
    assert_eq!(
        code(&set("seams.inseam.rows[7].yarn", "rope-80")),
        "style::no-such-place"
    );
    assert_eq!(code(&set("style.name.first", "x")), "style::no-such-place");
    assert_eq!(
        code(&Edit::remove("chart.thigh").unwrap()),
        "style::missing-measure"
    );
    assert_eq!(
        code(&Edit::remove("chart.nothing").unwrap()),
        "style::no-such-place"
    );
    let loaded = Copy::new().loaded();
    let report = loaded
        .with_edit(&set("cloth.shell", "nothing"))
        .unwrap_err();
    assert_eq!(report.problems[0].code, "style::unknown-cloth");
}

#[test]
fn an_edit_is_data() {
    let edit: Edit = serde_json::from_str(
        r#"{"edit": "set", "path": "seams.inseam.rows[0].density", "value": "9 /in"}"#,
    )
    .unwrap();
    assert_eq!(edit, set("seams.inseam.rows[0].density", "9 /in"));
    let again: Edit = serde_json::from_str(&serde_json::to_string(&edit).unwrap()).unwrap();
    assert_eq!(again, edit);
    assert!(serde_json::from_str::<Edit>(r#"{"edit": "set", "path": "a b", "value": 1}"#).is_err());
}

fn reread(text: &str) -> style::StyleDoc {
    style::parse(text, "style.toml", &common::demo_collection()).unwrap()
}
