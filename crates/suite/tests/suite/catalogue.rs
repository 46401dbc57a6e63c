//! The words of the bench: all in the catalogue, all of the catalogue in use.

use std::collections::BTreeSet;
use std::fs;

use suite::source::{Source, files_below, literals, root, rust_files, shown};

/// Literals of the bench that read as words and are none for people, by the end of their file's path.
const NOT_FOR_PEOPLE: &[(&str, &[&str])] = &[
    // Headers.
    ("guard.rs", &["default-src 'none'", "{}={}; Path=/"]),
    ("page/layout.rs", &["light dark"]),
    ("part/background_work.rs", &["attachment; filename="]),
    // Names of keys, and of a class.
    ("page/style/render.rs", &["Esc", "Enter"]),
    ("part/drawing.rs", &["ArrowLeft ArrowRight"]),
    ("part/notice.rs", &["notice asks"]),
    // A command, and what others say that is looked for in their words.
    ("page/cutting/orders_page.rs", &["fellwork plan"]),
    (
        "page/begin/pattern/pattern_answers.rs",
        &["as fellwork bring --list"],
    ),
    ("part/details/labels.rs", &["band inside, centre back"]),
    // The name of a style that is drawn and never seen by it.
    ("page/begin/picture.rs", &["Style"]),
];

/// Whether a literal reads as words for people: two words or more beside each other, or one with a capital.
pub(crate) fn is_prose(literal: &str) -> bool {
    let of_letters = |word: &&str| {
        let word = word.trim_matches(|c: char| c.is_ascii_punctuation() || "’“”…".contains(c));
        word.len() > 1 && word.chars().all(|c| c.is_alphabetic() || c == '’')
    };
    let words: Vec<&str> = literal.split_whitespace().collect();
    let name = literal.len() > 2
        && literal.starts_with(|c: char| c.is_ascii_uppercase())
        && literal[1..].chars().all(|c| c.is_ascii_lowercase());
    name || words.windows(2).any(|pair| pair.iter().all(of_letters))
}

fn code(file: &Source) -> String {
    file.code()
        .filter(|line| !line.starts_with("#["))
        .collect::<Vec<_>>()
        .join("\n")
}

/// What stands in a literal besides what is put in.
pub(crate) fn without_values(literal: &str) -> String {
    let mut said = String::new();
    let mut depth = 0_usize;
    for letter in literal.chars() {
        match letter {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            _ if depth == 0 => said.push(letter),
            _ => {}
        }
    }
    said
}

