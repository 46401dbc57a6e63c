//! What is said to somebody who asks for the wrong thing, and how it is said.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::Path;

use common::{Demo, code, demo, fellwork, run, stderr, stdout};

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

/// Runs what has to be refused and gives what was said.
fn refused(args: &[&str]) -> String {
    let output = run(args);
    assert_eq!(code(&output), 2, "{args:?}: {}", stdout(&output));
    assert_eq!(stdout(&output), "", "{args:?}");
    stderr(&output)
}

#[test]
fn a_size_named_twice_is_laid_as_often_as_both_say() {
    let demo = Demo::new();
    let style = demo.style();
    let lay = |pairs: &[&str]| {
        let mut args = vec!["lay", text(&style), "--cloth", "oar-lining"];
        args.extend(["--seconds", "1", "--places", "50", "--fresh"]);
        args.extend(pairs.iter().flat_map(|pairs| ["--pairs", pairs]));
        let output = run(args);
        assert_eq!(code(&output), 0, "{}", stderr(&output));
        stdout(&output).lines().next().unwrap().to_owned()
    };
    let (twice, once) = (lay(&["32x32=1", "32x32 = 1"]), lay(&["32x32=2"]));
    assert_eq!(twice, once);
    assert!(twice.contains(" of 2 pairs: "), "{twice}");
    assert!(lay(&["32x32=1"]).contains(" of 1 pair: "));
}

#[test]
fn an_order_is_checked_and_said_to_be_one() {
    let demo = Demo::new();
    let file = demo.collection().join(style::demo::ORDER);
    let check = |more: &[&str]| run(["check", text(&file)].iter().chain(more));
    let fine = check(&[]);
    assert_eq!(code(&fine), 0, "{}", stderr(&fine));
    let words = stdout(&fine);
    assert!(
        words.contains("Spring run is an order: 62 pairs of 1 style"),
        "{words}"
    );
    assert!(words.contains("no errors"), "{words}");
    let json: serde_json::Value = serde_json::from_slice(&check(&["--json"]).stdout).unwrap();
    assert_eq!(
        (&json["errors"], &json["order"]["pairs"]),
        (&0.into(), &62.into())
    );
    assert!(refused(&["check", text(&file), "--measures"]).contains("is an order"));
    let order = fs::read_to_string(&file).unwrap();
    fs::write(&file, order.replacen("most_lays = 5", "most_lays = 1", 1)).unwrap();
    let tight = check(&[]);
    assert_eq!(code(&tight), 1);
    assert!(
        stdout(&tight).contains("error    tideline-14: no plan cuts"),
        "{}",
        stdout(&tight)
    );
    fs::write(&file, order.replacen("31x32", "35x32", 1)).unwrap();
    assert!(refused(&["check", text(&file)]).contains("not made in size 35x32"));
}

#[test]
fn what_is_named_in_place_of_another_is_answered_with_what_there_is() {
    let demo = Demo::new();
    let (style, order) = (demo.style(), demo.collection().join(style::demo::ORDER));
    for named in [style.clone(), demo.style_file(), demo.collection()] {
        let words = refused(&["plan", text(&named)]);
        assert!(
            words.contains("not an order") && words.contains("spring.toml"),
            "{words}"
        );
    }
    let words = refused(&["lay", text(&style), "--lay", "2"]);
    assert!(
        words.contains("this is a style") && words.contains("spring.toml"),
        "{words}"
    );
    let pieces = refused(&["pieces", text(&order)]);
    assert!(pieces.contains("is an order, not a style"), "{pieces}");
    assert!(pieces.contains("styles/ferryman"), "{pieces}");
    // No file is quoted that is not there.
    fs::remove_file(&order).unwrap();
    for words in [
        refused(&["plan", text(&style)]),
        refused(&["lay", text(&style), "--lay", "2"]),
    ] {
        assert!(!words.contains("spring.toml"), "{words}");
        assert!(words.contains("has no order yet"), "{words}");
    }
}

