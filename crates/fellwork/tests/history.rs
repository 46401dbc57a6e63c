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

/// Versions of any file of a collection, asked for by its path.
fn of(demo: &Demo, file: &str, more: &[&str]) -> String {
    let path = demo.collection().join(file);
    let first: [&OsStr; 2] = [OsStr::new("history"), path.as_os_str()];
    let output = run(first.into_iter().chain(more.iter().map(OsStr::new)));
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    stdout(&output)
}

#[test]
fn each_text_written_by_hand_is_a_version_of_its_own() {
    let demo = with_versions();
    of(&demo, "styles/ferryman", &["--name", "now=sent out"]);
    let file = demo.style_file();
    let first = fs::read_to_string(&file).unwrap();
    for count in ["5", "6", "9"] {
        let text = first.replace("count = 7", &format!("count = {count}"));
        assert_ne!(text, first);
        fs::write(&file, text).unwrap();
        let checked = run([OsStr::new("check"), file.as_os_str()]);
        assert!(code(&checked) < 2, "{}", stderr(&checked));
    }
    let listed = of(&demo, "styles/ferryman", &[]);
    assert_eq!(listed.matches("changed outside").count(), 3, "{listed}");
    for change in [
        "belt loops: 7 → 5",
        "belt loops: 5 → 6",
        "belt loops: 6 → 9",
    ] {
        assert!(listed.contains(change), "{change}: {listed}");
    }
    // The name stays with the text it was given to, and that can be put back.
    assert!(
        listed.contains("   3  ") && listed.contains("\"sent out\""),
        "{listed}"
    );
    of(&demo, "styles/ferryman", &["--name", "now=nine loops"]);
    let named = of(&demo, "styles/ferryman", &["--named"]);
    assert!(
        named.contains("\"sent out\"") && named.contains("\"nine loops\""),
        "{named}"
    );
    let put = of(&demo, "styles/ferryman", &["--put-back", "sent out"]);
    assert_eq!(put, "version 3 is in the file again, as version 7\n");
    assert_eq!(fs::read_to_string(&file).unwrap(), first);
}

#[test]
fn every_file_of_a_collection_has_a_history_and_all_have_one_together() {
    let demo = Demo::new();
    of(&demo, "cloths.toml", &[]);
    let cloths = demo.collection().join("cloths.toml");
    let first = fs::read_to_string(&cloths).unwrap();
    let by_hand = first.replace("weft_shrinkage = \"4 %\"", "weft_shrinkage = \"2 %\"");
    assert_ne!(first, by_hand);
    fs::write(&cloths, &by_hand).unwrap();
    let listed = of(&demo, "cloths.toml", &[]);
    assert!(
        listed.contains("tideline-14, weft shrinkage: 4 % → 2 %"),
        "{listed}"
    );
    of(
        &demo,
        "cloths.toml",
        &["--name", "1=as it came from the mill"],
    );
    let compared = run([
        OsStr::new("compare"),
        cloths.as_os_str(),
        OsStr::new("as it came from the mill"),
        OsStr::new("now"),
    ]);
    assert!(
        stdout(&compared).contains("weft shrinkage: 4 % → 2 %"),
        "{}",
        stderr(&compared)
    );
    let order = demo.collection().join("orders/spring.toml");
    let text = fs::read_to_string(&order).unwrap() + "# more to come\n";
    fs::write(&order, text).unwrap();
    of(&demo, "cloths.toml", &["--put-back", "1"]);
    assert_eq!(fs::read_to_string(&cloths).unwrap(), first);
    let all = of(&demo, "", &[]);
    let at = |words: &str| all.find(words).unwrap_or_else(|| panic!("{words}: {all}"));
    let order = [
        "cloths.toml 3  put back",
        "orders/spring.toml 2  changed outside",
        "cloths.toml 2  changed outside",
    ]
    .map(at);
    assert!(order.is_sorted(), "{all}");
    let json: Value = serde_json::from_str(&of(&demo, "", &["--json"])).unwrap();
    let ways: Vec<&str> = json["changes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|change| change["way"].as_str().unwrap())
        .collect();
    assert_eq!(ways, ["put back", "outside", "outside"]);
}

#[test]
fn a_shared_file_that_cannot_be_read_is_put_back() {
    let demo = Demo::new();
    of(&demo, "trims.toml", &[]);
    let trims = demo.collection().join("trims.toml");
    let first = fs::read_to_string(&trims).unwrap();
    fs::write(&trims, "[[[").unwrap();
    let refused = run([OsStr::new("history"), trims.as_os_str()]);
    assert_eq!(code(&refused), 2);
    let told = stderr(&refused);
    assert!(
        told.contains("version 1 is the last that can be read") && told.contains("trims.toml"),
        "{told}"
    );
    of(&demo, "trims.toml", &["--put-back", "1"]);
    assert_eq!(fs::read_to_string(&trims).unwrap(), first);
}
