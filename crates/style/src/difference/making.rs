//! How fly, band, hem and bartacks are made, and how the style is cut.

use words::key;

use super::found::Found;
use super::value::Value;
use crate::{Band, Bartacks, Cutting, Fly, Hem, Wash};

pub(super) fn fly(found: &mut Found, a: &Fly, b: &Fly) {
    found.value("fly.closing", key::DIFFERENCE_FLY, a.closing, b.closing);
    let (path, about) = ("fly.buttons", key::DIFFERENCE_FLY_BUTTONS);
    found.value(path, about, a.buttons, b.buttons);
    let (path, about) = ("fly.button", key::DIFFERENCE_FLY_BUTTON);
    found.value(path, about, a.button.as_ref(), b.button.as_ref());
    let (path, about) = ("fly.zip", key::DIFFERENCE_FLY_ZIP);
    found.value(path, about, a.zip.as_ref(), b.zip.as_ref());
    let (path, about) = ("fly.band_button", key::DIFFERENCE_BAND_BUTTON);
    found.value(path, about, &a.band_button, &b.band_button);
    let (path, about) = ("fly.topstitch", key::DIFFERENCE_FLY_TOPSTITCH);
    found.value(path, about, a.topstitch, b.topstitch);
}

pub(super) fn band(found: &mut Found, a: &Band, b: &Band) {
    let (path, about) = ("band.method", key::DIFFERENCE_BAND_ROWS);
    found.value(path, about, a.method, b.method);
    let (path, about) = ("band.start_below", key::DIFFERENCE_BAND_START);
    found.value(path, about, a.start_below, b.start_below);
    found.value("band.v_angle", key::DIFFERENCE_BAND_V, a.v_angle, b.v_angle);
}

pub(super) fn hem(found: &mut Found, a: &Hem, b: &Hem) {
    found.value("hem.join", key::DIFFERENCE_HEM_JOIN, a.join, b.join);
    found.value("hem.ends", key::DIFFERENCE_HEM_ENDS, a.ends, b.ends);
    let (path, about) = ("hem.roping", key::DIFFERENCE_HEM_ROPING);
    found.value(path, about, a.roping, b.roping);
}

pub(super) fn bartacks(found: &mut Found, a: &Bartacks, b: &Bartacks) {
    let (path, about) = ("bartacks.yarn", key::DIFFERENCE_BARTACK_YARN);
    found.value(path, about, &a.yarn, &b.yarn);
    let (path, about) = ("bartacks.under", key::DIFFERENCE_BARTACK_UNDER);
    found.value(path, about, &a.under, &b.under);
    let (path, about) = ("bartacks.length", key::DIFFERENCE_BARTACK_LENGTH);
    found.value(path, about, a.length, b.length);
    let (path, about) = ("bartacks.width", key::DIFFERENCE_BARTACK_WIDTH);
    found.value(path, about, a.width, b.width);
    let (path, about) = ("bartacks.stitches", key::DIFFERENCE_BARTACK_STITCHES);
    found.value(path, about, a.stitches, b.stitches);
    let (path, about) = ("bartacks.mouth", key::DIFFERENCE_BARTACKS_MOUTH);
    found.value(path, about, a.mouth, b.mouth);
    found.value(
        "bartacks.coin",
        key::DIFFERENCE_BARTACKS_COIN,
        a.coin,
        b.coin,
    );
    let (path, about) = ("bartacks.back_pockets", key::DIFFERENCE_BARTACKS_BACK);
    found.value(path, about, a.back_pockets, b.back_pockets);
    found.value("bartacks.fly", key::DIFFERENCE_BARTACKS_FLY, a.fly, b.fly);
    let (path, about) = ("bartacks.crotch", key::DIFFERENCE_BARTACKS_CROTCH);
    found.value(path, about, a.crotch, b.crotch);
}

pub(super) fn cutting(found: &mut Found, a: &Cutting, b: &Cutting) {
    found.value("cutting.band", key::DIFFERENCE_CUTTING_BAND, a.band, b.band);
    let (path, about) = ("cutting.residual_warp", key::DIFFERENCE_RESIDUAL_WARP);
    found.value(path, about, a.residual_warp, b.residual_warp);
    let (path, about) = ("cutting.residual_weft", key::DIFFERENCE_RESIDUAL_WEFT);
    found.value(path, about, a.residual_weft, b.residual_weft);
    found.value("cutting.skew", key::DIFFERENCE_CUTTING_SKEW, a.skew, b.skew);
}

pub(super) fn wash(found: &mut Found, a: Option<&Wash>, b: Option<&Wash>) {
    let word = |wash: Option<&Wash>, of: fn(&Wash) -> Value| wash.map_or(Value::Nothing, of);
    let mut value = |path, about: words::Key, of: fn(&Wash) -> Value| {
        found.value(path, about, word(a, of), word(b, of));
    };
    value("wash.finish", key::DIFFERENCE_WASH_FINISH, |wash| {
        wash.finish.into()
    });
    value("wash.by", key::DIFFERENCE_WASH_BY, |wash| wash.by.into());
    value("wash.set_after", key::DIFFERENCE_WASH_SET_AFTER, |wash| {
        Value::List(wash.set_after.iter().map(|what| (*what).into()).collect())
    });
    value("wash.steps", key::DIFFERENCE_WASH_STEPS, |wash| {
        let steps = wash.steps.iter();
        Value::List(steps.map(|step| Value::Text(step.to_string())).collect())
    });
}
