//! Something done with a style, answered with every part of its page that is another by then.

use std::sync::PoisonError;
use std::time::{Duration, Instant};

use axum::Json;
use axum::response::{IntoResponse, Response};

use crate::answer::Answer;
use crate::change_outcome::Outcome;
use crate::consequence;
use crate::page::style::gather::Page;
use crate::part::style_foot::LastChange;
use crate::request::{PartsHad, blocking, open};
use crate::session::Session;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::Viewing;

/// Does something with a style's session and answers with every fragment that the page does not have as it now is,
/// saying how long each part took.
pub(crate) async fn answered(
    bench: Bench,
    name: String,
    see: Viewing,
    have: PartsHad,
    act: impl FnOnce(&mut Session, &Viewing) -> Outcome + Send + 'static,
) -> Result<Response, Trouble> {
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let mut clock = Clock::start();
        let size = see.size_of(&session.loaded().style);
        let before = session.garment(size);
        let outcome = act(&mut session, &see);
        clock.lap("file");
        let size = see.size_of(&session.loaded().style);
        let now = session.garment(size);
        clock.lap("garment");
        let system = see.system(&session.loaded().collection);
        let said = LastChange {
            words: outcome.said,
            followed: consequence::between(bench.say(), &before, &now, system),
        };
        clock.lap("consequence");
        let steps = bench.steps(&name, system);
        let page = Page::of(&name, (&mut session, steps), see, outcome.notice, &said);
        clock.lap("drawing");
        let mut fragments = page.fragments();
        // Fields go back to what the file says also where that is what they said before.
        if !outcome.reset {
            fragments.retain(|fragment| !have.has(fragment));
        }
        let answer = Answer {
            outcome: outcome.came,
            revision: page.revision(),
            stand: page.stand(),
            fragments,
            problems: outcome.problems,
            said: said.words.clone(),
            reset: outcome.reset,
        };
        clock.lap("page");
        bench.tell(&format!("{name}: {:?} ({})", outcome.came, clock.words()));
        let timing = [("server-timing", clock.header())];
        Ok((timing, Json(answer)).into_response())
    })
    .await
}

/// Measures the parts of an answer.
struct Clock {
    since: Instant,
    laps: Vec<(&'static str, Duration)>,
}

impl Clock {
    fn start() -> Self {
        Self {
            since: Instant::now(),
            laps: Vec::new(),
        }
    }

    fn lap(&mut self, name: &'static str) {
        self.laps.push((name, self.since.elapsed()));
        self.since = Instant::now();
    }

    fn parts(&self) -> impl Iterator<Item = (&'static str, f64)> + '_ {
        let total: Duration = self.laps.iter().map(|(_, took)| *took).sum();
        let all = self.laps.iter().copied().chain([("total", total)]);
        all.map(|(name, took)| (name, took.as_secs_f64() * 1000.0))
    }

    fn words(&self) -> String {
        let parts: Vec<String> = self
            .parts()
            .map(|(name, ms)| format!("{name} {ms:.1} ms"))
            .collect();
        parts.join(", ")
    }

    fn header(&self) -> String {
        let parts: Vec<String> = self
            .parts()
            .map(|(name, ms)| format!("{name};dur={ms:.2}"))
            .collect();
        parts.join(", ")
    }
}
