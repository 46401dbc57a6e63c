//! The drawing itself, and the ways to look closer.

use draft::PieceId;
use maud::{Markup, PreEscaped, html};
use sewing::Garment;
use style::Collection;

use crate::garment::Picture;

pub(crate) fn render(picture: &Picture, garment: &Garment) -> Markup {
    let collection = &garment.collection;
    html! {
        figure #drawing tabindex="0" data-names=(names(collection)) aria-label={ (picture.title) ". Arrow keys move, plus and minus zoom, 0 shows all." } data-whole {
            // Our own writer made this; it escapes all words it is given.
            (PreEscaped(&picture.svg))
            @if garment.conflict.is_some() {
                figcaption.bad { "This chart cannot be drafted as it stands. The drawing shows how near a pattern comes; the findings say what would be right." }
            }
        }
    }
}

/// What parts of a drawing are called that have no section beside it.
fn names(collection: &Collection) -> serde_json::Value {
    let pieces = PieceId::ALL
        .iter()
        .map(|piece| (format!("piece:{}", piece.code()), piece.name().to_owned()));
    let trims = collection
        .trims
        .iter()
        .map(|(key, trim)| (format!("fixing:{key}"), trim.name.clone()));
    pieces
        .chain(trims)
        .map(|(part, name)| (part, name.into()))
        .collect::<serde_json::Map<_, _>>()
        .into()
}

/// The buttons over the drawing, and the name of what is pointed at.
pub(crate) fn tools() -> Markup {
    html! {
        p #pointed aria-live="polite" {}
        div.zoom role="group" aria-label="Zoom" {
            button type="button" data-zoom="out" aria-label="Zoom out" { "−" }
            button type="button" data-zoom="fit" { "Fit" }
            button type="button" data-zoom="in" aria-label="Zoom in" { "+" }
        }
    }
}
