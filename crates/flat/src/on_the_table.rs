#![allow(clippy::unwrap_used)]
//! Whether a pair lies as a pair does on a table, for charts as unlike as they get: the fork where the rise ends, the legs
//! beside one another, the outer line calm, and no seam longer than it is.

use draft::measure::{self, MeasureId};
use draft::{EdgeId, PieceId, PointId};
use geometry::{Path, Point};
use sewing::{Face, Garment};
use trade::{Length, Share};

use crate::laid::LaidGarment;
use crate::looks::LEG_FROM_SHARES;
use crate::mapping::Flat;
use crate::sample::{impossible, unlike};
use crate::side::{Half, Hand, View};

fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|w| (w[1] - w[0]).hypot()).sum()
}

fn edge(garment: &Garment, piece: PieceId, edge: EdgeId) -> &Path {
    garment.pattern.piece(piece).unwrap().edge(edge).unwrap()
}

/// An edge as it lies on its own face.
fn drawn(garment: &Garment, flat: &Flat, piece: PieceId, id: EdgeId) -> Vec<Point> {
    let points = edge(garment, piece, id).dense(Length::mm(1.0)).into_iter();
    match piece {
        PieceId::Back => points.map(|p| flat.back_unfolded(p)).collect(),
        _ => points.map(|p| flat.front(p).at).collect(),
    }
}

fn charted(garment: &Garment, measure: MeasureId) -> f64 {
    garment.pattern.spec[measure].to_mm()
}

fn pairs() -> Vec<(&'static str, Garment, Flat)> {
    let pairs = unlike().into_iter();
    pairs
        .map(|(name, garment)| {
            let flat = Flat::new(&garment.pattern).unwrap();
            (name, garment, flat)
        })
        .collect()
}

/// The lowest level at which anything is tucked away: below it the leg lies flat in its whole girth.
fn leg_y(flat: &Flat) -> f64 {
    let mut y = flat.hem_y;
    while y < 0.0 {
        let tucked = flat.level(y).tucked;
        if (tucked.front + tucked.back).abs() > 1e-6 {
            break;
        }
        y += 1.0;
    }
    y
}

#[test]
fn the_fork_is_where_the_front_rise_ends() {
    for (name, garment, flat) in pairs() {
        let top = garment.pattern.piece(PieceId::Front).unwrap();
        let top = flat.front(top.point(PointId::WaistCentre).unwrap()).at.y + flat.band_height;
        let below = top - flat.fork().y;
        let rise = charted(&garment, MeasureId::FrontRise);
        // The seam itself is curved, so straight down it is a little less, never more.
        assert!(
            below < rise + 0.5 && below > rise - 25.0,
            "{name}: the legs part {below:.0} mm below the band, the rise is {rise:.0}"
        );
        assert!(flat.fork().x.abs() < 1e-3, "{name}: {:?}", flat.fork());
    }
}

#[test]
fn both_rises_are_seen_down_to_the_fork() {
    for (name, garment, flat) in pairs() {
        let front =
            [EdgeId::Fly, EdgeId::Crotch].map(|id| drawn(&garment, &flat, PieceId::Front, id));
        let back = drawn(&garment, &flat, PieceId::Back, EdgeId::Seat);
        let seat = garment.pattern.spec.level(measure::Level::Seat).to_mm();
        for line in front.iter().chain([&back]) {
            // Below the seat the two halves meet in the middle; above, the front leans away from it a little.
            let low = line.iter().filter(|p| p.y < seat);
            for p in low {
                assert!(p.x.abs() < 1.0, "{name}: the centre seam is at {p:?}");
            }
        }
        for line in [&front[1], &back] {
            let ends = [line.first().unwrap(), line.last().unwrap()];
            let lowest = ends.into_iter().min_by(|a, b| a.y.total_cmp(&b.y)).unwrap();
            assert!(
                (*lowest - flat.fork()).hypot() < 1.5,
                "{name}: ends at {lowest:?}"
            );
        }
        // Every point of the seat seam faces whoever looks at the back.
        for p in edge(&garment, PieceId::Back, EdgeId::Seat).dense(Length::mm(2.0)) {
            assert_eq!(flat.back(p).half, Half::Back, "{name}: {p:?}");
        }
    }
}

