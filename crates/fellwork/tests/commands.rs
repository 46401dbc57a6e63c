//! Every command on the demo, as a person runs it.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Command, Stdio};
use std::time::Duration;

use common::{Demo, code, demo, fellwork, names, run, stderr, stdout};
use serde_json::Value;

#[test]
fn help_has_examples_and_the_exit_codes() {
    let help = run(["--help"]);
    assert_eq!(code(&help), 0);
    let text = stdout(&help);
    for word in [
        "demo",
        "check",
        "pieces",
        "draw",
        "pack",
        "bench",
        "new",
        "Examples:",
        "Exit codes:",
    ] {
        assert!(text.contains(word), "{word}");
    }
    for command in ["demo", "check", "pieces", "draw", "pack", "bench", "new"] {
        assert_eq!(code(&run([command, "--help"])), 0, "{command}");
    }
    assert_eq!(code(&run::<&str>([])), 2);
    assert_eq!(code(&run(["sew"])), 2);
}

#[test]
fn the_demo_is_written_once_and_used_again() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("demo");
    let demo = || {
        fellwork()
            .args(["demo", "--no-bench"])
            .arg(&place)
            .output()
            .unwrap()
    };
    let first = demo();
    assert_eq!(code(&first), 0, "{}", stderr(&first));
    assert!(stdout(&first).contains("ferryman.pdf"));
    let pdf = place.join("styles/ferryman/ferryman.pdf");
    assert!(std::fs::read(&pdf).unwrap().starts_with(b"%PDF-"));
    // The maker's own change stays.
    let style = place.join("styles/ferryman/style.toml");
    let text = std::fs::read_to_string(&style).unwrap() + "# mine\n";
    std::fs::write(&style, &text).unwrap();
    let second = demo();
    assert_eq!(code(&second), 0, "{}", stderr(&second));
    assert_eq!(std::fs::read_to_string(&style).unwrap(), text);
}

#[test]
fn the_demo_does_not_overwrite_another_folder() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("letter.txt"), "mine").unwrap();
    let output = fellwork()
        .args(["demo", "--no-bench"])
        .arg(folder.path())
        .output()
        .unwrap();
    assert_eq!(code(&output), 2);
    assert!(
        stderr(&output).contains("is there already"),
        "{}",
        stderr(&output)
    );
    assert_eq!(names(folder.path()), ["letter.txt"]);
}

#[test]
fn check_finds_no_error_in_the_demo() {
    let output = fellwork()
        .arg("check")
        .arg(demo().style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 0, "{}{}", stdout(&output), stderr(&output));
    assert!(stdout(&output).contains("27 sizes"));
    assert!(stdout(&output).contains("no errors"));
}

#[test]
fn check_prints_every_measure_of_every_size() {
    let output = fellwork()
        .args(["check", "--json", "--measures"])
        .arg(demo().style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 0);
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["errors"], 0);
    assert_eq!(answer["sizes"].as_array().unwrap().len(), 27);
    let measures = answer["measures"].as_array().unwrap();
    assert_eq!(measures.len(), 27 * style::MeasureId::ALL.len());
    for row in measures {
        let off = row["difference_mm"].as_f64().unwrap();
        assert!(off.abs() <= 0.01, "{row}");
    }
    for finding in answer["findings"].as_array().unwrap() {
        assert!(
            !finding["sizes"].as_array().unwrap().is_empty(),
            "{finding}"
        );
    }
    let table = fellwork()
        .args(["check", "--measures"])
        .arg(demo().style())
        .output()
        .unwrap();
    let rows = stdout(&table)
        .lines()
        .filter(|line| line.starts_with("34x30"))
        .count();
    assert_eq!(rows, style::MeasureId::ALL.len());
}

