//! A style that was checked: what was noticed and, where asked for, every measure in every size.

use draft::{Measured, Severity};
use serde::Serialize;
use sewing::Garment;
use style::{Loaded, Size};
use trade::Length;
use words::Words;

use crate::finding::{FindingRow, findings};
use crate::grouped::{Grouped, count};
use crate::number::{Fine, mm};
use crate::shape::Shape;
use crate::text::{AnswerError, lines};

/// A style that was checked.
pub struct Checked<'a> {
    /// The style.
    pub loaded: &'a Loaded,
    /// Its garments, a size each.
    pub run: &'a [Garment],
    /// What was noticed.
    pub findings: &'a [Grouped<'a>],
    /// Whether the measures are told too.
    pub measures: bool,
}

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    style: Head<'a>,
    sizes: Vec<Size>,
    errors: usize,
    warnings: usize,
    notes: usize,
    findings: Vec<FindingRow<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    measures: Option<Vec<MeasureRow<'a>>>,
}

#[derive(Serialize)]
struct Head<'a> {
    name: &'a str,
    code: &'a str,
    file: String,
    revision: &'a str,
}

#[derive(Serialize)]
struct MeasureRow<'a> {
    size: Size,
    key: &'a str,
    name: &'a str,
    chart_mm: Option<f64>,
    pattern_mm: f64,
    difference_mm: Option<f64>,
    tolerance_mm: Option<f64>,
}

/// The answer for a style that was checked.
///
/// # Errors
/// It cannot be put into JSON.
pub fn check(checked: &Checked<'_>) -> Result<String, AnswerError> {
    let Checked {
        loaded,
        run,
        findings: noticed,
        measures: with_measures,
    } = *checked;
    let style = &loaded.style;
    lines(&Answer {
        format: Shape::Check.version(),
        style: Head {
            name: &style.style.name,
            code: &style.style.code,
            file: loaded.path.display().to_string(),
            revision: loaded.revision.as_str(),
        },
        sizes: style.sizes.all().collect(),
        errors: count(noticed, Severity::Error),
        warnings: count(noticed, Severity::Warning),
        notes: count(noticed, Severity::Note),
        findings: findings(noticed),
        measures: with_measures.then(|| run.iter().flat_map(|g| measures(loaded, g)).collect()),
    })
}

fn measures(loaded: &Loaded, garment: &Garment) -> Vec<MeasureRow<'static>> {
    let row = |measured: Measured| {
        let Measured {
            measure,
            chart,
            pattern,
        } = measured;
        MeasureRow {
            size: garment.size,
            key: measure.code(),
            name: measure.words(Words::english()),
            chart_mm: chart.map(fine),
            pattern_mm: fine(pattern),
            difference_mm: chart.map(|chart| fine(pattern - chart)),
            tolerance_mm: Some(fine(loaded.style.tolerance(measure))),
        }
    };
    garment.pattern.measures().into_iter().map(row).collect()
}

fn fine(length: Length) -> f64 {
    mm(length, Fine::HundredThousandth)
}
