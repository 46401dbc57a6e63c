//! One job, and how it stands.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use jobs::JobError;
use style::Loaded;
use trade::System;
use words::Words;

use super::task::Task;

/// One job of a style.
pub(crate) struct Job<T: Task> {
    /// Its number among those of its kind and style, from 1.
    pub(crate) number: u64,
    /// What was asked for.
    pub(crate) task: T,
    /// The style it is made of.
    pub(crate) loaded: Loaded,
    pub(super) cancel: AtomicBool,
    state: Mutex<State<T>>,
}

struct State<T: Task> {
    /// When its turn came.
    since: Option<Instant>,
    took: Duration,
    progress: Option<Arc<T::Progress>>,
    ended: Option<Ended<T::Made>>,
}

/// What came of a job.
pub(crate) enum Ended<M> {
    /// It was made.
    Made(Arc<M>),
    /// It could not be, in words.
    Failed(Vec<String>),
    /// Nobody wanted it any more.
    Cancelled,
}

impl<M> Clone for Ended<M> {
    fn clone(&self) -> Self {
        match self {
            Self::Made(made) => Self::Made(Arc::clone(made)),
            Self::Failed(words) => Self::Failed(words.clone()),
            Self::Cancelled => Self::Cancelled,
        }
    }
}

/// How a job stands at a moment.
pub(crate) struct Stand<T: Task> {
    /// For how long it has gone on, or went on; `None` while it waits for its turn.
    pub(crate) elapsed: Option<Duration>,
    /// How far it is, once that is known.
    pub(crate) progress: Option<Arc<T::Progress>>,
    /// What came of it; `None` while it goes on.
    pub(crate) ended: Option<Ended<T::Made>>,
    /// Whether it was asked to end.
    pub(crate) cancelled: bool,
}

impl<T: Task> Job<T> {
    pub(super) fn new(number: u64, task: T, loaded: Loaded) -> Self {
        Self {
            number,
            task,
            loaded,
            cancel: AtomicBool::new(false),
            state: Mutex::new(State {
                since: None,
                took: Duration::ZERO,
                progress: None,
                ended: None,
            }),
        }
    }

    fn state(&self) -> MutexGuard<'_, State<T>> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Does the work, where its turn came.
    pub(super) fn run(&self, its_turn: bool) -> Ended<T::Made> {
        if !its_turn {
            return Ended::Cancelled;
        }
        self.state().since = Some(Instant::now());
        let tell = &mut |progress| self.state().progress = Some(Arc::new(progress));
        match self.task.run(&self.loaded, &self.cancel, tell) {
            Ok(made) => Ended::Made(Arc::new(made)),
            Err(JobError::Cancelled) => Ended::Cancelled,
            Err(why) => Ended::Failed(words(&why)),
        }
    }

    pub(super) fn end(&self, ended: Ended<T::Made>) {
        let mut state = self.state();
        state.took = state.since.map_or(Duration::ZERO, |since| since.elapsed());
        state.ended = Some(ended);
    }

    /// Asks the job to end.
    pub(crate) fn cancel(&self) {
        self.cancel.store(true, Ordering::Relaxed);
    }

    /// How it stands now.
    pub(crate) fn stand(&self) -> Stand<T> {
        let state = self.state();
        let elapsed = match state.ended {
            Some(_) => Some(state.took),
            None => state.since.map(|since| since.elapsed()),
        };
        Stand {
            elapsed,
            progress: state.progress.clone(),
            ended: state.ended.clone(),
            cancelled: self.cancel.load(Ordering::Relaxed),
        }
    }

    /// Whether the style and its collection are still what the job was made of.
    pub(crate) fn is_of(&self, now: &Loaded) -> bool {
        self.loaded.revision == now.revision && self.loaded.collection == now.collection
    }

    /// What changed since it was begun, in words.
    pub(crate) fn changed_since(
        &self,
        say: &'static Words,
        now: &Loaded,
        system: System,
    ) -> Vec<String> {
        let changes = style::difference(&self.loaded.style, &now.style);
        let told = changes.iter().map(|change| change.words(say, system));
        let mut words: Vec<String> = told.collect();
        if self.loaded.collection != now.collection {
            words.push(say.work_collection_changed().to_owned());
        }
        words
    }
}

/// An error as sentences for the page.
pub(crate) fn words(why: &JobError) -> Vec<String> {
    let instead = why.instead().unwrap_or_default();
    std::iter::once(why.to_string())
        .chain(instead.lines().map(str::to_owned))
        .collect()
}
