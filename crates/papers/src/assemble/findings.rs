//! What changed and what the checks found.

use std::cmp::Reverse;

use draft::{Finding, Place};
use geometry::{Path, Point};
use sewing::findings_of_run;
use style::{Collection, Subject};
use trade::{Length, System};
use words::{Given, Words, say};

use super::context::Context;
use super::words::capital;
use crate::letters::{letters, letters_elsewhere};
use crate::{Change, FindingRow, Pack, Severity};

/// Changes as the pack lists them: what each is about, what it was and what it is.
pub(super) fn changes(changes: &[style::Change], words: &Words, system: System) -> Vec<Change> {
    let row = |change: &style::Change| {
        let columns = change.columns(system);
        let put =
            |given: Option<&Given>| given.map_or_else(String::new, |given| words.putting(given));
        Change {
            about: capital(&words.putting(&columns.about)),
            before: put(columns.was.as_ref()),
            after: put(columns.is.as_ref()),
        }
    };
    changes.iter().map(row).collect()
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
    let found = letters_elsewhere(pack, context.loaded)?;
    Some(row(context, &found))
}

/// Why things are as they are, as far as the maker lets the workroom read it.
pub(super) fn why(context: &Context<'_>) -> Vec<(String, String)> {
    let told = context.loaded.style.why.iter().filter(|why| why.in_pack);
    let row = |why: &style::Why| {
        let about = by_name(&why.subject, &context.loaded.collection);
        (capital(&context.say.say(&about)), why.says.clone())
    };
    told.map(row).collect()
}

/// A finding as it is printed.
fn row(context: &Context<'_>, found: &Finding) -> FindingRow {
    let words = context.say;
    // Seams are printed by the names that files give them.
    let about = words
        .say(&by_name(&found.subject, &context.loaded.collection))
        .replace('_', " ");
    let message = capital(&found.message(words));
    FindingRow {
        severity: match found.severity {
            draft::Severity::Error => Severity::Error,
            draft::Severity::Warning => Severity::Warning,
            draft::Severity::Note => Severity::Note,
        },
        code: found.code.to_owned(),
        about: match found.size {
            Some(size) => {
                let size = size.to_string();
                words.say(say::PapersFoundAtSize { about, size })
            }
            None => about,
        },
        muted: found.muted(&context.shown.doc).is_some(),
        message: match found.muted(&context.shown.doc) {
            Some((_, muted)) => words.say(say::PapersFoundLeft {
                found: message,
                reason: muted.reason.as_str(),
            }),
            None => message + ".",
        },
        place: found
            .place
            .and_then(|place| place_words(context, place))
            .unwrap_or_default(),
        basis: found.source(words),
        remedy: found
            .remedy(words)
            .map(|remedy| capital(&remedy))
            .unwrap_or_default(),
    }
}

/// The same subject, with the name of a cloth, yarn or trim in place of its key in the collection.
pub(crate) fn by_name(subject: &Subject, collection: &Collection) -> Subject {
    let cloth = |key: &String| {
        let cloth = collection.cloths.get(key);
        cloth.map_or_else(|| key.clone(), |cloth| cloth.name.clone())
    };
    let yarn = |key: &String| {
        let yarn = collection.yarns.get(key);
        yarn.map_or_else(|| key.clone(), |yarn| yarn.name.clone())
    };
    let trim = |key: &String| {
        let trim = collection.trims.get(key);
        trim.map_or_else(|| key.clone(), |trim| trim.name.clone())
    };
    match subject {
        Subject::Cloth(key) => Subject::Cloth(cloth(key)),
        Subject::WashTest(key) => Subject::WashTest(cloth(key)),
        Subject::Shrinkage(key, along) => Subject::Shrinkage(cloth(key), *along),
        Subject::ClothSkew(key) => Subject::ClothSkew(cloth(key)),
        Subject::Yarn(key) => Subject::Yarn(yarn(key)),
        Subject::NeedleYarn(key) => Subject::NeedleYarn(yarn(key)),
        Subject::UnderYarn(key) => Subject::UnderYarn(yarn(key)),
        Subject::Trim(key) => Subject::Trim(trim(key)),
        Subject::Label(key) => Subject::Label(trim(key)),
        Subject::Rivet(key) => Subject::Rivet(trim(key)),
        Subject::ButtonholeFor(key) => Subject::ButtonholeFor(trim(key)),
        Subject::Part(_)
        | Subject::Measure(_)
        | Subject::Tolerance(_)
        | Subject::Seam(_)
        | Subject::Row(..)
        | Subject::Rows(..)
        | Subject::Piece(_)
        | Subject::LeftHalf(_)
        | Subject::RightHalf(_)
        | Subject::RivetOn(_)
        | Subject::Buttonhole(_)
        | Subject::Value(_)
        | Subject::Other(_) => subject.clone(),
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
    let words = context.say;
    let name = piece.id.words(words);
    Some(match point.map(|(_, id)| id) {
        Some(near) => words.say(say::PapersFoundAt {
            piece: name,
            point: near.words(words),
        }),
        None => match edge() {
            Some((_, edge)) => words.say(say::PapersFoundAlong {
                edge: edge.words(words),
                piece: name,
            }),
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
    #![allow(clippy::unwrap_used)]

    use super::*;
    use style::{ChangeKind, MeasureId, Size, Value};

    /// The thigh became wider, and the knee is measured no more.
    fn two_changes() -> [style::Change; 2] {
        let thigh = say::DifferenceMeasureValue {
            measure: MeasureId::Thigh.title(),
            size: "32x32",
        };
        let wider = style::Change {
            path: "chart.thigh.value".to_owned(),
            about: thigh.into(),
            part: None,
            kind: ChangeKind::Changed,
            was: Value::Length(Length::cm(62.2)),
            is: Value::Length(Length::cm(63.0)),
        };
        let gone = style::Change {
            path: "chart.knee".to_owned(),
            about: MeasureId::Knee.title().into(),
            kind: ChangeKind::TakenOut,
            was: Value::Charted(Length::cm(44.0), Size::new(32, 32)),
            is: Value::Nothing,
            ..wider.clone()
        };
        [wider, gone]
    }

    #[test]
    fn a_change_is_told_in_three_parts() {
        let told = changes(&two_changes(), Words::english(), System::Metric);
        assert_eq!(told[0].about, "Thigh at size 32x32");
        assert_eq!(told[0].before, "62.2 cm");
        assert_eq!(told[0].after, "63.0 cm (+0.8 cm)");
        assert_eq!(told[1].about, "Knee taken out of the chart");
        assert_eq!(told[1].before, "");
    }

    #[test]
    fn in_other_words_and_units_a_change_has_the_same_three_parts() {
        let other = [
            "difference-changed = { $was } | { $is } | { $about }",
            "difference-grew = { $by }, { $is }",
            "difference-measure-value = { $size }: { $measure } → ",
            "measure-title-thigh = coxa",
            "measure-title-knee = joelho",
            "difference-taken-out-of-chart = sem { $about }",
        ];
        let other = Words::of("pt", &[&other.join("\n")]).unwrap();
        let told = changes(&two_changes(), &other, System::Inch);
        assert_eq!(told[0].about, "32x32: coxa →");
        assert_eq!(told[0].before, "24.49 in");
        assert_eq!(told[0].after, "+0.31 in, 24.8 in");
        assert_eq!(told[1].about, "Sem joelho");
        assert_eq!((&*told[1].before, &*told[1].after), ("", ""));
    }
}
