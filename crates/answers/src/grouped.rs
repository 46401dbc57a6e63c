//! Findings of all sizes, each said once with the sizes it holds in.

use draft::{Finding, Severity};
use style::{Size, StyleDoc};

/// A finding and where it holds.
pub struct Grouped<'a> {
    /// The finding, in the words of the first size it was found in.
    pub finding: &'a Finding,
    /// The sizes, in the order of the run.
    pub sizes: Vec<Size>,
    /// Why it is not counted, where the maker muted it.
    pub muted: Option<&'a str>,
}

impl Grouped<'_> {
    /// Whether it is a conflict, under which that follows from it is folded.
    #[must_use]
    pub fn is_conflict(&self) -> bool {
        self.finding.code == "fit::conflict"
    }
}

/// Those that stand for themselves, and those that only follow from a conflict.
#[must_use]
pub fn folded<'a, 'b>(groups: &'b [Grouped<'a>]) -> (Vec<&'b Grouped<'a>>, Vec<&'b Grouped<'a>>) {
    groups.iter().partition(|group| !group.finding.follows)
}

/// Groups findings of the same code, grade and subject, the gravest first.
pub fn grouped<'a>(
    doc: &'a StyleDoc,
    run: impl IntoIterator<Item = (Size, &'a [Finding])>,
) -> Vec<Grouped<'a>> {
    let mut groups: Vec<Grouped<'_>> = Vec::new();
    for (size, findings) in run {
        for finding in findings {
            let same = groups.iter_mut().find(|group| {
                let first = group.finding;
                first.code == finding.code
                    && first.severity == finding.severity
                    && first.subject == finding.subject
                    && first.follows == finding.follows
            });
            match same {
                Some(group) if group.sizes.contains(&size) => {}
                Some(group) => group.sizes.push(size),
                None => groups.push(Grouped {
                    finding,
                    sizes: vec![size],
                    muted: finding.muted(doc).map(|(_, muted)| muted.reason.as_str()),
                }),
            }
        }
    }
    groups.sort_by_key(|group| std::cmp::Reverse(group.finding.severity));
    groups
}

/// How many groups of a grade are counted.
#[must_use]
pub fn count(groups: &[Grouped<'_>], grade: Severity) -> usize {
    groups
        .iter()
        .filter(|g| g.finding.severity == grade && g.muted.is_none() && !g.finding.follows)
        .count()
}
