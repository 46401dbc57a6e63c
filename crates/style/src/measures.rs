//! The measures of the chart in one table: what each is called, how it is taken, and what holds where a chart is silent.
//!
//! A measure without a row does not compile. Default values are the demo style's and common practice. What else a room
//! knows of a measure it keeps in a table of its own, by [`MeasureId`] and just as complete: how it is taken on the
//! pieces (`draft`), where it is shown (`drawing`, `bench`), what is usual for a figure and a fit (this room's beginnings).

use serde::{Serialize, Serializer};
use trade::Length;
use words::{Key, key};

use crate::MeasureId;

/// What is known of a measure beside its code and its name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Its name in the chart, within a sentence: "yoke at centre back".
    pub title: Key,
    /// Its name on paper, within a sentence: "yoke height, centre back".
    pub within: Key,
    /// How it is taken, for the workroom.
    pub how: Key,
    /// What holds when a chart leaves it out.
    pub left_out: LeftOut,
    /// The level it is taken at; `None` for measures without one.
    pub level: Option<Level>,
    /// The tolerance when a chart does not say (common practice).
    pub tolerance: Length,
}

/// What holds when a chart leaves a measure out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LeftOut {
    /// It cannot: every chart has to state the measure.
    Refused,
    /// This value, in every size.
    Usual(Length),
    /// It follows from the other measures: the draft chooses.
    Drafted,
}

/// A level at which a girth is taken. A chart may move each of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// Of the seat, above the crotch.
    Seat,
    /// Of the thigh, below the crotch.
    Thigh,
    /// Of the knee, below the crotch.
    Knee,
}

const fn mm(value: f64) -> Length {
    Length::mm(value)
}

const fn usually(value_mm: f64) -> LeftOut {
    LeftOut::Usual(mm(value_mm))
}

