//! What a change led to: the figures that are now different, in a line.

use std::ptr;

use draft::{Finding, Severity};
use sewing::{Garment, describe};
use trade::{Area, Length, System};

use crate::garment::Worked;

/// Less yarn than this is no difference to tell.
const TELLING: Length = Length::mm(50.0);
/// How many seams are told one by one.
const MOST_SEAMS: usize = 2;

/// What is different between two states of the same size, in words; empty when nothing that is told here is.
pub(crate) fn between(before: &Worked, now: &Worked, system: System) -> Vec<String> {
    if ptr::eq(before, now) || before.garment.size != now.garment.size {
        return Vec::new();
    }
    let mut told = Vec::new();
    told.extend(yarn(before, now, system));
    told.extend(allowances(&before.garment, &now.garment));
    told.extend(findings(&before.garment, &now.garment));
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

fn yarn(before: &Worked, now: &Worked, system: System) -> Option<String> {
    let total = now.yarn().used().total();
    let more = total - before.yarn().used().total();
    let sign = if more > Length::ZERO { "+" } else { "−" };
    (more.abs() >= TELLING).then(|| {
        let (more, total) = (reach(more.abs(), system), reach(total, system));
        format!("yarn {sign}{more}, now {total} a pair")
    })
}

fn allowances(before: &Garment, now: &Garment) -> Vec<String> {
    let mut told = Vec::new();
    let mut more = 0_usize;
    for seam in &now.seams {
        let Some(old) = before.seams.iter().find(|old| old.name == seam.name) else {
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
        let words = |text: String| match text.as_str() {
            "" => "none".to_owned(),
            _ => text,
        };
        told.push(format!(
            "{} allowance {} → {}",
            is.name.to_lowercase(),
            words(was.allowances),
            words(is.allowances)
        ));
    }
    if more > 0 {
        told.push(format!("allowances of {more} more seams"));
    }
    told
}

fn findings(before: &Garment, now: &Garment) -> Vec<String> {
    [Severity::Error, Severity::Warning, Severity::Note]
        .into_iter()
        .filter_map(|severity| {
            let count = |garment: &Garment| {
                let all = garment.findings.iter();
                let counts = |finding: &&Finding| {
                    finding.severity == severity && finding.muted(&garment.doc).is_none()
                };
                all.filter(counts).count()
            };
            let (was, is) = (count(before), count(now));
            let plural = |number: usize| if number == 1 { "" } else { "s" };
            let word = severity.word();
            match is.cmp(&was) {
                std::cmp::Ordering::Greater => {
                    let more = is - was;
                    Some(format!("{more} new {word}{}", plural(more)))
                }
                std::cmp::Ordering::Less => {
                    let fewer = was - is;
                    Some(format!("{fewer} {word}{} fewer", plural(fewer)))
                }
                std::cmp::Ordering::Equal => None,
            }
        })
        .collect()
}
