//! Where the words of a piece stand: within its sewn line and clear of what is drawn on it.

use geometry::{Point, Rect, Vec2, contains, left_of, resample};
use trade::{Angle, Length};

use crate::grid::{on_grid, on_grid_angle};
use crate::model::Piece;
use crate::sheet::around;

/// How high the title is written on a drawing, in millimetres, and from one line to the next.
pub(crate) const LETTERS: f64 = 7.0;
pub(crate) const LEADING: f64 = 10.0;

/// A letter is about this wide, in heights.
const LETTER_WIDTH: f64 = 0.6;

/// Notes are written this much smaller than the title.
pub(crate) const NOTES: f64 = 0.75;

/// Kept clear round the words, in millimetres.
const CLEAR: f64 = 2.0;

/// Lines are looked at in steps of this.
const STEP: Length = Length::mm(3.0);

/// Places looked at along each side of the piece.
const TRIES: usize = 14;

/// Moves the words of a piece to the nearest place where they fit, along the grain or else across it; if
/// they fit nowhere, to where at least the title does.
pub(crate) fn place_words(piece: &mut Piece) {
    let outline: Vec<Point> = piece.sewn.iter().flat_map(|s| &s.line).copied().collect();
    let outline = if outline.len() > 2 {
        outline
    } else {
        piece.cut.clone()
    };
    let mut drawn = drawn_on(piece);
    let round: Vec<Point> = outline.iter().chain(outline.first()).copied().collect();
    drawn.extend(resample(&round, STEP));
    let across = on_grid_angle(piece.words_along - Angle::deg(90.0));
    for notes in [piece.notes.len(), 0] {
        let words = block(piece, notes);
        for along in [piece.words_along, across] {
            let fits = |at: &Point| stands_clear(*at, along, words, &outline, &drawn);
            if let Some(at) = tries(piece.words_at, &outline, words, along)
                .into_iter()
                .find(fits)
            {
                (piece.words_at, piece.words_along) = (on_grid(at), along);
                return;
            }
        }
    }
}

/// The box of the words, from where they begin: along them, and up.
fn block(piece: &Piece, notes: usize) -> Rect {
    let width = |words: &str, size: f64| words.chars().count() as f64 * size * LETTER_WIDTH;
    let notes = piece.notes.iter().take(notes);
    let widths = notes.clone().map(|note| width(note, LETTERS * NOTES));
    let widest = widths.fold(width(&piece.title(), LETTERS), f64::max);
    let below = notes.count() as f64 * LEADING;
    Rect::new(0.0, -below, widest, LETTERS).inflate(CLEAR, CLEAR)
}

/// What the words must not lie on.
fn drawn_on(piece: &Piece) -> Vec<Point> {
    let lines = piece.inner.iter().map(|inner| inner.line.clone());
    let ends = piece
        .grain
        .into_iter()
        .chain(piece.mirror)
        .map(|(a, b)| vec![a, b]);
    let drills = piece.drills.iter().map(|drill| drill.at);
    lines
        .chain(ends)
        .flat_map(|line| resample(&line, STEP))
        .chain(drills)
        .collect()
}

/// Where the words may begin so that their middle lies somewhere on the piece, nearest first.
fn tries(at: Point, outline: &[Point], words: Rect, along: Angle) -> Vec<Point> {
    let bounds = around(outline);
    let middle = turned(words.center(), along);
    let part = |k: usize| (k as f64 + 0.5) / TRIES as f64;
    let mut out = vec![at];
    for (i, j) in (0..TRIES).flat_map(|i| (0..TRIES).map(move |j| (i, j))) {
        let x = bounds.x0 + bounds.width() * part(i);
        let y = bounds.y0 + bounds.height() * part(j);
        out.push(Point::new(x, y) - middle);
    }
    out.sort_by(|a, b| (*a - at).hypot2().total_cmp(&(*b - at).hypot2()));
    out
}

/// From where the words begin to a place of their box.
fn turned(p: Point, along: Angle) -> Vec2 {
    let u = Vec2::from_angle(along.to_rad());
    u * p.x + left_of(u) * p.y
}

fn stands_clear(at: Point, along: Angle, words: Rect, outline: &[Point], drawn: &[Point]) -> bool {
    let u = Vec2::from_angle(along.to_rad());
    let on_words = |p: &Point| {
        let v = *p - at;
        words.contains(Point::new(v.dot(u), v.dot(left_of(u))))
    };
    let corners = [
        Point::new(words.x0, words.y0),
        Point::new(words.x1, words.y0),
        Point::new(words.x1, words.y1),
        Point::new(words.x0, words.y1),
    ];
    let within = corners
        .iter()
        .all(|c| contains(outline, at + turned(*c, along)));
    within && !drawn.iter().any(on_words)
}
