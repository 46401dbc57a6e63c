//! What the bench says, and parts of a page within its sentences.
//!
//! The words are an argument of everything that speaks, by the name `say`: a [`crate::Bench`] has them, and hands them on.

use maud::{Markup, PreEscaped, Render, html};
use words::Words;

/// One thing that can be said, where it is named before it is said.
pub(crate) type Saying = fn(&'static Words) -> &'static str;

/// A line of a page: one that is still to be said, or one that is in words already.
#[derive(Clone, Debug)]
pub(crate) enum Line {
    Said(Saying),
    Told(String),
}

impl Line {
    pub(crate) fn in_words(&self, say: &'static Words) -> &str {
        match self {
            Self::Said(saying) => saying(say),
            Self::Told(words) => words,
        }
    }
}

/// Stands in a sentence for a part of the page: given to the sentence as what is put in, and filled by [`filled`].
pub(crate) const SLOTS: [char; 4] = ['\u{E000}', '\u{E001}', '\u{E002}', '\u{E003}'];

/// A sentence with parts of the page where its [`SLOTS`] are, wherever a language has put them.
pub(crate) fn filled(sentence: &str, parts: &[Markup]) -> Markup {
    html! {
        @for piece in sentence.split_inclusive(SLOTS) {
            @let slot = SLOTS.iter().position(|slot| piece.ends_with(*slot));
            (piece.trim_end_matches(SLOTS))
            (slot.and_then(|slot| parts.get(slot)).map_or(PreEscaped(String::new()), Render::render))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_takes_parts_of_the_page_in_its_own_order() {
        let sentence = format!("{} <after> {}", SLOTS[1], SLOTS[0]);
        let parts = [html! { b { "one" } }, html! { "two" }];
        let filled = filled(&sentence, &parts).into_string();
        assert_eq!(filled, "two &lt;after&gt; <b>one</b>");
    }
}
