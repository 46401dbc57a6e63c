//! From the solved garment to sheets of marks in millimetres.
//!
//! A [`Sheet`] is a neutral drawing: filled areas, lines and words in layers, each mark tied to the
//! part of the garment it stands for. [`svg`] writes one down and computes nothing. The garment
//! views are not pictures: they are the solved pieces, laid flat as an inspector lays a pair to
//! measure it, with every row of stitches mapped along. What is cut is drawn elsewhere, with the same
//! [`palette`], [`lettering`] and [`dimension`] lines.
//!
//! ```
//! use drawing::{View, garment_view, svg};
//! use sewing::Face;
//!
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref()).unwrap();
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//!
//! let front = garment_view(&garment, View::Front, Face::Outside, words::Words::english());
//! assert!(front.texts().any(|text| text.words == "wearer's left"));
//! assert!(svg(&front).starts_with("<svg"));
//! ```

mod art;
mod callouts;
pub mod dimension;
pub mod lettering;
mod measure_board;
mod measure_sheet;
pub mod palette;
mod plate;
#[cfg(test)]
mod samples;
mod section;
mod sheet;
mod shown_units;
mod svg;
mod view;
mod yarn_plan;

pub use callouts::with_callouts;
pub use flat::View;
pub use measure_sheet::measure_sheets;
pub use plate::{DrawnStitches, Plate, PlateId, PlateScale, plate, plates};
pub use section::{
    End, RowOf, Section, SectionPly, SectionRow, SectionWidth, seam_section,
    seam_section_thumbnail, section_of,
};
pub use sheet::{
    Anchor, Layer, Mark, Shape, Sheet, Stroke, Text, circle, closed, on_paper, open, to_paper,
};
pub use svg::{is_our_svg, svg};
pub use view::{garment_picture, garment_view};
pub use yarn_plan::{PlanFor, yarn_plan_sheet};
