//! The story sheet: what a customer may be told of a style, on one page of paper and on one page of the web.
//!
//! The maker's own sentences stand as they wrote them; everything else follows from the files. Who sells a cloth, what is open
//! and what the checks found is nobody's business here.

mod facts;
mod page;
mod picture;
mod sheet;

use serde::Serialize;
use sewing::Garment;
use style::{Loaded, Subject};
use words::{Words, key, say};

pub use page::{is_our_story, story_page};
pub use picture::StoryPicture;
pub use sheet::story_book;

use crate::Fact;
use crate::assemble::{by_name, capital};

/// At most so many details are told; a sheet is one page.
pub const MOST_DETAILS: usize = 10;

/// What stands on a story sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Story {
    /// The label or collection.
    pub maker: String,
    /// The style's name.
    pub name: String,
    /// The style in one sentence; may be empty.
    pub summary: String,
    /// The pair, from in front and behind.
    pub pair: Vec<StoryPicture>,
    /// What the maker says of it, in their order.
    pub details: Vec<StoryDetail>,
    /// Cloth, yarn, metal and where it is sewn, as far as stated.
    pub facts: Vec<Fact>,
    /// What the pictures are.
    pub note: String,
    /// Titles of the page.
    pub words: StoryWords,
}

/// One detail: the maker's words, and how it looks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoryDetail {
    /// What it is about.
    pub about: String,
    /// Why it is so.
    pub says: String,
    /// How it looks from near; none where there is nothing to be seen.
    pub picture: Option<StoryPicture>,
}

/// Titles of the parts of a story sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StoryWords {
    /// Of the page.
    pub title: String,
    /// Above the details.
    pub details: String,
    /// Above the facts.
    pub facts: String,
    /// The language it is written in, as BCP 47 has it.
    pub language: String,
}

/// Fills a story sheet. `close_up` is asked for the picture of what a detail is about.
///
/// What is told of a cloth or label that the style no longer takes is left out: it would be no longer true.
#[must_use]
pub fn story(
    loaded: &Loaded,
    garment: &Garment,
    pair: Vec<StoryPicture>,
    close_up: &mut dyn FnMut(&Subject, &str) -> Option<StoryPicture>,
    words: &Words,
) -> Story {
    let style = &loaded.style;
    let identity = &style.style;
    let told = style.why.iter().filter(|why| style.has(&why.subject));
    let details = told.take(MOST_DETAILS).map(|why| {
        let about = capital(&words.say(&by_name(&why.subject, &loaded.collection)));
        StoryDetail {
            picture: close_up(
                &why.subject,
                &words.say(say::StoryCloseUp { about: &about }),
            ),
            about,
            says: why.says.clone(),
        }
    });
    Story {
        details: details.collect(),
        maker: loaded.collection.name.clone(),
        name: identity.name.clone(),
        summary: identity.summary.clone(),
        pair,
        facts: facts::facts(loaded, garment, words),
        note: words.say(say::StoryDrawn {
            size: garment.size.to_string(),
        }),
        words: StoryWords {
            title: words.say(say::StoryTitle {
                collection: &loaded.collection.name,
                name: &identity.name,
            }),
            details: words.named(key::STORY_DETAILS).to_owned(),
            facts: words.named(key::STORY_FACTS).to_owned(),
            language: words.language(),
        },
    }
}
