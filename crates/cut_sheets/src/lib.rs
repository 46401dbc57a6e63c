//! Sheets of what is cut: every piece before the wash, as the cutter, the pattern maker and the workroom need it.
//!
//! A piece is drawn with its sewn line, allowances, notches and grain ([`piece_sheet`]), all pieces of a
//! size beside one another ([`pieces_overview`]), all sizes of a piece on each other ([`nest_sheet`]), the
//! corners as they lie when the seam is sewn ([`corner_sheet`]), a lay on its cloth ([`lay_sheet`]), and
//! patterns at true size on paper of any width ([`PatternSet`]). Everything comes out as a
//! [`drawing::Sheet`], in the colours, line weights and letters of every other drawing.
//!
//! ```
//! use cut_sheets::{PieceCaption, piece_number, piece_sheet};
//! use cutting::{Plan, cut};
//!
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref()).unwrap();
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//! let cut = cut(&garment, &Plan::of(&loaded.style));
//!
//! let piece = cut.pieces.iter().find(|piece| piece.code() == "yoke").unwrap();
//! let caption = PieceCaption {
//!     number: piece_number(&garment.pattern, piece),
//!     style_and_size: true,
//!     scale: 0.2,
//!     type_size: 1.0,
//! };
//! let sheet = piece_sheet(piece, &caption, words::Words::english());
//! assert!(sheet.texts().any(|text| text.words.contains("Yoke")));
//! ```

mod corner_sheet;
mod laid_piece;
mod lay_sheet;
mod lay_words;
mod listed_piece;
mod mark_legend;
mod nest_sheet;
mod packing;
mod pattern_set;
mod piece_overview;
mod piece_sheet;
mod piece_words;
#[cfg(test)]
mod samples;

pub use corner_sheet::corner_sheet;
pub use laid_piece::PieceCaption;
pub use lay_sheet::{LayMarks, lay_sheet, lay_sheet_at};
pub use listed_piece::ListedPiece;
pub use mark_legend::mark_legend;
pub use nest_sheet::{NestLook, nest_sheet};
pub use pattern_set::{CHECK_SQUARE, OnPaper, PatternSet, PatternSheet, nest_point};
pub use piece_overview::{
    PiecesOverview, grows, is_second_copy, nests_overview, piece_number, pieces_overview,
};
pub use piece_sheet::{piece_figure, piece_sheet, piece_thumbnail};
