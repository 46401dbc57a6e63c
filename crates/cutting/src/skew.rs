//! Twist of the leg from a weft that lies askew after the wash.

use trade::{Length, Share};

use crate::scale::{MOST_SKEW, ScaleError};

/// A leg whose seam moves further than this between knee and hem is faulty (a mill's published guide
/// to leg twist: 2.54 cm).
pub const MOST_TWIST: Length = Length::inches(1.0);

/// A skew that can be believed.
///
/// # Errors
/// [`ScaleError::Skewed`] beyond [`MOST_SKEW`].
pub fn checked(skew: Share) -> Result<Share, ScaleError> {
    if !skew.is_finite() {
        return Err(ScaleError::SkewNoNumber);
    }
    if skew.abs() > MOST_SKEW {
        return Err(ScaleError::Skewed(skew));
    }
    Ok(skew)
}

/// What a leg does when its pieces are cut without regard to the skew.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// How far the seams move round the leg between knee and hem.
    pub moves: Length,
    /// Whether that is a fault.
    pub faulty: bool,
}

/// How far the seams of a leg turn over a length: skew times length (common practice).
pub fn twist(skew: Share, knee_to_hem: Length) -> Twist {
    let moves = (knee_to_hem * skew).abs();
    Twist {
        moves,
        faulty: moves > MOST_TWIST,
    }
}

/// A side of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LegSide {
    /// The back.
    Back,
    /// The front.
    Front,
}

/// Which way legs turn: a right-hand twill towards the back, a left-hand one towards the front (as
/// makers of raw denim report); `None` where the words for a weave do not say.
pub fn turns_towards(construction: &str) -> Option<LegSide> {
    let words = construction.to_lowercase();
    if words.contains("right-hand") || words.contains("right hand") {
        Some(LegSide::Back)
    } else if words.contains("left-hand") || words.contains("left hand") {
        Some(LegSide::Front)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// Worked by hand: over 60 cm, 3 % moves the seam 1.8 cm (it passes), 5 % 3.0 cm (it fails).
    #[test]
    fn twist_over_the_lower_leg() {
        let at = |percent| twist(Share::percent(percent), Length::cm(60.0));
        assert!((at(3.0).moves.to_cm() - 1.8).abs() < 1e-9 && !at(3.0).faulty);
        assert!((at(-5.0).moves.to_cm() - 3.0).abs() < 1e-9 && at(-5.0).faulty);
    }

    #[test]
    fn what_is_too_far_askew_is_refused() {
        assert!(checked(Share::percent(8.0)).is_ok());
        assert!(checked(Share::percent(-16.0)).is_err());
        assert!(checked(Share::ratio(f64::NAN)).is_err());
    }

    #[test]
    fn twills_turn_their_way() {
        assert_eq!(turns_towards("3/1 right-hand twill"), Some(LegSide::Back));
        assert_eq!(turns_towards("Left-hand twill"), Some(LegSide::Front));
        assert_eq!(turns_towards("plain weave"), None);
    }
}
