//! The coin pocket on its facing: shape, place, hem, rows, rivets and tacks.

use draft::{ClothUse, EdgeId, Piece, PieceId, PointId};
use geometry::tolerance::SAME_MM;
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment, On, placed, turned_depth};
use style::{CoinShape, MeasureId, SeamId};
use trade::Length;
use words::{Key, Words, key, say};

use super::decoration::turning;
use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, note_places, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::palette::QUIET;

/// Cloth shown round the pocket, millimetres on the cloth.
const ROUND_MM: f64 = 10.0;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let coin = pattern.piece(PieceId::CoinPocket)?;
    let facing = pattern.piece(PieceId::PocketFacing)?;
    let set = placed(pattern, PieceId::CoinPocket)?;
    // Upright is the pocket's own top edge; on the wearer's right everything is mirrored.
    let mirrored = set.on == On::Mirrored;
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (
            Face::Outside,
            key::DRAWN_FIGURE_OUTSIDE_ON_THE_HIP_POCKET_FACING,
        ),
        set.map.inverse(),
        mirrored,
    );
    let outline = Outlined::of(coin)?;
    let at = |x: f64, y: f64| set.map * Point::new(x, y);
    let up = set.map * Point::new(0.0, 1.0) - set.map * Point::ORIGIN;
    let half = pattern.spec[MeasureId::CoinWidth].to_mm() / 2.0;
    let below_band = pattern.spec.coin_below_band.to_mm();
    let side = half + pattern.spec.coin_from_side.to_mm();
    figure.window(&[
        at(outline.left_most - ROUND_MM, below_band + ROUND_MM),
        at(
            side.max(outline.right_most) + ROUND_MM,
            outline.lowest - ROUND_MM,
        ),
    ]);
    around(&mut figure, facing, up);
    let shell = figure.tone(ClothUse::Shell);
    figure.piece(PieceId::CoinPocket, set.map, shell, Outline::Heavy);
    let hem = garment.seams.iter().find(|s| s.id == SeamId::CoinHem);
    let hem = hem.map(turned_depth);
    if let Some(depth) = hem {
        let y = -depth.to_mm();
        if let [a, b, ..] = coin_sides(coin, y)[..] {
            figure.below("seam:coin_hem", &Path::line(set.map * a, set.map * b));
        }
    }
    if let Some(mouth) = pattern
        .piece(PieceId::Front)
        .and_then(|f| f.edge(EdgeId::Mouth))
    {
        figure.below("seam:mouth", mouth);
        let middle = mouth.point_at(mouth.length() * 0.5);
        figure.point_at(middle, key::DRAWN_FRONTS_MOUTH_EDGE);
    }
    let rows = figure.rows(PieceId::CoinPocket, set.map, |_| true);
    let on_pocket: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::CoinPocket)
        .collect();
    for fixing in &on_pocket {
        figure.fixing(fixing, set.map, false);
    }
    note_rows(&mut figure, &rows, set.map, Some(MeasuredFrom::Edge));
    let (rivets, tacks): (Vec<&Fixing>, Vec<&Fixing>) = on_pocket
        .iter()
        .partition(|f| matches!(f.kind, FixingKind::Rivet(_)));
    note_fixings(&mut figure, &rivets, set.map, |what| {
        say::DrawnCoinRivets { what }.into()
    });
    note_fixings(&mut figure, &tacks, set.map, |what| {
        say::DrawnCoinTacks { what }.into()
    });
    place(&mut figure, facing, set.map, half);
    shape(&mut figure, &outline, coin, set.map);
    // Left on paper is the outer side on the wearer's right.
    let left = if mirrored { half } else { -half };
    let left_corner = at(left, 0.0);
    if let Some(depth) = hem {
        figure.dimension(
            Side::Left,
            left_corner,
            at(left, -depth.to_mm()),
            Some(key::DRAWN_HEM),
        );
    }
    if let Some(rivet) = rivets.iter().find(|r| r.at.x * left > 0.0) {
        figure.dimension(Side::Left, left_corner, set.map * rivet.at, None);
    }
    if let Some(rivet) = rivets.iter().find(|r| r.at.x < 0.0) {
        figure.dimension(Side::Above, at(-half, 0.0), set.map * rivet.at, None);
    }
    if pattern.spec.coin_shape == CoinShape::Free {
        note_outline(&mut figure, coin, &outline, set.map);
    }
    let wearer = if pattern.spec.coin_on_right {
        key::DRAWN_RIGHT
    } else {
        key::DRAWN_LEFT
    };
    Some(Draft {
        title: words.say(key::DRAWN_COIN_TITLE),
        caption: words.say(say::DrawnCoinCaption {
            shape: shape_words(pattern.spec.coin_shape),
            side: wearer,
        }),
        figures: vec![figure],
    })
}

const fn shape_words(shape: CoinShape) -> Key {
    match shape {
        CoinShape::Straight => key::DRAWN_FOOT_STRAIGHT,
        CoinShape::Pointed => key::DRAWN_FOOT_POINTED,
        CoinShape::CutCorner => key::DRAWN_FOOT_WITH_CUT_CORNERS,
        CoinShape::Slant => key::DRAWN_FOOT_SLANTING_DOWN_TO_THE_OUTSEAM,
        CoinShape::Round => key::DRAWN_FOOT_ROUND,
        CoinShape::Free => key::DRAWN_OUTLINE_AS_DRAWN_BY_THE_MAKER,
    }
}

