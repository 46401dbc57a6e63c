//! The seams: how the plies lie, and every row of stitches.

use maud::{Markup, html};
use serde_json::{Value, json};
use sewing::{Garment, describe};
use style::known::{self, Needed, SeamName};
use style::{Construction, Lap, RowEnding, RowSpec, Seam};
use trade::Length;
use words::Words;

use crate::choice::{self, Choice, Chosen, insert, remove, set, stitch, yarn};
use crate::field::{Show, capital, problem_place, swatch};
use crate::fingerprint::mark;
use crate::part::drawing;
use crate::see::{Panel, See};

/// The most rows a seam can have.
const MOST_ROWS: usize = 8;

pub(crate) fn render(show: &Show<'_>, garment: &Garment, see: &See) -> Markup {
    let say = show.say;
    html! {
        section #construction aria-labelledby="construction-title" hidden[see.panel != Panel::Construction] {
            h2 #construction-title { (say.construction_title()) }
            p.lead { (say.construction_lead()) }
            @for seam in show.loaded.style.all_seams() {
                @if let Some(known) = known::seam_name(&seam.name) { (section(show, garment, see, &seam, known)) }
            }
            (add_seams(show))
        }
    }
}

fn section(show: &Show<'_>, garment: &Garment, see: &See, seam: &Seam, known: &SeamName) -> Markup {
    let say = show.say;
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
            @if open && see.panel == Panel::Construction { (drawn(say, garment, seam)) }
            div.pair {
                (construction(say, seam, known))
                (lap(say, seam, known))
                (like(show, seam, known))
            }
            (unsuitable(say, known))
            @for (index, row) in seam.rows.iter().enumerate() {
                (stitch_row(show, &seam.name, known.title, index, row, seam.rows.len() > 1))
            }
            div.adding {
                @if let Some(last) = seam.rows.last().filter(|_| seam.rows.len() < MOST_ROWS) {
                    (add_row(say, &seam.name, seam.rows.len(), last))
                }
                @if removable(show, known) {
                    (choice::button(&[remove(&format!("seams.{}", seam.name))], say.construction_remove(), Some(&say.construction_remove_label(known.title))))
                }
            }
            (problem_place(&part))
        }
    };
    html! {
        // A seam with the mark it had is passed over when the page is brought up to date.
        details.seam name="seams" id={ "seam-" (seam.name) } data-for={ (&part) " fixing:" (seam.name) } data-name=(say.construction_seam(seam.construction, capital(known.title)))
            data-same=(mark(&inside.0)) open[open] { (inside) }
    }
}

