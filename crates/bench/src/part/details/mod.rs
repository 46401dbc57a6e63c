//! Everything the style says besides chart and seams, grouped by part of the garment.
//!
//! A group is found from the drawing by the parts it names; a detail that has no line in the file shows what then
//! holds, and gets its line when it is changed.

mod art;
mod back;
mod closing;
mod front;
mod hardware;
mod identity;
mod labels;
mod shape;

use maud::{Markup, html};
use sewing::Garment;
use style::MeasureId;
use trade::Length;

use crate::field::{Show, capital, problem_place};
use crate::garment::PLATES;
use crate::route;
use crate::see::{Panel, See};

/// What the groups need to show themselves.
pub(crate) struct Details<'a> {
    pub(crate) show: Show<'a>,
    /// The style's folder, as its address has it.
    pub(crate) name: &'a str,
    pub(crate) garment: &'a Garment,
    pub(crate) see: &'a See,
    /// The drawings in the style's folder that a detail can name.
    pub(crate) art: &'a [String],
}

/// One group of details.
struct Group {
    key: &'static str,
    title: &'static str,
    /// Pieces of the garment it is about.
    pieces: &'static [&'static str],
    /// Seams that make it; each is decided among the seams.
    seams: &'static [&'static str],
    /// Trims it is about, whose places on the drawing lead here.
    trims: Vec<String>,
    /// The plates that show it, where there are any.
    plates: &'static [&'static str],
    body: Markup,
}

pub(crate) fn render(details: &Details<'_>) -> Markup {
    let say = details.show.say;
    let groups = groups(details);
    html! {
        section #details aria-labelledby="details-title" hidden[details.see.panel != Panel::Details] {
            h2 #details-title { (say.details_title()) }
            p.lead { (say.details_lead()) }
            nav.jump aria-label=(say.details_groups()) {
                @for group in &groups {
                    a href={ "#group-" (group.key) } data-panel="details" data-part={ "group:" (group.key) } { (group.title) }
                }
            }
            @for group in &groups { (section(details, group)) }
        }
    }
}

fn groups(details: &Details<'_>) -> Vec<Group> {
    let mut groups = vec![
        identity::style(details),
        shape::group(details),
        closing::fly(details),
        closing::band(details),
        front::coin(details),
        front::bag(details),
        front::extra(details),
        back::group(details),
        closing::loops(details),
        closing::hem(details),
        hardware::rivets(details),
        hardware::bartacks(details),
        hardware::patch(details),
    ];
    groups.push(labels::group(details));
    groups
}

fn section(details: &Details<'_>, group: &Group) -> Markup {
    let say = details.show.say;
    let pieces = group.pieces.iter().map(|piece| format!(" piece:{piece}"));
    let trims = group.trims.iter().map(|trim| format!(" fixing:{trim}"));
    let seams = group.seams.iter().map(|seam| format!(" seam:{seam}"));
    let parts: String = pieces.chain(seams).chain(trims).collect();
    html! {
        section.group id={ "group-" (group.key) } data-for={ "group:" (group.key) (parts) } data-name=(group.title) aria-labelledby={ "title-" (group.key) } {
            h3 id={ "title-" (group.key) } tabindex="-1" {
                (group.title)
                @for (key, title) in PLATES.iter().filter(|(key, _)| group.plates.contains(key)) {
                    @let title = title(say);
                    @let to = See { plate: Some((*key).to_owned()), ..details.see.clone() };
                    " " a.plate href=(route::style(details.name, &to)) data-swap aria-label=(say.details_plate_of(title)) {
                        @if group.plates.len() > 1 { (capital(title)) } @else { (say.details_plate()) }
                    }
                }
            }
            (group.body)
            (problem_place(group.key))
        }
    }
}

/// One detail: what it is called, what it means in a sentence, and its field.
fn cell(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        label.cell data-how=(how) { span { (title) } (field) }
    }
}

/// A detail that is not one field but several; it is no label of its own.
fn wide(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        div.cell.wide data-how=(how) { span { (title) } (field) }
    }
}

/// A detail that is ticked.
fn tick(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        label.cell.tick data-how=(how) { (field) " " (title) }
    }
}

impl Details<'_> {
    /// A length with its usual value in grey; its label is for somebody who cannot see the group.
    fn length(&self, path: &str, title: &str, label: &str, how: &str, usual: Length) -> Markup {
        let usual = usual.show(self.show.system);
        let field = self
            .show
            .optional(path.to_owned(), label.to_owned(), None, &usual);
        cell(title, how, &field.render())
    }

    /// A length the file has to say.
    fn needed_length(
        &self,
        path: &str,
        title: &str,
        label: &str,
        how: &str,
        value: Length,
    ) -> Markup {
        let field = self.show.length(path.to_owned(), label.to_owned(), value);
        cell(title, how, &field.render())
    }

    /// A measure of the chart, shown here for the sake of the whole; it is changed there.
    fn charted(&self, measure: MeasureId) -> Markup {
        let value = self.show.loaded.style.value(measure, self.garment.size);
        let Some(value) = value else {
            return html! {};
        };
        let (code, title) = (measure.code(), self.show.say.named(measure.title()));
        html! {
            div.cell.charted {
                span { (capital(title)) }
                a href={ "#measure-" (code) } data-panel="fit" data-part={ "measure:" (code) } {
                    (value.show(self.show.system))
                }
            }
        }
    }
}
