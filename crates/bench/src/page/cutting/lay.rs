//! The lay: the cloth with its pieces in the middle, and beside it what is asked for and what came of it.

use std::time::Duration;

use ::drawing::LayMarks;
use cutting::Way;
use jobs::LayJob;
use lay::Ended;
use maud::{Markup, PreEscaped, html};
use style::Loaded;
use trade::System;

use super::asked::{MOST_PAIRS, query};
use super::lay_words::{figures, file_stem, long, many, over, pairs};
use super::shown::{Laid, Outcome, Search, Shown};
use crate::answer::Fragment;
use crate::field::capital;
use crate::garment::written;
use crate::part::drawing;
use crate::part::work::{bar, problems_place, time};
use crate::route::{self, style_path};
use crate::see::See;
use crate::work::lay::LayAsked;

/// Everything the page shows.
pub(super) struct LayPage<'a> {
    pub(super) name: &'a str,
    pub(super) see: &'a See,
    pub(super) system: System,
    pub(super) loaded: &'a Loaded,
    pub(super) asked: &'a LayAsked,
    pub(super) shown: Shown,
}

/// The pages of the room, each a link in its row.
pub(super) fn row(name: &str, see: &See, now: &str) -> Markup {
    let pages = [
        ("cutting", "Lay"),
        ("cutting/pieces", "Pieces"),
        ("cutting/orders", "Orders"),
    ];
    html! {
        nav.leaves aria-label="In this room" {
            @for (page, words) in pages {
                a href=(route::room(name, page, see)) aria-current=[(page == now).then_some("page")] { (words) }
            }
        }
    }
}

