//! Rules that read the chart alone.

use style::{Figure, Fit, MeasureId, PartId};
use trade::Length;

use super::{Broken, Case, cm, within};
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
            format!(
                "the back rise is {} longer than the front rise; {} to {} is usual",
                cm(more),
                cm(least),
                cm(most)
            ),
        )
        .help("change front rise or back rise in the chart"),
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
            format!(
                "the back rise is {:.0} % of both rises together; 55 to 60 % is usual",
                share * 100.0
            ),
        )
        .help("change front rise or back rise in the chart"),
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
            format!(
                "the hem is {} round; in cloth that does not stretch hardly any foot passes below {}",
                cm(hem),
                cm(too_tight)
            ),
        )
    } else {
        Broken::warning(
            MeasureId::Hem,
            format!(
                "the hem is {} round; in cloth that does not stretch about half of all feet need {} or more",
                cm(hem),
                cm(tight)
            ),
        )
    };
    vec![broken.help("widen the hem, or open it with a slit or a zip")]
}

pub(super) fn seat_ease(case: &Case<'_>) -> Vec<Broken> {
    // The ease that a kind of fit stands for is stated at the base size; trade grades add to it.
    if !case.base {
        return Vec::new();
    }
    let (low, high) = match case.fit {
        Fit::Slim => (3.0, 5.0),
        Fit::Straight => (6.0, 8.0),
        Fit::Tapered => (7.0, 9.0),
        Fit::Relaxed => (10.0, 12.0),
    };
    let body = mean_seat(case.figure, case.size.waist.length());
    let ease = case.pattern.spec[MeasureId::Seat] - body;
    if within(ease.to_cm(), low - 0.05, high + 0.05) {
        return Vec::new();
    }
    vec![Broken::note(
        MeasureId::Seat,
        format!(
            "the seat is {:.1} cm {} than that of a mean body with a {} in waist ({}); a {} fit in cloth that does not stretch usually has {low:.0} to {high:.0} cm more",
            ease.to_cm().abs(),
            if ease < Length::ZERO {
                "smaller"
            } else {
                "larger"
            },
            case.size.waist,
            cm(body),
            case.fit,
        ),
    )]
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
        "the chart takes the whole waist round: this looks like half of it, measured flat"
    } else if tagged(waist * 2.54, tag) {
        "this looks like inches written as centimetres"
    } else if tagged(waist / 2.54, tag) {
        "this looks like centimetres written as inches"
    } else {
        "change the waist in the chart, its grade, or the sizes"
    };
    vec![
        Broken::warning(
            MeasureId::Waist,
            format!(
                "the waist is {} round ({:.1} in) and the label says {}; {} to {} is usual for it",
                cm(waist),
                waist.to_inches(),
                case.size.waist,
                cm(tag + WAIST_OVER_TAG.0),
                cm(tag + WAIST_OVER_TAG.1)
            ),
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
            format!(
                "the inseam is {} ({:.1} in) and the label says {}",
                cm(inseam),
                inseam.to_inches(),
                case.size.length
            ),
        )
        .help("change the inseam in the chart, its grade for length, or the lengths"),
    ]
}
