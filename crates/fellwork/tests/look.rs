//! A close look from the command line.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::Path;
use std::process::Output;

use common::{Demo, code, fellwork, stderr, stdout};

fn look(demo: &Demo, output: &Path, more: &[&str]) -> Output {
    fellwork()
        .arg("look")
        .arg(demo.style())
        .args(["--pixels", "48"])
        .args(more)
        .arg("-o")
        .arg(output)
        .output()
        .unwrap()
}

#[test]
fn a_picture_says_that_it_is_no_promise_on_the_screen_and_in_itself() {
    let demo = Demo::new();
    let file = demo.collection().join("pocket.png");
    let asked = [
        "--view",
        "back",
        "--at",
        "back pocket right",
        "--width",
        "60mm",
        "--wear",
        "0.5",
    ];
    let told = look(&demo, &file, &asked);
    assert_eq!(code(&told), 0, "{}", stderr(&told));
    let words = stdout(&told);
    assert!(words.contains("not a promise"), "{words}");
    assert!(words.contains("forecast"), "{words}");
    let bytes = fs::read(&file).unwrap();
    let reader = png::Decoder::new(std::io::Cursor::new(&bytes))
        .read_info()
        .unwrap();
    assert_eq!((reader.info().width, reader.info().height), (48, 48));
    let said = b"not a promise";
    assert!(bytes.windows(said.len()).any(|part| part == said));
    // Our own picture is written over, and with the same bytes.
    assert_eq!(code(&look(&demo, &file, &asked)), 0);
    assert_eq!(fs::read(&file).unwrap(), bytes);
}

#[test]
fn a_place_that_is_not_on_this_side_is_told_with_those_that_are() {
    let demo = Demo::new();
    let file = demo.collection().join("no.png");
    let told = look(&demo, &file, &["--view", "front", "--at", "patch"]);
    assert_eq!(code(&told), 2);
    let words = stderr(&told);
    assert!(
        words.contains("patch is not to be seen on this side"),
        "{words}"
    );
    assert!(words.contains("band button"), "{words}");
    assert!(!file.exists());
    let told = look(&demo, &file, &["--view", "front", "--at", "moon"]);
    assert_eq!(code(&told), 2);
    assert!(stderr(&told).contains("no such place"), "{}", stderr(&told));
}

#[test]
fn what_fellwork_did_not_draw_is_not_written_over() {
    let demo = Demo::new();
    let file = demo.collection().join("mine.png");
    fs::write(&file, b"\x89PNG somebody's own").unwrap();
    let told = look(&demo, &file, &["--view", "back"]);
    assert_eq!(code(&told), 2);
    assert_eq!(fs::read(&file).unwrap(), b"\x89PNG somebody's own");
}