impl LayPage<'_> {
    /// The whole page below the head.
    pub(super) fn render(&self) -> Markup {
        html! {
            div.lay-room data-work={ (style_path(self.name)) "/cutting" } data-running[self.shown.runs()] {
                section.board aria-label="Lay" {
                    (self.board())
                    (drawing::tools())
                }
                section #panel aria-label="What is laid, and the search" tabindex="-1" {
                    (row(self.name, self.see, "cutting"))
                    div.scroll {
                        h2 { "Lay" }
                        p.lead { "The pieces of some pairs on one cloth, as short as is found in the time given. Pieces are drawn as they are cut, before the wash." }
                        noscript { p.notice { "Looking for a lay needs the bench’s scripts, which this browser does not run." } }
                        (self.form())
                        (self.work())
                        (self.result())
                        p #said .unseen role="status" {}
                    }
                }
            }
        }
    }

    /// The parts that change, the drawing only where the page does not have it.
    pub(super) fn fragments(&self, seen: Option<&str>) -> Vec<Fragment> {
        let mut parts = vec![("work", self.work()), ("result", self.result())];
        if seen != Some(self.version().as_str()) {
            parts.push(("drawing", self.board()));
        }
        let fragment = |(id, markup): (&'static str, Markup)| Fragment::new(id, markup);
        parts.into_iter().map(fragment).collect()
    }

    /// What is read out: it changes when something happened, not with every figure.
    pub(super) fn said(&self) -> String {
        match &self.shown {
            Shown::Searching(search) if search.elapsed.is_none() => {
                "The search waits for its turn".to_owned()
            }
            Shown::Searching(_) => "A lay is being looked for".to_owned(),
            Shown::Found(found) => format!(
                "The search ended: {}",
                long(found.laid.lay.length, self.system)
            ),
            Shown::Failed(words) => words.join(". "),
            Shown::Kept(..) | Shown::Nothing(_) => String::new(),
        }
    }

    /// What tells one drawing from another.
    fn version(&self) -> String {
        match self.shown.laid() {
            Some(laid) => format!(
                "{} {:.4} {:?}",
                laid.job.words,
                laid.lay.length.to_mm(),
                self.system
            ),
            None => match &self.shown {
                Shown::Nothing(Ok(job)) => format!("{} empty", job.words),
                _ => "none".to_owned(),
            },
        }
    }

    fn board(&self) -> Markup {
        let (title, svg) = match self.shown.laid() {
            Some(laid) => {
                let picture = written(::drawing::lay_sheet(
                    &laid.job.spread,
                    &laid.lay,
                    &laid.job.cloth,
                    &LayMarks::default(),
                    self.system,
                ));
                let svg = numbered(picture.svg, laid);
                // Our own writer made this; it escapes all words it is given.
                (picture.title, html! { (PreEscaped(&svg)) })
            }
            None => match &self.shown {
                Shown::Nothing(Ok(job)) => {
                    (format!("Empty cloth: {}", job.cloth.name), empty_cloth(job))
                }
                _ => ("No lay".to_owned(), html! {}),
            },
        };
        html! {
            figure #drawing .lay tabindex="0" data-names=(self.names()) data-version=(self.version())
                aria-label={ (title) ". Arrow keys move, plus and minus zoom, 0 shows all." } data-whole { (svg) }
        }
    }

    /// What each piece of the lay is called.
    fn names(&self) -> serde_json::Value {
        let names = self.shown.laid().into_iter().flat_map(|laid| {
            let pieces = laid.job.spread.problem.pieces.iter();
            pieces.enumerate().filter_map(|(number, piece)| {
                let named = laid.job.spread.named(&piece.key)?;
                let hand = if named.mirrored { ", mirrored" } else { "" };
                let words = format!("{}{hand}, {}", named.piece, named.size);
                Some((format!("cut:{number}"), words.into()))
            })
        });
        names.collect::<serde_json::Map<_, _>>().into()
    }

    fn form(&self) -> Markup {
        let LayAsked {
            order,
            ends,
            seconds,
            seed,
        } = self.asked;
        let chosen = order
            .cloth
            .as_deref()
            .unwrap_or(&self.loaded.style.cloth.shell);
        let way = |value: &str, words: &str, way: Way| {
            html! {
                label.tick { input type="radio" name="way" value=(value) checked[order.way == way]; (words) }
            }
        };
        let typed = |name: &str, words: &str, value: &str| {
            html! {
                label.cell { span { (words) }
                    input type="text" name=(name) value=(value) autocomplete="off" spellcheck="false";
                }
            }
        };
        html! {
            form #lay-form data-start data-follow {
                div.cells.two {
                    label.cell { span { "Cloth" }
                        select name="cloth" {
                            @for (key, words) in cloths(self.loaded) {
                                option value=(key) selected[key == chosen] { (words) }
                            }
                        }
                    }
                    fieldset.way { legend { "Pieces lie" }
                        (way("two-way", "head to tail", Way::TwoWay))
                        (way("one-way", "one way", Way::OneWay))
                    }
                }
                (self.sizes())
                div.cells.four {
                    (typed("gap", "Gap", &order.gap.show(self.system)))
                    (typed("ends", "Lost at each end", &ends.show(self.system)))
                    (typed("seconds", "Seconds to look", &seconds.to_string()))
                    (typed("seed", "Start of chance", &seed.to_string()))
                }
                (problems_place())
                div.actions { button type="submit" { "Look for a lay" } }
            }
        }
    }

    /// How many pairs of each size: a row a length, a column a waist.
    fn sizes(&self) -> Markup {
        let sizes = &self.loaded.style.sizes;
        let count = |size| {
            let found = self.asked.order.pairs.iter().find(|(s, _)| *s == size);
            found
                .map(|(_, count)| count.to_string())
                .unwrap_or_default()
        };
        html! {
            div.pairs-of role="group" aria-label={ "Pairs of each size, at most " (MOST_PAIRS) " together" } {
                table {
                    caption { "Pairs of each size: waist across, length down" }
                    thead { tr { td {} @for waist in &sizes.waists { th scope="col" { (waist) } } } }
                    tbody {
                        @for length in &sizes.lengths {
                            tr {
                                th scope="row" { (length) }
                                @for waist in &sizes.waists {
                                    @let size = style::Size::new(*waist, *length);
                                    td { input type="text" inputmode="numeric" data-pairs=(size) aria-label={ "Pairs of " (size) }
                                        value=(count(size)) autocomplete="off"; }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /// How the search goes on, and the way to end it.
    fn work(&self) -> Markup {
        html! {
            section #work aria-label="The search" {
                @match &self.shown {
                    Shown::Searching(search) => (self.searching(search)),
                    Shown::Failed(words) => { @for words in words { p.bad { (capital(words)) "." } } },
                    _ => {}
                }
            }
        }
    }

    fn searching(&self, search: &Search) -> Markup {
        let task = &search.job.task;
        let whole = Duration::from_secs(task.seconds);
        html! {
            h3 { "Looking for a lay of " (pairs(&task.order.pairs)) }
            @match search.elapsed {
                None => {
                    (bar("The search waits", None))
                    p { "It begins as soon as there is room: two jobs go on at once." }
                }
                Some(elapsed) => {
                    (bar("Time gone", Some(elapsed.as_secs_f64() / whole.as_secs_f64().max(1.0))))
                    p.time {
                        @if search.cancelled { "Ending." }
                        @else { (time(whole.saturating_sub(elapsed))) " left of " (time(whole)) "." }
                        @if search.places > 0 { " " (many(search.places)) " places tried." }
                    }
                }
            }
            @if let Some(Laid { lay, .. }) = &search.laid {
                dl.figures {
                    div { dt { "So far" } dd { strong { (long(lay.length, self.system)) } } }
                    div { dt { "Cloth used" } dd { (format!("{:.1} %", lay.efficiency.to_percent())) } }
                    div { dt { "No lay is shorter than" } dd { (long(lay.bounds.best(), self.system)) } }
                    div { dt { "At most to be gained" } dd { (over(lay.length, lay.bounds.best())) } }
                }
            }
            @if !search.job.is_of(self.loaded) { p.asks { "The style was changed since the search began; it goes on with the style as it was." } }
            p.actions { button #cancel type="button" data-cancel { "Cancel and keep what is found" } }
        }
    }

    /// What was found, or what would be.
    fn result(&self) -> Markup {
        html! {
            section #result aria-label="The lay" {
                @match &self.shown {
                    Shown::Kept(laid, seconds) => {
                        (self.laid(laid))
                        p.lead { "Kept in the collection; looked for " (time(Duration::from_secs(*seconds))) " in all. Looking again goes on from here." }
                    }
                    Shown::Found(found) => (self.found(found)),
                    Shown::Nothing(Ok(job)) => (nothing(job)),
                    Shown::Nothing(Err(words)) => {
                        h3.bad { "These pieces cannot be laid yet" }
                        @for words in words { p { (capital(words)) } }
                    }
                    Shown::Searching(_) | Shown::Failed(_) => {}
                }
            }
        }
    }

    fn laid(&self, laid: &Laid) -> Markup {
        let of = self.shown.made_of(self.loaded);
        let stem = file_stem(of, &laid.job);
        let mut query = query(self.asked);
        if !self.see.units_query().is_empty() {
            query = format!("{query}&{}", self.see.units_query());
        }
        html! {
            h3 { (laid.lay.placements.len()) " pieces of " (pairs(&self.asked.order.pairs)) }
            dl.figures {
                @for (what, figure) in figures(&laid.job, &laid.lay, self.asked.ends, self.system) {
                    div { dt { (what) } dd { (figure) } }
                }
            }
            p.downloads { "Take it as "
                @for (ending, words) in [("dxf", "DXF for a cutter"), ("pdf", "PDF to scale"), ("svg", "SVG")] {
                    a href={ (style_path(self.name)) "/cutting/file/" (stem) "." (ending) "?" (query) } download { (words) }
                    " "
                }
            }
        }
    }

    fn found(&self, found: &Outcome) -> Markup {
        let ended = match found.laid.lay.ended {
            Ended::Cancelled => "was cancelled",
            Ended::Bound => "ended because no lay is shorter",
            Ended::Time | Ended::Places => "ended",
        };
        html! {
            (self.laid(&found.laid))
            p.lead {
                "The search " (ended) " after " (time(found.took)) "; "
                @if found.kept { "nothing shorter than the lay found before was found." }
                @else { "it is kept in the collection. Looking again goes on from here." }
            }
            @if let Some(why) = &found.not_kept { p.bad { "The lay could not be kept: " (why) } }
            @if found.earlier {
                div.asks {
                    p { "This lay is of an earlier state of the style. Since then changed:" }
                    ul { @for words in found.job.changed_since(self.loaded, self.system) { li { (words) } } }
                }
            }
        }
    }
}

/// The parts of a drawn lay by number: a page takes names with spaces for several parts.
fn numbered(mut svg: String, laid: &Laid) -> String {
    for (number, piece) in laid.job.spread.problem.pieces.iter().enumerate() {
        let part = format!(" data-part=\"cut:{}\"", piece.key);
        svg = svg.replace(&part, &format!(" data-part=\"cut:{number}\""));
    }
    svg
}

/// The cloths that pieces of the style are cut from: the name in the collection and what people call it.
fn cloths(loaded: &Loaded) -> Vec<(String, String)> {
    let base = loaded.style.sizes.base;
    let garment = sewing::make(&loaded.style, &loaded.collection, base);
    let cut = cutting::cut(&garment, &cutting::Plan::of(&loaded.style));
    let mut out: Vec<(String, String)> = Vec::new();
    for piece in &cut.pieces {
        let known = loaded.collection.cloths.get(&piece.cloth_name);
        if let Some(cloth) = known
            && out.iter().all(|(key, _)| *key != piece.cloth_name)
        {
            out.push((piece.cloth_name.clone(), cloth.name.clone()));
        }
    }
    out
}

/// What will happen, for somebody who looks for a lay the first time.
fn nothing(job: &LayJob) -> Markup {
    let pieces: usize = job.spread.problem.pieces.iter().map(|p| p.demand).sum();
    html! {
        h3 { "No lay yet" }
        @if pieces == 0 {
            p { "Nothing of these pairs is cut from " (job.cloth.name) ". Choose another cloth." }
        } @else {
            p { (pieces) " pieces wait beside the cloth. “Look for a lay” puts them on it within a second and then shortens the lay for as long as you said; the drawing follows." }
            p { "For one pair 20 seconds are sensible, for a dozen two minutes. You may go on working meanwhile, or cancel: what was found is kept either way, and looking again goes on from it." }
        }
    }
}

/// The cloth with nothing on it, as long as it is wide twice over.
fn empty_cloth(job: &LayJob) -> Markup {
    let wide = job.cloth.width.to_mm();
    let (long, deep) = (wide * 2.0, 6.0);
    let view = format!(
        "{:.0} {:.0} {:.0} {:.0}",
        -90.0,
        -90.0,
        long + 180.0,
        wide + 180.0
    );
    let mm = |value: f64| format!("{value:.1}");
    html! {
        svg.cloth viewBox=(view) role="img" aria-label={ "Empty cloth: " (job.cloth.name) } {
            rect.ground x="0" y="0" width=(mm(long)) height=(mm(wide)) {}
            @if job.cloth.selvedge {
                rect x="0" y="0" width=(mm(long)) height=(mm(deep)) fill=(job.cloth.colour) {}
                rect x="0" y=(mm(wide - deep)) width=(mm(long)) height=(mm(deep)) fill=(job.cloth.colour) {}
            }
        }
    }
}