/// The section of a seam, and what a construction list says about it.
fn drawn(say: &'static Words, garment: &Garment, seam: &Seam) -> Markup {
    let Some(seam) = garment.seams.iter().find(|each| each.name == seam.name) else {
        return html! {};
    };
    let said = describe(garment, seam);
    let facts: [(&str, &str); 5] = [
        (say.construction_class(), &said.class),
        (say.construction_machine(), said.machine),
        (say.construction_plies(), &said.plies),
        (say.construction_allowances(), &said.allowances),
        (say.construction_lies(), &said.lies),
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

fn construction(say: &'static Words, seam: &Seam, known: &SeamName) -> Markup {
    let choices = known.constructions.iter();
    let chosen = Chosen {
        path: format!("seams.{}.construction", seam.name),
        label: say.construction_how_label(capital(known.title)),
        choices: choices.map(|each| Choice::word(each.word())).collect(),
        chosen: seam.construction.word().to_owned(),
    };
    html! { label { span { (say.construction_how()) } (chosen.render()) } }
}

/// Every construction this seam cannot have, and why.
fn unsuitable(say: &'static Words, known: &SeamName) -> Markup {
    let refused = Construction::WORDS
        .iter()
        .filter_map(|(word, each)| Some((*word, known.refuses(*each)?)));
    html! {
        details.why {
            summary { (say.construction_refused()) }
            dl { @for (word, why) in refused { dt { (word) } dd { (capital(&why)) } } }
        }
    }
}

fn lap(say: &'static Words, seam: &Seam, known: &SeamName) -> Markup {
    let (Some(usual), Some(lap)) = (known.usual_lap, seam.lap) else {
        return html! {};
    };
    let turned = Lap {
        over: usual.under,
        under: usual.over,
    };
    let chosen = Chosen {
        path: format!("seams.{}.lap", seam.name),
        label: say.construction_lap_label(capital(known.title)),
        choices: [usual, turned]
            .map(|lap| Choice::word(&lap.to_string()))
            .into(),
        chosen: lap.to_string(),
    };
    html! { label { span { (say.construction_lap()) } (chosen.render()) } }
}

/// From which other seam the construction and the rows are taken, if from any.
fn like(show: &Show<'_>, seam: &Seam, known: &SeamName) -> Markup {
    let say = show.say;
    let seams = &show.loaded.style.seams;
    let path = |key: &str| format!("seams.{}.{key}", seam.name);
    let spec = seams.get(&seam.name);
    let now = spec.and_then(|spec| spec.like.clone()).unwrap_or_default();
    let mut itself = Choice::named("", say.construction_like_none());
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
        let mut choice = Choice::named(&other.name, &say.construction_like_seam(title));
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
        label: say.construction_like_label(capital(known.title)),
        choices: [itself].into_iter().chain(others).collect(),
        chosen: now,
    };
    html! { label { span { (say.construction_like()) } (chosen.render()) } }
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
    let say = show.say;
    let path = |key: &str| format!("seams.{seam}.rows[{index}].{key}");
    let number = index + 1;
    let named = capital(title);
    // What the file says stands under the seam the rows are taken from; the field's path is this seam's own.
    let shown_from = rows_of(show, seam);
    let written = |key: &str| format!("seams.{shown_from}.rows[{index}].{key}");
    let colour = |key: &str| show.collection().yarns.get(key).map(|yarn| yarn.colour);
    let mut density = show.density(
        written("density"),
        say.construction_density_label(number, &named),
        row.density,
    );
    let mut offset = show.optional(
        written("offset"),
        say.construction_offset_label(number, &named),
        Some(row.offset),
        &Length::ZERO.show(show.system),
    );
    (density.path, offset.path) = (path("density"), path("offset"));
    let needle = yarn(
        say,
        show.collection(),
        path("yarn"),
        say.construction_needle_label(number, &named),
        &row.yarn,
    );
    let under = yarn(
        say,
        show.collection(),
        path("under"),
        say.construction_under_label(number, &named),
        &row.under,
    );
    let of = format!("seams.{seam}.rows[{index}]");
    html! {
        div.row role="group" aria-label=(say.construction_row(number)) {
            p.number aria-hidden="true" { (number) }
            label.stitch { span { (say.construction_stitch()) } (stitch(say, path("stitch"), say.construction_stitch_label(number, &named), row.stitch).render()) }
            label { span { (say.construction_density()) } (density.render()) }
            label { span { (say.construction_offset()) } (offset.render()) }
            @if several { (choice::button(&[remove(&of)], "×", Some(&say.construction_row_remove(number, title)))) }
            label.needle { span { @if let Some(colour) = colour(&row.yarn) { (swatch(colour)) } (say.construction_needle()) } (needle.render()) }
            label.under { span { @if let Some(colour) = colour(&row.under) { (swatch(colour)) } (say.construction_under()) } (under.render()) }
            label.needle { span { (say.construction_begin()) } (ending(say, path("begin"), say.construction_begin_label(number, &named), row.begin)) }
            label.under { span { (say.construction_end()) } (ending(say, path("end"), say.construction_end_label(number, &named), row.end)) }
        }
    }
}

/// How a row begins or ends.
fn ending(say: &'static Words, path: String, label: String, stated: Option<RowEnding>) -> Markup {
    let words = RowEnding::WORDS.iter().map(|(word, _)| Choice::word(word));
    let usual = Choice::named("", say.construction_ending_usual());
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
fn add_row(say: &'static Words, seam: &str, count: usize, last: &RowSpec) -> Markup {
    let row = json!({
        "stitch": last.stitch,
        "density": last.density.to_string(),
        "yarn": last.yarn,
        "under": last.under,
        "offset": last.offset.to_string(),
    });
    choice::button(
        &[insert(&format!("seams.{seam}.rows[{count}]"), row)],
        say.construction_row_add(),
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
    let say = show.say;
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
                    (choice::button(&[edit], &say.construction_add(known.title), Some(&say.construction_add_label(known.title))))
                }
            }
        }
    }
}
