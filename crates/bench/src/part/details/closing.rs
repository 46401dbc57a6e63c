//! Fly, waistband, belt loops and hem.

use maud::html;
use style::{
    Band, BandCutting, BandMethod, Closing, Cutting, Hem, HemEnds, HemJoin, Loops, TrimKind,
};

use super::{Details, Group, cell, tick};
use crate::choice::{self, Choice, Chosen, set};

const BUTTONS: &[TrimKind] = &[TrimKind::ShankButton, TrimKind::SewnButton];
/// What a fly has when it does not say.
const USUAL_BUTTONS: u32 = 4;

pub(super) fn fly(details: &Details<'_>) -> Group {
    let show = details.show;
    let collection = show.collection();
    let fly = &show.loaded.style.fly;
    let closing = Chosen {
        path: "fly.closing".to_owned(),
        label: "Fly: closing".to_owned(),
        choices: vec![
            closing_choice(details, Closing::Buttons, "fly.button", BUTTONS),
            closing_choice(details, Closing::Zip, "fly.zip", &[TrimKind::Zip]),
        ],
        chosen: fly.closing.word().to_owned(),
    };
    let band_button = choice::trim(
        collection,
        "fly.band_button",
        "Band button",
        BUTTONS,
        &fly.band_button,
    );
    let mut trims = vec![fly.band_button.clone()];
    trims.extend(fly.button.clone());
    trims.extend(fly.zip.clone());
    let buttons = show.whole(
        "fly.buttons",
        "Fly: number of buttons",
        fly.buttons,
        USUAL_BUTTONS,
    );
    Group {
        key: "fly",
        title: "Fly",
        pieces: &["fly_facing", "fly_shield"],
        seams: &["fly", "fly_edge"],
        trims,
        plates: &["fly"],
        body: html! {
            div.cells {
                (cell("Closing", "Buttons down the fly, or a zip.", &closing.render()))
                @match fly.closing {
                    Closing::Buttons => {
                        (cell("Buttons", "How many on the fly, below the band button.", &buttons.render()))
                        (cell("Fly button", "Which button; buttons are in trims.toml.",
                            &choice::trim(collection, "fly.button", "Fly button", BUTTONS, fly.button.as_deref().unwrap_or_default()).render()))
                    }
                    Closing::Zip => {
                        (cell("Zip", "Which zip; zips are in trims.toml.",
                            &choice::trim(collection, "fly.zip", "Zip", &[TrimKind::Zip], fly.zip.as_deref().unwrap_or_default()).render()))
                    }
                }
                (cell("Band button", "The button of the waistband.", &band_button.render()))
                (details.charted("fly_length"))
                (details.charted("fly_width"))
            }
        },
    }
}

/// A way to close the fly, with the trim it needs named first where the file names none.
fn closing_choice(
    details: &Details<'_>,
    closing: Closing,
    needs: &str,
    kinds: &[TrimKind],
) -> Choice {
    let named = details.show.written.get(needs).is_some();
    let trim = choice::trims(details.show.collection(), kinds).next();
    let mut choice = Choice::word(closing.word());
    match (named, trim) {
        (true, _) => {}
        // Named first: a fly of this kind is not sound without it.
        (false, Some((key, _))) => {
            choice.edits = vec![set(needs, key), set("fly.closing", closing.word())];
        }
        (false, None) => choice.barred = Some("none in trims.toml".to_owned()),
    }
    choice
}

