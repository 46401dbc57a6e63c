//! Changes in words: made here and nowhere else, and nobody takes them apart again.

use serde::Serialize;
use trade::{Length, System};
use words::{Given, Said, Words, say};

use super::change::{Change, Kind, Part};
use super::value::{Value, Written};

/// A change as a table has it.
#[derive(Clone, Debug, PartialEq)]
pub struct Columns {
    /// What it is about; the whole sentence where nothing became another.
    pub about: Given,
    /// What it was; `None` where nothing became another.
    pub was: Option<Given>,
    /// What it is now; `None` where nothing became another.
    pub is: Option<Given>,
}

/// A change in somebody's words, as programs are given it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ToldChange {
    /// Where it is in the file, as a path ("chart.thigh.value").
    pub path: String,
    /// The change: "thigh at size 32x32: 62.2 cm → 63.0 cm (+0.8 cm)".
    pub sentence: String,
}

impl Change {
    /// The change as a sentence, lengths in the system given.
    #[must_use]
    pub fn said(&self, system: System) -> Said {
        let (about, is) = (self.about.clone(), self.is.given(system));
        match self.kind {
            Kind::Changed => {
                let (was, is) = self.was_and_is(system);
                say::DifferenceChanged { about, is, was }.into()
            }
            Kind::Added => self.added(system),
            Kind::TakenOut => match self.was {
                Value::Charted(..) => say::DifferenceTakenOutOfChart { about }.into(),
                Value::Written(_) => say::DifferenceTakenOut { about }.into(),
                _ => say::DifferenceRemoved { about }.into(),
            },
            Kind::Within => say::DifferenceWithin { about }.into(),
            Kind::Follows => say::DifferenceFollows { about, like: is }.into(),
            Kind::EdgesNamed => say::DifferenceEdgesNamed { about }.into(),
            Kind::Muted => say::DifferenceMuted { about, reason: is }.into(),
            Kind::CountedAgain => say::DifferenceCountedAgain { about }.into(),
        }
    }

    /// The change in somebody's words.
    #[must_use]
    pub fn words(&self, words: &Words, system: System) -> String {
        words.say(self.said(system))
    }

    /// The change with its sentence, for programs.
    #[must_use]
    pub fn told(&self, words: &Words, system: System) -> ToldChange {
        ToldChange {
            path: self.path.clone(),
            sentence: self.words(words, system),
        }
    }

    /// The change as a table has it.
    #[must_use]
    pub fn columns(&self, system: System) -> Columns {
        if self.kind == Kind::Changed {
            let (was, is) = self.was_and_is(system);
            return Columns {
                about: self.about.clone(),
                was: Some(was),
                is: Some(is),
            };
        }
        Columns {
            about: self.said(system).into(),
            was: None,
            is: None,
        }
    }

    fn added(&self, system: System) -> Said {
        let about = self.about.clone();
        match &self.is {
            Value::Nothing | Value::Written(Written::List(_) | Written::Section) => {
                say::DifferenceAdded { about }.into()
            }
            Value::Written(Written::Plain(is)) => say::DifferenceNew { about, is }.into(),
            Value::Charted(value, size) => say::DifferenceAddedToChart {
                about,
                size: size.to_string(),
                value: value.show(system),
            }
            .into(),
            Value::Pocket(pocket) => say::DifferenceAddedOnSide {
                about,
                depth: pocket.depth.show(system),
                side: pocket.side.word(),
                width: pocket.width.show(system),
            }
            .into(),
            other => say::DifferenceAddedAs {
                about,
                is: other.given(system),
            }
            .into(),
        }
    }

    /// What it was and what it is: of two lengths also by how much they differ.
    fn was_and_is(&self, system: System) -> (Given, Given) {
        let (was, is) = match (&self.was, &self.is) {
            (Value::Length(was), Value::Length(is)) => {
                let by = signed(*is - *was, system);
                let (was, is) = pair(*was, *is, system);
                (was, say::DifferenceGrew { by, is }.into())
            }
            (was, is) => (was.given(system), is.given(system)),
        };
        (self.part.map_or(was.clone(), |part| part.had(was)), is)
    }
}

impl Part {
    /// What it was, with what it is called.
    fn had(self, was: Given) -> Given {
        match self {
            Self::Construction => say::DifferenceHadConstruction { was }.into(),
            Self::Stitch => say::DifferenceHadStitch { was }.into(),
            Self::Density => say::DifferenceHadDensity { was }.into(),
            Self::Yarn => say::DifferenceHadYarn { was }.into(),
            Self::Under => say::DifferenceHadUnder { was }.into(),
            Self::Offset => say::DifferenceHadOffset { was }.into(),
            Self::Begin => say::DifferenceHadBegin { was }.into(),
            Self::End => say::DifferenceHadEnd { was }.into(),
        }
    }
}

/// Two lengths as a person reads them; exactly where they would read alike.
fn pair(was: Length, is: Length, system: System) -> (Given, Given) {
    let [a, b] = [was, is].map(|length| length.show(system));
    if a == b {
        (was.to_string().into(), is.to_string().into())
    } else {
        (a.into(), b.into())
    }
}

fn signed(by: Length, system: System) -> String {
    let shown = by.abs().show(system);
    let nothing = Length::ZERO.show(system);
    let size = if shown == nothing {
        by.abs().to_string()
    } else {
        shown
    };
    format!("{}{size}", if by < Length::ZERO { "-" } else { "+" })
}
