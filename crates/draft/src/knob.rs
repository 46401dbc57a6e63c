//! The values of a style that shape its panels, each as something that can be moved to end a conflict.

use style::{ChartEntry, Level, MeasureId, Size, StyleDoc};
use trade::{Angle, Length};
use words::{Figure, Key, Said, key, say};

use crate::measure::{Decides, taking};
use crate::spec::Spec;

/// A value this share of a step beyond a whole one is that one.
const NEARLY_A_STEP: f64 = 1e-6;

/// What of the style a knob turns.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Kind {
    /// The value of a measure.
    Value(MeasureId),
    /// The level a measure is taken at.
    Level(Level),
    /// What an inch of waist adds to a measure.
    Grade(MeasureId),
    /// A length of the shape.
    Shape(ShapeLength),
    /// The slope of the seat seam.
    SeatAngle,
}

/// A value of a style, in millimetres or degrees.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Knob {
    kind: Kind,
    pub path: String,
    pub name: Said,
    /// What the style says.
    pub asked: f64,
    /// What is usual, where that is known.
    pub usual: Option<f64>,
}

/// A length of the shape section.
#[derive(Clone, Copy, Debug)]
struct ShapeLength {
    key: &'static str,
    name: Key,
    of: fn(&mut style::Shape) -> &mut Length,
    in_spec: fn(&mut Spec) -> &mut Length,
}

impl PartialEq for ShapeLength {
    fn eq(&self, other: &Self) -> bool {
        self.key == other.key
    }
}

/// The measures that shape the panels, and after them those that have to find room there.
fn measures() -> impl Iterator<Item = MeasureId> {
    let decides = |measure: &MeasureId| taking(*measure).decides;
    let shaping = MeasureId::ALL.into_iter();
    let shaping = shaping.filter(move |measure| decides(measure).shapes_panels());
    let in_need = MeasureId::ALL.into_iter();
    shaping.chain(in_need.filter(move |measure| decides(measure) == Decides::Room))
}

const fn shape(
    key: &'static str,
    name: Key,
    of: fn(&mut style::Shape) -> &mut Length,
    in_spec: fn(&mut Spec) -> &mut Length,
) -> ShapeLength {
    ShapeLength {
        key,
        name,
        of,
        in_spec,
    }
}

const SHAPE: [ShapeLength; 9] = [
    shape(
        "seat_split",
        key::CONFLICT_SEAT_SPLIT,
        |s| &mut s.seat_split,
        |s| &mut s.seat_split,
    ),
    shape(
        "thigh_split",
        key::CONFLICT_THIGH_SPLIT,
        |s| &mut s.thigh_split,
        |s| &mut s.thigh_split,
    ),
    shape(
        "knee_split",
        key::CONFLICT_KNEE_SPLIT,
        |s| &mut s.knee_split,
        |s| &mut s.knee_split,
    ),
    shape(
        "hem_split",
        key::CONFLICT_HEM_SPLIT,
        |s| &mut s.hem_split,
        |s| &mut s.hem_split,
    ),
    shape(
        "waist_split",
        key::CONFLICT_WAIST_SPLIT,
        |s| &mut s.waist_split,
        |s| &mut s.waist_split,
    ),
    shape(
        "front_tilt",
        key::CONFLICT_FRONT_TILT,
        |s| &mut s.front_tilt,
        |s| &mut s.front_tilt,
    ),
    shape(
        "seat_dart",
        key::CONFLICT_SEAT_DART,
        |s| &mut s.seat_dart,
        |s| &mut s.seat_dart,
    ),
    shape(
        "inseam_stretch",
        key::CONFLICT_INSEAM_STRETCH,
        |s| &mut s.inseam_stretch,
        |s| &mut s.inseam_stretch,
    ),
    shape(
        "band_ease",
        key::CONFLICT_BAND_EASE,
        |s| &mut s.band_ease,
        |s| &mut s.band_ease,
    ),
];

