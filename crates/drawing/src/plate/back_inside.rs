//! The back pockets from inside: each pocket's reverse with its lining before it is set, and the
//! inside of the back once it is.

use draft::{ClothUse, EdgeId, Piece, PieceId};
use geometry::{Affine, Point, Straight, Vec2, left_of};
use sewing::{Face, Fixing, FixingKind, Garment, On, Placed, StitchRow, placed, turned_depth};
use style::{Lining, SeamId};
use trade::{Colour, Length};
use words::{Given, Words, key, say};

use super::back::{Corners, across, opposite, stated};
use super::figure::{Figure, Outline};
use super::notes::{MeasuredFrom, note_fixings, note_rows_of};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::{set_back, tone, tone_of};
use crate::dimension::unit;

/// Cloth of the back shown round a pocket, on the cloth.
const ROUND_MM: f64 = 8.0;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let figures: Vec<Figure<'_>> = [PieceId::BackPocketLeft, PieceId::BackPocketRight]
        .into_iter()
        .flat_map(|id| {
            [
                reverse(garment, words, scale, id),
                back(garment, words, scale, id),
            ]
        })
        .flatten()
        .collect();
    if figures.is_empty() {
        return None;
    }
    Some(Draft {
        title: words.say(key::DRAWN_BACK_POCKETS_INSIDE),
        caption: words.say(key::DRAWN_BACK_POCKETS_INSIDE_CAPTION),
        figures,
    })
}

/// The reverse of a pocket, ready to be set.
fn reverse<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    id: PieceId,
) -> Option<Figure<'a>> {
    let pocket = garment.pattern.piece(id)?;
    let set = placed(&garment.pattern, id)?;
    let corners = Corners::of(pocket)?;
    let (said, word) = stated(garment, id);
    let title = say::DrawnPocketReverse { side: word };
    let outside_mirrored = set.on == On::Mirrored;
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Inside, title),
        Affine::IDENTITY,
        !outside_mirrored,
    );
    let reverse = figure.tone(ClothUse::Shell);
    let turned = tone(garment, ClothUse::Shell, Face::Outside);
    figure.piece(id, Affine::IDENTITY, reverse, Outline::None);
    let lining = match id {
        PieceId::BackPocketLeft => PieceId::BackLiningLeft,
        _ => PieceId::BackLiningRight,
    };
    let cloth = said
        .lining_cloth
        .as_ref()
        .or(garment.doc.cloth.lining.as_ref());
    if said.lining != Lining::None {
        let tone = cloth.map_or(reverse, |key| tone_of(garment, key, Face::Inside));
        figure.piece(lining, Affine::IDENTITY, tone, Outline::Light);
    }
    let hem = garment.seams.iter().find(|s| s.id == SeamId::BackPocketHem);
    let depth = hem.map_or(Length::ZERO, turned_depth);
    pressed_in(&mut figure, pocket, &corners, turned);
    hem_flap(&mut figure, pocket, &corners, depth, turned);
    figure.piece_outline(id, Affine::IDENTITY);
    let rows = figure.rows(id, Affine::IDENTITY, |r| r.seam == SeamId::BackPocketHem);
    let alike = on_both(garment, |r| r.seam == SeamId::BackPocketHem);
    note_rows_of(
        &mut figure,
        &rows,
        &alike,
        Affine::IDENTITY,
        Some(MeasuredFrom::Edge),
    );
    let inner_side = figure.side_towards(Vec2::new(-1.0, 0.0));
    if let Some(piece) = garment.pattern.piece(lining)
        && said.lining != Lining::None
    {
        let foot = piece
            .polygon(Length::mm(2.0))
            .into_iter()
            .min_by(|a, b| a.y.total_cmp(&b.y));
        if let Some(foot) = foot {
            let name = cloth
                .and_then(|key| garment.collection.cloths.get(key))
                .map_or_else(
                    || key::DRAWN_THE_LINING_CLOTH.into(),
                    |c| Given::from(&c.name),
                );
            let places = [
                Point::new(corners.outer.x * 0.5, foot.y * 0.5),
                Point::new(corners.outer.x * 0.35, foot.y * 0.6),
                Point::new(corners.outer.x * 0.65, foot.y * 0.6),
            ];
            match said.lining {
                Lining::Full => {
                    let reach = key::DRAWN_IN_FULL;
                    figure.note(say::DrawnLiningCaught { name, reach }, &places);
                }
                Lining::Half | Lining::None => {
                    let reach = key::DRAWN_IN_ITS_UPPER_HALF;
                    figure.note(say::DrawnLiningHalfCaught { name, reach }, &places);
                }
            }
            figure.dimension(inner_side, corners.inner, foot, Some(key::DRAWN_LINING));
        }
    }
    figure.dimension(
        opposite(inner_side),
        corners.outer,
        Point::new(corners.outer.x, -depth.to_mm()),
        Some(key::DRAWN_HEM),
    );
    Some(figure)
}

/// How much of each edge is turned in, as the cut piece says.
fn allowance(figure: &Figure<'_>, id: PieceId, edge: EdgeId) -> Length {
    figure
        .garment
        .cut
        .iter()
        .find(|c| c.piece == id)
        .and_then(|c| c.allowances.iter().find(|(name, _)| *name == edge))
        .map_or(Length::ZERO, |(_, width)| *width)
}

