//! A leg's hem: all round, laid open; its join from both faces; its section; and its roping.

use draft::{ClothUse, EdgeId, PieceId, PointId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Garment, RowEnd, StitchRow};
use style::{Construction, HemEnds, HemJoin, MeasureId, SeamId};
use trade::{Colour, Length};
use words::{Given, Key, Said, Words, key, say};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::page::{Draft, WIDE_MM};
use super::scale::PlateScale;
use super::words::{amount, listed, row_words, system};
use crate::dimension::{beside, unit};
use crate::palette::QUIET;
use crate::seam_section;
use crate::sheet::{Stroke, open};
use crate::view::roping::valleys;

/// Height of leg shown above the hem: laid open, and at the join.
const OPEN_MM: f64 = 30.0;
const JOIN_MM: f64 = 30.0;
/// Half the width shown at the join.
const HALF_MM: f64 = 24.0;
/// Cloth beyond the hem edge.
const BELOW_MM: f64 = 4.0;

/// One panel's hem as it is laid: its map into the frame of the front.
struct Laid {
    piece: PieceId,
    map: Affine,
}

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let seam = garment.seams.iter().find(|s| s.id == SeamId::Hem)?;
    let mut figures = vec![laid_open(garment, words)?];
    for face in [Face::Outside, Face::Inside] {
        figures.push(at_join(garment, words, scale, face)?);
    }
    if let Some(section) = seam_section(garment, seam, words) {
        let title = (
            Face::Outside,
            key::DRAWN_FIGURE_SECTION_OF_THE_HEM_ENLARGED_OUTSIDE_UP,
        );
        let mut figure = Figure::new(garment, words, scale, title, Affine::IDENTITY, false);
        figure.embed(section);
        figures.push(figure);
    }
    if let Some(first) = figures.first_mut() {
        first.remark(ends_words(garment));
        if roped(garment) {
            first.remark(key::DRAWN_ROPING);
        }
    }
    let units = system(&garment.collection);
    Some(Draft {
        title: words.say(key::DRAWN_HEM_TITLE),
        caption: words.say(say::DrawnHemCaption {
            begun: place_of(garment.doc.hem.join),
            depth: amount(garment.pattern.spec[MeasureId::HemDepth], units),
            turned: match seam.construction {
                Construction::RolledHem => key::DRAWN_HEM_ROLLED,
                _ => key::DRAWN_HEM_FOLDED,
            },
        }),
        figures,
    })
}

fn roped(garment: &Garment) -> bool {
    let rolled = |s: &style::Seam| s.id == SeamId::Hem && s.construction == Construction::RolledHem;
    garment.doc.hem.roping && garment.seams.iter().any(rolled)
}

fn ends_words(garment: &Garment) -> Said {
    match garment.doc.hem.ends {
        HemEnds::TiedByHand => key::DRAWN_JOIN_TIED.into(),
        HemEnds::Overlapped => say::DrawnJoinOverlapped {
            over: over(garment),
        }
        .into(),
        HemEnds::Backtacked => key::DRAWN_JOIN_BACKTACKED.into(),
    }
}

/// What the row runs on over its own start.
fn over(garment: &Garment) -> String {
    let row = garment.rows.iter().find(|r| r.seam == SeamId::Hem);
    let over = row.map_or(Length::ZERO, |row| sewing::hem_overlap(row.stitch));
    amount(over, system(&garment.collection))
}

/// The two seams across which the hem runs on from the front to the back.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Across {
    Inseam,
    Outseam,
}

impl Across {
    /// Where the hem crosses it.
    const fn point(self) -> PointId {
        match self {
            Across::Inseam => PointId::HemIn,
            Across::Outseam => PointId::HemOut,
        }
    }
}

