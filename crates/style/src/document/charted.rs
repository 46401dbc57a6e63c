//! What a style's chart says of a measure.

use trade::Length;

use crate::Size;
use crate::ids::MeasureId;
use crate::measures::Level;

use super::StyleDoc;

impl StyleDoc {
    /// What a measure is to be at a size, from the chart.
    ///
    /// A measure the chart leaves out takes the value [`MeasureId::known`] states for it; `None` when there is none
    /// (an outseam the draft may choose).
    #[must_use]
    pub fn value(&self, measure: MeasureId, size: Size) -> Option<Length> {
        match self.chart.get(&measure) {
            Some(entry) => Some(entry.value_at(self.sizes.base, size)),
            None => measure.known().value(),
        }
    }

    /// The level a measure is taken at (seat: above the crotch; thigh and knee: below it);
    /// `None` for measures without one.
    #[must_use]
    pub fn level(&self, measure: MeasureId) -> Option<Length> {
        let stated = self.chart.get(&measure).and_then(|entry| entry.at);
        stated.or_else(|| measure.known().level.map(Level::usual))
    }

    /// How far a measure of the finished garment may be off, either way.
    #[must_use]
    pub fn tolerance(&self, measure: MeasureId) -> Length {
        let stated = self.chart.get(&measure);
        stated.map_or(measure.known().tolerance, |entry| entry.tolerance)
    }
}
