//! Rivets, bartacks and the patch.

use maud::{Markup, html};
use serde_json::json;
use style::{Letters, Patch, Rivets, TrimKind};
use trade::Length;

use super::{Details, Group, art, cell, tick};
use crate::choice::{self, Chosen, remove, set};
use crate::field::swatch;

/// Centre back to the patch, when the file does not say.
const PATCH_FROM_CENTRE: Length = Length::mm(35.0);
const TACK_LENGTH: Length = Length::mm(10.0);
const TACK_WIDTH: Length = Length::mm(2.0);
const TACK_STITCHES: u32 = 28;

pub(super) fn rivets(details: &Details<'_>) -> Group {
    let rivets = details.show.loaded.style.rivets.as_ref();
    Group {
        key: "rivets",
        title: "Rivets",
        pieces: &[],
        seams: &[],
        trims: rivets.iter().map(|rivets| rivets.trim.clone()).collect(),
        plates: &["pocket-corners"],
        body: match rivets {
            Some(rivets) => with_rivets(details, rivets),
            None => without(details, "rivets", "rivet", TrimKind::Rivet),
        },
    }
}

fn with_rivets(details: &Details<'_>, rivets: &Rivets) -> Markup {
    let kinds = [TrimKind::Rivet];
    let trim = choice::trim(
        details.show.collection(),
        "rivets.trim",
        "Rivet",
        &kinds,
        &rivets.trim,
    );
    let place = |key: &str, title: &str, how: &str, now| {
        let label = format!("Rivets: {}", super::lower(title));
        tick(
            title,
            how,
            &choice::flag(&format!("rivets.{key}"), &label, now),
        )
    };
    html! {
        div.cells {
            (cell("Rivet", "Which rivet; rivets are in trims.toml.", &trim.render()))
        }
        div.ticks {
            (place("mouth", "Pocket mouths", "At both ends of each pocket mouth.", rivets.mouth))
            (place("coin", "Coin pocket", "At both top corners of the coin pocket.", rivets.coin))
            (place("back_hidden", "Back pockets, hidden", "At the top corners of the back pockets, set before the pockets are sewn and seen inside only.", rivets.back_hidden))
        }
        (choice::button(&[remove("rivets")], "Take them out", Some("Take the rivets out")))
    }
}

/// Something the style does not have, and the way to put it in, when the collection has a trim for it.
fn without(details: &Details<'_>, section: &str, what: &str, kind: TrimKind) -> Markup {
    let trim = choice::trims(details.show.collection(), &[kind]).next();
    html! {
        @match trim {
            Some((key, name)) => {
                p.aside { "None." }
                (choice::button(&[set(section, json!({ "trim": key }))], &format!("Put in {name}"), None))
            },
            None => p.aside { "None; trims.toml has no " (what) " to choose." },
        }
    }
}

pub(super) fn patch(details: &Details<'_>) -> Group {
    let patch = details.show.loaded.style.patch.as_ref();
    Group {
        key: "patch",
        title: "Patch",
        pieces: &[],
        seams: &["patch_set"],
        trims: patch.iter().map(|patch| patch.trim.clone()).collect(),
        plates: match patch {
            Some(_) => &["patch"],
            None => &[],
        },
        body: match patch {
            Some(patch) => with_patch(details, patch),
            None => without(details, "patch", "patch", TrimKind::Patch),
        },
    }
}

fn with_patch(details: &Details<'_>, patch: &Patch) -> Markup {
    let collection = details.show.collection();
    let kinds = [TrimKind::Patch];
    let trim = choice::trim(collection, "patch.trim", "Patch", &kinds, &patch.trim);
    let letters = Chosen::of_words(
        "patch.letters",
        "Patch: letters",
        Letters::WORDS,
        patch.letters.word(),
    );
    let art = art::choose(
        details,
        "patch.art",
        "Patch: drawing",
        patch.art.as_ref(),
        patch.drawing.as_ref(),
    );
    let said = collection.trims.get(&patch.trim).map(|trim| {
        let system = details.show.system;
        let size = [trim.width, trim.height, trim.thickness]
            .into_iter()
            .flatten()
            .map(|length| length.show(system));
        let tanned = trim.tanning.map(|tanning| format!("{tanning} tanned"));
        let words = [trim.material.clone(), size.collect::<Vec<_>>().join(" × ")];
        let words = words.into_iter().chain(tanned);
        let words: Vec<String> = words.filter(|words| !words.is_empty()).collect();
        words.join(", ")
    });
    html! {
        div.cells {
            (cell("Patch", "Which patch; patches, their leather and size are in trims.toml.", &trim.render()))
            (details.length("patch.from_centre", "Patch", "From centre", "Centre back to its inner edge, on the wearer's right.", PATCH_FROM_CENTRE))
            (cell("Letters", "Pressed into the leather, standing up from a ground pressed down, or printed.", &letters.render()))
            (cell("Drawing", "Your own drawing for it, inside the style's folder.", &art))
        }
        @if let Some(said) = said { p.aside { (said) } }
        (choice::button(&[remove("patch")], "Take it out", Some("Take the patch out")))
    }
}

pub(super) fn bartacks(details: &Details<'_>) -> Group {
    let show = details.show;
    let collection = show.collection();
    let tacks = &show.loaded.style.bartacks;
    let yarn = |key: &str, title: &str, how: &str, chosen: &str| {
        let colour = collection.yarns.get(chosen).map(|yarn| yarn.colour);
        let path = format!("bartacks.{key}");
        let label = format!("Bartacks: {}", super::lower(title));
        let list = choice::yarn(collection, path, label, chosen).render();
        let field = html! { span.with-swatch { @if let Some(colour) = colour { (swatch(colour)) } (list) } };
        cell(title, how, &field)
    };
    let stitches = show.whole(
        "bartacks.stitches",
        "Bartacks: stitches in each",
        tacks.stitches,
        TACK_STITCHES,
    );
    Group {
        key: "bartacks",
        title: "Bartacks",
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &["pocket-corners"],
        body: html! {
            div.cells.two {
                (yarn("yarn", "Needle yarn", "Yarns are in yarns.toml.", &tacks.yarn))
                (yarn("under", "Under yarn", "The yarn on the bobbin.", &tacks.under))
            }
            div.cells {
                (details.length("bartacks.length", "Bartacks", "Length", "Of each tack.", TACK_LENGTH))
                (details.length("bartacks.width", "Bartacks", "Width", "Of each tack.", TACK_WIDTH))
                (cell("Stitches", "In each tack.", &stitches.render()))
            }
        },
    }
}
