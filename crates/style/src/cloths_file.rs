//! Adding to the collection's `cloths.toml`. Whatever else changes it is an edit like any other ([`KeptFile::edit`]).

use std::path::Path;

use toml_edit::{DocumentMut, Item, Table, Value, value};

use crate::files::{KeepError, KeptFile, added};
use crate::load::CLOTHS_FILE;
use crate::load_collection;
use crate::own::plain;
use crate::reader::short;
use crate::report::{Diagnostic, Report};

/// The file of cloths of a collection.
///
/// # Errors
/// There is none.
pub fn cloths_of(collection_folder: &Path) -> Result<KeptFile, Report> {
    KeptFile::at(&collection_folder.join(CLOTHS_FILE)).ok_or_else(|| {
        let file = collection_folder.join(CLOTHS_FILE).display().to_string();
        let message = "there is no such file".to_owned();
        Report::one(
            Diagnostic::whole_file(file, "style::missing-file", message)
                .hint("name the folder of a collection"),
        )
    })
}

/// Adds a cloth that is as another one, but for its name, who sells it and what was measured of that other; gives its key. `held` is
/// the version of the file that whoever adds it was shown.
///
/// # Errors
/// There is no such cloth, or the disk refused.
pub fn add_cloth(
    collection_folder: &Path,
    held: &str,
    name: &str,
    like: &str,
) -> Result<String, KeepError> {
    let collection = load_collection(collection_folder)?;
    if !collection.cloths.contains_key(like) {
        return Err(KeepError::Unknown(short(like)));
    }
    let has_letters = name.chars().any(|c| c.is_ascii_alphanumeric());
    let stem = plain(if has_letters { name } else { "cloth" });
    let mut keys = (1_u32..).map(|k| match k {
        1 => stem.clone(),
        k => format!("{stem}-{k}"),
    });
    let key = keys.find(|key| !collection.cloths.contains_key(key));
    let key = key.unwrap_or(stem.clone());
    added(&cloths_of(collection_folder)?, held, |text| {
        let section = section(text, &key, name.trim(), like).unwrap_or_default();
        Ok(format!("{}\n\n{section}", text.trim_end()))
    })?;
    Ok(key)
}

/// What a new cloth says: all that another one says, without its comments, without what was measured of it, and without
/// who sells it under which number.
fn section(text: &str, key: &str, name: &str, like: &str) -> Option<String> {
    const ITS_OWN: [&str; 4] = ["wash_test", "skew_test", "supplier", "article"];
    let document: DocumentMut = text.parse().ok()?;
    let from = document.get("cloths")?.get(like)?.as_table_like()?;
    let mut table = Table::new();
    for (its, item) in from.iter().filter(|(its, _)| !ITS_OWN.contains(its)) {
        let Item::Value(said) = item else { continue };
        let mut said: Value = said.clone();
        said.decor_mut().clear();
        table.insert(its, Item::Value(said));
    }
    table.insert("name", value(name));
    let mut cloths = Table::new();
    cloths.set_implicit(true);
    cloths.insert(key, Item::Table(table));
    let mut made = DocumentMut::new();
    made.insert("cloths", Item::Table(cloths));
    Some(made.to_string())
}
