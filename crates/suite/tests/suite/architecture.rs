//! The rules of the house. Each is a fact about the workspace, read from cargo or from the source.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::process::Command;

use serde_json::Value;
use suite::source::{self, Source, files_below, root, rust_files, shown};

/// Which rooms a room may stand on. ARCHITECTURE.md draws the same arrows.
const ARROWS: &[(&str, &[&str])] = &[
    ("words", &[]),
    ("store", &[]),
    ("trade", &["words"]),
    ("geometry", &["trade"]),
    ("lay", &["geometry", "trade"]),
    ("style", &["store", "trade", "words"]),
    ("draft", &["geometry", "style", "trade", "words"]),
    ("sewing", &["draft", "geometry", "style", "trade", "words"]),
    ("flat", &["draft", "geometry", "sewing", "trade"]),
    (
        "cutting",
        &[
            "draft", "geometry", "lay", "sewing", "style", "trade", "words",
        ],
    ),
    (
        "spreading",
        &[
            "cutting", "geometry", "lay", "sewing", "style", "trade", "words",
        ],
    ),
    (
        "patterns",
        &[
            "cutting", "draft", "geometry", "lay", "sewing", "trade", "words",
        ],
    ),
    ("intake", &["geometry", "patterns", "style", "trade"]),
    (
        "drawing",
        &[
            "draft", "flat", "geometry", "sewing", "style", "trade", "words",
        ],
    ),
    (
        "look",
        &[
            "draft", "flat", "geometry", "sewing", "style", "trade", "words",
        ],
    ),
    (
        "cut_sheets",
        &[
            "cutting", "draft", "drawing", "geometry", "lay", "sewing", "style", "trade", "words",
        ],
    ),
    (
        "papers",
        &[
            "cut_sheets",
            "cutting",
            "draft",
            "drawing",
            "geometry",
            "lay",
            "sewing",
            "style",
            "trade",
            "words",
        ],
    ),
    (
        "jobs",
        &[
            "cut_sheets",
            "cutting",
            "drawing",
            "flat",
            "geometry",
            "intake",
            "lay",
            "look",
            "papers",
            "patterns",
            "sewing",
            "spreading",
            "style",
            "trade",
            "words",
        ],
    ),
    (
        "answers",
        &[
            "cutting",
            "draft",
            "geometry",
            "intake",
            "jobs",
            "lay",
            "papers",
            "sewing",
            "spreading",
            "style",
            "trade",
            "words",
        ],
    ),
    (
        "bench",
        &[
            "cut_sheets",
            "cutting",
            "draft",
            "drawing",
            "flat",
            "intake",
            "jobs",
            "lay",
            "papers",
            "sewing",
            "spreading",
            "style",
            "trade",
            "words",
        ],
    ),
    (
        "fellwork",
        &[
            "answers",
            "bench",
            "cut_sheets",
            "cutting",
            "draft",
            "drawing",
            "geometry",
            "intake",
            "jobs",
            "lay",
            "look",
            "papers",
            "patterns",
            "sewing",
            "spreading",
            "style",
            "trade",
            "words",
        ],
    ),
    (
        "suite",
        &[
            "answers",
            "cut_sheets",
            "cutting",
            "draft",
            "drawing",
            "geometry",
            "lay",
            "papers",
            "sewing",
            "style",
            "trade",
            "words",
        ],
    ),
];

/// What reaches out of the program, and the rooms that may.
const OUTWARD: &[(&[&str], &[&str])] = &[
    // The collection's files; whether somebody else changed one; what the command line is told to write.
    (
        &["std::fs", "fs::"],
        &["store", "style", "bench", "fellwork", "suite"],
    ),
    (&["std::env", "env::var"], &["fellwork", "suite"]),
    (&["std::process"], &["fellwork", "suite", "store"]),
    // A clock: how long a change took, today's date, when a file was saved, and when a search for a lay has had its time.
    (
        &["SystemTime", "Instant", "Zoned", "Timestamp::now"],
        &["bench", "fellwork", "lay", "store", "suite"],
    ),
    (
        &["std::thread", "thread::spawn", "rayon::"],
        &["bench", "fellwork", "lay", "look", "suite"],
    ),
    (&["std::net", "tokio::"], &["bench", "suite"]),
];

