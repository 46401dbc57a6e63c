//! What is said when something cannot be done.

use std::path::PathBuf;

use miette::{Diagnostic, GraphicalReportHandler, GraphicalTheme};
use style::{Report, Size, StartError};
use thiserror::Error;

/// Why a command was not carried out. Nothing was written.
///
/// The message holds the cause already, so no field is marked as a source: it would be printed twice.
#[derive(Debug, Error, Diagnostic)]
pub enum Trouble {
    /// The style or its collection has problems; the report prints itself.
    #[error("{0}")]
    Input(Report),
    /// A collection's folder was named where a style is asked for.
    #[error("{} is a collection, not a style", folder.display())]
    #[diagnostic(code("fellwork::not-a-style"))]
    CollectionNamed {
        /// The folder.
        folder: PathBuf,
        /// What to name instead.
        #[help]
        instead: String,
    },
    /// Something else was named than what the command takes.
    #[error("{what}")]
    #[diagnostic(code("fellwork::named-otherwise"))]
    NamedOtherwise {
        /// What was named and what is asked for.
        what: String,
        /// What to name instead.
        #[help]
        instead: String,
    },
    /// The style is not made in the size asked for.
    #[error("{style} is not made in size {size}")]
    #[diagnostic(code("fellwork::no-such-size"))]
    NoSuchSize {
        /// The style's name.
        style: String,
        /// What was asked.
        size: Size,
        /// The sizes there are.
        #[help]
        sizes: String,
    },
    /// The place is not on the side that is looked at.
    #[error("{place} is not to be seen on this side")]
    #[diagnostic(code("fellwork::not-on-this-side"))]
    NotOnThisSide {
        /// The place asked for.
        place: String,
        /// The places there are.
        #[help]
        places: String,
    },
    /// The collection has no such cloth.
    #[error("the collection has no cloth named {cloth}")]
    #[diagnostic(code("fellwork::no-such-cloth"))]
    NoSuchCloth {
        /// What was asked.
        cloth: String,
        /// The cloths there are.
        #[help]
        cloths: String,
    },
    /// A piece cannot be cut as the style says.
    #[error("{why}")]
    #[diagnostic(code("fellwork::cannot-cut"))]
    CannotCut {
        /// What is in the way.
        why: String,
        /// The ways out.
        #[help]
        ways: String,
    },
    /// The limits of an order leave no plan.
    #[error("{0}")]
    #[diagnostic(
        code("fellwork::no-plan"),
        help(
            "allow more lays (`most_lays`), more pairs in one (`most_pairs`), more plies or a longer table in the order's [limits]"
        )
    )]
    NoPlan(spreading::OrderError),
    /// No plan of an order was found, which does not say that there is none.
    #[error("{0}")]
    #[diagnostic(
        code("fellwork::no-plan-found"),
        help(
            "look longer (`--seconds`), or allow more lays (`most_lays`), more plies or a longer table in the order's [limits]"
        )
    )]
    NoPlanFound(spreading::OrderError),
    /// A lay of an order cannot be made.
    #[error("{0}")]
    #[diagnostic(code("fellwork::lay"))]
    OrderLay(spreading::OrderError),
    /// The plan has no such lay.
    #[error("the plan of {cloth} has no lay {asked}")]
    #[diagnostic(code("fellwork::no-such-lay"))]
    NoSuchLay {
        /// The cloth.
        cloth: String,
        /// What was asked.
        asked: usize,
        /// How many there are.
        #[help]
        lays: String,
    },
    /// The key of the bench cannot be had from where it was said to be.
    #[error("no key from {from}: {why}")]
    #[diagnostic(
        code("fellwork::key"),
        help(
            "put the key, 16 to 128 letters and digits, into the first line of a file that only you may read: chmod 600 FILE"
        )
    )]
    Key {
        /// The file, or what stands for one.
        from: String,
        /// What is in the way.
        why: String,
    },
    /// An option that means nothing here.
    #[error("{what}")]
    #[diagnostic(code("fellwork::option"))]
    Option {
        /// Which, and why it means nothing.
        what: String,
        /// What to do instead.
        #[help]
        instead: String,
    },
    /// An output that is not written, so that nothing is lost.
    #[error("{what}")]
    #[diagnostic(code("fellwork::not-over"))]
    NotOver {
        /// Which, and why not.
        what: String,
        /// What would be right.
        #[help]
        instead: String,
    },
    /// The order has nothing of a cloth.
    #[error("the order has no pieces of {cloth}")]
    #[diagnostic(code("fellwork::no-such-cloth"))]
    NothingOfCloth {
        /// What was asked.
        cloth: String,
        /// The cloths it has pieces of.
        #[help]
        cloths: String,
    },
    /// No lay can be made.
    #[error("{0}")]
    #[diagnostic(code("fellwork::lay"))]
    Lay(#[from] lay::LayError),
    /// The pieces cannot be plotted.
    #[error("{0}")]
    #[diagnostic(code("fellwork::plot"))]
    Plot(patterns::hpgl::HpglError),
    /// Patterns or a lay could not be set on pages.
    #[error("{0}")]
    #[diagnostic(code("fellwork::pages"))]
    Pages(papers::PaperError),
    /// A job was ended before it was done.
    #[error("it was cancelled")]
    #[diagnostic(code("fellwork::cancelled"))]
    Cancelled,
    /// A file could not be read.
    #[error("{} cannot be read: {why}", path.display())]
    #[diagnostic(
        code("fellwork::not-read"),
        help("check the name and that you may read it")
    )]
    Read {
        /// The file.
        path: PathBuf,
        /// What the system said.
        why: std::io::Error,
    },
    /// A pattern was to be brought into a style that is not there.
    #[error("there is no style in {}", folder.display())]
    #[diagnostic(code("fellwork::no-style"))]
    NoStyle {
        /// Where it would be.
        folder: PathBuf,
        /// How one is begun.
        #[help]
        begin: String,
    },
    /// A file is no pattern file that can be read.
    #[error("{} cannot be brought: {what}", file.display())]
    #[diagnostic(code("fellwork::no-pattern"))]
    NoPattern {
        /// The file.
        file: PathBuf,
        /// What is wrong, and where.
        what: String,
        /// What would be right.
        #[help]
        instead: String,
    },
    /// The pieces of a pattern cannot be told apart.
    #[error("{unclear}")]
    #[diagnostic(code("fellwork::not-made-out"))]
    NotMadeOut {
        /// What is unclear, line by line.
        unclear: String,
        /// The ways out.
        #[help]
        ways: String,
    },
    /// A pattern holds other sizes than the style.
    #[error("{why}")]
    #[diagnostic(code("fellwork::other-sizes"))]
    OtherSizes {
        /// What does not fit.
        why: String,
        /// The ways out.
        #[help]
        ways: String,
    },
    /// What was said of a pattern does not fit it.
    #[error("{what}")]
    #[diagnostic(code("fellwork::intake"))]
    Intake {
        /// What is in the way.
        what: String,
        /// What would be right.
        #[help]
        instead: String,
    },
    /// The style could not be saved.
    #[error("{0}")]
    #[diagnostic(code("fellwork::not-saved"))]
    Save(style::SaveError),
    /// A folder could not be begun.
    #[error("{0}")]
    #[diagnostic(code("fellwork::not-begun"))]
    Start(StartError),
    /// A copy was asked for in another collection than its original's.
    #[error("{} is not the collection that style is in", asked.display())]
    #[diagnostic(
        code("fellwork::other-collection"),
        help("a copy names the cloths and yarns of its own collection; begin it in {}", its.display())
    )]
    OtherCollection {
        /// The folder that was asked for.
        asked: PathBuf,
        /// Where the style is.
        its: PathBuf,
    },
    /// The pack could not be printed.
    #[error("the pack cannot be printed: {0}")]
    #[diagnostic(code("fellwork::pack"))]
    Paper(papers::PaperError),
    /// The bench did not start or ended badly.
    #[error("{0}")]
    #[diagnostic(code("fellwork::bench"))]
    Bench(bench::BenchError),
    /// Earlier versions of the style cannot be listed.
    #[error("the earlier versions in {} cannot be read: {why}", folder.display())]
    #[diagnostic(
        code("fellwork::revisions"),
        help("check that you may read the folder .revisions in it")
    )]
    Revisions {
        /// The style's folder.
        folder: PathBuf,
        /// What the system said.
        why: std::io::Error,
    },
    /// The file has no such version.
    #[error("the file has no version {asked}")]
    #[diagnostic(code("fellwork::no-such-version"))]
    NoSuchVersion {
        /// What was asked.
        asked: String,
        /// The versions there are.
        #[help]
        versions: String,
    },
    /// A version could not be put back.
    #[error("{0}")]
    #[diagnostic(code("fellwork::not-put-back"))]
    NotPutBack(style::KeepError),
    /// A change was not made, or not taken back.
    #[error("{0}")]
    #[diagnostic(code("fellwork::not-changed"))]
    NotChanged(style::KeepError),
    /// No collection where one is asked for.
    #[error("{} is in no collection", path.display())]
    #[diagnostic(
        code("fellwork::no-collection"),
        help("name the folder that has collection.toml, or a file in it")
    )]
    NoCollection {
        /// What was named.
        path: PathBuf,
    },
    /// A path without the value it becomes.
    #[error("{path} has no value to become")]
    #[diagnostic(
        code("fellwork::no-value"),
        help("write a path and its value, one after the other; --remove takes a value out")
    )]
    NoValue {
        /// The path.
        path: String,
    },
    /// Nothing to change.
    #[error("nothing was said to be changed")]
    #[diagnostic(
        code("fellwork::nothing-set"),
        help(
            "write a path and its value, such as chart.thigh.value \"63 cm\"; see fellwork set --help"
        )
    )]
    NothingSet,
    /// What is no path of a file.
    #[error("{path} is no path: {why}")]
    #[diagnostic(
        code("fellwork::no-path"),
        help(
            "sections have points between, members of a list a number from 0: seams.inseam.rows[0].density"
        )
    )]
    NoPath {
        /// What was written.
        path: String,
        /// Why it is none.
        why: style::DocPathError,
    },
    /// A list or a section that is not JSON.
    #[error("{value} begins like a list or a section and is none: {why}")]
    #[diagnostic(
        code("fellwork::no-json"),
        help(
            "write a list as JSON, such as [30, 32], a section as {{ \"key\": \"value\" }}, and a text in quotation marks of its own"
        )
    )]
    NoJson {
        /// What was written.
        value: String,
        /// What is wrong with it.
        why: serde_json::Error,
    },
    /// A file whose versions are not kept.
    #[error("{} is no file of a collection, so no versions of it are kept", file.display())]
    #[diagnostic(
        code("fellwork::not-kept"),
        help(
            "name a style's folder, an order, or collection.toml, cloths.toml, yarns.toml or trims.toml"
        )
    )]
    NotKept {
        /// The file.
        file: PathBuf,
    },
    /// A version could not be named.
    #[error("{0}")]
    #[diagnostic(code("fellwork::not-named"))]
    NotNamed(style::NameError),
    /// An output could not be written.
    #[error("{} cannot be written: {why}", path.display())]
    #[diagnostic(
        code("fellwork::not-written"),
        help("check that its folder is there, that you may write in it and that there is room")
    )]
    Write {
        /// The output.
        path: PathBuf,
        /// What the system said.
        why: std::io::Error,
    },
    /// The answer could not be put into JSON.
    #[error("{0}")]
    #[diagnostic(code("fellwork::json"))]
    Answer(answers::AnswerError),
}

