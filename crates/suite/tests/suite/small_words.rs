//! No words for people stand in the code of the rooms that draft, cut and draw: neither sentences nor single small words.

use std::collections::BTreeSet;

use suite::source::{Source, literals, rust_files};

use crate::catalogue::{is_prose, without_values};

/// The rooms whose words lie in the catalogue.
const ROOMS: [&str; 6] = [
    "draft",
    "sewing",
    "cutting",
    "flat",
    "drawing",
    "cut_sheets",
];

/// Files of these rooms that are judged elsewhere, or whose literals are of another language.
const NOT_JUDGED: &[(&str, &str)] = &[
    (
        "draft/src/own/",
        "says what is wrong with a file, which is said where it arises",
    ),
    ("drawing/src/svg.rs", "writes SVG"),
    (
        "cutting/src/skew.rs",
        "reads what a maker wrote of the cloth",
    ),
    ("src/sample", "reads the demo, for tests"),
    (
        "sewing/src/check/fibres.rs",
        "names of fibres in the languages of labels, to read them",
    ),
    (
        "sewing/src/check/label_texts.rs",
        "words of labels in their languages, to read them",
    ),
];

/// Literals that read as words and are codes, by the end of their file's path, each with its reason.
const CODES: &[(&str, &[&str], &str)] = &[
    (
        "cut_sheets/src/corner_sheet.rs",
        &[
            "together", "across", "bare", "opened", "sharp", "felled", "changes", "hem", "turned",
        ],
        "codes of rules of corners",
    ),
    (
        "cutting/src/corner.rs",
        &[
            "inward", "together", "bare", "sharp", "hem", "changes", "turned", "across", "felled",
            "opened",
        ],
        "codes of rules of corners",
    ),
    (
        "cut_sheets/src/lay_sheet.rs",
        &["zones", "key"],
        "parts of the drawing, for clicks",
    ),
    (
        "cutting/src/spread.rs",
        &["mirrored", "as drawn", "{key}, zone {}"],
        "keys of pieces in lays that are kept",
    ),
    (
        "cutting/src/marks.rs",
        &["{} corner {}"],
        "names of holes in pattern files",
    ),
    (
        "sewing/src/check/trims.rs",
        &[
            "vegetable",
            "free of chrom",
            "no chrom",
            "nickel free",
            "free of nickel",
            "no nickel",
        ],
        "reads what a maker wrote of a trim",
    ),
    (
        "sewing/src/clash/metal.rs",
        &["false"],
        "a value of the style's file",
    ),
    (
        "sewing/src/context.rs",
        &[
            "corespun",
            "spun polyester",
            "filament",
            "bonded",
            "cotton",
            "polyester",
        ],
        "reads what a maker wrote of a yarn",
    ),
    (
        "sewing/src/fixings/labels.rs",
        &[
            "side seam",
            "left",
            "right",
            "band",
            "outside",
            "centre back",
        ],
        "reads what a maker wrote of a place",
    ),
    (
        "sewing/src/work/operation_key.rs",
        &["press", "sew", "thin"],
        "ends of codes of operations",
    ),
    (
        "sewing/src/yarn/count.rs",
        &[
            "the number of threads",
            "the path of the thread",
            "both threads going",
        ],
        "sources of figures, as the tables of the trade have them",
    ),
    (
        "sewing/src/yarn/width.rs",
        &["the distance of the rows", "the middle of the gauges"],
        "sources of figures, as the tables of the trade have them",
    ),
    (
        "drawing/src/yarn_plan/strip.rs",
        &["enlarged", "true size"],
        "names of layers",
    ),
    (
        "drawing/src/lettering.rs",
        &["\\\"{words}\\\" "],
        "what tests are told",
    ),
];

/// Signs of units, which stand in no catalogue.
const UNITS: [&str; 7] = ["mm", "cm", "in", "deg", "tex", "kg", "oz"];

/// What gives a code its place: what stands before it in the line.
const BEFORE_CODES: &[&str] = &[
    // Layers and parts of a drawing, as SVG names them.
    "Layer::named(",
    ".layer(",
    ".stroke(",
    ".fill(",
    ".below(",
    ".hatch(",
    ".ground(",
    // A key of the style's file.
    ".path(",
];

/// Functions that give codes to files and programs.
const OF_CODES: [&str; 2] = ["code", "word"];

/// A literal with what stands before it in its line and the function it stands in.
struct Found {
    literal: String,
    before: String,
    function: String,
}

