//! Panels, band, bags and shield: the large sheets of a view.

use draft::{EdgeId, LineId, PieceId, PointId};
use flat::{Folds, Half, Hand, View};
use geometry::{Point, Vec2};
use sewing::Face;
use trade::Length;

use super::{Laying, POCKETING, SHELL, fine, set_on};
use crate::place::{Place, places};
use crate::scene::{Border, Ridge, Sheet, Stands, Stuff};

/// How round a leg folds at its sides.
const LEG_FOLD: f32 = 2.4;
/// The half that is laid first runs on under the other.
const UNDER: Length = Length::mm(0.3);

impl Laying<'_> {
    /// Above the front waist one sees into the garment: the inside of the back band, lower than all else.
    pub(super) fn behind(&mut self) {
        // So far down that nothing of the table is seen over the front band.
        const DOWN: f64 = 30.0;
        let low = both_sides(self.laid.waist_line(Half::Back)).into_iter();
        let mut outline: Vec<Point> = low.map(|p| Point::new(p.x * 0.97, p.y - DOWN)).collect();
        outline.extend(both_sides(self.laid.band_top(Half::Back)).into_iter().rev());
        let stuff = self.cloth_of(PieceId::Band, Hand::Left, SHELL, false);
        let sheet = Sheet {
            outline: places(&outline),
            clip: None,
            stuff,
            stands: Stands::At(-1.6 * self.ply),
            rims: Vec::new(),
            round: 0.0,
            folds: false,
        };
        self.push(sheet);
        self.rows_behind();
        self.labels_behind();
    }

    /// Panels of one half with what is set on them.
    pub(super) fn panels_of(&mut self, hand: Hand) {
        let beyond = match hand {
            Hand::Right => UNDER,
            Hand::Left => Length::ZERO,
        };
        let outline = places(&self.laid.half_outline(hand, beyond));
        self.scene.clips.push(outline.clone());
        self.half = self.scene.clips.len() - 1;
        let Folds { outer, inner } = self.laid.folds();
        let on_view = |line: Vec<Point>| -> Vec<Place> {
            let line: Vec<Point> = line
                .into_iter()
                .map(|p| self.laid.mirrored(p, hand))
                .collect();
            places(&line)
        };
        let rims = vec![on_view(outer), on_view(inner)];
        let stuff = self.cloth_of(PieceId::Back, hand, SHELL, self.inside());
        self.base = self.push(Sheet {
            outline,
            clip: None,
            stuff,
            stands: Stands::At(0.0),
            rims,
            round: LEG_FOLD,
            folds: false,
        });
        self.panels.clear();
        match (self.view, self.face) {
            (View::Front, Face::Outside) => {
                self.panel(PieceId::PocketFacing, hand);
                self.coin(hand);
                self.panel(PieceId::Front, hand);
                self.facing_behind(hand);
            }
            (View::Front, Face::Inside) => {
                self.panel(PieceId::Front, hand);
                self.laps(hand, &[PieceId::Front]);
                self.facing_inside(hand);
            }
            (View::Back, Face::Outside) => {
                self.panel(PieceId::Back, hand);
                self.panel(PieceId::Yoke, hand);
                let pocket = match hand {
                    Hand::Left => PieceId::BackPocketLeft,
                    Hand::Right => PieceId::BackPocketRight,
                };
                self.pocket(pocket, hand);
            }
            (View::Back, Face::Inside) => {
                self.panel(PieceId::Back, hand);
                self.panel(PieceId::Yoke, hand);
                self.laps(hand, &[PieceId::Back, PieceId::Yoke]);
            }
        }
    }

    /// A panel that lies beside others, not on them.
    fn panel(&mut self, id: PieceId, hand: Hand) {
        let outline = self.outline(id, hand);
        if outline.is_empty() {
            return;
        }
        let stuff = self.cloth_of(id, hand, SHELL, self.inside());
        let sheet = Sheet {
            outline,
            clip: Some(self.half),
            stuff,
            stands: Stands::Beside,
            rims: Vec::new(),
            round: 0.0,
            folds: false,
        };
        let index = self.push(sheet);
        self.panels.push((id, index));
    }

    /// A pocket, on its panel.
    fn pocket(&mut self, id: PieceId, hand: Hand) {
        let outline = self.outline(id, hand);
        if outline.is_empty() {
            return;
        }
        let stuff = self.cloth_of(id, hand, SHELL, self.inside());
        let sheet = set_on(outline, Some(self.half), stuff, self.step(), self.ply * 0.8);
        let index = self.push(sheet);
        self.panels.push((id, index));
    }

    fn coin(&mut self, hand: Hand) {
        let coin_hand = if self.garment.pattern.spec.coin_on_right {
            Hand::Right
        } else {
            Hand::Left
        };
        if hand != coin_hand {
            return;
        }
        self.pocket(PieceId::CoinPocket, hand);
        self.rows_of_pieces(hand, &[PieceId::CoinPocket, PieceId::PocketFacing]);
        self.fixings_of(hand, PieceId::CoinPocket);
    }

    /// The facing behind the left fly edge, as the front stands out over it.
    fn facing_behind(&mut self, hand: Hand) {
        let front = self.piece(PieceId::Front);
        let edge = front.and_then(|f| f.edge(EdgeId::Fly)).map(fine);
        let stitch = front.and_then(|f| f.line(LineId::FlyStitch)).map(fine);
        let (Some(mut points), Some(stitch), Hand::Left) = (edge, stitch, hand) else {
            return;
        };
        let on_view = |points: &[Point]| places(&self.laid.area(PieceId::Front, points, hand));
        let rim = on_view(&stitch);
        points.extend(stitch);
        let sheet = Sheet {
            outline: on_view(&points),
            clip: Some(self.half),
            stuff: self.cloth_of(PieceId::Front, hand, SHELL, false),
            stands: Stands::On(self.step()),
            rims: vec![rim],
            round: 2.2,
            folds: false,
        };
        self.push(sheet);
    }

    /// The facing behind the left fly edge, from inside.
    fn facing_inside(&mut self, hand: Hand) {
        let front = self.piece(PieceId::Front);
        let edge = front.and_then(|f| f.edge(EdgeId::Fly)).map(fine);
        let stitch = front.and_then(|f| f.line(LineId::FlyStitch)).map(fine);
        let (Some(mut points), Some(stitch), Hand::Left) = (edge, stitch, hand) else {
            return;
        };
        points.extend(stitch);
        let outline = places(&self.laid.area(PieceId::Front, &points, hand));
        let stuff = self.cloth_of(PieceId::Front, hand, SHELL, true);
        let sheet = set_on(outline, Some(self.half), stuff, self.step(), self.ply * 0.5);
        self.push(sheet);
    }

    /// Turned out, the under layer of each pocket bag hangs in front of its panel, and on one of them the concealed pocket.
    pub(super) fn bag(&mut self, hand: Hand) {
        if (self.view, self.face) != (View::Front, Face::Inside) {
            return;
        }
        let Some(bag) = self.piece(PieceId::PocketBag) else {
            return;
        };
        let edges = [EdgeId::FootUnder, EdgeId::SideUnder, EdgeId::WaistUnder];
        let points: Vec<Point> = edges
            .iter()
            .filter_map(|id| bag.edge(*id))
            .flat_map(fine)
            .collect();
        let outline = places(&self.laid.area(PieceId::PocketBag, &points, hand));
        let stuff = self.cloth_of(PieceId::PocketBag, hand, POCKETING, false);
        let sheet = set_on(outline, Some(self.half), stuff, 0.5, 0.5);
        let index = self.push(sheet);
        self.panels.push((PieceId::PocketBag, index));
        let extra = self.garment.pattern.spec.extra_pocket;
        let mine = extra.is_some_and(|extra| extra.on_left == (hand == Hand::Left));
        if mine {
            self.pocket(PieceId::ExtraPocket, hand);
        }
    }

    /// The band on the side that is seen.
    pub(super) fn band(&mut self) {
        let half = self.seen();
        let stuff = |laying: &Self, hand| laying.cloth_of(PieceId::Band, hand, SHELL, false);
        if self.view == View::Back {
            let low = both_sides(self.laid.waist_line(half));
            let high = both_sides(self.laid.band_top(half));
            let stuff = stuff(self, Hand::Left);
            self.strip(low, high, stuff);
        } else {
            let order = match self.face {
                Face::Outside => [Hand::Right, Hand::Left],
                Face::Inside => [Hand::Left, Hand::Right],
            };
            for hand in order {
                let line = |up: Length| -> Vec<Point> {
                    let side = if up > Length::ZERO {
                        self.laid.band_top(half)
                    } else {
                        self.laid.waist_line(half)
                    };
                    let side = side.into_iter().map(|p| self.laid.mirrored(p, hand));
                    let overlap = match (self.face, hand) {
                        (Face::Inside, Hand::Right) => self.laid.overlap(up),
                        _ => Vec::new(),
                    };
                    overlap.into_iter().rev().chain(side).collect()
                };
                let (low, high) = (line(Length::ZERO), line(self.laid.band_height()));
                let stuff = stuff(self, hand);
                self.strip(low, high, stuff);
            }
        }
        self.rows_on_band();
    }

    /// A part of the band between its lower and its upper line.
    fn strip(&mut self, low: Vec<Point>, high: Vec<Point>, stuff: Stuff) {
        let (low, mut high) = (places(&low), places(&high));
        let join = low.clone();
        let mut outline = low;
        high.reverse();
        outline.extend(high);
        // Both plies of the band, on what it encloses.
        let sheet = set_on(outline, None, stuff, 2.0 * self.step(), self.ply * 1.1);
        let sheet = self.push(sheet);
        let rightwards = join
            .first()
            .zip(join.last())
            .is_some_and(|(a, b)| a[0] < b[0]);
        // What it encloses at its seam: the allowances of the body and its own.
        self.scene.ridges.push(Ridge {
            sheet,
            line: join,
            side: if rightwards { 1.0 } else { -1.0 },
            height: self.step(),
            width: 10.0,
            near: Border::Fold,
            far: Border::Slope(3.0),
            waves: Some(super::seams::waves(6.0, 0.35, 0.7)),
            ply: self.ply,
            taper: 0.0,
        });
    }

    /// The shield behind the fly, over both halves from the inside.
    pub(super) fn shield(&mut self) {
        if (self.view, self.face) != (View::Front, Face::Inside) {
            return;
        }
        let shield = self.piece(PieceId::FlyShield);
        let sewn = shield.and_then(|s| s.edge(EdgeId::Left));
        let foot = shield.and_then(|s| s.point(PointId::FoldFoot));
        let top = self
            .piece(PieceId::Front)
            .and_then(|f| f.point(PointId::WaistCentre));
        let (Some(sewn), Some(foot), Some(top)) = (sewn, foot, top) else {
            return;
        };
        let start = sewn.start();
        let hung = |p: Point| {
            let hung = Point::ORIGIN + Vec2::new(p.x - start.x, top.y + p.y);
            self.laid.mirrored(hung, Hand::Left)
        };
        let outline = places(&[start, sewn.end(), foot, Point::ORIGIN].map(hung));
        let stuff = Stuff::Woven {
            cloth: SHELL,
            reverse: false,
            warp: [0.0, 1.0],
            from: [0.0, 0.0],
        };
        let sheet = set_on(outline, None, stuff, 2.0 * self.step(), self.ply);
        self.push(sheet);
    }
}

/// The right-hand half line and its mirror image, from left to right.
fn both_sides(half: Vec<Point>) -> Vec<Point> {
    let mut all: Vec<Point> = half.iter().rev().map(|p| Point::new(-p.x, p.y)).collect();
    all.extend(half.into_iter().skip(1));
    all
}
