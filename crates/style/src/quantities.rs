//! Reading quantities: the unit is required, and each has limits beyond which it must be a mistake.

use std::str::FromStr;

use trade::{Angle, ArealWeight, Colour, Length, Share, StitchDensity, UnitError, YarnSize};

use crate::reader::{Node, short};

/// The values a quantity can sensibly have.
pub(crate) struct Limits<T> {
    low: T,
    high: T,
    /// Whether `low` itself is too small.
    above_low: bool,
}

impl<T> Limits<T> {
    const fn between(low: T, high: T) -> Self {
        Self {
            low,
            high,
            above_low: false,
        }
    }

    const fn above(low: T, high: T) -> Self {
        Self {
            low,
            high,
            above_low: true,
        }
    }
}

/// A measure of a garment: more than nothing, and less than 10 m so that no slip in a unit passes for one.
pub(crate) const MEASURE: Limits<Length> = Limits::above(Length::ZERO, Length::m(10.0));
/// A distance that can be nothing.
pub(crate) const DISTANCE: Limits<Length> = Limits::between(Length::ZERO, Length::m(10.0));
/// A difference, either way.
pub(crate) const DIFFERENCE: Limits<Length> = Limits::between(Length::m(-1.0), Length::m(1.0));
/// What one cone or roll holds.
pub(crate) const PUT_UP: Limits<Length> = Limits::above(Length::ZERO, Length::m(1_000_000.0));
/// A table cloth is spread on.
pub(crate) const TABLE: Limits<Length> = Limits::above(Length::ZERO, Length::m(100.0));
/// What is bought on top of what is laid.
pub(crate) const ALLOWANCE: Limits<Share> = Limits::between(Share::ZERO, Share::percent(50.0));
/// One ply of cloth.
pub(crate) const THICKNESS: Limits<Length> = Limits::above(Length::ZERO, Length::mm(20.0));
/// The slope of a seat seam; trousers lie between 7 and 16 degrees.
pub(crate) const SLOPE: Limits<Angle> = Limits::between(Angle::ZERO, Angle::deg(45.0));
/// The V at the end of a band row: one that still reads as a V.
pub(crate) const V_ANGLE: Limits<Angle> = Limits::between(Angle::deg(20.0), Angle::deg(150.0));
/// The curve of a pocket mouth: between a slant and a square corner, neither reached.
pub(crate) const FULLNESS: Limits<Share> = Limits::between(Share::ratio(0.1), Share::ratio(0.95));
/// Any cloth one can sew.
pub(crate) const WEIGHT: Limits<ArealWeight> =
    Limits::above(ArealWeight::ZERO, ArealWeight::gsm(2000.0));
/// Any sewing yarn.
pub(crate) const YARN: Limits<YarnSize> = Limits::between(YarnSize::tex(5.0), YarnSize::tex(600.0));
/// Any row a machine can sew.
pub(crate) const DENSITY: Limits<StitchDensity> =
    Limits::between(StitchDensity::per_cm(0.5), StitchDensity::per_cm(20.0));
/// Shrinkage; a little growth is possible.
pub(crate) const SHRINKAGE: Limits<Share> = Limits::between(Share::ratio(-0.1), Share::ratio(0.3));
/// How far a weft lies askew, either way.
pub(crate) const SKEW: Limits<Share> = Limits::between(Share::ratio(-0.15), Share::ratio(0.15));

impl Node<'_> {
    /// A quantity with its unit, within limits.
    pub(crate) fn quantity<T>(&self, limits: &Limits<T>) -> Option<T>
    where
        T: FromStr<Err = UnitError> + PartialOrd + Default + std::fmt::Display,
    {
        let text = match (self.as_str(), self.bare_number()) {
            (Some(text), _) => text,
            (None, Some(number)) => number,
            (None, None) => {
                self.wrong_type(
                    "a number with its unit",
                    "it in quotes, such as \"26.5 cm\"",
                );
                return None;
            }
        };
        match text.parse::<T>() {
            Ok(value) => self.within(text, value, limits),
            Err(error) => {
                let (message, hint) = split_hint(&error.to_string());
                self.problem(
                    unit_code(&error),
                    format!("`{}`: {message}", self.key()),
                    hint,
                );
                None
            }
        }
    }

    fn within<T>(&self, text: &str, value: T, limits: &Limits<T>) -> Option<T>
    where
        T: PartialOrd + Default + std::fmt::Display,
    {
        let low_enough = value <= limits.high;
        let high_enough = if limits.above_low {
            value > limits.low
        } else {
            value >= limits.low
        };
        if low_enough && high_enough {
            return Some(value);
        }
        let message = format!("`{}` is {}", self.key(), short(text.trim()));
        let zero = T::default();
        let (code, hint) = if !low_enough {
            (
                "style::out-of-range",
                format!("at most {} makes sense here", limits.high),
            )
        } else if limits.low == zero && value < zero {
            ("style::negative", self.no_less(limits))
        } else {
            ("style::out-of-range", self.no_less(limits))
        };
        self.problem(code, message, hint);
        None
    }

    fn no_less<T: PartialEq + Default + std::fmt::Display>(&self, limits: &Limits<T>) -> String {
        match (limits.low == T::default(), limits.above_low) {
            (true, true) => "it has to be more than zero".to_owned(),
            (true, false) => "it cannot be less than zero".to_owned(),
            (false, _) => format!("at least {} makes sense here", limits.low),
        }
    }

    /// A colour, "#rrggbb".
    pub(crate) fn colour(&self) -> Option<Colour> {
        self.parsed(
            "style::unreadable-colour",
            "a colour",
            "it in quotes, such as \"#27324a\"",
        )
    }

    /// Anything else that is read from a text and whose error says what would be right.
    pub(crate) fn parsed<T>(&self, code: &'static str, wanted: &str, example: &str) -> Option<T>
    where
        T: FromStr,
        T::Err: std::fmt::Display,
    {
        let Some(text) = self.as_str() else {
            self.wrong_type(wanted, example);
            return None;
        };
        match text.parse() {
            Ok(value) => Some(value),
            Err(error) => {
                let (message, hint) = split_hint(&error.to_string());
                self.problem(code, format!("`{}`: {message}", self.key()), hint);
                None
            }
        }
    }
}

fn unit_code(error: &UnitError) -> &'static str {
    match error {
        UnitError::MissingUnit { .. } => "style::missing-unit",
        UnitError::WrongQuantity { .. } | UnitError::UnknownUnit { .. } => "style::wrong-unit",
        UnitError::NotFinite { .. } => "style::not-a-number",
        UnitError::NotANumber { .. }
        | UnitError::Comma { .. }
        | UnitError::DivisionByZero { .. }
        | UnitError::TrailingText { .. } => "style::unreadable-quantity",
    }
}

/// The units' errors say "what is wrong: what would be right" in one line; here the two are shown apart.
fn split_hint(error: &str) -> (String, String) {
    for mark in [": write ", ": leave ", "; "] {
        if let Some(at) = error.rfind(mark) {
            let (message, hint) = error.split_at(at);
            let hint = hint.trim_start_matches([':', ';', ' ']);
            return (message.to_owned(), hint.to_owned());
        }
    }
    (
        error.to_owned(),
        "write a number and its unit in quotes".to_owned(),
    )
}
