//! What the page of all changes shows, gathered.

use std::sync::Arc;

use style::FileChange;
use trade::System;

use crate::change_log;
use crate::page::history::list::{A_PAGE, Part};
use crate::state::Bench;
use crate::version_time::VersionTime;

/// A page of the changes.
pub(crate) struct All {
    pub(super) rows: Vec<Row>,
    pub(super) page: usize,
    pub(super) pages: usize,
    /// How many versions the style itself has.
    pub(super) own: usize,
    pub(super) count: usize,
}

pub(super) struct Row {
    pub(super) change: FileChange,
    /// Begun by the name of the file where it is not the page's own style: that is written as it is.
    pub(super) words: Arc<str>,
    pub(super) own: bool,
    pub(super) when: Option<VersionTime>,
}

impl All {
    pub(crate) fn of(bench: &Bench, style: &str, system: System, own: usize, part: &Part) -> Self {
        let all = bench.all_changes();
        let pages = all.len().div_ceil(A_PAGE).max(1);
        let page = part.page(pages);
        let shown = all.iter().rev().skip((page - 1) * A_PAGE).take(A_PAGE);
        let rows = shown.map(|change| Row {
            words: bench.words(change, style, system),
            when: VersionTime::written(bench.say(), &change.to.path),
            own: change_log::is_of(&change.file, style),
            change: change.clone(),
        });
        Self {
            rows: rows.collect(),
            page,
            pages,
            own,
            count: all.len(),
        }
    }
}
