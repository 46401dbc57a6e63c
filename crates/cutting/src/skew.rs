//! Twist of the leg from a weft that lies askew after the wash.

use style::Side;
use trade::{Length, Share};

/// A leg whose seam moves further than this between knee and hem is faulty (a mill's published guide
/// to leg twist: 2.54 cm).
pub const MOST_TWIST: Length = Length::inches(1.0);

/// What a leg does when its pieces are cut without regard to the skew.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// How far the seams move round the leg between knee and hem.
    pub moves: Length,
    /// Whether that is a fault.
    pub faulty: bool,
}

/// How far the seams of a leg turn over a length: skew times length (common practice), which is an estimate. AATCC
/// TM179-2023 says in its foreword that what it measures is not comparable with what TM207 measures on a garment.
pub fn twist(skew: Share, knee_to_hem: Length) -> Twist {
    let moves = (knee_to_hem * skew).abs();
    Twist {
        moves,
        faulty: moves > MOST_TWIST,
    }
}

/// The leg whose outseam goes forward when the seams turn; that of the other goes back, for one cloth turns both legs the
/// same way round. `None` without a skew.
///
/// Worked from how a tube hangs, whatever the twill is called: its rings of weft come to lie level again, so where the weft
/// rises to the right, face up, the whole cloth turns to the right by as much, and what runs along the warp moves to
/// the left on its way down. Seen from the wearer's left, left is forward.
pub fn outseam_forward(skew: Share) -> Option<Side> {
    if skew > Share::ZERO {
        Some(Side::Left)
    } else if skew < Share::ZERO {
        Some(Side::Right)
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

    /// A tube with its seam straight up the warp, its rings of weft rising by 3 % to the right as one walks round it.
    /// Turned until the rings are level, a point of the seam lower down lies to the left of where it was.
    #[test]
    fn the_measured_sign_says_which_outseam_goes_forward() {
        for (percent, forward) in [(3.0, Side::Left), (-3.0, Side::Right)] {
            let skew: f64 = percent / 100.0;
            let turned = -skew.atan();
            let (sin, cos) = turned.sin_cos();
            // Weft and warp, right and up, seen from outside.
            let turn = |x: f64, y: f64| (x * cos - y * sin, x * sin + y * cos);
            assert!(turn(1.0, skew).1.abs() < 1e-12, "the ring is level");
            let (across, _) = turn(0.0, -460.0);
            // Seen from the wearer's left, left is forward; from the right it is back.
            let left_leg_goes_forward = across < 0.0;
            assert_eq!(left_leg_goes_forward, forward == Side::Left);
            assert_eq!(outseam_forward(Share::percent(percent)), Some(forward));
        }
        assert_eq!(outseam_forward(Share::ZERO), None);
    }
}