#[test]
fn check_says_what_is_muted_and_does_not_count_it() {
    let muted = "[[muted]]\ncode = \"sewing::hem-bulk\"\nabout = \"seam:hem\"\nreason = \"it is hammered flat\"\n\n[bartacks]";
    let demo = Demo::with("[bartacks]", muted);
    let check = |more: &[&str]| {
        let output = fellwork()
            .arg("check")
            .args(more)
            .arg(demo.style())
            .output()
            .unwrap();
        assert_eq!(code(&output), 0, "{}", stdout(&output));
        output
    };
    let text = stdout(&check(&[]));
    assert!(text.contains("muted: it is hammered flat"), "{text}");
    assert!(text.trim_end().ends_with(", 1 muted"), "{text}");
    let answer: Value = serde_json::from_slice(&check(&["--json"]).stdout).unwrap();
    let findings = answer["findings"].as_array().unwrap();
    let muted: Vec<&Value> = findings.iter().filter(|f| f["muted"].is_string()).collect();
    assert_eq!(muted.len(), 1);
    assert_eq!(muted[0]["code"], "sewing::hem-bulk");
    let counted = ["errors", "warnings", "notes"].map(|grade| answer[grade].as_u64().unwrap());
    assert_eq!(counted.iter().sum::<u64>() as usize, findings.len() - 1);
}

#[test]
fn check_tells_an_error_by_its_exit_code() {
    // No thigh of 40 cm goes with a seat of 101.6 cm.
    let broken = Demo::with("value = \"24 1/2 in\"", "value = \"40 cm\"");
    let output = fellwork()
        .arg("check")
        .arg(broken.style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 1, "{}", stdout(&output));
    let text = stdout(&output);
    assert!(
        text.contains("fit::conflict") && text.contains("every size"),
        "{text}"
    );
    // The gravest stands first.
    let first = text.lines().nth(2).unwrap();
    assert!(first.starts_with("error"), "{first}");
    let json = fellwork()
        .args(["check", "--json"])
        .arg(broken.style())
        .output()
        .unwrap();
    assert_eq!(code(&json), 1);
    let answer: Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(answer["findings"][0]["severity"], "error");
}

#[test]
fn what_follows_from_a_conflict_is_folded_under_it() {
    let broken = Demo::with("value = \"24 1/2 in\"", "value = \"42 in\"");
    let check = |more: &[&str]| {
        let output = fellwork()
            .arg("check")
            .args(more)
            .arg(broken.style())
            .output()
            .unwrap();
        assert_eq!(code(&output), 1);
        stdout(&output)
    };
    let text = check(&[]);
    assert!(text.contains("what would help: set thigh to"), "{text}");
    assert!(text.contains("goes with it: error"), "{text}");
    assert!(text.contains("\n1 error, "), "{text}");
    let answer: Value = serde_json::from_str(&check(&["--json"])).unwrap();
    assert_eq!(answer["errors"], 1);
    let conflict = &answer["findings"][0];
    assert_eq!(conflict["code"], "fit::conflict");
    assert!(!conflict["followers"].as_array().unwrap().is_empty());
    let others = &answer["findings"].as_array().unwrap()[1..];
    assert!(
        others.iter().all(|f| f["severity"] != "error"),
        "{others:?}"
    );
}

#[test]
fn a_drawing_is_the_same_printed_and_written() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("back.svg");
    let draw = |output: &std::path::Path| {
        let words = [
            "--view", "back", "--face", "inside", "--size", "34x30", "-o",
        ];
        fellwork()
            .arg("draw")
            .arg(demo().style())
            .args(words)
            .arg(output)
            .output()
            .unwrap()
    };
    let written = draw(&file);
    assert_eq!(code(&written), 0, "{}", stderr(&written));
    assert_eq!(stdout(&written), "");
    let printed = draw("-".as_ref());
    assert!(std::fs::read(&file).unwrap() == printed.stdout);
    let svg = stdout(&printed);
    assert!(
        svg.starts_with("<svg ") && svg.contains("34x30") && svg.trim_end().ends_with("</svg>")
    );
    assert_eq!(names(folder.path()), ["back.svg"]);
}

#[test]
fn a_size_the_style_is_not_made_in_is_answered_with_its_sizes() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("f.svg");
    let output = fellwork()
        .arg("draw")
        .arg(demo().style())
        .args([
            "--view", "front", "--face", "outside", "--size", "35x32", "-o",
        ])
        .arg(&file)
        .output()
        .unwrap();
    assert_eq!(code(&output), 2);
    assert!(
        stderr(&output).contains("28, 29, 30"),
        "{}",
        stderr(&output)
    );
    assert!(!file.exists());
    let nonsense = fellwork()
        .arg("pieces")
        .arg(demo().style())
        .args(["--size", "large"])
        .output()
        .unwrap();
    assert_eq!(code(&nonsense), 2);
    assert!(
        stderr(&nonsense).contains("waist x length"),
        "{}",
        stderr(&nonsense)
    );
}

