//! What the chart leaves open about the lines of the pattern.

use words::key;

use super::found::Found;
use crate::Shape;

pub(super) fn shape(found: &mut Found, a: &Shape, b: &Shape) {
    let mut value = |name: &str, about, was, is| {
        found.value(format!("shape.{name}"), about, was, is);
    };
    let (was, is) = (a.seat_split, b.seat_split);
    value("seat_split", key::DIFFERENCE_SEAT_SPLIT, was, is);
    let (was, is) = (a.thigh_split, b.thigh_split);
    value("thigh_split", key::DIFFERENCE_THIGH_SPLIT, was, is);
    let (was, is) = (a.knee_split, b.knee_split);
    value("knee_split", key::DIFFERENCE_KNEE_SPLIT, was, is);
    let (was, is) = (a.hem_split, b.hem_split);
    value("hem_split", key::DIFFERENCE_HEM_SPLIT, was, is);
    let (was, is) = (a.waist_split, b.waist_split);
    value("waist_split", key::DIFFERENCE_WAIST_SPLIT, was, is);
    let (was, is) = (a.front_tilt, b.front_tilt);
    value("front_tilt", key::DIFFERENCE_FRONT_TILT, was, is);
    let (path, about) = ("shape.seat_angle", key::DIFFERENCE_SEAT_ANGLE);
    found.value(path, about, a.seat_angle, b.seat_angle);
    let (path, about) = ("shape.seat_dart", key::DIFFERENCE_SEAT_DART);
    found.value(path, about, a.seat_dart, b.seat_dart);
    let (path, about) = ("shape.inseam_stretch", key::DIFFERENCE_INSEAM_STRETCH);
    found.value(path, about, a.inseam_stretch, b.inseam_stretch);
    let (path, about) = ("shape.band_ease", key::DIFFERENCE_BAND_EASE);
    found.value(path, about, a.band_ease, b.band_ease);
    let (path, about) = ("shape.outseam", key::DIFFERENCE_OUTSEAM_LINE);
    found.value(path, about, a.outseam, b.outseam);
}
