//! The back pockets, left and right side by side.

use drawing::PlateId;
use maud::{Markup, html};
use style::{BackPocket, ClothUse, Decoration, Lining, MeasureId, SeamId};
use trade::Length;
use words::Words;

use super::group::{Details, Group};
use crate::chosen_fields::{self, ChosenField};

const SIDES: [&str; 2] = ["left", "right"];

pub(super) fn group(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let back = &details.show.loaded.style.pockets.back;
    let pockets = [&back.left, &back.right];
    let usual = BackPocket::default();
    let lined = pockets.iter().any(|pocket| pocket.lining != Lining::None);
    let stitched = details
        .show
        .loaded
        .style
        .seams
        .contains_key(&SeamId::Decoration);
    let tide = stitched && pockets.iter().any(|pocket| has_tide(pocket));
    let lengths =
        |key: &str, title: &str, how: &str, label: &dyn Fn(&str) -> String, usual: Length| {
            line(title, how, |at| {
                length(details, at, key, &label(at.said(say)), usual)
            })
        };
    Group {
        key: "back",
        title: say.details_back_title(),
        pieces: &[
            "back_pocket_left",
            "back_pocket_right",
            "back_lining_left",
            "back_lining_right",
        ],
        seams: &[
            SeamId::BackPocketHem,
            SeamId::BackPocketSet,
            SeamId::Decoration,
        ],
        trims: Vec::new(),
        plates: &[
            PlateId::BackPocketLeft,
            PlateId::BackPocketRight,
            PlateId::BackPocketsInside,
        ],
        body: html! {
            table.sides {
                thead { tr { td {} th scope="col" { (say.details_back_left()) } th scope="col" { (say.details_back_right()) } } }
                tbody {
                    (lengths("foot_width", say.details_back_foot_width(), say.details_back_foot_width_how(), &|side| say.details_back_foot_width_field(side), usual.foot_width))
                    (lengths("side_length", say.details_back_side_length(), say.details_back_side_length_how(), &|side| say.details_back_side_length_field(side), usual.side_length))
                    (lengths("outer_drop", say.details_back_outer_drop(), say.details_back_outer_drop_how(), &|side| say.details_back_outer_drop_field(side), usual.outer_drop))
                    (line(say.details_back_lining(), say.details_back_lining_how(), |at| lining(say, pockets, at)))
                    @if lined {
                        (line(say.details_back_lining_cloth(), say.details_back_lining_cloth_how(), |at| lining_cloth(details, pockets, at)))
                    }
                    @if stitched {
                        (line(say.details_back_stitching(), say.details_back_stitching_how(), |at| decoration(say, pockets, at)))
                        (line(say.details_back_art(), say.details_back_art_how(), |at| art(details, pockets, at)))
                        @if tide {
                            (line(say.details_back_waves(), say.details_back_waves_how(), |at| waves(details, pockets, at)))
                            (lengths("crest", say.details_back_crest(), say.details_back_crest_how(), &|side| say.details_back_crest_field(side), usual.crest))
                            (lengths("rise", say.details_back_rise(), say.details_back_rise_how(), &|side| say.details_back_rise_field(side), usual.rise))
                        }
                        (line(say.details_back_mirror(), say.details_back_mirror_how(), |at| mirror(say, pockets, at)))
                    }
                }
            }
            @if !stitched {
                p.aside { (say.details_back_no_stitching()) }
            }
            div.cells {
                (details.charted(MeasureId::BackPocketWidth))
                (details.charted(MeasureId::BackPocketLength))
                (details.charted(MeasureId::BackPocketFromYoke))
                (details.charted(MeasureId::BackPocketFromCentre))
            }
        },
    }
}

fn has_tide(pocket: &BackPocket) -> bool {
    pocket.art.is_none() && pocket.decoration == Decoration::Tide
}

/// Which of the two pockets a field is of.
#[derive(Clone, Copy)]
struct At(usize);

impl At {
    fn side(self) -> &'static str {
        SIDES.get(self.0).copied().unwrap_or("left")
    }

    fn path(self, key: &str) -> String {
        format!("pockets.back.{}.{key}", self.side())
    }

    /// Which it is, within the label of a field.
    fn said(self, say: &'static Words) -> &'static str {
        if self.0 == 0 {
            say.details_back_side_left()
        } else {
            say.details_back_side_right()
        }
    }

    fn of(self, [left, right]: [&BackPocket; 2]) -> &BackPocket {
        if self.0 == 0 { left } else { right }
    }
}

fn line(title: &str, how: &str, field: impl Fn(At) -> Markup) -> Markup {
    html! {
        tr data-how=(how) {
            th scope="row" { (title) }
            td { (field(At(0))) }
            td { (field(At(1))) }
        }
    }
}

fn length(details: &Details<'_>, at: At, key: &str, label: &str, usual: Length) -> Markup {
    let usual = usual.show(details.show.system);
    let field = details
        .show
        .optional(at.path(key), label.to_owned(), None, &usual);
    field.render()
}

fn lining(say: &'static Words, pockets: [&BackPocket; 2], at: At) -> Markup {
    let now = at.of(pockets).lining.word();
    ChosenField::of_words(
        &at.path("lining"),
        &say.details_back_lining_field(at.said(say)),
        Lining::WORDS,
        now,
    )
    .render()
}

fn lining_cloth(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let say = details.show.say;
    let pocket = at.of(pockets);
    if pocket.lining == Lining::None {
        return html! { span.none { "–" } };
    }
    let chosen = pocket.lining_cloth.as_deref().unwrap_or_default();
    let usual = (
        ClothUse::Lining,
        Some(say.details_back_lining_cloth_usual()),
    );
    chosen_fields::cloth(
        details.show.collection(),
        &at.path("lining_cloth"),
        &say.details_back_lining_cloth_field(at.said(say)),
        usual,
        chosen,
    )
    .render()
}

fn decoration(say: &'static Words, pockets: [&BackPocket; 2], at: At) -> Markup {
    let now = at.of(pockets).decoration.word();
    ChosenField::of_words(
        &at.path("decoration"),
        &say.details_back_stitching_field(at.said(say)),
        Decoration::WORDS,
        now,
    )
    .render()
}

fn art(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let say = details.show.say;
    let pocket = at.of(pockets);
    super::art::choose(
        details,
        &at.path("art"),
        &say.details_back_art_field(at.said(say)),
        pocket.art.as_ref(),
        pocket.drawing.as_ref(),
    )
}

fn waves(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let say = details.show.say;
    let usual = BackPocket::default().waves;
    let field = details.show.whole(
        &at.path("waves"),
        &say.details_back_waves_field(at.said(say)),
        at.of(pockets).waves,
        usual,
    );
    field.render()
}

fn mirror(say: &'static Words, pockets: [&BackPocket; 2], at: At) -> Markup {
    chosen_fields::flag(
        &at.path("mirror"),
        &say.details_back_mirror_field(at.said(say)),
        at.of(pockets).mirror,
    )
}
