//! A belt loop: on the band, from its side with room for the belt, its underside, and the strip all are cut from.

use draft::{ClothUse, EdgeId, LineId, Piece, PieceId, PointId};
use geometry::{Affine, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment};
use style::MeasureId;
use trade::stitch::FaceLook;
use trade::{Colour, Length};
use words::{Said, Words, key, say};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, row_note};
use super::page::{Draft, WIDE_MM};
use super::scale::PlateScale;
use super::tone::{BELOW, set_back, tone};
use super::words::{amount, system};
use crate::palette::{HAIRLINE, INK, QUIET};
use crate::sheet::{Stroke, open};

/// Cloth shown round the loop.
const ROUND_MM: f64 = 8.0;
/// How far the loop stands off in the drawing of its side: a belt of ordinary leather and its ease (from memory).
const STANDS_OFF_MM: f64 = 5.0;

/// A figure this wide on paper has no other beside it.
const OWN_LINE_MM: f64 = 120.0;

/// One loop as it is sewn.
struct Sewn<'a> {
    at: Point,
    length: f64,
    width: f64,
    foot: f64,
    top: f64,
    height: f64,
    tacks: Vec<&'a Fixing>,
}

impl Sewn<'_> {
    fn of(garment: &Garment) -> Option<Sewn<'_>> {
        let on_band = || garment.fixings.iter().filter(|f| f.piece == PieceId::Band);
        let (at, length, width) = on_band().find_map(|f| match f.kind {
            FixingKind::Loop(length, width) => Some((f.at, length.to_mm(), width.to_mm())),
            _ => None,
        })?;
        let tacks = on_band()
            .filter(|f| matches!(f.kind, FixingKind::Bartack(..)) && (f.at.x - at.x).abs() < width)
            .collect();
        let height = garment.pattern.spec[MeasureId::BandHeight].to_mm();
        let sound = [length, width, height]
            .iter()
            .all(|v| v.is_finite() && *v > 0.5);
        sound.then_some(Sewn {
            at,
            length,
            width,
            foot: at.y - length / 2.0,
            top: at.y + length / 2.0,
            height,
            tacks,
        })
    }

    /// Width of a tack: what both take from the length.
    fn tack(&self) -> f64 {
        self.tacks.first().map_or(0.0, |t| match t.kind {
            FixingKind::Bartack(_, width, _) => width.to_mm(),
            _ => 0.0,
        })
    }
}

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let sewn = Sewn::of(garment)?;
    let strip = garment.pattern.piece(PieceId::LoopStrip)?;
    let figures = vec![
        whole_strip(garment, words, strip)?,
        on_band(garment, words, scale, &sewn, strip)?,
        from_side(garment, words, scale, &sewn),
        underside(garment, words, scale, &sewn, strip)?,
    ];
    let count = garment
        .fixings
        .iter()
        .filter(|f| matches!(f.kind, FixingKind::Loop(..)))
        .count();
    let loops: Said = if count == 1 {
        key::DRAWN_LOOP_ONE.into()
    } else {
        say::DrawnLoopAll { count }.into()
    };
    Some(Draft {
        title: words.say(key::DRAWN_LOOP_TITLE),
        caption: words.say(say::DrawnLoopCaption { loops }),
        figures,
    })
}

/// From the strip's frame to the loop on the band: one loop's length of it, its foot on the loop's foot.
fn lying(sewn: &Sewn<'_>, strip: &Piece) -> Option<Affine> {
    let foot = strip.point(PointId::LoopFoot)?;
    Some(Affine::translate(Point::new(sewn.at.x, sewn.foot) - foot))
}

fn rect(x0: f64, x1: f64, y0: f64, y1: f64) -> [Point; 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| Point::new(x, y))
}

