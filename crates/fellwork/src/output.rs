//! What may be written where: the one rule for every command with `-o`.
//!
//! Fellwork never writes over what it did not make. A name has to end as what is written ends; a file of a
//! collection is never written over; a file that is there already is written over where Fellwork wrote it
//! itself and it is of the same kind, else with `--replace` only. All this is looked at before the work, so
//! that nobody waits for what is then refused, and again when the file is written.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::{fs, io};

use crate::files;
use crate::png_file;
use crate::trouble::Trouble;

/// What kind of file is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A drawing or a sheet of patterns.
    Svg,
    /// Pages.
    Pdf,
    /// For pattern and cutting programs.
    Dxf,
    /// For a plotter.
    Hpgl,
    /// A close look.
    Png,
    /// A page of the web.
    Html,
}

impl Kind {
    const ALL: [Self; 6] = [
        Self::Svg,
        Self::Pdf,
        Self::Dxf,
        Self::Hpgl,
        Self::Png,
        Self::Html,
    ];

    const fn ending(self) -> &'static str {
        match self {
            Self::Svg => "svg",
            Self::Pdf => "pdf",
            Self::Dxf => "dxf",
            Self::Hpgl => "hpgl",
            Self::Png => "png",
            Self::Html => "html",
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::Svg => "SVG",
            Self::Pdf => "PDF",
            Self::Dxf => "DXF",
            Self::Hpgl => "HPGL",
            Self::Png => "PNG",
            Self::Html => "HTML",
        }
    }

    /// The kind that a name ends as.
    fn of(path: &Path) -> Option<Self> {
        let ending = path.extension()?.to_str()?;
        let mut all = Self::ALL.into_iter();
        all.find(|kind| ending.eq_ignore_ascii_case(kind.ending()))
    }

    /// Whether these bytes are a file of this kind that Fellwork wrote.
    fn is_ours(self, bytes: &[u8]) -> bool {
        match self {
            Self::Svg => drawing::is_our_svg(bytes) || patterns::svg::is_ours(bytes),
            Self::Pdf => papers::is_our_pdf(bytes),
            Self::Dxf => patterns::dxf::is_ours(bytes),
            Self::Hpgl => patterns::hpgl::is_ours(bytes),
            Self::Png => png_file::is_ours(bytes),
            Self::Html => papers::is_our_story(bytes),
        }
    }
}

/// One file, or standard output.
#[derive(Debug)]
pub struct OneFile<'a> {
    path: &'a Path,
    kind: Kind,
    replace: bool,
}

impl<'a> OneFile<'a> {
    /// An output that may be written. Its name says which of the kinds it is to be; the first is printed,
    /// and goes into a device or a pipe, whose name says nothing.
    ///
    /// # Errors
    /// It may not be written; what would be right.
    pub fn new(path: &'a Path, kinds: &[Kind], replace: bool) -> Result<Self, Trouble> {
        if path.is_dir() {
            return Err(Trouble::Write {
                path: path.to_path_buf(),
                why: io::Error::new(io::ErrorKind::IsADirectory, "it is a folder"),
            });
        }
        let first = kinds.first().copied().unwrap_or(Kind::Svg);
        let named = Kind::of(path).filter(|kind| kinds.contains(kind));
        let kind = match named {
            Some(kind) => kind,
            None if files::is_printed(path) || is_device(path) => first,
            None => return Err(ends_otherwise(path, kinds)),
        };
        let output = Self {
            path,
            kind,
            replace,
        };
        output.may_be_written()?;
        Ok(output)
    }

    /// What is to be written.
    pub const fn kind(&self) -> Kind {
        self.kind
    }

    /// Writes it whole, or prints it.
    ///
    /// # Errors
    /// It may not or cannot be written; nothing is left behind.
    pub fn write(&self, bytes: &[u8]) -> Result<(), Trouble> {
        self.may_be_written()?;
        files::write(self.path, bytes)
    }

    fn may_be_written(&self) -> Result<(), Trouble> {
        if files::is_printed(self.path) || is_device(self.path) {
            return Ok(());
        }
        may_be_written(self.path, self.kind, self.replace)
    }
}

/// A folder that several files go into.
#[derive(Debug)]
pub struct Folder<'a> {
    path: &'a Path,
    replace: bool,
}

