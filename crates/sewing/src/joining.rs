//! How near to its line a seam is joined, and what is cut beyond a join nobody states.

use trade::Length;

/// Rows nearer to the seam line than this are the ones that join the plies.
pub(crate) const JOINING: Length = Length::mm(0.5);

/// What is cut beyond the join of a band where the style does not say how it is sewn: as for any seam pressed
/// open (common practice).
pub(crate) const JOIN_ALLOWANCE: Length = Length::mm(12.7);
