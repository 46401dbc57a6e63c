//! When a version was written, on the maker's own clock.

use std::path::Path;

use jiff::Timestamp;
use jiff::tz::TimeZone;

/// A time for people and for programs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct When {
    /// "25 Nov 2026, 14:05".
    pub(crate) shown: String,
    /// The same in UTC, as HTML's `time` has it.
    pub(crate) machine: String,
}

impl When {
    /// When a file was written; `None` where the system does not say.
    pub(crate) fn written(path: &Path) -> Option<Self> {
        let time = std::fs::metadata(path).ok()?.modified().ok()?;
        let time = Timestamp::try_from(time).ok()?;
        let here = time.to_zoned_datetime(TimeZone::system());
        Some(Self {
            shown: here.strftime("%-d %b %Y, %H:%M").to_string(),
            machine: time.strftime("%Y-%m-%dT%H:%M:%SZ").to_string(),
        })
    }
}
