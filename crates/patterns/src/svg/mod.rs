//! SVG true to scale.
//!
//! [`write`] draws every piece of a pattern on one sheet, one millimetre of the piece to the millimetre of
//! the sheet, in groups that hold in `data-` attributes what a drawing has no place for; [`read`] reads
//! that back, also after the drawing was moved and saved elsewhere. Any other SVG that states its size in
//! mm, cm or in is read as loose lines: each closed line that lies in no other is a piece, named by its
//! label, title or id.
//!
//! | class of the group | holds |
//! |---|---|
//! | `piece` | one piece in one size; `data-name`, `data-size`, `data-category`, `data-material`, `data-as-drawn`, `data-mirrored`, `data-origin`, `data-words` |
//! | `cut`, `cutout`, `sewn`, `grain`, `mirror`, `inner` | lines, with `data-name`, `data-kind`, `data-on` |
//! | `notch`, `drill`, `point`, `edge-start` | marks, with `data-name` and what else belongs to each |
//! | `note`, `annotation`, `title` | words |

mod outline;
mod pen;
mod piece;
mod read;
mod write;

pub use read::read;
pub use write::{is_ours, write};
