//! The story sheet on paper.

use jiff::civil::Date;

use super::Story;
use crate::PaperError;
use crate::pdf::{Book, Edition, book};
use crate::typeset::job;

const LAYOUT: &str = "/story.typ";

/// The story sheet as a PDF, of one page as long as the maker's sentences are short.
///
/// # Errors
/// [`PaperError::NoStyleName`] if the style has no name; otherwise as [`crate::pack_pdf`].
pub fn story_book(story: &Story, date: Option<Date>) -> Result<Book, PaperError> {
    if story.name.trim().is_empty() {
        return Err(PaperError::NoStyleName);
    }
    let job = job(LAYOUT, story).map_err(|error| PaperError::Layout(error.to_string()))?;
    let edition = Edition {
        ident: format!("{} {} story", story.maker, story.name),
        date,
    };
    book(job, &edition)
}
