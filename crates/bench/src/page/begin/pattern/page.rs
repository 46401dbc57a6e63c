//! The page a pattern is brought on.

use maud::{Markup, html};
use style::{Collection, Figure, Fit};

use super::super::questions::free_name;
use crate::field::capital;
use crate::page::layout::{self, Loads};

pub(super) fn render(collection: Option<&Collection>, taken: &[String]) -> Markup {
    let body = html! {
        a.skip href="#bring" { "To the file" }
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title="Key 1" { @match collection { Some(collection) => (collection.name), None => "Collection" } }
                h1 { "A pattern of your own" }
            }
        }
        main.beginning.bringing {
            form #bring {
                p.lead { "Panels you drafted yourself, as DXF or as SVG with its size in millimetres. Front, back and yoke have to be in it; what else it holds is taken too, and the rest is laid out on your panels." }
                section.group aria-labelledby="file-title" {
                    h2 #file-title { "File" }
                    input #pattern type="file" accept=".dxf,.svg" aria-labelledby="file-title" required;
                    div.cells {
                        label.cell { span { "Size, if it says none" } input type="text" name="size" value="" placeholder="32x32" autocomplete="off" spellcheck="false"; }
                        label.cell { span { "Unit" } select name="unit" { option value="" { "as the file says" } @for unit in ["mm", "cm", "in"] { option value=(unit) { (unit) } } } }
                        label.cell { span { "Allowance, of cut lines only" } input type="text" name="allowance" value="" placeholder="12.7 mm" autocomplete="off" spellcheck="false"; }
                    }
                    div.ticks {
                        label.tick { input type="checkbox" name="sewn"; "Outlines are what is sewn along" }
                        label.tick { input type="checkbox" name="grain_up"; "The grain runs up the page" }
                        label.tick { input type="checkbox" name="before_wash"; "Larger by what the first wash takes" }
                    }
                }
                section.group aria-labelledby="who" {
                    h2 #who { "Style" }
                    div.cells {
                        @if collection.is_none() {
                            label.cell { span { "Your label" } input type="text" name="label" value="" placeholder="as the style" maxlength="80" autocomplete="off"; }
                        }
                        label.cell { span { "Style" } input type="text" name="name" value=(free_name("New style", taken)) required maxlength="60" autocomplete="off"; }
                        label.cell { span { "Code" } input type="text" name="code" value="" placeholder="made of the name" maxlength="40" autocomplete="off"; }
                    }
                    div.cells.two {
                        label.cell { span { "Figure" } select name="figure" { @for (word, _) in Figure::WORDS { option value=(word) { (capital(word)) "’s" } } } }
                        label.cell { span { "Fit" } select name="fit" { @for (word, fit) in Fit::WORDS { option value=(word) selected[*fit == Fit::Straight] { (capital(word)) } } } }
                    }
                    p.aside { "The chart begins as is usual for the fit; where your pattern measures otherwise, the findings say by how much." }
                }
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { "Make the style" }
                }
            }
            section.seen aria-label="What is in the file" {
                div #found role="status" {
                    p.lead { "What is found in the file is drawn here: each piece with its corners, what it is taken for and why. Nothing is kept until you make the style." }
                }
            }
        }
    };
    let loads = Loads {
        styles: &["begin.css"],
        scripts: &["bring.js", "keys.js"],
    };
    layout::page("A pattern of your own", loads, &body)
}
