//! The keeper of files, and the only room that reads and writes those of a collection.
//!
//! Every file a maker works on, whatever it says, is a [`VersionedFile`]: it is saved whole or not at all, every text it
//! ever had is kept as a numbered version, and nobody's change is written over silently. A text that is found in the
//! file and that was not saved here was **written by hand**: it is a version like any other, known as one from outside
//! ([`Way::Outside`]). Versions have [`Names`]; they are listed by [`History`].
//!
//! Below one collection all changes of all its files stand in one order, that of time ([`Timeline`]), and undo and redo
//! go along it, whichever file a change was made in.
//!
//! What a file says is none of this room's business: whoever saves has made sure that the text is sound.
//!
//! ```
//! use store::{RevisionId, VersionedFile, Way, list_versions};
//!
//! let folder = tempfile::tempdir()?;
//! let path = folder.path().join("notes.toml");
//! std::fs::write(&path, "by hand")?;
//! let file = VersionedFile::new(&path);
//! let held = RevisionId::of(&file.look()?.text);
//! file.save(&held, "changed", Way::Edit)?;
//! assert_eq!(list_versions(&file)?.len(), 2);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod error;
mod file;
mod folder;
mod history;
mod journal;
mod names;
mod place;
mod read;
mod revision_id;
mod timeline;
mod version;
mod whole_save;

pub use error::StoreError;
pub use file::{Look, Saved, VersionedFile};
pub use folder::{Files, MakeError, clear_unfinished, is_free, make_folder, unfinished};
pub use history::{History, list_versions};
pub use journal::Way;
pub use names::{LONGEST_NAME, NameError, Names, NamesProblem};
pub use place::{COLLECTION_FILE, REVISIONS_FOLDER, collection_of, real};
pub use read::{LARGEST_FILE, ReadError, read_bytes, read_text, unfit};
pub use revision_id::RevisionId;
pub use timeline::{Change, Direction, Stamp, Timeline};
pub use version::{Revision, read_version};
pub use whole_save::{add_file, clear_unfinished_note, write_note};