impl<'a> Folder<'a> {
    /// A folder that may be written into.
    ///
    /// # Errors
    /// It is a file, or is kept for the collection itself.
    pub fn new(path: &'a Path, replace: bool) -> Result<Self, Trouble> {
        if path.exists() && !path.is_dir() {
            return Err(Trouble::NotOver {
                what: format!(
                    "{} is a file, and several files are written",
                    path.display()
                ),
                instead: "name a folder; one that is not there yet is made".to_owned(),
            });
        }
        not_of_a_collection(path)?;
        Ok(Self { path, replace })
    }

    /// Writes files into it, all or none.
    ///
    /// # Errors
    /// One of them may not or cannot be written; then none is.
    pub fn write(&self, written: &[(String, impl AsRef<[u8]>)]) -> Result<(), Trouble> {
        for (name, _) in written {
            let path = self.path.join(name);
            if let Some(kind) = Kind::of(&path) {
                may_be_written(&path, kind, self.replace)?;
            }
        }
        files::write_all(self.path, written)
    }
}

/// Whether the path is there and neither a file nor a folder: it is written to, never replaced.
fn is_device(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|there| !there.is_file() && !there.is_dir())
}

fn may_be_written(path: &Path, kind: Kind, replace: bool) -> Result<(), Trouble> {
    // A link is followed: what it leads to is what would be written over.
    let place = fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf());
    not_of_a_collection(&place)?;
    if !place.is_file() {
        return Ok(());
    }
    if Kind::of(&place) != Some(kind) {
        return Err(ends_otherwise(&place, &[kind]));
    }
    if replace {
        return Ok(());
    }
    let there = fs::read(&place).map_err(|why| Trouble::Read {
        path: place.clone(),
        why,
    })?;
    if there.is_empty() || kind.is_ours(&there) {
        return Ok(());
    }
    Err(Trouble::NotOver {
        what: format!(
            "{} is there already, and Fellwork did not write it as {}",
            path.display(),
            kind.name()
        ),
        instead: "name another file, or say --replace to write over it".to_owned(),
    })
}

fn ends_otherwise(path: &Path, kinds: &[Kind]) -> Trouble {
    let names: Vec<&str> = kinds.iter().map(|kind| kind.name()).collect();
    // "back-31.5x32" has no ending: what follows its dot is of a size.
    let of_a_size = |ending: &&OsStr| {
        ending
            .as_encoded_bytes()
            .first()
            .is_some_and(u8::is_ascii_digit)
    };
    let ending = path.extension().filter(|ending| !of_a_size(ending));
    let right = |kind: &Kind| match ending {
        Some(_) => path.with_extension(kind.ending()).display().to_string(),
        None => format!("{}.{}", path.display(), kind.ending()),
    };
    let rights: Vec<String> = kinds.iter().map(right).collect();
    let ending = ending.map_or_else(
        || "has no ending".to_owned(),
        |ending| format!("ends in .{}", ending.to_string_lossy()),
    );
    Trouble::NotOver {
        what: format!(
            "{} is written here, and the name {} {ending}",
            names.join(" or "),
            path.display(),
        ),
        instead: format!("name it {}", rights.join(" or ")),
    }
}

/// Refuses what belongs to a collection: its lists, styles, orders and everything that they name, earlier
/// versions and kept lays.
fn not_of_a_collection(path: &Path) -> Result<(), Trouble> {
    let absolute = resolved(path);
    let mut folders = absolute.ancestors().skip(1);
    let Some(collection) = folders.find(|folder| folder.join(style::COLLECTION_FILE).is_file())
    else {
        return Ok(());
    };
    let inside = absolute.strip_prefix(collection).unwrap_or(&absolute);
    let parts: Vec<_> = inside
        .components()
        .map(|part| part.as_os_str().to_string_lossy())
        .collect();
    let kept = parts
        .first()
        .is_some_and(|first| [style::LAYS_FOLDER, style::ORDERS_FOLDER].contains(&first.as_ref()));
    let hidden = parts.iter().any(|part| part.starts_with('.'));
    let toml = inside
        .extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("toml"));
    if kept || hidden || toml || (absolute.is_file() && is_named(&absolute, collection)) {
        return Err(Trouble::NotOver {
            what: format!(
                "{} belongs to the collection in {}, where nothing is written over",
                path.display(),
                collection.display()
            ),
            instead: "name another file, or a folder outside the collection".to_owned(),
        });
    }
    Ok(())
}

