//! Changing a style's text while keeping the rest of it, comments included, byte for byte.

use indexmap::IndexMap;
use serde::{Deserialize, Serialize};
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Table, TableLike, Value};

use crate::load::LARGEST_FILE;
use crate::muted::muted_by_code;
use crate::parse::style_alone;
use crate::path::{DocPath, Step};
use crate::report::{Diagnostic, Report, Source};
use crate::{Loaded, STYLE_FILE, Tag};

/// One change to a style file.
///
/// As JSON: `{"edit": "set", "path": "chart.thigh.value", "value": "63 cm"}`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "edit", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Edit {
    /// Sets a value, whether the file has it yet or not. A row of a seam that takes its rows from another
    /// (`like`) first gets that seam's rows as its own.
    Set {
        /// Which value.
        path: DocPath,
        /// What it becomes.
        value: EditValue,
    },
    /// Takes a value, a whole section or a member of a list out.
    Remove {
        /// Which.
        path: DocPath,
    },
    /// Puts a member into a list, before the one that has this number now; the list's length appends.
    Insert {
        /// The list and the number, such as `seams.inseam.rows[1]`.
        path: DocPath,
        /// The new member.
        value: EditValue,
    },
}

/// A value as an edit carries it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum EditValue {
    /// true or false.
    Flag(bool),
    /// A whole number.
    Whole(i64),
    /// A tag with a half, such as 31.5; one without is a whole number.
    Tag(Tag),
    /// A text or a quantity with its unit. Where the file holds a number, a list of them, or true or false, a text that reads as one is written as one: a form can send what was typed.
    Text(String),
    /// A list.
    List(Vec<EditValue>),
    /// A section.
    Section(IndexMap<String, EditValue>),
}

impl From<&str> for EditValue {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl Edit {
    /// Sets the value at a path to a text, as typed into a form.
    ///
    /// # Errors
    /// When the path is not one.
    pub fn set(path: &str, text: &str) -> Result<Self, crate::DocPathError> {
        Ok(Self::Set {
            path: path.parse()?,
            value: text.into(),
        })
    }

