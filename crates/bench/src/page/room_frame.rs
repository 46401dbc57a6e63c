//! The frame of a room that is a page of its own: the head, and the room below it.

use maud::{Markup, html};

use super::layout::{self, PageAssets};
use crate::part::page_head::Head;

pub(crate) fn render(head: &Head<'_>, loads: PageAssets, main: &Markup) -> Markup {
    let say = head.say;
    let identity = &head.loaded.style.style;
    let title = say.say(words::say::StylePageRoomTitle {
        code: &identity.code,
        name: &identity.name,
        room: head.room.title(say),
    });
    let body = html! {
        a.skip href="#room" { (say.style_page_room_skip()) }
        div.page {
            (head.render(&html! {}, &html! {}))
            main #room.(head.room.word()) tabindex="-1" { (main) }
        }
    };
    layout::page(say, &title, loads, &body)
}
