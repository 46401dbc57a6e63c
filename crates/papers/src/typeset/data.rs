//! Values as a layout reads them: one JSON file of values and one SVG file a drawing.
//!
//! Values are never pasted into markup, so no character in them can be taken for an instruction.

use serde::Serialize;
use serde_json::Value;

/// What typst is given to set: a layout and the values and drawings it looks at, all in memory.
pub(crate) struct Job {
    /// The layout that is compiled, by its path.
    pub(crate) layout: &'static str,
    /// The values; each drawing is replaced by the path of its file.
    pub(crate) json: Vec<u8>,
    /// The drawings; number n is the file [`drawing_path`]`(n)`.
    pub(crate) drawings: Vec<String>,
}

/// Where the layout finds drawing `n`. Paths are numbers, not content hashes, because typst keeps every
/// path it has ever seen and has room for 65 535 of them.
pub(crate) fn drawing_path(n: usize) -> String {
    format!("/drawings/{n}.svg")
}

/// Turns values into the files a layout reads.
///
/// # Errors
/// The message of the JSON writer, which has no reason to fail on this data.
pub(crate) fn job(layout: &'static str, values: &impl Serialize) -> Result<Job, serde_json::Error> {
    let mut value = serde_json::to_value(values)?;
    let mut drawings = Vec::new();
    prepare(&mut value, &mut drawings);
    Ok(Job {
        layout,
        json: serde_json::to_vec(&value)?,
        drawings,
    })
}

