//! What changed and what the checks found.

use sewing::findings_of_run;

use super::Context;
use super::words::capital;
use crate::{Change, FindingRow, Severity};

/// A change told as "about: before → after" in its three parts; one told otherwise as a whole.
pub(super) fn changes(changes: &[style::Change]) -> Vec<Change> {
    changes
        .iter()
        .map(|change| {
            let parts = change
                .sentence
                .split_once(": ")
                .and_then(|(about, rest)| Some((about, rest.split_once(" → ")?)));
            match parts {
                Some((about, (before, after))) => Change {
                    about: capital(about),
                    before: before.to_owned(),
                    after: after.to_owned(),
                },
                None => Change {
                    about: capital(&change.sentence),
                    ..Change::default()
                },
            }
        })
        .collect()
}

/// The findings of every size, each once, the gravest first.
pub(super) fn findings(context: &Context<'_>) -> Vec<FindingRow> {
    findings_of_run(context.run)
        .into_iter()
        .map(|found| FindingRow {
            severity: match found.severity {
                draft::Severity::Error => Severity::Error,
                draft::Severity::Warning => Severity::Warning,
                draft::Severity::Note => Severity::Note,
            },
            code: found.code.to_owned(),
            about: match found.size {
                Some(size) => format!("{}, size {size}", found.about.replace('_', " ")),
                None => found.about.replace('_', " "),
            },
            message: capital(&found.message) + ".",
            remedy: found.remedy.as_deref().map(capital).unwrap_or_default(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_is_told_in_three_parts() {
        let change = |sentence: &str| style::Change {
            path: "chart.thigh.value".to_owned(),
            sentence: sentence.to_owned(),
        };
        let told = changes(&[
            change("thigh at size 32x32: 62.2 cm → 63.0 cm (+0.8 cm)"),
            change("knee taken out of the chart"),
        ]);
        assert_eq!(told[0].about, "Thigh at size 32x32");
        assert_eq!(told[0].before, "62.2 cm");
        assert_eq!(told[0].after, "63.0 cm (+0.8 cm)");
        assert_eq!(told[1].about, "Knee taken out of the chart");
        assert_eq!(told[1].before, "");
    }
}
