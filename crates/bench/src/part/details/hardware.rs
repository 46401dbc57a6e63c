//! Rivets, bartacks and the patch.

use drawing::PlateId;
use maud::{Markup, html};
use serde_json::json;
use style::{Letters, Patch, PatchThrough, Rivets, SeamId, TrimKind};
use trade::Length;

use super::art;
use super::group::{Details, Group, cell, tick};
use crate::chosen_fields::{self, ChosenField, remove, set};
use crate::typed_fields::swatch;

/// Centre back to the patch, when the file does not say.
const PATCH_FROM_CENTRE: Length = Length::mm(35.0);
const TACK_LENGTH: Length = Length::mm(10.0);
const TACK_WIDTH: Length = Length::mm(2.0);
const TACK_STITCHES: u32 = 28;

pub(super) fn rivets(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let rivets = details.show.loaded.style.rivets.as_ref();
    Group {
        key: "rivets",
        title: say.details_hardware_rivets_title(),
        pieces: &[],
        seams: &[],
        trims: rivets.iter().map(|rivets| rivets.trim.clone()).collect(),
        plates: &[PlateId::PocketCorners],
        body: match rivets {
            Some(rivets) => with_rivets(details, rivets),
            None => without(
                details,
                "rivets",
                say.details_hardware_rivets_nothing(),
                TrimKind::Rivet,
            ),
        },
    }
}

fn with_rivets(details: &Details<'_>, rivets: &Rivets) -> Markup {
    let say = details.show.say;
    let kinds = [TrimKind::Rivet];
    let trim = chosen_fields::trim(
        details.show.collection(),
        "rivets.trim",
        say.details_hardware_rivet(),
        &kinds,
        &rivets.trim,
    );
    let place = |key: &str, title: &str, label: &str, how: &str, now| {
        tick(
            title,
            how,
            &chosen_fields::flag(&format!("rivets.{key}"), label, now),
        )
    };
    html! {
        div.cells {
            (cell(say.details_hardware_rivet(), say.details_hardware_rivet_how(), &trim.render()))
        }
        div.ticks {
            (place("mouth", say.details_hardware_rivets_mouth(), say.details_hardware_rivets_mouth_field(), say.details_hardware_rivets_mouth_how(), rivets.mouth))
            (place("coin", say.details_hardware_rivets_coin(), say.details_hardware_rivets_coin_field(), say.details_hardware_rivets_coin_how(), rivets.coin))
            (place("back_hidden", say.details_hardware_rivets_back(), say.details_hardware_rivets_back_field(), say.details_hardware_rivets_back_how(), rivets.back_hidden))
        }
        (chosen_fields::button(&[remove("rivets")], say.details_hardware_rivets_take_out(), Some(say.details_hardware_rivets_take_out_label())))
    }
}

/// Something the style does not have, and the way to put it in, when the collection has a trim for it.
fn without(details: &Details<'_>, section: &str, nothing: &str, kind: TrimKind) -> Markup {
    let say = details.show.say;
    let trim = chosen_fields::trims(details.show.collection(), &[kind]).next();
    html! {
        @match trim {
            Some((key, name)) => {
                p.aside { (say.details_none()) }
                (chosen_fields::button(&[set(section, json!({ "trim": key }))], &say.details_put_in(name), None))
            },
            None => p.aside { (nothing) },
        }
    }
}

pub(super) fn patch(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let patch = details.show.loaded.style.patch.as_ref();
    Group {
        key: "patch",
        title: say.details_hardware_patch_title(),
        pieces: &[],
        seams: &[SeamId::PatchSet],
        trims: patch.iter().map(|patch| patch.trim.clone()).collect(),
        plates: match patch {
            Some(_) => &[PlateId::Patch],
            None => &[],
        },
        body: match patch {
            Some(patch) => with_patch(details, patch),
            None => without(
                details,
                "patch",
                say.details_hardware_patch_nothing(),
                TrimKind::Patch,
            ),
        },
    }
}

