//! The sewn garment laid flat and closed, as an inspector lays a pair on a table to measure it.
//!
//! Pieces are drafted and sewn each in its own frame. This room knows where they all lie when the pair
//! lies there finished, front or back up, right side out or turned out: it takes any point of any piece
//! to one plane. Nothing here draws. The garment views put ink on what [`LaidGarment`] says, the bench
//! asks [`Places`] where on a drawing a maker takes hold of a thing, and whoever wants to look closer
//! at the pair, or to see where it wears, begins from the same two.
//!
//! Coordinates are millimetres, x from the centre line of the view. [`LaidGarment`] keeps y **up**, as
//! pieces do; [`Places`] has y **down**, as sheets do.
//!
//! ```
//! use draft::PieceId;
//! use flat::{Hand, LaidGarment, View};
//! use geometry::Point;
//! use sewing::Face;
//!
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref()).unwrap();
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//!
//! // A corner of the left back pocket is behind, seen from the front; from the back it is on the left.
//! let seen = |view| {
//!     let laid = LaidGarment::of(&garment, view, Face::Outside)?;
//!     laid.point(PieceId::BackPocketLeft, Point::ORIGIN, Hand::Left)
//! };
//! assert_eq!(seen(View::Front), None);
//! assert!(seen(View::Back).is_some_and(|place| place.x < 0.0));
//! ```

mod centre_seam;
mod edge_table;
mod laid;
mod legs;
mod level;
mod lift;
mod looks;
mod mapping;
#[cfg(test)]
mod on_the_table;
mod places;
#[cfg(test)]
mod sample;
mod side;
mod waist;
mod yoke;

pub use laid::LaidGarment;
pub use places::Places;
pub use side::{Half, Hand, Spot, View};
pub use waist::Folds;

/// Smooth step from 0 to 1.
pub(crate) fn smooth(t: f64) -> f64 {
    let t = t.clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}
