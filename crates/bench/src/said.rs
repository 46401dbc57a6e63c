//! What the bench says: the words of the catalogue, and parts of a page within its sentences.

use maud::{Markup, PreEscaped, Render, html};
use words::Words;

/// The catalogue.
pub(crate) fn say() -> &'static Words {
    Words::shown()
}

/// One thing that can be said, where it is named before it is said.
pub(crate) type Saying = fn(&'static Words) -> &'static str;

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
