//! The file of pieces: what was read from a pattern file, in plain text.

use std::fmt::Write;

use indexmap::IndexMap;
use trade::{Length, counted, trimmed};

use super::Place;
use crate::Size;
use crate::parse::read;
use crate::read_collection::format;
use crate::reader::{Node, Table};
use crate::report::{Report, Source};

/// No piece of a garment is larger than this; one that is must be in another unit.
const FARTHEST_MM: f64 = 10_000.0;

/// The most places one line of a piece may have.
const MOST_PLACES: usize = 20_000;

/// Pieces read from a pattern file.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceFile {
    /// The file they were read from.
    pub from: String,
    /// The pieces by name, each in its sizes.
    pub pieces: IndexMap<String, IndexMap<Size, PieceBlock>>,
}

/// One piece in one size.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceBlock {
    /// Whether the outline is the line it is sewn along; else it is the line it is cut along.
    pub sewn: bool,
    /// The outline, closed, its first place not repeated.
    pub outline: Vec<Place>,
    /// Its corners by name: the place of the outline each lies at, counted from 0.
    pub corners: IndexMap<String, usize>,
    /// The grain line.
    pub grain: Option<[Place; 2]>,
    /// Its notches.
    pub notches: Vec<Place>,
}

/// Reads a file of pieces; `file` is the name shown in messages.
///
/// # Errors
/// Every problem, with its place.
pub fn read_piece_file(file: &str, text: &str) -> Result<PieceFile, Report> {
    let source = Source::new(file, text);
    let mut reading = read(&source, pieces);
    reading.report.sort();
    match reading.value {
        Some(pieces) if reading.report.is_empty() => Ok(pieces),
        _ => Err(reading.report),
    }
}

fn pieces(mut root: Table<'_>) -> Option<PieceFile> {
    format(&mut root);
    let from = root
        .required("from", "from = \"...\", the file the pieces were read from")
        .and_then(|node| node.text());
    let section = root.section("pieces");
    root.finish();
    let mut fine = true;
    let mut pieces = IndexMap::new();
    for (name, _, node) in section.entries() {
        let mut sizes = IndexMap::new();
        for (tag, _, node) in node.table()?.entries() {
            match (size(&tag, &node), node.table().and_then(block)) {
                (Some(size), Some(block)) => {
                    sizes.insert(size, block);
                }
                _ => fine = false,
            }
        }
        pieces.insert(name, sizes);
    }
    let from = from?;
    fine.then_some(PieceFile { from, pieces })
}

fn size(tag: &str, node: &Node<'_>) -> Option<Size> {
    match tag.parse() {
        Ok(size) => Some(size),
        Err(why) => {
            let hint = "name each section by piece and size: [pieces.\"FRONT\".\"32x32\"]";
            node.problem("style::unreadable-size", format!("{why}"), hint);
            None
        }
    }
}

const LINES: &[(&str, bool)] = &[("sewn", true), ("cut", false)];

fn block(mut table: Table<'_>) -> Option<PieceBlock> {
    let sewn = table
        .required("line", "line = \"sewn\" or \"cut\"")
        .and_then(|node| node.choice("style::unknown-word", LINES));
    let outline = table
        .required(
            "outline",
            "outline = \"0 0, 100 0, 100 50\", in millimetres",
        )
        .and_then(|node| places(&node, 3));
    let corners = table.optional_section("corners");
    let grain = table.optional("grain").map(|node| {
        let found = places(&node, 2)?;
        let [foot, top] = found.as_slice() else {
            let message = format!(
                "`{}` has {}",
                node.key(),
                counted(found.len(), "place", "places")
            );
            node.problem(
                "style::unfit-place",
                message,
                "write the two ends of the line",
            );
            return None;
        };
        Some([*foot, *top])
    });
    let notches = table
        .optional("notches")
        .map_or(Some(Vec::new()), |node| places(&node, 0));
    table.finish();
    let outline = outline?;
    let mut named = IndexMap::new();
    for (name, _, node) in corners.entries() {
        let most = u32::try_from(outline.len() - 1).unwrap_or(u32::MAX);
        named.insert(name, node.whole(0, most)? as usize);
    }
    Some(PieceBlock {
        sewn: sewn?,
        outline,
        corners: named,
        grain: crate::read_collection::allowed(grain)?,
        notches: notches?,
    })
}

/// Places as "x y, x y", in millimetres.
fn places(node: &Node<'_>, least: usize) -> Option<Vec<Place>> {
    let Some(text) = node.as_str() else {
        node.wrong_type("a list of places", "\"0 0, 100 0\", in millimetres");
        return None;
    };
    let mut out = Vec::new();
    for (index, part) in text.split(',').enumerate() {
        if part.trim().is_empty() && text.trim().is_empty() {
            break;
        }
        let mut numbers = part.split_whitespace().map(|word| word.parse::<f64>().ok());
        let place = match (numbers.next(), numbers.next(), numbers.next()) {
            (Some(Some(x)), Some(Some(y)), None)
                if x.abs() <= FARTHEST_MM && y.abs() <= FARTHEST_MM =>
            {
                [Length::mm(x), Length::mm(y)]
            }
            _ => {
                let message = format!(
                    "place {} of `{}` is not two numbers within 10 m",
                    index + 1,
                    node.key()
                );
                let hint = "write x and y in millimetres, a comma between places";
                node.problem("style::unfit-place", message, hint);
                return None;
            }
        };
        out.push(place);
        if out.len() > MOST_PLACES {
            let message = format!("`{}` has more than {MOST_PLACES} places", node.key());
            node.problem(
                "style::out-of-range",
                message,
                "bring the pattern with fewer points",
            );
            return None;
        }
    }
    if out.len() < least {
        let message = format!(
            "`{}` has {}",
            node.key(),
            counted(out.len(), "place", "places")
        );
        node.problem(
            "style::unfit-place",
            message,
            format!("at least {least} are needed"),
        );
        return None;
    }
    Some(out)
}

