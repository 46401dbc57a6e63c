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

use crate::Size;
use crate::choices::choices;
use crate::details::ArtPath;

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
    /// The same along one edge, by the edge's name.
    pub allowances: IndexMap<String, Length>,
    /// The pieces, by the name the program has for them; names from [`OWN_PIECES`].
    pub pieces: IndexMap<String, OwnPiece>,
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
    /// Its name, from [`OWN_PIECES`].
    pub name: &'static str,
    /// The corner it begins at.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
}

/// A piece in one size, as it lies in the file.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnOutline {
    /// Its edges in order, each with both its ends; the last ends where the first begins.
    pub edges: Vec<(&'static str, Vec<Place>)>,
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
    pub fn outline(&self, piece: &str, size: Size) -> Option<&OwnOutline> {
        self.pieces.get(piece)?.outlines.get(&size)
    }

    /// What is cut beyond the sewn line of an edge; `None` where the style does not say.
    #[must_use]
    pub fn allowance(&self, edge: &str) -> Option<Length> {
        self.allowances.get(edge).copied().or(self.allowance)
    }
}

/// A piece that can be brought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OwnPieceName {
    /// Its name, such as `back`.
    pub name: &'static str,
    /// Its name for a person.
    pub title: &'static str,
    /// Its edges in order round the piece, and what becomes of one that is left out; `None` where it is needed.
    pub edges: &'static [(&'static str, Option<&'static str>)],
}

impl OwnPieceName {
    /// The names of its edges: "fly, crotch, inseam".
    #[must_use]
    pub fn edge_list(&self) -> String {
        let names: Vec<&str> = self.edges.iter().map(|(name, _)| *name).collect();
        names.join(", ")
    }
}

/// The pieces that can be brought, with their edges. Each runs round the piece from the first edge on; the pair to a
/// left piece is its mirror image, so either may be drawn.
pub const OWN_PIECES: &[OwnPieceName] = &[
    OwnPieceName {
        name: "front",
        title: "front",
        edges: &[
            ("fly", None),
            (
                "crotch",
                Some(
                    "`fly` runs to the crotch point, and the chart's fly length says where the fly ends",
                ),
            ),
            ("inseam", None),
            ("hem", None),
            ("side", None),
            (
                "mouth",
                Some("the front reaches the outseam, and the chart's mouth is cut into it"),
            ),
            ("waist", None),
        ],
    },
    OwnPieceName {
        name: "back",
        title: "back",
        edges: &[
            ("seat", None),
            ("inseam", None),
            ("hem", None),
            ("side", None),
            ("top", None),
        ],
    },
    OwnPieceName {
        name: "yoke",
        title: "yoke",
        edges: &[
            ("centre", None),
            ("lower", None),
            ("side", None),
            ("top", None),
        ],
    },
    OwnPieceName {
        name: "band",
        title: "waistband",
        edges: &[
            ("join", None),
            (
                "overlap",
                Some("`join` runs on to the right end, and the chart's overlap is its last part"),
            ),
            ("end_right", None),
            ("inner", None),
            ("end_left", None),
        ],
    },
    OwnPieceName {
        name: "pocket_facing",
        title: "hip pocket facing",
        edges: &[
            ("waist", None),
            (
                "waist_under",
                Some(
                    "`waist` runs to the inner edge, and the mouth says where it goes under the front",
                ),
            ),
            ("inner", None),
            (
                "side_under",
                Some(
                    "`side` runs from the inner edge, and the mouth says where it comes out from the front",
                ),
            ),
            ("side", None),
        ],
    },
    OwnPieceName {
        name: "coin_pocket",
        title: "coin pocket",
        edges: &[
            ("left", None),
            ("foot", None),
            ("right", None),
            ("top", None),
        ],
    },
    OwnPieceName {
        name: "back_pocket_left",
        title: "left back pocket",
        edges: BACK_POCKET,
    },
    OwnPieceName {
        name: "back_pocket_right",
        title: "right back pocket",
        edges: BACK_POCKET,
    },
];

const BACK_POCKET: &[(&str, Option<&str>)] = &[
    ("inner", None),
    ("foot_inner", None),
    ("foot_outer", None),
    ("outer", None),
    ("top", None),
];

/// The piece of this name.
#[must_use]
pub fn own_piece(name: &str) -> Option<&'static OwnPieceName> {
    OWN_PIECES.iter().find(|piece| piece.name == name)
}
