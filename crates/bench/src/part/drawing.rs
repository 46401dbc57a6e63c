//! The drawing itself, and the ways to look closer.

use draft::PieceId;
use drawing::View;
use maud::{Markup, PreEscaped, html};
use sewing::{Face, Garment};
use style::{Collection, Seam};
use words::Words;

use super::fit;
use crate::addresses;
use crate::garment::{Mm, Picture, written};
use crate::typed_fields::Fields;
use crate::viewing::{Layer, OnPaper, Viewing};

pub(crate) fn render(
    picture: &Picture,
    show: &Fields<'_>,
    garment: &Garment,
    see: &Viewing,
) -> Markup {
    let say = show.say;
    let collection = &garment.collection;
    let whole = see.plate.is_none();
    html! {
        figure #drawing .plate[picture.on_paper]
            .no-stitches[whole && !see.shows(Layer::Stitches)] .no-fittings[whole && !see.shows(Layer::Fittings)]
            tabindex="0" aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown + - 0" data-does=(say.drawing_does())
            data-names=(names(say, collection))
            aria-label=(say.drawing_label(&picture.title)) data-whole {
            @if picture.on_paper {
                figcaption { strong { (picture.title) } @if !picture.caption.is_empty() { " " (picture.caption) } }
            }
            // Our own writer made this; it escapes all words it is given.
            (PreEscaped(&picture.svg))
            @if !picture.below.is_empty() { (below(picture)) }
            @if !picture.grips.is_empty() { (grips(say, picture)) }
            @if !picture.tapes.is_empty() { (tapes(picture, show, garment)) }
            @if !picture.marks.is_empty() { (marks(say, picture)) }
            @if !picture.on_paper && !picture.caption.is_empty() { figcaption.bad { (picture.caption) } }
            @else if garment.conflict.is_some() {
                figcaption.bad { (say.drawing_conflict()) }
            }
        }
    }
}

/// What lies below, dashed.
fn below(picture: &Picture) -> Markup {
    html! {
        svg.over.below viewBox=(picture.frame) aria-hidden="true" {
            @for line in &picture.below { path d={ (path(line)) "Z" } {} }
        }
    }
}

/// What can be taken hold of; the page's script shows each grip when its part is pointed at or has the focus.
fn grips(say: &'static Words, picture: &Picture) -> Markup {
    html! {
        svg.over.grips viewBox=(picture.frame) {
            path.ghost {}
            @for shown in &picture.grips {
                g.grip data-grip=(shown.grip.key) data-of=(shown.grip.part) data-body=[shown.body()]
                    data-x=(mm(shown.at.0)) data-y=(mm(shown.at.1)) tabindex="0" role="button"
                    aria-label=(say.grip_label((shown.grip.words)(say)))
                    transform={ "translate(" (mm(shown.at.0)) " " (mm(shown.at.1)) ") scale(1.6)" } {
                    @if shown.body().is_some() { circle.disc r="8" {} path d="M-5 0H5M0-5V5" {} circle.room r="12" {} }
                    @else { rect x="-4" y="-4" width="8" height="8" {} circle.room r="12" {} }
                }
            }
        }
    }
}

/// The measures as the tape finds them, and a field for each beside the drawing.
fn tapes(picture: &Picture, show: &Fields<'_>, garment: &Garment) -> Markup {
    let say = show.say;
    html! {
        svg.over.tapes viewBox=(picture.frame) aria-hidden="true" {
            @for tape in &picture.tapes {
                g data-tape=(tape.measure.code()) {
                    @for line in &tape.lines {
                        path d=(path(line)) {}
                        @for at in [line.first(), line.last()].into_iter().flatten() {
                            circle data-x=(mm(at.0)) data-y=(mm(at.1)) r="2.5" {}
                        }
                    }
                }
            }
        }
        svg.leaders aria-hidden="true" {}
        div #dims .dims role="group" aria-label=(say.drawing_measures()) {
            @for tape in &picture.tapes {
                @if let Some(at) = tape.middle() {
                    @let code = tape.measure.code();
                    @let how = say.named(tape.measure.known().how);
                    @let charted = garment.doc.value(tape.measure, garment.size);
                    div.dim id={ "dim-" (code) } data-dim=(code) data-at-x=(mm(at.0)) data-at-y=(mm(at.1)) data-how=(how) {
                        label { span { (tape.measure.words(say)) } (fit::value(show, tape.measure).on_drawing()) }
                        @if let (Some(charted), true) = (charted, garment.size != show.loaded.style.sizes.base) {
                            span.here { (say.say(words::say::DrawingInSize { size: garment.size, value: charted.show(show.system) })) }
                        }
                        p.problem id={ "problem-on-drawing-" (code) } data-keep hidden {}
                    }
                }
            }
        }
    }
}