/// Every knob of a style. Grades are among them where only some sizes fail, for then the way from size to size may be
/// what is wrong.
pub(crate) fn knobs(doc: &StyleDoc, grades: bool) -> Vec<Knob> {
    let base = doc.sizes.base;
    let stated = |measure: &MeasureId| doc.chart.contains_key(measure);
    let (figure, fit) = (doc.style.figure, doc.style.fit);
    let values = measures().filter(stated).filter_map(|measure| {
        let usual = style::usual_measure(figure, fit, measure, base);
        Some(Knob {
            kind: Kind::Value(measure),
            path: measure.path("value"),
            name: name(measure),
            asked: doc.value(measure, base)?.to_mm(),
            usual: usual.map(Length::to_mm),
        })
    });
    let mut all: Vec<Knob> = values.collect();
    let levels = Level::ALL.into_iter();
    let levels = levels.filter(|level| stated(&level.measure()));
    all.extend(levels.filter_map(|level| {
        let measure = level.measure();
        Some(Knob {
            kind: Kind::Level(level),
            path: measure.path("at"),
            name: say::ConflictLevel {
                measure: name(measure),
            }
            .into(),
            asked: doc.level(measure)?.to_mm(),
            usual: Some(level.usual().to_mm()),
        })
    }));
    let usual = style::Shape::default();
    all.extend(SHAPE.into_iter().map(|length| Knob {
        kind: Kind::Shape(length),
        path: format!("shape.{}", length.key),
        name: length.name.into(),
        asked: (length.of)(&mut doc.shape.clone()).to_mm(),
        usual: Some((length.of)(&mut usual.clone()).to_mm()),
    }));
    all.push(Knob {
        kind: Kind::SeatAngle,
        path: "shape.seat_angle".to_owned(),
        name: key::CONFLICT_SEAT_ANGLE.into(),
        asked: doc.shape.seat_angle.to_deg(),
        usual: Some(usual.seat_angle.to_deg()),
    });
    if grades {
        all.extend(measures().filter_map(|measure| {
            let entry = doc.chart.get(&measure)?;
            // With breaks no single grade is to blame.
            let grade = entry.grade.filter(|_| entry.breaks.is_empty())?;
            let usual = style::usual_grade(figure, measure);
            Some(Knob {
                kind: Kind::Grade(measure),
                path: measure.path("grade"),
                name: say::ConflictGrade {
                    measure: name(measure),
                }
                .into(),
                asked: grade.to_mm(),
                usual: usual.map(Length::to_mm),
            })
        }));
    }
    all.retain(|knob| knob.asked.is_finite());
    all
}

/// A measure's name inside a sentence: "yoke height (side)".
fn name(measure: MeasureId) -> Said {
    match measure {
        MeasureId::YokeCentre => key::CONFLICT_YOKE_CENTRE,
        MeasureId::YokeSide => key::CONFLICT_YOKE_SIDE,
        MeasureId::MouthWidth => key::CONFLICT_MOUTH_WIDTH,
        MeasureId::MouthDepth => key::CONFLICT_MOUTH_DEPTH,
        MeasureId::Waist
        | MeasureId::Seat
        | MeasureId::FrontRise
        | MeasureId::BackRise
        | MeasureId::Thigh
        | MeasureId::Knee
        | MeasureId::Hem
        | MeasureId::Inseam
        | MeasureId::Outseam
        | MeasureId::BandHeight
        | MeasureId::BandOverlap
        | MeasureId::FlyLength
        | MeasureId::FlyWidth
        | MeasureId::CoinWidth
        | MeasureId::CoinDepth
        | MeasureId::BackPocketWidth
        | MeasureId::BackPocketLength
        | MeasureId::BackPocketFromYoke
        | MeasureId::BackPocketFromCentre
        | MeasureId::LoopLength
        | MeasureId::LoopWidth
        | MeasureId::HemDepth => measure.within(),
    }
    .into()
}

