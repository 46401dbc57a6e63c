//! Both ends of the waistband, enlarged, with the path of its rows in the order of sewing, the V and the button's
//! place; above them the whole band.

use draft::{ClothUse, PieceId};
use geometry::tolerance::{NO_LENGTH_MM, ROUNDING};
use geometry::{Affine, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment, StitchRow};
use style::{BandMethod, MeasureId, SeamId};
use trade::Length;
use words::{Said, Words, key, say};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::ends_words;
use super::page::{Draft, WIDE_MM};
use super::scale::PlateScale;
use super::tone::{set_back, tone};
use super::waistband::Measures;
use super::words::{amount, row_words, system};
use crate::palette::QUIET;

/// Runs whose directions differ by no larger a sine are one straight run.
const STRAIGHT_ON: f64 = 1e-6;

/// Cloth of the left end and, beyond the overlap, of the right end; round both, and between them.
const LEFT_MM: f64 = 52.0;
const MORE_MM: f64 = 16.0;
const ROUND_MM: f64 = 6.0;
const GAP_MM: f64 = 7.0;
/// Longest arrow of the sewing path on paper, and how far beside the row it runs.
const ARROW_MM: f64 = 13.0;
const BESIDE_MM: f64 = 2.3;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let m = Measures::of(garment)?;
    let whole_scale = PlateScale::no_larger_than((WIDE_MM - 12.0) / m.end);
    let title = say::DrawnWholeBand {
        scale: whole_scale.to_string(),
    };
    let mut whole = Figure::new(
        garment,
        words,
        whole_scale,
        (Face::Outside, title),
        Affine::IDENTITY,
        false,
    );
    let rows = band_rows(garment);
    cloth(
        &mut whole,
        &m,
        Affine::IDENTITY,
        -start_below(garment) - 1.0,
    );
    for row in &rows {
        whole.row(*row, Affine::IDENTITY);
    }
    let ends = ends(garment, words, scale, &m, &rows)?;
    let caption = match garment.doc.band.method {
        BandMethod::AllRound => key::DRAWN_ENDS_ALL_ROUND,
        BandMethod::TwoRow => key::DRAWN_ENDS_TWO_ROW,
    };
    Some(Draft {
        title: words.say(key::DRAWN_ENDS_TITLE),
        caption: words.say(caption),
        figures: vec![whole, ends],
    })
}

fn start_below(garment: &Garment) -> f64 {
    match garment.doc.band.method {
        BandMethod::AllRound => garment.doc.band.start_below.to_mm().clamp(0.0, 60.0),
        BandMethod::TwoRow => 0.0,
    }
}

fn band_rows(garment: &Garment) -> Vec<usize> {
    let rows = garment.rows.iter().enumerate();
    rows.filter(|(_, r)| r.seam == SeamId::Band && r.piece == PieceId::Band)
        .map(|(k, _)| k)
        .collect()
}

/// Band, body and shield.
fn cloth(figure: &mut Figure<'_>, m: &Measures, map: Affine, low: f64) {
    let quiet = set_back(figure.tone(ClothUse::Shell));
    let shell = tone(figure.garment, ClothUse::Shell, Face::Outside);
    let rect = |x0: f64, x1: f64, y0: f64, y1: f64| {
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| map * Point::new(x, y))
    };
    figure.area(
        "piece:front",
        &rect(0.0, m.waist, low, 0.0),
        quiet,
        Outline::Light,
    );
    figure.area(
        "piece:fly_shield",
        &rect(m.waist, m.end, low, 0.0),
        quiet,
        Outline::Light,
    );
    figure.area(
        "piece:band",
        &rect(0.0, m.end, 0.0, m.height),
        shell,
        Outline::Heavy,
    );
}