/// The left back, mirrored, its hem going on from the front's across a seam.
fn back_at(garment: &Garment, across: Across) -> Option<Affine> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let back = garment.pattern.piece(PieceId::Back)?;
    let mirror = Affine::new([-1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
    let point = across.point();
    let (to, from) = (front.point(point)?, mirror * back.point(point)?);
    // Sewn together, both panels have one line at the seam, down to the hem and up from it.
    let at_seam = |piece: &draft::Piece| match across {
        Across::Inseam => Some(-piece.edge(EdgeId::Inseam)?.end_direction()),
        Across::Outseam => Some(piece.edge(EdgeId::Side)?.start_direction()),
    };
    let mirrored = |v: Vec2| Vec2::new(-v.x, v.y);
    let (a, b) = (unit(mirrored(at_seam(back)?))?, unit(at_seam(front)?)?);
    let (cos, sin) = (a.dot(b), a.cross(b));
    let turn = Affine::new([cos, sin, -sin, cos, 0.0, 0.0]);
    let map = Affine::translate(to - turn * from) * turn * mirror;
    map.is_finite().then_some(map)
}

/// Upright: the front's hem level.
fn level(garment: &Garment) -> Option<Affine> {
    let hem = garment.pattern.piece(PieceId::Front)?.edge(EdgeId::Hem)?;
    unit(hem.end() - hem.start()).map(upright)
}

/// The turn that lays a direction (unit vector) level.
fn upright(along: Vec2) -> Affine {
    Affine::new([along.x, -along.y, along.y, along.x, 0.0, 0.0])
}

/// Cloth, ridges, the turned edge and the row of panels.
fn panels(figure: &mut Figure<'_>, laid: &[Laid]) -> Vec<usize> {
    let garment = figure.garment;
    let shell = figure.tone(ClothUse::Shell);
    let depth = garment.pattern.spec[MeasureId::HemDepth];
    for panel in laid {
        figure.piece(panel.piece, panel.map, shell, Outline::Heavy);
    }
    for panel in laid {
        let Some(hem) = garment
            .pattern
            .piece(panel.piece)
            .and_then(|p| p.edge(EdgeId::Hem))
        else {
            continue;
        };
        if roped(garment) {
            ridges(figure, hem, panel, shell);
        }
        // Over the ridges, which run to the very end of the panel.
        for id in [EdgeId::Inseam, EdgeId::Side, EdgeId::Hem] {
            if let Some(edge) = garment.pattern.piece(panel.piece).and_then(|p| p.edge(id)) {
                figure.edge("seam:hem", &edge.transformed(panel.map), true);
            }
        }
        let turned = beside(&hem.dense(Length::mm(4.0)), depth.to_mm());
        let turned: Vec<Point> = turned.into_iter().map(|p| panel.map * p).collect();
        if turned.len() > 1 {
            let path = Path::polyline(&turned);
            match figure.face {
                Face::Outside => figure.below("seam:hem", &path),
                Face::Inside => figure.edge("seam:hem", &path, false),
            }
        }
    }
    let mut rows = Vec::new();
    for panel in laid {
        rows.extend(figure.rows(panel.piece, panel.map, |r| r.seam == SeamId::Hem));
    }
    rows
}

fn ridges(figure: &mut Figure<'_>, hem: &Path, panel: &Laid, shell: Colour) {
    // Rising they run to the right on the outside: forwards on the front, backwards on the mirrored back.
    let lean = if panel.piece == PieceId::Front {
        1.0
    } else {
        -1.0
    };
    let wide = |mm: f64| figure.on_paper(Length::mm(mm));
    let strokes = [
        (shell.mixed(Colour::BLACK, 0.18), wide(1.1)),
        (shell.mixed(Colour::WHITE, 0.35), wide(0.7)),
    ];
    for pair in valleys(hem, figure.garment.pattern.spec[MeasureId::HemDepth], lean) {
        for (line, (colour, width)) in pair.into_iter().zip(strokes) {
            let points: Vec<Point> = line.into_iter().map(|p| panel.map * p).collect();
            let stroke = Stroke {
                round: true,
                ..Stroke::plain(colour, width)
            };
            figure.stroke("seam:hem", &open(&points), stroke);
        }
    }
}

/// What the key says of the row, whose parts are those on front and back in the order of sewing.
fn row_note(garment: &Garment, words: &Words, rows: &[usize]) -> Given {
    // What runs on over the start lies where it has been counted.
    let once = |r: &&StitchRow| !(r.begins == RowEnd::RunsOn && r.ends == RowEnd::Overlapped);
    let all = rows.iter().filter_map(|k| garment.rows.get(*k));
    let all: Vec<&StitchRow> = all.filter(once).collect();
    let Some(row) = all.first() else {
        return String::new().into();
    };
    let secured: Said = match garment.doc.hem.ends {
        HemEnds::TiedByHand => RowEnd::TiedByHand.said().into(),
        HemEnds::Overlapped => say::DrawnHemRunOn {
            over: over(garment),
        }
        .into(),
        HemEnds::Backtacked => RowEnd::Backtacked.said().into(),
    };
    let counts: Vec<String> = all.iter().map(|r| r.stitches().to_string()).collect();
    say::DrawnHemRow {
        away: amount(Length::mm(offset_of(garment)), system(&garment.collection)),
        counts: listed(&counts, words),
        made: row_words(&garment.collection, row),
        place: place_of(garment.doc.hem.join),
        secured,
    }
    .into()
}

const fn place_of(join: HemJoin) -> Key {
    match join {
        HemJoin::Inseam => key::DRAWN_INSEAM,
        HemJoin::Outseam => key::DRAWN_OUTSEAM,
        HemJoin::BackOfLeg => key::DRAWN_CENTRE_BACK_OF_THE_LEG,
    }
}

/// The whole hem from inseam to inseam.
fn laid_open<'a>(garment: &'a Garment, words: &'a Words) -> Option<Figure<'a>> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let hem = front.edge(EdgeId::Hem)?;
    let back_hem = garment.pattern.piece(PieceId::Back)?.edge(EdgeId::Hem)?;
    let whole = hem.length() + back_hem.length();
    let scale = PlateScale::no_larger_than((WIDE_MM - 32.0) / whole.to_mm());
    let title = say::DrawnHemOpen {
        scale: scale.to_string(),
    };
    let frame = level(garment)?;
    let mut figure = Figure::new(garment, words, scale, (Face::Outside, title), frame, false);
    let map = back_at(garment, Across::Outseam)?;
    let laid = [
        Laid {
            piece: PieceId::Front,
            map: Affine::IDENTITY,
        },
        Laid {
            piece: PieceId::Back,
            map,
        },
    ];
    let back = frame.inverse();
    let mut ends = vec![frame * hem.start(), frame * hem.end()];
    ends.extend([
        frame * (map * back_hem.start()),
        frame * (map * back_hem.end()),
    ]);
    let (x0, x1) = ends
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| {
            (a.min(p.x), b.max(p.x))
        });
    let lowest = ends.iter().map(|p| p.y).fold(f64::INFINITY, f64::min) - 6.0;
    let p = |x: f64, y: f64| back * Point::new(x, y);
    let top = lowest + 6.0 + OPEN_MM;
    figure.window(&[p(x0 - 6.0, lowest), p(x1 + 6.0, top)]);
    let rows = panels(&mut figure, &laid);
    let on_front: Vec<Point> = (1..10)
        .map(|k| hem.point_at(hem.length() * (f64::from(k) / 10.0)))
        .map(|q| {
            let up = frame * q;
            p(up.x, up.y + offset_of(garment))
        })
        .collect();
    figure.note(row_note(garment, words, &rows), &on_front);
    let middle = hem.end();
    figure.over_break(
        Side::Below,
        (hem.start(), map * back_hem.start()),
        whole,
        Some(key::DRAWN_HEM_ALL_ROUND),
    );
    figure.dimension(Side::Above, hem.start(), middle, Some(key::DRAWN_FRONT));
    figure.dimension(
        Side::Above,
        middle,
        map * back_hem.start(),
        Some(key::DRAWN_BACK),
    );
    for (at, name, way) in [
        (hem.start(), key::DRAWN_INSEAM, 1.0),
        (middle, key::DRAWN_OUTSEAM, 1.0),
        (map * back_hem.start(), key::DRAWN_INSEAM, -1.0),
    ] {
        let up = frame * at;
        let places = [9.0, -9.0, 12.0, -12.0].map(|dx| dx * way).map(|dx| {
            p(
                up.x + dx / figure.on_paper(Length::mm(1.0)).to_mm(),
                up.y + OPEN_MM * 0.75,
            )
        });
        figure.name(name, &places, QUIET);
    }
    figure.dimension(
        Side::Left,
        hem.start(),
        p(
            (frame * hem.start()).x,
            (frame * hem.start()).y + garment.pattern.spec[MeasureId::HemDepth].to_mm(),
        ),
        None,
    );
    Some(figure)
}