/// Whether a style, or an earlier version of one, names the file.
fn is_named(file: &Path, collection: &Path) -> bool {
    let styles = style::list_styles(collection).unwrap_or_default();
    let mut folders = styles.iter().filter_map(|style| style.parent());
    folders.any(|folder| {
        let Ok(inside) = file.strip_prefix(resolved(folder)) else {
            return false;
        };
        let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
        let path = parts.join("/");
        let named = [format!("\"{path}\""), format!("'{path}'")];
        let versions = [folder.to_path_buf(), folder.join(style::REVISIONS_FOLDER)];
        versions.iter().any(|versions| {
            let files = fs::read_dir(versions).into_iter().flatten().flatten();
            let mut texts = files
                .map(|entry| entry.path())
                .filter(|path| path.extension().is_some_and(|ending| ending == "toml"))
                .filter_map(|path| fs::read_to_string(path).ok());
            texts.any(|text| named.iter().any(|named| text.contains(named)))
        })
    })
}

/// The path from the root, links followed as far as it is there.
fn resolved(path: &Path) -> PathBuf {
    let absolute = std::path::absolute(path).unwrap_or_else(|_| path.to_path_buf());
    for there in absolute.ancestors() {
        if let Ok(real) = fs::canonicalize(there) {
            // Joining nothing would end the path as a folder's, and a file is none.
            return match absolute.strip_prefix(there) {
                Ok(rest) if rest != Path::new("") => real.join(rest),
                _ => real,
            };
        }
    }
    absolute
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn refused(path: &Path, kinds: &[Kind], replace: bool) -> String {
        OneFile::new(path, kinds, replace).unwrap_err().render()
    }

    #[test]
    fn a_name_ends_as_what_is_written() {
        let folder = tempfile::tempdir().unwrap();
        let place = |name: &str| folder.path().join(name);
        for name in ["x.png", "x", "x.svg.toml", "x.pdf"] {
            let words = refused(&place(name), &[Kind::Svg], true);
            assert!(words.contains("SVG is written here"), "{words}");
        }
        assert!(OneFile::new(&place("x.SVG"), &[Kind::Svg], false).is_ok());
        let kinds = [Kind::Svg, Kind::Dxf, Kind::Pdf];
        let path = place("lay.DXF");
        assert_eq!(
            OneFile::new(&path, &kinds, false).unwrap().kind(),
            Kind::Dxf
        );
        assert!(OneFile::new(Path::new("-"), &kinds, false).unwrap().kind() == Kind::Svg);
        assert!(refused(&place("lay.png"), &kinds, false).contains("lay.dxf"));
        let words = refused(&place("back-31.5x32"), &[Kind::Svg], false);
        assert!(words.contains("has no ending"), "{words}");
        assert!(words.contains("back-31.5x32.svg"), "{words}");
    }

    #[test]
    fn only_what_fellwork_wrote_is_written_over_unasked() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("front.svg");
        fs::write(&file, "<svg xmlns=\"http://www.w3.org/2000/svg\"/>").unwrap();
        let words = refused(&file, &[Kind::Svg], false);
        assert!(words.contains("--replace"), "{words}");
        assert!(OneFile::new(&file, &[Kind::Svg], true).is_ok());
        fs::write(&file, "").unwrap();
        let output = OneFile::new(&file, &[Kind::Svg], false).unwrap();
        // What comes between the look and the writing is not lost either.
        fs::write(&file, "mine").unwrap();
        assert!(output.write(b"<svg/>").is_err());
        assert_eq!(fs::read(&file).unwrap(), b"mine");
    }

    #[test]
    fn a_folder_is_looked_at_file_by_file() {
        let folder = tempfile::tempdir().unwrap();
        let mine = folder.path().join("b.svg");
        fs::write(&mine, "mine").unwrap();
        let written = [("a.svg".to_owned(), "x"), ("b.svg".to_owned(), "x")];
        let asked = |replace| Folder::new(folder.path(), replace).unwrap();
        assert!(asked(false).write(&written).is_err());
        assert!(!folder.path().join("a.svg").exists());
        asked(true).write(&written).unwrap();
        assert_eq!(fs::read(&mine).unwrap(), b"x");
        assert!(Folder::new(&mine, true).is_err());
    }
}
