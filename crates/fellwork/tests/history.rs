//! Versions on the command line: listed, named, compared, put back.
#![allow(clippy::unwrap_used)]

mod common;

use std::ffi::OsStr;
use std::fs;

use common::{Demo, code, run, stderr, stdout};
use serde_json::Value;
use style::Edit;

/// A demo with three versions: the first, a wider thigh, seven loops.
fn with_versions() -> Demo {
    let demo = Demo::new();
    for (path, value) in [("chart.thigh.value", "63 cm"), ("loops.count", "7")] {
        let loaded = style::load(&demo.style()).unwrap();
        let edit = Edit::set(path, value).unwrap();
        let text = style::apply(&loaded.text, &edit).unwrap();
        style::save(&loaded, &text).unwrap();
    }
    demo
}

fn done(demo: &Demo, command: &str, more: &[&str]) -> String {
    let output = asked(demo, command, more);
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    stdout(&output)
}

fn refused(demo: &Demo, command: &str, more: &[&str]) -> String {
    let output = asked(demo, command, more);
    assert_eq!(code(&output), 2, "{}", stdout(&output));
    stderr(&output)
}

fn asked(demo: &Demo, command: &str, more: &[&str]) -> std::process::Output {
    let style = demo.style();
    let first: [&OsStr; 2] = [OsStr::new(command), style.as_os_str()];
    run(first.into_iter().chain(more.iter().map(OsStr::new)))
}

#[test]
fn versions_are_listed_with_what_changed() {
    let demo = with_versions();
    let text = done(&demo, "history", &[]);
    let at = |words: &str| {
        text.find(words)
            .unwrap_or_else(|| panic!("{words}: {text}"))
    };
    let order = ["   3  ", "belt loops: 5 → 7", "   2  ", "thigh", "   1  "].map(at);
    assert!(order.is_sorted(), "{text}");
    assert!(text.contains("now") && text.contains("the first that is kept"));
    let json: Value = serde_json::from_str(&done(&demo, "history", &["--json"])).unwrap();
    let versions = json["versions"].as_array().unwrap();
    assert_eq!(versions.len(), 3);
    assert_eq!(versions[0]["number"], 3);
    assert_eq!(versions[0]["now"], true);
    assert_eq!(versions[0]["changes"][0]["path"], "loops.count");
    assert!(versions[2]["written"].as_str().unwrap().ends_with('Z'));
}

#[test]
fn versions_are_named_compared_and_put_back() {
    let demo = with_versions();
    let first = style::load(&demo.style()).unwrap();
    done(&demo, "history", &["--name", "1=first sample"]);
    let named = done(&demo, "history", &["--named"]);
    assert!(named.contains("\"first sample\"") && !named.contains("belt loops"));
    let words = done(&demo, "compare", &["first sample", "now"]);
    assert!(words.starts_with("version 1, first sample → version 3, now\n"));
    assert!(words.contains("thigh") && words.contains("belt loops: 5 → 7"));
    let json = done(&demo, "compare", &["2", "3", "--json"]);
    let json: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json["changes"].as_array().unwrap().len(), 1);
    assert!(done(&demo, "compare", &["2", "2"]).contains("nothing is different"));
    let said = done(&demo, "history", &["--put-back", "first sample"]);
    assert_eq!(said, "version 1 is in the file again, as version 4\n");
    assert!(done(&demo, "compare", &["1", "now"]).contains("nothing is different"));
    let said = done(&demo, "history", &["--put-back", "1"]);
    assert!(said.contains("already"), "{said}");
    done(&demo, "history", &["--put-back", "3"]);
    assert_eq!(fs::read_to_string(demo.style_file()).unwrap(), first.text);
    done(&demo, "history", &["--name", "first sample="]);
    assert!(done(&demo, "history", &["--named"]).contains("no version has a name yet"));
}

#[test]
fn a_broken_file_is_put_right_by_an_earlier_version() {
    let demo = with_versions();
    let sound = fs::read_to_string(demo.style_file()).unwrap();
    fs::write(demo.style_file(), "[style\nname = 7").unwrap();
    let told = refused(&demo, "history", &[]);
    assert!(
        told.contains("--put-back 3") && told.contains("style.toml"),
        "{told}"
    );
    assert!(refused(&demo, "history", &["--put-back", "9"]).contains("no version 9"));
    let said = done(&demo, "history", &["--put-back", "3"]);
    assert_eq!(said, "version 3 is in the file again, as version 5\n");
    assert_eq!(fs::read_to_string(demo.style_file()).unwrap(), sound);
    // What could not be read is a version like any other.
    let list = done(&demo, "history", &[]);
    assert!(list.contains("   4  "), "{list}");
    // An older one can be put in as well.
    fs::write(demo.style_file(), "").unwrap();
    done(&demo, "history", &["--put-back", "1"]);
    assert_ne!(fs::read_to_string(demo.style_file()).unwrap(), sound);
}

#[test]
fn what_cannot_be_done_is_said() {
    let demo = with_versions();
    let none = refused(&demo, "compare", &["9", "now"]);
    assert!(
        none.contains("no version 9") && none.contains("1 to 3"),
        "{none}"
    );
    assert!(refused(&demo, "history", &["--put-back", "sample"]).contains("no version sample"));
    assert!(refused(&demo, "history", &["--name", "1"]).contains("such as 12="));
    assert!(refused(&demo, "history", &["--name", "1=now"]).contains("cannot be a name"));
    done(&demo, "history", &["--name", "1=first sample"]);
    let taken = refused(&demo, "history", &["--name", "2=first sample"]);
    assert!(taken.contains("version 1 is called"), "{taken}");
    let names = demo.style().join(".revisions/names.toml");
    fs::write(&names, "[names").unwrap();
    assert!(refused(&demo, "history", &["--name", "2=second"]).contains("names.toml"));
    assert_eq!(fs::read_to_string(&names).unwrap(), "[names");
    let listed = asked(&demo, "history", &[]);
    assert_eq!(code(&listed), 0);
    assert!(stderr(&listed).contains("names cannot be read"));
}

#[test]
fn the_bench_takes_a_key_of_ones_own_and_no_poor_one() {
    let demo = Demo::new();
    let collection = demo.collection();
    let poor = run([
        OsStr::new("bench"),
        collection.as_os_str(),
        OsStr::new("--no-open"),
        OsStr::new("--port"),
        OsStr::new("0"),
        OsStr::new("--key"),
        OsStr::new("short"),
    ]);
    assert_eq!(code(&poor), 2);
    assert!(stderr(&poor).contains("16 to 128"), "{}", stderr(&poor));
}
