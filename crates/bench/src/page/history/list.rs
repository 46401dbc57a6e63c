//! The list of versions, newest first, a page at a time.

use std::sync::Arc;

use maud::{Markup, html};
use serde::Deserialize;
use style::{History, LONGEST_NAME, Loaded, Revision};

use super::address;
use super::compare::Look;
use crate::answer::placed;
use crate::field::capital;
use crate::page::layout::Loads;
use crate::page::room;
use crate::part::head::Head;
use crate::room::Room;
use crate::route;
use crate::see::See;
use crate::session::Session;
use crate::versions::why_unread;
use crate::when::When;

/// How many versions a page lists.
const A_PAGE: usize = 50;
/// How many changes of a version are told before the rest is folded away.
const MOST_TOLD: usize = 3;

/// Which part of the list an address asks for.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Part {
    page: Option<String>,
    named: Option<String>,
}

/// A page of the list.
pub(crate) struct List {
    rows: Vec<Row>,
    /// Only versions with a name.
    named: bool,
    page: usize,
    pages: usize,
    /// How many versions there are.
    all: usize,
    /// How many of them have a name.
    with_name: usize,
    /// Why names cannot be read.
    names_problem: Vec<String>,
    /// Why the style file cannot be read as it is now.
    file_problem: Vec<String>,
}

struct Row {
    version: Revision,
    name: Option<String>,
    when: Option<When>,
    /// The version before it.
    before: Option<u32>,
    /// An earlier version with the same text.
    same: Option<u32>,
    now: bool,
    /// What changed, or why it cannot be read.
    told: Result<Arc<[String]>, Vec<String>>,
}

impl List {
    pub(crate) fn of(
        session: &mut Session,
        history: &History,
        see: &See,
        part: &Part,
        file_problem: Vec<String>,
    ) -> Self {
        let named = part.named.as_deref() == Some("yes");
        let versions = history.versions().iter().rev();
        let listed: Vec<&Revision> = versions
            .filter(|version| !named || history.name(version).is_some())
            .collect();
        let pages = listed.len().div_ceil(A_PAGE).max(1);
        let page = part.page.as_deref().and_then(|page| page.parse().ok());
        let page = page.unwrap_or(1).clamp(1, pages);
        let shown = listed.iter().skip((page - 1) * A_PAGE).take(A_PAGE);
        let pairs: Vec<(&Revision, Option<&Revision>)> = shown
            .map(|version| (*version, history.before(version.number)))
            .collect();
        let system = see.system(&session.loaded().collection);
        let told = session.told(&pairs, system);
        let now = history.now().map(|now| now.number);
        let rows = pairs.into_iter().zip(told);
        let rows = rows.map(|((version, before), told)| Row {
            name: history.name(version).map(str::to_owned),
            when: When::written(&version.path),
            before: before.map(|before| before.number),
            same: history.same_as(version).map(|same| same.number),
            now: now == Some(version.number),
            told: told.map_err(|report| why_unread(&report)),
            version: version.clone(),
        });
        let with_name = |version: &&Revision| history.name(version).is_some();
        Self {
            rows: rows.collect(),
            named,
            page,
            pages,
            all: history.versions().len(),
            with_name: history.versions().iter().filter(with_name).count(),
            names_problem: history.names_problem().map(placed).unwrap_or_default(),
            file_problem,
        }
    }