fn on_band<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    sewn: &Sewn<'_>,
    strip: &Piece,
) -> Option<Figure<'a>> {
    let p = Point::new;
    let title = (Face::Outside, key::DRAWN_FIGURE_OUTSIDE_ON_THE_BAND);
    let mut figure = Figure::new(garment, words, scale, title, Affine::IDENTITY, false);
    let (left, right) = (sewn.at.x - sewn.width / 2.0, sewn.at.x + sewn.width / 2.0);
    let around = [
        p(left - 2.6 * ROUND_MM, sewn.foot - ROUND_MM),
        p(right + 2.6 * ROUND_MM, sewn.height + ROUND_MM * 0.6),
    ];
    figure.window(&around);
    let quiet = set_back(figure.tone(ClothUse::Shell));
    let shell = figure.tone(ClothUse::Shell);
    let far = 100.0;
    figure.area(
        "piece:back",
        &rect(left - far, right + far, sewn.foot - far, 0.0),
        quiet,
        Outline::Light,
    );
    figure.area(
        "piece:band",
        &rect(left - far, right + far, 0.0, sewn.height),
        quiet,
        Outline::Light,
    );
    figure.area(
        "fixing:loop_edge",
        &rect(left, right, sewn.foot, sewn.top),
        shell,
        Outline::Heavy,
    );
    let map = lying(sewn, strip)?;
    figure.next_window(&[p(left, sewn.foot), p(right, sewn.top)]);
    let rows = figure.rows(PieceId::LoopStrip, map, |r| r.shows_outside);
    // The rows run the whole strip; their numbers point at what of them lies on the loop.
    for (k, share) in rows.iter().zip([0.4, 0.62]) {
        let Some(row) = garment.rows.get(*k) else {
            continue;
        };
        let x = (map * row.path.start()).x;
        let note = row_note(garment, words, &[*k], Some(MeasuredFrom::LoopEdge));
        figure.note(
            note,
            &[share, 0.5, 0.3].map(|s| p(x, sewn.foot + sewn.length * s)),
        );
    }
    for tack in &sewn.tacks {
        figure.fixing(tack, Affine::IDENTITY, false);
    }
    note_fixings(&mut figure, &sewn.tacks, Affine::IDENTITY, |what| {
        say::DrawnLoopTacks { what }.into()
    });
    figure.next_window(&around);
    figure.dimension(Side::Above, p(left, sewn.top), p(right, sewn.top), None);
    for row in garment
        .rows
        .iter()
        .filter(|r| r.piece == PieceId::LoopStrip)
    {
        let x = (map * row.path.start()).x;
        figure.dimension(Side::Below, p(left, sewn.foot), p(x, sewn.foot), None);
    }
    figure.dimension(Side::Left, p(left, sewn.foot), p(left, sewn.top), None);
    figure.dimension(Side::Right, p(right, sewn.foot), p(right, 0.0), None);
    figure.dimension(
        Side::Right,
        p(right, 0.0),
        p(right, sewn.height),
        Some(key::DRAWN_BAND),
    );
    figure.dimension(Side::Right, p(right, sewn.top), p(right, sewn.height), None);
    let beside = right + ROUND_MM * 1.3;
    figure.name(
        key::DRAWN_WAISTBAND,
        &[p(beside, sewn.height * 0.7), p(beside, sewn.height * 0.4)],
        QUIET,
    );
    Some(figure)
}

