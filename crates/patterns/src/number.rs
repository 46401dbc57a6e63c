//! The one function that writes numbers into pattern files.

use std::fmt::Write;

use trade::trimmed;

use crate::grid::number_on_grid;

/// Writes a number to the ten-thousandth, without needless digits.
pub(crate) fn put(out: &mut String, v: f64) {
    out.push_str(&trimmed(number_on_grid(v), 0, 4));
}

/// Writes a number of millimetres in whole steps of a plotter.
pub(crate) fn put_steps(out: &mut String, mm: f64, to_the_mm: f64) {
    // Adding zero turns -0 into 0; writing into a string cannot fail.
    let _ = write!(out, "{:.0}", (mm * to_the_mm).round() + 0.0);
}

/// Writes a number as DXF wants its reals: with a decimal point always.
pub(crate) fn put_real(out: &mut String, v: f64) {
    out.push_str(&trimmed(number_on_grid(v), 1, 4));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_minus_zero() {
        let short = |v| {
            let mut out = String::new();
            put(&mut out, v);
            put_steps(&mut out, v, 40.0);
            out
        };
        assert_eq!(short(12.5), "12.5500");
        assert_eq!(short(-0.000_01), "00");
        assert_eq!(short(100.0), "1004000");
        let write = |v| {
            let mut real = String::new();
            put_real(&mut real, v);
            real
        };
        assert_eq!(write(12.0), "12.0");
        assert_eq!(write(-0.000_01), "0.0");
        assert_eq!(write(0.12345), "0.1235");
        assert_eq!(write(f64::NAN), "0.0");
    }
}