fn with_patch(details: &Details<'_>, patch: &Patch) -> Markup {
    let say = details.show.say;
    let collection = details.show.collection();
    let kinds = [TrimKind::Patch];
    let trim = chosen_fields::trim(
        collection,
        "patch.trim",
        say.details_hardware_patch(),
        &kinds,
        &patch.trim,
    );
    let letters = ChosenField::of_words(
        "patch.letters",
        say.details_hardware_patch_letters_field(),
        Letters::WORDS,
        patch.letters.word(),
    );
    let through = ChosenField::of_words(
        "patch.through",
        say.details_hardware_patch_through_field(),
        PatchThrough::WORDS,
        patch.through.word(),
    );
    let art = art::choose(
        details,
        "patch.art",
        say.details_hardware_patch_art_field(),
        patch.art.as_ref(),
        patch.drawing.as_ref(),
    );
    let said = collection.trims.get(&patch.trim).map(|trim| {
        let system = details.show.system;
        let size = [trim.width, trim.height, trim.thickness]
            .into_iter()
            .flatten()
            .map(|length| length.show(system));
        let tanned = trim
            .tanning
            .map(|tanning| say.details_hardware_patch_tanned(tanning));
        let words = [trim.material.clone(), size.collect::<Vec<_>>().join(" × ")];
        let words = words.into_iter().chain(tanned);
        let words: Vec<String> = words.filter(|words| !words.is_empty()).collect();
        words.join(", ")
    });
    html! {
        div.cells {
            (cell(say.details_hardware_patch(), say.details_hardware_patch_how(), &trim.render()))
            (details.length("patch.from_centre", say.details_hardware_patch_from_centre(), say.details_hardware_patch_from_centre_field(), say.details_hardware_patch_from_centre_how(), PATCH_FROM_CENTRE))
            (cell(say.details_hardware_patch_through(), say.details_hardware_patch_through_how(), &through.render()))
            (cell(say.details_hardware_patch_letters(), say.details_hardware_patch_letters_how(), &letters.render()))
            (cell(say.details_hardware_patch_art(), say.details_hardware_patch_art_how(), &art))
        }
        @if let Some(said) = said { p.aside { (said) } }
        (chosen_fields::button(&[remove("patch")], say.details_hardware_patch_take_out(), Some(say.details_hardware_patch_take_out_label())))
    }
}

pub(super) fn bartacks(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let collection = show.collection();
    let tacks = &show.loaded.style.bartacks;
    let yarn = |key: &str, title: &str, label: &str, how: &str, chosen: &str| {
        let colour = collection.yarns.get(chosen).map(|yarn| yarn.colour);
        let path = format!("bartacks.{key}");
        let list = chosen_fields::yarn(say, collection, path, label.to_owned(), chosen).render();
        let field = html! { span.with-swatch { @if let Some(colour) = colour { (swatch(colour)) } (list) } };
        cell(title, how, &field)
    };
    let stitches = show.whole(
        "bartacks.stitches",
        say.details_hardware_bartacks_stitches_field(),
        tacks.stitches,
        TACK_STITCHES,
    );
    let rivets = show.loaded.style.rivets.as_ref();
    let place = |key: &str, title: &str, label: &str, how: &str, now| {
        tick(
            title,
            how,
            &chosen_fields::flag(&format!("bartacks.{key}"), label, now),
        )
    };
    Group {
        key: "bartacks",
        title: say.details_hardware_bartacks_title(),
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[PlateId::PocketCorners],
        body: html! {
            div.cells.two {
                (yarn("yarn", say.details_hardware_bartacks_yarn(), say.details_hardware_bartacks_yarn_field(), say.details_hardware_bartacks_yarn_how(), &tacks.yarn))
                (yarn("under", say.details_hardware_bartacks_under(), say.details_hardware_bartacks_under_field(), say.details_hardware_bartacks_under_how(), &tacks.under))
            }
            div.cells {
                (details.length("bartacks.length", say.details_hardware_bartacks_length(), say.details_hardware_bartacks_length_field(), say.details_hardware_bartacks_length_how(), TACK_LENGTH))
                (details.length("bartacks.width", say.details_hardware_bartacks_width(), say.details_hardware_bartacks_width_field(), say.details_hardware_bartacks_width_how(), TACK_WIDTH))
                (cell(say.details_hardware_bartacks_stitches(), say.details_hardware_bartacks_stitches_how(), &stitches.render()))
            }
            div.ticks {
                (place("mouth", say.details_hardware_bartacks_mouth(), say.details_hardware_bartacks_mouth_field(), say.details_hardware_bartacks_mouth_how(), tacks.at_mouth(rivets)))
                (place("coin", say.details_hardware_bartacks_coin(), say.details_hardware_bartacks_coin_field(), say.details_hardware_bartacks_coin_how(), tacks.at_coin(rivets)))
                (place("back_pockets", say.details_hardware_bartacks_back(), say.details_hardware_bartacks_back_field(), say.details_hardware_bartacks_back_how(), tacks.at_back_pockets(rivets)))
                (place("fly", say.details_hardware_bartacks_fly(), say.details_hardware_bartacks_fly_field(), say.details_hardware_bartacks_fly_how(), tacks.fly))
                (place("crotch", say.details_hardware_bartacks_crotch(), say.details_hardware_bartacks_crotch_field(), say.details_hardware_bartacks_crotch_how(), tacks.crotch))
            }
        },
    }
}
