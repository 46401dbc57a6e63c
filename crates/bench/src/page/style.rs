//! The page of one style: the drawing in the middle, and beside it what is charted, how it is sewn, what was found.

use std::sync::Arc;

use maud::{Markup, html};
use sewing::Garment;

use super::layout;
use crate::answer::Fragment;
use crate::field::Show;
use crate::garment::{Picture, picture};
use crate::part::notice::Notice;
use crate::part::{bar, construction, drawing, findings, fit, history, notice, tabs};
use crate::route;
use crate::see::See;
use crate::session::Session;

/// Everything the page shows.
pub(crate) struct Page<'a> {
    name: &'a str,
    session: &'a Session,
    garment: Arc<Garment>,
    picture: Picture,
    see: See,
    notice: Notice,
    said: &'a str,
}

impl<'a> Page<'a> {
    /// Gathers what is to be seen of a style.
    pub(crate) fn of(
        name: &'a str,
        session: &'a mut Session,
        see: See,
        notice: Notice,
        said: &'a str,
    ) -> Self {
        let size = see.size_of(&session.loaded().style);
        let garment = session.garment(size);
        Self {
            name,
            session,
            picture: picture(&garment, &see),
            garment,
            see,
            notice,
            said,
        }
    }

    /// The revision shown.
    pub(crate) fn revision(&self) -> String {
        self.session.loaded().revision.to_string()
    }

    fn show(&self) -> Show<'_> {
        Show {
            loaded: self.session.loaded(),
            written: self.session.written(),
            system: self.see.system(&self.session.loaded().collection),
        }
    }

    fn bar(&self) -> Markup {
        bar::render(self.name, self.session, &self.see, self.garment.size)
    }

    fn tabs(&self) -> Markup {
        tabs::render(self.name, &self.see, &self.garment)
    }

    fn history(&self) -> Markup {
        history::render(self.session, self.said)
    }

    /// Every part of the page that can change, each with its id.
    pub(crate) fn fragments(&self) -> Vec<Fragment> {
        let show = self.show();
        [
            ("bar", self.bar()),
            ("notice", notice::render(&self.notice)),
            ("drawing", drawing::render(&self.picture, &self.garment)),
            ("tabs", self.tabs()),
            ("fit", fit::render(&show, &self.garment, &self.see)),
            ("construction", construction::render(&show, &self.see)),
            ("findings", findings::render(&self.garment, &self.see)),
            ("history", self.history()),
        ]
        .map(|(id, markup)| Fragment {
            id,
            html: markup.into_string(),
        })
        .into()
    }

    /// The whole page.
    pub(crate) fn render(&self) -> Markup {
        let show = self.show();
        let doc = &self.session.loaded().style;
        let body = html! {
            a.skip href="#panel" { "To the chart and seams" }
            div #bench data-path=(route::style_path(self.name)) data-revision=(self.session.loaded().revision) {
                (self.bar())
                (notice::render(&self.notice))
                noscript { p.notice { "Changes need the bench's scripts, which this browser does not run. Everything can be looked at." } }
                main {
                    section.board aria-label="Drawing" {
                        (drawing::render(&self.picture, &self.garment))
                        (drawing::tools())
                    }
                    section #panel aria-label="Chart, seams and findings" tabindex="-1" {
                        (self.tabs())
                        div.scroll {
                            (fit::render(&show, &self.garment, &self.see))
                            (construction::render(&show, &self.see))
                            (findings::render(&self.garment, &self.see))
                        }
                        p #how { "Up and down arrows step a value; a changed value is saved when you leave it." }
                    }
                }
                (self.history())
            }
        };
        layout::live(&format!("{} {}", doc.style.name, doc.style.code), &body)
    }
}
