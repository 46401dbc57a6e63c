//! The seams: how the plies lie, and every row of stitches.

use maud::{Markup, html};
use serde_json::{Value, json};
use sewing::{Garment, describe};
use style::known::{self, Needed, SeamName};
use style::{Construction, Lap, RowEnding, RowSpec, Seam};
use trade::Length;

use crate::choice::{self, Choice, Chosen, insert, remove, set, stitch, yarn};
use crate::field::{Show, capital, problem_place, swatch};
use crate::have::mark;
use crate::part::drawing;
use crate::see::{Panel, See};

/// The most rows a seam can have.
const MOST_ROWS: usize = 8;

pub(crate) fn render(show: &Show<'_>, garment: &Garment, see: &See) -> Markup {
    html! {
        section #construction aria-labelledby="construction-title" hidden[see.panel != Panel::Construction] {
            h2 #construction-title { "Seams" }
            p.lead { "Rows are counted from the outermost; an offset is measured from the seam line." }
            @for seam in show.loaded.style.all_seams() {
                @if let Some(known) = known::seam_name(&seam.name) { (section(show, garment, see, &seam, known)) }
            }
            (add_seams(show))
        }
    }
}

fn section(show: &Show<'_>, garment: &Garment, see: &See, seam: &Seam, known: &SeamName) -> Markup {
    let part = format!("seam:{}", seam.name);
    let open = see.part.as_ref() == Some(&part);
    let inside = html! {
        summary {
            span.name { (capital(known.title)) }
            span.how { (seam.construction) }
            span.rows { (summary(show, &seam.rows)) }
        }
        div.body {
            // A section is drawn for the one seam that is looked at.
            @if open && see.panel == Panel::Construction { (drawn(garment, seam)) }
            div.pair {
                (construction(seam, known))
                (lap(seam, known))
                (like(show, seam, known))
            }
            (unsuitable(known))
            @for (index, row) in seam.rows.iter().enumerate() {
                (stitch_row(show, &seam.name, known.title, index, row, seam.rows.len() > 1))
            }
            div.adding {
                @if let Some(last) = seam.rows.last().filter(|_| seam.rows.len() < MOST_ROWS) {
                    (add_row(&seam.name, seam.rows.len(), last))
                }
                @if removable(show, known) {
                    (choice::button(&[remove(&format!("seams.{}", seam.name))], "Take the seam out", Some(&format!("Take out the seam {}", known.title))))
                }
            }
            (problem_place(&part))
        }
    };
    html! {
        // A seam with the mark it had is passed over when the page is brought up to date.
        details.seam name="seams" id={ "seam-" (seam.name) } data-for={ (&part) " fixing:" (seam.name) } data-name={ (capital(known.title)) ", " (seam.construction) }
            data-same=(mark(&inside.0)) open[open] { (inside) }
    }
}

