//! What something was or is in a version of a file. A value holds quantities, not how they read.

use trade::{Angle, Length, Share, StitchDensity, StitchType, System};
use words::{Given, Key, key, say};

use crate::choices::Choice;
use crate::seams::{Lap, RowSpec};
use crate::{ArtPath, Break, Side, Size, Tag};

/// What something was or is.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Nothing is there.
    Nothing,
    /// A name or a text of the maker's.
    Text(String),
    /// One of several choices, by the word a file has for it.
    Choice(&'static str),
    /// Something that has words of ours.
    Named(Given),
    /// Yes or no.
    Flag(bool),
    /// How many.
    Count(u32),
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// Stitches to a length.
    Density(StitchDensity),
    /// A part of a whole.
    Share(Share),
    /// A size.
    Size(Size),
    /// A tag of a size.
    Tag(Tag),
    /// A stitch type.
    Stitch(StitchType),
    /// Which ply lies over which.
    Lap(Lap),
    /// From one waist on another grade.
    Break(Break),
    /// Several.
    List(Vec<Value>),
    /// A measure, with the size at which the chart states it.
    Charted(Length, Size),
    /// A pocket behind a front.
    Pocket(PocketValue),
    /// A row of stitches.
    Row(Box<RowSpec>),
    /// What a file says that is not read as a style.
    Written(Written),
}

/// Where an extra pocket lies and how large it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PocketValue {
    /// The front it sits behind.
    pub side: Side,
    /// Its width.
    pub width: Length,
    /// Its depth.
    pub depth: Length,
}

/// What a file says at a place, as far as it can be told in a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Written {
    /// A text, number, date or flag.
    Plain(String),
    /// A list of so many.
    List(usize),
    /// A section.
    Section,
}

impl Value {
    /// What is put into a sentence for it, lengths in the system given.
    #[must_use]
    pub fn given(&self, system: System) -> Given {
        match self {
            Self::Nothing => key::DIFFERENCE_NONE.into(),
            Self::Text(text) => text.into(),
            Self::Choice(word) => (*word).into(),
            Self::Named(name) => name.clone(),
            Self::Flag(true) => key::DIFFERENCE_YES.into(),
            Self::Flag(false) => key::DIFFERENCE_NO.into(),
            Self::Count(count) => (*count).into(),
            Self::Length(length) | Self::Charted(length, _) => length.show(system).into(),
            Self::Angle(angle) => angle.to_string().into(),
            Self::Density(density) => density.to_string().into(),
            Self::Share(share) => share.to_string().into(),
            Self::Size(size) => size.to_string().into(),
            Self::Tag(tag) => tag.to_string().into(),
            Self::Stitch(stitch) => stitch.to_string().into(),
            Self::Lap(lap) => say::DifferenceLapOrder {
                over: lap.over.word(),
                under: lap.under.word(),
            }
            .into(),
            Self::Break(step) => say::DifferenceBreak {
                grade: step.grade.show(system),
                waist: step.above.to_string(),
            }
            .into(),
            Self::List(all) if all.is_empty() => key::DIFFERENCE_NONE.into(),
            Self::List(all) => Given::List(all.iter().map(|one| one.given(system)).collect()),
            Self::Pocket(pocket) => {
                let size = [pocket.width, pocket.depth].map(|length| length.show(system));
                size.join(" x ").into()
            }
            Self::Row(row) => row_sewn(row),
            Self::Written(written) => written.clone().into(),
        }
    }
}

/// How a row is sewn, its quantities as exactly as a file writes them.
fn row_sewn(row: &RowSpec) -> Given {
    let mut sewn: Given = say::DifferenceRowSewn {
        density: row.density.to_string(),
        offset: row.offset.to_string(),
        stitch: row.stitch.to_string(),
        under: &row.under,
        yarn: &row.yarn,
    }
    .into();
    if let Some(ending) = row.begin {
        let (ending, row) = (ending.word(), sewn);
        sewn = say::DifferenceRowBegins { ending, row }.into();
    }
    if let Some(ending) = row.end {
        let (ending, row) = (ending.word(), sewn);
        sewn = say::DifferenceRowEnds { ending, row }.into();
    }
    sewn
}

impl<T: Choice> From<T> for Value {
    fn from(choice: T) -> Self {
        Self::Choice(choice.written())
    }
}

impl From<Written> for Given {
    fn from(written: Written) -> Self {
        match written {
            Written::Plain(text) => text.into(),
            Written::List(count) => say::DifferenceList { count }.into(),
            Written::Section => key::DIFFERENCE_SECTION.into(),
        }
    }
}

impl<T: Into<Value>> From<Option<T>> for Value {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Nothing, Into::into)
    }
}

impl<T: Into<Value>> From<Vec<T>> for Value {
    fn from(all: Vec<T>) -> Self {
        Self::List(all.into_iter().map(Into::into).collect())
    }
}

impl<T: Clone + Into<Value>> From<&[T]> for Value {
    fn from(all: &[T]) -> Self {
        all.to_vec().into()
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<&String> for Value {
    fn from(text: &String) -> Self {
        Self::Text(text.clone())
    }
}

impl From<&ArtPath> for Value {
    fn from(path: &ArtPath) -> Self {
        path.as_str().into()
    }
}

impl From<Key> for Value {
    fn from(key: Key) -> Self {
        Self::Named(key.into())
    }
}

macro_rules! values {
    ($($kind:ident($held:ty)),+ $(,)?) => {
        $(impl From<$held> for Value {
            fn from(value: $held) -> Self {
                Self::$kind(value)
            }
        })+
    };
}
values!(
    Named(Given),
    Flag(bool),
    Count(u32),
    Length(Length),
    Angle(Angle),
    Density(StitchDensity),
    Share(Share),
    Size(Size),
    Tag(Tag),
    Stitch(StitchType),
    Lap(Lap),
    Break(Break),
    Pocket(PocketValue),
    Written(Written),
);