    /// Takes out what is at a path.
    ///
    /// # Errors
    /// When the path is not one.
    pub fn remove(path: &str) -> Result<Self, crate::DocPathError> {
        Ok(Self::Remove {
            path: path.parse()?,
        })
    }
}

/// The text with one change made. Everything but the lines the change touches stays byte for byte as it was.
///
/// The result is checked like a file that is read, except for names that lead into other files;
/// [`Loaded::with_edit`] checks those too.
///
/// # Errors
/// The problems of the changed text (places are those of the changed text), or that the path leads nowhere.
pub fn apply(text: &str, edit: &Edit) -> Result<String, Report> {
    let changed = change(text, edit)?;
    let report = style_alone(&Source::new(STYLE_FILE, changed.as_str())).report;
    if report.is_empty() {
        Ok(changed)
    } else {
        Err(report)
    }
}

impl Loaded {
    /// The style with one change made, read against the same collection; nothing is written.
    ///
    /// # Errors
    /// As [`apply`], and names the collection does not have.
    pub fn with_edit(&self, edit: &Edit) -> Result<Self, Report> {
        self.with_text(&change(&self.text, edit)?)
    }
}

/// The byte order mark.
const MARK: char = '\u{feff}';

/// The text with one change made, whatever it then says.
pub(crate) fn change(text: &str, edit: &Edit) -> Result<String, Report> {
    let mut document = match text.parse::<DocumentMut>() {
        Ok(document) => document,
        // The reader says the same thing with its place.
        Err(_) => return Err(style_alone(&Source::new(STYLE_FILE, text)).report),
    };
    let done = match edit {
        Edit::Set { path, value } => {
            own_rows(&mut document, path);
            set(document.as_table_mut(), path, value)
        }
        Edit::Remove { path } => {
            own_rows(&mut document, path);
            remove(document.as_table_mut(), path)
        }
        Edit::Insert { path, value } => {
            own_rows(&mut document, path);
            insert(document.as_table_mut(), path, value)
        }
    };
    done.map_err(|why| Report::one(why.into_problem(edit.path())))?;
    muted_by_code(&mut document);
    // Some editors put a byte order mark first, which the TOML writer leaves out.
    let (mark, body) = text.split_at(if text.starts_with(MARK) {
        MARK.len_utf8()
    } else {
        0
    });
    let changed = format!("{mark}{}", graft(body, &document.to_string()));
    if changed.len() as u64 > LARGEST_FILE {
        let message = format!("the file would have more than {LARGEST_FILE} bytes");
        let problem = Diagnostic::whole_file(STYLE_FILE.to_owned(), "style::too-large", message)
            .hint("write a shorter value");
        return Err(Report::one(problem));
    }
    Ok(changed)
}

impl Edit {
    /// What the change is about.
    #[must_use]
    pub fn path(&self) -> &DocPath {
        match self {
            Self::Set { path, .. } | Self::Remove { path } | Self::Insert { path, .. } => path,
        }
    }
}

/// Why a path leads nowhere.
enum Astray {
    NotThere,
    NotASection,
    NotAList,
    PastTheEnd(usize),
}

impl Astray {
    fn into_problem(self, path: &DocPath) -> Diagnostic {
        let (message, hint) = match self {
            Self::NotThere => (
                format!("the file has nothing at `{path}`"),
                "name something the file says",
            ),
            Self::NotASection => (
                format!("`{path}` leads through a value that is not a section"),
                "check the path against the file",
            ),
            Self::NotAList => (
                format!("`{path}` leads through a value that is not a list"),
                "check the path against the file",
            ),
            Self::PastTheEnd(length) => (
                format!("`{path}` is past the end of a list of {length}"),
                "list numbers begin at 0",
            ),
        };
        Diagnostic::whole_file(STYLE_FILE.to_owned(), "style::no-such-place", message).hint(hint)
    }
}

/// A place inside the document that can be stepped into.
enum Spot<'a> {
    Item(&'a mut Item),
    Value(&'a mut Value),
    Table(&'a mut Table),
}

impl<'a> Spot<'a> {
    fn into_table(self) -> Result<&'a mut dyn TableLike, Astray> {
        match self {
            Self::Table(table) => Ok(table),
            Self::Value(Value::InlineTable(table)) => Ok(table),
            Self::Item(item) => item.as_table_like_mut().ok_or(Astray::NotASection),
            Self::Value(_) => Err(Astray::NotASection),
        }
    }

    fn into_list(self) -> Result<List<'a>, Astray> {
        match self {
            Self::Item(Item::ArrayOfTables(tables)) => Ok(List::Tables(tables)),
            Self::Item(Item::Value(Value::Array(array))) | Self::Value(Value::Array(array)) => {
                Ok(List::Array(array))
            }
            _ => Err(Astray::NotAList),
        }
    }
}

enum List<'a> {
    Array(&'a mut Array),
    Tables(&'a mut ArrayOfTables),
}

impl<'a> List<'a> {
    fn len(&self) -> usize {
        match self {
            Self::Array(array) => array.len(),
            Self::Tables(tables) => tables.len(),
        }
    }

    fn into_member(self, index: usize) -> Result<Spot<'a>, Astray> {
        let past = Astray::PastTheEnd(self.len());
        match self {
            Self::Array(array) => array.get_mut(index).map(Spot::Value).ok_or(past),
            Self::Tables(tables) => tables.get_mut(index).map(Spot::Table).ok_or(past),
        }
    }
}

/// Walks to the container of the path's last step; `make` creates sections that are not there.
fn parent<'a>(root: &'a mut Table, steps: &[Step], make: bool) -> Result<Spot<'a>, Astray> {
    let mut spot = Spot::Table(root);
    for step in steps {
        spot = match step {
            Step::Key(key) => {
                let table = spot.into_table()?;
                if !table.contains_key(key) {
                    if !make {
                        return Err(Astray::NotThere);
                    }
                    let mut made = Table::new();
                    // A section that only holds others needs no header of its own.
                    made.set_implicit(true);
                    table.insert(key, Item::Table(made));
                }
                Spot::Item(table.get_mut(key).ok_or(Astray::NotThere)?)
            }
            Step::Index(index) => spot.into_list()?.into_member(*index)?,
        };
    }
    Ok(spot)
}

