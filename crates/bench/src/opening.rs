//! The address a browser is opened at. Whatever starts a program names what it starts it with, for every user of the
//! machine to read; so the key is not in that address but a word that is good for one visit.

use std::sync::{Arc, Mutex, PoisonError};

use axum::extract::{Request, State};
use axum::http::Uri;
use axum::middleware::Next;
use axum::response::Response;

/// A word that stands for the key, once.
#[derive(Clone)]
pub(crate) struct Opening(Arc<Mutex<Option<String>>>, Arc<str>);

impl Opening {
    pub(crate) fn new(word: String, key: &str) -> Self {
        Self(Arc::new(Mutex::new(Some(word))), key.into())
    }

    /// The key, for the first who says the word.
    fn taken(&self, query: &str) -> Option<&str> {
        let mut said = form_urlencoded::parse(query.as_bytes());
        let (_, said) = said.find(|(name, _)| name == "once")?;
        let mut word = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        word.take_if(|word| *word == said)?;
        Some(&self.1)
    }
}

/// Lets the first who comes with the word in as if it had come with the key.
pub(crate) async fn open(
    State(opening): State<Opening>,
    mut request: Request,
    next: Next,
) -> Response {
    let query = request.uri().query().unwrap_or_default();
    if let Some(key) = opening.taken(query) {
        let path = request.uri().path();
        if let Ok(uri) = format!("{path}?key={key}").parse::<Uri>() {
            *request.uri_mut() = uri;
        }
    }
    next.run(request).await
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_good_once() {
        let opening = Opening::new("aWord".to_owned(), "theKey");
        assert_eq!(opening.taken("once=another"), None);
        assert_eq!(opening.taken("view=back&once=aWord"), Some("theKey"));
        assert_eq!(opening.taken("once=aWord"), None);
    }
}