/// The section of a seam, and what a construction list says about it.
fn drawn(garment: &Garment, seam: &Seam) -> Markup {
    let Some(seam) = garment.seams.iter().find(|each| each.name == seam.name) else {
        return html! {};
    };
    let said = describe(garment, seam);
    let facts: [(&str, &str); 5] = [
        ("Class", &said.class),
        ("Machine", said.machine),
        ("Plies", &said.plies),
        ("Allowances", &said.allowances),
        ("Lies", &said.lies),
    ];
    html! {
        @if let Some(sheet) = drawing::section(garment, seam) { (sheet) }
        dl.facts {
            @for (term, words) in facts {
                @if !words.is_empty() { div { dt { (term) } dd { (words) } } }
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
        choices: choices.map(|each| Choice::word(each.word())).collect(),
        chosen: seam.construction.word().to_owned(),
    };
    html! { label { span { "Construction" } (chosen.render()) } }
}

/// Every construction this seam cannot have, and why.
fn unsuitable(known: &SeamName) -> Markup {
    let refused = Construction::WORDS
        .iter()
        .filter_map(|(word, each)| Some((*word, known.refuses(*each)?)));
    html! {
        details.why {
            summary { "Why no other" }
            dl { @for (word, why) in refused { dt { (word) } dd { (capital(&why)) } } }
        }
    }
}

fn lap(seam: &Seam, known: &SeamName) -> Markup {
    let (Some(usual), Some(lap)) = (known.usual_lap, seam.lap) else {
        return html! {};
    };
    let turned = Lap {
        over: usual.under,
        under: usual.over,
    };
    let chosen = Chosen {
        path: format!("seams.{}.lap", seam.name),
        label: format!("{}: which ply lies on top", capital(known.title)),
        choices: [usual, turned]
            .map(|lap| Choice::word(&lap.to_string()))
            .into(),
        chosen: lap.to_string(),
    };
    html! { label { span { "Lap" } (chosen.render()) } }
}

/// From which other seam the construction and the rows are taken, if from any.
fn like(show: &Show<'_>, seam: &Seam, known: &SeamName) -> Markup {
    let seams = &show.loaded.style.seams;
    let path = |key: &str| format!("seams.{}.{key}", seam.name);
    let spec = seams.get(&seam.name);
    let now = spec.and_then(|spec| spec.like.clone()).unwrap_or_default();
    let mut itself = Choice::named("", "in its own way");
    if let Some(row) = seam.rows.first() {
        // A row that is changed gives the seam rows of its own, in the words of the other's.
        itself.edits = vec![
            set(&path("construction"), seam.construction.word()),
            set(&path("rows[0].stitch"), row.stitch.code()),
            remove(&path("like")),
        ];
    }
    let suits = |other: &Seam| {
        other.name != seam.name
            && known.constructions.contains(&other.construction)
            && !follows(show, &other.name, &seam.name)
    };
    let others = show.loaded.style.all_seams().filter(suits);
    let others = others.filter_map(|other| {
        let title = known::seam_name(&other.name)?.title;
        let mut choice = Choice::named(&other.name, &format!("as the {title}"));
        choice.edits = vec![set(&path("like"), other.name.as_str())];
        if spec.is_some_and(|spec| spec.construction.is_some()) {
            choice.edits.push(remove(&path("construction")));
        }
        if spec.is_some_and(|spec| spec.rows.is_some()) {
            choice.edits.push(remove(&path("rows")));
        }
        Some(choice)
    });
    let chosen = Chosen {
        path: path("like"),
        label: format!(
            "{}: where rows and construction come from",
            capital(known.title)
        ),
        choices: [itself].into_iter().chain(others).collect(),
        chosen: now,
    };
    html! { label { span { "Sewn" } (chosen.render()) } }
}

/// Whether a seam takes what it does not say from another, at whatever remove.
fn follows(show: &Show<'_>, seam: &str, from: &str) -> bool {
    let seams = &show.loaded.style.seams;
    let mut next = seams.get(seam).and_then(|spec| spec.like.as_deref());
    // A chain of seams is at most as long as there are seams.
    for _ in 0..seams.len() {
        match next {
            Some(name) if name == from => return true,
            Some(name) => next = seams.get(name).and_then(|spec| spec.like.as_deref()),
            None => return false,
        }
    }
    false
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
        &Length::ZERO.show(show.system),
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
            @if several { (choice::button(&[remove(&of)], "×", Some(&format!("Take out row {number} of the {title}")))) }
            label.needle { span { @if let Some(colour) = colour(&row.yarn) { (swatch(colour)) } "Needle yarn" } (needle.render()) }
            label.under { span { @if let Some(colour) = colour(&row.under) { (swatch(colour)) } "Under yarn" } (under.render()) }
            label.needle { span { "Begins" } (ending(path("begin"), label("how it begins"), row.begin)) }
            label.under { span { "Ends" } (ending(path("end"), label("how it ends"), row.end)) }
        }
    }
}

/// How a row begins or ends.
fn ending(path: String, label: String, stated: Option<RowEnding>) -> Markup {
    let words = RowEnding::WORDS.iter().map(|(word, _)| Choice::word(word));
    let usual = Choice::named("", "as usual on this seam");
    Chosen {
        path,
        label,
        choices: [usual].into_iter().chain(words).collect(),
        chosen: stated.map_or("", RowEnding::word).to_owned(),
    }
    .render()
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
    let row = json!({
        "stitch": last.stitch,
        "density": last.density.to_string(),
        "yarn": last.yarn,
        "under": last.under,
        "offset": last.offset.to_string(),
    });
    choice::button(
        &[insert(&format!("seams.{seam}.rows[{count}]"), row)],
        "Add a row",
        None,
    )
}

/// Whether the style can be without the seam.
fn removable(show: &Show<'_>, known: &SeamName) -> bool {
    match known.needed {
        Needed::Always => false,
        Needed::WithExtraPocket => show.loaded.style.pockets.extra.is_none(),
        Needed::Optional => true,
    }
}

/// The seams a style may have and this one has not.
fn add_seams(show: &Show<'_>) -> Markup {
    let doc = &show.loaded.style;
    let missing = known::SEAMS
        .iter()
        .filter(|known| known.needed == Needed::Optional && !doc.seams.contains_key(known.name));
    // Sewn with the yarn of the bartacks until the maker says otherwise: every style names one.
    let edit = |known: &SeamName| -> Option<Value> {
        let construction = known.constructions.first()?;
        let (stitch, offset) = match construction {
            Construction::Overlocked => ("504", "0 mm"),
            Construction::LaidOn => ("301", "3 mm"),
            _ => ("301", "0 mm"),
        };
        let row = json!({
            "stitch": stitch, "density": "8 /in", "yarn": doc.bartacks.yarn, "under": doc.bartacks.under, "offset": offset,
        });
        let seam = json!({ "construction": construction.word(), "rows": [row] });
        Some(set(&format!("seams.{}", known.name), seam))
    };
    html! {
        div.adding {
            @for known in missing {
                @if let Some(edit) = edit(known) {
                    (choice::button(&[edit], &format!("Add {}", known.title), Some(&format!("Add the seam {}", known.title))))
                }
            }
        }
    }
}
