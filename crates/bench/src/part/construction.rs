//! The seams: how the plies lie, and every row of stitches.

use maud::{Markup, html};
use serde_json::{Value, json};
use sewing::{Garment, describe};
use style::known::{self, KnownSeam, Needed};
use style::{Construction, Lap, RowEnding, RowSpec, Seam, SeamId};
use trade::Length;
use words::{Said, Words};

use crate::chosen_fields::{self, Choice, ChosenField, insert, remove, set, stitch, yarn};
use crate::fingerprint::mark;
use crate::part::drawing;
use crate::typed_fields::{Fields, capital, problem_place, swatch};
use crate::viewing::{Panel, Viewing};

/// The most rows a seam can have.
const MOST_ROWS: usize = 8;

pub(crate) fn render(show: &Fields<'_>, garment: &Garment, see: &Viewing) -> Markup {
    let say = show.say;
    html! {
        section #construction aria-labelledby="construction-title" hidden[see.panel != Panel::Construction] {
            h2 #construction-title { (say.construction_title()) }
            p.lead { (say.construction_lead()) }
            @for seam in show.loaded.style.all_seams() {
                (section(show, garment, see, &seam, &known::seam(seam.id)))
            }
            (add_seams(show))
        }
    }
}

fn section(
    show: &Fields<'_>,
    garment: &Garment,
    see: &Viewing,
    seam: &Seam,
    known: &KnownSeam,
) -> Markup {
    let say = show.say;
    let part = format!("seam:{}", seam.id.code());
    let open = see.part.as_ref() == Some(&part);
    let inside = html! {
        summary {
            span.name { (capital(known.id.words(say))) }
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
                (stitch_row(show, seam.id, index, row, seam.rows.len() > 1))
            }
            div.adding {
                @if let Some(last) = seam.rows.last().filter(|_| seam.rows.len() < MOST_ROWS) {
                    (add_row(say, seam.id, seam.rows.len(), last))
                }
                @if removable(show, known) {
                    (chosen_fields::button(&[remove(&format!("seams.{}", seam.id.code()))], say.construction_remove(), Some(&say.construction_remove_label(known.id.words(say)))))
                }
            }
            (problem_place(&part))
        }
    };
    html! {
        // A seam with the mark it had is passed over when the page is brought up to date.
        details.seam name="seams" id={ "seam-" (seam.id.code()) } data-for={ (&part) " fixing:" (seam.id.code()) } data-name=(say.say(words::say::ConstructionSeam { construction: seam.construction, seam: capital(known.id.words(say)) }))
            data-same=(mark(&inside.0)) open[open] { (inside) }
    }
}

/// The section of a seam, and what a construction list says about it.
fn drawn(say: &'static Words, garment: &Garment, seam: &Seam) -> Markup {
    let Some(seam) = garment.seams.iter().find(|each| each.id == seam.id) else {
        return html! {};
    };
    let said = describe(garment, seam);
    let facts: [(&str, Option<Said>); 5] = [
        (say.construction_class(), said.class),
        (say.construction_machine(), Some(said.machine)),
        (say.construction_plies(), Some(said.plies)),
        (say.construction_allowances(), said.allowances),
        (say.construction_lies(), Some(said.lies)),
    ];
    html! {
        @if let Some(sheet) = drawing::section(say, garment, seam) { (sheet) }
        dl.facts {
            @for (term, fact) in facts {
                @if let Some(fact) = fact { div { dt { (term) } dd { (say.say(fact)) } } }
            }
        }
    }
}

/// A seam's rows at a glance: "401 × 2" and the colours of their yarns.
fn summary(show: &Fields<'_>, rows: &[RowSpec]) -> Markup {
    html! {
        @for row in rows {
            span {
                @if let Some(yarn) = show.collection().yarns.get(&row.yarn) { (swatch(yarn.colour)) }
                (row.stitch)
            }
        }
    }
}

fn construction(say: &'static Words, seam: &Seam, known: &KnownSeam) -> Markup {
    let choices = known.constructions.iter();
    let chosen = ChosenField {
        path: format!("seams.{}.construction", seam.id.code()),
        label: say.construction_how_label(capital(known.id.words(say))),
        choices: choices.map(|each| Choice::word(each.word())).collect(),
        chosen: seam.construction.word().to_owned(),
    };
    html! { label { span { (say.construction_how()) } (chosen.render()) } }
}