/// Where the row begins and ends, from one face.
fn at_join<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    face: Face,
) -> Option<Figure<'a>> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let back = garment.pattern.piece(PieceId::Back)?;
    let join = garment.doc.hem.join;
    let place = place_of(join);
    let title: Said = match face {
        Face::Outside => say::DrawnJoinOutside { place }.into(),
        Face::Inside => say::DrawnJoinInside { place }.into(),
    };
    let across = if join == HemJoin::Inseam {
        Across::Inseam
    } else {
        Across::Outseam
    };
    let map = back_at(garment, across)?;
    let hem = back.edge(EdgeId::Hem)?;
    let middle = hem.length() / 2.0;
    // Upright: both panels' hems rise alike from the join, the back's running against its own way.
    let on_front = front.edge(EdgeId::Hem)?;
    let rightwards = |v: Vec2| map * (Point::ORIGIN - v) - map * Point::ORIGIN;
    let (a, b) = match join {
        HemJoin::Inseam => (on_front.start_direction(), hem.start_direction()),
        HemJoin::Outseam => (on_front.end_direction(), hem.end_direction()),
        HemJoin::BackOfLeg => (Vec2::ZERO, hem.direction_at(middle)),
    };
    let frame = upright(unit(a + rightwards(b))?);
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (face, title),
        frame,
        face == Face::Inside,
    );
    let laid = [
        Laid {
            piece: PieceId::Front,
            map: Affine::IDENTITY,
        },
        Laid {
            piece: PieceId::Back,
            map,
        },
    ];
    let at = match join {
        HemJoin::BackOfLeg => map * hem.point_at(middle),
        HemJoin::Inseam | HemJoin::Outseam => front.point(across.point())?,
    };
    let here = frame * at;
    let turned = frame.inverse();
    let p = |x: f64, y: f64| turned * Point::new(here.x + x, here.y + y);
    figure.window(&[p(-HALF_MM, -BELOW_MM), p(HALF_MM, JOIN_MM)]);
    let rows = panels(&mut figure, &laid);
    let places = [-0.5, 0.5, -0.3, 0.3].map(|s| p(HALF_MM * s, offset_of(garment)));
    figure.note(row_note(garment, words, &rows), &places);
    let depth = garment.pattern.spec[MeasureId::HemDepth].to_mm();
    // On paper the inside is turned over: its left is the other end.
    let left = if face == Face::Inside {
        HALF_MM
    } else {
        -HALF_MM
    };
    figure.dimension(Side::Left, p(left, 0.0), p(left, depth), None);
    let row = offset_of(garment);
    figure.dimension(Side::Right, p(-left, 0.0), p(-left, row), None);
    if join != HemJoin::BackOfLeg {
        figure.point_at(p(0.0, JOIN_MM * 0.8), place);
    }
    if face == Face::Inside {
        thread_ends(&mut figure, garment, p(0.0, offset_of(garment)), &p);
    }
    Some(figure)
}

