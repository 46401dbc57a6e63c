//! The whole job in one command: `fellwork demo DIR --no-bench`.

use std::fs;

use serde_json::Value;
use suite::fellwork::{run, succeed};

#[test]
fn the_demo_is_written_printed_and_without_an_error() {
    let folder = tempfile::tempdir().unwrap();
    let demo = folder.path().join("saltmarsh");
    let place = demo.to_str().unwrap();
    succeed(["demo", place, "--no-bench"]);
    for (path, text) in style::demo::files() {
        assert_eq!(
            &fs::read_to_string(demo.join(path)).unwrap(),
            text,
            "{path}"
        );
    }
    let pack = fs::read(demo.join("styles/ferryman/ferryman.pdf")).unwrap();
    assert!(pack.starts_with(b"%PDF-"));
    let style = demo.join("styles/ferryman");
    let checked = succeed(["check", style.to_str().unwrap(), "--measures", "--json"]);
    let checked: Value = serde_json::from_str(&checked).unwrap();
    assert_eq!(checked["errors"], 0);
    assert_eq!(checked["sizes"].as_array().unwrap().len(), 27);
    let measures = checked["measures"].as_array().unwrap();
    let charted: Vec<f64> = measures
        .iter()
        .filter_map(|measure| measure["difference_mm"].as_f64())
        .collect();
    assert!(charted.len() >= 27 * 18, "{} charted values", charted.len());
    let worst = charted
        .iter()
        .fold(0.0, |worst: f64, off| worst.max(off.abs()));
    assert!(worst <= 0.01, "a pattern is {worst} mm off its chart");
}

#[test]
fn a_second_time_keeps_what_the_maker_changed() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("saltmarsh");
    succeed(["demo", place.to_str().unwrap(), "--no-bench"]);
    let file = place.join("styles/ferryman/style.toml");
    let changed = fs::read_to_string(&file)
        .unwrap()
        .replace("\"18 in\"", "\"17 in\"");
    fs::write(&file, &changed).unwrap();
    succeed(["demo", place.to_str().unwrap(), "--no-bench"]);
    assert_eq!(fs::read_to_string(&file).unwrap(), changed);
}

#[test]
fn a_change_of_the_chart_changes_the_drawing() {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    let path = file.to_str().unwrap();
    let draw = || {
        succeed([
            "draw", path, "--view", "front", "--face", "outside", "-o", "-",
        ])
    };
    let before = draw();
    let text = fs::read_to_string(&file).unwrap();
    let narrower = text.replacen("value = \"16 1/2 in\"", "value = \"15 in\"", 1);
    assert_ne!(text, narrower);
    fs::write(&file, narrower).unwrap();
    assert_ne!(draw(), before);
}

#[test]
fn a_style_that_cannot_be_read_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    let text = fs::read_to_string(&file).unwrap();
    fs::write(
        &file,
        text.replacen("\"26 cm\"", "26", 1)
            .replacen("\"40 in\"", "\"40\"", 1),
    )
    .unwrap();
    let pdf = folder.path().join("out.pdf");
    let output = run(["pack", file.to_str().unwrap(), "-o", pdf.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(2));
    assert!(!pdf.exists());
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(words.contains("style.toml:"), "no line is named: {words}");
}