fn metadata() -> Value {
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--no-deps"])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(output.status.success());
    serde_json::from_slice(&output.stdout).unwrap()
}

/// Every room, and the rooms it names among its ordinary dependencies.
fn arrows() -> BTreeMap<String, BTreeSet<String>> {
    let metadata = metadata();
    let packages = metadata["packages"].as_array().unwrap();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    packages
        .iter()
        .map(|package| {
            let on = package["dependencies"].as_array().unwrap().iter();
            let rooms = on
                .filter(|dependency| dependency["path"].is_string() && dependency["kind"].is_null())
                .map(|dependency| text(&dependency["name"]));
            (text(&package["name"]), rooms.collect())
        })
        .collect()
}

#[test]
fn only_the_stated_arrows_exist() {
    let stated: BTreeMap<String, BTreeSet<String>> = ARROWS
        .iter()
        .map(|(room, on)| {
            (
                room.to_string(),
                on.iter().map(ToString::to_string).collect(),
            )
        })
        .collect();
    assert_eq!(arrows(), stated);
}

#[test]
fn the_drawn_arrows_are_the_stated_ones() {
    let page = fs::read_to_string(root().join("ARCHITECTURE.md")).unwrap();
    for (room, on) in ARROWS {
        let on = if on.is_empty() {
            "–".to_owned()
        } else {
            on.join(", ")
        };
        let row = format!("| `{room}` | {on} |");
        assert!(
            page.contains(&row),
            "ARCHITECTURE.md has no row that begins {row}"
        );
    }
}

