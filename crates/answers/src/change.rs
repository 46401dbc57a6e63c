//! One change between two versions, as histories and comparisons give it.

use serde::Serialize;
use style::Change;

#[derive(Serialize)]
pub(crate) struct ChangeRow<'a> {
    path: &'a str,
    sentence: &'a str,
}

pub(crate) fn changes(changes: &[Change]) -> Vec<ChangeRow<'_>> {
    changes.iter().map(row).collect()
}

fn row(change: &Change) -> ChangeRow<'_> {
    let Change { path, sentence } = change;
    ChangeRow { path, sentence }
}
