//! What is written on a piece.

use draft::PieceId;
use geometry::tolerance::NO_DIRECTION;
use geometry::{Point, Vec2};
use style::{Ply, Size, StyleDoc};
use words::{Said, Words, key, say};

use crate::allowance_lie::side_of;
use crate::piece::Part;

/// What is written on a cut piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// "SY-101 Ferryman".
    pub style: String,
    /// "Front"; "Waistband, left half".
    pub piece: Said,
    /// The size.
    pub size: Size,
    /// "cut 1 pair, mirrored", "cut 1, mirrored".
    pub cut: Said,
    /// "drawn: left" where the copies are the wearer's left and right; else nothing.
    pub side: Option<Said>,
    /// The cloth by name.
    pub cloth: String,
    /// Where the words begin: a place inside the piece, in its frame.
    pub at: Point,
    /// The direction in which they run: along the grain.
    pub along: Vec2,
}

impl Label {
    /// The words, line by line, without empty lines.
    pub fn lines(&self, words: &Words) -> Vec<String> {
        [
            self.style.clone(),
            words.saying(&self.piece),
            words.cut_size(self.size),
            words.saying(&self.cut),
            self.side_in(words),
            self.cloth.clone(),
        ]
        .into_iter()
        .filter(|line| !line.is_empty())
        .collect()
    }

    /// Whose side the copies are on, in words; empty for pieces of neither side.
    pub fn side_in(&self, words: &Words) -> String {
        let side = self.side.as_ref();
        side.map_or_else(String::new, |side| words.saying(side))
    }
}

/// How many to cut.
pub(crate) fn how_many(as_drawn: u32, mirrored: u32) -> Said {
    match (as_drawn, mirrored) {
        (pairs, m) if pairs == m => say::CutPairs { pairs }.into(),
        (count, 0) => say::CutAsDrawn { count }.into(),
        (0, count) => say::CutMirrored { count }.into(),
        (as_drawn, mirrored) => say::CutBoth { as_drawn, mirrored }.into(),
    }
}

/// Whose side the copies are on; nothing for pieces of neither side.
pub(crate) fn whose_side(piece: PieceId, as_drawn: u32, mirrored: u32) -> Option<Said> {
    let side = |mirrored| side_of(piece, mirrored).map(Ply::key);
    match (as_drawn > 0, mirrored > 0) {
        (true, true) => side(false).map(|side| say::CutSideDrawn { side }.into()),
        (true, false) => side(false).map(Said::from),
        (false, true) => side(true).map(|side| say::CutSideMirrored { side }.into()),
        (false, false) => None,
    }
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
    let with_strip = named.piece == PieceId::FlyFacing && a + m > 2;
    let along = named.grain.1 - named.grain.0;
    let reach = along.hypot();
    Label {
        style: named.doc.style.to_string(),
        piece: if with_strip {
            key::PIECE_FLY_FACING_AND_STRIP.into()
        } else {
            named.part.of(named.piece)
        },
        size: named.size,
        cut: how_many(a, m),
        side: whose_side(named.piece, a, m),
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
        let words = Words::english();
        let cut_words = |as_drawn, mirrored| words.say(how_many(as_drawn, mirrored));
        let side_words = |piece, as_drawn, mirrored| {
            whose_side(piece, as_drawn, mirrored).map_or_else(String::new, |said| words.say(said))
        };
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
