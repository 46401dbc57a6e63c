//! The findings and the chart as a person reads them.

use std::fmt::Write;

use answers::{Grouped, count, folded};
use draft::Severity;
use sewing::Garment;
use style::Loaded;
use trade::counted;
use words::Words;

use super::sizes::in_words;

/// The findings, the gravest first, and how many there are.
pub fn findings(loaded: &Loaded, run: &[Garment], findings: &[Grouped<'_>]) -> String {
    let style = &loaded.style;
    let mut out = format!(
        "{} {}: {} drafted and sewn\n\n",
        style.style.code,
        style.style.name,
        counted(run.len(), "size", "sizes")
    );
    let (own, following) = folded(findings);
    let words = Words::english();
    for group in own {
        let finding = group.finding;
        let sizes = in_words(&group.sizes, &style.sizes);
        // Writing into a string does not fail.
        let _ = writeln!(
            out,
            "{:<8} {}  ({})",
            finding.severity.word(),
            finding.about(words),
            finding.code
        );
        let _ = writeln!(out, "         {}", finding.message(words));
        if let Some(reason) = group.muted {
            let _ = writeln!(out, "         muted: {reason}");
        } else if let Some(remedy) = finding.remedy(words) {
            let _ = writeln!(out, "         what would help: {remedy}");
        }
        let _ = writeln!(
            out,
            "         in {sizes}; source: {}",
            finding.source(words)
        );
        if group.is_conflict() {
            for follower in &following {
                let finding = follower.finding;
                let _ = writeln!(
                    out,
                    "         goes with it: {} {}  ({})",
                    finding.severity.word(),
                    finding.about(words),
                    finding.code
                );
            }
        }
        out.push('\n');
    }
    let muted = match findings
        .iter()
        .filter(|group| group.muted.is_some())
        .count()
    {
        0 => String::new(),
        many => format!(", {many} muted"),
    };
    let _ = writeln!(
        out,
        "{}, {}, {}{muted}",
        how_many(count(findings, Severity::Error), "error"),
        how_many(count(findings, Severity::Warning), "warning"),
        how_many(count(findings, Severity::Note), "note")
    );
    out
}

/// "no errors", "1 error", "2 errors".
pub fn how_many(n: usize, one: &str) -> String {
    match n {
        0 => format!("no {one}s"),
        n => counted(n, one, &format!("{one}s")),
    }
}

/// Every measure in every size, in millimetres: as charted, as the pattern measures, the difference.
pub fn measures(run: &[Garment]) -> String {
    let mut out = format!(
        "\n{:<8} {:<30} {:>10} {:>12} {:>12}\n",
        "size", "measure", "chart mm", "pattern mm", "difference"
    );
    for garment in run {
        for measured in garment.pattern.measures() {
            let pattern = measured.pattern.to_mm();
            let (chart, difference) = match measured.chart {
                Some(chart) => (
                    format!("{:.3}", chart.to_mm()),
                    format!("{:+.4}", pattern - chart.to_mm()),
                ),
                None => ("drafted".to_owned(), String::new()),
            };
            let _ = writeln!(
                out,
                "{:<8} {:<30} {chart:>10} {pattern:>12.3} {difference:>12}",
                garment.size.to_string(),
                measured.measure.words(Words::english()),
            );
        }
    }
    out
}
