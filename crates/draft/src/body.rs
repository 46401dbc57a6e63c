//! What a mean body measures, to compare a chart with.
//!
//! Linear regressions over the ANSUR II survey, computed for this project from 4,082 men and 1,986 women. Bodies
//! scatter about them: seats of one waist by 3.7 cm (men) and 4.5 cm (women), thighs of one seat by 1.9 cm, each a standard
//! deviation.

use style::Figure;
use trade::Length;

/// The seat of a mean body with this waist.
#[must_use]
pub fn mean_seat(figure: Figure, waist: Length) -> Length {
    match figure {
        Figure::Men => waist * 0.601 + Length::cm(45.41),
        Figure::Women => waist * 0.609 + Length::cm(49.65),
    }
}

/// The thigh of a mean body with this waist.
#[must_use]
pub fn mean_thigh(figure: Figure, waist: Length) -> Length {
    let seat = mean_seat(figure, waist);
    match figure {
        Figure::Men => seat * 0.719 - Length::cm(10.77),
        Figure::Women => seat * 0.691 - Length::cm(8.95),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Means of the survey's own people of these waists, of 222 men and 68 women: the line lies within its scatter of them.
    #[test]
    fn the_line_passes_near_the_means_of_the_survey() {
        for (figure, inches, seat, thigh) in [
            (Figure::Men, 32.0, 94.5, 57.0),
            (Figure::Men, 36.0, 100.8, 62.2),
            (Figure::Women, 28.0, 92.1, 54.6),
            (Figure::Women, 32.0, 99.9, 60.1),
        ] {
            let waist = Length::inches(inches);
            let off = |found: Length, mean: f64| (found.to_cm() - mean).abs();
            assert!(
                off(mean_seat(figure, waist), seat) < 1.5,
                "{figure} {inches}"
            );
            assert!(
                off(mean_thigh(figure, waist), thigh) < 1.5,
                "{figure} {inches}"
            );
        }
    }
}
