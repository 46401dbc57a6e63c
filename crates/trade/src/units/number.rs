//! Printing numbers without needless zeros.

/// The share of a number by which its decimals may miss it and still be exact.
const ROUNDING: f64 = 1.0e-12;

/// The number with at most `most` decimals and at least `least`, zeros at the end left off, and nought without a
/// sign. Whatever prints numbers without needless zeros prints them by this.
///
/// ```
/// assert_eq!(trade::trimmed(26.5, 0, 2), "26.5");
/// assert_eq!(trade::trimmed(30.0, 1, 2), "30.0");
/// ```
pub fn trimmed(value: f64, least: usize, most: usize) -> String {
    let mut text = format!("{value:.most$}");
    if let Some(point) = text.find('.') {
        let keep = text.trim_end_matches('0').len().max(point + 1 + least);
        text.truncate(keep);
        if text.ends_with('.') {
            text.pop();
        }
    }
    // A tiny negative rounds to "-0": the sign says nothing by then.
    let is_zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    match text.strip_prefix('-') {
        Some(positive) if is_zero => positive.to_owned(),
        _ => text,
    }
}

/// The first candidate whose printed number is exact at four decimals, otherwise the last one.
///
/// Each candidate is a number in some unit, the text before it and the text after it. So 8 stitches
/// to the inch prints as "8 /in" and not as "3.1496 /cm".
pub(super) fn plainest(candidates: &[(f64, &str, &str)]) -> String {
    let exact = |&&(value, _, _): &&(f64, &str, &str)| {
        let rounded = (value * 1.0e4).round() / 1.0e4;
        (rounded - value).abs() <= value.abs() * ROUNDING
    };
    candidates
        .iter()
        .find(exact)
        .or(candidates.last())
        .map(|(value, before, after)| format!("{before}{}{after}", trimmed(*value, 0, 4)))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_printed_number_is_near_what_it_was_and_no_longer_than_it_need_be(
            value in -1.0e6..1.0e6, least in 0_usize..3, more in 0_usize..3,
        ) {
            let most = least + more;
            let text = trimmed(value, least, most);
            let read: f64 = text.parse().map_err(|_| TestCaseError::fail(text.clone()))?;
            let step = 10.0_f64.powi(-(most as i32));
            prop_assert!((read - value).abs() <= 0.5001 * step, "{text}");
            let decimals = text.split_once('.').map_or(0, |(_, after)| after.len());
            prop_assert!(least <= decimals && decimals <= most, "{text}");
            prop_assert!(decimals == least || !text.ends_with('0'), "{text}");
            prop_assert!(read != 0.0 || !text.starts_with('-'), "{text}");
        }
    }

    #[test]
    fn zeros_at_the_end_are_left_off_down_to_the_least() {
        assert_eq!(trimmed(26.5, 1, 2), "26.5");
        assert_eq!(trimmed(30.0, 1, 2), "30.0");
        assert_eq!(trimmed(30.0, 0, 2), "30");
        assert_eq!(trimmed(26.666, 1, 2), "26.67");
        assert_eq!(trimmed(-0.0001, 0, 2), "0");
        assert_eq!(trimmed(-0.0001, 1, 2), "0.0");
        assert_eq!(trimmed(100.0, 0, 0), "100");
        assert_eq!(trimmed(-0.5, 0, 2), "-0.5");
    }

    #[test]
    fn the_exact_unit_is_preferred() {
        assert_eq!(
            plainest(&[(3.149_606, "", " /cm"), (8.0, "", " /in")]),
            "8 /in"
        );
        assert_eq!(
            plainest(&[(3.1, "", " /cm"), (7.874, "", " /in")]),
            "3.1 /cm"
        );
        assert_eq!(plainest(&[]), "");
    }
}
