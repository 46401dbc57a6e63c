//! One change between two versions, as histories and comparisons give it.

use serde::Serialize;
use style::ToldChange;

#[derive(Serialize)]
pub(crate) struct ChangeRow<'a> {
    path: &'a str,
    sentence: &'a str,
}

pub(crate) fn changes(changes: &[ToldChange]) -> Vec<ChangeRow<'_>> {
    changes.iter().map(row).collect()
}

fn row(change: &ToldChange) -> ChangeRow<'_> {
    let ToldChange { path, sentence } = change;
    ChangeRow { path, sentence }
}
