//! The head of every page of a style: the label, the style, and the row of rooms.

use maud::{Markup, html};
use style::{Loaded, Units};
use words::Words;

use crate::addresses;
use crate::room::Room;
use crate::viewing::Viewing;

/// What stands at the head of a page.
pub(crate) struct Head<'a> {
    pub(crate) say: &'static Words,
    /// The style's folder.
    pub(crate) name: &'a str,
    pub(crate) loaded: &'a Loaded,
    pub(crate) room: Room,
    /// Which page of the room, as its address goes on, such as "/pieces" or "?page=2"; empty for its first.
    pub(crate) leaf: &'a str,
    pub(crate) see: &'a Viewing,
}

impl Head<'_> {
    /// The head with what a page adds: further choices of what is shown, and steps.
    pub(crate) fn render(&self, choices: &Markup, steps: &Markup) -> Markup {
        let say = self.say;
        let identity = &self.loaded.style.style;
        html! {
            header #bar .masthead {
                div.title {
                    a href=(addresses::collection(self.see)) aria-keyshortcuts="1" title=(say.keys_key("1")) { (self.loaded.collection.name) }
                    h1 { (identity.name) " " small { (identity.code) } }
                }
                nav.rooms aria-label=(say.head_rooms()) {
                    @for room in Room::ROW { (self.link(room)) }
                }
                div.choices role="group" aria-label=(say.head_shown()) {
                    (choices)
                    (self.units())
                }
                div.steps role="group" aria-label=(say.head_history()) {
                    (steps)
                    (self.link(Room::History))
                    button.plain type="button" data-keys aria-haspopup="dialog" title=(say.keys_key("?")) { (say.keys_title()) }
                }
            }
        }
    }

    fn link(&self, room: Room) -> Markup {
        let say = self.say;
        html! {
            a href=(room.url(self.name, self.see)) aria-current=[(room == self.room).then_some("page")]
                aria-keyshortcuts=(room.key()) title=(say.keys_key(room.key())) { (room.title(say)) }
        }
    }

    /// Centimetres or inches, each a link to the same room.
    fn units(&self) -> Markup {
        let now = self.see.units_of(&self.loaded.collection);
        let on_drawing = !self.room.panels().is_empty();
        html! {
            div.choice role="group" aria-label=(self.say.head_units()) {
                @for (words, units) in [("cm", Units::Centimetres), ("in", Units::Inches)] {
                    @let to = Viewing { units: Some(units), ..self.see.clone() };
                    @let url = if on_drawing { addresses::style(self.name, &to) } else { addresses::room(self.name, &format!("{}{}", self.room.word(), self.leaf), &to) };
                    a href=(url) data-swap[on_drawing] aria-current=[(units == now).then_some("true")] { (words) }
                }
            }
        }
    }
}
