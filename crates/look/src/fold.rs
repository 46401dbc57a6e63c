//! How many samples make a pixel of the near picture.

/// How samples make pixels, along each side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Fold {
    /// One sample a pixel.
    One,
    /// Three samples for every two pixels: the middle one of them is of both.
    ThreeOverTwo,
}

impl Fold {
    pub(crate) const fn ratio(self) -> f32 {
        match self {
            Fold::One => 1.0,
            Fold::ThreeOverTwo => 1.5,
        }
    }

    /// So many samples hold so many pixels.
    pub(crate) const fn samples(self, pixels: usize) -> usize {
        match self {
            Fold::One => pixels,
            Fold::ThreeOverTwo => (pixels * 3).div_ceil(2),
        }
    }

    /// The first sample of a pixel of an even number.
    pub(crate) const fn first_of(self, pixel: usize) -> usize {
        match self {
            Fold::One => pixel,
            Fold::ThreeOverTwo => pixel / 2 * 3,
        }
    }

    /// The sample in the middle of a pixel, or beside it.
    pub(crate) const fn middle_of(self, pixel: usize) -> usize {
        match self {
            Fold::One => pixel,
            Fold::ThreeOverTwo => pixel / 2 * 3 + pixel % 2 * 2,
        }
    }

    /// The pixels that a sample is part of, and the share of each that it makes.
    pub(crate) const fn shares(self, sample: usize) -> [(usize, f32); 2] {
        const NONE: (usize, f32) = (usize::MAX, 0.0);
        const WHOLE: f32 = 2.0 / 3.0;
        const HALF: f32 = 1.0 / 3.0;
        match self {
            Fold::One => [(sample, 1.0), NONE],
            Fold::ThreeOverTwo => {
                let pair = sample / 3 * 2;
                match sample % 3 {
                    0 => [(pair, WHOLE), NONE],
                    1 => [(pair, HALF), (pair + 1, HALF)],
                    _ => [(pair + 1, WHOLE), NONE],
                }
            }
        }
    }
}
