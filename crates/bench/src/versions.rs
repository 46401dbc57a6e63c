//! What is shown of the versions of a style, and kept while the session lasts: their changes in words and their pictures.

use std::collections::BTreeMap;
use std::num::NonZeroUsize;
use std::sync::Arc;

use lru::LruCache;
use style::{Change, Loaded, Report, Revision};
use trade::System;
use words::Words;

use crate::session::Session;

/// How many pictures are kept: what a few pages of the history show.
const KEPT_PICTURES: NonZeroUsize = match NonZeroUsize::new(120) {
    Some(kept) => kept,
    None => NonZeroUsize::MIN,
};

/// How many reasons are told why a version cannot be read.
const MOST_REASONS: usize = 3;

/// What was told and drawn of versions.
pub(crate) struct Shelf {
    words: BTreeMap<String, Arc<[String]>>,
    /// By the text that is drawn.
    pictures: LruCache<String, Arc<str>>,
}

impl Default for Shelf {
    fn default() -> Self {
        Self {
            words: BTreeMap::new(),
            pictures: LruCache::new(KEPT_PICTURES),
        }
    }
}

impl Shelf {
    pub(crate) fn picture(&mut self, key: &str) -> Option<Arc<str>> {
        self.pictures.get(key).cloned()
    }

    pub(crate) fn put(&mut self, key: String, picture: Arc<str>) {
        self.pictures.put(key, picture);
    }
}

impl Session {
    /// A version of the style, read against the collection as it is now.
    pub(crate) fn version(&self, version: &Revision) -> Result<Loaded, Report> {
        if version.id == self.loaded().revision.as_str() {
            return Ok(self.loaded().clone());
        }
        self.loaded().with_text(&style::read_revision(version)?)
    }

    /// What changed in each of some versions against the one before it, in words. Both are in the order given, the later
    /// version first, as pairs of it and the one before.
    pub(crate) fn told(
        &mut self,
        pairs: &[(&Revision, Option<&Revision>)],
        system: System,
    ) -> Vec<Result<Arc<[String]>, Report>> {
        // The version before one is the next one's own, so each is read once.
        let mut last: Option<(String, Result<Loaded, Report>)> = None;
        let mut all = Vec::with_capacity(pairs.len());
        for (version, before) in pairs {
            let before_id = before.map_or("", |before| before.id.as_str());
            let key = format!("{before_id} {} {system:?}", version.id);
            if let Some(words) = self.shelf.words.get(&key) {
                all.push(Ok(Arc::clone(words)));
                continue;
            }
            let now = match last.take() {
                Some((id, read)) if id == version.id => read,
                _ => self.version(version),
            };
            let then = before.map(|before| (before.id.clone(), self.version(before)));
            let words = now.map(|now| match &then {
                None => Vec::new(),
                Some((_, Ok(then))) => sentences(self.say(), &then.style, &now.style, system),
                Some((_, Err(_))) => {
                    vec![self.say().answer_before_unreadable().to_owned()]
                }
            });
            let words = words.map(Arc::from);
            if let Ok(words) = &words {
                self.shelf.words.insert(key, Arc::clone(words));
            }
            all.push(words);
            last = then;
        }
        all
    }
}

/// Everything that is different, in words.
pub(crate) fn sentences(
    say: &'static Words,
    old: &style::StyleDoc,
    new: &style::StyleDoc,
    system: System,
) -> Vec<String> {
    let changes = style::difference(old, new);
    let told = changes.iter().map(|change| change.words(say, system));
    told.collect()
}

/// Why a version cannot be read, each reason once. Places are left out: they are those of a text that nobody has open.
pub(crate) fn why_unread(say: &'static Words, report: &Report) -> Vec<String> {
    let mut reasons: Vec<String> = Vec::new();
    for problem in &report.problems {
        let reason = match &problem.hint {
            Some(hint) => format!("{}: {hint}", problem.message),
            None => problem.message.clone(),
        };
        if !reasons.contains(&reason) {
            reasons.push(reason);
        }
    }
    let more = reasons.len().saturating_sub(MOST_REASONS);
    reasons.truncate(MOST_REASONS);
    if more > 0 {
        reasons.push(say.answer_more(more));
    }
    reasons
}

/// Changes in one line.
pub(crate) fn summary(say: &'static Words, changes: &[Change], system: System) -> String {
    match changes {
        [] => say.answer_same().to_owned(),
        [one] => one.words(say, system),
        [first, rest @ ..] => say.say(words::say::AnswerFirstOf {
            change: first.words(say, system),
            count: rest.len(),
        }),
    }
}
