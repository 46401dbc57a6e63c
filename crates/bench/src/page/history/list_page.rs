//! The list of versions, newest first, a page at a time.

use maud::{Markup, html};
use style::{LONGEST_NAME, Loaded};
use words::Words;

use crate::addresses;
use crate::page::history::address;
use crate::page::history::compare::Look;
use crate::page::history::list::{List, Row};
use crate::page::layout::PageAssets;
use crate::page::room_frame;
use crate::part::page_head::Head;
use crate::room::Room;
use crate::typed_fields::capital;
use crate::viewing::Viewing;

/// The way to newer and older pages.
pub(super) fn pager(
    say: &'static Words,
    (page, pages): (usize, usize),
    to: impl Fn(usize) -> String,
) -> Markup {
    html! {
        nav.pager aria-label=(say.history_pages()) {
            @if page > 1 { a rel="prev" href=(to(page - 1)) { (say.history_newer()) } } @else { a role="link" aria-disabled="true" { (say.history_newer()) } }
            span { (say.say(words::say::HistoryPageOf { page, pages })) }
            @if page < pages { a rel="next" href=(to(page + 1)) { (say.history_older()) } } @else { a role="link" aria-disabled="true" { (say.history_older()) } }
        }
    }
}

fn problems(words: &str, lines: &[String]) -> Markup {
    html! {
        @if !lines.is_empty() {
            div.notice.asks { div { p { (words) } ul { @for line in lines { li { (line) } } } } }
        }
    }
}

/// How many changes of a version are told before the rest is folded away.
const MOST_TOLD: usize = 3;

impl List {
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
            leaf: &address::list_leaf(self.named, self.page),
            see,
        };
        let main = html! {
            div #versions data-path=(addresses::style_path(name)) data-revision=(loaded.revision) {
                div.opening {
                    h2 { (say.history_title()) }
                    nav.choice aria-label=(say.history_which()) {
                        a href=(address::list(name, see, false, 1)) aria-current=[(!self.named).then_some("true")] { (say.history_all(self.all)) }
                        a href=(address::list(name, see, true, 1)) aria-current=[self.named.then_some("true")] { (say.history_with_name(self.with_name)) }
                        a href=(address::all(name, see, 1)) { (say.history_files(self.changes)) }
                    }
                }
                p.lead { (say.history_lead()) }
                p #told role="status" {}
                (problems(say.history_file_unreadable(), &self.file_problem))
                (problems(say.history_names_unreadable(), &self.names_problem))
                @if self.rows.is_empty() {
                    p.none { (say.history_no_names()) }
                }
                ol.versions {
                    @for row in &self.rows { (row.render(say, name, see)) }
                }
                @if self.pages > 1 { (pager(say, (self.page, self.pages), |page| address::list(name, see, self.named, page))) }
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
    fn render(&self, say: &'static Words, name: &str, see: &Viewing) -> Markup {
        let number = self.version.number;
        let this = number.to_string();
        let beside = |a: &str, b: &str| address::compare(name, a, b, Look::Beside, see);
        html! {
            li #{ "version-" (number) } .now[self.now] {
                div.picture {
                    @if self.told.is_ok() {
                        img src=(address::picture(name, &self.version)) alt="" loading="lazy" width="64" height="104";
                    }
                }
                div.about {
                    h3 {
                        (say.history_version(number))
                        @if let Some(called) = &self.name { " " span.called { (called) } }
                    }
                    p.when {
                        @if let Some(when) = &self.when { time datetime=(when.machine) { (when.shown) } }
                        @if self.now { span { (say.history_now()) } }
                        @if let Some(same) = self.same { span { (say.history_as(same)) } }
                    }
                    (self.changes(say))
                }
                div.acts {
                    @if self.told.is_ok() {
                        @if let Some(before) = self.before {
                            a href=(beside(&before.to_string(), &this)) aria-label=(say.say(words::say::HistoryCompareNamed { number, other: before })) { (say.history_compare(before)) }
                        }
                        @if !self.now {
                            a href=(beside(&this, "now")) aria-label=(say.history_compare_now_named(number)) { (say.history_compare_now()) }
                            form data-send="put-back" data-number=(number) {
                                button.small type="submit" aria-label=(say.history_put_back_named(number)) { (say.history_put_back()) }
                            }
                        }
                    }
                    (self.naming(say))
                }
            }
        }
    }

    fn changes(&self, say: &'static Words) -> Markup {
        html! {
            @match &self.told {
                Err(why) => {
                    p.bad { (say.history_version_unreadable()) }
                    ul.why-not { @for line in why { li { (capital(line)) } } }
                }
                Ok(_) if self.before.is_none() => p { (say.history_first()) },
                Ok(told) if told.is_empty() => p { (say.history_only_comments()) },
                Ok(told) => {
                    ul.told { @for line in told.iter().take(MOST_TOLD) { li { (capital(line)) } } }
                    @if told.len() > MOST_TOLD {
                        details {
                            summary { (say.history_more(told.len() - MOST_TOLD)) }
                            ul.told { @for line in told.iter().skip(MOST_TOLD) { li { (capital(line)) } } }
                        }
                    }
                }
            }
        }
    }

    fn naming(&self, say: &'static Words) -> Markup {
        let number = self.version.number;
        let id = format!("name-{number}");
        let (does, named) = match &self.name {
            Some(_) => (say.history_rename(), say.history_rename_named(number)),
            None => (say.history_name_it(), say.history_name_it_named(number)),
        };
        html! {
            details.naming {
                summary #{ "naming-" (number) } aria-label=(named) { (does) }
                form data-send="name-version" data-number=(number) {
                    label for=(id) { (say.history_name_of(number)) }
                    input #(id) type="text" name="name" maxlength=(LONGEST_NAME) value=(self.name.as_deref().unwrap_or_default()) autocomplete="off" required;
                    div.adding {
                        button.small type="submit" { (say.history_save_name()) }
                        @if self.name.is_some() {
                            button.small type="submit" data-away formnovalidate { (say.history_take_name_away()) }
                        }
                    }
                    p.problem hidden {}
                }
            }
        }
    }
}
