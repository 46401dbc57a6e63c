//! The two states of a pair of jeans.
//!
//! A pair is cut and sewn before its first wash and measured after it, and the two differ by more than any
//! tolerance. A figure therefore carries its state as it carries its unit: [`Unwashed`] is what a
//! knife, a folder or a needle is set to, [`Washed`] what a tape finds on the finished pair. Nothing
//! turns one into the other but the share the cloth loses along the way the figure lies.

use crate::{Length, Share, StitchDensity};

/// A figure of the pair as it is cut and sewn, before its first wash.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Unwashed<T>(T);

/// A figure of the pair as it is measured and worn, after its first wash.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Washed<T>(T);

macro_rules! state {
    ($state:ident) => {
        impl<T> $state<T> {
            /// States the state of a figure.
            #[must_use]
            pub const fn new(figure: T) -> Self {
                Self(figure)
            }
        }

        impl<T: Copy> $state<T> {
            /// The figure by itself, where the state is said beside it.
            #[must_use]
            pub const fn figure(self) -> T {
                self.0
            }
        }

        impl std::ops::Add for $state<Length> {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::Sub for $state<Length> {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::iter::Sum for $state<Length> {
            fn sum<I: Iterator<Item = Self>>(figures: I) -> Self {
                Self(figures.map(|figure| figure.0).sum())
            }
        }
    };
}
state!(Unwashed);
state!(Washed);

impl Washed<Length> {
    /// What has to be cut or sewn so that this is left when the cloth has lost a share along it:
    /// L ÷ (1 − s), as published at foralltex.com, "shrinkage math".
    #[must_use]
    pub fn unwashed(self, lost: Share) -> Unwashed<Length> {
        Unwashed(self.0 / (1.0 - lost.to_ratio()))
    }
}

impl Unwashed<Length> {
    /// What is left when the cloth has lost a share along it: L × (1 − s).
    #[must_use]
    pub fn washed(self, lost: Share) -> Washed<Length> {
        Washed(self.0 * (1.0 - lost.to_ratio()))
    }
}

impl Washed<StitchDensity> {
    /// Stitches to the length at the machine, so that as many as wanted are counted after the wash: the
    /// row is shortened with the cloth, its stitches are not fewer (geometry).
    #[must_use]
    pub fn unwashed(self, lost: Share) -> Unwashed<StitchDensity> {
        Unwashed(StitchDensity::per_inch(
            self.0.to_per_inch() * (1.0 - lost.to_ratio()),
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An inseam of 81.3 cm at 3 % warp is cut 83.81 cm (foralltex.com, "shrinkage math").
    #[test]
    fn a_length_goes_there_and_back() {
        let inseam = Washed::new(Length::cm(81.3));
        let cut = inseam.unwashed(Share::percent(3.0));
        assert!((cut.figure().to_cm() - 83.81).abs() < 0.005);
        let back = cut.washed(Share::percent(3.0)).figure();
        assert!((back - inseam.figure()).abs() < Length::mm(1e-9));
    }

    /// Worked by hand: 8 to the inch after 8 % is 7.36 at the machine; 100 inches sewn hold 736
    /// stitches, which then lie on 92 inches.
    #[test]
    fn stitches_are_counted_after_the_wash() {
        let wanted = Washed::new(StitchDensity::per_inch(8.0));
        let set = wanted.unwashed(Share::percent(8.0)).figure();
        assert!((set.to_per_inch() - 7.36).abs() < 1e-9);
        assert!((set.to_per_inch() * 100.0 / 92.0 - 8.0).abs() < 1e-9);
    }
}
