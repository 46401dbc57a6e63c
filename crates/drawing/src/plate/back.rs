//! A back pocket from outside: shape, place, hem, rows, stitching, hidden rivets, tacks and lining.

use draft::{ClothUse, EdgeId, Piece, PieceId, PointId};
use geometry::{Affine, Path, Point, Vec2, left_of};
use sewing::{Face, Fixing, FixingKind, Garment, On, Placed, placed, turned_depth};
use style::{BackPocket, Lining, SeamId};
use words::{Key, Words, key, say};

use super::decoration::note_points;
use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::dimension::unit;
use crate::palette::QUIET;

/// Cloth shown beyond the seams and below the pocket, millimetres on the cloth.
const ROUND_MM: f64 = 9.0;
/// How far a seam is drawn beyond the edge it ends at; the window cuts it off.
const BEYOND_MM: f64 = 80.0;
/// From a side to the dimension of what it is longer by, on paper: beyond that of its whole length.
const DROP_MM: f64 = 9.6;

pub(super) fn left<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    draw(garment, words, scale, PieceId::BackPocketLeft)
}

pub(super) fn right<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    draw(garment, words, scale, PieceId::BackPocketRight)
}

/// What the style says about a pocket, and which of the wearer's sides it is on.
pub(super) fn stated(garment: &Garment, id: PieceId) -> (&BackPocket, Key) {
    let back = &garment.doc.pockets.back;
    match id {
        PieceId::BackPocketLeft => (&back.left, key::DRAWN_LEFT),
        _ => (&back.right, key::DRAWN_RIGHT),
    }
}

fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    id: PieceId,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let pocket = pattern.piece(id)?;
    let back = pattern.piece(PieceId::Back)?;
    let set = placed(pattern, id)?;
    let corners = Corners::of(pocket)?;
    let (said, word) = stated(garment, id);
    // Upright is the pocket's top edge; the left pocket is the mirror image.
    let frame = set.map.inverse();
    let title = key::DRAWN_FIGURE_ON_THE_BACK;
    let mirrored = set.on == On::Mirrored;
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Outside, title),
        frame,
        mirrored,
    );
    let seams = seams(back, frame, &corners);
    figure.window(&[
        set.map * Point::new(seams.seat - ROUND_MM, seams.yoke + 1.8 * ROUND_MM),
        set.map * Point::new(seams.side + ROUND_MM, corners.lowest() - ROUND_MM),
    ]);
    around(&mut figure, back);
    let shell = figure.tone(ClothUse::Shell);
    figure.piece(id, set.map, shell, Outline::Heavy);
    inner_lines(&mut figure, pocket, &set, said);
    let rows = figure.rows(id, set.map, |_| true);
    let fixings: Vec<&Fixing> = garment.fixings.iter().filter(|f| f.piece == id).collect();
    for fixing in &fixings {
        figure.fixing(fixing, set.map, !fixing.outside);
    }
    let (stitching, others): (Vec<usize>, Vec<usize>) = rows.into_iter().partition(|k| {
        let row = garment.rows.get(*k);
        row.is_some_and(|r| r.seam == SeamId::Decoration)
    });
    note_rows(&mut figure, &others, set.map, Some(MeasuredFrom::Edge));
    note_rows(&mut figure, &stitching, set.map, None);
    note_points(&mut figure, &stitching, set.map);
    note_fixed(&mut figure, &fixings, set.map);
    dimensions(&mut figure, &corners, &set, &seams);
    fixing_dimensions(&mut figure, &fixings, &corners, &set);
    let lined = match said.lining {
        Lining::None => key::DRAWN_NOT_LINED,
        Lining::Half => key::DRAWN_LINED_IN_ITS_UPPER_HALF,
        Lining::Full => key::DRAWN_LINED_IN_FULL,
    };
    Some(Draft {
        title: words.say(say::DrawnBackPocket { side: word }),
        caption: caption(
            words,
            said.drawing.is_some(),
            &words.say(say::DrawnBackPocketCaption { lined, side: word }),
        ),
        figures: vec![figure],
    })
}

/// What is said of a back pocket, and of stitching of the maker's own how it grows.
fn caption(words: &Words, own_stitching: bool, of_all: &str) -> String {
    match own_stitching {
        true => format!(
            "{of_all} {}",
            words.named(key::DRAWN_STITCHING_IN_EVERY_SIZE)
        ),
        false => of_all.to_owned(),
    }
}

/// The corners of a back pocket in its own frame.
pub(super) struct Corners {
    pub inner: Point,
    pub foot_inner: Point,
    pub point: Point,
    pub foot_outer: Point,
    pub outer: Point,
}

impl Corners {
    pub fn of(pocket: &Piece) -> Option<Corners> {
        let at = |id| pocket.point(id);
        Some(Corners {
            inner: at(PointId::TopInner)?,
            foot_inner: at(PointId::FootInner)?,
            point: at(PointId::Point)?,
            foot_outer: at(PointId::FootOuter)?,
            outer: at(PointId::TopOuter)?,
        })
    }

