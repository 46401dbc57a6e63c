//! Pieces given as a half, opened over the line they are mirrored on.

use geometry::{Point, Vec2, left_of, unit};
use patterns::{Drill, InnerLine, Notch, Piece, SewLine, TurnPoint};
use trade::Angle;

/// What lies nearer than this to the mirror line lies on it: files from elsewhere round.
const ON_LINE_MM: f64 = 0.1;

/// The line over which a half is mirrored.
#[derive(Clone, Copy)]
struct Mirror {
    at: Point,
    along: Vec2,
}

/// The whole piece, where a half is given; `None` where its mirror line is no part of its outline, for such a line
/// only says that the piece is alike on both sides.
pub(crate) fn opened(piece: &Piece) -> Option<Piece> {
    let (a, b) = piece.mirror?;
    let mirror = Mirror {
        at: a,
        along: unit(b - a),
    };
    if mirror.along == Vec2::ZERO {
        return None;
    }
    let cut = mirror.ring(&piece.cut)?;
    let starts = piece.edge_starts.iter().map(|start| TurnPoint {
        name: start.name.clone(),
        at: start.at,
        corner: true,
    });
    let points: Vec<TurnPoint> = piece.points.iter().cloned().chain(starts).collect();
    Some(Piece {
        cut,
        sewn: piece.sewn.iter().flat_map(|s| mirror.sewn(s)).collect(),
        // A named stretch would run on over the half that the file does not hold; where it began stays a corner.
        edge_starts: Vec::new(),
        points: mirror.both(
            &points,
            |p| p.at,
            |p| TurnPoint {
                name: String::new(),
                at: mirror.of(p.at),
                corner: p.corner,
            },
        ),
        mirror: None,
        inner: piece.inner.iter().flat_map(|l| mirror.inner(l)).collect(),
        cutouts: {
            let away = piece.cutouts.iter().map(|ring| mirror.reversed(ring));
            piece.cutouts.iter().cloned().chain(away).collect()
        },
        notches: mirror.both(
            &piece.notches,
            |n| n.at,
            |n| Notch {
                at: mirror.of(n.at),
                into: mirror.turned(n.into),
                ..n.clone()
            },
        ),
        drills: mirror.both(
            &piece.drills,
            |d| d.at,
            |d| Drill {
                at: mirror.of(d.at),
                ..d.clone()
            },
        ),
        ..piece.clone()
    })
}

impl Mirror {
    /// How far a place lies to the left of the line.
    fn side(self, p: Point) -> f64 {
        left_of(self.along).dot(p - self.at)
    }

    fn is_on(self, p: Point) -> bool {
        self.side(p).abs() <= ON_LINE_MM
    }

    fn of(self, p: Point) -> Point {
        p - left_of(self.along) * (2.0 * self.side(p))
    }

    /// The place of the line that is nearest.
    fn snapped(self, p: Point) -> Point {
        p - left_of(self.along) * self.side(p)
    }

    fn turned(self, angle: Angle) -> Angle {
        Angle::rad(2.0 * self.along.atan2() - angle.to_rad())
    }

    /// A line mirrored, its end first, so that a ring still runs the same way round.
    fn reversed(self, line: &[Point]) -> Vec<Point> {
        line.iter().rev().map(|p| self.of(*p)).collect()
    }

    /// Everything, and the mirror image of what does not lie on the line.
    fn both<T: Clone>(
        self,
        all: &[T],
        at: impl Fn(&T) -> Point,
        image: impl Fn(&T) -> T,
    ) -> Vec<T> {
        let images = all.iter().filter(|one| !self.is_on(at(one))).map(image);
        all.iter().cloned().chain(images).collect()
    }

