//! The path data of SVG as points.

use geometry::tolerance::{NO_DIRECTION, NO_LENGTH_MM};
use geometry::{Affine, Path, Point, Vec2};
use svgtypes::{PathParser, PathSegment};
use trade::Length;

use crate::arcs;
use crate::grid::is_near;

/// How far a chord may lie from its curve, in millimetres.
const WITHIN: Length = Length::mm(0.01);

/// What is wrong with a path.
pub(super) enum Wrong {
    /// It cannot be understood from here on.
    Data(String),
    /// It reaches too far.
    Far,
    /// It has more points than this.
    Long,
}

/// A line and whether it is closed.
pub(super) type Run = (Vec<Point>, bool);

/// Draws along path data; places come out in millimetres of the sheet.
struct Pen {
    map: Affine,
    runs: Vec<Run>,
    /// In the path's own units: where it is, where the run began, and the last handle of a curve.
    at: Point,
    start: Point,
    cubic: Option<Point>,
    quadratic: Option<Point>,
    points: usize,
    most: usize,
}

/// The lines of path data, curves within a hundredth of a millimetre, of at most `most` points.
///
/// # Errors
/// Data that is no path, or one that is too long or too large.
pub(super) fn runs(data: &str, map: Affine, most: usize) -> Result<Vec<Run>, Wrong> {
    let mut pen = Pen {
        map,
        runs: Vec::new(),
        at: Point::ORIGIN,
        start: Point::ORIGIN,
        cubic: None,
        quadratic: None,
        points: 0,
        most,
    };
    for segment in PathParser::from(data) {
        pen.draw(segment.map_err(|why| Wrong::Data(why.to_string()))?)?;
    }
    Ok(pen.runs)
}

impl Pen {
    fn place(&self, abs: bool, x: f64, y: f64) -> Point {
        if abs {
            Point::new(x, y)
        } else {
            self.at + Vec2::new(x, y)
        }
    }

    /// Takes a place of the sheet into the run.
    fn put(&mut self, p: Point) -> Result<(), Wrong> {
        self.points += 1;
        if self.points > self.most {
            return Err(Wrong::Long);
        }
        if !is_near(p) {
            return Err(Wrong::Far);
        }
        match self.runs.last_mut() {
            Some((line, false)) => line.push(p),
            // After a closed run a new one begins where that began.
            _ => self.runs.push((vec![self.map * self.start, p], false)),
        }
        Ok(())
    }

    fn line_to(&mut self, to: Point) -> Result<(), Wrong> {
        self.put(self.map * to)?;
        self.at = to;
        Ok(())
    }

    fn curve(&mut self, a: Point, b: Point, to: Point) -> Result<(), Wrong> {
        let places = [self.at, a, b, to].map(|p| self.map * p);
        // Within reach a curve has only so many points; beyond, nobody knows.
        if !places.iter().all(|p| is_near(*p)) {
            return Err(Wrong::Far);
        }
        let [p0, p1, p2, p3] = places;
        let points = Path::cubic(p0, p1, p2, p3).flattened(WITHIN);
        for p in points.into_iter().skip(1) {
            self.put(p)?;
        }
        self.at = to;
        Ok(())
    }

    /// A curve with one handle is one whose two handles lie two thirds of the way to it.
    fn quadratic_curve(&mut self, a: Point, to: Point) -> Result<(), Wrong> {
        let from = self.at;
        self.curve(from.lerp(a, 2.0 / 3.0), to.lerp(a, 2.0 / 3.0), to)
    }

