//! Where findings lie on the drawing of the pair.
//!
//! A finding has its place in the frame of a piece, and only a view knows where its pieces lie. So each place is drawn
//! once more as a small fixing of its own, and the mark of it taken out of the sheet again.

use draft::Severity;
use drawing::{Shape, Sheet, View, garment_view};
use sewing::{Face, Fixing, FixingKind, Garment, On, Origin, placed};
use trade::{Colour, Length};
use words::Words;

/// What the places are called while they are drawn; no trim of a collection has a colon in its name.
const NAME: &str = "finding:";
/// As small as a point, so that the sheet grows no larger.
const POINT: Length = Length::mm(0.001);
/// Marks nearer to each other than this, in millimetres, are moved apart so that each can be read.
const APART_MM: f64 = 34.0;

/// The number of a finding, at its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Mark {
    /// Its number in the list, from 1.
    pub(crate) number: usize,
    pub(crate) severity: Severity,
    /// The place, in millimetres of the drawing.
    pub(crate) at: (f64, f64),
    /// Where its number is written: at the place, or beside it where another number is.
    pub(crate) number_at: (f64, f64),
}

/// The view, and the places of findings that it shows.
pub(crate) fn marked_view(
    say: &Words,
    garment: &Garment,
    view: View,
    face: Face,
) -> (Sheet, Vec<Mark>) {
    let mut with_places = garment.clone();
    for (index, finding) in garment.findings.iter().enumerate() {
        let Some(place) = finding.place else { continue };
        let Some(like) = garment.fixings.first() else {
            continue;
        };
        with_places.fixings.push(Fixing {
            kind: FixingKind::Rivet(POINT),
            piece: place.piece,
            // What is set on one side has its number there.
            on: placed(&garment.pattern, place.piece).map_or(On::Both, |placed| placed.on),
            at: place.at,
            outside: true,
            inside: true,
            colour: Colour::BLACK,
            from: Origin::Trim(format!("{NAME}{}", index + 1)),
            ..like.clone()
        });
    }
    let mut sheet = garment_view(&with_places, view, face, say);
    let mut marks: Vec<Mark> = Vec::new();
    for layer in &mut sheet.layers {
        layer.marks.retain(|mark| {
            let part = mark.part.as_deref().unwrap_or_default();
            let Some(number) = number_of(part) else {
                return true;
            };
            let severity = garment.findings.get(number - 1).map(|found| found.severity);
            if let (Some(at), Some(severity)) = (middle(&mark.shape), severity)
                && marks.iter().all(|known| known.number != number)
            {
                marks.push(Mark {
                    number,
                    severity,
                    at,
                    number_at: at,
                });
            }
            false
        });
    }
    sheet.layers.retain(|layer| !layer.marks.is_empty());
    marks.sort_by_key(|mark| mark.number);
    spread(&mut marks);
    (sheet, marks)
}

/// The number of the finding whose place a part stands for.
fn number_of(part: &str) -> Option<usize> {
    let number: usize = part
        .strip_prefix("fixing:")?
        .strip_prefix(NAME)?
        .parse()
        .ok()?;
    (number > 0).then_some(number)
}

/// The middle of a small round shape: the mean of where its curves end.
fn middle(shape: &Shape) -> Option<(f64, f64)> {
    let (Shape::Area { path, .. } | Shape::Line { path, .. }) = shape else {
        return None;
    };
    // The first element only moves to where the last curve ends.
    let ends = path.elements().iter().skip(1);
    let ends: Vec<_> = ends.filter_map(|element| element.end_point()).collect();
    let count = ends.len() as f64;
    let sum = |value: fn((f64, f64)) -> f64| ends.iter().map(|p| value((p.x, p.y))).sum::<f64>();
    let at = (sum(|p| p.0) / count, sum(|p| p.1) / count);
    (at.0.is_finite() && at.1.is_finite()).then_some(at)
}

