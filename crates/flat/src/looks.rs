//! What is chosen for looks, where a pair on a table could lie one way or another.

/// How far the outer line of a leg runs outwards on its way down, from the vertical: two legs that lie beside one another
/// without being pushed together.
pub(crate) const SPREAD_DEG: f64 = 1.2;
/// A leg is turned by no less and no more, whatever its outer line does: past that a pair looks pulled apart.
pub(crate) const TURN_DEG: std::ops::RangeInclusive<f64> = 0.6..=5.5;
/// The leg lies flat in its whole girth from one of these shares of the way down to the knee: the first, about a hand below
/// the fork, that leaves the hip its line and the inner edges their distance. The wider the thigh against the seat, the further down the
/// fold reaches.
pub(crate) const LEG_FROM_SHARES: [f64; 6] = [0.5, 0.55, 0.6, 0.65, 0.7, 0.75];
/// There the inner edges are this far from the centre line, if the hip allows it.
pub(crate) const APART_MM: f64 = 22.0;
/// So much is enough, and they are no nearer to it than the least.
pub(crate) const ENOUGH_APART_MM: f64 = 16.0;
pub(crate) const LEAST_APART_MM: f64 = 4.0;
/// How fast the inner edges part below the fork, as a slope: a gap that is seen from the first centimetres.
pub(crate) const FORK_SLOPE: f64 = 0.075;
/// Share of the front rise beyond its straight height that is drawn: the fork of a pair that lies closed sinks below the
/// level at which the pattern has it, but not by all that the seam is curved.
pub(crate) const RISE_SHARE: f64 = 0.6;
/// From this share of a panel's width, seen from the outer fold, the cloth begins to sink into the fork.
pub(crate) const SINKS_FROM: f64 = 0.3;
/// Share of the back's extra height at the centre that shows when the pair lies flat; the rest is
/// taken up by the fullness of the seat.
pub(crate) const SEAT_SHARE: f64 = 0.3;
/// How far the band leans in towards its top at the side folds, as a share of its height: it goes on as the hip runs.
pub(crate) const BAND_LEAN: f64 = 0.1;
