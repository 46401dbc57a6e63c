//! Names of versions: "sent to the workroom, first sample". They lie in `names.toml` among the versions, by number and
//! text, and may be written there by hand too.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use toml_edit::{Document, DocumentMut, Item, Table, TableLike, value};

use crate::history::History;
use crate::read::{LARGEST_FILE, read_text};
use crate::whole_save::{lock, write_whole};
use crate::{Revision, StoreError, VersionedFile, unfit};

const NAMES_FILE: &str = "names.toml";

/// What stands for the version in the file, so that it cannot be a name.
pub(crate) const NOW: &str = "now";

/// The longest name, in characters.
pub const LONGEST_NAME: usize = 80;

const FORMAT: i64 = 1;

const BEGINNING: &str = "\
# Names of kept versions, by the number and the text of each. The bench and `fellwork history` write them too.
format = 1
";

/// The names as the file has them.
#[derive(Clone, Debug, Default)]
pub struct Names {
    by_version: BTreeMap<String, String>,
    problem: Option<NamesProblem>,
}

/// What is wrong with a file of names that was written by hand.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}: {message}; {hint}", .file.display())]
pub struct NamesProblem {
    /// The file.
    pub file: PathBuf,
    /// Where in its text, in bytes; `None` for the file itself.
    pub at: Option<usize>,
    /// Its text, as far as it could be read.
    pub text: String,
    /// What is wrong.
    pub message: String,
    /// What would be right.
    pub hint: &'static str,
}

/// Why a version was not named. The names are then as they were.
#[derive(Debug, thiserror::Error)]
pub enum NameError {
    /// There is no such version.
    #[error("there is no version {0} of this file")]
    NoSuchVersion(u32),
    /// The words cannot be a name.
    #[error("{0}")]
    Unfit(String),
    /// Another version has that name.
    #[error(
        "version {number} is called \"{name}\" already; give another name, or take that one away first"
    )]
    Taken {
        /// The name.
        name: String,
        /// The version that has it.
        number: u32,
    },
    /// The file of names was spoilt by hand; it was not written over.
    #[error("{0}")]
    Broken(NamesProblem),
    /// The disk refused.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl Names {
    pub(crate) fn get(&self, version: &Revision) -> Option<&str> {
        self.by_version.get(&version.key()).map(String::as_str)
    }

    pub(crate) fn problem(&self) -> Option<&NamesProblem> {
        self.problem.as_ref()
    }
}

/// Reads the names among some versions. No file means no names.
pub(crate) fn read(versions: &Path) -> Names {
    let file = versions.join(NAMES_FILE);
    if !file.exists() {
        return Names::default();
    }
    let read = read_text(&file, LARGEST_FILE).map_err(|why| NamesProblem {
        file: file.clone(),
        at: None,
        text: String::new(),
        message: why.to_string(),
        hint: "check that you may read it",
    });
    match read.and_then(|text| names(&file, text)) {
        Ok(by_version) => Names {
            by_version,
            problem: None,
        },
        Err(problem) => Names {
            by_version: BTreeMap::new(),
            problem: Some(problem),
        },
    }
}

fn names(file: &Path, text: String) -> Result<BTreeMap<String, String>, NamesProblem> {
    let wrong = |at: Option<usize>, message: String, hint: &'static str| NamesProblem {
        file: file.to_path_buf(),
        at: Some(at.unwrap_or_default()),
        text: text.clone(),
        message,
        hint,
    };
    let document = Document::parse(text.as_str()).map_err(|error| {
        let at = error.span().map(|span| span.start);
        let plain: String = error
            .message()
            .chars()
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        wrong(
            at,
            format!("this is not TOML: {plain}"),
            "a line is \"NUMBER-ID\" = \"name\"",
        )
    })?;
    let mut found = BTreeMap::new();
    for (key, item) in document.iter() {
        let at = document
            .key(key)
            .and_then(|key| key.span())
            .map(|span| span.start);
        match (key, item) {
            ("format", item) if item.as_integer() == Some(FORMAT) => {}
            ("format", _) => {
                let message = "this is another format than 1".to_owned();
                return Err(wrong(at, message, "write format = 1"));
            }
            ("names", item) if item.as_table_like().is_some() => {
                let table = item.as_table_like().into_iter().flat_map(TableLike::iter);
                for (version, name) in table {
                    let at = name.span().map(|span| span.start);
                    let Some(name) = name.as_str().map(str::trim) else {
                        let message = format!("the name of {} is no text", shown(version));
                        return Err(wrong(at, message, "write it in quotes"));
                    };
                    fit(name).map_err(|why| wrong(at, why, "write another name"))?;
                    found.insert(version.to_owned(), name.to_owned());
                }
            }
            (other, _) => {
                let message = format!("there is nothing called {} here", shown(other));
                return Err(wrong(at, message, "names stand below [names]"));
            }
        }
    }
    Ok(found)
}

