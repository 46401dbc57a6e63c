//! The charts a style begins with: what the finished garment measures, by figure and fit.
//!
//! The men's rows follow published charts (a maker's slim chart, a loomstate tapered chart and a workwear pant chart,
//! read for this program) brought to one way of measuring; the women's are common practice in proportion to mean body
//! measures. They are where a maker starts, never a promise of fit: a sewn sample goes before them. Every row
//! drafts without a warning over the sizes that are offered: the slim hems are as wide as a foot needs in cloth that does
//! not stretch, down to the smallest waist, and the slim thighs leave the crotch its usual share of the seat.

use trade::Length;

use super::answers::Settled;
use crate::{Figure, Fit, MeasureId, Size, Tag};

/// The length a chart is stated at, in inches.
pub(super) const BASE_LENGTH: u32 = 32;

/// The waist a figure's charts are stated at, in inches.
pub(super) const fn base_waist(figure: Figure) -> u32 {
    match figure {
        Figure::Men => 32,
        Figure::Women => 28,
    }
}

/// How far the thigh of the back is over a half where the outseam is straight. The inseam then takes all the shape of the
/// leg, and with the usual 2.5 cm the back would lean so much more than the front that its crotch point comes to lie
/// further below the front's than half an inch in the larger sizes (computed for this program).
pub(super) const fn straight_thigh_split(fit: Fit) -> Length {
    match fit {
        // A wide thigh makes up for some of it, and with less the front would turn in too sharply.
        Fit::Relaxed => Length::mm(24.0),
        _ => Length::mm(23.0),
    }
}

/// Finished girths and rises in inches, and what each grows by for an inch of waist.
struct Row {
    waist: f64,
    seat: f64,
    thigh: f64,
    knee: f64,
    hem: f64,
    front_rise: f64,
    back_rise: f64,
}

/// What an inch of waist adds, in inches.
const MEN_GRADE: Row = row(1.0, 1.0, 0.5, 0.25, 0.25, 0.125, 0.125);
const WOMEN_GRADE: Row = row(1.0, 1.0, 0.625, 0.375, 0.25, 0.1875, 0.1875);

const fn row(
    waist: f64,
    seat: f64,
    thigh: f64,
    knee: f64,
    hem: f64,
    front_rise: f64,
    back_rise: f64,
) -> Row {
    Row {
        waist,
        seat,
        thigh,
        knee,
        hem,
        front_rise,
        back_rise,
    }
}

/// At waist 32 for men and 28 for women.
const fn finished(figure: Figure, fit: Fit) -> Row {
    match (figure, fit) {
        (Figure::Men, Fit::Slim) => row(33.5, 39.0, 24.0, 16.5, 14.5, 10.75, 14.25),
        (Figure::Men, Fit::Straight) => row(33.5, 40.0, 24.5, 18.0, 16.5, 11.0, 14.75),
        (Figure::Men, Fit::Tapered) => row(33.5, 40.5, 25.0, 17.5, 15.0, 11.75, 15.25),
        (Figure::Men, Fit::Relaxed) => row(33.5, 41.5, 26.5, 19.5, 17.5, 12.0, 15.5),
        (Figure::Women, Fit::Slim) => row(30.0, 37.5, 23.0, 15.0, 13.25, 10.0, 14.0),
        (Figure::Women, Fit::Straight) => row(29.5, 38.5, 23.5, 17.0, 16.0, 11.0, 14.75),
        (Figure::Women, Fit::Tapered) => row(29.5, 39.0, 24.0, 16.5, 14.0, 11.25, 15.0),
        (Figure::Women, Fit::Relaxed) => row(30.0, 40.0, 25.0, 18.5, 17.0, 11.5, 15.25),
    }
}

/// The grade a measure usually has, an inch of waist.
#[must_use]
pub fn usual_grade(figure: Figure, measure: MeasureId) -> Option<Length> {
    let grade = match figure {
        Figure::Men => &MEN_GRADE,
        Figure::Women => &WOMEN_GRADE,
    };
    grade.of(measure).map(Length::inches)
}

