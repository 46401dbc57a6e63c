//! The style itself, its sizes and its cloths.

use words::key;

use super::found::Found;
use super::value::Value;
use crate::{ClothRefs, Identity, Sizes};

pub(super) fn style(found: &mut Found, a: &Identity, b: &Identity) {
    found.value("style.name", key::DIFFERENCE_STYLE_NAME, &a.name, &b.name);
    found.value("style.code", key::DIFFERENCE_STYLE_CODE, &a.code, &b.code);
    let (path, about) = ("style.figure", key::DIFFERENCE_STYLE_FIGURE);
    found.value(path, about, a.figure, b.figure);
    found.value("style.fit", key::DIFFERENCE_STYLE_FIT, a.fit, b.fit);
    let (path, about) = ("style.summary", key::DIFFERENCE_STYLE_SUMMARY);
    found.value(path, about, &a.summary, &b.summary);
    let room = |name: &str| -> Value {
        match name {
            "" => key::DIFFERENCE_OPEN.into(),
            name => name.into(),
        }
    };
    let (path, about) = ("style.workroom", key::DIFFERENCE_STYLE_WORKROOM);
    found.value(path, about, room(&a.workroom), room(&b.workroom));
}

pub(super) fn sizes(found: &mut Found, a: &Sizes, b: &Sizes) {
    let (path, about) = ("sizes.waists", key::DIFFERENCE_WAISTS);
    found.value(path, about, a.waists.as_slice(), b.waists.as_slice());
    let (path, about) = ("sizes.lengths", key::DIFFERENCE_LENGTHS);
    found.value(path, about, a.lengths.as_slice(), b.lengths.as_slice());
    found.value("sizes.base", key::DIFFERENCE_BASE_SIZE, a.base, b.base);
}

pub(super) fn cloth(found: &mut Found, a: &ClothRefs, b: &ClothRefs) {
    found.value("cloth.shell", key::DIFFERENCE_SHELL, &a.shell, &b.shell);
    let (path, about) = ("cloth.pocketing", key::DIFFERENCE_POCKETING);
    found.value(path, about, &a.pocketing, &b.pocketing);
    let (path, about) = ("cloth.lining", key::DIFFERENCE_LINING);
    found.value(path, about, a.lining.as_ref(), b.lining.as_ref());
}
