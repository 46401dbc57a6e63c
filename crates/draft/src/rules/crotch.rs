//! Rules about the crotch: how far it reaches, how deep it lies, how it curves.

use geometry::{Path, Point, angle_between};
use style::{Level, MeasureId, PartId};
use trade::{Angle, Length, Share};
use words::{Said, key, say};

use super::case::{Broken, Case, within};
use crate::pattern::Pattern;
use crate::piece::{EdgeId, PieceId, PointId};

fn crotch_points(pattern: &Pattern) -> Option<(Point, Point)> {
    let at = |id| pattern.piece(id)?.point(PointId::Crotch);
    Some((at(PieceId::Front)?, at(PieceId::Back)?))
}

/// The front crotch line, waist to crotch point.
fn front_line(pattern: &Pattern) -> Option<Path> {
    let front = pattern.piece(PieceId::Front)?;
    Some(front.edge(EdgeId::Fly)?.then(front.edge(EdgeId::Crotch)?))
}

fn back_line(pattern: &Pattern) -> Option<&Path> {
    pattern.piece(PieceId::Back)?.edge(EdgeId::Seat)
}

/// Horizontal reach of the front crotch beyond the centre front line, drawn on down to the crotch.
fn front_reach(pattern: &Pattern) -> Option<Length> {
    let line = front_line(pattern)?;
    let (top, down, crotch) = (line.start(), line.start_direction(), line.end());
    let foot = top + down * ((crotch.y - top.y) / down.y);
    Some(Length::mm(foot.x - crotch.x))
}

/// Horizontal reach of the back crotch beyond the point of the seat seam at the seat level.
fn back_reach(pattern: &Pattern) -> Option<Length> {
    let seat = back_line(pattern)?;
    let foot = *seat
        .crossings_at_y(pattern.spec.level(Level::Seat).to_mm())
        .first()?;
    Some(Length::mm(foot.x - seat.end().x))
}

pub(super) fn drop(case: &Case<'_>) -> Vec<Broken> {
    let Some((front, back)) = crotch_points(case.pattern) else {
        return Vec::new();
    };
    let drop = Length::mm(front.y - back.y);
    if within(drop.to_mm(), -0.05, 15.05) {
        return Vec::new();
    }
    let by = drop.abs().in_cm(1);
    let message: Said = if drop < Length::ZERO {
        say::FitCrotchAbove { by }.into()
    } else {
        say::FitCrotchBelow { by }.into()
    };
    vec![Broken::warning(PartId::CrotchPoint, message).help(key::FIT_CROTCH_DROP_HELP)]
}

pub(super) fn level(case: &Case<'_>) -> Vec<Broken> {
    let (Some(front), Some(back)) = (front_line(case.pattern), back_line(case.pattern)) else {
        return Vec::new();
    };
    let apart = Length::mm((front.bounds().y0 - back.bounds().y0).abs());
    if apart <= Length::inches(0.5) {
        return Vec::new();
    }
    vec![Broken::warning(
        PartId::CrotchCurves,
        say::FitCrotchLevel {
            apart: apart.in_cm(1),
            most: Length::inches(0.5).in_cm(1),
        },
    )]
}

pub(super) fn smooth(case: &Case<'_>) -> Vec<Broken> {
    let Some(jump) = case.pattern.crotch_jump() else {
        return Vec::new();
    };
    let message = say::FitCrotchBend {
        bend: jump.in_deg(1),
    };
    if jump <= Angle::deg(5.0) {
        Vec::new()
    } else if jump <= Angle::deg(10.0) {
        vec![Broken::warning(PartId::CrotchLine, message)]
    } else {
        vec![Broken::error(PartId::CrotchLine, message)]
    }
}

/// Smallest radius of a line and whether it bends both ways, felt over steps of 8 mm: a curve that was read
/// from points is true in its places, not in its curvature from one to the next.
fn felt_curve(line: &Path) -> Option<(Length, bool)> {
    const STEP: Length = Length::mm(8.0);
    /// A wider curve counts as straight.
    const STRAIGHT_MM: f64 = 1000.0;
    let points = geometry::resample(&line.flattened(Length::mm(0.005)), STEP);
    let bends: Vec<f64> = points
        .windows(3)
        .filter_map(|w| {
            let (a, b, c) = (w[1] - w[0], w[2] - w[1], w[2] - w[0]);
            let sides = a.hypot() * b.hypot() * c.hypot();
            // The last step may be shorter than the others, and says little.
            let whole = b.hypot() > STEP.to_mm() * 0.5 && sides > 0.0;
            whole.then(|| 2.0 * a.cross(b) / sides)
        })
        .filter(|bend| bend.abs() * STRAIGHT_MM > 1.0)
        .collect();
    let most = bends.iter().map(|b| b.abs()).reduce(f64::max)?;
    let both = bends.iter().any(|b| *b > 0.0) && bends.iter().any(|b| *b < 0.0);
    Some((Length::mm(1.0 / most), both))
}

