//! `fellwork patterns`, as a person runs it.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;

use common::{code, demo, names, run, stderr, stdout};

#[test]
fn every_kind_is_written_the_same_twice() {
    let demo = demo();
    let folder = tempfile::tempdir().unwrap();
    for (kind, files) in [
        ("dxf", &["ferryman.dxf"] as &[&str]),
        ("svg", &["ferryman-30x32.svg", "ferryman-32x32.svg"]),
        ("hpgl", &["ferryman-30x32.hpgl", "ferryman-32x32.hpgl"]),
    ] {
        let write = |into: &str| {
            let into = folder.path().join(format!("{kind}-{into}"));
            let (style, into_text) = (demo.style(), into.to_str().unwrap());
            let style = style.to_str().unwrap();
            let what = [
                "patterns", style, "--kind", kind, "-o", into_text, "--band", "weft",
            ];
            let sizes = ["--size", "32x32", "--size", "30x32", "--date", "2026-03-01"];
            let output = run(what.into_iter().chain(sizes));
            assert_eq!(code(&output), 0, "{}", stderr(&output));
            assert!(
                stdout(&output).contains("in 2 sizes in "),
                "{}",
                stdout(&output)
            );
            into
        };
        let (first, second) = (write("first"), write("second"));
        assert_eq!(names(&first), files);
        for file in files {
            let bytes = fs::read(first.join(file)).unwrap();
            assert!(bytes.len() > 10_000);
            assert_eq!(bytes, fs::read(second.join(file)).unwrap(), "{file}");
        }
    }
}

#[test]
fn what_cannot_be_done_is_said_and_nothing_is_written() {
    let demo = demo();
    let folder = tempfile::tempdir().unwrap();
    let into = folder.path().join("patterns");
    let style = demo.style();
    let style = style.to_str().unwrap();
    let asked = |more: &[&str]| {
        let base = ["patterns", style, "-o", into.to_str().unwrap()];
        let output = run(base.iter().chain(more));
        assert_eq!(code(&output), 2);
        assert!(!into.exists());
        stderr(&output)
    };
    assert!(asked(&["--kind", "dxf", "--size", "99x99"]).contains("is not made in size 99x99"));
    let narrow = [
        "--kind", "hpgl", "--band", "weft", "--size", "32x32", "--width", "20 cm",
    ];
    assert!(asked(&narrow).contains("plot on a wider roll"));
    assert!(asked(&["--kind", "dwg"]).contains("possible values: dxf, svg, hpgl"));
}
