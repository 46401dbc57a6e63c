//! The way back, beside what is wrong with a file.

use maud::{Markup, html};
use words::Words;

use crate::addresses;
use crate::page::layout::PageAssets;

/// What a page with the form loads.
pub(crate) const LOADS: PageAssets = PageAssets {
    styles: &["begin.css"],
    scripts: &["forms.js"],
};

/// The form that goes back, beside what is wrong with the file.
pub(crate) fn offer(say: &'static Words, name: &str) -> Markup {
    html! {
        form data-send={ (addresses::style_path(name)) "/mend" } {
            p { (say.mend_offer()) }
            div.sending {
                button type="submit" { (say.mend_put_in()) }
                p.problem role="alert" hidden {}
            }
        }
    }
}
