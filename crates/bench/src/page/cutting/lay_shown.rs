//! Which lay the room shows: the one being looked for, the one found last, or one that is kept.

use std::sync::Arc;
use std::time::Duration;

use jobs::LayJob;
use lay::{Bounds, Ended as Why, Lay};
use style::Loaded;
use trade::Length;
use words::Words;

use crate::state::Bench;
use crate::work::lay::LayAsked;
use crate::work::{Ended, Job};

/// A lay and what it is of.
pub(crate) struct Laid {
    pub(crate) job: Arc<LayJob>,
    pub(crate) lay: Lay,
}

/// What there is to show.
pub(crate) enum Shown {
    /// Nothing yet: what would be laid, or why it cannot be.
    Nothing(Result<Box<LayJob>, Vec<String>>),
    /// A search that goes on, with the lay so far.
    Searching(Box<Search>),
    /// A lay that an earlier search found, and for how many seconds all searches looked for it.
    Kept(Laid, u64),
    /// What the last search found.
    Found(Box<Outcome>),
    /// The last search came to nothing.
    Failed(Vec<String>),
}

/// A search that goes on.
pub(crate) struct Search {
    pub(crate) job: Arc<Job<LayAsked>>,
    /// `None` while it waits for its turn.
    pub(crate) elapsed: Option<Duration>,
    pub(crate) laid: Option<Laid>,
    pub(crate) places: u64,
    pub(crate) cancelled: bool,
}

/// What a search found.
pub(crate) struct Outcome {
    pub(crate) job: Arc<Job<LayAsked>>,
    pub(crate) laid: Laid,
    pub(crate) took: Duration,
    /// Whether nothing shorter than a kept lay was found.
    pub(crate) kept: bool,
    pub(crate) not_kept: Option<String>,
    /// Whether the style or its collection is another by now.
    pub(crate) earlier: bool,
}

impl Shown {
    /// What to show of a style when this is asked for.
    pub(crate) fn of(bench: &Bench, name: &str, loaded: &Loaded, asked: &LayAsked) -> Self {
        let last = bench.works().lays.of(name);
        let mut earlier = None;
        if let Some(job) = last {
            let same = job.task.order == asked.order;
            let now = job.is_of(loaded);
            match ended(bench.say(), job) {
                Self::Failed(_) if !(same && now) => {}
                shown @ Self::Searching(_) => return shown,
                shown if same && now => return shown,
                shown if same => earlier = Some(shown),
                _ => {}
            }
        }
        let job = match LayJob::new(loaded, &asked.order) {
            Ok(job) => job,
            Err(why) => return Self::Nothing(Err(crate::work::words(&why))),
        };
        let kept = jobs::kept_lay(&loaded.collection_folder, &job.spread, &job.words);
        match (kept, earlier) {
            (Some((lay, seconds)), _) => Self::Kept(
                Laid {
                    job: Arc::new(job),
                    lay,
                },
                seconds,
            ),
            (None, Some(Self::Found(found))) => Self::Found(Box::new(Outcome {
                earlier: true,
                ..*found
            })),
            (None, _) => Self::Nothing(Ok(Box::new(job))),
        }
    }

    /// Whether a search goes on.
    pub(crate) fn runs(&self) -> bool {
        matches!(self, Self::Searching(_))
    }

    /// The lay to be seen.
    pub(crate) fn laid(&self) -> Option<&Laid> {
        match self {
            Self::Searching(search) => search.laid.as_ref(),
            Self::Kept(laid, _) => Some(laid),
            Self::Found(found) => Some(&found.laid),
            Self::Nothing(_) | Self::Failed(_) => None,
        }
    }

    /// The style that the lay is of, which may be as it was before.
    pub(crate) fn made_of<'a>(&'a self, now: &'a Loaded) -> &'a Loaded {
        match self {
            Self::Searching(search) => &search.job.loaded,
            Self::Found(found) => &found.job.loaded,
            Self::Nothing(_) | Self::Kept(..) | Self::Failed(_) => now,
        }
    }
}

/// How the last search stands.
fn ended(say: &'static Words, job: Arc<Job<LayAsked>>) -> Shown {
    let stand = job.stand();
    match stand.ended {
        None => Shown::Searching(Box::new(Search {
            job,
            elapsed: stand.elapsed,
            places: stand.progress.as_ref().map_or(0, |told| told.1.places),
            laid: stand.progress.map(|told| Laid {
                job: Arc::clone(&told.0),
                lay: so_far(&told.1),
            }),
            cancelled: stand.cancelled,
        })),
        Some(Ended::Made(made)) => Shown::Found(Box::new(Outcome {
            job,
            laid: Laid {
                job: Arc::clone(&made.job),
                lay: made.found.lay.clone(),
            },
            took: stand.elapsed.unwrap_or_default(),
            kept: made.found.kept,
            not_kept: made.found.not_kept.as_ref().map(ToString::to_string),
            earlier: false,
        })),
        Some(Ended::Failed(words)) => Shown::Failed(words),
        Some(Ended::Cancelled) => Shown::Failed(vec![say.lay_cancelled().to_owned()]),
    }
}

/// The lay of a search that goes on.
fn so_far(told: &lay::Progress) -> Lay {
    Lay {
        placements: told.placements.clone(),
        length: told.length,
        efficiency: told.efficiency,
        // Which of the bounds is the best is only known at the end.
        bounds: Bounds {
            area: told.bound,
            longest: Length::ZERO,
            wide: Length::ZERO,
            segment: Length::ZERO,
            path: Length::ZERO,
            skeleton: Length::ZERO,
            lines: Length::ZERO,
        },
        ended: Why::Time,
        places: told.places,
    }
}
