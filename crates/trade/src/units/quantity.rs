//! What every unit type has in common: arithmetic, text and serde.

/// Gives a newtype over `f64` its arithmetic, its reading from text and its serde form.
///
/// The type must have its own `Display`, which must parse back.
macro_rules! quantity {
    ($name:ident, $kind:expr) => {
        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            /// The size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The smaller of the two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of the two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// A total order, for sorting: see [`f64::total_cmp`].
            pub fn total_cmp(&self, other: &Self) -> std::cmp::Ordering {
                self.0.total_cmp(&other.0)
            }

            /// Whether the value inside is neither infinite nor NaN.
            pub const fn is_finite(self) -> bool {
                self.0.is_finite()
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
            }
        }

        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl std::ops::Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, quantity: $name) -> $name {
                $name(self * quantity.0)
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self::ZERO, |total, one| total + one)
            }
        }

        impl<'a> std::iter::Sum<&'a $name> for $name {
            fn sum<I: Iterator<Item = &'a Self>>(all: I) -> Self {
                all.copied().sum()
            }
        }

        impl std::str::FromStr for $name {
            type Err = $crate::units::UnitError;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                $crate::units::text::read(text, $kind).map(Self)
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.collect_str(self)
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                struct Text;

                impl serde::de::Visitor<'_> for Text {
                    type Value = $name;

                    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                        let kind: $crate::units::Quantity = $kind;
                        write!(f, "{} as text, such as {}", kind.noun(), kind.examples())
                    }

                    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                        text.parse().map_err(E::custom)
                    }

                    // A bare number gets the same answer as a bare number in quotes.
                    fn visit_i64<E: serde::de::Error>(self, bare: i64) -> Result<$name, E> {
                        self.visit_str(&bare.to_string())
                    }

                    fn visit_u64<E: serde::de::Error>(self, bare: u64) -> Result<$name, E> {
                        self.visit_str(&bare.to_string())
                    }

                    fn visit_f64<E: serde::de::Error>(self, bare: f64) -> Result<$name, E> {
                        self.visit_str(&bare.to_string())
                    }
                }

                // Any, not str: a self-describing format then hands over a bare number as well.
                from.deserialize_any(Text)
            }
        }
    };
}

pub(super) use quantity;