#[test]
fn the_pack_of_a_date_is_always_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let pack = |name: &str| {
        let file = folder.path().join(name);
        let output = fellwork()
            .arg("pack")
            .arg(demo().style())
            .args(["--date", "2026-11-25", "-o"])
            .arg(&file)
            .output()
            .unwrap();
        assert_eq!(code(&output), 0, "{}", stderr(&output));
        std::fs::read(file).unwrap()
    };
    let first = pack("a.pdf");
    assert!(first.starts_with(b"%PDF-"));
    assert!(first == pack("b.pdf"));
    assert_eq!(names(folder.path()), ["a.pdf", "b.pdf"]);
}

#[test]
fn an_output_that_cannot_be_written_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    for place in [
        folder.path().join("no/such/f.svg"),
        folder.path().to_path_buf(),
    ] {
        let output = fellwork()
            .arg("draw")
            .arg(demo().style())
            .args(["--view", "front", "--face", "outside", "-o"])
            .arg(&place)
            .output()
            .unwrap();
        assert_eq!(code(&output), 2);
        assert_eq!(
            stderr(&output).matches("os error").count(),
            usize::from(place.ends_with("f.svg")),
            "said once"
        );
        assert!(
            stderr(&output).contains("cannot be written"),
            "{}",
            stderr(&output)
        );
    }
    assert_eq!(names(folder.path()), Vec::<String>::new());
}

#[test]
fn a_new_style_begins_in_a_new_collection_and_in_one_that_is_there() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("harbour");
    let new = |name: &str| {
        fellwork()
            .arg("new")
            .arg(&place)
            .args(["--name", name])
            .output()
            .unwrap()
    };
    let first = new("Harbour Wide");
    assert_eq!(code(&first), 0, "{}", stderr(&first));
    let second = new("Lighter");
    assert_eq!(code(&second), 0, "{}", stderr(&second));
    assert_eq!(names(&place.join("styles")), ["harbour-wide", "lighter"]);
    let again = new("Lighter");
    assert_eq!(code(&again), 2);
    let check = fellwork()
        .arg("check")
        .arg(place.join("styles/lighter"))
        .output()
        .unwrap();
    assert_eq!(code(&check), 0, "{}", stderr(&check));
    assert!(stdout(&check).contains("L-1 Lighter"));
}

#[test]
fn a_label_in_any_script_has_folders_and_codes_of_its_own() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("葦の岸");
    let new = |name: &str, more: &[&str]| {
        fellwork()
            .arg("new")
            .arg(&place)
            .args(["--name", name])
            .args(more)
            .output()
            .unwrap()
    };
    for (name, more) in [
        (
            "渡し舟",
            &["--label", "葦の岸", "--workroom", "堰", "--origin", "Japan"][..],
        ),
        ("渡り鳥", &[]),
        ("★", &["--folder", "hoshi"]),
    ] {
        let output = new(name, more);
        assert_eq!(code(&output), 0, "{}", stderr(&output));
    }
    assert_eq!(names(&place.join("styles")), ["hoshi", "渡し舟", "渡り鳥"]);
    let said = |style: &str| {
        let check = fellwork()
            .arg("check")
            .arg(place.join("styles").join(style))
            .output()
            .unwrap();
        assert_eq!(code(&check), 0, "{}", stderr(&check));
        stdout(&check)
    };
    let first = said("渡し舟");
    assert!(first.contains("渡-1 渡し舟"), "{first}");
    assert!(
        !first.contains("workroom-open") && !first.contains("label-open"),
        "{first}"
    );
    assert!(said("渡り鳥").contains("渡-2 渡り鳥"));
    // Nameless, taken and not asked for are said.
    for (name, more, words) in [
        ("★", &[][..], "--folder"),
        ("Heron", &["--code", "渡-1"], "has the code"),
        (
            "Heron",
            &["--workroom", "The Weir"],
            "is a collection already",
        ),
    ] {
        let output = new(name, more);
        assert_eq!(code(&output), 2);
        let flat: String = stderr(&output)
            .replace('│', " ")
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        assert!(flat.contains(words), "{flat}");
    }
    // What only the maker knows is open, and said to be.
    let own = folder.path().join("own");
    let output = fellwork()
        .arg("new")
        .arg(&own)
        .args(["--name", "Bittern"])
        .output()
        .unwrap();
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    let check = fellwork()
        .arg("check")
        .arg(own.join("styles/bittern"))
        .output()
        .unwrap();
    assert_eq!(code(&check), 0);
    for found in [
        "sewing::workroom-open",
        "sewing::patch-open",
        "sewing::label-open",
    ] {
        assert!(stdout(&check).contains(found), "{}", stdout(&check));
    }
}

