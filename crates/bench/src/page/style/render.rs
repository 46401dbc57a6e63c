//! The page of one style: the drawing in the middle, and beside it what is charted, how it is sewn, what was found.

use maud::{Markup, html};
use words::Words;

use crate::addresses;
use crate::answer::Fragment;
use crate::page::layout::{self, PageAssets};
use crate::page::style::gather::Page;
use crate::part::details::Details;
use crate::part::{
    cloth, construction, details, drawing, findings, fit, notice, order, strip, style_foot,
    style_head, tabs, yarn,
};

/// Keys of things that are many on the page.
fn keys(say: &'static Words) -> [(&'static str, &'static str); 4] {
    [
        ("↑ ↓", say.style_page_key_step()),
        ("Esc", say.style_page_key_leave()),
        ("Enter", say.style_page_key_hold()),
        ("← → ↑ ↓", say.style_page_key_move()),
    ]
}

impl Page<'_> {
    fn bar(&self) -> Markup {
        style_head::render(
            self.say,
            self.name,
            self.loaded,
            &self.steps,
            &self.see,
            self.worked.garment.size,
        )
    }

    fn tabs(&self) -> Markup {
        tabs::render(self.say, self.name, &self.see, &self.worked.garment)
    }

    fn strip(&self) -> Markup {
        let system = self.see.system(&self.loaded.collection);
        strip::render(self.say, &self.worked, &self.since, self.marked, system)
    }

    fn history(&self) -> Markup {
        style_foot::render(self.say, &self.steps, self.said)
    }

    fn drawing(&self) -> Markup {
        drawing::render(&self.picture, &self.show(), &self.worked.garment, &self.see)
    }

    fn turn(&self) -> Markup {
        drawing::turn(self.say, self.name, &self.see)
    }

    /// The panels beside the drawing, each with its id.
    fn panels(&self) -> [(&'static str, Markup); 7] {
        let show = self.show();
        let garment = &self.worked.garment;
        let details = Details {
            show,
            name: self.name,
            garment,
            see: &self.see,
            art: &self.art,
        };
        [
            ("fit", fit::render(&show, garment, &self.see)),
            (
                "cloth",
                cloth::render(&show, &self.cloths, &self.shells, &self.worked, &self.see),
            ),
            ("details", details::render(&details)),
            (
                "construction",
                construction::render(&show, garment, &self.see),
            ),
            (
                "yarn",
                yarn::render(&show, self.name, &self.worked, &self.see),
            ),
            ("order", order::render(&show, garment, &self.see)),
            (
                "findings",
                findings::render(&show, garment, self.name, &self.see, &self.picture),
            ),
        ]
    }

    /// Every part of the page that can change, each with its id.
    pub(crate) fn fragments(&self) -> Vec<Fragment> {
        let frame = [
            ("bar", self.bar()),
            ("notice", notice::render(self.say, &self.notice)),
            ("drawing", self.drawing()),
            ("turn", self.turn()),
            ("tabs", self.tabs()),
            ("strip", self.strip()),
            ("history", self.history()),
        ];
        frame
            .into_iter()
            .chain(self.panels())
            .map(|(id, markup)| Fragment::new(id, markup))
            .collect()
    }

    /// The whole page.
    pub(crate) fn render(&self) -> Markup {
        let say = self.say;
        let doc = &self.loaded.style;
        let body = html! {
            a.skip href="#panel" { (say.style_page_skip()) }
            div #bench data-path=(addresses::style_path(self.name)) data-revision=(self.loaded.revision) data-stand=(self.stand()) {
                (self.bar())
                (notice::render(say, &self.notice))
                noscript { p.notice { (say.style_page_no_scripts()) } }
                main {
                    section.board aria-label=(say.style_page_board()) {
                        (self.drawing())
                        (self.turn())
                        (drawing::tools(say))
                    }
                    section #panel aria-label=(say.style_page_panel()) tabindex="-1" {
                        (self.tabs())
                        div.scroll {
                            @for (_, panel) in self.panels() { (panel) }
                        }
                        p #how { (say.style_page_how()) }
                    }
                }
                (self.strip())
                (self.history())
                template #more-keys { @for (keys, does) in keys(say) { (layout::key(keys, does)) } }
            }
        };
        let loads = PageAssets {
            styles: &["cloth.css"],
            scripts: &["bench.js"],
        };
        let title = format!("{} {}", doc.style.name, doc.style.code);
        layout::page(say, &title, loads, &body)
    }
}
