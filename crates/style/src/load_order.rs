//! Loading an order with the styles it names.

use std::path::{Path, PathBuf};
use std::{fs, io};

use indexmap::IndexMap;

use crate::collection::ClothUse;
use crate::load::{find_collection, list_styles, load, load_collection, read_file};
use crate::order::{LoadedOrder, Order};
use crate::parse::{Places, check_references, read};
use crate::read_order::{self, offered};
use crate::report::{Diagnostic, Report, Source};
use crate::{Collection, Loaded, STYLE_FILE, Tag};

/// The folder of a collection that orders lie in.
pub const ORDERS_FOLDER: &str = "orders";

/// Whether a path means an order: a file that lies in a collection's folder of orders.
#[must_use]
pub fn is_order(path: &Path) -> bool {
    let absolute = std::path::absolute(path).unwrap_or_else(|_| path.to_path_buf());
    let folder = absolute.parent().and_then(Path::file_name);
    path.is_file()
        && folder.is_some_and(|name| name == ORDERS_FOLDER)
        && path.file_name().is_some_and(|name| name != STYLE_FILE)
}

/// The orders of a collection: the files in its folder of orders, in the order of their names.
///
/// # Errors
/// The folder is there and cannot be read.
pub fn list_orders(collection_folder: &Path) -> io::Result<Vec<PathBuf>> {
    let folder = collection_folder.join(ORDERS_FOLDER);
    let entries = match fs::read_dir(&folder) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(error),
    };
    let mut files = Vec::new();
    for entry in entries {
        let file = entry?.path();
        let is_toml = file.extension().is_some_and(|ending| ending == "toml");
        if is_toml && is_order(&file) {
            files.push(file);
        }
    }
    files.sort();
    Ok(files)
}

/// Loads an order from its file, with its collection and every style it names.
///
/// # Errors
/// Every problem of the order, of the collection's files and of the styles.
pub fn load_order(path: &Path) -> Result<LoadedOrder, Report> {
    load_order_as(path, &read_file(path)?)
}

/// An order as it would be loaded were this the text of its file.
pub(crate) fn load_order_as(path: &Path, text: &str) -> Result<LoadedOrder, Report> {
    let source = Source::new(path.display().to_string(), text);
    let mut reading = read(&source, read_order::order);
    let folder = find_collection(path)?;
    let mut report = std::mem::take(&mut reading.report);
    let collection = match load_collection(&folder) {
        Ok(collection) => {
            check_references(&source, &reading.references, &collection, &mut report);
            Some(collection)
        }
        Err(other) => {
            report.absorb(other);
            None
        }
    };
    let mut styles = IndexMap::new();
    if let (Some(order), Some(collection)) = (&reading.value, &collection) {
        let mut meet = Meeting {
            source: &source,
            places: &reading.places,
            folder: &folder,
            report: &mut report,
        };
        styles = meet.styles(order);
        meet.sizes(order, &styles);
        meet.shells(order, collection);
    }
    report.sort();
    match (reading.value, collection) {
        (Some(order), Some(collection)) if report.is_empty() => Ok(LoadedOrder {
            order,
            styles,
            collection,
            path: path.to_path_buf(),
            collection_folder: folder,
        }),
        _ => Err(report),
    }
}

/// An order meeting the styles and cloths it names.
struct Meeting<'a> {
    source: &'a Source,
    places: &'a Places,
    folder: &'a Path,
    report: &'a mut Report,
}

impl Meeting<'_> {
    fn problem(&mut self, path: &str, code: &'static str, message: String, hint: String) {
        let span = self.places.get(path).cloned().unwrap_or(0..0);
        let problem = Diagnostic::at(self.source, span, code, message);
        self.report.push(problem.about(path).hint(hint));
    }

    fn styles(&mut self, order: &Order) -> IndexMap<String, Loaded> {
        let files = list_styles(self.folder).unwrap_or_default();
        let name = |file: &PathBuf| {
            let folder = file.parent().and_then(Path::file_name);
            folder.map(|name| name.to_string_lossy().into_owned())
        };
        let names: Vec<String> = files.iter().filter_map(name).collect();
        let mut styles = IndexMap::new();
        for (index, line) in order.lines.iter().enumerate() {
            if styles.contains_key(&line.style) {
                continue;
            }
            let Some(file) = files
                .iter()
                .find(|file| name(file).as_ref() == Some(&line.style))
            else {
                let named = crate::reader::short(&line.style);
                self.problem(
                    &format!("lines[{index}].style"),
                    "style::unknown-style",
                    format!("the collection has no style in a folder named \"{named}\""),
                    offered(&line.style, &names),
                );
                continue;
            };
            match load(file) {
                Ok(loaded) => {
                    styles.insert(line.style.clone(), loaded);
                }
                Err(other) => self.report.absorb(other),
            }
        }
        styles
    }

    fn sizes(&mut self, order: &Order, styles: &IndexMap<String, Loaded>) {
        for (index, line) in order.lines.iter().enumerate() {
            let Some(loaded) = styles.get(&line.style) else {
                continue;
            };
            let sizes = &loaded.style.sizes;
            for (size, _) in line.pairs.iter().filter(|(size, _)| !sizes.contains(*size)) {
                let list = |tags: &[Tag]| {
                    let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
                    tags.join(", ")
                };
                self.problem(
                    &format!("lines[{index}].pairs.{size}"),
                    "style::no-such-size",
                    format!("{} is not made in size {size}", loaded.style.style.name),
                    format!(
                        "its waists are {}; its lengths {}",
                        list(&sizes.waists),
                        list(&sizes.lengths)
                    ),
                );
            }
        }
    }

    fn shells(&mut self, order: &Order, collection: &Collection) {
        for (index, line) in order.lines.iter().enumerate() {
            let named = line.cloth.as_ref();
            let Some((name, cloth)) = named.and_then(|name| collection.cloths.get_key_value(name))
            else {
                continue;
            };
            if cloth.r#use != ClothUse::Shell {
                self.problem(
                    &format!("lines[{index}].cloth"),
                    "style::wrong-cloth",
                    format!(
                        "\"{name}\" is bought for {}; a shell is wanted here",
                        cloth.r#use
                    ),
                    "name a cloth with use = \"shell\", or take the line out for the style's own"
                        .to_owned(),
                );
            }
        }
    }
}
