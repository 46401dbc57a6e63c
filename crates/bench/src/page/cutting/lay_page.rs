//! The lay: the cloth with its pieces in the middle, and beside it what is asked for and what came of it.

use std::time::Duration;

use cut_sheets::LayMarks;
use cutting::Way;
use jobs::LayJob;
use lay::Ended;
use maud::{Markup, PreEscaped, html};
use style::Loaded;
use trade::System;
use words::Words;

use crate::addresses::{self, style_path};
use crate::answer::Fragment;
use crate::garment::written;
use crate::page::cutting::lay_figures::{figures, file_stem, long, many, over, pairs};
use crate::page::cutting::lay_request::{MOST_PAIRS, query};
use crate::page::cutting::lay_shown::{Laid, Outcome, Search, Shown};
use crate::part::background_work::{bar, problems_place, time};
use crate::part::drawing;
use crate::typed_fields::capital;
use crate::viewing::Viewing;
use crate::work::lay::LayAsked;

/// Everything the page shows.
pub(super) struct LayPage<'a> {
    pub(super) say: &'static Words,
    pub(super) name: &'a str,
    pub(super) see: &'a Viewing,
    pub(super) system: System,
    pub(super) loaded: &'a Loaded,
    pub(super) asked: &'a LayAsked,
    pub(super) shown: Shown,
}

/// The pages of the room, each a link in its row.
pub(super) fn row(say: &'static Words, name: &str, see: &Viewing, now: &str) -> Markup {
    let pages = [
        ("cutting", say.lay_title()),
        ("cutting/pieces", say.pieces_leaf()),
        ("cutting/orders", say.orders_title()),
    ];
    html! {
        nav.leaves aria-label=(say.lay_leaves()) {
            @for (page, words) in pages {
                a href=(addresses::room(name, page, see)) aria-current=[(page == now).then_some("page")] { (words) }
            }
        }
    }
}

