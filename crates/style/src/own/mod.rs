//! A pattern the maker brought: pieces read from a pattern file, and what the style says of them.
//!
//! The pieces lie in a file of their own inside the style's folder ([`PieceFile`]), as they were read: outlines in
//! millimetres with their corners, notches and grain, in each size. The style's `[pattern]` says which of them is
//! the front, the back and so on, and which edge runs from which corner to which. [`OwnPattern`] is both together.

mod pieces;
mod read;
mod resolve;
mod save;

use std::collections::BTreeMap;
use std::sync::Arc;

use indexmap::IndexMap;
use serde::Serialize;
use trade::{Length, Share};

use crate::choices::choices;
use crate::details::ArtPath;
use crate::{EdgeId, PieceId, Size};

pub use pieces::{PieceBlock, PieceFile, piece_file_text, read_piece_file, toml_text};
pub(crate) use read::pattern;
pub(crate) use resolve::take_pattern;
pub(crate) use save::plain;
pub use save::{Beside, save_beside, with_pattern};

/// A place on a piece: x to the right, y up.
pub type Place = [Length; 2];

/// The `[pattern]` section.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnPattern {
    /// The file of pieces, inside the style's folder.
    pub file: ArtPath,
    /// For which state of the cloth it is drawn.
    pub drawn: Drawn,
    /// What is cut beyond the sewn line, for pieces of which the file has the cut line only.
    pub allowance: Option<Length>,
    /// The same along one edge.
    pub allowances: IndexMap<EdgeId, Length>,
    /// The pieces; those that can be brought are in [`OWN_PIECES`].
    pub pieces: IndexMap<PieceId, OwnPiece>,
    /// What the wash takes from the shell along warp and weft; only there when the style was read from its folder.
    #[serde(skip)]
    pub shrinkage: Option<[Share; 2]>,
}

/// For which state of the cloth a pattern is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// For the finished garment: cloth does not shrink any more.
    AfterWash,
    /// Larger by what the first wash takes.
    BeforeWash,
}
choices!(Drawn: AfterWash = "after wash", BeforeWash = "before wash");

/// What the style says of one piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnPiece {
    /// Its name in the file of pieces.
    pub piece: String,
    /// Its edges in the order in which they follow one another round the piece.
    pub edges: Vec<OwnEdge>,
    /// Its outline in each size; only there when the style was read from its folder.
    #[serde(skip)]
    pub outlines: Arc<BTreeMap<Size, OwnOutline>>,
}

/// An edge, from one corner to another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OwnEdge {
    /// Which.
    #[serde(rename = "name")]
    pub id: EdgeId,
    /// The corner it begins at.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
}

/// A piece in one size, as it lies in the file.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnOutline {
    /// Its edges in order, each with both its ends; the last ends where the first begins.
    pub edges: Vec<(EdgeId, Vec<Place>)>,
    /// Whether that is the line it is sewn along; else it is the line it is cut along.
    pub sewn: bool,
    /// The grain line.
    pub grain: Option<[Place; 2]>,
    /// Its notches.
    pub notches: Vec<Place>,
}

impl OwnPattern {
    /// The outline of a piece in a size, if the pattern has it.
    #[must_use]
    pub fn outline(&self, piece: PieceId, size: Size) -> Option<&OwnOutline> {
        self.pieces.get(&piece)?.outlines.get(&size)
    }

    /// What is cut beyond the sewn line of an edge; `None` where the style does not say.
    #[must_use]
    pub fn allowance(&self, edge: EdgeId) -> Option<Length> {
        self.allowances.get(&edge).copied().or(self.allowance)
    }
}

/// A piece that can be brought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OwnPieceName {
    /// Which; the style file names it by its code, such as `back`.
    pub id: PieceId,
    /// Its name for a person.
    pub title: &'static str,
    /// Which of its edges may be left out, and what becomes of each then.
    pub optional: &'static [(EdgeId, &'static str)],
}

impl OwnPieceName {
    /// Its edges in order round the piece.
    #[must_use]
    pub const fn edges(&self) -> &'static [EdgeId] {
        self.id.edges()
    }

    /// What becomes of an edge that is left out; `None` where it is needed.
    #[must_use]
    pub fn left_out(&self, edge: EdgeId) -> Option<&'static str> {
        let found = self.optional.iter().find(|(id, _)| *id == edge);
        found.map(|(_, becomes)| *becomes)
    }

    /// The codes of its edges: "fly, crotch, inseam".
    #[must_use]
    pub fn edge_list(&self) -> String {
        let codes: Vec<&str> = self.edges().iter().map(|edge| edge.code()).collect();
        codes.join(", ")
    }
}

/// The pieces that can be brought, with their edges. Each runs round the piece from the first edge on; the pair to a
/// left piece is its mirror image, so either may be drawn.
pub const OWN_PIECES: &[OwnPieceName] = &[
    OwnPieceName {
        id: PieceId::Front,
        title: "front",
        optional: &[
            (
                EdgeId::Crotch,
                "`fly` runs to the crotch point, and the chart's fly length says where the fly ends",
            ),
            (
                EdgeId::Mouth,
                "the front reaches the outseam, and the chart's mouth is cut into it",
            ),
        ],
    },
    needing_all(PieceId::Back, "back"),
    needing_all(PieceId::Yoke, "yoke"),
    OwnPieceName {
        id: PieceId::Band,
        title: "waistband",
        optional: &[(
            EdgeId::Overlap,
            "`join` runs on to the right end, and the chart's overlap is its last part",
        )],
    },
    OwnPieceName {
        id: PieceId::PocketFacing,
        title: "hip pocket facing",
        optional: &[
            (
                EdgeId::WaistUnder,
                "`waist` runs to the inner edge, and the mouth says where it goes under the front",
            ),
            (
                EdgeId::SideUnder,
                "`side` runs from the inner edge, and the mouth says where it comes out from the front",
            ),
        ],
    },
    needing_all(PieceId::CoinPocket, "coin pocket"),
    needing_all(PieceId::BackPocketLeft, "left back pocket"),
    needing_all(PieceId::BackPocketRight, "right back pocket"),
];

const fn needing_all(id: PieceId, title: &'static str) -> OwnPieceName {
    OwnPieceName {
        id,
        title,
        optional: &[],
    }
}

/// The piece of this code, if it can be brought.
#[must_use]
pub fn own_piece(code: &str) -> Option<&'static OwnPieceName> {
    OWN_PIECES.iter().find(|piece| piece.id.code() == code)
}