/// The share of every long seam that is seen, and that none is drawn longer than it is sewn.
#[test]
fn seams_keep_their_lengths_but_for_what_lies_in_the_fork() {
    for (name, garment, flat) in pairs() {
        let share = |piece, ids: &[EdgeId]| {
            let seen: f64 = ids
                .iter()
                .map(|id| length(&drawn(&garment, &flat, piece, *id)))
                .sum();
            let sewn: f64 = ids
                .iter()
                .map(|id| edge(&garment, piece, *id).length().to_mm())
                .sum();
            seen / sewn
        };
        let inseam = share(PieceId::Front, &[EdgeId::Inseam]);
        assert!(
            (0.96..1.002).contains(&inseam),
            "{name} inseam: {inseam:.3}"
        );
        let outseam = share(PieceId::Front, &[EdgeId::Side]);
        assert!(
            (0.985..1.004).contains(&outseam),
            "{name} outseam: {outseam:.3}"
        );
        let rise = share(PieceId::Front, &[EdgeId::Fly, EdgeId::Crotch]);
        assert!(
            (0.88..1.002).contains(&rise),
            "{name} front rise: {rise:.3}"
        );
        // Much of the back rise goes under the body and through the legs.
        let seat = share(PieceId::Back, &[EdgeId::Seat]);
        assert!((0.6..1.0).contains(&seat), "{name} seat seam: {seat:.3}");
    }
}

#[test]
fn the_inseam_is_seen_from_the_fork_to_the_hem() {
    for (name, garment, flat) in pairs() {
        let inseam = edge(&garment, PieceId::Front, EdgeId::Inseam).dense(Length::mm(2.0));
        let at: Vec<Point> = inseam.iter().map(|p| flat.front(*p).at).collect();
        for p in &at {
            assert!(
                p.x > -0.5,
                "{name}: the inseam is at {p:?}, on the other leg"
            );
        }
        let seen: f64 = length(&at);
        let charted = charted(&garment, MeasureId::Inseam);
        assert!(seen > 0.92 * charted, "{name}: {seen:.0} of {charted:.0}");
    }
}

/// What a tape finds at each level, and where it finds all of it.
#[test]
fn girths_are_true_with_what_is_tucked_away() {
    for (name, garment, flat) in pairs() {
        let spec = &garment.pattern.spec;
        let at = |level| -spec.level(level).to_mm();
        let near = |what: &str, got: f64, chart: f64| {
            assert!(
                (got - chart).abs() < 1.0,
                "{name} {what}: {got:.1}, charted {chart:.1}"
            );
        };
        near(
            "waist",
            4.0 * flat
                .along_band(Half::Front, flat.band_height)
                .last()
                .unwrap()
                .x,
            charted(&garment, MeasureId::Waist),
        );
        let seen = |y: f64| {
            let (inner, outer) = flat.across(y);
            (outer - inner).hypot()
        };
        near(
            "seat",
            4.0 * seen(spec.level(measure::Level::Seat).to_mm()),
            charted(&garment, MeasureId::Seat),
        );
        near(
            "knee",
            2.0 * seen(at(measure::Level::Knee)),
            charted(&garment, MeasureId::Knee),
        );
        near(
            "hem",
            2.0 * seen(flat.hem_y),
            charted(&garment, MeasureId::Hem),
        );
        let thigh = at(measure::Level::Thigh);
        let tucked = flat.level(thigh).tucked;
        near(
            "thigh",
            2.0 * seen(thigh) + tucked.front + tucked.back,
            charted(&garment, MeasureId::Thigh),
        );
        let leg = leg_y(&flat);
        let [least, .., most] = LEG_FROM_SHARES.map(|share| at(measure::Level::Knee) * share);
        assert!(
            leg <= least + 2.0 && leg >= most - 2.0,
            "{name}: flat from {leg:.0} down"
        );
        let front = garment.pattern.piece(PieceId::Front).unwrap();
        let seat = spec.level(measure::Level::Seat).to_mm();
        let mut y = flat.hem_y;
        while y < front.point(PointId::SideWaist).unwrap().y {
            let level = flat.level(y);
            let tucked = level.tucked;
            let all = tucked.front + tucked.back;
            if y < leg - 1.0 || y > seat + 1.0 {
                assert!(
                    all.abs() < 1e-6,
                    "{name}: {all:.1} mm are tucked away at {y}"
                );
            }
            // Nothing is stretched to be seen, but by a hundredth or so where the hip runs into the leg.
            let least = -0.015 * level.front;
            assert!(
                tucked.front > least && tucked.back > least,
                "{name}: {tucked:?} at {y}"
            );
            y += 3.0;
        }
        assert!(
            tucked.back > tucked.front && tucked.front > 5.0,
            "{name}: {tucked:?}"
        );
    }
}

/// How often a line turns from bending one way to bending the other, from the hem up; wobbles of less than a degree over
/// two hands are none.
fn turns(line: &[Point]) -> usize {
    let points = geometry::resample(line, Length::mm(25.0));
    let ways: Vec<f64> = points.windows(2).map(|w| (w[1] - w[0]).atan2()).collect();
    let mut turned = 0;
    let (mut way, mut last) = (0.0_f64, *ways.first().unwrap());
    let mut furthest = last;
    for angle in ways {
        let off = angle - furthest;
        if way == 0.0 {
            if (angle - last).to_degrees().abs() > 1.0 {
                way = (angle - last).signum();
                furthest = angle;
            }
        } else if off * way > 0.0 {
            furthest = angle;
        } else if off.to_degrees().abs() > 1.0 {
            turned += 1;
            way = -way;
            furthest = angle;
        }
        last = if way == 0.0 { last } else { angle };
    }
    turned
}

