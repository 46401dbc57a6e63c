//! The one function that writes numbers into pattern files.

use crate::grid::number_on_grid;

/// Writes a number as DXF wants its reals: with a decimal point always.
pub(crate) fn put_real(out: &mut String, v: f64) {
    let text = format!("{:.4}", number_on_grid(v));
    let short = text.trim_end_matches('0');
    out.push_str(short);
    if short.ends_with('.') {
        out.push('0');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_minus_zero() {
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
