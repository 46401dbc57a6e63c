//! The head of the style's own page: the size shown, and the way back and forward.

use maud::{Markup, html};
use style::Size;

use super::head::Head;
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
        label.size { span { "Size" }
            select #size data-see="size" {
                @for each in loaded.style.sizes.all() {
                    option value=(each) selected[each == size] { (each.waist) " × " (each.length) }
                }
            }
        }
    };
    let steps = html! {
        (step("undo", "Undo", "Control+Z", session.next(Way::Back)))
        (step("redo", "Redo", "Control+Shift+Z", session.next(Way::Forward)))
    };
    head.render(&choices, &steps)
}

fn step(action: &str, words: &str, key: &str, what: Option<&str>) -> Markup {
    let title = what.map(|what| format!("{words}: {what}"));
    html! {
        button #(action) type="button" data-step=(action) disabled[what.is_none()] title=[title]
            aria-keyshortcuts=(key) { (words) }
    }
}
