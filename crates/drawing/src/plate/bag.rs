//! The hip pocket from inside: bag, facing behind the mouth, the rows that join them.

use draft::{ClothUse, EdgeId, LineId, Piece, PieceId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Garment};
use style::SeamId;
use trade::Length;
use words::{Words, key, say};

use super::back::opposite;
use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::dimension::beside;
use crate::palette::QUIET;

/// Cloth shown round the bag, millimetres on the cloth.
const ROUND_MM: f64 = 8.0;
const STEP: Length = Length::mm(0.7);

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let bag = pattern.piece(PieceId::PocketBag)?;
    let front = pattern.piece(PieceId::Front)?;
    let facing = pattern.piece(PieceId::PocketFacing)?;
    let under = Under::of(bag)?;
    // The side without the coin pocket, turned over.
    let outside_mirrored = !pattern.spec.coin_on_right;
    let word = if pattern.spec.coin_on_right {
        key::DRAWN_LEFT
    } else {
        key::DRAWN_RIGHT
    };
    let title = say::DrawnFrontInside { side: word };
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Inside, title),
        Affine::IDENTITY,
        !outside_mirrored,
    );
    let outline = under.outline();
    let bounds = Path::polyline(&outline).bounds();
    let beyond = foot_allowance(garment).map_or(0.0, Length::to_mm);
    figure.window(&[
        Point::new(bounds.x0 - ROUND_MM, bounds.y1 + ROUND_MM),
        Point::new(bounds.x1 + ROUND_MM + beyond, bounds.y0 - beyond - 2.0),
    ]);
    figure.ground("piece:front", set_back(figure.tone(ClothUse::Shell)));
    let pocketing = figure.tone(ClothUse::Pocketing);
    if let Some(beyond) = allowance(garment, &under) {
        figure.area(
            "edge:pocket_bag:foot_under",
            &beyond,
            pocketing,
            Outline::Light,
        );
    }
    figure.area("piece:pocket_bag", &outline, pocketing, Outline::None);
    lines(&mut figure, front, facing, &under);
    figure.piece_outline_of("piece:pocket_bag", &outline);
    let closes = figure.rows(PieceId::PocketBag, Affine::IDENTITY, |r| r.shows_inside);
    note_rows(
        &mut figure,
        &closes,
        Affine::IDENTITY,
        Some(MeasuredFrom::Edge),
    );
    let sets = figure.rows(PieceId::PocketFacing, Affine::IDENTITY, |r| {
        r.seam == SeamId::FacingSet
    });
    note_rows(
        &mut figure,
        &sets,
        Affine::IDENTITY,
        Some(MeasuredFrom::FacingEdge),
    );
    dimensions(&mut figure, facing, &under);
    Some(Draft {
        title: words.say(key::DRAWN_BAG_TITLE),
        caption: words.say(say::DrawnBagCaption { side: word }),
        figures: vec![figure],
    })
}

/// The leaf of the bag that lies behind the facing.
struct Under<'a> {
    foot: &'a Path,
    side: &'a Path,
    waist: &'a Path,
    fold: &'a Path,
}

impl<'a> Under<'a> {
    fn of(bag: &'a Piece) -> Option<Under<'a>> {
        Some(Under {
            foot: bag.edge(EdgeId::FootUnder)?,
            side: bag.edge(EdgeId::SideUnder)?,
            waist: bag.edge(EdgeId::WaistUnder)?,
            fold: bag.line(LineId::Fold)?,
        })
    }

    fn outline(&self) -> Vec<Point> {
        let mut points = self.foot.dense(STEP);
        points.extend(self.side.dense(STEP));
        points.extend(self.waist.dense(STEP));
        points
    }
}

fn foot_allowance(garment: &Garment) -> Option<Length> {
    let cut = garment.cut.iter().find(|c| c.piece == PieceId::PocketBag)?;
    let (_, width) = cut
        .allowances
        .iter()
        .find(|(e, _)| *e == EdgeId::FootUnder)?;
    Some(*width)
}

/// The allowance beyond the row that closes the bag, neatened by it.
fn allowance(garment: &Garment, under: &Under<'_>) -> Option<Vec<Point>> {
    let width = foot_allowance(garment)?;
    let foot = under.foot.dense(STEP);
    let mut points = foot.clone();
    points.extend(beside(&foot, -width.to_mm()).into_iter().rev());
    Some(points)
}

fn lines(figure: &mut Figure<'_>, front: &Piece, facing: &Piece, under: &Under<'_>) {
    let up = Vec2::new(0.0, 60.0);
    let top = under.waist.start();
    for path in [
        front.edge(EdgeId::Waist),
        front.edge(EdgeId::Side),
        facing.edge(EdgeId::Side),
    ]
    .into_iter()
    .flatten()
    {
        figure.edge("seam:front", path, false);
    }
    figure.edge("seam:outseam", &Path::line(top, top + up), false);
    if let Some(mouth) = front.edge(EdgeId::Mouth) {
        figure.below("seam:mouth", mouth);
        figure.point_at(mouth.point_at(mouth.length() * 0.55), key::DRAWN_MOUTH_EDGE);
    }
    if let Some(inner) = facing.edge(EdgeId::Inner) {
        figure.below("piece:pocket_facing", inner);
    }
    figure.fold("piece:pocket_bag", under.fold);
    let fold = under.fold.point_at(under.fold.length() * 0.7);
    figure.point_at(fold, key::DRAWN_FOLD_OF_THE_BAG);
    let above: Vec<Point> = [0.3, 0.2, 0.42, 0.8]
        .iter()
        .flat_map(|share| {
            let p = under.waist.point_at(under.waist.length() * *share);
            [8.0, 11.0, 6.0].map(|by| Point::new(p.x, p.y + by))
        })
        .collect();
    figure.name(key::DRAWN_WAISTBAND, &above, QUIET);
    let outseam = under.side.point_at(under.side.length() * 0.1);
    figure.point_at(outseam, key::DRAWN_OUTSEAM);
}

fn dimensions(figure: &mut Figure<'_>, facing: &Piece, under: &Under<'_>) {
    let outer = figure.side_towards(Vec2::new(1.0, 0.0));
    let inner = opposite(outer);
    figure.dimension_along(Side::Above, under.waist, Some(key::DRAWN_BAG));
    if let Some(mouth) = facing.edge(EdgeId::Waist) {
        figure.dimension_along(Side::Above, mouth, Some(key::DRAWN_MOUTH));
    }
    if let Some(reach) = facing.edge(EdgeId::WaistUnder) {
        figure.dimension_along(Side::Above, reach, Some(key::DRAWN_FACING));
    }
    if let Some(mouth) = facing.edge(EdgeId::Side) {
        figure.dimension_along(outer, mouth, Some(key::DRAWN_MOUTH));
    }
    if let Some(reach) = facing.edge(EdgeId::SideUnder) {
        figure.dimension_along(outer, reach, Some(key::DRAWN_FACING));
    }
    figure.dimension_along(outer, under.side, Some(key::DRAWN_IN_THE_OUTSEAM));
    let lowest = under
        .foot
        .dense(STEP)
        .into_iter()
        .min_by(|a, b| a.y.total_cmp(&b.y));
    if let Some(lowest) = lowest {
        figure.dimension(inner, under.fold.start(), lowest, Some(key::DRAWN_BAG));
    }
}
