//! The page a pattern is brought on.

use maud::{Markup, html};
use style::{Collection, Figure, Fit};
use words::Words;

use super::super::questions::free_name;
use crate::page::layout::{self, PageAssets};
use crate::typed_fields::capital;

pub(super) fn render(
    say: &'static Words,
    collection: Option<&Collection>,
    taken: &[String],
) -> Markup {
    let body = html! {
        a.skip href="#bring" { (say.bring_skip()) }
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title=(say.begin_home_key()) { @match collection { Some(collection) => (collection.name), None => (say.begin_collection()) } }
                h1 { (say.bring_title()) }
            }
        }
        main.beginning.bringing {
            form #bring {
                p.lead { (say.bring_lead()) }
                section.group aria-labelledby="file-title" {
                    h2 #file-title { (say.bring_file()) }
                    input #pattern type="file" accept=".dxf,.svg" aria-labelledby="file-title" required;
                    div.cells {
                        label.cell { span { (say.bring_size()) } input type="text" name="size" value="" placeholder="32x32" autocomplete="off" spellcheck="false"; }
                        label.cell { span { (say.bring_unit()) } select name="unit" { option value="" { (say.bring_unit_usual()) } @for unit in ["mm", "cm", "in"] { option value=(unit) { (unit) } } } }
                        label.cell { span { (say.bring_allowance()) } input type="text" name="allowance" value="" placeholder="12.7 mm" autocomplete="off" spellcheck="false"; }
                    }
                    div.ticks {
                        label.tick { input type="checkbox" name="sewn"; (say.bring_sewn()) }
                        label.tick { input type="checkbox" name="grain_up"; (say.bring_grain_up()) }
                        label.tick { input type="checkbox" name="before_wash"; (say.bring_before_wash()) }
                    }
                }
                section.group aria-labelledby="who" {
                    h2 #who { (say.bring_style()) }
                    div.cells {
                        @if collection.is_none() {
                            label.cell { span { (say.begin_label()) } input type="text" name="label" value="" placeholder=(say.begin_label_usual()) maxlength="80" autocomplete="off"; }
                        }
                        label.cell { span { (say.begin_style()) } input type="text" name="name" value=(free_name(say.begin_new_style_name(), taken)) required maxlength="60" autocomplete="off"; }
                        label.cell { span { (say.begin_code()) } input type="text" name="code" value="" placeholder=(say.begin_code_usual()) maxlength="40" autocomplete="off"; }
                    }
                    div.cells.two {
                        label.cell { span { (say.bring_figure()) } select name="figure" { @for (word, _) in Figure::WORDS { option value=(word) { (say.begin_figure_of(word)) } } } }
                        label.cell { span { (say.bring_fit()) } select name="fit" { @for (word, fit) in Fit::WORDS { option value=(word) selected[*fit == Fit::Straight] { (capital(word)) } } } }
                    }
                    p.aside { (say.bring_chart()) }
                }
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { (say.bring_make()) }
                }
            }
            section.seen aria-label=(say.bring_found()) {
                div #found role="status" {
                    p.lead { (say.bring_nothing_yet()) }
                }
            }
        }
    };
    let loads = PageAssets {
        styles: &["begin.css"],
        scripts: &["bring.js", "keys.js"],
    };
    layout::page(say, say.bring_title(), loads, &body)
}
