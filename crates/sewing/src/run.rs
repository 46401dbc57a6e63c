//! Findings of a whole run of sizes, each said once.

use draft::Finding;
use style::Size;

use crate::garment::Garment;

/// At most this many sizes are named one by one.
const MOST_NAMED: usize = 6;

/// A finding met in one or more sizes.
struct Met {
    first: Finding,
    /// Which of several alike in one garment.
    nth: usize,
    sizes: Vec<Size>,
    /// Said in the same words in every size.
    same_words: bool,
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
                f.code == found.code && f.severity == found.severity && f.about == found.about
            };
            let nth = garment.findings[..index]
                .iter()
                .filter(|f| alike(f))
                .count();
            match all.iter_mut().find(|m| m.nth == nth && alike(&m.first)) {
                Some(met) => {
                    met.sizes.push(garment.size);
                    met.same_words &= met.first.message == found.message;
                }
                None => all.push(Met {
                    first: found.clone(),
                    nth,
                    sizes: vec![garment.size],
                    same_words: true,
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
    let Met { first, sizes, .. } = met;
    let [lowest, _, ..] = sizes[..] else {
        return first;
    };
    let mut places = if sizes.len() == of {
        "in every size".to_owned()
    } else if sizes.len() <= MOST_NAMED {
        let names: Vec<String> = sizes.iter().map(Size::to_string).collect();
        format!("in {}", names.join(", "))
    } else {
        format!("in {} of {of} sizes", sizes.len())
    };
    if !met.same_words {
        places.push_str(&format!("; the numbers are those of {lowest}"));
    }
    Finding {
        message: format!("{} ({places})", first.message),
        size: None,
        ..first
    }
}