#[test]
fn only_the_outer_rooms_reach_outward() {
    let mut wrong = Vec::new();
    for file in rust_files("src") {
        for (words, rooms) in OUTWARD {
            if rooms.contains(&file.room.as_str()) {
                continue;
            }
            let found = file
                .code()
                .filter(|line| words.iter().any(|word| line.contains(word)));
            wrong.extend(found.map(|line| format!("{}: {}", file.path, line.trim())));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn only_geometry_names_kurbo() {
    for file in rust_files("src")
        .iter()
        .filter(|file| file.room != "geometry")
    {
        let named = file.code().find(|line| line.contains("kurbo"));
        assert_eq!(named, None, "{}", file.path);
    }
    for room in ARROWS
        .iter()
        .map(|(room, _)| *room)
        .filter(|room| *room != "geometry")
    {
        let manifest = root().join("crates").join(room).join("Cargo.toml");
        assert!(
            !fs::read_to_string(manifest).unwrap().contains("kurbo"),
            "{room}"
        );
    }
}

#[test]
fn drawing_knows_no_paper_and_trade_no_style() {
    let words: &[(&str, &[&str])] = &[
        ("drawing", &["typst", "pdf"]),
        ("trade", &["toml", "StyleDoc"]),
        ("draft", &["yarn"]),
    ];
    for (room, forbidden) in words {
        for file in rust_files("src").iter().filter(|file| file.room == *room) {
            let found = file
                .code()
                .find(|line| forbidden.iter().any(|word| line.contains(word)));
            assert_eq!(found, None, "{}", file.path);
        }
    }
}

#[test]
fn a_long_file_says_why() {
    const LONG: usize = 800;
    let files = ["src", "tests"].into_iter().flat_map(rust_files);
    for file in files {
        let lines = file.text.lines().count();
        let says = file
            .text
            .lines()
            .take(12)
            .any(|line| line.starts_with("//! Long because"));
        assert!(
            lines <= LONG || says,
            "{} has {lines} lines and no line \"//! Long because ...\" at its top",
            file.path
        );
    }
}

#[test]
fn files_are_of_one_idea_each() {
    let mut lengths: Vec<usize> = rust_files("src")
        .iter()
        .map(|f| f.text.lines().count())
        .collect();
    lengths.sort_unstable();
    let median = lengths[lengths.len() / 2];
    assert!(median < 250, "the median file has {median} lines");
}

/// Whether a line writes out a number such as a thousandth of a thousandth.
fn has_small_number(line: &str) -> bool {
    line.match_indices("e-").any(|(at, _)| {
        let before = line[..at].chars().next_back();
        let after = line[at + 2..].chars().next();
        before.is_some_and(|c| c.is_ascii_digit()) && after.is_some_and(|c| c.is_ascii_digit())
    })
}

#[test]
fn small_numbers_have_names() {
    // How near counts as the same is decided once, in geometry::tolerance, or said beside a name of the room's own.
    for file in rust_files("src") {
        let bare = file
            .code()
            .find(|line| has_small_number(line) && !line.contains("const "));
        assert_eq!(bare, None, "{}", file.path);
    }
}

#[test]
fn every_room_opens_with_a_paragraph() {
    for (room, _) in ARROWS {
        let src = root().join("crates").join(room).join("src");
        let first = ["lib.rs", "main.rs"].map(|name| src.join(name));
        let first = first.iter().find(|file| file.is_file()).unwrap();
        let text = fs::read_to_string(first).unwrap();
        let opening: Vec<&str> = text
            .lines()
            .take_while(|line| line.starts_with("//!"))
            .collect();
        assert!(
            opening.len() >= 4,
            "{} opens with {} lines",
            shown(first),
            opening.len()
        );
    }
}

#[test]
fn nothing_is_left_for_later() {
    // In two halves, so that this file does not find itself.
    let words = [
        ("TO", "DO"),
        ("FIX", "ME"),
        ("XX", "X"),
        ("dbg", "!("),
        ("unimplemented", "!"),
    ];
    let words = words.map(|(a, b)| format!("{a}{b}"));
    let folders = ["src", "tests", "benches", "examples", "assets"];
    for (room, _) in ARROWS {
        for folder in folders {
            for file in files_below(&root().join("crates").join(room).join(folder)) {
                let Ok(text) = fs::read_to_string(&file) else {
                    continue; // a font or a picture
                };
                let found = words.iter().find(|word| text.contains(word.as_str()));
                assert_eq!(found, None, "{}", shown(&file));
            }
        }
    }
}

#[test]
fn unsafe_is_forbidden_and_every_room_keeps_the_lints() {
    let top = fs::read_to_string(root().join("Cargo.toml")).unwrap();
    assert!(top.contains("unsafe_code = \"forbid\"") && top.contains("unwrap_used = \"warn\""));
    for (room, _) in ARROWS {
        let manifest = root().join("crates").join(room).join("Cargo.toml");
        let text = fs::read_to_string(&manifest).unwrap();
        assert!(
            text.contains("[lints]\nworkspace = true"),
            "{}",
            shown(&manifest)
        );
    }
}

/// Lints that a file of the program switches off with no reason beside it.
fn silenced(file: &Source) -> Vec<String> {
    let code: Vec<&str> = file.code().collect();
    code.iter()
        .filter(|line| line.contains("allow(clippy::unwrap_used") || line.contains("allow(unsafe"))
        .map(|line| format!("{}: {}", file.path, line.trim()))
        .collect()
}

#[test]
fn unwrapping_is_for_tests() {
    let wrong: Vec<String> = rust_files("src").iter().flat_map(silenced).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    // Expecting is unwrapping with a word; only this crate, which is all test, does it.
    for file in rust_files("src").iter().filter(|file| file.room != "suite") {
        let found = file.code().find(|line| line.contains(".expect(\""));
        assert_eq!(found, None, "{}", file.path);
    }
}

#[test]
fn every_dependency_has_its_reason_and_licence() {
    let page = fs::read_to_string(source::root().join("ARCHITECTURE.md")).unwrap();
    let metadata = metadata();
    let mut names = BTreeSet::new();
    for package in metadata["packages"].as_array().unwrap() {
        for dependency in package["dependencies"].as_array().unwrap() {
            if dependency["path"].is_null() {
                names.insert(dependency["name"].as_str().unwrap().to_owned());
            }
        }
    }
    for name in names {
        assert!(
            page.contains(&format!("| `{name}` |")),
            "ARCHITECTURE.md says nothing of {name}"
        );
    }
}

/// The tests that the tables of ARCHITECTURE.md name in their second column.
fn named_tests() -> Vec<String> {
    let page = fs::read_to_string(root().join("ARCHITECTURE.md")).unwrap();
    let held = page
        .split("\n## ")
        .find(|part| part.starts_with("What always holds"))
        .expect("the page says what always holds");
    let rows = held.lines().filter(|line| line.starts_with("| "));
    rows.filter_map(|row| row.rsplit(" | ").next())
        .flat_map(|by| by.split('`').skip(1).step_by(2))
        .map(str::to_owned)
        .collect()
}

/// Whether a test that is called as the page calls it is there: a file or folder below `crates`, or a room and the modules
/// of its own or of its tests, with the function where one is named.
fn exists(name: &str) -> bool {
    let crates = root().join("crates");
    let found = |path: &str| {
        let path = crates.join(path);
        path.exists() || path.with_extension("rs").exists()
    };
    if name.contains('/') {
        return found(name);
    }
    let parts: Vec<&str> = name.split("::").collect();
    let [room, inner @ ..] = &parts[..] else {
        return false;
    };
    let below = crates.join(room);
    let Some(last) = inner.last() else {
        return below.is_dir();
    };
    files_below(&below)
        .iter()
        .filter(|file| file.extension().is_some_and(|ext| ext == "rs"))
        .any(|file| {
            let text = fs::read_to_string(file).unwrap_or_default();
            let is_file = file.file_stem().is_some_and(|stem| stem == *last);
            let in_folder = file.iter().any(|part| part == *last);
            is_file
                || in_folder
                || text.contains(&format!("fn {last}("))
                || text.contains(&format!("mod {last}"))
        })
}

#[test]
fn every_test_that_the_architecture_names_is_there() {
    let named = named_tests();
    assert!(named.len() > 40, "only {} tests are named", named.len());
    let missing: Vec<&String> = named.iter().filter(|name| !exists(name)).collect();
    assert!(missing.is_empty(), "not there: {missing:?}");
    assert!(!exists(
        "suite::architecture::no_such_test_was_ever_written"
    ));
    assert!(!exists("style/tests/no_such_file.rs"));
}

#[test]
fn no_page_or_comment_names_the_host_of_a_registry() {
    const HOSTS: &[&str] = &["crates.io", "docs.rs", "npmjs.com", "pypi.org", "lib.rs/"];
    let own = fs::read_dir(root()).unwrap();
    let own = own.map(|entry| entry.unwrap().path());
    let below = ["crates", "docs", ".ci"].map(|folder| files_below(&root().join(folder)));
    let pages = own.chain(below.into_iter().flatten()).filter(|file| {
        file.extension().is_some_and(|ext| {
            ["md", "rs", "py", "js", "toml", "ftl", "sh"]
                .iter()
                .any(|e| ext == *e)
        })
    });
    let mut named = Vec::new();
    for file in pages {
        // This list is where they have to be named.
        if file.ends_with("suite/architecture.rs") {
            continue;
        }
        let text = fs::read_to_string(&file).unwrap_or_default();
        let hosts = HOSTS.iter().filter(|host| text.contains(**host));
        named.extend(hosts.map(|host| format!("{}: {host}", file.display())));
    }
    assert!(named.is_empty(), "{named:#?}");
}
