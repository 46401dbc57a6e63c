//! What went wrong, as a page with a way back.

use axum::http::StatusCode;
use maud::{Markup, html};
use words::Words;

use crate::page::layout;
use crate::page::repair::render;
use crate::trouble::Trouble;

/// The page that says it.
pub(crate) fn page(trouble: &Trouble, say: &'static Words) -> Markup {
    let title = (trouble.title)(say);
    let main = html! {
        main.plain {
            h1 { (title) }
            @for line in &trouble.why { p.words { (line.in_words(say)) } }
            @if let Some(name) = &trouble.mends { (render::offer(say, name)) }
            @if trouble.status != StatusCode::FORBIDDEN {
                p { a href="/" { (say.trouble_back()) } }
            }
        }
    };
    match &trouble.mends {
        Some(_) => layout::page(say, title, render::LOADS, &main),
        None => layout::bare(say, title, &main),
    }
}
