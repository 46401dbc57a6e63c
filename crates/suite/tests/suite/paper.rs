//! Patterns on paper, measured from their pixels by poppler and Python.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;
use suite::fellwork::succeed;
use suite::outside::{self, tool};
use suite::source::root;
use tempfile::TempDir;

/// Patterns of one size, printed as `more` says, and the file that says where everything lies.
fn printed(more: &[&str]) -> (TempDir, PathBuf, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let out = folder.path().join("patterns");
    let mut arguments = vec!["patterns", style.to_str().unwrap()];
    arguments.extend(["--size", "32x32", "--date", "2026-03-01"]);
    arguments.extend(["--json", "-o", out.to_str().unwrap()]);
    arguments.extend(more);
    let plan = folder.path().join("plan.json");
    fs::write(&plan, succeed(arguments)).unwrap();
    (folder, plan, out)
}

fn judge(python: &Path, pdftoppm: &Path, plan: &Path, out: &Path) -> Output {
    Command::new(python)
        .arg(root().join("crates/suite/checks/paper.py"))
        .args([pdftoppm, plan, out])
        .output()
        .unwrap()
}

#[test]
fn square_and_pieces_measure_true_also_over_a_join() {
    let (Some(python), Some(pdftoppm)) = (outside::python(), tool(&["pdftoppm"])) else {
        return;
    };
    for more in [
        &["--kind", "pdf", "--paper", "a4"][..],
        &["--kind", "pdf", "--paper", "a3"],
        &["--kind", "roll", "--width", "90 cm"],
    ] {
        let (_folder, plan, out) = printed(more);
        let output = judge(&python, &pdftoppm, &plan, &out);
        let words = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{more:?}: {words}");
        let summary: Value = serde_json::from_slice(&output.stdout).unwrap();
        assert!(summary[0]["lengths"].as_u64().unwrap() >= 3, "{summary}");
        let tiled = more.contains(&"pdf");
        let joined = summary[0]["joined"].as_u64().unwrap();
        assert_eq!(joined > 0, tiled, "{summary}");
    }
}

/// A judge that always agrees is none.
#[test]
fn a_print_out_of_scale_is_noticed() {
    let (Some(python), Some(pdftoppm)) = (outside::python(), tool(&["pdftoppm"])) else {
        return;
    };
    let (_folder, plan, out) = printed(&["--kind", "pdf"]);
    let mut spoiled: Value = serde_json::from_slice(&fs::read(&plan).unwrap()).unwrap();
    // The longest pieces are a metre: a thousandth is a millimetre.
    for piece in spoiled["files"][0]["plan"]["pieces"]
        .as_array_mut()
        .unwrap()
    {
        for point in piece["outline"].as_array_mut().unwrap() {
            let y = point[1].as_f64().unwrap();
            point[1] = (y * 1.001).into();
        }
    }
    fs::write(&plan, spoiled.to_string()).unwrap();
    let output = judge(&python, &pdftoppm, &plan, &out);
    assert!(!output.status.success());
}
