//! Coin pocket, pocket bags and mouth, and the extra pocket.

use maud::{Markup, html};
use serde_json::json;
use style::{CoinPocket, CoinShape, PocketBag, Side};

use super::{Details, Group, art, cell, wide};
use crate::choice::{self, Chosen, set};

pub(super) fn coin(details: &Details<'_>) -> Group {
    let coin = &details.show.loaded.style.pockets.coin;
    let usual = CoinPocket::default();
    let of = "Coin pocket";
    let side = Chosen::of_words(
        "pockets.coin.side",
        "Coin pocket: side",
        Side::WORDS,
        coin.side.word(),
    );
    let drop = match coin.shape {
        CoinShape::Straight | CoinShape::Free => None,
        CoinShape::Pointed => Some("How far the point hangs below the corners."),
        CoinShape::CutCorner => Some("The side of the triangle taken off each corner."),
        CoinShape::Slant => Some("How much longer the side nearer the outseam is."),
        CoinShape::Round => Some("How far the lowest place hangs below the sides."),
    };
    let line = |key: &str, title: &str, how: &str, usual| {
        details.length(&format!("pockets.coin.{key}"), of, title, how, usual)
    };
    let art = art::choose(
        details,
        "pockets.coin.art",
        "Coin pocket: drawing of its outline",
        coin.art.as_ref(),
        coin.drawing.as_ref(),
    );
    Group {
        key: "coin",
        title: of,
        pieces: &["coin_pocket"],
        seams: &["coin_hem", "coin_set"],
        trims: Vec::new(),
        plates: &["coin-pocket"],
        body: html! {
            (wide("Shape", "The outline of its foot. Its depth is always measured down its middle.", &shapes(details, coin)))
            div.cells {
                @if let Some(how) = drop { (line("drop", "Drop", how, usual.drop)) }
                @if coin.shape == CoinShape::Free {
                    (cell("Drawing", "One open line from the inner top corner down and round to the outer one, stretched to the chart's width and depth.", &art))
                }
                (cell("Side", "The front it sits in; left and right are the wearer's.", &side.render()))
                (line("below_band", "Below the band", "Band seam to its top edge, at its centre.", usual.below_band))
                (line("from_side", "From the side", "Outseam to its outer edge.", usual.from_side))
                (line("lower_narrowing", "Narrower below", "Its foot is this much narrower than its top.", usual.lower_narrowing))
                (details.charted("coin_width"))
                (details.charted("coin_depth"))
            }
        },
    }
}

/// The shapes as little outlines, each to be chosen.
fn shapes(details: &Details<'_>, coin: &CoinPocket) -> Markup {
    let mut chosen = Chosen::of_words(
        "pockets.coin.shape",
        "Coin pocket: shape",
        CoinShape::WORDS,
        coin.shape.word(),
    );
    let doc = &details.show.loaded.style;
    for choice in &mut chosen.choices {
        choice.words = choice.words.replace('-', " ");
        if choice.value == CoinShape::Free.word() && coin.art.is_none() {
            // A drawing that nothing names yet is more likely meant than the patch's.
            let named = doc.art();
            let free = |file: &&String| named.iter().all(|(_, art)| art.as_str() != file.as_str());
            match details.art.iter().find(free).or(details.art.first()) {
                Some(file) => {
                    choice.edits = vec![
                        set("pockets.coin.art", file.as_str()),
                        set("pockets.coin.shape", choice.value.as_str()),
                    ];
                }
                None => choice.barred = Some("no drawing in the style's art folder".to_owned()),
            }
        }
    }
    chosen.pictured(|word| {
        let shape = CoinShape::WORDS.iter().find(|(known, _)| *known == word);
        let path = match shape.map(|(_, shape)| *shape) {
            Some(CoinShape::Pointed) => "M3 2H29L27 27 16 33 5 27Z",
            Some(CoinShape::CutCorner) => "M3 2H29L27 26 21 32H11L5 26Z",
            Some(CoinShape::Slant) => "M3 2H29L27 33 5 26Z",
            Some(CoinShape::Round) => "M3 2H29L27 25C25 30 21 33 16 33 11 33 7 30 5 25Z",
            Some(CoinShape::Free) => "M3 2H29L26 14 28 24C24 25 23 32 16 32 9 32 8 25 4 24L6 14Z",
            Some(CoinShape::Straight) | None => "M3 2H29L27 31H5Z",
        };
        html! { svg viewBox="0 0 32 36" aria-hidden="true" { path d=(path) {} } }
    })
}