/// The text of a file of pieces.
#[must_use]
pub fn piece_file_text(file: &PieceFile) -> String {
    let mut out = String::from("format = 1\n");
    let _ = writeln!(out, "from = {}", toml_text(&file.from));
    for (name, sizes) in &file.pieces {
        for (size, block) in sizes {
            let _ = write!(out, "\n[pieces.{}.\"{size}\"]\n", toml_text(name));
            let line = if block.sewn { "sewn" } else { "cut" };
            let _ = writeln!(out, "line = \"{line}\"");
            if let Some(grain) = &block.grain {
                let _ = writeln!(out, "grain = \"{}\"", listed(grain));
            }
            let corners: Vec<String> = block
                .corners
                .iter()
                .map(|(name, at)| format!("{} = {at}", toml_text(name)))
                .collect();
            let _ = writeln!(out, "corners = {{ {} }}", corners.join(", "));
            if !block.notches.is_empty() {
                let _ = writeln!(out, "notches = \"{}\"", listed(&block.notches));
            }
            let _ = write!(
                out,
                "outline = \"\"\"\\\n{}\"\"\"\n",
                listed(&block.outline)
            );
        }
    }
    out
}

/// A text as TOML writes it on one line, in quotes; control characters become spaces.
#[must_use]
pub fn toml_text(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// Places to a ten-thousandth of a millimetre, eight to the line.
fn listed(places: &[Place]) -> String {
    let number = |length: Length| trimmed(length.to_mm(), 0, 4);
    let words: Vec<String> = places
        .iter()
        .map(|[x, y]| format!("{} {}", number(*x), number(*y)))
        .collect();
    let lines: Vec<String> = words.chunks(8).map(|line| line.join(", ")).collect();
    lines.join(", \\\n")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    fn place(x: f64, y: f64) -> Place {
        [Length::mm(x), Length::mm(y)]
    }

    fn file(outline: Vec<Place>, name: &str) -> PieceFile {
        let block = PieceBlock {
            sewn: false,
            corners: [("1".to_owned(), 0), (name.to_owned(), 2)]
                .into_iter()
                .collect(),
            outline,
            grain: Some([place(1.0, 2.0), place(1.0, 80.0)]),
            notches: vec![place(3.0, 0.5)],
        };
        let sizes = [(Size::new(32, 32), block)].into_iter().collect();
        PieceFile {
            from: "harbour.dxf".to_owned(),
            pieces: [(name.to_owned(), sizes)].into_iter().collect(),
        }
    }

    proptest! {
        #[test]
        fn what_is_written_is_read_again(
            points in prop::collection::vec((-50_000_000..50_000_000i64, -50_000_000..50_000_000i64), 3..40),
            name in "[A-Za-zäß \"'.#]{1,12}",
        ) {
            prop_assume!(!name.trim().is_empty() && name != "1");
            let outline = points.iter().map(|(x, y)| place(*x as f64 / 1e4, *y as f64 / 1e4)).collect();
            let file = file(outline, &name);
            let read = read_piece_file("pieces.toml", &piece_file_text(&file)).unwrap();
            for (size, block) in &file.pieces[&name] {
                let again = &read.pieces[&name][size];
                prop_assert_eq!(&again.corners, &block.corners);
                for (a, b) in again.outline.iter().zip(&block.outline) {
                    prop_assert!((a[0] - b[0]).abs().to_mm() < 1e-9 && (a[1] - b[1]).abs().to_mm() < 1e-9);
                }
                prop_assert_eq!(again.outline.len(), block.outline.len());
            }
        }
    }

    #[test]
    fn places_that_are_none_are_named() {
        let text = piece_file_text(&file(vec![place(0.0, 0.0); 4], "FRONT"));
        for (from, to, code) in [
            ("0 0, 0 0", "0 0, nought 0", "style::unfit-place"),
            ("\"FRONT\" = 2", "\"FRONT\" = 4", "style::out-of-range"),
            ("32x32", "medium", "style::unreadable-size"),
            ("line = \"cut\"", "line = \"drawn\"", "style::unknown-word"),
            ("1 2, 1 80", "1 2, 1 80, 5 5", "style::unfit-place"),
            ("0 0, 0 0", "1e300 0, 0 0", "style::unfit-place"),
        ] {
            assert!(text.contains(from), "{from} in {text}");
            let report = read_piece_file("pieces.toml", &text.replace(from, to)).unwrap_err();
            assert_eq!(report.problems[0].code, code, "{report}");
            assert!(report.problems[0].line > 1);
        }
    }
}
