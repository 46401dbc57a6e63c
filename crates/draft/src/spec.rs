//! What one size is to be: every finished measure and shape choice, resolved to lengths.

use std::ops::Index;

use style::{ByMeasure, CoinShape, DrawnLine, Level, MeasureId};
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
    /// Whether it is set on the left bag (else the right).
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
/// Girths are whole girths; `spec[MeasureId::Thigh]` is one of them. See [`crate::measure`] for how each is taken.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)] // the fields carry the names of the style's own
pub struct Spec {
    /// `None` where the chart leaves a measure to the draft.
    pub(crate) measures: ByMeasure<Option<Length>>,
    pub(crate) levels: [Length; Level::ALL.len()],

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
    /// Buttons close the fly: behind its facing lies a finished strip of two plies that carries their holes.
    pub button_fly: bool,
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

impl Spec {
    /// What the chart asks of a measure; `None` where it leaves the measure to the draft.
    pub fn stated(&self, measure: MeasureId) -> Option<Length> {
        self.measures[measure]
    }

    /// Asks for another value of a measure.
    pub fn set(&mut self, measure: MeasureId, value: Length) {
        self.measures[measure] = Some(value);
    }

    /// Asks for more of a measure; one that is left to the draft stays so.
    pub fn add(&mut self, measure: MeasureId, by: Length) {
        if let Some(value) = &mut self.measures[measure] {
            *value += by;
        }
    }

    /// How far from the crotch a level lies, above or below it as that level does.
    pub fn level(&self, level: Level) -> Length {
        self.levels[level as usize]
    }

    /// Takes the girths of a level elsewhere.
    pub fn set_level(&mut self, level: Level, at: Length) {
        self.levels[level as usize] = at;
    }

    /// The height of a level above the front crotch point, in the frame of front and back.
    pub fn height(&self, level: Level) -> Length {
        match level {
            Level::Seat => self.level(level),
            Level::Thigh | Level::Knee => -self.level(level),
        }
    }
}

impl Index<MeasureId> for Spec {
    type Output = Length;

    /// What the chart asks of a measure; nought where it leaves the measure to the draft ([`Spec::stated`] says which).
    fn index(&self, measure: MeasureId) -> &Length {
        const DRAFTED: &Length = &Length::ZERO;
        self.measures[measure].as_ref().unwrap_or(DRAFTED)
    }
}