/// The loop from its side: folds, tacks, and the belt under it.
fn from_side<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    sewn: &Sewn<'_>,
) -> Figure<'a> {
    let p = Point::new;
    let title = (Face::Outside, key::DRAWN_FIGURE_FROM_THE_SIDE_WITH_THE_BELT);
    let mut figure = Figure::new(garment, words, scale, title, Affine::IDENTITY, false);
    let shell = tone(garment, ClothUse::Shell, Face::Outside);
    let quiet = set_back(shell);
    let cloth = garment.collection.cloths.get(&garment.doc.cloth.shell);
    let ply = cloth.map_or(0.8, |c| c.thickness.to_mm()).clamp(0.2, 3.0);
    let belt = garment.doc.loops.belt.to_mm();
    // The band is folded over the body's edge; below its seam the body alone.
    figure.area(
        "piece:band",
        &rect(-3.0 * ply, 0.0, 0.0, sewn.height),
        quiet,
        Outline::Light,
    );
    figure.area(
        "piece:back",
        &rect(-2.0 * ply, -ply, sewn.foot - ROUND_MM, 0.0),
        quiet,
        Outline::Light,
    );
    let turn = 12.0_f64.min(sewn.length * 0.3);
    let tack = sewn.tack();
    let (clear_low, clear_high) = (sewn.foot + tack, sewn.top - tack);
    let middle = (clear_low + clear_high) / 2.0;
    let tall = belt.clamp(0.0, 200.0) / 2.0;
    let leather = Colour::rgb(0xb0, 0x94, 0x78).mixed(Colour::WHITE, 0.45);
    figure.fill(
        "belt",
        &rect(0.6, 0.6 + 3.5, middle - tall, middle + tall),
        leather,
        Some(Stroke::plain(INK, HAIRLINE)),
    );
    // Two plies of cloth: the strip folded. Its turned ends lie against band and body.
    let out = 2.0 * ply;
    let points = [
        p(ply, sewn.top - turn),
        p(ply, sewn.top - ply),
        p(ply * 1.4, sewn.top - 0.3 * ply),
        p(ply * 2.4, sewn.top - 0.3 * ply),
        p(out + ply, sewn.top - ply),
        p(out + ply, clear_high),
        p(STANDS_OFF_MM + ply, clear_high - 7.0),
        p(STANDS_OFF_MM + ply, clear_low + 7.0),
        p(out + ply * 0.5, clear_low),
        p(out - ply * 0.2, sewn.foot + ply),
        p(out - ply * 0.8, sewn.foot + 0.3 * ply),
        p(ply * 0.4, sewn.foot + 0.3 * ply),
        p(0.0, sewn.foot + ply),
        p(0.0, sewn.foot + turn.min(-sewn.foot - 1.0).max(2.0 * ply)),
    ];
    let thick = figure.on_paper(Length::mm(2.0 * ply * 0.8));
    let round = |colour, width| Stroke {
        round: true,
        ..Stroke::plain(colour, width)
    };
    let rim = Length::mm(0.36);
    figure.stroke("fixing:loop_edge", &open(&points), round(INK, thick));
    figure.stroke(
        "fixing:loop_edge",
        &open(&points),
        round(shell, (thick - rim).max(Length::mm(0.1))),
    );
    let yarn = sewn.tacks.first().map_or(INK, |t| t.colour);
    for y in [sewn.top - tack / 2.0, sewn.foot + tack / 2.0] {
        let across = [p(-3.6 * ply, y), p(4.2 * ply, y)];
        figure.stroke(
            "fixing:loop_edge",
            &open(&across),
            round(yarn.mixed(Colour::BLACK, 0.3), Length::mm(0.5)),
        );
    }
    let edge = p(STANDS_OFF_MM + 2.0 * ply, 0.0).x;
    figure.hold(&[p(-4.0 * ply, sewn.foot), p(edge, sewn.top)]);
    figure.dimension(
        Side::Right,
        p(edge, clear_low),
        p(edge, clear_high),
        Some(key::DRAWN_CLEAR),
    );
    figure.dimension(
        Side::Right,
        p(4.1, middle - tall),
        p(4.1, middle + tall),
        Some(key::DRAWN_BELT),
    );
    let units = system(&garment.collection);
    let spare = Length::mm(clear_high - clear_low - belt);
    if spare.to_mm() >= 0.0 {
        figure.remark(say::DrawnBeltPasses {
            belt: amount(garment.doc.loops.belt, units),
            clear: amount(Length::mm(clear_high - clear_low), units),
            spare: amount(spare, units),
        });
    } else if spare.is_finite() {
        figure.remark(say::DrawnBeltTooWide {
            belt: amount(garment.doc.loops.belt, units),
            clear: amount(Length::mm(clear_high - clear_low), units),
        });
    }
    figure
}

