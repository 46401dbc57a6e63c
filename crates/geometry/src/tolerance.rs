//! How near counts as the same. Sums of floating point numbers always leave a little over; every room that
//! compares them says with one of these names how much it overlooks, and why.
//!
//! All are far below what cloth, needle or plotter could show: a thread is some tenths of a millimetre thick.

use trade::Length;

/// Nearer to one another than this, two points are one: a millionth of a millimetre, which is more than the
/// flattening of a curve leaves between the end of one edge and the start of the next.
pub const SAME_MM: f64 = 1e-6;

/// The same as a length.
pub const SAME_POINT: Length = Length::mm(SAME_MM);

/// A difference below this is none: what is left of numbers of some hundreds or thousands after a few
/// additions and multiplications.
pub const ROUNDING: f64 = 1e-9;

/// A difference below this is none where the numbers are of the size of one, such as shares and directions.
pub const ROUNDING_OF_SHARES: f64 = 1e-12;

/// A line shorter than this is no line; a length to divide by counts as no less.
pub const NO_LENGTH_MM: f64 = 1e-9;

/// A vector shorter than this has no direction; a longer one has, however short it is.
pub const NO_DIRECTION: f64 = 1e-12;

/// The square of the length of a vector too short to project on, in square millimetres.
pub const NO_SQUARE_MM2: f64 = 1e-12;

/// Two ways whose cross product is smaller than this run side by side and are taken to meet nowhere.
pub const PARALLEL: f64 = 1e-12;

/// How far beyond the end of a stretch, as a share of it, a place still counts as on it: two lines that end on
/// one another shall meet there although rounding keeps them apart.
pub const BEYOND_END: f64 = 1e-9;