fn ends<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    m: &Measures,
    rows: &[usize],
) -> Option<Figure<'a>> {
    let p = Point::new;
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (
            Face::Outside,
            key::DRAWN_FIGURE_OUTSIDE_WEARERS_LEFT_END_AND_RIGHT_END,
        ),
        Affine::IDENTITY,
        false,
    );
    let low = -start_below(garment) - 9.0;
    let top = m.height + ROUND_MM;
    let overlap = m.end - m.waist;
    let left = LEFT_MM.min(m.end * 0.4);
    let right_from = m.waist - MORE_MM.min(m.waist * 0.2);
    let map = Affine::translate(Vec2::new(left + GAP_MM - right_from, 0.0));
    let set: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| {
            f.piece == PieceId::Band
                && matches!(f.kind, FixingKind::Button(_) | FixingKind::Buttonhole(_))
        })
        .collect();
    let mut said = Vec::new();
    for (map, from, to) in [
        (Affine::IDENTITY, -ROUND_MM, left),
        (map, right_from, m.end + ROUND_MM),
    ] {
        figure.next_window(&[map * p(from, low), map * p(to, top)]);
        cloth(&mut figure, m, map, low - 9.0);
        for row in rows {
            figure.row(*row, map);
        }
        for fixing in &set {
            figure.fixing(fixing, map, false);
        }
        for row in rows {
            if let Some(row) = garment.rows.get(*row) {
                path_of(&mut figure, row, map, (from, to), &mut said);
            }
        }
    }
    for (map, from, to) in [
        (Affine::IDENTITY, -ROUND_MM, left),
        (map, right_from, m.end + ROUND_MM),
    ] {
        figure.next_window(&[map * p(from, low), map * p(to, top)]);
        for fixing in set.iter().filter(|f| f.at.x > from && f.at.x < to) {
            hardware(&mut figure, fixing, m, map);
        }
    }
    let names = [
        (
            key::DRAWN_LEFT_FRONT,
            p(left * 0.5, low * 0.6),
            Affine::IDENTITY,
        ),
        (
            key::DRAWN_RIGHT_FRONT,
            p(m.waist - MORE_MM * 0.45, low * 0.75),
            map,
        ),
        (
            key::DRAWN_FLY_SHIELD,
            p(m.waist + overlap * 0.6, low * 0.6),
            map,
        ),
    ];
    for (name, at, map) in names {
        figure.name(
            name,
            &[
                map * at,
                map * (at + Vec2::new(0.0, -3.0)),
                map * (at + Vec2::new(6.0, 2.0)),
            ],
            QUIET,
        );
    }
    sizes(&mut figure, m, map);
    for (x, out) in [(p(left, low), 1.0), (map * p(right_from, low), -1.0)] {
        figure.break_line(x, x + Vec2::new(0.0, top - low), Vec2::new(out, 0.0));
    }
    Some(figure)
}

/// The straight runs of a row between its corners.
fn runs(row: &StitchRow) -> Vec<(Point, Point)> {
    let mut out: Vec<(Point, Point)> = Vec::new();
    for segment in row.path.segments() {
        let bez = segment.to_cubic();
        let (a, b) = (bez.p0, bez.p3);
        match out.last_mut() {
            Some(last)
                if (last.1 - last.0).cross(b - a).abs()
                    <= STRAIGHT_ON * (last.1 - last.0).hypot() * (b - a).hypot()
                    && (last.1 - last.0).dot(b - a) > 0.0 =>
            {
                last.1 = b;
            }
            _ => out.push((a, b)),
        }
    }
    out
}

/// Arrows and numbers along a row's runs, those that show between two places of the band.
fn path_of(
    figure: &mut Figure<'_>,
    row: &StitchRow,
    map: Affine,
    (from, to): (f64, f64),
    said: &mut Vec<Said>,
) {
    let all = runs(row);
    let count = all.len();
    for (k, (a, b)) in all.iter().enumerate() {
        let Some((a, b)) = between(*a, *b, from + 2.0, to - 2.0) else {
            continue;
        };
        let room = (b - a).hypot();
        let long = (ARROW_MM / figure.on_paper(Length::mm(1.0)).to_mm()).min(room * 0.7);
        let along = (b - a) / room.max(NO_LENGTH_MM);
        let middle = a.midpoint(b);
        // Only a row along the seam has the middle of the band to its left.
        let lower =
            count == 1 && a.y < figure.garment.pattern.spec[MeasureId::BandHeight].to_mm() / 2.0;
        // Those of the V stand outside it, the others inside the band.
        let beside = if lower || k > 2 {
            BESIDE_MM
        } else {
            -BESIDE_MM
        };
        figure.sewing_arrow(
            map * (middle - along * (long / 2.0)),
            map * (middle + along * (long / 2.0)),
            beside,
        );
        let step = step_words(figure.garment, row, k, count);
        if !said.contains(&step) {
            said.push(step.clone());
            let at: Vec<Point> = [0.3, 0.7, 0.2, 0.8, 0.5]
                .iter()
                .map(|s| map * a.lerp(b, *s))
                .collect();
            figure.note(step, &at);
        }
    }
}

