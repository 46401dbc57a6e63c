//! The file that a command was given: read where it is of the right kind, else answered with those that can be named.

use std::path::{Path, PathBuf};

use style::{Loaded, LoadedOrder};

use crate::trouble::Trouble;

/// Reads a style. A collection or an order named instead is answered with the styles there are. What was written by hand
/// into the collection's files is a version from now on.
pub(super) fn load(path: &Path) -> Result<Loaded, Trouble> {
    take_note(path);
    let is_style = path.join(style::STYLE_FILE).exists();
    if path.join(style::COLLECTION_FILE).is_file() && !is_style {
        return Err(Trouble::CollectionNamed {
            folder: path.to_path_buf(),
            instead: styles_in(path),
        });
    }
    if style::is_order(path) {
        return Err(Trouble::NamedOtherwise {
            what: format!("{} is an order, not a style", path.display()),
            instead: collection_of(path).map_or_else(
                || "name a style: its folder or its style.toml".to_owned(),
                |collection| styles_in(&collection),
            ),
        });
    }
    Ok(style::load(path)?)
}

/// Keeps what was written by hand into the files of the collection that a path lies in.
pub(super) fn take_note(path: &Path) {
    if let Some(root) = style::collection_of(path) {
        style::take_note(&root);
    }
}

/// Reads an order. A style or a collection named instead is answered with the orders there are.
pub(super) fn load_order(path: &Path) -> Result<LoadedOrder, Trouble> {
    take_note(path);
    let is_style = path.join(style::STYLE_FILE).is_file()
        || path
            .file_name()
            .is_some_and(|name| name == style::STYLE_FILE);
    let named = if path.join(style::COLLECTION_FILE).is_file() {
        "a collection"
    } else if is_style && path.exists() {
        "a style"
    } else {
        return Ok(style::load_order(path)?);
    };
    Err(Trouble::NamedOtherwise {
        what: format!("{} is {named}, not an order", path.display()),
        instead: orders_for(path),
    })
}

/// The collection that a path lies in, or is.
fn collection_of(path: &Path) -> Option<PathBuf> {
    let mut folders = path.ancestors();
    let found = folders.find(|folder| folder.join(style::COLLECTION_FILE).is_file());
    found.map(Path::to_path_buf).or_else(|| {
        let absolute = std::path::absolute(path).ok()?;
        let mut folders = absolute.ancestors();
        let found = folders.find(|folder| folder.join(style::COLLECTION_FILE).is_file());
        found.map(Path::to_path_buf)
    })
}

/// Which order can be named, of the collection that a path lies in.
pub(super) fn orders_for(path: &Path) -> String {
    let collection = collection_of(path);
    let orders = collection.and_then(|folder| style::list_orders(&folder).ok());
    let orders = orders.unwrap_or_default();
    let orders: Vec<String> = orders
        .iter()
        .map(|file| file.display().to_string())
        .collect();
    match orders.len() {
        0 => "its collection has no order yet: an order is a TOML file in the folder orders of the collection, \
              with the pairs of each size and what the cutting room can do"
            .to_owned(),
        1..=MOST_NAMED => format!("name an order: {}", orders.join(", ")),
        n => format!("name one of its {n} orders, such as {}", orders[0]),
    }
}

/// So many names are given; of more only one.
const MOST_NAMED: usize = 8;

fn styles_in(collection: &Path) -> String {
    let styles = style::list_styles(collection).unwrap_or_default();
    let folders: Vec<String> = styles
        .iter()
        .filter_map(|file| file.parent())
        .map(|folder| folder.display().to_string())
        .collect();
    match folders.len() {
        0 => "it has no style yet: begin one with fellwork new".to_owned(),
        1 => format!("name its style: {}", folders[0]),
        2..=MOST_NAMED => format!("name one of its styles: {}", folders.join(", ")),
        n => format!("name one of its {n} styles, such as {}", folders[0]),
    }
}
