//! The browser bench: one collection, served to the maker's own browser and to nobody else.
//!
//! The bench shows a style as a drawing of the pair, or as a plate of one detail, with its chart, details, seams,
//! yarn, sewing order and findings beside it. Every detail a style can state has a field. Everything is a
//! server-rendered page; a change is one POST that carries [`style::Edit`]s and answers with the
//! fragments that are now different, so that the drawing follows at once. The style file is the
//! truth: a change is checked, then saved right away with comments kept. What somebody else changed
//! in the meantime, in another tab or with an editor, is never overwritten: a change of other values
//! is made beside it, one of the same values is refused. Undo and redo go through every version that
//! is kept, also after the bench was ended; they can be named, looked at beside one another and put back.
//!
//! [`router`] is the whole bench as a function, for tests and tools; [`start`] puts it on a loopback
//! port. No other web page can drive it: every page needs the key of the session, and the host and
//! origin of every request are checked.
//!
//! ```
//! let folder = tempfile::tempdir()?;
//! let key = "k".repeat(32);
//! let _answers: axum::Router = bench::router(bench::Bench::new(folder.path().to_owned(), key, 4680));
//! # Ok::<(), std::io::Error>(())
//! ```

mod addresses;
mod answer;
mod asset;
mod change_log;
mod change_outcome;
mod chosen_fields;
mod connections;
mod consequence;
mod file_words;
mod fingerprint;
mod garment;
mod grip;
mod guard;
mod marks;
mod opening;
mod page;
mod part;
mod repair;
mod request;
mod room;
mod router;
mod sentences;
mod serve;
mod session;
mod state;
mod state_mark;
mod trouble;
mod typed_fields;
mod version_time;
mod versions;
mod viewing;
mod work;

pub use router::{Address, addresses, router};
pub use serve::{BenchError, Options, Running, USUAL_PORT, serve, start};
pub use state::Bench;
