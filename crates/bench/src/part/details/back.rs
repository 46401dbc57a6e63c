//! The back pockets, left and right side by side.

use maud::{Markup, html};
use style::{BackPocket, ClothUse, Decoration, Lining};
use trade::Length;

use super::{Details, Group, lower};
use crate::choice::{self, Chosen};

const SIDES: [&str; 2] = ["left", "right"];

pub(super) fn group(details: &Details<'_>) -> Group {
    let back = &details.show.loaded.style.pockets.back;
    let pockets = [&back.left, &back.right];
    let usual = BackPocket::default();
    let lined = pockets.iter().any(|pocket| pocket.lining != Lining::None);
    let stitched = details.show.loaded.style.seams.contains_key("decoration");
    let tide = stitched && pockets.iter().any(|pocket| has_tide(pocket));
    let lengths = |key: &'static str, title: &'static str, how: &'static str, usual: Length| {
        line(title, how, |at| length(details, at, key, title, usual))
    };
    Group {
        key: "back",
        title: "Back pockets",
        pieces: &[
            "back_pocket_left",
            "back_pocket_right",
            "back_lining_left",
            "back_lining_right",
        ],
        seams: &["back_pocket_hem", "back_pocket_set", "decoration"],
        trims: Vec::new(),
        plates: &[
            "back-pocket-left",
            "back-pocket-right",
            "back-pockets-inside",
        ],
        body: html! {
            table.sides {
                thead { tr { td {} th scope="col" { "Left" } th scope="col" { "Right" } } }
                tbody {
                    (lengths("foot_width", "Foot width", "Width at the foot, above the point.", usual.foot_width))
                    (lengths("side_length", "Side length", "Length of the inner side.", usual.side_length))
                    (lengths("outer_drop", "Outer drop", "The outer side is this much longer than the inner; with a minus, shorter.", usual.outer_drop))
                    (line("Lining", "How far down it is lined.", |at| lining(pockets, at)))
                    @if lined {
                        (line("Lining cloth", "Cloths are in cloths.toml.", |at| lining_cloth(details, pockets, at)))
                    }
                    @if stitched {
                        (line("Stitching", "Its built-in stitching, where it names no drawing.", |at| decoration(pockets, at)))
                        (line("Drawing", "Your own stitching in place of the built-in one: lines, a millimetre to a unit, from the inner top corner outwards and down.", |at| art(details, pockets, at)))
                        @if tide {
                            (line("Waves", "How many half waves lie across the pocket.", |at| waves(details, pockets, at)))
                            (lengths("crest", "Crest", "How high the waves are.", usual.crest))
                            (lengths("rise", "Rise", "The lines end this much higher at the outer side.", usual.rise))
                        }
                        (line("Turned over", "The stitching is turned over, left for right, about the pocket's middle.", |at| mirror(pockets, at)))
                    }
                }
            }
            @if !stitched {
                p.aside { "No stitching. It comes with the seam “back pocket stitching” among the seams." }
            }
            div.cells {
                (details.charted("back_pocket_width"))
                (details.charted("back_pocket_length"))
                (details.charted("back_pocket_from_yoke"))
                (details.charted("back_pocket_from_centre"))
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

    fn label(self, title: &str) -> String {
        format!("Back pocket, {}: {}", self.side(), lower(title))
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

fn length(details: &Details<'_>, at: At, key: &str, title: &str, usual: Length) -> Markup {
    let usual = usual.show(details.show.system);
    let field = details
        .show
        .optional(at.path(key), at.label(title), None, &usual);
    field.render()
}

fn lining(pockets: [&BackPocket; 2], at: At) -> Markup {
    let now = at.of(pockets).lining.word();
    Chosen::of_words(&at.path("lining"), &at.label("lining"), Lining::WORDS, now).render()
}

fn lining_cloth(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let pocket = at.of(pockets);
    if pocket.lining == Lining::None {
        return html! { span.none { "–" } };
    }
    let chosen = pocket.lining_cloth.as_deref().unwrap_or_default();
    let usual = (ClothUse::Lining, Some("the style’s own"));
    choice::cloth(
        details.show.collection(),
        &at.path("lining_cloth"),
        &at.label("lining cloth"),
        usual,
        chosen,
    )
    .render()
}

fn decoration(pockets: [&BackPocket; 2], at: At) -> Markup {
    let now = at.of(pockets).decoration.word();
    Chosen::of_words(
        &at.path("decoration"),
        &at.label("stitching"),
        Decoration::WORDS,
        now,
    )
    .render()
}

fn art(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let pocket = at.of(pockets);
    super::art::choose(
        details,
        &at.path("art"),
        &at.label("drawing of its stitching"),
        pocket.art.as_ref(),
        pocket.drawing.as_ref(),
    )
}

fn waves(details: &Details<'_>, pockets: [&BackPocket; 2], at: At) -> Markup {
    let usual = BackPocket::default().waves;
    let field = details.show.whole(
        &at.path("waves"),
        &at.label("waves"),
        at.of(pockets).waves,
        usual,
    );
    field.render()
}

fn mirror(pockets: [&BackPocket; 2], at: At) -> Markup {
    choice::flag(
        &at.path("mirror"),
        &at.label("stitching turned over"),
        at.of(pockets).mirror,
    )
}