fn found(lines: &[&str]) -> Vec<Found> {
    let mut function = (String::new(), 0);
    let mut depth = 0_i64;
    let mut all = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        if let Some(named) = line.split("fn ").nth(1) {
            let ends = |c: char| !c.is_alphanumeric() && c != '_';
            let name = named.split(ends).next().unwrap_or_default();
            function = (name.to_owned(), depth);
        }
        let mut rest = *line;
        for (_, literal) in literals(line) {
            let quoted = format!("\"{literal}\"");
            let at = rest.find(&quoted).unwrap_or(0);
            let mut before = line[..line.len() - rest.len() + at].trim_end();
            if before.is_empty() {
                let last = index.checked_sub(1).and_then(|last| lines.get(last));
                before = last.copied().unwrap_or_default();
            }
            rest = rest.get(at + quoted.len()..).unwrap_or_default();
            all.push(Found {
                literal,
                before: before.to_owned(),
                function: function.0.clone(),
            });
        }
        for letter in line.chars() {
            depth += i64::from(letter == '{') - i64::from(letter == '}');
        }
        if line.ends_with('}') && depth <= function.1 {
            function = (String::new(), 0);
        }
    }
    all
}

impl Found {
    /// Whether it reads as words for people: a sentence, or one small word that is no code.
    fn is_for_people(&self) -> bool {
        let said = without_values(&self.literal);
        if OF_CODES.contains(&self.function.as_str()) {
            return false;
        }
        let is_word = is_prose(&said) || is_small_word(&self.literal);
        is_word && !self.is_in_place_of_a_code()
    }

    fn is_in_place_of_a_code(&self) -> bool {
        // `Member = "code" => its words`: an identity.
        let member = self.before.strip_suffix(" =").is_some_and(|member| {
            member.starts_with(|c: char| c.is_ascii_uppercase())
                && member.chars().all(char::is_alphanumeric)
        });
        member || BEFORE_CODES.iter().any(|end| self.before.ends_with(end))
    }
}

/// Whether a literal is one word in small letters, besides what is put in. A code has a sign in it, or what is put in
/// follows at once: "piece:{}".
fn is_small_word(literal: &str) -> bool {
    let said = without_values(literal);
    let word = said.trim_matches([' ', ',', ';', '(', ')']);
    let word = match word.strip_suffix(':') {
        Some(before) if literal.contains(": ") => before,
        _ => word,
    };
    let letters = word.chars().all(|c| c.is_ascii_lowercase() || c == '\'');
    letters && word.len() > 1 && !UNITS.contains(&word)
}

#[test]
fn rooms_that_draft_cut_and_draw_hold_no_words_for_people() {
    let files = rust_files("src");
    let judged = |file: &&Source| {
        let apart = NOT_JUDGED.iter().any(|(path, _)| file.path.contains(path));
        ROOMS.contains(&file.room.as_str()) && !apart
    };
    let mut wrong = Vec::new();
    let mut met = BTreeSet::new();
    let mut looked_at = 0;
    for file in files.iter().filter(judged) {
        let lines: Vec<&str> = file.code().filter(|line| !line.starts_with("#[")).collect();
        let codes = CODES.iter().filter(|(path, ..)| file.path.ends_with(path));
        let codes: Vec<&str> = codes.flat_map(|(_, codes, _)| *codes).copied().collect();
        for one in found(&lines) {
            looked_at += 1;
            if !one.is_for_people() {
                continue;
            }
            match codes.iter().find(|code| one.literal.starts_with(**code)) {
                Some(code) => drop(met.insert((file.path.clone(), *code))),
                None => wrong.push(format!("{}: {:?}", file.path, one.literal)),
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(looked_at > 400, "only {looked_at} literals");
    for (path, codes, _) in CODES {
        for code in *codes {
            let there = met
                .iter()
                .any(|(file, met)| file.ends_with(path) && met == code);
            assert!(there, "{path} says {code:?} no more; strike it out here");
        }
    }
}

#[test]
fn a_small_word_is_told_from_a_code_by_its_place_and_its_signs() {
    let people = |lines: &[&str]| {
        let all = found(lines);
        assert_eq!(all.len(), 1, "{lines:?}");
        all.iter().all(Found::is_for_people)
    };
    for said in [
        "let side = \"front\";",
        "format!(\"{} only\", copy)",
        "format!(\"lap: {width}\")",
        "None => \"wearer's\",",
        "name: \"pocket bag\".to_owned(),",
    ] {
        assert!(people(&[said]), "{said}");
    }
    for code in [
        "let part = format!(\"piece:{}\", id);",
        "Layer::named(\"rows\")",
        "Crotch = \"crotch\" => key::POINT_CROTCH,",
        "code: \"fit::crease\",",
        "format!(\"{:.1} mm\", width)",
        "KneeIn = \"knee_in\" => key::POINT_KNEE_IN,",
    ] {
        assert!(!people(&[code]), "{code}");
    }
    assert!(!people(&[
        "pub const fn code(self) -> &'static str {",
        "Self::Shell => \"shell\","
    ]));
    assert!(people(&[
        "pub const fn name(self) -> &'static str {",
        "Self::Shell => \"shell\","
    ]));
    assert!(!people(&["self.layer(", "\"cloth\")"]));
}
