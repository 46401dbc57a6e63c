//! The drawing itself, and the ways to look closer.

use maud::{Markup, PreEscaped, html};

use crate::garment::Picture;

pub(crate) fn render(picture: &Picture) -> Markup {
    html! {
        figure #drawing tabindex="0" aria-label={ (picture.title) ". Arrow keys move, plus and minus zoom, 0 shows all." } data-whole {
            // Our own writer made this; it escapes all words it is given.
            (PreEscaped(&picture.svg))
        }
    }
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
