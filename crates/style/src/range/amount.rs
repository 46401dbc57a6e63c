//! A value of any kind the format knows, so that one table can hold them all.

use std::cmp::Ordering;
use std::fmt;
use std::str::FromStr;

use trade::{
    Angle, ArealWeight, Duration, Length, Share, StitchDensity, Temperature, UnitError, YarnSize,
};

/// From here on a length is said in metres.
const LONG: Length = Length::m(5.0);

/// A quantity of any kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A length.
    Length(Length),
    /// A share of something.
    Share(Share),
    /// An angle.
    Angle(Angle),
    /// The weight of a cloth.
    Weight(ArealWeight),
    /// The size of a yarn.
    Yarn(YarnSize),
    /// Stitches to a length.
    Density(StitchDensity),
    /// How warm.
    Temperature(Temperature),
    /// How long it takes.
    Duration(Duration),
    /// How many.
    Count(u32),
}

impl Amount {
    /// Which of two is larger; `None` for amounts of two kinds, which have no order.
    fn against(self, other: Self) -> Option<Ordering> {
        match (self, other) {
            (Self::Length(a), Self::Length(b)) => a.partial_cmp(&b),
            (Self::Share(a), Self::Share(b)) => a.partial_cmp(&b),
            (Self::Angle(a), Self::Angle(b)) => a.partial_cmp(&b),
            (Self::Weight(a), Self::Weight(b)) => a.partial_cmp(&b),
            (Self::Yarn(a), Self::Yarn(b)) => a.partial_cmp(&b),
            (Self::Density(a), Self::Density(b)) => a.partial_cmp(&b),
            (Self::Temperature(a), Self::Temperature(b)) => a.partial_cmp(&b),
            (Self::Duration(a), Self::Duration(b)) => a.partial_cmp(&b),
            (Self::Count(a), Self::Count(b)) => Some(a.cmp(&b)),
            _ => None,
        }
    }

    pub(super) fn lies_between(self, [low, high]: [Self; 2]) -> bool {
        let at_least = matches!(self.against(low), Some(Ordering::Greater | Ordering::Equal));
        at_least && matches!(self.against(high), Some(Ordering::Less | Ordering::Equal))
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            // Rolls, tables and cones are long; what is cut and sewn is said as lengths are.
            Self::Length(value) if value.abs() >= LONG => write!(f, "{} m", value.to_m()),
            Self::Length(value) => value.fmt(f),
            Self::Share(value) => value.fmt(f),
            Self::Angle(value) => value.fmt(f),
            Self::Weight(value) => value.fmt(f),
            Self::Yarn(value) => value.fmt(f),
            Self::Density(value) => value.fmt(f),
            Self::Temperature(value) => value.fmt(f),
            Self::Duration(value) => value.fmt(f),
            Self::Count(value) => value.fmt(f),
        }
    }
}

/// A kind of quantity that is written with its unit.
pub(crate) trait Measured:
    FromStr<Err = UnitError> + PartialOrd + Default + fmt::Display + Copy + Into<Amount>
{
    /// The value, where the amount is of this kind.
    fn of(amount: Amount) -> Option<Self>;
}

macro_rules! measured {
    ($($kind:ident($type:ty)),+ $(,)?) => {$(
        impl From<$type> for Amount {
            fn from(value: $type) -> Self {
                Self::$kind(value)
            }
        }

        impl Measured for $type {
            fn of(amount: Amount) -> Option<Self> {
                match amount {
                    Amount::$kind(value) => Some(value),
                    _ => None,
                }
            }
        }
    )+};
}

measured!(
    Length(Length),
    Share(Share),
    Angle(Angle),
    Weight(ArealWeight),
    Yarn(YarnSize),
    Density(StitchDensity),
    Temperature(Temperature),
    Duration(Duration),
);

impl From<u32> for Amount {
    fn from(count: u32) -> Self {
        Self::Count(count)
    }
}

/// Rows of the table, with both ranges in the unit the name says. `const`, so that the table costs nothing to ask.
pub(super) mod rows {
    use super::super::row::Range;
    use super::Amount;
    use trade::{
        Angle, ArealWeight, Duration, Length, Share, StitchDensity, Temperature, YarnSize,
    };

    type Paths = &'static [&'static str];

    macro_rules! rows_in {
        ($($(#[$doc:meta])* $name:ident, $kind:ident, $unit:expr;)+) => {$(
            $(#[$doc])*
            pub const fn $name(
                paths: Paths,
                usual: [f64; 2],
                possible: [f64; 2],
                reason: &'static str,
            ) -> Range {
                Range {
                    paths,
                    usual: [Amount::$kind($unit(usual[0])), Amount::$kind($unit(usual[1]))],
                    possible: [
                        Amount::$kind($unit(possible[0])),
                        Amount::$kind($unit(possible[1])),
                    ],
                    reason,
                }
            }
        )+};
    }

    rows_in!(
        /// Lengths in millimetres.
        mm, Length, Length::mm;
        /// Lengths in centimetres.
        cm, Length, Length::cm;
        /// Lengths in metres.
        m, Length, Length::m;
        /// Shares in percent.
        percent, Share, Share::percent;
        /// Angles in degrees.
        deg, Angle, Angle::deg;
        /// Weights in grams a square metre.
        gsm, Weight, ArealWeight::gsm;
        /// Yarns in tex.
        tex, Yarn, YarnSize::tex;
        /// Stitches to the centimetre.
        per_cm, Density, StitchDensity::per_cm;
        /// Temperatures in degrees Celsius.
        celsius, Temperature, Temperature::celsius;
        /// Times in minutes.
        minutes, Duration, Duration::minutes;
    );

    /// Whole numbers.
    pub const fn count(
        paths: Paths,
        usual: [u32; 2],
        possible: [u32; 2],
        reason: &'static str,
    ) -> Range {
        Range {
            paths,
            usual: [Amount::Count(usual[0]), Amount::Count(usual[1])],
            possible: [Amount::Count(possible[0]), Amount::Count(possible[1])],
            reason,
        }
    }
}
