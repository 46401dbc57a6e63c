//! Whatever there is one of for every measure.

use std::ops::{Index, IndexMut};

use crate::MeasureId;

/// One thing for every measure: never one too few, never one twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ByMeasure<T>([T; MeasureId::ALL.len()]);

impl<T> ByMeasure<T> {
    /// Made measure by measure.
    pub fn of(each: impl FnMut(MeasureId) -> T) -> Self {
        Self(MeasureId::ALL.map(each))
    }
}

impl<T> Index<MeasureId> for ByMeasure<T> {
    type Output = T;

    fn index(&self, measure: MeasureId) -> &T {
        &self.0[measure as usize]
    }
}

impl<T> IndexMut<MeasureId> for ByMeasure<T> {
    fn index_mut(&mut self, measure: MeasureId) -> &mut T {
        &mut self.0[measure as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_measure_lies_in_its_own_place() {
        let codes = ByMeasure::of(MeasureId::code);
        for measure in MeasureId::ALL {
            assert_eq!(codes[measure], measure.code());
            assert_eq!(MeasureId::ALL[measure.number() - 1], measure);
        }
    }
}
