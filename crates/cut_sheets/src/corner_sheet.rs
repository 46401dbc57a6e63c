//! One picture for each kind of corner: flat as it is cut, and beside it folded as it is sewn.

mod fold;
mod shown;

use cutting::{Corner, CornerKind, CutPiece, CutSize};
use drawing::lettering::{CAPITALS, text_width};
use drawing::palette::{HAIRLINE, INK, Pen, QUIET, TYPE_FIGURES, TYPE_HEADING, TYPE_WORDS};
use drawing::{Anchor, Layer, Sheet, Text, closed};
use geometry::tolerance::ROUNDING;
use geometry::{Point, Rect, Vec2};
use trade::Length;
use words::{Words, say};

use shown::Shown;

/// Side of a picture, printed.
const PICTURE_MM: f64 = 36.0;
/// Between pictures, and between pictures and words.
const BETWEEN_MM: f64 = 4.0;
/// Width of two pictures.
const CELL_MM: f64 = 2.0 * PICTURE_MM + BETWEEN_MM;
/// From one kind to the next beside it.
const ASIDE_MM: f64 = 16.0;
/// Width of the words of a kind.
const WORDS_MM: f64 = CELL_MM + 2.0;
/// Height of the line of words above a picture.
const HEAD_MM: f64 = 5.0;

/// Which rules show a kind best, the best first.
fn best_rules(kind: CornerKind) -> &'static [&'static str] {
    match kind {
        CornerKind::Full => &["together", "across", "bare", "hem-on-cloth-edge"],
        CornerKind::Squared => &["opened", "sharp"],
        CornerKind::Stepped => &["felled", "changes"],
        CornerKind::Mirrored => &["hem", "turned", "opened-sharp", "across-mirrored"],
    }
}

/// The corner of a size that shows a kind best.
fn corner_of(cut: &CutSize, kind: CornerKind) -> Option<(&CutPiece, &Corner)> {
    let all = || {
        let of = |piece: &'_ CutPiece| piece.corners.len();
        cut.pieces.iter().flat_map(move |piece| {
            (0..of(piece)).filter_map(move |k| Some((piece, piece.corners.get(k)?)))
        })
    };
    best_rules(kind).iter().find_map(|rule| {
        all().find(|(piece, corner)| {
            let wide = |id| piece.edge(id).is_some_and(|e| e.allowance.to_mm() > 1.0);
            corner.rule.key == *rule && (wide(corner.before) || wide(corner.after))
        })
    })
}

/// All kinds of corners a size has, on one sheet at its printed size: each flat and folded, with its
/// dimensions and why it is so.
pub fn corner_sheet(cut: &CutSize, say: &Words) -> Sheet {
    let mut layers = Vec::new();
    let mut words = Layer::named("words");
    let shown: Vec<Shown<'_>> = CornerKind::ALL
        .into_iter()
        .filter_map(|kind| corner_of(cut, kind))
        .filter_map(|(piece, corner)| Shown::of(piece, corner))
        .collect();
    let mut top = 0.0;
    for line in shown.chunks(2) {
        let mut foot: f64 = top;
        for (k, one) in line.iter().enumerate() {
            let at = Point::new((CELL_MM + ASIDE_MM) * k as f64, top);
            foot = foot.max(cell((&mut layers, &mut words), one, at, say));
        }
        top = foot + BETWEEN_MM;
    }
    layers.push(words);
    Sheet {
        title: say.corners_title(cut.size),
        origin: Point::new(-0.5, -0.5),
        width: Length::mm(CELL_MM + ASIDE_MM + WORDS_MM + 1.0),
        height: Length::mm((top - BETWEEN_MM).max(0.0) + 1.0),
        layers,
    }
}

/// One kind: two pictures and its words below them. Returns where it ends.
fn cell(
    (layers, words): (&mut Vec<Layer>, &mut Layer),
    shown: &Shown<'_>,
    at: Point,
    say: &Words,
) -> f64 {
    let top = at.y + HEAD_MM;
    let left = Rect::new(at.x, top, at.x + PICTURE_MM, top + PICTURE_MM);
    let right = left + Vec2::new(PICTURE_MM + BETWEEN_MM, 0.0);
    head(words, left, say.corners_flat());
    head(words, right, say.named(shown.folded_key()));
    layers.push(shown.flat(left));
    layers.push(shown.folded(right));
    for picture in [left, right] {
        words.line(None, frame(picture), Pen::FULL.stroke(QUIET, HAIRLINE));
    }
    shown.figures(words, left);
    told(
        words,
        shown,
        Point::new(at.x, left.y1 + BETWEEN_MM / 2.0),
        say,
    )
}

