//! Who the style is, and which sizes it is made in.

use maud::html;
use style::{Figure, Fit, Tag};

use super::group::{Details, Group, cell};
use crate::chosen_fields::{Choice, ChosenField};
use crate::typed_fields::TypedField;

pub(super) fn style(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let doc = &show.loaded.style;
    let identity = &doc.style;
    let workrooms = show.collection().workrooms.iter();
    let workroom = ChosenField {
        path: "style.workroom".to_owned(),
        label: say.details_style_workroom().to_owned(),
        choices: std::iter::once(Choice::named("", say.details_style_workroom_open()))
            .chain(workrooms.map(|(key, workroom)| Choice::named(key, &workroom.name)))
            .collect(),
        chosen: identity.workroom.clone(),
    };
    let figure = ChosenField::of_words(
        "style.figure",
        say.details_style_figure(),
        Figure::WORDS,
        identity.figure.word(),
    );
    let fit = ChosenField::of_words(
        "style.fit",
        say.details_style_fit(),
        Fit::WORDS,
        identity.fit.word(),
    );
    let name = show.words("style.name", say.details_style_name(), None);
    let code = show.words("style.code", say.details_style_code(), None);
    let summary = show.words(
        "style.summary",
        say.details_style_summary(),
        Some(say.details_style_summary_none()),
    );
    Group {
        key: "style",
        title: say.details_style_title(),
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (cell(say.details_style_name(), say.details_style_name_how(), &name.render()))
                (cell(say.details_style_code(), say.details_style_code_how(), &code.render()))
                (cell(say.details_style_workroom(), say.details_style_workroom_how(), &workroom.render()))
                (cell(say.details_style_figure(), say.details_style_figure_how(), &figure.render()))
                (cell(say.details_style_fit(), say.details_style_fit_how(), &fit.render()))
            }
            div.cells.runs {
                (cell(say.details_style_waists(), say.details_style_waists_how(), &run("sizes.waists", say.details_style_waists_field(), &doc.sizes.waists).render()))
                (cell(say.details_style_lengths(), say.details_style_lengths_how(), &run("sizes.lengths", say.details_style_lengths_field(), &doc.sizes.lengths).render()))
                (cell(say.details_style_base(), say.details_style_base_how(), &base(details).render()))
            }
            div.cells.one { (cell(say.details_style_summary(), say.details_style_summary_how(), &summary.render())) }
        },
    }
}

/// Sizes one after another.
fn run(path: &str, label: &str, tags: &[Tag]) -> TypedField {
    let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
    TypedField {
        path: path.to_owned(),
        label: label.to_owned(),
        value: tags.join(" "),
        usual: None,
        kept: None,
        whole: false,
    }
}

fn base(details: &Details<'_>) -> ChosenField {
    let sizes = &details.show.loaded.style.sizes;
    let all = sizes.all();
    ChosenField {
        path: "sizes.base".to_owned(),
        label: details.show.say.details_style_base_field().to_owned(),
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
