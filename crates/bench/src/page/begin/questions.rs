//! The page of questions: every one answered already, so that a style can begin at once.

use maud::{Markup, html};
use style::{
    Answers, Cloth, ClothUse, Collection, Figure, Fit, Leg, OFFERED_LENGTHS, OutseamLine, Tag,
    Taste, USUAL_LENGTHS, offered_waists, usual_waists,
};
use trade::System;
use words::Words;

use crate::addresses::encoded;
use crate::page::layout::{self, PageAssets};
use crate::typed_fields::{capital, swatch};

/// What the page is shown with: pictures that follow the answers, a form that is sent.
const LOADS: PageAssets = PageAssets {
    styles: &["begin.css"],
    scripts: &["begin.js", "keys.js"],
};

/// What a fit is, in a line.
fn fit_words(say: &'static Words, fit: Fit) -> &'static str {
    match fit {
        Fit::Slim => say.begin_fit_slim(),
        Fit::Straight => say.begin_fit_straight(),
        Fit::Tapered => say.begin_fit_tapered(),
        Fit::Relaxed => say.begin_fit_relaxed(),
    }
}

pub(super) fn render(
    say: &'static Words,
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
        a.skip href="#begin" { (say.begin_questions_skip()) }
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title=(say.begin_home_key()) { @match collection { Some(collection) => (collection.name), None => (say.begin_collection()) } }
                h1 { (say.begin_new_style()) }
            }
        }
        main.beginning {
            form #begin data-send="/new" {
                p.lead { (say.begin_lead()) }
                (who(say, collection.is_none(), taken))
                (figure_and_fit(say, &answers))
                (leg(say, &answers))
                (sizes(say, &answers))
                @if !shells.is_empty() { (cloth(say, &shells, &answers)) }
                (outseam(say, &shells, &answers))
                (taste(say, &answers))
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { (say.begin_begin()) }
                }
            }
            (foreseen(say, &answers))
        }
    };
    layout::page(say, say.begin_new_style(), LOADS, &body)
}