#[test]
fn a_collection_named_for_a_style_is_answered_with_its_styles() {
    let output = fellwork()
        .arg("check")
        .arg(demo().collection())
        .output()
        .unwrap();
    assert_eq!(code(&output), 2);
    assert!(stderr(&output).contains("ferryman"), "{}", stderr(&output));
}

#[test]
fn the_bench_answers_on_this_machine_until_it_is_ended() {
    let own = Demo::new();
    let mut child = fellwork()
        .arg("bench")
        .arg(own.collection())
        .args(["--port", "0", "--no-open"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut line = String::new();
    BufReader::new(child.stdout.take().unwrap())
        .read_line(&mut line)
        .unwrap();
    let rest = line.split("http://").nth(1).unwrap().trim();
    let (address, path) = rest.split_once('/').unwrap();
    assert!(address.starts_with("127.0.0.1:"), "{address}");
    let mut stream = TcpStream::connect(address).unwrap();
    let request = format!("GET /{path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n");
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(
        answer.starts_with("HTTP/1.1 200") || answer.starts_with("HTTP/1.1 303"),
        "{answer}"
    );
}

#[test]
fn the_bench_needs_a_collection_or_room_for_one() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("letters.txt"), "something else").unwrap();
    let output = fellwork()
        .arg("bench")
        .arg(folder.path())
        .arg("--no-open")
        .output()
        .unwrap();
    assert_eq!(code(&output), 2);
    assert!(
        stderr(&output).contains("collection.toml"),
        "{}",
        stderr(&output)
    );
}

#[test]
fn a_reader_that_stops_listening_is_no_error() {
    let mut child = fellwork()
        .args(["pieces", "--json"])
        .arg(demo().style())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // One byte is read and the pipe closed, long before the answer ends.
    let mut out = child.stdout.take().unwrap();
    out.read_exact(&mut [0]).unwrap();
    drop(out);
    let output = child.wait_with_output().unwrap();
    assert_eq!((code(&output), stderr(&output).as_str()), (0, ""));
}

/// Who interrupts a long search gets the lay there is, written whole.
#[cfg(target_os = "linux")]
#[test]
fn an_interrupted_search_for_a_lay_writes_what_it_found() {
    let demo = Demo::new();
    let drawing = demo.root().join("lay.svg");
    let mut search = fellwork();
    search.arg("lay").arg(demo.style());
    search.args(["--cloth", "tideline-14", "--seconds", "3600", "-o"]);
    let search = search
        .arg(&drawing)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let search = search.spawn().unwrap();
    let pid = search.id().to_string();
    // Before it listens an interrupt would just end it.
    let status = format!("/proc/{pid}/status");
    let listens = || {
        let status = fs::read_to_string(&status).unwrap();
        let caught = status.lines().find_map(|line| line.strip_prefix("SigCgt:"));
        let caught = u64::from_str_radix(caught.unwrap().trim(), 16).unwrap();
        caught & 1 << (2 - 1) != 0
    };
    while !listens() {
        std::thread::sleep(Duration::from_millis(20));
    }
    assert!(!drawing.exists(), "something is written before the end");
    assert!(
        Command::new("kill")
            .args(["-INT", &pid])
            .status()
            .unwrap()
            .success()
    );
    let output = search.wait_with_output().unwrap();
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    assert!(
        stderr(&output).starts_with("cancelled"),
        "{}",
        stderr(&output)
    );
    assert!(stdout(&output).contains("no lay is shorter than"));
    assert!(
        fs::read_to_string(&drawing)
            .unwrap()
            .trim_end()
            .ends_with("</svg>")
    );
}