    /// None where both sides are alike.
    fn drop(&self) -> Option<Drop> {
        let inner = (self.foot_inner - self.inner).hypot();
        let outer = (self.foot_outer - self.outer).hypot();
        let (name, top, foot, shorter) = if outer > inner {
            (key::DRAWN_OUTER_DROP, self.outer, self.foot_outer, inner)
        } else {
            (key::DRAWN_INNER_DROP, self.inner, self.foot_inner, outer)
        };
        let from = top + unit(foot - top)? * shorter;
        (from != foot).then_some(Drop {
            name,
            from,
            to: foot,
        })
    }

    pub fn lowest(&self) -> f64 {
        self.point.y.min(self.foot_inner.y).min(self.foot_outer.y)
    }
}

/// What one side is longer by than the other, from where the shorter would end: the drop that the style states,
/// which is a difference of lengths and not of heights.
struct Drop {
    name: Key,
    from: Point,
    to: Point,
}

/// Where the seams round the pocket lie, in its frame.
struct Seams {
    /// The seat seam level with the pocket's top edge.
    seat: f64,
    /// The outseam.
    side: f64,
    /// Highest part of the yoke seam above the pocket.
    yoke: f64,
    /// The place on it.
    side_at_top: Option<Point>,
}

fn seams(back: &Piece, frame: Affine, corners: &Corners) -> Seams {
    let of = |id| back.edge(id).map(|e| e.transformed(frame));
    let level = |id| of(id).and_then(|p| p.crossings_at_y(0.0).first().copied());
    let (at_seat, at_side) = (level(EdgeId::Seat), level(EdgeId::Side));
    let yoke = of(EdgeId::Top).map_or(20.0, |p| p.bounds().y1);
    let width = corners.outer.x;
    Seams {
        seat: at_seat.map_or(0.0, |p| p.x.min(0.0)),
        side: at_side.map_or(width, |p| p.x.max(width)),
        yoke,
        side_at_top: at_side,
    }
}

/// The seams round the pocket, each going on beyond the next.
pub(super) fn around(figure: &mut Figure<'_>, back: &Piece) {
    let quiet = set_back(figure.tone(ClothUse::Shell));
    figure.ground("piece:back", quiet);
    let (Some(top), Some(seat), Some(side)) = (
        back.edge(EdgeId::Top),
        back.edge(EdgeId::Seat),
        back.edge(EdgeId::Side),
    ) else {
        return;
    };
    for (part, path) in [
        ("seam:yoke", top),
        ("seam:seat", seat),
        ("seam:outseam", side),
    ] {
        figure.edge(part, path, false);
    }
    // The yoke's own seams are nearly straight for the little that shows of them.
    let beyond = |from: Point, way: Vec2| Path::line(from, from + way * BEYOND_MM);
    let up_seat = -seat.start_direction();
    figure.edge("seam:seat", &beyond(seat.start(), up_seat), false);
    figure.edge(
        "seam:outseam",
        &beyond(side.end(), side.end_direction()),
        false,
    );
    // Over the seat seam, the other half's yoke seam is the mirror image.
    let along = -top.end_direction();
    let mirrored = up_seat * (2.0 * along.dot(up_seat)) - along;
    figure.edge("seam:yoke", &beyond(seat.start(), mirrored), false);
    let above = |share: f64| {
        let along = top.length() * share;
        top.point_at(along) - left_of(top.direction_at(along)) * 7.0
    };
    figure.name(
        key::DRAWN_YOKE,
        &[above(0.5), above(0.3), above(0.7), above(0.15)],
        QUIET,
    );
}

/// The hem's lower edge and the lining's, both below the cloth.
fn inner_lines(figure: &mut Figure<'_>, pocket: &Piece, set: &Placed, said: &BackPocket) {
    let hem = figure
        .garment
        .seams
        .iter()
        .find(|s| s.id == SeamId::BackPocketHem)
        .map(turned_depth);
    if let Some(depth) = hem
        && let Some((a, b)) = across(pocket, -depth.to_mm())
    {
        figure.below(
            "seam:back_pocket_hem",
            &Path::line(set.map * a, set.map * b),
        );
        let inner = set.map * Point::ORIGIN;
        let outer_side = figure.side_towards(set.map * Point::new(1.0, 0.0) - inner);
        if let Some(top) = pocket.point(PointId::TopOuter) {
            let foot = Point::new(top.x, -depth.to_mm());
            figure.dimension(
                outer_side,
                set.map * top,
                set.map * foot,
                Some(key::DRAWN_HEM),
            );
        }
    }
    let lining = match pocket.id {
        PieceId::BackPocketLeft => PieceId::BackLiningLeft,
        _ => PieceId::BackLiningRight,
    };
    if said.lining == Lining::Half
        && let Some(foot) = figure
            .garment
            .pattern
            .piece(lining)
            .and_then(|l| l.edge(EdgeId::Foot))
    {
        let line = foot.transformed(set.map);
        figure.below("piece:back_lining", &line);
        figure.point_at(line.point_at(line.length() * 0.3), key::DRAWN_LINING_ENDS);
    }
}

