//! Dimension lines: a tape drawn beside what it measures, with arrow heads and a number in a circle.

use geometry::tolerance::{NO_LENGTH_MM, NO_SQUARE_MM2, ROUNDING};
use geometry::{BezPath, Nearest, Point, Rect, Straight, Vec2, left_of, polyline_length};
use trade::Length;

use crate::lettering::{Taken, centred};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, Pen, SEWN_LINE, TYPE_FIGURES};
use crate::sheet::{Layer, circle, closed, open};

/// Printed length of an arrow head, and half its breadth.
const HEAD_MM: f64 = 2.0;
const HALF_HEAD_MM: f64 = 0.5;
/// Printed radius of the circle round a number of up to two figures.
pub(crate) const CIRCLE_MM: f64 = 2.3;
/// Clear space kept round a circle.
const AROUND_MM: f64 = 0.5;
/// Extension lines start this far from the piece and end this far beyond the dimension line.
const EXTENSION_GAP_MM: f64 = 0.7;
const EXTENSION_BEYOND_MM: f64 = 0.9;
/// A path is never cut into more dashes than this, however long it claims to be.
const MOST_DASHES: f64 = 2000.0;

/// A filled arrow head with its tip at `tip`, pointing along `towards` (unit). Never longer than a
/// third of `room`, so that two fit on a short line.
pub fn arrow_head(layer: &mut Layer, pen: Pen, tip: Point, towards: Vec2, room: Length) {
    let long = pen.mm(HEAD_MM).min((room / 3.0).to_mm());
    let half = left_of(towards) * (long * HALF_HEAD_MM / HEAD_MM);
    let back = tip - towards * long;
    layer.area(None, closed(&[tip, back + half, back - half]), INK, None);
}

/// Long dashes with a dot between: where cloth is folded. Drawn as separate dashes, because a
/// stroke knows only one dash and one gap.
pub fn dash_dot(points: &[Point], pen: Pen) -> BezPath {
    let total = polyline_length(points).to_mm();
    let shrink = (total / pen.mm(6.0) / MOST_DASHES).max(1.0);
    let pattern = [3.6, 1.0, 0.4, 1.0].map(|mm| pen.mm(mm) * shrink);
    let mut path = BezPath::new();
    let (mut k, mut left) = (0, pattern[0]);
    for w in points.windows(2) {
        let long = (w[1] - w[0]).hypot();
        let Some(along) = unit(w[1] - w[0]) else {
            continue;
        };
        let mut done = 0.0;
        while done < long {
            let step = left.min(long - done);
            if k % 2 == 0 {
                path.move_to(w[0] + along * done);
                path.line_to(w[0] + along * (done + step));
            }
            done += step;
            left -= step;
            if left <= ROUNDING {
                k = (k + 1) % 4;
                left = pattern[k];
            }
        }
    }
    path
}

/// The unit vector, or `None` for one without direction.
pub fn unit(v: Vec2) -> Option<Vec2> {
    let n = v.hypot();
    (n > NO_LENGTH_MM && n.is_finite()).then(|| v / n)
}

/// A polyline moved sideways by `by` to its left. Where it curves more tightly than that, the part
/// that would double back is left out.
pub(crate) fn beside(points: &[Point], by: f64) -> Vec<Point> {
    let n = points.len();
    let normal = |k: usize| {
        let before = k.checked_sub(1).and_then(|j| unit(points[k] - points[j]));
        let after = points.get(k + 1).and_then(|next| unit(*next - points[k]));
        match (before, after) {
            (Some(a), Some(b)) => unit(a + b).or(Some(a)).map(|mean| {
                // At a corner the moved lines meet further out.
                left_of(mean) / left_of(mean).dot(left_of(a)).max(0.5)
            }),
            (a, b) => a.or(b).map(left_of),
        }
    };
    let moved: Vec<Point> = (0..n)
        .filter_map(|k| Some(points[k] + normal(k)? * by))
        .collect();
    let clear = by.abs() * 0.97;
    let last = moved.len().saturating_sub(1);
    moved
        .iter()
        .enumerate()
        .filter(|(k, p)| *k == 0 || *k == last || far_from(points, **p, clear))
        .map(|(_, p)| *p)
        .collect()
}

fn far_from(points: &[Point], p: Point, clear: f64) -> bool {
    points.windows(2).all(|w| {
        let away = Straight::between(w[0], w[1]).distance(p, NO_SQUARE_MM2);
        away.to_mm() >= clear
    })
}

/// One dimension: the lines a tape takes, and where the dimension is drawn beside them.
#[derive(Clone, Debug)]
pub(crate) struct Dimension {
    /// The number that names the measure.
    pub number: usize,
    /// What is measured, on the drawing: one run, or one on each of two panels.
    pub runs: Vec<Vec<Point>>,
    /// How far to the left of the runs the dimension lines stand, printed millimetres; negative to
    /// the right; nought when the tape lies on the cloth.
    pub beside_mm: f64,
}

/// Draws dimensions and then their numbers, so that numbers keep clear of every line.
#[derive(Debug, Default)]
pub(crate) struct Dimensions {
    drawn: Vec<(usize, Vec<Vec<Point>>)>,
}

