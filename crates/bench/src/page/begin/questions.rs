//! The page of questions: every one answered already, so that a style can begin at once.

use maud::{Markup, html};
use style::{
    Answers, Cloth, ClothUse, Collection, Figure, Fit, Leg, OFFERED_LENGTHS, OutseamLine, Taste,
    USUAL_LENGTHS, offered_waists, usual_waists,
};
use trade::System;

use crate::field::{capital, swatch};
use crate::page::layout::{self, Loads};
use crate::route::encoded;

/// What the page is shown with: pictures that follow the answers, a form that is sent.
const LOADS: Loads = Loads {
    styles: &["begin.css"],
    scripts: &["begin.js", "keys.js"],
};

/// What a fit is, in a line.
const fn fit_words(fit: Fit) -> &'static str {
    match fit {
        Fit::Slim => "close all the way down",
        Fit::Straight => "even from the thigh down",
        Fit::Tapered => "easy in the thigh, narrow at the hem",
        Fit::Relaxed => "easy all the way down",
    }
}

pub(super) fn render(
    collection: Option<&Collection>,
    taken: &[String],
    answers: &Answers,
) -> Markup {
    let shells: Vec<(&str, &Cloth)> = collection
        .into_iter()
        .flat_map(|collection| &collection.cloths)
        .filter(|(_, cloth)| cloth.r#use == ClothUse::Shell)
        .map(|(key, cloth)| (key.as_str(), cloth))
        .collect();
    let shell = answers
        .shell
        .as_deref()
        .filter(|name| shells.iter().any(|(key, _)| key == name))
        .or(shells.first().map(|(key, _)| *key));
    let answers = Answers {
        shell: shell.map(str::to_owned),
        ..answers.clone()
    };
    let body = html! {
        a.skip href="#begin" { "To the questions" }
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title="Key 1" { @match collection { Some(collection) => (collection.name), None => "Collection" } }
                h1 { "New style" }
            }
        }
        main.beginning {
            form #begin data-send="/new" {
                p.lead { "Everything is answered as is usual and can be changed at any time afterwards. What you do not know yet can stay." }
                (who(collection.is_none(), taken))
                (figure_and_fit(&answers))
                (leg(&answers))
                (sizes(&answers))
                @if !shells.is_empty() { (cloth(&shells, &answers)) }
                (outseam(&shells, &answers))
                (taste(&answers))
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { "Begin" }
                }
            }
            (foreseen(&answers))
        }
    };
    layout::page("New style", LOADS, &body)
}

/// The pair as it would begin.
fn foreseen(answers: &Answers) -> Markup {
    html! {
        aside.foreseen aria-label="What begins" {
            figure {
                (picture("front", answers, "Front as it would begin", ""))
                (picture("back", answers, "Back as it would begin", ""))
            }
        }
    }
}

/// A drawing of what would begin. `own` is the answer it shows whatever is chosen for that question.
fn picture(of: &str, answers: &Answers, alt: &str, own: &str) -> Markup {
    html! {
        img.drawn src=(picture_url(of, answers)) data-of=(of) data-own=[(!own.is_empty()).then_some(own)] alt=(alt) loading="lazy";
    }
}

fn picture_url(of: &str, answers: &Answers) -> String {
    let mut url = format!(
        "/new/picture.svg?of={of}&figure={}&fit={}&leg={}&taste={}",
        answers.figure, answers.fit, answers.leg, answers.taste
    );
    if let Some(line) = answers.outseam {
        url.push_str(&format!("&outseam={line}"));
    }
    if let Some(shell) = &answers.shell {
        url.push_str(&format!("&shell={}", encoded(shell)));
    }
    url
}

fn who(first: bool, taken: &[String]) -> Markup {
    let free = free_name("New style", taken);
    html! {
        section.group aria-labelledby="who" {
            h2 #who { "Name" }
            div.cells {
                @if first {
                    label.cell { span { "Your label" } input type="text" name="label" value="" placeholder="as the style" maxlength="80" autocomplete="off"; }
                }
                label.cell { span { "Style" } input type="text" name="name" value=(free) required maxlength="60" autocomplete="off"; }
                label.cell { span { "Code" } input type="text" name="code" value="" placeholder="made of the name" maxlength="40" autocomplete="off"; }
            }
        }
    }
}

/// A name no style has: "New style", "New style 2".
pub(super) fn free_name(name: &str, taken: &[String]) -> String {
    let slug = |name: &str| name.to_lowercase().replace(' ', "-");
    let numbered = (1_u32..).map(|number| match number {
        1 => name.to_owned(),
        number => format!("{name} {number}"),
    });
    let mut free = numbered.filter(|name| !taken.contains(&slug(name)));
    free.next().unwrap_or_default()
}

fn figure_and_fit(answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="figure-title" {
            h2 #figure-title { "Figure and fit" }
            div.ticks role="radiogroup" aria-label="Figure" {
                @for (word, figure) in Figure::WORDS {
                    label.tick { input type="radio" name="figure" value=(word) checked[*figure == answers.figure]; (capital(word)) "’s" }
                }
            }
            div.pictures.four role="radiogroup" aria-label="Fit" {
                @for (word, fit) in Fit::WORDS {
                    label {
                        input type="radio" name="fit" value=(word) checked[*fit == answers.fit];
                        @let shown = Answers { fit: *fit, ..answers.clone() };
                        (picture("front", &shown, "", &format!("fit={word}")))
                        span.name { (capital(word)) }
                        span.about { (fit_words(*fit)) }
                    }
                }
            }
        }
    }
}

