//! Walking a TOML document key by key, noting every problem with its place instead of stopping at the first.
//!
//! A reading function asks a [`Table`] for each key it knows, then calls [`Table::finish`], which reports the keys
//! nobody asked for. Values come back as `Option`: `None` means the problem is already in the report.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ops::Range;

use toml_edit::{ArrayOfTables, Item, TableLike, Value};

use crate::Tag;
use crate::known;
use crate::report::{Diagnostic, MOST_PROBLEMS, Report, Source};

/// What one file's reading collects.
pub(crate) struct Context<'a> {
    pub(crate) source: &'a Source,
    pub(crate) report: RefCell<Report>,
    /// Where every value that was asked for stands, by path ("seams.inseam.rows[0].yarn").
    pub(crate) places: RefCell<BTreeMap<String, Range<usize>>>,
    /// Names that have to exist in another file of the collection.
    pub(crate) references: RefCell<Vec<Reference>>,
    /// What was read and what was asked for in vain, so that a test can hold that nothing is forgotten.
    #[cfg(test)]
    pub(crate) asked: RefCell<Asked>,
}

/// The quantities that were read, and the keys that were asked for and not there.
#[cfg(test)]
#[derive(Default)]
pub(crate) struct Asked {
    pub(crate) quantities: Vec<String>,
    pub(crate) left_out: std::collections::BTreeSet<String>,
}

/// A name a style uses that another file must declare.
pub(crate) struct Reference {
    pub(crate) to: Target,
    pub(crate) name: String,
    pub(crate) path: String,
    pub(crate) span: Range<usize>,
}

/// What a reference names.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Target {
    Workroom,
    Cloth,
    Yarn,
    Trim(&'static [crate::TrimKind]),
}

impl<'a> Context<'a> {
    pub(crate) fn new(source: &'a Source) -> Self {
        Self {
            source,
            report: RefCell::default(),
            places: RefCell::default(),
            references: RefCell::default(),
            #[cfg(test)]
            asked: RefCell::default(),
        }
    }

    /// Notes that a quantity was read.
    #[cfg(test)]
    pub(crate) fn read_quantity(&self, path: &str) {
        self.asked.borrow_mut().quantities.push(path.to_owned());
    }

    /// Notes a problem at a place in this file.
    pub(crate) fn problem(
        &self,
        path: &str,
        span: Range<usize>,
        code: &'static str,
        message: impl Into<String>,
        hint: impl Into<String>,
    ) {
        let problem = Diagnostic::at(self.source, span, code, message.into());
        let problem = problem.about(path).hint(hint);
        self.report.borrow_mut().push(problem);
    }

    pub(crate) fn push(&self, problem: Diagnostic) {
        self.report.borrow_mut().push(problem);
    }
}

/// A TOML value wherever it stands: under a key, in an array, or as a table of its own.
#[derive(Clone, Copy)]
enum Shape<'a> {
    Value(&'a Value),
    Table(&'a toml_edit::Table),
    Tables(&'a ArrayOfTables),
}

impl<'a> Shape<'a> {
    fn of(item: &'a Item) -> Option<Self> {
        match item {
            Item::None => None,
            Item::Value(value) => Some(Self::Value(value)),
            Item::Table(table) => Some(Self::Table(table)),
            Item::ArrayOfTables(tables) => Some(Self::Tables(tables)),
        }
    }

    fn noun(self) -> &'static str {
        match self {
            Self::Value(Value::String(_)) => "a text",
            Self::Value(Value::Integer(_) | Value::Float(_)) => "a number",
            Self::Value(Value::Boolean(_)) => "true or false",
            Self::Value(Value::Datetime(_)) => "a date",
            Self::Value(Value::Array(_)) | Self::Tables(_) => "a list",
            Self::Value(Value::InlineTable(_)) | Self::Table(_) => "a section",
        }
    }
}

/// One value under its key, with its path and place.
#[derive(Clone)]
pub(crate) struct Node<'a> {
    pub(crate) context: &'a Context<'a>,
    pub(crate) path: String,
    pub(crate) span: Range<usize>,
    shape: Shape<'a>,
}