/// The pair as it would begin.
fn foreseen(say: &'static Words, answers: &Answers) -> Markup {
    html! {
        aside.foreseen aria-label=(say.begin_foreseen()) {
            figure {
                (picture("front", answers, say.begin_foreseen_front(), ""))
                (picture("back", answers, say.begin_foreseen_back(), ""))
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

fn who(say: &'static Words, first: bool, taken: &[String]) -> Markup {
    let free = free_name(say.begin_new_style_name(), taken);
    html! {
        section.group aria-labelledby="who" {
            h2 #who { (say.begin_name_title()) }
            div.cells {
                @if first {
                    label.cell { span { (say.begin_label()) } input type="text" name="label" value="" placeholder=(say.begin_label_usual()) maxlength="80" autocomplete="off"; }
                }
                label.cell { span { (say.begin_style()) } input type="text" name="name" value=(free) required maxlength="60" autocomplete="off"; }
                label.cell { span { (say.begin_code()) } input type="text" name="code" value="" placeholder=(say.begin_code_usual()) maxlength="40" autocomplete="off"; }
                @if first {
                    label.cell { span { (say.begin_workroom()) } input type="text" name="workroom" value="" placeholder=(say.begin_open()) maxlength="80" autocomplete="off"; }
                    label.cell { span { (say.begin_place()) } input type="text" name="place" value="" placeholder=(say.begin_open()) maxlength="80" autocomplete="off"; }
                }
                label.cell { span { (say.begin_origin()) } input type="text" name="origin" value="" placeholder=(say.begin_open()) maxlength="60" autocomplete="off"; }
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

fn figure_and_fit(say: &'static Words, answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="figure-title" {
            h2 #figure-title { (say.begin_figure_and_fit()) }
            div.ticks role="radiogroup" aria-label=(say.begin_figure()) {
                @for (word, figure) in Figure::WORDS {
                    label.tick { input type="radio" name="figure" value=(word) checked[*figure == answers.figure]; (say.begin_figure_of(word)) }
                }
            }
            div.pictures.four role="radiogroup" aria-label=(say.begin_fit()) {
                @for (word, fit) in Fit::WORDS {
                    label {
                        input type="radio" name="fit" value=(word) checked[*fit == answers.fit];
                        @let shown = Answers { fit: *fit, ..answers.clone() };
                        (picture("front", &shown, "", &format!("fit={word}")))
                        span.name { (capital(word)) }
                        span.about { (fit_words(say, *fit)) }
                    }
                }
            }
        }
    }
}

fn leg(say: &'static Words, answers: &Answers) -> Markup {
    let words = |leg| match leg {
        Leg::Usual => (say.begin_leg_usual(), say.begin_leg_usual_about()),
        Leg::Wide => (say.begin_leg_wide(), say.begin_leg_wide_about()),
    };
    html! {
        section.group aria-labelledby="leg-title" {
            h2 #leg-title { (say.begin_leg_title()) }
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

fn sizes(say: &'static Words, answers: &Answers) -> Markup {
    let run = |name: &str, title: &str, offered: std::ops::RangeInclusive<u32>, chosen: &[Tag]| {
        // Whole inches are ticked; a half is the exception and is written.
        let offered: Vec<Tag> = offered.map(Tag::inches).collect();
        let more = chosen.iter().filter(|tag| !offered.contains(tag));
        let more: Vec<String> = more.map(Tag::to_string).collect();
        html! {
            div.run role="group" aria-label=(title) data-run=(name) {
                span.of { (title) }
                @for tag in &offered {
                    label { input type="checkbox" name=(name) value=(tag) data-list checked[chosen.contains(tag)]; span { (tag) } }
                }
                label.more { (say.begin_sizes_more()) " " input type="text" name={ (name) "_more" } value=(more.join(" ")) placeholder="31.5" inputmode="decimal" autocomplete="off" aria-label=(say.begin_sizes_more_label(title)); }
            }
        }
    };
    html! {
        section.group aria-labelledby="sizes-title" {
            h2 #sizes-title { (say.begin_sizes_title()) }
            p.lead { (say.begin_sizes_lead()) }
            @for (_, figure) in Figure::WORDS {
                @let chosen = if *figure == answers.figure && !answers.waists.is_empty() { answers.waists.clone() } else { whole(usual_waists(*figure)) };
                (run(&format!("waists_{figure}"), say.begin_waist(), offered_waists(*figure), &chosen))
            }
            @let lengths = if answers.lengths.is_empty() { whole(USUAL_LENGTHS) } else { answers.lengths.clone() };
            (run("lengths", say.begin_length(), OFFERED_LENGTHS, &lengths))
        }
    }
}

fn whole(inches: &[u32]) -> Vec<Tag> {
    inches.iter().copied().map(Tag::inches).collect()
}

/// How heavy and how wide a cloth is, and how it is woven.
fn cloth_words(say: &'static Words, cloth: &Cloth) -> String {
    let width = cloth.width.show(System::Metric);
    let weight = cloth.weight.show(System::Metric);
    let wide = if cloth.selvedge {
        say.say(words::say::BeginClothWideEdge { weight, width })
    } else {
        say.say(words::say::BeginClothWide { weight, width })
    };
    match cloth.construction.as_str() {
        "" => wide,
        weave => say.say(words::say::BeginClothWoven { cloth: wide, weave }),
    }
}

fn cloth(say: &'static Words, shells: &[(&str, &Cloth)], answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="cloth-title" {
            h2 #cloth-title { (say.begin_cloth_title()) }
            div.cloths role="radiogroup" aria-labelledby="cloth-title" {
                @for (key, cloth) in shells {
                    label {
                        input type="radio" name="shell" value=(key) checked[answers.shell.as_deref() == Some(key)]
                            data-edge[cloth.selvedge];
                        (swatch(cloth.colour))
                        span.name { (cloth.name) }
                        span.about {
                            (cloth_words(say, cloth))
                        }
                    }
                }
            }
        }
    }
}

/// On the cloth's own edge, where the cloth has one; a collection that is not there yet begins with one that does.
fn outseam(say: &'static Words, shells: &[(&str, &Cloth)], answers: &Answers) -> Markup {
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
        OutseamLine::Shaped => (say.begin_outseam_shaped(), say.begin_outseam_shaped_about()),
        OutseamLine::Straight => (
            say.begin_outseam_straight(),
            say.begin_outseam_straight_about(),
        ),
    };
    html! {
        section.group aria-labelledby="outseam-title" data-outseam {
            h2 #outseam-title { (say.begin_outseam_title()) }
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
            p.aside data-no-edge hidden[edge] { (say.begin_outseam_no_edge()) }
        }
    }
}

fn taste(say: &'static Words, answers: &Answers) -> Markup {
    html! {
        section.group aria-labelledby="taste-title" {
            h2 #taste-title { (say.begin_taste_title()) }
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
            p.aside { (say.begin_taste_drawn()) }
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
