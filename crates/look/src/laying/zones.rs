//! Where this pair will be rubbed, from its pattern.

use draft::{EdgeId, PieceId, PointId};
use flat::{Hand, View};
use geometry::Point;

use super::Laying;
use crate::place::{Place, place};
use crate::wear_zones::Zone;

/// Inside nothing rubs but the body.
const INSIDE: f32 = 0.3;

impl Laying<'_> {
    pub(super) fn rub(&mut self) {
        for hand in [Hand::Left, Hand::Right] {
            let zones = match self.view {
                View::Front => self.front_zones(hand),
                View::Back => self.back_zones(hand),
            };
            let share = if self.inside() { INSIDE } else { 1.0 };
            self.scene.zones.extend(zones.into_iter().map(|z| Zone {
                strength: z.strength * share,
                ..z
            }));
        }
    }

    /// The place between two named points of a piece.
    fn between(&self, piece: PieceId, ends: [PointId; 2], share: f64, hand: Hand) -> Option<Point> {
        let found = self.piece(piece)?;
        let (a, b) = (found.point(ends[0])?, found.point(ends[1])?);
        self.laid.point(piece, a.lerp(b, share), hand)
    }

    fn front_zones(&self, hand: Hand) -> Vec<Zone> {
        let out = self.laid.sign(hand);
        let knee = self.between(
            PieceId::Front,
            [PointId::KneeIn, PointId::KneeOut],
            0.5,
            hand,
        );
        let fork = self.laid.fork();
        let mut zones = Vec::new();
        if let Some(knee) = knee {
            zones.push(long(knee, [0.0, 1.0], [95.0, 58.0], 0.62));
            let thigh = knee.lerp(Point::new(knee.x, fork.y), 0.62);
            zones.push(long(thigh, [0.06 * out as f32, 1.0], [150.0, 48.0], 0.55));
            let shin = Point::new(knee.x, knee.y - 160.0);
            zones.push(long(shin, [0.0, 1.0], [120.0, 36.0], 0.18));
            // Where the hip bends: creases that fan out from the fork, pale on their crowns and dark between.
            for k in 0..4_u32 {
                let share = f64::from(k) / 3.0;
                let at = Point::new(knee.x * (0.86 + 0.1 * share), fork.y + 8.0 + 34.0 * share);
                let rise = 0.22 + 0.20 * share;
                let way = [out as f32, rise as f32];
                zones.push(long(at, unit(way), [52.0, 4.2], 0.42));
                let below = Point::new(at.x, at.y - 10.0);
                zones.push(long(below, unit(way), [50.0, 4.0], -0.22));
            }
        }
        let mouth = self
            .piece(PieceId::Front)
            .and_then(|p| p.edge(EdgeId::Mouth));
        if let Some(mouth) = mouth {
            let at = self
                .laid
                .point(PieceId::Front, mouth.point_at(mouth.length() * 0.5), hand);
            zones.extend(at.map(|at| long(at, [0.0, 1.0], [34.0, 30.0], 0.3)));
        }
        zones.extend(self.hem_zone(PieceId::Front, hand));
        zones
    }

    fn back_zones(&self, hand: Hand) -> Vec<Zone> {
        let out = self.laid.sign(hand);
        let fork = self.laid.fork();
        let pocket = match hand {
            Hand::Left => PieceId::BackPocketLeft,
            Hand::Right => PieceId::BackPocketRight,
        };
        let mut zones = Vec::new();
        let middle = self.piece(pocket).and_then(|p| {
            let (a, b) = (p.point(PointId::TopMiddle)?, p.point(PointId::Point)?);
            self.laid.point(pocket, a.lerp(b, 0.6), hand)
        });
        if let Some(seat) = middle {
            zones.push(long(seat, [0.0, 1.0], [95.0, 80.0], 0.6));
            zones.push(long(
                Point::new(seat.x, seat.y - 85.0),
                [1.0, 0.0],
                [75.0, 22.0],
                0.2,
            ));
        }
        let knee = self.between(
            PieceId::Back,
            [PointId::KneeIn, PointId::KneeOut],
            0.5,
            hand,
        );
        if let Some(knee) = knee {
            let thigh = knee.lerp(Point::new(knee.x, fork.y), 0.7);
            zones.push(long(thigh, [0.0, 1.0], [150.0, 60.0], 0.25));
            // Folds of the hollow of the knee, pale on their crowns and dark between.
            for k in 0..4_u32 {
                let share = f64::from(k) / 3.0 - 0.5;
                let at = Point::new(knee.x + 12.0 * share * out, knee.y + 25.0 + 80.0 * share);
                let way = unit([out as f32, 0.16 * share as f32]);
                zones.push(long(at, way, [62.0, 6.5], 0.2));
                zones.push(long(Point::new(at.x, at.y - 13.0), way, [58.0, 5.0], -0.14));
            }
        }
        zones.extend(self.hem_zone(PieceId::Back, hand));
        zones
    }

    fn hem_zone(&self, piece: PieceId, hand: Hand) -> Option<Zone> {
        let hem = self.piece(piece)?.edge(EdgeId::Hem)?;
        let at = self
            .laid
            .point(piece, hem.point_at(hem.length() * 0.5), hand)?;
        let half = (hem.length().to_mm() / 2.0) as f32;
        Some(long(
            at,
            [1.0, 0.0],
            [half.clamp(40.0, 300.0) * 1.6, 9.0],
            0.5,
        ))
    }
}

fn long(middle: Point, along: Place, half: [f32; 2], strength: f32) -> Zone {
    Zone {
        middle: place(middle),
        along,
        half,
        strength,
    }
}

fn unit(way: Place) -> Place {
    let n = (way[0] * way[0] + way[1] * way[1]).sqrt().max(0.001);
    [way[0] / n, way[1] / n]
}
