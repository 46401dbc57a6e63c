//! What the page of versions shows, gathered.

use std::sync::Arc;

use serde::Deserialize;
use style::{History, Revision};

use crate::answer::placed;
use crate::session::Session;
use crate::version_time::VersionTime;
use crate::versions::why_unread;
use crate::viewing::Viewing;

/// How many versions a page lists.
pub(super) const A_PAGE: usize = 50;

/// Which part of the list an address asks for.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Part {
    page: Option<String>,
    named: Option<String>,
    all: Option<String>,
}

impl Part {
    /// Whether all changes of all files are asked for.
    pub(super) fn is_all(&self) -> bool {
        self.all.as_deref() == Some("yes")
    }

    /// The page that is asked for, of so many.
    pub(super) fn page(&self, pages: usize) -> usize {
        let page = self.page.as_deref().and_then(|page| page.parse().ok());
        page.unwrap_or(1).clamp(1, pages)
    }
}

/// A page of the list.
pub(crate) struct List {
    pub(super) rows: Vec<Row>,
    /// Only versions with a name.
    pub(super) named: bool,
    pub(super) page: usize,
    pub(super) pages: usize,
    /// How many versions there are.
    pub(super) all: usize,
    /// How many of them have a name.
    pub(super) with_name: usize,
    /// How many changes all files of the collection have had.
    pub(super) changes: usize,
    /// Why names cannot be read.
    pub(super) names_problem: Vec<String>,
    /// Why the style file cannot be read as it is now.
    pub(super) file_problem: Vec<String>,
}

pub(super) struct Row {
    pub(super) version: Revision,
    pub(super) name: Option<String>,
    pub(super) when: Option<VersionTime>,
    /// The version before it.
    pub(super) before: Option<u32>,
    /// An earlier version with the same text.
    pub(super) same: Option<u32>,
    pub(super) now: bool,
    /// What changed, or why it cannot be read.
    pub(super) told: Result<Arc<[String]>, Vec<String>>,
}

impl List {
    pub(crate) fn of(
        session: &mut Session,
        history: &History,
        (see, changes): (&Viewing, usize),
        part: &Part,
        file_problem: Vec<String>,
    ) -> Self {
        let say = session.say();
        let named = part.named.as_deref() == Some("yes");
        let versions = history.versions().iter().rev();
        let listed: Vec<&Revision> = versions
            .filter(|version| !named || history.name(version).is_some())
            .collect();
        let pages = listed.len().div_ceil(A_PAGE).max(1);
        let page = part.page(pages);
        let shown = listed.iter().skip((page - 1) * A_PAGE).take(A_PAGE);
        let pairs: Vec<(&Revision, Option<&Revision>)> = shown
            .map(|version| (*version, history.before(version.number)))
            .collect();
        let system = see.system(&session.loaded().collection);
        let told = session.told(&pairs, system);
        let now = history.now().map(|now| now.number);
        let rows = pairs.into_iter().zip(told);
        let rows = rows.map(|((version, before), told)| Row {
            name: history.name(version).map(str::to_owned),
            when: VersionTime::written(say, &version.path),
            before: before.map(|before| before.number),
            same: history.same_as(version).map(|same| same.number),
            now: now == Some(version.number),
            told: told.map_err(|report| why_unread(say, &report)),
            version: version.clone(),
        });
        let with_name = |version: &&Revision| history.name(version).is_some();
        Self {
            rows: rows.collect(),
            named,
            page,
            pages,
            all: history.versions().len(),
            with_name: history.versions().iter().filter(with_name).count(),
            changes,
            names_problem: style::names_problem(history)
                .as_ref()
                .map(|report| placed(say, report))
                .unwrap_or_default(),
            file_problem,
        }
    }
}
