//! What the bench keeps while it runs: the collection's folder, the key, and a session for each style opened.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use crate::change_log::{Changes, Steps};
use crate::sentences::Line;
use crate::session::Session;
use crate::trouble::Trouble;
use crate::work::Works;
use style::{FileChange, Report};
use trade::System;
use words::Words;

/// How long what a request carries may take to arrive when nobody says otherwise; a browser on this machine needs a moment.
const PATIENCE: Duration = Duration::from_secs(20);

/// The bench: cheap to clone, all clones are the same bench.
#[derive(Clone)]
pub struct Bench(Arc<Inner>);

struct Inner {
    folder: PathBuf,
    /// What it says everything in.
    say: &'static Words,
    key: String,
    port: u16,
    log: Box<dyn Fn(&str) + Send + Sync>,
    /// How long what a request carries may take to arrive.
    patience: Duration,
    sessions: Mutex<BTreeMap<String, Arc<Mutex<Session>>>>,
    works: Works,
    /// Read when the first page is opened.
    changes: Mutex<Option<Changes>>,
}

/// Why a style has no session.
pub(crate) enum NotOpen {
    /// The collection has no style of this name.
    Unknown,
    /// Its file has problems, and no sound version of it was seen.
    Broken(Report),
}

impl Bench {
    /// A bench over one collection folder, in English. `key` opens its pages; `port` is the loopback port that requests must name.
    #[must_use]
    pub fn new(folder: PathBuf, key: String, port: u16) -> Self {
        Self::telling(folder, key, port, |_| {})
    }

    /// The same bench telling each change and how long it took, one line at a time.
    #[must_use]
    pub fn telling(
        folder: PathBuf,
        key: String,
        port: u16,
        log: impl Fn(&str) + Send + Sync + 'static,
    ) -> Self {
        Self(Arc::new(Inner {
            folder,
            say: Words::english(),
            key,
            port,
            log: Box::new(log),
            patience: PATIENCE,
            sessions: Mutex::default(),
            works: Works::default(),
            changes: Mutex::default(),
        }))
    }

    /// The same bench waiting this long for what a request carries. For a bench that has no clones yet.
    #[must_use]
    pub fn waiting(mut self, patience: Duration) -> Self {
        if let Some(inner) = Arc::get_mut(&mut self.0) {
            inner.patience = patience;
        }
        self
    }

    /// The same bench in other words. For a bench that has no clones yet.
    #[must_use]
    pub fn saying(mut self, words: &'static Words) -> Self {
        if let Some(inner) = Arc::get_mut(&mut self.0) {
            inner.say = words;
        }
        self
    }

    /// What it says everything in.
    pub(crate) fn say(&self) -> &'static Words {
        self.0.say
    }

    pub(crate) fn patience(&self) -> Duration {
        self.0.patience
    }

    pub(crate) fn folder(&self) -> &std::path::Path {
        &self.0.folder
    }

    pub(crate) fn key(&self) -> &str {
        &self.0.key
    }

    pub(crate) fn port(&self) -> u16 {
        self.0.port
    }

    /// What goes on in the background.
    pub(crate) fn works(&self) -> &Works {
        &self.0.works
    }

    pub(crate) fn tell(&self, line: &str) {
        (self.0.log)(line);
    }

    /// The styles of the collection: the name of each one's folder, and its file.
    pub(crate) fn styles(&self) -> Result<Vec<(String, PathBuf)>, Trouble> {
        let files = style::list_styles(&self.0.folder).map_err(|error| {
            Trouble::one(
                axum::http::StatusCode::INTERNAL_SERVER_ERROR,
                Words::trouble_collection,
                Line::Told(self.say().say(words::say::TroubleCollectionWhy {
                    folder: self.0.folder.display().to_string(),
                    why: error.to_string(),
                })),
            )
        })?;
        let named = files.into_iter().filter_map(|file| {
            let name = file.parent()?.file_name()?.to_str()?.to_owned();
            Some((name, file))
        });
        Ok(named.collect())
    }

    fn changes<T>(&self, of: impl FnOnce(&mut Changes) -> T) -> T {
        let mut changes = self
            .0
            .changes
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        of(changes.get_or_insert_with(|| Changes::of(&self.0.folder, self.say())))
    }

    /// Keeps what was written by hand into any file of the collection.
    pub(crate) fn look(&self) {
        self.changes(Changes::look);
    }

    /// What undo and redo lead to from the page of a style, and what was changed since the bench was started.
    pub(crate) fn steps(&self, style: &str, system: System) -> Steps {
        self.changes(|changes| changes.steps(style, system))
    }

    /// A change in words for the page of a style.
    pub(crate) fn words(&self, change: &FileChange, style: &str, system: System) -> Arc<str> {
        self.changes(|changes| changes.words(change, style, system))
    }

    /// Every change of every file of the collection, earliest first.
    pub(crate) fn all_changes(&self) -> Vec<FileChange> {
        self.changes(Changes::all)
    }

    /// The session of a style. A name from an address is only ever compared with the names the collection has.
    pub(crate) fn session(&self, name: &str) -> Result<Arc<Mutex<Session>>, NotOpen> {
        let styles = self.styles().map_err(|_| NotOpen::Unknown)?;
        let (_, file) = styles
            .into_iter()
            .find(|(known, _)| known == name)
            .ok_or(NotOpen::Unknown)?;
        let mut sessions = self
            .0
            .sessions
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        if let Some(session) = sessions.get(name) {
            return Ok(Arc::clone(session));
        }
        // The list of changes begins before the first of them.
        self.changes(|_| ());
        let loaded = style::load(&file).map_err(NotOpen::Broken)?;
        let session = Arc::new(Mutex::new(Session::new(loaded, self.say())));
        sessions.insert(name.to_owned(), Arc::clone(&session));
        Ok(session)
    }
}
