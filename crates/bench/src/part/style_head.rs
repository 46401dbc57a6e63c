//! The head of the style's own page: the size shown, and the way back and forward.

use maud::{Markup, html};
use style::{Loaded, Size};
use words::Words;

use crate::change_log::{Steps, ToldChange};
use crate::part::page_head::Head;
use crate::viewing::Viewing;

pub(crate) fn render(
    say: &'static Words,
    name: &str,
    loaded: &Loaded,
    steps: &Steps,
    see: &Viewing,
    size: Size,
) -> Markup {
    let head = Head {
        say,
        name,
        loaded,
        room: see.room(),
        leaf: "",
        see,
    };
    let choices = html! {
        label.size { span { (say.bar_size()) }
            select #size data-see="size" {
                @for each in loaded.style.sizes.all() {
                    option value=(each) selected[each == size] { (each.waist) " × " (each.length) }
                }
            }
        }
    };
    let undo = |told: &ToldChange| say.step_undo_what(&*told.words);
    let redo = |told: &ToldChange| say.step_redo_what(&*told.words);
    let steps = html! {
        (step("undo", say.step_undo(), "Control+Z", steps.back.as_ref().map(|told| (told, undo(told)))))
        (step("redo", say.step_redo(), "Control+Shift+Z", steps.forward.as_ref().map(|told| (told, redo(told)))))
    };
    head.render(&choices, &steps)
}

/// `next` says what would be taken back or done again, where there is something.
fn step(action: &str, words: &str, key: &str, next: Option<(&ToldChange, String)>) -> Markup {
    let (token, title) = next.map(|(told, title)| (&told.token, title)).unzip();
    html! {
        button #(action) type="button" data-step=(action) data-next=[token] disabled[title.is_none()] title=[title]
            aria-keyshortcuts=(key) { (words) }
    }
}
