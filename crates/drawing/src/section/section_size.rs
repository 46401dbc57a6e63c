//! The two sizes a section is drawn in.

use trade::Length;

use crate::palette::{HAIRLINE, SEWN_LINE, TYPE_FIGURES, TYPE_WORDS};

/// Sizes of a drawing, printed millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Look {
    pub width: f64,
    /// Cloth is drawn no higher than this.
    pub tallest: f64,
    pub margin: f64,
    /// Outlines of the cloth.
    pub line: f64,
    /// Thinnest thread.
    pub thread: f64,
    pub figures: Length,
    pub circle: f64,
    /// From one dimension line to the next.
    pub level: f64,
    /// Greatest enlargement.
    pub most: f64,
    /// With a list of rows and plies below.
    pub listed: bool,
}

/// For a table: 62 mm wide.
pub(super) const THUMBNAIL: Look = Look {
    width: 62.0,
    tallest: 9.0,
    margin: 0.4,
    line: HAIRLINE.to_mm(),
    thread: 0.3,
    figures: TYPE_FIGURES,
    circle: 1.75,
    level: 2.8,
    most: 2.0,
    listed: false,
};

/// For a page: 130 mm wide.
pub(super) const PLATE: Look = Look {
    width: 130.0,
    tallest: 30.0,
    margin: 2.0,
    line: SEWN_LINE.to_mm(),
    thread: 0.5,
    figures: TYPE_FIGURES,
    circle: 2.2,
    level: 4.0,
    most: 5.0,
    listed: true,
};

/// Type of the list below a plate, and the distance of its lines.
pub(super) const LIST_TYPE: Length = TYPE_WORDS;
pub(super) const LIST_LINE: f64 = 3.9;