impl LayPage<'_> {
    /// The whole page below the head.
    pub(super) fn render(&self, cloths: &[(String, String)]) -> Markup {
        let say = self.say;
        html! {
            div.lay-room data-work={ (style_path(self.name)) "/cutting" } data-running[self.shown.runs()] {
                section.board aria-label=(say.lay_board()) {
                    (self.board())
                    (drawing::tools(say))
                }
                section #panel aria-label=(say.lay_panel()) tabindex="-1" {
                    (row(say, self.name, self.see, "cutting"))
                    div.scroll {
                        h2 { (say.lay_title()) }
                        p.lead { (say.lay_lead()) }
                        noscript { p.notice { (say.lay_no_script()) } }
                        (self.form(cloths))
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
        let say = self.say;
        match &self.shown {
            Shown::Searching(search) if search.elapsed.is_none() => say.lay_said_waits().to_owned(),
            Shown::Searching(_) => say.lay_said_looking().to_owned(),
            Shown::Found(found) => say.lay_said_ended(long(found.laid.lay.length, self.system)),
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
        let say = self.say;
        let (title, svg) = match self.shown.laid() {
            Some(laid) => {
                let picture = written(cut_sheets::lay_sheet(
                    &laid.job.spread,
                    &laid.lay,
                    &laid.job.cloth,
                    &LayMarks::default(),
                    (say, self.system),
                ));
                let svg = numbered(picture.svg, laid);
                // Our own writer made this; it escapes all words it is given.
                (picture.title, html! { (PreEscaped(&svg)) })
            }
            None => match &self.shown {
                Shown::Nothing(Ok(job)) => {
                    (say.lay_empty_cloth(&job.cloth.name), empty_cloth(say, job))
                }
                _ => (say.lay_no_drawing().to_owned(), html! {}),
            },
        };
        html! {
            figure #drawing .lay tabindex="0" data-names=(self.names()) data-version=(self.version())
                aria-label=(say.lay_drawing(title)) data-whole { (svg) }
        }
    }

    /// What each piece of the lay is called.
    fn names(&self) -> serde_json::Value {
        let say = self.say;
        let names = self.shown.laid().into_iter().flat_map(|laid| {
            let pieces = laid.job.spread.problem.pieces.iter();
            pieces.enumerate().filter_map(|(number, piece)| {
                let named = laid.job.spread.named(&piece.key)?;
                let called = named.piece.clone();
                let words = match named.mirrored {
                    true => say.say(words::say::LayPieceMirrored {
                        piece: called,
                        size: &named.size,
                    }),
                    false => say.say(words::say::LayPiece {
                        piece: called,
                        size: &named.size,
                    }),
                };
                Some((format!("cut:{number}"), words.into()))
            })
        });
        names.collect::<serde_json::Map<_, _>>().into()
    }

    fn form(&self, cloths: &[(String, String)]) -> Markup {
        let say = self.say;
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
                    label.cell { span { (say.lay_cloth()) }
                        select name="cloth" {
                            @for (key, words) in cloths {
                                option value=(key) selected[key == chosen] { (words) }
                            }
                        }
                    }
                    fieldset.way { legend { (say.lay_way()) }
                        (way("two-way", say.lay_two_way(), Way::TwoWay))
                        (way("one-way", say.lay_one_way(), Way::OneWay))
                    }
                }
                (self.sizes())
                div.cells.four {
                    (typed("gap", say.lay_gap(), &order.gap.show(self.system)))
                    (typed("ends", say.lay_ends(), &ends.show(self.system)))
                    (typed("seconds", say.lay_seconds(), &seconds.to_string()))
                    (typed("seed", say.lay_seed(), &seed.to_string()))
                }
                (problems_place())
                div.actions { button type="submit" { (say.lay_look()) } }
            }
        }
    }

    /// How many pairs of each size: a row a length, a column a waist.
    fn sizes(&self) -> Markup {
        let say = self.say;
        let sizes = &self.loaded.style.sizes;
        let count = |size| {
            let found = self.asked.order.pairs.iter().find(|(s, _)| *s == size);
            found
                .map(|(_, count)| count.to_string())
                .unwrap_or_default()
        };
        html! {
            div.pairs-of role="group" aria-label=(say.lay_sizes(MOST_PAIRS)) {
                table {
                    caption { (say.lay_sizes_caption()) }
                    thead { tr { td {} @for waist in &sizes.waists { th scope="col" { (waist) } } } }
                    tbody {
                        @for length in &sizes.lengths {
                            tr {
                                th scope="row" { (length) }
                                @for waist in &sizes.waists {
                                    @let size = style::Size::of(*waist, *length);
                                    td { input type="text" inputmode="numeric" data-pairs=(size) aria-label=(say.lay_pairs_of(size))
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
            section #work aria-label=(self.say.lay_search()) {
                @match &self.shown {
                    Shown::Searching(search) => (self.searching(search)),
                    Shown::Failed(words) => { @for words in words { p.bad { (capital(words)) "." } } },
                    _ => {}
                }
            }
        }
    }

    fn searching(&self, search: &Search) -> Markup {
        let say = self.say;
        let task = &search.job.task;
        let whole = Duration::from_secs(task.seconds);
        html! {
            h3 { (say.lay_looking(pairs(say, &task.order.pairs))) }
            @match search.elapsed {
                None => {
                    (bar(say.lay_search_waits(), None))
                    p { (say.work_waits()) }
                }
                Some(elapsed) => {
                    (bar(say.lay_time_gone(), Some(elapsed.as_secs_f64() / whole.as_secs_f64().max(1.0))))
                    p.time {
                        @if search.cancelled { (say.lay_ending()) }
                        @else { (say.say(words::say::LayTimeLeft { left: time(whole.saturating_sub(elapsed)), whole: time(whole) })) }
                        @if search.places > 0 { " " (say.say(words::say::LayPlacesTried { places: search.places, shown: many(say, search.places) })) }
                    }
                }
            }
            @if let Some(Laid { lay, .. }) = &search.laid {
                dl.figures {
                    div { dt { (say.lay_so_far()) } dd { strong { (long(lay.length, self.system)) } } }
                    div { dt { (say.lay_cloth_used()) } dd { (format!("{:.1} %", lay.efficiency.to_percent())) } }
                    div { dt { (say.lay_bound()) } dd { (long(lay.bounds.best(), self.system)) } }
                    div { dt { (say.lay_to_gain()) } dd { (over(lay.length, lay.bounds.best())) } }
                }
            }
            @if !search.job.is_of(self.loaded) { p.asks { (say.lay_style_changed()) } }
            p.actions { button #cancel type="button" data-cancel { (say.lay_cancel()) } }
        }
    }

    /// What was found, or what would be.
    fn result(&self) -> Markup {
        let say = self.say;
        html! {
            section #result aria-label=(say.lay_result()) {
                @match &self.shown {
                    Shown::Kept(laid, seconds) => {
                        (self.laid(laid))
                        p.lead { (say.lay_kept(time(Duration::from_secs(*seconds)))) }
                    }
                    Shown::Found(found) => (self.found(found)),
                    Shown::Nothing(Ok(job)) => (nothing(say, job)),
                    Shown::Nothing(Err(words)) => {
                        h3.bad { (say.lay_cannot()) }
                        @for words in words { p { (capital(words)) } }
                    }
                    Shown::Searching(_) | Shown::Failed(_) => {}
                }
            }
        }
    }

    fn laid(&self, laid: &Laid) -> Markup {
        let say = self.say;
        let of = self.shown.made_of(self.loaded);
        let stem = file_stem(of, &laid.job);
        let mut query = query(self.asked);
        if !self.see.units_query().is_empty() {
            query = format!("{query}&{}", self.see.units_query());
        }
        html! {
            h3 { (say.say(words::say::LayOf { pairs: pairs(say, &self.asked.order.pairs), pieces: laid.lay.placements.len() })) }
            dl.figures {
                @for (what, figure) in figures(say, &laid.job, &laid.lay, self.asked.ends, self.system) {
                    div { dt { (what) } dd { (figure) } }
                }
            }
            p.downloads { (say.lay_take()) " "
                @for (ending, words) in [("dxf", say.lay_take_dxf()), ("pdf", say.lay_take_pdf()), ("svg", say.lay_take_svg())] {
                    a href={ (style_path(self.name)) "/cutting/file/" (stem) "." (ending) "?" (query) } download { (words) }
                    " "
                }
            }
        }
    }

    fn found(&self, found: &Outcome) -> Markup {
        let say = self.say;
        let took = time(found.took);
        let ended = match (found.laid.lay.ended, found.kept) {
            (Ended::Cancelled, true) => say.lay_ended_cancelled_no_shorter(took),
            (Ended::Cancelled, false) => say.lay_ended_cancelled(took),
            (Ended::Bound, true) => say.lay_ended_at_bound_no_shorter(took),
            (Ended::Bound, false) => say.lay_ended_at_bound(took),
            (Ended::Time | Ended::Places, true) => say.lay_ended_no_shorter(took),
            (Ended::Time | Ended::Places, false) => say.lay_ended(took),
        };
        html! {
            (self.laid(&found.laid))
            p.lead { (ended) }
            @if let Some(why) = &found.not_kept { p.bad { (say.lay_not_kept(why)) } }
            @if found.earlier {
                div.asks {
                    p { (say.lay_earlier()) }
                    ul { @for words in found.job.changed_since(say, self.loaded, self.system) { li { (words) } } }
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

/// What will happen, for somebody who looks for a lay the first time.
fn nothing(say: &'static Words, job: &LayJob) -> Markup {
    let pieces: usize = job.spread.problem.pieces.iter().map(|p| p.demand).sum();
    html! {
        h3 { (say.lay_nothing()) }
        @if pieces == 0 {
            p { (say.lay_nothing_of_cloth(&job.cloth.name)) }
        } @else {
            p { (say.lay_nothing_waits(pieces)) }
            p { (say.lay_nothing_advice()) }
        }
    }
}

/// The cloth with nothing on it, as long as it is wide twice over.
fn empty_cloth(say: &'static Words, job: &LayJob) -> Markup {
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
        svg.cloth viewBox=(view) role="img" aria-label=(say.lay_empty_cloth(&job.cloth.name)) {
            rect.ground x="0" y="0" width=(mm(long)) height=(mm(wide)) {}
            @if job.cloth.selvedge {
                rect x="0" y="0" width=(mm(long)) height=(mm(deep)) fill=(job.cloth.colour) {}
                rect x="0" y=(mm(wide - deep)) width=(mm(long)) height=(mm(deep)) fill=(job.cloth.colour) {}
            }
        }
    }
}
