//! The panels beside the drawing, by name.

use maud::{Markup, html};
use sewing::Garment;
use words::Words;

use super::findings;
use crate::addresses;
use crate::viewing::{Panel, Viewing};

pub(crate) fn render(say: &'static Words, name: &str, see: &Viewing, garment: &Garment) -> Markup {
    let found = findings::count(garment);
    let room = see.room();
    let errors = findings::errors(garment);
    html! {
        nav #tabs aria-label=(say.tabs_label()) data-room=(room.word()) {
            @for &panel in room.panels() {
                @let to = Viewing { panel, room, ..see.clone() };
                a href=(addresses::style(name, &to)) data-panel=(panel.word()) aria-current=[(panel == see.panel).then_some("true")] {
                    (panel.title(say))
                    @if panel == Panel::Findings && found > 0 { " " span.count { (found) } }
                    @if panel == Panel::Findings && errors > 0 { " " span.bad { (say.tabs_errors(errors)) } }
                }
            }
        }
    }
}
