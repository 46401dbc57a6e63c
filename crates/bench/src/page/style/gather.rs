//! What the page of a style shows, gathered: nothing here is written down yet.

use std::sync::Arc;

use style::Loaded;
use words::Words;

use crate::change_log::Steps;
use crate::file_words::FileWords;
use crate::garment::{Picture, Worked, picture};
use crate::part::cloths_file::ClothsFile;
use crate::part::notice::Notice;
use crate::part::shells::{Shell, shells};
use crate::part::style_foot::LastChange;
use crate::session::Session;
use crate::state_mark;
use crate::typed_fields::Fields;
use crate::viewing::{Panel, Viewing};

/// Everything the page shows.
pub(crate) struct Page<'a> {
    pub(super) name: &'a str,
    pub(super) say: &'static Words,
    pub(super) loaded: &'a Loaded,
    pub(super) written: &'a FileWords,
    /// Whether what changes are compared with is the maker's own mark.
    pub(super) marked: bool,
    /// The collection's file of cloths.
    pub(super) cloths: ClothsFile,
    /// What a pair would take of each shell, where that is looked at.
    pub(super) shells: Vec<Shell>,
    pub(super) steps: Steps,
    pub(super) worked: Arc<Worked>,
    pub(super) since: Arc<Worked>,
    pub(super) art: Vec<String>,
    pub(super) picture: Picture,
    pub(super) see: Viewing,
    pub(super) notice: Notice,
    pub(super) said: &'a LastChange,
}

impl<'a> Page<'a> {
    /// Gathers what is to be seen of a style.
    pub(crate) fn of(
        name: &'a str,
        (session, steps): (&'a mut Session, Steps),
        see: Viewing,
        notice: Notice,
        said: &'a LastChange,
    ) -> Self {
        let size = see.size_of(&session.loaded().style);
        let since = session.since(size);
        let worked = session.garment(size);
        Self {
            name,
            say: session.say(),
            art: session.art(),
            loaded: session.loaded(),
            written: session.written(),
            marked: session.is_marked(),
            cloths: ClothsFile::read(&session.loaded().collection_folder),
            // Each other shell is a pair worked out anew: only where it is looked at.
            shells: match see.panel {
                Panel::Cloth => shells(session.loaded(), &worked),
                _ => Vec::new(),
            },
            steps,
            picture: picture(session.say(), &worked, &see),
            worked,
            since,
            see,
            notice,
            said,
        }
    }

    /// The revision shown.
    pub(crate) fn revision(&self) -> String {
        self.loaded.revision.to_string()
    }

    /// What tells the state of the files from another.
    pub(crate) fn stand(&self) -> String {
        state_mark::of(self.loaded)
    }

    pub(super) fn show(&self) -> Fields<'_> {
        Fields {
            say: self.say,
            loaded: self.loaded,
            written: self.written,
            system: self.see.system(&self.loaded.collection),
        }
    }
}
