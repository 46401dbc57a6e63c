//! What a change led to: the figures that are now different, in a line.

use std::ptr;

use draft::{Finding, Severity};
use sewing::{Garment, describe};
use trade::{Area, Length, System};
use words::{Said, Words, key};

use crate::garment::Worked;

/// Less yarn than this is no difference to tell.
const TELLING: Length = Length::mm(50.0);
/// How many seams are told one by one.
const MOST_SEAMS: usize = 2;

/// What is different between two states of the same size, in words; empty when nothing that is told here is.
pub(crate) fn between(
    say: &'static Words,
    before: &Worked,
    now: &Worked,
    system: System,
) -> Vec<String> {
    if ptr::eq(before, now) || before.garment.size != now.garment.size {
        return Vec::new();
    }
    let mut told = Vec::new();
    told.extend(yarn(say, before, now, system));
    told.extend(allowances(say, &before.garment, &now.garment));
    told.extend(findings(say, &before.garment, &now.garment));
    told
}

/// An area as it is read, with its small two.
pub(crate) fn area(area: Area, system: System) -> String {
    let shown = area.show(system);
    match shown.strip_suffix('2') {
        Some(unit) => format!("{unit}²"),
        None => shown,
    }
}

/// Yarn in metres, or in yards for whoever works in inches.
pub(crate) fn reach(length: Length, system: System) -> String {
    const YARD_M: f64 = 0.9144;
    match system {
        System::Metric => format!("{:.1} m", length.to_m()),
        System::Inch => format!("{:.1} yd", length.to_m() / YARD_M),
    }
}

/// To what [`reach`] shows a length.
pub(crate) const fn reach_step(system: System) -> Length {
    match system {
        System::Metric => Length::mm(100.0),
        System::Inch => Length::inches(3.6),
    }
}

fn yarn(say: &'static Words, before: &Worked, now: &Worked, system: System) -> Option<String> {
    let total = now.yarn().used().total();
    let more = total - before.yarn().used().total();
    let sign = if more > Length::ZERO { "+" } else { "−" };
    (more.abs() >= TELLING).then(|| {
        let change = format!("{sign}{}", reach(more.abs(), system));
        say.say(words::say::FollowedYarn {
            change,
            total: reach(total, system),
        })
    })
}

fn allowances(say: &'static Words, before: &Garment, now: &Garment) -> Vec<String> {
    let mut told = Vec::new();
    let mut more = 0_usize;
    for seam in &now.seams {
        let Some(old) = before.seams.iter().find(|old| old.id == seam.id) else {
            continue;
        };
        let (was, is) = (describe(before, old), describe(now, seam));
        if was.allowances == is.allowances {
            continue;
        }
        if told.len() == MOST_SEAMS {
            more += 1;
            continue;
        }
        let words = |width: Option<Said>| width.unwrap_or(key::FOLLOWED_ALLOWANCE_NONE.into());
        told.push(say.say(words::say::FollowedAllowance {
            now: words(is.allowances),
            seam: seam.id.words(say).to_lowercase(),
            was: words(was.allowances),
        }));
    }
    if more > 0 {
        told.push(say.followed_allowances(more));
    }
    told
}

fn findings(say: &'static Words, before: &Garment, now: &Garment) -> Vec<String> {
    [Severity::Error, Severity::Warning, Severity::Note]
        .into_iter()
        .filter_map(|severity| {
            let count = |garment: &Garment| {
                let all = garment.findings.iter();
                let counts = |finding: &&Finding| {
                    finding.severity == severity && finding.counts(&garment.doc)
                };
                all.filter(counts).count()
            };
            let (was, is) = (count(before), count(now));
            let (more, fewer) = (is.saturating_sub(was), was.saturating_sub(is));
            match (severity, more, fewer) {
                (_, 0, 0) => None,
                (Severity::Error, 0, fewer) => Some(say.followed_errors_fewer(fewer)),
                (Severity::Error, more, _) => Some(say.followed_errors_more(more)),
                (Severity::Warning, 0, fewer) => Some(say.followed_warnings_fewer(fewer)),
                (Severity::Warning, more, _) => Some(say.followed_warnings_more(more)),
                (Severity::Note, 0, fewer) => Some(say.followed_notes_fewer(fewer)),
                (Severity::Note, more, _) => Some(say.followed_notes_more(more)),
            }
        })
        .collect()
}