/// The allowances of sides and foot, pressed to the inside: the face of the cloth shows.
fn pressed_in(figure: &mut Figure<'_>, pocket: &Piece, corners: &Corners, fill: Colour) {
    let chain = [
        corners.inner,
        corners.foot_inner,
        corners.point,
        corners.foot_outer,
        corners.outer,
    ];
    let edges = [
        EdgeId::Inner,
        EdgeId::FootInner,
        EdgeId::FootOuter,
        EdgeId::Outer,
    ];
    let lines: Vec<(Point, Vec2)> = edges
        .iter()
        .zip(chain.windows(2))
        .filter_map(|(edge, ends)| {
            let width = allowance(figure, pocket.id, *edge);
            let way = unit(ends[1] - ends[0])?;
            Some((ends[0] + left_of(way) * width.to_mm(), way))
        })
        .collect();
    if lines.len() != edges.len() {
        return;
    }
    let level = (Point::ORIGIN, Vec2::new(1.0, 0.0));
    let mut inner: Vec<Point> = Vec::new();
    inner.extend(meeting(lines[0], level));
    for pair in lines.windows(2) {
        inner.extend(meeting(pair[0], pair[1]));
    }
    inner.extend(meeting(lines[lines.len() - 1], level));
    if inner.len() != chain.len() {
        return;
    }
    for k in 0..edges.len() {
        let strip = [chain[k], chain[k + 1], inner[k + 1], inner[k]];
        figure.area(
            &format!("edge:{}:{}", pocket.id.code(), edges[k].code()),
            &strip,
            fill,
            Outline::Light,
        );
    }
    if let Some(edge) = pocket.edge(EdgeId::Inner) {
        let middle = edge.point_at(edge.length() * 0.6);
        let width = allowance(figure, pocket.id, EdgeId::Inner);
        let inward = left_of(edge.start_direction()) * (width.to_mm() / 2.0);
        let width = figure.amount_of(width);
        figure.note(say::DrawnPressedIn { width }, &[middle + inward]);
    }
}

/// Two edges of a pocket with a smaller cross product run side by side.
const SIDE_BY_SIDE: f64 = 1e-9;

/// Where two lines, each through a point along a direction, meet.
fn meeting((p, u): (Point, Vec2), (q, v): (Point, Vec2)) -> Option<Point> {
    let first = Straight { from: p, way: u };
    let meeting = first.meeting(Straight { from: q, way: v }, SIDE_BY_SIDE)?;
    Some(first.at(meeting.first))
}

/// The hem, turned to the inside over lining and pressed edges.
fn hem_flap(
    figure: &mut Figure<'_>,
    pocket: &Piece,
    corners: &Corners,
    depth: Length,
    fill: Colour,
) {
    if depth > Length::ZERO
        && let Some((a, b)) = across(pocket, -depth.to_mm())
    {
        let flap = [corners.inner, a, b, corners.outer];
        figure.area("seam:back_pocket_hem", &flap, fill, Outline::Light);
    }
}

/// The inside of the back behind a pocket.
fn back<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    id: PieceId,
) -> Option<Figure<'a>> {
    let pocket = garment.pattern.piece(id)?;
    let set: Placed = placed(&garment.pattern, id)?;
    let corners = Corners::of(pocket)?;
    let (_, word) = stated(garment, id);
    let title = say::DrawnBackInside { side: word };
    let mirrored = set.on != On::Mirrored;
    let frame = set.map.inverse();
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Inside, title),
        frame,
        mirrored,
    );
    figure.window(&[
        set.map * Point::new(corners.inner.x - ROUND_MM, ROUND_MM),
        set.map * Point::new(corners.outer.x + ROUND_MM, corners.lowest() - ROUND_MM),
    ]);
    let reverse = set_back(figure.tone(ClothUse::Shell));
    figure.ground("piece:back", reverse);
    for edge in &pocket.edges {
        figure.below(
            &format!("piece:{}", id.code()),
            &edge.path.transformed(set.map),
        );
    }
    let rows = figure.rows(id, set.map, |r| r.shows_inside);
    let fixings: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == id && f.inside)
        .collect();
    for fixing in &fixings {
        figure.fixing(fixing, set.map, false);
    }
    let alike = on_both(garment, |r| r.shows_inside);
    note_rows_of(
        &mut figure,
        &rows,
        &alike,
        set.map,
        Some(MeasuredFrom::Edge),
    );
    let (rivets, tacks): (Vec<&Fixing>, Vec<&Fixing>) = fixings
        .iter()
        .partition(|f| matches!(f.kind, FixingKind::Rivet(_)));
    note_fixings(&mut figure, &rivets, set.map, |what| {
        say::DrawnHiddenRivetsSet { what }.into()
    });
    note_fixings(&mut figure, &tacks, set.map, |what| {
        say::DrawnBartacks { what }.into()
    });
    Some(figure)
}

/// Rows of both back pockets for which `wanted` holds.
fn on_both(garment: &Garment, wanted: impl Fn(&StitchRow) -> bool) -> Vec<usize> {
    let on_pocket = |r: &StitchRow| {
        matches!(r.piece, PieceId::BackPocketLeft | PieceId::BackPocketRight) && wanted(r)
    };
    let all = garment.rows.iter().enumerate();
    all.filter(|(_, r)| on_pocket(r)).map(|(k, _)| k).collect()
}