/// Distance of the row from the hem's edge.
fn offset_of(garment: &Garment) -> f64 {
    let seam = garment.seams.iter().find(|s| s.id == SeamId::Hem);
    seam.and_then(|s| s.rows.first())
        .map_or(0.0, |r| r.offset.to_mm())
}

/// What becomes of the threads at the join, inside.
fn thread_ends(
    figure: &mut Figure<'_>,
    garment: &Garment,
    at: Point,
    p: &dyn Fn(f64, f64) -> Point,
) {
    let Some(row) = garment.rows.iter().find(|r| r.seam == SeamId::Hem) else {
        return;
    };
    let y = offset_of(garment);
    let yarn = |colour: Colour, width: Length| Stroke {
        round: true,
        ..Stroke::plain(colour, width)
    };
    let thick = figure.on_paper(row.needle.diameter).max(Length::mm(0.26));
    match garment.doc.hem.ends {
        HemEnds::TiedByHand => {
            // The threads of both ends, drawn tight to a knot on the row, their tails short enough for the fold.
            let knot = p(0.0, y + 0.9);
            let tails = [
                [p(-1.6, y), p(-1.1, y + 0.2), p(-0.6, y + 0.6), knot],
                [p(1.6, y), p(1.1, y + 0.2), p(0.6, y + 0.6), knot],
                [knot, p(-0.5, y + 1.9), p(-1.2, y + 2.6), p(-1.4, y + 4.0)],
                [knot, p(0.4, y + 1.9), p(0.9, y + 2.7), p(1.3, y + 3.8)],
            ];
            for [a, b, c, d] in tails {
                let line = Path::cubic(a, b, c, d).to_bez();
                let rim = row.under.colour.mixed(Colour::BLACK, 0.5);
                figure.stroke("row:hem:1", &line, yarn(rim, thick + Length::mm(0.13)));
                figure.stroke("row:hem:1", &line, yarn(row.under.colour, thick));
            }
            let dot = open(&[knot, knot + Vec2::new(0.01, 0.0)]);
            figure.stroke(
                "row:hem:1",
                &dot,
                yarn(row.under.colour.mixed(Colour::BLACK, 0.5), thick * 3.6),
            );
            figure.stroke("row:hem:1", &dot, yarn(row.under.colour, thick * 3.0));
            figure.point_at(knot, key::DRAWN_THREADS_KNOTTED);
        }
        HemEnds::Overlapped => figure.point_at(at, key::DRAWN_ROW_RUNS_ON_OVER_ITS_START),
        HemEnds::Backtacked => figure.point_at(at, key::DRAWN_SEWN_BACK_AND_FORTH),
    }
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
    fn all_round_is_the_charted_hem() {
        let garment = sewn(32, 32);
        let plate = fitted(&garment, Words::english(), PlateId::Hem, draw).unwrap();
        // 16 1/2 inches.
        assert!(says(&plate, "hem, all round 41.9 cm"));
        assert!(says(
            &plate,
            "begins and ends at the inseam, threads tied by hand"
        ));
        let whole: Vec<_> = plate.stitches.iter().filter(|d| d.whole).collect();
        assert_eq!(whole.len(), 2, "the row on the front and on the back");
    }

    #[test]
    fn ridges_are_drawn_and_told_where_the_style_asks_for_them() {
        let mut loaded = ferryman();
        let ridges = |loaded: &style::Loaded| {
            let garment = sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32));
            let plate = fitted(&garment, Words::english(), PlateId::Hem, draw).unwrap();
            let parts = plate.sheet.layers.iter().flat_map(|l| &l.marks);
            let count = parts
                .filter(|m| m.part.as_deref() == Some("seam:hem"))
                .count();
            (count, says(&plate, "Roping"))
        };
        let (with, told) = ridges(&loaded);
        loaded.style.hem.roping = false;
        let (without, silent) = ridges(&loaded);
        // Some 64 ridges of 6.5 mm all round, each a valley and a lit flank, and those at the join.
        assert!(with >= without + 120, "{with} {without}");
        assert!(told && !silent);
    }
}
