//! The papers room: the pack with its pages and findings, and the files of the patterns.

use std::sync::Arc;
use std::time::Duration;

use jobs::{MadePack, MadePatterns, PackStage};
use maud::{Markup, html};
use style::Loaded;
use trade::System;
use words::Words;

use crate::addresses::{self, encoded, style_path};
use crate::answer::Fragment;
use crate::page::papers::requests::{USUAL_ROLL, kinds, today};
use crate::part::background_work::{bar, bytes, problems_place, time};
use crate::typed_fields::capital;
use crate::viewing::{Panel, Viewing};
use crate::work::pack::PackAsked;
use crate::work::patterns::PatternsAsked;
use crate::work::{Ended, Job, Task};

/// Everything the page shows.
pub(super) struct PapersPage<'a> {
    pub(super) say: &'static Words,
    pub(super) name: &'a str,
    pub(super) loaded: &'a Loaded,
    pub(super) see: &'a Viewing,
    pub(super) system: System,
    pub(super) pack: Option<Arc<Job<PackAsked>>>,
    pub(super) patterns: Option<Arc<Job<PatternsAsked>>>,
}

impl PapersPage<'_> {
    /// Whether anything goes on.
    pub(super) fn runs(&self) -> bool {
        let pack = self.pack.as_ref().map(|job| job.stand().ended.is_none());
        let patterns = self
            .patterns
            .as_ref()
            .map(|job| job.stand().ended.is_none());
        pack == Some(true) || patterns == Some(true)
    }

    /// What is read out: it changes when something happened, not with every figure.
    pub(super) fn said(&self) -> String {
        let say = self.say;
        let of_pack = [
            say.papers_said_pack_making(),
            say.papers_said_pack_made(),
            say.papers_said_pack_failed(),
            say.papers_said_pack_cancelled(),
        ];
        let of_patterns = [
            say.papers_said_patterns_making(),
            say.papers_said_patterns_made(),
            say.papers_said_patterns_failed(),
            say.papers_said_patterns_cancelled(),
        ];
        let pack = self.pack.as_ref().map(|job| said(job, of_pack));
        let patterns = self.patterns.as_ref().map(|job| said(job, of_patterns));
        let both: Vec<&str> = pack.into_iter().chain(patterns).collect();
        both.join(". ")
    }

    /// The parts that change.
    pub(super) fn fragments(&self) -> Vec<Fragment> {
        [
            ("pack-work", self.pack_work()),
            ("patterns-work", self.patterns_work()),
        ]
        .into_iter()
        .map(|(id, markup)| Fragment::new(id, markup))
        .collect()
    }

    /// The page below the head.
    pub(super) fn render(&self) -> Markup {
        let say = self.say;
        html! {
            div.papers-room data-work={ (style_path(self.name)) "/papers" } data-running[self.runs()] {
                section aria-labelledby="pack-title" {
                    h2 #pack-title { (say.papers_pack_title()) }
                    p.lead { (say.papers_pack_lead()) }
                    noscript { p.notice { (say.papers_no_script()) } }
                    (self.pack_form())
                    (self.pack_work())
                }
                section aria-labelledby="patterns-title" {
                    h2 #patterns-title { (say.papers_patterns_title()) }
                    p.lead { (say.papers_patterns_lead()) }
                    (self.patterns_form())
                    (self.patterns_work())
                }
                p #said .unseen role="status" {}
            }
        }
    }

    fn pack_form(&self) -> Markup {
        let say = self.say;
        let sizes = &self.loaded.style.sizes;
        let shown = self.see.size_of(&self.loaded.style);
        html! {
            form data-start="pack" {
                div.cells.two {
                    label.cell { span { (say.papers_pack_size()) }
                        select name="size" {
                            @for size in sizes.all() { option value=(size) selected[size == shown] { (size.waist) " × " (size.length) } }
                        }
                    }
                    label.cell { span { (say.papers_pack_date()) }
                        input type="text" name="date" value=(today()) autocomplete="off" spellcheck="false";
                    }
                }
                (problems_place())
                div.actions { button type="submit" { (say.papers_pack_make()) } }
            }
        }
    }

    fn pack_work(&self) -> Markup {
        let say = self.say;
        html! {
            div #pack-work .done-work {
                @match &self.pack {
                    None => p { (say.papers_pack_none()) },
                    Some(job) => {
                        @let stand = job.stand();
                        @match &stand.ended {
                            None => {
                                (pack_progress(say, stand.progress.as_deref(), stand.elapsed, stand.cancelled))
                                (cancel(say, "cancel-pack"))
                            }
                            Some(Ended::Made(pack)) => (self.pack_made(job, pack)),
                            Some(Ended::Failed(words)) => (failed(say.papers_pack_failed(), words)),
                            Some(Ended::Cancelled) => p { (say.papers_pack_cancelled()) },
                        }
                    }
                }
            }
        }
    }

    fn pack_made(&self, job: &Job<PackAsked>, pack: &MadePack) -> Markup {
        let say = self.say;
        let file = format!("{}.pdf", jobs::stem(&job.loaded));
        let address = format!("{}/papers/file/{file}", style_path(self.name));
        let order = &job.task.0;
        let size = order.size.unwrap_or(job.loaded.style.sizes.base);
        let findings = Viewing {
            panel: Panel::Findings,
            ..self.see.clone()
        };
        html! {
            h3 { (file) }
            p.downloads {
                a href=(address) download { (say.papers_download()) } " "
                a href={ (address) "?open=yes" } target="_blank" rel="noopener" { (say.papers_open()) }
            }
            dl.figures {
                div { dt { (say.papers_pages()) } dd { (say.say(words::say::PapersPagesSize { bytes: bytes(pack.pdf.len()), pages: pack.pages })) } }
                div { dt { (say.papers_version()) } dd { (say.say(words::say::PapersVersionDate { date: order.date.to_string(), revision: pack.revision })) } }
                div { dt { (say.papers_size()) } dd { (size) } }
                div { dt { (say.papers_errors()) }
                    dd {
                        @if pack.errors == 0 { (say.papers_errors_none()) }
                        @else { strong.bad { (pack.errors) } " " a href=(addresses::style(self.name, &findings)) { (say.papers_errors_see()) } }
                    }
                }
            }
            (self.since(job))
            div.contents {
                img.cover src={ (style_path(self.name)) "/papers/cover.svg?number=" (job.number) }
                    alt=(say.papers_cover(&job.loaded.style.style.name)) width="176" height="320";
                ol aria-label=(say.papers_contents()) {
                    @for (part, page) in &pack.parts { li { span { (part) } " " span.page-number { (page) } } }
                }
            }
        }
    }

    fn patterns_form(&self) -> Markup {
        let say = self.say;
        let sizes = &self.loaded.style.sizes;
        html! {
            form data-start="patterns" {
                fieldset.kinds { legend { (say.papers_kind()) }
                    @for (index, (word, title, what)) in kinds(say).into_iter().enumerate() {
                        label.kind { input type="radio" name="kind" value=(word) checked[index == 0];
                            span { (title) " " small { (what) } } }
                    }
                }
                fieldset.which { legend { (say.papers_sizes()) }
                    div.pairs-of {
                        table {
                            thead { tr { td {} @for waist in &sizes.waists { th scope="col" { (waist) } } } }
                            tbody {
                                @for length in &sizes.lengths {
                                    tr {
                                        th scope="row" { (length) }
                                        @for waist in &sizes.waists {
                                            @let size = style::Size::of(*waist, *length);
                                            td { input type="checkbox" name="sizes" value=(size) aria-label=(size) checked[size == sizes.base]; }
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
                div.cells.two {
                    label.cell { span { (say.papers_width()) }
                        input type="text" name="width" value=(USUAL_ROLL.show(self.system)) autocomplete="off" spellcheck="false"; }
                    label.tick { input type="checkbox" name="nested" value="yes"; (say.papers_nested()) }
                }
                (problems_place())
                div.actions { button type="submit" { (say.papers_make()) } }
            }
        }
    }

    fn patterns_work(&self) -> Markup {
        let say = self.say;
        html! {
            div #patterns-work .done-work {
                @match &self.patterns {
                    None => p { (say.papers_patterns_none()) },
                    Some(job) => {
                        @let stand = job.stand();
                        @match &stand.ended {
                            None => {
                                @match (stand.elapsed, stand.progress.as_deref()) {
                                    (None, _) => (waiting(say)),
                                    (Some(_), told) => {
                                        @let (done, of) = told.copied().unwrap_or((0, 1));
                                        (bar(say.papers_patterns_progress(), Some(done as f64 / of.max(1) as f64)))
                                        p.time { @if stand.cancelled { (say.papers_patterns_ending()) } @else { (say.say(words::say::PapersPatternsMade { made: done, sizes: of })) } }
                                    }
                                }
                                (cancel(say, "cancel-patterns"))
                            }
                            Some(Ended::Made(made)) => (self.patterns_made(job, made)),
                            Some(Ended::Failed(words)) => (failed(say.papers_patterns_failed(), words)),
                            Some(Ended::Cancelled) => p { (say.papers_patterns_cancelled()) },
                        }
                    }
                }
            }
        }
    }

    fn patterns_made(&self, job: &Job<PatternsAsked>, made: &MadePatterns) -> Markup {
        let say = self.say;
        html! {
            h3 { (say.papers_files(made.files.len())) }
            @if !made.left_out.is_empty() {
                p.asks { (say.papers_left_out(made.left_out.join(", "))) }
            }
            (self.since(job))
            ul.files {
                @for file in &made.files {
                    li {
                        a href={ (style_path(self.name)) "/papers/file/" (encoded(&file.name)) } download { (file.name) }
                        " " small {
                            @let size = bytes(file.bytes.len());
                            @match &file.plan {
                                Some(plan) => (say.say(words::say::PapersFilePages { bytes: size, pages: plan.pages.len() })),
                                None => (size),
                            }
                        }
                    }
                }
            }
        }
    }

    /// Which state of the style was used, where it is another by now.
    fn since<T: Task>(&self, job: &Job<T>) -> Markup {
        let say = self.say;
        html! {
            @if !job.is_of(self.loaded) {
                div.asks {
                    p { (say.papers_earlier()) }
                    ul { @for words in job.changed_since(say, self.loaded, self.system) { li { (words) } } }
                }
            }
        }
    }
}

/// How a job stands, in the words for one that goes on, was made, failed, or was cancelled.
fn said<T: Task>(
    job: &Job<T>,
    [making, made, failed, cancelled]: [&'static str; 4],
) -> &'static str {
    match job.stand().ended {
        None => making,
        Some(Ended::Made(_)) => made,
        Some(Ended::Failed(_)) => failed,
        Some(Ended::Cancelled) => cancelled,
    }
}

fn waiting(say: &'static Words) -> Markup {
    html! {
        (bar(say.papers_waits(), None))
        p.time { (say.work_waits()) }
    }
}

/// The button is never barred while it is there, so that the keyboard is not lost; cancelling twice does no harm.
fn cancel(say: &'static Words, action: &str) -> Markup {
    html! { p.actions { button type="button" id=(action) data-cancel=(action) { (say.papers_cancel()) } } }
}

fn failed(what: &str, words: &[String]) -> Markup {
    html! {
        h3.bad { (what) }
        @for words in words { p { (capital(words)) } }
    }
}

/// How far a pack is. Sizes take about a third of it, lays another, setting the pages the rest.
fn pack_progress(
    say: &'static Words,
    stage: Option<&PackStage>,
    elapsed: Option<Duration>,
    cancelled: bool,
) -> Markup {
    let Some(elapsed) = elapsed else {
        return waiting(say);
    };
    let part = |done: usize, of: usize| done as f64 / of.max(1) as f64 / 3.0;
    let (share, words) = match stage {
        None => (0.0, say.papers_pack_begins().to_owned()),
        Some(PackStage::Sizes(done, of)) => (
            part(*done, *of),
            say.say(words::say::PapersPackSews {
                size: done + 1,
                sizes: *of,
            }),
        ),
        Some(PackStage::Lays(done, of)) => (
            1.0 / 3.0 + part(*done, *of),
            say.say(words::say::PapersPackLays {
                cloth: done + 1,
                cloths: *of,
            }),
        ),
        Some(PackStage::Pages) => (2.0 / 3.0, say.papers_pack_sets().to_owned()),
    };
    html! {
        (bar(say.papers_pack_progress(), Some(share)))
        p.time { @if cancelled { (say.papers_pack_ending()) } @else { (words) } " " (say.papers_so_far(time(elapsed))) }
    }
}
