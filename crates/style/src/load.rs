//! Loading a style with its collection from disk.

use std::fs;
use std::path::{Path, PathBuf};

pub(crate) use store::{COLLECTION_FILE, LARGEST_FILE};
use store::{ReadError, RevisionId, collection_of, read_text};

use crate::details::{ArtPath, CoinShape};
use crate::drawing::{self, Drawing, LARGEST_DRAWING};
use crate::own::take_pattern;
use crate::parse::{Places, check_references, read, style_alone};
use crate::report::{Diagnostic, Report, Source};
use crate::{Collection, StyleDoc, read_collection};

/// The name of a style's file inside its folder.
pub const STYLE_FILE: &str = "style.toml";

/// The name of the file of cloths in a collection.
pub const CLOTHS_FILE: &str = "cloths.toml";

/// The name of the file of yarns in a collection.
pub const YARNS_FILE: &str = "yarns.toml";

/// The name of the file of trims in a collection.
pub const TRIMS_FILE: &str = "trims.toml";

/// A style read from disk with everything it refers to.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The style.
    pub style: StyleDoc,
    /// The collection it belongs to.
    pub collection: Collection,
    /// The style file's text, exactly as read.
    pub text: String,
    /// The style file.
    pub path: PathBuf,
    /// The collection's folder.
    pub collection_folder: PathBuf,
    /// What the text hashes to: two files with the same text have the same id.
    pub revision: RevisionId,
    pub(crate) places: Places,
}

impl Loaded {
    /// The folder the style is in.
    #[must_use]
    pub fn folder(&self) -> &Path {
        self.path.parent().unwrap_or(Path::new("."))
    }

    /// Where a value stands in the file, by its path (`chart.thigh.value`, `seams.inseam.rows[0].yarn`):
    /// line and column, both from 1. `None` for what the file does not say.
    #[must_use]
    pub fn place(&self, path: &str) -> Option<(usize, usize)> {
        let span = self.places.get(path)?;
        Some(Source::new("", self.text.as_str()).place(span.start))
    }

    /// The same style with another text, read against the same collection; nothing is written.
    ///
    /// # Errors
    /// Every problem of the new text.
    pub fn with_text(&self, text: &str) -> Result<Self, Report> {
        let source = Source::new(self.path.display().to_string(), text);
        let mut reading = style_alone(&source);
        check_references(
            &source,
            &reading.references,
            &self.collection,
            &mut reading.report,
        );
        if let Some(style) = &mut reading.value {
            let (folder, places) = (self.folder(), &reading.places);
            let collection = Some(&self.collection);
            take_files(
                &source,
                style,
                (folder, collection),
                places,
                &mut reading.report,
            );
        }
        reading.report.sort();
        match reading.value {
            Some(style) if reading.report.is_empty() => Ok(Self {
                style,
                collection: self.collection.clone(),
                text: text.to_owned(),
                path: self.path.clone(),
                collection_folder: self.collection_folder.clone(),
                revision: RevisionId::of(text),
                places: reading.places,
            }),
            _ => Err(reading.report),
        }
    }
}

/// Loads a style from its folder or its file, with the collection found by walking up from there.
///
/// # Errors
/// Every problem of the style and of the collection's files; a file that is not TOML at all gives one problem.
pub fn load(path: &Path) -> Result<Loaded, Report> {
    let path = style_file(path)?;
    let text = read_file(&path)?;
    load_as(path, text)
}

/// A style as it would be loaded were this the text of its file.
pub(crate) fn load_as(path: PathBuf, text: String) -> Result<Loaded, Report> {
    let source = Source::new(path.display().to_string(), text.as_str());
    let mut reading = style_alone(&source);
    let folder = find_collection(&path)?;
    let collection = match load_collection(&folder) {
        Ok(collection) => {
            check_references(
                &source,
                &reading.references,
                &collection,
                &mut reading.report,
            );
            Some(collection)
        }
        Err(other) => {
            reading.report.absorb(other);
            None
        }
    };
    if let Some(style) = &mut reading.value {
        let (folder, places) = (path.parent().unwrap_or(Path::new(".")), &reading.places);
        let collection = collection.as_ref();
        take_files(
            &source,
            style,
            (folder, collection),
            places,
            &mut reading.report,
        );
    }
    reading.report.sort();
    match (reading.value, collection) {
        (Some(style), Some(collection)) if reading.report.is_empty() => Ok(Loaded {
            style,
            collection,
            revision: RevisionId::of(&text),
            text,
            path,
            collection_folder: folder,
            places: reading.places,
        }),
        _ => Err(reading.report),
    }
}

/// The style file that a path means: itself, or `style.toml` in the folder.
pub(crate) fn style_file(path: &Path) -> Result<PathBuf, Report> {
    let inside = path.join(STYLE_FILE);
    let file = if path.is_dir() {
        inside
    } else {
        path.to_path_buf()
    };
    if path.is_dir() && !file.exists() {
        let message = format!("there is no {STYLE_FILE} in this folder");
        let problem =
            Diagnostic::whole_file(path.display().to_string(), "style::missing-file", message)
                .hint(
                    "name a style's folder, such as saltmarsh/styles/ferryman, or its style.toml",
                );
        return Err(Report::one(problem));
    }
    Ok(file)
}

