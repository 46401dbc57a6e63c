//! What a text says, without how it says it: comments, spaces and the order of keys are not in it.

use std::collections::BTreeMap;

use toml_edit::{Document, Item, TableLike, Value};

use crate::STYLE_FILE;
use crate::difference::Written;
use crate::edit::EditValue;
use crate::parse::style_alone;
use crate::path::Step;
use crate::report::{Report, Source};

/// What a text says at a place.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Content {
    /// A text, number, date or flag, and whether it stands in quotes.
    Plain(String, bool),
    List(Vec<Content>),
    Section(BTreeMap<String, Content>),
}

impl Content {
    pub(crate) fn read(text: &str) -> Result<Self, Report> {
        match Document::parse(text) {
            Ok(document) => Ok(Self::table(document.as_table())),
            // The reader says the same thing with its place.
            Err(_) => Err(style_alone(&Source::new(STYLE_FILE, text)).report),
        }
    }

    fn table(table: &dyn TableLike) -> Self {
        let entries = table
            .iter()
            .filter_map(|(key, item)| Some((key.to_owned(), Self::item(item)?)));
        Self::Section(entries.collect())
    }

    fn item(item: &Item) -> Option<Self> {
        match item {
            Item::None => None,
            Item::Value(value) => Some(Self::value(value)),
            Item::Table(table) => Some(Self::table(table)),
            Item::ArrayOfTables(tables) => {
                Some(Self::List(tables.iter().map(|t| Self::table(t)).collect()))
            }
        }
    }

    fn value(value: &Value) -> Self {
        match value {
            Value::String(text) => Self::Plain(text.value().clone(), true),
            Value::Array(members) => Self::List(members.iter().map(Self::value).collect()),
            Value::InlineTable(table) => Self::table(table),
            other => Self::Plain(other.to_string().trim().to_owned(), false),
        }
    }

    pub(crate) fn at(&self, steps: &[Step]) -> Option<&Self> {
        let mut here = self;
        for step in steps {
            here = match (step, here) {
                (Step::Key(key), Self::Section(entries)) => entries.get(key)?,
                (Step::Index(index), Self::List(members)) => members.get(*index)?,
                _ => return None,
            };
        }
        Some(here)
    }

    /// Whether an edit's value says this.
    pub(crate) fn is(&self, wanted: &EditValue) -> bool {
        match (self, wanted) {
            (Self::List(members), EditValue::List(wanted)) => {
                members.len() == wanted.len() && members.iter().zip(wanted).all(|(a, b)| a.is(b))
            }
            (Self::Section(entries), EditValue::Section(wanted)) => {
                entries.len() == wanted.len()
                    && wanted
                        .iter()
                        .all(|(key, value)| entries.get(key).is_some_and(|said| said.is(value)))
            }
            (Self::Plain(text, _), wanted) => plain(wanted).is_some_and(|wanted| wanted == *text),
            _ => false,
        }
    }

    /// The text of a plain value.
    pub(crate) fn plain(&self) -> Option<&str> {
        match self {
            Self::Plain(text, _) => Some(text),
            _ => None,
        }
    }

    /// What is told of it.
    pub(crate) fn written(&self) -> Written {
        match self {
            Self::Plain(text, _) => Written::Plain(text.clone()),
            Self::List(members) => Written::List(members.len()),
            Self::Section(_) => Written::Section,
        }
    }
}

/// What an edit writes, where that is a plain value.
fn plain(value: &EditValue) -> Option<String> {
    Some(match value {
        EditValue::Flag(flag) => flag.to_string(),
        EditValue::Whole(number) => number.to_string(),
        EditValue::Tag(tag) => tag.to_string(),
        EditValue::Text(text) => text.clone(),
        EditValue::List(_) | EditValue::Section(_) => return None,
    })
}

/// What is told of an edit's value.
pub(crate) fn written(value: &EditValue) -> Written {
    match value {
        EditValue::List(members) => Written::List(members.len()),
        EditValue::Section(_) => Written::Section,
        other => Written::Plain(plain(other).unwrap_or_default()),
    }
}

/// The places where two texts say different things.
pub(crate) fn differences(
    a: Option<&Content>,
    b: Option<&Content>,
    at: &mut Vec<Step>,
    out: &mut Vec<Vec<Step>>,
) {
    match (a, b) {
        (Some(Content::Section(a)), Some(Content::Section(b))) => {
            let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
            for key in keys {
                at.push(Step::Key(key.clone()));
                differences(a.get(key), b.get(key), at, out);
                at.pop();
            }
        }
        (Some(Content::List(a)), Some(Content::List(b))) if a.len() == b.len() => {
            for (index, (a, b)) in a.iter().zip(b).enumerate() {
                at.push(Step::Index(index));
                differences(Some(a), Some(b), at, out);
                at.pop();
            }
        }
        (a, b) if a == b => {}
        _ => out.push(at.clone()),
    }
}
