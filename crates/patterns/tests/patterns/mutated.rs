//! Files with something wrong in them: a thousand of each kind, from a stated seed.
//!
//! What has to hold: the reader answers, with a pattern or with words and a place; it never panics, and
//! what it gives back is within the limits. The work it does is bounded by counts in the reader, not by a
//! clock here; a reader that hangs is a test that never ends.

use patterns::limits::{MOST_MARKS, MOST_ON_CUT, MOST_PIECES, MOST_POINTS};
use patterns::{PatternFile, Place, Read, ReadError, dxf, svg};

use crate::common::ferryman;

/// The next of a run of numbers (xorshift, Marsaglia 2003).
struct Chance(u64);

impl Chance {
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % n.max(1) as u64) as usize
    }
}

const NUMBERS: &[&str] = &[
    "1e308",
    "-1e308",
    "1e-320",
    "NaN",
    "inf",
    "99999999999999999999",
    "-0",
    "0x10",
    "1e5",
    "",
    "2147483648",
    "-1",
    "65536",
];

/// One change of one kind.
fn mutated(text: &str, nests: &[&str], chance: &mut Chance) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    let mut lines: Vec<&str> = text.lines().collect();
    let n = lines.len();
    match chance.below(8) {
        0 => {
            for _ in 0..=chance.below(20) {
                let at = chance.below(bytes.len());
                bytes[at] ^= 1 << chance.below(8);
            }
            return bytes;
        }
        1 => {
            bytes.truncate(chance.below(bytes.len()));
            return bytes;
        }
        2 => lines.swap(chance.below(n), chance.below(n)),
        3 => {
            for _ in 0..=chance.below(5) {
                lines[chance.below(n)] = NUMBERS[chance.below(NUMBERS.len())];
            }
        }
        4 => {
            lines.remove(chance.below(n));
        }
        5 => {
            let (from, many) = (chance.below(n), chance.below(200));
            let part: Vec<&str> = lines.iter().skip(from).take(many).copied().collect();
            let at = chance.below(n);
            lines.splice(at..at, part);
        }
        6 => {
            let nest = nests[chance.below(nests.len())];
            let at = chance.below(n);
            lines.splice(at..at, std::iter::repeat_n(nest, 1 + chance.below(3_000)));
        }
        _ => {
            // A number inside a line becomes another.
            let at = chance.below(n);
            let words: Vec<&str> = lines[at].split(' ').collect();
            let k = chance.below(words.len());
            let with = NUMBERS[chance.below(NUMBERS.len())];
            let changed: Vec<&str> = words
                .iter()
                .enumerate()
                .map(|(j, w)| if j == k { with } else { *w })
                .collect();
            let changed = changed.join(" ");
            let mut out: Vec<String> = lines.iter().map(ToString::to_string).collect();
            out[at] = changed;
            return out.join("\n").into_bytes();
        }
    }
    lines.join("\n").into_bytes()
}

/// What any answer has to be.
fn judged(answer: Result<Read, ReadError>, lines: usize) -> bool {
    match answer {
        Ok(read) => {
            let pieces = &read.pattern.pieces;
            assert!(!pieces.is_empty() && pieces.len() <= MOST_PIECES);
            let mut points = 0;
            for piece in pieces {
                assert!(piece.cut.len() >= 3 && piece.cut.len() <= MOST_ON_CUT);
                assert!(piece.area().to_mm2() >= 1.0);
                assert!(piece.cut.iter().all(|p| p.is_finite() && p.x.abs() < 3e5));
                assert!(piece.inner.len() <= MOST_MARKS && piece.texts.len() <= 2 * MOST_MARKS);
                points += piece.cut.len() + piece.sewn.iter().map(|s| s.line.len()).sum::<usize>();
            }
            assert!(points <= 2 * MOST_POINTS);
            true
        }
        Err(why) => {
            assert!(!why.what.is_empty() && !why.instead.is_empty());
            let (Place::Line(line) | Place::LineColumn(line, _)) = why.place else {
                return false;
            };
            assert!((1..=lines + 2).contains(&line), "{why}");
            false
        }
    }
}

