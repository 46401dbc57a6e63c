//! What every quantity of the format usually is and what it can be, in one table with its reasons.
//!
//! A value outside what it *can* be is no pair of jeans, cloth or order: almost always a slip in a unit or a decimal
//! point. A file that states one is not read, and the bench refuses it while the file stays as it was. These limits are
//! therefore wide. A value outside what is *usual* is read, and said as a finding with the reason given here.
//!
//! The reader asks this table by the path of the value it reads, so that a quantity without a row cannot be read; a test
//! reads every quantity there is. Size tags and the number of the format are names, not quantities.

mod amount;
mod chart;
mod details;
mod row;
mod shelf;
#[cfg(test)]
mod tests;

pub use amount::Amount;
pub(crate) use amount::Measured;
pub use row::Range;

/// Every row. Where two rows hold for a path, the one that stands first does.
pub fn ranges() -> impl Iterator<Item = &'static Range> {
    [chart::ROWS, details::ROWS, shelf::ROWS]
        .into_iter()
        .flatten()
}

/// The row for a value, by its path in its file ("chart.thigh.value", "seams.inseam.rows[0].offset").
#[must_use]
pub fn range_of(path: &str) -> Option<&'static Range> {
    // The dot of a half size is no step: "lines[0].pairs.31.5x32".
    let ordered = path.split_once(".pairs.");
    let sized = ordered.filter(|(_, name)| name.parse::<crate::Size>().is_ok());
    let sized = sized.map(|(line, _)| format!("{line}.pairs.size"));
    let path = sized.as_deref().unwrap_or(path);
    ranges().find(|row| row.paths.iter().any(|pattern| fits(pattern, path)))
}

/// Whether a pattern is one for this path; from the end, where paths differ soonest.
fn fits(pattern: &str, path: &str) -> bool {
    let mut steps = path.rsplit('.');
    let same = pattern.rsplit('.').all(|wanted| {
        steps.next().is_some_and(|step| {
            let named = step.split_once('[').map(|(name, _)| name);
            match wanted.strip_suffix("[]") {
                Some(list) => named == Some(list),
                None => wanted == "*" || (named.is_none() && wanted == step),
            }
        })
    });
    same && steps.next().is_none()
}
