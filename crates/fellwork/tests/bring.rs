//! `fellwork bring`: a pattern of another hand comes in whole, or is answered in words and nothing is written.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::{Path, PathBuf};

use common::{Demo, code, fellwork, run, stderr, stdout};

fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../suite/tests/data")
        .join(name)
}

/// Every file of a style's folder with its bytes.
fn state(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut out = Vec::new();
    let mut open = vec![folder.to_path_buf()];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            // Looking alone keeps the version that is there.
            if path.ends_with(style::REVISIONS_FOLDER) {
                continue;
            }
            if path.is_dir() {
                out.push((path.clone(), Vec::new()));
                open.push(path);
            } else {
                out.push((path.clone(), fs::read(&path).unwrap()));
            }
        }
    }
    out.sort();
    out
}

#[test]
fn what_is_in_a_file_is_listed() {
    let file = fixture("harbour.dxf");
    let output = run([
        "bring".as_ref(),
        file.as_os_str(),
        "--list".as_ref(),
        "--size".as_ref(),
        "32x32".as_ref(),
    ]);
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    let text = stdout(&output);
    for words in [
        "harbour.dxf: 3 pieces",
        "\"FRENTE\" in 32x32",
        "taken for the front by its name",
        "taken for the back by its name",
        "taken for the yoke by its name",
        "outline is sewn along",
        "grain at 90.0°",
        "806.7 mm   inseam",
        "229.6 mm   lower",
    ] {
        assert!(text.contains(words), "{words} in\n{text}");
    }
}

#[test]
fn a_pattern_comes_in_and_everything_follows() {
    let demo = Demo::new();
    let (file, style) = (fixture("harbour.dxf"), demo.style());
    let output = run([
        "bring".as_ref(),
        file.as_os_str(),
        "-o".as_ref(),
        style.as_os_str(),
        "--size".as_ref(),
        "32x32".as_ref(),
    ]);
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    let told = stdout(&output);
    assert!(
        told.contains("3 pieces of harbour.dxf are brought into"),
        "{told}"
    );
    assert!(
        told.contains("the style is now made in 32x32, as the pattern is"),
        "{told}"
    );
    let text = fs::read_to_string(demo.style_file()).unwrap();
    assert!(
        text.contains(
            "[pattern.front]\npiece = \"FRENTE\"   # guessed by its name: please confirm"
        ),
        "{text}"
    );
    // The file as it came lies beside its outlines.
    let kept = demo.style().join("pattern/harbour.dxf");
    assert_eq!(fs::read(kept).unwrap(), fs::read(&file).unwrap());
    let checked = run(["check".as_ref(), style.as_os_str(), "--measures".as_ref()]);
    let said = stdout(&checked);
    assert!(said.contains("pattern::measure"), "{said}");
    let view = demo.root().join("front.svg");
    let drawn = run([
        "draw".as_ref(),
        style.as_os_str(),
        "--view".as_ref(),
        "front".as_ref(),
        "--face".as_ref(),
        "outside".as_ref(),
        "-o".as_ref(),
        view.as_os_str(),
    ]);
    assert_eq!(code(&drawn), 0, "{}", stderr(&drawn));
    assert!(fs::metadata(view).unwrap().len() > 10_000);
}

/// What is done to the file, what is asked beside it, and what is then said.
fn refused(name: &str, bytes: &[u8], more: &[&str], words: &[&str]) {
    let demo = Demo::new();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join(name);
    fs::write(&file, bytes).unwrap();
    let style = demo.style();
    let before = state(&style);
    let mut args = vec![
        "bring".as_ref(),
        file.as_os_str(),
        "-o".as_ref(),
        style.as_os_str(),
    ];
    args.extend(more.iter().map(std::ffi::OsStr::new));
    let output = run(args);
    let said = stderr(&output);
    assert_eq!(code(&output), 2, "{said}");
    // Lines are broken to fit, so words are looked for without regard to where.
    let flat: String = said
        .replace(['│', '╰', '╭', '─', '▶', '×'], " ")
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    for word in words {
        assert!(flat.contains(word), "{word} in\n{said}");
    }
    assert!(output.stdout.is_empty());
    assert_eq!(state(&style), before, "nothing may be written");
}

