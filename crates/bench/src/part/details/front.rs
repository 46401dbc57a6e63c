//! Coin pocket, pocket bags and mouth, and the extra pocket.

use drawing::PlateId;
use maud::{Markup, html};
use serde_json::json;
use style::{CoinPocket, CoinShape, MeasureId, PocketBag, SeamId, Side};

use super::art;
use super::group::{Details, Group, cell, wide};
use crate::chosen_fields::{self, ChosenField, set};

pub(super) fn coin(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let coin = &details.show.loaded.style.pockets.coin;
    let usual = CoinPocket::default();
    let side = ChosenField::of_words(
        "pockets.coin.side",
        say.details_front_coin_side_field(),
        Side::WORDS,
        coin.side.word(),
    );
    let drop = match coin.shape {
        CoinShape::Straight | CoinShape::Free => None,
        CoinShape::Pointed => Some(say.details_front_coin_drop_pointed()),
        CoinShape::CutCorner => Some(say.details_front_coin_drop_cut_corner()),
        CoinShape::Slant => Some(say.details_front_coin_drop_slant()),
        CoinShape::Round => Some(say.details_front_coin_drop_round()),
    };
    let line = |key: &str, title: &str, label: &str, how: &str, usual| {
        details.length(&format!("pockets.coin.{key}"), title, label, how, usual)
    };
    let art = art::choose(
        details,
        "pockets.coin.art",
        say.details_front_coin_art_field(),
        coin.art.as_ref(),
        coin.drawing.as_ref(),
    );
    Group {
        key: "coin",
        title: say.details_front_coin_title(),
        pieces: &["coin_pocket"],
        seams: &[SeamId::CoinHem, SeamId::CoinSet],
        trims: Vec::new(),
        plates: &[PlateId::CoinPocket],
        body: html! {
            (wide(say.details_front_coin_shape(), say.details_front_coin_shape_how(), &shapes(details, coin)))
            div.cells {
                @if let Some(how) = drop { (line("drop", say.details_front_coin_drop(), say.details_front_coin_drop_field(), how, usual.drop)) }
                @if coin.shape == CoinShape::Free {
                    (cell(say.details_front_coin_art(), say.details_front_coin_art_how(), &art))
                }
                (cell(say.details_front_coin_side(), say.details_front_coin_side_how(), &side.render()))
                (line("below_band", say.details_front_coin_below_band(), say.details_front_coin_below_band_field(), say.details_front_coin_below_band_how(), usual.below_band))
                (line("from_side", say.details_front_coin_from_side(), say.details_front_coin_from_side_field(), say.details_front_coin_from_side_how(), usual.from_side))
                (line("lower_narrowing", say.details_front_coin_narrowing(), say.details_front_coin_narrowing_field(), say.details_front_coin_narrowing_how(), usual.lower_narrowing))
                (details.charted(MeasureId::CoinWidth))
                (details.charted(MeasureId::CoinDepth))
            }
        },
    }
}

/// The shapes as little outlines, each to be chosen.
fn shapes(details: &Details<'_>, coin: &CoinPocket) -> Markup {
    let say = details.show.say;
    let mut chosen = ChosenField::of_words(
        "pockets.coin.shape",
        say.details_front_coin_shape_field(),
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
                None => choice.bar(say, say.details_front_coin_no_drawing()),
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
    let say = details.show.say;
    let usual = PocketBag::default();
    let line = |key: &str, title: &str, label: &str, how: &str, usual| {
        details.length(&format!("pockets.bag.{key}"), title, label, how, usual)
    };
    let fullness = details.show.share(
        "pockets.bag.mouth_fullness",
        say.details_front_bag_fullness_field(),
        usual.mouth_fullness,
    );
    Group {
        key: "bag",
        title: say.details_front_bag_title(),
        pieces: &["pocket_facing", "pocket_bag"],
        seams: &[SeamId::Mouth, SeamId::FacingSet, SeamId::BagClose],
        trims: Vec::new(),
        plates: &[PlateId::HipPocketMouth, PlateId::PocketBag],
        body: html! {
            div.cells {
                (cell(say.details_front_bag_fullness(), say.details_front_bag_fullness_how(), &fullness.render()))
                (line("depth", say.details_front_bag_depth(), say.details_front_bag_depth_field(), say.details_front_bag_depth_how(), usual.depth))
                (line("width", say.details_front_bag_width(), say.details_front_bag_width_field(), say.details_front_bag_width_how(), usual.width))
                (line("facing", say.details_front_bag_facing(), say.details_front_bag_facing_field(), say.details_front_bag_facing_how(), usual.facing))
                (details.charted(MeasureId::MouthWidth))
                (details.charted(MeasureId::MouthDepth))
            }
        },
    }
}

pub(super) fn extra(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let pockets = &details.show.loaded.style.pockets;
    Group {
        key: "extra",
        title: say.details_front_extra_title(),
        pieces: &["extra_pocket"],
        seams: &[SeamId::ExtraHem, SeamId::ExtraSet],
        trims: Vec::new(),
        plates: match pockets.extra {
            Some(_) => &[PlateId::ExtraPocket],
            None => &[],
        },
        body: match &pockets.extra {
            None => html! {
                p.aside { (say.details_front_extra_none()) }
                (add_extra(details, pockets.coin.side))
            },
            Some(extra) => html! {
                div.cells {
                    (cell(say.details_front_extra_side(), say.details_front_extra_side_how(),
                        &ChosenField::of_words("pockets.extra.side", say.details_front_extra_side_field(), Side::WORDS, extra.side.word()).render()))
                    (details.needed_length("pockets.extra.width", say.details_front_extra_width(), say.details_front_extra_width_field(), say.details_front_extra_width_how(), extra.width))
                    (details.needed_length("pockets.extra.depth", say.details_front_extra_depth(), say.details_front_extra_depth_field(), say.details_front_extra_depth_how(), extra.depth))
                    (details.needed_length("pockets.extra.from_centre", say.details_front_extra_from_centre(), say.details_front_extra_from_centre_field(), say.details_front_extra_from_centre_how(), extra.from_centre))
                }
                (chosen_fields::button(&[chosen_fields::remove("pockets.extra")], say.details_front_extra_take_out(), Some(say.details_front_extra_take_out_label())))
            },
        },
    }
}

/// The extra pocket with the measures of common practice, and the seams it needs where the style has none.
fn add_extra(details: &Details<'_>, coin: Side) -> Markup {
    let say = details.show.say;
    let side = match coin {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    };
    let seams = &details.show.loaded.style.seams;
    let mut edits = Vec::new();
    for (seam, like) in [
        (SeamId::ExtraHem, SeamId::CoinHem),
        (SeamId::ExtraSet, SeamId::CoinSet),
    ] {
        if !seams.contains_key(&seam) {
            let path = format!("seams.{}", seam.code());
            edits.push(set(&path, json!({ "like": like.code() })));
        }
    }
    let pocket = json!({
        "side": side.word(), "width": "7.5 cm", "depth": "9.5 cm", "from_centre": "9.3 cm",
    });
    edits.push(set("pockets.extra", pocket));
    let words = say.details_front_extra_put_in(side.word());
    chosen_fields::button(&edits, &words, Some(say.details_front_extra_put_in_label()))
}