/// Every construction this seam cannot have, and why.
fn unsuitable(say: &'static Words, known: &KnownSeam) -> Markup {
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

fn lap(say: &'static Words, seam: &Seam, known: &KnownSeam) -> Markup {
    let (Some(usual), Some(lap)) = (known.usual_lap, seam.lap) else {
        return html! {};
    };
    let turned = Lap {
        over: usual.under,
        under: usual.over,
    };
    let chosen = ChosenField {
        path: format!("seams.{}.lap", seam.id.code()),
        label: say.construction_lap_label(capital(known.id.words(say))),
        choices: [usual, turned]
            .map(|lap| Choice::word(&lap.to_string()))
            .into(),
        chosen: lap.to_string(),
    };
    html! { label { span { (say.construction_lap()) } (chosen.render()) } }
}

/// From which other seam the construction and the rows are taken, if from any.
fn like(show: &Fields<'_>, seam: &Seam, known: &KnownSeam) -> Markup {
    let say = show.say;
    let seams = &show.loaded.style.seams;
    let path = |key: &str| format!("seams.{}.{key}", seam.id.code());
    let spec = seams.get(&seam.id);
    let now = spec.and_then(|spec| spec.like);
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
        other.id != seam.id
            && known.constructions.contains(&other.construction)
            && !follows(show, other.id, seam.id)
    };
    let others = show.loaded.style.all_seams().filter(suits);
    let others = others.map(|other| {
        let title = other.id.words(say);
        let mut choice = Choice::named(other.id.code(), &say.construction_like_seam(title));
        choice.edits = vec![set(&path("like"), other.id.code())];
        if spec.is_some_and(|spec| spec.construction.is_some()) {
            choice.edits.push(remove(&path("construction")));
        }
        if spec.is_some_and(|spec| spec.rows.is_some()) {
            choice.edits.push(remove(&path("rows")));
        }
        choice
    });
    let chosen = ChosenField {
        path: path("like"),
        label: say.construction_like_label(capital(known.id.words(say))),
        choices: [itself].into_iter().chain(others).collect(),
        chosen: now.map_or("", SeamId::code).to_owned(),
    };
    html! { label { span { (say.construction_like()) } (chosen.render()) } }
}

/// Whether a seam takes what it does not say from another, at whatever remove.
fn follows(show: &Fields<'_>, seam: SeamId, from: SeamId) -> bool {
    let seams = &show.loaded.style.seams;
    let mut next = seams.get(&seam).and_then(|spec| spec.like);
    // A chain of seams is at most as long as there are seams.
    for _ in 0..seams.len() {
        match next {
            Some(id) if id == from => return true,
            Some(id) => next = seams.get(&id).and_then(|spec| spec.like),
            None => return false,
        }
    }
    false
}

