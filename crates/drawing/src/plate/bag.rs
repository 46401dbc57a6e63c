//! The hip pocket from inside: bag, facing behind the mouth, the rows that join them.

use draft::{ClothUse, Piece, PieceId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Garment};
use trade::Length;

use super::back::opposite;
use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::note_rows;
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::palette::QUIET;

/// Cloth shown round the bag, millimetres on the cloth.
const ROUND_MM: f64 = 12.0;
const STEP: Length = Length::mm(0.7);

pub(super) fn draw(garment: &Garment, scale: PlateScale) -> Option<Draft<'_>> {
    let pattern = &garment.pattern;
    let bag = pattern.piece(PieceId::PocketBag)?;
    let front = pattern.piece(PieceId::Front)?;
    let facing = pattern.piece(PieceId::PocketFacing)?;
    let under = Under::of(bag)?;
    // The side without the coin pocket, turned over.
    let outside_mirrored = !pattern.spec.coin_on_right;
    let word = if pattern.spec.coin_on_right {
        "left"
    } else {
        "right"
    };
    let title = format!("Front, {word}: inside");
    let mut figure = Figure::new(
        garment,
        scale,
        (Face::Inside, &title),
        Affine::IDENTITY,
        !outside_mirrored,
    );
    let outline = under.outline();
    let bounds = Path::polyline(&outline).bounds();
    figure.window(&[
        Point::new(bounds.x0 - ROUND_MM, bounds.y1 + ROUND_MM),
        Point::new(bounds.x1 + ROUND_MM, bounds.y0 - ROUND_MM),
    ]);
    figure.ground("piece:front", set_back(figure.tone(ClothUse::Shell)));
    figure.area(
        "piece:pocket_bag",
        &outline,
        figure.tone(ClothUse::Pocketing),
        Outline::Heavy,
    );
    lines(&mut figure, front, facing, &under);
    let closes = figure.rows(PieceId::PocketBag, Affine::IDENTITY, |r| r.shows_inside);
    note_rows(&mut figure, &closes, Affine::IDENTITY, "from the edge");
    let sets = figure.rows(PieceId::PocketFacing, Affine::IDENTITY, |r| {
        r.seam == "facing_set"
    });
    note_rows(
        &mut figure,
        &sets,
        Affine::IDENTITY,
        "from the facing's edge",
    );
    dimensions(&mut figure, facing, &under);
    Some(Draft {
        title: "Hip pocket, inside".to_owned(),
        caption: format!(
            "The wearer's {word} front turned over, the bag's back leaf towards you; the facing lies on its far side, behind \
             the mouth. The other side is the mirror image."
        ),
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
            foot: bag.edge("foot_under")?,
            side: bag.edge("side_under")?,
            waist: bag.edge("waist_under")?,
            fold: bag.line("fold")?,
        })
    }

    fn outline(&self) -> Vec<Point> {
        let mut points = self.foot.dense(STEP);
        points.extend(self.side.dense(STEP));
        points.extend(self.waist.dense(STEP));
        points
    }
}

fn lines(figure: &mut Figure<'_>, front: &Piece, facing: &Piece, under: &Under<'_>) {
    let up = Vec2::new(0.0, 60.0);
    let top = under.waist.start();
    for path in [front.edge("waist"), front.edge("side"), facing.edge("side")]
        .into_iter()
        .flatten()
    {
        figure.edge("seam:front", path, false);
    }
    figure.edge("seam:outseam", &Path::line(top, top + up), false);
    if let Some(mouth) = front.edge("mouth") {
        figure.below("seam:mouth", mouth);
        figure.point_at(
            mouth.point_at(mouth.length() * 0.55),
            "mouth edge".to_owned(),
        );
    }
    if let Some(inner) = facing.edge("inner") {
        figure.below("piece:pocket_facing", inner);
    }
    figure.fold("piece:pocket_bag", under.fold);
    let fold = under.fold.point_at(under.fold.length() * 0.7);
    figure.point_at(fold, "fold of the bag".to_owned());
    let middle = under.waist.point_at(under.waist.length() * 0.5);
    let above = |by: f64| Point::new(middle.x, middle.y + by);
    figure.name("waistband", &[above(12.0), above(14.0), above(10.0)], QUIET);
    let outseam = under.side.point_at(under.side.length() * 0.1);
    figure.point_at(outseam, "outseam".to_owned());
}

fn dimensions(figure: &mut Figure<'_>, facing: &Piece, under: &Under<'_>) {
    let outer = figure.side_towards(Vec2::new(1.0, 0.0));
    let inner = opposite(outer);
    figure.dimension_along(Side::Above, under.waist, "bag");
    if let Some(mouth) = facing.edge("waist") {
        figure.dimension_along(Side::Above, mouth, "mouth");
    }
    if let Some(reach) = facing.edge("waist_under") {
        figure.dimension_along(Side::Above, reach, "facing");
    }
    if let Some(mouth) = facing.edge("side") {
        figure.dimension_along(outer, mouth, "mouth");
    }
    if let Some(reach) = facing.edge("side_under") {
        figure.dimension_along(outer, reach, "facing");
    }
    figure.dimension_along(outer, under.side, "in the outseam");
    let lowest = under
        .foot
        .dense(STEP)
        .into_iter()
        .min_by(|a, b| a.y.total_cmp(&b.y));
    if let Some(lowest) = lowest {
        figure.dimension(inner, under.fold.start(), lowest, "bag");
    }
    figure.dimension(Side::Below, under.fold.end(), under.foot.end(), "");
}
