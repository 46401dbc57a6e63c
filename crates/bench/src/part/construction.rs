//! The seams: how the plies lie, and every row of stitches.

use maud::{Markup, html};
use style::known::{self, SeamName};
use style::{Lap, RowSpec, Seam};

use crate::field::{Chosen, Show, capital, problem_place, stitch, swatch, yarn};
use crate::see::{Panel, See};

pub(crate) fn render(show: &Show<'_>, see: &See) -> Markup {
    html! {
        section #construction aria-labelledby="construction-title" hidden[see.panel != Panel::Construction] {
            h2 #construction-title { "Seams" }
            p.lead { "Rows are counted from the outermost; an offset is measured from the seam line." }
            @for seam in show.loaded.style.all_seams() {
                @if let Some(known) = known::seam_name(&seam.name) { (section(show, see, &seam, known)) }
            }
        }
    }
}

fn section(show: &Show<'_>, see: &See, seam: &Seam, known: &SeamName) -> Markup {
    let part = format!("seam:{}", seam.name);
    let spec = show.loaded.style.seams.get(&seam.name);
    let like = spec
        .and_then(|spec| spec.like.as_deref())
        .and_then(known::seam_name);
    html! {
        details.seam id={ "seam-" (seam.name) } data-for={ (&part) " fixing:" (seam.name) } data-name={ (capital(known.title)) ", " (seam.construction) } open[see.part.as_ref() == Some(&part)] {
            summary {
                span.name { (capital(known.title)) }
                span.how { (seam.construction) }
                span.rows { (summary(show, &seam.rows)) }
            }
            div.body {
                @if let Some(like) = like {
                    p.lead { "Sewn like the " (like.title) ", apart from what is changed here." }
                }
                div.pair {
                    (construction(seam, known))
                    (lap(seam, known))
                }
                @for (index, row) in seam.rows.iter().enumerate() {
                    (stitch_row(show, &seam.name, known.title, index, row, seam.rows.len() > 1))
                }
                @if let Some(last) = seam.rows.last() { (add_row(&seam.name, seam.rows.len(), last)) }
                (problem_place(&part))
            }
        }
    }
}

/// A seam's rows at a glance: "401 × 2" and the colours of their yarns.
fn summary(show: &Show<'_>, rows: &[RowSpec]) -> Markup {
    html! {
        @for row in rows {
            span {
                @if let Some(yarn) = show.collection().yarns.get(&row.yarn) { (swatch(yarn.colour)) }
                (row.stitch)
            }
        }
    }
}

fn construction(seam: &Seam, known: &SeamName) -> Markup {
    let choices = known.constructions.iter();
    let chosen = Chosen {
        path: format!("seams.{}.construction", seam.name),
        label: format!("{}: construction", capital(known.title)),
        choices: choices
            .map(|each| (each.word().to_owned(), each.word().to_owned()))
            .collect(),
        chosen: seam.construction.word().to_owned(),
    };
    html! { label { span { "Construction" } (chosen.render()) } }
}

fn lap(seam: &Seam, known: &SeamName) -> Markup {
    let (Some(usual), Some(lap)) = (known.usual_lap, seam.lap) else {
        return html! {};
    };
    let turned = Lap {
        over: usual.under,
        under: usual.over,
    };
    let word = |lap: Lap| lap.to_string();
    let chosen = Chosen {
        path: format!("seams.{}.lap", seam.name),
        label: format!("{}: which ply lies on top", capital(known.title)),
        choices: [usual, turned].map(|lap| (word(lap), word(lap))).into(),
        chosen: word(lap),
    };
    html! { label { span { "Lap" } (chosen.render()) } }
}

fn stitch_row(
    show: &Show<'_>,
    seam: &str,
    title: &str,
    index: usize,
    row: &RowSpec,
    several: bool,
) -> Markup {
    let path = |key: &str| format!("seams.{seam}.rows[{index}].{key}");
    let number = index + 1;
    let label = |what: &str| format!("{}, row {number}: {what}", capital(title));
    // What the file says stands under the seam the rows are taken from; the field's path is this seam's own.
    let shown_from = rows_of(show, seam);
    let written = |key: &str| format!("seams.{shown_from}.rows[{index}].{key}");
    let colour = |key: &str| show.collection().yarns.get(key).map(|yarn| yarn.colour);
    let mut density = show.density(written("density"), label("density"), row.density);
    let mut offset = show.optional(
        written("offset"),
        label("offset from the seam line"),
        Some(row.offset),
        &trade::Length::ZERO.show(show.system),
    );
    (density.path, offset.path) = (path("density"), path("offset"));
    let needle = yarn(
        show.collection(),
        path("yarn"),
        label("needle yarn"),
        &row.yarn,
    );
    let under = yarn(
        show.collection(),
        path("under"),
        label("under yarn"),
        &row.under,
    );
    let of = format!("seams.{seam}.rows[{index}]");
    html! {
        div.row role="group" aria-label={ "Row " (number) } {
            p.number aria-hidden="true" { (number) }
            label.stitch { span { "Stitch" } (stitch(path("stitch"), label("stitch type"), row.stitch).render()) }
            label { span { "Density" } (density.render()) }
            label { span { "Offset" } (offset.render()) }
            @if several {
                button.small type="button" data-remove=(of) aria-label={ "Take out row " (number) " of the " (title) } { "×" }
            }
            label.needle { span { @if let Some(colour) = colour(&row.yarn) { (swatch(colour)) } "Needle yarn" } (needle.render()) }
            label.under { span { @if let Some(colour) = colour(&row.under) { (swatch(colour)) } "Under yarn" } (under.render()) }
        }
    }
}

/// The seam whose rows a seam shows: itself, or the one it is like.
fn rows_of<'a>(show: &Show<'a>, seam: &'a str) -> &'a str {
    let seams = &show.loaded.style.seams;
    let mut name = seam;
    // A chain of seams is at most as long as there are seams.
    for _ in 0..seams.len() {
        match seams.get(name) {
            Some(spec) if spec.rows.is_none() => match spec.like.as_deref() {
                Some(like) => name = like,
                None => break,
            },
            _ => break,
        }
    }
    name
}

/// A button that adds a row like the last one.
fn add_row(seam: &str, count: usize, last: &RowSpec) -> Markup {
    html! {
        button.small type="button" data-insert={ "seams." (seam) ".rows[" (count) "]" }
            data-value=(serde_json::json!({
                "stitch": last.stitch,
                "density": last.density.to_string(),
                "yarn": last.yarn,
                "under": last.under,
                "offset": last.offset.to_string(),
            })) { "Add a row" }
    }
}