pub(super) fn curve(case: &Case<'_>) -> Vec<Broken> {
    let lines = [
        (PartId::FrontCrotchCurve, front_line(case.pattern), 30.0),
        (
            PartId::BackCrotchCurve,
            back_line(case.pattern).cloned(),
            50.0,
        ),
    ];
    let mut broken = Vec::new();
    for (about, line, least) in lines {
        let bend = |line: Path| {
            if case.pattern.own.is_some() {
                felt_curve(&line)
            } else {
                line.tightest_curve()
            }
        };
        let Some((radius, bends_back)) = line.and_then(bend) else {
            continue;
        };
        if bends_back {
            broken.push(Broken::warning(about, key::FIT_CROTCH_BOTH_WAYS));
        }
        if radius.to_mm() < least {
            broken.push(Broken::warning(
                about,
                say::FitCrotchSharp {
                    least: Length::mm(least).in_cm(1),
                    radius: radius.in_cm(1),
                },
            ));
        }
    }
    broken
}

pub(super) fn balance(case: &Case<'_>) -> Vec<Broken> {
    // With a straight outseam the crease is not the middle of the leg, and the rule says nothing.
    if case.pattern.spec.straight_outseam {
        return Vec::new();
    }
    let p = case.pattern;
    let inner = |id| {
        let piece = p.piece(id)?;
        Some(Length::mm(
            piece.grain.0.x - piece.point(PointId::Crotch)?.x,
        ))
    };
    let numbers = (|| {
        let wanted = (back_reach(p)? - front_reach(p)?) / 2.0;
        Some((inner(PieceId::Back)? - inner(PieceId::Front)?, wanted))
    })();
    let Some((more, wanted)) = numbers else {
        return Vec::new();
    };
    if (more - wanted).abs() <= Length::mm(10.05) {
        return Vec::new();
    }
    vec![Broken::note(
        PartId::LegBalance,
        say::FitBalance {
            more: more.in_cm(1),
            wanted: wanted.in_cm(1),
        },
    )]
}

pub(super) fn seat_slope(case: &Case<'_>) -> Vec<Broken> {
    let Some(back) = case.pattern.piece(PieceId::Back) else {
        return Vec::new();
    };
    let Some(seat) = back.edge(EdgeId::Seat) else {
        return Vec::new();
    };
    let slope = angle_between(-seat.start_direction(), back.grain.1 - back.grain.0);
    if within(slope.to_deg(), 11.95, 16.05) {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::SeatSeam,
            say::FitSeatSlope {
                slope: slope.in_deg(1),
            },
        )
        .help(key::FIT_SEAT_SLOPE_HELP),
    ]
}

/// A share of the seat outside its usual range.
fn share(
    case: &Case<'_>,
    about: PartId,
    reach: Option<Length>,
    (low, high): (f64, f64),
) -> Vec<Broken> {
    let Some(reach) = reach else {
        return Vec::new();
    };
    let seat = case.pattern.spec[MeasureId::Seat];
    let share = reach / seat;
    if within(share, low, high) {
        return Vec::new();
    }
    let remedy = if share < low {
        key::FIT_REACH_SMALL
    } else {
        key::FIT_REACH_LARGE
    };
    vec![
        Broken::warning(
            about,
            say::FitReach {
                crotch: about,
                high: Share::ratio(high).as_ratio(3),
                least: (seat * low).in_cm(1),
                low: Share::ratio(low).as_ratio(3),
                most: (seat * high).in_cm(1),
                reach: reach.in_cm(1),
                share: Share::ratio(share).as_ratio(3),
            },
        )
        .help(remedy),
    ]
}

pub(super) fn front_extension(case: &Case<'_>) -> Vec<Broken> {
    share(
        case,
        PartId::FrontCrotch,
        front_reach(case.pattern),
        (0.035, 0.075),
    )
}

pub(super) fn back_extension(case: &Case<'_>) -> Vec<Broken> {
    share(
        case,
        PartId::BackCrotch,
        back_reach(case.pattern),
        (0.065, 0.125),
    )
}

pub(super) fn fork(case: &Case<'_>) -> Vec<Broken> {
    let both = (|| Some(front_reach(case.pattern)? + back_reach(case.pattern)?))();
    share(case, PartId::WholeCrotch, both, (0.105, 0.185))
}