fn set(root: &mut Table, path: &DocPath, value: &EditValue) -> Result<(), Astray> {
    let (last, way) = path.steps().split_last().ok_or(Astray::NotThere)?;
    let spot = parent(root, way, true)?;
    match last {
        Step::Key(key) => {
            let table = spot.into_table()?;
            match table.get_mut(key) {
                Some(item) => replace(item, value, path),
                None => {
                    let value = typed(value, None, path);
                    let item = if way.is_empty() {
                        section(&value)
                    } else {
                        Item::Value(plain(&value))
                    };
                    table.insert(key, item);
                }
            }
        }
        Step::Index(index) => match spot.into_list()?.into_member(*index)? {
            Spot::Value(old) => {
                let value = plain(&typed(value, Some(old), path));
                replace_value(old, value);
            }
            Spot::Table(old) => refill(old, value),
            Spot::Item(item) => replace(item, value, path),
        },
    }
    Ok(())
}

/// Replaces an item by a value, keeping the space and comments around it.
fn replace(item: &mut Item, value: &EditValue, path: &DocPath) {
    match item {
        Item::Value(old) => {
            let value = plain(&typed(value, Some(old), path));
            replace_value(old, value);
        }
        Item::Table(old) if matches!(value, EditValue::Section(_)) => refill(old, value),
        other => *other = section(value),
    }
}

fn replace_value(old: &mut Value, mut value: Value) {
    *value.decor_mut() = old.decor().clone();
    *old = value;
}

/// Gives a section other lines, keeping its header and the comments above it.
fn refill(table: &mut Table, value: &EditValue) {
    let EditValue::Section(entries) = value else {
        return;
    };
    table.retain(|key, _| entries.contains_key(key));
    for (key, value) in entries {
        match table.get_mut(key) {
            Some(Item::Value(old)) => replace_value(old, plain(value)),
            _ => {
                table.insert(key, Item::Value(plain(value)));
            }
        }
    }
}

/// A value as a section of its own where it is one, and a list of sections as one section after the other.
fn section(value: &EditValue) -> Item {
    match value {
        EditValue::Section(entries) => Item::Table(table_of(entries)),
        EditValue::List(members) if !members.is_empty() => {
            let sections = members.iter().map(|member| match member {
                EditValue::Section(entries) => Some(table_of(entries)),
                _ => None,
            });
            match sections.collect::<Option<ArrayOfTables>>() {
                Some(tables) => Item::ArrayOfTables(tables),
                None => Item::Value(plain(value)),
            }
        }
        _ => Item::Value(plain(value)),
    }
}

fn table_of(entries: &IndexMap<String, EditValue>) -> Table {
    let mut table = Table::new();
    for (key, value) in entries {
        table.insert(key, Item::Value(plain(value)));
    }
    table
}

/// A value as it stands behind a key or in a list.
fn plain(value: &EditValue) -> Value {
    match value {
        EditValue::Flag(flag) => (*flag).into(),
        EditValue::Whole(number) => (*number).into(),
        EditValue::Tag(tag) => tag.value(),
        EditValue::Text(text) => text.as_str().into(),
        EditValue::List(members) => Value::Array(members.iter().map(plain).collect()),
        EditValue::Section(entries) => Value::InlineTable(
            entries
                .iter()
                .map(|(key, value)| (key.as_str(), plain(value)))
                .collect(),
        ),
    }
}

/// Values that are whole numbers, or true or false, before the file says so.
const WHOLE: &[&str] = &["fly.buttons", "loops.count", "bartacks.stitches"];
const FLAGS: &[&str] = &[
    "rivets.mouth",
    "rivets.coin",
    "rivets.back_hidden",
    "bartacks.mouth",
    "bartacks.coin",
    "bartacks.back_pockets",
    "bartacks.fly",
    "bartacks.crotch",
];
const RUNS: &[&str] = &["sizes.waists", "sizes.lengths"];

