//! What is different between two versions of a file: for a style what a maker would say, for any other file value by
//! value.

use words::{Given, say};

use crate::content::{Content, differences};
use crate::difference::{Change, Kind, Written, difference};
use crate::files::{FileKind, KeptFile};
use crate::load::load_as;
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
    Other(Content),
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
            _ => Read::Other(Content::read(text)?),
        };
        Ok(VersionRead(read))
    }

    /// What is different from one version to another; nothing where only comments are, or the way it is written.
    #[must_use]
    pub fn changes(&self, old: &VersionRead, new: &VersionRead) -> Vec<Change> {
        match (&old.0, &new.0) {
            (Read::Style(old), Read::Style(new)) => difference(old, new),
            (Read::Other(old), Read::Other(new)) => self.values(old, new),
            _ => Vec::new(),
        }
    }

    fn values(&self, old: &Content, new: &Content) -> Vec<Change> {
        let mut places = Vec::new();
        differences(Some(old), Some(new), &mut Vec::new(), &mut places);
        let told = places.into_iter().map(|place| {
            let [was, is] = [old, new].map(|text| text.at(&place).map(Content::written));
            Change {
                path: crate::path::written(&place),
                about: self.place(&place),
                part: None,
                kind: kind(was.as_ref(), is.as_ref()),
                was: was.into(),
                is: is.into(),
            }
        });
        told.collect()
    }

    /// "cloths.tideline-14.weft_shrinkage" of the file of cloths is "tideline-14, weft shrinkage".
    fn place(&self, place: &[Step]) -> Given {
        let stem = self.kept.file.path().file_stem();
        let place = match place {
            [Step::Key(first), rest @ ..]
                if !rest.is_empty() && stem.is_some_and(|stem| stem == first.as_str()) =>
            {
                rest
            }
            all => all,
        };
        let parts = place.iter().map(|step| match step {
            Step::Key(key) => key.replace('_', " ").into(),
            Step::Index(index) => say::DifferenceNumber { number: index + 1 }.into(),
        });
        Given::List(parts.collect())
    }
}

/// How a place changed. What is told of two lists of one length, or of two sections, does not say what is different.
fn kind(was: Option<&Written>, is: Option<&Written>) -> Kind {
    match (was, is) {
        (None, _) => Kind::Added,
        (Some(_), None) => Kind::TakenOut,
        (Some(was), Some(is)) if was == is => Kind::Within,
        _ => Kind::Changed,
    }
}
