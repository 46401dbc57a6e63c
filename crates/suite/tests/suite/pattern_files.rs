//! Pattern files judged by ezdxf, which is not ours.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use cutting::{Plan, cut};
use serde_json::{Value, json};
use suite::fellwork::succeed;
use suite::outside;
use suite::source::root;

fn judge(python: &Path, file: &Path, ours: &Path) -> Output {
    Command::new(python)
        .arg(root().join("crates/suite/checks/pattern_files.py"))
        .args([file, ours])
        .output()
        .unwrap()
}

/// All sizes take ezdxf some ten seconds; three far apart find what a person would look for.
const SOME_SIZES: &[&str] = &["28x30", "32x32", "38x34"];

/// Areas and lengths of every cut piece, as they are before they become a file.
fn ours(style: &Path, whole: bool) -> Value {
    let loaded = style::load(style).unwrap();
    let plan = Plan::of(&loaded.style);
    let mut out = Vec::new();
    let all = loaded.style.sizes.all();
    for size in all.filter(|size| whole || SOME_SIZES.contains(&size.to_string().as_str())) {
        let garment = sewing::make(&loaded.style, &loaded.collection, size);
        for piece in cut(&garment, &plan).pieces {
            let mut round = piece.cut.clone();
            round.extend(piece.cut.first());
            let edges: serde_json::Map<String, Value> = piece
                .edges
                .iter()
                .map(|e| {
                    (
                        e.id.code().to_owned(),
                        geometry::polyline_length(&e.sewn).to_mm().into(),
                    )
                })
                .collect();
            out.push(json!({
                "category": piece.code(),
                "size": size.to_string(),
                "area": piece.area().to_mm2(),
                "round": geometry::polyline_length(&round).to_mm(),
                "edges": edges,
            }));
        }
    }
    Value::Array(out)
}

/// The demo, its DXF, and what is in it as we have it.
fn written(folder: &Path, whole: bool) -> (PathBuf, Value) {
    let style = style::write_demo(&folder.join("demo")).unwrap();
    let into = folder.join("patterns");
    let (style_text, into_text) = (style.to_str().unwrap(), into.to_str().unwrap());
    let asked = ["patterns", style_text, "--kind", "dxf", "-o", into_text];
    let mut asked: Vec<&str> = asked.into_iter().chain(["--date", "2026-03-01"]).collect();
    if !whole {
        asked.extend(SOME_SIZES.iter().flat_map(|size| ["--size", size]));
    }
    succeed(asked);
    (into.join("ferryman.dxf"), ours(&style, whole))
}

/// Every size is read without a mend, and a judge that always agrees is none: each spoilt number is noticed.
#[test]
fn ezdxf_reads_every_size_and_agrees() {
    let Some(python) = outside::python_with("ezdxf") else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let whole = outside::every_check();
    let (file, ours) = written(folder.path(), whole);
    let beside = folder.path().join("ours.json");
    fs::write(&beside, ours.to_string()).unwrap();
    let output = judge(&python, &file, &beside);
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words}");
    let summary: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(summary["pieces"], ours.as_array().unwrap().len());
    assert!(summary["compared"].as_u64().unwrap() > if whole { 2_500 } else { 300 });

    let mut spoilt = ours;
    let by = |value: &mut Value, more: f64| *value = (value.as_f64().unwrap() + more).into();
    by(&mut spoilt[0]["area"], 60.0);
    by(&mut spoilt[1]["round"], 0.2);
    by(&mut spoilt[2]["edges"]["inseam"], 0.2);
    spoilt[3]["size"] = "99x99".into();
    fs::write(&beside, spoilt.to_string()).unwrap();
    let output = judge(&python, &file, &beside);
    let words = String::from_utf8_lossy(&output.stderr);
    for kind in [
        "area",
        "round",
        "edge inseam",
        "is not in the file",
        "is not ours",
    ] {
        assert!(words.contains(kind), "{kind} goes unnoticed: {words}");
    }
}
