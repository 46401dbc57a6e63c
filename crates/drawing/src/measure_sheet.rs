//! How to measure: the pieces laid flat with a numbered dimension for every measure of the chart.
//!
//! Every number is that of its measure ([`MeasureId::number`]), so a chart that prints the same numbers needs no other key. The lines are those the measure is
//! defined by, so the diagrams cannot disagree with the chart.

use draft::measure::{Measurable, Run};
use draft::{EdgeId, LineId, Pattern, Piece, PieceId, PointId};
use geometry::{Affine, Path, Point, Vec2, bounds_of};

use crate::dimension::unit;
use crate::measure_board::{Board, band_on};
use crate::palette::{TINT, TINT_UPPER};
use crate::sheet::Sheet;
use style::{Level, MeasureId};
use words::{Words, key};

/// Printed distance of a dimension line from the edge it measures.
const BESIDE_MM: f64 = 5.0;
/// The largest drawing of the opened leg, within an upright A4 page.
const LEG_WIDE_MM: f64 = 132.0;
const LEG_TALL_MM: f64 = 138.0;
/// The upper front and back are drawn at one to this, beside the leg.
const UPPER_ONE_TO: f64 = 4.5;
/// Clear cloth between front and back in the opened leg.
const GAP_MM: f64 = 110.0;
/// Cloth shown below the lowest point measured where a panel is broken off.
const BELOW_MM: f64 = 45.0;

/// The diagrams, at their printed size: the leg, front and back drawn apart, the upper front and back, the band,
/// and the small parts. Together they show every measure once.
pub fn measure_sheets(pattern: &Pattern, words: &Words) -> Vec<Sheet> {
    vec![
        leg(pattern, words),
        upper_front(pattern, words),
        upper_back(pattern, words),
        band(pattern, words),
        back_pocket(pattern, words),
        coin_pocket(pattern, words),
        belt_loop(pattern, words),
    ]
}

/// Left front and left back side by side with their outseams facing, so that girths run across both.
fn leg(pattern: &Pattern, words: &Words) -> Sheet {
    let points = |id| {
        let piece = pattern.piece(id);
        piece
            .map(|p| p.polygon(trade::Length::mm(20.0)))
            .unwrap_or_default()
    };
    let (front, back) = (
        bounds_of(&points(PieceId::Front)),
        bounds_of(&points(PieceId::Back)),
    );
    let turned = Affine::new([-1.0, 0.0, 0.0, 1.0, front.x1 + GAP_MM + back.x1, 0.0]);
    let wide = front.width() + GAP_MM + back.width();
    let tall = front.union(back).height() + 2.0 * pattern.spec[MeasureId::YokeCentre].to_mm();
    let mut board = Board::new(pattern, words, (wide / LEG_WIDE_MM).max(tall / LEG_TALL_MM));
    board.lay(PieceId::Front, Affine::IDENTITY);
    board.lay(PieceId::PocketFacing, Affine::IDENTITY);
    board.lay(PieceId::Back, turned);
    board.lay(PieceId::Yoke, turned * yoke_on_back(pattern));

    let height = pattern.spec[MeasureId::BandHeight].to_mm();
    front_area(&mut board);
    if let Some(waist) = front_waist(&board) {
        let side = last_direction(board.edge(PieceId::PocketFacing, EdgeId::Side));
        let centre = first_direction(board.edge(PieceId::Front, EdgeId::Fly)).map(|d| -d);
        board.area(
            Some(PieceId::Band),
            &band_on(&waist, height, side, centre),
            TINT_UPPER,
        );
    }
    // The seam is drawn where the back has it: the yoke, turned flat, bends a little away from it.
    board.draw(PieceId::Yoke, TINT);
    board.draw(PieceId::Back, TINT);
    if let Some(top) = board.edge(PieceId::Yoke, EdgeId::Top) {
        let side = last_direction(board.edge(PieceId::Yoke, EdgeId::Side));
        let centre = first_direction(board.edge(PieceId::Yoke, EdgeId::Centre)).map(|d| -d);
        // Turned left for right: the band lies on the other side of the run.
        board.area(
            Some(PieceId::Band),
            &band_on(&top, -height, side.map(|d| -d), centre.map(|d| -d)),
            TINT_UPPER,
        );
    }
    for (id, line) in [
        (PieceId::Front, LineId::FlyStitch),
        (PieceId::Back, LineId::PocketLeft),
    ] {
        if let Some(line) = board.inner(id, line) {
            board.dashed_line(&line);
        }
    }
    for (id, side) in [(PieceId::Front, 1.0), (PieceId::Back, -1.0)] {
        if let Some(hem) = board.edge(id, EdgeId::Hem) {
            let by = side * pattern.spec[MeasureId::HemDepth].to_mm();
            let folded = crate::dimension::beside(&hem, by);
            board.dashed_line(&folded);
        }
    }

    for measure in [MeasureId::Seat, MeasureId::Thigh, MeasureId::Knee] {
        board.measure(measure, 0.0);
    }
    board.measure(MeasureId::HemDepth, 0.0);
    for measure in [
        MeasureId::FrontRise,
        MeasureId::BackRise,
        MeasureId::Inseam,
        MeasureId::Outseam,
    ] {
        board.measure(measure, BESIDE_MM);
    }
    hem(&mut board);
    let y = 0.5 * (front.y0 - pattern.spec.level(Level::Knee).to_mm());
    let back_x = (turned * back.center()).x;
    board.finish(
        key::MEASURING_LEG,
        &[
            (key::MEASURING_NAME_FRONT, Point::new(front.center().x, y)),
            (key::MEASURING_NAME_BACK, Point::new(back_x, y)),
        ],
    )
}