fn stitch_row(show: &Fields<'_>, id: SeamId, index: usize, row: &RowSpec, several: bool) -> Markup {
    let say = show.say;
    let (seam, title) = (id.code(), id.words(say));
    let path = |key: &str| format!("seams.{seam}.rows[{index}].{key}");
    let number = index + 1;
    let named = capital(title);
    // What the file says stands under the seam the rows are taken from; the field's path is this seam's own.
    let shown_from = rows_of(show, id).code();
    let written = |key: &str| format!("seams.{shown_from}.rows[{index}].{key}");
    let colour = |key: &str| show.collection().yarns.get(key).map(|yarn| yarn.colour);
    let mut density = show.density(
        written("density"),
        say.say(words::say::ConstructionDensityLabel {
            row: number,
            seam: &named,
        }),
        row.density,
    );
    let mut offset = show.optional(
        written("offset"),
        say.say(words::say::ConstructionOffsetLabel {
            row: number,
            seam: &named,
        }),
        Some(row.offset),
        &Length::ZERO.show(show.system),
    );
    (density.path, offset.path) = (path("density"), path("offset"));
    let needle = yarn(
        say,
        show.collection(),
        path("yarn"),
        say.say(words::say::ConstructionNeedleLabel {
            row: number,
            seam: &named,
        }),
        &row.yarn,
    );
    let under = yarn(
        say,
        show.collection(),
        path("under"),
        say.say(words::say::ConstructionUnderLabel {
            row: number,
            seam: &named,
        }),
        &row.under,
    );
    let of = format!("seams.{seam}.rows[{index}]");
    html! {
        div.row role="group" aria-label=(say.construction_row(number)) {
            p.number aria-hidden="true" { (number) }
            label.stitch { span { (say.construction_stitch()) } (stitch(say, path("stitch"), say.say(words::say::ConstructionStitchLabel { row: number, seam: &named }), row.stitch).render()) }
            label { span { (say.construction_density()) } (density.render()) }
            label { span { (say.construction_offset()) } (offset.render()) }
            @if several { (chosen_fields::button(&[remove(&of)], "×", Some(&say.say(words::say::ConstructionRowRemove { row: number, seam: title })))) }
            label.needle { span { @if let Some(colour) = colour(&row.yarn) { (swatch(colour)) } (say.construction_needle()) } (needle.render()) }
            label.under { span { @if let Some(colour) = colour(&row.under) { (swatch(colour)) } (say.construction_under()) } (under.render()) }
            label.needle { span { (say.construction_begin()) } (ending(say, path("begin"), say.say(words::say::ConstructionBeginLabel { row: number, seam: &named }), row.begin)) }
            label.under { span { (say.construction_end()) } (ending(say, path("end"), say.say(words::say::ConstructionEndLabel { row: number, seam: &named }), row.end)) }
        }
    }
}

/// How a row begins or ends.
fn ending(say: &'static Words, path: String, label: String, stated: Option<RowEnding>) -> Markup {
    let words = RowEnding::WORDS.iter().map(|(word, _)| Choice::word(word));
    let usual = Choice::named("", say.construction_ending_usual());
    ChosenField {
        path,
        label,
        choices: [usual].into_iter().chain(words).collect(),
        chosen: stated.map_or("", RowEnding::word).to_owned(),
    }
    .render()
}

/// The seam whose rows a seam shows: itself, or the one it is like.
fn rows_of(show: &Fields<'_>, seam: SeamId) -> SeamId {
    let seams = &show.loaded.style.seams;
    let mut shown = seam;
    // A chain of seams is at most as long as there are seams.
    for _ in 0..seams.len() {
        match seams.get(&shown) {
            Some(spec) if spec.rows.is_none() => match spec.like {
                Some(like) => shown = like,
                None => break,
            },
            _ => break,
        }
    }
    shown
}

/// A button that adds a row like the last one.
fn add_row(say: &'static Words, seam: SeamId, count: usize, last: &RowSpec) -> Markup {
    let row = json!({
        "stitch": last.stitch,
        "density": last.density.to_string(),
        "yarn": last.yarn,
        "under": last.under,
        "offset": last.offset.to_string(),
    });
    chosen_fields::button(
        &[insert(&format!("seams.{}.rows[{count}]", seam.code()), row)],
        say.construction_row_add(),
        None,
    )
}

/// Whether the style can be without the seam.
fn removable(show: &Fields<'_>, known: &KnownSeam) -> bool {
    match known.needed {
        Needed::Always => false,
        Needed::WithExtraPocket => show.loaded.style.pockets.extra.is_none(),
        Needed::Optional => true,
    }
}

/// The seams a style may have and this one has not.
fn add_seams(show: &Fields<'_>) -> Markup {
    let say = show.say;
    let doc = &show.loaded.style;
    let missing = known::seams()
        .filter(|known| known.needed == Needed::Optional && !doc.seams.contains_key(&known.id));
    // Sewn with the yarn of the bartacks until the maker says otherwise: every style names one.
    let edit = |known: &KnownSeam| -> Option<Value> {
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
        Some(set(&format!("seams.{}", known.id.code()), seam))
    };
    html! {
        div.adding {
            @for known in missing {
                @if let Some(edit) = edit(&known) {
                    (chosen_fields::button(&[edit], &say.construction_add(known.id.words(say)), Some(&say.construction_add_label(known.id.words(say)))))
                }
            }
        }
    }
}