/// What a measure usually is in a chart of this figure and fit; `None` where nothing is usual.
#[must_use]
pub fn usual_measure(figure: Figure, fit: Fit, measure: MeasureId, size: Size) -> Option<Length> {
    if measure == MeasureId::Inseam {
        return Some(size.length.length());
    }
    if measure == MeasureId::BandHeight {
        // Common practice: 3.5 to 4.5 cm.
        return Some(Length::mm(38.0));
    }
    let steps = size.waist.steps_from(Tag::inches(base_waist(figure)));
    let at_base = finished(figure, fit).of(measure).map(Length::inches);
    match (at_base, usual_grade(figure, measure)) {
        (Some(value), Some(grade)) => Some(value + grade * steps),
        _ => measure.known().value(),
    }
}

impl Row {
    /// A measure, in inches; `None` for those that the charts leave alone.
    fn of(&self, measure: MeasureId) -> Option<f64> {
        Some(match measure {
            MeasureId::Waist => self.waist,
            MeasureId::Seat => self.seat,
            MeasureId::Thigh => self.thigh,
            MeasureId::Knee => self.knee,
            MeasureId::Hem => self.hem,
            MeasureId::FrontRise => self.front_rise,
            MeasureId::BackRise => self.back_rise,
            MeasureId::Inseam
            | MeasureId::Outseam
            | MeasureId::BandHeight
            | MeasureId::BandOverlap
            | MeasureId::FlyLength
            | MeasureId::FlyWidth
            | MeasureId::YokeCentre
            | MeasureId::YokeSide
            | MeasureId::MouthWidth
            | MeasureId::MouthDepth
            | MeasureId::CoinWidth
            | MeasureId::CoinDepth
            | MeasureId::BackPocketWidth
            | MeasureId::BackPocketLength
            | MeasureId::BackPocketFromYoke
            | MeasureId::BackPocketFromCentre
            | MeasureId::LoopLength
            | MeasureId::LoopWidth
            | MeasureId::HemDepth => return None,
        })
    }
}

/// A measure of the chart with its value at the base size and its grade, `None` where the demo's grade stays.
pub(super) struct Charted {
    pub(super) measure: MeasureId,
    pub(super) value: Length,
    pub(super) grade: Option<Length>,
}

/// The measures in which a style differs from the demo's.
pub(super) fn measures(settled: &Settled) -> Vec<Charted> {
    let (figure, leg) = (settled.figure, settled.leg);
    let at = finished(figure, settled.fit);
    let grade = match figure {
        Figure::Men => MEN_GRADE,
        Figure::Women => WOMEN_GRADE,
    };
    let steps = settled
        .base
        .waist
        .steps_from(Tag::inches(base_waist(figure)));
    let of = |measure, value: f64, grade: f64, more: Length| Charted {
        measure,
        value: Length::inches(value + steps * grade) + more,
        grade: Some(Length::inches(grade)),
    };
    let none = Length::ZERO;
    let mut all = vec![
        of(MeasureId::Waist, at.waist, grade.waist, none),
        of(MeasureId::Seat, at.seat, grade.seat, none),
        of(MeasureId::FrontRise, at.front_rise, grade.front_rise, none),
        of(MeasureId::BackRise, at.back_rise, grade.back_rise, none),
        of(MeasureId::Thigh, at.thigh, grade.thigh, none),
        of(MeasureId::Knee, at.knee, grade.knee, leg.at_knee()),
        of(MeasureId::Hem, at.hem, grade.hem, leg.at_hem()),
        Charted {
            measure: MeasureId::Inseam,
            value: settled.base.length.length(),
            grade: None,
        },
    ];
    if figure == Figure::Women {
        // Smaller panels leave less room: pockets and fly in proportion (common practice).
        let cm = |measure, value| Charted {
            measure,
            value: Length::cm(value),
            grade: None,
        };
        all.extend([
            cm(MeasureId::FlyLength, 14.0),
            cm(MeasureId::MouthWidth, 9.5),
            cm(MeasureId::CoinWidth, 7.0),
            cm(MeasureId::BackPocketWidth, 13.5),
            cm(MeasureId::BackPocketLength, 15.0),
            cm(MeasureId::BackPocketFromCentre, 5.0),
        ]);
    }
    all
}