impl From<spreading::OrderError> for Trouble {
    fn from(error: spreading::OrderError) -> Self {
        match error {
            spreading::OrderError::CannotCut { why, ways } => Self::CannotCut {
                why,
                ways: ways.join("\n"),
            },
            spreading::OrderError::Lay { .. } => Self::OrderLay(error),
            spreading::OrderError::NoPlan { .. } => Self::NoPlan(error),
            spreading::OrderError::NotFound { .. } => Self::NoPlanFound(error),
        }
    }
}

impl From<Report> for Trouble {
    fn from(report: Report) -> Self {
        Self::Input(report)
    }
}

/// How a piece or a corner is named on the command line.
const PIECE_WAYS: &str = "see its pieces and corners with fellwork bring --list, then say which they are:\n\
     --piece front=\"NAME\" names a piece, --corners front=3,4,6,8,9 the corner at which each of its edges begins";

/// How a size is named on the command line.
const SIZE_WAYS: &str =
    "say which size it is with --size, or state the chart and the base at a size the pattern holds";

impl From<jobs::JobError> for Trouble {
    fn from(error: jobs::JobError) -> Self {
        use jobs::JobError;
        match error {
            JobError::NoSuchSize { style, size, sizes } => Self::NoSuchSize { style, size, sizes },
            JobError::NoSuchCloth { cloth, cloths } => Self::NoSuchCloth { cloth, cloths },
            JobError::NothingOfCloth { cloth, cloths } => Self::NothingOfCloth { cloth, cloths },
            JobError::Plan(error) => error.into(),
            JobError::CannotCut { why, ways } => Self::CannotCut { why, ways },
            JobError::Lay(error) => Self::Lay(error),
            JobError::Plot(error) => Self::Plot(error),
            JobError::Paper(error) => Self::Pages(error),
            JobError::Revisions { folder, why } => Self::Revisions { folder, why },
            JobError::NoPattern { what, instead } => Self::Intake { what, instead },
            JobError::NotMadeOut { unclear } => Self::NotMadeOut {
                unclear,
                ways: PIECE_WAYS.to_owned(),
            },
            JobError::OtherSizes { why } => Self::OtherSizes {
                why,
                ways: SIZE_WAYS.to_owned(),
            },
            JobError::Save(error) => error.into(),
            JobError::Start(error) => error.into(),
            JobError::Cancelled => Self::Cancelled,
        }
    }
}

