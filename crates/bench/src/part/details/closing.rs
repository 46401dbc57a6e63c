//! Fly, waistband, belt loops and hem.

use drawing::PlateId;
use maud::html;
use style::{
    Band, BandCutting, BandMethod, Closing, Cutting, FlyTopstitch, Hem, HemEnds, HemJoin, Loops,
    MeasureId, SeamId, TrimKind,
};

use super::group::{Details, Group, cell, tick};
use crate::chosen_fields::{self, Choice, ChosenField, set};

const BUTTONS: &[TrimKind] = &[TrimKind::ShankButton, TrimKind::SewnButton];
/// What a fly has when it does not say.
const USUAL_BUTTONS: u32 = 4;

pub(super) fn fly(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let collection = show.collection();
    let fly = &show.loaded.style.fly;
    let closing = ChosenField {
        path: "fly.closing".to_owned(),
        label: say.details_closing_fly_closing_field().to_owned(),
        choices: vec![
            closing_choice(details, Closing::Buttons, "fly.button", BUTTONS),
            closing_choice(details, Closing::Zip, "fly.zip", &[TrimKind::Zip]),
        ],
        chosen: fly.closing.word().to_owned(),
    };
    let band_button = chosen_fields::trim(
        collection,
        "fly.band_button",
        say.details_closing_fly_band_button(),
        BUTTONS,
        &fly.band_button,
    );
    let mut topstitch = ChosenField::of_words(
        "fly.topstitch",
        say.details_closing_fly_topstitch_field(),
        FlyTopstitch::WORDS,
        fly.topstitch.word(),
    );
    for (choice, (_, when)) in topstitch.choices.iter_mut().zip(FlyTopstitch::WORDS) {
        choice.words = match when {
            FlyTopstitch::Flat => say.details_closing_fly_flat(),
            FlyTopstitch::AfterRise => say.details_closing_fly_after_rise(),
        }
        .to_owned();
    }
    let mut trims = vec![fly.band_button.clone()];
    trims.extend(fly.button.clone());
    trims.extend(fly.zip.clone());
    let buttons = show.whole(
        "fly.buttons",
        say.details_closing_fly_buttons_field(),
        fly.buttons,
        USUAL_BUTTONS,
    );
    Group {
        key: "fly",
        title: say.details_closing_fly_title(),
        pieces: &["fly_facing", "fly_shield"],
        seams: &[SeamId::Fly, SeamId::FlyEdge],
        trims,
        plates: &[PlateId::Fly],
        body: html! {
            div.cells {
                (cell(say.details_closing_fly_closing(), say.details_closing_fly_closing_how(), &closing.render()))
                @match fly.closing {
                    Closing::Buttons => {
                        (cell(say.details_closing_fly_buttons(), say.details_closing_fly_buttons_how(), &buttons.render()))
                        (cell(say.details_closing_fly_button(), say.details_closing_fly_button_how(),
                            &chosen_fields::trim(collection, "fly.button", say.details_closing_fly_button(), BUTTONS, fly.button.as_deref().unwrap_or_default()).render()))
                    }
                    Closing::Zip => {
                        (cell(say.details_closing_fly_zip(), say.details_closing_fly_zip_how(),
                            &chosen_fields::trim(collection, "fly.zip", say.details_closing_fly_zip(), &[TrimKind::Zip], fly.zip.as_deref().unwrap_or_default()).render()))
                    }
                }
                (cell(say.details_closing_fly_topstitch(), say.details_closing_fly_topstitch_how(), &topstitch.render()))
                (cell(say.details_closing_fly_band_button(), say.details_closing_fly_band_button_how(), &band_button.render()))
                (details.charted(MeasureId::FlyLength))
                (details.charted(MeasureId::FlyWidth))
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
    let say = details.show.say;
    let named = details.show.written.get(needs).is_some();
    let trim = chosen_fields::trims(details.show.collection(), kinds).next();
    let mut choice = Choice::word(closing.word());
    match (named, trim) {
        (true, _) => {}
        // Named first: a fly of this kind is not sound without it.
        (false, Some((key, _))) => {
            choice.edits = vec![set(needs, key), set("fly.closing", closing.word())];
        }
        (false, None) => {
            choice.bar(say, say.details_closing_fly_none_to_choose());
        }
    }
    choice
}

pub(super) fn band(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let band = &show.loaded.style.band;
    let usual = Band::default();
    let mut method = ChosenField::of_words(
        "band.method",
        say.details_closing_band_rows_field(),
        BandMethod::WORDS,
        band.method.word(),
    );
    for choice in &mut method.choices {
        choice.words = match choice.value.as_str() {
            "two-row" => say.details_closing_band_two_row().to_owned(),
            "all-round" => say.details_closing_band_all_round().to_owned(),
            other => other.to_owned(),
        };
    }
    let angle = show.angle(
        "band.v_angle",
        say.details_closing_band_angle_field(),
        usual.v_angle,
    );
    let cutting = &show.loaded.style.cutting;
    let usual_cutting = Cutting::default();
    let chosen = cutting.band.map_or("", BandCutting::word);
    let mut cut = ChosenField::of_words(
        "cutting.band",
        say.details_closing_band_cut_field(),
        BandCutting::WORDS,
        chosen,
    );
    for choice in &mut cut.choices {
        choice.words = match choice.value.as_str() {
            "weft" => say.details_closing_band_weft().to_owned(),
            "preshrunk" => say.details_closing_band_preshrunk().to_owned(),
            "eased" => say.details_closing_band_eased().to_owned(),
            other => other.to_owned(),
        };
    }
    cut.choices
        .insert(0, Choice::named("", say.details_closing_band_not_stated()));
    Group {
        key: "band",
        title: say.details_closing_band_title(),
        pieces: &["band"],
        seams: &[SeamId::Band, SeamId::BandJoin],
        trims: Vec::new(),
        plates: &[
            PlateId::WaistbandEnds,
            PlateId::WaistbandOutside,
            PlateId::WaistbandInside,
        ],
        body: html! {
            div.cells {
                (cell(say.details_closing_band_rows(), say.details_closing_band_rows_how(), &method.render()))
                @if band.method == BandMethod::AllRound {
                    (details.length("band.start_below", say.details_closing_band_start_below(), say.details_closing_band_start_below_field(), say.details_closing_band_start_below_how(), usual.start_below))
                    (cell(say.details_closing_band_angle(), say.details_closing_band_angle_how(), &angle.render()))
                }
                (cell(say.details_closing_band_cut(), say.details_closing_band_cut_how(), &cut.render()))
                @if cutting.band == Some(BandCutting::Preshrunk) {
                    (cell(say.details_closing_band_residual_warp(), say.details_closing_band_residual_warp_how(),
                        &show.share("cutting.residual_warp", say.details_closing_band_residual_warp_field(), usual_cutting.residual_warp).render()))
                    (cell(say.details_closing_band_residual_weft(), say.details_closing_band_residual_weft_how(),
                        &show.share("cutting.residual_weft", say.details_closing_band_residual_weft_field(), usual_cutting.residual_weft).render()))
                }
                (details.charted(MeasureId::BandHeight))
                (details.charted(MeasureId::BandOverlap))
            }
        },
    }
}

pub(super) fn loops(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let usual = Loops::default();
    let count = show.whole(
        "loops.count",
        say.details_closing_loops_count_field(),
        show.loaded.style.loops.count,
        usual.count,
    );
    Group {
        key: "loops",
        title: say.details_closing_loops_title(),
        pieces: &["loop_strip"],
        seams: &[SeamId::LoopEdge],
        trims: vec!["loop_edge".to_owned()],
        plates: &[PlateId::BeltLoop],
        body: html! {
            div.cells {
                (cell(say.details_closing_loops_count(), say.details_closing_loops_count_how(), &count.render()))
                (details.length("loops.belt", say.details_closing_loops_belt(), say.details_closing_loops_belt_field(), say.details_closing_loops_belt_how(), usual.belt))
                (details.charted(MeasureId::LoopLength))
                (details.charted(MeasureId::LoopWidth))
            }
        },
    }
}

pub(super) fn hem(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let hem: &Hem = &details.show.loaded.style.hem;
    let join = ChosenField::of_words(
        "hem.join",
        say.details_closing_hem_join_field(),
        HemJoin::WORDS,
        hem.join.word(),
    );
    let ends = ChosenField::of_words(
        "hem.ends",
        say.details_closing_hem_ends_field(),
        HemEnds::WORDS,
        hem.ends.word(),
    );
    Group {
        key: "hem",
        title: say.details_closing_hem_title(),
        pieces: &[],
        seams: &[SeamId::Hem],
        trims: Vec::new(),
        plates: &[PlateId::Hem],
        body: html! {
            div.cells {
                (cell(say.details_closing_hem_join(), say.details_closing_hem_join_how(), &join.render()))
                (cell(say.details_closing_hem_ends(), say.details_closing_hem_ends_how(), &ends.render()))
                (details.charted(MeasureId::HemDepth))
            }
            (tick(say.details_closing_hem_roping(), say.details_closing_hem_roping_how(),
                &chosen_fields::flag("hem.roping", say.details_closing_hem_roping_field(), hem.roping)))
        },
    }
}
