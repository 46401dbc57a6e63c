//! The style that an address names.

use std::sync::{Arc, Mutex, PoisonError};

use style::Loaded;
use words::Words;

use crate::answer::placed;
use crate::repair;
use crate::session::Session;
use crate::state::{Bench, NotOpen};
use crate::trouble::Trouble;

/// The session of a style, or the page that says why there is none.
pub(crate) fn open(bench: &Bench, name: &str) -> Result<Arc<Mutex<Session>>, Trouble> {
    bench.session(name).map_err(|not_open| match not_open {
        NotOpen::Unknown => Trouble::no_such_page(),
        NotOpen::Broken(report) => {
            let mistakes = placed(bench.say(), &report);
            let mended = repair::is_offered(bench, name).then_some(name);
            Trouble::unreadable(Words::trouble_style, mistakes).mended_by(mended)
        }
    })
}

/// The style as the session holds it. What takes a while works on this copy, so that edits need not wait.
pub(crate) fn loaded(bench: &Bench, name: &str) -> Result<Loaded, Trouble> {
    let session = open(bench, name)?;
    let session = session.lock().unwrap_or_else(PoisonError::into_inner);
    Ok(session.loaded().clone())
}
