//! Why a job was not done.

use std::io;
use std::path::PathBuf;

use lay::LayError;
use spreading::OrderError;
use style::Size;
use thiserror::Error;

/// Why a job was not done. Nothing of it is left behind.
///
/// The message holds the cause already, so no field is marked as a source: it would be said twice.
#[derive(Debug, Error)]
pub enum JobError {
    /// The style is not made in the size asked for.
    #[error("{style} is not made in size {size}")]
    NoSuchSize {
        /// The style's name.
        style: String,
        /// What was asked.
        size: Size,
        /// The sizes there are, in words.
        sizes: String,
    },
    /// The collection has no such cloth.
    #[error("the collection has no cloth named {cloth}")]
    NoSuchCloth {
        /// What was asked.
        cloth: String,
        /// The cloths there are, in words.
        cloths: String,
    },
    /// A piece cannot be cut as the style says.
    #[error("{why}")]
    CannotCut {
        /// What is in the way.
        why: String,
        /// The ways out, one a line.
        ways: String,
    },
    /// The order has nothing of a cloth that the collection has.
    #[error("the order has no pieces of {cloth}")]
    NothingOfCloth {
        /// What was asked.
        cloth: String,
        /// What it has pieces of, in words.
        cloths: String,
    },
    /// No plan of an order can be made, or none was found.
    #[error("{0}")]
    Plan(OrderError),
    /// No lay can be made.
    #[error("{0}")]
    Lay(LayError),
    /// The pieces cannot be plotted.
    #[error("{0}")]
    Plot(patterns::hpgl::HpglError),
    /// The pages could not be printed.
    #[error("{0}")]
    Paper(papers::PaperError),
    /// Earlier versions of the style cannot be listed.
    #[error("the earlier versions in {} cannot be read: {why}", folder.display())]
    Revisions {
        /// The style's folder.
        folder: PathBuf,
        /// What the system said.
        why: io::Error,
    },
    /// A pattern file cannot be brought.
    #[error("{what}")]
    NoPattern {
        /// What is wrong, and where.
        what: String,
        /// What would be right.
        instead: String,
    },
    /// The pieces of a pattern cannot be told apart.
    #[error("{unclear}")]
    NotMadeOut {
        /// What is unclear, line by line.
        unclear: String,
    },
    /// A pattern holds other sizes than the style.
    #[error("{why}")]
    OtherSizes {
        /// What does not fit.
        why: String,
    },
    /// The style could not be saved.
    #[error("{0}")]
    Save(style::SaveError),
    /// The style could not be begun.
    #[error("{0}")]
    Start(style::StartError),
    /// Nobody waits for it any more.
    #[error("it was cancelled")]
    Cancelled,
}

impl JobError {
    /// What would be right, where the message does not say it.
    pub fn instead(&self) -> Option<&str> {
        match self {
            Self::NoSuchSize { sizes, .. } => Some(sizes),
            Self::NoSuchCloth { cloths, .. } | Self::NothingOfCloth { cloths, .. } => Some(cloths),
            Self::Plan(OrderError::NoPlan { .. }) => Some(
                "allow more lays, more pairs in one, more plies or a longer table in its [limits]",
            ),
            Self::Plan(OrderError::NotFound { .. }) => Some(
                "look longer, or allow more lays, more plies or a longer table in its [limits]",
            ),
            Self::CannotCut { ways, .. } => Some(ways),
            Self::Revisions { .. } => Some("check that you may read the folder .revisions in it"),
            Self::NoPattern { instead, .. } => Some(instead),
            Self::NotMadeOut { .. } => Some("say which piece is which"),
            Self::OtherSizes { .. } => Some("say which size it is"),
            Self::Plan(OrderError::CannotCut { .. } | OrderError::Lay { .. })
            | Self::Lay(_)
            | Self::Plot(_)
            | Self::Paper(_)
            | Self::Save(_)
            | Self::Start(_)
            | Self::Cancelled => None,
        }
    }
}

impl From<LayError> for JobError {
    fn from(error: LayError) -> Self {
        match error {
            LayError::Cancelled => Self::Cancelled,
            other => Self::Lay(other),
        }
    }
}

impl From<OrderError> for JobError {
    fn from(error: OrderError) -> Self {
        match error {
            OrderError::CannotCut { why, ways } => Self::CannotCut {
                why,
                ways: ways.join("\n"),
            },
            OrderError::Lay {
                why: LayError::Cancelled,
                ..
            } => Self::Cancelled,
            other => Self::Plan(other),
        }
    }
}

impl From<patterns::hpgl::HpglError> for JobError {
    fn from(error: patterns::hpgl::HpglError) -> Self {
        Self::Plot(error)
    }
}

impl From<papers::PaperError> for JobError {
    fn from(error: papers::PaperError) -> Self {
        match error {
            papers::PaperError::Cancelled => Self::Cancelled,
            other => Self::Paper(other),
        }
    }
}

impl From<style::SaveError> for JobError {
    fn from(error: style::SaveError) -> Self {
        Self::Save(error)
    }
}

impl From<style::StartError> for JobError {
    fn from(error: style::StartError) -> Self {
        Self::Start(error)
    }
}