/// What was typed, as the kind of value that belongs there.
fn typed(value: &EditValue, old: Option<&Value>, path: &DocPath) -> EditValue {
    let EditValue::Text(text) = value else {
        return value.clone();
    };
    let name = path.to_string();
    let name = name.as_str();
    let whole = |text: &str| text.trim().parse().ok().map(EditValue::Whole);
    let tag = |text: &str| {
        let half = || text.trim().parse().ok().map(EditValue::Tag);
        whole(text).or_else(half)
    };
    let run = || {
        let parts = text.split([',', ' ', ';']).filter(|part| !part.is_empty());
        parts
            .map(tag)
            .collect::<Option<Vec<_>>>()
            .map(EditValue::List)
    };
    let tagged = name.ends_with(".above") || RUNS.iter().any(|run| name.starts_with(run));
    let read = match old {
        Some(Value::Integer(_) | Value::Float(_)) if tagged => tag(text),
        Some(Value::Integer(_)) => whole(text),
        Some(Value::Boolean(_)) => text.trim().parse().ok().map(EditValue::Flag),
        Some(Value::Array(_)) if RUNS.contains(&name) => run(),
        None if RUNS.contains(&name) => run(),
        None if tagged => tag(text),
        None if WHOLE.contains(&name) || name.ends_with(".liquor") => whole(text),
        None if FLAGS.contains(&name) => text.trim().parse().ok().map(EditValue::Flag),
        _ => None,
    };
    read.unwrap_or_else(|| value.clone())
}

fn remove(root: &mut Table, path: &DocPath) -> Result<(), Astray> {
    let (last, way) = path.steps().split_last().ok_or(Astray::NotThere)?;
    let spot = parent(root, way, false)?;
    match last {
        Step::Key(key) => spot
            .into_table()?
            .remove(key)
            .map(drop)
            .ok_or(Astray::NotThere),
        Step::Index(index) => {
            let list = spot.into_list()?;
            if *index >= list.len() {
                return Err(Astray::PastTheEnd(list.len()));
            }
            match list {
                List::Array(array) => {
                    let first = array.get(0).map(|value| value.decor().clone());
                    array.remove(*index);
                    // What follows the bracket belongs to whichever member comes first.
                    if let (0, Some(decor), Some(value)) = (*index, first, array.get_mut(0)) {
                        *value.decor_mut() = decor;
                    }
                }
                List::Tables(tables) => {
                    tables.remove(*index);
                }
            }
            Ok(())
        }
    }
}

fn insert(root: &mut Table, path: &DocPath, value: &EditValue) -> Result<(), Astray> {
    let Some((Step::Index(index), way)) = path.steps().split_last() else {
        return Err(Astray::NotAList);
    };
    let list = parent(root, way, false)?.into_list()?;
    if *index > list.len() {
        return Err(Astray::PastTheEnd(list.len()));
    }
    match list {
        List::Array(array) => {
            let mut value = plain(&typed(value, array.get(0), path));
            spaced_like(array, *index, &mut value);
            array.insert_formatted(*index, value);
        }
        List::Tables(tables) => {
            if let Item::Table(table) = section(value) {
                let later: Vec<Table> = tables.iter().skip(*index).cloned().collect();
                while tables.len() > *index {
                    tables.remove(tables.len() - 1);
                }
                tables.push(table);
                for mut table in later {
                    // Its old place in the file would put it before the new one.
                    table.set_position(None);
                    tables.push(table);
                }
            }
        }
    }
    Ok(())
}