fn frame(r: Rect) -> geometry::BezPath {
    closed(&corners(r))
}

fn corners(r: Rect) -> [Point; 4] {
    [
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ]
}

fn head(layer: &mut Layer, picture: Rect, words: &str) {
    layer.text(
        None,
        Text {
            at: Point::new(picture.x0, picture.y0 - 1.4),
            words: words.to_owned(),
            size: TYPE_FIGURES,
            anchor: Anchor::Start,
            turn_deg: 0.0,
            colour: QUIET,
            bold: false,
        },
    );
}

/// What kind it is, where, and why. Returns where the words end.
fn told(layer: &mut Layer, shown: &Shown, at: Point, words: &Words) -> f64 {
    let mut letters = words.named(shown.corner.kind().key()).chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    let name: String = first.chain(letters).collect();
    let place = words.say(say::CornersPlace {
        after: shown.corner.after,
        before: shown.corner.before,
        piece: shown.piece.said(),
    });
    let scale = if (shown.scale - 1.0).abs() < ROUNDING {
        words.corners_true_size().to_owned()
    } else {
        words.corners_times(shown.scale)
    };
    let rule = shown.corner.rule;
    let mut y = at.y + CAPITALS * TYPE_HEADING.to_mm();
    let mut write = |words: &str, size: Length, bold: bool, before: f64| {
        y += before;
        for line in wrapped(words, size, WORDS_MM) {
            layer.text(
                None,
                Text {
                    at: Point::new(at.x, y),
                    words: line,
                    size,
                    anchor: Anchor::Start,
                    turn_deg: 0.0,
                    colour: INK,
                    bold,
                },
            );
            y += 1.35 * size.to_mm();
        }
    };
    write(&name, TYPE_HEADING, true, 0.0);
    write(&format!("{place}; {scale}"), TYPE_WORDS, false, 0.0);
    let when = words.corners_where(words.named(rule.when));
    write(&when, TYPE_WORDS, false, 0.6);
    let why = words.corners_why(words.named(rule.why));
    write(&why, TYPE_WORDS, false, 0.6);
    y
}

/// Words broken into lines of at most a width.
fn wrapped(words: &str, size: Length, wide: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if text_width(&format!("{line} {word}"), size).to_mm() <= wide => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{cut_out, words_stand_clear};
    use geometry::tolerance::NO_SQUARE_MM2;

    #[test]
    fn every_kind_is_shown_flat_and_folded() {
        let cut = cut_out(32, 32);
        let sheet = corner_sheet(&cut, Words::english());
        let count = |name: &str| sheet.layers.iter().filter(|l| l.name == name).count();
        assert_eq!((count("flat"), count("folded")), (4, 4));
        words_stand_clear(&sheet);
    }

    /// Where one edge is shaped so that it ends flush, the folded end lies on the piece, not beside it.
    #[test]
    fn a_folded_end_does_not_look_out() {
        let cut = cut_out(32, 32);
        for kind in [CornerKind::Squared, CornerKind::Mirrored] {
            let (piece, corner) = corner_of(&cut, kind).unwrap();
            let shown = Shown::of(piece, corner).unwrap();
            let [k] = shown.order()[..] else {
                panic!("one edge is shaped")
            };
            let line: Vec<Point> = corner
                .line
                .iter()
                .map(|p| {
                    let v = (*p - corner.at) * shown.scale;
                    Point::new(v.x, -v.y)
                })
                .collect();
            for fold in shown.folds(k) {
                for p in line.iter().filter(|p| fold.beyond(**p) > 0.1) {
                    let turned = *p - fold.out * (2.0 * fold.beyond(*p));
                    let ring: Vec<Point> =
                        shown.cut.iter().chain(shown.cut.first()).copied().collect();
                    let from = ring
                        .windows(2)
                        .map(|w| {
                            geometry::Straight::between(w[0], w[1])
                                .distance(turned, NO_SQUARE_MM2)
                                .to_mm()
                        })
                        .fold(f64::INFINITY, f64::min);
                    let inside = geometry::contains(&shown.cut, turned);
                    assert!(inside || from < 0.3 * shown.scale, "{kind:?}: {from}");
                }
            }
        }
    }

    #[test]
    fn words_are_broken_between_words() {
        let lines = wrapped("a longer sentence that has to be broken", TYPE_WORDS, 20.0);
        assert!(lines.len() > 2);
        assert_eq!(lines.join(" "), "a longer sentence that has to be broken");
    }
}
