//! Input that is wrong in every way there is: a clear answer with its place, and nothing written.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs::File;
use std::path::Path;

use common::{Demo, code, fellwork, names, stderr};
use serde_json::Value;

/// Runs every command that reads a style; each has to fail alike and leave nothing.
fn refused(style: &Path, words: &[&str]) {
    let folder = tempfile::tempdir().unwrap();
    let commands: [&[&str]; 5] = [
        &["check"],
        &["pieces"],
        &["pieces", "--json"],
        &["draw", "--view", "front", "--face", "outside", "-o"],
        &["pack", "-o"],
    ];
    for command in commands {
        let mut program = fellwork();
        program.args(command);
        if command.last() == Some(&"-o") {
            let drawn = command.first() == Some(&"draw");
            program.arg(
                folder
                    .path()
                    .join(if drawn { "out.svg" } else { "out.pdf" }),
            );
        }
        let output = program.arg(style).output().unwrap();
        let text = stderr(&output);
        assert_eq!(code(&output), 2, "{command:?}: {text}");
        assert!(output.stdout.is_empty(), "{command:?}");
        for word in words {
            assert!(
                text.contains(word),
                "{command:?} does not say {word}: {text}"
            );
        }
        assert!(!text.contains("panicked"), "{text}");
    }
    assert_eq!(names(folder.path()), Vec::<String>::new());
}

/// A demo with one change to its style file.
fn changed(from: &str, to: &str, words: &[&str]) {
    let demo = Demo::with(from, to);
    refused(&demo.style(), words);
}

#[test]
fn an_unknown_key() {
    changed(
        "[chart.thigh]",
        "[chart.thihg]",
        &["style.toml:", "thihg", "thigh"],
    );
}

#[test]
fn a_missing_unit() {
    changed(
        "value = \"24 1/2 in\"",
        "value = \"24.5\"",
        &["style.toml:", "24.5", "cm"],
    );
    changed(
        "value = \"24 1/2 in\"",
        "value = 24.5",
        &["style.toml:", "24.5"],
    );
}

#[test]
fn a_wrong_unit() {
    changed(
        "value = \"24 1/2 in\"",
        "value = \"24 oz/yd2\"",
        &["style.toml:", "24 oz/yd2"],
    );
}

#[test]
fn a_negative_length() {
    changed(
        "value = \"24 1/2 in\"",
        "value = \"-24 in\"",
        &["style.toml:", "-24 in"],
    );
}

#[test]
fn what_is_no_number() {
    for value in ["nan", "\"nan cm\"", "\"inf cm\"", "\"1e999 cm\"", "inf"] {
        changed(
            "value = \"24 1/2 in\"",
            &format!("value = {value}"),
            &["style.toml:"],
        );
    }
}

#[test]
fn seams_like_one_another_in_a_circle() {
    changed(
        "[seams.seat]\nconstruction = \"lap-felled\"",
        "[seams.seat]\nlike = \"yoke\"",
        &["style.toml:", "like"],
    );
}

#[test]
fn a_file_cut_off() {
    let demo = Demo::new();
    let text = std::fs::read_to_string(demo.style_file()).unwrap();
    let half = text.find("[seams.front_rise]").unwrap() + 20;
    std::fs::write(demo.style_file(), &text[..half]).unwrap();
    refused(&demo.style(), &["style.toml:"]);
    std::fs::write(demo.style_file(), "").unwrap();
    refused(&demo.style(), &["style.toml"]);
}

#[test]
fn a_file_of_a_hundred_megabytes() {
    let demo = Demo::new();
    File::create(demo.style_file())
        .unwrap()
        .set_len(100_000_000)
        .unwrap();
    refused(&demo.style(), &["style.toml", "100000000 bytes"]);
}

#[test]
fn what_is_not_utf_8() {
    let demo = Demo::new();
    let mut text = std::fs::read(demo.style_file()).unwrap();
    text.splice(0..0, b"# caf\xe9\n".iter().copied());
    std::fs::write(demo.style_file(), text).unwrap();
    refused(&demo.style(), &["style.toml", "UTF-8", "line 1"]);
}

#[test]
fn a_folder_without_a_style_and_a_file_that_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    refused(folder.path(), &["style.toml"]);
    refused(&folder.path().join("missing"), &["missing", "no such file"]);
}

#[test]
fn a_style_outside_any_collection() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::copy(Demo::new().style_file(), folder.path().join("style.toml")).unwrap();
    refused(folder.path(), &["collection.toml"]);
}

#[test]
fn check_tells_programs_where_it_is_wrong() {
    let demo = Demo::with("value = \"24 1/2 in\"", "value = \"24.5\"");
    let output = fellwork()
        .args(["check", "--json"])
        .arg(demo.style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 2);
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    let problem = &answer["problems"][0];
    assert_eq!(problem["path"], "chart.thigh.value");
    assert!(problem["line"].as_u64().unwrap() > 1 && problem["column"].as_u64().unwrap() > 1);
}
