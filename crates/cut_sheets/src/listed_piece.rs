//! What a cut piece is called in every list and on every sheet: its number, its name and which copy it is.

use cutting::{CutPiece, CutSize};
use draft::Pattern;
use sewing::On;
use words::{Said, Words};

use crate::piece_overview::piece_number;

/// A cut piece as the lists name it. The piece sheets show each as it is cut, so what is cut as drawn is what
/// they show, also where the draft is its mirror image.
#[derive(Clone, Debug, PartialEq)]
pub struct ListedPiece {
    /// Its number in the list of pieces.
    pub number: Option<usize>,
    /// "Yoke", "Waistband, left half".
    pub piece: Said,
    /// Whether its sheet shows the mirror image of the draft.
    pub turned: bool,
    /// Whether it is the second of two copies that are not cut alike.
    pub second: bool,
}

impl ListedPiece {
    /// Of one cut piece.
    pub fn of(pattern: &Pattern, piece: &CutPiece) -> ListedPiece {
        ListedPiece {
            number: piece_number(pattern, piece),
            piece: piece.said(),
            turned: piece.is_cut_mirrored(),
            second: piece.pair && piece.on == On::Mirrored,
        }
    }

    /// Every cut piece of a size.
    pub fn all(pattern: &Pattern, cut: &CutSize) -> Vec<ListedPiece> {
        let pieces = cut.pieces.iter();
        pieces
            .map(|piece| ListedPiece::of(pattern, piece))
            .collect()
    }

    /// "Yoke", and of two that differ the second: "Yoke, mirrored copy".
    pub fn name(&self, words: &Words) -> String {
        let name = words.saying(&self.piece);
        if self.second {
            words.cut_second_copy(name)
        } else {
            name
        }
    }
}
