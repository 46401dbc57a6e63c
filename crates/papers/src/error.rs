//! What can go wrong between a filled pack and a finished PDF.

use thiserror::Error;
use trade::Length;

/// A pack that could not be printed.
#[derive(Debug, Error, Clone, PartialEq)]
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
    /// A pattern does not fit on the roll.
    #[error(
        "the roll is {width} wide, and the widest pattern with its margins needs {least}; take wider paper, or tile the patterns on A4 or A3"
    )]
    TooNarrow {
        /// The paper.
        width: Length,
        /// What is needed.
        least: Length,
    },
    /// Setting the pages failed; the message is the typesetter's.
    #[error(
        "the pages could not be set: {0}; this is a fault of the printed layout, not of the style"
    )]
    Layout(String),
    /// Nobody waits for it any more.
    #[error("it was cancelled")]
    Cancelled,
    /// The pages were set but writing the PDF failed; the message is the writer's.
    #[error(
        "the PDF could not be written: {0}; this is a fault of the printed layout, not of the style"
    )]
    Write(String),
}