/// Spaces a new member of a list as the others are: each on its line, or one after another.
fn spaced_like(array: &mut Array, index: usize, value: &mut Value) {
    let prefix = |value: &Value| {
        value
            .decor()
            .prefix()
            .and_then(|p| p.as_str())
            .unwrap_or("")
            .to_owned()
    };
    let first = array.get(0).map(prefix).unwrap_or_default();
    let on_lines = first.contains('\n');
    let between = match array.get(1).map(prefix) {
        Some(second) if !second.contains('#') => second,
        _ if on_lines && !first.contains('#') => first.clone(),
        _ if on_lines => "\n  ".to_owned(),
        _ => " ".to_owned(),
    };
    if index == 0 {
        value.decor_mut().set_prefix(first);
        if let Some(old) = array.get_mut(0) {
            old.decor_mut().set_prefix(between);
        }
    } else {
        value.decor_mut().set_prefix(between);
        // A last member without a comma may carry the space before the bracket.
        if index == array.len()
            && let Some(last) = array.get_mut(index - 1)
        {
            let suffix = last
                .decor()
                .suffix()
                .and_then(|s| s.as_str())
                .unwrap_or("")
                .to_owned();
            last.decor_mut().set_suffix("");
            value.decor_mut().set_suffix(suffix);
        }
    }
}

/// Gives a seam rows of its own, copied from the seam it is like, when a path leads into rows it does not have.
fn own_rows(document: &mut DocumentMut, path: &DocPath) {
    let [
        Step::Key(seams),
        Step::Key(name),
        Step::Key(rows),
        Step::Index(_),
        ..,
    ] = path.steps()
    else {
        return;
    };
    if seams != "seams" || rows != "rows" {
        return;
    }
    let Some(seams) = document.get("seams").and_then(Item::as_table_like) else {
        return;
    };
    let mut found = None;
    let mut next = name.as_str();
    // A chain of seams is never longer than their number; a circle ends here.
    for _ in 0..seams.len() {
        let Some(seam) = seams.get(next).and_then(Item::as_table_like) else {
            return;
        };
        if let Some(rows) = seam.get("rows") {
            found = Some((next != name, rows.clone()));
            break;
        }
        let Some(like) = seam.get("like").and_then(Item::as_str) else {
            return;
        };
        next = like;
    }
    if let Some((true, rows)) = found
        && let Some(seam) = document
            .get_mut("seams")
            .and_then(|seams| seams.get_mut(name.as_str()))
        && let Some(seam) = seam.as_table_like_mut()
        && let Item::Value(mut rows) = rows
    {
        // The comment behind the other seam's rows is about that seam.
        rows.decor_mut().set_suffix("");
        seam.insert("rows", Item::Value(rows));
    }
}

/// The new text with every line outside the change taken from the old, line ends included.
fn graft(old: &str, new: &str) -> String {
    let old_lines: Vec<&str> = old.split_inclusive('\n').collect();
    let new_lines: Vec<&str> = new.split_inclusive('\n').collect();
    // A last line is the same with or without its line end.
    let same = |a: &&str, b: &&str| bare(a) == bare(b);
    let before = old_lines
        .iter()
        .zip(&new_lines)
        .take_while(|(a, b)| same(a, b))
        .count();
    let most = old_lines.len().min(new_lines.len()) - before;
    let from_end = old_lines.iter().rev().zip(new_lines.iter().rev());
    let after = from_end.take(most).take_while(|(a, b)| same(a, b)).count();
    let crlf = old_lines
        .iter()
        .filter(|line| line.ends_with("\r\n"))
        .count()
        * 2
        > old_lines.len();
    let mut out = String::with_capacity(new.len());
    out.extend(old_lines.iter().take(before).copied());
    let end = if crlf { "\r\n" } else { "\n" };
    let changed = new_lines.iter().take(new_lines.len() - after).skip(before);
    for line in changed {
        if !out.is_empty() && !out.ends_with('\n') {
            out.push_str(end);
        }
        out.push_str(bare(line));
        if line.ends_with('\n') {
            out.push_str(end);
        }
    }
    out.extend(old_lines.iter().skip(old_lines.len() - after).copied());
    out
}

fn bare(line: &str) -> &str {
    let line = line.strip_suffix('\n').unwrap_or(line);
    line.strip_suffix('\r').unwrap_or(line)
}
