//! When a version was written, on the maker's own clock.

use std::path::Path;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use words::Words;

/// A time for people and for programs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct VersionTime {
    /// "25 Nov 2026, 14:05".
    pub(crate) shown: String,
    /// The same in UTC, as HTML's `time` has it.
    pub(crate) machine: String,
}

impl VersionTime {
    /// When a file was written; `None` where the system does not say.
    pub(crate) fn written(say: &'static Words, path: &Path) -> Option<Self> {
        let time = std::fs::metadata(path).ok()?.modified().ok()?;
        let time = Timestamp::try_from(time).ok()?;
        let here = time.to_zoned_datetime(TimeZone::system());
        let clock = here.strftime("%H:%M");
        Some(Self {
            shown: say.say(words::say::HistoryWhen {
                day: here.day().to_string(),
                month: here.month(),
                time: clock.to_string(),
                year: here.year().to_string(),
            }),
            machine: time.strftime("%Y-%m-%dT%H:%M:%SZ").to_string(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_month_has_its_name() {
        let shown = |month| {
            Words::english().say(words::say::HistoryWhen {
                day: "5",
                month,
                time: "14:05",
                year: "2026",
            })
        };
        assert_eq!(shown(1), "5 Jan 2026, 14:05");
        assert_eq!(shown(11), "5 Nov 2026, 14:05");
        assert_eq!(shown(12), "5 Dec 2026, 14:05");
    }
}
