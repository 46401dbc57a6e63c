//! What is different between two versions of a file, in words: for a style what a maker would say, for any other file
//! value by value.

use trade::System;

use crate::difference::{Change, difference_in};
use crate::files::{FileKind, KeptFile};
use crate::load::load_as;
use crate::merge::{Said, differences};
use crate::path::Step;
use crate::report::Report;
use crate::{Loaded, StyleDoc, load};

/// Reads the versions of a file, against the collection as it is now.
#[derive(Clone, Debug)]
pub struct Teller {
    kept: KeptFile,
    /// Of a style: what its versions are read against.
    base: Option<Box<Loaded>>,
}

/// A version that was read.
#[derive(Clone, Debug)]
pub struct VersionRead(Read);

#[derive(Clone, Debug)]
enum Read {
    Style(Box<StyleDoc>),
    Other(Said),
}

impl Teller {
    /// A teller of a file.
    #[must_use]
    pub fn of(kept: &KeptFile) -> Self {
        let base = (kept.kind == FileKind::Style)
            .then(|| load(kept.file.path()).ok().map(Box::new))
            .flatten();
        Self {
            kept: kept.clone(),
            base,
        }
    }

    /// Reads a version.
    ///
    /// # Errors
    /// Its problems.
    pub fn read(&self, text: &str) -> Result<VersionRead, Report> {
        let read = match (self.kept.kind, &self.base) {
            (FileKind::Style, Some(base)) => Read::Style(Box::new(base.with_text(text)?.style)),
            (FileKind::Style, None) => {
                let loaded = load_as(self.kept.file.path().to_path_buf(), text.to_owned())?;
                Read::Style(Box::new(loaded.style))
            }
            _ => Read::Other(Said::read(text)?),
        };
        Ok(VersionRead(read))
    }

    /// What is different from one version to another; nothing where only comments are, or the way it is written.
    #[must_use]
    pub fn changes(&self, old: &VersionRead, new: &VersionRead, system: System) -> Vec<Change> {
        match (&old.0, &new.0) {
            (Read::Style(old), Read::Style(new)) => difference_in(old, new, system),
            (Read::Other(old), Read::Other(new)) => self.values(old, new),
            _ => Vec::new(),
        }
    }

    fn values(&self, old: &Said, new: &Said) -> Vec<Change> {
        let mut places = Vec::new();
        differences(Some(old), Some(new), &mut Vec::new(), &mut places);
        let told = places.into_iter().map(|place| {
            let (was, is) = (old.at(&place), new.at(&place));
            let what = self.in_words(&place);
            let sentence = match (was.map(Said::words), is.map(Said::words)) {
                (None, Some(is)) if new.at(&place).is_some_and(Said::is_plain) => {
                    format!("{what}: {is}, new")
                }
                (None, _) => format!("{what} added"),
                (Some(_), None) => format!("{what} taken out"),
                (Some(was), Some(is)) if was == is => format!("{what} changed"),
                (Some(was), Some(is)) => format!("{what}: {was} → {is}"),
            };
            Change {
                path: crate::path::written(&place),
                sentence,
            }
        });
        told.collect()
    }

    /// "cloths.tideline-14.weft_shrinkage" of the file of cloths is "tideline-14, weft shrinkage".
    fn in_words(&self, place: &[Step]) -> String {
        let stem = self.kept.file.path().file_stem();
        let place = match place {
            [Step::Key(first), rest @ ..]
                if !rest.is_empty() && stem.is_some_and(|stem| stem == first.as_str()) =>
            {
                rest
            }
            all => all,
        };
        let parts: Vec<String> = place
            .iter()
            .map(|step| match step {
                Step::Key(key) => key.replace('_', " "),
                Step::Index(index) => format!("no. {}", index + 1),
            })
            .collect();
        parts.join(", ")
    }
}