/// The hem is taken along front and back; each dimension stands below its own panel.
fn hem(board: &mut Board) {
    let front = board.edge(PieceId::Front, EdgeId::Hem);
    let back = board.edge(PieceId::Back, EdgeId::Hem).map(|mut run| {
        // Both from left to right, so that both dimensions stand on the same side.
        run.reverse();
        run
    });
    let runs: Vec<Vec<Point>> = front.into_iter().chain(back).collect();
    board.dimension(MeasureId::Hem, &runs, BESIDE_MM);
}

/// The front with its facing showing in the pocket mouth.
fn front_area(board: &mut Board) {
    board.draw(PieceId::PocketFacing, TINT_UPPER);
    board.draw(PieceId::Front, TINT);
}

fn front_waist(board: &Board) -> Option<Vec<Point>> {
    let mut waist = board.edge(PieceId::PocketFacing, EdgeId::Waist)?;
    waist.extend(
        board
            .edge(PieceId::Front, EdgeId::Waist)?
            .into_iter()
            .skip(1),
    );
    Some(waist)
}

fn first_direction(run: Option<Vec<Point>>) -> Option<Vec2> {
    match run?[..] {
        [a, b, ..] => unit(b - a),
        _ => None,
    }
}

fn last_direction(run: Option<Vec<Point>>) -> Option<Vec2> {
    match run?[..] {
        [.., a, b] => unit(b - a),
        _ => None,
    }
}

/// Where the yoke lies when its seam is laid on that of the back, centre on centre.
fn yoke_on_back(pattern: &Pattern) -> Affine {
    let chord = |piece: Option<&Piece>, edge: EdgeId, turned: bool| {
        let path = piece?.edge(edge)?;
        let path: Path = if turned {
            path.reversed()
        } else {
            path.clone()
        };
        Some((path.start(), unit(path.end() - path.start())?))
    };
    let yoke = chord(pattern.piece(PieceId::Yoke), EdgeId::Lower, false);
    let back = chord(pattern.piece(PieceId::Back), EdgeId::Top, true);
    let (Some((from, a)), Some((to, b))) = (yoke, back) else {
        return Affine::IDENTITY;
    };
    Affine::translate(to.to_vec2())
        * Affine::rotate(a.cross(b).atan2(a.dot(b)))
        * Affine::translate(-from.to_vec2())
}