    /// A ring that lies to one side of the line and along it in one stretch, with its mirror image in place of that
    /// stretch.
    fn ring(self, ring: &[Point]) -> Option<Vec<Point>> {
        let left = ring.iter().any(|p| self.side(*p) > ON_LINE_MM);
        let right = ring.iter().any(|p| self.side(*p) < -ON_LINE_MM);
        if left == right {
            return None;
        }
        let n = ring.len();
        let on = |k: usize| ring.get(k % n).is_some_and(|p| self.is_on(*p));
        let mut leaving = (0..n).filter(|k| on(*k) && !on(k + 1));
        let (from, other) = (leaving.next()?, leaving.next());
        let to = (1..n).map(|k| from + k).find(|k| on(*k))?;
        // Left at two places, or touched in one: the line is no edge of it.
        if other.is_some() || to % n == from {
            return None;
        }
        let half: Vec<Point> = ring
            .iter()
            .cycle()
            .skip(from)
            .take(to - from + 1)
            .copied()
            .collect();
        Some(self.joined(&half, true))
    }

    /// A line that ends on the mirror line and goes on as its own image; `back` where it also begins there.
    fn joined(self, half: &[Point], back: bool) -> Vec<Point> {
        let last = half.len().saturating_sub(1);
        let meets = |k: usize| k == last || (back && k == 0);
        let own = half.iter().enumerate();
        let mut out: Vec<Point> = own
            .map(|(k, p)| if meets(k) { self.snapped(*p) } else { *p })
            .collect();
        let image = half.iter().enumerate().rev().filter(|(k, _)| !meets(*k));
        out.extend(image.map(|(_, p)| self.of(*p)));
        out
    }

    /// A line with its image: one line where they meet, two where they do not, none where it lies along the mirror.
    fn line(self, line: &[Point]) -> Opened {
        let ends = (line.first(), line.last());
        let on = |p: Option<&Point>| p.is_some_and(|p| self.is_on(*p));
        if line.iter().all(|p| self.is_on(*p)) {
            return Opened::Gone;
        }
        match (on(ends.0), on(ends.1)) {
            (true, true) => Opened::Ring(self.joined(line, true)),
            (false, true) => Opened::One(self.joined(line, false)),
            (true, false) => {
                let turned: Vec<Point> = line.iter().rev().copied().collect();
                let mut one = self.joined(&turned, false);
                one.reverse();
                Opened::One(one)
            }
            (false, false) => Opened::Two(line.to_vec(), self.reversed(line)),
        }
    }

    fn sewn(self, sewn: &SewLine) -> Vec<SewLine> {
        let of = |name: &str, closed, line| SewLine {
            name: name.to_owned(),
            closed,
            line,
        };
        if sewn.closed {
            let whole = self.ring(&sewn.line).unwrap_or_else(|| sewn.line.clone());
            return vec![of(&sewn.name, true, whole)];
        }
        match self.line(&sewn.line) {
            Opened::Gone => Vec::new(),
            Opened::Ring(line) => vec![of(&sewn.name, true, line)],
            Opened::One(line) => vec![of(&sewn.name, false, line)],
            // The names of edges are unique in a piece.
            Opened::Two(own, image) => vec![of(&sewn.name, false, own), of("", false, image)],
        }
    }

    fn inner(self, inner: &InnerLine) -> Vec<InnerLine> {
        let of = |line: Vec<Point>| InnerLine {
            line,
            ..inner.clone()
        };
        match self.line(&inner.line) {
            // A fold along the mirror line is still a line of the whole piece.
            Opened::Gone => vec![inner.clone()],
            Opened::Ring(mut line) => {
                line.extend(line.first().copied());
                vec![of(line)]
            }
            Opened::One(line) => vec![of(line)],
            Opened::Two(own, image) => vec![of(own), of(image)],
        }
    }
}

/// What becomes of a line.
enum Opened {
    /// It lay along the mirror line.
    Gone,
    /// It goes all round; the first point is not repeated.
    Ring(Vec<Point>),
    /// One line over both halves.
    One(Vec<Point>),
    /// A line in each half.
    Two(Vec<Point>, Vec<Point>),
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use geometry::{area, contains};
    use proptest::prelude::*;

