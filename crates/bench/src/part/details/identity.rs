//! Who the style is, and which sizes it is made in.

use maud::html;
use style::{Figure, Fit};

use super::{Details, Group, cell};
use crate::choice::{Choice, Chosen};
use crate::field::Typed;

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
