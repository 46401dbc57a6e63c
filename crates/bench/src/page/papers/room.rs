//! The papers room: the pack with its pages and findings, and the files of the patterns.

use std::sync::Arc;
use std::time::Duration;

use jobs::{MadePack, MadePatterns, PackStage};
use maud::{Markup, html};
use style::Loaded;
use trade::System;

use super::asked::{KINDS, USUAL_ROLL, today};
use crate::answer::Fragment;
use crate::field::capital;
use crate::part::work::{bar, bytes, problems_place, time};
use crate::route::{self, encoded, style_path};
use crate::see::{Panel, See};
use crate::state::Bench;
use crate::work::pack::PackAsked;
use crate::work::patterns::PatternsAsked;
use crate::work::{Ended, Job, Task};

/// Everything the page shows.
pub(super) struct PapersPage<'a> {
    name: &'a str,
    loaded: &'a Loaded,
    see: &'a See,
    system: System,
    pack: Option<Arc<Job<PackAsked>>>,
    patterns: Option<Arc<Job<PatternsAsked>>>,
}

impl<'a> PapersPage<'a> {
    pub(super) fn of(bench: &Bench, name: &'a str, loaded: &'a Loaded, see: &'a See) -> Self {
        Self {
            name,
            loaded,
            see,
            system: see.system(&loaded.collection),
            pack: bench.works().packs.of(name),
            patterns: bench.works().patterns.of(name),
        }
    }

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
        let pack = self.pack.as_ref().map(|job| said("The pack", job));
        let patterns = self.patterns.as_ref().map(|job| said("The patterns", job));
        let both: Vec<String> = pack.into_iter().chain(patterns).collect();
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
        html! {
            div.papers-room data-work={ (style_path(self.name)) "/papers" } data-running[self.runs()] {
                section aria-labelledby="pack-title" {
                    h2 #pack-title { "Production pack" }
                    p.lead { "One document a workroom sews from: chart and how it is measured, sewing order, every seam and row, yarn plan, plates, pieces, lays, materials and cautions." }
                    noscript { p.notice { "Making papers needs the bench’s scripts, which this browser does not run." } }
                    (self.pack_form())
                    (self.pack_work())
                }
                section aria-labelledby="patterns-title" {
                    h2 #patterns-title { "Patterns" }
                    p.lead { "The pieces as they are cut, in true millimetres." }
                    (self.patterns_form())
                    (self.patterns_work())
                }
                p #said .unseen role="status" {}
            }
        }
    }

    fn pack_form(&self) -> Markup {
        let sizes = &self.loaded.style.sizes;
        let shown = self.see.size_of(&self.loaded.style);
        html! {
            form data-start="pack" {
                div.cells.two {
                    label.cell { span { "Size that is drawn and counted" }
                        select name="size" {
                            @for size in sizes.all() { option value=(size) selected[size == shown] { (size.waist) " × " (size.length) } }
                        }
                    }
                    label.cell { span { "Date on every page" }
                        input type="text" name="date" value=(today()) autocomplete="off" spellcheck="false";
                    }
                }
                (problems_place())
                div.actions { button type="submit" { "Make the pack" } }
            }
        }
    }

    fn pack_work(&self) -> Markup {
        html! {
            div #pack-work .done-work {
                @match &self.pack {
                    None => p { "The pack is made in the background; you may go on working. It takes some seconds." },
                    Some(job) => {
                        @let stand = job.stand();
                        @match &stand.ended {
                            None => {
                                (pack_progress(stand.progress.as_deref(), stand.elapsed, stand.cancelled))
                                (cancel("cancel-pack"))
                            }
                            Some(Ended::Made(pack)) => (self.pack_made(job, pack)),
                            Some(Ended::Failed(words)) => (failed("The pack could not be made", words)),
                            Some(Ended::Cancelled) => p { "The pack was cancelled." },
                        }
                    }
                }
            }
        }
    }

    fn pack_made(&self, job: &Job<PackAsked>, pack: &MadePack) -> Markup {
        let file = format!("{}.pdf", jobs::stem(&job.loaded));
        let address = format!("{}/papers/file/{file}", style_path(self.name));
        let order = &job.task.0;
        let size = order.size.unwrap_or(job.loaded.style.sizes.base);
        let findings = See {
            panel: Panel::Findings,
            ..self.see.clone()
        };
        html! {
            h3 { (file) }
            p.downloads {
                a href=(address) download { "Download" } " "
                a href={ (address) "?open=yes" } target="_blank" rel="noopener" { "Open in a new tab" }
            }
            dl.figures {
                div { dt { "Pages" } dd { (pack.pages) ", " (bytes(pack.pdf.len())) } }
                div { dt { "Version" } dd { (pack.revision) ", of " (order.date) } }
                div { dt { "Drawn and counted in" } dd { (size) } }
                div { dt { "Findings of grade error" }
                    dd {
                        @if pack.errors == 0 { "none" }
                        @else { strong.bad { (pack.errors) } " " a href=(route::style(self.name, &findings)) { "see them" } }
                    }
                }
            }
            (self.since(job))
            div.contents {
                img.cover src={ (style_path(self.name)) "/papers/cover.svg?number=" (job.number) }
                    alt={ "Front of " (job.loaded.style.style.name) ", as in the pack" } width="176" height="320";
                ol aria-label="What is in it" {
                    @for (part, page) in &pack.parts { li { span { (part) } " " span.page-number { (page) } } }
                }
            }
        }
    }

    fn patterns_form(&self) -> Markup {
        let sizes = &self.loaded.style.sizes;
        html! {
            form data-start="patterns" {
                fieldset.kinds { legend { "Kind of file" }
                    @for (index, (word, title, what)) in KINDS.iter().enumerate() {
                        label.kind { input type="radio" name="kind" value=(word) checked[index == 0];
                            span { (title) " " small { (what) } } }
                    }
                }
                fieldset.which { legend { "Sizes: none chosen makes all of them" }
                    div.pairs-of {
                        table {
                            thead { tr { td {} @for waist in &sizes.waists { th scope="col" { (waist) } } } }
                            tbody {
                                @for length in &sizes.lengths {
                                    tr {
                                        th scope="row" { (length) }
                                        @for waist in &sizes.waists {
                                            @let size = style::Size::new(*waist, *length);
                                            td { input type="checkbox" name="sizes" value=(size) aria-label=(size) checked[size == sizes.base]; }
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
                div.cells.two {
                    label.cell { span { "Width of the roll, for HPGL and roll" }
                        input type="text" name="width" value=(USUAL_ROLL.show(self.system)) autocomplete="off" spellcheck="false"; }
                    label.tick { input type="checkbox" name="nested" value="yes"; "On PDF: all sizes on each other, in one file" }
                }
                (problems_place())
                div.actions { button type="submit" { "Make the files" } }
            }
        }
    }

    fn patterns_work(&self) -> Markup {
        html! {
            div #patterns-work .done-work {
                @match &self.patterns {
                    None => p { "Files are made in the background and stand here until the bench is ended or others are made." },
                    Some(job) => {
                        @let stand = job.stand();
                        @match &stand.ended {
                            None => {
                                @match (stand.elapsed, stand.progress.as_deref()) {
                                    (None, _) => (waiting()),
                                    (Some(_), told) => {
                                        @let (done, of) = told.copied().unwrap_or((0, 1));
                                        (bar("The files", Some(done as f64 / of.max(1) as f64)))
                                        p.time { @if stand.cancelled { "Ending." } @else { (done) " of " (of) " sizes." } }
                                    }
                                }
                                (cancel("cancel-patterns"))
                            }
                            Some(Ended::Made(made)) => (self.patterns_made(job, made)),
                            Some(Ended::Failed(words)) => (failed("The files could not be made", words)),
                            Some(Ended::Cancelled) => p { "The files were cancelled." },
                        }
                    }
                }
            }
        }
    }

    fn patterns_made(&self, job: &Job<PatternsAsked>, made: &MadePatterns) -> Markup {
        let count = made.files.len();
        html! {
            h3 { (count) @if count == 1 { " file" } @else { " files" } }
            @if !made.left_out.is_empty() {
                p.asks { "Left out, for not every size has it alike: " (made.left_out.join(", ")) ". Print these size by size." }
            }
            (self.since(job))
            ul.files {
                @for file in &made.files {
                    li {
                        a href={ (style_path(self.name)) "/papers/file/" (encoded(&file.name)) } download { (file.name) }
                        " " small {
                            @if let Some(plan) = &file.plan {
                                (plan.pages.len()) @if plan.pages.len() == 1 { " page, " } @else { " pages, " }
                            }
                            (bytes(file.bytes.len()))
                        }
                    }
                }
            }
        }
    }

    /// Which state of the style was used, where it is another by now.
    fn since<T: Task>(&self, job: &Job<T>) -> Markup {
        html! {
            @if !job.is_of(self.loaded) {
                div.asks {
                    p { "Made of an earlier state of the style. Since then changed:" }
                    ul { @for words in job.changed_since(self.loaded, self.system) { li { (words) } } }
                }
            }
        }
    }
}

fn said<T: Task>(what: &str, job: &Job<T>) -> String {
    let how = match job.stand().ended {
        None => "being made",
        Some(Ended::Made(_)) => "made",
        Some(Ended::Failed(_)) => "not made, for a reason said on the page",
        Some(Ended::Cancelled) => "cancelled",
    };
    format!("{what}: {how}")
}

fn waiting() -> Markup {
    html! {
        (bar("It waits", None))
        p.time { "It begins as soon as there is room: two jobs go on at once." }
    }
}

/// The button is never barred while it is there, so that the keyboard is not lost; cancelling twice does no harm.
fn cancel(action: &str) -> Markup {
    html! { p.actions { button type="button" id=(action) data-cancel=(action) { "Cancel" } } }
}

fn failed(what: &str, words: &[String]) -> Markup {
    html! {
        h3.bad { (what) }
        @for words in words { p { (capital(words)) } }
    }
}

/// How far a pack is. Sizes take about a third of it, lays another, setting the pages the rest.
fn pack_progress(stage: Option<&PackStage>, elapsed: Option<Duration>, cancelled: bool) -> Markup {
    let Some(elapsed) = elapsed else {
        return waiting();
    };
    let part = |done: usize, of: usize| done as f64 / of.max(1) as f64 / 3.0;
    let (share, words) = match stage {
        None => (0.0, "Beginning.".to_owned()),
        Some(PackStage::Sizes(done, of)) => (
            part(*done, *of),
            format!("Sewing size {} of {of}.", done + 1),
        ),
        Some(PackStage::Lays(done, of)) => (
            1.0 / 3.0 + part(*done, *of),
            format!("Laying cloth {} of {of}.", done + 1),
        ),
        Some(PackStage::Pages) => (2.0 / 3.0, "Drawing and setting the pages.".to_owned()),
    };
    html! {
        (bar("The pack", Some(share)))
        p.time { @if cancelled { "Ending; the pages being set are finished first." } @else { (words) } " " (time(elapsed)) " so far." }
    }
}
