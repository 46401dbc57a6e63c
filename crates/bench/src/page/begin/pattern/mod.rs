//! A style made of a pattern the maker owns: the file is looked at as often as the maker likes, and made into a style once.
//!
//! The file stays in the maker's browser and comes with every question, so that nothing half brought is ever kept here.

mod found;
mod page;

use axum::Router;
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{DefaultBodyLimit, Query, State};
use axum::response::Html;
use axum::routing::{get, post};
use intake::{Asked, Look, SizeName};
use jobs::{FileUnit, JobError, Meant, PatternSource};
use maud::{Markup, html};
use style::{Answers, Drawn, Figure, Fit, LabelWords, NewStyle, StartError, Tag};
use trade::Length;
use words::Words;

use super::{Sent, collection_of, taken, word};
use crate::answer::placed;
use crate::field::capital;
use crate::router::blocking;
use crate::state::Bench;
use crate::trouble::Trouble;

/// No pattern file that is brought through a browser is larger; one that is is not read to its end.
const LARGEST: usize = 8 << 20;

/// The addresses of bringing a pattern.
pub(super) fn routes() -> Router<Bench> {
    Router::new()
        .route("/bring", get(open))
        .route("/bring/look", post(look))
        .route("/bring/make", post(make))
        .layer(DefaultBodyLimit::max(LARGEST))
}

/// What stands in the address beside a file: the fields of the page, some several times.
type Fields = Vec<(String, String)>;

/// What the maker says of a file, and of the style it becomes.
struct Told {
    file: String,
    asked: Asked,
    unit: Option<FileUnit>,
    meant: Meant,
    new: NewStyle,
}

impl Told {
    fn read(say: &'static Words, fields: &Fields) -> Result<Self, String> {
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
    fn look(
        &self,
        say: &'static Words,
        bytes: Vec<u8>,
    ) -> Result<(Look, PatternSource), Vec<String>> {
        let source = PatternSource::read(&self.file, bytes, self.unit)
            .map_err(|error| in_words(say, error))?;
        let look =
            intake::look(&source.read.pattern, &self.file, &self.asked).map_err(|error| {
                vec![say.bring_problem(at_the_bench(say, &error.instead), error.what)]
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

fn in_words(say: &'static Words, error: JobError) -> Vec<String> {
    match error {
        JobError::Start(StartError::Invalid(report)) => placed(say, &report),
        JobError::Start(other) => vec![other.to_string()],
        other => {
            let instead = other.instead().map(str::to_owned);
            let mut lines: Vec<String> = other.to_string().lines().map(str::to_owned).collect();
            if let (Some(last), Some(instead)) = (lines.last_mut(), instead) {
                *last = say.bring_problem(instead, last.as_str());
            }
            lines
        }
    }
}

/// What came with a question, or why it was not taken.
fn file(say: &'static Words, body: Result<Bytes, BytesRejection>) -> Result<Vec<u8>, String> {
    let bytes = body.map_err(|_| say.bring_too_large(LARGEST >> 20))?;
    if bytes.is_empty() {
        return Err(say.bring_no_file().to_owned());
    }
    Ok(bytes.to_vec())
}

async fn open(State(bench): State<Bench>) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let collection = collection_of(&bench)?;
        let page = page::render(bench.say(), collection.as_ref(), &taken(&bench)?);
        Ok(Html(page.into_string()))
    })
    .await
}

async fn look(
    State(bench): State<Bench>,
    Query(fields): Query<Fields>,
    body: Result<Bytes, BytesRejection>,
) -> Result<Html<String>, Trouble> {
    let say = bench.say();
    let seen = move || {
        let bytes = file(say, body).map_err(|words| vec![words])?;
        let told = Told::read(say, &fields).map_err(|words| vec![words])?;
        let (look, source) = told.look(say, bytes)?;
        Ok(found::render(
            say,
            &look,
            &source.read.passed_over,
            &told.asked,
        ))
    };
    blocking(move || {
        let markup: Result<Markup, Vec<String>> = seen();
        Ok(Html(
            markup.unwrap_or_else(|lines| refused(&lines)).into_string(),
        ))
    })
    .await
}

async fn make(
    State(bench): State<Bench>,
    Query(fields): Query<Fields>,
    body: Result<Bytes, BytesRejection>,
) -> Result<Sent, Trouble> {
    let say = bench.say();
    let made = move || {
        let bytes = file(say, body).map_err(|words| vec![words])?;
        let told = Told::read(say, &fields).map_err(|words| vec![words])?;
        let (look, source) = told.look(say, bytes)?;
        jobs::begin_with(bench.folder(), &told.new, &look, source, told.meant)
            .map_err(|error| in_words(say, error))
    };
    blocking(move || {
        Ok(match made() {
            Ok(path) => Sent::begun(say, Ok(path)),
            Err(lines) => Sent::Problems(lines),
        })
    })
    .await
}

fn refused(lines: &[String]) -> Markup {
    html! {
        div #found role="status" {
            @for line in lines { p.problem { (capital(line)) } }
        }
    }
}
