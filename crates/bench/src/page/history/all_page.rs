//! All changes of all files of the collection, newest first, a page at a time. What any of them replaced can be put back.

use maud::{Markup, html};
use style::{Loaded, Way};
use words::Words;

use crate::addresses;
use crate::page::history::address;
use crate::page::history::all::{All, Row};
use crate::page::history::list_page::pager;
use crate::page::layout::PageAssets;
use crate::page::room_frame;
use crate::part::page_head::Head;
use crate::room::Room;
use crate::typed_fields::capital;
use crate::viewing::Viewing;

impl All {
    pub(crate) fn render(
        &self,
        say: &'static Words,
        name: &str,
        loaded: &Loaded,
        see: &Viewing,
    ) -> Markup {
        let head = Head {
            say,
            name,
            loaded,
            room: Room::History,
            leaf: &address::all_leaf(self.page),
            see,
        };
        let main = html! {
            div #versions data-path=(addresses::style_path(name)) data-revision=(loaded.revision) {
                div.opening {
                    h2 { (say.history_title()) }
                    nav.choice aria-label=(say.history_which()) {
                        a href=(address::list(name, see, false, 1)) { (say.history_all(self.own)) }
                        a href=(address::all(name, see, 1)) aria-current="true" { (say.history_files(self.count)) }
                    }
                }
                p.lead { (say.history_files_lead()) }
                p #told role="status" {}
                @if self.rows.is_empty() { p.none { (say.history_files_none()) } }
                ol.versions.of-files {
                    @for (at, row) in self.rows.iter().enumerate() { (row.render(say, at)) }
                }
                @if self.pages > 1 { (pager(say, (self.page, self.pages), |page| address::all(name, see, page))) }
            }
        };
        let loads = PageAssets {
            styles: &["history.css"],
            scripts: &["history.js"],
        };
        room_frame::render(&head, loads, &main)
    }
}

impl Row {
    fn render(&self, say: &'static Words, at: usize) -> Markup {
        let (from, to) = (self.change.from.number, self.change.to.number);
        let file = &self.change.file;
        html! {
            li #{ "change-" (at) } {
                div.about {
                    h3 { @if self.own { (capital(&self.words)) } @else { (self.words) } }
                    p.when {
                        @if let Some(when) = &self.when { time datetime=(when.machine) { (when.shown) } }
                        span { (say.say(words::say::HistoryVersionOf { file, number: to })) }
                        @match self.change.way {
                            Way::Undo => span { (say.history_way_undone()) },
                            Way::Redo => span { (say.history_way_again()) },
                            Way::Edit | Way::PutBack | Way::Outside => {}
                        }
                    }
                }
                div.acts {
                    form data-send="put-file-back" data-number=(from) data-file=(file) {
                        button.small type="submit" aria-label=(say.say(words::say::HistoryPutFileBackNamed { file, number: from })) { (say.history_put_file_back(from)) }
                        p.problem hidden {}
                    }
                }
            }
        }
    }
}
