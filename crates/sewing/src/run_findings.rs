//! Findings of a whole run of sizes, each said once.

use draft::{Finding, FoundIn};
use style::Size;

use crate::garment::Garment;

/// A finding met in one or more sizes.
struct Met {
    first: Finding,
    /// Which of several alike in one garment.
    nth: usize,
    sizes: Vec<Size>,
    /// Whether the figures are the same in every size.
    same_figures: bool,
}

/// The findings of all sizes, worst first, equal ones merged.
///
/// Findings are equal when code, severity and subject are. Where their words differ (a measure that
/// changes with size), the first size speaks for all and says so. A merged finding of several sizes
/// has no size of its own and names the sizes it was found in.
pub fn findings_of_run(run: &[Garment]) -> Vec<Finding> {
    let mut all: Vec<Met> = Vec::new();
    for garment in run {
        for (index, found) in garment.findings.iter().enumerate() {
            let alike = |f: &Finding| {
                f.code == found.code && f.severity == found.severity && f.subject == found.subject
            };
            let nth = garment.findings[..index]
                .iter()
                .filter(|f| alike(f))
                .count();
            match all.iter_mut().find(|m| m.nth == nth && alike(&m.first)) {
                Some(met) => {
                    met.sizes.push(garment.size);
                    met.same_figures &= met.first.message == found.message;
                }
                None => all.push(Met {
                    first: found.clone(),
                    nth,
                    sizes: vec![garment.size],
                    same_figures: true,
                }),
            }
        }
    }
    let mut out: Vec<Finding> = all
        .into_iter()
        .map(|met| said_once(met, run.len()))
        .collect();
    out.sort_by_key(|f| std::cmp::Reverse(f.severity));
    out
}

fn said_once(met: Met, of: usize) -> Finding {
    if met.sizes.len() < 2 {
        return met.first;
    }
    Finding {
        found_in: Some(FoundIn {
            sizes: met.sizes,
            of,
            figures_differ: !met.same_figures,
        }),
        size: None,
        ..met.first
    }
}