fn leg(answers: &Answers) -> Markup {
    let words = |leg| match leg {
        Leg::Usual => ("As usual for the fit", "the hem its chart has"),
        Leg::Wide => ("Wider below the knee", "2 in more round the hem"),
    };
    html! {
        section.group aria-labelledby="leg-title" {
            h2 #leg-title { "Leg" }
            div.pictures.two role="radiogroup" aria-labelledby="leg-title" {
                @for (word, leg) in Leg::WORDS {
                    @let (name, about) = words(*leg);
                    label {
                        input type="radio" name="leg" value=(word) checked[*leg == answers.leg];
                        @let shown = Answers { leg: *leg, ..answers.clone() };
                        (picture("front", &shown, "", &format!("leg={word}")))
                        span.name { (name) }
                        span.about { (about) }
                    }
                }
            }
        }
    }
}

fn sizes(answers: &Answers) -> Markup {
    let run = |name: &str, title: &str, offered: std::ops::RangeInclusive<u32>, usual: &[u32]| {
        html! {
            div.run role="group" aria-label=(title) data-run=(name) {
                span.of { (title) }
                @for tag in offered {
                    label { input type="checkbox" name=(name) value=(tag) data-list checked[usual.contains(&tag)]; span { (tag) } }
                }
            }
        }
    };
    html! {
        section.group aria-labelledby="sizes-title" {
            h2 #sizes-title { "Sizes" }
            p.lead { "Waist and length on the tag, in inches. The chart grows with them; single steps can be changed in it." }
            @for (_, figure) in Figure::WORDS {
                @let chosen = if *figure == answers.figure && !answers.waists.is_empty() { answers.waists.clone() } else { usual_waists(*figure).to_vec() };
                (run(&format!("waists_{figure}"), "Waist", offered_waists(*figure), &chosen))
            }
            @let lengths = if answers.lengths.is_empty() { USUAL_LENGTHS } else { &answers.lengths };
            (run("lengths", "Length", OFFERED_LENGTHS, lengths))
        }
    }
}

fn cloth(shells: &[(&str, &Cloth)], answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="cloth-title" {
            h2 #cloth-title { "Cloth" }
            div.cloths role="radiogroup" aria-labelledby="cloth-title" {
                @for (key, cloth) in shells {
                    label {
                        input type="radio" name="shell" value=(key) checked[answers.shell.as_deref() == Some(key)]
                            data-edge[cloth.selvedge];
                        (swatch(cloth.colour))
                        span.name { (cloth.name) }
                        span.about {
                            (cloth.weight.show(System::Metric)) ", " (cloth.width.show(System::Metric)) " wide"
                            @if cloth.selvedge { ", with its own edge" }
                            @if !cloth.construction.is_empty() { "; " (cloth.construction) }
                        }
                    }
                }
            }
        }
    }
}

/// On the cloth's own edge, where the cloth has one; a collection that is not there yet begins with one that does.
fn outseam(shells: &[(&str, &Cloth)], answers: &Answers) -> Markup {
    let chosen = answers.shell.as_deref();
    let mut all = shells.iter();
    let edge = all
        .find(|(key, _)| Some(*key) == chosen)
        .is_none_or(|(_, cloth)| cloth.selvedge);
    let now = answers.outseam.filter(|_| edge).unwrap_or(if edge {
        OutseamLine::Straight
    } else {
        OutseamLine::Shaped
    });
    let words = |line| match line {
        OutseamLine::Shaped => (
            "Shaped",
            "curved over the hip and down to the knee; cut with an allowance",
        ),
        OutseamLine::Straight => (
            "On the cloth’s own edge",
            "straight from hip to hem; the inseam takes the shape of the leg",
        ),
    };
    html! {
        section.group aria-labelledby="outseam-title" data-outseam {
            h2 #outseam-title { "Outseam" }
            div.pictures.two role="radiogroup" aria-labelledby="outseam-title" {
                @for (word, line) in OutseamLine::WORDS.iter().rev() {
                    @let (name, about) = words(*line);
                    label {
                        input type="radio" name="outseam" value=(word) checked[*line == now]
                            disabled[*line == OutseamLine::Straight && !edge];
                        @let shown = Answers { outseam: Some(*line), ..answers.clone() };
                        (picture("panel", &shown, "", &format!("outseam={word}")))
                        span.name { (name) }
                        span.about { (about) }
                    }
                }
            }
            p.aside data-no-edge hidden[edge] { "The cloth that is chosen has no edge of its own to show." }
        }
    }
}

fn taste(answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="taste-title" {
            h2 #taste-title { "How it is sewn" }
            div.pictures.rows role="radiogroup" aria-labelledby="taste-title" {
                @for (word, taste) in Taste::WORDS {
                    label {
                        input type="radio" name="taste" value=(word) checked[*taste == answers.taste];
                        @let shown = Answers { taste: *taste, ..answers.clone() };
                        (picture("seam", &shown, "", &format!("taste={word}")))
                        span.name { (capital(word)) }
                        span.about { (taste.about()) }
                    }
                }
            }
            p.aside { "Drawn: the inseam cut across." }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_free() {
        let taken = |names: &[&str]| names.iter().map(|n| (*n).to_owned()).collect::<Vec<_>>();
        assert_eq!(free_name("New style", &taken(&[])), "New style");
        let both = taken(&["new-style", "new-style-2"]);
        assert_eq!(free_name("New style", &both), "New style 3");
    }
}