/// The band buttoned and laid flat, front uppermost: half its length is seen.
fn band(pattern: &Pattern, words: &Words) -> Sheet {
    let half = pattern.run_length(Run::BandJoin).map_or(0.0, |l| l.to_mm()) / 2.0;
    let overlap = pattern
        .run_length(Run::BandOverlap)
        .map_or(0.0, |l| l.to_mm());
    let height = pattern.spec[MeasureId::BandHeight].to_mm();
    let p = Point::new;
    let mut board = Board::new(pattern, words, (half / LEG_WIDE_MM).max(3.0));
    let (left, right) = (-half / 2.0, half / 2.0);
    let rectangle = |x0, x1| [p(x0, 0.0), p(x1, 0.0), p(x1, height), p(x0, height)];
    board.area(Some(PieceId::Band), &rectangle(left, 0.0), TINT);
    // The wearer's left is on the right of the drawing, and lies on top.
    board.area(Some(PieceId::Band), &rectangle(0.0, right), TINT_UPPER);
    board.dashed_line(&[p(overlap, 0.0), p(overlap, height)]);
    board.dimension(
        MeasureId::Waist,
        &[vec![p(left, height), p(right, height)]],
        BESIDE_MM,
    );
    board.dimension(
        MeasureId::BandHeight,
        &[vec![p(left, height), p(left, 0.0)]],
        BESIDE_MM,
    );
    board.dimension(
        MeasureId::BandOverlap,
        &[vec![p(0.0, 0.0), p(overlap, 0.0)]],
        BESIDE_MM,
    );
    board.finish(
        key::MEASURING_BAND,
        &[
            (key::MEASURING_NAME_RIGHT, p(left * 0.5, height / 2.0)),
            (key::MEASURING_NAME_LEFT, p(right * 0.5, height / 2.0)),
        ],
    )
}

/// The left front above the crotch, without the band: fly and pocket mouth.
fn upper_front(pattern: &Pattern, words: &Words) -> Sheet {
    let mut board = Board::new(pattern, words, UPPER_ONE_TO);
    board.lay(PieceId::Front, Affine::IDENTITY);
    board.lay(PieceId::PocketFacing, Affine::IDENTITY);
    board.lay(PieceId::FlyFacing, fly_on_front(pattern));
    let lowest = |id, point| {
        let at = pattern.piece(id).and_then(|p| p.point(point));
        at.map_or(f64::INFINITY, |p| p.y)
    };
    let low =
        lowest(PieceId::Front, PointId::FlyFoot).min(lowest(PieceId::Front, PointId::MouthSide));
    let low = (if low.is_finite() { low } else { 0.0 }) - BELOW_MM;
    board.only_above(low);
    front_area(&mut board);
    let hidden = [
        board.edge(PieceId::PocketFacing, EdgeId::Inner),
        // The coin pocket is seen through the left front only where the style sets it there.
        (!pattern.spec.coin_on_right)
            .then(|| board.inner(PieceId::PocketFacing, LineId::CoinPocket))
            .flatten(),
        board.edge(PieceId::FlyFacing, EdgeId::Foot),
        board.edge(PieceId::FlyFacing, EdgeId::Back),
    ];
    for line in hidden.into_iter().flatten() {
        board.dashed_line(&line);
    }
    if let Some(ends) = board.across(&[PieceId::Front], low) {
        board.break_line(ends[0], ends[1]);
    }
    for measure in [
        MeasureId::FlyLength,
        MeasureId::FlyWidth,
        MeasureId::MouthWidth,
        MeasureId::MouthDepth,
    ] {
        board.measure(measure, BESIDE_MM);
    }
    board.finish(key::MEASURING_UPPER_FRONT, &[])
}

/// Where the fly facing lies when its edge is sewn to the centre front.
fn fly_on_front(pattern: &Pattern) -> Affine {
    let fly = pattern
        .piece(PieceId::Front)
        .and_then(|p| p.edge(EdgeId::Fly));
    fly.map_or(Affine::IDENTITY, |fly| {
        let down = fly.start_direction();
        Affine::translate(fly.start().to_vec2())
            * Affine::rotate(down.atan2() + std::f64::consts::FRAC_PI_2)
    })
}

