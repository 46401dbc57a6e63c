//! The measurement chart as it is printed.

use serde::Serialize;

/// The finished measures of a style in every size.
///
/// Measures that follow the waist size stand in one table, a column a size; measures that also follow
/// the length stand in a second table. Up to 10 sizes stand on an upright page, up to 18 on a turned one,
/// and more are continued on further pages.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Chart {
    /// What it is headed, such as "Measurement chart".
    pub title: String,
    /// What the figures are, such as "centimetres, finished garment after its first wash".
    pub note: String,
    /// What heads the size columns, such as "waist size, inches".
    pub sizes_label: String,
    /// The sizes, one a column, such as "28".
    pub sizes: Vec<String>,
    /// Which of `sizes` is the sample size, counted from 0; its column is set bold. `None`: none is.
    pub sample: Option<usize>,
    /// What heads the length column of the second table, such as "length, inches".
    pub lengths_label: String,
    /// The measures in the order they are taken.
    pub rows: Vec<ChartRow>,
}

/// One measure.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct ChartRow {
    /// Its number on the measure diagrams, such as "7".
    pub number: String,
    /// Its name, such as "Thigh".
    pub name: String,
    /// How it is taken, in a sentence; printed after the measure diagrams, under its number.
    pub how: String,
    /// What it may differ by, such as "0.8"; printed after a plus-minus sign.
    pub tolerance: String,
    /// Its figures.
    pub values: ChartValues,
}

/// The figures of one measure.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ChartValues {
    /// One figure a size, in the order of [`Chart::sizes`]; missing ones print as nothing.
    BySize(Vec<String>),
    /// One line a length, each with one figure a size.
    ByLength(Vec<LengthLine>),
}

impl Default for ChartValues {
    fn default() -> Self {
        Self::BySize(Vec::new())
    }
}

/// The figures of one measure in one length.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct LengthLine {
    /// The length, such as "32".
    pub length: String,
    /// One figure a size, in the order of [`Chart::sizes`]. Where all are equal they print once.
    pub values: Vec<String>,
}
