//! The world typst looks into: layout files and fonts carried in the program, and one job's data.

use std::sync::OnceLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

use super::data::{Job, drawing_path};
use super::fonts::fonts;

/// The layouts, as typst source.
const LAYOUT: [(&str, &str); 11] = [
    ("/pack.typ", include_str!("../layout/pack.typ")),
    ("/house.typ", include_str!("../layout/house.typ")),
    ("/cover.typ", include_str!("../layout/cover.typ")),
    ("/chart.typ", include_str!("../layout/chart.typ")),
    ("/figures.typ", include_str!("../layout/figures.typ")),
    ("/sewing.typ", include_str!("../layout/sewing.typ")),
    ("/yarn.typ", include_str!("../layout/yarn.typ")),
    ("/lists.typ", include_str!("../layout/lists.typ")),
    ("/cutting.typ", include_str!("../layout/cutting.typ")),
    ("/sheets.typ", include_str!("../layout/sheets.typ")),
    ("/story.typ", include_str!("../layout/story.typ")),
];
const DATA: &str = "/data.json";

/// What never changes between jobs.
struct Press {
    library: LazyHash<Library>,
    sources: Vec<(FileId, Source)>,
}

fn press() -> Option<&'static Press> {
    static PRESS: OnceLock<Option<Press>> = OnceLock::new();
    PRESS
        .get_or_init(|| {
            let sources = LAYOUT
                .iter()
                .map(|(path, text)| {
                    let id = file_id(path)?;
                    Some((id, Source::new(id, (*text).to_owned())))
                })
                .collect::<Option<Vec<_>>>()?;
            Some(Press {
                library: LazyHash::new(Library::default()),
                sources,
            })
        })
        .as_ref()
}

fn file_id(path: &str) -> Option<FileId> {
    let path = VirtualPath::new(path).ok()?;
    Some(FileId::new(RootedPath::new(VirtualRoot::Project, path)))
}

/// One job's view of the world: no disk, no clock, no packages.
pub(crate) struct PressWorld {
    press: &'static Press,
    main: FileId,
    files: Vec<(FileId, Bytes)>,
}

impl PressWorld {
    /// A world that holds the given data. `None` only if a path of ours were malformed.
    pub(crate) fn new(data: Job) -> Option<Self> {
        let mut files = vec![(file_id(DATA)?, Bytes::new(data.json))];
        for (n, svg) in data.drawings.into_iter().enumerate() {
            files.push((file_id(&drawing_path(n))?, Bytes::from_string(svg)));
        }
        Some(Self {
            press: press()?,
            main: file_id(data.layout)?,
            files,
        })
    }
}

impl World for PressWorld {
    fn library(&self) -> &LazyHash<Library> {
        &self.press.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &fonts().book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let found = self.press.sources.iter().find(|(known, _)| *known == id);
        found
            .map(|(_, source)| source.clone())
            .ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let found = self.files.iter().find(|(known, _)| *known == id);
        found
            .map(|(_, bytes)| bytes.clone())
            .ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        fonts().fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