impl<'a> Node<'a> {
    pub(crate) fn problem(
        &self,
        code: &'static str,
        message: impl Into<String>,
        hint: impl Into<String>,
    ) {
        self.context
            .problem(&self.path, self.span.clone(), code, message, hint);
    }

    /// What the value is called in messages: its whole path, which needs no lines around it to be understood.
    pub(crate) fn key(&self) -> &str {
        &self.path
    }

    pub(crate) fn wrong_type(&self, wanted: &str, example: &str) {
        let message = format!(
            "`{}` is {}; {wanted} is wanted",
            self.key(),
            self.shape.noun()
        );
        self.problem("style::wrong-type", message, format!("write {example}"));
    }

    pub(crate) fn as_str(&self) -> Option<&'a str> {
        match self.shape {
            Shape::Value(value) => value.as_str(),
            _ => None,
        }
    }

    /// The number as written, when the value is a bare number.
    pub(crate) fn bare_number(&self) -> Option<&'a str> {
        match self.shape {
            Shape::Value(Value::Integer(_) | Value::Float(_)) => {
                self.context.source.text.get(self.span.clone())
            }
            _ => None,
        }
    }

    /// A text a person reads on a paper: one line, not empty, of a length that can be printed.
    pub(crate) fn text(&self) -> Option<String> {
        const LONGEST: usize = 400;
        let Some(text) = self.as_str() else {
            self.wrong_type("a text", "it in quotes");
            return None;
        };
        if text.trim().is_empty() {
            let message = format!("`{}` is empty", self.key());
            self.problem(
                "style::unfit-text",
                message,
                "write a word or more, or take the line out",
            );
        } else if text.chars().any(store::unfit) {
            let message = format!(
                "`{}` holds a line break or another control character",
                self.key()
            );
            self.problem("style::unfit-text", message, "write it on one line");
        } else if text.chars().count() > LONGEST {
            let message = format!("`{}` is longer than {LONGEST} characters", self.key());
            self.problem("style::unfit-text", message, "shorten it");
        } else {
            return Some(text.to_owned());
        }
        None
    }

    /// A whole number within limits, both included.
    pub(crate) fn whole(&self, low: u32, high: u32) -> Option<u32> {
        let number = match self.shape {
            Shape::Value(Value::Integer(number)) => *number.value(),
            _ => {
                self.wrong_type(
                    "a whole number",
                    &format!("it without quotes, such as {low}"),
                );
                return None;
            }
        };
        match u32::try_from(number) {
            Ok(number) if (low..=high).contains(&number) => Some(number),
            _ => {
                let code = if number < 0 {
                    "style::negative"
                } else {
                    "style::out-of-range"
                };
                let message = format!("`{}` is {number}", self.key());
                self.problem(
                    code,
                    message,
                    format!("write a whole number from {low} to {high}"),
                );
                None
            }
        }
    }

    /// A tag of a run: inches, whole or with a half.
    pub(crate) fn tag(&self) -> Option<Tag> {
        let example =
            "inches without quotes, whole or with a half after a point, such as 32 or 31.5";
        let number = match self.shape {
            Shape::Value(Value::Integer(number)) => *number.value() as f64,
            Shape::Value(Value::Float(number)) => *number.value(),
            _ => {
                self.wrong_type("a number", example);
                return None;
            }
        };
        let (low, high) = (Tag::SMALLEST, Tag::LARGEST);
        let tag = Tag::of_number(number).filter(|tag| (low..=high).contains(tag));
        if tag.is_none() {
            let written = self.bare_number().map_or_else(|| number.to_string(), short);
            let inside = (low.to_inches()..=high.to_inches()).contains(&number);
            let (code, hint) = if number < 0.0 {
                ("style::negative", "")
            } else if inside {
                (
                    "style::unreadable-size",
                    "; no other part of an inch can be on a tag",
                )
            } else {
                ("style::out-of-range", "")
            };
            let message = format!("`{}` is {written}", self.key());
            let hint = format!(
                "write inches from {low} to {high}, whole or with a half after a point, such as 32 or 31.5{hint}"
            );
            self.problem(code, message, hint);
        }
        tag
    }

    /// What the name of a section goes on with, where a name with one or two dots was meant and not put in quotes.
    pub(crate) fn parts(&self) -> Vec<String> {
        let table: Option<&dyn TableLike> = match self.shape {
            Shape::Table(table) => Some(table),
            Shape::Value(Value::InlineTable(table)) => Some(table),
            _ => None,
        };
        let entries = table.into_iter().flat_map(TableLike::iter);
        let named = |(key, item): (&str, &Item)| match item.as_table_like() {
            Some(inner) => inner
                .iter()
                .map(|(last, _)| format!("{key}.{last}"))
                .collect(),
            None => vec![key.to_owned()],
        };
        entries.flat_map(named).collect()
    }

    pub(crate) fn flag(&self) -> Option<bool> {
        let flag = match self.shape {
            Shape::Value(Value::Boolean(flag)) => Some(*flag.value()),
            _ => None,
        };
        if flag.is_none() {
            self.wrong_type("true or false", "true or false without quotes");
        }
        flag
    }

    /// One of a list of words.
    pub(crate) fn choice<T: Copy>(&self, code: &'static str, words: &[(&str, T)]) -> Option<T> {
        let all = || {
            let quoted: Vec<String> = words
                .iter()
                .map(|(word, _)| format!("\"{word}\""))
                .collect();
            or_list(&quoted)
        };
        let Some(text) = self.as_str() else {
            self.wrong_type("a word", &all());
            return None;
        };
        let found = words
            .iter()
            .find(|(word, _)| *word == text)
            .map(|(_, choice)| *choice);
        if found.is_none() {
            let near = known::nearest(text, words.iter().map(|(word, _)| *word));
            let hint = match near {
                Some(near) => format!("did you mean \"{near}\"? it can be {}", all()),
                None => format!("write {}", all()),
            };
            let message = format!("`{}` cannot be \"{}\"", self.key(), short(text));
            self.problem(code, message, hint);
        }
        found
    }

    /// A name another file of the collection declares.
    pub(crate) fn reference(&self, to: Target) -> Option<String> {
        let name = self.text()?;
        let reference = Reference {
            to,
            name: name.clone(),
            path: self.path.clone(),
            span: self.span.clone(),
        };
        self.context.references.borrow_mut().push(reference);
        Some(name)
    }

    /// The members of a list.
    pub(crate) fn list(&self, example: &str) -> Option<Vec<Node<'a>>> {
        /// More than any style has; keeps a broken file from flooding the rooms above.
        const LONGEST: usize = 100;
        let shapes: Vec<(Shape<'a>, Option<Range<usize>>)> = match self.shape {
            Shape::Value(Value::Array(array)) => array
                .iter()
                .map(|value| (Shape::Value(value), value.span()))
                .collect(),
            Shape::Tables(tables) => tables
                .iter()
                .map(|table| (Shape::Table(table), table.span()))
                .collect(),
            _ => {
                self.wrong_type("a list", example);
                return None;
            }
        };
        if shapes.len() > LONGEST {
            let message = format!("`{}` has {} entries", self.key(), shapes.len());
            self.problem(
                "style::out-of-range",
                message,
                format!("at most {LONGEST} can be read"),
            );
            return None;
        }
        let member = |(index, (shape, span)): (usize, (Shape<'a>, Option<Range<usize>>))| {
            let path = format!("{}[{index}]", self.path);
            let span = span.unwrap_or_else(|| self.span.clone());
            self.context
                .places
                .borrow_mut()
                .insert(path.clone(), span.clone());
            Node {
                context: self.context,
                path,
                span,
                shape,
            }
        };
        Some(shapes.into_iter().enumerate().map(member).collect())
    }

    /// The value as a section.
    pub(crate) fn table(&self) -> Option<Table<'a>> {
        let table: &'a dyn TableLike = match self.shape {
            Shape::Table(table) => table,
            Shape::Value(Value::InlineTable(table)) => table,
            _ => {
                self.wrong_type(
                    "a section",
                    &format!("[{}] with its own lines below it", self.path),
                );
                return None;
            }
        };
        Some(Table {
            node: self.clone(),
            table: Some(table),
            asked: Vec::new(),
            missing: Vec::new(),
        })
    }
}