#[test]
fn options_that_say_nothing_are_refused() {
    let style = demo().style();
    let style = text(&style);
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    let order = demo().collection().join(style::demo::ORDER);
    let patterns = |kind: &str, more: &[&str]| {
        let base = ["patterns", style, "--kind", kind, "-o", text(&out)];
        refused(&[&base, more].concat())
    };
    assert!(patterns("dxf", &["--width", "90 cm"]).contains("--kind hpgl or roll"));
    assert!(patterns("roll", &["--paper", "a3"]).contains("--kind pdf"));
    assert!(patterns("svg", &["--nested"]).contains("--kind pdf or roll"));
    assert!(patterns("hpgl", &["--json"]).contains("--kind pdf or roll"));
    for more in [["--seconds", "5"], ["--seed", "2"], ["--places", "9"]] {
        refused(&[&["plan", text(&order), "--estimate"] as &[&str], &more].concat());
    }
    refused(&["demo", text(&out), "--no-bench", "--no-open"]);
    refused(&["bring", "x.dxf", "-o", style, "--json"]);
    refused(&["bring", "x.dxf", "--list", "--before-wash"]);
    let collection = demo().collection();
    let label = [
        "new",
        text(&collection),
        "--name",
        "Lighter",
        "--label",
        "Other",
    ];
    assert!(refused(&label).contains("is one already"));
    refused(&["lay", style, "--replace"]);
    assert!(!out.exists());
}

#[test]
fn lists_may_have_spaces() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("label");
    let output = run([
        "new",
        text(&place),
        "--name",
        "Teal",
        "--waists",
        "31, 32, 33",
        "--lengths",
        "30, 32",
    ]);
    assert_eq!(code(&output), 0, "{}", stderr(&output));
}

#[test]
fn nothing_in_a_file_steers_the_terminal() {
    let demo = Demo::new();
    let file = demo.style_file();
    let style = fs::read_to_string(&file).unwrap();
    let hostile = "\u{1b}[31m\u{202e}\u{9b}2J";
    fs::write(
        &file,
        style.replacen("[style]", &format!("# {hostile}\n[style] {hostile}"), 1),
    )
    .unwrap();
    let broken = refused(&["check", text(&demo.style())]);
    assert!(broken.contains("[31m"), "the line is shown: {broken}");
    // In what can be read: by an escape in the text, so that the name itself holds it.
    let name = style.replacen(
        "name = \"Ferryman\"",
        "name = \"Ferry\\u001b[31m\\u202eman\"",
        1,
    );
    assert_ne!(name, style);
    fs::write(&file, name).unwrap();
    let output = run(["check", text(&demo.style())]);
    for words in [broken, stdout(&output), stderr(&output)] {
        let steers =
            |c: &char| (c.is_control() && *c != '\n') || ('\u{202a}'..='\u{202e}').contains(c);
        assert_eq!(words.chars().find(steers), None, "{words:?}");
    }
}

#[test]
fn a_pattern_too_wide_for_its_roll_does_not_speak_of_a_pack() {
    let style = demo().style();
    let out = demo().root().join("rolled");
    let words = refused(&[
        "patterns",
        text(&style),
        "--kind",
        "roll",
        "--width",
        "20 cm",
        "--size",
        "32x32",
        "--band",
        "weft",
        "-o",
        text(&out),
    ]);
    assert!(words.contains("the roll is"), "{words}");
    assert!(!words.contains("pack"), "{words}");
}

/// Help is broken at the width of the terminal, never in the middle of a sentence before it.
#[test]
fn help_wraps_well() {
    let commands = [
        "", "demo", "check", "pieces", "draw", "pack", "lay", "patterns", "plan", "bench", "bring",
        "new", "history", "compare",
    ];
    for command in commands {
        for columns in [80, 100] {
            let mut program = fellwork();
            program.args([command, "--help"].iter().filter(|word| !word.is_empty()));
            let output = program
                .env("COLUMNS", columns.to_string())
                .output()
                .unwrap();
            let help = stdout(&output);
            let lines: Vec<&str> = help.lines().collect();
            for line in &lines {
                let wide = line.chars().count();
                assert!(
                    wide <= columns,
                    "{command} at {columns}: {wide} wide: {line}"
                );
            }
            // Prose begins at the margin: what follows a broken line did not fit on it.
            for two in lines.windows(2) {
                let prose = |line: &str| line.starts_with(|c: char| !c.is_whitespace());
                let goes_on = prose(two[0]) && prose(two[1]) && !two[0].ends_with(['.', ':', '{']);
                let word = two[1].split_whitespace().next().unwrap_or("");
                let fits = two[0].chars().count() + 1 + word.chars().count() <= columns;
                assert!(!(goes_on && fits), "{command} at {columns}: {two:?}");
            }
        }
    }
}

/// Running the demo in a clone leaves it as it was for git: its folder is ignored.
#[test]
fn the_folder_of_the_demo_is_ignored() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let ignored = fs::read_to_string(root.join(".gitignore")).unwrap();
    let help = stdout(&run(["demo", "--help"]));
    assert!(help.contains("[default: saltmarsh]"), "{help}");
    assert!(
        ignored.lines().any(|line| line == "/saltmarsh"),
        "{ignored}"
    );
}
