//! Writing DXF, release 12, in ASCII.

use std::fmt::Write;

use geometry::{Point, Rect};
use trade::{Angle, Length};

use crate::number::put_real;

/// A layer and the colour it is shown in (AutoCAD colour index; 7 is black or white).
pub(super) type Layer = (u32, u8);

/// How the lines of every file begin, numbers left out: no other program writes a header as short as this.
const BEGINS: &[&str] = &[
    "0",
    "SECTION",
    "2",
    "HEADER",
    "9",
    "$ACADVER",
    "1",
    "AC1009",
    "9",
    "$EXTMIN",
    "10",
    "",
    "20",
    "",
    "9",
    "$EXTMAX",
    "10",
    "",
    "20",
    "",
    "0",
    "ENDSEC",
    "0",
    "SECTION",
    "2",
    "TABLES",
    "0",
    "TABLE",
    "2",
    "LTYPE",
    "70",
    "1",
    "0",
    "LTYPE",
    "2",
    "CONTINUOUS",
    "70",
    "0",
    "3",
    "Solid line",
];

/// Whether these are the bytes of a pattern or a lay that was written here.
pub fn is_ours(bytes: &[u8]) -> bool {
    let begun = BEGINS.iter().zip(bytes.split(|b| *b == b'\n'));
    let mut alike = begun.map(|(ours, line)| ours.is_empty() || ours.as_bytes() == line);
    alike.all(|alike| alike) && bytes.ends_with(b"\n0\nEOF\n")
}

/// A file being written.
#[derive(Default)]
pub(super) struct Writer {
    out: String,
}

impl Writer {
    pub fn done(mut self) -> String {
        self.word(0, "EOF");
        self.out
    }

    pub fn word(&mut self, code: u32, value: &str) {
        // Writing into a string cannot fail.
        let _ = writeln!(self.out, "{code}\n{value}");
    }

    fn whole(&mut self, code: u32, value: u32) {
        let _ = writeln!(self.out, "{code}\n{value}");
    }

    fn real(&mut self, code: u32, value: f64) {
        let _ = writeln!(self.out, "{code}");
        put_real(&mut self.out, value);
        self.out.push('\n');
    }

    pub fn place(&mut self, code: u32, p: Point) {
        self.real(code, p.x);
        self.real(code + 10, p.y);
    }

    pub fn section(&mut self, name: &str, write: impl FnOnce(&mut Self)) {
        self.word(0, "SECTION");
        self.word(2, name);
        write(self);
        self.word(0, "ENDSEC");
    }

    /// Version, extent, line type and layers: what a program wants to know before it draws.
    pub fn head(&mut self, extent: Rect, layers: &[Layer]) {
        self.section("HEADER", |w| {
            w.word(9, "$ACADVER");
            w.word(1, "AC1009");
            w.word(9, "$EXTMIN");
            w.place(10, extent.origin());
            w.word(9, "$EXTMAX");
            w.place(10, Point::new(extent.x1, extent.y1));
        });
        self.section("TABLES", |w| {
            w.table("LTYPE", 1, |w| {
                w.word(0, "LTYPE");
                w.word(2, "CONTINUOUS");
                w.whole(70, 0);
                w.word(3, "Solid line");
                w.whole(72, 65);
                w.whole(73, 0);
                w.real(40, 0.0);
            });
            w.table("LAYER", layers.len(), |w| {
                for (layer, colour) in layers {
                    w.word(0, "LAYER");
                    w.whole(2, *layer);
                    w.whole(70, 0);
                    w.whole(62, u32::from(*colour));
                    w.word(6, "CONTINUOUS");
                }
            });
        });
    }

    fn table(&mut self, name: &str, entries: usize, write: impl FnOnce(&mut Self)) {
        self.word(0, "TABLE");
        self.word(2, name);
        let _ = writeln!(self.out, "70\n{entries}");
        write(self);
        self.word(0, "ENDTAB");
    }

    pub fn block(&mut self, name: &str, write: impl FnOnce(&mut Self)) {
        self.word(0, "BLOCK");
        self.whole(8, 1);
        self.word(2, name);
        self.whole(70, 0);
        self.place(10, Point::ORIGIN);
        self.word(3, name);
        write(self);
        self.word(0, "ENDBLK");
        self.whole(8, 1);
    }

    pub fn insert(&mut self, block: &str, at: Point) {
        self.word(0, "INSERT");
        self.whole(8, 1);
        self.word(2, block);
        self.place(10, at);
    }

    /// A line of two points as LINE, of more as POLYLINE; the first point of a closed one not repeated.
    pub fn path(&mut self, layer: u32, points: &[Point], closed: bool) {
        match points {
            [] => {}
            [a, b] if !closed => {
                self.word(0, "LINE");
                self.whole(8, layer);
                self.place(10, *a);
                self.place(11, *b);
            }
            points => {
                self.word(0, "POLYLINE");
                self.whole(8, layer);
                self.whole(66, 1);
                self.whole(70, u32::from(closed));
                for p in points {
                    self.word(0, "VERTEX");
                    self.whole(8, layer);
                    self.place(10, *p);
                }
                self.word(0, "SEQEND");
                self.whole(8, layer);
            }
        }
    }

    pub fn point(&mut self, layer: u32, at: Point) {
        self.word(0, "POINT");
        self.whole(8, layer);
        self.place(10, at);
    }

    /// A notch: a point whose thickness is how deep it is cut and whose angle is into the piece.
    pub fn notch(&mut self, layer: u32, at: Point, depth: Length, into: Angle) {
        self.point(layer, at);
        self.real(39, depth.to_mm());
        self.real(50, into.to_deg());
    }

    pub fn text(&mut self, layer: u32, at: Point, height: Length, along: Angle, words: &str) {
        self.word(0, "TEXT");
        self.whole(8, layer);
        self.place(10, at);
        self.real(40, height.to_mm());
        let words = ascii(words);
        self.word(1, &words);
        if along != Angle::ZERO {
            self.real(50, along.to_deg());
        }
    }
}

/// Words in one line of ASCII: any other letter by its code, as DXF has it.
fn ascii(words: &str) -> String {
    let mut out = String::new();
    for c in crate::words::one_line(words).chars() {
        if c.is_ascii() && c != '\\' {
            out.push(c);
        } else {
            for unit in c.encode_utf16(&mut [0; 2]) {
                let _ = write!(out, "\\U+{unit:04X}");
            }
        }
    }
    out
}