impl From<intake::IntakeError> for Trouble {
    fn from(error: intake::IntakeError) -> Self {
        Self::Intake {
            what: error.what,
            instead: error.instead,
        }
    }
}

impl From<style::SaveError> for Trouble {
    fn from(error: style::SaveError) -> Self {
        match error {
            style::SaveError::Invalid(report) | style::SaveError::Unreadable(report) => {
                Self::Input(report)
            }
            other => Self::Save(other),
        }
    }
}

impl From<answers::AnswerError> for Trouble {
    fn from(error: answers::AnswerError) -> Self {
        Self::Answer(error)
    }
}

impl From<StartError> for Trouble {
    fn from(error: StartError) -> Self {
        match error {
            StartError::Invalid(report) => Self::Input(report),
            other => Self::Start(other),
        }
    }
}

impl From<bench::BenchError> for Trouble {
    fn from(error: bench::BenchError) -> Self {
        match error {
            bench::BenchError::Collection(report) => Self::Input(report),
            other => Self::Bench(other),
        }
    }
}

impl Trouble {
    /// The trouble for a person: no colour codes, the same text on every machine.
    pub fn render(&self) -> String {
        if let Self::Input(report) = self {
            return report.render();
        }
        let handler = GraphicalReportHandler::new_themed(GraphicalTheme::unicode_nocolor())
            .with_width(100)
            .with_links(false);
        let mut out = String::new();
        if handler.render_report(&mut out, self).is_err() {
            out = format!("{self}\n");
        }
        trade::plain(&out).into_owned()
    }
}
