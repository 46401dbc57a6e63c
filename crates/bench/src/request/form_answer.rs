//! What a form is answered with.

use axum::Json;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use style::StartError;
use words::Words;

use crate::addresses;
use crate::answer::placed;
use crate::viewing::Viewing;

/// What a form is answered with: where to go on, or what is in the way.
#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum FormAnswer {
    /// It was done; the page to open.
    To(String),
    /// It was not; why.
    Problems(Vec<String>),
}

impl IntoResponse for FormAnswer {
    fn into_response(self) -> Response {
        let status = match &self {
            Self::To(_) => StatusCode::OK,
            Self::Problems(_) => StatusCode::UNPROCESSABLE_ENTITY,
        };
        (status, Json(self)).into_response()
    }
}

impl FormAnswer {
    /// The page of the style that was made, or why none was.
    pub(crate) fn begun(say: &'static Words, made: Result<std::path::PathBuf, StartError>) -> Self {
        match made {
            Ok(file) => {
                let folder = file.parent().and_then(|folder| folder.file_name());
                let name = folder.unwrap_or_default().to_string_lossy();
                Self::To(addresses::style(&name, &Viewing::default()))
            }
            Err(StartError::Invalid(report)) => Self::Problems(placed(say, &report)),
            Err(other) => Self::Problems(vec![other.to_string()]),
        }
    }
}
