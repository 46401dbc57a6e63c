//! The story sheet as a page of the web that needs nothing beside itself.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::pdf::CREATOR;

use super::{Story, StoryDetail, StoryPicture};

const LOOKS: &str = include_str!("story.css");

/// The whole page, pictures and looks inside it: it opens without a network, by day and by night, on a telephone and on paper.
#[must_use]
pub fn story_page(story: &Story) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(story.words.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="generator" content=(CREATOR);
                meta name="color-scheme" content="light dark";
                title { (story.words.title) }
                style { (PreEscaped(LOOKS)) }
            }
            body {
                header {
                    p.maker { (story.maker) }
                    h1 { (story.name) }
                    @if !story.summary.is_empty() { p.summary { (story.summary) } }
                }
                main {
                    div.pair { @for picture in &story.pair { (shown(picture)) } }
                    @if !story.details.is_empty() {
                        section aria-labelledby="details" {
                            h2 #details { (story.words.details) }
                            div.details { @for detail in &story.details { (told(detail)) } }
                        }
                    }
                    section.facts aria-labelledby="facts" {
                        h2 #facts { (story.words.facts) }
                        dl { @for fact in &story.facts { div { dt { (fact.label) } dd { (fact.value) } } } }
                    }
                }
                footer { p { (story.note) } }
            }
        }
    };
    page.into_string()
}

/// Whether these are the bytes of a page that was written here.
#[must_use]
pub fn is_our_story(bytes: &[u8]) -> bool {
    let named = format!("<meta name=\"generator\" content=\"{CREATOR}\">");
    bytes.starts_with(b"<!DOCTYPE html>")
        && bytes
            .windows(named.len())
            .any(|part| part == named.as_bytes())
}

fn told(detail: &StoryDetail) -> Markup {
    html! {
        article {
            @if let Some(picture) = &detail.picture { (shown(picture)) }
            h3 { (detail.about) }
            p { (detail.says) }
        }
    }
}

fn shown(picture: &StoryPicture) -> Markup {
    let (wide, high) = picture.size();
    html! { img src=(picture.data()) alt=(picture.words()) width=(wide) height=(high); }
}