/// What of a straight line lies between two places along the band.
fn between(a: Point, b: Point, from: f64, to: f64) -> Option<(Point, Point)> {
    let (x0, x1) = (a.x.min(b.x), a.x.max(b.x));
    if x1 < from || x0 > to {
        return None;
    }
    if (x1 - x0).abs() < ROUNDING {
        return Some((a, b));
    }
    let at = |x: f64| a.lerp(b, ((x - a.x) / (b.x - a.x)).clamp(0.0, 1.0));
    let (p, q) = if a.x < b.x {
        (at(from), at(to))
    } else {
        (at(to), at(from))
    };
    ((q - p).hypot() > 1.0).then_some((p, q))
}

/// What is done on one run of a row.
fn step_words(garment: &Garment, row: &StitchRow, k: usize, count: usize) -> Said {
    let units = system(&garment.collection);
    let shown = |mm: f64| amount(Length::mm(mm), units);
    let made = row_words(&garment.collection, row);
    let height = garment.pattern.spec[MeasureId::BandHeight].to_mm();
    let first = row.path.start();
    let number = row.number;
    if count == 1 {
        return say::DrawnRowAlong {
            away: shown(first.y),
            ends: ends_words(row),
            made,
            row: number,
            stitches: row.stitches().to_string(),
        }
        .into();
    }
    match k {
        0 => say::DrawnRowBegins {
            begins: row.begins.said(),
            below: shown(-first.y),
            from_end: shown(first.x),
            made,
            row: number,
        }
        .into(),
        1 => {
            let top = row
                .path
                .segments()
                .get(1)
                .map_or(height, |s| s.to_cubic().p0.y);
            say::DrawnTurnCorner {
                below: shown(height - top),
            }
            .into()
        }
        2 => key::DRAWN_TURN_DOWN.into(),
        3 => key::DRAWN_TURN_IN.into(),
        4 => say::DrawnTurnOut {
            ends: row.ends.said(),
            stitches: row.stitches().to_string(),
        }
        .into(),
        _ => say::DrawnRowGoesOn { row: number }.into(),
    }
}

/// Button and buttonhole: place, size.
fn hardware(figure: &mut Figure<'_>, fixing: &Fixing, m: &Measures, map: Affine) {
    let p = Point::new;
    let garment = figure.garment;
    let units = system(&garment.collection);
    let name = garment
        .collection
        .trims
        .get(fixing.from.code())
        .map_or(fixing.from.code(), |t| t.name.as_str());
    let derived = garment.doc.band.method == BandMethod::AllRound;
    match fixing.kind {
        FixingKind::Button(d) => {
            let at = map * fixing.at;
            let how = if derived {
                key::DRAWN_ON_THE_POINT_OF_THE_V
            } else {
                key::DRAWN_IN_THE_MIDDLE_OF_THE_BANDS_HEIGHT
            };
            figure.note(
                say::DrawnBandButton {
                    how,
                    name,
                    size: amount(d, units),
                },
                &[at],
            );
            figure.dimension(Side::Above, at, map * p(m.end, m.height), None);
            figure.dimension(Side::Right, map * p(m.end, 0.0), at, None);
        }
        FixingKind::Buttonhole(length) => {
            let eye = fixing.at + fixing.along * (length.to_mm() / 2.0);
            let foot = fixing.at - fixing.along * (length.to_mm() / 2.0);
            let yarn = &garment.doc.bartacks.yarn;
            let yarn = garment
                .collection
                .yarns
                .get(yarn)
                .map_or(yarn.as_str(), |y| y.name.as_str());
            let hole = say::DrawnBandHole {
                length: amount(length, units),
                yarn,
            };
            figure.note(hole, &[map * fixing.at]);
            figure.dimension(Side::Above, p(0.0, m.height), eye, None);
            figure.dimension(Side::Above, eye, foot, None);
            figure.dimension(Side::Left, p(0.0, 0.0), eye, None);
        }
        _ => {}
    }
}

