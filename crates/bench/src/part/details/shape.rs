//! What the chart leaves open about the lines of the pattern.

use maud::html;
use style::{OutseamLine, Shape};

use super::{Details, Group, cell};
use crate::choice::Chosen;

pub(super) fn group(details: &Details<'_>) -> Group {
    let show = details.show;
    let usual = Shape::default();
    let line = |key: &str, title: &str, how: &str, usual| {
        details.length(&format!("shape.{key}"), "Shape", title, how, usual)
    };
    let outseam = Chosen::of_words(
        "shape.outseam",
        "Outseam between hip and hem",
        OutseamLine::WORDS,
        show.loaded.style.shape.outseam.word(),
    );
    let angle = show.angle(
        "shape.seat_angle",
        "Shape: slope of the seat seam",
        usual.seat_angle,
    );
    Group {
        key: "shape",
        title: "Shape of the panels",
        pieces: &["front", "back", "yoke"],
        seams: &["outseam", "inseam", "seat", "yoke", "front_rise"],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (line("waist_split", "Waist split", "The back waist is this much over a quarter of the waist, the front this much under.", usual.waist_split))
                (line("seat_split", "Seat split", "The back is this much over a quarter of the seat, the front this much under.", usual.seat_split))
                (line("thigh_split", "Thigh split", "The back is this much over half the thigh, the front this much under.", usual.thigh_split))
                (line("knee_split", "Knee split", "The back is this much over half the knee, the front this much under.", usual.knee_split))
                (line("hem_split", "Hem split", "The back is this much over half the hem, the front this much under.", usual.hem_split))
                (line("front_tilt", "Front tilt", "Centre front leans this much towards the side at the waist.", usual.front_tilt))
                (cell("Seat angle", "Slope of the seat seam against the grain.", &angle.render()))
                (line("seat_dart", "Seat dart", "What the yoke takes out between seat and waist, a leg.", usual.seat_dart))
                (line("inseam_stretch", "Inseam stretch", "The back inseam is this much shorter than the front's, stretched on between knee and crotch.", usual.inseam_stretch))
                (line("band_ease", "Band ease", "Body length eased onto the waistband, whole waist.", usual.band_ease))
                (cell("Outseam", "Shaped like the inseam, or straight on the grain from hip to hem, along the cloth's own edge.", &outseam.render()))
            }
        },
    }
}
