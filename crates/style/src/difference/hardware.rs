//! Belt loops, rivets and the patch.

use words::key;

use super::found::Found;
use crate::{Loops, Patch, Rivets};

pub(super) fn loops(found: &mut Found, a: &Loops, b: &Loops) {
    found.value("loops.count", key::DIFFERENCE_LOOPS, a.count, b.count);
    found.value("loops.belt", key::DIFFERENCE_BELT, a.belt, b.belt);
}

pub(super) fn rivets(found: &mut Found, old: Option<&Rivets>, new: Option<&Rivets>) {
    let (a, b) = match (old, new) {
        (Some(a), Some(b)) => (a, b),
        (Some(a), None) => return found.taken_out("rivets", key::DIFFERENCE_RIVETS, &a.trim),
        (None, Some(b)) => return found.added("rivets", key::DIFFERENCE_RIVETS, &b.trim),
        (None, None) => return,
    };
    found.value("rivets.trim", key::DIFFERENCE_RIVET, &a.trim, &b.trim);
    let (path, about) = ("rivets.mouth", key::DIFFERENCE_RIVETS_MOUTH);
    found.value(path, about, a.mouth, b.mouth);
    found.value("rivets.coin", key::DIFFERENCE_RIVETS_COIN, a.coin, b.coin);
    let (path, about) = ("rivets.back_hidden", key::DIFFERENCE_RIVETS_HIDDEN);
    found.value(path, about, a.back_hidden, b.back_hidden);
}

pub(super) fn patch(found: &mut Found, old: Option<&Patch>, new: Option<&Patch>) {
    let (a, b) = match (old, new) {
        (Some(a), Some(b)) => (a, b),
        (Some(a), None) => return found.taken_out("patch", key::DIFFERENCE_PATCH, &a.trim),
        (None, Some(b)) => return found.added("patch", key::DIFFERENCE_PATCH, &b.trim),
        (None, None) => return,
    };
    found.value("patch.trim", key::DIFFERENCE_PATCH, &a.trim, &b.trim);
    let (path, about) = ("patch.from_centre", key::DIFFERENCE_PATCH_FROM_CENTRE);
    found.value(path, about, a.from_centre, b.from_centre);
    let (path, about) = ("patch.through", key::DIFFERENCE_PATCH_THROUGH);
    found.value(path, about, a.through, b.through);
    let (path, about) = ("patch.letters", key::DIFFERENCE_PATCH_LETTERS);
    found.value(path, about, a.letters, b.letters);
    let (path, about) = ("patch.art", key::DIFFERENCE_PATCH_DRAWING);
    found.value(path, about, a.art.as_ref(), b.art.as_ref());
}