/// Moves drawings out and makes every other text fit to print.
fn prepare(value: &mut Value, drawings: &mut Vec<String>) {
    match value {
        Value::String(text) => {
            if let Some(printable) = printable(text) {
                *text = printable;
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| prepare(item, drawings)),
        Value::Object(fields) => {
            if let Some(Value::String(svg)) = fields.remove("$svg") {
                fields.insert("path".to_owned(), drawing_path(drawings.len()).into());
                drawings.push(svg);
            } else {
                fields
                    .values_mut()
                    .for_each(|field| prepare(field, drawings));
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// A word longer than this may be broken anywhere, so that it wraps instead of running over its neighbour.
const LONGEST_WORD: usize = 18;
const BREAK_HERE: char = '\u{200b}';
const NO_BREAK: char = '\u{a0}';

/// A line never ends between a figure and one of these.
const UNITS: [&str; 17] = [
    "mm", "cm", "m", "in", "mm²", "cm²", "m²", "%", "‰", "g", "kg", "g/m²", "oz/yd²", "/cm", "/in",
    "ply", "plies",
];

/// Makes a text fit to print: control characters become spaces, over-long words may break, figures stay
/// with their units, apostrophes are set as such. `None` if nothing need change.
fn printable(text: &str) -> Option<String> {
    let text_without_controls = apostrophes(&text.replace(char::is_control, " "));
    let mut out = String::with_capacity(text_without_controls.len());
    let mut before: Option<&str> = None;
    for word in text_without_controls.split(' ') {
        if let Some(before) = before {
            out.push(if belong_together(before, word) {
                NO_BREAK
            } else {
                ' '
            });
        }
        push_word(&mut out, word);
        before = Some(word);
    }
    (out != text).then_some(out)
}

/// A straight mark after a letter is an apostrophe: "the band's end".
fn apostrophes(text: &str) -> String {
    let mut before = ' ';
    text.chars()
        .map(|c| {
            let out = if c == '\'' && before.is_alphabetic() {
                '’'
            } else {
                c
            };
            before = c;
            out
        })
        .collect()
}

/// Whether a line must not end between two words: "78 cm", "tex 105".
fn belong_together(before: &str, after: &str) -> bool {
    let unit = after.trim_end_matches([',', '.', ';', ':', ')']);
    let figure = |c: Option<char>| c.is_some_and(char::is_numeric);
    (figure(before.chars().next_back()) && UNITS.contains(&unit))
        || (before.trim_start_matches('(') == "tex" && figure(after.chars().next()))
}

/// A long word may break after these, and only where that is not enough anywhere.
const BREAK_AFTER: [char; 5] = ['-', ':', '/', '_', '.'];

fn push_word(out: &mut String, word: &str) {
    if word.chars().nth(LONGEST_WORD).is_none() {
        out.push_str(word);
        return;
    }
    let mut first = true;
    for part in word.split_inclusive(BREAK_AFTER) {
        // Two marks in a row stay together.
        if !first && !part.starts_with(BREAK_AFTER) {
            out.push(BREAK_HERE);
        }
        first = false;
        let anywhere = part.chars().nth(LONGEST_WORD).is_some();
        for (at, c) in part.chars().enumerate() {
            // A combining mark must stay with its letter; a break before it would part them.
            if anywhere && at > 0 && (c.is_alphanumeric() || c.is_ascii_punctuation()) {
                out.push(BREAK_HERE);
            }
            out.push(c);
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::{Drawing, Fact, Figure, Pack};

    #[test]
    fn ordinary_text_is_left_as_it_is() {
        for text in [
            "",
            "Straight five-pocket",
            "#let $x$ *b* \\ \"q\"",
            "3 × 10⁻³",
            "日本語",
        ] {
            assert_eq!(printable(text), None, "{text}");
        }
    }

    #[test]
    fn long_words_may_break_and_controls_go() {
        let long = "x".repeat(40);
        let out = printable(&format!("a {long} b\u{0}c\nd")).unwrap();
        assert_eq!(out.replace(BREAK_HERE, ""), format!("a {long} b c d"));
        assert_eq!(out.matches(BREAK_HERE).count(), 39);
    }

    #[test]
    fn apostrophes_are_set_as_such() {
        let out = printable("the band's ends, 6' wide, 'quoted").unwrap();
        assert_eq!(out, "the band’s ends, 6' wide, 'quoted");
    }

    #[test]
    fn a_figure_stays_with_its_unit() {
        let out = printable("14 oz/yd², 78 cm (tex 105), 4 %; 3 of 4 rows, 2  mm").unwrap();
        assert_eq!(
            out.replace(NO_BREAK, "~"),
            "14~oz/yd², 78~cm (tex~105), 4~%; 3 of 4 rows, 2  mm"
        );
    }

    #[test]
    fn drawings_become_files_in_reading_order() {
        let figure = |svg: &str| Figure {
            callouts: Vec::new(),
            state: String::new(),
            drawing: Drawing::from_svg(svg, "test").unwrap(),
            title: "#t".to_owned(),
            caption: String::new(),
            scale: None,
        };
        let first = "<svg width='1' height='2'/>".replace("/>", "></svg>");
        let second = "<svg width='3' height='4'></svg>".to_owned();
        let mut pack = Pack {
            diagrams: vec![figure(&first), figure(&second)],
            ..Pack::default()
        };
        pack.cover.facts = vec![Fact {
            label: "$svg".to_owned(),
            value: "#".to_owned(),
            asks: Vec::new(),
        }];
        let files = job("/pack.typ", &pack).unwrap();
        assert_eq!(files.drawings, [first, second]);
        let value: Value = serde_json::from_slice(&files.json).unwrap();
        assert_eq!(value["diagrams"][1]["drawing"]["path"], drawing_path(1));
        assert_eq!(value["diagrams"][1]["drawing"]["height"], 4.0);
        assert_eq!(value["cover"]["facts"][0]["label"], "$svg");
    }

    #[test]
    fn a_code_breaks_between_its_words() {
        let printed = printable("sewing::yarn-for-cloth").unwrap();
        assert_eq!(
            printed.split(BREAK_HERE).collect::<Vec<_>>(),
            ["sewing::", "yarn-", "for-", "cloth"]
        );
    }
}
