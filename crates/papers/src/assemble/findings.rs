//! What changed and what the checks found.

use std::cmp::Reverse;

use draft::{Finding, Place};
use geometry::{Path, Point};
use sewing::findings_of_run;
use trade::Length;
use words::Words;

use super::Context;
use super::words::capital;
use crate::letters::{letters, letters_elsewhere};
use crate::{Change, FindingRow, Pack, Severity};

/// A change told as "about: before → after" in its three parts; one told otherwise as a whole.
pub(super) fn changes(changes: &[style::Change]) -> Vec<Change> {
    changes
        .iter()
        .map(|change| {
            let parts = change
                .sentence
                .split_once(": ")
                .and_then(|(about, rest)| Some((about, rest.split_once(" → ")?)));
            match parts {
                Some((about, (before, after))) => Change {
                    about: capital(about),
                    before: before.to_owned(),
                    after: after.to_owned(),
                },
                None => Change {
                    about: capital(&change.sentence),
                    ..Change::default()
                },
            }
        })
        .collect()
}

/// The findings of every size, each once, the gravest first.
pub(super) fn findings(context: &Context<'_>) -> Vec<FindingRow> {
    let mut all = findings_of_run(context.run);
    all.extend(letters(context.loaded));
    all.sort_by_key(|found| Reverse(found.severity));
    all.iter().map(|found| row(context, found)).collect()
}

/// What a filled pack cannot print beyond the fields of its style.
pub(super) fn unprintable(context: &Context<'_>, pack: &Pack) -> Option<FindingRow> {
    let found = letters_elsewhere(pack, &letters(context.loaded))?;
    Some(row(context, &found))
}

/// A finding as it is printed.
fn row(context: &Context<'_>, found: &Finding) -> FindingRow {
    FindingRow {
        severity: match found.severity {
            draft::Severity::Error => Severity::Error,
            draft::Severity::Warning => Severity::Warning,
            draft::Severity::Note => Severity::Note,
        },
        code: found.code.to_owned(),
        about: match found.size {
            Some(size) => format!("{}, size {size}", found.about.replace('_', " ")),
            None => found.about.replace('_', " "),
        },
        message: match found.muted(&context.shown.doc) {
            Some((_, muted)) => format!(
                "{}. Left so by the maker: {}",
                capital(&found.message),
                muted.reason
            ),
            None => capital(&found.message) + ".",
        },
        place: found
            .place
            .and_then(|place| place_words(context, place))
            .unwrap_or_default(),
        remedy: found.remedy.as_deref().map(capital).unwrap_or_default(),
    }
}

/// A named point or edge no farther than this says where on a piece something is.
const NEAR_POINT_MM: f64 = 30.0;
const NEAR_EDGE_MM: f64 = 12.0;

/// "Back, at the crotch"; the piece alone where nothing named is near.
fn place_words(context: &Context<'_>, place: Place) -> Option<String> {
    let piece = context.shown.pattern.piece(place.piece)?;
    let point = piece
        .points
        .iter()
        .map(|point| ((point.at - place.at).hypot(), point.id))
        .filter(|(away, _)| *away <= NEAR_POINT_MM)
        .min_by(|a, b| a.0.total_cmp(&b.0));
    let edge = || {
        piece
            .edges
            .iter()
            .map(|edge| (away(&edge.path, place.at), edge.id))
            .filter(|(away, _)| *away <= NEAR_EDGE_MM)
            .min_by(|a, b| a.0.total_cmp(&b.0))
    };
    let (name, words) = (piece.id.name(), Words::english());
    Some(match point.map(|(_, id)| id) {
        Some(near) => format!("{name}, at {}", near.words(words)),
        None => match edge() {
            Some((_, edge)) => format!("{name}, along {}", edge.words(words)),
            None => name.to_owned(),
        },
    })
}

/// How far a point is from a path, in millimetres, to the nearest of its points at this step.
fn away(path: &Path, from: Point) -> f64 {
    path.dense(Length::mm(2.0))
        .into_iter()
        .map(|at| (at - from).hypot())
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_is_told_in_three_parts() {
        let change = |sentence: &str| style::Change {
            path: "chart.thigh.value".to_owned(),
            sentence: sentence.to_owned(),
        };
        let told = changes(&[
            change("thigh at size 32x32: 62.2 cm → 63.0 cm (+0.8 cm)"),
            change("knee taken out of the chart"),
        ]);
        assert_eq!(told[0].about, "Thigh at size 32x32");
        assert_eq!(told[0].before, "62.2 cm");
        assert_eq!(told[0].after, "63.0 cm (+0.8 cm)");
        assert_eq!(told[1].about, "Knee taken out of the chart");
        assert_eq!(told[1].before, "");
    }
}
