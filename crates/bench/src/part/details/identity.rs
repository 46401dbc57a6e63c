//! Who the style is, and what it is cut from.

use maud::{Markup, html};
use style::{ClothUse, Figure, Fit, SkewCutting};

use super::{Details, Group, cell};
use crate::choice::{self, Choice, Chosen};
use crate::field::{Typed, swatch};

pub(super) fn style(details: &Details<'_>) -> Group {
    let show = details.show;
    let doc = &show.loaded.style;
    let identity = &doc.style;
    let workrooms = show.collection().workrooms.iter();
    let workroom = Chosen {
        path: "style.workroom".to_owned(),
        label: "Workroom".to_owned(),
        choices: workrooms
            .map(|(key, workroom)| Choice::named(key, &workroom.name))
            .collect(),
        chosen: identity.workroom.clone(),
    };
    let figure = Chosen::of_words(
        "style.figure",
        "Figure",
        Figure::WORDS,
        identity.figure.word(),
    );
    let fit = Chosen::of_words("style.fit", "Fit", Fit::WORDS, identity.fit.word());
    let name = show.words("style.name", "Name", None);
    let code = show.words("style.code", "Code", None);
    let summary = show.words("style.summary", "Summary", Some("none"));
    Group {
        key: "style",
        title: "Style",
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (cell("Name", "The style's name.", &name.render()))
                (cell("Code", "Your label's code for it; it stands on every paper.", &code.render()))
                (cell("Workroom", "Who sews it; workrooms are in collection.toml.", &workroom.render()))
                (cell("Figure", "Whose figure it is cut for.", &figure.render()))
                (cell("Fit", "How it fits: the class its ease is judged by.", &fit.render()))
            }
            div.cells.runs {
                (cell("Waists", "The run of waist sizes in inches, rising.", &run("sizes.waists", "Run of waist sizes", &doc.sizes.waists).render()))
                (cell("Lengths", "The run of lengths in inches, rising.", &run("sizes.lengths", "Run of lengths", &doc.sizes.lengths).render()))
                (cell("Base", "The size whose measures the chart states; one of the run.", &base(details).render()))
            }
            div.cells.one { (cell("Summary", "One line about it.", &summary.render())) }
        },
    }
}

/// Sizes one after another.
fn run<'a>(path: &str, label: &str, tags: &[u32]) -> Typed<'a> {
    let tags: Vec<String> = tags.iter().map(u32::to_string).collect();
    Typed {
        path: path.to_owned(),
        label: label.to_owned(),
        value: tags.join(" "),
        usual: None,
        kept: None,
        whole: false,
    }
}

fn base(details: &Details<'_>) -> Chosen {
    let sizes = &details.show.loaded.style.sizes;
    let all = sizes.all();
    Chosen {
        path: "sizes.base".to_owned(),
        label: "Base size".to_owned(),
        choices: all
            .map(|size| {
                Choice::named(
                    &size.to_string(),
                    &format!("{} × {}", size.waist, size.length),
                )
            })
            .collect(),
        chosen: sizes.base.to_string(),
    }
}

pub(super) fn cloth(details: &Details<'_>) -> Group {
    let show = details.show;
    let cloth = &show.loaded.style.cloth;
    let choose = |path: &str, title: &str, bought_for, none, chosen: &str| {
        let colour = show.collection().cloths.get(chosen).map(|c| c.colour);
        let list = choice::cloth(show.collection(), path, title, (bought_for, none), chosen);
        html! {
            span.with-swatch { @if let Some(colour) = colour { (swatch(colour)) } (list.render()) }
        }
    };
    let lining = cloth.lining.as_deref().unwrap_or_default();
    let skew = Chosen::of_words(
        "cutting.skew",
        "Cut on skewed cloth",
        SkewCutting::WORDS,
        show.loaded.style.cutting.skew.word(),
    );
    let said = |key: &str| -> Markup {
        let Some(cloth) = show.collection().cloths.get(key) else {
            return html! {};
        };
        html! {
            p.aside {
                (cloth.weight.show(show.system)) ", " (format!("{:.2} mm", cloth.thickness.to_mm())) " thick, "
                (cloth.width.show(show.system)) " wide"
                @if cloth.selvedge { ", with its own edge" }
                @if !cloth.construction.is_empty() { ", " (cloth.construction) }
            }
        }
    };
    Group {
        key: "cloth",
        title: "Cloth",
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (cell("Shell", "What the panels are cut from.", &choose("cloth.shell", "Shell cloth", ClothUse::Shell, None, &cloth.shell)))
                (cell("Pocketing", "What the pocket bags are cut from.", &choose("cloth.pocketing", "Pocketing cloth", ClothUse::Pocketing, None, &cloth.pocketing)))
                (cell("Lining", "What back pockets are lined with, where a pocket does not say otherwise.", &choose("cloth.lining", "Lining cloth", ClothUse::Lining, Some("none"), lining)))
                (said(&cloth.shell)) (said(&cloth.pocketing)) (said(lining))
                (cell("Against skew", "Where the weft lies askew after the wash: pieces are cut straight all the same, sheared along the warp, or with their grain turned.", &skew.render()))
            }
        },
    }
}