impl Dimensions {
    /// Draws the lines of one dimension; its number follows with [`Dimensions::number`].
    pub fn line(&mut self, layer: &mut Layer, taken: &mut Taken, pen: Pen, dimension: &Dimension) {
        let mut lines = Vec::new();
        for run in &dimension.runs {
            let by = pen.mm(dimension.beside_mm);
            let line = if by == 0.0 {
                run.clone()
            } else {
                beside(run, by)
            };
            let (Some(&from), Some(&to)) = (line.first(), line.last()) else {
                continue;
            };
            if by != 0.0 {
                for (on, off) in [(run.first(), from), (run.last(), to)] {
                    extension(layer, taken, pen, on.copied().unwrap_or(off), off);
                }
            }
            layer.line(None, open(&line), pen.stroke(INK, SEWN_LINE));
            let room = polyline_length(&line).to_mm();
            let ends = [
                (from, line.get(1).map(|p| from - *p)),
                (to, line.len().checked_sub(2).map(|k| to - line[k])),
            ];
            for (tip, out) in ends {
                if let Some(out) = out.and_then(unit) {
                    head(layer, taken, pen, tip, out, room);
                }
            }
            taken.keep_clear_of(&line);
            lines.push(line);
        }
        // Two runs of one measure are tied by a thin dashed line: they are added up.
        for w in lines.windows(2) {
            if let Some((a, b)) = nearest_ends(&w[0], &w[1]) {
                layer.line(None, open(&[a, b]), pen.fine_dashes(CONSTRUCTION, HAIRLINE));
                taken.keep_clear_of(&[a, b]);
            }
        }
        self.drawn.push((dimension.number, lines));
    }

    /// Sets the number of every dimension drawn: on its line where there is room, else beside it
    /// with a leader. Short dimensions choose first, because long ones have more places.
    pub fn numbers(mut self, layer: &mut Layer, taken: &mut Taken, pen: Pen) {
        let length = |lines: &[Vec<Point>]| -> f64 {
            lines.iter().map(|l| polyline_length(l).to_mm()).sum()
        };
        self.drawn
            .sort_by(|a, b| length(&a.1).total_cmp(&length(&b.1)));
        for (number, lines) in &self.drawn {
            number_on(layer, taken, pen, *number, lines);
        }
    }
}

/// The head at one end. Where two would not fit between the ends they stand outside and point in.
fn head(layer: &mut Layer, taken: &mut Taken, pen: Pen, tip: Point, out: Vec2, room: f64) {
    if room > pen.mm(2.5 * HEAD_MM) {
        arrow_head(layer, pen, tip, out, Length::mm(room));
        taken
            .boxes
            .push(around(tip - out * pen.mm(1.0), pen.mm(0.8)));
    } else {
        let tail = [tip, tip + out * pen.mm(1.7 * HEAD_MM)];
        layer.line(None, open(&tail), pen.stroke(INK, SEWN_LINE));
        arrow_head(layer, pen, tip, -out, Length::mm(f64::INFINITY));
        taken.keep_clear_of(&tail);
        taken
            .boxes
            .push(around(tip + out * pen.mm(1.0), pen.mm(0.8)));
    }
}

fn around(p: Point, half: f64) -> Rect {
    Rect::new(p.x - half, p.y - half, p.x + half, p.y + half)
}

fn extension(layer: &mut Layer, taken: &mut Taken, pen: Pen, on: Point, off: Point) {
    let Some(out) = unit(off - on) else { return };
    let line = [
        on + out * pen.mm(EXTENSION_GAP_MM),
        off + out * pen.mm(EXTENSION_BEYOND_MM),
    ];
    layer.line(None, open(&line), pen.stroke(CONSTRUCTION, HAIRLINE));
    taken.keep_clear_of(&line);
}

fn nearest_ends(a: &[Point], b: &[Point]) -> Option<(Point, Point)> {
    let ends = |l: &[Point]| [l.first().copied(), l.last().copied()];
    let mut best: Option<(f64, Point, Point)> = None;
    for p in ends(a).into_iter().flatten() {
        for q in ends(b).into_iter().flatten() {
            let d = (q - p).hypot();
            if best.is_none_or(|(least, ..)| d < least) {
                best = Some((d, p, q));
            }
        }
    }
    best.map(|(_, p, q)| (p, q))
}

/// A place along a polyline and the direction there.
pub fn place_along(line: &[Point], share: f64) -> Option<(Point, Vec2)> {
    let mut left = polyline_length(line).to_mm() * share.clamp(0.0, 1.0);
    let mut last = None;
    for w in line.windows(2) {
        let Some(along) = unit(w[1] - w[0]) else {
            continue;
        };
        let long = (w[1] - w[0]).hypot();
        if left <= long {
            return Some((w[0] + along * left, along));
        }
        left -= long;
        last = Some((w[1], along));
    }
    last
}

const SHARES: [f64; 13] = [
    0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74, 0.2, 0.8, 0.14, 0.86,
];

