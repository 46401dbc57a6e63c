//! The close look: one side of the laid pair as it will be seen, new and worn, from the whole pair to one stitch.
//!
//! Nothing here is a photograph or a stock texture. The weave follows from weight and construction, seams from their
//! plies, rows from their stitches; every place has a height, and one sun and the sky light it. Colours are those the
//! files state: flat raw cloth comes out at its stated colour, on both faces. A picture is a drawing, not a promise;
//! what wear does to it is a forecast by a model whose strengths are from memory.
//!
//! Places are those of [`flat::LaidGarment`]: millimetres, x from the centre line, y up. The same scene, window, light
//! and wear give the same bytes, on any number of threads and any machine.

mod areas;
mod asked;
mod baked;
mod calibrated;
mod chance;
mod cloth;
mod cloth_colour;
mod dye;
mod far;
mod field;
mod filling;
mod flats;
mod fold;
mod hairs;
mod laying;
mod letters;
mod light;
mod metal;
mod near;
#[cfg(test)]
mod on_pixels;
mod picture;
mod place;
mod relief;
mod ridge_shape;
mod scene;
mod sewing_yarn;
mod shading;
mod smooth_relief;
mod tables;
mod wear;
mod wear_zones;
mod weave;
mod weave_tile;
mod whereabouts;

pub use cloth::Construction;
pub use light::Light;
pub use picture::{MOST_PIXELS, Picture, Window, picture};
pub use scene::Scene;
pub use wear::Wear;
pub use whereabouts::{PlaceId, whereabouts};
