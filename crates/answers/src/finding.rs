//! A finding, as `check` gives it.

use draft::Severity;
use serde::Serialize;
use style::{Size, Subject};
use words::Words;

use crate::grouped::{Grouped, folded};

#[derive(Serialize)]
pub(crate) struct FindingRow<'a> {
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
    followers: Vec<FindingRow<'a>>,
}

/// Those that stand for themselves, each conflict with what follows from it.
pub(crate) fn findings<'a>(groups: &'a [Grouped<'_>]) -> Vec<FindingRow<'a>> {
    let (own, following) = folded(groups);
    let of = |group: &Grouped<'_>| {
        let conflict = group.is_conflict();
        let followers = following.iter().copied().filter(move |_| conflict);
        followers.map(row).collect()
    };
    own.into_iter()
        .map(|group| FindingRow {
            followers: of(group),
            ..row(group)
        })
        .collect()
}

fn row<'a>(group: &'a Grouped<'_>) -> FindingRow<'a> {
    let finding = group.finding;
    let words = Words::english();
    FindingRow {
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
