//! The findings and the chart for programs. The shape is told in `fellwork check --help`.

use draft::{Measured, Severity};
use serde::Serialize;
use sewing::Garment;
use style::{Diagnostic, Loaded, Report, Size, Subject};
use trade::Length;
use words::Words;

use super::grouped::{Grouped, count, folded};

/// The version of the shape.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Checked<'a> {
    format: u32,
    style: Head<'a>,
    sizes: Vec<Size>,
    errors: usize,
    warnings: usize,
    notes: usize,
    findings: Vec<Found<'a>>,
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
struct Found<'a> {
    code: &'a str,
    severity: Severity,
    about: String,
    subject: &'a Subject,
    message: String,
    remedy: Option<String>,
    source: String,
    sizes: &'a [Size],
    #[serde(skip_serializing_if = "Option::is_none")]
    muted: Option<&'a str>,
    /// Of a conflict: what goes with it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    followers: Vec<Found<'a>>,
}

#[derive(Serialize)]
struct MeasureRow<'a> {
    size: Size,
    key: &'a str,
    name: &'a str,
    chart_mm: Option<f64>,
    pattern_mm: f64,
    difference_mm: Option<f64>,
    tolerance_mm: f64,
}

#[derive(Serialize)]
struct Unread<'a> {
    format: u32,
    problems: &'a [Diagnostic],
    more: usize,
}

/// The answer for a style that was checked.
pub fn checked(
    loaded: &Loaded,
    run: &[Garment],
    findings: &[Grouped<'_>],
    with_measures: bool,
) -> Result<String, serde_json::Error> {
    let style = &loaded.style;
    line(&Checked {
        format: FORMAT,
        style: Head {
            name: &style.style.name,
            code: &style.style.code,
            file: loaded.path.display().to_string(),
            revision: loaded.revision.as_str(),
        },
        sizes: style.sizes.all().collect(),
        errors: count(findings, Severity::Error),
        warnings: count(findings, Severity::Warning),
        notes: count(findings, Severity::Note),
        findings: all_found(findings),
        measures: with_measures.then(|| run.iter().flat_map(|g| measures(loaded, g)).collect()),
    })
}

/// The answer for a style that cannot be read.
pub fn unread(report: &Report) -> Result<String, serde_json::Error> {
    line(&Unread {
        format: FORMAT,
        problems: &report.problems,
        more: report.more,
    })
}

/// An answer as it is printed.
pub fn line(answer: &impl Serialize) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(answer).map(|text| text + "\n")
}

fn all_found<'a>(groups: &'a [Grouped<'_>]) -> Vec<Found<'a>> {
    let (own, following) = folded(groups);
    let of = |group: &Grouped<'_>| {
        let conflict = group.is_conflict();
        let followers = following.iter().copied().filter(move |_| conflict);
        followers.map(found).collect()
    };
    own.into_iter()
        .map(|group| Found {
            followers: of(group),
            ..found(group)
        })
        .collect()
}

fn found<'a>(group: &'a Grouped<'_>) -> Found<'a> {
    let finding = group.finding;
    let words = Words::english();
    Found {
        code: finding.code,
        severity: finding.severity,
        about: finding.about(words),
        subject: &finding.subject,
        message: finding.message(words),
        remedy: finding.remedy(words),
        source: finding.source(words),
        sizes: &group.sizes,
        muted: group.muted,
        followers: Vec::new(),
    }
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
            chart_mm: chart.map(mm),
            pattern_mm: mm(pattern),
            difference_mm: chart.map(|chart| mm(pattern - chart)),
            tolerance_mm: mm(loaded.style.tolerance(measure)),
        }
    };
    garment.pattern.measures().into_iter().map(row).collect()
}

/// Millimetres to a hundred-thousandth, so that the solver's last digits are not printed.
fn mm(length: Length) -> f64 {
    let rounded = (length.to_mm() * 1e5).round() / 1e5;
    // Adding nought turns minus nought into nought.
    rounded + 0.0
}