/// Height, overlap, start of the row, distances of the rows and the angle of the V.
fn sizes(figure: &mut Figure<'_>, m: &Measures, map: Affine) {
    let p = Point::new;
    let garment = figure.garment;
    figure.dimension(Side::Left, p(0.0, 0.0), p(0.0, m.height), None);
    figure.dimension(
        Side::Below,
        map * p(m.waist, 0.0),
        map * p(m.end, 0.0),
        Some(key::DRAWN_OVERLAP),
    );
    let row_at = |number: usize| {
        let rows = garment.rows.iter();
        rows.filter(|r| r.seam == SeamId::Band && r.piece == PieceId::Band)
            .find(|r| r.number == number)
    };
    if let Some(row) = row_at(1) {
        figure.dimension(
            Side::Right,
            map * p(m.end, 0.0),
            map * p(m.end, row.path.end().y),
            None,
        );
    }
    for row in garment
        .rows
        .iter()
        .filter(|r| r.seam == SeamId::Band && r.piece == PieceId::Band && r.number > 1)
    {
        let all = runs(row);
        match all.as_slice() {
            [up, along, _, inward, outward] => {
                figure.dimension(Side::Left, p(0.0, 0.0), up.0, None);
                figure.dimension(Side::Above, p(0.0, m.height), along.0, None);
                figure.dimension(
                    Side::Right,
                    map * p(m.end, along.1.y),
                    map * p(m.end, m.height),
                    None,
                );
                figure.angle(
                    map * inward.1,
                    inward.0 - inward.1,
                    outward.1 - outward.0,
                    14.0,
                );
            }
            _ => figure.dimension(
                Side::Right,
                map * p(m.end, row.path.end().y),
                map * p(m.end, m.height),
                None,
            ),
        }
    }
    figure.over_break(
        Side::Below,
        (p(0.0, 0.0), map * p(m.end, 0.0)),
        Length::mm(m.end),
        Some(key::DRAWN_WHOLE_LENGTH),
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{Plate, PlateId, fitted};
    use crate::samples::{ferryman, raw, sewn, texts};
    use style::Size;

    fn words(plate: &Plate) -> Vec<String> {
        texts(&plate.sheet)
            .iter()
            .map(|t| t.words.clone())
            .collect()
    }

    #[test]
    fn the_button_stands_on_the_point_of_the_v() {
        // Rows 2 mm from seam, top and end of a band of 38 mm: the legs of 64 degrees start 34 mm apart,
        // so they meet 17 mm / tan 32 = 27.2 mm in from the row, 29.2 mm from the end, at 19 mm.
        let plate = fitted(&raw(32, 32), Words::english(), PlateId::WaistbandEnds, draw).unwrap();
        let all = words(&plate);
        for said in ["2.92 cm", "1.9 cm", "64°", "overlap 4.2 cm", "1 cm", "2 mm"] {
            assert!(all.iter().any(|w| w == said), "{said} not in {all:?}");
        }
    }

    #[test]
    fn numbers_follow_the_order_of_sewing() {
        let plate = fitted(&raw(32, 32), Words::english(), PlateId::WaistbandEnds, draw).unwrap();
        let all = words(&plate);
        let place = |start: &str| all.iter().position(|w| w.starts_with(start)).unwrap();
        let steps = [
            "Row 1, from the left end",
            "Row 2 begins",
            "Turn at the corner",
            "Turn; down the right end",
            "Turn; slant in",
            "Turn on the point",
        ];
        assert!(steps.windows(2).all(|w| place(w[0]) < place(w[1])));
        // Lower row and top on both sides of the break, up, down, in and out.
        let arrows = plate.sheet.layers.iter().filter(|l| l.name == "sewing");
        assert_eq!(arrows.count(), 8);
    }

    #[test]
    fn the_whole_band_shows_every_stitch_of_every_row() {
        let garment = sewn(32, 32);
        let plate = fitted(&garment, Words::english(), PlateId::WaistbandEnds, draw).unwrap();
        for (k, row) in garment
            .rows
            .iter()
            .enumerate()
            .filter(|(_, r)| r.seam == SeamId::Band)
        {
            let whole = plate
                .stitches
                .iter()
                .find(|d| d.row == k && d.whole)
                .unwrap();
            assert_eq!(whole.drawn, row.stitches());
        }
    }

    #[test]
    fn a_band_in_two_rows_has_no_v() {
        let mut loaded = ferryman();
        loaded.style.band.method = BandMethod::TwoRow;
        let garment = sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32));
        let plate = fitted(&garment, Words::english(), PlateId::WaistbandEnds, draw).unwrap();
        let all = words(&plate);
        assert!(all.iter().all(|w| !w.contains('°') && !w.contains("slant")));
    }
}
