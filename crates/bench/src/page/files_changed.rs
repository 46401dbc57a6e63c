//! Whether the files are others than a page shows: asked every few seconds by a page that is seen, so it is answered
//! without drawing anything.

use std::sync::PoisonError;

use axum::extract::{Path, State};

use crate::answer::placed;
use crate::fingerprint::mark;
use crate::request::{Route, blocking, open};
use crate::session::Disk;
use crate::state::Bench;
use crate::state_mark;
use crate::trouble::Trouble;

pub(crate) fn routes() -> Vec<Route> {
    vec![Route::get("/style/{name}/stand", stand)]
}

async fn stand(State(bench): State<Bench>, Path(name): Path<String>) -> Result<String, Trouble> {
    blocking(move || {
        let session = open(&bench, &name)?;
        // While a page is seen, what is written by hand into any file of the collection is kept as it comes.
        bench.look();
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        // Taken over is what is found when the page asks for its parts, so that it is told what changed.
        Ok(match session.look_at_disk() {
            Disk::Same => state_mark::of(session.loaded()),
            Disk::Changed(on_disk, _) => state_mark::of(&on_disk),
            Disk::Broken(report) => mark(&placed(bench.say(), &report).join("\n")),
        })
    })
    .await
}