pub(super) fn bag(details: &Details<'_>) -> Group {
    let usual = PocketBag::default();
    let line = |key: &str, title: &str, how: &str, usual| {
        details.length(
            &format!("pockets.bag.{key}"),
            "Front pockets",
            title,
            how,
            usual,
        )
    };
    let fullness = details.show.share(
        "pockets.bag.mouth_fullness",
        "Front pockets: fullness of the mouth",
        usual.mouth_fullness,
    );
    Group {
        key: "bag",
        title: "Front pockets",
        pieces: &["pocket_facing", "pocket_bag"],
        seams: &["mouth", "facing_set", "bag_close"],
        trims: Vec::new(),
        plates: &["hip-pocket-mouth", "pocket-bag"],
        body: html! {
            div.cells {
                (cell("Fullness of the mouth", "How far the curve keeps to the corner it cuts off: little is nearly a straight slant, much nearly square.", &fullness.render()))
                (line("depth", "Depth of the bag", "Below the band seam.", usual.depth))
                (line("width", "Width of the bag", "Finished.", usual.width))
                (line("facing", "Facing", "Shell behind the mouth, measured beyond its edge.", usual.facing))
                (details.charted("mouth_width"))
                (details.charted("mouth_depth"))
            }
        },
    }
}

pub(super) fn extra(details: &Details<'_>) -> Group {
    let pockets = &details.show.loaded.style.pockets;
    let of = "Extra pocket";
    Group {
        key: "extra",
        title: of,
        pieces: &["extra_pocket"],
        seams: &["extra_hem", "extra_set"],
        trims: Vec::new(),
        plates: match pockets.extra {
            Some(_) => &["extra-pocket"],
            None => &[],
        },
        body: match &pockets.extra {
            None => html! {
                p.aside { "None. It would be one ply behind the front without the coin pocket, up to the lower edge of the waistband, hidden by a belt." }
                (add_extra(details, pockets.coin.side))
            },
            Some(extra) => html! {
                div.cells {
                    (cell("Side", "The front it sits behind; left and right are the wearer's.",
                        &Chosen::of_words("pockets.extra.side", "Extra pocket: side", Side::WORDS, extra.side.word()).render()))
                    (details.needed_length("pockets.extra.width", of, "Width", "Finished.", extra.width))
                    (details.needed_length("pockets.extra.depth", of, "Depth", "Finished, from the lower edge of the band.", extra.depth))
                    (details.needed_length("pockets.extra.from_centre", of, "From centre", "Centre front to its nearer edge.", extra.from_centre))
                }
                (choice::button(&[choice::remove("pockets.extra")], "Take it out", Some("Take the extra pocket out")))
            },
        },
    }
}

/// The extra pocket with the measures of common practice, and the seams it needs where the style has none.
fn add_extra(details: &Details<'_>, coin: Side) -> Markup {
    let side = match coin {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    };
    let seams = &details.show.loaded.style.seams;
    let mut edits = Vec::new();
    for (seam, like) in [("extra_hem", "coin_hem"), ("extra_set", "coin_set")] {
        if !seams.contains_key(seam) {
            edits.push(set(&format!("seams.{seam}"), json!({ "like": like })));
        }
    }
    let pocket = json!({
        "side": side.word(), "width": "8.5 cm", "depth": "11 cm", "from_centre": "9 cm",
    });
    edits.push(set("pockets.extra", pocket));
    let words = format!("Put one behind the {side} front");
    choice::button(&edits, &words, Some("Put in an extra pocket"))
}
