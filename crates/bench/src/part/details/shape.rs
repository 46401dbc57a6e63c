//! What the chart leaves open about the lines of the pattern.

use maud::html;
use style::{OutseamLine, SeamId, Shape};

use super::group::{Details, Group, cell};
use crate::chosen_fields::ChosenField;

pub(super) fn group(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let show = details.show;
    let usual = Shape::default();
    let line = |key: &str, title: &str, label: &str, how: &str, usual| {
        details.length(&format!("shape.{key}"), title, label, how, usual)
    };
    let outseam = ChosenField::of_words(
        "shape.outseam",
        say.details_shape_outseam_field(),
        OutseamLine::WORDS,
        show.loaded.style.shape.outseam.word(),
    );
    let angle = show.angle(
        "shape.seat_angle",
        say.details_shape_seat_angle_field(),
        usual.seat_angle,
    );
    Group {
        key: "shape",
        title: say.details_shape_title(),
        pieces: &["front", "back", "yoke"],
        seams: &[
            SeamId::Outseam,
            SeamId::Inseam,
            SeamId::Seat,
            SeamId::Yoke,
            SeamId::FrontRise,
        ],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (line("waist_split", say.details_shape_waist_split(), say.details_shape_waist_split_field(), say.details_shape_waist_split_how(), usual.waist_split))
                (line("seat_split", say.details_shape_seat_split(), say.details_shape_seat_split_field(), say.details_shape_seat_split_how(), usual.seat_split))
                (line("thigh_split", say.details_shape_thigh_split(), say.details_shape_thigh_split_field(), say.details_shape_thigh_split_how(), usual.thigh_split))
                (line("knee_split", say.details_shape_knee_split(), say.details_shape_knee_split_field(), say.details_shape_knee_split_how(), usual.knee_split))
                (line("hem_split", say.details_shape_hem_split(), say.details_shape_hem_split_field(), say.details_shape_hem_split_how(), usual.hem_split))
                (line("front_tilt", say.details_shape_front_tilt(), say.details_shape_front_tilt_field(), say.details_shape_front_tilt_how(), usual.front_tilt))
                (cell(say.details_shape_seat_angle(), say.details_shape_seat_angle_how(), &angle.render()))
                (line("seat_dart", say.details_shape_seat_dart(), say.details_shape_seat_dart_field(), say.details_shape_seat_dart_how(), usual.seat_dart))
                (line("inseam_stretch", say.details_shape_inseam_stretch(), say.details_shape_inseam_stretch_field(), say.details_shape_inseam_stretch_how(), usual.inseam_stretch))
                (line("band_ease", say.details_shape_band_ease(), say.details_shape_band_ease_field(), say.details_shape_band_ease_how(), usual.band_ease))
                (cell(say.details_shape_outseam(), say.details_shape_outseam_how(), &outseam.render()))
            }
        },
    }
}