/// The nearest folder at or above a style file that holds `collection.toml`.
pub(crate) fn find_collection(style_file: &Path) -> Result<PathBuf, Report> {
    collection_of(style_file)
        .ok_or_else(|| {
            let message =
                format!("no {COLLECTION_FILE} in this file's folder or any folder above it");
            let file = style_file.display().to_string();
            Report::one(Diagnostic::whole_file(file, "style::no-collection", message).hint(
                "below a collection.toml a style lies at styles/NAME/style.toml and an order at orders/NAME.toml",
            ))
        })
}

/// Reads a collection's four files.
///
/// # Errors
/// Every problem of the four; a missing one is named.
pub fn load_collection(folder: &Path) -> Result<Collection, Report> {
    load_collection_as(folder, None)
}

/// The collection as it would be loaded were this the text of one of its files.
pub(crate) fn load_collection_as(
    folder: &Path,
    instead: Option<(&str, &str)>,
) -> Result<Collection, Report> {
    let mut report = Report::default();
    let part = Part { folder, instead };
    let label = part.load(COLLECTION_FILE, &mut report, read_collection::collection);
    let cloths = part.load(CLOTHS_FILE, &mut report, read_collection::cloths);
    let yarns = part.load(YARNS_FILE, &mut report, read_collection::yarns);
    let trims = part.load(TRIMS_FILE, &mut report, read_collection::trims);
    match (label, cloths, yarns, trims) {
        (Some(label), Some(cloths), Some(yarns), Some(trims)) if report.is_empty() => {
            Ok(Collection {
                name: label.name,
                contact: label.contact,
                currency: label.currency,
                units: label.units,
                languages: label.languages,
                workrooms: label.workrooms,
                cloths,
                yarns,
                trims,
            })
        }
        _ => {
            report.sort();
            Err(report)
        }
    }
}

/// One of a collection's files.
struct Part<'a> {
    folder: &'a Path,
    /// The file that is read from a text, and that text.
    instead: Option<(&'a str, &'a str)>,
}

impl Part<'_> {
    fn load<T>(
        &self,
        name: &str,
        report: &mut Report,
        kind: impl FnOnce(crate::reader::Table<'_>) -> Option<T>,
    ) -> Option<T> {
        let path = self.folder.join(name);
        let text = match self.instead {
            Some((instead, text)) if instead == name => Ok(text.to_owned()),
            _ => read_file(&path),
        };
        match text {
            Ok(text) => {
                let reading = read(&Source::new(path.display().to_string(), text), kind);
                report.absorb(reading.report);
                reading.value
            }
            Err(unread) => {
                report.absorb(unread);
                None
            }
        }
    }
}

