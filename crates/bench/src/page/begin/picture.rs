//! What would begin, drawn before it is there: the pair, a panel or the section of a seam.

use axum::extract::{Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use draft::PieceId;
use drawing::View;
use serde::Deserialize;
use sewing::Face;
use style::{Answers, Figure, Fit, Leg, NewStyle, OutseamLine, SeamId, StartError, Taste};
use words::Words;

use crate::answer::placed;
use crate::garment::written;
use crate::page::begin::collection::collection_of;
use crate::request::{Route, blocking};
use crate::state::Bench;
use crate::trouble::Trouble;

/// The address of the picture.
pub(crate) fn routes() -> Vec<Route> {
    vec![Route::get("/new/picture.svg", drawn)]
}

/// The answers as an address says them. What it leaves out, or says in words unknown here, is as usual.
#[derive(Debug, Default, Deserialize)]
pub(super) struct Asked {
    /// What to draw: the front unless it is "back", "panel" or "seam".
    of: Option<String>,
    figure: Option<String>,
    fit: Option<String>,
    leg: Option<String>,
    outseam: Option<String>,
    shell: Option<String>,
    taste: Option<String>,
}

impl Asked {
    pub(super) fn answers(&self) -> Answers {
        fn of<T: Copy>(words: &[(&str, T)], text: Option<&str>) -> Option<T> {
            let found = words.iter().find(|(word, _)| text == Some(*word));
            found.map(|(_, value)| *value)
        }
        let usual = Answers::default();
        Answers {
            figure: of(Figure::WORDS, self.figure.as_deref()).unwrap_or(usual.figure),
            fit: of(Fit::WORDS, self.fit.as_deref()).unwrap_or(usual.fit),
            leg: of(Leg::WORDS, self.leg.as_deref()).unwrap_or(usual.leg),
            outseam: of(OutseamLine::WORDS, self.outseam.as_deref()),
            shell: self.shell.clone().filter(|name| !name.is_empty()),
            taste: of(Taste::WORDS, self.taste.as_deref()).unwrap_or(usual.taste),
            ..usual
        }
    }
}

/// Nothing that begins is called so; a picture has no name on it.
const NAMELESS: &str = "Style";

async fn drawn(
    State(bench): State<Bench>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    blocking(move || {
        let collection = collection_of(&bench)?;
        let new = NewStyle {
            name: NAMELESS.to_owned(),
            code: NAMELESS.to_owned(),
            answers: asked.answers(),
            ..NewStyle::default()
        };
        let (doc, collection) = style::foresee(&new, collection.as_ref()).map_err(|error| {
            let words = match error {
                StartError::Invalid(report) => placed(bench.say(), &report),
                other => vec![other.to_string()],
            };
            Trouble::told(StatusCode::BAD_REQUEST, Words::begin_not_drawn, words)
        })?;
        let garment = sewing::make(&doc, &collection, doc.sizes.base);
        let sheet = match asked.of.as_deref() {
            Some("back") => Some(drawing::garment_picture(
                &garment,
                View::Back,
                Face::Outside,
                bench.say(),
            )),
            Some("panel") => {
                let cut = cutting::cut(&garment, &cutting::Plan::of(&doc));
                let mut pieces = cut.pieces.iter();
                let front = pieces.find(|piece| piece.piece == PieceId::Front);
                front.map(|piece| cut_sheets::piece_thumbnail(piece, bench.say()))
            }
            Some("seam") => doc
                .seam(SeamId::Inseam)
                .and_then(|seam| drawing::seam_section_thumbnail(&garment, &seam, bench.say())),
            _ => Some(drawing::garment_picture(
                &garment,
                View::Front,
                Face::Outside,
                bench.say(),
            )),
        };
        let sheet = sheet.ok_or_else(Trouble::no_such_page)?;
        let kind = [
            (header::CONTENT_TYPE, "image/svg+xml"),
            // Long enough to turn a choice back and forth, short enough to follow a cloth that changes.
            (header::CACHE_CONTROL, "private, max-age=60"),
        ];
        Ok((kind, written(sheet).svg).into_response())
    })
    .await
}
