//! From the solved garment to sheets of marks in millimetres.
//!
//! A [`Sheet`] is a neutral drawing: filled areas, lines and words in layers, each mark tied to the
//! part of the garment it stands for. [`svg`] writes one down and computes nothing. The garment
//! views are not pictures: they are the solved pieces, laid flat as an inspector lays a pair to
//! measure it, with every row of stitches mapped along.

mod art;
mod corner_sheet;
mod dimension;
mod lay_sheet;
mod lay_words;
mod lettering;
mod measure_board;
mod measure_sheet;
mod nest_sheet;
mod packing;
pub mod palette;
mod pattern_set;
mod piece_overview;
mod piece_sheet;
mod piece_words;
mod plate;
#[cfg(test)]
mod samples;
mod section;
mod sheet;
mod svg;
mod view;
mod yarn_plan;

pub use corner_sheet::corner_sheet;
pub use flat::View;
pub use lay_sheet::{LayMarks, lay_sheet, lay_sheet_at};
pub use measure_board::measure_number;
pub use measure_sheet::measure_sheets;
pub use nest_sheet::{NestLook, nest_sheet};
pub use pattern_set::{CHECK_SQUARE, OnPaper, PatternSet, PatternSheet, nest_point};
pub use piece_overview::{
    PiecesOverview, grows, is_second_copy, nests_overview, piece_number, pieces_overview,
};
pub use piece_sheet::{PieceCaption, piece_sheet, piece_thumbnail};
pub use plate::{DrawnStitches, Plate, PlateScale, plate, plates};
pub use section::{
    End, RowOf, Section, SectionPly, SectionRow, SectionWidth, seam_section,
    seam_section_thumbnail, section_of,
};
pub use sheet::{
    Anchor, Layer, Mark, Shape, Sheet, Stroke, Text, circle, closed, on_paper, open, to_paper,
};
pub use svg::{is_our_svg, svg};
pub use view::{garment_picture, garment_view};
pub use yarn_plan::yarn_plan_sheet;
