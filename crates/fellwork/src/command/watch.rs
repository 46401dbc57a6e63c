//! A search for a lay on the command line: how it stands, and an end to it by Ctrl-C that keeps what was found.

use std::io::{IsTerminal, stderr};
use std::sync::Once;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use cutting::Spread;
use jobs::{Finder, Found};
use lay::{Ended, LayError, Progress};
use trade::System;

use crate::command::plan::told;
use crate::printed;

/// How often the line is written anew.
const EVERY: Duration = Duration::from_millis(200);

static CANCEL: AtomicBool = AtomicBool::new(false);

/// Looks for a lay and tells on a terminal how it stands. Ctrl-C ends the search.
///
/// # Errors
/// There is no lay.
pub fn watched(
    finder: &Finder<'_>,
    spread: &Spread,
    words: &str,
    system: System,
) -> Result<Found, LayError> {
    static LISTENING: Once = Once::new();
    // Where the system lets nobody listen, Ctrl-C ends the program as ever.
    LISTENING.call_once(|| drop(ctrlc::set_handler(|| CANCEL.store(true, Ordering::Relaxed))));
    let shown = stderr().is_terminal();
    let limit = finder.options.limits.time;
    let mut last: Option<Instant> = None;
    let found = finder.find(spread, words, &CANCEL, &mut |progress| {
        if shown && last.is_none_or(|last| last.elapsed() >= EVERY) {
            last = Some(Instant::now());
            printed::line_anew(&line(progress, limit, system));
        }
    });
    if last.is_some() {
        printed::line_anew("");
    }
    let found = found?;
    told(&found);
    if found.lay.ended == Ended::Cancelled {
        printed::to_stderr("cancelled; this is the shortest lay that was found until then\n");
    }
    Ok(found)
}

/// How a search stands, short enough for a line.
fn line(progress: &Progress, limit: Option<Duration>, system: System) -> String {
    let of = limit.map_or_else(String::new, |limit| format!(" of {}", limit.as_secs()));
    let above = progress.length / progress.bound - 1.0;
    format!(
        "{}{of} s: {}, {:.1} % of the cloth used, {:.1} % above the least, {:.1} million places tried",
        progress.elapsed.as_secs(),
        progress.length.show(system),
        progress.efficiency.to_percent(),
        100.0 * above,
        progress.places as f64 / 1e6
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade::{Length, Share};

    #[test]
    fn a_search_is_told_in_a_line() {
        let progress = Progress {
            placements: Vec::new(),
            places: 12_340_000,
            length: Length::cm(241.7),
            efficiency: Share::percent(87.62),
            bound: Length::cm(231.7),
            elapsed: Duration::from_millis(12_900),
        };
        let told = line(&progress, Some(Duration::from_secs(60)), System::Metric);
        assert_eq!(
            told,
            "12 of 60 s: 241.7 cm, 87.6 % of the cloth used, 4.3 % above the least, 12.3 million places tried"
        );
    }
}
