//! Loading a style with its collection from disk.

use std::fmt;
use std::fs::{self, File};
use std::io::Read;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use crate::details::{ArtPath, CoinShape};
use crate::drawing::{self, Drawing, LARGEST_DRAWING};
use crate::own::take_pattern;
use crate::parse::{Places, check_references, read, style_alone};
use crate::report::{Diagnostic, Report, Source};
use crate::{Collection, StyleDoc, read_collection};

/// The largest file that is read: a style is a few kilobytes, so anything near this is another kind of file.
pub const LARGEST_FILE: u64 = 4 * 1024 * 1024;

/// The name of a style's file inside its folder.
pub const STYLE_FILE: &str = "style.toml";

/// The name of the file that makes a folder a collection.
pub const COLLECTION_FILE: &str = "collection.toml";

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

/// What a text hashes to: the first 16 hex digits of its SHA-256.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize)]
pub struct RevisionId(String);

impl RevisionId {
    /// The id of a text.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let digest = Sha256::digest(text.as_bytes());
        Self(
            digest
                .iter()
                .take(8)
                .map(|byte| format!("{byte:02x}"))
                .collect(),
        )
    }

    /// The id as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RevisionId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
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
    let absolute = fs::canonicalize(style_file).unwrap_or_else(|_| style_file.to_path_buf());
    absolute
        .ancestors()
        .skip(1)
        .find(|folder| folder.join(COLLECTION_FILE).is_file())
        .map(Path::to_path_buf)
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
    let mut report = Report::default();
    let label = load_part(
        folder,
        COLLECTION_FILE,
        &mut report,
        read_collection::collection,
    );
    let cloths = load_part(folder, "cloths.toml", &mut report, read_collection::cloths);
    let yarns = load_part(folder, "yarns.toml", &mut report, read_collection::yarns);
    let trims = load_part(folder, "trims.toml", &mut report, read_collection::trims);
    match (label, cloths, yarns, trims) {
        (Some(label), Some(cloths), Some(yarns), Some(trims)) if report.is_empty() => {
            Ok(Collection {
                name: label.name,
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

fn load_part<T>(
    folder: &Path,
    name: &str,
    report: &mut Report,
    kind: impl FnOnce(crate::reader::Table<'_>) -> Option<T>,
) -> Option<T> {
    let path = folder.join(name);
    match read_file(&path) {
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

/// Why the bytes of a file were not read.
#[derive(Debug, thiserror::Error)]
pub enum Unread {
    /// The system refused.
    #[error("{0}")]
    System(std::io::Error),
    /// It is no file that has an end.
    #[error("it is {0}, not a file")]
    NoFile(&'static str),
    /// It is larger than what is read.
    #[error("it has {bytes} bytes, and at most {most} are read")]
    TooLarge {
        /// How large it is, as far as was looked.
        bytes: u64,
        /// What is read at most.
        most: u64,
    },
}

/// Reads a file that somebody named: a plain file of at most so many bytes, links followed. A pipe, a device or a folder
/// is never opened, for reading it may have no end.
///
/// # Errors
/// It is no plain file, is larger, or the system refused.
pub fn read_plain(path: &Path, most: u64) -> Result<Vec<u8>, Unread> {
    let plain = |data: &fs::Metadata| match what_it_is(data) {
        Some(other) => Err(Unread::NoFile(other)),
        None if data.len() > most => Err(Unread::TooLarge {
            bytes: data.len(),
            most,
        }),
        None => Ok(()),
    };
    plain(&fs::metadata(path).map_err(Unread::System)?)?;
    let file = File::open(path).map_err(Unread::System)?;
    // It is looked at again now that it is open, and its size while it is read: it may be another or grow meanwhile.
    plain(&file.metadata().map_err(Unread::System)?)?;
    let mut bytes = Vec::new();
    file.take(most.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(Unread::System)?;
    match bytes.len() as u64 {
        read if read > most => Err(Unread::TooLarge { bytes: read, most }),
        _ => Ok(bytes),
    }
}

/// What is there instead of a plain file; `None` for a plain file.
fn what_it_is(data: &fs::Metadata) -> Option<&'static str> {
    if data.is_file() {
        return None;
    }
    if data.is_dir() {
        return Some("a folder");
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        let kind = data.file_type();
        if kind.is_fifo() {
            return Some("a pipe");
        }
        if kind.is_socket() {
            return Some("a socket");
        }
        if kind.is_char_device() || kind.is_block_device() {
            return Some("a device");
        }
    }
    Some("something else")
}

/// Reads a text file of at most so many bytes.
pub(crate) fn read_file_of(path: &Path, largest: u64) -> Result<String, Report> {
    let name = || path.display().to_string();
    let bytes = read_plain(path, largest).map_err(|unread| match unread {
        Unread::System(error) => {
            let (code, message) = match error.kind() {
                std::io::ErrorKind::NotFound => {
                    ("style::missing-file", "there is no such file".to_owned())
                }
                _ => (
                    "style::unreadable-file",
                    format!("the file cannot be read: {error}"),
                ),
            };
            let problem = Diagnostic::whole_file(name(), code, message);
            Report::one(problem.hint("check the name and that you may read it"))
        }
        Unread::NoFile(other) => {
            let message = format!("this is {other}, not a file");
            let problem = Diagnostic::whole_file(name(), "style::not-a-file", message);
            Report::one(problem.hint("name a text file"))
        }
        Unread::TooLarge { bytes, most } => too_large(name(), bytes, most),
    })?;
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let valid = error.as_bytes().get(..at).unwrap_or_default();
        let before = String::from_utf8_lossy(valid);
        let (line, column) = Source::new("", &*before).place(at);
        let byte = error.as_bytes().get(at).copied().unwrap_or_default();
        let message = format!(
            "the file is not UTF-8 text: byte {byte:#04x} at offset {at}, line {line}, column {column}"
        );
        let problem = Diagnostic::whole_file(name(), "style::not-utf8", message);
        Report::one(problem.place(line, column).hint("save it again as UTF-8 in your editor"))
    })
}

fn too_large(file: String, bytes: u64, largest: u64) -> Report {
    let message = format!("the file has {bytes} bytes; at most {largest} are read");
    let hint = "a style file has a few kilobytes: check that this is the right file";
    Report::one(Diagnostic::whole_file(file, "style::too-large", message).hint(hint))
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