/// Moves numbers that lie on each other apart, downwards, the first stays where it is.
fn spread(marks: &mut [Mark]) {
    for index in 0..marks.len() {
        let (before, rest) = marks.split_at_mut(index);
        let Some(mark) = rest.first_mut() else { return };
        let close = |at: (f64, f64)| {
            before.iter().find(|other| {
                let (x, y) = other.number_at;
                (x - at.0).hypot(y - at.1) < APART_MM
            })
        };
        // Each step passes one of the earlier numbers, so there are no more steps than these.
        for _ in 0..before.len() {
            match close(mark.number_at) {
                Some(other) => {
                    let x = other.number_at.0 - mark.number_at.0;
                    let down = (APART_MM * APART_MM - x * x).max(0.0).sqrt();
                    mark.number_at.1 = other.number_at.1 + down + 0.01;
                }
                None => break,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use draft::{Finding, PieceId, Place};

    /// The x of the number of a finding about the middle of a piece.
    fn numbered(piece: PieceId, view: View, face: Face) -> f64 {
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        let loaded = style::load(folder.as_ref()).unwrap();
        let mut garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
        let edges = &garment.pattern.piece(piece).unwrap().edges;
        let ends: Vec<_> = edges.iter().map(|edge| edge.path.start()).collect();
        let (first, rest) = ends.split_first().unwrap();
        let sum = rest
            .iter()
            .fold(first.to_vec2(), |sum, p| sum + p.to_vec2());
        let at = (sum / ends.len() as f64).to_point();
        let found = Finding::new(
            "test::here",
            Severity::Note,
            piece,
            words::key::SOURCE_COMMON_PRACTICE,
            words::key::SOURCE_COMMON_PRACTICE,
        );
        garment.findings = vec![found.at(Place { piece, at })];
        let (_, marks) = marked_view(Words::english(), &garment, view, face);
        marks.first().unwrap().at.0
    }

    /// The demo's coin pocket is on the wearer's right, which is on the left of whoever looks at a person, and on the
    /// right of whoever looks at the pair turned out.
    #[test]
    fn a_number_lies_on_the_side_of_what_it_is_about() {
        for (piece, view, outside) in [
            (PieceId::CoinPocket, View::Front, -1.0),
            (PieceId::ExtraPocket, View::Front, 1.0),
            (PieceId::BackPocketLeft, View::Back, -1.0),
            (PieceId::BackPocketRight, View::Back, 1.0),
        ] {
            let x = numbered(piece, view, Face::Outside);
            assert!(x * outside > 0.0, "{piece:?} outside at {x}");
            let x = numbered(piece, view, Face::Inside);
            assert!(x * outside < 0.0, "{piece:?} inside at {x}");
        }
    }

    #[test]
    fn numbers_on_one_place_are_moved_apart() {
        let mark = |number, at| Mark {
            number,
            severity: Severity::Note,
            at,
            number_at: at,
        };
        let mut marks = [
            mark(1, (0.0, 0.0)),
            mark(2, (0.0, 1.0)),
            mark(3, (5.0, 0.0)),
            mark(4, (500.0, 0.0)),
        ];
        spread(&mut marks);
        for (index, one) in marks.iter().enumerate() {
            for other in marks.iter().skip(index + 1) {
                let (a, b) = (one.number_at, other.number_at);
                assert!(
                    (a.0 - b.0).hypot(a.1 - b.1) >= APART_MM,
                    "{one:?} {other:?}"
                );
            }
        }
        assert_eq!(marks.first().map(|mark| mark.number_at), Some((0.0, 0.0)));
        assert_eq!(marks.last().map(|mark| mark.number_at), Some((500.0, 0.0)));
    }

    #[test]
    fn only_places_of_findings_have_a_number() {
        assert_eq!(number_of("fixing:finding:12"), Some(12));
        for part in [
            "fixing:finding:0",
            "fixing:rivet-9",
            "seam:inseam",
            "fixing:finding:",
        ] {
            assert_eq!(number_of(part), None, "{part}");
        }
    }
}
