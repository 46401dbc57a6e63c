//! The pair as it lies: from the frame of a piece to the view, for the left and the right copy of each piece.

use std::collections::BTreeMap;

use draft::measure::MeasureId;
use draft::{EdgeId, PieceId, PointId};
use geometry::tolerance::{NO_LENGTH_MM, SAME_MM};
use geometry::{Affine, Point, Vec2};
use sewing::{Face, Garment, On, placements};
use trade::{Length, Share};

use crate::mapping::Flat;
use crate::side::{Half, Hand, Spot, View};
use crate::waist::Folds;

/// Where a piece without a frame of its own on the body is set.
#[derive(Clone, Copy, Debug)]
struct Seat {
    onto: PieceId,
    map: Affine,
}

impl Seat {
    /// Whether the piece is drafted in the frame of what it lies on. Then every point of it lies where its neighbour of that
    /// piece does; anything else is a patch, which keeps its shape.
    fn follows(&self) -> bool {
        self.map == Affine::IDENTITY
    }
}

/// Distance over which the direction of a patch's top edge is taken.
const PATCH_BASE_MM: f64 = 60.0;

/// A pair laid flat and closed, as it is seen from one side.
///
/// Places are millimetres, x from the centre line, y **up** from the crotch, as on a piece.
pub struct LaidGarment {
    pub(crate) flat: Flat,
    pub(crate) view: View,
    face: Face,
    seats: BTreeMap<PieceId, Seat>,
    band_length: f64,
    /// How far the right end reaches beyond the centre front.
    overlap: f64,
    band_height: f64,
}

impl LaidGarment {
    /// `None` when the panels could not be drafted.
    pub fn of(garment: &Garment, view: View, face: Face) -> Option<LaidGarment> {
        let flat = Flat::new(&garment.pattern)?;
        let seats = placements(&garment.pattern)
            .into_iter()
            .map(|p| {
                (
                    p.piece,
                    Seat {
                        onto: p.onto,
                        map: p.map,
                    },
                )
            })
            .collect();
        let band = garment.pattern.piece(PieceId::Band);
        let band_length = band
            .and_then(|b| b.edge(EdgeId::Join))
            .map_or(0.0, |e| e.length().to_mm());
        let end = band.and_then(|b| b.point(PointId::EndRight));
        Some(LaidGarment {
            flat,
            view,
            face,
            seats,
            band_length,
            overlap: end.map_or(0.0, |p| (p.x - band_length).max(0.0)),
            band_height: garment.pattern.spec[MeasureId::BandHeight].to_mm(),
        })
    }

    /// How high the band stands above its seam.
    pub fn band_height(&self) -> Length {
        Length::mm(self.flat.band_height)
    }

    /// The fork, where both legs, front and back meet.
    pub fn fork(&self) -> Point {
        self.flat.fork()
    }

    /// The waist seam of one half, from the centre to the side fold.
    pub fn waist_line(&self, half: Half) -> Vec<Point> {
        self.flat.along_band(half, 0.0)
    }

    /// The top edge of the band on one half, from the centre to the side fold.
    pub fn band_top(&self, half: Half) -> Vec<Point> {
        self.flat.along_band(half, self.flat.band_height)
    }

    /// The shade along the inner edge of a leg on the side that is seen, closed: at the fork as deep as `reach` times what is
    /// tucked away behind it, and `beside` deep along the leg.
    pub fn inner_shade(&self, reach: Share, beside: Length) -> Vec<Point> {
        self.flat
            .inner_shade(self.view.half(), reach.to_ratio(), beside.to_mm())
    }

    /// The two folds of a leg.
    pub fn folds(&self) -> Folds {
        self.flat.folds()
    }

    /// The outline of the half on which this copy lies, with the centre line, or a line so far beyond it, from the fork up.
    pub fn half_outline(&self, hand: Hand, beyond: Length) -> Vec<Point> {
        let Folds { outer, inner } = self.folds();
        let mut points = outer;
        points.extend(self.waist_line(self.view.half()).into_iter().rev());
        let middle = |level: &Point| Point::new(-beyond.to_mm(), level.y);
        let top = points.last().map(middle);
        let fork = inner.last().map(middle);
        points.extend(top.into_iter().chain(fork));
        points.extend(inner.into_iter().rev());
        points.into_iter().map(|p| self.mirrored(p, hand)).collect()
    }

    /// The direction in which this copy lies from the centre line of the view. Turned out, left and
    /// right have changed places.
    pub fn sign(&self, hand: Hand) -> f64 {
        let outside = match (self.view, hand) {
            (View::Front, Hand::Left) | (View::Back, Hand::Right) => 1.0,
            _ => -1.0,
        };
        match self.face {
            Face::Outside => outside,
            Face::Inside => -outside,
        }
    }

