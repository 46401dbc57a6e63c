//! Coin pocket, pocket bags, back pockets and the extra pocket.

use words::{Key, key, say};

use super::found::Found;
use super::value::PocketValue;
use crate::{BackPocket, CoinPocket, ExtraPocket, PocketBag, Pockets};

pub(super) fn pockets(found: &mut Found, a: &Pockets, b: &Pockets) {
    coin(found, &a.coin, &b.coin);
    bag(found, &a.bag, &b.bag);
    let left = ("left", key::DIFFERENCE_BACK_POCKET_LEFT);
    back(found, left, &a.back.left, &b.back.left);
    let right = ("right", key::DIFFERENCE_BACK_POCKET_RIGHT);
    back(found, right, &a.back.right, &b.back.right);
    extra(found, a.extra.as_ref(), b.extra.as_ref());
}

fn coin(found: &mut Found, a: &CoinPocket, b: &CoinPocket) {
    let (path, about) = ("pockets.coin.side", key::DIFFERENCE_COIN_SIDE);
    found.value(path, about, a.side, b.side);
    let (path, about) = ("pockets.coin.below_band", key::DIFFERENCE_COIN_BELOW_BAND);
    found.value(path, about, a.below_band, b.below_band);
    let (path, about) = ("pockets.coin.from_side", key::DIFFERENCE_COIN_FROM_SIDE);
    found.value(path, about, a.from_side, b.from_side);
    let path = "pockets.coin.lower_narrowing";
    let (was, is) = (a.lower_narrowing, b.lower_narrowing);
    found.value(path, key::DIFFERENCE_COIN_NARROWING, was, is);
    let (path, about) = ("pockets.coin.shape", key::DIFFERENCE_COIN_SHAPE);
    found.value(path, about, a.shape, b.shape);
    let (path, about) = ("pockets.coin.drop", key::DIFFERENCE_COIN_DROP);
    found.value(path, about, a.drop, b.drop);
    let (path, about) = ("pockets.coin.art", key::DIFFERENCE_COIN_OUTLINE);
    found.value(path, about, a.art.as_ref(), b.art.as_ref());
}

fn bag(found: &mut Found, a: &PocketBag, b: &PocketBag) {
    let (path, about) = ("pockets.bag.depth", key::DIFFERENCE_BAG_DEPTH);
    found.value(path, about, a.depth, b.depth);
    let (path, about) = ("pockets.bag.width", key::DIFFERENCE_BAG_WIDTH);
    found.value(path, about, a.width, b.width);
    let (path, about) = ("pockets.bag.facing", key::DIFFERENCE_BAG_FACING);
    found.value(path, about, a.facing, b.facing);
    let path = "pockets.bag.mouth_fullness";
    let (was, is) = (a.mouth_fullness, b.mouth_fullness);
    found.value(path, key::DIFFERENCE_MOUTH_FULLNESS, was, is);
}

fn back(found: &mut Found, (side, pocket): (&str, Key), a: &BackPocket, b: &BackPocket) {
    let path = |key: &str| format!("pockets.back.{side}.{key}");
    let about = say::DifferenceBackFootWidth { pocket };
    found.value(path("foot_width"), about, a.foot_width, b.foot_width);
    let about = say::DifferenceBackSideLength { pocket };
    found.value(path("side_length"), about, a.side_length, b.side_length);
    let about = say::DifferenceBackOuterDrop { pocket };
    found.value(path("outer_drop"), about, a.outer_drop, b.outer_drop);
    let about = say::DifferenceBackLining { pocket };
    found.value(path("lining"), about, a.lining, b.lining);
    let about = say::DifferenceBackLiningCloth { pocket };
    let (was, is) = (a.lining_cloth.as_ref(), b.lining_cloth.as_ref());
    found.value(path("lining_cloth"), about, was, is);
    let about = say::DifferenceBackStitching { pocket };
    found.value(path("decoration"), about, a.decoration, b.decoration);
    let about = say::DifferenceBackWaves { pocket };
    found.value(path("waves"), about, a.waves, b.waves);
    let about = say::DifferenceBackCrest { pocket };
    found.value(path("crest"), about, a.crest, b.crest);
    let about = say::DifferenceBackRise { pocket };
    found.value(path("rise"), about, a.rise, b.rise);
    let about = say::DifferenceBackTurned { pocket };
    found.value(path("mirror"), about, a.mirror, b.mirror);
    let about = say::DifferenceBackDrawing { pocket };
    found.value(path("art"), about, a.art.as_ref(), b.art.as_ref());
}

fn extra(found: &mut Found, old: Option<&ExtraPocket>, new: Option<&ExtraPocket>) {
    let (a, b) = match (old, new) {
        (Some(a), Some(b)) => (a, b),
        (Some(a), None) => {
            return found.taken_out("pockets.extra", key::DIFFERENCE_EXTRA, size(a));
        }
        (None, Some(b)) => return found.added("pockets.extra", key::DIFFERENCE_EXTRA, size(b)),
        (None, None) => return,
    };
    let (path, about) = ("pockets.extra.side", key::DIFFERENCE_EXTRA_SIDE);
    found.value(path, about, a.side, b.side);
    let (path, about) = ("pockets.extra.width", key::DIFFERENCE_EXTRA_WIDTH);
    found.value(path, about, a.width, b.width);
    let (path, about) = ("pockets.extra.depth", key::DIFFERENCE_EXTRA_DEPTH);
    found.value(path, about, a.depth, b.depth);
    let path = "pockets.extra.from_centre";
    let (was, is) = (a.from_centre, b.from_centre);
    found.value(path, key::DIFFERENCE_EXTRA_FROM_CENTRE, was, is);
}

const fn size(pocket: &ExtraPocket) -> PocketValue {
    PocketValue {
        side: pocket.side,
        width: pocket.width,
        depth: pocket.depth,
    }
}