/// A section being read. One that the file leaves out can be read too: every key is then missing, silently.
pub(crate) struct Table<'a> {
    pub(crate) node: Node<'a>,
    table: Option<&'a dyn TableLike>,
    asked: Vec<&'static str>,
    missing: Vec<Missing>,
}

/// Something required that is not there. It is reported at the end, unless a misspelt key turns out to be meant for it.
struct Missing {
    key: &'static str,
    code: &'static str,
    message: String,
    hint: String,
}

impl<'a> Table<'a> {
    /// The whole document.
    pub(crate) fn root(context: &'a Context<'a>, table: &'a toml_edit::Table) -> Self {
        let node = Node {
            context,
            path: String::new(),
            span: 0..0,
            shape: Shape::Table(table),
        };
        Self {
            node,
            table: Some(table),
            asked: Vec::new(),
            missing: Vec::new(),
        }
    }

    fn child_path(&self, key: &str) -> String {
        if self.node.path.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", self.node.path)
        }
    }

    fn child(&self, key: &str) -> Option<Node<'a>> {
        let (name, item) = self.table?.get_key_value(key)?;
        let shape = Shape::of(item)?;
        let path = self.child_path(key);
        // A section is best shown by its name; its span would be the header or the braces.
        let is_section = matches!(shape, Shape::Table(_) | Shape::Tables(_));
        let span = if is_section { name.span() } else { item.span() };
        let span = span.or_else(|| name.span()).or_else(|| first_span(item));
        let span = span.unwrap_or_else(|| self.node.span.clone());
        self.node
            .context
            .places
            .borrow_mut()
            .insert(path.clone(), span.clone());
        Some(Node {
            context: self.node.context,
            path,
            span,
            shape,
        })
    }

    /// A key that may be left out.
    pub(crate) fn optional(&mut self, key: &'static str) -> Option<Node<'a>> {
        self.asked.push(key);
        let found = self.child(key);
        #[cfg(test)]
        if found.is_none() && self.table.is_some() {
            let mut asked = self.node.context.asked.borrow_mut();
            asked.left_out.insert(self.child_path(key));
        }
        found
    }

    /// A key that must be there; `like` shows how it is written.
    pub(crate) fn required(&mut self, key: &'static str, like: &str) -> Option<Node<'a>> {
        let found = self.optional(key);
        if found.is_none() && self.table.is_some() {
            let place = if self.node.path.is_empty() {
                "this file".to_owned()
            } else {
                format!("[{}]", self.node.path)
            };
            let message = format!("{place} has no `{key}`");
            let (code, hint) = ("style::missing-key", format!("add {like}"));
            self.missing.push(Missing {
                key,
                code,
                message,
                hint,
            });
        }
        found
    }

    /// A section that must be there.
    pub(crate) fn section(&mut self, key: &'static str) -> Table<'a> {
        let path = self.child_path(key);
        let found = self.optional(key);
        if found.is_none() && self.table.is_some() {
            let message = format!("there is no [{path}]");
            let hint = format!("add a section that begins with the line [{path}]");
            let code = "style::missing-section";
            self.missing.push(Missing {
                key,
                code,
                message,
                hint,
            });
        }
        found
            .and_then(|node| node.table())
            .unwrap_or_else(|| self.absent(path))
    }

    /// A section that may be left out.
    pub(crate) fn optional_section(&mut self, key: &'static str) -> Table<'a> {
        let path = self.child_path(key);
        let found = self.optional(key).and_then(|node| node.table());
        found.unwrap_or_else(|| self.absent(path))
    }

    fn absent(&self, path: String) -> Table<'a> {
        Table {
            node: Node {
                path,
                ..self.node.clone()
            },
            table: None,
            asked: Vec::new(),
            missing: Vec::new(),
        }
    }

    /// Whether the file has this section at all.
    pub(crate) fn is_there(&self) -> bool {
        self.table.is_some()
    }

    /// Every entry of a section whose keys are the maker's own names or a known list.
    pub(crate) fn entries(&self) -> Vec<(String, Range<usize>, Node<'a>)> {
        /// More than any collection has; keeps a broken file from costing minutes.
        const MOST: usize = 1000;
        let Some(table) = self.table else {
            return Vec::new();
        };
        if table.len() > MOST {
            let message = format!("[{}] has {} entries", self.node.path, table.len());
            let hint = format!("at most {MOST} can be read");
            self.node.problem("style::out-of-range", message, hint);
            return Vec::new();
        }
        let names: Vec<&'a str> = table.iter().map(|(name, _)| name).collect();
        let entry = |name: &'a str| {
            let node = self.child(name)?;
            let key = table.key(name).and_then(toml_edit::Key::span);
            Some((
                name.to_owned(),
                key.unwrap_or_else(|| node.span.clone()),
                node,
            ))
        };
        names.into_iter().filter_map(entry).collect()
    }

    /// Reports what is missing and every key nobody asked for.
    pub(crate) fn finish(self) {
        let Some(table) = self.table else { return };
        let mut missing = self.missing;
        let mut unknown = Vec::new();
        for (name, item) in table.iter() {
            if self.asked.contains(&name) {
                continue;
            }
            // A flood of unknown keys is counted; what each was meant to be is no longer worth finding out.
            if unknown.len() >= MOST_PROBLEMS {
                self.node.context.report.borrow_mut().more += 1;
                continue;
            }
            // A slip is more likely for a key that is missing than for one that is there.
            let meant = known::nearest(name, missing.iter().map(|missing| missing.key));
            let near = meant.or_else(|| known::nearest(name, self.asked.iter().copied()));
            missing.retain(|missing| Some(missing.key) != meant);
            let span = table.key(name).and_then(toml_edit::Key::span);
            unknown.push((name, span.or_else(|| first_span(item)), near));
        }
        for Missing {
            code,
            message,
            hint,
            ..
        } in missing
        {
            self.node.problem(code, message, hint);
        }
        for (name, span, near) in unknown {
            let message = if self.node.path.is_empty() {
                format!("`{}` is not known here", short(name))
            } else {
                format!("`{}` is not known in [{}]", short(name), self.node.path)
            };
            let hint = match near {
                Some(near) => format!("did you mean `{near}`?"),
                None => {
                    let known = self.asked.iter().map(|key| format!("`{key}`"));
                    format!("known here: {}", known.collect::<Vec<_>>().join(", "))
                }
            };
            let span = span.unwrap_or_else(|| self.node.span.clone());
            self.node
                .context
                .problem(&self.node.path, span, "style::unknown-key", message, hint);
        }
    }
}

/// The first place anything of an item stands at: sections made only by their subsections have no place of their own.
fn first_span(item: &Item) -> Option<Range<usize>> {
    item.span().or_else(|| {
        let table = item.as_table_like()?;
        table
            .iter()
            .filter_map(|(name, _)| table.key(name)?.span())
            .min_by_key(|span| span.start)
    })
}

/// A text cut to what fits in a message.
pub(crate) fn short(text: &str) -> String {
    const LONGEST: usize = 60;
    match text.char_indices().nth(LONGEST) {
        Some((cut, _)) => format!("{}...", text.get(..cut).unwrap_or_default()),
        None => text.to_owned(),
    }
}

/// "a, b or c".
pub(crate) fn or_list(words: &[String]) -> String {
    match words.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
    }
}