/// A line as SVG's path data.
fn path(line: &[Mm]) -> String {
    let mut data = String::new();
    for (index, p) in line.iter().enumerate() {
        data.push(if index == 0 { 'M' } else { 'L' });
        data.push_str(&format!("{:.1} {:.1}", p.0, p.1));
    }
    data
}

/// The numbers of findings, over the drawing and in its millimetres; the page's script keeps them at one size.
fn marks(say: &'static Words, picture: &Picture) -> Markup {
    html! {
        svg.over.marks viewBox=(picture.frame) {
            @for mark in &picture.marks {
                @let (to, from) = (mark.number_at, mark.at);
                @if to != from {
                    line x1=(mm(from.0)) y1=(mm(from.1)) x2=(mm(to.0)) y2=(mm(to.1)) {}
                }
                g.mark.(mark.severity.word()) data-mark=(mark.number) data-x=(mm(to.0)) data-y=(mm(to.1)) tabindex="0" role="button"
                    aria-label=(say.drawing_finding(mark.number)) transform={ "translate(" (mm(to.0)) " " (mm(to.1)) ") scale(1.6)" } {
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

/// The section of a seam as it is sewn, before the wash, if there is cloth to show.
pub(crate) fn section(say: &Words, garment: &Garment, seam: &Seam) -> Option<Markup> {
    let sewn = garment.as_sewn();
    let seam = sewn.seams.iter().find(|other| other.id == seam.id)?;
    let picture = written(drawing::seam_section(&sewn, seam, say)?);
    Some(html! {
        // Our own writer made this; it escapes all words it is given.
        figure.section aria-label=(picture.title) data-whole { (PreEscaped(&picture.svg)) }
    })
}

/// What parts of a drawing are called that have no section beside it.
fn names(say: &Words, collection: &Collection) -> serde_json::Value {
    let pieces = PieceId::ALL.iter().map(|piece| {
        (
            format!("piece:{}", piece.code()),
            piece.words(say).to_owned(),
        )
    });
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

/// The ways to turn the pair, and its layers.
pub(crate) fn turn(say: &'static Words, name: &str, see: &Viewing) -> Markup {
    // A side or a face that is chosen takes the place of a plate.
    let pair = Viewing {
        plate: None,
        ..see.clone()
    };
    let whole = see.plate.is_none();
    let side = |view: View, key: &'static str, words: &'static str| {
        let to = Viewing {
            view,
            ..pair.clone()
        };
        (key, words, whole && see.view == view, to)
    };
    let face = |face: Face, key: &'static str, words: &'static str| {
        let to = Viewing {
            face,
            ..pair.clone()
        };
        (key, words, whole && see.face == face, to)
    };
    html! {
        div #turn {
            nav aria-label=(say.drawing_sides()) {
                (ways(say, name, &[side(View::Front, "f", say.drawing_front()), side(View::Back, "b", say.drawing_back())]))
            }
            nav aria-label=(say.drawing_faces()) {
                (ways(say, name, &[face(Face::Outside, "o", say.drawing_outside()), face(Face::Inside, "i", say.drawing_inside())]))
            }
            label.plates { span.unseen { (say.drawing_plate()) }
                select #plate data-see="plate" {
                    option value="" selected[whole] { (say.drawing_no_plate()) }
                    @for plate in OnPaper::all() {
                        option value=(plate.code()) selected[see.plate == Some(plate)] { (plate.words(say)) }
                    }
                }
            }
            details.layers {
                summary { (say.drawing_layers()) }
                div role="group" aria-label=(say.drawing_layers()) {
                    @for layer in Layer::ALL {
                        @let (key, words) = layer.said(say);
                        a href=(addresses::style(name, &see.turning(layer))) data-swap role="switch" aria-checked=(if see.shows(layer) { "true" } else { "false" })
                            aria-keyshortcuts=(key) { (words) " " kbd { (key) } }
                    }
                }
            }
        }
    }
}

fn ways(say: &'static Words, name: &str, ways: &[(&str, &str, bool, Viewing)]) -> Markup {
    html! {
        @for (key, words, now, to) in ways {
            a href=(addresses::style(name, to)) data-swap aria-current=[now.then_some("true")] aria-keyshortcuts=(key)
                title=(say.keys_key(key)) { (words) }
        }
    }
}

/// The buttons over the drawing, the name of what is pointed at, and what is held.
pub(crate) fn tools(say: &'static Words) -> Markup {
    html! {
        p #pointed aria-hidden="true" {}
        p #holding role="status" {}
        div.zoom role="group" aria-label=(say.drawing_zoom()) {
            button type="button" data-zoom="out" aria-label=(say.drawing_zoom_out()) { "−" }
            button type="button" data-zoom="fit" { (say.drawing_zoom_all()) }
            button type="button" data-zoom="in" aria-label=(say.drawing_zoom_in()) { "+" }
        }
    }
}
