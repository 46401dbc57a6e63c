//! Rules that read the chart alone.

use style::{Figure, Fit, MeasureId, PartId};
use trade::{Length, Share};
use words::{Said, key, say};

use super::case::{Broken, Case, within};
use crate::body::mean_seat;

/// Below this front rise a style counts as low (common practice; a published low-rise chart has 23.5 cm).
const LOW_FRONT_RISE: Length = Length::mm(250.0);

pub(super) fn rise_difference(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.pattern.spec;
    let more = spec[MeasureId::BackRise] - spec[MeasureId::FrontRise];
    let least = Length::inches(2.75);
    let most = if spec[MeasureId::FrontRise] < LOW_FRONT_RISE {
        Length::cm(14.0)
    } else {
        Length::inches(4.0)
    };
    if within(more.to_mm(), least.to_mm() - 0.5, most.to_mm() + 0.5) {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::Rises,
            say::FitRises {
                least: least.in_cm(1),
                more: more.in_cm(1),
                most: most.in_cm(1),
            },
        )
        .help(key::FIT_RISES_HELP),
    ]
}

pub(super) fn seat_share(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.pattern.spec;
    let share =
        spec[MeasureId::BackRise] / (spec[MeasureId::FrontRise] + spec[MeasureId::BackRise]);
    // To the same two decimals as the range.
    if within((share * 100.0).round(), 55.0, 60.0) {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::Rises,
            say::FitRisesShare {
                share: Share::ratio(share).in_percent(0),
            },
        )
        .help(key::FIT_RISES_HELP),
    ]
}

pub(super) fn foot_passage(case: &Case<'_>) -> Vec<Broken> {
    let hem = case.pattern.spec[MeasureId::Hem];
    let (tight, too_tight) = match case.figure {
        Figure::Men => (Length::cm(34.0), Length::cm(32.0)),
        Figure::Women => (Length::cm(31.0), Length::cm(28.8)),
    };
    if hem >= tight {
        return Vec::new();
    }
    let broken = if hem < too_tight {
        Broken::error(
            MeasureId::Hem,
            say::FitFootNone {
                hem: hem.in_cm(1),
                least: too_tight.in_cm(1),
            },
        )
    } else {
        Broken::warning(
            MeasureId::Hem,
            say::FitFootHalf {
                hem: hem.in_cm(1),
                least: tight.in_cm(1),
            },
        )
    };
    vec![broken.help(key::FIT_FOOT_HELP)]
}

pub(super) fn seat_ease(case: &Case<'_>) -> Vec<Broken> {
    // The ease that a kind of fit stands for is stated at the base size; trade grades add to it.
    if !case.base {
        return Vec::new();
    }
    let (low, high): (u8, u8) = match case.fit {
        Fit::Slim => (3, 5),
        Fit::Straight => (6, 8),
        Fit::Tapered => (7, 9),
        Fit::Relaxed => (10, 12),
    };
    let body = mean_seat(case.figure, case.size.waist.length());
    let ease = case.pattern.spec[MeasureId::Seat] - body;
    if within(ease.to_cm(), f64::from(low) - 0.05, f64::from(high) + 0.05) {
        return Vec::new();
    }
    let (body, off) = (body.in_cm(1), ease.abs().in_cm(1));
    let (fit, waist) = (case.fit.word(), case.size.waist.to_string());
    let message: Said = if ease < Length::ZERO {
        say::FitSeatSmaller {
            body,
            fit,
            high,
            low,
            off,
            waist,
        }
        .into()
    } else {
        say::FitSeatLarger {
            body,
            fit,
            high,
            low,
            off,
            waist,
        }
        .into()
    };
    vec![Broken::note(MeasureId::Seat, message)]
}

/// How much more than its tag a finished waist is, and how much less: labels flatter, and low styles are worn below the
/// waist. Published charts lie between nothing and 2 in above the tag; the room is from memory.
const WAIST_OVER_TAG: (Length, Length) = (Length::inches(-2.0), Length::inches(5.0));

/// How far a finished inseam may be off its tag (common practice, from memory).
const INSEAM_OFF_TAG: Length = Length::inches(2.0);

fn tagged(value: Length, tag: Length) -> bool {
    let over = value - tag;
    (WAIST_OVER_TAG.0..=WAIST_OVER_TAG.1).contains(&over)
}

/// The waist against the number on the label, and the slips that make the two differ.
pub(super) fn waist_for_size(case: &Case<'_>) -> Vec<Broken> {
    let (waist, tag) = (
        case.pattern.spec[MeasureId::Waist],
        case.size.waist.length(),
    );
    if tagged(waist, tag) {
        return Vec::new();
    }
    let help = if tagged(waist * 2.0, tag) {
        key::FIT_WAIST_HALF
    } else if tagged(waist * 2.54, tag) {
        key::FIT_WAIST_WAS_INCHES
    } else if tagged(waist / 2.54, tag) {
        key::FIT_WAIST_WAS_CM
    } else {
        key::FIT_WAIST_HELP
    };
    vec![
        Broken::warning(
            MeasureId::Waist,
            say::FitWaistTag {
                inches: waist.in_inches(1),
                label: case.size.waist.to_string(),
                least: (tag + WAIST_OVER_TAG.0).in_cm(1),
                most: (tag + WAIST_OVER_TAG.1).in_cm(1),
                waist: waist.in_cm(1),
            },
        )
        .help(help),
    ]
}

/// The inseam against the number on the label.
pub(super) fn inseam_for_size(case: &Case<'_>) -> Vec<Broken> {
    let (inseam, tag) = (
        case.pattern.spec[MeasureId::Inseam],
        case.size.length.length(),
    );
    if (inseam - tag).abs() <= INSEAM_OFF_TAG {
        return Vec::new();
    }
    vec![
        Broken::warning(
            MeasureId::Inseam,
            say::FitInseamTag {
                inches: inseam.in_inches(1),
                inseam: inseam.in_cm(1),
                label: case.size.length.to_string(),
            },
        )
        .help(key::FIT_INSEAM_HELP),
    ]
}
