//! The points of a pocket's stitching, measured from its inner top corner.

use geometry::tolerance::{ROUNDING_OF_SHARES, SAME_MM};
use geometry::{Affine, Path, Point};
use trade::Length;
use words::say;

use super::figure::Figure;
use super::notes::{lettered, letters};
use super::words::{system, unit_word};

/// Chords along which turning points are looked for, on the cloth.
const STEP: Length = Length::mm(0.4);
/// A line that turns by more than this within a millimetre and a half has a corner there.
const CORNER_RAD: f64 = 0.35;
const WINDOW: usize = 4;
/// Points nearer to one another than this are one.
const APART_MM: f64 = 3.0;
/// No line is given more points than this.
const MOST: usize = 12;

/// Marks start, end, crests, troughs and corners of every line with a letter, and lists in the key
/// how far across from the inner top corner and down from the top edge each lies.
pub(super) fn note_points(figure: &mut Figure<'_>, rows: &[usize], map: Affine) {
    let garment = figure.garment;
    let units = system(&garment.collection);
    let mut letters = letters();
    let mut said: Vec<String> = Vec::new();
    for index in rows {
        let Some(row) = garment.rows.get(*index) else {
            continue;
        };
        let mut line: Vec<String> = Vec::new();
        for p in turning(&row.path) {
            let Some(letter) = letters.next() else { break };
            let (across, down) = (Length::mm(p.x), Length::mm(-p.y));
            line.push(lettered(letter, across, down, units));
            figure.mark(map * p, letter);
        }
        if !line.is_empty() {
            said.push(line.join(", "));
        }
    }
    if !said.is_empty() {
        figure.remark(say::DrawnStitchingPoints {
            points: said.join("; "),
            unit: unit_word(units),
        });
    }
}

/// Start, end, highest and lowest places and corners of a line, in order.
pub(super) fn turning(path: &Path) -> Vec<Point> {
    let length = path.length().to_mm();
    if !(length.is_finite() && length < 1e5) {
        return Vec::new();
    }
    let points = geometry::resample(&path.dense(STEP), STEP);
    let n = points.len();
    if n < 2 {
        return Vec::new();
    }
    let mut out: Vec<Point> = vec![points[0]];
    let last = points[n - 1];
    let mut k = 1;
    while k + 1 < n {
        let (before, here, after) = (points[k - 1], points[k], points[k + 1]);
        let extreme = (here.y - before.y) * (after.y - here.y) < 0.0
            || (here.x - before.x) * (after.x - here.x) < 0.0;
        if extreme || sharpest_here(&points, k) {
            let apart = |p: Point| (p - here).hypot() > APART_MM;
            if out.last().is_none_or(|p| apart(*p)) && apart(last) {
                out.push(here);
            }
        }
        k += 1;
    }
    out.push(last);
    if (out[0] - last).hypot() < SAME_MM && out.len() > 2 {
        out.pop();
    }
    thinned(out)
}

/// Whether the line turns sharply here, and more than just before and after.
fn sharpest_here(points: &[Point], k: usize) -> bool {
    let turn = |k: usize| -> f64 {
        let before = k.checked_sub(WINDOW).and_then(|j| points.get(j));
        match (before, points.get(k), points.get(k + WINDOW)) {
            (Some(a), Some(b), Some(c)) => {
                let (u, v) = (*b - *a, *c - *b);
                u.cross(v).atan2(u.dot(v)).abs()
            }
            _ => 0.0,
        }
    };
    let here = turn(k);
    let near = (1..=WINDOW)
        .all(|d| here >= turn(k.saturating_sub(d)) && here > turn(k + d) - ROUNDING_OF_SHARES);
    here > CORNER_RAD && near
}

/// At most as many as a plate can letter, evenly chosen, ends kept.
fn thinned(points: Vec<Point>) -> Vec<Point> {
    let n = points.len();
    if n <= MOST {
        return points;
    }
    (0..MOST)
        .map(|k| points[k * (n - 1) / (MOST - 1)])
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wave_turns_at_its_crest_and_trough() {
        let wave = Path::cubic(
            Point::new(0.0, 0.0),
            Point::new(30.0, 60.0),
            Point::new(60.0, -60.0),
            Point::new(90.0, 0.0),
        );
        let points = turning(&wave);
        assert_eq!(points.len(), 4);
        // By symmetry about the middle of the curve.
        assert!((points[1].x + points[2].x - 90.0).abs() < 1.0);
        assert!((points[1].y + points[2].y).abs() < 0.5);
    }

    #[test]
    fn a_corner_is_a_point() {
        let bent = Path::polyline(&[
            Point::new(0.0, 0.0),
            Point::new(40.0, 10.0),
            Point::new(80.0, 40.0),
        ]);
        let points = turning(&bent);
        assert_eq!(points.len(), 3);
        assert!((points[1] - Point::new(40.0, 10.0)).hypot() < 0.6);
    }

    #[test]
    fn a_line_of_many_points_keeps_its_ends() {
        let zigzag: Vec<Point> = (0..60)
            .map(|k| Point::new(f64::from(k) * 5.0, if k % 2 == 0 { 0.0 } else { 9.0 }))
            .collect();
        let points = turning(&Path::polyline(&zigzag));
        assert_eq!(points.len(), MOST);
        assert_eq!(points[0], zigzag[0]);
        assert!((points[MOST - 1] - zigzag[59]).hypot() < 1e-6);
    }
}
