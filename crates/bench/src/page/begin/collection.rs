//! The collection a style begins in.

use style::Collection;
use words::Words;

use crate::answer::placed;
use crate::state::Bench;
use crate::trouble::Trouble;

/// The collection as it is; `None` where there is none yet and one can begin.
pub(super) fn collection_of(bench: &Bench) -> Result<Option<Collection>, Trouble> {
    let say = bench.say();
    if style::can_begin_in(bench.folder()) {
        return Ok(None);
    }
    let collection = style::load_collection(bench.folder()).map_err(|report| {
        Trouble::unreadable(Words::collection_not_opened, placed(say, &report))
    })?;
    Ok(Some(collection))
}

/// The names of the styles there are, as their folders say them.
pub(super) fn taken(bench: &Bench) -> Result<Vec<String>, Trouble> {
    let styles = bench.styles()?;
    Ok(styles.into_iter().map(|(name, _)| name).collect())
}
