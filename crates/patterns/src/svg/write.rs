//! A pattern as an SVG sheet.

use std::collections::BTreeSet;
use std::fmt::Write;

use geometry::{Point, Vec2, bounds_of};
use trade::{Angle, Length};

use crate::grid::{number_on_grid, on_grid};
use crate::model::{Copies, LineKind, Notch, NotchKind, PatternFile, Piece};
use crate::number::put;
use crate::place::{LEADING, LETTERS, NOTES, letters};
use crate::sheet::arrange;

/// The width of the sheet on which pieces are set beside each other.
const SHEET: Length = Length::mm(1500.0);

/// How each layer is drawn; lines keep their width whatever the scale on a screen.
const STYLES: &[(&str, &str)] = &[
    ("cut", "stroke=\"#1a1a1a\" stroke-width=\"0.6\""),
    ("cutout", "stroke=\"#1a1a1a\" stroke-width=\"0.6\""),
    (
        "sewn",
        "stroke=\"#2b4c7e\" stroke-width=\"0.35\" stroke-dasharray=\"3 1.5\"",
    ),
    ("grain", "stroke=\"#1a1a1a\" stroke-width=\"0.35\""),
    (
        "mirror",
        "stroke=\"#1a1a1a\" stroke-width=\"0.5\" stroke-dasharray=\"12 2 2 2\"",
    ),
    (
        "inner",
        "stroke=\"#8a6d3b\" stroke-width=\"0.35\" stroke-dasharray=\"6 2\"",
    ),
    ("notch", "stroke=\"#b3261e\" stroke-width=\"0.6\""),
    ("drill", "stroke=\"#b3261e\" stroke-width=\"0.35\""),
    ("point", "stroke=\"#9a9a9a\" stroke-width=\"0.25\""),
    ("edge-start", "stroke=\"#9a9a9a\" stroke-width=\"0.25\""),
];

/// The words of a copy's marks.
pub(super) const COPIES: [(Copies, &str); 3] = [
    (Copies::All, ""),
    (Copies::AsDrawn, "as-drawn"),
    (Copies::Mirrored, "mirrored"),
];

/// The words of lines.
pub(super) const LINES: [(LineKind, &str); 6] = [
    (LineKind::Internal, ""),
    (LineKind::Fold, "fold"),
    (LineKind::Placement, "placement"),
    (LineKind::Stripe, "stripe"),
    (LineKind::Plaid, "plaid"),
    (LineKind::GradeReference, "grade-reference"),
];

/// The words of notches.
pub(super) const NOTCHES: [(NotchKind, &str); 6] = [
    (NotchKind::Slit, ""),
    (NotchKind::T, "t"),
    (NotchKind::Castle, "castle"),
    (NotchKind::Check, "check"),
    (NotchKind::U, "u"),
    (NotchKind::Drawn, "drawn"),
];