    pub(crate) fn render(&self, name: &str, loaded: &Loaded, see: &See) -> Markup {
        let head = Head {
            name,
            loaded,
            room: Room::History,
            leaf: &address::list_leaf(self.named, self.page),
            see,
        };
        let main = html! {
            div #versions data-path=(route::style_path(name)) data-revision=(loaded.revision) {
                div.opening {
                    h2 { "History" }
                    nav.choice aria-label="Which versions" {
                        a href=(address::list(name, see, false, 1)) aria-current=[(!self.named).then_some("true")] { "All " (self.all) }
                        a href=(address::list(name, see, true, 1)) aria-current=[self.named.then_some("true")] { "Named " (self.with_name) }
                    }
                }
                p.lead { "Every version is kept beside the style. Putting one back is a change like any other and can be undone." }
                p #told role="status" {}
                (problems("The style file cannot be read as it is now; the last sound version is shown.", &self.file_problem))
                (problems("The names cannot be read. Put the file right, or take it away to begin anew.", &self.names_problem))
                @if self.rows.is_empty() {
                    p.none { "No version has a name yet. Give one a name to find it again: \u{201c}sent to the workroom, first sample\u{201d}." }
                }
                ol.versions {
                    @for row in &self.rows { (row.render(name, see)) }
                }
                @if self.pages > 1 { (self.pager(name, see)) }
            }
        };
        let loads = Loads {
            styles: &["history.css"],
            scripts: &["history.js"],
        };
        room::render(&head, loads, &main)
    }

    fn pager(&self, name: &str, see: &See) -> Markup {
        let to = |page| address::list(name, see, self.named, page);
        html! {
            nav.pager aria-label="Pages" {
                @if self.page > 1 { a rel="prev" href=(to(self.page - 1)) { "Newer" } } @else { a role="link" aria-disabled="true" { "Newer" } }
                span { "Page " (self.page) " of " (self.pages) }
                @if self.page < self.pages { a rel="next" href=(to(self.page + 1)) { "Older" } } @else { a role="link" aria-disabled="true" { "Older" } }
            }
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

impl Row {
    fn render(&self, name: &str, see: &See) -> Markup {
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
                        "Version " (number)
                        @if let Some(called) = &self.name { " " span.called { (called) } }
                    }
                    p.when {
                        @if let Some(when) = &self.when { time datetime=(when.machine) { (when.shown) } }
                        @if self.now { span { "In the file now" } }
                        @if let Some(same) = self.same { span { "As version " (same) " was" } }
                    }
                    (self.changes())
                }
                div.acts {
                    @if self.told.is_ok() {
                        @if let Some(before) = self.before {
                            a href=(beside(&before.to_string(), &this)) aria-label={ "Compare with version " (before) ": version " (number) } { "Compare with version " (before) }
                        }
                        @if !self.now {
                            a href=(beside(&this, "now")) aria-label={ "Compare with now: version " (number) } { "Compare with now" }
                            form data-send="put-back" data-number=(number) {
                                button.small type="submit" aria-label={ "Put version " (number) " back" } { "Put back" }
                            }
                        }
                    }
                    (self.naming())
                }
            }
        }
    }

    fn changes(&self) -> Markup {
        html! {
            @match &self.told {
                Err(why) => {
                    p.bad { "This version cannot be read now." }
                    ul.why-not { @for line in why { li { (capital(line)) } } }
                }
                Ok(_) if self.before.is_none() => p { "The first version that is kept." },
                Ok(told) if told.is_empty() => p { "Comments, or the way it is written." },
                Ok(told) => {
                    ul.told { @for line in told.iter().take(MOST_TOLD) { li { (capital(line)) } } }
                    @if told.len() > MOST_TOLD {
                        details {
                            summary { (told.len() - MOST_TOLD) " more" }
                            ul.told { @for line in told.iter().skip(MOST_TOLD) { li { (capital(line)) } } }
                        }
                    }
                }
            }
        }
    }

    fn naming(&self) -> Markup {
        let number = self.version.number;
        let id = format!("name-{number}");
        html! {
            details.naming {
                summary #{ "naming-" (number) } aria-label={ (if self.name.is_some() { "Rename" } else { "Name it" }) ": version " (number) } { @if self.name.is_some() { "Rename" } @else { "Name it" } }
                form data-send="name-version" data-number=(number) {
                    label for=(id) { "Name of version " (number) }
                    input #(id) type="text" name="name" maxlength=(LONGEST_NAME) value=(self.name.as_deref().unwrap_or_default()) autocomplete="off" required;
                    div.adding {
                        button.small type="submit" { "Save the name" }
                        @if self.name.is_some() {
                            button.small type="submit" data-away formnovalidate { "Take the name away" }
                        }
                    }
                    p.problem hidden {}
                }
            }
        }
    }
}
