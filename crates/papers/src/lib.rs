//! What leaves the house: the production pack, set in type and written as a PDF.
//!
//! A workroom that has never met the maker sews from this one document. [`assemble`] fills a [`Pack`]
//! with words, figures and drawings from the sewn garments of a style, rounding once and in the maker's
//! units; [`pack_pdf`] sets it on A4 pages. First what the workroom reads, in the order of its work: a cover
//! with whom to ask; what changed, what the checks found and what to mind; the materials, and what differs
//! by size; the measurement charts and how each measure is taken; the garment drawn outside and inside; the
//! pieces, the lays and the corners; the sewing order with the section of every seam at its operation; the
//! yarn plan; plates of every detail; inspection and packing. Then an annex for the maker: how pieces grow,
//! from what yarn is reckoned, findings with their codes. The head of every page says on which side of the
//! wash its figures are. [`tiled`] and
//! [`rolled`] print the patterns themselves at true size, [`lay_pdf`] a lay.
//!
//! Typst does the setting and is used as a library, in memory: no file, no clock, no network, no
//! installed font is looked at, so the same [`Pack`] and [`PdfOptions`] give the same bytes
//! everywhere. Values reach the page as data, never as markup, so any character in any field prints
//! as itself. The result is a tagged PDF with embedded fonts, selectable text and bookmarks.
//!
//! ```
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let run = sewing::make_run(&loaded.style, &loaded.collection);
//! let pack = papers::assemble(&loaded, &run, &papers::Assembly::default())?;
//! assert!(!pack.order.is_empty());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod assemble;
mod drawing;
mod error;
mod letters;
mod pack;
mod patterns;
mod pdf;
mod sheets;
mod story;
mod typeset;

pub use assemble::{Assembly, assemble, assemble_watched};
pub use drawing::Drawing;
pub use error::PaperError;
pub use letters::letters;
pub use pack::{
    Ask, Caution, Change, Chart, ChartRow, ChartValues, CheckGroup, CheckRow, Checks, ClothCut,
    Cover, CutRow, CuttingPart, Fact, Figure, FindingRow, GradeRow, GradeTable, LengthLine,
    MaterialGroup, MaterialRow, MoveRow, MoveTable, OpenGroup, OpenPart, OpenRow, OperationRow,
    OperationStitch, Pack, PackWords, PieceRow, Scale, SeamBlock, SeamYarnRow, Severity, SizeRow,
    SizeTable, StageBlock, StitchRowText, StyleHead, Swatch, Who, YarnNeedRow, YarnNote,
    YarnOnClothRow, YarnPart, YarnText,
};
pub use patterns::{
    Paper, PatternHead, PatternPiece, PlanPage, PlanPiece, PlanSquare, PrintPlan, Printed, lay_pdf,
    rolled, tiled,
};
pub use pdf::{Book, PdfOptions, is_our_pdf, pack_book, pack_pdf};
pub use story::{
    MOST_DETAILS, Story, StoryDetail, StoryPicture, StoryWords, is_our_story, story, story_book,
    story_page,
};