    /// The copies of a piece that something is on. Fronts are drawn as the wearer's left, backs as
    /// the wearer's right.
    pub fn copies(&self, piece: PieceId, on: On) -> &'static [Hand] {
        let back = matches!(self.body(piece), PieceId::Back | PieceId::Yoke);
        match (on, back) {
            (On::Both, _) => &[Hand::Left, Hand::Right],
            (On::AsDrawn, false) | (On::Mirrored, true) => &[Hand::Left],
            (On::Mirrored, false) | (On::AsDrawn, true) => &[Hand::Right],
        }
    }

    /// The panel a piece belongs to in the end.
    pub fn body(&self, piece: PieceId) -> PieceId {
        match self.seats.get(&piece) {
            Some(seat) if seat.onto != piece => self.body(seat.onto),
            _ => piece,
        }
    }

    /// A point of a piece on the flat garment, x from the centre of its own half.
    ///
    /// A patch lies flat and keeps its shape: its origin and the direction of its top edge go
    /// through the mapping, the rest follows rigidly.
    fn spot(&self, piece: PieceId, p: Point) -> Spot {
        if let Some(seat) = self.seats.get(&piece)
            && seat.onto != piece
        {
            if seat.follows() {
                return self.spot(seat.onto, p);
            }
            let origin = self.spot(seat.onto, seat.map * Point::ORIGIN);
            return Spot {
                half: origin.half,
                at: self.set_patch(seat, p),
            };
        }
        match piece {
            PieceId::Back => self.flat.back(p),
            PieceId::Yoke => self.flat.yoke(p),
            _ => self.flat.front(p),
        }
    }

    /// Whether a point of the band lies under the other end of it where the pair is closed: outside the
    /// overlap under the left end, inside what the overlap covers of that end.
    pub fn covered(&self, p: Point) -> bool {
        match self.face {
            Face::Outside => p.x > self.band_length + SAME_MM,
            Face::Inside => p.x < self.overlap - SAME_MM,
        }
    }

    /// A line along the overlap on the view, `up` above its lower edge, from beside the centre front to its end.
    pub fn overlap(&self, up: Length) -> Vec<Point> {
        const STEPS: u32 = 12;
        (1..=STEPS)
            .map(|k| {
                let along = self.overlap * f64::from(k) / f64::from(STEPS);
                self.band(Point::new(self.band_length + along, up.to_mm()))
                    .at
            })
            .collect()
    }

    /// A point of the band on the view: half and place.
    pub fn band(&self, p: Point) -> Spot {
        let up = if p.y <= self.band_height {
            p.y
        } else {
            2.0 * self.band_height - p.y
        };
        let (hand, along) = if p.x <= self.band_length / 2.0 {
            (Hand::Left, p.x)
        } else {
            (Hand::Right, self.band_length - p.x)
        };
        let spot = self.flat.band(along, up);
        Spot {
            half: spot.half,
            at: self.mirrored(spot.at, hand),
        }
    }

    /// A point of one copy of a piece, if it lies on the side that faces the viewer.
    pub fn point(&self, piece: PieceId, p: Point, hand: Hand) -> Option<Point> {
        let spot = if piece == PieceId::Band {
            self.band(p)
        } else {
            let spot = self.spot(piece, p);
            Spot {
                half: spot.half,
                at: self.mirrored(spot.at, hand),
            }
        };
        (spot.half == self.view.half()).then_some(spot.at)
    }

    /// A direction of a piece on the view.
    pub fn direction(&self, piece: PieceId, at: Point, along: Vec2, hand: Hand) -> Vec2 {
        let step = 2.0;
        let (a, b) = (
            self.point(piece, at, hand),
            self.point(piece, at + along * step, hand),
        );
        match (a, b) {
            (Some(a), Some(b)) if (b - a).hypot() > SAME_MM => (b - a) / (b - a).hypot(),
            _ => along,
        }
    }

    /// The outline of an area on this view; points beyond a fold run on, to be clipped.
    pub fn area(&self, piece: PieceId, points: &[Point], hand: Hand) -> Vec<Point> {
        points
            .iter()
            .map(|p| self.mirrored(self.unfolded(piece, *p), hand))
            .collect()
    }

    /// A point of a piece on its own face, running on beyond the folds.
    fn unfolded(&self, piece: PieceId, p: Point) -> Point {
        match self.seats.get(&piece) {
            Some(seat) if seat.onto != piece && seat.follows() => self.unfolded(seat.onto, p),
            Some(seat) if seat.onto != piece => self.set_patch(seat, p),
            _ => match piece {
                PieceId::Back => self.flat.back_unfolded(p),
                PieceId::Yoke => self.flat.yoke_unfolded(p),
                _ => self.flat.front(p).at,
            },
        }
    }

    fn set_patch(&self, seat: &Seat, p: Point) -> Point {
        let at = |x: f64| self.unfolded(seat.onto, seat.map * Point::new(x, 0.0));
        let (origin, beside) = (at(0.0), at(PATCH_BASE_MM));
        let along = (beside - origin) / (beside - origin).hypot().max(NO_LENGTH_MM);
        // A placement turned over keeps its handedness.
        let flip = seat.map.determinant().signum();
        origin + along * p.x + geometry::left_of(along) * (p.y * flip)
    }

    /// The runs of a line that face the viewer.
    pub fn line(&self, piece: PieceId, points: &[Point], hand: Hand) -> Vec<Vec<Point>> {
        let mut runs: Vec<Vec<Point>> = Vec::new();
        let mut open: Vec<Point> = Vec::new();
        for p in points {
            match self.point(piece, *p, hand) {
                Some(q) => open.push(q),
                None if !open.is_empty() => runs.push(std::mem::take(&mut open)),
                None => {}
            }
        }
        runs.push(open);
        runs.retain(|r| r.len() > 1);
        runs
    }

    /// A place on one half of the view, x from its centre line, on the half of this hand.
    pub fn mirrored(&self, p: Point, hand: Hand) -> Point {
        Point::new(p.x * self.sign(hand), p.y)
    }
}