#[test]
fn the_outer_line_turns_no_more_often_than_the_side_seam() {
    for (name, garment, flat) in pairs() {
        let hip = garment
            .pattern
            .piece(PieceId::Front)
            .unwrap()
            .point(PointId::MouthSide)
            .unwrap()
            .y;
        let outer: Vec<Point> = flat
            .folds()
            .outer
            .into_iter()
            .filter(|p| p.y < hip)
            .collect();
        let mut side = edge(&garment, PieceId::Front, EdgeId::Side).dense(Length::mm(2.0));
        if side[0].y > side[side.len() - 1].y {
            side.reverse();
        }
        let (lies, drafted) = (turns(&outer), turns(&side).max(1));
        assert!(
            lies <= drafted,
            "{name}: the outer line turns {lies} times, the seam {drafted}"
        );
    }
}

#[test]
fn the_legs_lie_beside_one_another_and_apart() {
    for (name, garment, flat) in pairs() {
        let inner = flat.folds().inner;
        assert!(
            inner.iter().all(|p| p.x > -1e-3),
            "{name}: an inner edge crosses the middle"
        );
        // From the fork down the gap is seen soon and never closes again before the knee.
        let knee = -garment.pattern.spec.level(measure::Level::Knee).to_mm();
        let above: Vec<&Point> = inner.iter().filter(|p| p.y > knee).collect();
        for pair in above.windows(2) {
            assert!(
                pair[0].x >= pair[1].x - 0.05,
                "{name}: the gap closes at {:?}",
                pair[0]
            );
        }
        let seen = flat.fork().y - 40.0;
        let gap = inner.iter().find(|p| p.y > seen).unwrap().x;
        assert!(
            gap > 1.0,
            "{name}: {gap:.2} mm four centimetres below the fork"
        );
        // Nearly straight down: from the middle of the thigh to the middle of the hem no more than the trade's spread.
        let middle = |y: f64| {
            let (a, b) = flat.across(y);
            a.midpoint(b)
        };
        let way = middle(leg_y(&flat)) - middle(flat.hem_y);
        let lean = (-way.x).atan2(way.y).to_degrees();
        assert!(
            (0.0..6.0).contains(&lean),
            "{name}: the legs lean {lean:.1} degrees"
        );
    }
}

/// The second row of a felled centre seam keeps its distance from the first, down to the fork.
#[test]
fn what_lies_beside_the_centre_seam_stays_beside_it() {
    for (name, garment, flat) in pairs() {
        let seams = [
            (PieceId::Front, EdgeId::Crotch),
            (PieceId::Back, EdgeId::Seat),
        ];
        for (piece, id) in seams {
            let mut line = edge(&garment, piece, id).dense(Length::mm(2.0));
            if line[0].y < line[line.len() - 1].y {
                line.reverse();
            }
            // Down the seam the panel lies to the left.
            let beside = geometry::moved_left(&line, Length::mm(8.0));
            let seat = garment.pattern.spec.level(measure::Level::Seat).to_mm();
            let from_end = beside.len() - 8;
            for p in beside.iter().take(from_end).filter(|p| p.y < seat - 20.0) {
                let at = match piece {
                    PieceId::Back => flat.back_unfolded(*p),
                    _ => flat.front(*p).at,
                };
                assert!((at.x - 8.0).abs() < 1.5, "{name} {piece:?}: {at:?}");
            }
        }
    }
}

/// A pocket bag hangs from the band.
#[test]
fn pieces_in_the_frame_of_the_front_follow_it() {
    for (name, garment, flat) in pairs() {
        let laid = LaidGarment::of(&garment, View::Front, Face::Inside).unwrap();
        let bag = edge(&garment, PieceId::PocketBag, EdgeId::WaistUnder);
        for p in bag.dense(Length::mm(2.0)) {
            let at = laid.point(PieceId::PocketBag, p, Hand::Left).unwrap();
            let here = laid.mirrored(flat.front(p).at, Hand::Left);
            assert!((at - here).hypot() < 1e-6, "{name}: {at:?} {here:?}");
        }
    }
}

/// Whatever the chart says, a pair lies somewhere or nowhere.
#[test]
fn a_pair_that_cannot_be_breaks_nothing() {
    for (name, garment) in impossible() {
        for (view, face) in [(View::Front, Face::Outside), (View::Back, Face::Inside)] {
            let Some(laid) = LaidGarment::of(&garment, view, face) else {
                continue;
            };
            let folds = laid.folds();
            for p in folds.outer.iter().chain(&folds.inner) {
                assert!(p.is_finite(), "{name}: {p:?}");
            }
            for p in laid.inner_shade(Share::percent(50.0), Length::mm(10.0)) {
                assert!(p.is_finite(), "{name}: {p:?}");
            }
        }
    }
}