impl Knob {
    /// Turns it.
    pub fn put(&self, doc: &mut StyleDoc, to: f64) {
        let entry = |doc: &mut StyleDoc, measure, put: fn(&mut ChartEntry, Length)| {
            if let Some(entry) = doc.chart.get_mut(&measure) {
                put(entry, Length::mm(to));
            }
        };
        match self.kind {
            Kind::Value(measure) => entry(doc, measure, |entry, to| entry.value = to),
            Kind::Level(level) => entry(doc, level.measure(), |entry, to| entry.at = Some(to)),
            Kind::Grade(measure) => entry(doc, measure, |entry, to| entry.grade = Some(to)),
            Kind::Shape(length) => *(length.of)(&mut doc.shape) = Length::mm(to),
            Kind::SeatAngle => doc.shape.seat_angle = Angle::deg(to),
        }
    }

    /// One size of the style with the knob turned: `spec` is that size as the style has it.
    pub fn turned(&self, spec: &Spec, doc: &StyleDoc, size: Size, to: f64) -> Spec {
        let mut spec = spec.clone();
        let by = Length::mm(to - self.asked);
        match self.kind {
            Kind::Value(measure) => spec.add(measure, by),
            Kind::Grade(measure) => {
                let steps = size.waist.steps_from(doc.sizes.base.waist);
                spec.add(measure, by * steps);
            }
            Kind::Level(level) => spec.set_level(level, spec.level(level) + by),
            Kind::Shape(length) => *(length.in_spec)(&mut spec) += by,
            Kind::SeatAngle => spec.seat_angle = Angle::deg(to),
        }
        spec
    }

    /// How far a value lies from what was asked, as a share of it. A step towards what is usual counts for less, and for
    /// the less the further from it the style is: where a chart of ordinary measures holds one that is out of the way,
    /// that one is what the maker will want to look at.
    pub fn cost(&self, becomes: f64) -> f64 {
        const TOWARDS: f64 = 0.3;
        /// Small things move by more than their own size and hardly show.
        const SMALL: f64 = 20.0;
        let share = (becomes - self.asked).abs() / self.asked.abs().max(SMALL);
        let weight = self.usual.map_or(1.0, |usual| {
            let (now, then) = ((self.asked - usual).abs(), (becomes - usual).abs());
            if then < now {
                TOWARDS / (1.0 + now / usual.abs().max(SMALL))
            } else {
                1.0
            }
        });
        share * weight
    }

    /// Whether a maker could mean such a value: nothing below nought, and not more than a quarter away from what is
    /// usual where it was nearer before.
    pub fn is_sensible(&self, becomes: f64) -> bool {
        const AWAY: f64 = 0.25;
        const SMALL: f64 = 40.0;
        let positive = match self.kind {
            Kind::Value(_) => becomes >= 1.0,
            Kind::Level(_) => becomes >= 10.0,
            Kind::SeatAngle => becomes.abs() < 60.0,
            Kind::Grade(_) | Kind::Shape(_) => true,
        };
        // A level is no measure: it may lie wherever there is cloth.
        let near = matches!(self.kind, Kind::Level(_))
            || self.usual.is_none_or(|usual| {
                let (now, then) = ((self.asked - usual).abs(), (becomes - usual).abs());
                then <= now || then <= usual.abs().max(SMALL) * AWAY
            });
        becomes.is_finite() && positive && near
    }

    /// The step in which it is proposed.
    pub fn step(&self) -> f64 {
        match self.kind {
            Kind::SeatAngle => 0.5,
            Kind::Grade(_) => 0.1,
            _ => 1.0,
        }
    }

    /// To a whole step, away from the conflict.
    pub fn rounded(&self, value: f64, up: bool) -> f64 {
        let steps = value / self.step();
        let whole = if up {
            (steps - NEARLY_A_STEP).ceil()
        } else {
            (steps + NEARLY_A_STEP).floor()
        };
        whole * self.step()
    }

    /// For people.
    pub fn shown(&self, value: f64) -> Figure {
        match self.kind {
            Kind::SeatAngle => Angle::deg(value).in_deg(1),
            Kind::Grade(_) => Length::mm(value).in_mm(1),
            _ => Length::mm(value).in_cm(1),
        }
    }

    /// As the style's file writes it.
    pub fn written(&self, value: f64) -> String {
        match self.kind {
            Kind::SeatAngle => format!("{value:.1} deg"),
            _ => self.shown(value).to_string(),
        }
    }
}
