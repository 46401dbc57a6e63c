//! Pattern files: pieces written for other programs, and read from theirs.
//!
//! A [`PatternFile`] is what such a file can say: the pieces of one style in one or more sizes, each with
//! its cut line, sewn lines, grain, notches, drill holes, inner lines and words. [`from_cut`] makes one of
//! cut pieces; [`dxf::write`] and [`dxf::read`] write and read it by the practice of ASTM D6673,
//! [`svg::write`] and [`svg::read`] as a drawing true to scale, and [`hpgl::write`] gives it to a plotter.
//! [`dxf::write_lay`] writes a lay. What is written and read again is the same.
//!
//! All places are in millimetres, y up, on a grid of a ten-thousandth ([`on_grid`]): fine enough for any
//! knife, and coarse enough that every file holds the exact number. Files from elsewhere are read within
//! stated [`limits`] and never trusted: what is wrong is said with its line ([`ReadError`]).
//!
//! # Names of edges and points
//!
//! ASTM D6673 has no place for the name of an edge or of a point, but it lets annotation text (layer 15)
//! stand anywhere on a piece. A text of the form `word: name` that begins exactly where a line begins or a
//! point lies names it; other programs show it as what it is, a note.
//!
//! | text on layer 15 | stands | names |
//! |---|---|---|
//! | `edge: inseam` | where a sewn line begins | that line |
//! | `edge: inseam` | on a corner of the cut line or of a closed sewn line | from there anticlockwise to the next such text |
//! | `point: crotch` | anywhere | that place; a turn point if one lies there |
//! | `notch: knee`, `double notch: knee`, `drawn notch: knee` | on the cut line | the notch there; two cuts side by side; a mark that is not cut |
//! | `drill: pocket corner 1` | on a drill hole | the hole |
//! | `fold: hem`, `placement: pocket`, `line: any` | where an internal line begins | the line, and what it is for |
//!
//! `, as drawn` or `, mirrored` before the colon says that a mark belongs to those copies only:
//! `placement, mirrored: extra pocket`.
//!
//! # What the wash takes
//!
//! ASTM D6673 has no place either for the state of the cloth a piece is drawn for. Our own files say it among the
//! annotations of each piece ([`BeforeWash`]): `before wash: warp 3 %, weft 12 %`, then `skew: 3 % sheared` or
//! `skew: 3 % grain turned` where pieces are cut against one, and on the band how that is cut, `band: preshrunk`.
//! What they say is exact, so that the finished piece can be had from the file alone ([`Piece::finished`]).
//!
//! ```
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//! let cut = cutting::cut(&garment, &cutting::Plan::of(&loaded.style));
//! let pattern = patterns::PatternFile {
//!     pieces: patterns::from_cut(&cut, words::Words::english()),
//!     ..patterns::PatternFile::default()
//! };
//! let text = patterns::dxf::write(&pattern);
//! let read = patterns::dxf::read(text.as_bytes(), None)?;
//! assert_eq!(patterns::dxf::write(&read.pattern), text);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod arcs;
mod chain;
mod convert;
pub mod dxf;
mod error;
mod grid;
pub mod hpgl;
pub mod limits;
mod loose;
mod model;
mod nearest;
mod number;
mod place;
mod sheet;
pub mod svg;
mod wash;
mod words;

pub use convert::{WITHIN, from_cut};
pub use error::{Place, ReadError};
pub use grid::{FARTHEST, on_grid, on_grid_angle};
pub use model::{
    Copies, Drill, Edge, InnerLine, LineKind, Named, Notch, NotchKind, Note, PatternFile, Piece,
    Read, SewLine, TurnPoint,
};
pub use wash::BeforeWash;
