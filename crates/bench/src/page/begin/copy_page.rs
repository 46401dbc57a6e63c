//! The page of a style that begins as another one is.

use maud::{Markup, html};
use style::Loaded;
use words::Words;

use crate::addresses;
use crate::page::begin::questions::free_name;
use crate::page::layout::{self, PageAssets};
use crate::sentences::{SLOTS, filled};
use crate::viewing::Viewing;

pub(super) fn render(
    say: &'static Words,
    folder: &str,
    loaded: &Loaded,
    taken: &[String],
) -> Markup {
    let identity = &loaded.style.style;
    let body = html! {
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title=(say.begin_home_key()) { (loaded.collection.name) }
                h1 { (filled(&say.say(words::say::CopyTitle { code: SLOTS[0], name: &identity.name }), &[html! { small { (identity.code) } }])) }
            }
        }
        main.beginning {
            form data-send={ "/copy/" (addresses::encoded(folder)) } {
                p.lead { (say.copy_lead()) }
                section.group aria-labelledby="called" {
                    h2 #called { (say.begin_name_title()) }
                    div.cells {
                        label.cell { span { (say.begin_style()) } input type="text" name="name" value=(free_name(&identity.name, taken)) required maxlength="60" autocomplete="off"; }
                        label.cell { span { (say.begin_code()) } input type="text" name="code" value="" placeholder=(say.begin_code_usual()) maxlength="40" autocomplete="off"; }
                    }
                }
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { (say.copy_copy()) }
                }
            }
            aside.foreseen {
                figure {
                    img.drawn src=(addresses::picture(folder, &Viewing::default(), loaded.revision.as_str())) alt=(say.copy_front(&identity.name));
                }
            }
        }
    };
    let loads = PageAssets {
        styles: &["begin.css"],
        scripts: &["forms.js", "keys.js"],
    };
    layout::page(say, say.copy_page_title(), loads, &body)
}