    fn places(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|p| Point::new(p.0, p.1)).collect()
    }

    /// Half a pocket, mirrored on the line x = 50.
    fn half() -> Piece {
        Piece {
            name: "pocket".to_owned(),
            cut: places(&[(50.0, 0.0), (50.0, 80.0), (0.0, 70.0), (5.0, 20.0)]),
            sewn: vec![
                SewLine {
                    name: "mouth".to_owned(),
                    closed: false,
                    line: places(&[(50.0, 75.0), (5.0, 66.0)]),
                },
                SewLine {
                    name: "side".to_owned(),
                    closed: false,
                    line: places(&[(5.0, 66.0), (10.0, 22.0)]),
                },
            ],
            mirror: Some((Point::new(50.0, -10.0), Point::new(50.0, 90.0))),
            notches: vec![Notch {
                name: String::new(),
                at: Point::new(2.0, 50.0),
                into: Angle::deg(0.0),
                depth: trade::Length::mm(4.0),
                kind: patterns::NotchKind::Slit,
                double: false,
            }],
            ..Piece::default()
        }
    }

    #[test]
    fn a_half_becomes_whole_with_all_its_marks() {
        let half = half();
        let whole = opened(&half).unwrap();
        assert_eq!(whole.cut.len(), 6);
        assert!((whole.area().to_mm2() - 2.0 * half.area().to_mm2()).abs() < 1e-9);
        let named = |name: &str| whole.sewn.iter().filter(|s| s.name == name).count();
        assert_eq!((named("mouth"), named("side"), named("")), (1, 1, 1));
        assert_eq!(whole.sew_line("mouth").unwrap().line.len(), 3);
        let notch = &whole.notches[1];
        assert_eq!(notch.at, Point::new(98.0, 50.0));
        assert!((notch.into.to_deg().abs() - 180.0).abs() < 1e-9);
        assert_eq!(opened(&whole), None);
    }

    #[test]
    fn a_line_of_symmetry_within_the_piece_opens_nothing() {
        let mut piece = half();
        piece.mirror = Some((Point::new(25.0, 0.0), Point::new(25.0, 80.0)));
        assert_eq!(opened(&piece), None);
        piece.mirror = Some((Point::new(-5.0, 0.0), Point::new(-5.0, 80.0)));
        assert_eq!(opened(&piece), None);
        piece.mirror = Some((Point::new(50.0, 3.0), Point::new(50.0, 3.0)));
        assert_eq!(opened(&piece), None);
    }

    proptest! {
        #[test]
        fn the_whole_is_twice_the_half_wherever_the_mirror_lies(
            steps in prop::collection::vec((1.0..200.0f64, 1.0..40.0f64), 1..12),
            turn in -3.1..3.1f64,
            shift in -500.0..500.0f64,
            rounded in -0.04..0.04f64,
        ) {
            // Up along x = 0 and back down through places to its left.
            let mut y = 0.0;
            let mut left: Vec<Point> = Vec::new();
            for (x, up) in &steps {
                y += up;
                left.push(Point::new(-x, y));
            }
            let mut cut = vec![Point::new(rounded, 0.0), Point::new(-rounded, y + 10.0)];
            cut.extend(left.iter().rev());
            let put = geometry::Affine::rotate(turn) * geometry::Affine::translate((shift, 3.0));
            let line = (put * Point::new(0.0, -5.0), put * Point::new(0.0, 20.0));
            let piece = Piece { cut: cut.iter().map(|p| put * *p).collect(), mirror: Some(line), ..Piece::default() };
            let whole = opened(&piece).unwrap();
            prop_assert_eq!(whole.cut.len(), 2 * cut.len() - 2);
            let (half, twice) = (piece.area().to_mm2(), area(&whole.cut).to_mm2());
            prop_assert!(twice > 0.0 && (twice - 2.0 * half).abs() <= 0.2 * (y + 10.0));
            // A place just within the image of each corner belongs to the whole.
            let within = left.iter().all(|p| contains(&whole.cut, put * Point::new(-p.x * 0.999, p.y)));
            prop_assert!(within, "a corner has no image");
        }
    }
}
