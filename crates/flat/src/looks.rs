//! What is chosen for looks, where a pair on a table could lie one way or another.

/// How far the legs spread from the vertical. Chosen for looks: enough to see both inseams.
pub(crate) const SPREAD_DEG: f64 = 4.4;
/// Down to here below the crotch the back goes from wrapping one fold to wrapping both alike.
pub(crate) const WRAP_RUN_MM: f64 = 150.0;
/// The leg proper begins this far below the crotch.
pub(crate) const LEG_FROM_MM: f64 = 130.0;
/// There the side fold lies this far outside the seat.
pub(crate) const SIDE_OUT_MM: f64 = 15.0;
/// Share of the back's extra height at the centre that shows when the pair lies flat; the rest is
/// taken up by the fullness of the seat.
pub(crate) const SEAT_SHARE: f64 = 0.2;
