//! The head of the style's own page: the size shown, and the way back and forward.

use maud::{Markup, html};
use style::Size;

use super::head::Head;
use crate::said::say;
use crate::see::See;
use crate::session::{Session, Way};

pub(crate) fn render(name: &str, session: &Session, see: &See, size: Size) -> Markup {
    let loaded = session.loaded();
    let head = Head {
        name,
        loaded,
        room: see.room(),
        leaf: "",
        see,
    };
    let choices = html! {
        label.size { span { (say().bar_size()) }
            select #size data-see="size" {
                @for each in loaded.style.sizes.all() {
                    option value=(each) selected[each == size] { (each.waist) " × " (each.length) }
                }
            }
        }
    };
    let back = session.next(Way::Back);
    let back = back.map(|what| say().step_undo_what(what));
    let forward = session.next(Way::Forward);
    let forward = forward.map(|what| say().step_redo_what(what));
    let steps = html! {
        (step("undo", say().step_undo(), "Control+Z", back))
        (step("redo", say().step_redo(), "Control+Shift+Z", forward))
    };
    head.render(&choices, &steps)
}

/// `title` says what would be taken back or done again, where there is something.
fn step(action: &str, words: &str, key: &str, title: Option<String>) -> Markup {
    html! {
        button #(action) type="button" data-step=(action) disabled[title.is_none()] title=[title]
            aria-keyshortcuts=(key) { (words) }
    }
}