/// The right back above the foot of its pocket, yoke laid on.
fn upper_back(pattern: &Pattern, words: &Words) -> Sheet {
    let mut board = Board::new(pattern, words, UPPER_ONE_TO);
    board.lay(PieceId::Back, Affine::IDENTITY);
    board.lay(PieceId::Yoke, yoke_on_back(pattern));
    let pocket = board
        .inner(PieceId::Back, LineId::PocketRight)
        .unwrap_or_default();
    let low = bounds_of(&pocket).y0 - BELOW_MM;
    board.only_above(low);
    // The seam is drawn where the back has it: the yoke, turned flat, bends a little away from it.
    board.draw(PieceId::Yoke, TINT);
    board.draw(PieceId::Back, TINT);
    board.area(Some(PieceId::BackPocketRight), &pocket, TINT_UPPER);
    if let Some(ends) = board.across(&[PieceId::Back], low) {
        board.break_line(ends[0], ends[1]);
    }
    for measure in [MeasureId::YokeCentre, MeasureId::YokeSide] {
        board.measure(measure, BESIDE_MM);
    }
    for measure in [
        MeasureId::BackPocketFromYoke,
        MeasureId::BackPocketFromCentre,
    ] {
        board.measure(measure, 0.0);
    }
    board.finish(key::MEASURING_UPPER_BACK, &[])
}

fn back_pocket(pattern: &Pattern, words: &Words) -> Sheet {
    let mut board = Board::new(pattern, words, 2.5);
    board.lay(PieceId::BackPocketLeft, Affine::IDENTITY);
    board.draw(PieceId::BackPocketLeft, TINT);
    board.measure(MeasureId::BackPocketWidth, BESIDE_MM);
    board.measure(MeasureId::BackPocketLength, 0.0);
    board.finish(key::MEASURING_BACK_POCKET, &[])
}

fn coin_pocket(pattern: &Pattern, words: &Words) -> Sheet {
    let mut board = Board::new(pattern, words, 2.0);
    board.lay(PieceId::CoinPocket, Affine::IDENTITY);
    board.draw(PieceId::CoinPocket, TINT);
    board.measure(MeasureId::CoinWidth, BESIDE_MM);
    board.measure(MeasureId::CoinDepth, 0.0);
    board.finish(key::MEASURING_COIN_POCKET, &[])
}