/// The demo's smaller pieces, so that a thousand files are read in seconds.
fn small() -> PatternFile {
    let mut pattern = ferryman();
    pattern
        .pieces
        .retain(|piece| piece.size == "32x32" && piece.cut.len() < 60);
    pattern.pieces.truncate(4);
    pattern
}

fn thousand(text: &str, nests: &[&str], read: impl Fn(&[u8]) -> Result<Read, ReadError>) {
    let mut chance = Chance(0x5a17_a125_4f4e_1234);
    let mut read_all_the_same = 0;
    for _ in 0..1_000 {
        let bytes = mutated(text, nests, &mut chance);
        let lines = bytes.iter().filter(|b| **b == b'\n').count() + 1;
        if judged(read(&bytes), lines) {
            read_all_the_same += 1;
        }
    }
    // Neither everything nor nothing may pass: then the changes would not be worth making.
    assert!(
        (50..950).contains(&read_all_the_same),
        "{read_all_the_same}"
    );
}

#[test]
fn a_thousand_spoilt_dxf_files_are_answered() {
    let text = dxf::write(&small());
    let nests = [
        "0\nBLOCK\n8\n1\n2\nX",
        "0\nINSERT\n8\n1\n2\nYOKE_32X32\n10\n0\n20\n0",
        "0\nPOLYLINE\n8\n1\n66\n1",
        "0\nSECTION\n2\nBLOCKS",
        "0\nLWPOLYLINE\n8\n1\n70\n1\n10\n1\n20\n1\n42\n1e9\n10\n5\n20\n5",
    ];
    thousand(&text, &nests, |bytes| dxf::read(bytes, None));
}

#[test]
fn a_thousand_spoilt_svg_files_are_answered() {
    let text = svg::write(&small());
    let nests = [
        "<g>",
        "<g transform=\"scale(10)\">",
        "<path d=\"M0 0 A 1e5 1 0 1 1 5 5 Z\"/>",
        "<svg>",
        "<!-- -- -->",
        "<circle r=\"99999\"/>",
    ];
    thousand(&text, &nests, svg::read);
}

/// Blocks that hold each other twice, thirty deep, would be a thousand million entities.
#[test]
fn blocks_that_multiply_are_refused_before_they_do() {
    let mut text = String::from("0\nSECTION\n2\nBLOCKS\n");
    let insert = |n: usize| format!("0\nINSERT\n8\n1\n2\nB{n}\n10\n1\n20\n1\n");
    for n in 0..30 {
        text += &format!(
            "0\nBLOCK\n2\nB{n}\n{}{}0\nENDBLK\n",
            insert(n + 1),
            insert(n + 1)
        );
    }
    text += "0\nBLOCK\n2\nB30\n0\nPOINT\n8\n2\n10\n0\n20\n0\n0\nENDBLK\n0\nENDSEC\n";
    text += &format!(
        "0\nSECTION\n2\nENTITIES\n{}0\nTEXT\n8\n1\n10\n0\n20\n0\n1\nUnits: METRIC\n0\nENDSEC\n0\nEOF\n",
        insert(0)
    );
    let why = dxf::read(text.as_bytes(), None).unwrap_err().to_string();
    assert!(why.contains("more than 2000000 entities"), "{why}");
    let own = text.replace("2\nB1\n10", "2\nB0\n10");
    let why = dxf::read(own.as_bytes(), None).unwrap_err().to_string();
    assert!(why.contains("more than 64 deep"), "{why}");
}

#[test]
fn entities_of_xml_that_multiply_are_refused() {
    let mut text = String::from("<!DOCTYPE svg [<!ENTITY a0 \"aaaaaaaaaa\">\n");
    for n in 1..30 {
        text += &format!("<!ENTITY a{n} \"&a{};&a{};\">\n", n - 1, n - 1);
    }
    text += "]><svg width=\"1mm\" height=\"1mm\" viewBox=\"0 0 1 1\"><text>&a29;</text></svg>";
    let why = svg::read(text.as_bytes()).unwrap_err();
    assert!(why.what.contains("not an SVG drawing"), "{why}");
}
