//! What can go wrong between a filled pack and a finished PDF.

use thiserror::Error;

/// A pack that could not be printed.
#[derive(Debug, Error, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum PaperError {
    /// A drawing is not an SVG that states its own size on paper.
    #[error(
        "{place} cannot be placed on a page: {reason}; a drawing must be SVG with width and height in mm"
    )]
    Drawing {
        /// Which drawing, in words, such as "the drawing “Front, outside”".
        place: String,
        /// What is wrong with it.
        reason: String,
    },
    /// The pack has no style name, so its pages could not be told from those of another style.
    #[error("the pack has no style name; give the style a name before printing its pack")]
    NoStyleName,
    /// Setting the pages failed; the message is the typesetter's.
    #[error(
        "the pages could not be set: {0}; this is a fault of the printed layout, not of the style"
    )]
    Layout(String),
    /// The pages were set but writing the PDF failed; the message is the writer's.
    #[error(
        "the PDF could not be written: {0}; this is a fault of the printed layout, not of the style"
    )]
    Write(String),
}
