//! What the page of two versions shows, gathered.

use std::sync::Arc;

use axum::http::StatusCode;
use serde::Deserialize;
use style::{History, Loaded, Revision, Size};
use trade::System;
use words::Words;

use crate::garment::Worked;
use crate::sentences::Line;
use crate::session::Session;
use crate::trouble::Trouble;
use crate::version_time::VersionTime;
use crate::versions::{sentences, why_unread};
use crate::viewing::Viewing;

/// Which versions an address asks for, and how they lie.
#[derive(Debug, Deserialize)]
pub(crate) struct Pair {
    a: Option<String>,
    b: Option<String>,
    look: Option<String>,
}

/// How two drawings lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Look {
    Beside,
    Over,
}

impl Look {
    /// Both, each with the key and the words that choose it.
    pub(super) fn all(say: &'static Words) -> [(Self, &'static str, &'static str); 2] {
        [
            (Self::Beside, "d", say.compare_beside()),
            (Self::Over, "v", say.compare_over()),
        ]
    }

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Beside => "beside",
            Self::Over => "over",
        }
    }
}

/// One of the two versions.
pub(super) struct Side {
    /// What an address calls it.
    pub(super) key: String,
    pub(super) version: Revision,
    pub(super) name: Option<String>,
    pub(super) now: bool,
    pub(super) when: Option<VersionTime>,
    /// The pair in the size that is shown, or why the version cannot be read.
    pub(super) worked: Result<Arc<Worked>, Vec<String>>,
}

/// What the page shows.
pub(crate) struct Compared {
    pub(super) a: Side,
    pub(super) b: Side,
    pub(super) look: Look,
    /// The sizes that both are made in, and the one shown; `None` where they share none or one cannot be read.
    pub(super) sizes: Vec<Size>,
    pub(super) size: Option<Size>,
    pub(super) told: Vec<String>,
    /// Every version to choose from: what an address calls it and what it says.
    pub(super) choices: Vec<(String, String)>,
    /// The versions before and after the first one, without the second.
    pub(super) steps: (Option<u32>, Option<u32>),
    pub(super) system: System,
}

impl Compared {
    pub(crate) fn of(
        session: &mut Session,
        history: &History,
        see: &Viewing,
        pair: &Pair,
    ) -> Result<Self, Trouble> {
        let say = session.say();
        let now = history.now().ok_or_else(Trouble::no_such_page)?;
        let key_b = pair.b.as_deref().unwrap_or("now");
        let b = found(history, key_b)?;
        let a = match pair.a.as_deref() {
            Some(key) => found(history, key)?,
            None => history.before(b.number).unwrap_or(b),
        };
        let system = see.system(&session.loaded().collection);
        let read = [session.version(a), session.version(b)];
        let mut sizes = Vec::new();
        let mut size = None;
        let mut told = Vec::new();
        if let [Ok(a), Ok(b)] = &read {
            sizes = a.style.sizes.all().collect();
            sizes.retain(|size| b.style.sizes.contains(*size));
            let asked = [see.size, Some(b.style.sizes.base), sizes.first().copied()];
            let mut asked = asked.into_iter().flatten();
            size = asked.find(|size| sizes.contains(size));
            told = sentences(say, &a.style, &b.style, system);
        }
        let mut side = |version: &Revision, read: &Result<Loaded, style::Report>| Side {
            key: match version.number == now.number {
                true => "now".to_owned(),
                false => version.number.to_string(),
            },
            name: history.name(version).map(str::to_owned),
            now: version.number == now.number,
            when: VersionTime::written(say, &version.path),
            worked: match read {
                Ok(read) => Ok(session.garment_of(read, size.unwrap_or(read.style.sizes.base))),
                Err(report) => Err(why_unread(say, report)),
            },
            version: version.clone(),
        };
        let [read_a, read_b] = &read;
        let (side_a, side_b) = (side(a, read_a), side(b, read_b));
        let others = || {
            let all = history.versions().iter().map(|version| version.number);
            all.filter(|number| *number != b.number)
        };
        Ok(Self {
            steps: (
                others().rfind(|number| *number < a.number),
                others().find(|number| *number > a.number),
            ),
            a: side_a,
            b: side_b,
            look: match pair.look.as_deref() {
                Some("over") => Look::Over,
                _ => Look::Beside,
            },
            sizes,
            size,
            told,
            choices: choices(say, history, now),
            system,
        })
    }
}

fn found<'a>(history: &'a History, key: &str) -> Result<&'a Revision, Trouble> {
    history.find(key).ok_or_else(|| {
        Trouble::one(
            StatusCode::NOT_FOUND,
            Words::compare_no_version,
            Line::Said(Words::compare_no_version_why),
        )
    })
}

/// Every version, newest first, as it is called in an address and in the list.
fn choices(say: &'static Words, history: &History, now: &Revision) -> Vec<(String, String)> {
    let each = |version: &Revision| {
        let number = version.number;
        let (key, mut says) = match number == now.number {
            true => ("now".to_owned(), say.compare_choice_now(number)),
            false => (number.to_string(), number.to_string()),
        };
        if let Some(name) = history.name(version) {
            says.push_str(&format!(" · {name}"));
        }
        if let Some(when) = VersionTime::written(say, &version.path) {
            says.push_str(&format!(" · {}", when.shown));
        }
        (key, says)
    };
    history.versions().iter().rev().map(each).collect()
}