#[test]
fn what_is_wrong_is_said_and_nothing_is_written() {
    let whole = fs::read(fixture("harbour.dxf")).unwrap();
    let text = String::from_utf8(whole.clone()).unwrap();
    let size: &[&str] = &["--size", "32x32"];
    refused("a.dxf", b"", size, &["a.dxf cannot be brought"]);
    refused(
        "a.dxf",
        b"AutoCAD Binary DXF\r\n\x1a\0",
        size,
        &["a.dxf cannot be brought", "binary"],
    );
    refused(
        "a.dxf",
        &whole[..whole.len() / 2],
        size,
        &["a.dxf cannot be brought", "line "],
    );
    refused(
        "a.pdf",
        &whole,
        size,
        &[
            "it is no kind of pattern file that can be brought",
            "bring a .dxf or .svg file",
        ],
    );
    refused(
        "a.dxf",
        &whole,
        &["--size", "M=32x32"],
        &[
            "\"32\" is not a size of waist and length",
            "--size \"32=32x32\"",
        ],
    );
    refused(
        "a.dxf",
        &whole,
        &["--size", "34x32"],
        &[
            "the chart is stated at 32x32, and the pattern holds 34x32",
            "state the chart and the base at a size the pattern holds",
        ],
    );
    let nameless = text
        .replace("FRENTE", "P01")
        .replace("COSTAS", "P02")
        .replace("PALA", "P03");
    refused(
        "a.dxf",
        nameless.as_bytes(),
        size,
        &[
            "no piece is made out as the yoke",
            "--piece front=\"NAME\" names a piece",
        ],
    );
    refused(
        "a.dxf",
        &whole,
        &["--size", "32x32", "--piece", "front=PALA"],
        &[
            "\"PALA\" is left aside",
            "no piece is made out as the front",
        ],
    );
    let cut = fs::read(fixture("harbour_cut.dxf")).unwrap();
    refused(
        "a.dxf",
        &cut,
        size,
        &[
            "has no line it is sewn along, only the one it is cut along",
            "allowance = \"1 cm\"",
        ],
    );
}

/// What has no end is never opened: these would wait or read for ever.
#[cfg(unix)]
#[test]
fn a_pipe_a_device_and_a_folder_are_no_pattern() {
    let demo = Demo::new();
    let folder = tempfile::tempdir().unwrap();
    let (pipe, device, other) = (
        folder.path().join("pipe.dxf"),
        folder.path().join("zero.svg"),
        folder.path().join("folder.dxf"),
    );
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.unwrap().success());
    std::os::unix::fs::symlink("/dev/zero", &device).unwrap();
    fs::create_dir(&other).unwrap();
    let before = state(&demo.style());
    for (file, words) in [
        (&pipe, "it is a pipe, not a file"),
        (&device, "it is a device, not a file"),
        (&other, "it is a folder, not a file"),
    ] {
        for more in [vec!["--list"], vec!["-o", demo.style().to_str().unwrap()]] {
            let output = fellwork()
                .arg("bring")
                .arg(file)
                .args(more)
                .output()
                .unwrap();
            assert_eq!(code(&output), 2);
            assert!(stderr(&output).contains(words), "{}", stderr(&output));
        }
    }
    assert_eq!(state(&demo.style()), before);
}

#[test]
fn a_style_that_is_not_there_is_to_be_begun() {
    let demo = Demo::new();
    let style = demo.collection().join("styles/harbour");
    for style in [style.clone(), style.join("style.toml")] {
        let output = fellwork()
            .arg("bring")
            .arg(fixture("harbour.dxf"))
            .arg("-o")
            .arg(&style)
            .output()
            .unwrap();
        assert_eq!(code(&output), 2);
        let said = stderr(&output);
        let begin = format!("fellwork new {}", demo.collection().display());
        let flat: String = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("there is no style in"), "{said}");
        assert!(
            flat.replace(['│', ' '], "")
                .contains(&begin.replace(' ', "")),
            "{said}"
        );
        assert!(said.contains("--folder \"harbour\""), "{said}");
    }
    assert!(!style.exists());
}
