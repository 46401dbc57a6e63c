//! `fellwork bring`: a maker's own pattern, read from a pattern file into a style.

mod list;

use std::path::{Path, PathBuf};

use intake::Asked;
use jobs::{JobError, Meant, PatternSource, bring_into};
use style::{COLLECTION_FILE, Drawn, Loaded, ReadError, STYLE_FILE};

use crate::args::{Bring, NamedPiece, PieceCorners};
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Bring) -> Result<Exit, Trouble> {
    let loaded = asked.output.as_deref().map(into).transpose()?;
    let source = source(asked)?;
    let look = intake::look(
        &source.read.pattern,
        &shown(&asked.file),
        &said(asked, loaded.as_ref()),
    )?;
    let passed_over = source.read.passed_over.clone();
    let words = match loaded {
        Some(loaded) if !asked.list => {
            let drawn = if asked.before_wash {
                Drawn::BeforeWash
            } else {
                Drawn::AfterWash
            };
            let meant = Meant {
                drawn,
                allowance: asked.allowance,
            };
            let brought = bring_into(&loaded, &look, source, meant)?;
            list::told(&brought, &look, &passed_over)
        }
        _ if asked.json => {
            printed::json(&answers::bring(&look, &passed_over)?)?;
            return Ok(Exit::Done);
        }
        _ => list::list(&look, &passed_over),
    };
    printed::words(&words)?;
    Ok(Exit::Done)
}

/// The style a pattern goes into.
fn into(style: &Path) -> Result<Loaded, Trouble> {
    let file = style.file_name() == Some(STYLE_FILE.as_ref());
    let folder = if file {
        style.parent().unwrap_or(style)
    } else {
        style
    };
    let there = folder.join(STYLE_FILE).exists() || folder.join(COLLECTION_FILE).exists();
    if there || (style.exists() && !style.is_dir()) {
        return load(style);
    }
    let name = folder.file_name().unwrap_or_default().to_string_lossy();
    Err(Trouble::NoStyle {
        folder: folder.to_path_buf(),
        begin: format!(
            "begin it first, then bring the pattern into it:\nfellwork new {} --name \"{name}\" --folder \"{name}\"\nor begin with the pattern at the bench: fellwork bench {}",
            shown_path(&collection_above(folder)),
            shown_path(&collection_above(folder)),
        ),
    })
}

/// The collection a folder would be a style of: the one it lies in, else the folder above `styles`, else the one above.
fn collection_above(folder: &Path) -> PathBuf {
    let mut above = folder.ancestors().skip(1);
    if let Some(found) = above.find(|folder| folder.join(COLLECTION_FILE).is_file()) {
        return found.to_path_buf();
    }
    let parent = folder.parent().unwrap_or(folder);
    match (parent.file_name(), parent.parent()) {
        (Some(name), Some(collection)) if name == "styles" => collection.to_path_buf(),
        _ => parent.to_path_buf(),
    }
}

/// A path as it is typed; the folder one is in has no name.
fn shown_path(path: &Path) -> String {
    match path.as_os_str().is_empty() {
        true => ".".to_owned(),
        false => path.display().to_string(),
    }
}

/// The name of a file without its folders.
fn shown(file: &Path) -> String {
    let name = file.file_name().unwrap_or(file.as_os_str());
    name.to_string_lossy().into_owned()
}

/// The file as it was read; one that is too large, or is no file that has an end, is not read at all.
fn source(asked: &Bring) -> Result<PatternSource, Trouble> {
    let file = &asked.file;
    let not_brought = |what: String, instead: String| Trouble::NoPattern {
        file: file.clone(),
        what,
        instead,
    };
    let most = patterns::limits::MOST_BYTES as u64;
    let bytes = style::read_bytes(file, most).map_err(|unread| match unread {
        ReadError::Missing(path) => Trouble::Read {
            path,
            why: std::io::ErrorKind::NotFound.into(),
        },
        ReadError::Refused { path, source } => Trouble::Read { path, why: source },
        ReadError::TooLarge { bytes, largest, .. } => not_brought(
            format!("it has {bytes} bytes"),
            format!("at most {largest} are read: bring fewer sizes at a time"),
        ),
        ReadError::NotAFile { what, .. } => not_brought(
            format!("it is {what}, not a file"),
            "name a .dxf or .svg file".to_owned(),
        ),
        other @ ReadError::NotText { .. } => {
            not_brought(other.to_string(), "name a .dxf or .svg file".to_owned())
        }
    })?;
    let unit = asked.unit.map(Into::into);
    PatternSource::read(&shown(file), bytes, unit).map_err(|error| match error {
        JobError::NoPattern { what, instead } => not_brought(what, instead),
        other => other.into(),
    })
}

fn said(asked: &Bring, loaded: Option<&Loaded>) -> Asked {
    Asked {
        sizes: asked.size.clone(),
        pieces: asked
            .piece
            .iter()
            .map(|NamedPiece { own, theirs }| (own.clone(), theirs.clone()))
            .collect(),
        corners: asked
            .corners
            .iter()
            .map(|PieceCorners { own, corners }| (own.clone(), corners.clone()))
            .collect(),
        sewn: asked.sewn,
        grain_up: asked.grain_up,
        lengths: loaded.map_or_else(Vec::new, |l| l.style.sizes.lengths.clone()),
        base: loaded.map(|l| l.style.sizes.base),
    }
}