/// A key of the file in a message: plain, and not without end.
fn shown(key: &str) -> String {
    const MOST: usize = 40;
    key.chars().filter(|c| !unfit(*c)).take(MOST).collect()
}

/// Whether words can be a name, and why not.
fn fit(name: &str) -> Result<(), String> {
    let number = name.strip_prefix('#').unwrap_or(name);
    if name.trim().is_empty() {
        return Err("a name has at least one letter".to_owned());
    }
    if name.chars().count() > LONGEST_NAME {
        return Err(format!("a name has at most {LONGEST_NAME} letters"));
    }
    if name.chars().any(unfit) {
        return Err("a name is one line of plain text".to_owned());
    }
    if name == NOW || number.bytes().all(|byte| byte.is_ascii_digit()) {
        return Err(format!(
            "\"{name}\" cannot be a name, because it already means a version; write words"
        ));
    }
    Ok(())
}

impl VersionedFile {
    /// Gives a version a name, or with `None` takes its name away. The version in the file can be named too, by its
    /// number; what was written there by hand since is a version of its own.
    ///
    /// # Errors
    /// There is no such version, the name is another version's or no name, the file of names was spoilt by hand, or the
    /// disk refused; in every case the names are as they were.
    pub fn name_version(&self, number: u32, name: Option<&str>) -> Result<(), NameError> {
        let name = name.map(str::trim);
        if let Some(name) = name {
            fit(name).map_err(NameError::Unfit)?;
        }
        // Looking keeps what is in the file: an editor must not be able to lose a version that has a name.
        let history = History::of(self)?;
        self.make_folder()?;
        let _lock = lock(self.versions())?;
        let names = read(self.versions());
        if let Some(problem) = names.problem() {
            return Err(NameError::Broken(problem.clone()));
        }
        let version = history
            .get(number)
            .ok_or(NameError::NoSuchVersion(number))?;
        let other = history
            .versions()
            .iter()
            .find(|other| name.is_some() && names.get(other) == name);
        if let (Some(name), Some(other)) = (name, other)
            && other.number != number
        {
            return Err(NameError::Taken {
                name: name.to_owned(),
                number: other.number,
            });
        }
        let file = self.versions().join(NAMES_FILE);
        let text = if file.exists() {
            read_text(&file, LARGEST_FILE).map_err(StoreError::from)?
        } else {
            BEGINNING.to_owned()
        };
        let changed = with_name(&text, &version.key(), name);
        if changed != text {
            write_whole(&file, &changed, self.versions())?;
        }
        Ok(())
    }
}

/// The text of the file with one name put in, changed or taken out. It was read before, so it is TOML.
fn with_name(text: &str, key: &str, name: Option<&str>) -> String {
    let Ok(mut document) = text.parse::<DocumentMut>() else {
        return text.to_owned();
    };
    let names = document.entry("names").or_insert(Item::Table(Table::new()));
    if let Some(names) = names.as_table_like_mut() {
        match (names.get_mut(key), name) {
            (Some(Item::Value(old)), Some(name)) => {
                let decor = old.decor().clone();
                *old = name.into();
                *old.decor_mut() = decor;
            }
            (_, Some(name)) => {
                names.insert(key, value(name));
            }
            (_, None) => {
                names.remove(key);
            }
        }
    }
    document.to_string()
}