/// The style files of a collection, in the order of their folders' names.
///
/// # Errors
/// When the folder of styles is there but cannot be listed.
pub fn list_styles(collection_folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let styles = collection_folder.join("styles");
    if !styles.is_dir() {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    for entry in fs::read_dir(styles)? {
        let entry = entry?;
        let hidden = entry.file_name().to_string_lossy().starts_with('.');
        let file = entry.path().join(STYLE_FILE);
        if !hidden && file.is_file() {
            found.push(file);
        }
    }
    found.sort();
    Ok(found)
}

/// Reads a text file of at most [`LARGEST_FILE`] bytes. A larger one is refused by its stated size, without reading it.
pub(crate) fn read_file(path: &Path) -> Result<String, Report> {
    read_file_of(path, LARGEST_FILE)
}

/// Reads a text file of at most so many bytes.
pub(crate) fn read_file_of(path: &Path, largest: u64) -> Result<String, Report> {
    read_text(path, largest).map_err(|error| unread(&error))
}

/// Why a file was not read, as a problem of that file.
pub(crate) fn unread(error: &ReadError) -> Report {
    const CHECK: &str = "check the name and that you may read it";
    let (path, code, message, hint) = match error {
        ReadError::Missing(path) => (
            path,
            "style::missing-file",
            "there is no such file".to_owned(),
            CHECK,
        ),
        ReadError::Refused { path, source } => (
            path,
            "style::unreadable-file",
            format!("the file cannot be read: {source}"),
            CHECK,
        ),
        ReadError::NotAFile { path, what } => (
            path,
            "style::not-a-file",
            format!("this is {what}, not a file"),
            "name a text file",
        ),
        ReadError::TooLarge {
            path,
            bytes,
            largest,
        } => (
            path,
            "style::too-large",
            format!("the file has {bytes} bytes; at most {largest} are read"),
            "a style file has a few kilobytes: check that this is the right file",
        ),
        ReadError::NotText {
            path,
            before,
            offset,
            byte,
        } => {
            let (line, column) = Source::new("", before.as_str()).place(before.len());
            let message = format!(
                "the file is not UTF-8 text: byte {byte:#04x} at offset {offset}, line {line}, column {column}"
            );
            let problem =
                Diagnostic::whole_file(path.display().to_string(), "style::not-utf8", message);
            let problem = problem.place(line, column);
            return Report::one(problem.hint("save it again as UTF-8 in your editor"));
        }
    };
    Report::one(Diagnostic::whole_file(path.display().to_string(), code, message).hint(hint))
}

/// Every art file must be a file really inside the style's folder, also after following links.
fn check_art(
    source: &Source,
    style: &StyleDoc,
    folder: &Path,
    places: &Places,
    report: &mut Report,
) {
    for (path, art) in style.art() {
        if let Some((code, message)) = unfit_file(art, folder, LARGEST_FILE) {
            let span = places.get(&path).cloned().unwrap_or(0..0);
            let hint =
                "put the drawing into the style's own folder, such as art/, and name it from there";
            report.push(
                Diagnostic::at(source, span, code, message)
                    .about(&path)
                    .hint(hint),
            );
        }
    }
}

/// Reads what the style names beside itself: the maker's art and the maker's own pattern.
fn take_files(
    source: &Source,
    style: &mut StyleDoc,
    (folder, collection): (&Path, Option<&Collection>),
    places: &Places,
    report: &mut Report,
) {
    take_art(source, style, folder, places, report);
    take_pattern(source, style, folder, collection, places, report);
}

/// Checks the art files and reads their lines.
fn take_art(
    source: &Source,
    style: &mut StyleDoc,
    folder: &Path,
    places: &Places,
    report: &mut Report,
) {
    let known = report.count();
    check_art(source, style, folder, places, report);
    if report.count() > known {
        return;
    }
    let mut take = |path: &str, art: Option<&ArtPath>, outline: bool| {
        let art = art?;
        let drawn = drawn(art, folder).and_then(|drawing| {
            let file = || art.in_folder(folder).display().to_string();
            match drawing.unfit_outline().filter(|_| outline) {
                Some(why) => Err(Report::one(
                    Diagnostic::whole_file(file(), "style::unfit-outline", why).hint(
                        "draw the outline as one open line, from the inner top corner down and round to the outer one",
                    ),
                )),
                None => Ok(drawing),
            }
        });
        match drawn {
            Ok(drawing) => Some(drawing),
            Err(other) => {
                // The place is the drawing's own; the path says what it is for.
                for problem in other.problems {
                    report.push(problem.about(path));
                }
                None
            }
        }
    };
    let coin = &mut style.pockets.coin;
    let free = coin.shape == CoinShape::Free;
    coin.drawing = take("pockets.coin.art", coin.art.as_ref(), free);
    let back = &mut style.pockets.back;
    back.left.drawing = take("pockets.back.left.art", back.left.art.as_ref(), false);
    back.right.drawing = take("pockets.back.right.art", back.right.art.as_ref(), false);
    if let Some(patch) = &mut style.patch {
        patch.drawing = take("patch.art", patch.art.as_ref(), false);
    }
    for (index, label) in style.labels.iter_mut().enumerate() {
        label.drawing = take(&format!("labels[{index}].art"), label.art.as_ref(), false);
    }
}

fn drawn(art: &ArtPath, folder: &Path) -> Result<Drawing, Report> {
    let file = art.in_folder(folder);
    let size = fs::metadata(&file).map_or(0, |metadata| metadata.len());
    if size > LARGEST_DRAWING {
        let message = format!("the drawing has {size} bytes; at most {LARGEST_DRAWING} are read");
        let problem =
            Diagnostic::whole_file(file.display().to_string(), "style::too-large", message);
        return Err(Report::one(
            problem.hint("lines are all that is read: simplify the drawing"),
        ));
    }
    let text = read_file(&file)?;
    drawing::read(&file.display().to_string(), &text).map_err(|problem| Report::one(*problem))
}

/// Why a file that a style names cannot be read: it has to be a file really inside the style's folder.
pub(crate) fn unfit_file(
    art: &ArtPath,
    folder: &Path,
    largest: u64,
) -> Option<(&'static str, String)> {
    let name = art.as_str();
    let (Ok(file), Ok(folder)) = (
        fs::canonicalize(art.in_folder(folder)),
        fs::canonicalize(folder),
    ) else {
        return Some((
            "style::missing-art",
            format!("there is no file {name} in the style's folder"),
        ));
    };
    if !file.starts_with(&folder) {
        return Some((
            "style::art-outside",
            format!("{name} is a link out of the style's folder"),
        ));
    }
    match fs::metadata(&file) {
        Ok(metadata) if !metadata.is_file() => {
            Some(("style::missing-art", format!("{name} is not a file")))
        }
        Ok(metadata) if metadata.len() > largest => Some((
            "style::too-large",
            format!(
                "{name} has {} bytes; at most {largest} are read",
                metadata.len()
            ),
        )),
        Ok(_) => None,
        Err(error) => Some((
            "style::unreadable-file",
            format!("{name} cannot be read: {error}"),
        )),
    }
}
