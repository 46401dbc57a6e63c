//! Where the words of a piece stand: within its sewn line and clear of what is drawn on it.

use geometry::{Clear, Point, Rect, Vec2, bounds_of, largest_box, left_of};
use trade::Angle;

use crate::grid::{on_grid, on_grid_angle};
use crate::model::Piece;

/// How high the title is written on a drawing, in millimetres, and from one line to the next.
pub(crate) const LETTERS: f64 = 7.0;
pub(crate) const LEADING: f64 = 10.0;

/// A letter is about this wide, in heights.
const LETTER_WIDTH: f64 = 0.6;

/// How far letters reach below their line, in millimetres.
const DESCENT: f64 = 1.8;

/// Notes are written this much smaller than the title.
pub(crate) const NOTES: f64 = 0.75;

/// Kept clear round the words, in millimetres.
const CLEAR: f64 = 2.0;

/// Places looked at along each side of the piece.
const TRIES: usize = 14;

/// The least size of words as a share of the usual one, and the steps in which they become smaller.
const LEAST: f64 = 0.2;
const STEPS: u32 = 40;

/// Half the room kept clear about a drill hole, in millimetres.
const DRILL: f64 = 2.0;

/// Moves the words of a piece to the nearest place where they fit, along the grain or else across it.
/// Where they fit nowhere they go to where most of them does; [`letters`] then makes them smaller.
pub(crate) fn place_words(piece: &mut Piece) {
    let across = on_grid_angle(piece.words_along - Angle::deg(90.0));
    let words = block(piece);
    let ways = [piece.words_along, across].map(|along| (along, Ground::of(piece, along)));
    for (along, ground) in &ways {
        let fits = |at: &Point| ground.holds(*at, words, 1.0);
        let place = tries(piece.words_at, &ground.outline_as_drawn(), words, *along)
            .into_iter()
            .find(fits);
        if let Some(at) = place {
            (piece.words_at, piece.words_along) = (on_grid(at), *along);
            return;
        }
    }
    let size = Vec2::new(words.width(), words.height());
    let found = ways.iter().filter_map(|(along, ground)| {
        let found = largest_box(&ground.clear(), size, 1.0)?;
        Some((found, *along))
    });
    if let Some((found, along)) = found.max_by(|a, b| a.0.times.total_cmp(&b.0.times)) {
        let middle = words.center().to_vec2() * found.times;
        let at = turned((found.centre - middle).to_vec2().to_point(), along);
        (piece.words_at, piece.words_along) = (on_grid(at.to_point()), along);
    }
}

/// How large the words of a piece are, as a share of their usual size: as large as stands clear where
/// they are, and never too small to be found.
pub(crate) fn letters(piece: &Piece) -> f64 {
    let ground = Ground::of(piece, piece.words_along);
    let words = block(piece);
    let share = |step: u32| f64::from(step) / f64::from(STEPS);
    let fits = |step: &u32| ground.holds(piece.words_at, words, share(*step));
    // A smaller box lies within a larger one, for both begin at the same place.
    let (mut low, mut high) = (0, STEPS + 1);
    while high - low > 1 {
        let step = u32::midpoint(low, high);
        if fits(&step) { low = step } else { high = step }
    }
    share(low).max(LEAST)
}

/// What is drawn on a piece, turned so that its words run along x.
struct Ground {
    along: Angle,
    outline: Vec<Point>,
    lines: Vec<(Point, Point)>,
    boxes: Vec<Rect>,
}

impl Ground {
    fn of(piece: &Piece, along: Angle) -> Ground {
        let level = |p: &Point| turned(*p, -along).to_point();
        let sewn: Vec<Point> = piece.sewn.iter().flat_map(|s| &s.line).map(level).collect();
        let lines = piece.inner.iter().map(|inner| inner.line.clone());
        let ends = piece.grain.into_iter().chain(piece.mirror);
        let lines = lines.chain(ends.map(|(a, b)| vec![a, b]));
        let ends_of = |line: Vec<Point>| -> Vec<(Point, Point)> {
            line.windows(2)
                .map(|w| (level(&w[0]), level(&w[1])))
                .collect()
        };
        let drills = piece.drills.iter().map(|drill| level(&drill.at));
        Ground {
            along,
            outline: if sewn.len() > 2 {
                sewn
            } else {
                piece.cut.iter().map(level).collect()
            },
            lines: lines.flat_map(ends_of).collect(),
            boxes: drills
                .map(|at| Rect::from_center_size(at, (2.0 * DRILL, 2.0 * DRILL)))
                .collect(),
        }
    }

    fn clear(&self) -> Clear<'_> {
        Clear {
            outline: &self.outline,
            lines: &self.lines,
            boxes: &self.boxes,
        }
    }

    fn outline_as_drawn(&self) -> Vec<Point> {
        let back = |p: &Point| turned(*p, self.along).to_point();
        self.outline.iter().map(back).collect()
    }

    /// Whether words that begin at a place stand clear at a share of their size.
    fn holds(&self, at: Point, words: Rect, share: f64) -> bool {
        let middle = turned(at, -self.along) + words.center().to_vec2() * share;
        let size = Vec2::new(words.width(), words.height()) * share;
        self.clear().holds(middle.to_point(), size)
    }
}

/// The box of the words at their usual size, from where they begin: along them, and up.
fn block(piece: &Piece) -> Rect {
    let width = |words: &str, size: f64| words.chars().count() as f64 * size * LETTER_WIDTH;
    let widths = piece.notes.iter().map(|note| width(note, LETTERS * NOTES));
    let widest = widths.fold(width(&piece.title(), LETTERS), f64::max);
    let below = piece.notes.len() as f64 * LEADING + DESCENT;
    Rect::new(0.0, -below, widest, LETTERS).inflate(CLEAR, CLEAR)
}

/// Where the words may begin so that their middle lies somewhere on the piece, nearest first.
fn tries(at: Point, outline: &[Point], words: Rect, along: Angle) -> Vec<Point> {
    let bounds = bounds_of(outline);
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

/// A place turned about the origin.
fn turned(p: Point, along: Angle) -> Vec2 {
    let u = Vec2::from_angle(along.to_rad());
    u * p.x + left_of(u) * p.y
}
