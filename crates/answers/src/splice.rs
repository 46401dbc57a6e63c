//! A place where a roll may end, as lays and plans give it.

use lay::Splice;
use serde::Serialize;

use crate::number::{Fine, mm};

#[derive(Serialize)]
pub(crate) struct SpliceRow {
    from: f64,
    until: f64,
    lap: f64,
}

impl From<&Splice> for SpliceRow {
    fn from(splice: &Splice) -> Self {
        Self {
            from: mm(splice.from, Fine::Whole),
            until: mm(splice.until, Fine::Whole),
            lap: mm(splice.lap(), Fine::Whole),
        }
    }
}
