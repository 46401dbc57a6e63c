//! What is written on a piece.

use draft::PieceId;
use geometry::tolerance::NO_DIRECTION;
use geometry::{Point, Vec2};
use style::{Size, StyleDoc};

use crate::allowance_lie::side_of;
use crate::piece::Part;

/// The words on a cut piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// "SY-101 Ferryman".
    pub style: String,
    /// "Front"; "Waistband, left half".
    pub piece: String,
    /// The size.
    pub size: Size,
    /// "cut 1 pair, mirrored", "cut 1, mirrored".
    pub cut: String,
    /// "drawn: left" where the copies are the wearer's left and right; else empty.
    pub side: String,
    /// The cloth by name.
    pub cloth: String,
    /// Where the words begin: a place inside the piece, in its frame.
    pub at: Point,
    /// The direction in which they run: along the grain.
    pub along: Vec2,
}

impl Label {
    /// The words, line by line, without empty lines.
    pub fn lines(&self) -> Vec<String> {
        [
            self.style.clone(),
            self.piece.clone(),
            format!("size {}", self.size),
            self.cut.clone(),
            self.side.clone(),
            self.cloth.clone(),
        ]
        .into_iter()
        .filter(|line| !line.is_empty())
        .collect()
    }
}

/// How many to cut, in words.
pub(crate) fn cut_words(as_drawn: u32, mirrored: u32) -> String {
    match (as_drawn, mirrored) {
        (1, 1) => "cut 1 pair, mirrored".to_owned(),
        (a, m) if a == m => format!("cut {a} pairs, mirrored"),
        (a, 0) => format!("cut {a} as drawn"),
        (0, m) => format!("cut {m} mirrored"),
        (a, m) => format!("cut {a} as drawn, {m} mirrored"),
    }
}

/// Whose side the copies are on, in words; empty for pieces of neither side.
pub(crate) fn side_words(piece: PieceId, as_drawn: u32, mirrored: u32) -> String {
    let side = |mirrored| side_of(piece, mirrored).map(|ply| ply.word());
    match (as_drawn > 0, mirrored > 0) {
        (true, true) => side(false).map(|s| format!("drawn: {s}")),
        (true, false) => side(false).map(ToOwned::to_owned),
        (false, true) => side(true).map(|s| format!("{s}, cut mirrored")),
        (false, false) => None,
    }
    .unwrap_or_default()
}

pub(crate) struct Named<'a> {
    pub doc: &'a StyleDoc,
    pub size: Size,
    pub piece: PieceId,
    pub part: Part,
    pub copies: (u32, u32),
    pub cloth: &'a str,
    pub grain: (Point, Point),
}

pub(crate) fn label(named: &Named<'_>) -> Label {
    let (a, m) = named.copies;
    let name = match named.part {
        Part::Whole => named.piece.name().to_owned(),
        part => format!("{}, {}", named.piece.name(), part.word()),
    };
    let along = named.grain.1 - named.grain.0;
    let reach = along.hypot();
    Label {
        style: named.doc.style.to_string(),
        piece: name,
        size: named.size,
        cut: cut_words(a, m),
        side: side_words(named.piece, a, m),
        cloth: named.cloth.to_owned(),
        at: named.grain.0,
        along: if reach > NO_DIRECTION {
            along / reach
        } else {
            Vec2::new(0.0, 1.0)
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pairs_and_single_pieces_are_told_apart() {
        assert_eq!(cut_words(1, 1), "cut 1 pair, mirrored");
        assert_eq!(cut_words(2, 2), "cut 2 pairs, mirrored");
        assert_eq!(cut_words(1, 0), "cut 1 as drawn");
        assert_eq!(cut_words(0, 1), "cut 1 mirrored");
        assert_eq!(side_words(PieceId::Front, 1, 1), "drawn: left");
        assert_eq!(side_words(PieceId::Back, 1, 1), "drawn: right");
        assert_eq!(side_words(PieceId::Back, 0, 1), "left, cut mirrored");
        assert_eq!(
            side_words(PieceId::BackPocketLeft, 0, 1),
            "left, cut mirrored"
        );
        assert_eq!(side_words(PieceId::Band, 1, 0), "");
    }
}
