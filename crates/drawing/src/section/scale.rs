//! From the millimetres of a section to those of the page: one scale both ways, and a stretch of
//! cloth left out where nothing happens.

use geometry::Point;
use geometry::tolerance::ROUNDING;

use super::model::{End, Section};

/// A stretch longer than this between two things to see is shortened.
const LONG: f64 = 11.0;
/// Sections no wider than this are drawn whole.
const WHOLE: f64 = 44.0;
/// Cloth kept on each side of what is left out.
const KEPT: f64 = 4.0;
/// Room the break itself takes, millimetres of cloth.
const BREAK: f64 = 1.4;

/// Threads around a cut edge take this much room beyond it.
const AROUND: f64 = 1.4;

/// The map to the page.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    pub times: f64,
    /// Page place of the seam line at the innermost height of the cloth.
    pub zero: Point,
    /// What is left out, between two places.
    pub cut: Option<(f64, f64)>,
}

impl Scale {
    /// How far cloth to the left of the break moves to the right.
    pub fn moved(&self) -> f64 {
        self.cut.map_or(0.0, |(from, to)| to - from - BREAK)
    }

    pub fn at(&self, p: Point) -> Point {
        let left_out = self.cut.is_some_and(|(from, _)| p.x < from + ROUNDING);
        let x = if left_out { p.x + self.moved() } else { p.x };
        self.right(Point::new(x, p.y))
    }

    /// A place of the part to the right of the break.
    pub fn right(&self, p: Point) -> Point {
        Point::new(
            self.zero.x + p.x * self.times,
            self.zero.y - p.y * self.times,
        )
    }

    /// A place of the part to the left of the break.
    pub fn left(&self, p: Point) -> Point {
        self.right(Point::new(p.x + self.moved(), p.y))
    }

    pub fn mm(&self, mm: f64) -> f64 {
        mm * self.times
    }
}

/// The longest stretch where nothing happens, less what is kept of it, on a wide section.
pub(super) fn cut(section: &Section) -> Option<(f64, f64)> {
    let (x0, x1, ..) = extent(section)?;
    if x1 - x0 <= WHOLE {
        return None;
    }
    let mut places: Vec<f64> = vec![0.0];
    for ply in &section.plies {
        let last = ply.corners.len().saturating_sub(1);
        for (k, corner) in ply.corners.iter().enumerate() {
            let goes_on =
                (k == 0 && ply.ends.0 == End::GoesOn) || (k == last && ply.ends.1 == End::GoesOn);
            if !goes_on {
                places.push(corner.at.x);
            }
        }
    }
    for row in &section.rows {
        places.extend([row.from.x, row.to.x]);
        places.extend(row.wrap.iter().flat_map(|w| [w.needle, w.edge]));
    }
    places.sort_by(f64::total_cmp);
    let longest = places
        .windows(2)
        .map(|w| (w[0], w[1]))
        .max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))?;
    (longest.1 - longest.0 > LONG).then_some((longest.0 + KEPT, longest.1 - KEPT))
}

/// Least and greatest x and y of the cloth and of the threads around its edges.
pub(super) fn extent(section: &Section) -> Option<(f64, f64, f64, f64)> {
    let cloth = section.plies.iter().flat_map(|ply| ply.outline());
    let around = section.rows.iter().filter_map(|row| {
        let wrap = row.wrap?;
        let out = (wrap.edge - wrap.needle).signum();
        Some(Point::new(wrap.edge + out * AROUND, row.to.y))
    });
    let points = cloth.chain(around);
    let mut found: Option<(f64, f64, f64, f64)> = None;
    for p in points {
        let (x0, x1, y0, y1) = found.unwrap_or((p.x, p.x, p.y, p.y));
        found = Some((x0.min(p.x), x1.max(p.x), y0.min(p.y), y1.max(p.y)));
    }
    found.filter(|(x0, x1, y0, y1)| [x0, x1, y0, y1].iter().all(|v| v.is_finite()))
}
