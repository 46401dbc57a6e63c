//! The drawing itself, and the ways to look closer.

use draft::PieceId;
use maud::{Markup, PreEscaped, html};
use sewing::Garment;
use style::{Collection, Seam};

use crate::garment::{Picture, written};

pub(crate) fn render(picture: &Picture, garment: &Garment) -> Markup {
    let collection = &garment.collection;
    html! {
        figure #drawing .plate[picture.on_paper] tabindex="0" data-names=(names(collection)) aria-label={ (picture.title) ". Arrow keys move, plus and minus zoom, 0 shows all." } data-whole {
            @if picture.on_paper {
                figcaption { strong { (picture.title) } @if !picture.caption.is_empty() { " " (picture.caption) } }
            }
            // Our own writer made this; it escapes all words it is given.
            (PreEscaped(&picture.svg))
            @if !picture.marks.is_empty() { (marks(picture)) }
            @if !picture.on_paper && !picture.caption.is_empty() { figcaption.bad { (picture.caption) } }
            @else if garment.conflict.is_some() {
                figcaption.bad { "This chart cannot be drafted as it stands. The drawing shows how near a pattern comes; the findings say what would be right." }
            }
        }
    }
}

/// The numbers of findings, over the drawing and in its millimetres; the page's script keeps them at one size.
fn marks(picture: &Picture) -> Markup {
    html! {
        svg.marks viewBox=(picture.frame) {
            @for mark in &picture.marks {
                @let (to, from) = (mark.number_at, mark.at);
                @if to != from {
                    line x1=(mm(from.0)) y1=(mm(from.1)) x2=(mm(to.0)) y2=(mm(to.1)) {}
                }
                g.mark.(mark.severity.word()) data-mark=(mark.number) data-x=(mm(to.0)) data-y=(mm(to.1)) tabindex="0" role="button"
                    aria-label={ "Finding " (mark.number) } transform={ "translate(" (mm(to.0)) " " (mm(to.1)) ") scale(1.6)" } {
                    circle r="9" {}
                    text y="3.75" text-anchor="middle" { (mark.number) }
                }
            }
        }
    }
}

fn mm(value: f64) -> String {
    format!("{value:.2}")
}

/// The section of a seam, if there is cloth to show.
pub(crate) fn section(garment: &Garment, seam: &Seam) -> Option<Markup> {
    let picture = written(drawing::seam_section(garment, seam)?);
    Some(html! {
        // Our own writer made this; it escapes all words it is given.
        figure.section aria-label=(picture.title) data-whole { (PreEscaped(&picture.svg)) }
    })
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
