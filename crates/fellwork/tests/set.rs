//! Values changed on the command line, and changes taken back.
#![allow(clippy::unwrap_used)]

mod common;

use std::ffi::OsStr;
use std::fs;
use std::path::Path;

use common::{Demo, code, run, stderr, stdout};

fn said(first: &str, path: &Path, more: &[&str]) -> (i32, String, String) {
    let begin: [&OsStr; 2] = [OsStr::new(first), path.as_os_str()];
    let output = run(begin.into_iter().chain(more.iter().map(OsStr::new)));
    (code(&output), stdout(&output), stderr(&output))
}

#[test]
fn a_value_is_changed_with_its_comment_kept_and_taken_back() {
    let demo = Demo::new();
    let file = demo.style().join("style.toml");
    let before = fs::read_to_string(&file).unwrap();
    assert!(before.contains("count = 5"));
    let (ended, told, _) = said(
        "set",
        &file,
        &["loops.count", "7", "hem.ends", "backtacked"],
    );
    assert_eq!(ended, 0);
    assert_eq!(told.lines().count(), 2, "{told}");
    let after = fs::read_to_string(&file).unwrap();
    assert!(after.contains("count = 7"));
    let comment = |text: &str| text.matches('#').count();
    assert_eq!(comment(&after), comment(&before));
    let (_, again, _) = said("set", &file, &["loops.count", "7"]);
    assert_eq!(again, "the file says so already\n");

    let (ended, told, _) = said("undo", &file, &[]);
    assert_eq!(ended, 0, "{told}");
    assert!(told.contains("style.toml:\n"), "{told}");
    assert_eq!(fs::read_to_string(&file).unwrap(), before);
    let (ended, _, why) = said("undo", &file, &[]);
    assert_eq!(ended, 2);
    assert!(why.contains("no change is left"), "{why}");
    assert_eq!(said("redo", &file, &[]).0, 0);
    assert_eq!(fs::read_to_string(&file).unwrap(), after);
}

#[test]
fn what_would_be_a_mistake_is_refused_and_nothing_is_written() {
    let demo = Demo::new();
    let file = demo.style().join("style.toml");
    let before = fs::read_to_string(&file).unwrap();
    for (asked, why) in [
        (vec!["loops.count", "many"], "loops"),
        // All or none.
        (vec!["loops.count", "7", "chart.thigh.value", "63"], "unit"),
        (vec!["chart.elbow.value", "63 cm"], "elbow"),
        (
            vec!["loops.count", "7", "hem.ends"],
            "hem.ends has no value",
        ),
        (vec!["loops..count", "7"], "no path"),
        (vec!["muted", "[{"], "none"),
        (vec![], "nothing was said"),
        (vec!["--remove", "patch.letter"], "patch"),
    ] {
        let (ended, told, wrong) = said("set", &file, &asked);
        assert_eq!(ended, 2, "{asked:?}: {told}");
        assert!(wrong.contains(why), "{asked:?}: {wrong}");
        assert!(
            fs::read_to_string(&file).unwrap() == before,
            "{asked:?} was written"
        );
    }
}

#[test]
fn values_below_zero_and_texts_like_lists_are_values() {
    let demo = Demo::new();
    let file = demo.style().join("style.toml");
    let set = ["--remove", "patch.art", "chart.thigh.grade", "-1/4 in"];
    let (ended, _, wrong) = said("set", &file, &set);
    assert_eq!(ended, 0, "{wrong}");
    let (ended, _, wrong) = said("set", &file, &["style.name", "\"[Ferryman]\""]);
    assert_eq!(ended, 0, "{wrong}");
    let style = style::load(&file).unwrap().style;
    assert_eq!(style.style.name, "[Ferryman]");
    let thigh = &style.chart[&style::MeasureId::Thigh];
    assert_eq!(thigh.grade, Some(trade::Length::inches(-0.25)));
    let (ended, _, wrong) = said("set", &file, &["style.name", "[Ferryman]"]);
    assert_eq!(ended, 2);
    assert!(wrong.contains("quotation marks"), "{wrong}");
    // No option of ours begins with a number, and elsewhere nothing is taken for a value.
    let (ended, _, _) = said("check", &file, &["-1"]);
    assert_eq!(ended, 2);
}

#[test]
fn members_are_put_in_and_sections_taken_out() {
    let demo = Demo::new();
    let file = demo.style().join("style.toml");
    let muted =
        r#"[{ "code": "sewing::patch-hangs", "about": "part:patch", "reason": "meant so" }]"#;
    assert_eq!(said("set", &file, &["muted", muted]).0, 0);
    let other = r#"{ "code": "sewing::hem-bulk", "about": "seam:hem", "reason": "hammered" }"#;
    assert_eq!(said("set", &file, &["--insert", "muted[0]", other]).0, 0);
    let loaded = style::load(&file).unwrap();
    let codes: Vec<&str> = loaded.style.muted.iter().map(|m| m.code.as_str()).collect();
    assert_eq!(codes, ["sewing::hem-bulk", "sewing::patch-hangs"]);
    assert_eq!(said("set", &file, &["--remove", "muted[1]"]).0, 0);
    assert_eq!(style::load(&file).unwrap().style.muted.len(), 1);
}

#[test]
fn a_shared_file_is_changed_only_where_every_style_still_holds() {
    let demo = Demo::new();
    let cloths = demo.style().ancestors().nth(2).unwrap().join("cloths.toml");
    let (ended, told, wrong) = said("set", &cloths, &["cloths.tideline-14.width", "80 cm"]);
    assert_eq!(ended, 0, "{wrong}");
    assert!(told.contains("80"), "{told}");
    let (ended, _, wrong) = said("set", &cloths, &["--remove", "cloths.tideline-14"]);
    assert_eq!(ended, 2);
    assert!(wrong.contains("could not be read any more"), "{wrong}");
    assert_eq!(said("undo", cloths.parent().unwrap(), &[]).0, 0);
}
