//! What one size is to be: every finished measure and shape choice, resolved to lengths.

use style::{CoinShape, DrawnLine};
use trade::{Angle, Length, Share};

/// A back pocket, left or right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BackPocketSpec {
    /// Width at the foot, between the two lower corners.
    pub foot_width: Length,
    /// Length of the side nearer the centre back.
    pub side_length: Length,
    /// The side nearer the outseam is this much longer.
    pub outer_drop: Length,
    /// How far the lining reaches.
    pub lining: Lining,
}

/// How much of a back pocket is lined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lining {
    /// Not lined.
    None,
    /// The upper half.
    Half,
    /// All of it.
    Full,
}

/// The concealed inner pocket.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExtraPocketSpec {
    /// Whether it lies behind the left front (else the right).
    pub on_left: bool,
    /// Width of the opening.
    pub width: Length,
    /// Depth at its centre.
    pub depth: Length,
    /// Centre front to its inner edge, along the band seam.
    pub from_centre: Length,
}

/// One size of one style: finished measures after the first wash, and the shape the chart leaves open.
///
/// Girths are whole girths. See [`crate::measure`] for how each measure is taken.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)] // the fields carry the names of the measures, defined once in `measure`
pub struct Spec {
    pub waist: Length,
    pub seat: Length,
    pub seat_at: Length,
    pub front_rise: Length,
    pub back_rise: Length,
    pub thigh: Length,
    pub thigh_at: Length,
    pub knee: Length,
    pub knee_at: Length,
    pub hem: Length,
    pub inseam: Length,
    /// `None` lets the draft choose the height of the waist at the side.
    pub outseam: Option<Length>,
    pub band_height: Length,
    pub band_overlap: Length,
    pub yoke_centre: Length,
    pub yoke_side: Length,
    pub fly_length: Length,
    pub fly_width: Length,
    pub mouth_width: Length,
    pub mouth_depth: Length,
    pub coin_width: Length,
    pub coin_depth: Length,
    pub back_pocket_width: Length,
    pub back_pocket_length: Length,
    pub back_pocket_from_yoke: Length,
    pub back_pocket_from_centre: Length,
    pub loop_length: Length,
    pub loop_width: Length,
    pub hem_depth: Length,

    /// The back is this much over a quarter of the girth, the front this much under.
    pub seat_split: Length,
    pub thigh_split: Length,
    pub knee_split: Length,
    pub hem_split: Length,
    pub waist_split: Length,
    /// How far the centre front leans towards the side at the waist seam.
    pub front_tilt: Length,
    /// Slope of the seat seam from the vertical.
    pub seat_angle: Angle,
    /// How much longer the yoke seam of the back is than the waist seam of the yoke.
    pub seat_dart: Length,
    /// How much shorter the back inseam is, stretched on when sewn.
    pub inseam_stretch: Length,
    /// How much longer the body is than the band it is eased onto.
    pub band_ease: Length,
    /// The outseam runs straight on the grain from hip to hem (for a cloth's own edge), and the
    /// inseam takes all the shape of the leg; else both share it and the leg is even about its crease.
    pub straight_outseam: bool,

    pub coin_on_right: bool,
    pub coin_below_band: Length,
    pub coin_from_side: Length,
    pub coin_lower_narrowing: Length,
    pub coin_shape: CoinShape,
    /// What it measures, the shape says.
    pub coin_drop: Length,
    /// The outline the maker drew for a free shape, in the drawing's own place and size.
    pub coin_outline: Option<DrawnLine>,
    pub bag_depth: Length,
    pub bag_width: Length,
    pub facing: Length,
    /// How far the curve of the mouth keeps to the corner it cuts off.
    pub mouth_fullness: Share,
    pub back_pocket_left: BackPocketSpec,
    pub back_pocket_right: BackPocketSpec,
    pub extra_pocket: Option<ExtraPocketSpec>,
    pub loop_count: u32,
}