/// The underside of one loop: raw edges that meet, covered by the looper yarn.
fn underside<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    sewn: &Sewn<'_>,
    strip: &Piece,
) -> Option<Figure<'a>> {
    let p = Point::new;
    let title = (Face::Inside, key::DRAWN_FIGURE_UNDERSIDE_ENDS_NOT_TURNED);
    let mut figure = Figure::new(garment, words, scale, title, Affine::IDENTITY, true);
    let (left, right) = (sewn.at.x - sewn.width / 2.0, sewn.at.x + sewn.width / 2.0);
    figure.window(&[
        p(left - 1.0, sewn.foot - 1.0),
        p(right + 1.0, sewn.top + 1.0),
    ]);
    let shell = figure.tone(ClothUse::Shell);
    figure.area(
        "fixing:loop_edge",
        &rect(left, right, sewn.foot, sewn.top),
        shell,
        Outline::Heavy,
    );
    let middle = geometry::Path::line(p(sewn.at.x, sewn.foot), p(sewn.at.x, sewn.top));
    figure.edge("piece:loop_strip", &middle, false);
    let map = lying(sewn, strip)?;
    looper(&mut figure, map, (p(left, sewn.foot), p(right, sewn.top)));
    figure.note(
        key::DRAWN_RAW_EDGES_MEET_IN_THE_MIDDLE_OF_THE_UNDERSIDE,
        &[0.5, 0.3, 0.7].map(|s| p(sewn.at.x, sewn.foot + sewn.length * s)),
    );
    Some(figure)
}

/// The looper yarn from needle row to needle row; the rows themselves where they are not two of one pass.
fn looper(figure: &mut Figure<'_>, map: Affine, (from, to): (Point, Point)) {
    let garment = figure.garment;
    figure.next_window(&[from, to]);
    let rows: Vec<_> = garment
        .rows
        .iter()
        .filter(|r| r.piece == PieceId::LoopStrip)
        .collect();
    let [a, b] = rows.as_slice() else {
        figure.rows(PieceId::LoopStrip, map, |_| true);
        return;
    };
    if a.stitch != b.stitch || a.stitch.looks().under_face != FaceLook::CoverLoops {
        figure.rows(PieceId::LoopStrip, map, |_| true);
        return;
    }
    let pitch = a.density.pitch().to_mm();
    let most = (to.y - from.y) / pitch.max(0.1) + 1.0;
    let first = (map.inverse() * from).y - a.path.start().y;
    let mut points = Vec::new();
    for k in 0..most.clamp(0.0, 400.0) as u32 {
        let y = first + pitch * (f64::from(k) + 0.25);
        points.push(map * (a.path.start() + Vec2::new(0.0, y)));
        points.push(map * (b.path.start() + Vec2::new(0.0, y + pitch / 2.0)));
    }
    let thick = figure.on_paper(a.under.diameter).max(Length::mm(0.26));
    let line = open(&points);
    for (colour, width) in [
        (
            a.under.colour.mixed(Colour::BLACK, 0.5),
            thick + Length::mm(0.13),
        ),
        (a.under.colour, thick),
    ] {
        let stroke = Stroke {
            round: true,
            ..Stroke::plain(colour, width)
        };
        figure.stroke("row:loop_edge:1", &line, stroke);
    }
}

