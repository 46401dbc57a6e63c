//! A change made on the command line and the same change made at the bench are one change: the same bytes in the file, the
//! same refusals, one undo over both.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Output;

use serde_json::{Value, json};
use suite::fellwork::run;

use crate::recover::{asked_of, bench, free_port};

const KEY: &str = "oneChangeOfTwoHands000";

/// Changes of one value each; the last cannot be made.
const CHANGES: &[(&str, &str)] = &[
    ("chart.thigh.value", "62.5 cm"),
    ("loops.count", "7"),
    ("seams.inseam.rows[0].density", "9 /in"),
    ("hem.ends", "backtacked"),
    ("pockets.coin.shape", "pointed"),
    ("chart.thigh.value", "62.5"),
];

fn demo_in(folder: &Path) -> PathBuf {
    style::write_demo(&folder.join("saltmarsh")).unwrap()
}

fn set(file: &Path, path: &str, value: &str) -> Output {
    run([
        "set".as_ref(),
        file.as_os_str(),
        path.as_ref(),
        value.as_ref(),
    ])
}

/// What the bench answers.
fn ask(port: u16, action: &str, body: Option<&Value>) -> Value {
    asked_of(port, KEY, &format!("/style/ferryman/{action}"), body).unwrap()
}

#[test]
fn a_value_set_by_command_and_at_the_bench_gives_the_same_file() {
    let folders = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    let [by_command, at_bench] = folders.each_ref().map(|folder| demo_in(folder.path()));
    let port = free_port();
    let collection = folders[1].path().join("saltmarsh");
    let bench = bench(&collection, port, KEY);
    let (mut taken, mut changed) = (0, 0);
    let mut before = fs::read_to_string(&at_bench).unwrap();
    let first = before.clone();
    for (path, value) in CHANGES {
        let command = set(&by_command, path, value);
        let shown = ask(port, "fragments", None);
        let edits = json!([{ "edit": "set", "path": path, "value": value }]);
        let body = json!({ "revision": shown["revision"], "edits": edits });
        let answer = ask(port, "edit", Some(&body));
        let done = answer["outcome"] == "done";
        assert_eq!(command.status.success(), done, "{path}: {answer}");
        let [one, other] = [&by_command, &at_bench].map(|file| fs::read_to_string(file).unwrap());
        assert_eq!(one, other, "{path}");
        taken += usize::from(done);
        // What the file says already is no change.
        changed += usize::from(other != before);
        before = other;
    }
    assert_eq!(taken, CHANGES.len() - 1);

    // What the bench changed the command takes back, one change after the other.
    drop(bench);
    assert!(changed > 3, "only {changed}");
    for _ in 0..changed {
        let back = run(["undo".as_ref(), at_bench.as_os_str()]);
        assert!(back.status.success());
    }
    let undone = fs::read_to_string(&at_bench).unwrap();
    assert_eq!(undone, first);
}