#[test]
fn the_bench_says_only_what_is_in_the_catalogue() {
    let mut wrong = Vec::new();
    let mut met = BTreeSet::new();
    for file in rust_files("src").iter().filter(|file| file.room == "bench") {
        let allowed = NOT_FOR_PEOPLE.iter();
        let allowed = allowed.filter(|(path, _)| file.path.ends_with(path));
        let allowed: Vec<&str> = allowed
            .flat_map(|(_, starts)| starts.iter().copied())
            .collect();
        for (_, literal) in literals(&code(file)) {
            if !is_prose(&without_values(&literal)) {
                continue;
            }
            match allowed.iter().find(|start| literal.starts_with(**start)) {
                Some(start) => drop(met.insert((file.path.clone(), *start))),
                None => wrong.push(format!("{}: {literal:?}", file.path)),
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    for (path, starts) in NOT_FOR_PEOPLE {
        for start in *starts {
            let there = met
                .iter()
                .any(|(file, met)| file.ends_with(path) && met == start);
            assert!(there, "{path} says {start:?} no more; strike it out here");
        }
    }
}

/// Files of rooms below the bench that say what they find by the catalogue alone.
const SAY_BY_CATALOGUE: &[&str] = &[
    "draft/src/conflict.rs",
    "draft/src/finding.rs",
    "draft/src/fit.rs",
    "draft/src/knob.rs",
    "draft/src/rules/",
    "cutting/src/band.rs",
    "cutting/src/cut.rs",
    "cutting/src/notice.rs",
    "cutting/src/outline.rs",
    "cutting/src/cutter_notes.rs",
    "cutting/src/cloth_tests.rs",
    "cutting/src/wash.rs",
    "cutting/src/too_wide.rs",
    "drawing/src/plate/",
    "papers/src/assemble/back_pockets.rs",
    "papers/src/assemble/by_size.rs",
    "papers/src/assemble/cautions.rs",
    "papers/src/assemble/chart.rs",
    "papers/src/assemble/checks.rs",
    "papers/src/assemble/construction.rs",
    "papers/src/assemble/cover.rs",
    "papers/src/assemble/cut.rs",
    "papers/src/assemble/findings.rs",
    "papers/src/assemble/materials.rs",
    "papers/src/assemble/open.rs",
    "papers/src/assemble/order.rs",
    "papers/src/assemble/pack_words.rs",
    "papers/src/assemble/pieces.rs",
    "papers/src/assemble/shrinkage.rs",
    "papers/src/assemble/spreading.rs",
    "papers/src/assemble/supply.rs",
    "papers/src/assemble/trims.rs",
    "papers/src/assemble/wash.rs",
    "papers/src/assemble/words.rs",
    "papers/src/assemble/yarn.rs",
    "sewing/src/work/",
    "sewing/src/construct.rs",
    "sewing/src/garment.rs",
    "sewing/src/seam.rs",
    "sewing/src/seam_words.rs",
    "sewing/src/rows/",
    "sewing/src/wash/",
    "sewing/src/yarn/unstated.rs",
    "trade/src/machine.rs",
    "trade/src/seam/operations.rs",
];

#[test]
fn rules_and_the_sewing_order_say_only_what_is_in_the_catalogue() {
    let files = rust_files("src");
    let mut wrong = Vec::new();
    for part in SAY_BY_CATALOGUE {
        let mut files = files
            .iter()
            .filter(|file| file.path.contains(part))
            .peekable();
        assert!(files.peek().is_some(), "there is no {part}");
        for file in files {
            let prose = literals(&code(file))
                .into_iter()
                .map(|(_, literal)| literal);
            let prose = prose.filter(|literal| is_prose(&without_values(literal)));
            wrong.extend(prose.map(|literal| format!("{}: {literal:?}", file.path)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Names of keys, and of a class, in scripts.
const NAMES_IN_SCRIPTS: &[&str] = &["Enter", "Escape", "notice asks"];

/// Whether what is quoted in a script chooses elements: it names classes, values or several elements.
fn is_selector(text: &str) -> bool {
    let names = |c: char| c.is_ascii_lowercase() || "0123456789.,- ".contains(c);
    text.contains(['[', '#', '<', '$', '('])
        || (text.contains(['.', ',']) && !text.ends_with('.') && text.chars().all(names))
}

#[test]
fn scripts_say_only_what_the_page_gives_them() {
    let mut wrong = Vec::new();
    for file in files_below(&root().join("crates/bench/assets")) {
        if file.extension().is_none_or(|ending| ending != "js") {
            continue;
        }
        let text = fs::read_to_string(&file).unwrap();
        let code = text
            .lines()
            .filter(|line| !line.trim_start().starts_with(['/', '*']));
        for line in code {
            for quote in ['\'', '`', '"'] {
                let quoted = line.split(quote).skip(1).step_by(2);
                let prose = quoted.filter(|text| {
                    is_prose(text) && !is_selector(text) && !NAMES_IN_SCRIPTS.contains(text)
                });
                wrong.extend(prose.map(|text| format!("{}: {text}", shown(&file))));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What code calls a message by: the method that says it, its name, and what it is with all that is put in.
fn called(key: &str) -> [String; 3] {
    let capital = |part: &str| {
        let (first, rest) = part.split_at(usize::from(!part.is_empty()));
        first.to_uppercase() + rest
    };
    let method = key.replace('-', "_");
    let name = method.to_uppercase();
    [method, name, key.split(['-', '_']).map(capital).collect()]
}

#[test]
fn everything_in_the_catalogue_is_said() {
    let files = rust_files("src");
    let of_a_name = |c: char| c.is_alphanumeric() || c == '_';
    let names: BTreeSet<&str> = files
        .iter()
        .flat_map(Source::code)
        .flat_map(|line| line.split(|c| !of_a_name(c)))
        .collect();
    let catalogue = words::catalogue();
    assert!(catalogue.len() > 500, "only {} messages", catalogue.len());
    let unused = catalogue.iter().map(|(key, _)| key).filter(|key| {
        let called = called(key);
        !called.iter().any(|name| names.contains(name.as_str()))
    });
    let unused: Vec<&String> = unused.collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}

#[test]
fn the_catalogue_is_kept_as_it_was_agreed() {
    for file in files_below(&root().join("crates/words/languages")) {
        let text = fs::read_to_string(&file).unwrap();
        let path = shown(&file);
        assert!(
            text.starts_with("### "),
            "{path} does not say what it is for"
        );
        for line in text.lines() {
            assert_eq!(line, line.trim_end(), "{path}: space at the end");
        }
    }
}
