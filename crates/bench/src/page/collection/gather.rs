//! Which styles a collection has, and how each stands.

use style::{Collection, Tag};
use words::Words;

use crate::answer::placed;
use crate::repair;
use crate::session::Disk;
use crate::state::{Bench, NotOpen};
use crate::trouble::Trouble;

/// What the page shows.
pub(crate) enum Listed {
    /// The folder has nothing in it yet.
    Nothing,
    /// The collection and its styles.
    Styles(Box<Collection>, Vec<Entry>),
}

pub(crate) struct Entry {
    pub(super) folder: String,
    pub(super) what: Result<Sound, Mistakes>,
}

/// What is wrong with a style's file, and whether an earlier version can take its place.
pub(super) struct Mistakes {
    pub(super) told: Vec<String>,
    pub(super) mends: bool,
}

pub(super) struct Sound {
    pub(super) name: String,
    pub(super) code: String,
    pub(super) about: String,
    pub(super) summary: String,
    pub(super) sizes: String,
    pub(super) revision: String,
}

/// Reads the collection and every style in it.
pub(crate) fn gather(bench: &Bench) -> Result<Listed, Trouble> {
    let say = bench.say();
    if style::can_begin_in(bench.folder()) {
        return Ok(Listed::Nothing);
    }
    let collection = style::load_collection(bench.folder()).map_err(|report| {
        Trouble::unreadable(Words::collection_not_opened, placed(say, &report))
    })?;
    let mut styles = Vec::new();
    for (folder, _) in bench.styles()? {
        let what = match bench.session(&folder) {
            Ok(session) => {
                let mut session = session
                    .lock()
                    .unwrap_or_else(std::sync::PoisonError::into_inner);
                if let Disk::Changed(on_disk, _) = session.look_at_disk() {
                    session.take_over(*on_disk);
                }
                Ok(Sound::of(say, session.loaded()))
            }
            Err(NotOpen::Broken(report)) => Err(Mistakes {
                told: placed(say, &report),
                mends: repair::is_offered(bench, &folder),
            }),
            // Taken away since it was listed.
            Err(NotOpen::Unknown) => continue,
        };
        styles.push(Entry { folder, what });
    }
    Ok(Listed::Styles(Box::new(collection), styles))
}

impl Sound {
    fn of(say: &'static Words, loaded: &style::Loaded) -> Self {
        let doc = &loaded.style;
        let range = |tags: &[Tag]| match tags {
            [] => String::new(),
            [one] => one.to_string(),
            [first, .., last] => format!("{first}–{last}"),
        };
        let shell = loaded.collection.cloths.get(&doc.cloth.shell);
        let shell = shell.map_or("", |cloth| &cloth.name);
        Self {
            name: doc.style.name.clone(),
            code: doc.style.code.clone(),
            about: say.say(words::say::CollectionWhat {
                figure: doc.style.figure,
                fit: doc.style.fit,
                shell,
            }),
            summary: doc.style.summary.clone(),
            sizes: say.say(words::say::CollectionSizes {
                lengths: range(&doc.sizes.lengths),
                waists: range(&doc.sizes.waists),
            }),
            revision: loaded.revision.to_string(),
        }
    }
}
