//! Names of versions: "sent to the workroom, first sample". They lie in `.revisions/names.toml`, by the version's
//! number and text, and may be written there by hand too.

use std::collections::BTreeMap;
use std::path::Path;

use toml_edit::{DocumentMut, Item, Table, value};

use crate::load::read_file;
use crate::parse;
use crate::read_collection::format;
use crate::reader;
use crate::report::Source;
use crate::save::{SaveError, folder_of_revisions, hold_on_to, lock, real, write_whole};
use crate::{History, Loaded, Report, Revision};

/// The file of names in the folder of revisions.
const NAMES_FILE: &str = "names.toml";

/// What stands for the version in the style file, so that it cannot be a name.
pub(crate) const NOW: &str = "now";

/// The longest name, in characters.
pub const LONGEST_NAME: usize = 80;

const BEGINNING: &str = "\
# Names of kept versions, by the number and the text of each. The bench and `fellwork history` write them too.
format = 1
";

/// The names as the file has them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Names {
    by_version: BTreeMap<String, String>,
    problem: Option<Report>,
}

impl Names {
    pub(crate) fn get(&self, version: &Revision) -> Option<&str> {
        self.by_version.get(&key(version)).map(String::as_str)
    }

    pub(crate) fn problem(&self) -> Option<&Report> {
        self.problem.as_ref()
    }
}

/// Why a version was not named. The names are then as they were.
#[derive(Debug, thiserror::Error)]
pub enum NameError {
    /// There is no such version.
    #[error("there is no version {0} of this style")]
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
    Broken(Report),
    /// The disk refused.
    #[error(transparent)]
    Save(#[from] SaveError),
}

/// How a version is named in the file: as the file it is kept in.
fn key(version: &Revision) -> String {
    format!("{:04}-{}", version.number, version.id)
}

/// Reads the names in a folder of revisions. No file means no names.
pub(crate) fn read(revisions: &Path) -> Names {
    let path = revisions.join(NAMES_FILE);
    if !path.exists() {
        return Names::default();
    }
    let told = |problem| Names {
        by_version: BTreeMap::new(),
        problem: Some(problem),
    };
    let text = match read_file(&path) {
        Ok(text) => text,
        Err(problem) => return told(problem),
    };
    let reading = parse::read(&Source::new(path.display().to_string(), text), names);
    match reading.value {
        Some(by_version) => Names {
            by_version,
            problem: None,
        },
        None => told(reading.report),
    }
}

fn names(mut root: reader::Table<'_>) -> Option<BTreeMap<String, String>> {
    format(&mut root);
    let entries = root.optional_section("names").entries();
    root.finish();
    let read = |(key, _, node): (String, _, reader::Node<'_>)| {
        let name = node.text()?.trim().to_owned();
        if let Err(why) = fit(&name) {
            node.problem("style::unfit-text", why, "write another name");
            return None;
        }
        Some((key, name))
    };
    entries.into_iter().map(read).collect()
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
    if name.chars().any(reader::unfit) {
        return Err("a name is one line of plain text".to_owned());
    }
    if name == NOW || number.bytes().all(|byte| byte.is_ascii_digit()) {
        return Err(format!(
            "\"{name}\" cannot be a name, because it already means a version; write words"
        ));
    }
    Ok(())
}

/// Gives a version a name, or with `None` takes its name away. The version in the style file can be named too.
///
/// # Errors
/// There is no such version, the name is another version's or no name, the file of names was spoilt by hand, or the
/// disk refused; in every case the names are as they were.
pub fn name_version(loaded: &Loaded, number: u32, name: Option<&str>) -> Result<(), NameError> {
    let name = name.map(str::trim);
    if let Some(name) = name {
        fit(name).map_err(NameError::Unfit)?;
    }
    let path = real(&loaded.path);
    let revisions = folder_of_revisions(&path)?;
    let _lock = lock(&revisions)?;
    // The version in the file may be the one that is named, and an editor must not be able to lose it.
    hold_on_to(&revisions, &path)?;
    let history = History::of(loaded).map_err(|source| {
        NameError::Save(SaveError::Disk {
            path: revisions.clone(),
            source,
        })
    })?;
    if let Some(problem) = history.names_problem() {
        return Err(NameError::Broken(problem.clone()));
    }
    let version = history
        .get(number)
        .ok_or(NameError::NoSuchVersion(number))?;
    if let Some(name) = name
        && let Some(other) = history.find(name)
        && other.number != number
    {
        return Err(NameError::Taken {
            name: name.to_owned(),
            number: other.number,
        });
    }
    let file = revisions.join(NAMES_FILE);
    let text = if file.exists() {
        read_file(&file).map_err(NameError::Broken)?
    } else {
        BEGINNING.to_owned()
    };
    let changed = with_name(&text, &key(version), name);
    if changed != text {
        write_whole(&file, &changed, &revisions)?;
    }
    Ok(())
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