/// Where the sides of a pocket are at a height, inner first.
pub(super) fn across(pocket: &Piece, y: f64) -> Option<(Point, Point)> {
    let at = |id| pocket.edge(id)?.crossings_at_y(y).first().copied();
    Some((at(EdgeId::Inner)?, at(EdgeId::Outer)?))
}

fn dimensions(figure: &mut Figure<'_>, corners: &Corners, set: &Placed, seams: &Seams) {
    let at = |p: Point| set.map * p;
    let inner_side = figure.side_towards(at(Point::new(-1.0, 0.0)) - at(Point::ORIGIN));
    figure.dimension(Side::Above, at(corners.inner), at(corners.outer), None);
    figure.dimension(
        Side::Below,
        at(corners.foot_inner),
        at(corners.foot_outer),
        None,
    );
    figure.dimension(inner_side, at(corners.inner), at(corners.point), None);
    let middle = Point::new(
        (corners.inner.x + corners.outer.x) / 2.0,
        corners.point.y / 2.0,
    );
    let out = |p: Point| p + (p - middle);
    figure.slanted(
        at(corners.inner),
        at(corners.foot_inner),
        at(out(corners.inner)),
        5.0,
        None,
    );
    figure.slanted(
        at(corners.outer),
        at(corners.foot_outer),
        at(out(corners.outer)),
        5.0,
        None,
    );
    if let Some(Drop { name, from, to }) = corners.drop() {
        // Its words follow the end that is measured from: below the foot, where nothing stands.
        let away = at(out(to));
        figure.slanted(at(to), at(from), away, DROP_MM, Some(name));
    }
    let back = figure.garment.pattern.piece(PieceId::Back);
    let named = |id| back.and_then(|b| b.point(id));
    if let Some(on_yoke) = named(PointId::PocketInnerOnYoke) {
        figure.dimension(inner_side, on_yoke, at(corners.inner), None);
    }
    if let Some(on_seat) = named(PointId::PocketInnerOnSeat) {
        figure.dimension(Side::Above, on_seat, at(corners.inner), None);
    }
    if let Some(on_side) = seams.side_at_top {
        figure.dimension(Side::Above, at(corners.outer), at(on_side), None);
    }
}

pub(super) const fn opposite(side: Side) -> Side {
    match side {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
        Side::Above => Side::Below,
        Side::Below => Side::Above,
    }
}

fn note_fixed(figure: &mut Figure<'_>, fixings: &[&Fixing], map: Affine) {
    let (rivets, tacks): (Vec<&Fixing>, Vec<&Fixing>) = fixings
        .iter()
        .partition(|f| matches!(f.kind, FixingKind::Rivet(_)));
    let hidden = rivets.iter().all(|r| !r.outside);
    note_fixings(figure, &rivets, map, |what| {
        if hidden {
            say::DrawnHiddenRivetsThrough { what }.into()
        } else {
            say::DrawnRivets { what }.into()
        }
    });
    note_fixings(figure, &tacks, map, |what| {
        say::DrawnSideTacks { what }.into()
    });
}

/// How far the rivets are in from the corner and down from the top edge.
fn fixing_dimensions(
    figure: &mut Figure<'_>,
    fixings: &[&Fixing],
    corners: &Corners,
    set: &Placed,
) {
    let rivet = fixings
        .iter()
        .filter(|f| matches!(f.kind, FixingKind::Rivet(_)))
        .min_by(|a, b| a.at.x.total_cmp(&b.at.x));
    let Some(rivet) = rivet else { return };
    let at = |p: Point| set.map * p;
    let inner_side = figure.side_towards(at(Point::new(-1.0, 0.0)) - at(Point::ORIGIN));
    figure.dimension(Side::Above, at(corners.inner), at(rivet.at), None);
    figure.dimension(inner_side, at(corners.inner), at(rivet.at), None);
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::words::{amount, system};
    use crate::plate::{PlateId, plate};
    use crate::samples::{sewn, texts};

    /// The list of what the two pockets differ in states how much longer the outer side is; the plate says the same
    /// figure before the wash.
    #[test]
    fn the_outer_drop_is_the_length_that_the_style_states() {
        let garment = sewn(32, 32);
        let stated = garment.as_sewn().pattern.spec.back_pocket_right.outer_drop;
        let plate = plate(&garment, Words::english(), PlateId::BackPocketRight).unwrap();
        let told = format!("outer drop {}", amount(stated, system(&garment.collection)));
        let all = texts(&plate.sheet);
        assert!(all.iter().any(|t| t.words == told), "{told}");
        // 6 mm after a wash that takes 8 % of the warp.
        assert_eq!(told, "outer drop 6.5 mm");
    }
}
