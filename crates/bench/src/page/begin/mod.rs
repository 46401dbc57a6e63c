//! Beginning a style: by a few questions, as a copy of another, of a pattern of the maker's own, or with the demo where
//! there is nothing yet.

mod copy;
mod pattern;
mod picture;
mod questions;

use axum::extract::rejection::JsonRejection;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use serde::{Deserialize, Serialize};
use style::{
    Answers, Collection, Figure, Fit, LabelWords, Leg, NewStyle, OutseamLine, StartError, Tag,
    Taste,
};
use words::Words;

use crate::answer::placed;
use crate::route;
use crate::router::{blocking, understood};
use crate::see::See;
use crate::state::Bench;
use crate::trouble::Trouble;

/// The addresses of beginning.
pub(crate) fn routes() -> Router<Bench> {
    Router::new()
        .route("/new", get(page).post(make))
        .route("/new/picture.svg", get(picture::drawn))
        .route("/copy/{name}", get(copy::page).post(copy::make))
        .route("/demo", post(demo))
        .merge(pattern::routes())
}

/// What a form is answered with: where to go on, or what is in the way.
#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Sent {
    /// It was done; the page to open.
    To(String),
    /// It was not; why.
    Problems(Vec<String>),
}

impl IntoResponse for Sent {
    fn into_response(self) -> Response {
        let status = match &self {
            Self::To(_) => StatusCode::OK,
            Self::Problems(_) => StatusCode::UNPROCESSABLE_ENTITY,
        };
        (status, Json(self)).into_response()
    }
}

impl Sent {
    /// The page of the style that was made, or why none was.
    pub(crate) fn begun(say: &'static Words, made: Result<std::path::PathBuf, StartError>) -> Self {
        match made {
            Ok(file) => {
                let folder = file.parent().and_then(|folder| folder.file_name());
                let name = folder.unwrap_or_default().to_string_lossy();
                Self::To(route::style(&name, &See::default()))
            }
            Err(StartError::Invalid(report)) => Self::Problems(placed(say, &report)),
            Err(other) => Self::Problems(vec![other.to_string()]),
        }
    }
}

/// The questions as a page answers them. Words are those of the style file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Told {
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

impl Told {
    fn read(self, say: &'static Words) -> Result<NewStyle, String> {
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
fn word<T: Copy>(
    say: &'static Words,
    question: &str,
    words: &[(&str, T)],
    text: &str,
) -> Result<T, String> {
    let found = words.iter().find(|(word, _)| *word == text);
    found.map(|(_, value)| *value).ok_or_else(|| {
        let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        say.begin_can_be(question, known.join(", "))
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

/// The collection as it is; `None` where there is none yet and one can begin.
fn collection_of(bench: &Bench) -> Result<Option<Collection>, Trouble> {
    let say = bench.say();
    if style::can_begin_in(bench.folder()) {
        return Ok(None);
    }
    let collection = style::load_collection(bench.folder()).map_err(|report| {
        Trouble::unreadable(Words::collection_not_opened, placed(say, &report))
    })?;
    Ok(Some(collection))
}

/// The names of the styles there are, as their folders say them.
fn taken(bench: &Bench) -> Result<Vec<String>, Trouble> {
    let styles = bench.styles()?;
    Ok(styles.into_iter().map(|(name, _)| name).collect())
}

async fn page(
    State(bench): State<Bench>,
    Query(asked): Query<picture::Asked>,
) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let collection = collection_of(&bench)?;
        let taken = taken(&bench)?;
        let answers = asked.answers();
        let page = questions::render(bench.say(), collection.as_ref(), &taken, &answers);
        Ok(Html(page.into_string()))
    })
    .await
}

async fn make(
    State(bench): State<Bench>,
    told: Result<Json<Told>, JsonRejection>,
) -> Result<Sent, Trouble> {
    let say = bench.say();
    let told = understood(told)?;
    let asked = match told.read(say) {
        Ok(asked) => asked,
        Err(words) => return Ok(Sent::Problems(vec![words])),
    };
    blocking(move || Ok(Sent::begun(say, style::new_style(bench.folder(), &asked)))).await
}

/// Writes the demo into a folder that has nothing in it.
async fn demo(State(bench): State<Bench>) -> Result<Sent, Trouble> {
    blocking(move || Ok(Sent::begun(bench.say(), style::write_demo(bench.folder())))).await
}
