//! The pattern computed again by Python with numpy and shapely, from what `fellwork pieces` prints.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;
use suite::fellwork::succeed;
use suite::outside;
use suite::source::root;

const SOME_SIZES: &[&str] = &["28x30", "32x32", "33x34", "38x30", "38x34"];

fn judge(python: &Path, files: &[PathBuf]) -> Output {
    Command::new(python)
        .arg(root().join("crates/suite/checks/recompute.py"))
        .args(files)
        .output()
        .unwrap()
}

fn write_pieces(style: &Path, folder: &Path, size: &str) -> PathBuf {
    let file = folder.join(format!("{size}.json"));
    let style = style.to_str().unwrap();
    fs::write(&file, succeed(["pieces", style, "--size", size, "--json"])).unwrap();
    file
}

#[test]
fn lengths_areas_measures_and_cut_lines_agree() {
    let Some(python) = outside::python() else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let every: Vec<String> = style::load(&style)
        .unwrap()
        .style
        .sizes
        .all()
        .map(|size| size.to_string())
        .collect();
    assert_eq!(every.len(), 27);
    // The whole run takes Python some ten seconds; five sizes far apart find what a person would look for.
    let whole = outside::every_check();
    let files: Vec<PathBuf> = every
        .iter()
        .filter(|size| whole || SOME_SIZES.contains(&size.as_str()))
        .map(|size| write_pieces(&style, folder.path(), size))
        .collect();
    let output = judge(&python, &files);
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words}");
    let summary: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(summary["sizes"], files.len());
    assert!(summary["compared"].as_u64().unwrap() > 1000 * files.len() as u64);
}

/// A judge that always agrees is none: each kind of mistake has to be noticed.
#[test]
fn a_wrong_number_is_noticed() {
    let Some(python) = outside::python() else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let file = write_pieces(&style, folder.path(), "32x32");
    let whole: Value = serde_json::from_slice(&fs::read(&file).unwrap()).unwrap();
    let by = |value: &mut Value, more: f64| *value = (value.as_f64().unwrap() + more).into();
    type Spoil<'a> = (&'a str, &'a dyn Fn(&mut Value));
    let spoils: &[Spoil<'_>] = &[
        ("edge_mm", &|all| {
            by(&mut all["pieces"][0]["edges"][0]["length"], 0.1)
        }),
        ("area_mm2", &|all| by(&mut all["pieces"][1]["area"], 10.0)),
        ("measure_mm", &|all| {
            by(&mut all["measures"][4]["pattern"], 0.1)
        }),
        ("solved_mm", &|all| {
            by(&mut all["measures"][4]["pattern"], 0.02)
        }),
        ("walk_mm", &|all| by(&mut all["joins"][3]["ease"], 0.2)),
        ("allowance_mm", &|all| {
            for point in all["pieces"][0]["cut_pieces"][0]["outline"]
                .as_array_mut()
                .unwrap()
            {
                by(&mut point[0], 0.3);
            }
        }),
        ("crosses itself", &|all| {
            all["pieces"][2]["edges"].as_array_mut().unwrap().swap(0, 1);
        }),
    ];
    for (kind, spoil) in spoils {
        let mut spoilt = whole.clone();
        spoil(&mut spoilt);
        let file = folder.path().join("spoilt.json");
        fs::write(&file, spoilt.to_string()).unwrap();
        let output = judge(&python, &[file]);
        let words = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(1), "{kind} goes unnoticed");
        assert!(words.contains(kind), "{kind} is not named: {words}");
    }
}
