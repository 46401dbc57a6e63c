//! Numbers as they are written: every one goes through [`written`].

use geometry::Point;
use trade::Length;

/// A place in millimetres.
pub(crate) type Xy = [f64; 2];

/// How finely a number is written.
#[derive(Clone, Copy)]
pub(crate) enum Fine {
    /// To 0.001.
    Thousandth,
    /// To 0.0001.
    TenThousandth,
    /// To 0.00001.
    HundredThousandth,
    /// As it was worked out, to the last digit.
    Whole,
}

/// A number as it is written, without the last digits of a solver where they are not wanted.
pub(crate) fn written(value: f64, fine: Fine) -> f64 {
    let parts = match fine {
        Fine::Thousandth => 1e3,
        Fine::TenThousandth => 1e4,
        Fine::HundredThousandth => 1e5,
        Fine::Whole => return value,
    };
    // Adding nought turns minus nought into nought.
    (value * parts).round() / parts + 0.0
}

/// A length in millimetres.
pub(crate) fn mm(length: Length, fine: Fine) -> f64 {
    written(length.to_mm(), fine)
}

/// A point in millimetres.
pub(crate) fn xy(point: Point, fine: Fine) -> Xy {
    [written(point.x, fine), written(point.y, fine)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_as_finely_as_asked_and_never_as_minus_nought() {
        let all = [
            (Fine::Thousandth, 1.235),
            (Fine::TenThousandth, 1.2346),
            (Fine::HundredThousandth, 1.234_57),
            (Fine::Whole, 1.234_567_8),
        ];
        for (fine, expected) in all {
            assert_eq!(written(1.234_567_8, fine), expected);
        }
        assert!(written(-1e-9, Fine::TenThousandth).is_sign_positive());
    }
}
