//! A few small numbers side by side in one word: how many pairs lie in a ply of each lay.

/// One number for each lay, the first lowest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Lanes(u128);

/// How many numbers there is room for.
pub const MOST_LANES: usize = 16;

/// The largest number; one more bit than it needs tells when a sum is too large.
pub const MOST_IN_LANE: u32 = 127;

const WIDTH: usize = 8;
const EVERY: u128 = u128::MAX / 0xff;
const TOP: u128 = EVERY << (WIDTH - 1);

impl Lanes {
    /// The numbers; the caller sees to it that there is room.
    pub fn of(numbers: &[u32]) -> Self {
        let put = |sum: u128, (lane, number): (usize, &u32)| {
            sum | u128::from(number & MOST_IN_LANE) << (lane * WIDTH)
        };
        Self(numbers.iter().take(MOST_LANES).enumerate().fold(0, put))
    }

    /// One of the numbers.
    pub fn get(self, lane: usize) -> u32 {
        ((self.0 >> (lane * WIDTH)) & u128::from(MOST_IN_LANE)) as u32
    }

    /// The sums, where none is above the most.
    pub fn plus(self, other: Self, most: u32) -> Option<Self> {
        let sum = self.0 + other.0;
        let spare = u128::from(MOST_IN_LANE.saturating_sub(most)) * EVERY;
        ((sum + spare) & TOP == 0).then_some(Self(sum))
    }

    /// The differences, where none is below zero.
    pub fn minus(self, other: Self) -> Option<Self> {
        let borrowed = (self.0 | TOP) - other.0;
        (borrowed & TOP == TOP).then_some(Self(borrowed & !TOP))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn sums_and_differences_are_those_of_each_lane() {
        let a = [0, 3, 127, 64];
        let b = [5, 3, 0, 63];
        let sum = Lanes::of(&a).plus(Lanes::of(&b), 127).unwrap();
        assert_eq!([0, 1, 2, 3].map(|lane| sum.get(lane)), [5, 6, 127, 127]);
        assert_eq!(sum.minus(Lanes::of(&b)), Some(Lanes::of(&a)));
        assert_eq!(Lanes::of(&a).plus(Lanes::of(&b), 126), None);
        assert_eq!(Lanes::of(&a).minus(Lanes::of(&b)), None);
        let one = Lanes::of(&[0; MOST_LANES]).plus(Lanes::of(&[1]), 1);
        assert_eq!(one, Some(Lanes::of(&[1])));
        assert_eq!(one.unwrap().plus(Lanes::of(&[1]), 1), None);
    }
}
