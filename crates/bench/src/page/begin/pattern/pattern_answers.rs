//! What the maker says of a pattern file and of the style it becomes.

use intake::{Asked, Look, SizeName};
use jobs::{FileUnit, JobError, Meant, PatternSource};
use style::{Answers, Drawn, Figure, Fit, LabelWords, NewStyle, StartError, Tag};
use trade::Length;
use words::Words;

use crate::answer::placed;
use crate::page::begin::question_answers::word;

/// What stands in the address beside a file: the fields of the page, some several times.
pub(super) type Fields = Vec<(String, String)>;

/// What the maker says of a file, and of the style it becomes.
pub(super) struct PatternAnswers {
    pub(super) file: String,
    pub(super) asked: Asked,
    pub(super) unit: Option<FileUnit>,
    pub(super) meant: Meant,
    pub(super) new: NewStyle,
}

impl PatternAnswers {
    pub(super) fn read(say: &'static Words, fields: &Fields) -> Result<Self, String> {
        let text = |name: &str| {
            let mut all = fields.iter();
            let found = all.find(|(key, _)| key == name);
            found.map_or("", |(_, value)| value.trim())
        };
        let all = |name: &'static str| {
            let fields = fields.iter().filter(move |(key, _)| key == name);
            fields
                .map(|(_, value)| value.trim())
                .filter(|value| !value.is_empty())
        };
        let sizes = text("size").split([',', ';']).map(str::trim);
        let sizes = sizes.filter(|size| !size.is_empty()).map(str::parse);
        let sizes = sizes.collect::<Result<Vec<SizeName>, String>>()?;
        let pair = |text: &str| {
            let (own, theirs) = text.split_once('=')?;
            Some((own.to_owned(), theirs.to_owned()))
        };
        let corners = all("corners").filter_map(pair).map(|(own, names)| {
            let names = names.split(',').map(|name| name.trim().to_owned());
            (own, names.collect())
        });
        let allowance = match text("allowance") {
            "" => None,
            words => Some(
                words
                    .parse::<Length>()
                    .map_err(|why| say.bring_allowance_wrong(why))?,
            ),
        };
        let name = text("name").to_owned();
        let code = text("code").to_owned();
        let label = Some(text("label").to_owned()).filter(|label| !label.is_empty());
        Ok(Self {
            file: text("file").to_owned(),
            asked: Asked {
                sizes,
                pieces: all("piece").filter_map(pair).collect(),
                corners: corners.collect(),
                sewn: text("sewn") == "on",
                grain_up: text("grain_up") == "on",
                lengths: style::USUAL_LENGTHS
                    .iter()
                    .copied()
                    .map(Tag::inches)
                    .collect(),
                base: None,
            },
            unit: match text("unit") {
                "mm" => Some(FileUnit::Millimetre),
                "cm" => Some(FileUnit::Centimetre),
                "in" => Some(FileUnit::Inch),
                _ => None,
            },
            meant: Meant {
                drawn: if text("before_wash") == "on" {
                    Drawn::BeforeWash
                } else {
                    Drawn::AfterWash
                },
                allowance,
            },
            new: NewStyle {
                name,
                code,
                label,
                folder: None,
                words: LabelWords::default(),
                answers: Answers {
                    figure: word(say, "figure", Figure::WORDS, text("figure"))?,
                    fit: word(say, "fit", Fit::WORDS, text("fit"))?,
                    // The panels are the maker's own, whatever edge the cloth has.
                    outseam: Some(style::OutseamLine::Shaped),
                    ..Answers::default()
                },
            },
        })
    }

    /// What is in the file, and the file itself.
    pub(super) fn look(
        &self,
        say: &'static Words,
        bytes: Vec<u8>,
    ) -> Result<(Look, PatternSource), Vec<String>> {
        let source = PatternSource::read(&self.file, bytes, self.unit)
            .map_err(|error| in_words(say, error))?;
        let look =
            intake::look(&source.read.pattern, &self.file, &self.asked).map_err(|error| {
                vec![say.say(words::say::BringProblem {
                    instead: at_the_bench(say, &error.instead),
                    what: error.what,
                })]
            })?;
        Ok((look, source))
    }
}

/// Where the command line has an option the page has a field.
fn at_the_bench(say: &'static Words, words: &str) -> String {
    words
        .replace(": --size ", &format!(" {} ", say.bring_under_size()))
        .replace("as fellwork bring --list shows them", say.bring_as_drawn())
}

pub(super) fn in_words(say: &'static Words, error: JobError) -> Vec<String> {
    match error {
        JobError::Start(StartError::Invalid(report)) => placed(say, &report),
        JobError::Start(other) => vec![other.to_string()],
        other => {
            let instead = other.instead().map(str::to_owned);
            let mut lines: Vec<String> = other.to_string().lines().map(str::to_owned).collect();
            if let (Some(last), Some(instead)) = (lines.last_mut(), instead) {
                *last = say.say(words::say::BringProblem {
                    instead,
                    what: last.as_str(),
                });
            }
            lines
        }
    }
}
