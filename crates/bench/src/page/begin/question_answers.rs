//! The questions of a new style, as a page answers them.

use serde::Deserialize;
use style::{Answers, Figure, Fit, LabelWords, Leg, NewStyle, OutseamLine, Tag, Taste};
use words::Words;

/// The questions as a page answers them. Words are those of the style file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct QuestionAnswers {
    name: String,
    /// Empty for one made of the name.
    code: String,
    /// For a collection that is not there yet.
    #[serde(default)]
    label: String,
    #[serde(default)]
    workroom: String,
    #[serde(default)]
    place: String,
    #[serde(default)]
    origin: String,
    figure: String,
    fit: String,
    leg: String,
    /// Left out where the cloth decides.
    #[serde(default)]
    outseam: Option<String>,
    #[serde(default)]
    waists_men: Vec<String>,
    #[serde(default)]
    waists_women: Vec<String>,
    #[serde(default)]
    lengths: Vec<String>,
    /// Tags beside those that are ticked, one after another.
    #[serde(default)]
    waists_men_more: String,
    #[serde(default)]
    waists_women_more: String,
    #[serde(default)]
    lengths_more: String,
    #[serde(default)]
    shell: Option<String>,
    taste: String,
}

impl QuestionAnswers {
    pub(super) fn read(self, say: &'static Words) -> Result<NewStyle, String> {
        let figure = word(say, "figure", Figure::WORDS, &self.figure)?;
        let waists = match figure {
            Figure::Men => tags(say, &self.waists_men, &self.waists_men_more)?,
            Figure::Women => tags(say, &self.waists_women, &self.waists_women_more)?,
        };
        let lengths = tags(say, &self.lengths, &self.lengths_more)?;
        if waists.is_empty() || lengths.is_empty() {
            return Err(say.begin_no_size().to_owned());
        }
        let outseam = self.outseam.as_deref();
        let line = |text| word(say, "outseam", OutseamLine::WORDS, text);
        let said = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
        Ok(NewStyle {
            code: self.code.trim().to_owned(),
            folder: None,
            label: said(&self.label),
            words: LabelWords {
                workroom: said(&self.workroom),
                place: said(&self.place),
                origin: said(&self.origin),
            },
            answers: Answers {
                figure,
                fit: word(say, "fit", Fit::WORDS, &self.fit)?,
                leg: word(say, "leg", Leg::WORDS, &self.leg)?,
                outseam: outseam.map(line).transpose()?,
                waists,
                lengths,
                shell: self.shell.filter(|name| !name.is_empty()),
                taste: word(say, "taste", Taste::WORDS, &self.taste)?,
            },
            name: self.name.trim().to_owned(),
        })
    }
}

/// One of the words a question can be answered with.
pub(super) fn word<T: Copy>(
    say: &'static Words,
    question: &str,
    words: &[(&str, T)],
    text: &str,
) -> Result<T, String> {
    let found = words.iter().find(|(word, _)| *word == text);
    found.map(|(_, value)| *value).ok_or_else(|| {
        let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        say.say(words::say::BeginCanBe {
            question,
            words: known.join(", "),
        })
    })
}

/// The tags that are ticked and those that are written beside them.
fn tags(say: &'static Words, ticked: &[String], more: &str) -> Result<Vec<Tag>, String> {
    let one = |text: &str| {
        let tag = text.trim().parse().ok();
        tag.ok_or_else(|| say.begin_size_wrong().to_owned())
    };
    let more = more.split([' ', ',', ';']).filter(|part| !part.is_empty());
    let all = ticked.iter().map(String::as_str).chain(more);
    all.map(one).collect()
}