impl MeasureId {
    /// Its row of the table.
    #[must_use]
    pub const fn known(self) -> Measure {
        match self {
            Self::Waist => Measure {
                title: key::MEASURE_TITLE_WAIST,
                within: key::MEASURE_WITHIN_WAIST,
                how: key::MEASURE_HOW_WAIST,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(13.0),
            },
            Self::Seat => Measure {
                title: key::MEASURE_TITLE_SEAT,
                within: key::MEASURE_WITHIN_SEAT,
                how: key::MEASURE_HOW_SEAT,
                left_out: LeftOut::Refused,
                level: Some(Level::Seat),
                tolerance: mm(13.0),
            },
            Self::FrontRise => Measure {
                title: key::MEASURE_TITLE_FRONT_RISE,
                within: key::MEASURE_WITHIN_FRONT_RISE,
                how: key::MEASURE_HOW_FRONT_RISE,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(6.5),
            },
            Self::BackRise => Measure {
                title: key::MEASURE_TITLE_BACK_RISE,
                within: key::MEASURE_WITHIN_BACK_RISE,
                how: key::MEASURE_HOW_BACK_RISE,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(6.5),
            },
            Self::Thigh => Measure {
                title: key::MEASURE_TITLE_THIGH,
                within: key::MEASURE_WITHIN_THIGH,
                how: key::MEASURE_HOW_THIGH,
                left_out: LeftOut::Refused,
                level: Some(Level::Thigh),
                tolerance: mm(8.0),
            },
            Self::Knee => Measure {
                title: key::MEASURE_TITLE_KNEE,
                within: key::MEASURE_WITHIN_KNEE,
                how: key::MEASURE_HOW_KNEE,
                left_out: LeftOut::Refused,
                level: Some(Level::Knee),
                tolerance: mm(6.5),
            },
            Self::Hem => Measure {
                title: key::MEASURE_TITLE_HEM,
                within: key::MEASURE_WITHIN_HEM,
                how: key::MEASURE_HOW_HEM,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(6.5),
            },
            Self::Inseam => Measure {
                title: key::MEASURE_TITLE_INSEAM,
                within: key::MEASURE_WITHIN_INSEAM,
                how: key::MEASURE_HOW_INSEAM,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(13.0),
            },
            Self::Outseam => Measure {
                title: key::MEASURE_TITLE_OUTSEAM,
                within: key::MEASURE_WITHIN_OUTSEAM,
                how: key::MEASURE_HOW_OUTSEAM,
                left_out: LeftOut::Drafted,
                level: None,
                tolerance: mm(13.0),
            },
            Self::BandHeight => Measure {
                title: key::MEASURE_TITLE_BAND_HEIGHT,
                within: key::MEASURE_WITHIN_BAND_HEIGHT,
                how: key::MEASURE_HOW_BAND_HEIGHT,
                left_out: LeftOut::Refused,
                level: None,
                tolerance: mm(3.0),
            },
            Self::BandOverlap => Measure {
                title: key::MEASURE_TITLE_BAND_OVERLAP,
                within: key::MEASURE_WITHIN_BAND_OVERLAP,
                how: key::MEASURE_HOW_BAND_OVERLAP,
                left_out: usually(42.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::FlyLength => Measure {
                title: key::MEASURE_TITLE_FLY_LENGTH,
                within: key::MEASURE_WITHIN_FLY_LENGTH,
                how: key::MEASURE_HOW_FLY_LENGTH,
                left_out: usually(165.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::FlyWidth => Measure {
                title: key::MEASURE_TITLE_FLY_WIDTH,
                within: key::MEASURE_WITHIN_FLY_WIDTH,
                how: key::MEASURE_HOW_FLY_WIDTH,
                left_out: usually(38.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::YokeCentre => Measure {
                title: key::MEASURE_TITLE_YOKE_CENTRE,
                within: key::MEASURE_WITHIN_YOKE_CENTRE,
                how: key::MEASURE_HOW_YOKE_CENTRE,
                left_out: usually(65.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::YokeSide => Measure {
                title: key::MEASURE_TITLE_YOKE_SIDE,
                within: key::MEASURE_WITHIN_YOKE_SIDE,
                how: key::MEASURE_HOW_YOKE_SIDE,
                left_out: usually(38.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::MouthWidth => Measure {
                title: key::MEASURE_TITLE_MOUTH_WIDTH,
                within: key::MEASURE_WITHIN_MOUTH_WIDTH,
                how: key::MEASURE_HOW_MOUTH_WIDTH,
                left_out: usually(105.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::MouthDepth => Measure {
                title: key::MEASURE_TITLE_MOUTH_DEPTH,
                within: key::MEASURE_WITHIN_MOUTH_DEPTH,
                how: key::MEASURE_HOW_MOUTH_DEPTH,
                left_out: usually(70.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::CoinWidth => Measure {
                title: key::MEASURE_TITLE_COIN_WIDTH,
                within: key::MEASURE_WITHIN_COIN_WIDTH,
                how: key::MEASURE_HOW_COIN_WIDTH,
                left_out: usually(75.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::CoinDepth => Measure {
                title: key::MEASURE_TITLE_COIN_DEPTH,
                within: key::MEASURE_WITHIN_COIN_DEPTH,
                how: key::MEASURE_HOW_COIN_DEPTH,
                left_out: usually(85.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::BackPocketWidth => Measure {
                title: key::MEASURE_TITLE_BACK_POCKET_WIDTH,
                within: key::MEASURE_WITHIN_BACK_POCKET_WIDTH,
                how: key::MEASURE_HOW_BACK_POCKET_WIDTH,
                left_out: usually(155.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::BackPocketLength => Measure {
                title: key::MEASURE_TITLE_BACK_POCKET_LENGTH,
                within: key::MEASURE_WITHIN_BACK_POCKET_LENGTH,
                how: key::MEASURE_HOW_BACK_POCKET_LENGTH,
                left_out: usually(170.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::BackPocketFromYoke => Measure {
                title: key::MEASURE_TITLE_BACK_POCKET_FROM_YOKE,
                within: key::MEASURE_WITHIN_BACK_POCKET_FROM_YOKE,
                how: key::MEASURE_HOW_BACK_POCKET_FROM_YOKE,
                left_out: usually(32.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::BackPocketFromCentre => Measure {
                title: key::MEASURE_TITLE_BACK_POCKET_FROM_CENTRE,
                within: key::MEASURE_WITHIN_BACK_POCKET_FROM_CENTRE,
                how: key::MEASURE_HOW_BACK_POCKET_FROM_CENTRE,
                left_out: usually(55.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::LoopLength => Measure {
                title: key::MEASURE_TITLE_LOOP_LENGTH,
                within: key::MEASURE_WITHIN_LOOP_LENGTH,
                how: key::MEASURE_HOW_LOOP_LENGTH,
                left_out: usually(57.0),
                level: None,
                tolerance: mm(3.0),
            },
            Self::LoopWidth => Measure {
                title: key::MEASURE_TITLE_LOOP_WIDTH,
                within: key::MEASURE_WITHIN_LOOP_WIDTH,
                how: key::MEASURE_HOW_LOOP_WIDTH,
                left_out: usually(12.0),
                level: None,
                tolerance: mm(2.0),
            },
            Self::HemDepth => Measure {
                title: key::MEASURE_TITLE_HEM_DEPTH,
                within: key::MEASURE_WITHIN_HEM_DEPTH,
                how: key::MEASURE_HOW_HEM_DEPTH,
                left_out: usually(12.0),
                level: None,
                tolerance: mm(2.0),
            },
        }
    }

    /// Its name in the chart, within a sentence.
    #[must_use]
    pub const fn title(self) -> Key {
        self.known().title
    }

    /// Its name on paper, within a sentence.
    #[must_use]
    pub const fn within(self) -> Key {
        self.known().within
    }

    /// Its number in the chart, counted from 1, as papers and diagrams print it.
    #[must_use]
    pub const fn number(self) -> usize {
        self as usize + 1
    }

    /// The path of one of its keys in a style file: "chart.thigh.value".
    #[must_use]
    pub fn path(self, key: &str) -> String {
        format!("chart.{}.{key}", self.code())
    }
}

impl Serialize for MeasureId {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.code())
    }
}

impl Measure {
    /// Whether every chart has to state it.
    #[must_use]
    pub const fn is_required(&self) -> bool {
        matches!(self.left_out, LeftOut::Refused)
    }

    /// What it is in every size when a chart leaves it out; `None` where a chart cannot, or the draft chooses.
    #[must_use]
    pub const fn value(&self) -> Option<Length> {
        match self.left_out {
            LeftOut::Usual(value) => Some(value),
            LeftOut::Refused | LeftOut::Drafted => None,
        }
    }
}

impl Level {
    /// All of them, from the top down.
    pub const ALL: [Self; 3] = [Self::Seat, Self::Thigh, Self::Knee];

    /// The girth that is taken there.
    #[must_use]
    pub const fn measure(self) -> MeasureId {
        match self {
            Self::Seat => MeasureId::Seat,
            Self::Thigh => MeasureId::Thigh,
            Self::Knee => MeasureId::Knee,
        }
    }

    /// Where it lies when a chart does not say.
    #[must_use]
    pub const fn usual(self) -> Length {
        match self {
            Self::Seat => mm(80.0),
            Self::Thigh => mm(25.4),
            Self::Knee => mm(355.6),
        }
    }

    /// What it is measured from, within a sentence.
    #[must_use]
    pub const fn from(self) -> Key {
        match self {
            Self::Seat => key::LEVEL_ABOVE_CROTCH,
            Self::Thigh | Self::Knee => key::LEVEL_BELOW_CROTCH,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_level_is_that_of_the_girth_taken_there() {
        for measure in MeasureId::ALL {
            let level = measure.known().level;
            let taken: Vec<Level> = Level::ALL
                .into_iter()
                .filter(|level| level.measure() == measure)
                .collect();
            assert_eq!(level.into_iter().collect::<Vec<_>>(), taken, "{measure:?}");
        }
    }

    #[test]
    fn every_measure_has_words_of_its_own() {
        let words = words::Words::english();
        for measure in MeasureId::ALL {
            let known = measure.known();
            let ending = measure.code().replace('_', "-");
            for (kind, key) in [
                ("", measure.key()),
                ("title-", known.title),
                ("within-", known.within),
                ("how-", known.how),
            ] {
                assert_eq!(key.name(), format!("measure-{kind}{ending}"));
                assert!(!words.named(key).is_empty(), "{measure:?}");
            }
        }
    }
}
