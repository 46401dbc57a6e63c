//! What a file may ask of the reader. A pattern of thirty pieces in thirty sizes stays far below each.

/// The largest file that is read, in bytes.
pub const MOST_BYTES: usize = 64 * 1024 * 1024;

/// The most points all lines of a file may have together, curves already made into points.
pub const MOST_POINTS: usize = 2_000_000;

/// The most entities of a DXF file, or elements of an SVG file, counted each time a block is used.
pub const MOST_ENTITIES: usize = 2_000_000;

/// The most pieces.
pub const MOST_PIECES: usize = 10_000;

/// How deep blocks may lie in blocks, or groups in groups.
pub const DEEPEST: usize = 64;

/// The longest text, in characters.
pub const LONGEST_TEXT: usize = 2_000;

/// The most notches, drill holes, inner lines or texts on one piece.
pub const MOST_MARKS: usize = 2_000;

/// The most points of one cut line.
pub const MOST_ON_CUT: usize = 100_000;
