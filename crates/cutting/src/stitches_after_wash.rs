//! What the wash does to rows of stitches.

use trade::{Share, StitchDensity};

/// Stitches to the length at the machine, so that after the wash there are as many as wanted: the row
/// is shortened with the cloth by `shrinkage`, its stitches are not fewer (geometry).
pub fn density_at_machine(wanted: StitchDensity, shrinkage: Share) -> StitchDensity {
    StitchDensity::per_inch(wanted.to_per_inch() * (1.0 - shrinkage.to_ratio()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 8 to the inch after 8 % is 7.36 at the machine; 100 inches sewn hold 736
    /// stitches, which then lie on 92 inches.
    #[test]
    fn stitches_are_counted_after_the_wash() {
        let set = density_at_machine(StitchDensity::per_inch(8.0), Share::percent(8.0));
        assert!((set.to_per_inch() - 7.36).abs() < 1e-9);
        assert!((set.to_per_inch() * 100.0 / 92.0 - 8.0).abs() < 1e-9);
    }
}