/// The strip for all loops, laid level.
fn whole_strip<'a>(garment: &'a Garment, words: &'a Words, strip: &Piece) -> Option<Figure<'a>> {
    let (foot, end_top) = (strip.edge(EdgeId::EndFoot)?, strip.edge(EdgeId::EndTop)?);
    let (wide, long) = (foot.end().x, end_top.start().y);
    if !(long > 1.0 && long.is_finite()) {
        return None;
    }
    let scale = PlateScale::no_larger_than((WIDE_MM - 30.0) / long);
    let title = say::DrawnLoopStrip {
        scale: scale.to_string(),
    };
    let turn = Affine::new([0.0, -1.0, 1.0, 0.0, 0.0, 0.0]);
    let mut figure = Figure::new(garment, words, scale, (Face::Outside, title), turn, false);
    let shell = figure.tone(ClothUse::Shell);
    figure.piece(PieceId::LoopStrip, Affine::IDENTITY, shell, Outline::Heavy);
    for line in &strip.lines {
        figure.fold("piece:loop_strip", &line.path);
    }
    let count = garment.pattern.spec.loop_count.clamp(1, 40);
    // What is turned under at its foot and its top is alike.
    let one = strip.point(PointId::LoopFoot)?.y + strip.point(PointId::LoopTop)?.y;
    let p = Point::new;
    // The last is cut from what the folder was begun with.
    for k in 1..=count {
        let y = one * f64::from(k);
        let cut = Stroke::plain(INK, BELOW).dashed(Length::mm(1.5), Length::mm(0.9));
        figure.stroke("piece:loop_strip", &open(&[p(0.0, y), p(wide, y)]), cut);
    }
    figure.rows(PieceId::LoopStrip, Affine::IDENTITY, |_| true);
    // A line of its own on the page, however short the strip.
    figure.hold(&[p(0.0, 0.0), p(wide, OWN_LINE_MM / scale.times())]);
    figure.dimension(Side::Above, p(0.0, 0.0), p(0.0, long), None);
    figure.dimension(
        Side::Below,
        p(wide, 0.0),
        p(wide, one),
        Some(key::DRAWN_ONE_LOOP),
    );
    if let (Some(a), Some(b)) = (strip.line(LineId::FoldLeft), strip.line(LineId::FoldRight)) {
        figure.dimension(Side::Left, a.start(), b.start(), None);
    }
    figure.dimension(Side::Left, p(0.0, 0.0), p(wide, 0.0), None);
    if let Some(turned) = strip.point(PointId::LoopFoot) {
        figure.dimension(
            Side::Below,
            p(wide, 0.0),
            p(wide, turned.y),
            Some(key::DRAWN_TURNED_UNDER),
        );
    }
    Some(figure)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{Plate, PlateId, fitted};
    use crate::samples::{ferryman, sewn, texts};
    use style::Size;

    fn says(plate: &Plate, words: &str) -> bool {
        texts(&plate.sheet).iter().any(|t| t.words.contains(words))
    }

    #[test]
    fn room_for_the_belt_is_what_the_tacks_leave() {
        // 57 mm long, a tack of 2 mm at both ends, a belt of 38 mm.
        let plate = fitted(&sewn(32, 32), Words::english(), PlateId::BeltLoop, draw).unwrap();
        assert!(says(&plate, "clear 5.3 cm"));
        assert!(says(&plate, "belt of 3.8 cm passes with 1.5 cm to spare"));
        // It hangs below the band by what it is longer.
        assert!(says(&plate, "1.9 cm"));
    }

    #[test]
    fn a_belt_too_wide_is_told() {
        let mut loaded = ferryman();
        loaded.style.loops.belt = Length::mm(60.0);
        let garment = sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32));
        let plate = fitted(&garment, Words::english(), PlateId::BeltLoop, draw).unwrap();
        assert!(says(&plate, "too little for a belt of 6 cm"));
    }

    #[test]
    fn the_strip_shows_every_stitch_of_both_rows() {
        let garment = sewn(32, 32);
        let plate = fitted(&garment, Words::english(), PlateId::BeltLoop, draw).unwrap();
        let whole: Vec<_> = plate.stitches.iter().filter(|d| d.whole).collect();
        assert_eq!(whole.len(), 2);
        for drawn in whole {
            // Five loops of 57 mm and two turns of 12 mm each, 30 mm to begin with, 8 stitches an inch.
            let pitches: f64 = (5.0 * 81.0 + 30.0) / (25.4 / 8.0);
            assert_eq!(drawn.drawn, pitches.floor() as usize + 1);
        }
    }
}
