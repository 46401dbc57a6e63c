//! The outline a maker draws for a coin pocket, laid on the measures of the chart.

use geometry::tolerance::SAME_MM;
use geometry::{Affine, Path, Point};
use style::{DrawnLine, DrawnStep, Spot};
use trade::Length;

/// An outline that hangs down no further has no depth.
const SHALLOWEST_MM: f64 = 1e-3;

/// A drawn line as a path: a drawing's y runs down, a piece's up.
pub fn path_of(line: &DrawnLine) -> Path {
    let at = |spot: &Spot| Point::new(spot[0].to_mm(), -spot[1].to_mm());
    let mut from = at(&line.from);
    let mut segments = Vec::new();
    for step in &line.steps {
        let path = match step {
            DrawnStep::Straight(to) => Path::line(from, at(to)),
            DrawnStep::Curve(a, b, to) => Path::cubic(from, at(a), at(b), at(to)),
        };
        from = path.end();
        segments.extend_from_slice(path.segments());
    }
    Path::new(segments)
}

/// The drawn outline stretched so that its ends lie `width` apart on the x axis, either side of the
/// origin, and the place below the origin lies `depth` down: the inner corner first.
///
/// In three parts or more, so that there is a left side, a foot and a right side; `None` where the
/// line does not pass below its own middle.
pub(super) fn free_outline(line: &DrawnLine, width: Length, depth: Length) -> Option<Path> {
    let drawn = path_of(line);
    let (from, end) = (drawn.start(), drawn.end());
    let across = end.x - from.x;
    if !(across.is_finite() && across > SAME_MM) {
        return None;
    }
    // Ends at different heights are brought level by a shear, which keeps every width.
    let slope = (end.y - from.y) / across;
    let stretch = width.to_mm() / across;
    let middle = from.x + across / 2.0;
    let level = Affine::new([
        stretch,
        -slope,
        0.0,
        1.0,
        -middle * stretch,
        slope * from.x - from.y,
    ]);
    let wide = drawn.transformed(level);
    let deepest = wide
        .dense(Length::mm(0.2))
        .windows(2)
        .filter(|w| (w[0].x <= 0.0) != (w[1].x <= 0.0))
        .map(|w| {
            let share = w[0].x / (w[0].x - w[1].x);
            w[0].y + (w[1].y - w[0].y) * share
        })
        .fold(0.0, f64::min);
    if deepest > -SHALLOWEST_MM {
        return None;
    }
    let deep = wide.transformed(Affine::scale_non_uniform(1.0, -depth.to_mm() / deepest));
    Some(in_three(&deep))
}

/// The same line, cut where it comes a third of the way down and up again when it has fewer than
/// three parts.
fn in_three(outline: &Path) -> Path {
    if outline.segments().len() >= 3 {
        return outline.clone();
    }
    let long = outline.length();
    let (a, b) = (long / 3.0, long * (2.0 / 3.0));
    let parts = [(Length::ZERO, a), (a, b), (b, long)];
    let cut = parts.map(|(from, to)| outline.part(from, to));
    cut[0].then(&cut[1]).then(&cut[2])
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn spot(x: f64, y: f64) -> Spot {
        [Length::mm(x), Length::mm(y)]
    }

    fn drawn(from: Spot, steps: Vec<DrawnStep>) -> DrawnLine {
        DrawnLine {
            from,
            steps,
            closed: false,
        }
    }

    #[test]
    fn a_drawn_outline_takes_the_width_and_the_depth_of_the_chart() {
        let line = drawn(
            spot(10.0, 3.0),
            vec![
                DrawnStep::Straight(spot(14.0, 43.0)),
                DrawnStep::Curve(spot(20.0, 60.0), spot(40.0, 60.0), spot(46.0, 43.0)),
                DrawnStep::Straight(spot(50.0, 3.0)),
            ],
        );
        let outline = free_outline(&line, Length::mm(75.0), Length::mm(85.0)).unwrap();
        assert!((outline.start().x + 37.5).abs() < 1e-9);
        assert!((outline.end().x - 37.5).abs() < 1e-9);
        assert!(outline.start().y.abs() < 1e-9 && outline.end().y.abs() < 1e-9);
        assert!(
            (outline.bounds().y0 + 85.0).abs() < 0.01,
            "{:?}",
            outline.bounds()
        );
        assert_eq!(outline.segments().len(), 3);
    }

    #[test]
    fn one_curve_is_cut_in_three_and_a_slope_is_brought_level() {
        let line = drawn(
            spot(0.0, 0.0),
            vec![DrawnStep::Curve(
                spot(0.0, 80.0),
                spot(60.0, 80.0),
                spot(60.0, 6.0),
            )],
        );
        let outline = free_outline(&line, Length::mm(70.0), Length::mm(80.0)).unwrap();
        assert!(outline.segments().len() >= 3);
        assert!(outline.start().y.abs() < 1e-9 && outline.end().y.abs() < 1e-9);
    }

    #[test]
    fn a_line_that_is_no_pocket_gives_none() {
        let flat = drawn(spot(0.0, 0.0), vec![DrawnStep::Straight(spot(60.0, 0.0))]);
        assert!(free_outline(&flat, Length::mm(70.0), Length::mm(80.0)).is_none());
        let empty = drawn(spot(0.0, 0.0), Vec::new());
        assert!(free_outline(&empty, Length::mm(70.0), Length::mm(80.0)).is_none());
    }
}