/// The facing with band seam and outseam, and what lies beyond.
fn around(figure: &mut Figure<'_>, facing: &Piece, up: Vec2) {
    let quiet = set_back(figure.tone(ClothUse::Shell));
    figure.ground("piece:pocket_facing", quiet);
    for (part, edges) in [
        ("seam:band", [EdgeId::Waist, EdgeId::WaistUnder]),
        ("seam:outseam", [EdgeId::SideUnder, EdgeId::Side]),
    ] {
        for id in edges {
            if let Some(path) = facing.edge(id) {
                figure.edge(part, path, false);
            }
        }
    }
    if let Some(waist) = facing.edge(EdgeId::Waist) {
        let above = |share: f64| waist.point_at(waist.length() * share) + up * 5.0;
        figure.name(
            key::DRAWN_WAISTBAND,
            &[above(0.5), above(0.3), above(0.8)],
            QUIET,
        );
    }
    if let Some(side) = facing.edge(EdgeId::Side) {
        let at = side.point_at(side.length() * 0.3);
        figure.point_at(at, key::DRAWN_OUTSEAM);
        let top = Path::line(side.end(), side.end() + up * 60.0);
        figure.edge("seam:outseam", &top, false);
    }
}

/// How far from band seam and outseam, at the upper outer corner.
fn place(figure: &mut Figure<'_>, facing: &Piece, map: Affine, half: f64) {
    let spec = &figure.garment.pattern.spec;
    let corner = map * Point::new(half, 0.0);
    if let Some(waist) = facing.edge(EdgeId::Waist) {
        let over = waist.point_at(spec.coin_from_side);
        figure.dimension(Side::Right, over, corner, None);
    }
    if let Some(side) = facing.point(PointId::SideWaist) {
        figure.dimension(Side::Above, corner, side, None);
    }
}

/// Widths at top and foot, depths of both sides and in all, and what the foot is cut by.
fn shape(figure: &mut Figure<'_>, outline: &Outlined, coin: &Piece, map: Affine) {
    let at = |p: Point| map * p;
    let [top_left, left, right, top_right] = outline.corners;
    figure.dimension(Side::Above, at(top_left), at(top_right), None);
    figure.dimension(Side::Below, at(left), at(right), None);
    let lowest = Point::new(0.0, outline.lowest);
    figure.dimension(Side::Right, at(top_right), at(right), None);
    if (left.y - right.y).abs() > 0.05 {
        figure.dimension(Side::Left, at(top_left), at(left), None);
    }
    if (outline.lowest - left.y.min(right.y)).abs() > 0.05 {
        figure.dimension(Side::Left, at(top_left), at(lowest), None);
        figure.dimension(Side::Left, at(left), at(lowest), None);
    }
    let middle = coin.point(PointId::FootMiddle);
    if let Some(middle) = middle.filter(|m| {
        [left.y, right.y, outline.lowest]
            .iter()
            .all(|y| (m.y - y).abs() > 0.05)
    }) {
        figure.dimension(
            Side::Left,
            at(Point::new(0.0, 0.0)),
            at(middle),
            Some(key::DRAWN_MIDDLE),
        );
    }
    let (widest, most) = (
        outline.right_most - outline.left_most,
        top_right.x - top_left.x,
    );
    if widest > most.max(right.x - left.x) + 0.1 {
        let across = [outline.left_most, outline.right_most].map(|x| at(Point::new(x, lowest.y)));
        figure.dimension(Side::Below, across[0], across[1], Some(key::DRAWN_WIDEST));
    }
    // The level stretch between cut corners.
    let Some(foot) = coin.edge(EdgeId::Foot) else {
        return;
    };
    let level = foot.segments().iter().map(|s| {
        let bez = s.to_cubic();
        (bez.p0, bez.p3)
    });
    for (a, b) in level.filter(|(a, b)| (a.y - b.y).abs() < SAME_MM) {
        if (b.x - a.x).abs() < (right.x - left.x).abs() - 0.1 {
            figure.dimension(Side::Below, at(a), at(b), None);
        }
    }
}

/// Corners and turning points of a drawn outline, from the upper inner corner.
fn note_outline(figure: &mut Figure<'_>, coin: &Piece, outline: &Outlined, map: Affine) {
    let edges = [EdgeId::Left, EdgeId::Foot, EdgeId::Right]
        .into_iter()
        .filter_map(|id| coin.edge(id));
    let Some(whole) = edges.cloned().reduce(|path, next| path.then(&next)) else {
        return;
    };
    let inner = outline.corners[0];
    let places: Vec<(Point, Length, Length)> = turning(&whole)
        .into_iter()
        .map(|p| {
            (
                map * p,
                Length::mm(p.x - inner.x),
                Length::mm(inner.y - p.y),
            )
        })
        .collect();
    note_places(figure, &places, |unit, points| {
        say::DrawnOutlinePoints { points, unit }.into()
    });
}

/// The corners and extent of a coin pocket in its own frame.
struct Outlined {
    /// Upper left, lower left, lower right, upper right.
    corners: [Point; 4],
    left_most: f64,
    right_most: f64,
    lowest: f64,
}

impl Outlined {
    fn of(coin: &Piece) -> Option<Outlined> {
        let (left, foot, right) = (
            coin.edge(EdgeId::Left)?,
            coin.edge(EdgeId::Foot)?,
            coin.edge(EdgeId::Right)?,
        );
        let all = left.bounds().union(foot.bounds()).union(right.bounds());
        Some(Outlined {
            corners: [left.start(), left.end(), right.start(), right.end()],
            left_most: all.x0,
            right_most: all.x1,
            lowest: all.y0,
        })
    }
}

/// Where the sides of the pocket are at a height.
fn coin_sides(coin: &Piece, y: f64) -> Vec<Point> {
    [EdgeId::Left, EdgeId::Right]
        .into_iter()
        .filter_map(|id| coin.edge(id)?.crossings_at_y(y).first().copied())
        .collect()
}
