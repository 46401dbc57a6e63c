//! The units a drawing says lengths and densities in.

use style::{Collection, Units};
use trade::System;

/// The system the collection shows.
pub(crate) fn system(collection: &Collection) -> System {
    match collection.units {
        Units::Centimetres => System::Metric,
        Units::Inches => System::Inch,
    }
}