fn word<T: PartialEq + Copy>(words: &[(T, &'static str)], of: T) -> &'static str {
    words
        .iter()
        .find(|(t, _)| *t == of)
        .map_or("", |(_, word)| word)
}

/// How every sheet begins, and what its first tag holds.
const BEGINS: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\"";
const PATTERN: &str = " data-pattern=\"1\"";

/// Whether these are the bytes of a sheet that [`write`] wrote.
pub fn is_ours(bytes: &[u8]) -> bool {
    let Some(after) = bytes.strip_prefix(BEGINS.as_bytes()) else {
        return false;
    };
    let tag = after.split(|b| *b == b'>').next().unwrap_or_default();
    tag.windows(PATTERN.len())
        .any(|part| part == PATTERN.as_bytes())
}

/// Writes a pattern: all its pieces beside each other on one sheet, in true millimetres. Usually of one
/// size; see [`PatternFile::of_size`].
pub fn write(pattern: &PatternFile) -> String {
    let boxes: Vec<_> = pattern
        .pieces
        .iter()
        .map(|p| bounds_of(everything(p)))
        .collect();
    let (moves, sheet) = arrange(&boxes, SHEET);
    let sheet = on_grid(sheet.to_point());
    let mut pen = Pen {
        out: String::new(),
        origin: Vec2::ZERO,
    };
    pen.out.push_str(BEGINS);
    for (name, v) in [("width", sheet.x), ("height", sheet.y)] {
        let _ = write!(pen.out, " {name}=\"");
        put(&mut pen.out, v);
        pen.out.push_str("mm\"");
    }
    pen.numbers("viewBox", &[0.0, 0.0, sheet.x, sheet.y]);
    pen.out.push_str(PATTERN);
    pen.word("data-author", &pattern.author);
    pen.word("data-date", &pattern.date);
    pen.word("data-sample-size", &pattern.sample_size);
    pen.out
        .push_str(" fill=\"none\" stroke-linejoin=\"round\">\n<title>");
    escape(&mut pen.out, &pattern.style);
    pen.out.push_str("</title>\n");
    let mut ids = BTreeSet::new();
    for (piece, by) in pattern.pieces.iter().zip(moves) {
        // The sheet's y runs down.
        pen.origin = on_grid(Point::new(by.x, sheet.y - by.y)).to_vec2();
        let id = id(piece, &mut ids);
        pen.piece(piece, &id);
    }
    pen.out.push_str("</svg>\n");
    pen.out
}

/// Every place of a piece that is drawn.
fn everything(piece: &Piece) -> impl Iterator<Item = &Point> {
    let sewn = piece.sewn.iter().flat_map(|s| &s.line);
    let inner = piece.inner.iter().flat_map(|l| &l.line);
    let marks = piece.points.iter().map(|p| &p.at);
    piece.cut.iter().chain(sewn).chain(inner).chain(marks)
}

/// An id of its own for each piece: "front-32x32".
fn id(piece: &Piece, used: &mut BTreeSet<String>) -> String {
    let plain = |text: &str| -> String {
        let kept = |c: char| {
            if c.is_ascii_alphanumeric() {
                c.to_ascii_lowercase()
            } else {
                '-'
            }
        };
        text.chars().map(kept).collect()
    };
    let first = if piece.category.is_empty() {
        &piece.name
    } else {
        &piece.category
    };
    let stem = format!("p-{}-{}", plain(first), plain(&piece.size));
    let mut id = stem.clone();
    let mut n = 1;
    while !used.insert(id.clone()) {
        n += 1;
        id = format!("{stem}-{n}");
    }
    id
}

/// A sheet being written, and where on it the piece has its origin.
struct Pen {
    out: String,
    origin: Vec2,
}

impl Pen {
    /// A place of the piece on the sheet.
    fn on_sheet(&self, p: Point) -> Point {
        on_grid(Point::new(self.origin.x + p.x, self.origin.y - p.y))
    }

    fn word(&mut self, name: &str, value: &str) {
        if !value.is_empty() {
            let _ = write!(self.out, " {name}=\"");
            escape(&mut self.out, value);
            self.out.push('"');
        }
    }

    fn numbers(&mut self, name: &str, values: &[f64]) {
        let _ = write!(self.out, " {name}=\"");
        for (k, v) in values.iter().enumerate() {
            if k > 0 {
                self.out.push(' ');
            }
            put(&mut self.out, *v);
        }
        self.out.push('"');
    }

    fn line(&mut self, points: &[Point], closed: bool) {
        self.out.push_str(" d=\"");
        for (k, p) in points.iter().enumerate() {
            let at = self.on_sheet(*p);
            self.out.push_str(match k {
                0 => "M",
                1 => " L",
                _ => " ",
            });
            put(&mut self.out, at.x);
            self.out.push(' ');
            put(&mut self.out, at.y);
        }
        self.out.push_str(if closed { " Z\"" } else { "\"" });
    }

    fn path(&mut self, points: &[Point], closed: bool, more: impl FnOnce(&mut Self)) {
        self.out.push_str("<path");
        self.line(points, closed);
        more(self);
        self.out.push_str("/>\n");
    }

    fn circle(&mut self, at: Point, radius: f64, more: impl FnOnce(&mut Self)) {
        let at = self.on_sheet(at);
        self.out.push_str("<circle");
        self.numbers("cx", &[at.x]);
        self.numbers("cy", &[at.y]);
        self.numbers("r", &[radius]);
        more(self);
        self.out.push_str("/>\n");
    }

    fn words(&mut self, at: Point, along: Angle, words: &str) {
        let at = self.on_sheet(at);
        self.out.push_str("<text");
        self.numbers("x", &[at.x]);
        self.numbers("y", &[at.y]);
        if along != Angle::ZERO {
            self.out.push_str(" transform=\"rotate(");
            for (k, v) in [-along.to_deg(), at.x, at.y].into_iter().enumerate() {
                self.out.push_str(if k > 0 { " " } else { "" });
                put(&mut self.out, v);
            }
            self.out.push_str(")\"");
        }
        self.out.push('>');
        escape(&mut self.out, words);
        self.out.push_str("</text>\n");
    }

    /// A layer, left out where nothing is on it.
    fn layer<T>(&mut self, id: &str, class: &str, marks: &[T], each: impl Fn(&mut Self, &T)) {
        if marks.is_empty() {
            return;
        }
        let style = STYLES.iter().find(|(name, _)| *name == class);
        let style = style.map_or("", |(_, style)| style);
        let _ = writeln!(
            self.out,
            "<g id=\"{id}-{class}\" class=\"{class}\" {style}>"
        );
        for mark in marks {
            each(self, mark);
        }
        self.out.push_str("</g>\n");
    }

    fn piece(&mut self, piece: &Piece, id: &str) {
        let _ = write!(self.out, "<g id=\"{id}\" class=\"piece\"");
        self.word("data-name", &piece.name);
        self.word("data-size", &piece.size);
        self.word("data-category", &piece.category);
        self.word("data-material", &piece.material);
        self.numbers("data-as-drawn", &[f64::from(piece.as_drawn)]);
        self.numbers("data-mirrored", &[f64::from(piece.mirrored)]);
        let (x, y) = (self.origin.x, self.origin.y);
        self.numbers("data-origin", &[x, y]);
        let words = self.on_sheet(piece.words_at);
        self.numbers(
            "data-words",
            &[words.x, words.y, piece.words_along.to_deg()],
        );
        self.out.push_str(">\n");
        self.lines(piece, id);
        self.marks(piece, id);
        self.texts(piece, id);
        self.out.push_str("</g>\n");
    }

    fn lines(&mut self, piece: &Piece, id: &str) {
        self.layer(id, "cut", std::slice::from_ref(&piece.cut), |pen, ring| {
            pen.path(ring, true, |_| ());
        });
        self.layer(id, "cutout", &piece.cutouts, |pen, ring| {
            pen.path(ring, true, |_| ())
        });
        self.layer(id, "sewn", &piece.sewn, |pen, sewn| {
            pen.path(&sewn.line, sewn.closed, |pen| {
                pen.word("data-name", &sewn.name)
            });
        });
        let ends = |line: Option<(Point, Point)>| line.map(|(a, b)| [a, b]);
        for (class, line) in [("grain", piece.grain), ("mirror", piece.mirror)] {
            let line: Vec<_> = ends(line).into_iter().collect();
            self.layer(id, class, &line, |pen, ends| pen.path(ends, false, |_| ()));
        }
        self.layer(id, "inner", &piece.inner, |pen, inner| {
            let closed = inner.line.len() > 3 && inner.line.first() == inner.line.last();
            let points = match inner.line.split_last() {
                Some((_, before)) if closed => before,
                _ => &inner.line,
            };
            pen.path(points, closed, |pen| {
                pen.word("data-name", &inner.name);
                pen.word("data-kind", word(&LINES, inner.kind));
                pen.word("data-on", word(&COPIES, inner.on));
            });
        });
    }

    fn marks(&mut self, piece: &Piece, id: &str) {
        self.layer(id, "notch", &piece.notches, Self::notch);
        self.layer(id, "drill", &piece.drills, |pen, drill| {
            pen.circle(drill.at, 1.5, |pen| {
                pen.word("data-name", &drill.name);
                pen.word("data-on", word(&COPIES, drill.on));
            });
        });
        self.layer(id, "point", &piece.points, |pen, point| {
            pen.circle(point.at, 0.8, |pen| {
                pen.word("data-name", &point.name);
                pen.word("data-corner", if point.corner { "yes" } else { "" });
            });
        });
        self.layer(id, "edge-start", &piece.edge_starts, |pen, start| {
            pen.circle(start.at, 1.2, |pen| pen.word("data-name", &start.name));
        });
    }

    fn notch(&mut self, notch: &Notch) {
        self.out.push_str("<path d=\"");
        for (a, b) in notch.cuts() {
            for (letter, p) in [("M", a), ("L", b)] {
                let at = self.on_sheet(p);
                self.out.push_str(letter);
                put(&mut self.out, at.x);
                self.out.push(' ');
                put(&mut self.out, at.y);
            }
        }
        self.out.push('"');
        self.word("data-name", &notch.name);
        self.word("data-kind", word(&NOTCHES, notch.kind));
        self.word("data-double", if notch.double { "yes" } else { "" });
        let at = self.on_sheet(notch.at);
        self.numbers("data-at", &[at.x, at.y]);
        let into = number_on_grid(notch.into.to_deg());
        self.numbers("data-into", &[into]);
        self.numbers("data-depth", &[notch.depth.to_mm()]);
        self.out.push_str("/>\n");
    }

    /// The words: the piece's title, its notes below it, and other words where they stand. Each is a group
    /// of its own, so that they can be told apart again.
    fn texts(&mut self, piece: &Piece, id: &str) {
        let (at, along) = (piece.words_at, piece.words_along);
        let share = letters(piece);
        let down = -geometry::left_of(Vec2::from_angle(along.to_rad())) * LEADING * share;
        self.words_group(id, "title", LETTERS * share, &[(at, along, piece.title())]);
        let below = |(k, note): (usize, &String)| (at + down * (k + 1) as f64, along, note.clone());
        let notes: Vec<_> = piece.notes.iter().enumerate().map(below).collect();
        self.words_group(id, "annotation", LETTERS * NOTES * share, &notes);
        let texts = piece
            .texts
            .iter()
            .map(|note| (note.at, Angle::ZERO, note.words.clone()));
        self.words_group(id, "note", LETTERS * 0.6, &texts.collect::<Vec<_>>());
    }

    fn words_group(&mut self, id: &str, class: &str, size: f64, words: &[(Point, Angle, String)]) {
        if words.is_empty() {
            return;
        }
        let _ = write!(
            self.out,
            "<g id=\"{id}-{class}\" class=\"{class}\" fill=\"#1a1a1a\""
        );
        self.out.push_str(" font-family=\"sans-serif\"");
        self.numbers("font-size", &[size]);
        self.out.push_str(">\n");
        for (at, along, words) in words {
            self.words(*at, *along, words);
        }
        self.out.push_str("</g>\n");
    }
}

/// Writes words so that XML holds them; what XML cannot hold is left out.
fn escape(out: &mut String, text: &str) {
    for c in crate::words::one_line(text).chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => {}
            c => out.push(c),
        }
    }
}