/// One loop as sewn on, its ends turned under and held by bartacks.
fn belt_loop(pattern: &Pattern, words: &Words) -> Sheet {
    let mut board = Board::new(pattern, words, 1.0);
    board.lay(PieceId::LoopStrip, Affine::IDENTITY);
    let point = |id| {
        let strip = pattern.piece(PieceId::LoopStrip)?;
        strip.point(id)
    };
    if let (Some(left), Some(right), Some(top)) = (
        point(PointId::FoldLeft),
        point(PointId::FoldRight),
        point(PointId::LoopTop),
    ) {
        // The turned ends reach a little beyond the bartacks.
        let (low, high) = (left.y - 3.0, top.y + 3.0);
        let p = Point::new;
        board.area(
            Some(PieceId::LoopStrip),
            &[
                p(left.x, low),
                p(right.x, low),
                p(right.x, high),
                p(left.x, high),
            ],
            TINT,
        );
        for y in [left.y, top.y] {
            board.full_line(&[p(left.x, y), p(right.x, y)]);
        }
    }
    board.measure(MeasureId::LoopWidth, BESIDE_MM);
    board.measure(MeasureId::LoopLength, 0.0);
    board.finish(key::MEASURING_LOOP, &[])
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::dimension::CIRCLE_MM;
    use crate::samples::{ferryman, texts, words_stand_clear};
    use crate::sheet::Shape;
    use draft::{Spec, draft};

    fn numbers(sheet: &Sheet) -> Vec<(usize, Point)> {
        let numbers = texts(sheet).into_iter().filter(|t| t.bold);
        numbers.map(|t| (t.words.parse().unwrap(), t.at)).collect()
    }

    #[test]
    fn every_measure_has_one_number_in_every_size_and_numbers_stand_apart() {
        let doc = ferryman().style;
        for size in doc.sizes.all() {
            let sheets = measure_sheets(&draft(&Spec::of(&doc, size)).pattern, Words::english());
            let mut all: Vec<usize> = Vec::new();
            for sheet in &sheets {
                words_stand_clear(sheet);
                let here = numbers(sheet);
                for (k, (a, at)) in here.iter().enumerate() {
                    for (b, other) in &here[k + 1..] {
                        let far = (*other - *at).hypot();
                        assert!(far >= 2.0 * CIRCLE_MM, "{size} {}: {a} on {b}", sheet.title);
                    }
                }
                all.extend(here.iter().map(|(number, _)| number));
            }
            for measure in MeasureId::ALL {
                let shown = all.iter().filter(|number| **number == measure.number());
                let times = shown.count();
                assert_eq!(times, 1, "{measure:?} is shown {times} times in {size}");
            }
            assert_eq!(all.len(), MeasureId::ALL.len(), "{size}");
        }
    }

    #[test]
    fn sheets_fit_an_upright_page() {
        let doc = ferryman().style;
        for size in doc.sizes.all() {
            for sheet in measure_sheets(&draft(&Spec::of(&doc, size)).pattern, Words::english()) {
                let (wide, tall) = (sheet.width.to_mm(), sheet.height.to_mm());
                assert!(
                    wide <= 172.0 && tall <= 227.0,
                    "{size} {}: {wide} x {tall}",
                    sheet.title
                );
            }
        }
    }

    #[test]
    fn dimension_lines_are_as_long_as_the_measure_at_their_scale() {
        let doc = ferryman().style;
        let pattern = draft(&Spec::of(&doc, style::Size::new(32, 32))).pattern;
        // Drawn on the cloth at 1:2, 1:2.5 and 1:1.
        for (sheet, measure, one_to) in [
            (
                coin_pocket(&pattern, Words::english()),
                MeasureId::CoinDepth,
                2.0,
            ),
            (
                back_pocket(&pattern, Words::english()),
                MeasureId::BackPocketLength,
                2.5,
            ),
            (
                belt_loop(&pattern, Words::english()),
                MeasureId::LoopLength,
                1.0,
            ),
        ] {
            let wanted = pattern.measure(measure).unwrap().to_mm() / one_to;
            let lines = sheet
                .layers
                .iter()
                .find(|l| l.name == "dimensions")
                .unwrap();
            let drawn = lines.marks.iter().any(|m| match &m.shape {
                Shape::Line { path, .. } => {
                    let long: f64 = path
                        .segments()
                        .map(|s| geometry::Path::new(vec![s]).length().to_mm())
                        .sum();
                    (long - wanted).abs() < 1e-3
                }
                _ => false,
            });
            assert!(drawn, "{measure:?}");
        }
    }

    /// The left front shows the coin pocket behind it where the style sets it on the left, and only there.
    #[test]
    fn the_left_front_shows_the_coin_pocket_of_its_own_side() {
        let lines = |side: style::Side| {
            let mut doc = ferryman().style;
            doc.pockets.coin.side = side;
            let sheet = upper_front(
                &draft(&Spec::of(&doc, style::Size::new(32, 32))).pattern,
                words::Words::english(),
            );
            sheet
                .layers
                .iter()
                .map(|layer| layer.marks.len())
                .sum::<usize>()
        };
        assert_eq!(lines(style::Side::Left), lines(style::Side::Right) + 1);
    }

    #[test]
    fn a_run_that_ends_at_the_band_seam_goes_on_over_the_band() {
        let doc = ferryman().style;
        let pattern = draft(&Spec::of(&doc, style::Size::new(32, 32))).pattern;
        let mut board = Board::new(&pattern, Words::english(), 1.0);
        for id in [PieceId::Front, PieceId::PocketFacing] {
            board.lay(id, Affine::IDENTITY);
        }
        for measure in [MeasureId::FrontRise, MeasureId::Outseam, MeasureId::Inseam] {
            let wanted = pattern.measure(measure).unwrap().to_mm();
            let runs = board.runs(draft::measure::taking(measure).take);
            let drawn: f64 = runs
                .iter()
                .map(|r| geometry::polyline_length(r).to_mm())
                .sum();
            // Curves are drawn as chords of 2 mm.
            assert!(
                (drawn - wanted).abs() < 0.1,
                "{measure:?}: {drawn} is not {wanted}"
            );
            assert_eq!(runs.len(), 1, "{measure:?}");
        }
    }

    #[test]
    fn a_chart_of_noughts_still_draws() {
        let mut doc = ferryman().style;
        doc.chart.clear();
        let pattern = draft(&Spec::of(&doc, style::Size::new(32, 32))).pattern;
        for sheet in measure_sheets(&pattern, Words::english()) {
            assert!(crate::svg(&sheet).ends_with("</svg>\n"));
        }
    }
}
