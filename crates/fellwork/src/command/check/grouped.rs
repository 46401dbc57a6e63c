//! Findings of all sizes, each said once with the sizes it holds in.

use draft::{Finding, Severity};
use style::{Size, Sizes, StyleDoc};

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
    pub fn is_conflict(&self) -> bool {
        self.finding.code == "fit::conflict"
    }
}

/// Those that stand for themselves, and those that only follow from a conflict.
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
pub fn count(groups: &[Grouped<'_>], grade: Severity) -> usize {
    groups
        .iter()
        .filter(|g| g.finding.severity == grade && g.muted.is_none() && !g.finding.follows)
        .count()
}

/// Sizes in words: "every size", or waist by waist, those in every length together.
pub fn in_words(sizes: &[Size], run: &Sizes) -> String {
    if run.all().all(|size| sizes.contains(&size)) {
        return "every size".to_owned();
    }
    let (mut whole, mut single) = (Vec::new(), Vec::new());
    for &waist in &run.waists {
        let lengths = run.lengths.iter().map(|&length| Size::of(waist, length));
        let found: Vec<Size> = lengths.filter(|size| sizes.contains(size)).collect();
        if found.len() == run.lengths.len() && found.len() > 1 {
            whole.push(waist.to_string());
        } else {
            single.extend(found.iter().map(Size::to_string));
        }
    }
    let mut parts = Vec::new();
    if !whole.is_empty() {
        parts.push(format!("waist {} in every length", whole.join(", ")));
    }
    if !single.is_empty() {
        parts.push(single.join(", "));
    }
    parts.join("; ")
}

#[cfg(test)]
mod tests {
    use style::Tag;

    use super::*;

    #[test]
    fn sizes_are_gathered_by_waist() {
        let run = Sizes {
            waists: [28, 30, 32].map(Tag::inches).into(),
            lengths: [30, 32].map(Tag::inches).into(),
            base: Size::new(30, 32),
        };
        let sizes = |tags: &[(u32, u32)]| -> Vec<Size> {
            tags.iter().map(|&(w, l)| Size::new(w, l)).collect()
        };
        let all: Vec<Size> = run.all().collect();
        assert_eq!(in_words(&all, &run), "every size");
        let some = sizes(&[(28, 30), (28, 32), (32, 32)]);
        assert_eq!(in_words(&some, &run), "waist 28 in every length; 32x32");
        assert_eq!(in_words(&sizes(&[(30, 30)]), &run), "30x30");
    }
}