    fn draw(&mut self, segment: PathSegment) -> Result<(), Wrong> {
        let (mut cubic, mut quadratic) = (None, None);
        match segment {
            PathSegment::MoveTo { abs, x, y } => {
                let to = self.place(abs, x, y);
                let there = self.map * to;
                if !is_near(there) {
                    return Err(Wrong::Far);
                }
                self.points += 1;
                self.runs.push((vec![there], false));
                (self.at, self.start) = (to, to);
            }
            PathSegment::LineTo { abs, x, y } => self.line_to(self.place(abs, x, y))?,
            PathSegment::HorizontalLineTo { abs, x } => {
                let x = if abs { x } else { self.at.x + x };
                self.line_to(Point::new(x, self.at.y))?;
            }
            PathSegment::VerticalLineTo { abs, y } => {
                let y = if abs { y } else { self.at.y + y };
                self.line_to(Point::new(self.at.x, y))?;
            }
            PathSegment::CurveTo {
                abs,
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => {
                let (a, b) = (self.place(abs, x1, y1), self.place(abs, x2, y2));
                let to = self.place(abs, x, y);
                self.curve(a, b, to)?;
                cubic = Some(b);
            }
            PathSegment::SmoothCurveTo { abs, x2, y2, x, y } => {
                let a = self.at + (self.at - self.cubic.unwrap_or(self.at));
                let (b, to) = (self.place(abs, x2, y2), self.place(abs, x, y));
                self.curve(a, b, to)?;
                cubic = Some(b);
            }
            PathSegment::Quadratic { abs, x1, y1, x, y } => {
                let (a, to) = (self.place(abs, x1, y1), self.place(abs, x, y));
                self.quadratic_curve(a, to)?;
                quadratic = Some(a);
            }
            PathSegment::SmoothQuadratic { abs, x, y } => {
                let a = self.at + (self.at - self.quadratic.unwrap_or(self.at));
                let to = self.place(abs, x, y);
                self.quadratic_curve(a, to)?;
                quadratic = Some(a);
            }
            PathSegment::EllipticalArc {
                abs,
                rx,
                ry,
                x_axis_rotation,
                large_arc,
                sweep,
                x,
                y,
            } => {
                let to = self.place(abs, x, y);
                let turn = x_axis_rotation.to_radians();
                self.arc(Vec2::new(rx.abs(), ry.abs()), turn, (large_arc, sweep), to)?;
            }
            PathSegment::ClosePath { .. } => {
                if let Some(run) = self.runs.last_mut() {
                    run.1 = true;
                }
                self.at = self.start;
            }
        }
        (self.cubic, self.quadratic) = (cubic, quadratic);
        Ok(())
    }

    /// An arc of an ellipse between two places (SVG 2, appendix B.2.4: from end points to centre).
    fn arc(
        &mut self,
        radii: Vec2,
        turn: f64,
        (large, sweep): (bool, bool),
        to: Point,
    ) -> Result<(), Wrong> {
        let half = (self.at - to) / 2.0;
        let round = Affine::rotate(turn);
        let p = (round.inverse() * half.to_point()).to_vec2();
        if radii.x < NO_LENGTH_MM || radii.y < NO_LENGTH_MM || half.hypot() < NO_DIRECTION {
            return self.line_to(to);
        }
        // Radii too small to reach are made larger.
        let reach = (p.x / radii.x).powi(2) + (p.y / radii.y).powi(2);
        let radii = radii * reach.max(1.0).sqrt();
        let unit = Vec2::new(p.x / radii.x, p.y / radii.y);
        let left = ((1.0 - unit.hypot2()).max(0.0) / unit.hypot2()).sqrt();
        let side = if large == sweep { -left } else { left };
        let centre = Vec2::new(unit.y, -unit.x) * side;
        let (from, until) = (unit - centre, -unit - centre);
        let mut angle = from.cross(until).atan2(from.dot(until));
        if sweep && angle < 0.0 {
            angle += std::f64::consts::TAU;
        } else if !sweep && angle > 0.0 {
            angle -= std::f64::consts::TAU;
        }
        // The unit circle becomes the ellipse about the middle of the chord.
        let map = self.map
            * Affine::translate((self.at.midpoint(to)).to_vec2())
            * round
            * Affine::scale_non_uniform(radii.x, radii.y);
        let scale = radii.x.max(radii.y) * self.map.determinant().abs().sqrt();
        if !scale.is_finite() {
            return Err(Wrong::Far);
        }
        for p in arcs::arc(centre.to_point(), from, angle, scale) {
            self.put(map * p)?;
        }
        self.at = to;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use geometry::{area, polyline_length};

    fn one(data: &str) -> Run {
        let runs = runs(data, Affine::IDENTITY, 10_000).ok().unwrap();
        runs.into_iter().next().unwrap()
    }

    #[test]
    fn every_command_draws() {
        // A rounded square of 100 with corners of radius 20, by arcs one way and by curves the other.
        let (arcs, closed) = one(
            "m 20 0 h 60 a 20 20 0 0 1 20 20 v 60 A 20 20 0 0 1 80 100 H 20 \
                                  a 20 20 0 0 1 -20 -20 V 20 A 20 20 0 0 1 20 0 z",
        );
        assert!(closed);
        let expected = 10_000.0 - (4.0 - std::f64::consts::PI) * 400.0;
        assert!((area(&arcs).to_mm2() - expected).abs() < 1.0);
        let (curve, _) = one("M0 0 C 0 55.23 44.77 100 100 100 S 200 55.23 200 0");
        let half = std::f64::consts::PI * 100.0;
        assert!((polyline_length(&curve).to_mm() - half).abs() < 0.15);
        let (wave, _) = one("M0 0 Q 10 10 20 0 T 40 0");
        assert!(wave.iter().any(|p| (p.y + 5.0).abs() < 0.02));
    }

    #[test]
    fn a_large_arc_goes_the_long_way_and_small_radii_grow() {
        let (long, _) = one("M 0 0 A 10 10 0 1 1 10 10");
        let most = std::f64::consts::PI * 15.0;
        assert!((polyline_length(&long).to_mm() - most).abs() < 0.05);
        let (grown, _) = one("M 0 0 A 1 1 0 0 1 20 0");
        assert!((polyline_length(&grown).to_mm() - std::f64::consts::PI * 10.0).abs() < 0.05);
    }
}
