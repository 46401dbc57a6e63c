//! Collects changes as they are found.

use words::Given;

use super::change::{Change, Kind, Part};
use super::value::Value;

#[derive(Default)]
pub(super) struct Found {
    pub(super) changes: Vec<Change>,
}

impl Found {
    /// Two values that may be the same.
    pub(super) fn value<T: Into<Value>>(
        &mut self,
        path: impl Into<String>,
        about: impl Into<Given>,
        was: T,
        is: T,
    ) {
        let (was, is) = (was.into(), is.into());
        if was != is {
            self.push(path, about, Kind::Changed, was, is);
        }
    }

    /// Two values of something that has several.
    pub(super) fn part<T: Into<Value>>(
        &mut self,
        path: impl Into<String>,
        about: &Given,
        part: Part,
        was: T,
        is: T,
    ) {
        let (was, is) = (was.into(), is.into());
        if was != is {
            self.changes.push(Change {
                path: path.into(),
                about: about.clone(),
                part: Some(part),
                kind: Kind::Changed,
                was,
                is,
            });
        }
    }

    /// Something that was not there.
    pub(super) fn added(
        &mut self,
        path: impl Into<String>,
        about: impl Into<Given>,
        is: impl Into<Value>,
    ) {
        self.push(path, about, Kind::Added, Value::Nothing, is.into());
    }

    /// Something that is not there any more.
    pub(super) fn taken_out(
        &mut self,
        path: impl Into<String>,
        about: impl Into<Given>,
        was: impl Into<Value>,
    ) {
        self.push(path, about, Kind::TakenOut, was.into(), Value::Nothing);
    }

    pub(super) fn push(
        &mut self,
        path: impl Into<String>,
        about: impl Into<Given>,
        kind: Kind,
        was: Value,
        is: Value,
    ) {
        self.changes.push(Change {
            path: path.into(),
            about: about.into(),
            part: None,
            kind,
            was,
            is,
        });
    }
}