fn number_on(layer: &mut Layer, taken: &mut Taken, pen: Pen, number: usize, lines: &[Vec<Point>]) {
    let radius = pen.mm(CIRCLE_MM);
    let size = 2.0 * (radius + pen.mm(AROUND_MM));
    // Its own line is no obstacle: the circle covers a stretch of it.
    let own: Vec<(Point, Point)> = lines
        .iter()
        .flat_map(|l| l.windows(2).map(|w| (w[0], w[1])))
        .collect();
    let others = taken.lines.clone();
    taken.lines.retain(|line| !own.contains(line));
    let roomy =
        |line: &&Vec<Point>| polyline_length(line).to_mm() > size + pen.mm(2.0 * HEAD_MM + 1.0);
    let on_line = lines
        .iter()
        .filter(roomy)
        .flat_map(|line| SHARES.iter().filter_map(|s| place_along(line, *s)))
        .map(|(p, _)| p);
    // Then round its middle and its ends, ever further out, square to it first.
    let off_line = (0..14).flat_map(|k| {
        let out = size * (0.75 + 0.25 * f64::from(k));
        lines.iter().flat_map(move |line| {
            [0.5, 0.25, 0.75, 0.0, 1.0].into_iter().flat_map(move |s| {
                place_along(line, s)
                    .into_iter()
                    .flat_map(move |(p, along)| {
                        [90.0_f64, -90.0, 45.0, -45.0, 135.0, -135.0, 0.0, 180.0].map(|turn| {
                            let (sin, cos) = turn.to_radians().sin_cos();
                            p + (along * cos + left_of(along) * sin) * out
                        })
                    })
            })
        })
    });
    let leader = |centre: Point| {
        let foot = nearest_on(lines, centre)?;
        ((centre - foot).hypot() > radius).then_some(foot)
    };
    let found = taken.place(Vec2::new(size, size), on_line.chain(off_line), leader);
    taken.lines = others;
    let Some(centre) = found else { return };
    if let Some(foot) = leader(centre)
        && let Some(out) = unit(centre - foot)
    {
        let line = [foot, centre - out * radius];
        layer.line(None, open(&line), pen.stroke(CONSTRUCTION, HAIRLINE));
        taken.keep_clear_of(&line);
    }
    layer.area(
        None,
        circle(centre, Length::mm(radius)),
        PAPER,
        Some(pen.stroke(INK, HAIRLINE)),
    );
    let mut words = centred(&number.to_string(), pen.length(TYPE_FIGURES), centre);
    words.bold = true;
    layer.text(None, words);
}

fn nearest_on(lines: &[Vec<Point>], p: Point) -> Option<Point> {
    let mut best: Option<Nearest> = None;
    for found in lines
        .iter()
        .filter_map(|line| geometry::nearest_on(line, p, NO_SQUARE_MM2))
    {
        if best.is_none_or(|least| found.away < least.away) {
            best = Some(found);
        }
    }
    best.map(|nearest| nearest.at)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_line_beside_a_tight_hollow_does_not_double_back() {
        // A hollow half circle of radius 10, walked so that its middle is on the left.
        let hollow: Vec<Point> = (0..=40)
            .map(|k| {
                Point::ORIGIN + Vec2::from_angle(std::f64::consts::PI * f64::from(k) / 40.0) * 10.0
            })
            .collect();
        let moved = beside(&hollow, 4.0);
        for p in &moved {
            assert!((p.to_vec2().hypot() - 6.0).abs() < 0.1, "{p:?}");
        }
        // Wider than the hollow: only the ends are left.
        assert_eq!(beside(&hollow, 15.0).len(), 2);
    }

    #[test]
    fn folds_are_drawn_dash_and_dot_to_the_end() {
        let path = dash_dot(&[Point::ORIGIN, Point::new(12.0, 0.0)], Pen::FULL);
        let moves = path
            .elements()
            .iter()
            .filter(|e| matches!(e, geometry::PathEl::MoveTo(_)))
            .count();
        // 3.6 + 1 + 0.4 + 1 = 6 mm a period, two periods.
        assert_eq!(moves, 4);
        let endless = [Point::ORIGIN, Point::new(1e12, 0.0)];
        assert!(dash_dot(&endless, Pen::FULL).elements().len() < 10_000);
    }

    #[test]
    fn numbers_of_crossing_dimensions_keep_apart() {
        let mut layer = Layer::named("dimensions");
        let mut taken = Taken::default();
        let mut dimensions = Dimensions::default();
        for (number, to) in [(1, Point::new(40.0, 0.0)), (2, Point::new(40.0, 1.0))] {
            let runs = vec![vec![Point::ORIGIN, to]];
            let one = Dimension {
                number,
                runs,
                beside_mm: 0.0,
            };
            dimensions.line(&mut layer, &mut taken, Pen::FULL, &one);
        }
        let before = taken.boxes.len();
        dimensions.numbers(&mut layer, &mut taken, Pen::FULL);
        let [a, b] = taken.boxes[before..] else {
            panic!("two numbers")
        };
        assert!(!a.overlaps(b));
    }
}