pub(super) fn band(details: &Details<'_>) -> Group {
    let show = details.show;
    let band = &show.loaded.style.band;
    let usual = Band::default();
    let mut method = Chosen::of_words(
        "band.method",
        "Waistband: how its rows run",
        BandMethod::WORDS,
        band.method.word(),
    );
    for choice in &mut method.choices {
        choice.words = match choice.value.as_str() {
            "two-row" => "two rows, end to end".to_owned(),
            "all-round" => "all round, ending in a V".to_owned(),
            other => other.to_owned(),
        };
    }
    let angle = show.angle("band.v_angle", "Waistband: angle of the V", usual.v_angle);
    let cutting = &show.loaded.style.cutting;
    let usual_cutting = Cutting::default();
    let chosen = cutting.band.map_or("", BandCutting::word);
    let mut cut = Chosen::of_words(
        "cutting.band",
        "Waistband: how it is cut",
        BandCutting::WORDS,
        chosen,
    );
    for choice in &mut cut.choices {
        choice.words = match choice.value.as_str() {
            "weft" => "along the weft".to_owned(),
            "preshrunk" => "along the warp, of washed cloth".to_owned(),
            "eased" => "along the warp, eased".to_owned(),
            other => other.to_owned(),
        };
    }
    cut.choices.insert(0, Choice::named("", "not stated"));
    Group {
        key: "band",
        title: "Waistband",
        pieces: &["band"],
        seams: &["band"],
        trims: Vec::new(),
        plates: &["waistband-ends", "waistband-outside", "waistband-inside"],
        body: html! {
            div.cells {
                (cell("Rows", "Two rows from end to end; or the upper row begins below the fly, runs up one end, along the top and down the other, and finishes in a V whose point is the place of the button.", &method.render()))
                @if band.method == BandMethod::AllRound {
                    (details.length("band.start_below", "Waistband", "Start below", "The upper row begins this far below the band seam, at the end of the fly.", usual.start_below))
                    (cell("Angle of the V", "Between its legs. Its point is the place of the button.", &angle.render()))
                }
                (cell("Cut", "Warp and weft shrink apart: along the weft it shrinks with the body; along the warp its cloth is washed first, or it is eased by no more than a machine takes.", &cut.render()))
                @if cutting.band == Some(BandCutting::Preshrunk) {
                    (cell("Still shrinks, warp", "What the washed cloth of the band still shrinks by along the warp.",
                        &show.share("cutting.residual_warp", "Waistband: what its cloth still shrinks by along the warp", usual_cutting.residual_warp).render()))
                    (cell("Still shrinks, weft", "What the washed cloth of the band still shrinks by along the weft.",
                        &show.share("cutting.residual_weft", "Waistband: what its cloth still shrinks by along the weft", usual_cutting.residual_weft).render()))
                }
                (details.charted("band_height"))
                (details.charted("band_overlap"))
            }
        },
    }
}

pub(super) fn loops(details: &Details<'_>) -> Group {
    let show = details.show;
    let usual = Loops::default();
    let count = show.whole(
        "loops.count",
        "Belt loops: how many",
        show.loaded.style.loops.count,
        usual.count,
    );
    Group {
        key: "loops",
        title: "Belt loops",
        pieces: &["loop_strip"],
        seams: &["loop_edge"],
        trims: vec!["loop_edge".to_owned()],
        plates: &["belt-loop"],
        body: html! {
            div.cells {
                (cell("How many", "Loops on the waistband.", &count.render()))
                (details.length("loops.belt", "Belt loops", "Belt", "The width of the belt they are made for; it hides what lies behind it.", usual.belt))
                (details.charted("loop_length"))
                (details.charted("loop_width"))
            }
        },
    }
}

pub(super) fn hem(details: &Details<'_>) -> Group {
    let hem: &Hem = &details.show.loaded.style.hem;
    let join = Chosen::of_words(
        "hem.join",
        "Hem: where its row joins",
        HemJoin::WORDS,
        hem.join.word(),
    );
    let ends = Chosen::of_words(
        "hem.ends",
        "Hem: thread ends",
        HemEnds::WORDS,
        hem.ends.word(),
    );
    Group {
        key: "hem",
        title: "Hem",
        pieces: &[],
        seams: &["hem"],
        trims: Vec::new(),
        plates: &["hem"],
        body: html! {
            div.cells {
                (cell("Join", "Where round the leg its row begins and ends.", &join.render()))
                (cell("Thread ends", "How they are secured there.", &ends.render()))
                (details.charted("hem_depth"))
            }
            (tick("Roping", "The roll and the feed of the machine are to give the hem its diagonal ridges.",
                &choice::flag("hem.roping", "Hem: roping", hem.roping)))
        },
    }
}
